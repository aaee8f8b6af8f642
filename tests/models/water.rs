//! Dissolved gases, ammonia and diffusion: formulas of the sources named, worked out apart from
//! this library.
//!
//! Tolerances are half the last digit given unless the line says otherwise.

use lentic::units::{Alkalinity, Analyte, Hardness, Pressure, Temperature};
use lentic::water::ammonia::{self, Oncorhynchus};
use lentic::water::carbonate::{self};
use lentic::water::stoichiometry;
use lentic::water::{
    Gas, Solute, atmosphere, carbon_dioxide, density, diffusivity, oxygen, schmidt_number,
};

use crate::compare::Within::{Absolute, Relative};
use crate::compare::check;

fn celsius(value: f64) -> Temperature {
    Temperature::from_celsius(value)
}

/// Benson and Krause 1984, their pressure factor worked out beforehand.
#[test]
fn oxygen_saturation_at_lower_pressure() {
    for (t, mm_hg, mg_l) in [(20.0, 740.0, 8.848), (25.0, 700.0, 7.590)] {
        let pressure = Pressure::from_atm(mm_hg / 760.0);
        let value = oxygen::saturation(celsius(t), pressure);
        check("oxygen saturation", value.mg_l(), mg_l, Absolute(0.005));
    }
}

/// Weiss's volumetric form must be his gravimetric one times the density.
#[test]
fn solubility_per_litre_and_per_kilogram_agree() {
    for t in [5.0, 20.0, 30.0] {
        let per_litre =
            carbon_dioxide::solubility_mol_kg_atm(celsius(t)) * density(celsius(t)).kg_l();
        check(
            "K0 per litre",
            carbon_dioxide::solubility_mol_l_atm(celsius(t)),
            per_litre,
            Relative(0.002),
        );
    }
}

/// Weiss 1974 at 420 ppm and 25 C: 0.61 mg/L, or 0.63
/// without the vapour.
#[test]
fn carbon_dioxide_in_balance_with_air() {
    let value = carbon_dioxide::air_equilibrium(
        celsius(25.0),
        atmosphere::SEA_LEVEL,
        carbon_dioxide::OUTDOOR_AIR,
    );
    check("CO2", value.mg_l(), 0.61, Absolute(0.005));
}

/// Molar masses: a German degree is 10 mg/L of calcium oxide.
#[test]
fn a_degree_of_hardness_and_of_alkalinity() {
    let alkalinity = Alkalinity::from_dkh(1.0);
    check("1 dKH", alkalinity.caco3_mg_l(), 17.848, Absolute(0.01));
    check("1 dKH", alkalinity.meq_l(), 0.356_65, Absolute(0.0002));
    check(
        "1 dGH",
        Hardness::from_dgh(1.0).caco3_mg_l(),
        17.848,
        Absolute(0.01),
    );
    check(
        "1 meq/L",
        Alkalinity::from_meq_l(1.0).dkh(),
        2.804,
        Absolute(0.001),
    );
}

/// The same formulas worked out beforehand, before rounding.
#[test]
fn ammonia_criteria_unrounded() {
    let t = celsius(20.0);
    let acute = ammonia::acute_criterion(7.0, t, Oncorhynchus::Absent).mg_l();
    check("acute criterion", acute, 16.760, Absolute(0.005));
    let chronic = ammonia::chronic_criterion(7.0, t).mg_l();
    check("chronic criterion", chronic, 1.887, Absolute(0.005));
}

/// Molar masses.
#[test]
fn ammonia_and_ammonium_as_nitrogen() {
    let nh3 = Analyte::Ammonia.parse("1.2159 mg/L NH3").unwrap();
    check("NH3 as N", nh3.mg_l(), 1.0, Absolute(0.0001));
    let nh4 = Analyte::Ammonia.parse("1 mg/L NH4").unwrap();
    check("NH4 as N", nh4.mg_l(), 0.7765, Absolute(0.0001));
}

/// Boudreau 1997 with a program that reproduces the
/// vignette of the R package marelac 2.1.11.
#[test]
fn diffusion_in_free_water() {
    for (solute, t, d) in [
        (Solute::Oxygen, 5.0, 1.430),
        (Solute::Oxygen, 25.0, 2.377),
        (Solute::CarbonDioxide, 15.0, 1.483),
        (Solute::Methane, 25.0, 1.851),
        (Solute::HydrogenSulfide, 15.0, 1.410),
        (Solute::Ammonium, 5.0, 1.157),
        (Solute::Ammonium, 25.0, 1.982),
        (Solute::Nitrate, 15.0, 1.532),
        (Solute::Nitrite, 25.0, 1.858),
        (Solute::HydrogenPhosphate, 25.0, 0.768),
        (Solute::DihydrogenPhosphate, 15.0, 0.737),
    ] {
        let value = diffusivity(solute, celsius(t)).m2_s() * 1e9;
        check("diffusivity, 1e-9 m2/s", value, d, Relative(0.005));
    }
}

/// Wanninkhof 2014, polynomials worked out beforehand.
#[test]
fn schmidt_numbers() {
    for (gas, t, number) in [
        (Gas::Oxygen, 20.0, 510.2),
        (Gas::CarbonDioxide, 20.0, 600.3),
        (Gas::Oxygen, 25.0, 398.8),
        (Gas::CarbonDioxide, 25.0, 468.7),
    ] {
        let value = schmidt_number(gas, celsius(t));
        check("Schmidt number", value, number, Absolute(0.2));
    }
}

/// Stoichiometry: 64/14, 7.14 and PQ times 32/12 in grams.
#[test]
fn oxygen_and_alkalinity_of_nitrification_and_growth() {
    check(
        "O2 per N",
        stoichiometry::AMMONIA_OXIDATION_OXYGEN + stoichiometry::NITRITE_OXIDATION_OXYGEN,
        4.57,
        Absolute(0.01),
    );
    check(
        "O2 per N, first step",
        stoichiometry::AMMONIA_OXIDATION_OXYGEN,
        3.43,
        Absolute(0.01),
    );
    check(
        "O2 per N, second step",
        stoichiometry::NITRITE_OXIDATION_OXYGEN,
        1.14,
        Absolute(0.01),
    );
    check(
        "CaCO3 per N",
        stoichiometry::alkalinity_per_nitrogen().caco3_mg_l(),
        7.14,
        Absolute(0.01),
    );
}

/// Plummer and Busenberg 1982, their formulas at 5 C.
#[test]
fn dissociation_of_carbonic_acid_and_water_in_the_cold() {
    let cold = carbonate::dissociation(celsius(5.0));
    check("pK1", cold.pk1, 6.516, Absolute(0.003));
    check("pK2", cold.pk2, 10.554, Absolute(0.003));
    check("pKw", cold.pkw, 14.730, Absolute(0.003));
}
