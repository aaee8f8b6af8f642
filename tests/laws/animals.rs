//! Laws of the days on which animals may move in.

use lentic::design::Design;
use lentic::finding::Status;
use lentic::plan::{Options, startup};

/// What the calendar and the finding advise is accepted, written into the spec.
#[test]
fn advised_days_of_animals_are_accepted() {
    let options = Options {
        members: 24,
        ..Options::default()
    };
    let mut dated = 0;
    for (name, design) in stocked_demos() {
        let (start, _) = startup(&design, options, &|_| ()).expect("a run");
        let mut draft = design.into_draft();
        draft
            .assumed
            .retain(|assumed| !assumed.key.ends_with("].from_day"));
        for stock in &mut draft.animals {
            let mut days = start.section.animals_from.iter();
            let day = days.find(|day| day.name == stock.animal.name);
            let day = day
                .unwrap_or_else(|| panic!("{name}: {:?}", start.section.ready_day_advised_reason));
            stock.from_day = day.day;
            dated += 1;
        }
        let dated = draft.check().expect("a design");
        let (_, findings) = startup(&dated, options, &|_| ()).expect("a run");
        let early = findings
            .iter()
            .find(|finding| finding.code.text() == "animals.early");
        let early = early.expect("animals.early");
        assert_eq!(early.status, Status::Ok, "{name}: {}", early.says);
    }
    assert!(dated > 10, "{dated}");
}

/// The demo tanks that have animals.
fn stocked_demos() -> impl Iterator<Item = (String, Design)> {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-tanks");
    let mut files: Vec<_> = std::fs::read_dir(folder)
        .expect("demo tanks")
        .map(|entry| entry.expect("an entry").path())
        .collect();
    files.sort();
    files.into_iter().filter_map(|file| {
        let text = std::fs::read_to_string(&file).expect("a spec");
        let design = lentic::spec::parse(&text).ok()?;
        (!design.draft().animals.is_empty()).then(|| (file.display().to_string(), design))
    })
}
