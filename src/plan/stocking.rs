//! Animals in steps, each after two clean tests; and the habits of the weeks after.

use jiff::ToSpan;
use serde::Serialize;

use super::flush::AnimalDay;
use super::night::HeatSection;
use crate::design::{Design, FlowDevice, Stock};
use crate::result::results;
use crate::units::Volume;
use crate::units::show::significant;

/// Days from one step to the next, and from the first of two clean tests to the second:
/// practice.
const BETWEEN_STEPS: f64 = 14.0;
const BETWEEN_TESTS: f64 = 7.0;
/// Share of the planned mass that one step brings at most: practice.
const STEP_SHARE: f64 = 1.0 / 3.0;
/// A mass that rounding alone brings over the step counts as within it.
const ROUNDING: f64 = 1e-9;

results! {
    /// Animals that move in together.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct StockingStep {
        /// the day, after flooding
        pub day: f64 => "plan.stocking",
        /// its date; null where the spec has no start
        pub date: Option<String> => "plan.stocking",
        /// the kind, by its name in lentic list animals
        pub name: &'static str => Spec,
        /// how many of it
        pub count: u32 => "plan.stocking",
        /// their fresh mass
        pub load_g: f64 => "plan.stocking",
        /// the clean tests before, the second on the day itself
        pub tests: Vec<StockingTest> => "plan.stocking",
    }

    /// A test that has to be clean.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct StockingTest {
        /// the day, after flooding
        pub day: f64 => "plan.stocking",
    }
}

/// The planned animals: those that bear most first, then by their load, not before each
/// may move in or is planned to.
pub(super) fn steps(design: &Design, from: &[AnimalDay]) -> Vec<StockingStep> {
    let stock = &design.draft().animals;
    let whole_g: f64 = stock.iter().map(|kind| kind.mass().g()).sum();
    let mut kinds: Vec<(&Stock, f64)> = stock
        .iter()
        .filter(|kind| kind.count > 0)
        .filter_map(|kind| {
            let day = from.iter().find(|one| one.name == kind.animal.name)?.day;
            Some((kind, day.max(kind.from_day).ceil()))
        })
        .collect();
    kinds.sort_by(|(one, _), (other, _)| {
        let hardy = other.animal.is_hardy().cmp(&one.animal.is_hardy());
        hardy.then(one.mass().g().total_cmp(&other.mass().g()))
    });
    let mut steps = Vec::new();
    let mut next = 0.0_f64;
    for (kind, from_day) in kinds {
        let each_g = kind.animal.mass_g.typical;
        let fits = (whole_g * STEP_SHARE / each_g + ROUNDING).floor().max(1.0) as u32;
        let mut left = kind.count;
        while left > 0 {
            let count = left.min(fits);
            let day = next.max(from_day);
            steps.push(StockingStep {
                day,
                date: date(design, day),
                name: &kind.animal.name,
                count,
                load_g: each_g * f64::from(count),
                tests: [day - BETWEEN_TESTS, day]
                    .map(|day| StockingTest { day })
                    .to_vec(),
            });
            left -= count;
            next = day + BETWEEN_STEPS;
        }
    }
    steps
}

fn date(design: &Design, day: f64) -> Option<String> {
    let start = design.draft().start?;
    let date = start.checked_add((day as i32).days()).ok()?;
    Some(date.to_string())
}

/// What is done week by week once the tank has grown in.
pub(super) fn habits(design: &Design, heat: &HeatSection) -> Vec<String> {
    let draft = design.draft();
    let mut habits = vec![format!(
        "thin floaters back to {} % of the surface, and trim stems before they fill the water, a third at most at once",
        significant(draft.harvest.floaters_above.percent(), 2)
    )];
    if heat.evaporation_l_per_week > 0.0 {
        let water = Volume::from_litres(heat.evaporation_l_per_week);
        habits.push(format!(
            "top up {}; with tap water alone hardness creeps up",
            draft.units.volume(water)
        ));
    }
    let fed = draft.feed.mass_per_day;
    if fed.mg() > 0.0 {
        habits.push(format!(
            "feed {} mg a day, less where any is left lying",
            significant(fed.mg(), 2)
        ));
    }
    habits.push("test nitrate, and every month hardness and alkalinity".to_owned());
    if matches!(
        draft.air.device,
        FlowDevice::SpongeFilter | FlowDevice::Pump
    ) {
        habits.push(
            "every four to eight weeks rinse half the sponge in a bucket of tank water, never under the tap"
                .to_owned(),
        );
    }
    habits
}
