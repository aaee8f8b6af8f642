//! The whole list of what to buy for a tank.

use serde::Serialize;

use super::flush::StartupSection;
use super::night::NightSection;
use super::preparation::{PreparationSection, filled_in};
use super::section::CapSection;
use crate::design::{Design, FlowDevice, LightLevel};
use crate::mixture::Mixture;
use crate::plants::light::lumens_for;
use crate::result::results;
use crate::startup::surface_light;
use crate::units::show::significant;
use crate::units::{Length, PhotonFlux};

/// How high a lamp hangs over the water where nobody says: practice.
const LAMP_HEIGHT: Length = Length::from_m(0.2);

results! {
    /// Something to buy.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct ShoppingItem {
        /// what it is
        pub what: String => "plan.preparation",
        /// how much or how many of it
        pub quantity: f64 => "plan.preparation",
        /// unit of that quantity
        pub unit: String => "plan.preparation",
        /// what it is for
        pub why: String => "plan.preparation",
    }
}

/// Everything to buy but the plants, which stand beside it by their portions.
pub(super) fn shopping(
    design: &Design,
    cap: &CapSection,
    ready: &PreparationSection,
    startup: &StartupSection,
    night: &NightSection,
) -> Vec<ShoppingItem> {
    let draft = design.draft();
    let mut list = vec![
        item(
            &draft.soil.material.label,
            ready.soil_with_reserve_l,
            "L",
            "the lower layer, with what sieving takes and a tenth in reserve".to_owned(),
        ),
        item(
            &draft.cap.material.label,
            cap.buy_kg + ready.sand_kept_kg,
            "kg",
            "the cap, and a patch to mend it with".to_owned(),
        ),
    ];
    list.push(match ready.conditioner_ml {
        Some(ml) => item(
            "water conditioner",
            ml,
            "mL",
            "chlorine of the tap water to day 90".to_owned(),
        ),
        None => item(
            "water conditioner",
            ready.tap_water_l,
            "L of tap water",
            "chlorine to day 90, by its label".to_owned(),
        ),
    });
    let tests = tests(startup);
    for kit in ["ammonia", "nitrite", "nitrate"] {
        let why = "the calendar's tests".to_owned();
        list.push(item(&format!("{kit} test kit"), tests, "tests", why));
    }
    if let Some(tube_cm) = ready.tube_cm {
        let device = match draft.air.device {
            FlowDevice::SpongeFilter => "sponge filter",
            _ => "air stone",
        };
        let flow = draft.air.flow.l_min();
        let pressure = night.pump_pressure_kpa.as_ref();
        let against = pressure.map_or_else(String::new, |kpa| {
            format!(" against {:.1} kPa", kpa.band().high)
        });
        list.push(item("air pump", flow, "L/min", format!("air{against}")));
        list.push(item(device, 1.0, "piece", "air into the water".to_owned()));
        let why = "from the stone over the rim with a loop; add the way to the pump";
        list.push(item("air tube", tube_cm, "cm", why.to_owned()));
        list.push(item(
            "check valve",
            1.0,
            "piece",
            "keeps water out of the pump".to_owned(),
        ));
    }
    if draft.air.device == FlowDevice::Pump {
        list.push(item(
            "water pump",
            draft.air.flow.l_min(),
            "L/min",
            "flow".to_owned(),
        ));
    }
    if let Some(watts) = ready.heater_w {
        list.push(item(
            "heater",
            watts,
            "W",
            "holds the temperature".to_owned(),
        ));
    }
    list.extend(lamp(design));
    list.extend(mixed(design));
    list.push(item(
        "thermometer",
        1.0,
        "piece",
        "the water's temperature".to_owned(),
    ));
    list
}

fn item(what: &str, quantity: f64, unit: &str, why: String) -> ShoppingItem {
    ShoppingItem {
        what: what.to_owned(),
        quantity,
        unit: unit.to_owned(),
        why,
    }
}

/// A lamp as labels have it: as it is given, or as bright as the light at the water takes.
fn lamp(design: &Design) -> Option<ShoppingItem> {
    let light = design.draft().light;
    let at_water = surface_light(design).typical;
    let (flux, height) = if let LightLevel::Lumens { flux, height } = light.level {
        (flux, height)
    } else {
        let par = PhotonFlux::from_umol_m2_s(at_water);
        (lumens_for(par, LAMP_HEIGHT, design.surface()), LAMP_HEIGHT)
    };
    let why = format!(
        "{} umol/m2/s at the water from {} above it, {} h a day",
        significant(at_water, 2),
        design.draft().units.dimension(height),
        significant(light.hours, 2)
    );
    let is_lit = at_water > 0.0 && light.hours > 0.0;
    is_lit.then(|| item("lamp", flux.lumens(), "lm", why))
}

/// Salts, and softened water, for the water that is asked for.
fn mixed(design: &Design) -> Vec<ShoppingItem> {
    let Ok(mixture) = Mixture::of(&design.draft().water, filled_in(design)) else {
        return Vec::new();
    };
    let why = format!(
        "water of {} dGH and {} dKH to day 90",
        significant(mixture.hardness().dgh(), 2),
        significant(mixture.alkalinity().dkh(), 2)
    );
    let salts = mixture.salts().into_iter();
    let mut list: Vec<ShoppingItem> = salts
        .map(|salt| item(salt.name, salt.mass_g, "g", why.clone()))
        .collect();
    let soft_l = mixture.soft().litres();
    if soft_l > 0.0 {
        list.push(item("rain or reverse-osmosis water", soft_l, "L", why));
    }
    list
}

/// Tests of the calendar: its own days, and those that water is changed by.
fn tests(startup: &StartupSection) -> f64 {
    let dated = startup
        .calendar
        .iter()
        .filter(|entry| entry.what.contains("test"));
    let by_reading = startup.changes_by_reading.as_ref().map_or(0.0, |changes| {
        let last = changes.last_day.unwrap_or(0.0);
        (last / changes.least_days_between).floor()
    });
    dated.count() as f64 + by_reading
}
