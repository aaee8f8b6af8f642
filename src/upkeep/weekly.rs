//! A week's work, and the years of the soil, read off the members.

use super::crowd::Crowd;
use super::harvest::{CUT, WEEK_D, trim_interval};
use super::member::{Cut, MemberFigures};
use super::routine::share_to_hold;
use super::section::{
    AgeingSection, RemovedSection, SupplySection, WeekRow, WeeklySection, YearRow,
};
use super::setting::KeptTank;
use crate::plan::{Estimate, watch_limit_mg_l};
use crate::source::Band;
use crate::units::{Alkalinity, Analyte, Duration};
use crate::water::tap;

/// Days in a month.
const MONTH_D: f64 = 365.25 / 12.0;
const DAYS_A_YEAR: f64 = 365.25;
/// Stems that come to their limit within so many days are told of, and those that are cut
/// at least once in so many: judgement.
const SOON_D: f64 = 90.0;
const RARELY_D: f64 = 365.0;
/// Potassium in the dry mass of water plants: from memory.
const POTASSIUM: Band = Band::new(0.008, 0.025, 0.040);
/// Milligrams in a gram.
const MG_PER_G: f64 = 1e3;
/// Years after which the soil is looked at, and beyond which nothing is told.
const YEARS: [u32; 5] = [1, 2, 3, 5, 10];
const MOST_YEARS: f64 = 30.0;

/// What a week asks for and what it leaves.
pub(super) fn week(setting: &KeptTank<'_>, crowd: &Crowd<'_>) -> WeeklySection {
    let tap = &setting.design.draft().water;
    let thinned = setting.floaters.fresh_per_dry > 0.0;
    let thin = |of: &dyn Fn(&MemberFigures) -> f64| thinned.then(|| crowd.band(of));
    let fresh_g = |seen: &MemberFigures| seen.floaters.taken_g * setting.floaters.fresh_per_dry;
    let every = crowd.band_of_most(|seen| trimmed_every(setting, &seen.stems));
    let hardness = setting.routine(setting.hardened_dgh(), tap.hardness.dgh());
    WeeklySection {
        floaters_thin_g: thin(&fresh_g),
        floaters_thin_handfuls: setting
            .floaters
            .handful_g
            .and_then(|handful| thin(&|seen| fresh_g(seen) / handful)),
        floaters_thin_pct: thin(&|seen| seen.floaters.taken_g / seen.closed_g * 100.0),
        stems_trim_g: every
            .map(|_| stems_limit_g(setting) * CUT.fraction() * setting.stems.fresh_per_dry),
        stems_trim_every_d: every,
        removed: removed(crowd),
        supply: supply(setting, crowd),
        feed_share_pct: feed_share_pct(setting, crowd),
        nitrate_rise_mg_l_per_week: crowd.band(|seen| nitrate(seen.nitrate_n_rise)),
        nitrate_steady_mg_l: crowd.band_of_most(|seen| {
            let routine = setting.routine(nitrate(seen.nitrate_n_rise), tap.nitrate.mg_l());
            routine.steady_before().map(|steady| steady.max(0.0))
        }),
        change_needed_pct: crowd.band_of_most(|seen| change_needed_pct(setting, seen)),
        top_up_l_per_week: setting.evaporation().litres(),
        hardness_steady_dgh: hardness.steady_after(),
        hardness_rise_dgh_per_month: setting.hardened_dgh() * MONTH_D / WEEK_D,
        conductivity_steady_us_cm: conductivity(setting, crowd),
        alkalinity_rise_dkh_per_month: crowd
            .band(|seen| alkalinity_rise_dkh(setting, seen) * MONTH_D / WEEK_D),
        alkalinity_steady_dkh: crowd.band_of_most(|seen| {
            let rise = alkalinity_rise_dkh(setting, seen);
            let steady = setting.routine(rise, tap.alkalinity.dkh()).steady_before();
            steady.map(|dkh| dkh.max(0.0))
        }),
        balance_residual_mg_per_week: crowd.band(|seen| seen.account.residual()),
    }
}

/// What the feed brings of what the plants could take, %; none where none is given.
pub(super) fn feed_share_pct(setting: &KeptTank<'_>, crowd: &Crowd<'_>) -> Option<Estimate> {
    crowd
        .band_of_most(|seen| share_pct(seen.account.feed, seen.demand_n_mg))
        .filter(|_| setting.is_fed())
}

/// Dry mass at which stems are cut, g.
fn stems_limit_g(setting: &KeptTank<'_>) -> f64 {
    let above = setting.design.draft().harvest.stems_above.g_m2() * setting.floor_m2();
    above.max(setting.design.planted().fast.dry.g())
}

/// Days from one trim to the next; none where stems are far from their limit, or are hardly
/// ever cut.
fn trimmed_every(setting: &KeptTank<'_>, stems: &Cut) -> Option<f64> {
    let limit_g = stems_limit_g(setting);
    if stems.stand_g * (stems.growth_per_d * SOON_D).exp() < limit_g {
        return None;
    }
    let by_growth = || trim_interval(stems.growth_per_d, CUT).map(Duration::days);
    let by_mass = || limit_g * CUT.fraction() / stems.taken_g * WEEK_D;
    let every = if stems.taken_g > 0.0 {
        Some(by_mass())
    } else {
        by_growth()
    };
    every.filter(|days| *days <= RARELY_D)
}

fn removed(crowd: &Crowd<'_>) -> RemovedSection {
    let dry_g = crowd
        .band(|seen| seen.floaters.taken_g + seen.stems.taken_g)
        .typical();
    RemovedSection {
        n_mg_per_week: crowd.band(|seen| seen.account.removed),
        p_mg_per_week: crowd.band(|seen| seen.removed_p_mg),
        k_mg_per_week: Estimate::of(POTASSIUM.scaled(dry_g * MG_PER_G), crowd.members),
    }
}

fn supply(setting: &KeptTank<'_>, crowd: &Crowd<'_>) -> SupplySection {
    SupplySection {
        feed_n_mg_per_week: setting
            .is_fed()
            .then(|| crowd.band(|seen| seen.account.feed)),
        tap_n_mg_per_week: crowd.band(|seen| seen.account.tap).typical(),
        dosed_n_mg_per_week: Some(crowd.band(|seen| seen.account.dosed).typical())
            .filter(|dosed| *dosed > 0.0),
        soil_n_mg_per_week: crowd.band(|seen| seen.account.soil),
        lost_n_mg_per_week: crowd.band(|seen| seen.account.lost),
        kept_n_mg_per_week: crowd.band(|seen| seen.account.kept),
    }
}

fn share_pct(part: f64, whole: f64) -> Option<f64> {
    (whole > 0.0).then(|| part / whole * 100.0)
}

/// Nitrate as test kits read it, of its nitrogen.
fn nitrate(nitrogen_mg_l: f64) -> f64 {
    nitrogen_mg_l * Analyte::Nitrate.per_element()
}

fn change_needed_pct(setting: &KeptTank<'_>, seen: &MemberFigures) -> Option<f64> {
    let tap = setting.design.draft().water.nitrate.mg_l();
    let goal = watch_limit_mg_l(setting.design, Analyte::Nitrate)?;
    let rise = setting.routine(nitrate(seen.nitrate_n_rise), tap).rise;
    let share = share_to_hold(rise, tap, goal)?;
    (share.fraction() <= 1.0).then(|| share.percent())
}

/// Alkalinity gained a week by topping up and lost to what nitrogen does.
fn alkalinity_rise_dkh(setting: &KeptTank<'_>, seen: &MemberFigures) -> f64 {
    let water = &setting.design.draft().water;
    let topped = setting.topped_up(water.alkalinity.dkh(), water.softened.alkalinity.dkh());
    topped - Alkalinity::from_meq_l(seen.alkalinity_used).dkh()
}

/// Conductivity of the tap and of softened water, measured or by their hardness, as it ends.
fn conductivity(setting: &KeptTank<'_>, crowd: &Crowd<'_>) -> Option<Estimate> {
    let water = &setting.design.draft().water;
    let soft = &water.softened;
    let taps = tap::conductivity(water.conductivity, water.hardness, water.alkalinity);
    let softs = tap::conductivity(None, soft.hardness, soft.alkalinity);
    let steady = |tap: f64, soft: f64| {
        let routine = setting.routine(setting.topped_up(tap, soft), tap);
        routine.steady_after()
    };
    let band = Band::new(
        steady(taps.low, softs.low)?,
        steady(taps.typical, softs.typical)?,
        steady(taps.high, softs.high)?,
    );
    Some(Estimate::of(band, crowd.members))
}

/// The soil over the years.
pub(super) fn ageing(setting: &KeptTank<'_>, crowd: &Crowd<'_>) -> AgeingSection {
    let floor_m2 = setting.floor_m2();
    let per_m2_d = move |mg_per_week: f64| mg_per_week / WEEK_D / floor_m2;
    let year = |year: u32| {
        let release = move |seen: &MemberFigures| {
            seen.stores.release_g_m2_d(f64::from(year) * DAYS_A_YEAR) * MG_PER_G
        };
        YearRow {
            year,
            release_mg_n_m2_d: crowd.band(release),
            share_of_demand_pct: crowd
                .band_of_most(|seen| share_pct(release(seen), per_m2_d(seen.demand_n_mg))),
        }
    };
    let years = |days: f64| Some(days / DAYS_A_YEAR).filter(|years| *years <= MOST_YEARS);
    AgeingSection {
        years: YEARS.map(year).to_vec(),
        falls_under_demand_years: crowd.band_of_most(|seen| {
            let wanted = per_m2_d(seen.demand_n_mg - seen.account.without_soil());
            let most_d = MOST_YEARS * DAYS_A_YEAR;
            let day = || seen.stores.falls_to(wanted / MG_PER_G, most_d);
            (wanted > 0.0).then(day).flatten().and_then(years)
        }),
        phosphorus_lasts_years: crowd.band_of_most(|seen| seen.phosphorus_d.and_then(years)),
    }
}

/// The year before the day, week by week.
pub(super) fn weeks(setting: &KeptTank<'_>, crowd: &Crowd<'_>) -> Vec<WeekRow> {
    let hardness = setting.hardness_dgh().into_iter().enumerate();
    let floor_m2 = setting.floor_m2();
    let (floaters, stems) = (setting.floaters.fresh_per_dry, setting.stems.fresh_per_dry);
    hardness
        .map(|(week, (day, hardness_dgh))| {
            let of = |value: &dyn Fn(&crate::startup::State) -> f64| {
                crowd.band(|seen| {
                    seen.weeks
                        .get(week)
                        .map_or(0.0, |sample| value(&sample.state))
                })
            };
            WeekRow {
                day,
                nitrate_mg_l: of(&|state| nitrate(state.nitrate)),
                hardness_dgh,
                floating_g: of(&|state| state.floating * floor_m2 * floaters),
                fast_g: of(&|state| state.fast * floor_m2 * stems),
            }
        })
        .collect()
}
