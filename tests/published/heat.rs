//! Evaporation and heat.

use lentic::heat::evaporation::latent_heat_j_g;
use lentic::heat::moist_air::MoistAir;
use lentic::heat::wall::{BOTTOM_FILM, SIDE_FILM, TOP_FILM};
use lentic::heat::{FilmedWall, Glazing};
use lentic::units::{Length, Share, Temperature, Transmittance};
use lentic::water::atmosphere::SEA_LEVEL;
use lentic::water::density::SPECIFIC_HEAT_J_KG_K;

use crate::compare::Within::{Absolute, Relative};
use crate::compare::check;

fn celsius(value: f64) -> Temperature {
    Temperature::from_celsius(value)
}

/// `CoolProp` 8.0.0: C, humidity in percent, humidity ratio, density in kg/m3,
/// vapour pressure in Pa. An ideal mixture of gases comes within 0.2 %.
#[test]
fn moist_air() {
    for (t, humidity, ratio, kg_m3, pa) in [
        (25.0, 100.0, 0.020_17, 1.1704, 3183.0),
        (20.0, 50.0, 0.007_29, 1.1994, 1174.0),
        (25.0, 50.0, 0.009_93, 1.1774, 1592.0),
        (24.0, 100.0, 0.018_97, 1.1752, 2998.0),
        (20.0, 60.0, 0.008_77, 1.1983, 1409.0),
        (27.0, 100.0, 0.022_80, 1.1608, 3583.0),
        (29.0, 60.0, 0.015_19, 1.1582, 2416.0),
    ] {
        let air = MoistAir::new(celsius(t), Share::from_percent(humidity), SEA_LEVEL);
        check(
            "humidity ratio",
            air.humidity_ratio(),
            ratio,
            Relative(0.002),
        );
        check("density", air.density().kg_m3(), kg_m3, Relative(0.001));
        check("vapour pressure", air.vapour.pa(), pa, Relative(0.002));
    }
}

/// `CoolProp` 8.0.0 and iapws 1.5.5 at 25 C.
#[test]
fn latent_and_specific_heat() {
    let latent = latent_heat_j_g(celsius(25.0));
    check("latent heat, J/g", latent, 2441.7, Relative(0.001));
    check(
        "specific heat, J/(kg K)",
        SPECIFIC_HEAT_J_KG_K,
        4181.3,
        Relative(0.001),
    );
}

/// EN 673: a single pane of 4 mm with the films of a window, 8 and 23 W/(m2 K),
/// is 5.8 W/(m2 K) (from memory).
#[test]
fn transmittance_of_a_window() {
    let window = FilmedWall {
        glazing: Glazing::Glass,
        thickness: Length::from_mm(4.0),
        inside: Transmittance::from_w_m2_k(8.0),
        outside: Transmittance::from_w_m2_k(23.0),
    };
    check("U", window.transmittance().w_m2_k(), 5.80, Absolute(0.01));
}

/// Churchill and Chu 1975 for an upright plate of 0.36 m at 25 C in air of 20 C:
/// Ra 2.325e7, Nu 39.75, 2.88 W/(m2 K) by the library ht 1.2.0. With radiation
/// (emissivity 0.89) it must come near the room film used for walls.
#[test]
fn film_of_room_air_on_a_wall() {
    let (prandtl, rayleigh): (f64, f64) = (0.707, 2.325e7);
    let root = 0.825
        + 0.387 * rayleigh.powf(1.0 / 6.0)
            / (1.0 + (0.492 / prandtl).powf(9.0 / 16.0)).powf(8.0 / 27.0);
    let nusselt = root * root;
    check("Nu", nusselt, 39.75, Relative(0.01));
    let conductivity_w_m_k = 0.0261;
    let convection = nusselt * conductivity_w_m_k / 0.36;
    check("convection", convection, 2.88, Relative(0.01));
    let radiation = 4.0 * 0.89 * 5.670_374e-8 * celsius(22.5).kelvin().powi(3);
    check(
        "room film",
        SIDE_FILM.w_m2_k(),
        convection + radiation,
        Relative(0.06),
    );
}

/// ISO 6946, surface resistances in m2 K/W, two decimals.
#[test]
fn films_of_room_air_on_panes() {
    for (what, film, resistance) in [
        ("sideways", SIDE_FILM, 0.13),
        ("upwards", TOP_FILM, 0.10),
        ("downwards", BOTTOM_FILM, 0.17),
    ] {
        check(what, 1.0 / film.w_m2_k(), resistance, Absolute(0.005));
    }
}
