//! A spec, the text that describes one tank, to its design.
//!
//! The text is read with positions and walked key by key, so that every fault
//! is reported at once, each with its place, the rule and a way out. [`KEYS`]
//! is the one table of what may be written and of what stands where nothing is.
//!
//! ```
//! let design = lentic::spec::parse(
//!     r#"
//!     [tank]
//!     shape = "box"
//!     size = "60 x 30 x 36 cm"
//!     [soil]
//!     material = "loam_topsoil"
//!     depth = "1 in"
//!     [cap]
//!     material = "pool filter sand"
//!     depth = "4 cm"
//!     "#,
//! );
//! assert!(design.is_ok());
//!
//! let faults = lentic::spec::parse("[tank]\nshap = \"box\"").unwrap_err();
//! assert!(faults.0.iter().any(|fault| fault.help == "did you mean shape?"));
//! ```

mod axis;
mod bed;
mod draw;
mod edit;
mod event;
mod fault;
mod living;
pub mod log;
mod observed;
mod remark;
mod schema;
mod section;
mod setting;
pub mod starter;
mod surroundings;
mod syntax;
mod tank;
mod trade;
mod value;
mod violation;
mod water;

#[cfg(test)]
mod tests;

pub use crate::design::key::{DefaultValue, KEYS, Key, KeyKind, KeyLimits};
pub use axis::{axis, range};
pub use draw::draw;
pub use edit::{Edit, EditError, edit, written};
pub use fault::{Fault, Faults, TextPosition};
pub use schema::schema;
pub use setting::{knob, setting};
pub use syntax::MAX_BYTES;

use crate::design::key::{self, Value};
use crate::design::{Conditioner, Design, Draft, Goal, Room};
use crate::units::UnitSystem;
use section::{SpecLog, SpecSection};

/// What a tank without a name is called.
const UNNAMED: &str = "unnamed tank";

/// Reads the spec of one tank: the door from a keeper's text to a checked [`Design`].
///
/// # Errors
/// Everything that is wrong with it, in order of position.
///
/// # Example
/// ```
/// let design = lentic::spec::parse(
///     r#"
///     [tank]
///     shape = "box"
///     size = "60 x 30 x 36 cm"
///     [soil]
///     material = "loam_topsoil"
///     depth = "25 mm"
///     [cap]
///     material = "filter_sand"
///     depth = "40 mm"
///     "#,
/// )?;
/// // 6 cm x 3 cm x 2.5 mm a thousand times over
/// assert!((design.bed().soil.volume.litres() - 4.5).abs() < 1e-9);
/// # Ok::<(), lentic::Faults>(())
/// ```
pub fn parse(text: &str) -> Result<Design, Faults> {
    parse_named(text, UNNAMED, None)
}

/// Reads the spec of one tank, which is called `name` unless it says its own;
/// `units` replaces those in which it asks for results.
///
/// # Errors
/// As [`parse`].
pub fn parse_named(text: &str, name: &str, units: Option<UnitSystem>) -> Result<Design, Faults> {
    parse_for(Use::Plan, text, name, units)
}

/// Reads the spec of a tank that stands and is to be checked: depths of its bed may be said to
/// be `"unknown"`, and are then noted as assumed.
///
/// # Errors
/// As [`parse`].
///
/// # Example
/// ```
/// let text = r#"
/// [tank]
/// size = "60 x 30 x 36 cm"
/// [soil]
/// material = "loam_topsoil"
/// depth = "unknown"
/// [cap]
/// material = "filter_sand"
/// depth = "40 mm"
/// "#;
/// let design = lentic::spec::parse_standing(text, "a tank", None)?;
/// assert!(!design.draft().says("soil.depth"));
/// assert!(lentic::spec::parse(text).is_err());
/// # Ok::<(), lentic::Faults>(())
/// ```
pub fn parse_standing(text: &str, name: &str, units: Option<UnitSystem>) -> Result<Design, Faults> {
    parse_for(Use::Check, text, name, units)
}

/// What a spec is read for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Use {
    /// To reckon with all of it.
    Plan,
    /// To find out what is wrong with a tank that stands.
    Check,
}

fn parse_for(
    use_: Use,
    text: &str,
    name: &str,
    units: Option<UnitSystem>,
) -> Result<Design, Faults> {
    let (draft, mut faults) = read(use_, text, name, units);
    let design = draft.map(|draft| check(draft, text));
    match design {
        Some(Ok(design)) if faults.is_empty() => return Ok(design),
        Some(Err(broken)) => {
            // A rule may be broken by what merely stands in for a faulty value.
            let known: Vec<String> = faults.iter().map(|fault| fault.key.clone()).collect();
            faults.extend(
                broken
                    .0
                    .into_iter()
                    .filter(|fault| !known.contains(&fault.key)),
            );
        }
        _ => {}
    }
    Err(Faults::sorted(faults))
}

/// Reads the spec of one tank without holding its keys against each other.
///
/// # Errors
/// Everything that is wrong with single keys, in order of position.
pub fn parse_draft(text: &str, name: &str) -> Result<Draft, Faults> {
    let (draft, faults) = read(Use::Plan, text, name, None);
    draft
        .filter(|_| faults.is_empty())
        .ok_or_else(|| Faults::sorted(faults))
}

/// Holds the keys of a draft against each other; `text` is what it was read
/// from, where the faults are to be found.
///
/// # Errors
/// Every rule it breaks, in order of position.
pub fn check(draft: Draft, text: &str) -> Result<Design, Faults> {
    let assumed = draft.assumed.clone();
    draft
        .check()
        .map_err(|violations| violation::faults(violations, &assumed, text))
}

/// The draft, where there is enough of it, and what is wrong.
fn read(
    use_: Use,
    text: &str,
    name: &str,
    units: Option<UnitSystem>,
) -> (Option<Draft>, Vec<Fault>) {
    let document = syntax::read(text);
    if !document.whole {
        return (None, document.faults);
    }
    let log = SpecLog::default();
    let draft = draft(
        &SpecSection::root(document.root.get_ref(), &log),
        name,
        units,
    );
    let mut faults = log.faults.into_inner();
    if use_ == Use::Plan {
        faults.extend(log.unknown.into_inner());
    }
    faults.retain(|fault| !document.is_upset(fault.span.start));
    faults.extend(document.faults);
    let draft = draft.map(|mut draft| {
        draft.assumed = log.assumed.into_inner();
        for prepared in log.prepared.into_inner() {
            prepared.fill(&mut draft);
        }
        draft
    });
    (draft, faults)
}

fn draft(root: &SpecSection<'_>, fallback: &str, shown: Option<UnitSystem>) -> Option<Draft> {
    let name = root.optional("name", key::text);
    let units = root.optional("units", Value::read);
    let start = observed::FloodingDate::read(root);
    let tank = root.needed_child("tank").and_then(|tank| tank::read(&tank));
    let soil = root.needed_child("soil").and_then(|soil| bed::soil(&soil));
    let cap = root.needed_child("cap").and_then(|cap| bed::cap(&cap));
    let hardscape = bed::hardscape(root);
    let plants = living::plants(root, "plants");
    let water = water::read(&root.child("water"));
    root.child("conditioner").plain();
    let light = surroundings::light(&root.child("light"));
    let air = surroundings::air(&root.child("air"));
    let animals = living::animals(root);
    let feed = living::feed(&root.child("feed"), animals.as_deref().unwrap_or_default());
    root.child("room").plain();
    let harvest = living::harvest(&root.child("harvest"));
    let events = event::read(root);
    let kit = observed::kit(&root.child("kit"));
    let readings = observed::readings(root, &start);
    let signs = observed::signs(&root.child("signs"));
    root.child("goal").plain();
    Some(Draft {
        name: name.unwrap_or_else(|| fallback.to_owned()),
        units: shown.or(units).unwrap_or_default(),
        start: start.date(),
        tank: tank?,
        soil: soil?,
        cap: cap?,
        hardscape: hardscape?,
        plants: plants?,
        water,
        conditioner: Conditioner::default(),
        light: light?,
        air: air?,
        animals: animals?,
        feed: feed?,
        room: Room::default(),
        harvest: harvest?,
        events: events?,
        kit: kit?,
        readings: readings?,
        signs: signs?,
        goal: Goal::default(),
        assumed: Vec::new(),
    })
}
