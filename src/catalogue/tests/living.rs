//! Plants and animals grow, eat and wait as was measured or is practised.

use super::*;

#[test]
fn a_slow_group_is_slow_and_a_floater_floats() {
    for plant in plants() {
        let floating = matches!(
            plant.form,
            GrowthForm::SmallFloating | GrowthForm::LargeFloating
        );
        assert_eq!(
            plant.group == PlantGroup::Floater,
            floating,
            "{}",
            plant.name
        );
        assert_eq!(plant.air_leaves, floating, "{}", plant.name);
        let slow_form = matches!(
            plant.form,
            GrowthForm::SlowRosette | GrowthForm::Epiphyte | GrowthForm::Moss
        );
        assert!(
            !slow_form || plant.group == PlantGroup::Slow,
            "{}",
            plant.name
        );
        let slow = plant.rgr_low_per_d.typical < 0.0145;
        assert_eq!(plant.group == PlantGroup::Slow, slow, "{}", plant.name);
    }
}

#[test]
fn unmeasured_plants_grow_as_their_form_does() {
    // Judgement, bounded by the 14 species of Nielsen & Sand-Jensen 1991 and Rich 2012.
    for plant in plants() {
        let (good, low) = match plant.form {
            GrowthForm::SmallFloating => ([0.15, 0.50], [0.05, 0.15]),
            GrowthForm::LargeFloating => ([0.08, 0.28], [0.04, 0.10]),
            GrowthForm::SubmergedStem => ([0.025, 0.11], [0.01, 0.04]),
            GrowthForm::AmphibiousStem => ([0.02, 0.06], [0.005, 0.04]),
            GrowthForm::RunnerRosette => ([0.015, 0.05], [0.007, 0.025]),
            GrowthForm::SlowRosette => ([0.007, 0.025], [0.005, 0.015]),
            GrowthForm::Epiphyte | GrowthForm::Moss => ([0.005, 0.02], [0.003, 0.012]),
        };
        let within = |[from, to]: [f64; 2], rate: Band| (from..=to).contains(&rate.typical);
        // Water sprite floats when it grows fastest.
        let growth = plant.basis_of.get("rgr_good_per_d").unwrap_or(&plant.basis);
        if *growth == Basis::Judgement && plant.name != "ceratopteris_thalictroides" {
            assert!(within(good, plant.rgr_good_per_d), "{}", plant.name);
            assert!(within(low, plant.rgr_low_per_d), "{}", plant.name);
        }
    }
}

#[test]
fn a_plant_grows_faster_in_plenty_and_has_room_to_grow() {
    for plant in plants() {
        let Plant {
            rgr_good_per_d,
            rgr_low_per_d,
            ..
        } = plant;
        assert!(
            rgr_low_per_d.typical < rgr_good_per_d.typical,
            "{}",
            plant.name
        );
        let (start, end) = (plant.full_cover_g_dry_m2, plant.max_g_dry_m2);
        assert!(start.typical < end.typical, "{}", plant.name);
        assert!(
            plant.dry_per_fresh.high < 0.2 && plant.n_pct.high < 7.0,
            "{}",
            plant.name
        );
        assert!(!plant.fresh_g.is_empty(), "{}", plant.name);
        if let (Some(stem), Some(bunch)) = (
            plant.fresh_g.get(&Portion::Stem),
            plant.fresh_g.get(&Portion::Bunch),
        ) {
            let stems = bunch.typical / stem.typical;
            assert!(
                (5.0..=8.0).contains(&stems),
                "{}: {stems} stems",
                plant.name
            );
        }
    }
}

#[test]
fn measured_plants_have_their_measured_numbers() {
    let duckweed = find::<Plant>("lemna_minor").unwrap();
    // Ziegler 2015: 0.153 to 0.519 per day; Driever 2005: about 0.3.
    assert_eq!(duckweed.rgr_good_per_d, Band::new(0.153, 0.30, 0.519));
    // Klein 2022: growth ends at 8 and 40.5 C and is best at 26.7 C; 177 g dry/m2;
    // fresh to dry 16.7; 1000 cm2 per g dry, so 10 g dry/m2 close the surface.
    assert_eq!(duckweed.temperature_c, Band::new(8.0, 26.7, 40.5));
    assert_relative_eq!(duckweed.max_g_dry_m2.typical, 177.0);
    assert_relative_eq!(
        1.0 / duckweed.dry_per_fresh.typical,
        16.7,
        max_relative = 3e-3
    );
    assert_relative_eq!(duckweed.full_cover_g_dry_m2.typical, 1e4 / 1000.0);
    // Best 1986; Larson 2007 found 0.03 in the open.
    let hornwort = find::<Plant>("hornwort").unwrap().rgr_good_per_d;
    assert_eq!((hornwort.low, hornwort.high), (0.025, 0.041));
    assert!(hornwort.contains(0.03));
    // Mitchell & Tur 1975: 17.16 % per day, best at 30 C.
    let salvinia = find::<Plant>("salvinia_molesta").unwrap();
    assert_relative_eq!(salvinia.rgr_good_per_d.typical, 0.1716, max_relative = 5e-3);
    assert_relative_eq!(salvinia.temperature_c.typical, 30.0);
    // Madsen & Morgan 2021: doubles in 5.7 d.
    let frogbit = find::<Plant>("limnobium_laevigatum").unwrap();
    let doubling_d = std::f64::consts::LN_2 / frogbit.rgr_good_per_d.typical;
    assert_relative_eq!(doubling_d, 5.7, max_relative = 5e-3);
    // Haller 1974: 161.4 and 200.1 g dry/m2.
    for (name, crop) in [("hydrilla", 161.4), ("vallisneria_americana", 200.1)] {
        let plant = find::<Plant>(name).unwrap();
        assert_relative_eq!(plant.max_g_dry_m2.typical, crop, max_relative = 5e-3);
    }
}

#[test]
fn nitrogen_from_the_air_is_fixed_by_azolla_alone() {
    for plant in plants() {
        assert_eq!(
            plant.fixes_nitrogen,
            plant.name.starts_with("azolla"),
            "{}",
            plant.name
        );
    }
}

#[test]
fn animals_wait_as_long_as_practice_asks() {
    // Common practice, no source: snails 14 days, fish 28, shrimp and snails with gills 35.
    for animal in animals() {
        let floor = match animal.name.as_str() {
            name if name.ends_with("snail") => 14,
            "small_shrimp" | "nerite" => 35,
            _ => 28,
        };
        assert_eq!(animal.first_day, floor, "{}", animal.name);
    }
    let deep = animals()
        .iter()
        .filter(|animal| animal.digs_mm.typical >= 50.0);
    assert_eq!(
        deep.map(|animal| animal.name.as_str()).collect::<Vec<_>>(),
        ["digging_fish", "goldfish"]
    );
}
