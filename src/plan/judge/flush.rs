//! `flush.*`, `animals.early` and `water.soft`.

use crate::design::Design;
use crate::finding::{Code, Finding, Remedy, Status};
use crate::plan::flush::calendar::advised_day;
use crate::plan::flush::{ChangePlan, Flush, StartupSection, watch_limit_mg_l};
use crate::plan::{Estimate, words};
use crate::source::{Basis, Source};
use crate::startup::forecast::PeakBand;
use crate::startup::limits::{self, Limit};
use crate::units::{Analyte, show};

/// Alkalinity under which nitrification slows, meq/L: judgement, about 1.4 dKH.
const LOW_ALKALINITY_MEQ_L: f64 = 0.5;

/// What these rules judge.
pub(in crate::plan) struct Case<'a> {
    design: &'a Design,
    startup: &'a StartupSection,
    /// The late end of the ready days, and the typical one.
    ready_late: Option<f64>,
    ready_typical: Option<f64>,
    /// Most alkalinity used at once, meq/L.
    alkalinity_used: PeakBand,
    /// The probability with the water changes advised.
    with_changes: Option<f64>,
}

impl<'a> Case<'a> {
    pub(in crate::plan) fn of(
        design: &'a Design,
        flush: &Flush<'_>,
        startup: &'a StartupSection,
    ) -> Self {
        Self {
            design,
            startup,
            ready_late: flush.ready_late(),
            ready_typical: flush.ready_typical(),
            alkalinity_used: flush.alkalinity_used(),
            with_changes: startup.probability_with_changes,
        }
    }
}

/// The findings on the first weeks.
pub(in crate::plan) fn all(case: &Case<'_>) -> Vec<Finding> {
    vec![
        ammonia(case),
        nitrite(case),
        nitrate(case),
        early(case),
        soft(case),
    ]
}

/// How high ammonia rises, in total and un-ionised.
fn ammonia(case: &Case<'_>) -> Finding {
    let peak = case.startup.ammonia_peak_mg_l;
    let un_ionised = case.startup.un_ionised_peak_mg_l;
    let watch = watch_limit(case, Analyte::Ammonia, limits::AMMONIA.watch);
    let status = status(peak.typical(), (watch, limits::AMMONIA.act)).max(status(
        un_ionised.typical(),
        (limits::UN_IONISED.watch, limits::UN_IONISED.act),
    ));
    peak_finding(
        case,
        Code::FlushAmmonia,
        status,
        &Peak {
            name: "ammonia",
            unit: "mg N/L",
            value: peak,
            day: Some(case.startup.ammonia_peak_day),
            limit: watch,
            share_over: case.startup.share_over_limit.ammonia,
            aside: format!(
                ", {} of it un-ionised",
                show::significant(un_ionised.typical().max(0.0), 1)
            ),
        },
        rests_on(&limits::AMMONIA),
    )
}

/// What a limit rests on.
const fn rests_on(limit: &Limit) -> (Basis, Option<Source>) {
    (limit.basis, Some(limit.source))
}

/// How high nitrite rises.
fn nitrite(case: &Case<'_>) -> Finding {
    let peak = case.startup.nitrite_peak_mg_l;
    let watch = watch_limit(case, Analyte::Nitrite, limits::NITRITE.watch);
    peak_finding(
        case,
        Code::FlushNitrite,
        status(peak.typical(), (watch, limits::NITRITE.act)),
        &Peak {
            name: "nitrite",
            unit: "mg NO2/L",
            value: peak,
            day: Some(case.startup.nitrite_peak_day),
            limit: watch,
            share_over: case.startup.share_over_limit.nitrite,
            aside: String::new(),
        },
        rests_on(&limits::NITRITE),
    )
}

/// How high nitrate rises.
fn nitrate(case: &Case<'_>) -> Finding {
    let peak = case.startup.nitrate_peak_mg_l;
    let watch = watch_limit(case, Analyte::Nitrate, limits::NITRATE.watch);
    peak_finding(
        case,
        Code::FlushNitrate,
        status(peak.typical(), (watch, limits::NITRATE.act)),
        &Peak {
            name: "nitrate",
            unit: "mg NO3/L",
            value: peak,
            day: None,
            limit: watch,
            share_over: case.startup.share_over_limit.nitrate,
            aside: String::new(),
        },
        rests_on(&limits::NITRATE),
    )
}

/// A peak to be judged.
struct Peak {
    name: &'static str,
    unit: &'static str,
    value: Estimate,
    day: Option<Estimate>,
    limit: f64,
    share_over: f64,
    aside: String,
}

fn watch_limit(case: &Case<'_>, analyte: Analyte, otherwise: f64) -> f64 {
    watch_limit_mg_l(case.design, analyte).unwrap_or(otherwise)
}

/// A keeper's own watch limit may lie above the act limit and then replaces it too.
fn status(value: f64, (watch, act): (f64, f64)) -> Status {
    if value >= act.max(watch) {
        Status::Act
    } else if value >= watch {
        Status::Watch
    } else {
        Status::Ok
    }
}

fn peak_finding(
    case: &Case<'_>,
    code: Code,
    status: Status,
    peak: &Peak,
    (basis, source): (Basis, Option<Source>),
) -> Finding {
    let typical = peak.value.typical().max(0.0);
    let day = peak
        .day
        .filter(|_| typical > 0.0)
        .map_or_else(String::new, |day| {
            format!(" about day {:.0}", day.typical())
        });
    let share = if case.startup.members == 0 {
        String::new()
    } else {
        format!(
            "; over {} in {:.0} % of the starts",
            show::significant(peak.limit, 2),
            peak.share_over * 100.0
        )
    };
    Finding {
        code,
        status,
        subject: peak.name.to_owned(),
        value: Some(typical),
        unit: peak.unit,
        low: None,
        high: Some(peak.limit),
        says: format!(
            "{} peaks at {} {}{}{day}{share}",
            peak.name,
            show::significant(typical, 2),
            peak.unit,
            peak.aside
        ),
        remedy: (status >= Status::Watch).then(|| against_the_flush(case)),
        basis,
        source,
    }
}

/// Water changes where some were found, else the planting.
fn against_the_flush(case: &Case<'_>) -> Remedy {
    match case.startup.water_change_plan.first() {
        Some(change) => water_change(case, change),
        None => Remedy {
            says: "plant as under plants.load, soak the soil before use, and keep animals out until two clean tests a week apart".to_owned(),
            quantity: None,
            unit: "",
        },
    }
}

/// "change water in the first weeks", as much as the calendar holds where that was sought.
pub(super) fn changing_water(case: &Case<'_>) -> String {
    let plan = case.startup.water_change_plan.first();
    match plan.zip(case.with_changes) {
        Some((change, probability)) => format!(
            "change {:.0} % of the water every {} days in the first weeks (under the limits in {:.0} % of the starts)",
            change.share_pct,
            show::fixed(change.every_d, 1),
            probability * 100.0
        ),
        None => "change water in the first weeks".to_owned(),
    }
}

fn water_change(case: &Case<'_>, change: &ChangePlan) -> Remedy {
    let litres = case.design.water() * (change.share_pct / 100.0);
    let asked = case.design.draft().goal.probability.fraction();
    let reached = case.with_changes.map_or_else(String::new, |probability| {
        let short = if probability < asked {
            ", less than asked for: planting, soaking and less soil do more"
        } else {
            ""
        };
        format!(
            ": under the limits in {:.0} % of the starts{short}",
            probability * 100.0
        )
    });
    Remedy {
        says: format!(
            "change {:.0} % ({}) every {} days from day {:.0} to {:.0}{reached}",
            change.share_pct,
            case.design.draft().units.volume(litres),
            show::fixed(change.every_d, 1),
            change.from,
            change.until
        ),
        quantity: Some(litres.litres()),
        unit: "L",
    }
}

/// A kind of animal that moves in too early.
struct TooEarly {
    label: &'static str,
    from: f64,
    /// Whether that day was assumed, not given.
    assumed: bool,
    advised: Option<f64>,
}

fn too_early(case: &Case<'_>) -> Vec<TooEarly> {
    let draft = case.design.draft();
    let kinds = draft.animals.iter().enumerate().map(|(item, stock)| {
        let key = format!("animals[{item}].from_day");
        TooEarly {
            label: &stock.animal.plural,
            from: stock.from_day,
            assumed: draft.assumed.iter().any(|assumed| assumed.key == key),
            advised: advised_day(case.ready_late, f64::from(stock.animal.first_day)),
        }
    });
    kinds
        .filter(|kind| kind.advised.is_none_or(|day| kind.from < day))
        .collect()
}

/// "small shrimp on day 14 and surface snails on day 14 (assumed) come too early".
fn early_in_words(early: &[TooEarly]) -> String {
    let kinds: Vec<String> = early
        .iter()
        .map(|kind| {
            let assumed = if kind.assumed {
                " (assumed, no from_day is given)"
            } else {
                ""
            };
            format!("{} on day {:.0}{assumed}", kind.label, kind.from)
        })
        .collect();
    format!("{} come too early", words::listed(&kinds))
}

/// Animals that move in before the advised day.
fn early(case: &Case<'_>) -> Finding {
    let typical = case.ready_typical;
    let early = too_early(case);
    let worst = early
        .iter()
        .map(|kind| (kind.from, kind.advised))
        .min_by(|a, b| a.0.total_cmp(&b.0));
    let (status, says, remedy) = match worst {
        None => (Status::Ok, "no animal moves in too early".to_owned(), None),
        Some((from, advised)) => {
            let before_clean = typical.is_none_or(|ready| from < ready);
            let advice = advised.map_or_else(
                || "wait for two clean tests a week apart".to_owned(),
                |day| format!("wait until day {day:.0} and two clean tests a week apart"),
            );
            (
                if before_clean {
                    Status::Act
                } else {
                    Status::Watch
                },
                early_in_words(&early),
                Some(Remedy {
                    says: advice,
                    quantity: advised,
                    unit: "d",
                }),
            )
        }
    };
    Finding {
        code: Code::AnimalsEarly,
        status,
        subject: "animals".to_owned(),
        value: worst.map(|(from, _)| from),
        unit: "d",
        low: worst.and_then(|(_, advised)| advised),
        high: None,
        says,
        remedy,
        basis: Basis::Practice,
        source: None,
    }
}

/// Alkalinity that nitrification uses up.
fn soft(case: &Case<'_>) -> Finding {
    let tap = case.design.draft().water.alkalinity;
    let used = case.alkalinity_used;
    let left = tap.meq_l() - used.value.typical;
    let status = if left <= 0.0 {
        Status::Act
    } else if left < LOW_ALKALINITY_MEQ_L {
        Status::Watch
    } else {
        Status::Ok
    };
    let figures = format!(
        "{} of {} meq/L",
        show::significant(used.value.typical.max(0.0), 2),
        show::significant(tap.meq_l(), 2)
    );
    Finding {
        code: Code::WaterSoft,
        status,
        subject: "alkalinity".to_owned(),
        value: Some(left),
        unit: "meq/L",
        low: Some(LOW_ALKALINITY_MEQ_L),
        high: None,
        says: match status {
            Status::Act => format!(
                "nitrification would use {figures} by day {:.0} and stall",
                used.day.typical
            ),
            Status::Watch => format!("nitrification uses {figures}: pH falls and it slows"),
            _ => format!("nitrification uses {figures}"),
        },
        remedy: (status >= Status::Watch).then(|| Remedy {
            says: "change water weekly, or add crushed coral or bicarbonate; not while ammonia is high, which a rising pH makes toxic".to_owned(),
            quantity: Some(LOW_ALKALINITY_MEQ_L - left),
            unit: "meq/L",
        }),
        basis: Basis::Judgement,
        source: Some(Source::TimmonsEbeling),
    }
}
