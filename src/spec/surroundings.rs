//! `[light]` and `[air]`: what stands on and over the tank.

use super::section::SpecSection;
use crate::design::key::{KeyEntry, Value};
use crate::design::{Air, DutyHours, FlowDevice, Light, LightLevel, Violation};
use crate::units::{Flow, Length, LuminousFlux};

/// Reads `[light]`.
pub(super) fn light(section: &SpecSection<'_>) -> Option<Light> {
    let level = light_level(section);
    section.plain();
    Some(Light {
        level: level?,
        hours: 0.0,
    })
}

/// One of the three ways to say how bright the lamp is.
fn light_level(section: &SpecSection<'_>) -> Option<LightLevel> {
    let ways = ["par", "class", "lumens"];
    let given: Vec<&str> = ways.into_iter().filter(|way| section.has(way)).collect();
    section.refuse_second(&given, "a lamp has par, class, or lumens with height");
    if section.has("height") && !section.has("lumens") {
        section.missing("lumens", "height needs lumens".to_owned());
    }
    let par = section.optional("par", Value::read);
    let lumens = section.optional("lumens", Value::read);
    let height = if section.has("lumens") && !section.has("height") {
        section.missing("height", "lumens needs height".to_owned());
        None
    } else {
        section.optional("height", Value::read)
    };
    match given.first() {
        Some(&"par") => par.map(LightLevel::Par),
        Some(&"lumens") => Some(LightLevel::Lumens {
            flux: LuminousFlux::from_lumens(lumens?),
            height: height?,
        }),
        _ => section
            .defaulted("class", Value::read)
            .map(LightLevel::Class),
    }
}

/// Reads `[air]`.
pub(super) fn air(section: &SpecSection<'_>) -> Option<Air> {
    match section.defaulted("device", Value::read)? {
        FlowDevice::None => {
            refuse_idle_keys(section);
            Some(STILL)
        }
        device => moved(section, device),
    }
}

/// No device.
const STILL: Air = Air {
    device: FlowDevice::None,
    flow: Flow::ZERO,
    depth: Length::ZERO,
    hours: DutyHours::Always,
};

/// What moves air or water, with all that is said of it.
fn moved(section: &SpecSection<'_>, device: FlowDevice) -> Option<Air> {
    let flow = section.required("flow", Value::read);
    let depth = match device {
        // Where a pump hangs changes nothing.
        FlowDevice::Pump => section
            .optional("depth", Value::read)
            .or(Some(Length::ZERO)),
        _ => section.required("depth", Value::read),
    };
    let hours = section.defaulted("hours", Value::read);
    Some(Air {
        device,
        flow: flow?,
        depth: depth?,
        hours: hours?,
    })
}

/// Refuses what is said of a device where there is none.
fn refuse_idle_keys(section: &SpecSection<'_>) {
    let says_none = |entry: &KeyEntry<'_>| Ok(FlowDevice::read(entry) == Ok(FlowDevice::None));
    let is_none = if section.has("device") {
        section.optional("device", says_none) == Some(true)
    } else {
        !section.misspells("device")
    };
    let idle = ["flow", "depth", "hours"];
    for name in idle.into_iter().filter(|name| is_none && section.has(name)) {
        let violation = Violation::new(
            "given without a device",
            "flow, depth and hours are those of a device",
            format!("name the device, for example device = \"air_stone\", or remove {name}"),
        );
        let remark = if section.has("device") {
            violation.beside(section.span("device"), "the device is none")
        } else {
            violation.into()
        };
        section.report(name, remark);
    }
}
