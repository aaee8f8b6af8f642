//! Soils and caps have the sizes and densities of what they are.

use super::*;

/// Solid matter fills what the pores leave: bulk = (1 - porosity) x particle density.
fn packing_error(bulk: Band, porosity: Band, particle: Band) -> f64 {
    (1.0 - porosity.typical) * particle.typical / bulk.typical - 1.0
}

#[test]
fn bulk_density_porosity_and_particle_density_agree() {
    for soil in soils() {
        let error = packing_error(
            soil.dry_bulk_kg_m3,
            soil.porosity,
            soil.particle_density_kg_m3,
        );
        // Swollen organic particles hold water of their own.
        let allowed = match soil.kind {
            SoilKind::Mineral => 0.05,
            SoilKind::Organic => 0.30,
        };
        assert!(error.abs() < allowed, "{}: {error}", soil.name);
    }
    for cap in caps() {
        let error = packing_error(cap.dry_bulk_kg_m3, cap.porosity, cap.particle_density_kg_m3);
        assert!(error.abs() < 0.03, "{}: {error}", cap.name);
    }
}

#[test]
fn mineral_soils_have_grain_sizes_and_organic_ones_none() {
    for soil in soils() {
        let sized = [soil.d15_mm, soil.d85_mm, soil.fines_pct].map(|size| size.is_some());
        assert_eq!(sized, [soil.kind == SoilKind::Mineral; 3], "{}", soil.name);
    }
}

/// Percent finer, linear in percent against log size between known points.
fn percent_finer(mm: f64, points: [(f64, f64); 3]) -> f64 {
    let [a, b, c] = points;
    let (low, high) = if mm < b.0 { (a, b) } else { (b, c) };
    low.1 + (high.1 - low.1) * (mm / low.0).ln() / (high.0 / low.0).ln()
}

#[test]
fn soils_have_the_sizes_of_their_texture() {
    // Clay and silt + clay, percent; boundaries 0.002, 0.05 and 2 mm (USDA texture).
    for (name, clay, clay_and_silt) in [
        ("loam_topsoil", 20.0, 60.0),
        ("silt_loam", 15.0, 80.0),
        ("sandy_loam", 10.0, 35.0),
        ("loamy_sand", 6.0, 18.0),
        ("clay_soil", 60.0, 80.0),
    ] {
        let soil = find::<Soil>(name).unwrap();
        let points = [(0.002, clay), (0.05, clay_and_silt), (2.0, 100.0)];
        let d85 = percent_finer(soil.d85_mm.unwrap().typical, points);
        assert!((d85 - 85.0).abs() < 0.5, "{name}: {d85} % finer than d85");
        let fines = percent_finer(0.075, points);
        assert!(
            (fines - soil.fines_pct.unwrap().typical).abs() < 0.6,
            "{name}: {fines}"
        );
    }
}

#[test]
fn grain_sizes_rise_with_the_share_that_is_finer() {
    for cap in caps() {
        let sizes = [cap.d10_mm, cap.d15_mm, cap.d50_mm, cap.d60_mm, cap.d85_mm];
        for pair in sizes.windows(2) {
            let rises = |at: fn(Band) -> f64| at(pair[0]) < at(pair[1]);
            assert!(rises(|band| band.low), "{}", cap.name);
            assert!(rises(|band| band.typical), "{}", cap.name);
            assert!(rises(|band| band.high), "{}", cap.name);
        }
    }
}

#[test]
fn sieved_caps_have_the_sizes_of_their_sieves() {
    // Openings of ASTM E11 sieves; 5 % pass the finer and 95 % the coarser.
    for (name, finer, coarser) in [
        ("grit_30_60", 0.250, 0.600),
        ("grit_20_40", 0.425, 0.850),
        ("grit_16_30", 0.600, 1.180),
        ("grit_12_20", 0.850, 1.700),
        ("coal_slag_grit_20_40", 0.425, 0.850),
        ("coarse_sand", 1.0, 2.0),
        ("fine_gravel", 2.0, 4.0),
        ("gravel_4_8", 4.0, 8.0),
        ("pea_gravel", 5.0, 10.0),
    ] {
        let cap = find::<Cap>(name).unwrap();
        let points = [(finer, 5.0), (coarser, 95.0), (2.0 * coarser, 100.0)];
        for (percent, size) in [
            (10.0, cap.d10_mm),
            (15.0, cap.d15_mm),
            (50.0, cap.d50_mm),
            (60.0, cap.d60_mm),
            (85.0, cap.d85_mm),
        ] {
            let finer = percent_finer(size.typical, points);
            assert!((finer - percent).abs() < 2.0, "{name} {percent} %: {finer}");
        }
    }
}

#[test]
fn graded_sands_lie_within_their_standards() {
    let filter = find::<Cap>("filter_sand").unwrap();
    let uniformity = filter.d60_mm.typical / filter.d10_mm.typical;
    // AWWA B100 practice: effective size 0.45 to 0.55 mm, uniformity 1.3 to 1.65.
    assert!(Band::new(0.45, 0.5, 0.55).contains(filter.d10_mm.typical));
    assert!(
        Band::new(1.3, 1.45, 1.65).contains(uniformity),
        "{uniformity}"
    );
    // Percent passing: ASTM C33 fine aggregate, ASTM C144 natural sand.
    for (name, limits) in [
        (
            "concrete_sand",
            [(0.3, 5.0, 30.0), (0.6, 25.0, 60.0), (1.18, 50.0, 85.0)],
        ),
        (
            "masonry_sand",
            [(0.3, 10.0, 35.0), (0.6, 40.0, 75.0), (1.18, 70.0, 100.0)],
        ),
    ] {
        let cap = find::<Cap>(name).unwrap();
        let points = [
            (cap.d15_mm.typical, 15.0),
            (cap.d50_mm.typical, 50.0),
            (cap.d85_mm.typical, 85.0),
        ];
        for (sieve_mm, least, most) in limits {
            let passing = percent_finer(sieve_mm, points);
            assert!(
                (least..=most).contains(&passing),
                "{name} {sieve_mm} mm: {passing} %"
            );
        }
    }
}
