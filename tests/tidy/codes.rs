//! Finding codes are unique, spelled alike, and each is explained and reachable.

use std::collections::HashSet;

use lentic::finding::Code;

#[test]
fn finding_codes_are_unique_and_spelled_alike() {
    let mut seen = HashSet::new();
    for code in Code::ALL {
        let text = code.text();
        assert!(seen.insert(text), "{text} stands twice");
        let (subject, aspect) = text.split_once('.').expect("a dot");
        for part in [subject, aspect] {
            assert!(
                !part.is_empty() && part.bytes().all(|b| b.is_ascii_lowercase()),
                "{text}"
            );
        }
        assert_eq!(Code::find(text), Some(*code));
    }
}

#[test]
fn every_finding_code_is_explained() {
    for code in Code::ALL {
        assert!(
            lentic::explanation::topic(code.text()).is_some(),
            "{} has no explanation",
            code.text()
        );
    }
}
