//! How long and how bright the lamp shines.

use super::{Lever, Now, Rung, number, text};
use crate::design::LightLevel;
use crate::plants::light::LightClass;

/// Hours of light that are tried; longer days feed algae.
const HOURS: [f64; 5] = [6.0, 7.0, 8.0, 9.0, 10.0];
/// How much brighter a lamp is tried.
const TIMES: [f64; 6] = [1.3, 1.6, 2.0, 3.0, 4.0, 5.0];
/// The brightest that a lamp is asked to be at the surface: more feeds algae (judgement).
const MOST_PAR: f64 = 100.0;
/// Light is written to this many units.
const PAR_STEP: f64 = 5.0;
const LUMEN_STEP: f64 = 50.0;

/// Longer or shorter days.
pub(super) fn hours(now: &Now<'_>) -> Vec<Rung> {
    let base = now.base;
    let now = base.draft().light.hours;
    let others = HOURS.into_iter().filter(|hours| (hours - now).abs() > 0.1);
    others
        .map(|hours| {
            let effort = 2.0 + (hours - now).abs() / 8.0;
            Rung::new(Lever::Hours, effort, [number("light.hours", hours)]).less(hours < now)
        })
        .collect()
}

/// A brighter lamp, said in the way in which the keeper says it.
pub(super) fn lamps(now: &Now<'_>) -> Vec<Rung> {
    let base = now.base;
    let rung = |times: f64, edit| Rung::new(Lever::Lamp, 5.0 + times.log2(), [edit]);
    let brighter =
        |now: f64, step: f64| TIMES.map(move |times| (times, (now * times / step).ceil() * step));
    match base.draft().light.level {
        LightLevel::Par(par) => brighter(par.umol_m2_s(), PAR_STEP)
            .into_iter()
            .filter(|(_, par)| *par <= MOST_PAR)
            .map(|(times, par)| rung(times, text("light.par", format!("{par} umol/m2/s"))))
            .collect(),
        LightLevel::Lumens { flux, .. } => brighter(flux.lumens(), LUMEN_STEP)
            .map(|(times, lumens)| rung(times, number("light.lumens", lumens)))
            .to_vec(),
        LightLevel::Class(LightClass::Low) => vec![
            rung(2.0, text("light.class", "medium")),
            rung(4.0, text("light.class", "high")),
        ],
        LightLevel::Class(LightClass::Medium) => vec![rung(2.0, text("light.class", "high"))],
        LightLevel::Class(LightClass::High) => Vec::new(),
    }
}
