//! What a night needs to know of a tank.

use crate::design::{Design, DutyHours, FlowDevice, Stock};
use crate::source::{Band, Validity};
use crate::state::DayState;
use crate::state::movement::Stirred;
use crate::units::{
    Alkalinity, Area, Flow, Length, Mass, MassRate, Pressure, Share, Temperature, Volume,
};
use crate::water::atmosphere;

/// A tank on one day.
#[derive(Debug, Clone, PartialEq)]
pub struct NightInputs {
    /// The water surface.
    pub surface: Area,
    /// The bed.
    pub floor: Area,
    /// Free water.
    pub water: Volume,
    /// From the surface down to the mean top of the bed.
    pub depth: Length,
    /// Water temperature.
    pub temperature: Temperature,
    /// Air pressure.
    pub pressure: Pressure,
    /// Of the tank water, taken as steady for the day.
    pub alkalinity: Alkalinity,
    /// Light at the water surface while the lamp is on, umol/(m2 s).
    pub light: Band,
    /// Hours of light a day.
    pub light_hours: f64,
    /// What lies over the water.
    pub ceiling: Ceiling,
    /// What moves air or water.
    pub device: FlowDevice,
    /// Of air; of water for a pump.
    pub flow: Flow,
    /// How deep the device hangs.
    pub device_depth: Length,
    /// When it runs.
    pub duty: DutyHours,
    /// Share of the fast growers' leaves above the water.
    pub emergent: Share,
    /// The animals in the tank on the day.
    pub animals: Vec<Kept>,
    /// Feed that they are given.
    pub feed: MassRate,
    /// Whether an oily film lies on the water.
    pub surface_film: bool,
    /// The submerged plants that use bicarbonate.
    pub bicarbonate_users: Users,
    /// Plants and chemistry on the day.
    pub state: DayState,
}

/// What lies over the water.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ceiling {
    /// Nothing.
    Open,
    /// A lid.
    Lid,
}

/// Shares of the submerged plants that use bicarbonate beside carbon dioxide.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Users {
    /// Of the fast growers' mass.
    pub fast: Share,
    /// Of the slow growers' mass.
    pub slow: Share,
}

impl Users {
    /// Where the species are not known: half of each.
    pub const UNKNOWN: Self = Self {
        fast: Share::from_fraction(0.5),
        slow: Share::from_fraction(0.5),
    };
}

/// Animals of one kind.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Kept {
    /// Fresh mass of one.
    pub body: Mass,
    /// How many.
    pub count: f64,
    /// Whether they can live on air.
    pub air_breathing: bool,
}

impl Kept {
    /// The adults of a kind, as planned.
    fn of(stock: &Stock) -> Self {
        Self {
            body: Mass::from_g(stock.animal.mass_g.typical),
            count: f64::from(stock.count),
            air_breathing: stock.animal.air_breathing,
        }
    }

    /// Of all of them.
    pub fn mass(&self) -> Mass {
        self.body * self.count
    }
}

/// Where air would be let into a design.
pub fn air_depth(design: &Design) -> Length {
    let air = &design.draft().air;
    let_in_at(air.device, air.depth, design.water_depth())
}

/// At the device, or on the bed where none makes bubbles.
const fn let_in_at(device: FlowDevice, device_depth: Length, water_depth: Length) -> Length {
    match device {
        FlowDevice::AirStone | FlowDevice::SpongeFilter => device_depth,
        FlowDevice::None | FlowDevice::Pump => water_depth,
    }
}

/// The sign of a film on the water.
const SURFACE_FILM: &str = "surface_film";

/// Feed given on a day: from when the first animals are in.
fn feed(design: &Design, day: f64) -> MassRate {
    let draft = design.draft();
    let fed = draft.animals.iter().any(|stock| stock.from_day <= day);
    let per_day = MassRate::from_g_d(draft.feed.mass_per_day.g());
    if fed { per_day } else { MassRate::ZERO }
}

impl NightInputs {
    /// A design on the day of a state, with the animals that are in by then; `light`
    /// is that at the water surface, umol/(m2 s).
    pub fn of(design: &Design, state: &DayState, light: Band) -> Self {
        let (draft, planted) = (design.draft(), design.planted());
        let is_in = |from_day: f64| from_day <= state.day;
        let stocks = draft.animals.iter().filter(|stock| is_in(stock.from_day));
        Self {
            surface: design.surface(),
            floor: design.bed().area(),
            water: design.water(),
            depth: design.water_depth(),
            temperature: draft.water.temperature,
            pressure: atmosphere::pressure_at(draft.room.altitude),
            alkalinity: (draft.water.alkalinity - state.alkalinity_used).max(Alkalinity::ZERO),
            light,
            light_hours: draft.light.hours,
            ceiling: if draft.tank.lid {
                Ceiling::Lid
            } else {
                Ceiling::Open
            },
            device: draft.air.device,
            flow: draft.air.flow,
            device_depth: draft.air.depth,
            duty: draft.air.hours,
            emergent: planted.emergent,
            animals: stocks.map(Kept::of).collect(),
            feed: feed(design, state.day),
            surface_film: draft.signs.has(SURFACE_FILM),
            bicarbonate_users: Users {
                fast: planted.fast_users,
                slow: planted.slow_users,
            },
            state: *state,
        }
    }

    /// The same day with those animals of a design too that come later.
    #[must_use]
    pub fn with_all_animals(self, design: &Design) -> Self {
        Self {
            animals: design.draft().animals.iter().map(Kept::of).collect(),
            feed: feed(design, f64::INFINITY),
            ..self
        }
    }

    /// Fresh mass of all animals.
    pub fn animal_mass(&self) -> Mass {
        let masses = self.animals.iter().map(Kept::mass);
        masses.fold(Mass::ZERO, |sum, mass| sum + mass)
    }

    /// Whether the device runs while the lamp is on, and while it is off.
    pub(super) fn runs(&self) -> (bool, bool) {
        let there = self.device != FlowDevice::None && self.flow > Flow::ZERO;
        match self.duty {
            DutyHours::Always => (there, there),
            DutyHours::Night => (false, there),
            DutyHours::Day => (there, false),
        }
    }

    /// What moves the water.
    pub fn stirred(&self) -> Stirred {
        Stirred {
            device: self.device,
            flow: self.flow,
            device_depth: self.device_depth,
            temperature: self.temperature,
            surface: self.surface,
            water: self.water,
        }
    }

    /// Where air would be let in.
    pub fn air_depth(&self) -> Length {
        let_in_at(self.device, self.device_depth, self.depth)
    }
}

/// Temperatures at which the plants' rates were found, or not far beyond (judgement).
pub const PLANT_TEMPERATURE: Validity = Validity::new("water temperature", "C", 10.0, 32.0);
