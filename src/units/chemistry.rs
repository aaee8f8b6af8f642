//! Concentration, hardness, conductivity and alkalinity.

use super::constants::{CACO3_MG_L_PER_DEGREE, CACO3_MG_PER_MEQ, L_PER_US_GAL};
use super::quantity::{Unit, quantity};

quantity! {
    /// A concentration in water; base milligram per litre.
    Concentration, "a concentration", example "5 mg/L",
    base from_mg_l / mg_l,
    access from_ug_l / ug_l = 1e-3;
    units [
        Unit::scaled("mg/L", 1.0, &["ppm", "g/m3", "mg/litre", "mg/liter"]),
        Unit::scaled("ug/L", 1e-3, &["ppb", "mg/m3"]),
        Unit::scaled("g/L", 1e3, &[]),
    ]
}

/// Milligrams in a grain, exact (a 7000th of a pound).
const MG_PER_GRAIN: f64 = 64.798_91;

quantity! {
    /// General hardness, calcium and magnesium together; base mg/L as calcium carbonate.
    Hardness, "a hardness", example "6 dGH",
    base from_caco3_mg_l / caco3_mg_l,
    access from_dgh / dgh = CACO3_MG_L_PER_DEGREE;
    access from_meq_l / meq_l = CACO3_MG_PER_MEQ;
    units [
        Unit::scaled("dGH", CACO3_MG_L_PER_DEGREE, &["°dgh", "°gh", "degree gh", "°dh"]),
        Unit::scaled("mg/L CaCO3", 1.0, &["ppm caco3", "mg/l as caco3", "ppm as caco3"]),
        Unit::scaled("mmol/L", 2.0 * CACO3_MG_PER_MEQ, &[]),
        Unit::scaled("meq/L", CACO3_MG_PER_MEQ, &[]),
        Unit::scaled("grain/us_gal", MG_PER_GRAIN / L_PER_US_GAL, &["gpg", "grain/us gal", "grain per us gal"]),
    ],
    ambiguous [
        ("°", &["dGH", "mg/L CaCO3"]),
        ("d", &["dGH", "mg/L CaCO3"]),
        ("dh", &["dGH", "mg/L CaCO3"]),
        ("gh", &["dGH", "mg/L CaCO3"]),
        ("degree", &["dGH", "mg/L CaCO3"]),
        ("mg/l", &["dGH", "mg/L CaCO3"]),
        ("ppm", &["dGH", "mg/L CaCO3"]),
    ]
}

quantity! {
    /// Electrical conductivity at 25 C; base microsiemens per centimetre.
    Conductivity, "a conductivity", example "350 uS/cm",
    base from_us_cm / us_cm,
    units [
        Unit::scaled("uS/cm", 1.0, &[]),
        Unit::scaled("mS/cm", 1e3, &[]),
        Unit::scaled("mS/m", 10.0, &[]),
    ]
}

quantity! {
    /// Alkalinity, the acid-binding capacity; base mg/L as calcium carbonate.
    Alkalinity, "an alkalinity", example "4 dKH",
    base from_caco3_mg_l / caco3_mg_l,
    access from_dkh / dkh = CACO3_MG_L_PER_DEGREE;
    access from_meq_l / meq_l = CACO3_MG_PER_MEQ;
    units [
        Unit::scaled("dKH", CACO3_MG_L_PER_DEGREE, &["°dkh", "°kh", "degree kh", "°dh"]),
        Unit::scaled("mg/L CaCO3", 1.0, &["ppm caco3", "mg/l as caco3", "ppm as caco3"]),
        Unit::scaled("meq/L", CACO3_MG_PER_MEQ, &[]),
    ],
    ambiguous [
        ("°", &["dKH", "mg/L CaCO3"]),
        ("d", &["dKH", "mg/L CaCO3"]),
        ("dh", &["dKH", "mg/L CaCO3"]),
        ("kh", &["dKH", "mg/L CaCO3"]),
        ("degree", &["dKH", "mg/L CaCO3"]),
        ("mg/l", &["dKH", "mg/L CaCO3"]),
        ("ppm", &["dKH", "mg/L CaCO3"]),
        ("mmol/l", &["meq/L", "mg/L CaCO3"]),
    ]
}
