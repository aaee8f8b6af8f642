//! Upkeep's formulas against their values worked out by hand, and its account against sums
//! made another way.

use lentic::Options;
use lentic::source::Band;
use lentic::startup::{Inputs, Parameters, SoilStores};
use lentic::units::{
    Area, Concentration, Duration, Length, Mass, MassRate, Share, Temperature, Volume,
};
use lentic::upkeep::{
    CUT, Routine, UpkeepQuestions, clears_in, gained_by_falling, lasts_in_bucket, pouring,
    share_to_hold, shortfall, trim_interval, upkeep, weekly_take,
};

fn near(found: f64, by_hand: f64, within: f64) {
    assert!((found - by_hand).abs() <= within, "{found} for {by_hand}");
}

/// A tank of 17.24 L that loses 1.96 L a week, with a tap of 6 dGH: 0.682 dGH a week, and by
/// share changed what hardness ends at after and before a change.
#[test]
fn hardness_creeps_by_what_is_topped_up_and_ends_where_changes_hold_it() {
    let rise = 6.0 * 1.96 / 17.24;
    for (pct, after, before) in [(10.0, 12.14, 12.82), (25.0, 8.05, 8.73), (50.0, 6.68, 7.36)] {
        let routine = Routine {
            share: Share::from_percent(pct),
            rise,
            source: 6.0,
        };
        near(routine.steady_after().unwrap(), after, 0.005);
        near(routine.steady_before().unwrap(), before, 0.005);
    }
    let never = Routine {
        share: Share::ZERO,
        rise,
        source: 6.0,
    };
    assert_eq!((never.steady_after(), never.steady_before()), (None, None));
    // 0.682 dGH a week are 2.97 in a month of 30.44 days
    near(never.after(4, 6.0) - 6.0, 4.0 * 0.6821, 1e-3);
    near(rise * 30.4375 / 7.0, 2.97, 0.005);
}

/// Tap 5 mg/L, 3 gained a week: a quarter of the water holds 17 before a change.
#[test]
fn nitrate_ends_where_gain_and_changes_meet() {
    let week = Routine {
        share: Share::from_percent(25.0),
        rise: 3.0,
        source: 5.0,
    };
    near(week.steady_before().unwrap(), 17.0, 1e-12);
    near(week.steady_after().unwrap(), 14.0, 1e-12);
    near(share_to_hold(3.0, 5.0, 17.0).unwrap().percent(), 25.0, 1e-9);
    // the tap holds what is wanted: no change helps; plants win: none is needed
    assert_eq!(share_to_hold(3.0, 17.0, 17.0), None);
    assert_eq!(share_to_hold(-1.0, 5.0, 17.0), Some(Share::ZERO));
}

/// 22.6 g fresh at 5 % a day: exp(0.35) - 1 is 0.419, so 9.47 g, at 6.5 % dry and 2.5 % N
/// 15.4 mg of nitrogen. Stems at 1 %: ln 1.5 / 0.01 is 40.5 days.
#[test]
fn a_stand_that_is_thinned_by_the_week_gives_its_growth() {
    let take = weekly_take(Mass::from_g(22.6), 0.05);
    near(take.g(), 9.47, 0.005);
    near(take.mg() * 0.065 * 0.025, 15.4, 0.05);
    assert_eq!(weekly_take(Mass::from_g(22.6), -0.05), Mass::ZERO);
    near(trim_interval(0.01, CUT).unwrap().days(), 40.55, 0.01);
}

/// Two weeks from 17.24 L under 841 cm2: 3.92 L, 4.66 cm, 1.294 times as hard.
#[test]
fn what_is_missing_after_a_holiday_is_what_evaporates() {
    let gone = shortfall(
        Volume::from_litres(1.96),
        Duration::from_days(14.0),
        Volume::from_litres(17.24),
        Area::from_cm2(841.0),
    );
    near(gone.water.litres(), 3.92, 1e-9);
    near(gone.level.cm(), 4.66, 0.005);
    near(gone.concentrated, 1.294, 5e-4);
}

/// Saturation 8.4 mg/L, 3 left: 5.4 mg/L in 4 h from 17.24 L are 23 mg/h, 1.24 mg by each
/// litre that falls 30 cm at 24 C: 19 L an hour.
#[test]
fn water_poured_by_hand_makes_up_for_what_is_breathed() {
    let warm = Temperature::from_celsius(24.0);
    let gained = gained_by_falling(Length::from_cm(30.0), warm);
    near(gained.fraction() * (8.4 - 3.0), 1.24, 0.005);
    let poured = pouring(Volume::from_litres(17.24), Duration::from_hours(4.0), warm);
    near(poured.l_h(), 18.8, 0.1);
}

/// Ten fish of 0.35 g at 24 C rest on 1.83 mg O2 an hour: 8 L from 8 to 4 mg/L last 17.5 h,
/// and half of that where they were handled.
#[test]
fn a_bucket_lasts_for_what_it_holds_over_what_is_breathed() {
    let (water, fresh) = (Volume::from_litres(8.0), Concentration::from_mg_l(8.0));
    let rest = |factor: f64| {
        let used =
            lentic::air::demand::fish_at_rest(Mass::from_g(0.35), Temperature::from_celsius(24.0));
        lasts_in_bucket(water, fresh, used * (10.0 * factor)).unwrap()
    };
    near(rest(1.0).hours(), 17.5, 0.1);
    near(rest(2.0).hours(), 8.7, 0.1);
    assert_eq!(lasts_in_bucket(water, fresh, MassRate::ZERO), None);
}

/// Clay of 2 um through 20.5 cm at 24 C: about 15 h.
#[test]
fn clay_settles_by_its_size() {
    let cleared = clears_in(Length::from_cm(20.5), Temperature::from_celsius(24.0));
    near(cleared.hours(), 14.4, 0.7);
}

/// A soil by its row, and what its stores come to by hand.
struct Aged {
    depth_mm: f64,
    dry_bulk: f64,
    nitrogen: f64,
    /// Fast and slow shares, and of the rest what breaks down in a year.
    shares: [f64; 3],
    /// mg N/m2/d on the first day, after a year, after five.
    release: [f64; 3],
    /// Days until it gives so many mg N/m2/d.
    falls: [(f64, f64); 2],
}

/// The fast share goes by 0.05 a day and the slow one by 0.004, all at 24 C 0.933 times: the
/// sums of three exponentials, worked outside the program. A mix of 27 g N/m2 gives
/// 27 x (0.052 x 0.05 + 0.04 x 0.004 + 0.908 x 0.02 / 365.25) x 0.933 on the first day.
#[test]
fn a_soil_of_three_stores_gives_what_their_exponentials_say() {
    for soil in [
        // 20 mm of a mix: 27 g N/m2
        Aged {
            depth_mm: 20.0,
            dry_bulk: 150.0,
            nitrogen: 9.0,
            shares: [0.052, 0.04, 0.02],
            release: [70.78, 2.261, 1.145],
            falls: [(5.0, 92.0), (2.0, 441.6)],
        },
        // 25 mm of loam: 41 g N/m2
        Aged {
            depth_mm: 25.0,
            dry_bulk: 1100.0,
            nitrogen: 1.5,
            shares: [0.052, 0.06, 0.02],
            release: [111.18, 4.200, 1.715],
            falls: [(5.0, 287.8), (2.0, 999.3)],
        },
        // 20 mm of compost: 135 g N/m2, which outlasts its keeper
        Aged {
            depth_mm: 20.0,
            dry_bulk: 450.0,
            nitrogen: 15.0,
            shares: [0.03, 0.06, 0.06],
            release: [238.0, 25.54, 14.27],
            falls: [(10.0, 4128.8), (5.0, 8651.2)],
        },
    ] {
        let mut numbers = Parameters::<Band>::reference().central();
        let own = &mut numbers.soil;
        (own.dry_bulk_density, own.total_nitrogen) = (soil.dry_bulk, soil.nitrogen);
        let stable;
        [own.fast_share, own.slow_share, stable] = soil.shares;
        (own.mineralisation, own.slow_mineralisation) = (0.05, 0.004);
        own.stable_mineralisation = stable;
        let tank = Inputs {
            soil_depth: Length::from_mm(soil.depth_mm),
            temperature: Temperature::from_celsius(24.0),
            ..Inputs::reference()
        };
        let stores = SoilStores::of(&tank, &numbers);
        for (year, release) in [0.0, 1.0, 5.0].into_iter().zip(soil.release) {
            let found = stores.release_g_m2_d(year * 365.25) * 1e3;
            near(found, release, 1e-3 * release);
        }
        for (mg, day) in soil.falls {
            near(stores.falls_to(mg * 1e-3, 3e4).unwrap(), day, 1.5);
        }
        assert_eq!(stores.falls_to(1e-9, 3e4), None);
    }
}

/// A quarter of the water a week for a tap of 10 mg/L nitrate, whose nitrogen is 0.2259 of
/// it; twelve fish on 150 mg of food with 45 % protein, of which 0.092 come as ammonia and
/// 0.068 less what is retained, 0 to 0.4 of it, in faeces.
#[test]
fn the_account_has_what_feed_and_changes_bring() {
    let design = lentic::spec::parse(
        r#"
[tank]
size = "60 x 30 x 36 cm"
[soil]
material = "loam_topsoil"
depth = "25 mm"
[cap]
material = "filter_sand"
depth = "40 mm"
[[plants]]
name = "salvinia_natans"
amount = "30 %"
[water]
nitrate = "10 mg/L"
change = { share = "25 %", every = "7 d", from = 7 }
[[animals]]
name = "small_fish"
count = 12
from_day = 42
[feed]
mass_per_day = "150 mg"
protein = "45 %"
"#,
    )
    .unwrap();
    let options = Options {
        members: 0,
        ..Options::default()
    };
    let asked = UpkeepQuestions {
        day: Some(400),
        ..UpkeepQuestions::default()
    };
    let found = upkeep(&design, options, &asked, &|_| {}).unwrap().upkeep;
    let water_l = design.water().litres();
    near(
        found.supply.tap_n_mg_per_week,
        0.25 * water_l * 10.0 * 0.2259,
        0.02,
    );
    let protein_mg = 7.0 * 150.0 * 0.45;
    let feed = found.supply.feed_n_mg_per_week.unwrap().typical();
    assert!(
        (protein_mg * (0.092 + 0.068 * 0.6)..=protein_mg * 0.16).contains(&feed),
        "{feed}"
    );
    // the changes go on beyond the year, for the spec does not say that they end
    assert!(found.nitrate_steady_mg_l.is_some() && found.hardness_steady_dgh.is_some());
    let residual = found.balance_residual_mg_per_week.typical();
    near(residual, 0.0, 1e-3 * feed);
}

/// The cube: 5.5 kg of glass, 1.7 of wet soil, 6.7 of wet sand; half of 17.24 L comes along.
/// Prunings, and water topped up, that were measured go before what is reckoned.
#[test]
fn the_cube_is_carried_with_its_bed_and_half_its_water() {
    let text = std::fs::read_to_string("demo-tanks/reading-room-cube.toml").unwrap();
    let poured = "\n[[events]]\nday = 100\ntopped_up = \"3 L\"\n[[events]]\nday = 107\ntopped_up = \"2 L\"\n[[events]]\nday = 114\ntopped_up = \"2.4 L\"\n";
    let design = lentic::spec::parse(&(text + poured)).unwrap();
    let asked = UpkeepQuestions {
        day: Some(120),
        moved: true,
        ..UpkeepQuestions::default()
    };
    let options = Options {
        members: 0,
        ..Options::default()
    };
    let found = upkeep(&design, options, &asked, &|_| {}).unwrap();
    let moved = found.moved.unwrap();
    near(moved.carried_kg, 13.9, 0.05);
    near(moved.water_kept_l, 8.6, 0.05);
    assert!(!moved.bed_out);
    near(found.upkeep.top_up_l_per_week, 2.2, 1e-9);
}

/// A degree as calcium bicarbonate is 0.3567 meq/L of 59.5 (a handbook of chemistry) and 44.5
/// (from memory) S cm2/mol: 37 uS/cm at infinite dilution, less in company.
#[test]
fn a_degree_conducts_a_little_less_than_its_ions_alone() {
    use lentic::units::{Alkalinity, Hardness};
    let degree =
        lentic::water::tap::conductivity(None, Hardness::from_dgh(1.0), Alkalinity::from_dkh(1.0));
    let alone = 0.3567 * (59.5 + 44.5);
    near(alone, 37.1, 0.05);
    assert!(
        (0.85 * alone..alone).contains(&degree.typical),
        "{degree:?}"
    );
}
