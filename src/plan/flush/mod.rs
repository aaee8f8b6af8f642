//! The first weeks of a design: peaks, ready day, water changes, calendar.

pub(super) mod calendar;
mod changes;
mod course;
mod reading;
mod section;

pub use changes::CHANGE_PACES;
pub use section::{
    CalendarEntry, ChangePlan, DayRow, Driver, ReadingRow, ShareOverLimit, Startup, StartupSection,
};

pub(super) use course::{Flush, probability};
