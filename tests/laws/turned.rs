//! Laws of one thing turned in any tank: what it may raise and what it may not.

use lentic::catalogue::PlantGroup;
use lentic::design::{Amount, Draft, DutyHours, Feed, FlowDevice, Light, LightLevel, Stock};
use lentic::finding::{Code, Status};
use lentic::geometry::{LayerDepth, Shape};
use lentic::plan::{Options, Partial, PlanPart, partial};
use lentic::source::Band;
use lentic::startup::{Inputs, Parameters, run};
use lentic::units::{Concentration, Flow, Length, Mass, PhotonFlux, Pressure, Share, Temperature};
use lentic::water::{atmosphere, oxygen};
use proptest::prelude::*;

use crate::random::{OPTIONS, config, drawn, parts};

/// What rounding may add, of the value.
const ROUNDING: f64 = 1e-9;
/// What the error of an integration may add, of the value.
const INTEGRATION: f64 = 1e-3;

/// Parts of the plans of a tank as it is and turned; none where it then is no tank.
fn both(as_is: &Draft, turned: Draft, wanted: &[PlanPart]) -> Option<[Partial; 2]> {
    let as_is = as_is.clone().check().ok()?;
    let turned = turned.check().ok()?;
    Some([parts(&as_is, wanted), parts(&turned, wanted)])
}

/// Amounts below this, in any unit of the results, are no more than noise.
const NOISE: f64 = 1e-4;

fn never_less(before: f64, after: f64, slack: f64) -> bool {
    after >= before - slack * before.abs() - NOISE
}

/// The bed with its water in the dark, and nothing that grows, lives, is done or is fed.
fn bare(draft: &Draft) -> Draft {
    Draft {
        plants: Vec::new(),
        animals: Vec::new(),
        events: Vec::new(),
        feed: Feed {
            mass_per_day: Mass::ZERO,
            ..draft.feed
        },
        light: Light {
            hours: 0.0,
            ..draft.light
        },
        ..draft.clone()
    }
}

/// A soil whose grains and pores together are heavier than the water they displace.
fn sinks(draft: &Draft) -> bool {
    let soil = &draft.soil;
    soil.dry_bulk_kg_m3().typical > 1000.0 * (1.0 - soil.porosity().typical)
}

/// The layer with some depth added everywhere.
fn deeper(depth: LayerDepth, by: Length) -> LayerDepth {
    match depth {
        LayerDepth::Uniform(depth) => LayerDepth::Uniform(depth + by),
        LayerDepth::BackToFront { back, front } => LayerDepth::BackToFront {
            back: back + by,
            front: front + by,
        },
        LayerDepth::LeftToRight { left, right } => LayerDepth::LeftToRight {
            left: left + by,
            right: right + by,
        },
        LayerDepth::AllWalls {
            back,
            front,
            left,
            right,
        } => LayerDepth::AllWalls {
            back: back + by,
            front: front + by,
            left: left + by,
            right: right + by,
        },
    }
}

fn standing(plan: &Partial, code: Code) -> Option<Status> {
    let mut found = plan.standing.iter().filter(|(of, _)| *of == code);
    found.next().map(|(_, status)| *status)
}

/// The peak of ammonia where no bacteria take it; none where the draft is no tank.
fn untaken_peak(draft: Draft) -> Option<f64> {
    let design = draft.check().ok()?;
    let mut numbers = Parameters::<Band>::of(&design).central();
    numbers.nitrifiers.ammonia_seed = 0.0;
    numbers.nitrifiers.plant_seed = 0.0;
    let course = run(&Inputs::of(&design), &numbers, OPTIONS.days).expect("a run");
    Some(course.peak_from(0.0, |sample| sample.state.ammonia).value)
}

fn dawn_oxygen(plan: Partial) -> f64 {
    plan.night.expect("a night").dawn_oxygen_mg_l.typical()
}

/// Sizes of a cap's own grading, all of them times a factor.
fn coarser(draft: &Draft, times: f64) -> Draft {
    let mut turned = draft.clone();
    let cap = &draft.cap;
    let size = |mm: f64| Some(Length::from_mm(mm * times));
    turned.cap.grading.d10 = size(cap.d10_mm().typical);
    turned.cap.grading.d15 = size(cap.d15_mm().typical);
    turned.cap.grading.d50 = size(cap.d50_mm().typical);
    turned.cap.grading.d85 = size(cap.d85_mm().typical);
    turned
}

proptest! {
    #![proptest_config(config(150))]

    /// Of a bed that nothing stirs: what is stirred up at once does not follow by itself.
    /// And under water that brings no ammonium, of which a bed takes some.
    #[test]
    fn a_deeper_cap_is_never_less_sand_bags_or_weight_and_lets_no_more_ammonium_through(
        drawn in drawn(),
        mm in 0.1_f64..40.0,
    ) {
        let mut draft = bare(&drawn.draft());
        draft.water.ammonia = Concentration::ZERO;
        let mut turned = draft.clone();
        turned.cap.depth = deeper(draft.cap.depth, Length::from_mm(mm));
        let Some([thin, deep]) = both(&draft, turned, &[PlanPart::Measures, PlanPart::Load]) else {
            return Err(TestCaseError::reject("no tank"));
        };
        let [thin_cap, deep_cap] = [&thin, &deep].map(|plan| plan.cap.clone().expect("a cap"));
        prop_assert!(never_less(thin_cap.volume_l, deep_cap.volume_l, ROUNDING));
        prop_assert!(never_less(thin_cap.buy_kg, deep_cap.buy_kg, ROUNDING));
        prop_assert!(never_less(thin_cap.cost.unwrap_or(0.0), deep_cap.cost.unwrap_or(0.0), ROUNDING));
        let [light, heavy] = [&thin, &deep].map(|plan| plan.weight.clone().expect("a weight"));
        prop_assert!(never_less(light.total_kg, heavy.total_kg, ROUNDING));
        let given_off = |plan: &Partial| plan.bed.clone().expect("a bed").release_21_d_g_n_m2;
        let [more, less] = [&thin, &deep].map(given_off);
        prop_assert!(never_less(less, more, INTEGRATION), "{more} {less}");
    }

    /// Of a soil that floats, as keepers' own figures may have it, more weighs less than
    /// the water it displaces. In a bowl, and at the rim, more soil leaves less room for
    /// the heavier cap.
    #[test]
    fn a_deeper_soil_that_sinks_is_never_less_soil_bags_or_weight(drawn in drawn(), mm in 0.1_f64..40.0) {
        let draft = drawn.draft();
        prop_assume!(sinks(&draft) && !matches!(draft.tank.shape, Shape::Bowl { .. }));
        let mut turned = draft.clone();
        turned.soil.depth = deeper(draft.soil.depth, Length::from_mm(mm));
        let reaches_rim = |draft: &Draft| draft.clone().check().is_ok_and(|design| design.bed().meets_rim());
        prop_assume!(!reaches_rim(&turned));
        let Some([thin, deep]) = both(&draft, turned, &[PlanPart::Measures]) else {
            return Err(TestCaseError::reject("no tank"));
        };
        let [thin_soil, deep_soil] = [&thin, &deep].map(|plan| plan.soil.clone().expect("a soil"));
        prop_assert!(never_less(thin_soil.volume_l, deep_soil.volume_l, ROUNDING));
        prop_assert!(never_less(thin_soil.buy_l, deep_soil.buy_l, ROUNDING));
        prop_assert!(never_less(thin_soil.cost.unwrap_or(0.0), deep_soil.cost.unwrap_or(0.0), ROUNDING));
        let [light, heavy] = [&thin, &deep].map(|plan| plan.weight.clone().expect("a weight"));
        prop_assert!(never_less(light.total_kg, heavy.total_kg, ROUNDING));
    }

    #[test]
    fn a_coarser_cap_never_holds_soil_or_gas_better_and_never_breathes_worse(
        drawn in drawn(),
        times in 1.0_f64..8.0,
    ) {
        let draft = drawn.draft();
        let fine = coarser(&draft, 1.0);
        let Some([fine, coarse]) = both(&fine, coarser(&draft, times), &[PlanPart::Measures, PlanPart::Load]) else {
            return Err(TestCaseError::reject("no tank"));
        };
        prop_assert!(standing(&coarse, Code::CapCoarse) >= standing(&fine, Code::CapCoarse));
        prop_assert!(standing(&coarse, Code::CapFine) <= standing(&fine, Code::CapFine));
        let [fine, coarse] = [fine, coarse].map(|plan| plan.bed.expect("a bed").entry_over_overburden);
        prop_assert!(never_less(coarse, fine, ROUNDING));
    }

    /// Stems under them are left out: floaters shade what grows below.
    #[test]
    fn more_floaters_of_the_same_kinds_never_lower_the_index_of_floaters_alone(drawn in drawn(), times in 1.0_f64..4.0) {
        let draft = drawn.draft();
        let mut draft = draft;
        draft.plants.retain(|planting| planting.plant.group == PlantGroup::Floater);
        let mut turned = draft.clone();
        for planting in &mut turned.plants {
            planting.amount = match planting.amount {
                Amount::Cover(share) => Amount::Cover(Share::from_fraction(share.fraction() * times)),
                Amount::Fresh(mass) => Amount::Fresh(mass * times),
                Amount::Portions(count, portion) => Amount::Portions(count * times, portion),
            };
        }
        let Some(plans) = both(&draft, turned, &[PlanPart::Load]) else {
            return Err(TestCaseError::reject("no tank"));
        };
        let [few, many] = plans.map(|plan| plan.planting.expect("a planting").index.expect("an index"));
        prop_assert!(never_less(few, many, ROUNDING), "{few} {many}");
    }

    /// In all, with what filling stirs up: that goes to the water at once, and against it
    /// less follows by itself.
    #[test]
    fn one_more_soaking_never_raises_what_an_undisturbed_bed_gives_off(drawn in drawn()) {
        let draft = bare(&drawn.draft());
        let mut turned = draft.clone();
        turned.soil.soaked += 1;
        let Some(plans) = both(&draft, turned, &[PlanPart::Load]) else {
            return Err(TestCaseError::reject("no tank"));
        };
        let [dry, soaked] = plans.map(|plan| plan.bed.expect("a bed"));
        prop_assert!(never_less(soaked.release_21_d_g_n_m2, dry.release_21_d_g_n_m2, INTEGRATION));
    }
}

proptest! {
    #![proptest_config(config(24))]

    /// Where nothing takes it: bacteria that found less to grow on are slower to take what
    /// comes later.
    #[test]
    fn one_more_soaking_never_raises_ammonia_that_nothing_takes(drawn in drawn()) {
        let draft = bare(&drawn.draft());
        let mut turned = draft.clone();
        turned.soil.soaked += 1;
        let [dry, soaked] = [draft, turned].map(|draft| untaken_peak(draft).expect("a tank"));
        prop_assert!(never_less(soaked, dry, INTEGRATION), "{dry} {soaked}");
    }

    /// Where nothing takes it, for the same reason; and deeper water lets less light down to
    /// plants.
    #[test]
    fn more_water_over_the_same_bed_never_raises_ammonia_that_nothing_takes(
        drawn in drawn(),
        cm in 0.5_f64..20.0,
    ) {
        let draft = bare(&drawn.draft());
        let mut turned = draft.clone();
        turned.tank.freeboard = draft.tank.freeboard + Length::from_cm(cm);
        let (Some(much), Some(little)) = (untaken_peak(draft), untaken_peak(turned)) else {
            return Err(TestCaseError::reject("no tank"));
        };
        prop_assert!(never_less(much, little, INTEGRATION), "{little} {much}");
    }

    /// In the light air may lower it: it carries off what plants have made too much of.
    #[test]
    fn more_air_never_lowers_dawn_oxygen_where_no_light_falls(drawn in drawn(), l_min in 0.1_f64..20.0, times in 1.0_f64..5.0) {
        let draft = drawn.draft();
        let air = |times: f64| {
            let mut turned = draft.clone();
            turned.air.device = FlowDevice::AirStone;
            turned.air.flow = Flow::from_l_min(l_min * times);
            turned.air.depth = Length::from_cm(5.0);
            turned.air.hours = DutyHours::Always;
            turned.light.hours = 0.0;
            turned
        };
        let Some(plans) = both(&air(1.0), air(times), &[PlanPart::Night]) else {
            return Err(TestCaseError::reject("no tank"));
        };
        let [little, much] = plans.map(dawn_oxygen);
        prop_assert!(never_less(little, much, INTEGRATION), "{little} {much}");
    }

    /// In the light they may raise it: plants grow on what they give off.
    #[test]
    fn more_animals_never_raise_dawn_oxygen_where_no_light_falls(drawn in drawn(), count in 1_u32..200) {
        let mut draft = drawn.draft();
        draft.light.hours = 0.0;
        let animal = lentic::catalogue::animals().first().expect("an animal");
        let mut turned = draft.clone();
        turned.animals.push(Stock { animal, count, from_day: 0.0 });
        let Some(plans) = both(&draft, turned, &[PlanPart::Night]) else {
            return Err(TestCaseError::reject("no tank"));
        };
        let [few, many] = plans.map(dawn_oxygen);
        prop_assert!(never_less(many, few, INTEGRATION), "{few} {many}");
    }

    #[test]
    fn dirtier_tap_water_never_raises_the_index(drawn in drawn(), more in 0.1_f64..5.0) {
        let draft = drawn.draft();
        let mut turned = draft.clone();
        turned.water.ammonia = draft.water.ammonia + Concentration::from_mg_l(more);
        turned.water.nitrite = draft.water.nitrite + Concentration::from_mg_l(more);
        turned.water.nitrate = draft.water.nitrate + Concentration::from_mg_l(more);
        let Some(plans) = both(&draft, turned, &[PlanPart::Load]) else {
            return Err(TestCaseError::reject("no tank"));
        };
        let [clean, dirty] = plans.map(|plan| plan.planting.and_then(|planting| planting.index));
        prop_assert!(clean.is_some());
        prop_assert!(dirty <= clean, "{clean:?} {dirty:?}");
    }

    /// On the day of filling: later on plants and algae have grown in it and shade what
    /// lies below.
    #[test]
    fn a_longer_or_brighter_lamp_never_gives_less_light_at_first(
        drawn in drawn(),
        times in 1.0_f64..4.0,
        more_h in 0.0_f64..12.0,
    ) {
        let mut draft = drawn.draft();
        let light = |draft: &Draft| {
            let design = draft.clone().check().expect("a design");
            let filling = Options { days: 0, ..OPTIONS };
            let night = partial(&design, filling, &[PlanPart::Night]).expect("a night");
            night.light.expect("light").daily_mol_m2.typical()
        };
        let dim = light(&draft);
        let par = match draft.light.level {
            LightLevel::Par(par) => par.umol_m2_s(),
            // What is assumed of a lamp without figures.
            _ => 60.0,
        };
        draft.light.level = LightLevel::Par(PhotonFlux::from_umol_m2_s(par * times));
        draft.light.hours = (draft.light.hours + more_h).min(24.0);
        let bright = light(&draft);
        prop_assert!(never_less(dim, bright, INTEGRATION), "{dim} {bright}");
    }
}

proptest! {
    #![proptest_config(config(500))]

    #[test]
    fn warmer_water_or_thinner_air_holds_no_more_oxygen(
        celsius in 0.0_f64..40.0,
        warmer in 0.0_f64..40.0,
        metres in 0.0_f64..9000.0,
        higher in 0.0_f64..9000.0,
    ) {
        let holds = |celsius: f64, pressure: Pressure| {
            oxygen::saturation(Temperature::from_celsius(celsius), pressure).mg_l()
        };
        let air = |metres: f64| atmosphere::pressure_at(Length::from_m(metres));
        let as_is = holds(celsius, air(metres));
        prop_assert!(never_less(holds((celsius + warmer).min(40.0), air(metres)), as_is, ROUNDING));
        prop_assert!(never_less(holds(celsius, air((metres + higher).min(9000.0))), as_is, ROUNDING));
    }
}
