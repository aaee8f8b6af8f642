//! What is got ready for the reading-room cube and how its animals move in, by hand:
//! 2.1 L of soil bought, 3.36 L of sand of 1600 kg/m3 and 40 % pores on 0.0841 m2.

use lentic::plan::{Options, Plan, plan};
use lentic::spec;

use crate::compare::Within::Absolute;
use crate::compare::check;

const ALONE: Options = Options {
    members: 0,
    days: 90,
    seed: 1,
};

fn planned(more: &str) -> Plan {
    let text = std::fs::read_to_string("demo-tanks/reading-room-cube.toml").unwrap();
    plan(&spec::parse(&(text + more)).unwrap(), ALONE).unwrap()
}

#[test]
fn the_cube_is_got_ready_as_reckoned_by_hand() {
    let ready = planned("\n[conditioner]\nlabel = \"5 mL per 40 L\"\n").preparation;
    for (what, value, expected, within) in [
        // 2.1 / 0.85 and a tenth more
        ("soil", ready.soil_l.typical, 2.5, 0.05),
        ("with reserve", ready.soil_with_reserve_l, 2.7, 0.05),
        // 2 L to the litre, three rounds; three litres a litre in 7 L of a bucket
        ("a round", ready.soak_round_l, 4.2, 0.05),
        ("soaking", ready.soak_l, 12.6, 0.1),
        ("buckets", ready.soak_buckets, 1.0, 0.0),
        ("wetting", ready.wetting_l, 1.5, 0.05),
        ("rinsing", ready.rinse_l, 17.0, 0.3),
        // 0.4 x 3.36 + 0.05 m of 0.0841 m2
        ("planting", ready.planting_fill_l, 5.5, 0.06),
        // 0.02 m/s through 2 pi x 8 cm x 1 cm
        ("pouring", ready.pour_most_l_min, 6.0, 0.05),
        ("kept", ready.sand_kept_kg, 0.64, 0.02),
        ("heater", ready.heater_w.unwrap(), 50.0, 0.0),
        // an eighth of a millilitre to the litre
        (
            "conditioner",
            ready.conditioner_ml.unwrap(),
            ready.tap_water_l / 8.0,
            1e-9,
        ),
    ] {
        check(what, value, expected, Absolute(within));
    }
}

/// Ten shrimp and six small fish: no step over a third of the mass, fortnights between them,
/// a test a week before and on the day, shrimp before fish, snails before both.
#[test]
fn animals_move_in_by_steps() {
    let plan = planned(
        "\n[[animals]]\nname = \"small_fish\"\ncount = 6\n[[animals]]\nname = \"surface_snail\"\ncount = 2\n",
    );
    let steps = &plan.stocking;
    let names: Vec<&str> = steps.iter().map(|step| step.name).collect();
    let first = |name| names.iter().position(|one| *one == name).unwrap();
    assert!(first("surface_snail") < first("small_shrimp"));
    assert!(first("small_shrimp") < first("small_fish"));
    for kind in [("small_fish", 6), ("surface_snail", 2)] {
        let of_it = steps.iter().filter(|step| step.name == kind.0);
        assert_eq!(of_it.map(|step| step.count).sum::<u32>(), kind.1);
    }
    let whole: f64 = steps.iter().map(|step| step.load_g).sum();
    for pair in steps.windows(2) {
        assert!(pair[1].day - pair[0].day >= 14.0, "{steps:?}");
    }
    for step in steps {
        assert!(
            step.load_g <= whole / 3.0 + 1e-9 || step.count == 1,
            "{step:?}"
        );
        let days: Vec<f64> = step.tests.iter().map(|test| test.day).collect();
        assert_eq!(days, [step.day - 7.0, step.day]);
    }
}

/// 70 umol/m2/s on 0.0841 m2 from 20 cm: 70 x (0.0841 + pi x 0.04) / (0.0145 x 0.8) = 1266 lm;
/// 17.24 L of pure water to 4 dKH and 6 dGH take 2.07 g of baking soda, 2.38 of gypsum, 1.14 of
/// Epsom salt. A lamp that is given by its lumens is bought as it is.
#[test]
fn lamp_and_salts_are_on_the_list() {
    let text = std::fs::read_to_string("demo-tanks/reading-room-cube.toml").unwrap();
    let listed = |change: &dyn Fn(&mut lentic::design::Draft)| {
        let mut draft = spec::parse(&text).unwrap().into_draft();
        change(&mut draft);
        let list = plan(&draft.check().unwrap(), ALONE).unwrap().shopping;
        move |what: &str| {
            let found = list.iter().find(|item| item.what == what);
            found.map(|item| item.quantity)
        }
    };
    let as_it_is = listed(&|_| {});
    check("lamp", as_it_is("lamp").unwrap(), 1266.0, Absolute(2.0));
    assert_eq!(as_it_is("gypsum"), None);
    let pure = listed(&|draft| {
        let water = &mut draft.water;
        water.hardness = lentic::units::Hardness::ZERO;
        water.alkalinity = lentic::units::Alkalinity::ZERO;
        water.goal.hardness = Some(lentic::units::Hardness::from_dgh(6.0));
        water.goal.alkalinity = Some(lentic::units::Alkalinity::from_dkh(4.0));
        draft.light.level = lentic::design::LightLevel::Lumens {
            flux: lentic::units::LuminousFlux::from_lumens(900.0),
            height: lentic::units::Length::from_cm(15.0),
        };
    });
    for (what, quantity) in [
        ("lamp", 900.0),
        ("baking soda", 2.07),
        ("gypsum", 2.38),
        ("Epsom salt", 1.14),
    ] {
        check(what, pure(what).unwrap(), quantity, Absolute(0.006));
    }
    assert_eq!(pure("rain or reverse-osmosis water"), None);
}
