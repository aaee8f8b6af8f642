//! What the trade expects of a night: common practice, no source, but for named limits.

use lentic::design::{Design, DutyHours, FlowDevice};
use lentic::finding::Status;
use lentic::night::lighting::Lighting;
use lentic::night::upkeep::EnergyUse;
use lentic::night::{Ceiling, Ensemble, NightInputs, Outlook, Rates, outlook};
use lentic::plan::rule::air_dawn::{self, AirBreathers};
use lentic::plan::rule::flow_slack::{self, StillnessSign};
use lentic::plan::rule::{flow_strong, light_long, light_short};
use lentic::plan::{self, AnimalsSection, OnDay, Options, PlanPart, partial};
use lentic::source::Band;
use lentic::startup::{self, Inputs, Parameters, day_state, light_needs};
use lentic::state::DayState;
use lentic::state::movement::Movement;
use lentic::units::{Concentration, Flow, Length, Share};

use crate::diagnosis::demo;
use crate::spec::{CENTRAL, design, finding};

/// Members that are enough to judge a night.
const FEW: Options = Options {
    members: 32,
    seed: 1,
    days: 90,
};

/// A design as planted, on a day on which its animals are in.
fn stocked(design: &Design) -> NightInputs {
    let inputs = Inputs::of(design);
    let parameters = Parameters::<Band>::of(design).central();
    let run = startup::run(&inputs, &parameters, 1).expect("a run");
    let sample = run.samples.first().expect("a first day");
    let state = DayState {
        day: 40.0,
        ..day_state(&inputs, &parameters, sample)
    };
    NightInputs::of(design, &state, startup::surface_light(design))
}

fn night(inputs: &NightInputs) -> Outlook {
    let ensemble = Ensemble {
        members: 64,
        seed: 1,
    };
    outlook(inputs, &Rates::of(inputs), ensemble).expect("a night")
}

const SIXTY: &str = r#"
[tank]
shape = "box"
size = "60 x 30 x 36 cm"
[soil]
material = "loam_topsoil"
depth = "25 mm"
[cap]
material = "filter_sand"
depth = "40 mm"
[[plants]]
name = "lemna_minor"
amount = "30 %"
[[plants]]
name = "ludwigia_repens"
amount = "20 stems"
"#;

#[test]
fn a_still_covered_lidded_tank_gasps_at_dawn_and_air_and_thinning_mend_it() {
    let still = stocked(&demo("hexagon-stand"));
    assert!(still.ceiling == Ceiling::Lid && still.state.covered().percent() > 94.0);
    assert!(still.animal_mass().g() > 2.0);
    let before = night(&still).low_mg_l;
    assert!(before.typical < 4.0, "{before:?}");
    let mut mended = NightInputs {
        ceiling: Ceiling::Open,
        device: FlowDevice::AirStone,
        flow: Flow::from_l_min(0.4),
        device_depth: Length::from_cm(25.0),
        duty: DutyHours::Always,
        ..still.clone()
    };
    mended.state.cover = still.state.cover * (1.0 / 3.0);
    mended.state.floating = still.state.floating * (1.0 / 3.0);
    let after = night(&mended).low_mg_l;
    assert!(after.typical > before.typical + 1.0, "{before:?} {after:?}");
    let verdict = |oxygen| air_dawn::verdict(oxygen, AirBreathers::of(&still), None).status;
    assert!(verdict(before) >= Status::Watch && verdict(after) < verdict(before));
}

#[test]
fn a_lid_keeps_over_four_fifths_of_the_water_in() {
    let open = EnergyUse::of(&design(SIXTY));
    let lidded = SIXTY.replace("[soil]", "lid = true\n[soil]");
    let lidded = EnergyUse::of(&design(&lidded));
    assert!(lidded.evaporation_l_per_week < 0.2 * open.evaporation_l_per_week);
    assert!(lidded.heater < open.heater && open.heater.watts() > 20.0);
    assert!(lidded.cools_in > open.cools_in);
}

#[test]
fn a_strong_pump_under_floaters_is_flagged_and_no_device_is_slack() {
    let mut tank = stocked(&design(SIXTY));
    let slack = Movement::of(&tank.stirred());
    let submerged = tank.state.submerged();
    let status = |support| flow_slack::verdict(&slack, submerged, support).status;
    assert_eq!(status(StillnessSign::None), Status::Note);
    assert_eq!(status(StillnessSign::Found), Status::Watch);
    assert_eq!(
        flow_strong::verdict(&slack, tank.state.cover).status,
        Status::Ok
    );

    tank.device = FlowDevice::Pump;
    tank.flow = Flow::from_l_h(500.0);
    let strong = Movement::of(&tank.stirred());
    // 55 L of water less bed
    assert!(strong.turnover_per_h.typical > 9.0 && strong.turnover_per_h.typical < 13.0);
    assert_eq!(
        flow_strong::verdict(&strong, tank.state.cover).status,
        Status::Watch
    );
    assert_eq!(
        flow_strong::verdict(&strong, Share::ZERO).status,
        Status::Ok
    );
    assert_eq!(
        flow_slack::verdict(&strong, submerged, StillnessSign::Found).status,
        Status::Ok
    );
}

#[test]
fn still_water_halves_what_stirred_water_lets_plants_take() {
    let still = Movement::of(&stocked(&design(SIXTY)).stirred());
    let mut stirred = stocked(&design(SIXTY));
    stirred.device = FlowDevice::AirStone;
    stirred.flow = Flow::from_l_min(1.0);
    stirred.device_depth = Length::from_cm(25.0);
    let stirred = Movement::of(&stirred.stirred());
    let share = still.uptake_pct.typical / stirred.uptake_pct.typical;
    assert!((0.4..0.7).contains(&share), "{share}");
    // laminar layers inside beds of plants are millimetres thick, not centimetres
    assert!(still.film_mm.typical > 1.0 && still.film_mm.high < 9.1);
}

#[test]
fn fish_that_breathe_air_turn_a_gasp_into_a_note() {
    let betta = format!("{SIXTY}[[animals]]\nname = \"labyrinth_fish\"\ncount = 1\n");
    let breathers = |text: &str| AirBreathers::of(&stocked(&design(text)));
    assert_eq!(breathers(&betta), AirBreathers::All);
    assert_eq!(breathers(SIXTY), AirBreathers::NoAnimals);
    let mixed = format!("{betta}[[animals]]\nname = \"small_fish\"\ncount = 3\n");
    assert_eq!(breathers(&mixed), AirBreathers::Some);
    let gasp = Band::new(0.5, 1.5, 3.0);
    let status = |breathers| air_dawn::verdict(gasp, breathers, None).status;
    assert_eq!(status(AirBreathers::All), Status::Note);
    assert_eq!(status(AirBreathers::Some), Status::Act);
}

#[test]
fn dawn_is_judged_at_five_four_and_three_unless_the_keeper_asks_for_more() {
    let status = |typical: f64, goal: Option<f64>| {
        let oxygen = Band::new(typical - 1.0, typical, typical + 1.0);
        let goal = goal.map(Concentration::from_mg_l);
        air_dawn::verdict(oxygen, AirBreathers::None, goal).status
    };
    assert_eq!(status(6.1, None), Status::Ok);
    assert_eq!(status(4.9, None), Status::Note);
    assert_eq!(status(3.9, None), Status::Watch);
    assert_eq!(status(2.9, None), Status::Act);
    assert_eq!(status(5.5, Some(6.0)), Status::Watch);
    assert_eq!(status(4.5, Some(3.5)), Status::Ok);
}

#[test]
fn shade_is_short_of_light_and_a_good_lamp_is_not() {
    let text = format!("{SIXTY}[light]\npar = \"60 umol/m2/s\"\nhours = 9\n");
    let tank = design(&text);
    let parameters = Parameters::<Band>::of(&tank).central();
    let needs = light_needs(&Inputs::of(&tank), &parameters);
    let mut inputs = stocked(&tank);
    let judged = |inputs: &NightInputs| {
        let lighting = Lighting::of(inputs, Some(&needs.fast));
        light_short::verdict(&lighting).map(|verdict| verdict.status)
    };
    assert_eq!(judged(&inputs), Some(Status::Ok));
    assert!(Lighting::of(&inputs, None).break_even.is_none());
    inputs.state.cover = Share::from_fraction(2.0);
    assert_eq!(judged(&inputs), Some(Status::Act));
    inputs.state.cover = Share::from_percent(30.0);
    inputs.light = Band::new(5.0, 8.0, 60.0);
    assert_eq!(judged(&inputs), Some(Status::Watch));
    assert_eq!(light_long::verdict(11.0, 12.0).status, Status::Watch);
    assert_eq!(light_long::verdict(11.0, 0.0).status, Status::Ok);
    assert_eq!(light_long::verdict(9.0, 12.0).status, Status::Ok);
}

#[test]
fn what_is_not_known_is_not_counted() {
    let plain = EnergyUse::of(&design(SIXTY));
    assert_eq!((plain.lamp_kwh_per_year, plain.cost_per_year), (None, None));
    let text = format!(
        "{SIXTY}[light]\nlumens = 1500\nheight = \"15 cm\"\nhours = 8\n[room]\ntariff = 0.30\n"
    );
    let known = EnergyUse::of(&design(&text));
    // 15 W for 8 h is 43.8 kWh a year
    let lamp = known.lamp_kwh_per_year.expect("lumens are known");
    assert!((lamp - 43.8).abs() < 0.1, "{lamp}");
    let cost = known.cost_per_year.expect("the tariff is known");
    assert!((cost - 0.30 * (plain.kwh_per_year() + lamp)).abs() < 1e-9);
}

#[test]
fn too_many_fish_are_too_many_whatever_their_day() {
    for from_day in [42, 90, 91, 95, 400] {
        let fish =
            format!("[[animals]]\nname = \"small_fish\"\ncount = 150\nfrom_day = {from_day}\n");
        let tank = design(&format!("{SIXTY}{fish}"));
        let (night, findings) = plan::night(&tank, CENTRAL, OnDay::default()).expect("a night");
        // 150 fish of 0.35 g, the mass in the catalogue
        let mass_g = night.animals.mass_g;
        assert!((mass_g - 52.5).abs() < 1e-9, "day {from_day}: {mass_g}");
        let load = finding(&findings, "animals.load");
        assert_eq!(load.status, Status::Act, "day {from_day}");
        let dawn = &finding(&findings, "air.dawn").says;
        assert_eq!(dawn.contains("that come later"), from_day > 90, "{dawn}");
    }
}

/// What a tank carries.
fn animals(design: &Design) -> AnimalsSection {
    let night = partial(design, FEW, &[PlanPart::Night]).expect("a night");
    night.animals.expect("animals")
}

#[test]
fn no_more_animals_are_named_than_practice_keeps_however_much_air_there_is() {
    // one shrimp without feed: neither air nor nitrogen holds the number down
    let tank = design(&format!(
        "{SIXTY}[air]\ndevice = \"air_stone\"\nflow = \"2 L/min\"\ndepth = \"20 cm\"\n\
         [[animals]]\nname = \"small_shrimp\"\ncount = 1\n[feed]\nmass_per_day = \"0 g\"\n"
    ));
    let litres = tank.water().litres();
    let named = animals(&tank).examples;
    // 2 L to the gram of fish, large adults of 0.6 and 1 g; 1 L to a shrimp; 4 L to a snail
    for example in &named {
        let most = match example.name {
            "small_fish" => litres / 2.0 / 0.6,
            "small_catfish" => litres / 2.0,
            "small_shrimp" => litres,
            "surface_snail" => litres / 4.0,
            "nerite" => litres / 5.0,
            // males fight
            "labyrinth_fish" => 1.0,
            other => panic!("{other} is named"),
        };
        let count = f64::from(example.count);
        assert!(
            (count - most.floor()).abs() < 1e-9,
            "{count} {} in {litres} L",
            example.name
        );
    }
    assert_eq!(named.len(), 6);
}

#[test]
fn a_tank_without_plants_feeds_no_fish_through_them() {
    let bare = SIXTY.split("[[plants]]").next().expect("a start");
    let found = animals(&design(bare));
    assert!(found.carried_by_nitrogen_g.abs() < 1e-9, "{found:?}");
    assert!(found.examples.iter().all(|example| example.count == 0));
}
