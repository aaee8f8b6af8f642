//! The air that keeps the night's oxygen up.

use super::inputs::NightInputs;
use super::members::{Ensemble, EnsembleSearch, Members, closing_in};
use super::outlook::low_end;
use super::rates::Rates;
use crate::air::Diffuser;
use crate::air::pump::pump_pressure_kpa;
use crate::design::{DutyHours, FlowDevice};
use crate::numerics::rodas::IntegrationError;
use crate::numerics::root::doubled;
use crate::source::Band;
use crate::units::{Concentration, Flow};

/// The first flow tried and the most that is, L/min; beyond the latter no air pump for
/// tanks goes (judgement).
const FIRST_L_MIN: f64 = 0.05;
const MOST_L_MIN: f64 = 25.6;
/// How closely the flow is sought, as a share of it.
const CLOSENESS: f64 = 0.02;
/// How near the flow by night alone is first sought to that day and night.
const NEAR: f64 = 0.05;

/// The air that a tank needs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum AirNeed {
    /// Its surface is enough, with the device off.
    SurfaceIsEnough,
    /// Its pump, which ripples the surface, is enough.
    PumpIsEnough,
    /// This much air is.
    Air(AirFlow),
    /// Not even the strongest pump for tanks would be enough.
    OutOfReach {
        /// What was tried.
        flow: Flow,
        /// The low end of dawn oxygen with it.
        dawn: Concentration,
    },
}

/// Air, with the pump it takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AirFlow {
    /// The least that is enough, running day and night.
    pub always: Flow,
    /// The least that is enough, running while the lamp is off; none where no flow is.
    pub night_only: Option<Flow>,
    /// Pressure that the pump must exceed, kPa.
    pub pressure_kpa: Band,
}

/// The least air that keeps the low end (10 %) of dawn oxygen at a limit, from a stone
/// where the device hangs, or on the bed where none makes bubbles. A pump for water that
/// is not enough by itself is taken as off.
///
/// # Errors
/// [`IntegrationError`], as for [`cycle`](super::cycle()).
///
/// # Source
/// The day of [`cycle`](super::cycle()), searched by doubling and halving.
pub fn air_needed(
    inputs: &NightInputs,
    ensemble: Ensemble,
    limit: Concentration,
) -> Result<AirNeed, IntegrationError> {
    let aired = with_stone(inputs);
    let ranges = Rates::of(&aired);
    let members = Members::draw(&ranges, ensemble);
    let mut sought = Sought {
        inputs: aired,
        search: EnsembleSearch::over(&members),
        limit_mg_l: limit.mg_l(),
    };
    if sought.surplus_mg_l(0.0, DutyHours::Always)? >= 0.0 {
        return Ok(AirNeed::SurfaceIsEnough);
    }
    if inputs.device == FlowDevice::Pump && own_surplus_mg_l(inputs, ensemble, limit)? >= 0.0 {
        return Ok(AirNeed::PumpIsEnough);
    }
    let Some(always) = sought.least(DutyHours::Always)? else {
        let surplus = sought.surplus_mg_l(MOST_L_MIN, DutyHours::Always)?;
        return Ok(AirNeed::OutOfReach {
            flow: Flow::from_l_min(MOST_L_MIN),
            dawn: Concentration::from_mg_l(limit.mg_l() + surplus),
        });
    };
    Ok(AirNeed::Air(AirFlow {
        always,
        night_only: sought.least_by_night(always)?,
        pressure_kpa: pump_pressure_kpa(
            inputs.air_depth(),
            diffuser(inputs.device),
            inputs.temperature,
        ),
    }))
}

/// The low end of dawn oxygen over a limit with the tank's own device.
fn own_surplus_mg_l(
    inputs: &NightInputs,
    ensemble: Ensemble,
    limit: Concentration,
) -> Result<f64, IntegrationError> {
    let members = Members::draw(&Rates::of(inputs), ensemble);
    let lows = EnsembleSearch::over(&members).lowest_mg_l(inputs)?;
    Ok(low_end(lows) - limit.mg_l())
}

/// What air would be let in through: the device, or a stone where it makes no bubbles.
pub const fn diffuser(device: FlowDevice) -> Diffuser {
    match device {
        FlowDevice::SpongeFilter => Diffuser::OpenTube,
        FlowDevice::None | FlowDevice::AirStone | FlowDevice::Pump => Diffuser::FineStone,
    }
}

/// The tank with a stone, or with its own device where that makes bubbles.
pub fn with_stone(inputs: &NightInputs) -> NightInputs {
    NightInputs {
        device: match inputs.device {
            FlowDevice::SpongeFilter => FlowDevice::SpongeFilter,
            FlowDevice::None | FlowDevice::AirStone | FlowDevice::Pump => FlowDevice::AirStone,
        },
        device_depth: inputs.air_depth(),
        ..inputs.clone()
    }
}

/// A flow in the making.
struct Sought<'a> {
    inputs: NightInputs,
    search: EnsembleSearch<'a>,
    limit_mg_l: f64,
}

impl Sought<'_> {
    /// The low end of dawn oxygen over the limit.
    fn surplus_mg_l(&mut self, l_min: f64, duty: DutyHours) -> Result<f64, IntegrationError> {
        self.inputs.flow = Flow::from_l_min(l_min);
        self.inputs.duty = duty;
        let lows = self.search.lowest_mg_l(&self.inputs)?;
        Ok(low_end(lows) - self.limit_mg_l)
    }

    /// The least flow that is enough day and night: doubled until it is, then closed
    /// in on.
    fn least(&mut self, duty: DutyHours) -> Result<Option<Flow>, IntegrationError> {
        let too_little = |l_min| Ok(self.surplus_mg_l(l_min, duty)? < 0.0);
        let Some((below, l_min)) = doubled(FIRST_L_MIN, MOST_L_MIN, too_little)? else {
            return Ok(None);
        };
        self.between(below, l_min, duty).map(Some)
    }

    /// The least that is enough by night alone, which is near that for day and night.
    fn least_by_night(&mut self, always: Flow) -> Result<Option<Flow>, IntegrationError> {
        let (less, more) = (always * (1.0 - NEAR), always * (1.0 + NEAR));
        let enough = self.surplus_mg_l(more.l_min(), DutyHours::Night)? >= 0.0;
        let too_little = self.surplus_mg_l(less.l_min(), DutyHours::Night)? < 0.0;
        if enough && too_little {
            self.between(less.l_min(), more.l_min(), DutyHours::Night)
                .map(Some)
        } else {
            self.least(DutyHours::Night)
        }
    }

    /// Where a flow begins to be enough, between one that is not and one that is.
    fn between(&mut self, low: f64, high: f64, duty: DutyHours) -> Result<Flow, IntegrationError> {
        closing_in(low, high, CLOSENESS * high, |l_min| {
            self.surplus_mg_l(l_min, duty)
        })
        .map(Flow::from_l_min)
    }
}
