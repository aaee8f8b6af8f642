//! The first weeks of a soil tank as the trade tells them, in the central run of a cube
//! of 22.2 cm with 25 mm of soil, 25 mm of sand and 16 cm of water.

use lentic::source::Band;
use lentic::startup::{Inputs, Parameters, PlantedMass, State, Trajectory, run};
use lentic::units::{Length, Mass, PhotonFlux, Share};

const LAMP_UMOL_M2_S: f64 = 100.0;
/// Ammonia and nitrite count as down below this, mg N/L.
const DOWN_MG_N_L: f64 = 0.25;

/// Dry plants per area of floor, with the share of the surface under floaters.
#[derive(Clone, Copy, Default)]
struct Stand {
    cover_pct: f64,
    fast_g_m2: f64,
    slow_g_m2: f64,
}

fn cube(lamp_umol_m2_s: f64, stand: Stand) -> Inputs {
    let cube = Inputs::reference();
    let dry = |g_m2: f64| Mass::from_g(g_m2 * cube.floor.m2());
    Inputs {
        planting: PlantedMass {
            cover: Share::from_percent(stand.cover_pct),
            fast: dry(stand.fast_g_m2),
            slow: dry(stand.slow_g_m2),
            ..PlantedMass::default()
        },
        light: PhotonFlux::from_umol_m2_s(lamp_umol_m2_s),
        floaters_above: Some(Share::from_percent(stand.cover_pct + 10.0)),
        ..cube
    }
}

fn follow(inputs: &Inputs) -> Trajectory {
    let parameters = Parameters::<Band>::reference().central();
    run(inputs, &parameters, 90).expect("a run")
}

fn ammonia_peak(inputs: &Inputs) -> f64 {
    follow(inputs).peaks().ammonia.value
}

fn on(trajectory: &Trajectory, day: u32) -> State {
    trajectory.at_day(day).expect("a day of the run").state
}

#[test]
fn in_a_dark_bare_tank_ammonia_nitrite_and_nitrate_follow_each_other() {
    let trajectory = follow(&cube(0.0, Stand::default()));
    let peaks = trajectory.peaks();
    assert!(
        peaks.ammonia.day < peaks.nitrite.day && peaks.nitrite.day < peaks.nitrate.day,
        "{peaks:?}"
    );
    let down = trajectory.clear_after(DOWN_MG_N_L, DOWN_MG_N_L);
    assert!(
        down.is_some_and(|day| (21.0..=45.0).contains(&day)),
        "{down:?}"
    );
}

#[test]
fn slow_growers_alone_do_not_hold_the_flush() {
    let bare = ammonia_peak(&cube(LAMP_UMOL_M2_S, Stand::default()));
    let slow = ammonia_peak(&cube(
        LAMP_UMOL_M2_S,
        Stand {
            slow_g_m2: 25.0,
            ..Stand::default()
        },
    ));
    // they bring bacteria in on their leaves, and still leave most of it
    assert!(slow > 0.5 * bare, "from {bare} to {slow} mg N/L");
}

#[test]
fn floaters_and_many_stems_take_the_flush() {
    let trajectory = follow(&cube(
        LAMP_UMOL_M2_S,
        Stand {
            cover_pct: 40.0,
            fast_g_m2: 100.0,
            ..Stand::default()
        },
    ));
    let late = trajectory.peak_from(3.0, |sample| sample.state.ammonia);
    // an independent program reads 0.053 where some slow growers stand among them
    assert!(late.value < 0.1, "{late:?}");
}

#[test]
fn a_deeper_cap_lowers_the_peak() {
    for lamp_umol_m2_s in [0.0, LAMP_UMOL_M2_S] {
        let peaks = [5.0, 15.0, 25.0, 40.0, 60.0].map(|cap_mm| {
            ammonia_peak(&Inputs {
                cap_depth: Length::from_mm(cap_mm),
                ..cube(lamp_umol_m2_s, Stand::default())
            })
        });
        assert!(peaks.is_sorted_by(|a, b| a > b), "{peaks:?}");
    }
}

#[test]
fn twice_the_soil_gives_off_longer() {
    let day_of = |soil_mm: f64| {
        let inputs = Inputs {
            soil_depth: Length::from_mm(soil_mm),
            ..cube(LAMP_UMOL_M2_S, Stand::default())
        };
        follow(&inputs).peaks().release.day
    };
    let (thin, thick) = (day_of(25.0), day_of(50.0));
    assert!(thick > thin + 7.0, "from day {thin} to day {thick}");
}

/// A thinner stand than this one stands still under the cover rather than wasting away.
#[test]
fn floaters_wall_to_wall_hold_the_stems_below_still() {
    let under = |cover_pct: f64| {
        let stand = Stand {
            cover_pct,
            fast_g_m2: 100.0,
            ..Stand::default()
        };
        follow(&cube(LAMP_UMOL_M2_S, stand))
    };
    let (closed, open) = (under(90.0), under(20.0));
    let gained = |trajectory| on(trajectory, 60).fast / on(trajectory, 0).fast;
    assert!(gained(&closed) < 1.25, "{} times", gained(&closed));
    assert!(gained(&open) > 2.0, "{} times", gained(&open));
}
