//! Keys that are kept.

use super::Keep;

const TEXT: &str = "[[plants]]\nname = \"lemna_minor\"\namount = \"10 %\"\n";

#[test]
fn a_kept_key_is_touched_by_itself_by_its_parts_and_by_what_holds_it() {
    let touched = |keep: &str, key: &str| {
        let keep = Keep::of([keep], TEXT).unwrap();
        keep.touched_by(key).is_some()
    };
    assert!(touched("cap.depth", "cap.depth"));
    assert!(touched("cap.depth", "cap.depth.back"));
    assert!(touched("cap.depth.back", "cap.depth"));
    assert!(touched("plants", "plants[]"));
    assert!(touched("plants", "plants[0].amount"));
    assert!(touched("plants[0].amount", "plants[0].amount"));
    assert!(touched("plants[].amount", "plants[3].amount"));
    assert!(!touched("plants[0].amount", "plants[]"));
    assert!(!touched("plants[0].amount", "plants[1].amount"));
    assert!(!touched("cap.depth", "cap.depths"));
    assert!(!touched("cap.material", "cap.depth"));
}

#[test]
fn a_key_that_is_none_and_an_item_that_is_not_there_are_refused() {
    let refused = |keep: &str| Keep::of([keep], TEXT).unwrap_err().help;
    assert_eq!(refused("cap.dpeth"), "did you mean cap.depth?");
    assert_eq!(
        refused("plants[1].amount"),
        "plants[1] is not there; items are counted from 0"
    );
    assert!(Keep::of(["light.hours"], TEXT).is_ok());
}
