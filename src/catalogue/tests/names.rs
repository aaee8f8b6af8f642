//! Rows are found by their names, and what is published has a source.

use super::*;

/// Asserts what holds for the rows of every table.
fn check<R: CatalogueRow>() {
    let mut owners: HashMap<String, &str> = HashMap::new();
    for row in R::all() {
        let name = row.name();
        let snake = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_';
        assert!(name.chars().all(snake), "{name} is not snake case");
        for spelling in row.spellings() {
            let owner = owners.insert(plain(spelling), name);
            let taken = owner
                .filter(|&owner| owner != name || row.aliases().contains(&spelling.to_owned()));
            assert_eq!(taken, None, "{} \"{spelling}\" of {name} is taken", R::KIND);
            let found = find::<R>(&spelling.to_uppercase().replace(' ', "-")).unwrap();
            assert_eq!(found.name(), name);
        }
        let published = row.basis() == Basis::Published;
        assert!(
            !published || !row.sources().is_empty(),
            "{name} is published nowhere"
        );
    }
}

#[test]
fn every_spelling_leads_to_one_row_and_what_is_published_has_a_source() {
    check::<Soil>();
    check::<Cap>();
    check::<Stone>();
    check::<Plant>();
    check::<Animal>();
    check::<Device>();
    check::<Sign>();
    check::<TankSize>();
}

#[test]
fn the_promised_names_are_there() {
    for name in [
        "organic_potting_mix",
        "loam_topsoil",
        "sandy_loam",
        "garden_soil",
        "clay_soil",
        "peat_rich_mix",
        "compost_rich_mix",
    ] {
        assert!(soils().iter().any(|soil| soil.name == name), "{name}");
    }
    for name in [
        "silt",
        "play_sand",
        "masonry_sand",
        "grit_30_60",
        "grit_20_40",
        "grit_16_30",
        "grit_12_20",
        "filter_sand",
        "coarse_sand",
        "fine_gravel",
        "gravel_4_8",
        "pea_gravel",
    ] {
        assert!(caps().iter().any(|cap| cap.name == name), "{name}");
    }
    for name in ["lemna_minor", "anubias_barteri", "ludwigia_repens"] {
        assert!(plants().iter().any(|plant| plant.name == name), "{name}");
    }
    for name in [
        "small_shrimp",
        "small_fish",
        "labyrinth_fish",
        "surface_snail",
        "burrowing_snail",
        "small_catfish",
        "digging_fish",
    ] {
        assert!(animals().iter().any(|animal| animal.name == name), "{name}");
    }
    for name in ["none", "air_stone", "sponge_filter", "pump"] {
        assert!(devices().iter().any(|device| device.name == name), "{name}");
    }
}

#[test]
fn trade_words_are_found_however_they_are_written() {
    for text in [
        "pool filter sand",
        "Pool-Filter Sands",
        "FILTER_SAND",
        "filtersand",
    ] {
        assert_eq!(find::<Cap>(text).unwrap().name, "filter_sand", "{text}");
    }
    for text in ["Duckweed", "duck weeds", "Lemna minor"] {
        assert_eq!(find::<Plant>(text).unwrap().name, "lemna_minor", "{text}");
    }
    assert_eq!(find::<Cap>("20/40 Sand").unwrap().name, "grit_20_40");
    assert_eq!(find::<Animal>("Corydoras").unwrap().name, "catfish");
    assert_eq!(
        find::<Plant>("java mosses").unwrap().name,
        "taxiphyllum_barbieri"
    );
}

#[test]
fn a_misspelt_name_gets_a_suggestion_and_a_strange_one_none() {
    let unknown = find::<Plant>("dukweed").unwrap_err();
    assert_eq!(unknown.suggestion, Some("duckweed"));
    assert_eq!(unknown.to_string(), "no plant \"dukweed\" in the catalogue");
    assert_eq!(
        find::<Cap>("grit_20_50").unwrap_err().suggestion,
        Some("grit_20_40")
    );
    assert_eq!(find::<Soil>("plutonium").unwrap_err().suggestion, None);
    assert_eq!(find::<Soil>("").unwrap_err().suggestion, None);
}

#[test]
fn a_word_that_several_rows_bear_gets_them_as_choices() {
    let unknown = find::<Plant>("hygrophila").unwrap_err();
    assert_eq!(
        unknown.choices,
        ["hygrophila_polysperma", "hygrophila_difformis"]
    );
    assert_eq!(unknown.suggestion, None);
    let unknown = find::<Cap>("blasting grit").map(|cap| &cap.name);
    assert_eq!(unknown, Ok(&"coal_slag_grit_20_40".to_owned()));
    let black = find::<Cap>("black sand").unwrap_err();
    assert_eq!(black.suggestion, Some("black slag sand"));
    let longer = find::<Animal>("glowlight tetra").unwrap_err();
    assert_eq!(longer.suggestion, Some("tetra"));
}

#[test]
fn words_that_two_names_share_bring_them_no_nearer() {
    // Coral sand raises pH, and gravel of 5 mm is not one of 3 mm.
    assert_ne!(
        find::<Cap>("cory sand").unwrap_err().suggestion,
        Some("coral_sand")
    );
    assert_eq!(
        find::<Cap>("corral sand").unwrap_err().suggestion,
        Some("coral_sand")
    );
    assert_eq!(
        find::<Cap>("pea gravel 3-5mm").unwrap_err().suggestion,
        Some("pea_gravel")
    );
}

/// Masses of adults by common practice, without source.
#[test]
fn a_trade_name_leads_to_an_animal_of_its_size() {
    for (name, least_g, most_g) in [
        ("pygmy corydoras", 0.3, 0.5),
        ("cory", 3.0, 8.0),
        ("ramshorn", 0.1, 3.0),
        ("mystery snail", 10.0, 20.0),
        ("goldfish", 50.0, 300.0),
    ] {
        let mass = find::<Animal>(name).unwrap().mass_g.typical;
        assert!((least_g..=most_g).contains(&mass), "{name}: {mass} g");
    }
}

#[test]
fn an_apostrophe_changes_no_name() {
    for text in ["builder's sand", "builder\u{2019}s sand", "builders sand"] {
        assert_eq!(find::<Cap>(text).unwrap().name, "masonry_sand", "{text}");
    }
}

#[test]
fn a_point_between_digits_matters() {
    assert_eq!(find::<TankSize>("2.5 gallons").unwrap().name, "us_2_5_gal");
    assert!(find::<TankSize>("25 gallons").is_err());
}
