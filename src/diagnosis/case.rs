//! The tank in question: its design, what was measured, and when that was.

use super::fact::is_still;
use super::kit::Kit;
use super::measurement::{Measurand, Measurement, latest};
use crate::catalogue::{self, Sign};
use crate::design::{Design, EventKind, Incident, usual};
use crate::finding::Caution;
use crate::numerics::rodas::IntegrationError;
use crate::plan::{Standing, standing};
use crate::source::Band;
use crate::startup::{Dissolved, Inputs, Parameters};
use crate::units::{Alkalinity, Concentration, Length, Mass, Temperature};
use crate::water::ammonia;

/// An older tank is taken to be this old: beyond it the model only repeats itself.
pub const OLDEST_D: f64 = 240.0;
/// A reading no older than this tells how the water stands, d (judgement).
const FRESH_D: f64 = 4.0;
/// An event no longer ago than this may be why a tank is as it is, d (judgement).
const LATELY_D: f64 = 14.0;
/// Hours after which the bacteria of a filter that stands still suffer: common practice, no
/// source.
const STALE_FILTER_H: f64 = 2.0;
/// The age of a tank of which nothing says how old it is, d (judgement).
const UNDATED_D: f64 = 30.0;

/// Depths that need not be known, by their keys, with what is drawn then.
pub(super) const UNKNOWN_DEPTHS: [(&str, Band); 2] = [
    ("soil.depth", usual::SOIL_DEPTH_MM),
    ("cap.depth", usual::CAP_DEPTH_MM),
];

/// A design with everything known of the tank built to it.
#[derive(Debug, Clone)]
pub struct CaseHistory<'a> {
    /// The design.
    pub design: &'a Design,
    /// Every measurement, in order of days.
    pub log: Vec<Measurement>,
    /// The day of the last measurement or event, as the keeper counts.
    pub age_d: f64,
    /// What was seen, and what the events of the last weeks say by themselves.
    pub signs: Vec<&'static Sign>,
    /// How the design stands.
    pub standing: Standing,
    /// The design as the start-up model sees it, its days set back where the tank is
    /// older than [`OLDEST_D`].
    pub(super) inputs: Inputs,
    /// Its numbers with their bands.
    pub(super) bands: Parameters<Band>,
    /// Days by which the tank is older than it is followed.
    set_back_d: f64,
}

impl<'a> CaseHistory<'a> {
    /// A case of a design with further measurements beside those it holds.
    ///
    /// # Errors
    /// When the numbers of the design leave the finite ones.
    pub fn of(design: &'a Design, further: &[Measurement]) -> Result<Self, IntegrationError> {
        let readings = design.draft().readings.iter();
        let mut log: Vec<Measurement> = readings.flat_map(Measurement::all_of).collect();
        log.extend_from_slice(further);
        log.sort_by(|a, b| a.day.total_cmp(&b.day));
        let age_d = age_d(design, &log);
        let set_back_d = (age_d - OLDEST_D).max(0.0);
        let mut inputs = Inputs::of(design);
        inputs.events.retain(|event| event.day <= age_d);
        if is_still(design).is_none() {
            inputs.leaf_film = Length::ZERO;
        }
        for event in &mut inputs.events {
            event.day = (event.day - set_back_d).max(0.0);
        }
        Ok(Self {
            design,
            log,
            age_d,
            signs: signs(design, age_d),
            standing: standing(design)?,
            inputs,
            bands: Parameters::<Band>::of(design),
            set_back_d,
        })
    }

    /// Today as the model counts, d.
    pub fn now_d(&self) -> f64 {
        self.age_d - self.set_back_d
    }

    /// A day of the keeper's as the model counts.
    pub fn model_day(&self, day: f64) -> f64 {
        (day - self.set_back_d).max(0.0)
    }

    /// A day of the model's as the keeper counts.
    pub fn keeper_day(&self, day: f64) -> f64 {
        day + self.set_back_d
    }

    /// The last measurement of a subject.
    pub fn latest(&self, of: Measurand) -> Option<Measurement> {
        latest(&self.log, of)
    }

    /// The kit that a subject is read with, where the start-up model follows it.
    pub fn kit(&self, of: Measurand) -> Option<Kit<'a>> {
        self.design.draft().card(of.analyte()?).map(Kit::with)
    }

    /// Alkalinity: the last measured, or the design's.
    pub fn alkalinity(&self) -> Alkalinity {
        let measured = self.latest(Measurand::Alkalinity);
        measured.map_or(self.design.draft().water.alkalinity, |found| {
            Alkalinity::from_dkh(found.value.number())
        })
    }

    /// pH: the last measured, or the design's.
    pub fn ph(&self) -> f64 {
        let measured = self.latest(Measurand::Ph).map(|found| found.value.number());
        measured.unwrap_or(self.design.draft().water.ph)
    }

    /// Temperature: the last measured, or the design's.
    pub fn temperature(&self) -> Temperature {
        let measured = self.latest(Measurand::Temperature);
        measured.map_or(self.design.draft().water.temperature, |found| {
            Temperature::from_celsius(found.value.number())
        })
    }

    /// Un-ionised ammonia in the last reading, mg N/L.
    pub fn un_ionised_mg_l(&self) -> Option<f64> {
        let share = ammonia::un_ionised_share(self.ph(), self.temperature()).fraction();
        Some(self.latest(Measurand::Ammonia)?.value.at_least() * share)
    }

    /// Fresh mass of the animals that are in.
    pub fn animal_mass(&self) -> Mass {
        let stocks = self.design.draft().animals.iter();
        stocks
            .filter(|stock| stock.from_day <= self.age_d)
            .map(|stock| Mass::from_g(stock.animal.mass_g.typical * f64::from(stock.count)))
            .sum()
    }

    /// That the tank is older than the model follows, where it is.
    pub(super) fn too_old(&self) -> Option<Caution> {
        (self.set_back_d > 0.0).then(|| Caution {
            code: "range.age",
            says: format!(
                "Age: the model describes the first months; this tank of {:.0} days is reckoned as one of {OLDEST_D:.0}.",
                self.age_d
            ),
            source: None,
        })
    }

    /// What is drawn from a range, for nobody knows it.
    pub(super) fn unknown_depths(&self) -> Option<Caution> {
        let drawn: Vec<String> = UNKNOWN_DEPTHS
            .iter()
            .filter(|(key, _)| !self.design.draft().says(key))
            .map(|(key, band_mm)| {
                let layer = key.split('.').next().unwrap_or(key);
                let [low, high] = [band_mm.low, band_mm.high].map(Length::from_mm);
                let depth = |length| self.design.draft().units.depth(length);
                format!(
                    "the {layer} counts as {} to {} deep",
                    depth(low),
                    depth(high)
                )
            })
            .collect();
        (!drawn.is_empty()).then(|| Caution {
            code: "range.depth",
            says: format!(
                "Depth: {}, for it is not known; a thin ruler pushed down at the glass tells it and sharpens what is found.",
                drawn.join(", and ")
            ),
            source: None,
        })
    }

    /// The water as the last fresh readings have it.
    pub fn measured(&self) -> Dissolved {
        let fresh = |of: Measurand| {
            let last = self.latest(of)?;
            let is_fresh = last.day >= self.age_d - FRESH_D;
            is_fresh.then(|| Concentration::from_mg_l(last.element()))
        };
        Dissolved {
            ammonia: fresh(Measurand::Ammonia),
            nitrite_n: fresh(Measurand::Nitrite),
            nitrate_n: fresh(Measurand::Nitrate),
        }
    }

    /// Whether nothing was read, seen or told.
    pub fn is_blind(&self) -> bool {
        self.log.is_empty() && self.design.draft().signs.is_empty() && !self.lately().any(is_told)
    }

    /// Whether a sign was seen.
    pub fn has_sign(&self, name: &str) -> bool {
        self.signs.iter().any(|sign| sign.name == name)
    }

    /// Whether one of some signs was seen.
    pub fn has_one_of(&self, names: &[&str]) -> bool {
        names.iter().any(|name| self.has_sign(name))
    }

    /// What was done in the last weeks.
    pub fn lately(&self) -> impl Iterator<Item = &'a EventKind> {
        lately(self.design, self.age_d)
    }

    /// What happened in the last weeks that no model follows.
    pub fn incidents(&self) -> impl Iterator<Item = &'a Incident> {
        self.lately().filter_map(|kind| match kind {
            EventKind::Incident(incident) => Some(incident),
            _ => None,
        })
    }

    /// Whether the bed smells of hydrogen sulfide.
    pub fn smells_of_sulfide(&self) -> bool {
        self.has_sign("sulfide_smell")
    }

    /// Whether animals are in.
    pub fn is_stocked(&self) -> bool {
        self.animal_mass() > Mass::ZERO
    }
}

/// What was done in the weeks before a day.
fn lately(design: &Design, day: f64) -> impl Iterator<Item = &EventKind> {
    let events = design.draft().events.iter();
    let recent = events.filter(move |event| event.day >= day - LATELY_D);
    recent.map(|event| &event.kind)
}

/// Whether a fact is read off what was done.
const fn is_told(kind: &EventKind) -> bool {
    matches!(
        kind,
        EventKind::Incident(_) | EventKind::Fed(_) | EventKind::ToppedUp(_)
    )
}

/// The signs written down, with those that an event of the last weeks is.
fn signs(design: &Design, age_d: f64) -> Vec<&'static Sign> {
    let draft = design.draft();
    let mut signs = draft.signs.observed.clone();
    for kind in lately(design, age_d) {
        let name = match kind {
            EventKind::Incident(Incident::FilterWashed) | EventKind::Drained(_) => "filter_cleaned",
            EventKind::Incident(Incident::Off(span)) if span.hours() >= STALE_FILTER_H => {
                "filter_cleaned"
            }
            EventKind::Disturbed(_) => "bed_dug",
            _ => continue,
        };
        signs.extend(catalogue::find::<Sign>(name));
    }
    signs.sort_by_key(|sign| sign.name.as_str());
    signs.dedup_by_key(|sign| sign.name.as_str());
    signs
}

/// The day of the last measurement, else of the last event or the last animals.
fn age_d(design: &Design, log: &[Measurement]) -> f64 {
    let draft = design.draft();
    let measured = log.iter().map(|measurement| measurement.day);
    let events = draft.events.iter().map(|event| event.day);
    let stocked = draft.animals.iter().map(|stock| stock.from_day);
    measured
        .reduce(f64::max)
        .or_else(|| events.chain(stocked).reduce(f64::max))
        .unwrap_or(UNDATED_D)
}
