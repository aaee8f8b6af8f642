//! Trends of the release over a grid of soil and cap without plants; the numbers of the
//! model stand in `checks`.

use lentic::plan::Options;
use lentic::study::{BaseTank, Cell, Question, ResultColumn, Space, compare};

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
            .map(|name| ResultColumn::of(name).expect("a result"))
            .to_vec(),
        ..Question::about(
            Space::grid(axes.to_vec()).expect("a grid"),
            Options {
                members: 0,
                ..Options::default()
            },
        )
    };
    compare(&question, &[BaseTank::of(0, draft)])
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
    // Twice the soil gives no more than a quarter more: the first weeks draw on what lies
    // near the cap.
    let twice_the_soil = rows[10].0 / rows[6].0;
    assert!((1.0..1.25).contains(&twice_the_soil), "{twice_the_soil}");
}
