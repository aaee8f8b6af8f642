//! `bed.gas`: gas made in the soil against what can diffuse out.

use super::case::DesignCase;
use super::declaration::{About, Judge, Rule};
use crate::finding::{Action, Code, Explanation, Finding, Status, WorkingStep, step};
use crate::plan::outcome::Plan;
use crate::source::{Basis, Source};

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::BedGas,
    about: About::Bed,
    judge: Judge::Start(|case| Ok(vec![judged(case)])),
    orders: &[Action::OpenBed, Action::Plant],
    steps: |_, plan| steps(plan),
    explanation: Explanation {
        asks: "Will gas form in the soil, and how does it leave?",
        limits: || {
            format!(
                "a note: G over {EVEN} means bubbles will form; M over {EVEN} means that they push grains aside, under {EVEN} that they pass between them"
            )
        },
        formula: || {
            "G = p / J, J = H Csat / (H L / (phi Ds)_cap + H^2 / (2 (phi Ds)_soil)); M = (12 gamma / d) / ((1 - phi)(rho_s - rho_w) g L)".to_owned()
        },
        symbols: &[
            "p: methane made under a square metre",
            "J: methane that can diffuse out",
            "Csat: methane that water holds, 1.4 mol/m3",
            "H, L: depth of soil and cap",
            "gamma: surface tension",
            "d: d10 of the cap",
        ],
        range: || {
            "p is known to a factor of ten at best; no grain size is published at which gas stays in a cap of centimetres".to_owned()
        },
        basis: Basis::Judgement,
        sources: &[
            Source::Baird2004,
            Source::JainJuanes2009,
            Source::Sander2015,
            Source::IapwsR1_76,
            Source::Jahne1987Diffusion,
        ],
    },
};

/// The ratio at which what is made and what can leave, or entry pressure and overburden, are
/// even.
const EVEN: f64 = 1.0;

/// How gas leaves; it always does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GasRelease {
    /// Dissolved, by diffusion.
    Dissolved,
    /// As bubbles that push grains aside.
    BubblesPushingGrains,
    /// As bubbles through the pores.
    BubblesThroughPores,
}

impl GasRelease {
    /// Judges a bed by what it makes over what can leave dissolved, known to
    /// about a factor of ten, and by entry pressure over effective stress.
    ///
    /// # Source
    /// Judgement on the two ratios of [`gas`](crate::substrate::gas).
    ///
    /// # Example
    /// ```
    /// use lentic::plan::rule::bed_gas::GasRelease;
    /// assert_eq!(GasRelease::judge(0.5, 3.0), GasRelease::Dissolved);
    /// assert_eq!(GasRelease::judge(5.0, 3.0), GasRelease::BubblesPushingGrains);
    /// assert_eq!(GasRelease::judge(5.0, 0.5), GasRelease::BubblesThroughPores);
    /// ```
    ///
    /// # Limits
    /// Says how gas leaves, never that it stays.
    pub fn judge(made_over_ceiling: f64, entry_ratio: f64) -> Self {
        if made_over_ceiling <= EVEN {
            Self::Dissolved
        } else if entry_ratio > EVEN {
            Self::BubblesPushingGrains
        } else {
            Self::BubblesThroughPores
        }
    }

    /// The status of this verdict: bubbles are worth knowing of, no more.
    pub const fn status(self) -> Status {
        match self {
            Self::Dissolved => Status::Ok,
            Self::BubblesPushingGrains | Self::BubblesThroughPores => Status::Note,
        }
    }
}

/// Gas made in the soil against what can diffuse out.
fn judged(case: &DesignCase<'_>) -> Finding {
    let verdict = GasRelease::judge(case.bed.gas_ratio, case.bed.entry_over_overburden);
    let says = match verdict {
        GasRelease::Dissolved => {
            "about as much gas forms in the soil as leaves dissolved: few bubbles"
        }
        GasRelease::BubblesPushingGrains => {
            "more gas forms in fresh soil than can diffuse out: expect bubbles that push grains aside for weeks; a deeper or finer cap makes fewer, larger ones"
        }
        GasRelease::BubblesThroughPores => {
            "more gas forms in fresh soil than can diffuse out: expect bubbles through the cap's pores for weeks"
        }
    };
    Finding {
        code: Code::BedGas,
        status: verdict.status(),
        subject: "bed".to_owned(),
        value: Some(case.bed.gas_ratio),
        unit: "ratio",
        low: None,
        high: Some(EVEN),
        says: says.to_owned(),
        remedy: None,
        basis: Basis::Judgement,
        source: Some(Source::Baird2004),
    }
}

fn steps(plan: &Plan) -> Vec<WorkingStep> {
    vec![
        step(
            "gas made over gas that diffuses out, G",
            plan.bed.gas_ratio,
            "",
        ),
        step(
            "entry pressure over overburden, M",
            plan.bed.entry_over_overburden,
            "",
        ),
    ]
}
