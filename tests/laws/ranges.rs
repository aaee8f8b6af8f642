//! Whatever a formula is used on outside its range is said.

use lentic::catalogue::Animal;
use lentic::design::{Design, Draft, FlowDevice};
use lentic::geometry::Shape;
use lentic::plan::range::{self, CheckedRange, RANGES};
use lentic::source::Band;
use lentic::units::size::Size;
use lentic::units::{Length, Share, Temperature};

/// A tank inside every range, with an air stone and one kind of animal.
const USUAL: &str = r#"
    [tank]
    shape = "box"
    size = "60 x 40 x 36 cm"
    [soil]
    material = "loam_topsoil"
    depth = "25 mm"
    [cap]
    material = "filter_sand"
    depth = "40 mm"
    [[plants]]
    name = "lemna_minor"
    amount = "30 %"
    [air]
    device = "air_stone"
    flow = "0.5 L/min"
    depth = "20 cm"
    [[animals]]
    name = "goldfish"
    count = 1
"#;

/// What a number of the riser hangs on: its bore is fixed, so that no water leaves the range.
const RISER: &str = "surface tension number of the riser";

fn usual() -> Draft {
    lentic::spec::parse(USUAL).unwrap().into_draft()
}

/// A box of a height with a square floor.
fn square(draft: &mut Draft, area_m2: f64, height_m: f64) {
    let side = Length::from_m(area_m2.sqrt());
    draft.tank.shape = Shape::Box(Size {
        length: side,
        width: side,
        height: Length::from_m(height_m),
    });
}

/// The usual tank with one input set.
fn with(input: &str, value: f64) -> Design {
    let mut draft = usual();
    match input {
        "water temperature" => draft.water.temperature = Temperature::from_celsius(value),
        "pH" => draft.water.ph = value,
        "inner volume" => square(&mut draft, value * 1e-3 / 0.36, 0.36),
        "water surface" => square(&mut draft, value, 0.36),
        "depth of the air stone" => {
            square(&mut draft, 0.24, 2.0);
            draft.air.depth = Length::from_m(value);
        }
        "altitude" => draft.room.altitude = Length::from_m(value),
        // the standard atmosphere, ISO 2533, turned about
        "air pressure" => {
            let metres = (1.0 - value.powf(1.0 / 5.255_88)) / 2.255_77e-5;
            draft.room.altitude = Length::from_m(metres);
        }
        "room temperature" => draft.room.temperature = Temperature::from_celsius(value),
        "room humidity" => draft.room.humidity = Share::from_percent(value),
        "body mass of an animal" => {
            let animal = Animal {
                mass_g: Band::exact(value),
                ..draft.animals[0].animal.clone()
            };
            draft.animals[0].animal = Box::leak(Box::new(animal));
        }
        other => panic!("no design is made for {other}"),
    }
    draft
        .check()
        .unwrap_or_else(|broken| panic!("{input} {value}: {broken:?}"))
}

/// Whether the plan's cautions say that an input lies outside a range.
fn is_said(design: &Design, input: &str) -> bool {
    let start = format!("Range: {input} ");
    range::cautions(design)
        .iter()
        .any(|caution| caution.says.starts_with(&start))
}

fn assert_left_just_outside(range: &CheckedRange) {
    let validity = range.validity;
    for (end, away) in [(validity.low, -1e-3), (validity.high, 1e-3)] {
        let scale = if end == 0.0 { validity.high } else { end };
        let outwards = away * scale.abs();
        let outside = with(validity.input, end + outwards);
        let out = range.left_by(&outside);
        assert_eq!(
            out.map(|out| out.validity),
            Some(validity),
            "{}",
            end + outwards
        );
        assert!(is_said(&outside, validity.input), "{validity:?}");
        let inside = with(validity.input, end - outwards);
        assert_eq!(range.left_by(&inside), None, "{validity:?}");
    }
}

#[test]
fn every_range_is_said_to_be_left_just_outside_and_not_just_inside() {
    let design = usual().check().unwrap();
    assert_eq!(range::cautions(&design), []);
    for range in RANGES.iter().filter(|range| range.validity.input != RISER) {
        assert!(
            !(range.given)(&design).is_empty(),
            "{:?} is not used",
            range.validity
        );
        assert_left_just_outside(range);
    }
}

#[test]
fn no_water_takes_the_riser_out_of_its_range() {
    let range = RANGES
        .iter()
        .find(|range| range.validity.input == RISER)
        .unwrap();
    for celsius in 0..=40 {
        let mut draft = usual();
        draft.air.device = FlowDevice::SpongeFilter;
        draft.water.temperature = Temperature::from_celsius(f64::from(celsius));
        let design = draft.check().unwrap();
        assert_eq!((range.given)(&design).len(), 1);
        assert_eq!(range.left_by(&design), None, "{celsius} C");
    }
}

#[test]
fn a_range_counts_where_its_formula_is_used() {
    let mut draft = usual();
    draft.air.device = FlowDevice::Pump;
    draft.air.depth = Length::from_mm(1.0);
    draft.water.temperature = Temperature::from_celsius(29.0);
    draft.animals.clear();
    let design = draft.check().unwrap();
    assert_eq!(range::cautions(&design), []);
    let mut draft = design.into_draft();
    draft.water.temperature = Temperature::from_celsius(31.5);
    let said = range::cautions(&draft.check().unwrap());
    let said: Vec<&str> = said.iter().map(|caution| caution.says.as_str()).collect();
    assert_eq!(
        said,
        ["Range: water temperature 31.5 C is outside 0 to 30 C: a guess there."]
    );
}
