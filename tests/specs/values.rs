//! What is read is what was written.

use lentic::catalogue::{self, Animal, Portion, Sign};
use lentic::design::{
    Amount, BagSize, Disinfectant, Dosed, Draft, DutyHours, EventKind, FlowDevice, Incident,
    LightLevel, Looked, Material, Rim,
};
use lentic::geometry::{LayerDepth, Shape};
use lentic::plants::light::LightClass;
use lentic::source::Band;
use lentic::spec;
use lentic::startup::Parameters;
use lentic::units::{Analyte, Duration, Length, Mass, PhotonFlux, Quantity, Share, Volume};
use lentic::water::salt::POTASSIUM_NITRATE;

use crate::base;

fn draft(name: &str) -> Draft {
    spec::parse(&base::good(name))
        .expect("a design")
        .into_draft()
}

#[track_caller]
fn near(value: f64, expected: f64) {
    assert!(
        (value - expected).abs() <= 1e-9 * expected.abs().max(1.0),
        "{value}, not {expected}"
    );
}

#[test]
fn the_vessel_is_as_written() {
    let tank = draft("full.toml").tank;
    let Shape::Box(size) = tank.shape else {
        panic!("{:?}", tank.shape)
    };
    for (length, cm) in [(size.length, 60.0), (size.width, 30.0), (size.height, 36.0)] {
        near(length.cm(), cm);
    }
    near(tank.wall.mm(), 6.0);
    near(tank.bottom.mm(), 6.0);
    near(tank.freeboard.mm(), 30.0);
    near(tank.stand.kg(), 12.0);
    assert!(tank.outside && tank.lid);
    assert_eq!((tank.material, tank.rim), (Material::Glass, Rim::Braced));
}

#[test]
fn soil_and_cap_are_as_written() {
    let full = draft("full.toml");
    assert_eq!(full.soil.material.name, "organic_potting_mix");
    assert_eq!(full.soil.soaked, 2);
    let own = full.soil.properties;
    near(own.dry_bulk_density.expect("given").kg_m3(), 130.0);
    near(own.porosity.expect("given").fraction(), 0.88);
    near(own.total_nitrogen.expect("given").g_kg(), 9.0);
    near(own.mineral_nitrogen.expect("given").g_kg(), 0.3);
    near(own.organic_matter.expect("given").percent(), 60.0);
    near(own.ammonium_kd.expect("given").l_kg(), 2.0);
    assert_eq!(full.cap.material.name, "filter_sand");
    let LayerDepth::Uniform(depth) = full.cap.depth else {
        panic!("{:?}", full.cap.depth)
    };
    near(depth.mm(), 38.1);
    let grading = full.cap.grading;
    let sizes = [grading.d10, grading.d15, grading.d50, grading.d85];
    for (size, mm) in sizes.into_iter().zip([0.48, 0.50, 0.65, 0.90]) {
        near(size.expect("given").mm(), mm);
    }
    near(full.cap.dry_bulk_density.expect("given").kg_m3(), 1600.0);
    near(full.cap.porosity.expect("given").fraction(), 0.40);
    assert_eq!(full.hardscape[0].material.name, "granite");
    near(full.hardscape[0].mass.kg(), 2.0);
}

#[test]
fn bags_hold_volumes_or_masses() {
    let full = draft("full.toml");
    let BagSize::Volume(first) = full.soil.bags[0].size else {
        panic!()
    };
    near(first.litres(), 10.0);
    assert_eq!(full.soil.bags[0].price, Some(6.5));
    let BagSize::Volume(second) = full.soil.bags[1].size else {
        panic!()
    };
    // A US dry quart is 67.200625 cubic inches of 16.387064 mL.
    near(second.litres(), 8.0 * 67.200_625 * 0.016_387_064);
    assert_eq!(full.soil.bags[1].price, None);
    let BagSize::Mass(sack) = full.cap.bags[0].size else {
        panic!()
    };
    near(sack.kg(), 22.679_618_5);
}

#[test]
fn a_slope_keeps_its_edges() {
    let LayerDepth::AllWalls {
        back,
        front,
        left,
        right,
    } = draft("sloped.toml").soil.depth
    else {
        panic!()
    };
    let edges = [back, front, left, right].map(Length::mm);
    for (edge, mm) in edges.into_iter().zip([40.0, 20.0, 35.0, 25.0]) {
        near(edge, mm);
    }
    let sloped = |depth: &str| {
        let text =
            base::good("minimal.toml").replace("depth = \"25 mm\"", &format!("depth = {depth}"));
        spec::parse(&text)
            .expect("a design")
            .into_draft()
            .soil
            .depth
    };
    let LayerDepth::BackToFront { back, front } = sloped("{ front = \"1 cm\", back = \"3 cm\" }")
    else {
        panic!()
    };
    assert!(back > front);
    let LayerDepth::LeftToRight { left, right } = sloped("{ left = \"3 cm\", right = \"1 cm\" }")
    else {
        panic!()
    };
    assert!(left > right);
}

#[test]
fn amounts_are_read_in_every_form() {
    let amount = |text: &str| {
        let plant = "[[plants]]\nname = \"ludwigia_repens\"\n";
        let text = format!("{}{plant}amount = \"{text}\"\n", base::good("minimal.toml"));
        spec::parse_draft(&text, "tank").map(|draft| draft.plants[0].amount)
    };
    for (text, count, portion) in [
        ("15 stems", 15.0, Portion::Stem),
        ("1 stem", 1.0, Portion::Stem),
        ("3 bunches", 3.0, Portion::Bunch),
        ("2 pots", 2.0, Portion::Pot),
        ("1 cup", 1.0, Portion::Cup),
        ("2 handfuls", 2.0, Portion::Handful),
        ("4 pieces", 4.0, Portion::Piece),
        ("4 plants", 4.0, Portion::Piece),
        ("1/2 Pot", 0.5, Portion::Pot),
    ] {
        assert_eq!(amount(text), Ok(Amount::Portions(count, portion)), "{text}");
    }
    let Ok(Amount::Cover(cover)) = amount("30%") else {
        panic!()
    };
    near(cover.fraction(), 0.3);
    let Ok(Amount::Fresh(mass)) = amount("12 g") else {
        panic!()
    };
    assert_eq!(mass, Mass::from_g(12.0));
    for refused in [
        "15",
        "stems",
        "-3 stems",
        "0 pots",
        "12 ml",
        "101 %",
        "1e999 stems",
        "1,5 pots",
        "",
    ] {
        assert!(amount(refused).is_err(), "{refused}");
    }
}

#[test]
fn the_water_is_as_written() {
    let water = draft("full.toml").water;
    near(water.temperature.celsius(), (75.0 - 32.0) / 1.8);
    near(water.ph, 7.4);
    // A German degree is 10 mg/L of CaO; CaCO3 weighs 100.0869, CaO 56.0774.
    assert!((water.alkalinity.caco3_mg_l() - 4.0 * 17.848).abs() < 0.01);
    assert!((water.hardness.caco3_mg_l() - 6.0 * 17.848).abs() < 0.01);
    // 0.1 mg/L of NH4, whose nitrogen is 14.007 of 18.039.
    assert!((water.ammonia.mg_l() - 0.1 * 14.007 / 18.039).abs() < 1e-5);
    near(water.nitrite.mg_l(), 0.05);
    near(water.nitrate.mg_l(), 5.0);
    near(water.phosphate.expect("a value").mg_l(), 0.5);
    near(water.potassium.expect("a value").mg_l(), 2.0);
    near(water.magnesium.expect("a value").mg_l(), 8.0);
    near(water.iron.expect("a value").mg_l(), 0.05);
    near(water.conductivity.expect("a value").us_cm(), 350.0);
    assert_eq!(water.disinfectant, Some(Disinfectant::Chloramine));
    near(water.chlorine.expect("a value").mg_l(), 0.5);
    near(water.cold.expect("a value").celsius(), 12.0);
    near(water.hot.expect("a value").celsius(), 60.0);
    near(water.top_up.softened.percent(), 50.0);
    near(water.softened.hardness.dgh(), 0.5);
    near(water.softened.alkalinity.dkh(), 0.2);
    near(water.softened.nitrate.mg_l(), 1.0);
    near(water.goal.hardness.expect("a value").dgh(), 4.0);
    near(water.goal.alkalinity.expect("a value").dkh(), 3.0);
    let label = draft("full.toml").conditioner.label.expect("given");
    near(label.dose.ml(), 5.0);
    near(label.per.litres(), 40.0);
    let change = water.change.expect("given");
    near(change.share.percent(), 25.0);
    near(change.every.days(), 7.0);
    near(change.from, 7.0);
    near(change.until, 28.0);
}

#[test]
fn lamp_air_and_room_are_as_written() {
    let full = draft("full.toml");
    let LightLevel::Par(par) = full.light.level else {
        panic!()
    };
    near(par.umol_m2_s(), 60.0);
    near(full.light.hours, 8.0);
    assert_eq!(
        (full.air.device, full.air.hours),
        (FlowDevice::AirStone, DutyHours::Night)
    );
    near(full.air.flow.l_min(), 0.5);
    near(full.air.depth.cm(), 20.0);
    near(full.room.temperature.celsius(), 20.0);
    near(full.room.humidity.percent(), 50.0);
    near(full.room.altitude.m(), 100.0);
    assert_eq!(full.room.tariff, Some(0.30));

    let LightLevel::Lumens { flux, height } = draft("sloped.toml").light.level else {
        panic!()
    };
    near(flux.lumens(), 1200.0);
    near(height.cm(), 20.0);
    let column = draft("cylinder.toml");
    assert_eq!(column.light.level, LightLevel::Class(LightClass::High));
    assert_eq!(
        (column.air.device, column.air.hours),
        (FlowDevice::Pump, DutyHours::Always)
    );
    near(column.air.flow.l_h(), 200.0);
}

#[test]
fn what_lives_there_is_as_written() {
    let full = draft("full.toml");
    assert_eq!(full.plants[0].plant.name, "lemna_minor");
    near(full.plants[1].emergent.percent(), 10.0);
    assert_eq!(full.plants[1].price, Some(0.9));
    assert_eq!(full.animals[0].animal.name, "small_shrimp");
    assert_eq!(full.animals[0].count, 10);
    near(full.animals[0].from_day, 42.0);
    near(full.feed.mass_per_day.mg(), 50.0);
    near(full.feed.protein.percent(), 45.0);
    near(full.harvest.floaters_above.percent(), 50.0);
    near(full.harvest.stems_above.g_m2(), 150.0);
    let taken = full.harvest.taken[0];
    near(taken.day, 60.0);
    assert_eq!(taken.floaters.map(|mass| mass.g().round()), Some(9.0));
    assert_eq!(taken.stems.map(|mass| mass.g().round()), Some(12.0));
}

#[test]
fn events_are_as_written() {
    let events = draft("full.toml").events;
    let days: Vec<f64> = events.iter().map(|event| event.day).collect();
    assert_eq!(days[..5], [21.0, 22.5, 23.0, 24.0, 25.0]);
    let EventKind::CapAdded(added) = &events[0].kind else {
        panic!()
    };
    near(added.mm(), 10.0);
    let EventKind::WaterChange(share) = &events[1].kind else {
        panic!()
    };
    near(share.percent(), 50.0);
    let EventKind::Disturbed(share) = &events[2].kind else {
        panic!()
    };
    near(share.percent(), 10.0);
    let EventKind::PlantsAdded(added) = &events[3].kind else {
        panic!()
    };
    assert_eq!(added.len(), 2);
    assert_eq!(added[1].amount, Amount::Portions(2.0, Portion::Bunch));
    let EventKind::PlantsRemoved(removed) = &events[4].kind else {
        panic!()
    };
    assert_eq!(removed[0].amount, Amount::Portions(3.0, Portion::Stem));
    let small_fish = catalogue::find::<Animal>("small_fish").expect("a row");
    let incidents = [
        Incident::Medicine("copper".to_owned()),
        Incident::FilterWashed,
        Incident::LampChanged,
        Incident::AnimalsAdded(vec![(small_fish, 4)]),
        Incident::Sprayed,
        Incident::GasAdded,
    ];
    let dosed = Dosed {
        salt: &POTASSIUM_NITRATE,
        mass: Mass::parse("0.2 g").expect("a mass"),
        purity: Share::parse("98 %").expect("a share"),
    };
    let span = |text| Duration::parse(text).expect("a span");
    let followed = [
        EventKind::Dosed(dosed),
        EventKind::Fed(Mass::parse("200 mg").expect("a mass")),
        EventKind::ToppedUp(Volume::parse("5 L").expect("a volume")),
        EventKind::Away(span("14 d")),
        EventKind::Incident(Incident::Off(span("6 h"))),
        EventKind::Drained(Share::parse("50 %").expect("a share")),
    ];
    let kinds = events[5..].iter().map(|event| event.kind.clone());
    let expected = incidents.map(EventKind::Incident).into_iter();
    assert!(kinds.eq(expected.chain(followed)));
}

#[test]
fn readings_signs_and_goal_are_as_written() {
    let full = draft("full.toml");
    let first = &full.readings[0];
    near(first.day, 21.0);
    near(first.ammonia.expect("given").mg_l(), 1.0);
    // 20 mg/L of nitrate nitrogen: NO3 weighs 62.004, N 14.007.
    assert!((first.nitrate.expect("given").mg_l() - 20.0 * 62.004 / 14.007).abs() < 0.01);
    near(first.ph.expect("given"), 7.2);
    near(first.oxygen.expect("given").mg_l(), 6.0);
    near(first.hardness.expect("given").dgh(), 8.0);
    near(first.alkalinity.expect("given").dkh(), 3.0);
    near(first.conductivity.expect("given").us_cm(), 420.0);
    near(first.potassium.expect("given").mg_l(), 5.0);
    near(first.iron.expect("given").mg_l(), 0.05);
    // From 6 March to 3 April: 25 days of March and 3 of April.
    near(full.readings[1].day, 28.0);
    assert_eq!(full.readings[1].nitrite, None);
    // halfway between the two marks, which stand beside it
    near(full.readings[1].ammonia.expect("given").mg_l(), 0.375);
    let (of, low, high) = full.readings[1].between[0];
    assert_eq!(of, Analyte::Ammonia);
    near(low.mg_l(), 0.25);
    near(high.mg_l(), 0.5);
    assert_eq!((first.blank, full.readings[1].blank), (Some(true), None));
    assert_eq!(full.kit.nitrite, [0.0, 0.1, 0.3, 1.0]);
    let signs: Vec<&str> = full
        .signs
        .observed
        .iter()
        .map(|sign| sign.name.as_str())
        .collect();
    assert_eq!(signs, ["gasping_at_dawn", "white_haze"]);
    assert_eq!(full.signs.absent[0].name, "spots_on_animals");
    assert_eq!(full.signs.looked, Looked::Some);
    near(full.goal.probability.percent(), 80.0);
    near(full.goal.nitrite.expect("given").mg_l(), 0.33);
    near(full.goal.dawn_oxygen.expect("given").mg_l(), 5.0);
}

#[test]
fn a_sign_is_lacking_where_it_was_looked_for_and_only_there() {
    let lacks = |section: &str, sign: &str| {
        let text = base::good("minimal.toml") + "[signs]\n" + section;
        let draft = spec::parse(&text).expect("a design").into_draft();
        draft
            .signs
            .lacks(catalogue::find::<Sign>(sign).expect("a row"))
    };
    let all = "observed = [\"white haze\"]\n";
    assert!(lacks(all, "green_haze") && !lacks(all, "white_haze"));
    // few look for it, so that nothing is known where it is not written down
    assert!(!lacks(all, "roots_in_sand"));
    let some = "observed = [\"white haze\"]\nabsent = [\"craters\"]\nlooked = \"some\"\n";
    assert!(!lacks(some, "green_haze") && lacks(some, "craters"));
}

#[test]
fn a_sign_both_seen_and_absent_and_an_event_that_did_not_happen_are_refused() {
    for (text, words) in [
        (
            "[signs]\nobserved = [\"craters\"]\nabsent = [\"craters\"]\n",
            "a sign is seen or it is not",
        ),
        (
            "[[events]]\nday = 3\nsprayed = false\n",
            "an event is something that happened",
        ),
    ] {
        let faults = spec::parse(&(base::good("minimal.toml") + text)).expect_err("a fault");
        assert!(faults.to_string().contains(words), "{faults}");
    }
}

#[test]
fn a_sign_named_twice_counts_once() {
    let text =
        base::good("minimal.toml") + "[signs]\nobserved = [\"white haze\", \"white_haze\"]\n";
    let draft = spec::parse(&text).expect("a design").into_draft();
    assert_eq!(draft.signs.observed.len(), 1);
}

#[test]
fn stated_phosphate_is_taken_even_when_it_is_none() {
    let tap = |line: &str| {
        let text = format!("{}[water]\n{line}\n", base::good("minimal.toml"));
        let design = spec::parse(&text).expect("a design");
        Parameters::<Band>::of(&design).tap.phosphate
    };
    assert_eq!(tap("phosphate = \"0 mg/L\""), Band::exact(0.0));
    // Phosphorus is 30.974 of the 94.971 of PO4.
    let stated = tap("phosphate = \"0.5 mg/L\"");
    assert!((stated.typical - 0.5 * 30.974 / 94.971).abs() < 1e-5);
    assert!((stated.high - stated.low).abs() < 1e-12);
    let unstated = tap("");
    assert!(unstated.low < unstated.typical && unstated.typical < unstated.high);
}

#[test]
fn a_size_alone_is_that_of_a_box() {
    let said = base::good("minimal.toml");
    let shape = "shape = \"box\"\n";
    assert!(said.contains(shape));
    let unsaid = spec::parse_draft(&said.replace(shape, ""), "any").expect("a draft");
    let said = spec::parse_draft(&said, "any").expect("a draft");
    assert_eq!(unsaid.tank, said.tank);
    assert_eq!(unsaid.assumed, said.assumed);
}

#[test]
fn a_lamp_may_be_dark() {
    let dark = "[light]\npar = \"0 umol/m2/s\"\nhours = 0\n";
    let draft = spec::parse_draft(&(base::good("minimal.toml") + dark), "any").expect("a draft");
    near(draft.light.hours, 0.0);
    assert_eq!(draft.light.level, LightLevel::Par(PhotonFlux::ZERO));
}

#[test]
fn a_depth_may_be_unknown_where_a_tank_is_only_checked() {
    let text = base::good("minimal.toml").replace("depth = \"25 mm\"", "depth = \"unknown\"");
    let design = spec::parse_standing(&text, "tank", None).expect("a tank that stands");
    assert!(!design.draft().says("soil.depth") && design.draft().says("cap.depth"));
    let faults = base::faults(&text).0;
    assert_eq!(faults.len(), 1);
    assert_eq!(faults[0].key, "soil.depth");
    assert!(faults[0].help.contains("ruler") && faults[0].help.contains("lentic check"));
}

#[test]
fn two_marks_and_the_marks_of_a_card_rise() {
    for (written, key) in [
        (
            "[[readings]]\nday = 9\nnitrite = \"0.5-0.25 mg/L\"\n",
            "readings[0].nitrite",
        ),
        ("[kit]\nnitrite = [0, 1, 0.5]\n", "kit.nitrite"),
        ("[kit]\nnitrite = [0]\n", "kit.nitrite"),
    ] {
        let faults = base::faults(&(base::good("minimal.toml") + written)).0;
        assert_eq!(faults.len(), 1, "{written}");
        assert_eq!(faults[0].key, key);
    }
}
