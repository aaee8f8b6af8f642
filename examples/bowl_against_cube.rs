//! What a bowl holds against a cube of the same width, and what sand each takes.
// An example program prints.
#![allow(clippy::print_stdout)]

use lentic::geometry::{Bed, LayerDepth, Measured, Shape, Vessel, Wall};
use lentic::units::Length;
use lentic::units::size::Size;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let wall = Wall {
        sides: Length::from_mm(4.0),
        bottom: Length::from_mm(4.0),
    };
    let bowl = Shape::Bowl {
        diameter: Length::from_cm(30.0),
        base: Length::from_cm(15.0),
        mouth: Length::from_cm(20.0),
    };
    let cube = Shape::Box(Size::parse("30 x 30 x 30 cm")?);
    for shape in [bowl, cube] {
        let vessel = Vessel::new(&shape, Measured::Inside, wall)?;
        let layer = |mm| LayerDepth::Uniform(Length::from_mm(mm));
        let bed = Bed::new(&vessel, layer(25.0), layer(40.0))?;
        println!(
            "{:<5} {:5.1} L to the rim, {:4.2} L of soil, {:4.2} L of cap",
            shape.word(),
            vessel.brimful().litres(),
            bed.soil.volume.litres(),
            bed.cap.volume.litres()
        );
    }
    Ok(())
}
