//! How the release and the planting index of one tank change with the depth of its cap.
// An example program prints.
#![allow(clippy::print_stdout)]

use lentic::geometry::LayerDepth;
use lentic::units::Length;

const SPEC: &str = r#"
[tank]
shape = "box"
size = "60 x 30 x 36 cm"

[soil]
material = "organic_potting_mix"
depth = "25 mm"

[cap]
material = "filter_sand"
depth = "25 mm"

[[plants]]
name = "duckweed"
amount = "30 %"
"#;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let draft = lentic::spec::parse(SPEC)?.into_draft();
    println!("cap mm  peak mg N/m2/d  index  thin");
    for depth_mm in [10.0, 20.0, 30.0, 40.0, 50.0, 60.0] {
        let mut other = draft.clone();
        other.cap.depth = LayerDepth::Uniform(Length::from_mm(depth_mm));
        let design = other
            .check()
            .map_err(|violations| format!("{violations:?}"))?;
        let plan = lentic::plan::plan(&design, lentic::plan::Options::default())?;
        let thin = plan
            .findings
            .iter()
            .find(|finding| finding.code.text() == "cap.thin")
            .map_or("-", |finding| finding.status.word());
        println!(
            "{depth_mm:>6}  {:>14.0}  {:>5.1}  {thin}",
            plan.bed.release_peak_mg_n_m2_d, plan.planting.index
        );
    }
    Ok(())
}
