//! Laws of ensembles: a member depends on its index and the seed alone.

use lentic::source::Band;
use lentic::startup::{Draw, Inputs, Member, Parameters, ensemble};

const SPEC: &str = r#"
[tank]
shape = "box"
size = "60 x 30 x 36 cm"
[soil]
material = "organic_potting_mix"
depth = "25 mm"
[cap]
material = "filter_sand"
depth = "35 mm"
[[plants]]
name = "duckweed"
amount = "20 %"
[[plants]]
name = "ludwigia_repens"
amount = "20 stems"
[water.change]
share = "30 %"
every = "7 d"
from = 7
"#;

/// The first members of the tank's ensemble.
fn members(count: u32, days: u32, seed: u64) -> Vec<Member> {
    let design = lentic::spec::parse(SPEC).expect("a design");
    let draw = Draw {
        members: count,
        seed,
    };
    ensemble::members(
        &Inputs::of(&design),
        &Parameters::<Band>::of(&design),
        days,
        draw,
        &|_| (),
    )
}

fn on_threads(threads: usize, count: u32) -> Vec<Member> {
    rayon::ThreadPoolBuilder::new()
        .num_threads(threads)
        .build()
        .expect("a pool")
        .install(|| members(count, 30, 1))
}

#[test]
fn digits_do_not_depend_on_the_number_of_threads() {
    let alone = on_threads(1, 40);
    assert_eq!(alone.len(), 40);
    for threads in [2, 3] {
        assert!(alone == on_threads(threads, 40), "{threads} threads");
    }
}

#[test]
fn a_member_does_not_depend_on_how_many_there_are() {
    let many = members(33, 30, 1);
    for fewer in [1, 7, 8, 9] {
        assert!(many[..fewer as usize] == members(fewer, 30, 1), "{fewer}");
    }
}

#[test]
fn another_seed_draws_another_tank() {
    let (one, other) = (members(1, 10, 1), members(1, 10, 2));
    assert_ne!(one[0].numbers, other[0].numbers);
}

#[test]
fn none_one_and_thousands_of_members_are_all_there() {
    for count in [0, 1, 4096] {
        let found = members(count, 2, 1);
        assert_eq!(found.len(), count as usize);
        for member in &found {
            assert_eq!(member.days.len(), 3);
            assert!(member.numbers.iter().all(|number| number.is_finite()));
            assert!(member.ammonia.value.is_finite());
        }
    }
}

#[test]
fn progress_counts_every_member() {
    use std::sync::atomic::{AtomicU32, Ordering};
    let design = lentic::spec::parse(SPEC).expect("a design");
    let done = AtomicU32::new(0);
    let draw = Draw {
        members: 25,
        seed: 1,
    };
    let bands = Parameters::<Band>::of(&design);
    ensemble::members(&Inputs::of(&design), &bands, 2, draw, &|more| {
        done.fetch_add(more, Ordering::Relaxed);
    });
    assert_eq!(done.into_inner(), 25);
}
