//! `[light]`, `[air]` and `[room]`: what stands on, over and around the tank.

use super::catalogued::row;
use super::misfit::Misfit;
use super::section::Section;
use super::value::{Entry, number, quantity, word};
use crate::catalogue;
use crate::design::{Air, Device, DutyHours, Light, LightLevel, Room};
use crate::plants::light::LightClass;
use crate::units::{Flow, Length, LuminousFlux, PhotonFlux, Share, Temperature};

/// Reads `[light]`.
pub(super) fn light(section: &Section<'_>) -> Option<Light> {
    let level = light_level(section);
    let hours = section.defaulted("hours", number);
    Some(Light {
        level: level?,
        hours: hours?,
    })
}

/// One of the three ways to say how bright the lamp is.
fn light_level(section: &Section<'_>) -> Option<LightLevel> {
    let ways = ["par", "class", "lumens"];
    let given: Vec<&str> = ways.into_iter().filter(|way| section.has(way)).collect();
    section.refuse_second(&given, "a lamp has par, class, or lumens with height");
    if section.has("height") && !section.has("lumens") {
        section.missing("lumens", "height needs lumens".to_owned());
    }
    let par = section.optional("par", quantity::<PhotonFlux>);
    let lumens = section.optional("lumens", number);
    let height = if section.has("lumens") && !section.has("height") {
        section.missing("height", "lumens needs height".to_owned());
        None
    } else {
        section.optional("height", quantity::<Length>)
    };
    let class = word(light_class);
    match given.first() {
        Some(&"par") => par.map(LightLevel::Par),
        Some(&"lumens") => Some(LightLevel::Lumens {
            flux: LuminousFlux::from_lumens(lumens?),
            height: height?,
        }),
        _ => section.defaulted("class", class).map(LightLevel::Class),
    }
}

pub(super) fn light_class(word: &str) -> Option<LightClass> {
    match word {
        "low" => Some(LightClass::Low),
        "medium" => Some(LightClass::Medium),
        "high" => Some(LightClass::High),
        _ => None,
    }
}

/// Reads `[air]`.
pub(super) fn air(section: &Section<'_>) -> Option<Air> {
    match section.defaulted("device", device)? {
        Device::None => {
            refuse_idle_keys(section);
            Some(STILL)
        }
        device => moved(section, device),
    }
}

/// No device.
const STILL: Air = Air {
    device: Device::None,
    flow: Flow::ZERO,
    depth: Length::ZERO,
    hours: DutyHours::Always,
};

/// What moves air or water, with all that is said of it.
fn moved(section: &Section<'_>, device: Device) -> Option<Air> {
    let flow = section.required("flow", quantity::<Flow>);
    let depth = match device {
        // Where a pump hangs changes nothing.
        Device::Pump => section
            .optional("depth", quantity::<Length>)
            .or(Some(Length::ZERO)),
        _ => section.required("depth", quantity::<Length>),
    };
    let hours = section.defaulted("hours", word(duty_hours));
    Some(Air {
        device,
        flow: flow?,
        depth: depth?,
        hours: hours?,
    })
}

/// Refuses what is said of a device where there is none.
fn refuse_idle_keys(section: &Section<'_>) {
    let says_none = |entry: &Entry<'_>| Ok(device(entry) == Ok(Device::None));
    let is_none = if section.has("device") {
        section.optional("device", says_none) == Some(true)
    } else {
        !section.misspells("device")
    };
    let idle = ["flow", "depth", "hours"];
    for name in idle.into_iter().filter(|name| is_none && section.has(name)) {
        let misfit = Misfit::new(
            "given without a device",
            "flow, depth and hours are those of a device",
            format!("name the device, for example device = \"air_stone\", or remove {name}"),
        );
        let misfit = if section.has("device") {
            misfit.beside(section.span("device"), "the device is none")
        } else {
            misfit
        };
        section.report(name, misfit);
    }
}

pub(super) fn device(entry: &Entry<'_>) -> Result<Device, Misfit> {
    match row::<catalogue::Device>(entry)?.name.as_str() {
        "none" => Ok(Device::None),
        "air_stone" => Ok(Device::AirStone),
        "sponge_filter" => Ok(Device::SpongeFilter),
        "pump" => Ok(Device::Pump),
        _ => Err(entry.wrong_type()),
    }
}

pub(super) fn duty_hours(word: &str) -> Option<DutyHours> {
    match word {
        "always" => Some(DutyHours::Always),
        "night" => Some(DutyHours::Night),
        "day" => Some(DutyHours::Day),
        _ => None,
    }
}

/// Reads `[room]`.
pub(super) fn room(section: &Section<'_>) -> Option<Room> {
    let temperature = section.defaulted("temperature", quantity::<Temperature>);
    let humidity = section.defaulted("humidity", quantity::<Share>);
    let altitude = section.defaulted("altitude", quantity::<Length>);
    let tariff = section.optional("tariff", number);
    Some(Room {
        temperature: temperature?,
        humidity: humidity?,
        altitude: altitude?,
        tariff,
    })
}
