//! That no remedy asks for what a keeper cannot or must not do.

use lentic::design::Design;
use lentic::diagnosis::case::CaseHistory;
use lentic::diagnosis::cause::Cause;
use lentic::diagnosis::dawn::Dawn;
use lentic::diagnosis::estimate::TankEstimate;
use lentic::diagnosis::hypotheses::Hypotheses;
use lentic::diagnosis::remedy::{CauseRemedy, Treatment, treat};
use lentic::diagnosis::weighing::Weighing;
use lentic::diagnosis::{MEMBERS, Measurand, Measurement, Reported, diagnose};
use lentic::plan::Options;
use lentic::startup::ModelEventKind;
use rayon::prelude::*;

use crate::diagnosis::{DEMOS, ENOUGH_PLANTS, check, demo, sixty};

/// Members that are enough to reach a remedy.
const FEW: Options = Options {
    members: 8,
    seed: 1,
    days: 90,
};

fn demos() -> Vec<(String, Design)> {
    let folder = std::fs::read_dir(DEMOS).expect("demo tanks");
    folder
        .map(|entry| entry.expect("a file").path())
        .map(|path| {
            path.file_stem()
                .expect("a name")
                .to_string_lossy()
                .into_owned()
        })
        .map(|name| (name.clone(), demo(&name)))
        .collect()
}

/// What is done about the three likeliest causes of a tank.
fn treatments(design: &Design) -> Vec<Treatment> {
    let case = CaseHistory::of(design, &[]).expect("a case");
    let hypotheses = Hypotheses::of(&case, FEW).expect("courses");
    let weighing = Weighing::of(&case, &hypotheses, Dawn::of(&case, 1).ok());
    let ranked = weighing.posterior.ranked();
    let likely = ranked.iter().take(3).map(|(cause, _)| *cause);
    likely
        .map(|cause| {
            let estimate = TankEstimate::of(&case, &hypotheses, cause);
            treat(&case, &estimate, None).expect("a treatment")
        })
        .collect()
}

/// Days from now with the litres that are changed on each.
fn litres_a_day(design: &Design, treatment: &Treatment) -> Vec<f64> {
    let mut days = vec![0.0; 30];
    for event in &treatment.tank.inputs.events {
        let after = event.day - treatment.estimate.now_d;
        if let (ModelEventKind::WaterChange(share), true) = (event.kind, after > 0.0) {
            days[after as usize] += share.fraction() * design.water().litres();
        }
    }
    days
}

/// Half the water a day, twice that on the first, and daily for a week beside the first
/// two: common practice, no source.
#[test]
fn no_demo_tank_is_asked_for_more_water_than_a_keeper_changes() {
    demos().par_iter().for_each(|(name, design)| {
        let water = design.water().litres();
        for treatment in treatments(design) {
            let days = litres_a_day(design, &treatment);
            for (day, litres) in days.iter().enumerate() {
                let most = if day < 1 { 1.0 } else { 0.5 };
                assert!(
                    *litres <= most * water + 1e-9,
                    "{name}, day {day}: {litres} L"
                );
            }
            let longest = days.split(|litres| *litres <= 0.0).map(<[f64]>::len).max();
            assert!(longest <= Some(9), "{name}: {days:?}");
            let says = &treatment.remedy.says;
            assert!(
                !says.contains("leave it alone") || !says.contains("of the water"),
                "{name}: {says}"
            );
            assert!(!says.contains(" 1 more days"), "{name}: {says}");
            let stocked = CaseHistory::of(design, &[]).expect("a case").is_stocked();
            assert!(
                !stocked || !says.contains("keep animals out"),
                "{name}: {says}"
            );
        }
    });
}

const FISH: &str = "[[animals]]\nname = 'small_fish'\ncount = 8\nfrom_day = 20\n";

fn remedy(design: &Design, cause: Cause) -> CauseRemedy {
    let found = check(design);
    let result = found.causes.iter().find(|result| result.cause == cause);
    let remedy = result.and_then(|result| result.remedy.clone());
    remedy.expect("a likely cause")
}

/// Common practice, no source.
#[test]
fn animals_that_gasp_in_nitrite_are_moved_and_not_aired_alone() {
    let says = |nitrite: &str, air: &str| {
        let rest = format!(
            "{ENOUGH_PLANTS}{FISH}{air}[[readings]]\nday = 30\nammonia = '0 mg/L'\nnitrite = '{nitrite} mg/L'\n\
             [signs]\nobserved = ['gasping_all_day']\n"
        );
        check(&sixty("garden_soil", "filter_sand", &rest))
            .next_step
            .says
    };
    let aired = says(
        "5",
        "[air]\ndevice = 'sponge_filter'\nflow = '2 L/min'\ndepth = '20 cm'\n",
    );
    assert!(
        aired.contains("nitrite keeps the blood") && aired.contains("move them today"),
        "{aired}"
    );
    assert!(
        aired.contains("does not cure") && aired.contains(" L) of the water"),
        "{aired}"
    );
    assert!(
        !aired.contains("run an air stone") && !aired.contains("lid"),
        "{aired}"
    );
    let clean = says("0", "");
    assert!(
        clean.contains("animals gasp") && clean.contains("run an air stone"),
        "{clean}"
    );
    assert!(!clean.contains("blood"), "{clean}");
}

#[test]
fn a_reading_in_doubt_changes_no_water() {
    let rest = format!(
        "{ENOUGH_PLANTS}[[readings]]\nday = 80\nammonia = '0 mg/L'\nnitrite = '0 mg/L'\nnitrate = '160 mg/L'\n\
         [signs]\nobserved = ['tests_disagree']\n"
    );
    let says = remedy(
        &sixty("loam_topsoil", "filter_sand", &rest),
        Cause::KitError,
    )
    .says;
    assert!(
        says.contains("change nothing") && !says.contains("of the water"),
        "{says}"
    );
}

#[test]
fn water_that_brings_it_is_not_changed_for_the_same() {
    let says = remedy(&demo("forty-from-the-tap"), Cause::TapWater).says;
    assert!(says.contains("% of rain or demineralised water"), "{says}");
    assert!(!says.contains("with tap water"), "{says}");
}

/// Common practice, no source.
#[test]
fn a_bed_that_smells_is_not_prodded() {
    let rest = format!(
        "{ENOUGH_PLANTS}{FISH}[[readings]]\nday = 80\nammonia = '0 mg/L'\nnitrite = '0 mg/L'\n\
         [signs]\nobserved = ['sulfide_smell', 'black_bed', 'craters']\n"
    );
    let says = remedy(
        &sixty("organic_potting_mix", "play_sand", &rest),
        Cause::CapFine,
    )
    .says;
    assert!(
        says.starts_with("move the animals out and run air"),
        "{says}"
    );
    assert!(!says.contains("thin rod"), "{says}");
}

#[test]
fn an_empty_tank_that_comes_right_is_waited_for_before_it_is_torn_down() {
    let asked = Options {
        members: MEMBERS,
        ..FEW
    };
    let found = diagnose(&demo("charged-mix"), &[], asked).expect("a diagnosis");
    let says = &found.next_step.says;
    let (wait, anew) = (says.find("test once a week"), says.find("start again"));
    assert!(wait.is_some() && wait < anew, "{says}");
    let ready = found.ready_day.expect("a day").typical.round();
    assert!(says.contains(&format!("from about day {ready}")), "{says}");
}

#[test]
fn a_standing_tank_is_not_told_of_day_one() {
    let found = check(&demo("slow-growers-only"));
    let remedies = found
        .findings
        .iter()
        .filter_map(|finding| finding.remedy.as_ref());
    let says: Vec<&str> = remedies.map(|remedy| remedy.says.as_str()).collect();
    assert!(says.iter().any(|says| says.contains(" now ")), "{says:?}");
    for says in says {
        assert!(
            !says.contains("day one") && !says.contains("soak"),
            "{says}"
        );
    }
}

#[test]
fn a_reading_beyond_the_card_is_said_to_be_over_it() {
    let design = sixty(
        "garden_soil",
        "filter_sand",
        &format!("{ENOUGH_PLANTS}{FISH}"),
    );
    let beyond = Measurement {
        day: 30.0,
        of: Measurand::Ammonia,
        value: Reported::Above(6.2),
    };
    let found = diagnose(&design, &[beyond], FEW).expect("a diagnosis");
    assert!(
        found.next_step.says.contains("over 6.2 mg N/L"),
        "{}",
        found.next_step.says
    );
}

/// A dead fish follows from a flush as often as it brings one: common practice, no source.
#[test]
fn a_death_in_a_young_bare_tank_is_laid_to_its_age_and_planting() {
    let rest = "[[plants]]\nname = 'hygrophila_polysperma'\namount = '2 bunches'\n\
        [[animals]]\nname = 'small_fish'\ncount = 8\nfrom_day = 7\n\
        [[readings]]\nday = 19\nammonia = '4 mg/L'\nnitrite = '5 mg/L'\n\
        [signs]\nobserved = ['dead_animal']\n";
    let found = check(&sixty("organic_potting_mix", "filter_sand", rest));
    let first: Vec<Cause> = found
        .causes
        .iter()
        .take(3)
        .map(|result| result.cause)
        .collect();
    assert!(
        first.contains(&Cause::TankYoung) || first.contains(&Cause::FewPlants),
        "{:?}",
        found
            .causes
            .iter()
            .take(4)
            .map(|result| (result.cause, result.probability))
            .collect::<Vec<_>>()
    );
    assert_ne!(first[0], Cause::DeadMatter);
}
