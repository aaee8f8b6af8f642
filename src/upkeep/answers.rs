//! What happens if: a power cut, a stirred bed, days away, a move, animals in a bucket.

use super::Runs;
use super::absence::{FISH_D, GRAZERS_D, LAMP_H, MISSING, shortfall};
use super::breath::{FRESH, HANDLED, lasts_in_bucket, pouring};
use super::crowd::{Crowd, estimate};
use super::member::MemberFigures;
use super::section::{AwaySection, BucketSection, MoveSection, PowerSection, StirSection};
use super::setting::KeptTank;
use super::stirring::{
    AT_ONCE, AT_ONCE_BLACK, DRAWN_OFF, OF_LIMIT, SESSION_EVERY_D, ammonia_rise, borne_share,
    change_to_reach, clears_in, soil_ammonium,
};
use crate::air::demand::fish_at_rest;
use crate::design::Stock;
use crate::night::limits::DAWN_ACT_MG_L;
use crate::night::outage::outage;
use crate::night::{Ensemble, NightInputs};
use crate::numerics::rodas::IntegrationError;
use crate::plan::{watch_limit_mg_l, weight};
use crate::startup::ensemble::central;
use crate::startup::{ModelEvent, Sample, carried, day_state, surface_light};
use crate::units::{Analyte, Concentration, Duration, Flow, Length, Mass, MassRate, Share, Volume};
use crate::water::{atmosphere, oxygen};

/// Members that a power cut is followed for at most.
const MOST_MEMBERS: u32 = 64;
/// Days that are followed after a move.
const AFTER_MOVE_D: u32 = 21;
/// Share of the water that is taken along: common practice, no source.
const WATER_KEPT: Share = Share::from_fraction(0.5);
/// A heavier bed, or one in a longer tank, is taken out: common practice, no source.
const CARRIED_KG: f64 = 20.0;
const CARRIED_LONG: Length = Length::from_m(0.6);
/// Signs of a bed that has gone bad.
const BAD_BED: [&str; 2] = ["black_bed", "sulfide_smell"];

/// A power cut on the day looked at.
pub(super) fn power(run: &Runs<'_>) -> Result<PowerSection, IntegrationError> {
    let (setting, design) = (run.setting, run.setting.design);
    let numbers = run.bands.central();
    let typical = central(&setting.inputs, run.bands, setting.day)?;
    let sample = typical.days.last().ok_or(IntegrationError::NotFinite {
        time: f64::from(setting.day),
    })?;
    let state = day_state(&setting.inputs, &numbers, sample);
    let inputs = NightInputs::of(design, &state, surface_light(design));
    let ensemble = Ensemble {
        members: run.options.members.min(MOST_MEMBERS),
        seed: run.options.seed,
    };
    let lasts = outage(&inputs, ensemble, Concentration::from_mg_l(DAWN_ACT_MG_L))?
        .from_dusk
        .low;
    let temperature = design.draft().water.temperature;
    let poured = lasts
        .filter(|lasts| *lasts > Duration::ZERO)
        .map(|lasts| pouring(design.water(), lasts, temperature));
    Ok(PowerSection {
        lasts_h: lasts.map(Duration::hours),
        pour_l_h: poured.map(Flow::l_h),
        cools_4_k_h: setting.running.cools_in.map(Duration::hours),
    })
}

/// A share of the bed stirred on the day looked at.
pub(super) fn stir(setting: &KeptTank<'_>, crowd: &Crowd<'_>, share: Share) -> StirSection {
    let (design, water) = (setting.design, setting.design.water());
    let held = |seen: &MemberFigures| soil_ammonium(seen.last.state.soil_n, design.bed().area());
    let now = |seen: &MemberFigures| Concentration::from_mg_l(seen.last.state.ammonia);
    let limit = watch_limit_mg_l(design, Analyte::Ammonia).unwrap_or_default();
    let borne = Concentration::from_mg_l(limit * OF_LIMIT);
    let is_bad = BAD_BED.iter().any(|sign| design.draft().signs.has(sign));
    let most = if is_bad { AT_ONCE_BLACK } else { AT_ONCE };
    let borne_pct =
        crowd.low(|seen| borne_share(borne, now(seen), held(seen), water, most).percent());
    let once = share.min(Share::from_percent(borne_pct));
    let tap = design.draft().water.ammonia;
    let after_pct = crowd.high(|seen| {
        let peak = now(seen) + ammonia_rise(once, held(seen), water);
        change_to_reach(peak, borne, tap).percent()
    });
    let is_stirred = share > Share::ZERO;
    let if_stirred = |value: f64| if is_stirred { value } else { 0.0 };
    StirSection {
        share_pct: share.percent(),
        ammonia_rise_mg_l: crowd.band(|seen| ammonia_rise(share, held(seen), water).mg_l()),
        safe_share_pct: borne_pct,
        sessions: sessions(share.percent(), borne_pct),
        session_every_d: SESSION_EVERY_D,
        change_before_pct: if_stirred(DRAWN_OFF.percent()),
        change_after_pct: if_stirred(after_pct),
        clears_h: if_stirred(
            clears_in(design.water_depth(), design.draft().water.temperature).hours(),
        ),
    }
}

/// Sessions of a share at once; none where there is no such share.
fn sessions(asked_pct: f64, borne_pct: f64) -> Option<u32> {
    if asked_pct <= 0.0 {
        return Some(0);
    }
    // A share that rounding alone leaves over takes no session of its own.
    (borne_pct > 0.0).then(|| (asked_pct / borne_pct - 1e-9).ceil() as u32)
}

/// Days without a keeper.
pub(super) fn away(setting: &KeptTank<'_>, away: Duration) -> AwaySection {
    let design = setting.design;
    let gone = shortfall(
        setting.evaporation(),
        away,
        design.water(),
        design.surface(),
    );
    let stock = design
        .draft()
        .animals
        .iter()
        .filter(|stock| stock.count > 0);
    let hungry = |stock: &Stock| {
        let borne = if stock.animal.grazes {
            GRAZERS_D
        } else {
            FISH_D
        };
        away.days() > borne
    };
    let missing = gone.water / design.water();
    AwaySection {
        days: away.days(),
        top_up_l: gone.water.litres(),
        level_falls_cm: gone.level.cm(),
        hardness_factor: gone.concentrated,
        lamp_hours: design.draft().light.hours.min(LAMP_H),
        needs_helper: missing > MISSING || stock.into_iter().any(hungry),
    }
}

/// The tank carried elsewhere on the day looked at.
pub(super) fn moved(run: &Runs<'_>) -> Result<MoveSection, IntegrationError> {
    let (setting, design) = (run.setting, run.setting.design);
    let weight = weight(design);
    let carried_kg = weight.shell_kg + weight.soil_kg + weight.cap_kg + weight.hardscape_kg;
    let day = f64::from(setting.day);
    let mut inputs = setting.inputs.clone();
    let kinds = carried(Share::from_fraction(1.0 - WATER_KEPT.fraction()));
    inputs
        .events
        .extend(kinds.map(|kind| ModelEvent { day, kind }));
    let peak = |of: fn(&Sample) -> f64, days: &[Sample]| {
        let after = days.iter().filter(|sample| sample.day > day);
        after.map(of).fold(0.0, f64::max)
    };
    let peaks = run.each(&inputs, setting.day + AFTER_MOVE_D, |member| {
        let nitrite_n = peak(|sample| sample.state.nitrite, &member.days);
        let ammonia = peak(|sample| sample.state.ammonia, &member.days);
        Some((ammonia, nitrite_n * Analyte::Nitrite.per_element()))
    })?;
    let members = run.options.members;
    Ok(MoveSection {
        carried_kg,
        bed_out: carried_kg > CARRIED_KG || design.vessel().length() > CARRIED_LONG,
        water_kept_l: (design.water() * WATER_KEPT.fraction()).litres(),
        ammonia_peak_mg_l: estimate(peaks.iter().map(|peak| peak.0), members),
        nitrite_peak_mg_l: estimate(peaks.iter().map(|peak| peak.1), members),
    })
}

/// The animals in a bucket, just caught.
pub(super) fn bucket(setting: &KeptTank<'_>, water: Volume) -> BucketSection {
    let draft = setting.design.draft();
    let temperature = draft.water.temperature;
    let pressure = atmosphere::pressure_at(draft.room.altitude);
    let fresh = oxygen::saturation(temperature, pressure) * FRESH.fraction();
    let each = |stock: &Stock| {
        let body = Mass::from_g(stock.animal.mass_g.typical);
        fish_at_rest(body, temperature) * (f64::from(stock.count) * HANDLED)
    };
    let used: MassRate = draft.animals.iter().map(each).sum();
    BucketSection {
        water_l: water.litres(),
        lasts_h: lasts_in_bucket(water, fresh, used).map(Duration::hours),
    }
}
