//! Laws of a day and night: balances, limits, and what more or less of a thing may do.

use lentic::design::{Design, DutyHours, FlowDevice};
use lentic::night::sizing::{AirNeed, air_needed};
use lentic::night::stock::{Diet, carried};
use lentic::night::{
    Ceiling, Cycle, Ensemble, Kept, NightInputs, Rates, Users, cycle, outage, outlook,
};
use lentic::plants::shade::transmission;
use lentic::source::Band;
use lentic::startup;
use lentic::state::DayState;
use lentic::state::movement::Movement;
use lentic::units::{
    Alkalinity, Area, Concentration, Duration, Flow, Length, Mass, MassRate, Share, Temperature,
};
use lentic::water::atmosphere;
use proptest::prelude::*;

use crate::{command, demo, random};

const ENSEMBLE: Ensemble = Ensemble {
    members: 16,
    seed: 5,
};

fn planted() -> NightInputs {
    let floor = Area::from_m2(0.18);
    NightInputs {
        surface: floor,
        floor,
        water: floor * Length::from_cm(27.0),
        depth: Length::from_cm(27.0),
        temperature: Temperature::from_celsius(24.0),
        pressure: atmosphere::SEA_LEVEL,
        alkalinity: Alkalinity::from_dkh(4.0),
        light: Band::exact(60.0),
        light_hours: 9.0,
        ceiling: Ceiling::Open,
        device: FlowDevice::None,
        flow: Flow::ZERO,
        device_depth: Length::from_cm(20.0),
        duty: DutyHours::Always,
        emergent: Share::ZERO,
        animals: vec![Kept {
            body: Mass::from_g(0.35),
            count: 8.0,
            air_breathing: false,
        }],
        feed: MassRate::from_g_d(0.05),
        surface_film: false,
        bicarbonate_users: Users::UNKNOWN,
        state: DayState {
            day: 30.0,
            floating: Mass::from_g(1.2),
            cover: Share::from_percent(30.0),
            fast: Mass::from_g(12.0),
            slow: Mass::from_g(3.0),
            algae: Mass::from_g(0.02),
            ammonia: Concentration::from_mg_l(0.1),
            nitrate_n: Concentration::from_mg_l(1.0),
            ammonia_oxidised: MassRate::from_g_d(0.004),
            nitrite_oxidised: MassRate::from_g_d(0.004),
            nitrogen_taken: MassRate::from_g_d(0.01),
            ..DayState::LIFELESS
        },
    }
}

fn lifeless() -> NightInputs {
    NightInputs {
        animals: Vec::new(),
        feed: MassRate::ZERO,
        state: DayState {
            day: 1e6,
            ..DayState::LIFELESS
        },
        ..planted()
    }
}

fn central(inputs: &NightInputs) -> Rates<f64> {
    Rates::of(inputs).central()
}

#[track_caller]
fn follow(inputs: &NightInputs) -> Cycle {
    cycle(inputs, &central(inputs)).unwrap()
}

#[track_caller]
fn assert_near(value: f64, expected: f64, limit: f64) {
    let difference = (value - expected).abs();
    assert!(
        difference <= limit,
        "{value} for {expected}: off by {difference}, limit {limit}"
    );
}

#[test]
fn oxygen_balances_over_the_day_and_the_day_repeats_itself() {
    let stone = NightInputs {
        device: FlowDevice::AirStone,
        flow: Flow::from_l_min(0.5),
        duty: DutyHours::Night,
        ..planted()
    };
    for tank in [planted(), stone, lifeless()] {
        let night = follow(&tank);
        let change = night.dawn.oxygen.mg_l() - night.course[0].oxygen.mg_l();
        assert_near(night.totals.sum(), change, 1e-9);
        let carbon = night.dawn.carbon_mg_l - night.course[0].carbon_mg_l;
        assert_near(night.carbon.sum(), carbon, 1e-9);
        assert!(night.drift.0.abs() < 1e-6 && night.drift.1.abs() < 1e-6);
    }
    let totals = follow(&planted()).totals;
    assert!(totals.photosynthesis > 1.0 && totals.plants < -1.0 && totals.animals < -0.5);
    assert!(totals.bed < -1.0 && totals.nitrification < -0.1 && totals.exchange > 0.0);
}

#[test]
fn water_in_which_nothing_lives_is_in_balance_with_the_air() {
    let tank = lifeless();
    let mut rates = central(&tank);
    rates.oxygen_use.bed = 0.0;
    let night = cycle(&tank, &rates).unwrap();
    for hour in &night.course {
        assert_near(hour.oxygen.mg_l(), 8.42, 0.01); // iso_5814, 24 C
    }
    // 600 ppm over 420 ppm, which give 0.61 mg/L at 25 C
    assert_near(night.dawn.carbon_dioxide.mg_l(), 0.61 * 600.0 / 420.0, 0.04);
}

#[test]
fn a_storm_of_air_holds_the_water_at_saturation() {
    let tank = NightInputs {
        device: FlowDevice::AirStone,
        flow: Flow::from_l_min(1e5),
        ..planted()
    };
    let night = follow(&tank);
    assert_near(night.low.oxygen.mg_l(), night.saturation.mg_l(), 0.01);
    assert_near(night.dusk.oxygen.mg_l(), night.saturation.mg_l(), 0.01);
}

#[test]
fn shut_off_and_dark_a_tank_runs_out_of_oxygen_and_not_below_none() {
    let mut tank = NightInputs {
        light_hours: 0.0,
        ..planted()
    };
    tank.state.cover = Share::from_fraction(1.0);
    let mut rates = central(&tank);
    rates.aeration.mat_passage = 0.0;
    let night = cycle(&tank, &rates).unwrap();
    for hour in &night.course {
        assert_near(hour.oxygen.mg_l(), 0.0, 1e-5);
    }
    // shut off, dark and lifeless it stays as it is
    let still = NightInputs {
        animals: Vec::new(),
        feed: MassRate::ZERO,
        state: DayState {
            cover: Share::from_fraction(1.0),
            ..DayState::LIFELESS
        },
        ..tank
    };
    rates.oxygen_use.bed = 0.0;
    let night = cycle(&still, &rates).unwrap();
    assert_near(night.totals.exchange, 0.0, 1e-12);
    assert_near(night.low.oxygen.mg_l(), night.dusk.oxygen.mg_l(), 1e-12);
}

#[test]
fn oxygen_falls_and_carbon_dioxide_rises_through_the_night() {
    let night = follow(&planted());
    let dark: Vec<_> = night.course.iter().filter(|hour| hour.hour > 9.0).collect();
    for pair in dark.windows(2) {
        assert!(pair[1].carbon_dioxide > pair[0].carbon_dioxide && pair[1].ph < pair[0].ph);
        assert!(pair[1].oxygen < pair[0].oxygen || pair[1].oxygen < night.saturation);
    }
    assert_near(night.low.hour, 24.0, 0.0);
    assert_near(night.low.oxygen.mg_l(), night.dawn.oxygen.mg_l(), 1e-9);
}

#[test]
fn more_of_what_breathes_lowers_dawn_and_more_of_what_lets_in_raises_it() {
    let dawn = |tank: &NightInputs| follow(tank).low.oxygen.mg_l();
    let base = planted();
    let as_is = dawn(&base);
    let mut crowded = base.clone();
    crowded.animals[0].count = 20.0;
    let mut flushing = base.clone();
    flushing.state.ammonia_oxidised = MassRate::from_g_d(0.04);
    for worse in [&crowded, &flushing] {
        assert!(dawn(worse) < as_is - 0.05);
    }
    // by day a lid keeps oxygen in as well: it is in dim light that it suffocates
    let dim = NightInputs {
        light: Band::exact(15.0),
        ..base.clone()
    };
    let lidded = NightInputs {
        ceiling: Ceiling::Lid,
        ..dim.clone()
    };
    assert!(dawn(&lidded) < dawn(&dim) - 0.5);
    let stone = |l_min: f64, duty| NightInputs {
        device: FlowDevice::AirStone,
        flow: Flow::from_l_min(l_min),
        duty,
        ..base.clone()
    };
    let rising: Vec<f64> = [0.0, 0.2, 1.0, 5.0]
        .map(|l_min| dawn(&stone(l_min, DutyHours::Always)))
        .to_vec();
    assert_near(rising[0], as_is, 1e-5);
    assert!(rising.is_sorted() && rising[1] > as_is + 0.1);
    assert!(dawn(&stone(0.5, DutyHours::Night)) > dawn(&stone(0.5, DutyHours::Day)) + 0.1);
    let pump = NightInputs {
        device: FlowDevice::Pump,
        flow: Flow::from_l_h(300.0),
        ..base
    };
    assert!(dawn(&pump) > as_is + 0.3);
}

#[test]
fn the_typical_of_an_ensemble_is_near_one_run_and_its_band_is_in_order() {
    let tank = planted();
    let ranges = Rates::of(&tank);
    let alone = outlook(
        &tank,
        &ranges,
        Ensemble {
            members: 0,
            seed: 1,
        },
    )
    .unwrap();
    // members are followed less closely than a single day
    assert_near(
        alone.low_mg_l.typical,
        follow(&tank).low.oxygen.mg_l(),
        0.005,
    );
    let spread = outlook(&tank, &ranges, ENSEMBLE).unwrap();
    assert_eq!(spread, outlook(&tank, &ranges, ENSEMBLE).unwrap());
    assert!(spread.low_mg_l.is_ordered() && spread.low_mg_l.low < spread.low_mg_l.typical - 0.2);
    assert!(spread.low_mg_l.contains(alone.low_mg_l.typical));
    assert_eq!(spread.hours.len(), 25);
    assert!(
        spread
            .hours
            .iter()
            .all(|hour| hour.oxygen_mg_l.is_ordered())
    );
    assert!(spread.hours_under_5.typical >= spread.hours_under_3.typical);
}

#[test]
fn members_that_do_not_fill_a_group_count_once() {
    let tank = planted();
    let ranges = Rates::of(&tank);
    let three = Ensemble {
        members: 3,
        seed: 9,
    };
    let band = outlook(&tank, &ranges, three).unwrap().low_mg_l;
    let points = lentic::numerics::sobol::Sobol::new(9);
    let mut alone: Vec<f64> = (0..3)
        .map(|member| {
            let rates = ranges.draw(|place| points.coordinate(member, place));
            cycle(&tank, &rates).unwrap().low.oxygen.mg_l()
        })
        .collect();
    alone.sort_by(f64::total_cmp);
    assert_near(band.typical, alone[1], 0.01);
    // 10 % of three lies a fifth of the way from the first to the second
    assert_near(band.low, alone[0] + 0.2 * (alone[1] - alone[0]), 0.01);
}

#[test]
fn the_air_found_is_enough_and_less_is_not() {
    let limit = Concentration::from_mg_l(5.0);
    let mut tank = planted();
    tank.animals[0].count = 16.0;
    let AirNeed::Air(air) = air_needed(&tank, ENSEMBLE, limit).unwrap() else {
        panic!("the tank needs air");
    };
    let low = |flow: Flow, duty| {
        let aired = NightInputs {
            device: FlowDevice::AirStone,
            device_depth: tank.depth,
            flow,
            duty,
            ..tank.clone()
        };
        let spread = outlook(&aired, &Rates::of(&aired), ENSEMBLE).unwrap();
        spread.low_mg_l.low
    };
    assert!(low(air.always * 1.05, DutyHours::Always) >= 5.0);
    assert!(low(air.always * 0.9, DutyHours::Always) < 5.0);
    let by_night = air.night_only.unwrap();
    assert!(low(by_night * 1.05, DutyHours::Night) >= 5.0);
    assert!(low(by_night * 0.9, DutyHours::Night) < 5.0);
    // 27 cm of water: 2.64 kPa, and a stone's pores
    assert!(air.pressure_kpa.low > 2.6 && air.pressure_kpa.high < 10.0);
}

#[test]
fn air_is_not_asked_for_where_the_surface_or_the_pump_is_enough_or_none_would_be() {
    let limit = Concentration::from_mg_l(5.0);
    let need = |tank: &NightInputs| air_needed(tank, ENSEMBLE, limit).unwrap();
    let bare = NightInputs {
        floor: Area::from_m2(0.02),
        ..lifeless()
    };
    assert_eq!(need(&bare), AirNeed::SurfaceIsEnough);
    let mut sparse = planted();
    sparse.state.fast = Mass::from_g(3.0);
    let pump = NightInputs {
        device: FlowDevice::Pump,
        flow: Flow::from_l_h(1000.0),
        ..sparse
    };
    assert_eq!(need(&pump), AirNeed::PumpIsEnough);
    let high = NightInputs {
        temperature: Temperature::from_celsius(38.0),
        pressure: atmosphere::pressure_at(Length::from_m(3000.0)),
        ..planted()
    };
    assert!(matches!(need(&high), AirNeed::OutOfReach { dawn, .. } if dawn < limit));
}

#[test]
fn the_animals_carried_bring_dawn_to_its_limit() {
    let mut tank = planted();
    tank.state.fast = Mass::from_g(4.0);
    let diet = Diet {
        body: Mass::from_g(0.35),
        feed_per_d: Share::from_percent(2.0),
        protein: Share::from_percent(45.0),
    };
    let found = carried(&tank, ENSEMBLE, &diet, Concentration::from_mg_l(4.0)).unwrap();
    assert!(found.by_oxygen_g.is_ordered() && found.by_oxygen_g.typical > 0.1);
    tank.animals = vec![Kept {
        body: diet.body,
        count: found.by_oxygen_g.typical / 0.35,
        air_breathing: false,
    }];
    tank.feed = MassRate::from_g_d(0.02 * found.by_oxygen_g.typical);
    let dawn = outlook(&tank, &Rates::of(&tank), ENSEMBLE)
        .unwrap()
        .low_mg_l;
    assert_near(dawn.typical, 4.0, 0.05);
    // 0.01 g N/d over 0.02 x 0.45 x 0.092 g N per g and day
    assert_near(found.by_nitrogen.g(), 0.01 / 0.000_828, 1e-6);
    let examples = found.examples(tank.water, tank.water);
    assert_eq!(examples.len(), 6);
    let least = found.least().g();
    assert!(
        examples
            .iter()
            .all(|e| f64::from(e.count) * e.animal.mass_g.typical <= least)
    );
}

#[test]
fn a_power_cut_is_shorter_from_dawn_and_never_ends_a_lifeless_tank() {
    let limit = Concentration::from_mg_l(3.0);
    let mut crowded = planted();
    crowded.animals[0].count = 20.0;
    let cut = outage::outage(&crowded, ENSEMBLE, limit).unwrap();
    // what never comes within the time followed comes last
    let hours = |lasting: Option<Duration>| lasting.map_or(f64::INFINITY, Duration::hours);
    assert!(hours(cut.from_dawn.low) <= hours(cut.from_dawn.typical));
    assert!(hours(cut.from_dawn.typical) <= hours(cut.from_dusk.typical));
    assert!(hours(cut.from_dawn.low) < hours(cut.from_dusk.low));
    let cut = outage::outage(&lifeless(), ENSEMBLE, limit).unwrap();
    assert_eq!(cut.from_dawn.typical, None);
}

/// Everything at its ends at once: nothing panics, nothing is lost to infinity.
#[test]
fn extremes_are_answered_with_numbers() {
    let surfaces = [
        (Ceiling::Open, FlowDevice::AirStone),
        (Ceiling::Lid, FlowDevice::Pump),
    ];
    for (ceiling, device) in surfaces {
        for celsius in [0.0, 40.0] {
            for l_min in [0.0, 1000.0] {
                for (light, hours) in [(0.0, 8.0), (60.0, 0.0), (2000.0, 24.0)] {
                    for state in [DayState::LIFELESS, planted().state] {
                        let mut tank = NightInputs {
                            ceiling,
                            device,
                            temperature: Temperature::from_celsius(celsius),
                            pressure: atmosphere::pressure_at(Length::from_m(3000.0)),
                            flow: Flow::from_l_min(l_min),
                            light: Band::exact(light),
                            light_hours: hours,
                            state,
                            ..planted()
                        };
                        tank.animals[0].body = Mass::ZERO;
                        assert_finite(&tank);
                    }
                }
            }
        }
    }
}

#[track_caller]
fn assert_finite(tank: &NightInputs) {
    let night = follow(tank);
    for hour in &night.course {
        assert!(
            hour.oxygen.mg_l().is_finite() && hour.oxygen.mg_l() > -1e-6,
            "{tank:?}"
        );
        assert!(hour.ph.is_finite() && hour.carbon_dioxide.mg_l().is_finite());
    }
    let movement = Movement::of(&tank.stirred());
    assert!(movement.velocity_cm_s.is_ordered() && movement.film_mm.is_ordered());
    assert!(movement.uptake_pct.is_ordered() && movement.uptake_pct.high <= 100.0);
}

/// Light that the plants under water and the algae absorb in a day, mol: what enters the
/// water, by their share of what takes it.
fn absorbed_mol(tank: &NightInputs, rates: &Rates<f64>) -> f64 {
    let shade = &rates.shade;
    let floor_m2 = tank.floor.m2();
    let under_water = tank.state.fast.g() * (1.0 - tank.emergent.fraction()) + tank.state.slow.g();
    let plants = shade.plant_extinction * under_water / floor_m2
        + shade.algae_extinction * tank.state.algae.g() / floor_m2;
    let all = plants + shade.water_extinction * (tank.water / tank.floor).m();
    let top = rates.light * transmission(tank.state.cover.fraction(), shade.floating_absorptance);
    let taken = top * (1.0 - (-all).exp()) * plants / all;
    taken * 1e-6 * 3600.0 * tank.light_hours * floor_m2
}

/// Oxygen that they give off in a day per light absorbed, mol/mol; none where they
/// absorb none. Floaters are left out: theirs is not from light in the water.
fn oxygen_per_light(tank: &NightInputs) -> Option<f64> {
    let mut bare = tank.clone();
    bare.state.floating = Mass::ZERO;
    let rates = central(&bare);
    let absorbed = absorbed_mol(&bare, &rates);
    (absorbed > 1e-9).then(|| {
        let mg = follow(&bare).totals.photosynthesis * bare.water.litres();
        mg * 1e-3 / 31.998 / absorbed
    })
}

/// Eight photons to the oxygen, 0.125 (from memory), and a twentieth for what is not
/// green.
const MOST_PER_LIGHT: f64 = 0.13;

#[test]
fn no_demo_tank_gives_more_oxygen_than_its_light_can_pay_for() {
    for path in demo::tanks() {
        let text = std::fs::read_to_string(command::root().join(&path)).unwrap();
        let design = lentic::spec::parse(&text).unwrap();
        let tank = filled(&design);
        let Some(found) = oxygen_per_light(&tank) else {
            continue;
        };
        println!("{path}: {found:.3} mol of oxygen per mol of light");
        assert!(found <= MOST_PER_LIGHT, "{path}: {found}");
    }
}

/// A design as planted, all its animals in.
fn filled(design: &Design) -> NightInputs {
    let inputs = startup::Inputs::of(design);
    let parameters = startup::Parameters::<Band>::of(design).central();
    let run = startup::run(&inputs, &parameters, 1).unwrap();
    let state = startup::day_state(&inputs, &parameters, run.samples.first().unwrap());
    NightInputs::of(design, &state, startup::surface_light(design)).with_all_animals(design)
}

proptest! {
    #![proptest_config(random::config(12))]

    #[test]
    fn oxygen_carbon_and_light_balance_in_any_design(drawn in random::drawn()) {
        let tank = filled(&drawn.design);
        let night = follow(&tank);
        let scale = 1.0 + night.totals.photosynthesis.abs() + night.totals.exchange.abs();
        let change = night.dawn.oxygen.mg_l() - night.course[0].oxygen.mg_l();
        assert_near(night.totals.sum(), change, 1e-9 * scale);
        let carbon = night.dawn.carbon_mg_l - night.course[0].carbon_mg_l;
        let scale = 1.0 + night.carbon.breathed.abs() + night.carbon.exchange.abs();
        assert_near(night.carbon.sum(), carbon, 1e-9 * scale);
        if let Some(found) = oxygen_per_light(&tank) {
            prop_assert!(found <= MOST_PER_LIGHT, "{}", found);
        }
    }
}
