//! Water properties, dissolved gases, carbonate and ammonia.
//!
//! Tolerances are half the last printed digit unless the line says otherwise.

use lentic::units::{Alkalinity, Concentration, Length, Pressure, Temperature};
use lentic::water::ammonia::{self, Oncorhynchus};
use lentic::water::carbonate::{self, Activity};
use lentic::water::{
    Gas, Solute, atmosphere, carbon_dioxide, density, diffusivity, oxygen, schmidt_number,
    surface_tension, viscosity,
};

use crate::compare::Within::{Absolute, Relative};
use crate::compare::check;

fn celsius(value: f64) -> Temperature {
    Temperature::from_celsius(value)
}

/// IAPWS-95 by the library iapws 1.5.5; the allowance covers the difference
/// between that and Kell's 1975 formula.
#[test]
fn density_of_water() {
    for (t, kg_m3) in [(5.0, 999.967), (20.0, 998.207), (25.0, 997.048)] {
        check(
            "density",
            density(celsius(t)).kg_m3(),
            kg_m3,
            Absolute(0.005),
        );
    }
}

/// IAPWS R12-08 by the library iapws 1.5.5, at one atmosphere; the last is the
/// release's own verification point, at 998 kg/m3 (some 20 bar).
#[test]
fn viscosity_of_water() {
    for (t, mpa_s) in [
        (5.0, 1.5182),
        (20.0, 1.0016),
        (25.0, 0.8900),
        (25.0, 0.889_735_1),
    ] {
        check(
            "viscosity",
            viscosity(celsius(t)).mpa_s(),
            mpa_s,
            Relative(0.003),
        );
    }
}

/// IAPWS R1-76(2014), table.
#[test]
fn surface_tension_of_water() {
    for (t, mn_m) in [(5.0, 74.94), (20.0, 72.74), (25.0, 71.97)] {
        check(
            "surface tension",
            surface_tension(celsius(t)).mn_m(),
            mn_m,
            Absolute(0.01),
        );
    }
}

/// ISO 5814, which is EN 25814: the table as reprinted in two analyser manuals.
#[test]
fn oxygen_saturation_at_sea_level() {
    for (t, mg_l) in [
        (0.0, 14.62),
        (10.0, 11.29),
        (15.0, 10.08),
        (20.0, 9.09),
        (24.0, 8.42),
        (25.0, 8.26),
        (28.0, 7.83),
    ] {
        let value = oxygen::saturation(celsius(t), atmosphere::SEA_LEVEL);
        check("oxygen saturation", value.mg_l(), mg_l, Absolute(0.01));
    }
}

/// Garcia and Gordon 1992 by the library gsw 3.6.23, brought to mg/L by density:
/// an independent fit to the same measurements.
#[test]
fn oxygen_saturation_by_an_independent_fit() {
    for (t, mg_l) in [(20.0, 9.0913), (25.0, 8.2622)] {
        let value = oxygen::saturation(celsius(t), atmosphere::SEA_LEVEL);
        check("oxygen saturation", value.mg_l(), mg_l, Absolute(0.003));
    }
}

/// The form of the US Geological Survey (memoranda 81.11 and 81.15), which leaves
/// oxygen's departure from an ideal gas out and has its own vapour pressure.
#[test]
fn oxygen_saturation_by_another_pressure_rule() {
    for t in [5.0, 25.0, 40.0] {
        let vapour_mm_hg = 10_f64.powf(8.107_65 - 1750.286 / (235.0 + t));
        for atm in [0.8, 0.9, 1.03] {
            let at_pressure = oxygen::saturation(celsius(t), Pressure::from_atm(atm));
            let at_sea_level = oxygen::saturation(celsius(t), atmosphere::SEA_LEVEL);
            let factor = (760.0 * atm - vapour_mm_hg) / (760.0 - vapour_mm_hg);
            check(
                "factor",
                at_pressure / at_sea_level,
                factor,
                Relative(0.0003),
            );
        }
    }
}

/// ISO 2533:1975, table of the standard atmosphere, Pa (from memory).
#[test]
fn pressure_of_the_standard_atmosphere() {
    for (altitude_m, pa) in [(0.0, 101_325.0), (1000.0, 89_874.6), (2000.0, 79_495.2)] {
        let value = atmosphere::pressure_at(Length::from_m(altitude_m));
        check("pressure", value.pa(), pa, Relative(0.0001));
    }
}

/// The altitude table printed with EN 25814, which has one decimal and its own
/// rule for pressure.
#[test]
fn oxygen_saturation_at_altitude() {
    let pressure = atmosphere::pressure_at(Length::from_m(600.0));
    let value = oxygen::saturation(celsius(20.0), pressure);
    check("oxygen saturation", value.mg_l(), 8.5, Absolute(0.1));
}

/// Plummer and Busenberg 1982 at 25 C as carried in the PHREEQC database.
#[test]
fn dissociation_of_carbonic_acid_and_water() {
    let warm = carbonate::dissociation(celsius(25.0));
    for (what, value, published, limit) in [
        ("pK1 at 25 C", warm.pk1, 6.352, 0.001),
        ("pK2 at 25 C", warm.pk2, 10.329, 0.001),
        ("pKH at 25 C", warm.pkh, 1.468, 0.001),
        ("pKw at 25 C", warm.pkw, 13.995, 0.003),
    ] {
        check(what, value, published, Absolute(limit));
    }
}

/// Weiss 1974, table II, four digits (from memory).
#[test]
fn solubility_of_carbon_dioxide() {
    for (t, k0) in [(20.0, 0.039_16), (25.0, 0.034_06)] {
        check(
            "K0",
            carbon_dioxide::solubility_mol_kg_atm(celsius(t)),
            k0,
            Absolute(0.000_02),
        );
    }
}

/// pH, dKH, C; carbon dioxide in mg/L without activities by `PyCO2SYS` 1.8.3.4
/// (`opt_k_carbonic` 8), and with them by phreeqpython 1.6.2 (phreeqc.dat, nine
/// tenths calcium and one tenth sodium as counter-ions). The allowance of 2 % is
/// for the ion pairs that the Davies equation leaves out.
const CARBON_DIOXIDE: [(f64, f64, f64, f64, f64); 4] = [
    (6.8, 4.0, 25.0, 22.34, 21.12),
    (7.0, 4.0, 25.0, 14.09, 13.32),
    (7.2, 3.0, 24.0, 6.75, 6.43),
    (7.0, 4.0, 20.0, 15.12, 14.29),
];

#[test]
fn carbon_dioxide_from_ph_and_alkalinity() {
    for (ph, dkh, t, ideal, real) in CARBON_DIOXIDE {
        let with = |activity| {
            carbonate::carbon_dioxide(ph, Alkalinity::from_dkh(dkh), celsius(t), activity)
                .unwrap()
                .mg_l()
        };
        check("CO2, ideal", with(Activity::Ideal), ideal, Relative(0.01));
        check("CO2, Davies", with(Activity::Davies), real, Relative(0.02));
    }
}

/// The same pairs the other way; 1 % of carbon dioxide is 0.0043 of pH, 2 % is 0.0087.
#[test]
fn ph_from_carbon_dioxide_and_alkalinity() {
    for (ph, dkh, t, ideal, real) in CARBON_DIOXIDE {
        for (activity, mg_l, limit) in [
            (Activity::Ideal, ideal, 0.0043),
            (Activity::Davies, real, 0.0087),
        ] {
            let value = carbonate::ph(
                Concentration::from_mg_l(mg_l),
                Alkalinity::from_dkh(dkh),
                celsius(t),
                activity,
            );
            check("pH", value, ph, Absolute(limit));
        }
    }
}

/// IFAS publication FA-16, reprinted as table 1.4 of *Fundamentals of Aquatic
/// Veterinary Medicine*. Its column for 32 C and its cell for pH 7.4 at 20 C do
/// not follow the formula it names and are left out.
#[test]
fn un_ionised_share_of_ammonia() {
    for (ph, t, share) in [
        (7.0, 20.0, 0.0039),
        (7.0, 24.0, 0.0052),
        (7.2, 26.0, 0.0096),
        (7.6, 24.0, 0.0206),
        (8.0, 20.0, 0.0381),
        (8.0, 24.0, 0.0502),
        (8.4, 28.0, 0.1495),
    ] {
        let value = ammonia::un_ionised_share(ph, celsius(t)).fraction();
        check("un-ionised share", value, share, Absolute(0.0001));
    }
}

/// US EPA 2013 as printed in tables 30a to 30c of Oregon's water quality
/// criteria, two significant figures.
#[test]
fn ammonia_criteria_for_an_hour() {
    use Oncorhynchus::{Absent, Present};
    for (ph, t, fish, mg_l, limit) in [
        (7.0, 20.0, Absent, 17.0, 0.5),
        (8.0, 20.0, Absent, 3.9, 0.05),
        (6.5, 10.0, Absent, 51.0, 0.5),
        (8.0, 10.0, Absent, 8.8, 0.05),
        (6.5, 10.0, Present, 33.0, 0.5),
        (8.0, 10.0, Present, 5.6, 0.05),
    ] {
        let value = ammonia::acute_criterion(ph, celsius(t), fish).mg_l();
        check("acute criterion", value, mg_l, Absolute(limit));
    }
}

/// As above; 4.75 mg/L is the 4-day mean at pH 7 and 20 C that the criteria
/// document derives from its rounded 1.9.
#[test]
fn ammonia_criteria_for_thirty_days() {
    for (ph, t, mg_l, limit) in [
        (7.0, 20.0, 1.9, 0.05),
        (8.0, 20.0, 0.78, 0.005),
        (6.5, 5.0, 4.9, 0.05),
        (8.0, 30.0, 0.41, 0.005),
    ] {
        let value = ammonia::chronic_criterion(ph, celsius(t)).mg_l();
        check("chronic criterion", value, mg_l, Absolute(limit));
    }
    let four_days = ammonia::four_day_criterion(7.0, celsius(20.0)).mg_l();
    check("four-day criterion", four_days, 4.75, Absolute(0.125));
}

/// Li and Gregory 1974, *Geochim. Cosmochim. Acta* 38:703, infinite dilution at
/// 25 C (from memory): the measurements behind the lines of these three ions.
#[test]
fn diffusion_of_ions_as_measured() {
    for (solute, d) in [
        (Solute::Bicarbonate, 1.18),
        (Solute::Hydrosulfide, 1.73),
        (Solute::Phosphate, 0.612),
    ] {
        let value = diffusivity(solute, celsius(25.0)).m2_s() * 1e9;
        check("diffusivity, 1e-9 m2/s", value, d, Relative(0.02));
    }
}

/// Printed in the vignette of marelac 2.1.11 for salinity 15, which is 1.0315
/// times as viscous.
#[test]
fn diffusion_of_ammonium_as_printed() {
    let value = diffusivity(Solute::Ammonium, celsius(15.0)).cm2_d() / 1.0315;
    check("diffusivity, cm2/d", value, 1.314_599, Relative(0.001));
}

/// Ferrell and Himmelblau 1967 by the fit 4286 exp(-18700 / (R T)): another
/// measurement, which differs by up to 8 %.
#[test]
fn diffusion_of_oxygen_by_another_measurement() {
    let value = diffusivity(Solute::Oxygen, celsius(25.0)).m2_s() * 1e9;
    check("diffusivity, 1e-9 m2/s", value, 2.27, Relative(0.08));
}

/// Wanninkhof 1992, table A1 (from memory): the older fit, whose diffusivity of
/// oxygen was 4 % lower.
#[test]
fn schmidt_numbers_of_the_older_fit() {
    let t = celsius(20.0);
    check("O2", schmidt_number(Gas::Oxygen, t), 530.0, Relative(0.04));
    check(
        "CO2",
        schmidt_number(Gas::CarbonDioxide, t),
        600.0,
        Absolute(1.0),
    );
}

/// Calcite, from memory of textbooks: limestone water in balance with air has pH 8.3, 0.5 mmol/L
/// of calcium and 1 meq/L; and a solubility of 10^-8.48 at 25 C (`phreeqc.dat`), by which, at
/// 1 mmol/L of calcium and 0.01 mmol/L of carbonate, it is passed 10^-8 / 10^-8.48 = 3.02 times,
/// times the activities of ions with one and two charges by Davies at 1.5 mmol/L, 0.958 and 0.841.
#[test]
fn saturation_with_calcite() {
    use lentic::units::Hardness;
    let ratio = |ph, calcium, alkalinity| {
        let (calcium, alkalinity) = (
            Hardness::from_meq_l(calcium),
            Alkalinity::from_meq_l(alkalinity),
        );
        carbonate::calcite_saturation(ph, calcium, alkalinity, celsius(25.0)).unwrap()
    };
    check("limestone", ratio(8.3, 1.0, 1.0), 1.0, Absolute(0.25));
    // pK2 10.33: at pH 8.33 a hundredth of 1 mmol/L bicarbonate is carbonate
    check(
        "by hand",
        ratio(8.329, 2.0, 1.02),
        3.02 * 0.958 * 0.841,
        Relative(0.03),
    );
    assert!(ratio(8.8, 2.0, 2.0) > ratio(8.5, 2.0, 2.0));
}
