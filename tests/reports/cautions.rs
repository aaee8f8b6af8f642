//! What a text orders has its cautions beside it.

use lentic::design::Design;
use lentic::diagnosis::case::CaseHistory;
use lentic::diagnosis::estimate::TankEstimate;
use lentic::diagnosis::hypotheses::Hypotheses;
use lentic::diagnosis::{Cause, remedy};
use lentic::finding::Code;
use lentic::plan::{Options, cautions_for};
use lentic::report::compose;
use lentic::report::document::Document;

use crate::command;
use crate::demo;
use crate::designed;

/// An order, as words find it in a text, and the codes of the cautions that it asks for.
type Order = (fn(&str) -> bool, &'static [&'static str]);

/// Typed from what the work is, not from how the command chooses (common practice).
const ORDERS: [Order; 9] = [
    (
        changes_water,
        &[
            "hazard.water_change",
            "hazard.conditioner",
            "hazard.lifting",
            "hazard.floor",
            "hazard.electricity",
        ],
    ),
    (
        |text| text.contains("g of potassium nitrate"),
        &["hazard.potassium_nitrate"],
    ),
    (
        |text| text.contains("against chlorine"),
        &["hazard.conditioner"],
    ),
    (
        |text| text.contains("lay soil and cap") || text.contains("lay both anew"),
        &[
            "hazard.silica_dust",
            "hazard.infection",
            "hazard.lifting",
            "hazard.hydrogen_sulfide",
        ],
    ),
    (
        |text| text.contains("fill slowly"),
        &["hazard.floor", "hazard.electricity"],
    ),
    (
        |text| {
            ["start lamp", "run air", "air stone", "run the filter"]
                .iter()
                .any(|word| text.contains(word))
        },
        &["hazard.electricity"],
    ),
    (
        |text| {
            ["take off ", "take out sand", "thin rod", "flatten it"]
                .iter()
                .any(|word| text.contains(word))
        },
        &["hazard.hydrogen_sulfide"],
    ),
    (
        |text| {
            text.contains(" of the cap everywhere")
                || text.contains("lower sand onto")
                || text.contains("trickle ")
        },
        &["hazard.silica_dust", "hazard.infection"],
    ),
    (
        |text| {
            [
                "plant everything",
                "thin the floaters",
                "trim the stems",
                "move the animals",
            ]
            .iter()
            .any(|word| text.contains(word))
        },
        &["hazard.restricted_plants"],
    ),
];

/// "change 30 %" and not "a change".
fn changes_water(text: &str) -> bool {
    text.match_indices("change ").any(|(at, word)| {
        let rest = text[at + word.len()..].trim_start_matches(|c: char| c.is_ascii_digit());
        rest.starts_with(" %") && !text[at + word.len()..].starts_with(' ')
    })
}

/// How each caution begins on screen.
fn opening(code: &str) -> &'static str {
    match code {
        "hazard.water_change" => "Water change: ",
        "hazard.conditioner" => "Conditioner: ",
        "hazard.lifting" => "Lifting: ",
        "hazard.floor" => "Floor: ",
        "hazard.electricity" => "Electricity: ",
        "hazard.potassium_nitrate" => "Potassium nitrate: ",
        "hazard.silica_dust" => "Dust: ",
        "hazard.infection" => "Infection: ",
        "hazard.hydrogen_sulfide" => "Hydrogen sulfide: ",
        "hazard.restricted_plants" => "Release: ",
        other => panic!("{other} has no opening"),
    }
}

/// The openings of the cautions that a short text names by their subjects.
fn named(cautions: &str) -> String {
    let cautions = cautions.to_lowercase();
    let codes = ORDERS.iter().flat_map(|(_, codes)| codes.iter());
    let openings = codes.map(|code| opening(code));
    openings
        .filter(|opening| cautions.contains(opening.to_lowercase().trim_end_matches(": ")))
        .collect()
}

/// The cautions that are missing beside what a text orders; counts what is ordered.
fn missing(orders: &str, cautions: &str, met: &mut [u32; ORDERS.len()]) -> Vec<&'static str> {
    let mut missing = Vec::new();
    for (count, (orders_it, codes)) in met.iter_mut().zip(ORDERS) {
        if orders_it(orders) {
            *count += 1;
            let lacking = codes
                .iter()
                .filter(|code| !cautions.contains(opening(code)));
            missing.extend(lacking.copied());
        }
    }
    missing
}

/// The search itself has to find what it is for.
#[test]
fn an_order_without_its_caution_is_found_out() {
    let mut met = [0; ORDERS.len()];
    let said = "Water change: Conditioner: Floor: Electricity:  ";
    let found = missing("Next: change 30 % of the water", said, &mut met);
    assert_eq!((found, met[0]), (vec!["hazard.lifting"], 1));
    assert!(missing("leave it alone", "", &mut met).is_empty());
}

/// All that the commands write for people of a tank.
fn documents(design: &Design) -> [Document; 8] {
    let (plan, check) = (designed::planned(design), designed::checked(design));
    let (startup, of_startup) = designed::started(design);
    let (night, of_night) = designed::night(design);
    let upkeep = designed::kept_up(design);
    [
        compose::plan(design, &plan),
        compose::plan_in_short(design, &plan),
        compose::startup(design, &startup, &of_startup),
        compose::night(design, &night, &of_night),
        compose::upkeep(design, &upkeep),
        compose::upkeep_in_short(design, &upkeep),
        compose::check(design, &check),
        compose::check_in_short(design, &check),
    ]
}

#[test]
fn no_command_orders_work_without_its_cautions() {
    let mut met = [0; ORDERS.len()];
    for tank in demo::tanks() {
        let design = designed::demo(&tank);
        for (which, document) in documents(&design).iter().enumerate() {
            let text = designed::on_terminal(document);
            let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
            let (orders, cautions) = text.split_once("Cautions").expect("cautions");
            let cautions = if cautions.contains("Mind ") {
                named(cautions)
            } else {
                cautions.to_owned()
            };
            let missing = missing(orders, &cautions, &mut met);
            assert!(missing.is_empty(), "{tank}, {which}: {missing:?}");
        }
    }
    assert!(
        met[0] > 0 && met[3] > 0 && met[4] > 0 && met[5] > 0,
        "{met:?}"
    );
}

#[test]
fn no_explanation_orders_work_without_its_cautions() {
    for (what, tank, code) in [
        ("cap.deep", "roots-out-of-reach", "hazard.hydrogen_sulfide"),
        ("cap.thin", "cap-thin-in-front", "hazard.silica_dust"),
        (
            "flush.ammonia",
            "third-week-nitrite",
            "hazard.restricted_plants",
        ),
        ("check.cause", "third-week-nitrite", "hazard.water_change"),
    ] {
        let path = format!("demo-tanks/{tank}.toml");
        let ran = command::lentic(&["explain", what, &path, "--members", "8"], "");
        assert_eq!(ran.code, 0, "{what}: {}", ran.stderr);
        let (_, cautions) = ran.stdout.split_once("Cautions").expect("cautions");
        assert!(
            cautions.contains(opening(code)),
            "{what} {tank}: {cautions}"
        );
    }
}

#[test]
fn every_remedy_of_every_cause_carries_the_work_that_it_orders() {
    const TANKS: [&str; 3] = [
        "gravel-cap-high-nitrate",
        "pale-in-the-second-year",
        "third-week-nitrite",
    ];
    let mut met = [0; ORDERS.len()];
    for tank in TANKS {
        let path = command::root().join(format!("demo-tanks/{tank}.toml"));
        let design = lentic::spec::parse(&std::fs::read_to_string(path).unwrap()).unwrap();
        let case = CaseHistory::of(&design, &[]).unwrap();
        let options = Options {
            members: 0,
            ..Options::default()
        };
        let hypotheses = Hypotheses::with_progress(&case, options, &|_| {}).unwrap();
        for &cause in Cause::ALL {
            let estimate = TankEstimate::of(&case, &hypotheses, cause);
            let remedy = remedy::treat(&case, &estimate, None).unwrap().remedy;
            let codes = codes(&design, &remedy.actions);
            for (count, (orders_it, wanted)) in met.iter_mut().zip(ORDERS) {
                if orders_it(&remedy.says) {
                    *count += 1;
                    for code in wanted {
                        assert!(
                            codes.contains(code),
                            "{tank} {cause:?}: {code}: {}",
                            remedy.says
                        );
                    }
                }
            }
        }
    }
    assert!(
        met[0] > 0 && met[1] > 0 && met[2] > 0 && met[6] > 0,
        "{met:?}"
    );
}

fn codes(design: &Design, actions: &[lentic::finding::Action]) -> Vec<&'static str> {
    let cautions = cautions_for(design, actions.iter().copied());
    cautions.iter().map(|caution| caution.code).collect()
}

#[test]
fn no_work_is_without_a_hazard() {
    let path = command::root().join("demo-tanks/first-tank.toml");
    let design = lentic::spec::parse(&std::fs::read_to_string(path).unwrap()).unwrap();
    for &code in Code::ALL {
        for &action in lentic::plan::rule::orders(code) {
            assert!(!cautions_for(&design, [action]).is_empty(), "{action:?}");
        }
    }
}
