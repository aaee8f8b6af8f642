//! A spec made of bytes: every byte decides something, so that random bytes are random
//! tanks and a byte changed is a tank changed a little.

use lentic::catalogue::{self, Group, Row};

/// Bytes spent one by one; zeros once there are none left.
struct Dice<'b> {
    bytes: std::slice::Iter<'b, u8>,
}

impl Dice<'_> {
    fn byte(&mut self) -> u8 {
        self.bytes.next().copied().unwrap_or(0)
    }

    /// Whether something is there: once in three.
    fn yes(&mut self) -> bool {
        self.byte() % 3 == 1
    }

    fn one_of<'a, T>(&mut self, choices: &'a [T]) -> &'a T {
        &choices[usize::from(self.byte()) % choices.len()]
    }

    /// A number between two, with one decimal.
    fn between(&mut self, low: f64, high: f64) -> f64 {
        let share = f64::from(self.byte()) / 255.0;
        ((low + share * (high - low)) * 10.0).round() / 10.0
    }

    fn row<R: Row>(&mut self) -> &'static R {
        self.one_of(R::all())
    }
}

/// A dimension in centimetres: its key, its least and its greatest value.
type Dimension = (&'static str, f64, f64);

/// Each shape with its dimensions.
const SHAPES: &[(&str, &[Dimension])] = &[
    (
        "box",
        &[
            ("length", 12.0, 200.0),
            ("width", 12.0, 80.0),
            ("height", 12.0, 80.0),
        ],
    ),
    (
        "cylinder",
        &[("diameter", 15.0, 90.0), ("height", 12.0, 80.0)],
    ),
    (
        "bow_front",
        &[
            ("length", 30.0, 150.0),
            ("width_end", 20.0, 40.0),
            ("width_middle", 41.0, 50.0),
            ("height", 20.0, 70.0),
        ],
    ),
    (
        "quarter_cylinder",
        &[("radius", 20.0, 90.0), ("height", 15.0, 70.0)],
    ),
    (
        "half_cylinder",
        &[("diameter", 20.0, 120.0), ("height", 15.0, 70.0)],
    ),
    (
        "cut_corner",
        &[
            ("length", 40.0, 90.0),
            ("width", 40.0, 90.0),
            ("cut_length", 5.0, 35.0),
            ("cut_width", 5.0, 35.0),
            ("height", 15.0, 70.0),
        ],
    ),
    (
        "trapezoid",
        &[
            ("front", 30.0, 120.0),
            ("back", 20.0, 120.0),
            ("width", 20.0, 60.0),
            ("height", 15.0, 70.0),
        ],
    ),
    (
        "bowl",
        &[
            ("diameter", 20.0, 60.0),
            ("base", 8.0, 18.0),
            ("mouth", 10.0, 19.0),
        ],
    ),
];

/// The spec that some bytes stand for; most such specs are designs.
pub(crate) fn spec(bytes: &[u8]) -> String {
    let mut dice = Dice {
        bytes: bytes.iter(),
    };
    let mut text = String::new();
    tank(&mut dice, &mut text);
    bed(&mut dice, &mut text);
    plants(&mut dice, &mut text);
    surroundings(&mut dice, &mut text);
    animals(&mut dice, &mut text);
    events(&mut dice, &mut text);
    text
}

fn push(text: &mut String, line: &str) {
    text.push_str(line);
    text.push('\n');
}

fn tank(dice: &mut Dice<'_>, text: &mut String) {
    let (shape, dimensions) = dice.one_of(SHAPES);
    push(text, &format!("[tank]\nshape = \"{shape}\""));
    for (name, low, high) in *dimensions {
        push(
            text,
            &format!("{name} = \"{} cm\"", dice.between(*low, *high)),
        );
    }
    if dice.yes() {
        push(
            text,
            &format!("freeboard = \"{} cm\"", dice.between(0.0, 6.0)),
        );
    }
    if dice.yes() {
        push(text, "lid = true");
    }
}

fn bed(dice: &mut Dice<'_>, text: &mut String) {
    let soil = &dice.row::<catalogue::Soil>().name;
    push(text, &format!("[soil]\nmaterial = \"{soil}\""));
    push(
        text,
        &format!("depth = \"{} mm\"", dice.between(1.0, 100.0)),
    );
    push(text, &format!("soaked = {}", dice.byte() % 4));
    if dice.yes() {
        push(
            text,
            "bags = [{ size = \"10 L\", price = 6.5 }, { size = \"20 L\", price = 11 }]",
        );
    }
    let cap = &dice.row::<catalogue::Cap>().name;
    push(text, &format!("[cap]\nmaterial = \"{cap}\""));
    if dice.yes() {
        let (back, front) = (dice.between(5.0, 90.0), dice.between(5.0, 90.0));
        push(
            text,
            &format!("depth = {{ back = \"{back} mm\", front = \"{front} mm\" }}"),
        );
    } else {
        push(
            text,
            &format!("depth = \"{} mm\"", dice.between(1.0, 120.0)),
        );
    }
    if dice.yes() {
        let stone = &dice.row::<catalogue::Stone>().name;
        let mass = dice.between(0.1, 9.0);
        push(
            text,
            &format!("[[hardscape]]\nmaterial = \"{stone}\"\nmass = \"{mass} kg\""),
        );
    }
}

fn plants(dice: &mut Dice<'_>, text: &mut String) {
    for _ in 0..dice.byte() % 5 {
        let plant = dice.row::<catalogue::Plant>();
        push(text, &format!("[[plants]]\nname = \"{}\"", plant.name));
        let cover = dice.between(
            0.1,
            if plant.group == Group::Floater {
                45.0
            } else {
                90.0
            },
        );
        if dice.yes() {
            push(text, &format!("amount = \"{cover} g\""));
        } else {
            push(text, &format!("amount = \"{cover} %\""));
        }
    }
}

fn surroundings(dice: &mut Dice<'_>, text: &mut String) {
    if dice.yes() {
        push(
            text,
            &format!("[water]\ntemperature = \"{} C\"", dice.between(0.0, 40.0)),
        );
        push(text, &format!("ph = {:?}", dice.between(4.0, 10.0)));
        push(
            text,
            &format!("alkalinity = \"{} dKH\"", dice.between(0.0, 20.0)),
        );
        push(
            text,
            &format!("nitrate = \"{} mg/L\"", dice.between(0.0, 100.0)),
        );
    }
    if dice.yes() {
        let (par, hours) = (dice.between(0.1, 400.0), dice.between(0.0, 24.0));
        push(
            text,
            &format!("[light]\npar = \"{par} umol/m2/s\"\nhours = {hours:?}"),
        );
    }
    if dice.yes() {
        let hours = dice.one_of(&["always", "night", "day"]);
        let flow = dice.between(0.1, 9.0);
        push(
            text,
            &format!("[air]\ndevice = \"air_stone\"\nflow = \"{flow} L/min\"\nhours = \"{hours}\""),
        );
    }
    if dice.yes() {
        push(
            text,
            &format!("[room]\ntemperature = \"{} C\"", dice.between(-10.0, 40.0)),
        );
        push(
            text,
            &format!("altitude = \"{} m\"", dice.between(0.0, 4000.0)),
        );
    }
}

fn animals(dice: &mut Dice<'_>, text: &mut String) {
    for _ in 0..dice.byte() % 3 {
        let animal = &dice.row::<catalogue::Animal>().name;
        let count = dice.byte();
        push(
            text,
            &format!("[[animals]]\nname = \"{animal}\"\ncount = {count}"),
        );
        push(text, &format!("from_day = {}", dice.byte()));
    }
}

fn events(dice: &mut Dice<'_>, text: &mut String) {
    for _ in 0..dice.byte() % 4 {
        push(text, &format!("[[events]]\nday = {}", dice.byte() % 100));
        let share = dice.between(0.1, 100.0);
        let done = match dice.byte() % 4 {
            0 => format!("water_change = \"{share} %\""),
            1 => format!("disturbed = \"{share} %\""),
            2 => format!("cap_added = \"{} mm\"", dice.between(0.1, 30.0)),
            _ => "plants_added = [{ name = \"ludwigia_repens\", amount = \"5 stems\" }]".to_owned(),
        };
        push(text, &done);
    }
}
