//! A day and a night as a document.

use super::estimate::ranged;
use super::{finding, reason};
use crate::design::Design;
use crate::diagnosis::Aired;
use crate::finding::{Finding, Status};
use crate::night::HourBand;
use crate::night::limits::{DAWN_ACT_MG_L, DAWN_WATCH_MG_L};
use crate::plan::{
    AnimalsSection, Estimate, FlowSection, HeatSection, HourRow, LightSection, Night, NightSection,
    air_setting,
};
use crate::report::chart::{Across, Chart, LimitLine, Mark, Series};
use crate::report::document::{Block, Document, Fact};
use crate::units::show::significant;
use crate::units::{Concentration, Flow, Pressure, UnitSystem, Volume};

/// A night, verdict first.
pub fn night(design: &Design, night: &Night, findings: &[Finding]) -> Document {
    let units = design.draft().units;
    let status = findings.iter().map(|finding| finding.status).max();
    let mut blocks = vec![
        Block::Verdict(status.unwrap_or(Status::Ok), summary(design, night)),
        Block::Text(drawn_from(&night.section)),
        Block::Heading("Night".to_owned()),
        Block::Facts(night_facts(design.draft().units, &night.section)),
    ];
    blocks.extend(charts(design, &night.hours));
    blocks.extend(conditions(
        design,
        &night.flow,
        &night.light,
        &night.animals,
        &night.heat,
    ));
    blocks.extend(finding::findings(findings, units));
    blocks.extend(finding::cautions(&night.cautions));
    Document {
        title: night.name.clone(),
        reasons: reason::of(&blocks, findings),
        blocks,
    }
}

fn summary(design: &Design, night: &Night) -> String {
    let limit = limit_mg_l(design);
    let odds = if night.section.members == 0 {
        "in a typical tank"
    } else {
        "in nine tanks of ten"
    };
    let air = match night.section.air_needed_l_min {
        None => "no air pump keeps it there".to_owned(),
        Some(air) if air <= 0.0 => format!("the surface alone keeps it there {odds}"),
        Some(air) => {
            let setting = air_setting(Flow::from_l_min(air));
            let setting = design.draft().units.air_flow(setting);
            format!("{setting} of air keep it there {odds}")
        }
    };
    format!(
        "dawn oxygen on day {:.0} is {} mg/L, {} is wanted: {air}",
        night.section.day,
        ranged(night.section.dawn_oxygen_mg_l),
        significant(limit, 2)
    )
}

fn limit_mg_l(design: &Design) -> f64 {
    let goal = design.draft().goal.dawn_oxygen;
    goal.map_or(DAWN_WATCH_MG_L, Concentration::mg_l)
}

fn drawn_from(section: &NightSection) -> String {
    if section.members == 0 {
        "Central numbers alone, no band. Hours count from lights-on.".to_owned()
    } else {
        format!(
            "Typical values, 10 to 90 % of {} members (seed {}) in brackets. Hours count from lights-on.",
            section.members, section.seed
        )
    }
}

/// The facts on a night, as the plan shows them too.
pub(super) fn night_facts(units: UnitSystem, section: &NightSection) -> Vec<Fact> {
    let mut facts = vec![
        Fact::new(
            "dawn oxygen",
            format!("{} mg/L", ranged(section.dawn_oxygen_mg_l)),
            format!(
                "on day {:.0}, {} h after lights-on; {} at saturation",
                section.day,
                significant(section.dawn_hour.typical(), 2),
                significant(section.saturation_mg_l, 2)
            ),
        )
        .by("air.dawn"),
        Fact::new(
            "under 5 mg/L",
            format!("{} h", ranged(section.hours_under_5_mg_l)),
            format!(
                "a day; under 3 mg/L {} h",
                ranged(section.hours_under_3_mg_l)
            ),
        )
        .by("air.dawn"),
        air(units, section).by("air.needed"),
        Fact::new(
            "pH",
            format!("{} at dawn", significant(section.ph_dawn.typical(), 2)),
            format!(
                "{} at dusk; carbon dioxide {} and {} mg/L",
                significant(section.ph_dusk.typical(), 2),
                significant(section.co2_dawn_mg_l.typical(), 2),
                significant(section.co2_dusk_mg_l.typical(), 2)
            ),
        )
        .by("air.carbon"),
    ];
    let outage = match section.power_cut_h {
        Some(hours) => Fact::new(
            "power cut",
            format!("{} h", significant(hours, 2)),
            if section.members == 0 {
                "from dusk until oxygen is at 3 mg/L"
            } else {
                "from dusk until oxygen is at 3 mg/L, one tank in ten sooner"
            },
        ),
        None => Fact::new("power cut", "3 days", "and more before oxygen is at 3 mg/L"),
    };
    facts.push(outage.by("air.outage"));
    facts
}

fn air(units: UnitSystem, section: &NightSection) -> Fact {
    match section.air_needed_l_min {
        None => Fact::new(
            "air needed",
            "out of reach",
            "no air pump for tanks is enough",
        ),
        Some(air) if air <= 0.0 => Fact::new("air needed", "none", "surface exchange is enough"),
        Some(air) => {
            let setting = |l_min: f64| units.air_flow(air_setting(Flow::from_l_min(l_min)));
            let always = setting(air);
            let by_night = match section.air_needed_night_l_min.map(setting) {
                None => "day and night".to_owned(),
                Some(flow) if flow == always => "while the lamp is off".to_owned(),
                Some(flow) => format!("day and night, or {flow} while the lamp is off"),
            };
            let pressure = section.pump_pressure_kpa.map_or_else(String::new, |kpa| {
                let high = Pressure::from_kpa(kpa.band().high);
                format!("; the pump must exceed {}", units.pump_pressure(high))
            });
            Fact::new("air needed", always, format!("{by_night}{pressure}"))
        }
    }
}

/// Flow, light, animals and heat under one heading.
pub(super) fn conditions(
    design: &Design,
    flow: &FlowSection,
    light: &LightSection,
    animals: &AnimalsSection,
    heat: &HeatSection,
) -> [Block; 2] {
    let units = design.draft().units;
    let break_even = light.break_even_hours.map_or_else(String::new, |hours| {
        format!(
            "; plants below the surface just live on {} h",
            significant(hours, 2)
        )
    });
    let facts = vec![
        Fact::new(
            "flow",
            format!("{} cm/s", ranged(flow.velocity_cm_s)),
            format!(
                "turned over {} times an hour; plants take {} % of what they would in fast water",
                significant(flow.turnover_per_h.typical(), 2),
                significant(flow.uptake_pct.typical(), 2)
            ),
        )
        .by("flow.slack"),
        Fact::new(
            "light",
            format!("{} umol/m2/s", ranged(light.par_mid_umol)),
            format!(
                "half way down, {} mol/m2 a day{break_even}",
                ranged(light.daily_mol_m2)
            ),
        )
        .by("light.lamp"),
        animals_fact(design, animals).by("animals.load"),
        heat_fact(units, heat).by("heat.balance"),
        evaporation(units, heat).by("heat.balance"),
    ];
    [
        Block::Heading("Flow, light, animals, heat".to_owned()),
        Block::Facts(facts),
    ]
}

fn animals_fact(design: &Design, animals: &AnimalsSection) -> Fact {
    let examples = animals.examples.iter();
    let carried: Vec<String> = examples
        .filter(|example| example.count > 0)
        .map(|example| example.animal.counted(example.count))
        .collect();
    let carried = if carried.is_empty() {
        "not one of any kind is carried".to_owned()
    } else {
        format!("of one kind alone it carries {}", carried.join(", or "))
    };
    let by_oxygen = animals.carried_by_oxygen_g.typical() < animals.carried_by_nitrogen_g;
    let limit = if animals.unfed {
        "plants set no limit, as nothing is fed"
    } else if by_oxygen {
        "oxygen at dawn sets the limit, or what is usually kept"
    } else {
        "what plants take sets the limit, or what is usually kept"
    };
    let planned: Vec<String> = (design.draft().animals.iter())
        .map(|stock| stock.animal.counted(stock.count))
        .collect();
    let planned = if planned.is_empty() {
        "none".to_owned()
    } else {
        planned.join(", ")
    };
    Fact::new("animals", planned, format!("{carried}; {limit}"))
}

fn heat_fact(units: UnitSystem, heat: &HeatSection) -> Fact {
    let cost = heat.cost_per_year.map_or_else(String::new, |cost| {
        format!(", about {} by the tariff", significant(cost, 2))
    });
    let fall = match units {
        UnitSystem::Metric => "4 C",
        UnitSystem::Us => "7 F",
    };
    let cools = heat.cools_4_k_h.map_or_else(String::new, |hours| {
        format!(
            "; without power {fall} colder in {} h",
            significant(hours, 2)
        )
    });
    Fact::new(
        "heater",
        format!("{} W", significant(heat.heater_w, 2)),
        format!(
            "{} kWh a year{cost}{cools}",
            significant(heat.kwh_per_year, 2)
        ),
    )
}

/// What leaves the water, or, below zero, settles on it.
fn evaporation(units: UnitSystem, heat: &HeatSection) -> Fact {
    if heat.evaporation_l_per_week < 0.0 {
        return Fact::new(
            "condensation",
            units.volume(Volume::from_litres(-heat.evaporation_l_per_week)),
            "a week settles from the damp room on the colder water; nothing to top up",
        );
    }
    Fact::new(
        "evaporation",
        units.volume(Volume::from_litres(heat.evaporation_l_per_week)),
        "a week; top up with soft water, or hardness creeps up",
    )
}

/// Oxygen and carbon dioxide over the hours of a day.
pub(super) fn charts(design: &Design, hours: &[HourRow]) -> [Block; 2] {
    let carbon_dioxide = chart("carbon dioxide", design, hours, |row| row.co2_mg_l);
    [oxygen(design, hours), carbon_dioxide].map(Block::Chart)
}

/// Oxygen with its limits.
fn oxygen(design: &Design, hours: &[HourRow]) -> Chart {
    let limits = [("wanted", limit_mg_l(design)), ("act under", DAWN_ACT_MG_L)];
    Chart {
        limits: limits
            .map(|(name, value)| LimitLine {
                name: name.to_owned(),
                value,
            })
            .to_vec(),
        ..chart("oxygen", design, hours, |row| row.oxygen_mg_l)
    }
}

/// Oxygen over a day and night as the tank stands, and with the air that is advised.
pub(super) fn aired(design: &Design, aired: &Aired) -> Chart {
    let line = |name: &str, hours: &[HourBand]| Series {
        name: name.to_owned(),
        line: hours
            .iter()
            .map(|hour| (hour.hour, hour.oxygen_mg_l))
            .collect(),
    };
    let flow = design.draft().units.air_flow(aired.flow);
    let lamp_off = design.draft().light.hours;
    let end = aired.as_it_is.last().map_or(lamp_off, |hour| hour.hour);
    Chart {
        title: format!("oxygen, mg/L, as it is and with {flow} of air"),
        series: vec![
            line("nothing done", &aired.as_it_is),
            line("with air", &aired.with_air),
        ],
        dark: vec![[lamp_off.min(end), end]],
        ..oxygen(design, &[])
    }
}

fn chart(name: &str, design: &Design, hours: &[HourRow], value: fn(&HourRow) -> Estimate) -> Chart {
    let line = hours.iter();
    let lamp_off = design.draft().light.hours;
    let end = hours.last().map_or(lamp_off, |row| row.hour);
    Chart {
        title: format!("{name}, mg/L"),
        across: Across::Hours,
        series: vec![Series {
            name: name.to_owned(),
            line: line.map(|row| (row.hour, value(row).band())).collect(),
        }],
        marks: vec![Mark {
            at: lamp_off,
            name: "lamp off".to_owned(),
        }],
        dark: vec![[lamp_off.min(end), end]],
        ..Chart::default()
    }
}
