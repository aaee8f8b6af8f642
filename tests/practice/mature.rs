//! What keepers of soil tanks read in theirs: common practice, no source.

use lentic::numerics::quantile::quantile;
use lentic::numerics::sobol::Sobol;
use lentic::plan::{OnDay, Options, Startup, night, startup};
use lentic::source::Band;
use lentic::startup::{Draw, Inputs, Parameters, day_state, ensemble};

use crate::spec::design;

/// Members that are enough for odds of a sixteenth.
const MEMBERS: u32 = 64;
/// What a kit reads as nothing: half of its first mark of 0.25 mg NO2/L.
const NOTHING_MG_NO2_L: f64 = 0.125;

/// A cube with 18 cm of water over a soil under filter sand.
fn cube(soil: &str, soil_mm: u32, plants: &str) -> String {
    format!(
        r#"
[tank]
shape = "box"
size = "25 x 20 x 28 cm"
freeboard = "3.5 cm"
[soil]
material = "{soil}"
depth = "{soil_mm} mm"
[cap]
material = "filter_sand"
depth = "40 mm"
{plants}
[water]
temperature = "24 C"
ph = 7.4
[light]
par = "80 umol/m2/s"
hours = 9
[harvest]
floaters_above = "50 %"
"#
    )
}

const HEAVY: &str = r#"
[[plants]]
name = "salvinia_natans"
amount = "35 %"
[[plants]]
name = "ludwigia_repens"
amount = "18 stems"
[[plants]]
name = "cryptocoryne_wendtii"
amount = "4 pots"
"#;

const FEW: &str = r#"
[[plants]]
name = "salvinia_natans"
amount = "5 %"
[[plants]]
name = "ludwigia_repens"
amount = "6 stems"
"#;

/// The sixty of an ordinary keeper, with ten small fish.
const STOCKED: &str = r#"
[tank]
shape = "box"
size = "60 x 30 x 36 cm"
wall = "6 mm"
[soil]
material = "loam_topsoil"
depth = "25 mm"
[cap]
material = "filter_sand"
depth = "40 mm"
[[plants]]
name = "limnobium_laevigatum"
amount = "40 %"
[[plants]]
name = "ludwigia_repens"
amount = "60 stems"
[[animals]]
name = "small_fish"
count = 10
[harvest]
floaters_above = "50 %"
"#;

fn followed(spec: &str, days: u32) -> Startup {
    let options = Options {
        members: MEMBERS,
        seed: 1,
        days,
    };
    startup(&design(spec), options, &|_| ()).expect("a start").0
}

fn odds(spec: &str) -> f64 {
    followed(spec, 90).probability_under_limits
}

/// The odds were in view when the model's numbers were chosen: they check its sanity and
/// prove nothing.
#[test]
fn only_a_heavily_planted_potting_mix_is_mostly_quiet() {
    let heavy = odds(&cube("organic_potting_mix", 25, HEAVY));
    assert!(heavy >= 0.75, "heavily planted {heavy}");
    let bare = odds(&cube("organic_potting_mix", 25, ""));
    assert!(bare <= 0.25, "without plants {bare}");
    let few = odds(&cube("compost_rich_mix", 30, FEW));
    assert!(few <= 0.1, "few plants over compost {few}");
}

#[test]
fn floaters_are_thinned_from_the_first_to_the_fifth_week() {
    for name in ["salvinia_natans", "limnobium_laevigatum", "lemna_minor"] {
        let spec = cube(
            "organic_potting_mix",
            25,
            &HEAVY.replace("salvinia_natans", name),
        );
        let day = thinned_on(&spec, 0.5);
        assert!((7.0..=35.0).contains(&day), "{name}: day {day}");
    }
}

/// The day on which floaters cover a share of the surface, in the median of the members.
fn thinned_on(spec: &str, cover: f64) -> f64 {
    let design = design(spec);
    let (inputs, bands) = (Inputs::of(&design), Parameters::<Band>::of(&design));
    let draw = Draw {
        members: MEMBERS,
        seed: 1,
    };
    let points = Sobol::new(draw.seed);
    let members = ensemble::members(&inputs, &bands, 90, draw, &|_| ());
    let mut days: Vec<f64> = members
        .iter()
        .map(|member| {
            let numbers = bands.draw(|dimension| points.coordinate(member.index, dimension));
            let mut days = member.days.iter();
            let reached =
                days.find(|sample| day_state(&inputs, &numbers, sample).cover.fraction() >= cover);
            reached.map_or(f64::INFINITY, |sample| sample.day)
        })
        .collect();
    days.sort_by(f64::total_cmp);
    quantile(&days, 0.5).expect("members")
}

#[test]
fn a_mature_stocked_tank_reads_next_to_nothing() {
    let run = followed(STOCKED, 180);
    for day in run.days.iter().filter(|day| day.day >= 120) {
        let (ammonia, nitrite) = (day.ammonia_mg_l.typical(), day.nitrite_mg_l.typical());
        assert!(ammonia <= 0.25, "{ammonia} mg N/L on day {}", day.day);
        assert!(
            nitrite < NOTHING_MG_NO2_L,
            "{nitrite} mg/L on day {}",
            day.day
        );
    }
}

#[test]
fn an_ordinary_tank_reads_7_4_to_8_6_at_dusk() {
    let options = Options {
        members: MEMBERS,
        seed: 1,
        days: 90,
    };
    let (night, ..) = night(&design(STOCKED), options, OnDay::Day(40)).expect("a night");
    let dusk = night.section.ph_dusk.typical();
    assert!((7.4..=8.6).contains(&dusk), "pH {dusk}");
}
