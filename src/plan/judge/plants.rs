//! `plants.load`, `plants.cover`, `plants.mix`, `plants.listed` and `cap.leak`.

use super::{Case, cap_depth, flush};
use crate::catalogue::{Group, LISTS_AS_OF};
use crate::design::Design;
use crate::finding::{Code, Finding, Remedy, Status};
use crate::numerics::rodas::IntegrationError;
use crate::plan::load::{FLUSH_DAYS, INDEX_WATCH, Load};
use crate::plan::planting::portions_in_words;
use crate::plan::words;
use crate::source::{Basis, Source};
use crate::startup::Inputs;
use crate::units::{Length, show::significant};

/// Floating cover from which the plants below are watched, and from which they starve, %.
const COVER_WATCH_PCT: f64 = 50.0;
const COVER_ACT_PCT: f64 = 66.0;
/// The deepest cap that is suggested against a leak.
const DEEPEST_REMEDY_MM: f64 = 60.0;
/// Steps in which that cap is sought.
const REMEDY_STEP_MM: f64 = 1.0;

/// Planting of day one against the flush.
pub(super) fn load(case: &Case<'_>) -> Finding {
    let met = case.planting.met;
    let status = match met.index {
        _ if met.is_met() => Status::Ok,
        index if index >= INDEX_WATCH => Status::Watch,
        _ => Status::Act,
    };
    let index = significant(met.index, 2);
    let limit = significant(met.limit, 2);
    let says = match status {
        Status::Ok => format!("the plants can take {index} times what the bed gives off"),
        _ if met.index <= 0.0 && takes_nothing(case) => {
            "nothing is planted that takes what the bed gives off in the first weeks".to_owned()
        }
        _ if met.index <= 0.0 => {
            "what is planted does not grow at this light and temperature".to_owned()
        }
        _ if met.index_is_met() => format!(
            "the plants can take {index} times what the bed gives off in {FLUSH_DAYS} days, but too late: ammonia or nitrite passes its limit before they grow (see flush)"
        ),
        _ => format!(
            "the plants can take {index} times what the bed gives off in {FLUSH_DAYS} days; {limit} is wanted"
        ),
    };
    let remedy = (status != Status::Ok).then(|| more_plants(case));
    Finding {
        code: Code::PlantsLoad,
        status,
        subject: "planting".to_owned(),
        value: Some(met.index),
        unit: "index",
        low: Some(met.limit),
        high: None,
        says,
        remedy,
        basis: Basis::Judgement,
        source: None,
    }
}

/// Whether neither floaters that feed from the water nor fast growers are planted.
fn takes_nothing(case: &Case<'_>) -> bool {
    let planted = case.design.planted();
    planted.feeding_floaters.dry.g() + planted.fast.dry.g() <= 0.0
}

fn more_plants(case: &Case<'_>) -> Remedy {
    if case.planting.section.needed.portions.is_empty() {
        let why = if case.planting.met.index_is_met() {
            "more plants come too late"
        } else {
            "plants do not help here"
        };
        return Remedy {
            says: format!("{why}: {}", words::either(&otherwise(case))),
            quantity: None,
            unit: "",
        };
    }
    let planting = &case.planting.section;
    let needed = &planting.needed;
    let added_g = needed.floating_g - planting.floating_g + needed.fast_g - planting.fast_g;
    let reached = &case.planting.reached;
    let short = if reached.is_met() {
        String::new()
    } else {
        let still = if needed.index >= reached.limit {
            "even so ammonia or nitrite goes over its limit"
        } else {
            "plants alone are not enough"
        };
        format!("; {still}: {}", words::either(&otherwise(case)))
    };
    let when = if case.is_running { "now" } else { "on day one" };
    Remedy {
        says: format!(
            "add {} {when}: {} g fresh in all, index {} then, {} is wanted{short}",
            portions_in_words(&needed.portions),
            significant(added_g, 2),
            significant(needed.index, 2),
            significant(reached.limit, 2)
        ),
        quantity: Some(added_g),
        unit: "g",
    }
}

/// What else brings the flush down, with the odds where they were sought.
fn otherwise(case: &Case<'_>) -> Vec<String> {
    let mut means = Vec::new();
    if case.planting.fast_growth_per_d <= 0.0 {
        means.push("give more light, in this one fast growers shrink".to_owned());
    }
    if case.is_running {
        means.push("change water until ammonia and nitrite read nothing".to_owned());
        return means;
    }
    if case.design.draft().soil.soaked == 0 {
        means.push("soak and drain the soil before use".to_owned());
    }
    means.push("take less or poorer soil".to_owned());
    means.push(flush::changing_water(&case.flush));
    means
}

/// Peak release through the cap against what the planting takes.
pub(super) fn leak(case: &Case<'_>) -> Result<Finding, IntegrationError> {
    let peak = case.bed.release_peak_mg_n_m2_d;
    let met = case.planting.met.is_met();
    let says = if met {
        format!(
            "the plants take what comes through the cap: at its peak {} mg N/m2 a day, up to twice that by other models of diffusion",
            significant(peak, 2)
        )
    } else {
        format!(
            "more ammonia comes through the cap than the plants take: at its peak {} mg N/m2 a day, up to twice that by other models of diffusion",
            significant(peak, 2)
        )
    };
    let remedy = if met || !case.seeks_remedies {
        None
    } else {
        Some(leak_remedy(case)?)
    };
    Ok(Finding {
        code: Code::CapLeak,
        status: if met { Status::Ok } else { Status::Watch },
        subject: "cap".to_owned(),
        value: Some(peak),
        unit: "mg N/m2/d",
        low: None,
        high: None,
        says,
        remedy,
        basis: Basis::Published,
        source: Some(Source::Boudreau1996),
    })
}

/// More sand where that alone is enough, else more plants; both are named.
fn leak_remedy(case: &Case<'_>) -> Result<Remedy, IntegrationError> {
    let plants = more_plants(case);
    Ok(match deeper_cap(case)? {
        Some(depth) => {
            let sand = cap_depth::more_sand(case.design, depth);
            Remedy {
                says: format!("{}; or {}", sand.says, plants.says),
                ..sand
            }
        }
        None => plants,
    })
}

/// The least even depth, up to 60 mm and to where it would be too deep, at which the planting meets the load.
fn deeper_cap(case: &Case<'_>) -> Result<Option<Length>, IntegrationError> {
    let now = case.design.bed().cap.mean;
    let meets = |depth: Length| -> Result<bool, IntegrationError> {
        let inputs = Inputs {
            cap_depth: depth,
            ..case.load.inputs.clone()
        };
        let load = Load::with(case.design, inputs)?;
        Ok(load.met_by(case.design.planted())?.is_met())
    };
    let deepest = Length::from_mm(DEEPEST_REMEDY_MM).min(cap_depth::verdict(case.design).limit);
    if now >= deepest || !meets(deepest)? {
        return Ok(None);
    }
    let (mut too_thin, mut enough) = (now, deepest);
    while (enough - too_thin).mm() > REMEDY_STEP_MM {
        let middle = (too_thin + enough) / 2.0;
        if meets(middle)? {
            enough = middle;
        } else {
            too_thin = middle;
        }
    }
    Ok(Some(Length::from_mm(enough.mm().ceil())))
}

/// Share of the surface under floaters.
pub(super) fn cover(design: &Design) -> Finding {
    let cover = design.planted().cover.percent();
    let below = plants_below(design);
    let status = match cover {
        _ if cover < COVER_WATCH_PCT || below == Below::Nothing => Status::Ok,
        _ if below == Below::ShadePlants => Status::Note,
        _ if cover < COVER_ACT_PCT => Status::Watch,
        _ => Status::Act,
    };
    let says = match status {
        Status::Ok => format!("floaters cover {cover:.0} % of the surface"),
        Status::Note => format!("floaters cover {cover:.0} %; only shade plants grow below"),
        Status::Watch => format!("floaters cover {cover:.0} %: plants below grow poorly"),
        Status::Act => format!("floaters cover {cover:.0} %: plants below starve"),
    };
    Finding {
        code: Code::PlantsCover,
        status,
        subject: "floaters".to_owned(),
        value: Some(cover),
        unit: "%",
        low: None,
        high: Some(COVER_WATCH_PCT),
        says,
        remedy: (status >= Status::Watch).then(|| Remedy {
            says: format!("thin them to under {COVER_WATCH_PCT:.0} % of the surface"),
            quantity: Some(cover - COVER_WATCH_PCT),
            unit: "%",
        }),
        basis: Basis::Published,
        source: Some(Source::Larson2007),
    }
}

/// What grows below the floaters.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Below {
    Nothing,
    ShadePlants,
    LightPlants,
}

fn plants_below(design: &Design) -> Below {
    let mut below = design
        .draft()
        .plants
        .iter()
        .filter(|planting| planting.plant.group != Group::Floater)
        .peekable();
    if below.peek().is_none() {
        Below::Nothing
    } else if below.all(|planting| planting.plant.shade_plant) {
        Below::ShadePlants
    } else {
        Below::LightPlants
    }
}

/// Whether anything in the mix grows fast.
pub(super) fn mix(design: &Design) -> Finding {
    let planted = design.planted();
    let fast_g = planted.feeding_floaters.dry.g() + planted.fast.dry.g();
    let slow_g = planted.slow.dry.g();
    let only_slow = slow_g > 0.0 && fast_g <= 0.0;
    Finding {
        code: Code::PlantsMix,
        status: if only_slow { Status::Watch } else { Status::Ok },
        subject: "planting".to_owned(),
        value: (fast_g + slow_g > 0.0).then(|| fast_g / (fast_g + slow_g) * 100.0),
        unit: "% by dry mass",
        low: None,
        high: None,
        says: if only_slow {
            "only slow growers: they hardly take anything in the first month".to_owned()
        } else if fast_g > 0.0 {
            "floaters or fast growers are in the mix".to_owned()
        } else {
            "nothing is planted".to_owned()
        },
        remedy: only_slow.then(|| Remedy {
            says: "add floaters and fast growers; take them out again once the slow ones fill in"
                .to_owned(),
            quantity: None,
            unit: "",
        }),
        basis: Basis::Judgement,
        source: Some(Source::NielsenSandJensen1991),
    }
}

/// One finding for each plant on a list of restricted plants.
pub(super) fn listed(design: &Design) -> Vec<Finding> {
    design
        .draft()
        .plants
        .iter()
        .map(|planting| planting.plant)
        .filter(|plant| !plant.listed.is_empty())
        .map(|plant| {
            let lists: Vec<String> = plant
                .listed
                .iter()
                .map(|listing| match listing.since {
                    Some(year) => format!("{} ({year})", listing.list.label()),
                    None => listing.list.label().to_owned(),
                })
                .collect();
            Finding {
                code: Code::PlantsListed,
                status: Status::Note,
                subject: plant.name.clone(),
                value: None,
                unit: "",
                low: None,
                high: None,
                says: format!(
                    "{} ({}) is on the {} as of {LISTS_AS_OF}; other lists, and parts of these that were not read, may name it too",
                    plant.label,
                    plant.latin,
                    words::listed(&lists)
                ),
                remedy: None,
                basis: Basis::Published,
                source: plant.listed.first().map(|listing| listing.source),
            }
        })
        .collect()
}
