//! What `check` lets in is followed to the end, however much lives and is fed in it.

use std::fmt;

use lentic::catalogue::animals;
use lentic::design::{Design, Stock};
use lentic::plan::{Options, check};
use lentic::units::Mass;
use proptest::prelude::*;

use crate::random::{Drawn, config, drawn};

/// The most of animals, g, and of dry food a day, mg, that a litre is let in with.
const MOST_ANIMALS_G_L: f64 = 100.0;
const MOST_FEED_MG_L: f64 = 2000.0;

/// As many days as the command follows by itself, without members.
const OPTIONS: Options = Options {
    members: 0,
    seed: 1,
    days: 90,
};

/// A design with animals and food up to what is let in.
#[derive(Clone)]
struct Loaded {
    design: Design,
    /// The design without them.
    bare: Drawn,
}

impl fmt::Debug for Loaded {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let draft = self.design.draft();
        let stock = &draft.animals[0];
        writeln!(
            f,
            "{:?}\nand these alone: {} {} from day {}, fed {} mg a day",
            self.bare,
            stock.count,
            stock.animal.name,
            stock.from_day,
            draft.feed.mass_per_day.mg()
        )
    }
}

/// The design with `animals` and `food` of the most that is let in; none where that is no
/// design for another reason.
fn loaded(
    bare: &Drawn,
    kind: usize,
    from_day: f64,
    animals_share: f64,
    food: f64,
) -> Option<Loaded> {
    let litres = bare.design.water().litres();
    let animal = &animals()[kind];
    let count = animals_share * MOST_ANIMALS_G_L * litres / animal.mass_g.typical;
    let mut draft = bare.draft();
    draft.animals = vec![Stock {
        animal,
        count: count as u32,
        from_day,
    }];
    draft.feed.mass_per_day = Mass::from_mg(food * MOST_FEED_MG_L * litres);
    let design = draft.check().ok()?;
    let bare = bare.clone();
    Some(Loaded { design, bare })
}

/// Every other load lies at the limit.
fn share() -> impl Strategy<Value = f64> {
    prop_oneof![Just(0.999_999), 0.0..1.0]
}

fn any_loaded() -> impl Strategy<Value = Loaded> {
    let parts = (drawn(), 0..animals().len(), 0..90_u8, share(), share());
    parts.prop_filter_map("no design", |(bare, kind, day, animals, food)| {
        loaded(&bare, kind, day.into(), animals, food)
    })
}

proptest! {
    #![proptest_config(config(200))]

    /// By a check of the bed: all of the plan but trials of its remedies, which judge the same
    /// tank once more, and others, whose faults they keep to themselves.
    #[test]
    fn what_is_let_in_is_never_a_fault_of_the_program(loaded in any_loaded()) {
        let checked = check(&loaded.design, OPTIONS);
        prop_assert!(checked.is_ok(), "{:?}", checked.err());
    }
}
