//! What plants are given that feed, tap and soil leave hungry.

use super::crowd::Crowd;
use super::setting::KeptTank;
use super::weekly::feed_share_pct;
use crate::dosing::{Dosing, Hunger, Nutrients, Readings, Refusal, dosing};
use crate::plan::Estimate;

/// Feed under this share of what the plants could take leaves them hungry, %: judgement.
pub const HUNGRY_PCT: f64 = 30.0;

/// The doses, or why there are none yet; none where the plants are fed enough.
pub(super) fn given(setting: &KeptTank<'_>, crowd: &Crowd<'_>) -> Option<Result<Dosing, Refusal>> {
    let fed_pct = feed_share_pct(setting, crowd).map_or(0.0, Estimate::typical);
    let demand_mg = crowd.band(|seen| seen.demand_n_mg).typical();
    let soil_mg = crowd.band(|seen| seen.account.soil).typical();
    let beyond = Nutrients::with_nitrogen(demand_mg).beyond(Nutrients::of_upkeep(setting.design));
    let need = beyond.beyond(Nutrients {
        nitrogen: soil_mg,
        ..Nutrients::default()
    });
    (fed_pct < HUNGRY_PCT && need.nitrogen > 0.0).then(|| {
        dosing(&Hunger {
            design: setting.design,
            need,
            readings: Readings::of(setting.design, Some(f64::from(setting.day))),
        })
    })
}
