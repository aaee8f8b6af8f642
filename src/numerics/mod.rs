//! Numerical methods without any knowledge of tanks.

pub mod bags;
pub mod correlation;
pub mod distribution;
pub mod dual;
mod elementary;
pub mod implicit_euler;
pub mod lanes;
pub mod linear;
pub mod normal;
pub mod quantile;
pub mod real;
pub mod rodas;
pub mod root;
pub mod sobol;
pub mod sparse;
pub mod three;
