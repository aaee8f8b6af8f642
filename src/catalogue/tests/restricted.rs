//! Which plants stand on which lists of restricted plants.

use std::collections::BTreeSet;

use super::*;

#[test]
fn each_list_names_the_plants_of_the_catalogue_that_its_text_names() {
    use RestrictedList::{EnglandSale, EuUnion, NorthCarolina, UsFederal, Vermont};
    // Regulations (EU) 2016/1141, 2017/1263, 2019/1262, 2022/1203, 2025/1422; 7 CFR 360.200;
    // SI 2014/538; Vermont quarantine 3, with the federal list; 15A NCAC 02G .0602, with
    // "Salvinia spp. (all except S. rotundifolia)". Typed from the texts, by catalogue name.
    let federal = [
        "alternanthera_sessilis",
        "azolla_pinnata",
        "hydrilla_verticillata",
        "hygrophila_polysperma",
        "lagarosiphon_major",
        "limnophila_sessiliflora",
        "sagittaria_sagittifolia",
        "salvinia_auriculata",
        "salvinia_molesta",
    ];
    let of_vermont = [
        "cabomba_caroliniana",
        "egeria_densa",
        "hydrocharis_morsus_ranae",
        "myriophyllum_aquaticum",
        "myriophyllum_heterophyllum",
        "myriophyllum_spicatum",
    ];
    for (list, names) in [
        (
            EuUnion,
            vec![
                "alternanthera_philoxeroides",
                "cabomba_caroliniana",
                "crassula_helmsii",
                "elodea_nuttallii",
                "gymnocoronis_spilanthoides",
                "hydrocotyle_ranunculoides",
                "lagarosiphon_major",
                "ludwigia_grandiflora",
                "ludwigia_peploides",
                "myriophyllum_aquaticum",
                "myriophyllum_heterophyllum",
                "pistia_stratiotes",
                "pontederia_crassipes",
                "salvinia_molesta",
            ],
        ),
        (UsFederal, federal.to_vec()),
        (
            EnglandSale,
            vec![
                "azolla_filiculoides",
                "crassula_helmsii",
                "hydrocotyle_ranunculoides",
                "ludwigia_grandiflora",
                "ludwigia_peploides",
                "myriophyllum_aquaticum",
            ],
        ),
        (Vermont, [federal.as_slice(), &of_vermont].concat()),
        (
            NorthCarolina,
            vec![
                "alternanthera_philoxeroides",
                "azolla_pinnata",
                "crassula_helmsii",
                "egeria_densa",
                "hydrilla_verticillata",
                "hygrophila_polysperma",
                "lagarosiphon_major",
                "limnophila_sessiliflora",
                "ludwigia_grandiflora",
                "myriophyllum_aquaticum",
                "myriophyllum_spicatum",
                "pistia_stratiotes",
                "pontederia_crassipes",
                "sagittaria_sagittifolia",
                "salvinia_auriculata",
                "salvinia_molesta",
                "salvinia_natans",
            ],
        ),
    ] {
        let found: BTreeSet<&str> = plants()
            .iter()
            .filter(|plant| plant.listing(list).is_some())
            .map(|plant| plant.name.as_str())
            .collect();
        assert_eq!(found, names.into_iter().collect(), "{list:?}");
    }
}

#[test]
fn a_listing_says_since_when_and_by_what_act() {
    use RestrictedList::EuUnion;
    // The years of the five acts of the Union list.
    for (name, since) in [
        ("pontederia_crassipes", 2016),
        ("elodea_nuttallii", 2017),
        ("salvinia_molesta", 2019),
        ("pistia_stratiotes", 2022),
        ("crassula_helmsii", 2025),
    ] {
        let plant = find::<Plant>(name).unwrap();
        let listing = plant.listing(EuUnion).unwrap();
        assert_eq!(listing.since, Some(since), "{name}");
    }
}

#[test]
fn the_lists_hold_as_many_plants_as_their_texts() {
    use RestrictedList::{EnglandSale, EuUnion, NorthCarolina};
    // 14, 9, 13 and 4 plants (EPPO Reporting Service 2022/178), an alga, and seven of 2025,
    // one under two names; 7 by SI 2014/538; 17 and 14 by 15A NCAC 02G .0602.
    for (list, lines) in [
        (EuUnion, 14 + 9 + 14 + 5 + 7),
        (EnglandSale, 7),
        (NorthCarolina, 17 + 14),
    ] {
        let text = restricted_lists().iter().find(|text| text.name == list);
        let parts = text.unwrap().part.iter();
        assert_eq!(
            parts.map(|part| part.taxa.len()).sum::<usize>(),
            lines,
            "{list:?}"
        );
    }
}

#[test]
fn a_list_is_whole_only_with_those_that_it_takes_over() {
    let whole: Vec<_> = restricted_lists()
        .iter()
        .filter(|list| list.is_whole())
        .map(|list| list.name)
        .collect();
    assert_eq!(
        whole,
        [RestrictedList::EnglandSale, RestrictedList::NorthCarolina]
    );
}

#[test]
fn a_plant_cannot_say_itself_where_it_is_listed() {
    let row = "listed = []\n";
    let refused = toml::from_str::<Plant>(row).unwrap_err().to_string();
    assert!(refused.contains("unknown field `listed`"), "{refused}");
}
