//! A spec made of bytes: every byte decides something, so that random bytes are random
//! tanks and a byte changed is a tank changed a little.

use lentic::UnitSystem;
use lentic::catalogue::{self, CatalogueRow, PlantGroup};

/// A spec section by section; it is the same tank in any order of them.
pub(crate) struct RandomSpec<'b> {
    sections: Vec<String>,
    bytes: std::slice::Iter<'b, u8>,
    units: UnitSystem,
    /// What is planted on day one.
    planted: Vec<&'static str>,
}

/// The spec that some bytes stand for; most such specs are designs.
pub(crate) fn spec(bytes: &[u8]) -> String {
    RandomSpec::new(bytes, UnitSystem::Metric).text()
}

/// A dimension in centimetres: its key, its least and its greatest value.
type Dimension = (&'static str, f64, f64);

/// Each shape with its dimensions.
#[rustfmt::skip]
const SHAPES: &[(&str, &[Dimension])] = &[
    ("box", &[("length", 12.0, 200.0), ("width", 12.0, 80.0), ("height", 12.0, 80.0)]),
    ("cylinder", &[("diameter", 15.0, 90.0), ("height", 12.0, 80.0)]),
    ("bow_front", &[
        ("length", 30.0, 150.0), ("width_end", 20.0, 40.0), ("width_middle", 41.0, 50.0), ("height", 20.0, 70.0),
    ]),
    ("quarter_cylinder", &[("radius", 20.0, 90.0), ("height", 15.0, 70.0)]),
    ("half_cylinder", &[("diameter", 20.0, 120.0), ("height", 15.0, 70.0)]),
    ("cut_corner", &[
        ("length", 40.0, 90.0), ("width", 40.0, 90.0), ("cut_length", 5.0, 35.0), ("cut_width", 5.0, 35.0),
        ("height", 15.0, 70.0),
    ]),
    ("trapezoid", &[("front", 30.0, 120.0), ("back", 20.0, 120.0), ("width", 20.0, 60.0), ("height", 15.0, 70.0)]),
    ("bowl", &[("diameter", 20.0, 60.0), ("base", 8.0, 18.0), ("mouth", 10.0, 19.0)]),
    ("regular_polygon", &[("side", 12.0, 40.0), ("height", 15.0, 70.0)]),
];

impl<'b> RandomSpec<'b> {
    /// The spec of some bytes, its quantities written in one system of units.
    pub(crate) fn new(bytes: &'b [u8], units: UnitSystem) -> Self {
        let mut spec = Self {
            sections: Vec::new(),
            bytes: bytes.iter(),
            units,
            planted: Vec::new(),
        };
        spec.tank();
        spec.bed();
        spec.plants();
        spec.surroundings();
        spec.animals();
        spec.events();
        spec.walls();
        spec.own_figures();
        spec.lives();
        spec.readings();
        spec
    }

    /// The whole text.
    pub(crate) fn text(&self) -> String {
        self.sections.concat()
    }

    /// The whole text, its sections from the last to the first.
    pub(crate) fn reversed(&self) -> String {
        self.sections.iter().rev().map(String::as_str).collect()
    }

    /// The next byte; zeros once there are none left.
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

    fn row<R: CatalogueRow>(&mut self) -> &'static R {
        self.one_of(R::all())
    }

    /// A number between two, with one decimal.
    fn between(&mut self, low: f64, high: f64) -> f64 {
        let share = f64::from(self.byte()) / 255.0;
        ((low + share * (high - low)) * 10.0).round() / 10.0
    }

    /// A number in a metric unit, or the same quantity in a US one.
    fn quantity(&mut self, low: f64, high: f64, metric: &str, us: (f64, &str)) -> String {
        let value = self.between(low, high);
        match self.units {
            UnitSystem::Metric => format!("\"{value} {metric}\""),
            UnitSystem::Us => format!("\"{} {}\"", value / us.0, us.1),
        }
    }

    fn cm(&mut self, low: f64, high: f64) -> String {
        self.quantity(low, high, "cm", (2.54, "in"))
    }

    fn mm(&mut self, low: f64, high: f64) -> String {
        self.quantity(low, high, "mm", (25.4, "in"))
    }

    fn kg(&mut self, low: f64, high: f64) -> String {
        self.quantity(low, high, "kg", (0.453_592_37, "lb"))
    }

    fn celsius(&mut self, low: f64, high: f64) -> String {
        let value = self.between(low, high);
        match self.units {
            UnitSystem::Metric => format!("\"{value} C\""),
            UnitSystem::Us => format!("\"{} F\"", value * 1.8 + 32.0),
        }
    }

    fn percent(&mut self, low: f64, high: f64) -> String {
        format!("\"{} %\"", self.between(low, high))
    }

    fn mg_l(&mut self, most: f64) -> String {
        format!("\"{} mg/L\"", self.between(0.0, most))
    }

    /// Begins a section, or a list's next one.
    fn section(&mut self, heading: &str) {
        self.sections.push(format!("{heading}\n"));
    }

    /// Adds a key to the section begun last.
    fn key(&mut self, key: &str, value: impl std::fmt::Display) {
        let section = self.sections.last_mut().expect("a section is begun");
        section.extend([key, " = ", &value.to_string(), "\n"]);
    }

    fn tank(&mut self) {
        let (shape, dimensions) = *self.one_of(SHAPES);
        self.section("[tank]");
        self.key("shape", format!("\"{shape}\""));
        if shape == "regular_polygon" {
            let sides = 3 + self.byte() % 6;
            self.key("sides", sides);
        }
        for (name, low, high) in dimensions {
            let value = self.cm(*low, *high);
            self.key(name, value);
        }
        if self.yes() {
            let freeboard = self.cm(0.0, 6.0);
            self.key("freeboard", freeboard);
        }
        if self.yes() {
            self.key("lid", true);
        }
    }

    fn walls(&mut self) {
        if !self.yes() {
            return;
        }
        let (wall, bottom, stand) = (self.mm(2.0, 15.0), self.mm(2.0, 15.0), self.kg(0.0, 60.0));
        let material = *self.one_of(&["glass", "acrylic"]);
        let rim = *self.one_of(&["free", "braced"]);
        let outside = self.yes();
        let walls = format!(
            "wall = {wall}\nbottom = {bottom}\nstand = {stand}\nmaterial = \"{material}\"\n\
             rim = \"{rim}\"\noutside = {outside}\n"
        );
        self.sections[0].push_str(&walls);
    }

    fn bed(&mut self) {
        let soil = &self.row::<catalogue::Soil>().name;
        self.section("[soil]");
        self.key("material", format!("\"{soil}\""));
        let depth = self.mm(1.0, 100.0);
        self.key("depth", depth);
        let soaked = self.byte() % 4;
        self.key("soaked", soaked);
        if self.yes() {
            self.key(
                "bags",
                "[{ size = \"10 L\", price = 6.5 }, { size = \"20 L\", price = 11 }]",
            );
        }
        let cap = &self.row::<catalogue::Cap>().name;
        self.section("[cap]");
        self.key("material", format!("\"{cap}\""));
        let depth = if self.yes() {
            let (back, front) = (self.mm(5.0, 90.0), self.mm(5.0, 90.0));
            format!("{{ back = {back}, front = {front} }}")
        } else {
            self.mm(1.0, 120.0)
        };
        self.key("depth", depth);
        if self.yes() {
            let stone = &self.row::<catalogue::Stone>().name;
            let mass = self.kg(0.1, 9.0);
            self.section("[[hardscape]]");
            self.key("material", format!("\"{stone}\""));
            self.key("mass", mass);
        }
    }

    fn plants(&mut self) {
        for _ in 0..self.byte() % 5 {
            let plant = self.row::<catalogue::Plant>();
            self.planted.push(&plant.name);
            self.section("[[plants]]");
            self.key("name", format!("\"{}\"", plant.name));
            let most = if plant.group == PlantGroup::Floater {
                45.0
            } else {
                90.0
            };
            let cover = self.between(0.1, most);
            let unit = if self.yes() { "g" } else { "%" };
            self.key("amount", format!("\"{cover} {unit}\""));
        }
    }

    fn surroundings(&mut self) {
        if self.yes() {
            self.water();
        }
        if self.yes() {
            let (par, hours) = (self.between(0.1, 400.0), self.between(0.0, 24.0));
            self.section("[light]");
            self.key("par", format!("\"{par} umol/m2/s\""));
            self.key("hours", hours);
        }
        if self.yes() {
            let hours = *self.one_of(&["always", "night", "day"]);
            let device = *self.one_of(&["air_stone", "sponge_filter", "pump"]);
            let flow = self.between(0.1, 9.0);
            self.section("[air]");
            self.key("device", format!("\"{device}\""));
            self.key("flow", format!("\"{flow} L/min\""));
            self.key("depth", "\"5 cm\"");
            self.key("hours", format!("\"{hours}\""));
        }
        if self.yes() {
            let temperature = self.celsius(-10.0, 40.0);
            let altitude = self.quantity(0.0, 4000.0, "m", (0.3048, "ft"));
            self.section("[room]");
            self.key("temperature", temperature);
            self.key("altitude", altitude);
        }
    }

    fn water(&mut self) {
        self.section("[water]");
        let temperature = self.celsius(0.0, 40.0);
        self.key("temperature", temperature);
        let ph = self.between(4.0, 10.0);
        self.key("ph", ph);
        let alkalinity = self.between(0.0, 20.0);
        self.key("alkalinity", format!("\"{alkalinity} dKH\""));
        let nitrate = self.mg_l(100.0);
        self.key("nitrate", nitrate);
        if self.yes() {
            let hardness = self.between(0.0, 30.0);
            self.key("hardness", format!("\"{hardness} dGH\""));
            for (key, most) in [("ammonia", 5.0), ("nitrite", 5.0), ("phosphate", 10.0)] {
                let value = self.mg_l(most);
                self.key(key, value);
            }
        }
        if self.yes() {
            let (share, every) = (self.percent(0.1, 100.0), self.between(0.1, 30.0));
            let from = self.byte() % 40;
            self.key(
                "change",
                format!("{{ share = {share}, every = \"{every} d\", from = {from} }}"),
            );
        }
    }

    fn animals(&mut self) {
        for _ in 0..self.byte() % 3 {
            let animal = &self.row::<catalogue::Animal>().name;
            let (count, day) = (self.byte(), self.byte());
            self.section("[[animals]]");
            self.key("name", format!("\"{animal}\""));
            self.key("count", count);
            self.key("from_day", day);
        }
    }

    fn events(&mut self) {
        for _ in 0..self.byte() % 4 {
            let day = self.byte() % 100;
            self.section("[[events]]");
            self.key("day", day);
            let share = self.percent(0.1, 100.0);
            match self.byte() % 5 {
                0 => self.key("water_change", share),
                1 => self.key("disturbed", share),
                2 => {
                    let depth = self.mm(0.1, 30.0);
                    self.key("cap_added", depth);
                }
                3 => match self.planted.first() {
                    Some(plant) => self.key("plants_removed", Self::some_plants(plant, &share)),
                    None => self.key("water_change", share),
                },
                _ => self.key(
                    "plants_added",
                    Self::some_plants("ludwigia_repens", "\"5 stems\""),
                ),
            }
        }
    }

    fn some_plants(name: &str, amount: &str) -> String {
        format!("[{{ name = \"{name}\", amount = {amount} }}]")
    }

    /// The keeper's own figures for soil and cap.
    fn own_figures(&mut self) {
        if self.yes() {
            let (bulk, porosity) = (self.between(50.0, 1600.0), self.percent(20.0, 95.0));
            let nitrogen = self.between(0.0, 20.0);
            self.section("[soil.properties]");
            self.key("dry_bulk_density", format!("\"{bulk} kg/m3\""));
            self.key("porosity", porosity);
            self.key("total_nitrogen", format!("\"{nitrogen} g/kg\""));
            self.key("mineral_nitrogen", format!("\"{} g/kg\"", nitrogen / 20.0));
        }
        if self.yes() {
            let d10 = self.between(0.1, 8.0);
            self.section("[cap.grading]");
            for (key, times) in [("d10", 1.0), ("d15", 1.1), ("d50", 1.5), ("d85", 2.0)] {
                self.key(key, format!("\"{} mm\"", d10 * times));
            }
        }
    }

    /// What the keeper does and asks for.
    fn lives(&mut self) {
        if self.yes() {
            let (mass, protein) = (self.between(0.0, 900.0), self.percent(0.0, 100.0));
            self.section("[feed]");
            self.key("mass_per_day", format!("\"{mass} mg\""));
            self.key("protein", protein);
        }
        if self.yes() {
            let above = self.percent(1.0, 100.0);
            self.section("[harvest]");
            self.key("floaters_above", above);
        }
        if self.yes() {
            let (probability, ammonia) = (self.percent(1.0, 99.0), self.between(0.1, 5.0));
            self.section("[goal]");
            self.key("probability", probability);
            self.key("ammonia", format!("\"{ammonia} mg/L\""));
        }
    }

    fn readings(&mut self) {
        for _ in 0..self.byte() % 3 {
            let day = self.byte();
            self.section("[[readings]]");
            self.key("day", day);
            for (key, most) in [("ammonia", 8.0), ("nitrite", 8.0), ("oxygen", 12.0)] {
                let value = self.mg_l(most);
                self.key(key, value);
            }
            let ph = self.between(4.0, 10.0);
            self.key("ph", ph);
        }
    }
}
