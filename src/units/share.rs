//! Shares of a whole.

use super::quantity::{Unit, quantity};

quantity! {
    /// A share of a whole; base one (the whole).
    Share, "a share", example "30 %",
    base from_fraction / fraction,
    access from_percent / percent = 1e-2;
    units [Unit::scaled("%", 1e-2, &["percent", "per cent", "pct"])]
}
