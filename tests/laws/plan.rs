//! Laws of whole plans: parts add up, more sand weighs more, nothing is missing.

use lentic::design::Draft;
use lentic::geometry::LayerDepth;
use lentic::plan::{Options, Partial, PlanPart, partial, plan};
use lentic::units::Length;
use proptest::prelude::*;

const SHAPES: [&str; 9] = [
    "shape = \"box\"\nsize = \"50 x 30 x 36 cm\"",
    "shape = \"cylinder\"\ndiameter = \"35 cm\"\nheight = \"40 cm\"",
    "shape = \"bow_front\"\nlength = \"60 cm\"\nwidth_end = \"28 cm\"\nwidth_middle = \"36 cm\"\nheight = \"40 cm\"",
    "shape = \"regular_polygon\"\nsides = 6\nside = \"20 cm\"\nheight = \"45 cm\"",
    "shape = \"quarter_cylinder\"\nradius = \"45 cm\"\nheight = \"45 cm\"",
    "shape = \"half_cylinder\"\ndiameter = \"60 cm\"\nheight = \"35 cm\"",
    "shape = \"cut_corner\"\nlength = \"40 cm\"\nwidth = \"40 cm\"\ncut_length = \"20 cm\"\ncut_width = \"15 cm\"\nheight = \"40 cm\"",
    "shape = \"trapezoid\"\nfront = \"60 cm\"\nback = \"40 cm\"\nwidth = \"35 cm\"\nheight = \"40 cm\"",
    "shape = \"bowl\"\ndiameter = \"40 cm\"\nbase = \"20 cm\"\nmouth = \"25 cm\"",
];

fn draft(shape: usize, stones_kg: f64) -> Draft {
    let text = format!(
        "[tank]\n{}\n[soil]\nmaterial = \"loam_topsoil\"\ndepth = \"25 mm\"\n[cap]\nmaterial = \"filter_sand\"\ndepth = \"40 mm\"\n[[hardscape]]\nmaterial = \"granite\"\nmass = \"{stones_kg} kg\"\n[[plants]]\nname = \"duckweed\"\namount = \"30 %\"\n",
        SHAPES[shape]
    );
    lentic::spec::parse_draft(&text, "any").expect("a draft")
}

const CENTRAL: Options = Options {
    members: 0,
    seed: 1,
    days: 90,
};

fn planned(draft: &Draft) -> Partial {
    let design = draft.clone().check().expect("a design");
    partial(&design, CENTRAL, &[PlanPart::Measures, PlanPart::Load]).expect("a plan")
}

proptest! {
    #![proptest_config(crate::random::config(24))]

    #[test]
    fn layers_water_stones_and_freeboard_fill_the_tank(shape in 0_usize..9, stones_kg in 0.1_f64..4.0) {
        let draft = draft(shape, stones_kg);
        let design = draft.check().expect("a design");
        let vessel = design.vessel();
        let above = vessel.brimful() - vessel.volume_below(design.water_level());
        let parts = design.bed().volume() + design.water() + design.hardscape() + above;
        prop_assert!((parts / vessel.brimful() - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_deeper_cap_weighs_more_displaces_water_and_lets_less_through(
        shape in 0_usize..9,
        depth_mm in 10.0_f64..60.0,
        more_mm in 1.0_f64..20.0,
    ) {
        let mut thin = draft(shape, 1.0);
        thin.cap.depth = LayerDepth::Uniform(Length::from_mm(depth_mm));
        let mut deep = thin.clone();
        deep.cap.depth = LayerDepth::Uniform(Length::from_mm(depth_mm + more_mm));
        let (thin, deep) = (planned(&thin), planned(&deep));
        let caps = [&thin, &deep].map(|plan| plan.cap.clone().expect("a cap"));
        prop_assert!(caps[1].volume_l > caps[0].volume_l);
        prop_assert!(caps[1].buy_kg > caps[0].buy_kg);
        let weighs = [&thin, &deep].map(|plan| plan.weight.clone().expect("a weight").total_kg);
        prop_assert!(weighs[1] > weighs[0]);
        let holds = [&thin, &deep].map(|plan| plan.tank.clone().expect("a tank").water_l);
        prop_assert!(holds[1] < holds[0]);
        let gives = [&thin, &deep].map(|plan| plan.bed.clone().expect("a bed").release_21_d_g_n_m2);
        prop_assert!(gives[1] < gives[0]);
    }

    #[test]
    fn the_parts_of_the_weight_add_up(shape in 0_usize..9, stones_kg in 0.1_f64..4.0) {
        let weight = planned(&draft(shape, stones_kg)).weight.expect("a weight");
        let parts = weight.shell_kg + weight.soil_kg + weight.cap_kg + weight.hardscape_kg
            + weight.water_kg + weight.stand_kg;
        prop_assert!((parts - weight.total_kg).abs() < 1e-9);
        prop_assert!((weight.hardscape_kg - stones_kg).abs() < 1e-9);
    }
}

/// By hand: the bed's top falls from 24 cm at the back to 4 cm at the front over 25 cm, so
/// that 5 cm of it, over 40 cm, stand above water 20 cm high; from there the water deepens
/// to 16 cm.
#[test]
fn a_bed_that_rises_out_of_the_water_takes_from_its_surface_and_not_from_its_depth() {
    let text = r#"
[tank]
shape = "box"
size = "40 x 25 x 25 cm"
freeboard = "5 cm"
[soil]
material = "loam_topsoil"
depth = "2 cm"
[cap]
material = "filter_sand"
depth = { back = "22 cm", front = "2 cm" }
"#;
    let design = lentic::spec::parse(text).expect("a design");
    assert!((design.surface().cm2() - 800.0).abs() < 1e-6);
    assert!((design.water_depth().cm() - 8.0).abs() < 1e-9);
    assert!((design.water().litres() - 6.4).abs() < 1e-9);
    // The prism above the water: 4 cm at the back, none 5 cm before it, 40 cm long.
    let emerged = design.bed().volume() - design.bed().volume_below(design.water_level());
    assert!((emerged.litres() - 0.4).abs() < 1e-9);
    let tank = planned(design.draft()).tank.expect("a tank");
    assert!((tank.surface_cm2 - 800.0).abs() < 1e-6 && (tank.water_depth_cm - 8.0).abs() < 1e-9);
}

#[test]
fn the_planting_advised_meets_the_load_once_it_is_planted() {
    use lentic::catalogue::{self, Plant, Portion};
    use lentic::design::{Amount, Planting};
    use lentic::units::{Mass, Share};

    for shape in [0, 1, 8] {
        let mut bare = draft(shape, 1.0);
        bare.plants.clear();
        let advised = plan(&bare.clone().check().expect("a design"), CENTRAL).expect("a plan");
        for portion in &advised.planting.needed.portions {
            let plant = catalogue::find::<Plant>(portion.name).expect("a plant");
            let count = f64::from(portion.count);
            let kind = Portion::ALL
                .iter()
                .find(|kind| kind.singular() == portion.portion);
            bare.plants.push(Planting {
                plant,
                amount: kind.map_or(Amount::Fresh(Mass::from_g(count)), |kind| {
                    Amount::Portions(count, *kind)
                }),
                emergent: Share::ZERO,
                price: None,
            });
        }
        let planted = plan(&bare.check().expect("a design"), CENTRAL).expect("a plan");
        let load = planted
            .findings
            .iter()
            .find(|finding| finding.code.text() == "plants.load")
            .expect("the finding");
        assert_eq!(load.status.word(), "ok", "{}", load.says);
    }
}
