//! Salts and new water worked out by hand from the atomic weights of IUPAC (abridged, 2021).

use lentic::makeup::{NewWater, makeup};
use lentic::spec;
use lentic::units::Concentration;
use lentic::water::chlorine::{HALF_LIFE_AERATED_H, HALF_LIFE_STILL_H, nitrogen_left, standing_h};
use lentic::water::salt::{
    BAKING_SODA, EPSOM_SALT, Element, GYPSUM, POTASSIUM_NITRATE, POTASSIUM_PHOSPHATE,
    POTASSIUM_SULFATE, Salt,
};

use crate::compare::Within::{Absolute, Relative};
use crate::compare::check;

#[test]
fn salts_weigh_what_their_atoms_do() {
    for (salt, g_mol) in [
        (&BAKING_SODA, 84.006),
        (&GYPSUM, 172.17),
        (&EPSOM_SALT, 246.47),
        (&POTASSIUM_NITRATE, 101.10),
        (&POTASSIUM_SULFATE, 174.25),
        (&POTASSIUM_PHOSPHATE, 136.08),
    ] {
        check(salt.name, salt.molar_mass(), g_mol, Absolute(0.01));
    }
}

/// Grams in a gram, by the molar masses above.
#[test]
fn salts_hold_what_their_atoms_say() {
    let cases: [(&Salt, Element, f64); 8] = [
        (&POTASSIUM_NITRATE, Element::N, 0.1385),
        (&POTASSIUM_NITRATE, Element::K, 0.3867),
        (&POTASSIUM_SULFATE, Element::K, 0.4488),
        (&POTASSIUM_PHOSPHATE, Element::P, 0.2276),
        (&POTASSIUM_PHOSPHATE, Element::K, 0.2873),
        (&EPSOM_SALT, Element::Mg, 0.0986),
        // 2 x 15.999 less the water of magnesium sulfate: no nitrogen is in it
        (&EPSOM_SALT, Element::N, 0.0),
        (&BAKING_SODA, Element::Na, 0.2737),
    ];
    for (salt, element, expected) in cases {
        check(salt.name, salt.share(element), expected, Absolute(1e-4));
    }
}

/// Grades as labels print them (from memory): potassium nitrate 13-0-46, monopotassium
/// phosphate 0-52-34, potassium sulfate 54 % potassium oxide, Epsom salt 16 % magnesium oxide; labels round down.
#[test]
fn salts_agree_with_the_grades_on_labels() {
    // K2O is 94.195 of 2 x 39.098, P2O5 141.94 of 2 x 30.974, MgO 40.304 of 24.305
    let (k2o, p2o5, mgo) = (94.195 / 78.196, 141.943 / 61.948, 40.304 / 24.305);
    for (value, percent) in [
        (POTASSIUM_NITRATE.share(Element::N), 13.85),
        (POTASSIUM_NITRATE.share(Element::K) * k2o, 46.6),
        (POTASSIUM_PHOSPHATE.share(Element::P) * p2o5, 52.2),
        (POTASSIUM_PHOSPHATE.share(Element::K) * k2o, 34.6),
        (POTASSIUM_SULFATE.share(Element::K) * k2o, 54.1),
        (EPSOM_SALT.share(Element::Mg) * mgo, 16.35),
    ] {
        check("grade", value * 100.0, percent, Absolute(0.05));
    }
}

/// 10 mg/L of calcium oxide, 0.17833 mmol or 0.35665 meq, is a degree.
#[test]
fn a_degree_takes_its_equivalents_of_salt() {
    for (salt, mg) in [
        (&BAKING_SODA, 29.96),
        (&GYPSUM, 30.70),
        (&EPSOM_SALT, 43.95),
    ] {
        check(salt.name, salt.mg_per_degree_l(), mg, Absolute(0.01));
    }
}

/// Chlorine to nitrogen 5.06 : 1 by mass, 5 : 1 as suppliers say; 6.64 halves from 1 to
/// 0.01 mg/L.
#[test]
fn chlorine_leaves_and_goes_as_reckoned_by_hand() {
    for (cl2, nitrogen) in [(1.0, 0.1976), (2.5, 0.494), (4.0, 0.790)] {
        let left = nitrogen_left(Concentration::from_mg_l(cl2)).mg_l();
        check("nitrogen left", left, nitrogen, Absolute(5e-4));
    }
    let one = Concentration::from_mg_l(1.0);
    check(
        "still",
        standing_h(one, HALF_LIFE_STILL_H).typical,
        80.0,
        Absolute(0.5),
    );
    check(
        "aerated",
        standing_h(one, HALF_LIFE_AERATED_H).typical,
        13.0,
        Absolute(0.5),
    );
}

/// 17.24 L of pure water to 4 dKH and 6 dGH, three parts of calcium to one of magnesium:
/// 4 x 29.96, 4.5 x 30.70 and 1.5 x 43.95 mg a litre.
#[test]
fn pure_water_is_hardened_as_reckoned_by_hand() {
    let text = std::fs::read_to_string("demo-tanks/reading-room-cube.toml").unwrap();
    let mut draft = spec::parse(&text).unwrap().into_draft();
    draft.water.hardness = lentic::units::Hardness::ZERO;
    draft.water.alkalinity = lentic::units::Alkalinity::ZERO;
    draft.water.goal.hardness = Some(lentic::units::Hardness::from_dgh(6.0));
    draft.water.goal.alkalinity = Some(lentic::units::Alkalinity::from_dkh(4.0));
    let design = draft.check().unwrap();
    check("litres", design.water().litres(), 17.24, Absolute(0.01));
    let made = makeup(&design, NewWater::Fill).unwrap();
    let expected = [
        ("baking soda", 2.07),
        ("gypsum", 2.38),
        ("Epsom salt", 1.14),
    ];
    assert_eq!(made.salts.len(), expected.len());
    for (salt, (name, grams)) in made.salts.iter().zip(expected) {
        assert_eq!(salt.name, name);
        check(name, salt.mass_g, grams, Absolute(0.006));
    }
    // 8.2 mg/L for a degree
    check("sodium", made.sodium_mg_l, 32.8, Relative(0.002));
}

/// From 0.5 dKH as read to 1.25 with half of the water: 0.75 dKH, but two and a half times the
/// bicarbonate at one carbon dioxide, 0.4 of pH. From 2 to 3 it is one degree and 0.18 of pH.
#[test]
fn new_water_follows_at_the_pace_of_what_changes_most() {
    let text = std::fs::read_to_string("demo-tanks/reading-room-cube.toml").unwrap();
    let steps = |read: f64, asked: f64| {
        let mut draft = spec::parse(&text).unwrap().into_draft();
        let dkh = lentic::units::Alkalinity::from_dkh;
        // harder than what is asked for, so that no salt is needed, and hardly conducting
        draft.water.alkalinity = dkh(asked);
        draft.water.hardness = lentic::units::Hardness::from_dgh(20.0);
        draft.readings = vec![lentic::design::Reading {
            day: 30.0,
            alkalinity: Some(dkh(read)),
            ..Default::default()
        }];
        let design = draft.check().unwrap();
        let half = design.water() * 0.5;
        makeup(&design, NewWater::Of(half)).unwrap().steps
    };
    assert_eq!(steps(0.5, 2.0), 2);
    assert_eq!(steps(2.0, 4.0), 1);
    assert_eq!(steps(2.0, 6.0), 2);
}
