//! The unit that a result's name ends in.

/// Endings with their unit; one that another ends in stands after that.
const ENDINGS: [(&str, &str); 40] = [
    ("_mg_l_per_week", "mg/L/week"),
    ("_dkh_per_month", "dKH/month"),
    ("_l_h", "L/h"),
    ("_mg_n_m2_d", "mg N/m2/d"),
    ("_g_n_m2", "g N/m2"),
    ("_mol_m2", "mol/m2"),
    ("_mg_per_week", "mg/week"),
    ("_l_per_week", "L/week"),
    ("kwh_per_year", "kWh/year"),
    ("_per_h", "1/h"),
    ("_l_min", "L/min"),
    ("_cm_s", "cm/s"),
    ("_us_cm", "uS/cm"),
    ("_dgh", "dGH"),
    ("_dkh", "dKH"),
    ("_p_mg_l", "mg P/L"),
    ("_mg_l", "mg/L"),
    ("_g_per_l", "g/L"),
    ("_dgh_per_month", "dGH/month"),
    ("_umol", "umol/m2/s"),
    ("_cm2", "cm2"),
    ("_cm", "cm"),
    ("_mm", "mm"),
    ("_ml", "mL"),
    ("_mg", "mg"),
    ("_kg", "kg"),
    ("_kpa", "kPa"),
    ("_mpa", "MPa"),
    ("_pct", "%"),
    ("_years", "years"),
    ("_days", "d"),
    ("_day", "d"),
    ("_hours", "h"),
    ("_hour", "h"),
    ("_w", "W"),
    ("_g", "g"),
    ("_l", "L"),
    ("_h", "h"),
    ("_d", "d"),
    ("_c", "C"),
];
/// Names that are a unit, or have one without ending in it.
const WHOLE: [(&str, &str); 10] = [
    ("day", "d"),
    ("days", "d"),
    ("hour", "h"),
    ("from", "d"),
    ("until", "d"),
    ("ready_day_advised", "d"),
    ("least_days_between", "d"),
    ("bits", "bits"),
    ("price", MONEY),
    ("cost_per_year", MONEY),
];
/// The unit of prices: whatever the keeper's own are in.
pub const MONEY: &str = "money";
/// The ends of the path of a value with a band.
pub const BAND_ENDS: [&str; 3] = [".low", TYPICAL_END, ".high"];
/// The end of the one that stands for a band where one number is shown.
pub const TYPICAL_END: &str = ".typical";

/// The unit of a result by its path, in one spelling for all of them; empty for words,
/// counts and pure numbers.
///
/// # Example
/// ```
/// use lentic::units::unit_of_result;
/// assert_eq!(unit_of_result("weight.total_kg"), "kg");
/// assert_eq!(unit_of_result("startup.ammonia_peak_mg_l.high"), "mg/L");
/// assert_eq!(unit_of_result("night.hours_under_5_mg_l"), "h");
/// assert_eq!(unit_of_result("water.conductivity_us_cm"), "uS/cm");
/// assert_eq!(unit_of_result("planting.index"), "");
/// ```
pub fn unit_of_result(path: &str) -> &'static str {
    parted(path).1
}

/// A path without the ending that is its unit, and that unit.
///
/// # Example
/// ```
/// use lentic::units::parted;
/// assert_eq!(parted("cap.depth_mm"), ("cap.depth", "mm"));
/// assert_eq!(parted("bed.release_peak_mg_n_m2_d"), ("bed.release_peak", "mg N/m2/d"));
/// assert_eq!(parted("planting.index"), ("planting.index", ""));
/// ```
pub fn parted(path: &str) -> (&str, &'static str) {
    let path = without_band_end(path);
    let name = path.rsplit('.').next().unwrap_or(path);
    if path.split('.').any(|part| part == "cost") {
        return (path, MONEY);
    }
    // What is counted is the hours, not the limit that the name ends in.
    if name.starts_with("hours_") {
        return (path, "h");
    }
    if let Some((_, unit)) = WHOLE.iter().find(|(whole, _)| *whole == name) {
        return (path, unit);
    }
    let mut endings = ENDINGS.iter();
    let found = endings.find_map(|(ending, unit)| Some((path.strip_suffix(ending)?, *unit)));
    found.unwrap_or((path, ""))
}

/// A path without the end that names one value of a band.
pub fn without_band_end(path: &str) -> &str {
    let ends = BAND_ENDS.iter();
    ends.copied()
        .find_map(|end| path.strip_suffix(end))
        .unwrap_or(path)
}
