//! What to do when something happens to a running tank.

use super::estimate::ranged;
use crate::report::document::{Block, Fact};
use crate::units::show::{fixed, significant};
use crate::units::{Length, Mass, UnitSystem, Volume};
use crate::upkeep::{AwaySection, BucketSection, MoveSection, PowerSection, StirSection, Upkeep};

/// A power cut: how long it is borne, and what to do while it lasts.
pub(super) fn without_power(units: UnitSystem, power: &PowerSection) -> Vec<Block> {
    let mut facts = vec![power_cut(units, power)];
    if let Some(hours) = power.cools_4_k_h {
        let fall = match units {
            UnitSystem::Metric => "4 C",
            UnitSystem::Us => "7 F",
        };
        let lasts = format!("{} h", significant(hours, 2));
        let note = format!("until the water is {fall} colder");
        facts.push(Fact::new("warmth", lasts, note).by("heat.cooling"));
    }
    vec![
        Block::Heading("If the power fails".to_owned()),
        Block::Facts(facts),
        Block::Items(vec![
            "Lid off, no feed, wrap the sides and not the top; rinse a filter that stood for over two hours before it runs again".to_owned(),
        ]),
    ]
}

/// How long a power cut is borne, and how much to pour.
pub(super) fn power_cut(units: UnitSystem, power: &PowerSection) -> Fact {
    let label = "power cut";
    let fact = match (power.lasts_h, power.pour_l_h) {
        (Some(hours), Some(pour)) => {
            let poured = units.volume(Volume::from_litres(pour));
            Fact::new(
                label,
                format!("{} h", significant(hours, 2)),
                format!(
                    "of oxygen, one tank in ten less; then dip out and pour back {poured} an hour"
                ),
            )
        }
        (Some(_), None) => Fact::new(label, "no time", "oxygen is short by dusk as it is"),
        _ => Fact::new(label, "3 days", "and more before oxygen is at 3 mg/L"),
    };
    fact.by("upkeep.pouring")
}

/// Sand that is laid over an old bed at a time: common practice, no source.
const LAYER: Length = Length::from_m(0.005);

/// The answers that were asked for.
pub(super) fn asked(units: UnitSystem, found: &Upkeep) -> Vec<Block> {
    let answers = [
        found.stir.as_ref().map(|stir| stirred(units, stir)),
        found.away.as_ref().map(|away| absent(units, away)),
        found.moved.as_ref().map(|moved| carried(units, moved)),
        found.bucket.as_ref().map(|bucket| waiting(units, bucket)),
    ];
    answers.into_iter().flatten().flatten().collect()
}

fn answer(heading: String, facts: Vec<Fact>, steps: &[String]) -> Vec<Block> {
    vec![
        Block::Heading(heading),
        Block::Facts(facts),
        Block::Items(steps.to_vec()),
    ]
}

fn stirred(units: UnitSystem, stir: &StirSection) -> Vec<Block> {
    let pct = |value: f64| format!("{} %", significant(value, 2));
    let sessions = stir.sessions.map_or_else(
        || {
            Fact::new(
                "sessions",
                "none yet",
                "ammonia is over half its limit as it is: wait",
            )
        },
        |sessions| {
            let every = fixed(stir.session_every_d, 0);
            Fact::new(
                "sessions",
                sessions.to_string(),
                format!("one every {every} days"),
            )
        },
    );
    let facts = vec![
        Fact::new(
            "ammonia",
            format!("+{} mg N/L", ranged(stir.ammonia_rise_mg_l)),
            "if it is all done at once",
        )
        .by("upkeep.stir"),
        Fact::new("at once", pct(stir.safe_share_pct), "of the bed at most").by("upkeep.stir"),
        sessions.by("upkeep.stir"),
        Fact::new(
            "water",
            pct(stir.change_before_pct),
            format!(
                "drawn off before each; {} changed after",
                pct(stir.change_after_pct)
            ),
        )
        .by("upkeep.stir"),
        Fact::new(
            "clears in",
            format!("{} h", significant(stir.clears_h, 2)),
            "what is cloudy after two days is clay or bacteria",
        )
        .by("upkeep.settling"),
    ];
    let steps = [
        "No feed the day before; air on; test ammonia after 1 and after 24 hours",
        "Cut plants at the sand; one that has to come out whole: slice round its roots, lift it under a running siphon, cover the hole with sand at once",
    ];
    let layer = units.depth(LAYER);
    let sand = format!(
        "New sand over an old bed: rinsed, let down a tube, {layer} a day, a third of the floor at a time"
    );
    let steps: Vec<String> = steps.map(str::to_owned).into_iter().chain([sand]).collect();
    answer(
        format!("If {} of the bed is stirred", pct(stir.share_pct)),
        facts,
        &steps,
    )
}

fn absent(units: UnitSystem, away: &AwaySection) -> Vec<Block> {
    let falls = units.depth(Length::from_cm(away.level_falls_cm));
    let facts = vec![
        Fact::new(
            "water gone",
            units.volume(Volume::from_litres(away.top_up_l)),
            format!(
                "the level falls by {falls}, hardness is {} times what it was",
                significant(away.hardness_factor, 3)
            ),
        )
        .by("upkeep.away"),
        Fact::new(
            "lamp",
            format!("{} h", significant(away.lamp_hours, 2)),
            "a day, on a timer",
        )
        .by("upkeep.away"),
        Fact::new(
            "helper",
            if away.needs_helper { "yes" } else { "no" },
            "grown fish bear 14 days without feed, shrimp and snails longer, fry none",
        )
        .by("upkeep.away"),
    ];
    let steps = [
        format!("Three days before: test, change water, thin floaters to half their usual cover, top up; heater and intake lie under the level that is left, {falls} down"),
        "Nothing new in the two weeks before; portions of feed packed by the day, if somebody feeds".to_owned(),
        "Back home: top up over two days with soft water, then feed little".to_owned(),
    ];
    answer(
        format!("If nobody is there for {} days", significant(away.days, 3)),
        facts,
        &steps,
    )
}

fn carried(units: UnitSystem, moved: &MoveSection) -> Vec<Block> {
    let weight = units.mass(Mass::from_kg(moved.carried_kg));
    let kept = units.volume(Volume::from_litres(moved.water_kept_l));
    let bed = if moved.bed_out {
        "too heavy or too long to carry with its bed: take the bed out, damp, in buckets"
    } else {
        "with its wet bed, drained"
    };
    let facts = vec![
        Fact::new("carried", weight, bed).by("upkeep.move"),
        Fact::new(
            "water kept",
            kept,
            "in lidded buckets, none filled to the rim",
        )
        .by("upkeep.move"),
        Fact::new(
            "after",
            format!("{} mg N/L", ranged(moved.ammonia_peak_mg_l)),
            format!(
                "ammonia at its highest, nitrite {} mg NO2/L: test on days 1, 3 and 7",
                ranged(moved.nitrite_peak_mg_l)
            ),
        )
        .by("upkeep.move"),
    ];
    let steps = [
        "Heater off and unplugged 15 minutes before; draw the clear water off into buckets; catch the animals; plants into damp paper; sponge wet and with air",
        "Drain, carry level with two people, never full; the bed stays damp all the way",
        "Set down, fill over a plate, warm up, start the filter; animals last; feed from the second day on",
    ];
    answer(
        "If the tank moves".to_owned(),
        facts,
        &steps.map(str::to_owned),
    )
}

fn waiting(units: UnitSystem, bucket: &BucketSection) -> Vec<Block> {
    let water = units.volume(Volume::from_litres(bucket.water_l));
    let fact = match bucket.lasts_h {
        Some(hours) => Fact::new(
            "oxygen lasts",
            format!("{} h", significant(hours, 2)),
            "for all animals, just caught, down to 4 mg/L",
        ),
        None => Fact::new("oxygen lasts", "not given", "the spec has no animals"),
    };
    answer(
        format!("If the animals wait in {water}"),
        vec![fact.by("upkeep.bucket")],
        &["Tank water, a lid against jumping, no feed; an air stone for longer".to_owned()],
    )
}
