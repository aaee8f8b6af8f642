//! Mass, density by volume and by area, content and sorption.

use super::Volume;
use super::constants::{KG_PER_LB, KG_PER_OZ, L_PER_FT3, M_PER_FT};
use super::quantity::{Unit, quantity};

quantity! {
    /// A mass; base kilogram.
    Mass, "a mass", example "2 kg",
    base from_kg / kg,
    access from_g / g = 1e-3;
    access from_mg / mg = 1e-6;
    access from_lb / lb = KG_PER_LB;
    units [
        Unit::scaled("kg", 1.0, &["kilo", "kilogram", "kilogramme"]),
        Unit::scaled("g", 1e-3, &["gram", "gramme", "gm"]),
        Unit::scaled("mg", 1e-6, &["milligram", "milligramme"]),
        Unit::scaled("lb", KG_PER_LB, &["pound"]),
        Unit::scaled("oz", KG_PER_OZ, &["ounce"]),
    ]
}

quantity! {
    /// A density; base kilogram per cubic metre, which is gram per litre.
    Density, "a density", example "1600 kg/m3",
    base from_kg_m3 / kg_m3,
    access from_kg_l / kg_l = 1e3;
    units [
        Unit::scaled("kg/m3", 1.0, &["g/l"]),
        Unit::scaled("kg/L", 1e3, &["g/cm3", "g/ml", "g/cc"]),
        Unit::scaled("lb/ft3", KG_PER_LB / (L_PER_FT3 * 1e-3), &["lb/cu ft", "pcf"]),
    ]
}

quantity! {
    /// Mass on an area; base gram per square metre.
    ArealDensity, "an areal density", example "150 g/m2",
    base from_g_m2 / g_m2,
    units [
        Unit::scaled("g/m2", 1.0, &["g/sq m"]),
        Unit::scaled("kg/m2", 1e3, &["kg/sq m"]),
        Unit::scaled("oz/ft2", KG_PER_OZ * 1e3 / (M_PER_FT * M_PER_FT), &["oz/sq ft"]),
    ]
}

quantity! {
    /// Mass of one thing in the dry mass of another; base gram per kilogram.
    Content, "a content", example "9 g/kg",
    base from_g_kg / g_kg,
    access from_mg_kg / mg_kg = 1e-3;
    access from_percent / percent = 10.0;
    units [
        Unit::scaled("g/kg", 1.0, &["mg/g"]),
        Unit::scaled("mg/kg", 1e-3, &[]),
        Unit::scaled("%", 10.0, &["percent", "per cent", "pct"]),
    ]
}

quantity! {
    /// A linear sorption coefficient Kd; base litre per kilogram.
    Sorption, "a sorption coefficient", example "2 L/kg",
    base from_l_kg / l_kg,
    units [Unit::scaled("L/kg", 1.0, &["ml/g", "cm3/g"])]
}

impl std::ops::Mul<Volume> for Density {
    type Output = Mass;
    fn mul(self, volume: Volume) -> Mass {
        Mass::from_kg(self.kg_m3() * volume.m3())
    }
}

impl std::ops::Div<Density> for Mass {
    type Output = Volume;
    fn div(self, density: Density) -> Volume {
        Volume::from_m3(self.kg() / density.kg_m3())
    }
}
