//! Length, area and volume.

use super::constants::{
    L_PER_DRY_QT, L_PER_FT3, L_PER_IMP_GAL, L_PER_IN3, L_PER_US_GAL, M_PER_FT, M_PER_IN,
};
use super::quantity::{Unit, quantity};

quantity! {
    /// A length; base metre.
    Length, "a length", example "5 cm",
    base from_m / m,
    access from_cm / cm = 1e-2;
    access from_mm / mm = 1e-3;
    access from_inches / inches = M_PER_IN;
    access from_feet / feet = M_PER_FT;
    units [
        Unit::scaled("cm", 1e-2, &["centimetre", "centimeter"]),
        Unit::scaled("mm", 1e-3, &["millimetre", "millimeter"]),
        Unit::scaled("m", 1.0, &["metre", "meter"]),
        Unit::scaled("in", M_PER_IN, &["inch", "inche", "\"", "''", "”", "″"]),
        Unit::scaled("ft", M_PER_FT, &["foot", "feet", "'", "’", "′"]),
    ]
}

quantity! {
    /// An area; base square metre.
    Area, "an area", example "1800 cm2",
    base from_m2 / m2,
    access from_cm2 / cm2 = 1e-4;
    access from_in2 / in2 = M_PER_IN * M_PER_IN;
    units [
        Unit::scaled("cm2", 1e-4, &["sq cm", "square centimetre", "square centimeter"]),
        Unit::scaled("m2", 1.0, &["sq m", "square metre", "square meter"]),
        Unit::scaled("in2", M_PER_IN * M_PER_IN, &["sq in", "square inch", "square inche"]),
        Unit::scaled("ft2", M_PER_FT * M_PER_FT, &["sq ft", "square foot", "square feet"]),
    ]
}

quantity! {
    /// A volume; base litre.
    Volume, "a volume", example "10 L",
    base from_litres / litres,
    access from_ml / ml = 1e-3;
    access from_cm3 / cm3 = 1e-3;
    access from_m3 / m3 = 1e3;
    access from_us_gal / us_gal = L_PER_US_GAL;
    access from_dry_qt / dry_qt = L_PER_DRY_QT;
    access from_ft3 / ft3 = L_PER_FT3;
    units [
        Unit::scaled("L", 1.0, &["litre", "liter", "dm3"]),
        Unit::scaled("mL", 1e-3, &["millilitre", "milliliter", "cm3", "cc"]),
        Unit::scaled("m3", 1e3, &["cubic metre", "cubic meter"]),
        Unit::scaled("us_gal", L_PER_US_GAL, &["us gallon", "us liquid gallon", "gal us", "gallon us"]),
        Unit::scaled("imp_gal", L_PER_IMP_GAL, &["imperial gallon", "imp gallon", "uk gal", "uk gallon", "gal imp"]),
        Unit::scaled("dry_qt", L_PER_DRY_QT, &["dry quart", "us dry quart", "qt dry", "us dry qt"]),
        Unit::scaled("liq_qt", L_PER_US_GAL / 4.0, &["liquid quart", "us liquid quart", "qt liquid", "liquid qt"]),
        Unit::scaled("ft3", L_PER_FT3, &["cubic foot", "cubic feet", "cu ft", "cft"]),
        Unit::scaled("in3", L_PER_IN3, &["cubic inch", "cubic inche", "cu in"]),
    ],
    ambiguous [
        ("gal", &["us_gal", "imp_gal"]),
        ("gallon", &["us_gal", "imp_gal"]),
        ("qt", &["dry_qt", "liq_qt"]),
        ("quart", &["dry_qt", "liq_qt"]),
        ("us qt", &["dry_qt", "liq_qt"]),
        ("us quart", &["dry_qt", "liq_qt"]),
    ]
}

impl std::ops::Mul<Length> for Area {
    type Output = Volume;
    fn mul(self, depth: Length) -> Volume {
        Volume::from_m3(self.m2() * depth.m())
    }
}

impl std::ops::Div<Area> for Volume {
    type Output = Length;
    fn div(self, area: Area) -> Length {
        Length::from_m(self.m3() / area.m2())
    }
}
