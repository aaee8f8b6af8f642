//! What remedies and calendars order to be done, from which their cautions follow.

/// Work with a hazard of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Action {
    /// Soil is soaked, soil and cap are laid: bags, dust, wet earth.
    LayBed,
    /// Sand goes onto a bed under water.
    AddSand,
    /// A bed that has stood is prodded, flattened or taken off.
    OpenBed,
    /// The empty tank is filled.
    Fill,
    /// A lamp, pump, heater or air stone is put in or set.
    RunDevice,
    /// Water is taken out and new water put in.
    ChangeWater,
    /// Tap water is treated against chlorine.
    Condition,
    /// Hands or a siphon go into the water.
    ReachIn,
    /// Plants are put in, thinned or trimmed.
    Plant,
    /// Animals are put in or taken out.
    MoveAnimals,
    /// Water is drawn from the hot tap.
    DrawHot,
    /// Potassium nitrate is weighed and dissolved.
    DoseNitrate,
}
