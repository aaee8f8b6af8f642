//! A running tank as a document: the week, the water, the soil, what if.

use super::estimate::{ranged, signed};
use super::{finding, reason, short, what_if, years};
use crate::design::Design;
use crate::plan::{Estimate, watch_limit_mg_l};
use crate::report::document::{Block, Document, Fact};
use crate::units::show::{fixed, significant};
use crate::units::{Analyte, Mass, UnitSystem, Volume};
use crate::upkeep::{HUNGRY_PCT, Upkeep, working_of};

/// Feed over the whole of what the plants could take lets nitrate climb, %.
const ENOUGH_PCT: f64 = 100.0;
/// Nitrate that climbs more slowly is held, mg/L a week: under what a kit tells in a month.
const LEAST_RISE: f64 = 0.1;
/// Floaters that are not worth taking out, g: judgement.
const LEAST_THINNED_G: f64 = 0.5;

/// A running tank, verdict first.
pub fn upkeep(design: &Design, found: &Upkeep) -> Document {
    let teller = Teller { design, found };
    let mut week = teller.work();
    week.extend(teller.account());
    let mut blocks = vec![
        Block::Verdict(found.status, teller.verdict()),
        Block::Text(teller.drawn_from()),
        Block::Heading("Each week".to_owned()),
        Block::Facts(week),
        Block::Heading("What becomes of the water".to_owned()),
        Block::Facts(teller.water()),
    ];
    let charts = years::charts(&found.weeks, teller.nitrate_limit()).map(Block::Chart);
    let year = [Block::Heading(teller.year())].into_iter().chain(charts);
    blocks.extend(year.map(|block| Block::OnPage(Box::new(block))));
    blocks.extend([
        Block::Heading("What becomes of the soil".to_owned()),
        Block::Table(years::years(&found.ageing)),
        Block::Facts(years::soil(&found.ageing).to_vec()),
    ]);
    blocks.extend(what_if::without_power(teller.units(), &found.power));
    blocks.extend(what_if::asked(teller.units(), found));
    blocks.extend(finding::cautions(&found.cautions));
    Document {
        title: found.name.clone(),
        reasons: reason::worked(&blocks, &[], |code| working_of(design, found, code)),
        blocks,
    }
}

/// The week's work, where water and soil end, and the answers that were asked for.
pub fn upkeep_in_short(design: &Design, found: &Upkeep) -> Document {
    let teller = Teller { design, found };
    let mut ahead = teller.water();
    ahead.extend(years::soil(&found.ageing));
    ahead.push(what_if::power_cut(teller.units(), &found.power));
    let mut blocks = vec![
        Block::Verdict(found.status, teller.verdict()),
        Block::Heading("Each week".to_owned()),
        Block::Facts(teller.work()),
        Block::Heading("Ahead".to_owned()),
        Block::Facts(ahead),
    ];
    blocks.extend(what_if::asked(teller.units(), found));
    let (own, general) = short::parted(&found.cautions, false);
    blocks.extend(short::cautions(own, &general, "upkeep FILE --full"));
    Document {
        title: found.name.clone(),
        reasons: Vec::new(),
        blocks,
    }
}

/// A tank and what was found for it.
struct Teller<'a> {
    design: &'a Design,
    found: &'a Upkeep,
}

impl Teller<'_> {
    fn units(&self) -> UnitSystem {
        self.design.draft().units
    }

    /// "The year up to day 730".
    fn year(&self) -> String {
        format!("The year up to day {}", self.found.day)
    }

    fn nitrate_limit(&self) -> f64 {
        watch_limit_mg_l(self.design, Analyte::Nitrate).unwrap_or(f64::INFINITY)
    }

    fn verdict(&self) -> String {
        let (units, week) = (self.units(), &self.found.upkeep);
        let mut work = Vec::new();
        if let Some(thin) = week.floaters_thin_g.filter(is_worth_it) {
            let mass = units.plant_mass(Mass::from_g(thin.typical()));
            work.push(format!("take out {mass} of floaters"));
        }
        let top_up = Volume::from_litres(week.top_up_l_per_week);
        work.push(format!("top up {}", units.volume(top_up)));
        let nitrate = match week.nitrate_steady_mg_l {
            Some(steady) => format!("nitrate ends at {} mg/L", significant(steady.typical(), 2)),
            None if self.is_held() => "plants take all nitrate".to_owned(),
            None => {
                let rise = week.nitrate_rise_mg_l_per_week.typical();
                format!("nitrate climbs by {} mg/L a week", significant(rise, 2))
            }
        };
        format!(
            "a week about day {}: {}; {nitrate}",
            self.found.day,
            work.join(", ")
        )
    }

    /// Whether nitrate does not climb to speak of where no water is changed.
    fn is_held(&self) -> bool {
        self.found.upkeep.nitrate_rise_mg_l_per_week.typical() < LEAST_RISE
    }

    fn drawn_from(&self) -> String {
        if self.found.members == 0 {
            "Central numbers alone, no band, over the last four weeks before that day.".to_owned()
        } else {
            format!(
                "Typical values over the last four weeks before that day, 10 to 90 % of {} members (seed {}) in brackets.",
                self.found.members, self.found.seed
            )
        }
    }

    fn work(&self) -> Vec<Fact> {
        let mut work = vec![
            self.floaters(),
            self.stems(),
            self.top_up(),
            self.change(),
            self.feed(),
        ];
        work.extend(self.dose());
        work
    }

    /// What hungry plants are given, or why nothing yet.
    fn dose(&self) -> Option<Fact> {
        let given = self.found.given.as_ref().map(|given| {
            let first = given.dosing.iter().find(|dose| dose.doses_per_week > 0);
            let dose = first.map(|dose| format!("{} mL", significant(dose.dose_ml, 2)));
            Fact::new(
                "dose",
                dose.unwrap_or_else(|| "none".to_owned()),
                given.says(),
            )
        });
        let waits = self.found.dosing_waits_for.as_ref();
        let waits = waits.map(|reason| Fact::new("dose", "not yet", reason.clone()));
        given.or(waits).map(|fact| fact.by("water.dosing"))
    }

    fn floaters(&self) -> Fact {
        let week = &self.found.upkeep;
        let label = "thin floaters";
        let fact = match week.floaters_thin_g {
            None => Fact::new(
                label,
                "not given",
                "the spec has none that live on the water",
            ),
            Some(thin) if !is_worth_it(&thin) => Fact::new(
                label,
                "none",
                "they hardly grow over the cover that is kept",
            ),
            Some(thin) => {
                let handfuls = week.floaters_thin_handfuls.map(Estimate::typical);
                let handfuls = handfuls.map_or_else(String::new, |handfuls| match handfuls {
                    few if few < 0.1 => "under a tenth of a loose handful, ".to_owned(),
                    some if some < 1.0 => {
                        format!("{} of a loose handful, ", significant(some, 1))
                    }
                    some => format!("{} loose handfuls, ", significant(some, 2)),
                });
                let share = week.floaters_thin_pct.map_or(0.0, Estimate::typical);
                let note = format!("{handfuls}{} % of the surface", fixed(share, 0));
                Fact::new(label, self.mass(thin), note)
            }
        };
        fact.by("upkeep.harvest")
    }

    fn stems(&self) -> Fact {
        let week = &self.found.upkeep;
        let last = self.found.weeks.last();
        let is_there = last.is_some_and(|row| row.fast_g.typical() > 0.0);
        let fact = match (week.stems_trim_g, week.stems_trim_every_d) {
            (Some(grams), Some(every)) => Fact::new(
                "trim stems",
                self.units().plant_mass(Mass::from_g(grams)),
                format!("a third of them, every {} days", ranged(every)),
            ),
            _ if is_there => Fact::new(
                "trim stems",
                "none",
                "they stay under their limit for months",
            ),
            _ => Fact::new("trim stems", "not given", "the spec has no fast growers"),
        };
        fact.by("upkeep.harvest")
    }

    fn top_up(&self) -> Fact {
        let week = &self.found.upkeep;
        let rise = week.hardness_rise_dgh_per_month;
        let note = if rise > 0.0 {
            format!(
                "adds {} dGH a month; soft water adds none",
                significant(rise, 2)
            )
        } else {
            "with soft water, or none is lost: hardness stays".to_owned()
        };
        let volume = Volume::from_litres(week.top_up_l_per_week);
        Fact::new("top up", self.units().volume(volume), note).by("heat.balance")
    }

    fn change(&self) -> Fact {
        let limit = significant(self.nitrate_limit(), 2);
        let fact = match self.found.upkeep.change_needed_pct {
            None => Fact::new(
                "change water",
                "helps little",
                format!(
                    "nitrate over {limit} mg/L comes with the tap or faster than changes take it: mix soft water in, feed less, grow more"
                ),
            ),
            Some(share) if share.typical() < 1.0 => Fact::new(
                "change water",
                "none",
                format!("for nitrate's sake: it stays under {limit} mg/L"),
            ),
            Some(share) => Fact::new(
                "change water",
                format!("{} %", ranged(share)),
                format!("{} holds nitrate at {limit} mg/L", self.how_often()),
            ),
        };
        fact.by("upkeep.nitrate")
    }

    fn how_often(&self) -> String {
        let change = self.design.draft().water.change;
        let days = change.map_or(7.0, |change| change.every.days());
        format!("every {} days", significant(days, 2))
    }

    fn feed(&self) -> Fact {
        let fact = match self.found.upkeep.feed_share_pct {
            None => Fact::new("feed", "not given", "plants live on the soil and the tap"),
            Some(share) => {
                let note = match share.typical() {
                    pct if pct < HUNGRY_PCT => {
                        "of what the plants could take: hungry; feed more, or dose"
                    }
                    pct if pct <= ENOUGH_PCT => "of what the plants could take: it fits",
                    _ => "of what the plants could take: nitrate climbs; feed less, or grow more",
                };
                Fact::new("feed", format!("{} %", ranged(share)), note)
            }
        };
        fact.by("upkeep.nitrogen")
    }

    /// Nitrogen by its ways, and what goes out with plants beside it.
    fn account(&self) -> [Fact; 2] {
        let (supply, removed) = (&self.found.upkeep.supply, &self.found.upkeep.removed);
        let mg = |value: f64| significant(value, 2);
        let feed = supply.feed_n_mg_per_week.map(Estimate::typical);
        let soil = supply.soil_n_mg_per_week.typical();
        let comes = feed.unwrap_or_default() + supply.tap_n_mg_per_week + soil;
        let fed = feed.map_or("not given".to_owned(), |feed| format!("{} mg", mg(feed)));
        let tap = mg(supply.tap_n_mg_per_week);
        let comes_by = format!("feed {fed}, water changes {tap} mg, soil {} mg", mg(soil));
        let goes_by = format!(
            "with plants, beside {} mg of phosphorus and {} of potassium; {} mg go with water and to the air, {} mg stay",
            mg(removed.p_mg_per_week.typical()),
            ranged(removed.k_mg_per_week),
            mg(supply.lost_n_mg_per_week.typical()),
            mg(supply.kept_n_mg_per_week.typical()),
        );
        let out = format!("{} mg", mg(removed.n_mg_per_week.typical()));
        [
            Fact::new("nitrogen in", format!("{} mg", mg(comes)), comes_by).by("upkeep.nitrogen"),
            Fact::new("nitrogen out", out, goes_by).by("upkeep.nitrogen"),
        ]
    }

    fn water(&self) -> Vec<Fact> {
        let week = &self.found.upkeep;
        let nitrate = match week.nitrate_steady_mg_l {
            Some(steady) => Fact::new(
                "nitrate",
                format!("{} mg/L", ranged(steady)),
                "before a change, in the end",
            ),
            None if self.is_held() => Fact::new(
                "nitrate",
                "none to spare",
                "plants take what comes; no water is changed",
            ),
            None => Fact::new(
                "nitrate",
                format!("{} mg/L a week", signed(week.nitrate_rise_mg_l_per_week)),
                "without end: no water is changed",
            ),
        };
        let rise = week.hardness_rise_dgh_per_month;
        let hardness = match week.hardness_steady_dgh {
            Some(steady) => Fact::new(
                "hardness",
                format!("{} dGH", significant(steady, 2)),
                format!("in the end; with soft water {}", self.tap_dgh()),
            ),
            None => Fact::new(
                "hardness",
                format!("+{} dGH a month", significant(rise, 2)),
                "without end by topping up; with soft water none",
            ),
        };
        let alkalinity = match week.alkalinity_steady_dkh {
            Some(steady) => Fact::new(
                "alkalinity",
                format!("{} dKH", ranged(steady)),
                "before a change, in the end",
            ),
            None => Fact::new(
                "alkalinity",
                format!("{} dKH a month", signed(week.alkalinity_rise_dkh_per_month)),
                "by topping up, less what nitrogen uses",
            ),
        };
        let mut facts = vec![
            nitrate.by("upkeep.nitrate"),
            hardness.by("upkeep.creep"),
            alkalinity.by("upkeep.alkalinity"),
        ];
        facts.extend(week.conductivity_steady_us_cm.map(|steady| {
            let note = match self.design.draft().water.conductivity {
                Some(_) => "in the end",
                None => "in the end, by hardness; the tap's is not given",
            };
            Fact::new("conductivity", format!("{} uS/cm", ranged(steady)), note).by("upkeep.creep")
        }));
        facts
    }

    fn tap_dgh(&self) -> String {
        format!(
            "{} dGH",
            significant(self.design.draft().water.hardness.dgh(), 2)
        )
    }

    /// "9.5 g (7-12)", in the units shown.
    fn mass(&self, grams: Estimate) -> String {
        let shown = |value: f64| self.units().plant_mass(Mass::from_g(value));
        let band = grams.band();
        let [low, typical, high] = [band.low, band.typical, band.high].map(shown);
        if low == high {
            return typical;
        }
        format!("{typical} ({low} to {high})")
    }
}

fn is_worth_it(thinned: &Estimate) -> bool {
    thinned.typical() >= LEAST_THINNED_G
}
