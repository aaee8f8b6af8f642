//! Every table holds what its rows claim.

mod basis;
mod bed;
mod living;
mod names;
mod restricted;
mod sizes;

use std::collections::HashMap;

use approx::assert_relative_eq;

use super::row::plain;
use super::*;
use crate::source::{Band, Basis};
use crate::units::Length;
