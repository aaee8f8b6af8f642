//! What moves heat, momentum and matter: velocity, diffusivity, viscosity,
//! surface tension, mass flow and transmittance.

use super::constants::{HOURS_PER_DAY, SECONDS_PER_DAY};
use super::quantity::{Unit, quantity};

quantity! {
    /// A velocity, of water or of gas transfer; base metre per second.
    Velocity, "a velocity", example "2 cm/s",
    base from_m_s / m_s,
    access from_cm_s / cm_s = 1e-2;
    access from_m_d / m_d = 1.0 / SECONDS_PER_DAY;
    access from_cm_h / cm_h = 1e-2 * HOURS_PER_DAY / SECONDS_PER_DAY;
    units [
        Unit::scaled("cm/s", 1e-2, &[]),
        Unit::scaled("mm/s", 1e-3, &[]),
        Unit::scaled("m/s", 1.0, &[]),
        Unit::scaled("m/d", 1.0 / SECONDS_PER_DAY, &["m/day"]),
        Unit::scaled("cm/h", 1e-2 * HOURS_PER_DAY / SECONDS_PER_DAY, &["cm/hour"]),
    ]
}

quantity! {
    /// A diffusion coefficient; base square metre per second.
    Diffusivity, "a diffusion coefficient", example "2e-9 m2/s",
    base from_m2_s / m2_s,
    access from_m2_d / m2_d = 1.0 / SECONDS_PER_DAY;
    access from_cm2_d / cm2_d = 1e-4 / SECONDS_PER_DAY;
    units [
        Unit::scaled("m2/s", 1.0, &[]),
        Unit::scaled("cm2/s", 1e-4, &[]),
        Unit::scaled("m2/d", 1.0 / SECONDS_PER_DAY, &["m2/day"]),
        Unit::scaled("cm2/d", 1e-4 / SECONDS_PER_DAY, &["cm2/day"]),
    ]
}

quantity! {
    /// A dynamic viscosity; base pascal second.
    Viscosity, "a viscosity", example "1 mPa s",
    base from_pa_s / pa_s,
    access from_mpa_s / mpa_s = 1e-3;
    units [
        Unit::scaled("mPa s", 1e-3, &["cp", "centipoise", "mpa.s"]),
        Unit::scaled("Pa s", 1.0, &["pa.s"]),
    ]
}

quantity! {
    /// A surface tension; base newton per metre.
    SurfaceTension, "a surface tension", example "72 mN/m",
    base from_n_m / n_m,
    access from_mn_m / mn_m = 1e-3;
    units [
        Unit::scaled("mN/m", 1e-3, &["dyn/cm"]),
        Unit::scaled("N/m", 1.0, &[]),
    ]
}

quantity! {
    /// Mass carried over in a time, below zero when it flows the other way; base gram per day.
    MassRate, "a mass rate", example "2 g/d",
    base from_g_d / g_d,
    access from_g_h / g_h = HOURS_PER_DAY;
    access from_mg_h / mg_h = 1e-3 * HOURS_PER_DAY;
    access from_kg_h / kg_h = 1e3 * HOURS_PER_DAY;
    units [
        Unit::scaled("g/d", 1.0, &["g/day"]),
        Unit::scaled("mg/d", 1e-3, &["mg/day"]),
        Unit::scaled("g/h", HOURS_PER_DAY, &["g/hour"]),
        Unit::scaled("mg/h", 1e-3 * HOURS_PER_DAY, &["mg/hour"]),
    ],
    signed true
}

quantity! {
    /// A thermal transmittance or film coefficient; base watt per square metre and kelvin.
    Transmittance, "a transmittance", example "5.8 W/m2K",
    base from_w_m2_k / w_m2_k,
    units [Unit::scaled("W/m2K", 1.0, &["w/(m2 k)", "w/m2/k"])]
}
