//! Exact unit factors and physical constants; derived ones are computed.

/// Metres in an inch, exact (international yard and pound, 1959).
pub const M_PER_IN: f64 = 0.0254;
/// Metres in a foot, exact.
pub const M_PER_FT: f64 = 12.0 * M_PER_IN;
/// Litres in a cubic inch, exact.
pub const L_PER_IN3: f64 = 0.016_387_064;
/// Litres in a cubic foot, exact.
pub const L_PER_FT3: f64 = 1728.0 * L_PER_IN3;
/// Litres in a US liquid gallon of 231 cubic inches (NIST Handbook 44, appendix C), exact.
pub const L_PER_US_GAL: f64 = 231.0 * L_PER_IN3;
/// Litres in a US dry quart, a 32nd of the 2150.42 cubic inch bushel (NIST Handbook 44), exact.
pub const L_PER_DRY_QT: f64 = 2150.42 / 32.0 * L_PER_IN3;
/// Litres in an imperial gallon, exact (UK Units of Measurement Regulations).
pub const L_PER_IMP_GAL: f64 = 4.546_09;
/// Kilograms in an avoirdupois pound, exact.
pub const KG_PER_LB: f64 = 0.453_592_37;
/// Kilograms in an avoirdupois ounce, exact.
pub const KG_PER_OZ: f64 = KG_PER_LB / 16.0;
/// Standard gravity, m/s2, exact (CGPM 1901, `cgpm_1901`, from memory).
pub const GRAVITY_M_S2: f64 = 9.806_65;
/// Newtons in a pound-force, exact.
pub const N_PER_LBF: f64 = KG_PER_LB * GRAVITY_M_S2;
/// Pascals in a pound-force per square inch.
pub const PA_PER_PSI: f64 = N_PER_LBF / (M_PER_IN * M_PER_IN);
/// Pascals in a pound-force per square foot.
pub const PA_PER_PSF: f64 = N_PER_LBF / (M_PER_FT * M_PER_FT);
/// Pascals in a standard atmosphere, exact.
pub const PA_PER_ATM: f64 = 101_325.0;
/// Zero degrees Celsius in kelvin, exact.
pub const CELSIUS_ZERO_K: f64 = 273.15;
/// Molar gas constant, J/(mol K), exact since the 2019 SI.
pub const GAS_CONSTANT: f64 = 8.314_462_618_153_24;
/// Hours in a day.
pub const HOURS_PER_DAY: f64 = 24.0;
/// Seconds in a day.
pub const SECONDS_PER_DAY: f64 = 86_400.0;
/// Litres in a cubic metre.
pub const L_PER_M3: f64 = 1000.0;

/// Molar masses, g/mol (IUPAC abridged standard atomic weights, 2021).
pub mod molar_mass {
    /// Hydrogen.
    pub const H: f64 = 1.008;
    /// Carbon.
    pub const C: f64 = 12.011;
    /// Nitrogen.
    pub const N: f64 = 14.007;
    /// Oxygen.
    pub const O: f64 = 15.999;
    /// Sodium.
    pub const NA: f64 = 22.990;
    /// Magnesium.
    pub const MG: f64 = 24.305;
    /// Phosphorus.
    pub const P: f64 = 30.974;
    /// Sulfur.
    pub const S: f64 = 32.06;
    /// Chlorine.
    pub const CL: f64 = 35.45;
    /// Potassium.
    pub const K: f64 = 39.098;
    /// Calcium.
    pub const CA: f64 = 40.078;
    /// Ammonia.
    pub const NH3: f64 = N + 3.0 * H;
    /// Ammonium.
    pub const NH4: f64 = N + 4.0 * H;
    /// Nitrite.
    pub const NO2: f64 = N + 2.0 * O;
    /// Nitrate.
    pub const NO3: f64 = N + 3.0 * O;
    /// Phosphate.
    pub const PO4: f64 = P + 4.0 * O;
    /// Molecular oxygen.
    pub const O2: f64 = 2.0 * O;
    /// Carbon dioxide.
    pub const CO2: f64 = C + 2.0 * O;
    /// Calcium oxide.
    pub const CAO: f64 = CA + O;
    /// Calcium carbonate.
    pub const CACO3: f64 = CA + C + 3.0 * O;
}

/// Hardness or alkalinity of one German degree, mg/L as calcium carbonate: by
/// definition the equivalent of 10 mg/L calcium oxide (about 17.848).
pub const CACO3_MG_L_PER_DEGREE: f64 = 10.0 * molar_mass::CACO3 / molar_mass::CAO;
/// Calcium carbonate of one milliequivalent, mg.
pub const CACO3_MG_PER_MEQ: f64 = molar_mass::CACO3 / 2.0;
