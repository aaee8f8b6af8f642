//! Laws of the start-up model: balances, limits, and what events may do.

use lentic::source::Band;
use lentic::startup::{
    DailyFeed, Inputs, ModelEvent, ModelEventKind, Parameters, PlantedMass, State, Trajectory, run,
    supply,
};
use lentic::units::{Area, Concentration, Flow, Length, Mass, PhotonFlux, Share, Temperature};

const DEPTH_M: f64 = 0.16;

fn tank(events: Vec<ModelEvent>) -> Inputs {
    let floor = Area::from_m2(0.1);
    Inputs {
        floor,
        water: floor * Length::from_m(DEPTH_M),
        soil_depth: Length::from_mm(25.0),
        cap_depth: Length::from_mm(25.0),
        planting: PlantedMass {
            cover: Share::from_percent(20.0),
            floating: Mass::from_g(0.1),
            fixing: Mass::ZERO,
            fast: Mass::from_g(2.0),
            slow: Mass::from_g(1.0),
        },
        light: PhotonFlux::from_umol_m2_s(60.0),
        light_hours: 9.0,
        temperature: Temperature::from_celsius(23.0),
        ph: 7.0,
        oxygen: Concentration::from_mg_l(7.0),
        leaf_film: Length::from_mm(1.0),
        through_sponge: Flow::ZERO,
        feed: DailyFeed::default(),
        floaters_above: Some(Share::from_percent(30.0)),
        stems_above_g_m2: Some(200.0),
        events,
        changes_by_reading: None,
    }
}

fn bare(events: Vec<ModelEvent>) -> Inputs {
    Inputs {
        planting: PlantedMass::default(),
        light: PhotonFlux::ZERO,
        ..tank(events)
    }
}

fn on(day: f64, kind: ModelEventKind) -> ModelEvent {
    ModelEvent { day, kind }
}

fn numbers() -> Parameters<f64> {
    Parameters::<Band>::reference().central()
}

fn follow(inputs: &Inputs) -> Trajectory {
    run(inputs, &numbers(), 40).unwrap_or_else(|error| panic!("{error}"))
}

fn everything() -> Vec<ModelEvent> {
    let half = Share::from_percent(50.0);
    let some = PlantedMass {
        cover: Share::from_percent(10.0),
        floating: Mass::from_g(0.2),
        fixing: Mass::from_g(0.1),
        fast: Mass::from_g(1.0),
        slow: Mass::from_g(0.5),
    };
    let feed = DailyFeed {
        mass_per_day: Mass::from_mg(40.0),
        protein: Share::from_percent(45.0),
    };
    // out of order on purpose, and one after the end
    vec![
        on(21.3, ModelEventKind::Fed(feed)),
        on(7.0, ModelEventKind::WaterChange(half)),
        on(9.51, ModelEventKind::CapAdded(Length::from_mm(10.0))),
        on(14.0, ModelEventKind::PlantsAdded(some)),
        on(14.0, ModelEventKind::Disturbed(Share::from_percent(10.0))),
        on(28.0, ModelEventKind::PlantsRemoved(some)),
        on(0.0, ModelEventKind::WaterChange(half)),
        on(99.0, ModelEventKind::WaterChange(half)),
    ]
}

#[track_caller]
fn assert_near(value: f64, expected: f64, relative: f64) {
    let off = (value - expected).abs();
    assert!(off <= relative * expected.abs(), "{value} for {expected}");
}

#[test]
fn a_cap_that_oxidises_turns_ammonia_into_nitrate_and_keeps_the_nitrogen() {
    let mut numbers = numbers();
    let plain = run(&bare(Vec::new()), &numbers, 14).unwrap();
    numbers.cap.oxidised_share = 0.5;
    let oxic = run(&bare(Vec::new()), &numbers, 14).unwrap();
    let last = |course: &Trajectory| *course.samples.last().unwrap();
    let (plain, after) = (last(&plain), last(&oxic));
    assert!(after.state.ammonia < 0.7 * plain.state.ammonia);
    assert!(after.state.nitrate > plain.state.nitrate);
    assert_near(after.nitrogen_g_m2, oxic.samples[0].nitrogen_g_m2, 1e-9);
}

#[test]
fn nitrogen_and_phosphorus_are_kept_through_every_kind_of_event() {
    let trajectory = follow(&tank(everything()));
    let start = trajectory.samples[0].nitrogen_g_m2;
    for sample in &trajectory.samples {
        assert_near(sample.nitrogen_g_m2, start, 1e-9);
        let phosphorus = trajectory.samples[0].phosphorus_g_m2;
        assert_near(sample.phosphorus_g_m2, phosphorus, 1e-9);
    }
    let last = trajectory.samples.last().unwrap().state;
    for flow in [
        last.denitrified_n,
        last.harvested_n,
        last.detritus_n,
        last.released_n,
    ] {
        assert!(flow > 0.0);
    }
    assert!((last.added_n).abs() > 1e-3);
}

#[test]
fn no_amount_falls_below_zero() {
    for inputs in [tank(vec![]), tank(everything()), bare(everything())] {
        for sample in &follow(&inputs).samples {
            let day = sample.day;
            let mut amounts = sample.state;
            // water changes and harvest may take out more than came in, and plants may make
            // more alkalinity than bacteria use
            (amounts.added_n, amounts.added_p, amounts.alkalinity_used) = (0.0, 0.0, 0.0);
            for (place, amount) in amounts.into_array().into_iter().enumerate() {
                assert!(amount > -1e-9, "{place} is {amount} on day {day}");
            }
        }
    }
}

#[test]
fn a_water_change_dilutes_towards_tap_water() {
    let plain = follow(&bare(vec![]));
    let share = Share::from_percent(40.0);
    let changed = follow(&bare(vec![on(10.0, ModelEventKind::WaterChange(share))]));
    let before = changed.at_day(10).unwrap().state;
    let undiluted = plain.at_day(10).unwrap().state;
    assert_near(before.ammonia, undiluted.ammonia, 1e-5);
    // three hours later little has come after
    let after = changed.samples[10 * 8 + 1].state;
    let later = plain.samples[10 * 8 + 1].state;
    assert_near(after.ammonia, later.ammonia * 0.6, 0.02);
    assert_near(after.nitrate, later.nitrate * 0.6 + 0.4, 0.02);
    assert_near(after.soil_n, later.soil_n, 1e-3);
}

#[test]
fn events_that_do_nothing_change_nothing() {
    let nothing = vec![
        on(3.3, ModelEventKind::WaterChange(Share::ZERO)),
        on(5.0, ModelEventKind::Disturbed(Share::ZERO)),
        on(6.7, ModelEventKind::PlantsAdded(PlantedMass::default())),
        on(8.0, ModelEventKind::PlantsRemoved(PlantedMass::default())),
        on(9.0, ModelEventKind::Fed(DailyFeed::default())),
    ];
    let (plain, cut) = (follow(&tank(vec![])), follow(&tank(nothing)));
    for (one, other) in plain.days().zip(cut.days()) {
        for (value, expected) in pairs(&other.state, &one.state) {
            assert!((value - expected).abs() < 2e-5 * expected.abs() + 2e-5);
        }
    }
}

fn pairs(one: &State, other: &State) -> impl Iterator<Item = (f64, f64)> {
    one.into_array().into_iter().zip(other.into_array())
}

#[test]
fn clean_sand_stops_the_release_until_it_fills() {
    let added = on(15.0, ModelEventKind::CapAdded(Length::from_mm(15.0)));
    let (plain, capped) = (follow(&bare(vec![])), follow(&bare(vec![added])));
    let release =
        |trajectory: &Trajectory, sample: usize| trajectory.samples[sample].release_g_m2_d;
    assert!(release(&capped, 15 * 8 + 1) < 0.3 * release(&plain, 15 * 8 + 1));
    assert!(release(&capped, 25 * 8) > 0.6 * release(&plain, 25 * 8));
    assert!(release(&capped, 25 * 8) < 0.9 * release(&plain, 25 * 8));
}

/// On the day of filling, sand laid in two goes is one cap.
#[test]
fn a_cap_laid_in_two_goes_on_day_0_is_one_cap() {
    let second = on(0.0, ModelEventKind::CapAdded(Length::from_mm(10.0)));
    let twice = Inputs {
        cap_depth: Length::from_mm(15.0),
        ..bare(vec![second])
    };
    for (one, other) in follow(&bare(vec![])).days().zip(follow(&twice).days()) {
        assert_near(
            other.state.released_n + 1.0,
            one.state.released_n + 1.0,
            1e-9,
        );
    }
}

#[test]
fn stirring_brings_its_share_of_the_soil_nitrogen_up_at_once() {
    let stirred = on(12.0, ModelEventKind::Disturbed(Share::from_percent(10.0)));
    let (plain, cloudy) = (follow(&bare(vec![])), follow(&bare(vec![stirred])));
    let before = plain.at_day(12).unwrap().state;
    let jump = 0.1 * before.soil_n;
    assert_near(cloudy.stirred_g_m2 - plain.stirred_g_m2, jump, 1e-8);
    let after = cloudy.samples[12 * 8 + 1].state.ammonia;
    let otherwise = plain.samples[12 * 8 + 1].state.ammonia;
    assert_near(after - otherwise, jump / DEPTH_M, 0.15);
}

/// An old, rooted bed still holds ammonium on its exchanger. Hungry plants take it within
/// hours, so that it is measured as it comes up.
#[test]
fn stirring_an_old_bed_brings_ammonia_up() {
    let stirred = vec![on(
        300.0,
        ModelEventKind::Disturbed(Share::from_percent(30.0)),
    )];
    let of = |events| run(&tank(events), &numbers(), 301).unwrap().stirred_g_m2;
    let brought_up = (of(stirred) - of(vec![])) / DEPTH_M;
    assert!(brought_up > 0.01, "{brought_up} mg N/L");
}

#[test]
fn plants_taken_out_are_gone_and_new_ones_settle_in_anew() {
    let all = PlantedMass {
        cover: Share::from_percent(100.0),
        floating: Mass::from_kg(1.0),
        fixing: Mass::from_kg(1.0),
        fast: Mass::from_kg(1.0),
        slow: Mass::from_kg(1.0),
    };
    let cleared = follow(&tank(vec![on(10.0, ModelEventKind::PlantsRemoved(all))]));
    let after = cleared.at_day(11).unwrap().state;
    for mass in [after.floating, after.fast, after.slow, after.fast_n] {
        assert!(mass.abs() < 1e-6, "{mass}");
    }
    // a stand planted late grows as slowly at first as one planted on day 0
    let late = Inputs {
        planting: PlantedMass::default(),
        ..tank(vec![on(
            10.0,
            ModelEventKind::PlantsAdded(tank(vec![]).planting),
        )])
    };
    let early = follow(&tank(vec![]));
    let lost = |trajectory: &Trajectory, from: u32| {
        let mass = |day| trajectory.at_day(day).unwrap().state.fast;
        mass(from + 3) / mass(from + 1)
    };
    assert!(lost(&early, 0) < 1.0);
    assert_near(lost(&follow(&late), 10), lost(&early, 0), 0.02);
}

#[test]
fn feed_raises_ammonia_by_its_protein() {
    let feed = DailyFeed {
        mass_per_day: Mass::from_g(0.1),
        protein: Share::from_percent(45.0),
    };
    let fed = follow(&bare(vec![on(2.0, ModelEventKind::Fed(feed))]));
    let plain = follow(&bare(vec![]));
    let more =
        |day| fed.at_day(day).unwrap().state.added_n - plain.at_day(day).unwrap().state.added_n;
    // 4.14 mg N a day from 0.10 g of feed with 45 % protein (Timmons and Ebeling), and in
    // faeces 0.8 of what is left of its 7.2 mg
    assert_near(more(3) * 0.1 * 1e3, 4.14 + 0.8 * 3.06, 1e-3);
    assert_near(more(12), 10.0 * more(3), 1e-6);
}

/// Charge: whatever way nitrogen goes, alkalinity falls by an equivalent for each mole of
/// nitrite and nitrate that the water gains and each of ammonium that it loses, at 14.007 g to
/// the mole: 0.071393 meq to the milligram.
#[test]
fn alkalinity_is_used_by_the_charge_of_the_nitrogen_in_the_water() {
    let feed = DailyFeed {
        mass_per_day: Mass::from_g(0.1),
        protein: Share::from_percent(45.0),
    };
    for inputs in [
        bare(vec![]),
        bare(vec![on(2.0, ModelEventKind::Fed(feed))]),
        tank(vec![on(2.0, ModelEventKind::Fed(feed))]),
    ] {
        let trajectory = follow(&inputs);
        let charge = |state: &State| state.nitrite + state.nitrate - state.ammonia;
        let first = charge(&trajectory.samples[0].state);
        for sample in trajectory.days() {
            let off = sample.state.alkalinity_used - 0.071_393 * (charge(&sample.state) - first);
            assert!(off.abs() < 1e-4, "{off} on day {}", sample.day);
        }
    }
}

#[test]
fn a_water_change_renews_its_share_of_the_alkalinity() {
    let share = Share::from_percent(40.0);
    let changed = follow(&bare(vec![on(30.0, ModelEventKind::WaterChange(share))]));
    let before = changed.at_day(30).unwrap().state.alkalinity_used;
    let after = changed.samples[30 * 8 + 1].state.alkalinity_used;
    assert_near(after, 0.6 * before, 0.03);
}

#[test]
fn the_supply_asks_neither_plants_nor_light_nor_water_changes() {
    let planted = supply(
        &tank(vec![on(
            4.0,
            ModelEventKind::WaterChange(Share::from_percent(50.0)),
        )]),
        &numbers(),
        21,
    );
    let empty = supply(&bare(vec![]), &numbers(), 21);
    assert_eq!(planted, empty);
    let more_sand = on(0.0, ModelEventKind::CapAdded(Length::from_mm(25.0)));
    let thicker = supply(&bare(vec![more_sand]), &numbers(), 21).unwrap();
    assert!(thicker.released_g_m2 < 0.7 * empty.unwrap().released_g_m2);
}

#[test]
fn a_bed_without_a_cap_releases_at_once() {
    let open = Inputs {
        cap_depth: Length::ZERO,
        ..bare(vec![])
    };
    let trajectory = follow(&open);
    assert!(
        trajectory
            .samples
            .iter()
            .all(|sample| sample.release_g_m2_d.is_finite())
    );
    let peak = trajectory.peaks().release;
    assert!(peak.day < 1.0 && peak.value > 0.1, "{peak:?}");
}

#[test]
fn numbers_that_make_no_tank_are_an_error_not_a_panic() {
    let dry = Inputs {
        water: lentic::units::Volume::ZERO,
        ..bare(vec![])
    };
    assert!(run(&dry, &numbers(), 5).is_err());
    let odd = Inputs {
        events: vec![on(f64::NAN, ModelEventKind::WaterChange(Share::ZERO))],
        ..bare(vec![])
    };
    assert_eq!(run(&odd, &numbers(), 5), run(&bare(vec![]), &numbers(), 5));
}

/// Geometry: half the surface covered once leaves the other half and what passes a leaf.
#[test]
fn floaters_that_feed_from_the_air_shade_as_others_do() {
    let numbers = numbers();
    let floor = tank(vec![]).floor;
    let half = PlantedMass {
        fixing: Mass::from_g(0.5 * numbers.floating.closed_layer * floor.m2()),
        ..PlantedMass::default()
    };
    let lit = |planting, events| Inputs {
        planting,
        light: PhotonFlux::from_umol_m2_s(60.0),
        ..bare(events)
    };
    let light = |inputs: &Inputs, day: u32| follow(inputs).at_day(day).unwrap().light_umol_m2_s;
    let open = lit(PlantedMass::default(), vec![]);
    let under = lit(half, vec![]);
    let share = 0.5 + 0.5 * (1.0 - numbers.floating.absorptance);
    assert_near(light(&under, 0), share * light(&open, 0), 1e-12);
    let day_state = |inputs: &Inputs, day: u32| {
        let trajectory = follow(inputs);
        lentic::startup::day_state(inputs, &numbers, trajectory.at_day(day).unwrap())
    };
    assert_near(day_state(&under, 30).cover.fraction(), 0.5, 1e-12);
    let later = lit(
        PlantedMass::default(),
        vec![on(10.0, ModelEventKind::PlantsAdded(half))],
    );
    assert_near(day_state(&later, 10).cover.fraction(), 0.0, 1e-12);
    assert_near(day_state(&later, 11).cover.fraction(), 0.5, 1e-12);
    let taken = lit(half, vec![on(10.0, ModelEventKind::PlantsRemoved(half))]);
    assert_near(day_state(&taken, 11).cover.fraction(), 0.0, 1e-12);
}
