//! Temperature, pressure and power.

use super::constants::{CELSIUS_ZERO_K, PA_PER_ATM, PA_PER_PSF, PA_PER_PSI};
use super::quantity::{Unit, quantity};

quantity! {
    /// A temperature; base degree Celsius.
    Temperature, "a temperature", example "24 C",
    base from_celsius / celsius,
    units [
        Unit::scaled("C", 1.0, &["°c", "deg c", "degc", "celsius", "degree celsius", "centigrade"]),
        Unit { name: "F", factor: 1.0 / 1.8, shift: -32.0, also: &["°f", "deg f", "degf", "fahrenheit", "degree fahrenheit"] },
        Unit { name: "K", factor: 1.0, shift: -CELSIUS_ZERO_K, also: &["kelvin"] },
    ],
    ambiguous [
        ("°", &["C", "F"]),
        ("deg", &["C", "F"]),
        ("degree", &["C", "F"]),
    ],
    signed true
}

impl Temperature {
    /// On the absolute scale, K.
    ///
    /// # Example
    /// ```
    /// use lentic::units::Temperature;
    /// assert!((Temperature::from_celsius(25.0).kelvin() - 298.15).abs() < 1e-12);
    /// ```
    pub fn kelvin(self) -> f64 {
        self.celsius() + CELSIUS_ZERO_K
    }

    /// In degrees Fahrenheit.
    ///
    /// # Example
    /// ```
    /// use lentic::units::Temperature;
    /// assert!((Temperature::from_celsius(25.0).fahrenheit() - 77.0).abs() < 1e-12);
    /// ```
    pub fn fahrenheit(self) -> f64 {
        self.celsius() * 1.8 + 32.0
    }
}

quantity! {
    /// A pressure or stress; base pascal.
    Pressure, "a pressure", example "2 kPa",
    base from_pa / pa,
    access from_kpa / kpa = 1e3;
    access from_mpa / mpa = 1e6;
    access from_atm / atm = PA_PER_ATM;
    access from_psf / psf = PA_PER_PSF;
    access from_psi / psi = PA_PER_PSI;
    units [
        Unit::scaled("kPa", 1e3, &["kilopascal"]),
        Unit::scaled("Pa", 1.0, &["pascal"]),
        Unit::scaled("mbar", 100.0, &["hpa", "millibar"]),
        Unit::scaled("bar", 1e5, &[]),
        Unit::scaled("atm", PA_PER_ATM, &["atmosphere"]),
        Unit::scaled("psi", PA_PER_PSI, &["lbf/in2"]),
        Unit::scaled("psf", PA_PER_PSF, &["lbf/ft2"]),
    ]
}

quantity! {
    /// A power; base watt.
    Power, "a power", example "25 W",
    base from_watts / watts,
    units [
        Unit::scaled("W", 1.0, &["watt"]),
        Unit::scaled("kW", 1e3, &["kilowatt"]),
    ]
}
