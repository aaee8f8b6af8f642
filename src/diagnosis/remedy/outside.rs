//! What to look at and whom to ask where no cause of the list holds.
//!
//! The steps are common practice, no source.

use super::super::case::CaseHistory;
use super::super::fact::ILL;
use super::RemedyStep;
use crate::design::Incident;

/// A substance that shrimps and snails do not bear.
const COPPER: &str = "copper";
/// What is said before any medicine.
const ASK: &str =
    "give no medicine on suspicion; show a photograph to a vet or an experienced keeper";

/// What came in is taken out, what is ill is looked at, and somebody is asked.
pub(super) fn step(case: &CaseHistory<'_>) -> RemedyStep {
    let mut parts: Vec<String> = case.incidents().filter_map(came_in).collect();
    if case.has_one_of(&ILL) {
        parts.push(format!(
            "look at the animals, at skin, fins, breathing and droppings, take dead ones out, and keep ill ones apart where you can; {ASK}"
        ));
    } else if case.has_one_of(&["unknown_creatures", "flat_worms"]) {
        parts.push("take a photograph of what lives there and show it to an experienced keeper before anything is done: most small creatures that come with plants do no harm, and fewer live where less is fed".to_owned());
    } else {
        parts.push(format!(
            "look at the animals and ask what came into tank or room of late: a medicine, a spray, paint, gas, new animals, new stones or wood; {ASK}"
        ));
    }
    RemedyStep::plain(parts.join("; "))
}

/// What is done about something that came in.
fn came_in(incident: &Incident) -> Option<String> {
    Some(match incident {
        Incident::Sprayed => "stop the air pump and air the room first; then change half the water with treated water, run fresh activated carbon, and move animals that still turn or lie to clean water".to_owned(),
        Incident::Medicine(substance) if substance.to_lowercase().contains(COPPER) => "copper kills shrimps and snails: move them to clean, treated water, change half the water today and tomorrow, and run fresh activated carbon".to_owned(),
        Incident::Medicine(substance) => format!(
            "give no more {} now; read on its label which animals do not bear it, change half the water today and run fresh activated carbon",
            if substance == "unknown" { "of the medicine" } else { substance }
        ),
        Incident::GasAdded => "shut the gas off and run air until the animals breathe calmly".to_owned(),
        Incident::AnimalsAdded(_) => "the new animals may have brought it: keep the next ones in a tank of their own for four weeks".to_owned(),
        Incident::FilterWashed | Incident::LampChanged | Incident::Off(_) => return None,
    })
}
