//! What was read of a hungry tank, and whether anything may be given on it.

use thiserror::Error;

use crate::design::{Design, Reading};
use crate::startup::limits;
use crate::units::Concentration;
use crate::units::show::{fixed, significant};

/// A reading older than this says nothing about today, d: judgement.
const FRESH_D: f64 = 7.0;

/// A reading: its day, and mg/L as kits read.
type Read = Option<(f64, f64)>;

/// The last readings of a tank, as kits read them.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Readings {
    /// Today.
    pub today_d: f64,
    /// Total ammonia, as nitrogen.
    pub ammonia: Read,
    /// Nitrite, as NO2.
    pub nitrite: Read,
    /// Nitrate, as NO3.
    pub nitrate: Read,
    /// Phosphate, as PO4.
    pub phosphate: Read,
    /// Potassium.
    pub potassium: Read,
    /// Iron.
    pub iron: Read,
}

/// Why nothing is given.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum Refusal {
    /// Ammonia is over its limit.
    #[error("give nothing while ammonia reads {} mg/L: it has a limit of {} mg/L", significant(*.0, 2), limits::AMMONIA.watch)]
    Ammonia(f64),
    /// Nitrite is over its limit.
    #[error("give nothing while nitrite reads {} mg/L: it has a limit of {} mg/L", significant(*.0, 2), limits::NITRITE.watch)]
    Nitrite(f64),
    /// Nitrate was never read.
    #[error("test nitrate first: nothing is given on a guess")]
    Untested,
    /// Nitrate was read too long ago.
    #[error("test nitrate again: the last reading is {} days old", fixed(*.0, 0))]
    Stale(f64),
}

impl Readings {
    /// The last readings of a spec up to a day; without one, up to the last reading.
    pub fn of(design: &Design, today_d: Option<f64>) -> Self {
        let draft = design.draft();
        let last = draft.latest(|_| Some(())).map_or(0.0, |(day, ())| day);
        let today_d = today_d.unwrap_or(last);
        let of = |of: fn(&Reading) -> Option<Concentration>| {
            let read = draft.latest(|reading| of(reading).filter(|_| reading.day <= today_d));
            read.map(|(day, read)| (day, read.mg_l()))
        };
        Self {
            today_d,
            ammonia: of(|reading| reading.ammonia),
            nitrite: of(|reading| reading.nitrite),
            nitrate: of(|reading| reading.nitrate),
            phosphate: of(|reading| reading.phosphate),
            potassium: of(|reading| reading.potassium),
            iron: of(|reading| reading.iron),
        }
    }

    /// What a fresh reading says, mg/L.
    pub(super) fn fresh(&self, read: Read) -> Option<f64> {
        read.filter(|(day, _)| self.today_d - day <= FRESH_D)
            .map(|(_, mg_l)| mg_l)
    }

    /// Whether anything may be given: not over a limit, not on a guess, and not after a limit
    /// was passed that nobody has looked at since.
    pub(super) fn allow(&self) -> Result<(), Refusal> {
        let fresh = |read: Read| read.filter(|_| self.fresh(read).is_some());
        over_limit(fresh(self.ammonia), fresh(self.nitrite))?;
        let (day, _) = self.nitrate.ok_or(Refusal::Untested)?;
        let age = self.today_d - day;
        if age > FRESH_D {
            return Err(Refusal::Stale(age));
        }
        over_limit(self.ammonia, self.nitrite)
    }
}

fn over_limit(ammonia: Read, nitrite: Read) -> Result<(), Refusal> {
    let over = |read: Read, limit: f64| read.map(|(_, read)| read).filter(|read| *read >= limit);
    if let Some(read) = over(ammonia, limits::AMMONIA.watch) {
        return Err(Refusal::Ammonia(read));
    }
    over(nitrite, limits::NITRITE.watch).map_or(Ok(()), |read| Err(Refusal::Nitrite(read)))
}
