//! The first weeks of a design: peaks, ready day, water changes, calendar.

mod budget;
pub(super) mod calendar;
mod changes;
mod course;
mod members;
mod reading;
mod ready;
mod section;

pub use budget::BudgetRow;
pub use section::{
    AnimalDay, CalendarEntry, ChangePlan, Courses, DayRow, Driver, ReadingChanges, ReadingRow,
    ShareOverLimit, Startup, StartupSection,
};

pub(super) use course::Flush;
pub(super) use members::{asked_odds, probability};
pub(super) use ready::Readiness;
