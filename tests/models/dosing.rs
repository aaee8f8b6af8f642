//! Doses worked out by hand for a tank of 26.8 L whose plants make 1.2 g of dry tissue a
//! week: 30 mg of nitrogen and of potassium, 3.6 mg of phosphorus, 3 mg of magnesium. Masses
//! by the atomic weights of IUPAC (abridged, 2021), nitrate limits after Camargo 2005.

use lentic::design::{Design, Draft};
use lentic::dosing::{Dose, Dosing, Hunger, Nutrients, Readings, Refusal, dosing};
use lentic::spec;
use lentic::startup::ensemble::central;
use lentic::startup::{Inputs, Parameters, Sample};
use lentic::units::Concentration;

use crate::compare::Within::{Absolute, Relative};
use crate::compare::check;

/// Salts are 98 % pure; the figures below are of pure salts.
const PURITY: f64 = 0.98;

fn pale(change: impl Fn(&mut Draft)) -> Design {
    let text = std::fs::read_to_string("demo-tanks/pale-in-the-second-year.toml").unwrap();
    let mut draft = spec::parse(&text).unwrap().into_draft();
    // so soft that magnesium is wanted
    draft.water.magnesium = Some(Concentration::ZERO);
    change(&mut draft);
    draft.check().unwrap()
}

fn given(design: &Design, need: Nutrients) -> Result<Dosing, Refusal> {
    dosing(&Hunger {
        design,
        need,
        readings: Readings::of(design, None),
    })
}

fn of<'a>(given: &'a Dosing, salt: &str) -> &'a Dose {
    let found = given.dosing.iter().find(|dose| dose.salt == salt);
    found.unwrap_or_else(|| panic!("no {salt} in {given:?}"))
}

#[test]
fn the_pale_tank_is_fed_as_reckoned_by_hand() {
    let design = pale(|_| {});
    check("litres", design.water().litres(), 26.8, Absolute(0.05));
    let given = given(&design, Nutrients::of_growth(1.2)).unwrap();
    for (salt, pure_mg) in [
        // 30 / 0.3867, all the potassium
        ("potassium nitrate", 78.0),
        // 3.6 / 0.2276
        ("monopotassium phosphate", 16.0),
        // 3 / 0.0986
        ("Epsom salt", 30.0),
    ] {
        let found = of(&given, salt).salt_mg_per_week * PURITY;
        check(salt, found, pure_mg, Absolute(0.5));
    }
    let nitrate = of(&given, "potassium nitrate");
    assert_eq!(nitrate.capped_by, Some("potassium"));
    check("need", nitrate.need_mg_per_week, 30.0, Relative(1e-9));
    // 0.05 mg/L of 26.8 L out of 0.11, twice
    let iron = of(&given, "iron chelate");
    check(
        "iron",
        iron.dose_ml * iron.stock_g_per_l,
        12.0,
        Absolute(0.3),
    );
    assert_eq!(iron.doses_per_week, 2);
    // 0.5 mg/L of 26.8 L; half of 30 mg for 13 weeks
    let zone = given.root_zone.unwrap();
    check("spot", zone.nitrogen_mg, 13.4, Absolute(0.05));
    assert_eq!(zone.spots, 15);
    check("grid", zone.grid_cm, 9.0, Absolute(0.5));
}

/// 30 - 10.7 mg of nitrogen a week at 45 % protein, 16 % of that nitrogen, a fifth kept.
#[test]
fn animals_are_fed_for_the_rest_of_the_nitrogen() {
    let text = std::fs::read_to_string("demo-tanks/pale-in-the-second-year.toml").unwrap();
    let spec = format!("{text}\n[[animals]]\nname = \"small_fish\"\ncount = 5\n");
    let design = spec::parse(&spec).unwrap();
    let given = given(&design, Nutrients::of_growth(1.2)).unwrap();
    let feed = of(&given, "potassium nitrate").feed_instead_mg.unwrap();
    check("feed", feed, 48.0, Absolute(0.5));
}

/// All 30 mg of nitrogen as potassium nitrate would bring 83.8 mg of potassium, 53.8 more
/// than is taken: by the scarcer ion none is left over but the phosphate's 4.5 mg, which a
/// quarter of the water a week holds at 4.5 / (0.25 x 26.8) = 0.68 mg/L above the tap's 2.
#[test]
fn potassium_settles_where_changes_hold_it() {
    let changed = |draft: &mut Draft| {
        let line = "[water]\nchange = { share = \"25 %\", every = \"7 d\" }\n";
        let tank = "[tank]\nsize = \"30 x 30 x 30 cm\"\n[soil]\nmaterial = \"loam_topsoil\"\ndepth = \"20 mm\"\n[cap]\nmaterial = \"filter_sand\"\ndepth = \"40 mm\"\n";
        draft.water.change = spec::parse_draft(&format!("{tank}{line}"), "")
            .unwrap()
            .water
            .change;
        draft.water.potassium = Some(Concentration::from_mg_l(2.0));
    };
    let held = given(&pale(changed), Nutrients::of_growth(1.2)).unwrap();
    let steady = of(&held, "potassium nitrate")
        .potassium_steady_mg_l
        .unwrap();
    check("steady", steady, 2.68, Absolute(0.02));
    let rising = given(&pale(|_| {}), Nutrients::of_growth(1.2)).unwrap();
    assert_eq!(of(&rising, "potassium nitrate").potassium_steady_mg_l, None);
}

/// What is done to a tank, and the word of its refusal.
type Case = (fn(&mut Draft), &'static str);

#[test]
fn nothing_is_given_over_a_limit_on_a_guess_or_on_an_old_reading() {
    let mg = |mg_l| Some(Concentration::from_mg_l(mg_l));
    let need = Nutrients::of_growth(1.2);
    let cases: [Case; 4] = [
        (
            |draft| draft.readings[0].ammonia = Some(Concentration::from_mg_l(0.5)),
            "ammonia",
        ),
        (
            |draft| draft.readings[0].nitrite = Some(Concentration::from_mg_l(0.4)),
            "nitrite",
        ),
        (
            |draft| draft.readings[0].nitrate = None,
            "test nitrate first",
        ),
        (|draft| draft.readings.clear(), "test nitrate first"),
    ];
    for (change, says) in cases {
        let refusal = given(&pale(change), need).unwrap_err().to_string();
        assert!(refusal.contains(says), "{refusal}");
    }
    let design = pale(|_| {});
    for (today, is_given) in [(427.0, true), (428.0, false)] {
        let readings = Readings::of(&design, Some(today));
        let found = dosing(&Hunger {
            design: &design,
            need,
            readings,
        });
        assert_eq!(found.is_ok(), is_given, "{today}");
    }
    let fed = given(&pale(|draft| draft.readings[0].nitrate = mg(2.0)), need).unwrap();
    assert!(
        fed.dosing
            .iter()
            .all(|dose| dose.salt != "potassium nitrate")
    );
    assert_eq!(fed.root_zone, None);
    let unread = given(&pale(|draft| draft.readings[0].phosphate = None), need).unwrap();
    assert!(
        unread
            .dosing
            .iter()
            .all(|dose| dose.salt != "monopotassium phosphate")
    );
}

/// Whatever is needed, no dose raises an ion by more than a dose may, none brings one over
/// what it may stand at, and none is given beside an ion that stands at its upper aim.
#[test]
fn no_dose_passes_a_limit() {
    // content of nitrate, phosphate, potassium and magnesium in a milligram of pure salt
    let salts = [
        ("potassium nitrate", [0.6133, 0.0, 0.3867, 0.0]),
        ("potassium sulfate", [0.0, 0.0, 0.4488, 0.0]),
        ("monopotassium phosphate", [0.0, 0.6979, 0.2873, 0.0]),
        ("Epsom salt", [0.0, 0.0, 0.0, 0.0986]),
    ];
    let limits = [5.0, 0.3, 3.0, 3.0];
    let mut doses = 0;
    for growth in [0.01, 1.2, 30.0, 1e4] {
        for potassium in [0.0, 1.0, 7.9, 8.0, 12.0] {
            let design = pale(|draft| {
                draft.readings[0].potassium = Some(Concentration::from_mg_l(potassium));
            });
            let given = given(&design, Nutrients::of_growth(growth)).unwrap();
            for dose in &given.dosing {
                let Some((_, contents)) = salts.iter().find(|(name, _)| *name == dose.salt) else {
                    assert_eq!(dose.salt, "iron chelate");
                    continue;
                };
                doses += 1;
                let pure_mg = dose.dose_ml * dose.stock_g_per_l * PURITY;
                for (content, limit) in contents.iter().zip(limits) {
                    let rise = content * pure_mg / design.water().litres();
                    assert!(rise <= limit * 1.001, "{dose:?}");
                    if *content > 0.0 && limit.total_cmp(&3.0).is_eq() && contents[3] <= 0.0 {
                        assert!(rise <= 0.0 || potassium + rise <= 10.01, "{dose:?}");
                        assert!(rise <= 0.0 || potassium < 8.0, "{dose:?}");
                    }
                }
                assert!(dose.doses_per_week <= 7, "{dose:?}");
            }
        }
    }
    assert!(doses > 30, "{doses}");
}

#[test]
fn nitrogen_is_not_laid_where_something_digs_or_the_bed_is_thin() {
    let text = std::fs::read_to_string("demo-tanks/pale-in-the-second-year.toml").unwrap();
    let need = Nutrients::of_growth(1.2);
    let dug = format!("{text}\n[[animals]]\nname = \"burrowing_snail\"\ncount = 3\n");
    assert_eq!(
        given(&spec::parse(&dug).unwrap(), need).unwrap().root_zone,
        None
    );
    let thin = text.replace("depth = \"40 mm\"", "depth = \"25 mm\"");
    assert_eq!(
        given(&spec::parse(&thin).unwrap(), need).unwrap().root_zone,
        None
    );
}

/// 0.2 g of potassium nitrate, 98 % of it pure with 13.85 % nitrogen, are 27.15 mg of it; 50 mg
/// of pure monopotassium phosphate, 22.76 % phosphorus, 11.38 mg.
#[test]
fn a_salt_that_was_put_in_is_in_the_water() {
    let floor_m2 = pale(|_| {}).bed().area().m2();
    let without = last("");
    let nitrate = last("dosed = { salt = \"potassium nitrate\", mass = \"0.2 g\" }");
    let nitrogen_mg = (nitrate.state.added_n - without.state.added_n) * floor_m2 * 1e3;
    check("nitrogen", nitrogen_mg, 27.15, Absolute(0.01));
    assert!(nitrate.state.nitrate > without.state.nitrate);
    let phosphate = last(
        "dosed = { salt = \"Monopotassium phosphate\", mass = \"50 mg\", purity = \"100 %\" }",
    );
    let phosphorus_mg = (phosphate.state.added_p - without.state.added_p) * floor_m2 * 1e3;
    check("phosphorus", phosphorus_mg, 11.38, Absolute(0.01));
    assert!(phosphate.state.phosphate > without.state.phosphate);
}

/// A day's food of 300 mg with 45 % protein, a sixth of that nitrogen, in a tank that is not
/// fed otherwise; and nothing is fed while nobody is there.
#[test]
fn food_is_given_on_the_day_and_none_while_nobody_is_there() {
    let fed = [run("fed = \"300 mg\"", 3), run("", 3)];
    let [fed, unfed] = fed.map(|days| days.last().unwrap().state.added_n);
    let mg = 300.0 * 0.45 * 0.16;
    // less what animals would retain of faeces, at most 0.4 x 0.068 of 0.16
    let more_mg = (fed - unfed) * pale(|_| {}).bed().area().m2() * 1e3;
    assert!((0.8 * mg..=mg).contains(&more_mg), "{more_mg} of {mg}");
    let stock = "away = \"2 d\"\n[[animals]]\nname = \"small_fish\"\ncount = 5\nfrom_day = 0\n";
    let days = run(stock, 5);
    let added = |day: usize| days[day].state.added_n;
    check("away", added(3), added(1), Relative(1e-9));
    assert!(added(5) > added(3) && added(1) > added(0));
}

/// The typical run of the pale tank with an event on the first day.
fn run(event: &str, days: u32) -> Vec<Sample> {
    let text = std::fs::read_to_string("demo-tanks/pale-in-the-second-year.toml").unwrap();
    let text = text.split("[[readings]]").next().unwrap();
    let event = format!(
        "{text}\n[[events]]\nday = 1\n{}",
        if event.is_empty() {
            "sprayed = true"
        } else {
            event
        }
    );
    let design = spec::parse(&event).unwrap();
    let bands = Parameters::of(&design);
    central(&Inputs::of(&design), &bands, days).unwrap().days
}

/// The day after an event.
fn last(event: &str) -> Sample {
    *run(event, 2).last().unwrap()
}
