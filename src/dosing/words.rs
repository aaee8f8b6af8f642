//! What is given, in words.

use super::section::{Dose, Dosing};
use crate::units::show::{counted, significant};

impl Dosing {
    /// The doses in a sentence: what is dissolved, how much of it and how often, and the
    /// reading that stops it.
    pub fn says(&self) -> String {
        let given: Vec<&Dose> = self
            .dosing
            .iter()
            .filter(|dose| dose.doses_per_week > 0)
            .collect();
        let mut parts: Vec<String> = given.iter().map(|dose| of_dose(dose)).collect();
        if let Some(first) = parts.first_mut() {
            *first = format!("make stock solutions and test before each dose: {first}");
        }
        let mut feed = self.dosing.iter().filter_map(|dose| dose.feed_instead_mg);
        if let Some(mg) = feed.next() {
            parts.push(format!(
                "for the rest of the nitrogen feed the animals {} mg a day more",
                significant(mg, 2)
            ));
        } else if let Some(zone) = &self.root_zone {
            parts.push(format!(
                "for the rest of the nitrogen press {} mg of it, slow and by its label, into each of {} by the roots, {} cm apart and at least 5 cm deep",
                significant(zone.nitrogen_mg, 2),
                counted(f64::from(zone.spots), "spot"),
                significant(zone.grid_cm, 1)
            ));
        }
        parts.push(
            "labels go before these figures; no ammonium salts or urea into water with animals"
                .to_owned(),
        );
        parts.join("; ")
    }
}

/// "dissolve 10 g of potassium nitrate in a litre, 4 mL once a week while nitrate ...".
fn of_dose(dose: &Dose) -> String {
    let times = match dose.doses_per_week {
        1 => "once".to_owned(),
        times => format!("{times} times"),
    };
    format!(
        "{} g of {} in a litre, {} mL {times} a week, none from {} mg/L on",
        significant(dose.stock_g_per_l, 2),
        dose.salt,
        significant(dose.dose_ml, 2),
        significant(dose.stop_at_mg_l, 2)
    )
}
