//! Evaporation and heat: formulas of the sources named, worked out apart from this library.

use lentic::heat::evaporation::{latent_power, litres_per_week};
use lentic::heat::loss::SURFACE_FILM;
use lentic::heat::{Climate, Enclosure, FilmedWall, Glazing, Top, heater};
use lentic::units::{Area, Length, Power, Share, Temperature};
use lentic::water::atmosphere::SEA_LEVEL;

use crate::compare::Within::{Absolute, Relative};
use crate::compare::check;

fn celsius(value: f64) -> Temperature {
    Temperature::from_celsius(value)
}

fn climate(water: f64, air: f64, humidity_percent: f64) -> Climate {
    Climate {
        water: celsius(water),
        air: celsius(air),
        humidity: Share::from_percent(humidity_percent),
        pressure: SEA_LEVEL,
    }
}

/// Shah 2014 with humid air of the library `CoolProp` 8.0.0: water and room in C,
/// humidity in percent, kg/(m2 h), mm/d, W/m2.
#[test]
fn evaporation_into_still_air() {
    for (water, air, humidity, kg_m2_h, mm_d, w_m2) in [
        (25.0, 20.0, 50.0, 0.1620, 3.89, 110.0),
        (25.0, 25.0, 50.0, 0.0916, 2.20, 62.0),
        (24.0, 20.0, 60.0, 0.1195, 2.87, 81.0),
        (27.0, 29.0, 60.0, 0.0584, 1.40, 40.0),
    ] {
        let rate = climate(water, air, humidity).evaporation(Area::from_m2(1.0));
        check("kg/(m2 h)", rate.kg_h(), kg_m2_h, Relative(0.02));
        check("mm/d", litres_per_week(rate) / 7.0, mm_d, Relative(0.02));
        let latent = latent_power(rate, celsius(water)).watts();
        check("W/m2", latent, w_m2, Relative(0.02));
    }
}

/// The same sum with a water film of 400 and the room film of 7.7; 0.6912 m2 of
/// it lose 24.98 W to a room 5 K colder.
#[test]
fn transmittance_of_a_tank_wall() {
    let wall = FilmedWall::side(Glazing::Glass, Length::from_mm(6.0));
    check("U", wall.transmittance().w_m2_k(), 7.227, Absolute(0.01));
    let tank = Enclosure {
        sides: Area::from_m2(0.6912),
        ..tank([0.6, 0.3, 0.36], 6.0, Top::Open)
    };
    let loss = tank.loss(&climate(25.0, 20.0, 50.0));
    check("walls", loss.sides.watts(), 24.98, Absolute(0.1));
}

/// Nu = 0.15 Ra^(1/3) over open water of 25 C in air of 20 C and 50 %, with the
/// densities of `CoolProp` 8.0.0 (1.1704 and 1.1994 kg/m3) and air of 1.54e-5
/// and 2.18e-5 m2/s and 0.0258 W/(m K); radiation 5.6 W/(m2 K) (emissivity 0.95).
#[test]
fn film_of_room_air_over_open_water() {
    let buoyancy_m_s2 = 9.80665 * (1.1994 - 1.1704) / 1.1849;
    let convection = 0.15 * 0.0258 * (buoyancy_m_s2 / (1.54e-5 * 2.18e-5_f64)).cbrt();
    let film = SURFACE_FILM.w_m2_k();
    check("surface film", film, convection + 5.6, Relative(0.03));
}

/// The first evaporation above over 0.216 m2.
#[test]
fn evaporation_of_a_tank() {
    let rate = climate(25.0, 20.0, 50.0).evaporation(Area::from_m2(0.216));
    check(
        "litres a day",
        litres_per_week(rate) / 7.0,
        0.840,
        Relative(0.02),
    );
    check(
        "latent",
        latent_power(rate, celsius(25.0)).watts(),
        23.7,
        Relative(0.02),
    );
}

/// A box from its outer dimensions in metres and its glass in millimetres, its
/// panes wetted to the rim.
fn tank([length, width, height]: [f64; 3], glass_mm: f64, top: Top) -> Enclosure {
    Enclosure {
        sides: Area::from_m2(2.0 * (length + width) * height),
        bottom: Area::from_m2(length * width),
        surface: Area::from_m2(length * width),
        glazing: Glazing::Glass,
        side_thickness: Length::from_mm(glass_mm),
        bottom_thickness: Length::from_mm(glass_mm),
        top,
    }
}

/// A second opinion: walls by ISO 6946, the top by the evaporation of indoor
/// pools (ASHRAE Trans. 104(1A), 1998, 74 % of W = (95 + 0.425 v)(pw - pa)/Y),
/// worked out beforehand; open tanks first, then covered. That formula is known
/// to miss by 40 %.
#[test]
fn heat_loss_against_a_pool_formula() {
    let lid = Top::Lid(Share::from_percent(10.0));
    for (size, glass_mm, top, room, watts) in [
        ([0.60, 0.30, 0.36], 6.0, Top::Open, 20.0, 59.20),
        ([1.20, 0.45, 0.50], 10.0, Top::Open, 20.0, 164.96),
        ([0.30, 0.30, 0.30], 5.0, Top::Open, 20.0, 31.03),
        ([0.60, 0.30, 0.36], 6.0, Top::Open, 15.0, 98.61),
        ([0.60, 0.30, 0.36], 6.0, lid, 20.0, 29.97),
        ([1.20, 0.45, 0.50], 10.0, lid, 20.0, 77.26),
    ] {
        let loss = tank(size, glass_mm, top).loss(&climate(25.0, room, 50.0));
        check("heat loss", loss.total().watts(), watts, Relative(0.4));
    }
}

/// The parts of the first and the fifth: walls 23.82 W, bottom on timber 2.86 W,
/// open top 9.00 W at 10 W/(m2 K), glass cover 3.29 W. There the water has no
/// film, which is worth 2 % of a wall.
#[test]
fn heat_loss_by_way_out() {
    let lid = Top::Lid(Share::from_percent(10.0));
    let at = |top| tank([0.60, 0.30, 0.36], 6.0, top).loss(&climate(25.0, 20.0, 50.0));
    let (open, covered) = (at(Top::Open), at(lid));
    check("walls", open.sides.watts(), 23.82, Relative(0.02));
    check("bottom", open.bottom.watts(), 2.86, Relative(0.02));
    check("open top", open.surface.watts(), 9.00, Relative(0.1));
    check("cover", covered.surface.watts(), 3.29, Relative(0.01));
}

/// The evaporation of the second tank alone, 70.55 W by the same pool formula.
#[test]
fn evaporative_loss_against_a_pool_formula() {
    let loss = tank([1.20, 0.45, 0.50], 10.0, Top::Open).loss(&climate(25.0, 20.0, 50.0));
    check(
        "evaporation",
        loss.evaporation.watts(),
        70.55,
        Relative(0.4),
    );
}

/// 59.20 W for a year of 8766 hours are 519 kWh.
#[test]
fn electricity_of_a_year() {
    let kwh = heater::kwh_per_year(Power::from_watts(59.20));
    check("kWh", kwh, 519.0, Absolute(0.5));
}
