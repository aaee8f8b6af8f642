//! Gas exchange, bubbles, airlift, oxygen use: formulas of the sources named, worked out apart
//! from this library.

use lentic::air::{Airlift, Bubbles, Diffuser, Surface, circulation, demand, plume, pump, surface};
use lentic::units::{Area, Concentration, Flow, Length, Mass, Temperature, Velocity, Volume};
use lentic::water::{Gas, atmosphere, oxygen};

use crate::compare::Within::{Absolute, Relative};
use crate::compare::check;

fn celsius(value: f64) -> Temperature {
    Temperature::from_celsius(value)
}

/// k600 (Sc/600)^(-1/2) with Wanninkhof's 2014 Schmidt numbers.
#[test]
fn transfer_velocity_of_oxygen() {
    for (k600, t, k) in [(0.4968, 25.0, 0.6094), (0.35, 20.0, 0.3795)] {
        let value = surface::transfer_velocity(
            Velocity::from_m_d(k600),
            Surface::Rippled,
            Gas::Oxygen,
            celsius(t),
        );
        check("k of oxygen", value.m_d(), k, Absolute(0.001));
    }
}

/// k600 (Sc/600)^(-2/3) for a smooth surface: 0.35 times (398.8/600)^(-2/3).
#[test]
fn transfer_velocity_of_oxygen_through_a_smooth_surface() {
    for calm in [Surface::Open, Surface::Lidded] {
        let k600 = Velocity::from_m_d(0.35);
        let value = surface::transfer_velocity(k600, calm, Gas::Oxygen, celsius(25.0));
        check("k of oxygen", value.m_d(), 0.4595, Absolute(0.0005));
    }
}

/// Gas taken up in g/h by a clearance.
fn taken_up(clearance: Flow, saturation: Concentration, water: Concentration) -> f64 {
    clearance.l_h() * (saturation - water).mg_l() * 1e-3
}

/// 0.5 m/d times 3 mg/L times 0.216 m2.
#[test]
fn oxygen_taken_up_through_a_surface() {
    let clearance = surface::clearance(Velocity::from_m_d(0.5), Area::from_m2(0.216));
    let (saturation, water) = (
        Concentration::from_mg_l(8.26),
        Concentration::from_mg_l(5.26),
    );
    let taken_up = taken_up(clearance, saturation, water);
    check("flux", taken_up * 24.0, 0.324, Absolute(0.001));
}

/// ASCE/EWRI 2 definitions: L/min, m, share per metre, C,
/// mg/L; standard and delivered rate in g/h.
#[test]
fn oxygen_from_bubbles() {
    for (l_min, depth_m, efficiency_per_m, t, mg_l, standard, delivered) in [
        (1.0, 0.30, 0.04, 25.0, 6.0, 0.2006, 0.0562),
        (2.0, 0.40, 0.04, 25.0, 2.0, 0.5349, 0.4149),
        (0.5, 0.25, 0.06, 24.0, 7.0, 0.1254, 0.0215),
    ] {
        let bubbles = Bubbles {
            air: Flow::from_l_min(l_min),
            submergence: Length::from_m(depth_m),
            efficiency_per_m,
            alpha: 1.0,
            beta: 1.0,
        };
        check(
            "SOTR, g/h",
            bubbles.standard_rate().g_h(),
            standard,
            Relative(0.005),
        );
        let rate = taken_up(
            bubbles.clearance(Gas::Oxygen, celsius(t)),
            oxygen::saturation(celsius(t), atmosphere::SEA_LEVEL),
            Concentration::from_mg_l(mg_l),
        );
        check("delivered, g/h", rate, delivered, Relative(0.005));
    }
}

/// 1.024 to the power of the degrees above 20.
#[test]
fn warmth_speeds_the_transfer() {
    let bubbles = Bubbles {
        air: Flow::from_l_min(1.0),
        submergence: Length::from_m(0.3),
        efficiency_per_m: 0.04,
        alpha: 1.0,
        beta: 1.0,
    };
    let at = |t| bubbles.clearance(Gas::Oxygen, celsius(t));
    check(
        "factor at 25 C",
        at(25.0) / at(20.0),
        1.1259,
        Absolute(0.0001),
    );
    check(
        "factor at 30 C",
        at(30.0) / at(20.0),
        1.2677,
        Absolute(0.0001),
    );
}

/// Density times gravity times depth.
#[test]
fn pressure_of_the_water_over_a_stone() {
    for (depth_m, kpa) in [(0.30, 2.933), (0.45, 4.400)] {
        let head = pump::static_head(Length::from_m(depth_m), celsius(25.0));
        check("static head", head.kpa(), kpa, Absolute(0.01));
    }
    let fine = pump::pump_pressure_kpa(Length::from_m(0.30), Diffuser::FineStone, celsius(25.0));
    check("fine stone, least", fine.low, 4.933, Absolute(0.01));
    check("fine stone, most", fine.high, 7.933, Absolute(0.01));
}

/// Nicklin 1963 and Reinemann et al. 1990: air in L/min,
/// bore in mm, submerged length in cm, surface tension number, slug rise in m/s,
/// water in L/min. The tube stands 2 cm out of the water.
#[test]
fn water_lifted_by_air() {
    for (air, bore_mm, submerged_cm, number, rise_m_s, water) in [
        (1.0, 16.0, 30.0, 0.0288, 0.1250, 6.42),
        (2.0, 16.0, 30.0, 0.0288, 0.1250, 9.43),
        (1.0, 20.0, 30.0, 0.0184, 0.1460, 7.46),
        (0.5, 12.0, 25.0, 0.0511, 0.0965, 2.86),
    ] {
        let tube = Airlift {
            air: Flow::from_l_min(air),
            bore: Length::from_mm(bore_mm),
            submerged: Length::from_cm(submerged_cm),
            lift: Length::from_cm(2.0),
            temperature: celsius(25.0),
        };
        check(
            "surface tension number",
            tube.surface_tension_number(),
            number,
            Absolute(0.000_06),
        );
        check(
            "slug rise",
            tube.slug_rise_m_s(),
            rise_m_s,
            Absolute(0.000_06),
        );
        check("water", tube.water_flow().l_min(), water, Relative(0.01));
    }
}

/// Fischer et al. 1979, round plume: 0.15 times the cube root of 1.634e-4 m4/s3
/// times 0.3 m to the power of 5/3 is 1.103e-3 m3/s.
#[test]
fn water_dragged_up_by_bubbles() {
    let flow = plume::flow(Flow::from_l_min(1.0), Length::from_m(0.3));
    check("plume", flow.l_min(), 66.15, Relative(0.002));
}

/// 6.42 L/min through 0.25 m by 0.30 m.
#[test]
fn mean_speed_through_a_section() {
    let section = Area::from_m2(0.25 * 0.30);
    let speed = circulation::section_velocity(Flow::from_l_min(6.42), section);
    check("speed", speed.cm_s(), 0.143, Relative(0.01));
    let turnover = circulation::turnover_per_h(Flow::from_l_h(300.0), Volume::from_litres(60.0));
    check("turnover", turnover, 5.0, Absolute(1e-9));
}

/// Clarke and Johnston 1999, the Arrhenius line at 50 g brought to other masses
/// by the exponent 0.80.
#[test]
fn oxygen_use_of_resting_fish() {
    for (grams, mg_h) in [(0.5, 0.2578), (1.0, 0.4488), (5.0, 1.6266), (50.0, 10.2629)] {
        let value = demand::fish_at_rest(Mass::from_g(grams), celsius(25.0)).mg_h();
        check("resting rate", value, mg_h, Relative(0.005));
    }
}

/// Q10 of 2 over ten degrees; 1.065 to the tenth power is 1.8771 (Thomann 1972).
#[test]
fn oxygen_use_of_plants_and_bed_rises_with_warmth() {
    let plants = |t| demand::plants_in_the_dark(Mass::from_g(2.0), celsius(t), 1.5).mg_h();
    check("plants at 22.5 C", plants(22.5), 3.0, Relative(1e-9));
    check("plants at 32.5 C", plants(32.5), 6.0, Relative(1e-9));
    let bed = |t| demand::bed(Area::from_m2(1.0), celsius(t), 0.8).g_d();
    check("bed at 20 C", bed(20.0), 0.8, Relative(1e-9));
    check("bed at 30 C", bed(30.0), 1.5017, Relative(1e-4));
}
