//! What a keeper does against a flush never makes the start worse.
//!
//! Members are drawn at common points, and held to 0.04 in the odds and 0.02 mg N/L in the
//! median peaks. `LENTIC_LEVERS=full` takes 100 designs with 200 members.

use lentic::catalogue::soils;
use lentic::numerics::quantile::quantile;
use lentic::numerics::sobol::Sobol;
use lentic::source::Band;
use lentic::startup::{Draw, Inputs, ModelEventKind, Parameters, ensemble};
use lentic::units::{Mass, Share};

use crate::command;

const DAYS: u32 = 90;
const AMMONIA_MG_L: f64 = 0.5;
const NITRITE_MG_L: f64 = 0.1;
const ODDS_WITHIN: f64 = 0.04;
const PEAK_WITHIN_MG_L: f64 = 0.02;
/// Dry mass of a bunch of stems on a square metre of floor.
const BUNCH_G_M2: f64 = 17.6;

struct Start {
    inputs: Inputs,
    bands: Parameters<Band>,
}

/// Odds of staying quiet, and median peaks of ammonia and nitrite nitrogen.
#[derive(Debug, Clone, Copy)]
struct Outcome {
    odds: f64,
    ammonia: f64,
    nitrite: f64,
}

impl Start {
    fn of(spec: &str) -> Self {
        let design = lentic::spec::parse(spec).unwrap_or_else(|faults| panic!("{faults}\n{spec}"));
        Self {
            inputs: Inputs::of(&design),
            bands: Parameters::of(&design),
        }
    }

    fn outcome(&self, members: u32) -> Outcome {
        let draw = Draw { members, seed: 1 };
        let found = ensemble::members(&self.inputs, &self.bands, DAYS, draw, &|_| ());
        assert_eq!(found.len(), members as usize);
        let quiet = found.iter().filter(|member| {
            member.ammonia.value <= AMMONIA_MG_L && member.nitrite.value <= NITRITE_MG_L
        });
        let median = |mut peaks: Vec<f64>| {
            peaks.sort_by(f64::total_cmp);
            quantile(&peaks, 0.5).expect("members")
        };
        Outcome {
            odds: quiet.count() as f64 / f64::from(members),
            ammonia: median(found.iter().map(|member| member.ammonia.value).collect()),
            nitrite: median(found.iter().map(|member| member.nitrite.value).collect()),
        }
    }

    fn with(&self, pull: fn(&mut Inputs, &mut Parameters<Band>)) -> Self {
        let (mut inputs, mut bands) = (self.inputs.clone(), self.bands);
        pull(&mut inputs, &mut bands);
        Self { inputs, bands }
    }
}

type Lever = (&'static str, fn(&mut Inputs, &mut Parameters<Band>));

/// What makes a start no worse: common practice.
const LEVERS: &[Lever] = &[
    ("more floaters, thinned later", |inputs, bands| {
        let floor_m2 = inputs.floor.m2();
        let closed = bands.floating.closed_layer.typical * floor_m2;
        let cover = inputs.planting.cover.fraction() + inputs.planting.floating.g() / closed;
        let more = (0.6 - cover).clamp(0.0, 0.15);
        inputs.planting.floating = inputs.planting.floating + Mass::from_g(more * closed);
        inputs.floaters_above = inputs
            .floaters_above
            .map(|limit| Share::from_fraction(limit.fraction().max(cover + more)));
    }),
    ("more stems", |inputs, _| {
        let bunches = 2.0 * BUNCH_G_M2 * inputs.floor.m2();
        inputs.planting.fast = inputs.planting.fast + Mass::from_g(bunches);
    }),
    ("soaked once more", |_, bands| {
        let left = bands.central().soil.left_after_soaking(1);
        let soil = &mut bands.soil;
        soil.mineral_nitrogen = soil.mineral_nitrogen.scaled(left.ammonium);
        soil.pore_phosphate = soil.pore_phosphate.scaled(left.phosphate);
    }),
    ("thinner soil", |inputs, _| {
        inputs.soil_depth = inputs.soil_depth * 0.7;
    }),
    ("thicker cap", |inputs, _| {
        inputs.cap_depth = inputs.cap_depth * 1.4;
    }),
    ("finer cap", |_, bands| {
        bands.cap.effective_grain = bands.cap.effective_grain.scaled(0.5);
    }),
    ("light up to 10 h", |inputs, _| {
        inputs.light_hours = inputs.light_hours.max(10.0);
    }),
    ("later animals", |inputs, _| {
        for event in &mut inputs.events {
            if matches!(event.kind, ModelEventKind::Fed(_)) {
                event.day += 21.0;
            }
        }
    }),
];

fn is_full() -> bool {
    std::env::var("LENTIC_LEVERS").is_ok_and(|wish| wish == "full")
}

#[track_caller]
fn no_lever_harms(name: &str, start: &Start, members: u32) -> Vec<String> {
    let before = start.outcome(members);
    let mut harm = Vec::new();
    for (lever, pull) in LEVERS {
        let after = start.with(*pull).outcome(members);
        let worse = after.odds < before.odds - ODDS_WITHIN
            || after.ammonia > before.ammonia + PEAK_WITHIN_MG_L
            || after.nitrite > before.nitrite + PEAK_WITHIN_MG_L;
        if worse {
            harm.push(format!("{name}, {lever}: {before:?} to {after:?}"));
        }
    }
    harm
}

#[test]
fn no_lever_harms_a_demo_tank() {
    let members = if is_full() { 200 } else { 32 };
    let mut harm = Vec::new();
    for name in [
        "reading-room-cube",
        "first-tank",
        "hillside-60",
        "living-room-180",
    ] {
        let path = command::root().join(format!("demo-tanks/{name}.toml"));
        let spec = std::fs::read_to_string(path).expect("a demo tank");
        harm.extend(no_lever_harms(name, &Start::of(&spec), members));
    }
    assert!(harm.is_empty(), "{}", harm.join("\n"));
}

/// An ordinary tank by its place in a low-discrepancy sequence.
fn ordinary(place: u32) -> String {
    let points = Sobol::new(3);
    let between = |dimension: u32, low: f64, high: f64| {
        low + (high - low) * points.coordinate(place, dimension)
    };
    let soil = &soils()[place as usize % soils().len()].name;
    format!(
        "[tank]\nshape = \"box\"\nsize = \"60 x 30 x 36 cm\"\n\
         [soil]\nmaterial = \"{soil}\"\ndepth = \"{:.0} mm\"\n\
         [cap]\nmaterial = \"filter_sand\"\ndepth = \"{:.0} mm\"\n\
         [water]\ntemperature = \"{:.1} C\"\nph = {:.1}\nnitrate = \"5 mg/L\"\n\
         [light]\npar = \"{:.0} umol/m2/s\"\nhours = {:.1}\n\
         [[plants]]\nname = \"salvinia_natans\"\namount = \"{:.0} %\"\n\
         [[plants]]\nname = \"ludwigia_repens\"\namount = \"{:.0} stems\"\n",
        between(0, 15.0, 40.0),
        between(1, 20.0, 50.0),
        between(2, 21.0, 27.0),
        between(3, 6.8, 7.8),
        between(4, 40.0, 120.0),
        between(5, 8.0, 10.0),
        between(6, 5.0, 45.0),
        between(7, 5.0, 60.0),
    )
}

#[test]
fn no_lever_harms_an_ordinary_tank() {
    let (designs, members) = if is_full() { (100, 200) } else { (10, 32) };
    let mut harm = Vec::new();
    for place in 0..designs {
        let spec = ordinary(place);
        harm.extend(no_lever_harms(&spec, &Start::of(&spec), members));
    }
    assert!(harm.is_empty(), "{} cases\n{}", harm.len(), harm.join("\n"));
}
