//! What cannot wait: poison or want of oxygen in a tank with animals.

use super::case::Case;
use super::measurement::{Measurement, Subject};
use super::remedy::Immediate;
use crate::finding::{Caution, Remedy};
use crate::night::verdict::DAWN_ACT_MG_L;
use crate::units::show::significant;

/// Ammonia, un-ionised ammonia and nitrite to act on: mg N/L, mg N/L, mg NO2/L; those of
/// the findings on the flush.
const AMMONIA_ACT_MG_L: f64 = 1.0;
const UN_IONISED_ACT_MG_L: f64 = 0.05;
const NITRITE_ACT_MG_L: f64 = 1.0;
/// Ammonia from which a rise of pH is warned of, mg N/L (judgement).
const NO_RISE_MG_L: f64 = 0.25;
/// A reading no older than this is about now, d.
const NOW_D: f64 = 4.0;

/// The step that comes before any other, where animals are in danger.
pub fn emergency(case: &Case<'_>) -> Option<Remedy> {
    if !case.is_stocked() {
        return None;
    }
    let gasps = gasps(case);
    let short = fresh(case, Subject::Oxygen).is_some_and(|read| read < DAWN_ACT_MG_L);
    let poisons = poisons(case);
    if poisons.is_empty() && !gasps && !short {
        return None;
    }
    let mut parts = Vec::new();
    let (mut quantity, mut unit) = (None, "");
    if !poisons.is_empty() {
        let changes = Immediate::of(case).or_else(|| Immediate::reaching(0.5))?;
        quantity = Some(
            f64::from(changes.rounds) * changes.share_pct / 100.0 * case.design.water().litres(),
        );
        unit = "L";
        parts.push(format!("{}: {}", poisons.join(" and "), changes.says(case)));
        parts.push("feed nothing, and do not raise pH".to_owned());
    }
    if gasps || short {
        parts.push(
            "animals are short of air: run an air stone now, day and night, and lift the lid"
                .to_owned(),
        );
    }
    Some(Remedy {
        says: parts.join("; "),
        quantity,
        unit,
    })
}

/// Whether animals were seen gasping.
fn gasps(case: &Case<'_>) -> bool {
    let signs = &case.design.draft().signs;
    signs.iter().any(|sign| sign.name.starts_with("gasping"))
}

fn fresh(case: &Case<'_>, of: Subject) -> Option<f64> {
    let last: Measurement = case.latest(of)?;
    (last.day >= case.age_d - NOW_D).then(|| last.value.at_least())
}

/// What stands beyond its outer limit, in words.
fn poisons(case: &Case<'_>) -> Vec<String> {
    let mut found = Vec::new();
    if let Some(ammonia) = fresh(case, Subject::Ammonia) {
        let un_ionised = case.un_ionised_mg_l().unwrap_or_default();
        if ammonia >= AMMONIA_ACT_MG_L || un_ionised >= UN_IONISED_ACT_MG_L {
            found.push(format!(
                "ammonia stands at {} mg N/L ({} of it un-ionised)",
                significant(ammonia, 2),
                significant(un_ionised, 1)
            ));
        }
    }
    if let Some(nitrite) = fresh(case, Subject::Nitrite)
        && nitrite >= NITRITE_ACT_MG_L
    {
        found.push(format!(
            "nitrite stands at {} mg/L",
            significant(nitrite, 2)
        ));
    }
    found
}

/// The warning that goes with any ammonia: more of it turns poisonous as pH rises.
pub fn rising_ph(case: &Case<'_>) -> Option<Caution> {
    let ammonia = fresh(case, Subject::Ammonia)?;
    (ammonia >= NO_RISE_MG_L).then(|| Caution {
        code: "hazard.rising_ph",
        says: format!(
            "pH: do not raise it while ammonia stands at {} mg N/L. From pH 7 to 8 the poisonous part grows tenfold; harden or lime the water only once ammonia reads nothing.",
            significant(ammonia, 2)
        ),
        source: Some("emerson_1975"),
    })
}
