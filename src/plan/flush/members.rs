//! The members of an ensemble of starts, and the share of them that holds the limits.

use rayon::prelude::*;

use crate::design::Design;
use crate::numerics::rodas::IntegrationError;
use crate::plan::limits::limit_n_mg_l;
use crate::plan::options::Options;
use crate::source::Band;
use crate::startup::ensemble::{self, Member};
use crate::startup::{Draw, Inputs, Parameters, forecast};
use crate::units::Analyte;

/// What a member is drawn from.
pub(super) struct MemberSource<'a> {
    pub(super) design: &'a Design,
    pub(super) bands: Parameters<Band>,
    pub(super) options: Options,
}

/// A member by its index, or the central one, for some days.
pub(super) fn follow(
    inputs: &Inputs,
    drawn: &MemberSource<'_>,
    days: u32,
    index: u32,
) -> Result<Member, IntegrationError> {
    let Options { members, seed, .. } = drawn.options;
    if members == 0 {
        ensemble::central(inputs, &drawn.bands, days)
    } else {
        ensemble::member(inputs, &drawn.bands, days, seed, index)
    }
}

/// The same members under other inputs, but for those that are known to go alike; one that
/// cannot be followed is left out.
pub(super) fn alike(
    members: &[Member],
    inputs: &Inputs,
    drawn: &MemberSource<'_>,
    known: &[&Member],
) -> Vec<Member> {
    let followed = members.par_iter().filter_map(|member| {
        let index = member.index;
        known_at(known, index).or_else(|| follow(inputs, drawn, drawn.options.days, index).ok())
    });
    followed.collect()
}

/// The member of an index among some in order.
pub(super) fn known_at(known: &[&Member], index: u32) -> Option<Member> {
    let place = known.binary_search_by_key(&index, |member| member.index);
    place.ok().map(|place| known[place].clone())
}

/// The members wanted, or the central one.
pub(super) fn run(
    inputs: &Inputs,
    bands: &Parameters<Band>,
    options: Options,
    advance: &(dyn Fn(u32) + Sync),
) -> Result<Vec<Member>, IntegrationError> {
    if options.members == 0 {
        return Ok(vec![ensemble::central(inputs, bands, options.days)?]);
    }
    let draw = Draw {
        members: options.members,
        seed: options.seed,
    };
    Ok(ensemble::members(
        inputs,
        bands,
        options.days,
        draw,
        advance,
    ))
}

/// The probability with which some inputs of a design stay under its limits.
pub(in crate::plan) fn probability(
    design: &Design,
    inputs: &Inputs,
    bands: &Parameters<Band>,
    options: Options,
) -> Result<f64, IntegrationError> {
    let members = run(inputs, bands, options, &|_| ())?;
    Ok(under_limits(design, &members))
}

/// Share of the members whose ammonia and nitrite stay under their limits from day 3 on.
pub(super) fn under_limits(design: &Design, members: &[Member]) -> f64 {
    forecast::share(members, |member| is_under(design, member))
}

/// Whether a member's ammonia and nitrite stay under their limits from day 3 on.
pub(super) fn is_under(design: &Design, member: &Member) -> bool {
    member.ammonia.value <= limit_n_mg_l(design, Analyte::Ammonia)
        && member.nitrite.value <= limit_n_mg_l(design, Analyte::Nitrite)
}

/// The probability asked of the start.
pub(in crate::plan) fn asked_odds(design: &Design) -> f64 {
    design.draft().goal.probability.fraction()
}
