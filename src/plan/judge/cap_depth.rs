//! `cap.thin`, `cap.deep` and `cap.slope`.

use crate::catalogue::Grains;
use crate::design::Design;
use crate::finding::{Code, Finding, Remedy, Status};
use crate::geometry::Place;
use crate::plan::purchase::{self, bags_in_words};
use crate::plan::words;
use crate::source::{Basis, Source};
use crate::substrate::repose::GrainShape;
use crate::substrate::verdict::{BedDepth, CapDepth, CapDepthLimits, DeepReason, Slope};
use crate::units::{Density, Length, Volume};

/// The depth limits of the cap in this tank.
pub(in crate::plan) fn limits(design: &Design) -> CapDepthLimits {
    CapDepthLimits::in_tank(design.vessel().brimful())
}

/// Cap depth at its thinnest place.
pub(in crate::plan) fn thin(design: &Design) -> Finding {
    let limits = limits(design);
    let thinnest = design.bed().cap.thinnest;
    let verdict = limits.judge(thinnest.depth);
    let units = design.draft().units;
    let place = words::place(thinnest.place);
    let depth = units.depth(thinnest.depth);
    let says = match verdict.status() {
        Status::Ok => format!("the cap is at least {depth} deep"),
        Status::Act => format!("the cap is too thin {place}: {depth}; soil shows and gets out"),
        _ => format!("the cap is thin {place}: {depth}"),
    };
    let remedy = (verdict.status() != Status::Ok).then(|| more_sand(design, limits.watch_under));
    Finding {
        code: Code::CapThin,
        status: verdict.status(),
        subject: format!("cap {place}"),
        value: Some(thinnest.depth.mm()),
        unit: "mm",
        low: Some(limits.watch_under.mm()),
        high: None,
        says,
        remedy,
        basis: Basis::Practice,
        source: None,
    }
}

/// Sand that brings the cap to a depth wherever it is thinner.
pub(in crate::plan) fn more_sand(design: &Design, depth: Length) -> Remedy {
    let thinnest = design.bed().cap.thinnest;
    let place = match thinnest.place {
        Place::Everywhere => "everywhere".to_owned(),
        place => format!("{}, less where it is deeper", words::place(place)),
    };
    let volume = design.bed().cap_short_of(depth);
    sand(design, depth - thinnest.depth, &place, volume)
}

/// Sand spread evenly over the whole bed.
pub(in crate::plan) fn sand_over_all(design: &Design, depth: Length) -> Remedy {
    let volume = design.bed().area() * depth;
    sand(design, depth, "over the whole bed", volume)
}

fn sand(design: &Design, depth: Length, place: &str, volume: Volume) -> Remedy {
    let draft = design.draft();
    let units = draft.units;
    let bulk = Density::from_kg_m3(draft.cap.dry_bulk_kg_m3().typical);
    let mass = bulk * volume;
    let bags = purchase::by_mass(mass, &draft.cap.bags, bulk)
        .map(|bought| format!(", {}", bags_in_words(&bought.bags)))
        .unwrap_or_default();
    Remedy {
        says: format!(
            "add {} of {} {place}: {}, {}{bags}",
            units.depth(depth),
            draft.cap.material.label,
            units.bulk_volume(volume),
            units.mass(mass)
        ),
        quantity: Some(volume.litres()),
        unit: "L",
    }
}

/// How the mean depth of the cap stands.
pub(in crate::plan) fn verdict(design: &Design) -> CapDepth {
    let bed = design.bed();
    CapDepth::judge(&BedDepth {
        cap: bed.cap.mean,
        soil: bed.soil.mean,
        tank_height: design.vessel().height(),
        cap_least: limits(design).watch_under,
    })
}

/// Cap depth against what roots and gas can cross.
pub(in crate::plan) fn deep(design: &Design) -> Finding {
    let bed = design.bed();
    let verdict = verdict(design);
    let units = design.draft().units;
    let depth = units.depth(bed.cap.mean);
    let reasons: Vec<String> = verdict
        .reasons
        .iter()
        .map(|reason| match reason {
            DeepReason::Buries { from } => {
                format!("from {} on it buries the soil", units.depth(*from))
            }
            DeepReason::Untested { from } => {
                format!("caps of {} and more were not tested", units.depth(*from))
            }
            DeepReason::OverSoil { most } => {
                format!("over this soil {} is enough", units.depth(*most))
            }
            DeepReason::BedInTank { most } => format!(
                "with the soil it takes over a third of the tank's height ({})",
                units.depth(*most)
            ),
        })
        .collect();
    let says = if reasons.is_empty() {
        format!("the cap is {depth} deep on the mean, within reach of roots")
    } else {
        format!(
            "the cap is {depth} deep on the mean: {}",
            reasons.join("; ")
        )
    };
    let remedy = (verdict.take_off > Length::ZERO).then(|| less_sand(design, verdict.take_off));
    Finding {
        code: Code::CapDeep,
        status: verdict.status(),
        subject: "cap".to_owned(),
        value: Some(bed.cap.mean.mm()),
        unit: "mm",
        low: None,
        high: Some(verdict.limit.mm()),
        says,
        remedy,
        basis: Basis::Practice,
        source: Some(Source::Kim2007),
    }
}

fn less_sand(design: &Design, depth: Length) -> Remedy {
    let draft = design.draft();
    let volume = design.bed().cap_beyond(design.bed().cap.mean - depth);
    Remedy {
        says: format!(
            "take off {} of the cap: {}",
            draft.units.depth(depth),
            draft.units.bulk_volume(volume)
        ),
        quantity: Some(volume.litres()),
        unit: "L",
    }
}

/// Slope of the bed against the angle of repose, and where a layer was cut.
pub(super) fn slope(design: &Design) -> Finding {
    let bed = design.bed();
    let shape = match design.draft().cap.material.grains {
        Grains::Angular => GrainShape::Angular,
        Grains::Rounded => GrainShape::Rounded,
    };
    let degrees = bed.top.slope_deg;
    let verdict = Slope::judge(degrees, shape);
    let limit = shape.repose_degrees();
    let cut = cuts(design);
    let status = match verdict.status() {
        Status::Ok if !cut.is_empty() => Status::Note,
        status => status,
    };
    let mut says = match verdict {
        Slope::Stands if degrees == 0.0 => "the bed is level".to_owned(),
        Slope::Stands => format!("the bed slopes by {degrees:.0} degrees and stands"),
        Slope::Slides => format!("the bed slopes by {degrees:.0} degrees: these grains slide"),
    };
    if !cut.is_empty() {
        says = format!("{says}; {}", words::listed(&cut));
    }
    Finding {
        code: Code::CapSlope,
        status,
        subject: "bed".to_owned(),
        value: Some(degrees),
        unit: "degrees",
        low: None,
        high: Some(limit),
        says,
        remedy: (verdict == Slope::Slides).then(|| Remedy {
            says: format!("flatten it to {limit:.0} degrees or hold it with stones"),
            quantity: Some(limit),
            unit: "degrees",
        }),
        basis: Basis::Published,
        source: Some(Source::Kleinhans2011),
    }
}

/// Where a layer meets floor, rim or air.
fn cuts(design: &Design) -> Vec<&'static str> {
    let bed = design.bed();
    [
        (
            bed.soil.runs_out,
            "the soil runs out before a wall and was cut at the floor",
        ),
        (
            bed.cap.runs_out,
            "the cap runs out before a wall and soil shows there",
        ),
        (bed.meets_rim(), "the bed was cut at the rim"),
        (
            bed.rises_above(design.water_level()),
            "part of the bed stands above the water",
        ),
    ]
    .into_iter()
    .filter_map(|(holds, says)| holds.then_some(says))
    .collect()
}
