//! The bed: filters, diffusion, oxygen, gas, masses. Formulas of the sources named, worked out
//! by hand or apart from this library. Tolerances are half the last digit given, or 1 %.

use crate::compare::{Within, check};
use lentic::substrate::diffusion::{effective_diffusion, tortuosity_squared};
use lentic::substrate::filter::BaseSoil;
use lentic::substrate::gas::{
    GasLayer, METHANE_SOLUBILITY_MOL_M3, Overburden, dissolved_methane_ceiling_mg_m2_d,
    entry_pressure,
};
use lentic::substrate::grading::{Grading, GradingPoint};
use lentic::substrate::isolation::{CapParts, PLACING_ERROR_CM, isolation_thickness};
use lentic::substrate::oxygen::{Reductant, oxic_share_of_clean_cap};
use lentic::substrate::purchase::{LayerMass, saturated_density};
use lentic::substrate::throat::Throat;
use lentic::units::{Area, Concentration, Density, Length, Share};

/// Ammonium in free water at 25 C, m2/s: (9.50 + 0.413 T) 1e-10, Boudreau 1997 ch. 4.
const AMMONIUM_M2_S: f64 = 1.9825e-9;

/// Oxygen and methane in free water at 25 C, m2/s: Boudreau 1997 ch. 4.
const OXYGEN_M2_S: f64 = 2.377e-9;

const METHANE_M2_S: f64 = 1.851e-9;

/// Oxygen at saturation at 25 C, mg/L: Benson & Krause.
const OXYGEN_25_C_MG_L: f64 = 8.263;

/// Surface tension at 25 C, N/m: IAPWS R1-76(2014).
const TENSION_25_C: f64 = 0.07197;

/// Density of water at 25 C, kg/m3.
const WATER_25_C: f64 = 997.05;

const QUARTZ: f64 = 2650.0;

const ONE_PERCENT: f64 = 0.01;

/// Compares with a limit in the value's own unit.
#[track_caller]
fn within(what: &str, value: f64, published: f64, limit: f64) {
    check(what, value, published, Within::Absolute(limit));
}

/// Compares with a limit as a fraction of the published value.
#[track_caller]
fn relative(what: &str, value: f64, published: f64, fraction: f64) {
    check(what, value, published, Within::Relative(fraction));
}

fn mm(value: f64) -> Length {
    Length::from_mm(value)
}

fn cm(value: f64) -> Length {
    Length::from_cm(value)
}

fn mg_l(value: f64) -> Concentration {
    Concentration::from_mg_l(value)
}

fn share(fraction: f64) -> Share {
    Share::from_fraction(fraction)
}

fn percent(value: f64) -> Share {
    Share::from_percent(value)
}

fn curve(points: &[(f64, f64)]) -> Grading {
    let points = points.iter().map(|&(mm, pct)| GradingPoint::new(mm, pct));
    Grading::new(points.collect()).expect("a curve")
}

fn size_mm(grading: &Grading, finer_percent: f64) -> f64 {
    grading
        .size_at(percent(finer_percent))
        .unwrap_or_else(|| panic!("the curve does not reach {finer_percent} %"))
        .mm()
}

/// NEH 633 ch. 26, category 4: four times 1.50 mm.
#[test]
fn that_cover_just_passes_the_handbook_rule() {
    let base = BaseSoil {
        fines: percent(5.0),
        d85: mm(1.50),
        d15: mm(0.38),
    };
    within("D15F max, mm", base.coarsest_cap().mm(), 6.0, 1e-9);
}

/// NEH 633 ch. 26, steps 2 and 3.
#[test]
fn filter_limits_by_soil_category() {
    let cases = [
        (92.0, 0.06, 1, 0.54),
        (60.0, 0.30, 2, 0.70),
        (40.0, 0.30, 2, 0.70),
        (30.0, 0.90, 3, 1.86),
        (20.0, 0.15, 3, 0.70),
        (10.0, 0.50, 4, 2.00),
        (95.0, 0.03, 1, 0.27),
        (95.0, 0.02, 1, 0.20),
    ];
    for (fines, d85_mm, category, expected_mm) in cases {
        let base = BaseSoil {
            fines: percent(fines),
            d85: mm(d85_mm),
            d15: mm(0.01),
        };
        assert_eq!(base.category().number(), category, "fines {fines} %");
        within("D15F max, mm", base.coarsest_cap().mm(), expected_mm, 1e-9);
    }
}

/// NEH 633 ch. 26 (1994).
#[test]
fn finest_filter_over_a_soil() {
    for (d15_mm, expected_mm) in [(0.05, 0.20), (0.01, 0.10)] {
        let base = BaseSoil {
            fines: percent(60.0),
            d85: mm(0.5),
            d15: mm(d15_mm),
        };
        within("D15F min, mm", base.finest_cap().mm(), expected_mm, 1e-9);
    }
}

/// Plane geometry.
#[test]
fn spheres_that_pass_between_spheres() {
    within("three", Throat::Three.passing_ratio(), 6.4641, 1e-4);
    within("four", Throat::Four.passing_ratio(), 2.4142, 1e-4);
    within(
        "radius, three",
        Throat::Three.radius(mm(1.0)).mm(),
        0.0774,
        5e-5,
    );
    within(
        "radius, four",
        Throat::Four.radius(mm(1.0)).mm(),
        0.207,
        5e-4,
    );
}

/// Boudreau 1996.
#[test]
fn tortuosity_of_cap_and_soil() {
    for (porosity, expected) in [(0.40, 2.8326), (0.80, 1.4463), (0.90, 1.2107)] {
        within(
            "theta^2",
            tortuosity_squared(share(porosity)),
            expected,
            5e-5,
        );
    }
}

fn ammonium_in_sand() -> f64 {
    effective_diffusion(AMMONIUM_M2_S, share(0.40))
}

/// Ammonium meeting oxygen at a front, 25 C.
#[test]
fn oxygen_in_clean_sand_over_ammonium() {
    for (nitrogen_mg_l, expected) in [(1.0, 0.684), (5.0, 0.303), (20.0, 0.098)] {
        let ammonium = Reductant::ammonium(AMMONIUM_M2_S, mg_l(nitrogen_mg_l));
        let oxic = oxic_share_of_clean_cap(OXYGEN_M2_S, mg_l(OXYGEN_25_C_MG_L), &[ammonium]);
        relative("z/L", oxic, expected, ONE_PERCENT);
    }
}

fn quartz_cap(thickness_cm: f64) -> Overburden {
    Overburden {
        thickness: cm(thickness_cm),
        porosity: share(0.40),
        grain_density: Density::from_kg_m3(QUARTZ),
        water_density: Density::from_kg_m3(WATER_25_C),
    }
}

/// Young-Laplace with IAPWS R1-76 at 25 C.
#[test]
fn gas_entering_sand() {
    let cases = [
        (0.25, 3455.0, 2780.0, 7440.0),
        (0.5, 1727.0, 1390.0, 3720.0),
        (1.0, 864.0, 695.0, 1860.0),
        (2.0, 432.0, 348.0, 930.0),
        (4.0, 216.0, 174.0, 465.0),
    ];
    for (grain_mm, typical, low, high) in cases {
        let entry = entry_pressure(TENSION_25_C, mm(grain_mm));
        within("typical, Pa", entry.typical.pa(), typical, 0.5);
        relative("low, Pa", entry.low.pa(), low, ONE_PERCENT);
        relative("high, Pa", entry.high.pa(), high, ONE_PERCENT);
    }
}

/// Quartz sand with 40 % pores.
#[test]
fn gas_against_the_weight_of_the_cap() {
    let cap = quartz_cap(5.0);
    within("sigma', Pa", cap.effective_stress().pa(), 486.3, 0.05);
    within("M", cap.entry_ratio(TENSION_25_C, mm(0.5)), 3.55, 5e-3);
}

/// Steady diffusion with methane at 25 C, 40 % and 80 % pores.
#[test]
fn methane_that_can_leave_dissolved() {
    let ceiling = |cap_cm: f64| {
        let layer = |thickness_cm: f64, porosity: f64| GasLayer {
            thickness: cm(thickness_cm),
            effective_m2_s: effective_diffusion(METHANE_M2_S, share(porosity)),
        };
        dissolved_methane_ceiling_mg_m2_d(
            layer(3.0, 0.80),
            layer(cap_cm, 0.40),
            METHANE_SOLUBILITY_MOL_M3,
        )
    };
    within("3 cm, mg CH4/m2/d", ceiling(3.0), 15.0, 0.05);
    within("3 cm, mmol/m2/d", ceiling(3.0) / 16.043, 0.9345, 5e-4);
    within("2 cm, mg CH4/m2/d", ceiling(2.0), 21.3, 0.05);
}

/// Quartz with 40 % pores.
#[test]
fn masses_of_sand() {
    let water = Density::from_kg_m3(WATER_25_C);
    let dry = Density::from_kg_m3(QUARTZ) * 0.60;
    let wet = saturated_density(dry, share(0.40), water);
    within("saturated, kg/m3", wet.kg_m3(), 1989.0, 0.5);
    let volume = Area::from_cm2(60.0 * 30.0) * cm(4.0);
    within("layer, L", volume.litres(), 7.2, 1e-9);
    let mass = LayerMass::new(volume, dry, share(0.40), water);
    within("dry, kg", mass.dry.kg(), 7.2 * 1.590, 1e-3);
    within("wet, kg", mass.wet.kg(), 7.2 * 1.989, 4e-3);
}

/// Standard sands and mesh products from the middles of their limits.
#[test]
fn sizes_of_common_caps() {
    let concrete = curve(&[
        (0.15, 5.0),
        (0.3, 17.5),
        (0.6, 42.5),
        (1.18, 67.5),
        (2.36, 90.0),
        (4.75, 97.5),
    ]);
    for (finer, expected_mm) in [
        (10.0, 0.20),
        (15.0, 0.26),
        (50.0, 0.74),
        (60.0, 0.96),
        (85.0, 2.02),
    ] {
        within("ASTM C33, mm", size_mm(&concrete, finer), expected_mm, 0.01);
    }
    let uniformity = size_mm(&concrete, 60.0) / size_mm(&concrete, 10.0);
    within("ASTM C33, Cu", uniformity, 4.9, 0.05);
    // Openings of ASTM E11; 5 % are taken as finer than the one, 95 % as finer than the other.
    let products = [
        ("30/60", [0.25, 0.6], 0.26, 0.28, 0.39, 0.43, 0.54),
        ("20/40", [0.425, 0.85], 0.44, 0.46, 0.60, 0.65, 0.79),
        ("16/30", [0.6, 1.18], 0.62, 0.65, 0.84, 0.91, 1.10),
        ("12/20", [0.85, 1.7], 0.88, 0.92, 1.20, 1.30, 1.57),
    ];
    for (mesh, [fine, coarse], d10, d15, d50, d60, d85) in products {
        let grit = curve(&[(fine, 5.0), (coarse, 95.0)]);
        let expected = [
            (10.0, d10),
            (15.0, d15),
            (50.0, d50),
            (60.0, d60),
            (85.0, d85),
        ];
        for (finer, expected_mm) in expected {
            within(mesh, size_mm(&grit, finer), expected_mm, 6e-3);
        }
    }
}

/// Palermo et al. 1998 with Fick's law at 25 C, 40 % pores.
#[test]
fn caps_that_are_too_thin_for_their_parts() {
    let needed_cm = |base_mg_l: f64, allowed: f64, burrowing_cm: f64| {
        let parts = CapParts {
            placing: cm(PLACING_ERROR_CM),
            burrowing: cm(burrowing_cm),
            isolation: isolation_thickness(ammonium_in_sand(), mg_l(base_mg_l), allowed),
        };
        parts.needed().cm()
    };
    within("burrowers, cm", needed_cm(20.0, 10.0, 3.0), 8.34, 5e-3);
    within("none, cm", needed_cm(20.0, 10.0, 0.0), 5.34, 5e-3);
    within("poor soil, cm", needed_cm(10.0, 10.0, 0.0), 2.92, 5e-3);
    within(
        "rich, planted, cm",
        needed_cm(50.0, 25.0, 0.0),
        0.5 + 4.84,
        5e-3,
    );
}
