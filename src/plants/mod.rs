//! Plants: what they take up and how much has to be planted.

pub mod index;
pub mod light;
pub mod shade;
