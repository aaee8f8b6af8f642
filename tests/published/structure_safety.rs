//! Restricted plants.

use lentic::catalogue::{self, Plant, RestrictedList};

/// Commission Implementing Regulations 2016/1141 to 2022/1203, 7 CFR 360.200(a),
/// SI 2014/538 (England).
#[test]
fn restricted_species_carry_their_lists() {
    use RestrictedList::{EnglandSale, EuUnion, UsFederal};
    for (name, eu, us, england) in [
        ("pistia_stratiotes", true, false, false),
        ("hygrophila_polysperma", false, true, false),
        ("lagarosiphon_major", true, true, false),
        ("cabomba_caroliniana", true, false, false),
        ("azolla_filiculoides", false, false, true),
        ("ludwigia_repens", false, false, false),
    ] {
        let plant = catalogue::find::<Plant>(name).unwrap();
        for (list, listed) in [(EuUnion, eu), (UsFederal, us), (EnglandSale, england)] {
            assert_eq!(
                plant.listing(list).is_some(),
                listed,
                "{name} on {}",
                list.label()
            );
        }
    }
}
