//! New water for a tank: what is mixed, what goes into it, how fast it may follow the old.

mod refusal;
mod section;
mod treatment;
mod words;
mod working;

pub use refusal::MakeupError;
pub use section::Makeup;
pub use working::working_of;

use crate::design::Design;
use crate::finding::Action;
use crate::mixture::Mixture;
use crate::plan::cautions_for;
use crate::units::{Share, Temperature, Volume};
use treatment::{Chlorine, RefillPace, Warmth};

/// What new water is for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum NewWater {
    /// The regular change of the spec, or a quarter of the water where it has none.
    Change,
    /// So much of it.
    Of(Volume),
    /// An empty tank is filled.
    Fill,
}

/// Share of the water that is changed where the spec has no regular change: practice.
const USUAL_CHANGE: Share = Share::from_fraction(0.25);

/// Makes up new water for a tank.
///
/// # Errors
/// When it is none or more than the tank holds, or no mixture is as soft as asked.
///
/// # Example
/// ```
/// use lentic::makeup::{NewWater, makeup};
/// let design = lentic::spec::parse(
///     r#"
///     [tank]
///     size = "60 x 30 x 36 cm"
///     [soil]
///     material = "loam_topsoil"
///     depth = "25 mm"
///     [cap]
///     material = "filter_sand"
///     depth = "40 mm"
///     [water]
///     hardness = "14 dGH"
///     alkalinity = "10 dKH"
///     goal = { hardness = "7 dGH" }
///     "#,
/// )?;
/// let water = makeup(&design, NewWater::Fill)?;
/// // half the degrees, half the tap water
/// assert!((water.tap_l - water.soft_l).abs() < 1e-9);
/// assert!((water.alkalinity_dkh - 5.0).abs() < 1e-9);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn makeup(design: &Design, new: NewWater) -> Result<Makeup, MakeupError> {
    let volume = volume(design, new)?;
    let mixture = Mixture::of(&design.draft().water, volume)?;
    let share = volume / design.water();
    let is_stocked = new != NewWater::Fill && !design.draft().animals.is_empty();
    let chlorine = Chlorine::of(design, &mixture);
    let warmth = Warmth::of(design, &mixture, share);
    let pace = is_stocked.then(|| RefillPace::of(design, &mixture, share));
    let mut actions = vec![match new {
        NewWater::Fill => Action::Fill,
        _ => Action::ChangeWater,
    }];
    if chlorine.is_there() {
        actions.push(Action::Condition);
    }
    if warmth.hot_l() > 0.0 {
        actions.push(Action::DrawHot);
    }
    let order = words::order(design, &mixture, &chlorine, &warmth, pace.as_ref());
    let pace = pace.unwrap_or(RefillPace::AT_ONCE);
    Ok(Makeup {
        name: design.draft().name.clone(),
        total_l: volume.litres(),
        share_pct: share * 100.0,
        tap_l: mixture.tap().litres(),
        soft_l: mixture.soft().litres(),
        hot_l: warmth.drawn.map(|drawn| drawn.hot.litres()),
        cold_l: warmth.drawn.map(|drawn| drawn.cold.litres()),
        temperature_c: warmth.reached.map(Temperature::celsius),
        tank_change_c: warmth.tank_change_k,
        salts: mixture.salts(),
        hardness_dgh: mixture.hardness().dgh(),
        alkalinity_dkh: mixture.alkalinity().dkh(),
        nitrate_mg_l: mixture.nitrate().mg_l(),
        sodium_mg_l: mixture.sodium().mg_l(),
        conductivity_us_cm: mixture.conductivity_us_cm(),
        steps: pace.steps,
        step_l: volume.litres() / f64::from(pace.steps),
        conditioner_ml: chlorine.dose(mixture.tap()).map(Volume::ml),
        conditioner_tank_ml: chlorine.dose(design.water()).map(Volume::ml),
        chlorine_mg_l: chlorine.mg_l,
        ammonia_left_mg_l: chlorine.ammonia_left_mg_l,
        ammonia_rise_mg_l: chlorine.ammonia_left_mg_l.scaled(share),
        stand_h: chlorine.stand_h(false),
        stand_aerated_h: chlorine.stand_h(true),
        order,
        cautions: cautions_for(design, actions),
    })
}

/// How much new water is asked for.
fn volume(design: &Design, new: NewWater) -> Result<Volume, MakeupError> {
    let holds = design.water();
    let volume = match new {
        NewWater::Fill => holds,
        NewWater::Of(volume) => volume,
        NewWater::Change => {
            let change = design.draft().water.change;
            let share = change.map_or(USUAL_CHANGE, |change| change.share);
            holds * share.fraction()
        }
    };
    let units = design.draft().units;
    if volume <= Volume::ZERO {
        return Err(MakeupError::Nothing);
    }
    if volume > holds {
        return Err(MakeupError::MoreThanTank {
            asked: units.volume(volume),
            holds: units.volume(holds),
        });
    }
    Ok(volume)
}
