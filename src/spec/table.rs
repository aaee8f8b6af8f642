//! Every key of the spec: what is written there and what it may be.
//!
//! The reader, the schema and the tests all read this one table. Limits are
//! about one key alone; rules that take two keys belong to the design's checks.

use super::key::Key;
use super::key::Kind;
use super::key::Kind::{
    Amount, BagSize, Count, Date, Depth, Flag, Name, Names, Number, Section, Sections, Size, Text,
    Word,
};
use crate::design::usual;
use crate::units::{
    Alkalinity, Concentration, Content, Density, Duration, Flow, Hardness, Length, Mass,
    PhotonFlux, Quantity, Share, Sorption, Temperature,
};

const LENGTH: Kind = Kind::Quantity(Length::NAME);
const MASS: Kind = Kind::Quantity(Mass::NAME);
const SHARE: Kind = Kind::Quantity(Share::NAME);
const DENSITY: Kind = Kind::Quantity(Density::NAME);
const CONTENT: Kind = Kind::Quantity(Content::NAME);
const SORPTION: Kind = Kind::Quantity(Sorption::NAME);
const TEMPERATURE: Kind = Kind::Quantity(Temperature::NAME);
const ALKALINITY: Kind = Kind::Quantity(Alkalinity::NAME);
const HARDNESS: Kind = Kind::Quantity(Hardness::NAME);
const CONCENTRATION: Kind = Kind::Quantity(Concentration::NAME);
const DURATION: Kind = Kind::Quantity(Duration::NAME);
const PHOTON_FLUX: Kind = Kind::Quantity(PhotonFlux::NAME);
const FLOW: Kind = Kind::Quantity(Flow::NAME);
const AMMONIA: Kind = Kind::Quantity("an ammonia concentration");
const NITRITE: Kind = Kind::Quantity("a nitrite concentration");
const NITRATE: Kind = Kind::Quantity("a nitrate concentration");
const PHOSPHATE: Kind = Kind::Quantity("a phosphate concentration");

/// The words for a tank's shape.
const SHAPES: &[&str] = &[
    "box",
    "cylinder",
    "bow_front",
    "regular_polygon",
    "quarter_cylinder",
    "half_cylinder",
    "cut_corner",
    "trapezoid",
    "bowl",
];

/// Every key, section by section.
#[rustfmt::skip]
pub const KEYS: &[Key] = &[
    Key::new("name", Text, "Reading-room cube", "what the keeper calls the tank"),
    Key::new("units", Word(&["metric", "us"]), "metric", "how results are shown; the file itself may mix units"),
    Key::new("start", Date, "2027-03-06", "the day the soil is flooded; gives the calendar its dates"),
    Key::new("tank", Section, "{ shape = \"box\", size = \"60 x 30 x 36 cm\" }", "the vessel").needed(),
    Key::new("soil", Section, "{ material = \"loam_topsoil\", depth = \"25 mm\" }", "the lower, nutrient layer").needed(),
    Key::new("cap", Section, "{ material = \"filter_sand\", depth = \"40 mm\" }", "the sand or grit that seals the soil").needed(),
    Key::new("hardscape", Sections, "[{ material = \"granite\", mass = \"2 kg\" }]", "stones").at_most(100),
    Key::new("plants", Sections, "[{ name = \"lemna_minor\", amount = \"30 %\" }]", "the planting of day one").at_most(100),
    Key::new("water", Section, "{ temperature = \"24 C\" }", "the water filled in and changed"),
    Key::new("light", Section, "{ class = \"medium\", hours = 8 }", "the lamp"),
    Key::new("air", Section, "{ device = \"none\" }", "what moves air or water"),
    Key::new("animals", Sections, "[{ name = \"small_shrimp\", count = 10 }]", "animals and when they move in").at_most(100),
    Key::new("feed", Section, "{ mass_per_day = \"50 mg\" }", "what the animals are fed"),
    Key::new("room", Section, "{ temperature = \"20 C\" }", "the room around the tank"),
    Key::new("harvest", Section, "{ floaters_above = \"50 %\" }", "how floaters are thinned"),
    Key::new("events", Sections, "[{ day = 21, water_change = \"50 %\" }]", "what is done on which day").at_most(500),
    Key::new("readings", Sections, "[{ day = 21, nitrite = \"0.25 mg/L\" }]", "what was measured on which day").at_most(1000),
    Key::new("signs", Section, "{ observed = [\"white_haze\"] }", "what was seen"),
    Key::new("goal", Section, "{ probability = \"80 %\" }", "what is asked of the start"),

    Key::new("tank.shape", Word(SHAPES), "box", "shape of the footprint and walls").needed(),
    Key::new("tank.size", Size, "60 x 30 x 36 cm", "length x width x height of a box").from("1 mm").to("100 m"),
    Key::new("tank.length", LENGTH, "60 cm", "along the front").from("1 mm").to("100 m"),
    Key::new("tank.width", LENGTH, "30 cm", "from front to back").from("1 mm").to("100 m"),
    Key::new("tank.height", LENGTH, "36 cm", "from the bottom to the rim").from("1 mm").to("100 m"),
    Key::new("tank.diameter", LENGTH, "40 cm", "across the round").from("1 mm").to("100 m"),
    Key::new("tank.radius", LENGTH, "40 cm", "of the quarter round").from("1 mm").to("100 m"),
    Key::new("tank.width_end", LENGTH, "30 cm", "from front to back at the ends of a bow front").from("1 mm").to("100 m"),
    Key::new("tank.width_middle", LENGTH, "38 cm", "from front to back at the middle of a bow front").from("1 mm").to("100 m"),
    Key::new("tank.sides", Count, "6", "how many sides a regular polygon has").from("3").to("64"),
    Key::new("tank.side", LENGTH, "25 cm", "one side of a regular polygon").from("1 mm").to("100 m"),
    Key::new("tank.cut_length", LENGTH, "15 cm", "how much of the length the cut corner takes").from("1 mm").to("100 m"),
    Key::new("tank.cut_width", LENGTH, "15 cm", "how much of the width the cut corner takes").from("1 mm").to("100 m"),
    Key::new("tank.front", LENGTH, "60 cm", "front side of a trapezoid").from("1 mm").to("100 m"),
    Key::new("tank.back", LENGTH, "40 cm", "back side of a trapezoid").from("1 mm").to("100 m"),
    Key::new("tank.base", LENGTH, "15 cm", "across the flat bottom of a bowl").from("1 mm").to("100 m"),
    Key::new("tank.mouth", LENGTH, "20 cm", "across the opening of a bowl").from("1 mm").to("100 m"),
    Key::new("tank.outside", Flag, "true", "whether the dimensions are taken outside the walls"),
    Key::new("tank.wall", LENGTH, "5 mm", "thickness of the walls").from("1 mm").to("1 m"),
    Key::new("tank.bottom", LENGTH, "5 mm", "thickness of the bottom").from("1 mm").to("1 m"),
    Key::new("tank.material", Word(&["glass", "acrylic"]), "glass", "what the walls are made of").or("\"glass\"", "practice: most tanks are glass"),
    Key::new("tank.freeboard", LENGTH, "3 cm", "from the rim down to the water").to("100 m").or("\"25 mm\"", "practice: the usual gap below the rim"),
    Key::new("tank.lid", Flag, "false", "whether the tank is covered").or("false", "judgement: open unless said; a lid saves evaporation"),
    Key::new("tank.rim", Word(&["free", "braced"]), "free", "how the upper edge of the panes is held").or("\"free\"", "judgement: nothing holds the upper edge unless said"),
    Key::new("tank.stand", MASS, "12 kg", "mass of stand, lid and equipment").to("10000 kg"),

    Key::new("soil.material", Name("soils"), "organic_potting_mix", "which soil").needed(),
    Key::new("soil.depth", Depth, "25 mm", "how deep the soil lies").needed().above("0 mm").to("1 m"),
    Key::new("soil.depth.back", LENGTH, "40 mm", "depth along the back").to("1 m"),
    Key::new("soil.depth.front", LENGTH, "20 mm", "depth along the front").to("1 m"),
    Key::new("soil.depth.left", LENGTH, "35 mm", "depth along the left side").to("1 m"),
    Key::new("soil.depth.right", LENGTH, "25 mm", "depth along the right side").to("1 m"),
    Key::new("soil.soaked", Count, "2", "rounds of soaking and draining before use").from("0").to("10").or("0", "judgement: the soil goes in as it comes from the bag"),
    Key::new("soil.bags", Sections, "[{ size = \"10 L\", price = 6.50 }]", "the sizes it is sold in").at_most(12),
    Key::new("soil.bags[].size", BagSize, "10 L", "what is in the bag").needed().above("0").to("1000"),
    Key::new("soil.bags[].price", Number, "6.50", "what the bag costs, in the keeper's own currency").from("0").to("10000000"),
    Key::new("soil.properties", Section, "{ porosity = \"88 %\" }", "own figures that replace the catalogue's"),
    Key::new("soil.properties.dry_bulk_density", DENSITY, "130 kg/m3", "dry mass per volume in place").from("10 kg/m3").to("2650 kg/m3"),
    Key::new("soil.properties.porosity", SHARE, "88 %", "pore share of the volume").from("1 %").to("99 %"),
    Key::new("soil.properties.total_nitrogen", CONTENT, "9 g/kg", "all nitrogen in the dry mass").to("160 g/kg"),
    Key::new("soil.properties.mineral_nitrogen", CONTENT, "0.3 g/kg", "ammonium and nitrate nitrogen in the dry mass").to("160 g/kg"),
    Key::new("soil.properties.organic_matter", SHARE, "60 %", "organic matter in the dry mass").to("100 %"),
    Key::new("soil.properties.ammonium_kd", SORPTION, "2 L/kg", "sorption of ammonium").to("1000 L/kg"),

    Key::new("cap.material", Name("caps"), "filter_sand", "which sand or grit").needed(),
    Key::new("cap.depth", Depth, "40 mm", "how deep the cap lies").needed().above("0 mm").to("1 m"),
    Key::new("cap.depth.back", LENGTH, "50 mm", "depth along the back").to("1 m"),
    Key::new("cap.depth.front", LENGTH, "30 mm", "depth along the front").to("1 m"),
    Key::new("cap.depth.left", LENGTH, "40 mm", "depth along the left side").to("1 m"),
    Key::new("cap.depth.right", LENGTH, "40 mm", "depth along the right side").to("1 m"),
    Key::new("cap.bags", Sections, "[{ size = \"10 kg\", price = 8.00 }]", "the sizes it is sold in").at_most(12),
    Key::new("cap.bags[].size", BagSize, "10 kg", "what is in the bag").needed().above("0").to("1000"),
    Key::new("cap.bags[].price", Number, "8.00", "what the bag costs, in the keeper's own currency").from("0").to("10000000"),
    Key::new("cap.grading", Section, "{ d10 = \"0.48 mm\", d50 = \"0.65 mm\" }", "own sieve sizes that replace the catalogue's"),
    Key::new("cap.grading.d10", LENGTH, "0.48 mm", "10 % by mass is finer").above("0 mm").to("100 mm"),
    Key::new("cap.grading.d15", LENGTH, "0.50 mm", "15 % by mass is finer").above("0 mm").to("100 mm"),
    Key::new("cap.grading.d50", LENGTH, "0.65 mm", "50 % by mass is finer").above("0 mm").to("100 mm"),
    Key::new("cap.grading.d85", LENGTH, "0.90 mm", "85 % by mass is finer").above("0 mm").to("100 mm"),
    Key::new("cap.properties", Section, "{ porosity = \"40 %\" }", "own figures that replace the catalogue's"),
    Key::new("cap.properties.dry_bulk_density", DENSITY, "1600 kg/m3", "dry mass per volume in place").from("10 kg/m3").to("2650 kg/m3"),
    Key::new("cap.properties.porosity", SHARE, "40 %", "pore share of the volume").from("1 %").to("99 %"),

    Key::new("hardscape[].material", Name("stones"), "granite", "which stone").needed(),
    Key::new("hardscape[].mass", MASS, "2 kg", "how much of it").needed().above("0 kg").to("10000 kg"),

    Key::new("plants[].name", Name("plants"), "lemna_minor", "which plant, by species or trade name").needed(),
    Key::new("plants[].amount", Amount, "30 %", "cover, fresh mass, or portions as sold").needed().above("0").to("100000"),
    Key::new("plants[].emergent", SHARE, "0 %", "share of the leaves above the water").to("100 %"),
    Key::new("plants[].price", Number, "0.90", "price of one portion as counted").from("0").to("10000000"),

    Key::new("water.temperature", TEMPERATURE, "24 C", "kept in the tank").from("0 C").to("40 C").or("\"24 C\"", "practice: suits most of the plants and animals listed"),
    Key::new("water.ph", Number, "7.4", "pH of the tank water").from("3").to("11").or("7.2", "judgement: near neutral; measure your own"),
    Key::new("water.alkalinity", ALKALINITY, "4 dKH", "of the tap water").to("60 dKH").or("\"4 dKH\"", "judgement: fairly soft tap water; measure your own"),
    Key::new("water.hardness", HARDNESS, "6 dGH", "of the tap water").to("100 dGH").or("\"6 dGH\"", "judgement: fairly soft tap water; measure your own"),
    Key::new("water.ammonia", AMMONIA, "0.1 mg/L", "total ammonia of the tap water, as nitrogen").to("100 mg/L"),
    Key::new("water.nitrite", NITRITE, "0.05 mg/L", "nitrite of the tap water, as NO2").to("100 mg/L"),
    Key::new("water.nitrate", NITRATE, "5 mg/L", "nitrate of the tap water, as NO3").to("1000 mg/L").or("\"5 mg/L\"", "judgement: tap water low in nitrate; the supplier's report says yours"),
    Key::new("water.phosphate", PHOSPHATE, "0.5 mg/L", "phosphate of the tap water, as PO4").to("100 mg/L"),
    Key::new("water.change", Section, "{ share = \"25 %\", every = \"7 d\" }", "regular water changes"),
    Key::new("water.change.share", SHARE, "25 %", "share of the water replaced").needed().above("0 %").to("100 %"),
    Key::new("water.change.every", DURATION, "7 d", "how often").needed().from("1 h").to("365 d"),
    Key::new("water.change.from", Number, "7", "day of the first change").from("0").to("3650"),
    Key::new("water.change.until", Number, "28", "day of the last change").from("0").to("3650").or("365", "judgement: kept up for a year unless said"),

    Key::new("light.par", PHOTON_FLUX, "60 umol/m2/s", "light at the water surface").above("0 umol/m2/s").to("2500 umol/m2/s"),
    Key::new("light.class", Word(&["low", "medium", "high"]), "medium", "light in words: about 30, 60 or 120 umol/m2/s at the surface").or("\"medium\"", "judgement: a middling lamp, about 60 umol/m2/s at the surface"),
    Key::new("light.lumens", Number, "1200", "luminous flux from the lamp's label").above("0").to("1000000"),
    Key::new("light.height", LENGTH, "20 cm", "from the lamp down to the water").above("0 cm").to("100 m"),
    Key::new("light.hours", Number, "8", "hours a day").from("0").to("24").or("8", "practice: longer days feed algae in a young tank"),

    Key::new("air.device", Name("devices"), "air_stone", "what moves air or water").or("\"none\"", "practice: low-tech tanks stand still unless said"),
    Key::new("air.flow", FLOW, "0.5 L/min", "of air; of water for a pump").above("0 L/min").to("1000 L/min"),
    Key::new("air.depth", LENGTH, "20 cm", "from the water surface down to the device").to("100 m"),
    Key::new("air.hours", Word(&["always", "night", "day"]), "night", "when it runs: night is while the lamp is off").or("\"always\"", "practice: a device runs day and night unless said"),

    Key::new("animals[].name", Name("animals"), "small_shrimp", "which kind of animal").needed(),
    Key::new("animals[].count", Count, "10", "how many").needed().from("0").to("100000"),
    Key::new("animals[].from_day", Number, "42", "the day they move in").from("0").to("3650"),

    Key::new("feed.mass_per_day", MASS, "50 mg", "dry food a day").to("10 kg"),
    Key::new("feed.protein", SHARE, "45 %", "protein in the food").to("100 %").or(usual::PROTEIN_WRITTEN, usual::PROTEIN_WHY),

    Key::new("room.temperature", TEMPERATURE, "20 C", "of the room").from("-20 C").to("50 C").or("\"20 C\"", "judgement: a heated living room"),
    Key::new("room.humidity", SHARE, "50 %", "relative humidity of the room").to("100 %").or("\"50 %\"", "judgement: a heated living room"),
    Key::new("room.altitude", LENGTH, "100 m", "above sea level").to("9000 m").or("\"0 m\"", "judgement: near sea level"),
    Key::new("room.tariff", Number, "0.30", "price of a kilowatt-hour, in the keeper's own currency").from("0").to("1000000"),

    Key::new("harvest.floaters_above", SHARE, "50 %", "cover the floaters are thinned back to").above("0 %").to("100 %").or("\"50 %\"", "practice: more cover starves the plants below"),

    Key::new("events[].day", Number, "21", "days since flooding").needed().from("0").to("3650"),
    Key::new("events[].cap_added", LENGTH, "10 mm", "sand spread over the whole bed").above("0 mm").to("1 m"),
    Key::new("events[].water_change", SHARE, "50 %", "share of the water replaced").above("0 %").to("100 %"),
    Key::new("events[].disturbed", SHARE, "10 %", "share of the bed stirred").above("0 %").to("100 %"),
    Key::new("events[].plants_added", Sections, "[{ name = \"lemna_minor\", amount = \"10 %\" }]", "plants put in").at_most(100),
    Key::new("events[].plants_added[].name", Name("plants"), "lemna_minor", "which plant, by species or trade name").needed(),
    Key::new("events[].plants_added[].amount", Amount, "10 %", "cover, fresh mass, or portions as sold").needed().above("0").to("100000"),
    Key::new("events[].plants_added[].emergent", SHARE, "0 %", "share of the leaves above the water").to("100 %"),
    Key::new("events[].plants_added[].price", Number, "0.90", "price of one portion as counted").from("0").to("10000000"),
    Key::new("events[].plants_removed", Sections, "[{ name = \"lemna_minor\", amount = \"10 %\" }]", "plants taken out").at_most(100),
    Key::new("events[].plants_removed[].name", Name("plants"), "lemna_minor", "which plant, by species or trade name").needed(),
    Key::new("events[].plants_removed[].amount", Amount, "10 %", "cover, fresh mass, or portions as sold").needed().above("0").to("100000"),

    Key::new("readings[].day", Number, "21", "days since flooding").from("0").to("3650"),
    Key::new("readings[].date", Date, "2027-03-27", "the date instead of the day, where start is given"),
    Key::new("readings[].ammonia", AMMONIA, "1.0 mg/L", "total ammonia, as nitrogen unless the scale is said").to("1000 mg/L"),
    Key::new("readings[].nitrite", NITRITE, "0.25 mg/L", "nitrite, as NO2 unless the scale is said").to("1000 mg/L"),
    Key::new("readings[].nitrate", NITRATE, "40 mg/L", "nitrate, as NO3 unless the scale is said").to("10000 mg/L"),
    Key::new("readings[].phosphate", PHOSPHATE, "0.5 mg/L", "phosphate, as PO4 unless the scale is said").to("1000 mg/L"),
    Key::new("readings[].ph", Number, "7.2", "pH").from("3").to("11"),
    Key::new("readings[].temperature", TEMPERATURE, "24 C", "of the water").from("0 C").to("40 C"),
    Key::new("readings[].oxygen", CONCENTRATION, "7 mg/L", "dissolved oxygen").to("50 mg/L"),

    Key::new("signs.observed", Names("signs"), "gasping_at_dawn", "what was seen, by the names of the sign table").needed().at_most(100),

    Key::new("goal.probability", SHARE, "80 %", "asked of the planting and the water changes").from("1 %").to("99 %").or("\"80 %\"", "judgement: four starts in five stay under the limits"),
    Key::new("goal.ammonia", AMMONIA, "0.5 mg/L", "replaces the watch limit for ammonia").above("0 mg/L").to("100 mg/L"),
    Key::new("goal.nitrite", NITRITE, "0.33 mg/L", "replaces the watch limit for nitrite").above("0 mg/L").to("100 mg/L"),
    Key::new("goal.nitrate", NITRATE, "40 mg/L", "replaces the watch limit for nitrate").above("0 mg/L").to("1000 mg/L"),
    Key::new("goal.dawn_oxygen", CONCENTRATION, "5 mg/L", "replaces the watch limit for dawn oxygen").above("0 mg/L").to("20 mg/L"),
];
