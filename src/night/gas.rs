//! The gas exchange of a tank with its device off and on.

use super::film::Hydration;
use super::inputs::{Ceiling, NightInputs};
use super::rates::Rates;
use crate::air::{Bubbles, Exchange, Surface, plume};
use crate::design::FlowDevice;
use crate::units::{Area, Flow, Share, Velocity};
use crate::water::{Gas, carbon_dioxide, oxygen};

/// What the air does to a tank, device off and on.
pub(super) struct AirExchange {
    pub(super) still: Clearances,
    pub(super) running: Clearances,
    pub(super) room_carbon_mg_l: f64,
    pub(super) bubble_saturation_mg_l: f64,
}

/// Clearances in 1/h.
pub(super) struct Clearances {
    /// Of oxygen, by the surface.
    pub(super) oxygen: f64,
    /// Of carbon dioxide, by the surface.
    pub(super) carbon: f64,
    /// Of oxygen, by bubbles.
    pub(super) bubble_oxygen: f64,
    /// Of carbon dioxide, by bubbles.
    pub(super) bubble_carbon: f64,
    /// Film at the surface that no floaters cover, m.
    pub(super) film_m: f64,
}

impl AirExchange {
    pub(super) fn of(inputs: &NightInputs, rates: &Rates<f64>) -> Self {
        let (temperature, pressure) = (inputs.temperature, inputs.pressure);
        let room = Share::from_fraction(rates.aeration.room_carbon * 1e-6);
        Self {
            still: Clearances::of(inputs, &exchange(inputs, rates, false)),
            running: Clearances::of(inputs, &exchange(inputs, rates, true)),
            room_carbon_mg_l: carbon_dioxide::air_equilibrium(temperature, pressure, room).mg_l(),
            bubble_saturation_mg_l: oxygen::saturation(temperature, pressure).mg_l()
                * rates.aeration.beta,
        }
    }
}

impl Clearances {
    fn of(inputs: &NightInputs, exchange: &Exchange) -> Self {
        let litres = inputs.water.litres();
        let per_h = |flow: Flow| flow.l_h() / litres;
        let of = |gas| exchange.clearance(gas, inputs.temperature);
        let (oxygen, carbon) = (of(Gas::Oxygen), of(Gas::CarbonDioxide));
        let open = exchange.open_velocity(Gas::CarbonDioxide, inputs.temperature);
        Self {
            oxygen: per_h(oxygen.surface),
            carbon: per_h(carbon.surface),
            bubble_oxygen: per_h(oxygen.bubbles),
            bubble_carbon: per_h(carbon.bubbles),
            film_m: Hydration::at(inputs.temperature).film_m(open),
        }
    }
}

/// The gas exchange of a tank with its device on or off.
fn exchange(inputs: &NightInputs, rates: &Rates<f64>, on: bool) -> Exchange {
    let numbers = &rates.aeration;
    let flow = if on { inputs.flow } else { Flow::ZERO };
    let bubbles = |efficiency_per_m| Bubbles {
        air: flow,
        submergence: inputs.device_depth,
        efficiency_per_m,
        alpha: numbers.alpha,
        beta: numbers.beta,
    };
    let by_air = || plume::rippled_share(flow, inputs.surface, numbers.rippling_air);
    let (rippled, bubbles) = match inputs.device {
        FlowDevice::None => (Share::ZERO, None),
        FlowDevice::AirStone => (by_air(), Some(bubbles(numbers.stone_efficiency))),
        FlowDevice::SpongeFilter => (by_air(), Some(bubbles(numbers.tube_efficiency))),
        FlowDevice::Pump => (
            rippled_by_water(flow, inputs.surface, numbers.rippling_water),
            None,
        ),
    };
    let (calm, clean_k600) = match inputs.ceiling {
        Ceiling::Open => (Surface::Open, numbers.open_k600),
        Ceiling::Lid => (Surface::Lidded, numbers.lid_k600),
    };
    let film = if inputs.surface_film {
        numbers.film
    } else {
        1.0
    };
    Exchange {
        area: inputs.surface,
        calm,
        calm_k600: Velocity::from_m_d(clean_k600 * film),
        rippled,
        rippled_k600: Velocity::from_m_d(numbers.rippled_k600),
        floaters: inputs.state.covered(),
        mat_passage: Share::from_fraction(numbers.mat_passage),
        bubbles: bubbles.filter(|_| on),
    }
}

/// Share of the surface that a pump ripples, growing smoothly with its flow
/// (judgement).
///
/// ```text
/// 1 - exp(-(Q / A) / q0)
/// ```
fn rippled_by_water(flow: Flow, surface: Area, rippling_l_min_m2: f64) -> Share {
    let l_min_m2 = flow.l_min() / surface.m2();
    Share::from_fraction(-(-l_min_m2 / rippling_l_min_m2).exp_m1())
}
