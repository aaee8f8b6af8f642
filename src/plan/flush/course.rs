//! The ensemble of a design, and what the plan takes from it.

use std::borrow::Cow;
use std::cell::OnceCell;

use super::budget::{self, BudgetRow};
use super::calendar::{self, CalendarInputs};
use super::changes::{self, ByReading};
use super::members::{MemberSource, alike, run, under_limits};
use super::reading;
use super::ready::{self, LONGEST_D, Readiness};
use super::section::{
    AnimalDay, CalendarEntry, DayRow, Driver, ReadingChanges, ShareOverLimit, Startup,
    StartupSection,
};
use crate::catalogue::Animal;
use crate::design::Design;
use crate::finding::Caution;
use crate::numerics::rodas::IntegrationError;
use crate::plan::estimate::Estimate;
use crate::plan::limits::limit_n_mg_l;
use crate::plan::load::Load;
use crate::plan::options::Options;
use crate::source::Band;
use crate::startup::ensemble::Member;
use crate::startup::forecast::{self, EnsembleDay, Forecast, Outcome, PeakBand};
use crate::startup::{Inputs, Parameters};
use crate::units::Analyte;
use crate::water::ammonia;

/// Share of full growth under which floaters count as short of phosphorus: judgement.
const STARVING_SHARE: f64 = 0.5;
/// Before this day low phosphorus is no sign yet.
const STARVING_FROM_DAY: f64 = 7.0;

/// Fresh mass over dry mass where no plant of the group says.
const FRESH_PER_DRY: f64 = 12.0;

/// The first weeks of a design, computed.
pub(in crate::plan) struct Flush<'a> {
    design: &'a Design,
    options: Options,
    forecast: Forecast,
    members: Vec<Member>,
    /// Share of the members that stay under the limits for ammonia and nitrite.
    pub(in crate::plan) probability: f64,
    /// pH at dusk on the day of the typical ammonia peak.
    ph_dusk: Band,
    /// The same members with water changed by readings, when they are first asked for.
    by_reading: OnceCell<ByReading>,
    /// The plan as it is written.
    inputs: Inputs,
    /// When animals may move in, when it is first asked for.
    readiness: OnceCell<Readiness>,
    /// Days that starts are followed which are not ready within those asked for.
    longest_d: u32,
}

impl<'a> Flush<'a> {
    /// Runs the ensemble, or the central numbers alone; `ph_dusk` is what the night knows
    /// of the day of the ammonia peak.
    pub(in crate::plan) fn of(
        design: &'a Design,
        load: &Load<'_>,
        options: Options,
        ph_dusk: Band,
        advance: &(dyn Fn(u32) + Sync),
    ) -> Result<Self, IntegrationError> {
        let bands = Parameters::<Band>::of(design);
        let members = run(&load.inputs, &bands, options, advance)?;
        let probability = under_limits(design, &members);
        let forecast = Forecast::of(&members).ok_or(IntegrationError::NotFinite { time: 0.0 })?;
        Ok(Self {
            design,
            options,
            forecast,
            members,
            probability,
            ph_dusk,
            by_reading: OnceCell::new(),
            inputs: load.inputs.clone(),
            readiness: OnceCell::new(),
            longest_d: LONGEST_D,
        })
    }

    /// The same, followed no longer than asked for.
    pub(in crate::plan) fn no_longer(self) -> Self {
        Self {
            longest_d: self.options.days,
            ..self
        }
    }

    /// The section of a plan.
    pub(in crate::plan) fn section(&self) -> StartupSection {
        let advised = self.advised();
        let changes = advised.map(ByReading::section);
        StartupSection {
            odds_with_changes: Some(advised.map_or(self.probability, |with| with.probability)),
            changes_by_reading: changes,
            changes_by_reading_reason: self.by_reading().reason(self.probability),
            water_change_plan: changes.iter().filter_map(ReadingChanges::stretch).collect(),
            probability_with_changes: advised.map(|with| with.probability),
            calendar: self.calendar(changes.as_ref()),
            ready_day_advised: self.first_animals(),
            ready_day_advised_reason: self.readiness().reason(),
            animals_from: self.animals_from(),
            ..self.figures()
        }
    }

    /// The section without the water changes advised and the calendar they stand in.
    pub(in crate::plan) fn figures(&self) -> StartupSection {
        StartupSection {
            days: self.options.days,
            members: self.options.members - self.members_lost(),
            members_lost: self.members_lost(),
            seed: self.options.seed,
            ammonia_peak_mg_l: self.estimate(self.forecast.ammonia.value),
            ammonia_peak_day: self.estimate(self.forecast.ammonia.day),
            nitrite_peak_mg_l: self.ion(Analyte::Nitrite, self.forecast.nitrite.value),
            nitrite_peak_day: self.estimate(self.forecast.nitrite.day),
            nitrate_peak_mg_l: self.ion(Analyte::Nitrate, self.forecast.nitrate.value),
            un_ionised_peak_mg_l: self.estimate(self.un_ionised()),
            ready_day: self.ready_day(),
            ready_day_reason: self.never_ready(),
            ready_day_advised: None,
            ready_day_advised_reason: None,
            animals_from: Vec::new(),
            algae_window_days: self.estimate(self.forecast.algae_window_days),
            share_over_limit: self.over_limits(),
            odds_as_written: self.probability,
            odds_with_changes: None,
            changes_by_reading: None,
            changes_by_reading_reason: None,
            water_change_plan: Vec::new(),
            probability_with_changes: None,
            calendar: Vec::new(),
        }
    }

    /// The members with water changed by readings.
    fn by_reading(&self) -> &ByReading {
        self.by_reading.get_or_init(|| {
            let rule = changes::rule(self.design);
            let inputs = Inputs::by_reading(self.design, rule);
            ByReading::of(rule, &inputs, &self.drawn(), (&self.members, &[]))
        })
    }

    fn drawn(&self) -> MemberSource<'_> {
        MemberSource {
            design: self.design,
            bands: Parameters::<Band>::of(self.design),
            options: self.options,
        }
    }

    /// When animals may move in: as written, or with changes by reading where these hold more
    /// starts, each before the animals, so that their own day does not change it.
    pub(in crate::plan) fn readiness(&self) -> &Readiness {
        self.readiness.get_or_init(|| {
            let drawn = self.drawn();
            let rule = changes::rule(self.design);
            let written = self.inputs.clone().before_animals();
            let changed = Inputs::by_reading(self.design, rule).before_animals();
            let (members, with) = if written == self.inputs {
                (
                    Cow::Borrowed(&self.members),
                    Cow::Borrowed(self.by_reading()),
                )
            } else {
                let fed_from = self.inputs.fed_from().unwrap_or_default();
                let unfed = |members| ready::settled(self.design, members, fed_from);
                let members = alike(&self.members, &written, &drawn, &unfed(&self.members));
                let known = unfed(&self.by_reading().members);
                let with = ByReading::of(rule, &changed, &drawn, (&members, &known));
                (Cow::Owned(members), Cow::Owned(with))
            };
            let held = under_limits(self.design, &members);
            if with.probability > held {
                Readiness::of(with.into_owned().members, &changed, &drawn, self.longest_d)
            } else {
                Readiness::of(members.into_owned(), &written, &drawn, self.longest_d)
            }
        })
    }

    /// The share of them that stays under the limits, advised or not.
    pub(in crate::plan) fn odds_if_changed(&self) -> f64 {
        self.by_reading().probability
    }

    /// The same where they are advised: where more of them stay under the limits.
    fn advised(&self) -> Option<&ByReading> {
        let with = self.by_reading();
        (with.probability > self.probability).then_some(with)
    }

    /// One row a day.
    pub(in crate::plan) fn days(&self) -> Vec<DayRow> {
        self.rows(&self.forecast)
    }

    /// The same with the changes by reading, where they are advised.
    pub(in crate::plan) fn days_with_changes(&self) -> Vec<DayRow> {
        let with = self.advised().and_then(|with| Forecast::of(&with.members));
        with.map_or_else(Vec::new, |forecast| self.rows(&forecast))
    }

    /// The nitrogen of each day of the typical run as written.
    pub(in crate::plan) fn budget(&self) -> Vec<BudgetRow> {
        budget::rows(self.design, &self.inputs, self.options.days)
    }

    fn rows(&self, forecast: &Forecast) -> Vec<DayRow> {
        forecast.days.iter().map(|day| self.row(day)).collect()
    }

    /// The whole result, with the cautions of the work that it orders.
    pub(in crate::plan) fn whole(&self, cautions: Vec<Caution>) -> Startup {
        let days = self.days();
        Startup {
            name: self.design.draft().name.clone(),
            section: self.section(),
            drivers: self.drivers(),
            readings: reading::against(self.design, &days),
            floaters_starve_from_day: self.floaters_starve_from_day(),
            probability_under_limits: self.probability,
            days_with_changes: self.days_with_changes(),
            days,
            cautions,
        }
    }

    /// Members asked for that could not be followed.
    fn members_lost(&self) -> u32 {
        self.options
            .members
            .saturating_sub(self.members.len() as u32)
    }

    /// Most alkalinity used at once in the typical member, meq/L, with its day.
    pub(in crate::plan) fn alkalinity_used(&self) -> PeakBand {
        self.forecast.alkalinity_used
    }

    fn estimate(&self, band: Band) -> Estimate {
        Estimate::of(band, self.options.members)
    }

    /// A band of nitrogen on the analyte's own scale.
    fn ion(&self, analyte: Analyte, nitrogen: Band) -> Estimate {
        self.estimate(nitrogen.scaled(analyte.per_element()))
    }

    /// The part of the ammonia peak that poisons, at the pH of that day's dusk.
    fn un_ionised(&self) -> Band {
        let temperature = self.design.draft().water.temperature;
        let share = |ph: f64| ammonia::un_ionised_share(ph, temperature).fraction();
        let (peak, ph) = (self.forecast.ammonia.value, self.ph_dusk);
        Band::new(
            peak.low * share(ph.low),
            peak.typical * share(ph.typical),
            peak.high * share(ph.high),
        )
    }

    fn ready_day(&self) -> Option<Estimate> {
        let [low, typical, high] = self.forecast.ready_day;
        let typical = typical?;
        Some(self.estimate(Band {
            low: low.unwrap_or(typical),
            typical,
            high: high.unwrap_or(f64::from(self.options.days)),
        }))
    }

    fn never_ready(&self) -> Option<String> {
        let days = self.options.days;
        let never = forecast::share(&self.members, |member| member.ready_day.is_none());
        match self.forecast.ready_day {
            [_, _, Some(_)] => None,
            _ if self.options.members == 0 => {
                Some(format!("ammonia or nitrite is still up on day {days}"))
            }
            _ => Some(format!(
                "in {:.0} % of the starts ammonia or nitrite is still up on day {days}",
                never * 100.0
            )),
        }
    }

    /// The kinds planned, snails where none are, each with its day.
    fn animals_from(&self) -> Vec<AnimalDay> {
        let day = |animal: &'static Animal| {
            Some(AnimalDay {
                name: &animal.name,
                day: self.readiness().advised(animal)?,
            })
        };
        calendar::kinds(self.design).filter_map(day).collect()
    }

    /// The first of their days.
    fn first_animals(&self) -> Option<f64> {
        let days = self.animals_from().into_iter().map(|kind| kind.day);
        days.reduce(f64::min)
    }

    fn over_limits(&self) -> ShareOverLimit {
        let over = |analyte: Analyte, peak: fn(&Member) -> f64| {
            let limit = limit_n_mg_l(self.design, analyte);
            forecast::share(&self.members, |member| peak(member) > limit)
        };
        ShareOverLimit {
            ammonia: over(Analyte::Ammonia, |member| member.ammonia.value),
            nitrite: over(Analyte::Nitrite, |member| member.nitrite.value),
            nitrate: over(Analyte::Nitrate, |member| member.nitrate.value),
        }
    }

    fn calendar(&self, changes: Option<&ReadingChanges>) -> Vec<CalendarEntry> {
        let planted = self.design.planted();
        let stems_above_g_m2 = self.design.draft().harvest.stems_above.g_m2();
        let trim_g_m2 = stems_above_g_m2.max(planted.fast.dry.g() / self.floor_m2());
        let first = |holds: &dyn Fn(&EnsembleDay) -> bool| {
            let found = self.forecast.days.iter().find(|day| holds(day));
            found.map(|day| day.day)
        };
        let thin_g_m2 = self.harvest_g_m2();
        let nitrite_scale = Analyte::Nitrite.per_element();
        calendar::calendar(
            self.design,
            &CalendarInputs {
                peaks: [
                    (
                        self.forecast.ammonia.day.typical,
                        self.forecast.ammonia.value.typical,
                    ),
                    (
                        self.forecast.nitrite.day.typical,
                        self.forecast.nitrite.value.typical * nitrite_scale,
                    ),
                ],
                thin_day: first(&|day| day.floating.typical >= thin_g_m2),
                trim_day: first(&|day| day.fast.typical > trim_g_m2),
                readiness: self.readiness(),
                changes,
            },
        )
    }

    /// Dry floaters at which they are thinned, g over a square metre of bed.
    fn harvest_g_m2(&self) -> f64 {
        let closed = Parameters::<Band>::of(self.design).floating.closed_layer;
        let cover = self.design.draft().harvest.floaters_above.fraction();
        // Thinning keeps the typical run just under the limit itself.
        0.98 * closed.typical * cover
    }

    fn floor_m2(&self) -> f64 {
        self.design.bed().area().m2()
    }

    fn row(&self, day: &EnsembleDay) -> DayRow {
        let planted = self.design.planted();
        let fresh = |band: Band, group: crate::design::Biomass| {
            let fresh_per_dry = if group.dry.g() > 0.0 {
                group.fresh / group.dry
            } else {
                FRESH_PER_DRY
            };
            self.estimate(band.scaled(fresh_per_dry * self.floor_m2()))
        };
        DayRow {
            day: day.day as u32,
            ammonia_mg_l: self.estimate(day.ammonia),
            nitrite_mg_l: self.ion(Analyte::Nitrite, day.nitrite),
            nitrate_mg_l: self.ion(Analyte::Nitrate, day.nitrate),
            phosphate_p_mg_l: self.estimate(day.phosphate),
            floating_g: fresh(day.floating, planted.floating),
            fast_g: fresh(day.fast, planted.fast),
            slow_g: fresh(day.slow, planted.slow),
            algae_g: self.estimate(day.algae.scaled(self.floor_m2())),
            release_mg_n_m2_d: self.estimate(day.release.scaled(1e3)),
        }
    }

    fn drivers(&self) -> Vec<Driver> {
        let drivers = self.forecast.drivers.iter();
        drivers
            .map(|influence| Driver {
                parameter: influence.number,
                on: match influence.on {
                    Outcome::AmmoniaPeak => "ammonia_peak_mg_l",
                    Outcome::NitritePeak => "nitrite_peak_mg_l",
                    Outcome::ReadyDay => "ready_day",
                },
                rank_correlation: influence.rank_correlation,
            })
            .collect()
    }

    /// The first day on which floaters that are there lack phosphorus, in the typical run.
    fn floaters_starve_from_day(&self) -> Option<f64> {
        let starving = self.forecast.days.iter().find(|day| {
            day.day >= STARVING_FROM_DAY
                && day.floating.typical > 0.1
                && day.floating_p_share.typical < STARVING_SHARE
        });
        starving.map(|day| day.day)
    }
}
