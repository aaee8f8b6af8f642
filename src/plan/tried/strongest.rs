//! The single change that does most against the flush, whatever it is.

use rayon::prelude::*;

use super::{BeforeAndAfter, in_words, stands};
use crate::design::{Design, Draft, LightLevel};
use crate::finding::{Code, Finding, Remedy};
use crate::geometry::LayerDepth;
use crate::night::limits::LONG_LIGHT_H;
use crate::plants::light::from_words;
use crate::units::{Length, Mass, PhotonFlux};

/// Rounds of soaking after which hardly anything more is drawn out: practice.
const ROUNDS: u32 = 3;
/// The least soil that is suggested, mm: under it rooted plants are fed for a short time.
const LEAST_SOIL_MM: f64 = 10.0;

/// Names the strongest change by itself where the planting is found to fall short.
pub(super) fn name<'a>(
    design: &Design,
    follow: &(impl Fn(Draft) -> Option<BeforeAndAfter<'a>> + Sync),
    findings: &mut [Finding],
) {
    let mut findings = findings.iter_mut();
    let load = findings.find(|finding| finding.code == Code::PlantsLoad && stands(finding));
    let Some(finding) = load else {
        return;
    };
    let Some(strongest) = strongest(design, follow) else {
        return;
    };
    let remedy = match finding.remedy.take() {
        Some(remedy) => Remedy {
            says: format!("{}; strongest by itself: {strongest}", remedy.says),
            ..remedy
        },
        None => in_words(strongest),
    };
    finding.remedy = Some(remedy);
}

/// The change that brings the plan nearest to its limits, with what stands then.
fn strongest<'a>(
    design: &Design,
    follow: &(impl Fn(Draft) -> Option<BeforeAndAfter<'a>> + Sync),
) -> Option<String> {
    let tried = changes(design).into_par_iter().filter_map(|(says, draft)| {
        let trial = follow(draft).filter(BeforeAndAfter::helps)?;
        Some((trial.gain(), format!("{says}; then: {}", trial.then())))
    });
    let tried: Vec<(f64, String)> = tried.collect();
    let most = tried
        .into_iter()
        .reduce(|most, other| if other.0 > most.0 { other } else { most });
    most.map(|(_, says)| says)
}

/// Single changes, each as far as a keeper goes.
fn changes(design: &Design) -> Vec<(String, Draft)> {
    let now = design.draft();
    let mut changes = Vec::new();
    let mut with = |says: String, change: &dyn Fn(&mut Draft)| {
        let mut draft = now.clone();
        change(&mut draft);
        changes.push((says, draft));
    };
    let planted = design.planted();
    let is_planted = planted.floating.dry + planted.fast.dry > Mass::ZERO;
    if is_planted && now.light.hours < LONG_LIGHT_H {
        with(format!("light it {LONG_LIGHT_H:.0} h a day"), &|draft| {
            draft.light.hours = LONG_LIGHT_H;
        });
    }
    if is_planted {
        with("take a lamp twice as bright".to_owned(), &|draft| {
            draft.light.level = twice_as_bright(draft.light.level);
        });
    }
    if now.soil.soaked < ROUNDS {
        with(
            format!("soak and drain the soil {ROUNDS} times before use"),
            &|draft| {
                draft.soil.soaked = ROUNDS;
            },
        );
    }
    let half = now
        .units
        .up((design.bed().soil.mean / 2.0).max(Length::from_mm(LEAST_SOIL_MM)));
    if half < design.bed().soil.mean {
        let says = format!("lay {} of soil", now.units.depth(half));
        with(says, &|draft| draft.soil.depth = LayerDepth::Uniform(half));
    }
    changes
}

fn twice_as_bright(level: LightLevel) -> LightLevel {
    match level {
        LightLevel::Par(par) => LightLevel::Par(par * 2.0),
        LightLevel::Lumens { flux, height } => LightLevel::Lumens {
            flux: flux * 2.0,
            height,
        },
        LightLevel::Class(class) => {
            let par = from_words(class).typical * 2.0;
            LightLevel::Par(PhotonFlux::from_umol_m2_s(par))
        }
    }
}
