//! Trends over a grid of soil and cap, against an independent program.
//!
//! Expected: a prototype of the same equations in scipy (LSODA), for a cube with a floor of
//! 0.0493 m2 and 16 cm of water without plants under 100 umol/m2/s, with 25 mm of soil under
//! caps of 5, 12.5, 25 and 50 mm; twice the soil under 25 mm. Here the water is what the cap
//! leaves of 21 cm, and the release is followed for 21 days, so that only the trends and the
//! caps up to 25 mm are held against it.

use lentic::plan::Options;
use lentic::study::{Base, Cell, Column, Question, Space, compare};

use crate::compare::{Within, check};

const CUBE: &str = r#"
[tank]
shape = "box"
size = "22.2 x 22.2 x 23.5 cm"
[soil]
material = "loam_topsoil"
depth = "25 mm"
properties = { dry_bulk_density = "700 kg/m3", porosity = "70 %", total_nitrogen = "5 g/kg", mineral_nitrogen = "0.10 g/kg", ammonium_kd = "2 L/kg" }
[cap]
material = "filter_sand"
depth = "25 mm"
properties = { porosity = "40 %" }
[water]
temperature = "25 C"
ph = 7.2
[light]
par = "100 umol/m2/s"
hours = 10
"#;

/// Peak release in mg N/m2/d and peak ammonia in mg N/L of the rows, soil by soil.
fn grid() -> Vec<(f64, f64)> {
    let draft = lentic::spec::parse_draft(CUBE, "cube").expect("a draft");
    let axes = [
        "soil.depth=12.5mm,25mm,50mm",
        "cap.depth=5mm,12.5mm,25mm,50mm",
    ]
    .map(|text| lentic::spec::axis(text).expect("an axis"));
    let question = Question {
        columns: ["bed.release_peak_mg_n_m2_d", "startup.ammonia_peak_mg_l"]
            .map(|name| Column::of(name).expect("a result"))
            .to_vec(),
        ..Question::about(
            Space::grid(axes.to_vec()).expect("a grid"),
            Options {
                members: 0,
                ..Options::default()
            },
        )
    };
    compare(&question, &[Base::of(0, draft)])
        .map(|row| {
            let cells = row.cells.expect("a tank");
            let number = |place: usize| cells[place].as_ref().and_then(Cell::number);
            (number(0).expect("a release"), number(1).expect("a peak"))
        })
        .collect()
}

#[test]
fn a_deeper_cap_holds_back_and_more_soil_hardly_adds() {
    let rows = grid();
    assert_eq!(rows.len(), 12);
    for soil in rows.chunks(4) {
        for pair in soil.windows(2) {
            assert!(pair[1].0 < pair[0].0 && pair[1].1 < pair[0].1, "{soil:?}");
        }
    }
    let (under_25, under_50) = (&rows[4..8], &rows[8..]);
    for (found, expected) in under_25.iter().zip([151.0, 110.0, 78.0]) {
        check("peak release", found.0, expected, Within::Relative(0.02));
    }
    check("peak ammonia", under_25[2].1, 3.04, Within::Relative(0.1));
    // Twice the soil: 86 for 78; half the cap: 110 for 78.
    let (twice_the_soil, half_the_cap) =
        (under_50[2].0 / under_25[2].0, under_25[1].0 / under_25[2].0);
    assert!((1.0..1.15).contains(&twice_the_soil), "{twice_the_soil}");
    check(
        "half the cap",
        half_the_cap,
        110.0 / 78.0,
        Within::Relative(0.03),
    );
}
