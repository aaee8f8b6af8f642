//! The air that keeps the night's oxygen up.

use super::crossing::{Crossing, Seat, SettingRange, Turn, again};
use super::inputs::NightInputs;
use super::members::{Ensemble, Nights};
use super::outlook::spread;
use super::rates::Rates;
use crate::air::Diffuser;
use crate::air::pump::pump_pressure_kpa;
use crate::design::{DutyHours, FlowDevice};
use crate::numerics::rodas::IntegrationError;
use crate::source::Band;
use crate::units::{Concentration, Flow};

/// The flows tried, L/min; beyond the most no air pump for tanks goes (judgement).
const FLOWS: SettingRange = SettingRange {
    first: 0.05,
    most: 25.6,
};

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
/// The day of [`cycle`](super::cycle()). More air means more oxygen in every member: so the
/// flow at which a quantile of dawn oxygen meets the limit is that quantile of their flows.
pub fn air_needed(
    inputs: &NightInputs,
    ensemble: Ensemble,
    limit: Concentration,
) -> Result<AirNeed, IntegrationError> {
    Nights::of(inputs, &Rates::of(inputs), ensemble)?.air_needed(limit)
}

impl Nights {
    /// See [`air_needed`].
    ///
    /// # Errors
    /// As for [`air_needed`].
    pub fn air_needed(&self, limit: Concentration) -> Result<AirNeed, IntegrationError> {
        let always = self.aired(DutyHours::Always, limit);
        let still = always.seated(0.0)?;
        if self.low_end(&still) >= limit.mg_l() {
            return Ok(AirNeed::SurfaceIsEnough);
        }
        let own = spread(self.each(|group| group.settled.low.0)).low;
        if self.inputs.device == FlowDevice::Pump && own >= limit.mg_l() {
            return Ok(AirNeed::PumpIsEnough);
        }
        let seats = always.sought(still)?;
        let Some(flow) = self.enough(&seats) else {
            let dawn = self.low_end(&always.seated(FLOWS.most)?);
            return Ok(AirNeed::OutOfReach {
                flow: Flow::from_l_min(FLOWS.most),
                dawn: Concentration::from_mg_l(dawn),
            });
        };
        let by_night = self.aired(DutyHours::Night, limit).sought(again(seats))?;
        Ok(AirNeed::Air(AirFlow {
            always: flow,
            night_only: self.enough(&by_night),
            pressure_kpa: pump_pressure_kpa(
                self.inputs.air_depth(),
                diffuser(self.inputs.device),
                self.inputs.temperature,
            ),
        }))
    }

    /// The tank with a stone, by its flow.
    fn aired(
        &self,
        duty: DutyHours,
        limit: Concentration,
    ) -> Crossing<'_, impl Fn(f64) -> NightInputs + Sync> {
        let aired = with_stone(&self.inputs);
        Crossing {
            nights: self,
            at: move |l_min| NightInputs {
                flow: Flow::from_l_min(l_min),
                duty,
                ..aired.clone()
            },
            span: FLOWS,
            limit_mg_l: limit.mg_l(),
            turn: Turn::Rises,
        }
    }

    fn low_end(&self, seats: &[Seat]) -> f64 {
        let lows: Vec<_> = seats.iter().map(|seat| seat.low.0).collect();
        spread(self.answers(&lows)).low
    }

    /// The flow that is enough for nine members in ten; none where none is.
    fn enough(&self, seats: &[Seat]) -> Option<Flow> {
        let flows: Vec<_> = seats.iter().map(Seat::settings).collect();
        let most = |l_min: f64| l_min.min(f64::MAX);
        let l_min = spread(self.answers(&flows).into_iter().map(most)).high;
        (l_min <= FLOWS.most).then(|| Flow::from_l_min(l_min))
    }
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
