//! Laws of upkeep.

use lentic::Options;
use lentic::design::Design;
use lentic::units::{Concentration, Mass, Share, Volume};
use lentic::upkeep::{
    Routine, Upkeep, UpkeepQuestions, ammonia_rise, borne_share, share_to_hold, upkeep,
};
use proptest::prelude::*;

const TYPICAL: Options = Options {
    members: 0,
    seed: 1,
    days: 90,
};

fn design(more: &str) -> Design {
    let text = format!(
        r#"
[tank]
size = "30 x 30 x 30 cm"
[soil]
material = "organic_potting_mix"
depth = "25 mm"
[cap]
material = "filter_sand"
depth = "40 mm"
[[plants]]
name = "salvinia_natans"
amount = "30 %"
[[animals]]
name = "small_shrimp"
count = 10
from_day = 42
[feed]
mass_per_day = "30 mg"
{more}"#
    );
    lentic::spec::parse(&text).unwrap_or_else(|faults| panic!("{faults}"))
}

fn kept(more: &str, asked: UpkeepQuestions) -> Upkeep {
    upkeep(&design(more), TYPICAL, &asked, &|_| {}).expect("a run")
}

#[test]
fn nitrogen_that_comes_in_goes_out_or_stays() {
    for more in [
        "",
        "[water]\nchange = { share = \"25 %\", every = \"7 d\", from = 7 }\n",
        "[water]\nchange = { share = \"10 %\", every = \"36 h\", from = 7 }\n",
        "[[events]]\nday = 345\ndosed = { salt = \"potassium nitrate\", mass = \"0.2 g\" }\n",
        "[[events]]\nday = 345\nfed = \"300 mg\"\n[[events]]\nday = 350\naway = \"5 d\"\n",
        "[[events]]\nday = 350\ndrained = \"40 %\"\n",
        "[[events]]\nday = 350\nplants_added = [{ name = \"ludwigia_repens\", amount = \"5 stems\" }]\n",
    ] {
        let week = kept(more, UpkeepQuestions::default()).upkeep;
        let residual = week.balance_residual_mg_per_week.typical();
        assert!(residual.abs() < 0.01, "{more}: {residual}");
        let came = week.supply.soil_n_mg_per_week.typical();
        assert!(came > 0.0, "{more}");
    }
}

#[test]
fn water_topped_up_without_salts_ends_at_the_tap_s_own() {
    for change in ["5 %", "25 %", "60 %"] {
        let soft = format!(
            "[water]\nhardness = \"9 dGH\"\ntop_up = \"soft\"\nchange = {{ share = \"{change}\", every = \"7 d\", from = 7 }}\n"
        );
        let week = kept(&soft, UpkeepQuestions::default()).upkeep;
        let steady = week.hardness_steady_dgh.expect("changes");
        assert!((steady - 9.0).abs() < 1e-9, "{steady}");
        assert!(week.hardness_rise_dgh_per_month.abs() < 1e-12);
    }
}

#[test]
fn more_that_is_taken_out_never_raises_nitrate() {
    let steady = |grams: f64| {
        let more = format!(
            "[water]\nnitrate = \"20 mg/L\"\nchange = {{ share = \"25 %\", every = \"7 d\", from = 7 }}\n[harvest]\ntaken = [{{ day = 350, floaters = \"1 g\" }}, {{ day = 364, floaters = \"{grams} g\" }}]\n"
        );
        let week = kept(&more, UpkeepQuestions::default()).upkeep;
        let thinned = week.floaters_thin_g.expect("floaters").typical();
        assert!((thinned - grams / 2.0).abs() < 1e-6, "{thinned} of {grams}");
        week.nitrate_steady_mg_l.expect("changes").typical()
    };
    let steady = [0.0, 2.0, 8.0, 30.0, 200.0].map(steady);
    assert!(steady.is_sorted_by(|less, more| less >= more), "{steady:?}");
    assert!(steady[0] > steady[4] && steady[4] >= 0.0, "{steady:?}");
}

#[test]
fn nothing_stirred_changes_nothing() {
    let asked = UpkeepQuestions {
        stir: Some(Share::ZERO),
        ..UpkeepQuestions::default()
    };
    let (with, without) = (kept("", asked), kept("", UpkeepQuestions::default()));
    let stir = with.stir.clone().expect("asked for");
    assert_eq!(stir.sessions, Some(0));
    for nothing in [
        stir.ammonia_rise_mg_l.typical(),
        stir.change_before_pct,
        stir.change_after_pct,
        stir.clears_h,
    ] {
        assert!(nothing.abs() < 1e-12, "{stir:?}");
    }
    assert_eq!(with.upkeep, without.upkeep);
    assert_eq!(with.weeks, without.weeks);
}

proptest! {
    #[test]
    fn a_steady_state_is_what_weeks_lead_to(
        share in 0.01..1.0_f64, rise in -5.0..5.0_f64, source in 0.0..50.0_f64, start in 0.0..50.0_f64,
    ) {
        let routine = Routine { share: Share::from_fraction(share), rise, source };
        let mut after = start;
        for changes in 1..=3000_u32 {
            after = (1.0 - share) * (after + rise) + share * source;
            if changes == 7 {
                prop_assert!((routine.after(7, start) - after).abs() < 1e-9);
            }
        }
        let steady = routine.steady_after().unwrap_or(f64::NAN);
        prop_assert!((steady - after).abs() < 1e-6, "{} {}", steady, after);
        let before = routine.steady_before().unwrap_or(f64::NAN);
        prop_assert!((before - (after + rise)).abs() < 1e-6);
    }

    #[test]
    fn the_share_that_is_needed_holds_the_goal(rise in 0.01..5.0_f64, source in 0.0..10.0_f64, over in 6.0..50.0_f64) {
        let goal = source + over;
        let share = share_to_hold(rise, source, goal).expect("a share");
        let routine = Routine { share, rise, source };
        prop_assert!((routine.steady_before().unwrap_or(f64::NAN) - goal).abs() < 1e-9);
    }

    #[test]
    fn a_share_that_is_told_as_borne_is_borne(
        soil in 0.1..500.0_f64, litres in 1.0..500.0_f64, now in 0.0..1.0_f64, borne in 0.05..1.0_f64,
    ) {
        let (soil, water) = (Mass::from_mg(soil), Volume::from_litres(litres));
        let (now, borne) = (Concentration::from_mg_l(now), Concentration::from_mg_l(borne));
        let most = Share::from_percent(25.0);
        let share = borne_share(borne, now, soil, water, most);
        prop_assert!(share <= most && share >= Share::ZERO);
        let after = now + ammonia_rise(share, soil, water);
        prop_assert!(after.mg_l() <= borne.max(now).mg_l() + 1e-12);
    }
}
