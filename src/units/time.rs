//! Duration and flow.

use super::constants::{HOURS_PER_DAY, L_PER_IMP_GAL, L_PER_US_GAL};
use super::quantity::{Unit, quantity};

/// Minutes in an hour.
const MINUTES_PER_HOUR: f64 = 60.0;

quantity! {
    /// A span of time; base day.
    Duration, "a duration", example "7 d",
    base from_days / days,
    access from_hours / hours = 1.0 / HOURS_PER_DAY;
    units [
        Unit::scaled("d", 1.0, &["day"]),
        Unit::scaled("h", 1.0 / HOURS_PER_DAY, &["hour", "hr"]),
        Unit::scaled("min", 1.0 / (HOURS_PER_DAY * MINUTES_PER_HOUR), &["minute"]),
        Unit::scaled("week", 7.0, &["wk", "w"]),
    ]
}

quantity! {
    /// A volume flow of air or water; base litre per minute.
    Flow, "a flow", example "0.5 L/min",
    base from_l_min / l_min,
    access from_l_h / l_h = 1.0 / MINUTES_PER_HOUR;
    units [
        Unit::scaled("L/min", 1.0, &["lpm", "litre/min", "liter/min", "l/minute"]),
        Unit::scaled("L/h", 1.0 / MINUTES_PER_HOUR, &["lph", "litre/h", "liter/h", "l/hr", "l/hour"]),
        Unit::scaled("us_gal/h", L_PER_US_GAL / MINUTES_PER_HOUR, &["us gph", "us gal/hr", "us gal/hour"]),
        Unit::scaled("imp_gal/h", L_PER_IMP_GAL / MINUTES_PER_HOUR, &["imp gph", "imp gal/hr", "imp gal/hour"]),
        Unit::scaled("mL/min", 1e-3, &["cm3/min", "ccm"]),
    ],
    ambiguous [
        ("gph", &["us_gal/h", "imp_gal/h"]),
        ("gal/h", &["us_gal/h", "imp_gal/h"]),
        ("gal/hr", &["us_gal/h", "imp_gal/h"]),
        ("gal/hour", &["us_gal/h", "imp_gal/h"]),
    ]
}
