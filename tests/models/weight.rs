//! Masses of shells and of filled tanks.
//!
//! Sources: float glass 2500 kg/m3 (EN 572-1), acrylic 1190 kg/m3 (polymer maker's data
//! sheet), water 997.047 kg/m3 at 25 C (from memory), saturated beds as in soil mechanics
//! `rho = rho_s (1 - n) + rho_w n`. Totals were summed twice, once pane by pane. Agreement
//! to half the last printed digit.

use crate::compare::{Within, check};
use lentic::geometry::{Bed, LayerDepth, Measured, Shape, Vessel, Wall};
use lentic::units::{Density, Length, Mass, Pressure, size::Size};

const GLASS: f64 = 2500.0;
const ACRYLIC: f64 = 1190.0;
const WATER: f64 = 997.047;
const GRAVITY: f64 = 9.806_65;

fn vessel(size: &str, sides_mm: f64, bottom_mm: f64) -> Vessel {
    let wall = Wall {
        sides: Length::from_mm(sides_mm),
        bottom: Length::from_mm(bottom_mm),
    };
    Vessel::new(
        &Shape::Box(Size::parse(size).unwrap()),
        Measured::Outside,
        wall,
    )
    .unwrap()
}

fn shell_kg(vessel: &Vessel, kg_m3: f64) -> f64 {
    (Density::from_kg_m3(kg_m3) * vessel.shell()).kg()
}

#[test]
fn a_shell_weighs_outside_less_inside() {
    let half_gram = Within::Absolute(5e-5);
    let small = vessel("60 x 30 x 36 cm", 6.0, 6.0);
    check(
        "volume, cm3",
        small.shell().cm3(),
        4852.224,
        Within::Relative(1e-9),
    );
    check(
        "inside, L",
        small.brimful().litres(),
        59.947_78,
        Within::Absolute(5e-6),
    );
    check("60 cm", shell_kg(&small, GLASS), 12.1306, half_gram);
    let large = vessel("120 x 45 x 50 cm", 10.0, 10.0);
    check("120 cm", shell_kg(&large, GLASS), 53.4350, half_gram);
    let acrylic = vessel("90 x 45 x 45 cm", 10.0, 10.0);
    check(
        "90 cm acrylic",
        shell_kg(&acrylic, ACRYLIC),
        18.7473,
        half_gram,
    );
    let mixed = vessel("90 x 45 x 45 cm", 8.0, 10.0);
    check(
        "90 cm, thicker bottom",
        shell_kg(&mixed, GLASS),
        33.6034,
        half_gram,
    );
}

/// A tank with a level bed, a rock and water, weighed part by part.
struct Filled {
    vessel: Vessel,
    soil_cm: f64,
    cap_cm: f64,
    level_cm: f64,
    rock_kg: f64,
    rock_kg_m3: f64,
    stand_kg: f64,
}

struct Weighed {
    bed_kg: f64,
    water_kg: f64,
    total_kg: f64,
    pressure: Pressure,
    line_kn_m: f64,
}

impl Filled {
    fn weigh(&self) -> Weighed {
        let layer = |depth_cm| LayerDepth::Uniform(Length::from_cm(depth_cm));
        let bed = Bed::new(&self.vessel, layer(self.soil_cm), layer(self.cap_cm)).unwrap();
        let saturated =
            |solid: f64, pores: f64| Density::from_kg_m3(solid * (1.0 - pores) + WATER * pores);
        let soil: Mass = saturated(2500.0, 0.60) * bed.soil.volume;
        let cap: Mass = saturated(2650.0, 0.40) * bed.cap.volume;
        let free = bed.water_below(Length::from_cm(self.level_cm)).m3();
        let water_kg = WATER * (free - self.rock_kg / self.rock_kg_m3);
        let bed_kg = (soil + cap).kg();
        let total_kg =
            shell_kg(&self.vessel, GLASS) + bed_kg + water_kg + self.rock_kg + self.stand_kg;
        let newtons = total_kg * GRAVITY;
        Weighed {
            bed_kg,
            water_kg,
            total_kg,
            pressure: Pressure::from_pa(newtons / self.vessel.footprint().m2()),
            line_kn_m: newtons / self.vessel.outer_length().m() / 1000.0,
        }
    }
}

#[test]
fn a_filled_60_cm_tank_weighs_its_parts() {
    let weighed = Filled {
        vessel: vessel("60 x 30 x 36 cm", 6.0, 6.0),
        soil_cm: 3.0,
        cap_cm: 4.0,
        level_cm: 33.0,
        rock_kg: 5.0,
        rock_kg_m3: 2700.0,
        stand_kg: 0.0,
    }
    .weigh();
    check("bed", weighed.bed_kg, 21.591, Within::Absolute(5e-4));
    check("water", weighed.water_kg, 42.053, Within::Absolute(5e-4));
    check("total", weighed.total_kg, 80.775, Within::Absolute(5e-4));
    check(
        "kPa",
        weighed.pressure.kpa(),
        4.4007,
        Within::Absolute(5e-5),
    );
    check("psf", weighed.pressure.psf(), 91.91, Within::Absolute(5e-3));
    check("kN/m", weighed.line_kn_m, 1.3202, Within::Absolute(5e-5));
}

#[test]
fn a_filled_120_cm_tank_weighs_its_parts() {
    let weighed = Filled {
        vessel: vessel("120 x 45 x 50 cm", 10.0, 10.0),
        soil_cm: 4.0,
        cap_cm: 4.0,
        level_cm: 46.0,
        rock_kg: 20.0,
        rock_kg_m3: 2650.0,
        stand_kg: 40.0,
    }
    .weigh();
    check("total", weighed.total_kg, 370.955, Within::Absolute(5e-4));
    check(
        "kPa",
        weighed.pressure.kpa(),
        6.7367,
        Within::Absolute(5e-5),
    );
}

#[test]
fn a_filled_20_inch_tank_weighs_its_parts() {
    let weighed = Filled {
        vessel: vessel("50.8 x 25.4 x 30.48 cm", 4.7625, 4.7625),
        soil_cm: 2.54,
        cap_cm: 2.54,
        level_cm: 27.94,
        rock_kg: 2.0,
        rock_kg_m3: 2700.0,
        stand_kg: 0.0,
    }
    .weigh();
    check("total", weighed.total_kg, 47.053, Within::Absolute(5e-4));
    check("psf", weighed.pressure.psf(), 74.69, Within::Absolute(5e-3));
}
