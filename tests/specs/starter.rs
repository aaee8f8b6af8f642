//! The commented spec to start from.

use lentic::spec::{self, starter};
use lentic::units::UnitSystem;

use crate::base;

#[test]
fn the_starter_is_read_as_it_comes_and_with_every_key_in_use() {
    for units in [UnitSystem::Metric, UnitSystem::Us] {
        let text = starter::text(units);
        assert!(
            !text
                .lines()
                .any(|line| line.contains("{size}") || line.contains("{added}")),
            "{text}"
        );
        let uncommented: Vec<&str> = text
            .lines()
            .map(|line| match line.strip_prefix('#') {
                Some(key) if !key.starts_with([' ', ':']) => key,
                _ => line,
            })
            .collect();
        for text in [text.clone(), uncommented.join("\n")] {
            let faults = base::faults(&text);
            assert!(
                faults.0.is_empty(),
                "{}",
                spec::draw(&faults, &text, "starter.toml", false)
            );
        }
        let draft = spec::parse(&text).expect("a design").into_draft();
        assert_eq!(draft.units, units);
    }
}

#[test]
fn both_unit_systems_start_from_nearly_the_same_tank() {
    let litres = |units| {
        let design = spec::parse(&starter::text(units)).expect("a design");
        design.vessel().brimful().litres()
    };
    let (metric, us) = (litres(UnitSystem::Metric), litres(UnitSystem::Us));
    assert!((metric / us - 1.0).abs() < 0.15, "{metric} L, {us} L");
}
