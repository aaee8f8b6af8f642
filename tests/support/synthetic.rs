//! Tanks made up with a known cause: the truth is drawn from wider and shifted numbers
//! than the program reckons with, readings come off a kit's card with a fifth of error,
//! and one sign in ten is another one.

use std::fmt::Write as _;

use lentic::catalogue::{Sign, signs};
use lentic::design::Design;
use lentic::diagnosis::case::CaseHistory;
use lentic::diagnosis::cause::Cause;
use lentic::diagnosis::kit::{KIT_ERROR, Kit};
use lentic::diagnosis::measurement::{Measurand, Measurement, Reported};
use lentic::diagnosis::scenario::{dimensions, scenario};
use lentic::diagnosis::sign::{SUFFERING, WRITTEN_DOWN, seen};
use lentic::startup::Parameters;
use lentic::startup::ensemble::days_of;
use lentic::units::Concentration;

/// Chance that a spec says what its tank suffers from, where a spec can.
const TOLD: f64 = 0.8;
/// Chance that a sign written down is another one.
const WRONG_SIGN: f64 = 0.1;
/// Chance that a keeper looks for a sign that is not common.
const LOOKED_FOR: f64 = 0.3;
/// Chance that what is amiss is no cause of the list.
const OUTSIDE: f64 = 0.1;
/// Spread of the truth's numbers over the program's, in their logarithm.
const WIDER: f64 = 0.25;
/// How far the truth's draws go beyond the ends of the program's ranges.
const BEYOND: f64 = 0.15;

/// Causes that harm animals by ammonia and nitrite alone.
const HARM_BY_NITROGEN: [Cause; 10] = [
    Cause::CapBreached,
    Cause::CapThin,
    Cause::CapCoarse,
    Cause::SoilRich,
    Cause::FewPlants,
    Cause::SlowGrowersOnly,
    Cause::TankYoung,
    Cause::BacteriaSetBack,
    Cause::BedDisturbed,
    Cause::LeavesMelting,
];

/// Even and normal random numbers of a seed (`SplitMix64`, Steele, Lea and Flood 2014).
pub(crate) struct Dice(u64);

impl Dice {
    pub(crate) fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15).wrapping_add(1))
    }

    pub(crate) fn even(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut bits = self.0;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((bits ^ (bits >> 31)) >> 11) as f64 / (1u64 << 53) as f64
    }

    pub(crate) fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.even()).sum::<f64>() - 6.0
    }

    fn chance(&mut self, share: f64) -> bool {
        self.even() < share
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.even()
    }

    pub(crate) fn pick<'a, T>(&mut self, items: &'a [T]) -> &'a T {
        &items[(self.even() * items.len() as f64) as usize % items.len()]
    }
}

/// A made-up tank.
pub(crate) struct Synthetic {
    pub(crate) cause: Cause,
    /// The whole spec, with readings and signs.
    pub(crate) spec: String,
}

/// The tank of a seed.
pub(crate) fn tank(seed: u64) -> Synthetic {
    let mut dice = Dice::new(seed);
    let cause = if dice.chance(OUTSIDE) {
        Cause::NoneOfThese
    } else {
        *dice.pick(Cause::ALL)
    };
    let mut made = None;
    // A keeper who sees nothing asks nothing; a sound tank has nothing to see.
    for _ in 0..60 {
        let attempt = Attempt::new(&mut dice, cause);
        let enough = attempt.is_worth_asking();
        made = Some(attempt);
        if enough {
            break;
        }
    }
    Synthetic {
        cause,
        spec: made.expect("an attempt").spec,
    }
}

/// Whether a sign is one of something amiss, and none of plants and animals that do well.
fn is_trouble(sign: &Sign) -> bool {
    let sound = sign.odds.speaks_for.get(Cause::AsExpected.name());
    sound.is_none_or(|ratio| *ratio <= 1.0)
}

struct Attempt {
    cause: Cause,
    spec: String,
    over_limit: bool,
    /// Signs that something is amiss.
    troubles: usize,
}

impl Attempt {
    fn new(dice: &mut Dice, cause: Cause) -> Self {
        let (base, age_d) = base_spec(dice, cause);
        let design = lentic::spec::parse(&base).unwrap_or_else(|faults| {
            panic!("{cause:?}: {:?}\n{base}", faults.0.first());
        });
        let log = readings(dice, cause, &design, age_d);
        let observed = observed(dice, cause, &log);
        let mut spec = base;
        if cause == Cause::Heat && dice.chance(TOLD) {
            let warm = dice.between(29.0, 33.0);
            let _ = write!(
                spec,
                "\n[[readings]]\nday = {age_d}\ntemperature = \"{warm:.1} C\"\n"
            );
        }
        if cause == Cause::NightExchange && dice.chance(0.4) {
            let low = dice.between(1.5, 4.5);
            let _ = write!(
                spec,
                "\n[[readings]]\nday = {age_d}\noxygen = \"{low:.1} mg/L\"\n"
            );
        }
        for reading in &log {
            let _ = write!(
                spec,
                "\n[[readings]]\nday = {}\n{} = \"{} mg/L\"\n",
                reading.day,
                reading.of.word(),
                reading.value.number()
            );
        }
        if !observed.is_empty() {
            let names: Vec<&str> = observed.iter().map(|sign| sign.name.as_str()).collect();
            let _ = write!(spec, "\n[signs]\nobserved = {names:?}\n");
        }
        let limit = |of| match of {
            Measurand::Ammonia => 0.5,
            Measurand::Nitrite => 0.33,
            _ => 40.0,
        };
        Self {
            cause,
            over_limit: log.iter().any(|r| r.value.number() >= limit(r.of)),
            troubles: observed.iter().filter(|sign| is_trouble(sign)).count(),
            spec,
        }
    }

    fn is_worth_asking(&self) -> bool {
        match self.cause {
            Cause::AsExpected => !self.over_limit,
            _ => self.over_limit || self.troubles > 0,
        }
    }
}

/// A spec such as the keeper would write it, and the age of the tank.
#[allow(clippy::too_many_lines, reason = "a spec from top to bottom")]
fn base_spec(dice: &mut Dice, cause: Cause) -> (String, f64) {
    let told = |dice: &mut Dice, of: Cause, usual: f64| {
        dice.even() < if cause == of { TOLD } else { usual }
    };
    let young = match cause {
        Cause::TankYoung | Cause::LeavesMelting => 0.92,
        Cause::SoilRich | Cause::FewPlants | Cause::SlowGrowersOnly => 0.65,
        Cause::HungryWater | Cause::HardnessCreep => 0.05,
        Cause::BacteriaSetBack => 0.15,
        _ => 0.35,
    };
    let old = match cause {
        Cause::HungryWater | Cause::HardnessCreep => 0.75,
        Cause::SoilRich | Cause::FewPlants | Cause::TankYoung | Cause::LeavesMelting => 0.05,
        _ => 0.25,
    };
    let age_d = if dice.chance(young) {
        dice.between(12.0, 44.0)
    } else if dice.chance(old / (1.0 - young)) {
        dice.between(180.0, 300.0)
    } else {
        dice.between(46.0, 170.0)
    }
    .round();
    let rich = told(dice, Cause::SoilRich, 0.1) && cause == Cause::SoilRich && dice.chance(0.6);
    let soil = if rich {
        "compost_rich_mix"
    } else {
        *dice.pick(&[
            "loam_topsoil",
            "garden_soil",
            "sandy_loam",
            "organic_potting_mix",
        ])
    };
    let soil_mm = dice.between(18.0, 35.0);
    let coarse = told(dice, Cause::CapCoarse, 0.03);
    let fine = told(dice, Cause::CapFine, 0.03);
    let cap = if coarse {
        *dice.pick(&["gravel_4_8", "pea_gravel", "fine_gravel"])
    } else if fine {
        *dice.pick(&["silt", "masonry_sand", "play_sand"])
    } else {
        *dice.pick(&["filter_sand", "grit_20_40", "coarse_sand"])
    };
    let cap_mm = if told(dice, Cause::CapThin, 0.05) {
        dice.between(6.0, 18.0)
    } else {
        dice.between(30.0, 50.0)
    };
    let par = if told(dice, Cause::LightLong, 0.06) {
        dice.between(105.0, 160.0)
    } else {
        dice.between(40.0, 90.0)
    };
    let hours = dice.between(7.0, 9.9);
    let alkalinity = if told(dice, Cause::SoftWater, 0.05) {
        dice.between(0.5, 1.8)
    } else {
        dice.between(3.0, 9.0)
    };
    let hardness = if told(dice, Cause::HardnessCreep, 0.15) {
        dice.between(16.0, 24.0)
    } else {
        dice.between(3.0, 13.0)
    };
    let tap = if told(dice, Cause::TapWater, 0.08) && dice.chance(0.5) {
        dice.between(22.0, 45.0)
    } else {
        dice.between(1.0, 12.0)
    };
    let mut text = format!(
        "[tank]\nshape = \"box\"\nsize = \"{} x 30 x 36 cm\"\nlid = {}\n\n\
         [soil]\nmaterial = \"{soil}\"\ndepth = \"{soil_mm:.0} mm\"\n\n\
         [cap]\nmaterial = \"{cap}\"\ndepth = \"{cap_mm:.0} mm\"\n\n\
         [light]\npar = \"{par:.0} umol/m2/s\"\nhours = {hours:.1}\n\n\
         [water]\nalkalinity = \"{alkalinity:.1} dKH\"\nhardness = \"{hardness:.1} dGH\"\n\
         nitrate = \"{tap:.0} mg/L\"\n",
        dice.between(40.0, 90.0).round(),
        dice.chance(if cause == Cause::NightExchange {
            0.6
        } else {
            0.2
        }),
    );
    let changes = match cause {
        Cause::TapWater | Cause::Chlorine => 0.75,
        Cause::HardnessCreep => 0.12,
        _ => 0.4,
    };
    if dice.chance(changes) {
        let share = dice.between(20.0, 50.0);
        let _ = writeln!(
            text,
            "change = {{ share = \"{share:.0} %\", every = \"7 d\", from = 7, until = {age_d} }}"
        );
    }
    plants(dice, cause, &mut text);
    let still = match cause {
        Cause::StillWater | Cause::NightExchange => 0.9,
        Cause::BacteriaSetBack => 0.2,
        _ => 0.5,
    };
    if !dice.chance(still) {
        let device = *dice.pick(&["air_stone", "sponge_filter"]);
        let _ = write!(
            text,
            "\n[air]\ndevice = \"{device}\"\nflow = \"0.6 L/min\"\ndepth = \"20 cm\"\nhours = \"always\"\n"
        );
    } else if dice.chance(0.5) {
        text.push_str("\n[air]\ndevice = \"none\"\n");
    }
    animals(dice, cause, age_d, &mut text);
    came_in(dice, cause, age_d, &mut text);
    (text, age_d)
}

fn plants(dice: &mut Dice, cause: Cause, text: &mut String) {
    let mut plant = |name: &str, amount: String| {
        let _ = write!(
            text,
            "\n[[plants]]\nname = \"{name}\"\namount = \"{amount}\"\n"
        );
    };
    if cause == Cause::SlowGrowersOnly && dice.chance(0.9) {
        plant(
            "cryptocoryne_wendtii",
            format!("{:.0} pots", dice.between(4.0, 10.0)),
        );
        plant(
            "anubias_barteri",
            format!("{:.0} pieces", dice.between(2.0, 6.0)),
        );
        return;
    }
    let few = dice.even() < if cause == Cause::FewPlants { TOLD } else { 0.1 };
    if few {
        plant(
            "ludwigia_repens",
            format!("{:.0} stems", dice.between(3.0, 10.0)),
        );
        return;
    }
    let closed = dice.even()
        < if cause == Cause::ShadedOut {
            TOLD
        } else {
            0.05
        };
    let cover = if closed {
        dice.between(70.0, 95.0)
    } else {
        dice.between(25.0, 45.0)
    };
    let stems = if cause == Cause::NightExchange {
        dice.between(14.0, 24.0)
    } else {
        dice.between(6.0, 14.0)
    };
    plant("limnobium_laevigatum", format!("{cover:.0} %"));
    plant("hygrophila_polysperma", format!("{stems:.0} bunches"));
    plant(
        "cryptocoryne_wendtii",
        format!("{:.0} pots", dice.between(2.0, 6.0)),
    );
    if closed {
        text.push_str("\n[harvest]\nfloaters_above = \"100 %\"\n");
    }
}

/// What came into tank or room of late.
fn came_in(dice: &mut Dice, cause: Cause, age_d: f64, text: &mut String) {
    let share = if cause == Cause::NoneOfThese {
        0.5
    } else {
        0.04
    };
    if !dice.chance(share) {
        return;
    }
    let event = *dice.pick(&[
        "medicine = \"copper\"",
        "medicine = \"unknown\"",
        "sprayed = true",
        "animals_added = [{ name = \"small_fish\", count = 4 }]",
    ]);
    let day = (age_d - dice.between(0.0, 10.0)).max(0.0).floor();
    let _ = write!(text, "\n[[events]]\nday = {day}\n{event}\n");
}

fn animals(dice: &mut Dice, cause: Cause, age_d: f64, text: &mut String) {
    let stocked = match cause {
        Cause::Overfed | Cause::Diggers => 0.95,
        Cause::DeadMatter | Cause::NightExchange | Cause::BacteriaSetBack => 0.85,
        Cause::Chlorine => 0.75,
        Cause::NoneOfThese => 0.98,
        Cause::TankYoung => 0.25,
        _ => 0.5,
    };
    if !dice.chance(stocked) {
        return;
    }
    let from_day = (age_d * dice.between(0.3, 0.8)).round();
    let digs = dice.even() < if cause == Cause::Diggers { TOLD } else { 0.03 };
    let (name, count, mg) = if digs {
        ("digging_fish", dice.between(1.0, 3.0), 120.0)
    } else {
        let fish = if cause == Cause::NightExchange {
            dice.between(12.0, 30.0)
        } else {
            dice.between(5.0, 15.0)
        };
        ("small_fish", fish, 5.0)
    };
    let much = dice.even() < if cause == Cause::Overfed { 0.5 } else { 0.08 };
    let feed = count.round() * mg * if much { 4.0 } else { 1.0 };
    let _ = write!(
        text,
        "\n[[animals]]\nname = \"{name}\"\ncount = {count:.0}\nfrom_day = {from_day}\n\n\
         [feed]\nmass_per_day = \"{feed:.0} mg\"\nprotein = \"42 %\"\n"
    );
}

/// What a kit shows on some days of the true course.
fn readings(dice: &mut Dice, cause: Cause, design: &Design, age_d: f64) -> Vec<Measurement> {
    let last = Measurement {
        day: age_d,
        of: Measurand::Ph,
        value: Reported::Value(7.2),
    };
    let case = CaseHistory::of(design, &[last]).expect("a case");
    let place: Vec<f64> = (0..dimensions())
        .map(|_| dice.between(-BEYOND, 1.0 + BEYOND))
        .collect();
    let own = dimensions() - lentic::diagnosis::scenario::DRAWN;
    let within: Vec<f64> = place
        .iter()
        .enumerate()
        .map(|(dimension, at)| {
            if dimension < own {
                at.clamp(0.0, 1.0)
            } else {
                *at
            }
        })
        .collect();
    let mut tank = scenario(&case, cause, &within);
    tank.numbers = shifted(&tank.numbers, dice);
    let now = case.now_d();
    let days = days_of(&tank.inputs, &tank.numbers, now.ceil() as u32).expect("a true course");
    let rounds = 1 + (dice.even() * 3.0) as usize;
    let mut dates: Vec<f64> = (0..rounds)
        .map(|round| (age_d - 7.0 * round as f64).max(1.0))
        .collect();
    dates.dedup();
    let wrong = *dice.pick(&[Measurand::Ammonia, Measurand::Nitrite, Measurand::Nitrate]);
    let mut log = Vec::new();
    for day in dates.into_iter().rev() {
        let Some(sample) = days.get(case.model_day(day).round() as usize) else {
            continue;
        };
        for (of, nitrogen) in [
            (Measurand::Ammonia, sample.state.ammonia),
            (Measurand::Nitrite, sample.state.nitrite),
            (Measurand::Nitrate, sample.state.nitrate),
        ] {
            let kit = Kit::of(of).expect("a kit");
            let analyte = of.analyte().expect("a nutrient");
            let true_mg_l = analyte
                .from_element(Concentration::from_mg_l(nitrogen.max(0.0)))
                .mg_l();
            let shown = if cause == Cause::KitError && of == wrong {
                *dice.pick(kit.marks())
            } else {
                kit.mark(true_mg_l * (KIT_ERROR * dice.normal()).exp())
            };
            log.push(Measurement {
                day,
                of,
                value: Reported::Value(shown),
            });
        }
    }
    log
}

/// Numbers beyond the program's ranges: spread by a quarter, and shifted as a whole
/// towards faster soil, slower plants and later bacteria.
fn shifted(numbers: &Parameters<f64>, dice: &mut Dice) -> Parameters<f64> {
    let mut other = numbers.map(|value| value * (WIDER * dice.normal()).exp());
    other.soil.porosity = numbers.soil.porosity;
    other.cap.porosity = numbers.cap.porosity;
    other.floating.absorptance = numbers.floating.absorptance;
    other.floating.dead_share = numbers.floating.dead_share;
    other.water.leached_share = numbers.water.leached_share;
    other.water.dead_phosphorus_share = numbers.water.dead_phosphorus_share;
    other.water.feed_retained = numbers.water.feed_retained;
    other.nitrifiers.bed_share = numbers.nitrifiers.bed_share;
    other.nitrifiers.acid_ph = numbers.nitrifiers.acid_ph;
    other.cap.phosphate_passed = numbers.cap.phosphate_passed;
    other.fast.carbon_factor = numbers.fast.carbon_factor;
    other.slow.rooted_share = numbers.slow.rooted_share;
    other.fast.least_nitrogen = numbers.fast.least_nitrogen;
    other.fast.least_phosphorus = numbers.fast.least_phosphorus;
    other.floating.least_nitrogen = numbers.floating.least_nitrogen;
    other.floating.least_phosphorus = numbers.floating.least_phosphorus;
    other.lamp.level = numbers.lamp.level;
    other.tap = numbers.tap;
    other.soil.mineralisation *= 1.2;
    other.fast.growth *= 0.9;
    other.floating.growth *= 0.9;
    other.nitrifiers.ammonia_seed *= 0.6;
    other.nitrifiers.nitrite_seed *= 0.6;
    other.cap.enhancement *= 1.15;
    other.cap.oxidised_share = (numbers.cap.oxidised_share + 0.1 * dice.even()).clamp(0.0, 0.95);
    other
}

/// The signs that a keeper writes down, some of them wrong.
///
/// Where a cause harms animals by ammonia and nitrite alone, none suffer from water without.
fn observed(dice: &mut Dice, cause: Cause, log: &[Measurement]) -> Vec<&'static Sign> {
    let last = |of| log.iter().rfind(|read| read.of == of);
    let poison = [Measurand::Ammonia, Measurand::Nitrite].map(last);
    let is_clean = poison
        .iter()
        .flatten()
        .all(|read| read.value.number() < 0.2);
    let is_unharmed = is_clean && HARM_BY_NITROGEN.contains(&cause);
    let harms = |sign: &Sign| SUFFERING.contains(&sign.name.as_str());
    let mut observed: Vec<&'static Sign> = Vec::new();
    for sign in signs() {
        let share = seen(sign, cause);
        let odds = (share / (1.0 - share)).ln() + 0.4 * dice.normal();
        let share = WRITTEN_DOWN / (1.0 + (-odds).exp());
        let is_looked_for = sign.common || dice.chance(LOOKED_FOR);
        if !dice.chance(share) || !is_looked_for || is_unharmed && harms(sign) {
            continue;
        }
        let written = if dice.chance(WRONG_SIGN) {
            dice.pick(signs())
        } else {
            sign
        };
        if !observed.iter().any(|other| other.name == written.name) {
            observed.push(written);
        }
    }
    observed
}
