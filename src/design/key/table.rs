//! Every key of the spec: what is written there and what it may be.
//!
//! The reader, the schema and the tests all read this one table. Limits are
//! about one key alone; rules that take two keys belong to the design's checks.

use super::KeyKind::{
    self, Amount, BagSize, Count, Date, Depth, Flag, Name, Names, Number, Numbers, Section,
    Sections, Text, Word,
};
use super::place::{self, LayerEdge};
use super::prepared::{kind_of, put, put_by, put_scaled};
use super::{Key, Value};
use crate::design::follow;
use crate::design::{FlowDevice, LightLevel, Looked, usual};
use crate::geometry::{Dimension, LayerDepth};
use crate::plants::light::LightClass;
use crate::units::{
    Alkalinity, Analyte, Concentration, Conductivity, Duration, Hardness, LuminousFlux, Mass,
    PhotonFlux, Quantity, Share, Temperature, UnitSystem, Volume,
};
use crate::water::salt::Salt;

/// A key whose place in a draft decides what is written there.
macro_rules! placed {
    ($path:expr, $place:expr, $example:expr, $says:expr) => {
        Key::new($path, kind_of($place), $example, $says).varied(|entry| put(entry, $place))
    };
}

/// A key whose path is its place.
macro_rules! own {
    ($section:ident $(.$name:ident)+, $example:expr, $says:expr) => {
        placed!(
            concat!(stringify!($section) $(, ".", stringify!($name))+),
            |draft, _| Ok(&mut draft.$section $(.$name)+),
            $example,
            $says
        )
    };
}

/// A plain key: its path is its place, and it is read alone; a nutrient is read `as` its
/// own scale has it.
macro_rules! plain {
    ($section:ident $(.$name:ident)+, $example:expr, $says:expr) => {
        own!($section $(.$name)+, $example, $says).plain()
    };
    ($section:ident $(.$name:ident)+ as $scale:ident, $example:expr, $says:expr) => {
        Key::new(
            concat!(stringify!($section) $(, ".", stringify!($name))+),
            KeyKind::Quantity(Analyte::$scale.phrase()),
            $example,
            $says,
        )
        .varied(|entry| {
            put_scaled(entry, Analyte::$scale, |draft, _| {
                Ok(&mut draft.$section $(.$name)+)
            })
        })
        .plain()
    };
}

/// A dimension of the vessel, which the usual wall may hang on.
macro_rules! dimension {
    ($name:ident = $dimension:ident, $example:expr, $says:expr) => {
        placed!(
            concat!("tank.", stringify!($name)),
            |draft, _| place::dimension(draft, Dimension::$dimension),
            $example,
            $says
        )
        .from("1 mm")
        .to("100 m")
        .then(follow::wall)
    };
}

/// The depth of a layer at an edge.
macro_rules! edge {
    ($layer:ident.$name:ident = $edge:ident, $example:expr, $says:expr) => {
        placed!(
            concat!(stringify!($layer), ".depth.", stringify!($name)),
            |draft, _| place::edge(&mut draft.$layer.depth, LayerEdge::$edge),
            $example,
            $says
        )
        .to("1 m")
    };
}

/// The depth of a layer, one all over where it is varied.
macro_rules! depth {
    ($layer:ident, $example:expr, $says:expr) => {
        Key::new(
            concat!(stringify!($layer), ".depth"),
            Depth,
            $example,
            $says,
        )
        .needed()
        .above("0 mm")
        .to("1 m")
        .varied(|entry| {
            put_by(entry, |draft, _, depth| {
                draft.$layer.depth = LayerDepth::Uniform(depth);
                Ok(())
            })
        })
    };
}

const SHARE: KeyKind = KeyKind::Quantity(Share::NAME);
const DURATION: KeyKind = KeyKind::Quantity(Duration::NAME);
const MASS: KeyKind = KeyKind::Quantity(Mass::NAME);
const TEMPERATURE: KeyKind = KeyKind::Quantity(Temperature::NAME);
const CONCENTRATION: KeyKind = KeyKind::Quantity(Concentration::NAME);
const PHOTON_FLUX: KeyKind = KeyKind::Quantity(PhotonFlux::NAME);
const AMMONIA: KeyKind = KeyKind::Span(Analyte::Ammonia.phrase());
const NITRITE: KeyKind = KeyKind::Span(Analyte::Nitrite.phrase());
const NITRATE: KeyKind = KeyKind::Span(Analyte::Nitrate.phrase());
const PHOSPHATE: KeyKind = KeyKind::Span(Analyte::Phosphate.phrase());

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
    Key::new("units", UnitSystem::KIND, "metric", "how results are shown; the file itself may mix units"),
    Key::new("start", Date, "2027-03-06", "the day the soil is flooded; gives the calendar its dates"),
    Key::new("tank", Section, "{ shape = \"box\", size = \"60 x 30 x 36 cm\" }", "the vessel").needed(),
    Key::new("soil", Section, "{ material = \"loam_topsoil\", depth = \"25 mm\" }", "the lower, nutrient layer").needed(),
    Key::new("cap", Section, "{ material = \"filter_sand\", depth = \"40 mm\" }", "the sand or grit that seals the soil").needed(),
    Key::new("hardscape", Sections, "[{ material = \"granite\", mass = \"2 kg\" }]", "stones").at_most(100),
    Key::new("plants", Sections, "[{ name = \"lemna_minor\", amount = \"30 %\" }]", "the planting of day one").at_most(100),
    Key::new("water", Section, "{ temperature = \"24 C\" }", "the water filled in and changed"),
    Key::new("conditioner", Section, "{ label = \"5 mL per 40 L\" }", "what takes chlorine out of the tap water"),
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

    Key::new("tank.shape", Word(SHAPES), "box", "shape of the footprint and walls; a size alone is that of a box"),
    placed!("tank.size", |draft, _| place::size(draft), "60 x 30 x 36 cm", "length x width x height of a box").from("1 mm").to("100 m").then(follow::wall),
    dimension!(length = Length, "60 cm", "along the front"),
    dimension!(width = Width, "30 cm", "from front to back"),
    dimension!(height = Height, "36 cm", "from the bottom to the rim"),
    dimension!(diameter = Diameter, "40 cm", "across the round"),
    dimension!(radius = Radius, "40 cm", "of the quarter round"),
    dimension!(width_end = WidthEnd, "30 cm", "from front to back at the ends of a bow front"),
    dimension!(width_middle = WidthMiddle, "38 cm", "from front to back at the middle of a bow front"),
    placed!("tank.sides", |draft, _| place::sides(draft), "6", "how many sides a regular polygon has").from("3").to("64"),
    dimension!(side = Side, "25 cm", "one side of a regular polygon"),
    dimension!(cut_length = CutLength, "15 cm", "how much of the length the cut corner takes"),
    dimension!(cut_width = CutWidth, "15 cm", "how much of the width the cut corner takes"),
    dimension!(front = Front, "60 cm", "front side of a trapezoid"),
    dimension!(back = Back, "40 cm", "back side of a trapezoid"),
    dimension!(base = Base, "15 cm", "across the flat bottom of a bowl"),
    dimension!(mouth = Mouth, "20 cm", "across the opening of a bowl"),
    own!(tank.outside, "true", "whether the dimensions are taken outside the walls"),
    own!(tank.wall, "5 mm", "thickness of the walls").from("1 mm").to("1 m").then(follow::bottom),
    own!(tank.bottom, "5 mm", "thickness of the bottom").from("1 mm").to("1 m"),
    plain!(tank.material, "glass", "what the walls are made of").or("\"glass\"", "practice: most tanks are glass"),
    plain!(tank.freeboard, "3 cm", "from the rim down to the water").to("100 m").or("\"25 mm\"", "practice: the usual gap below the rim"),
    plain!(tank.lid, "false", "whether the tank is covered").or("false", "judgement: open unless said; a lid saves evaporation"),
    plain!(tank.rim, "free", "how the upper edge of the panes is held").or("\"free\"", "judgement: nothing holds the upper edge unless said"),
    plain!(tank.stand, "12 kg", "mass of stand, lid and equipment").to("10000 kg"),

    own!(soil.material, "organic_potting_mix", "which soil").needed(),
    depth!(soil, "25 mm", "how deep the soil lies; unknown for a tank that stands and is only checked"),
    edge!(soil.back = Back, "40 mm", "depth along the back"),
    edge!(soil.front = Front, "20 mm", "depth along the front"),
    edge!(soil.left = Left, "35 mm", "depth along the left side"),
    edge!(soil.right = Right, "25 mm", "depth along the right side"),
    plain!(soil.soaked, "2", "rounds of soaking and draining before use").from("0").to("10").or("0", "judgement: the soil goes in as it comes from the bag"),
    Key::new("soil.bags", Sections, "[{ size = \"10 L\", price = 6.50 }]", "the sizes it is sold in").at_most(12),
    Key::new("soil.bags[].size", BagSize, "10 L", "what is in the bag").needed().above("0").to("1000"),
    Key::new("soil.bags[].price", Number, "6.50", "what the bag costs, in the keeper's own currency").from("0").to("10000000"),
    Key::new("soil.properties", Section, "{ porosity = \"88 %\" }", "own figures that replace the catalogue's"),
    plain!(soil.properties.dry_bulk_density, "130 kg/m3", "dry mass per volume in place").from("10 kg/m3").to("2650 kg/m3"),
    plain!(soil.properties.porosity, "88 %", "pore share of the volume").from("1 %").to("99 %"),
    plain!(soil.properties.total_nitrogen, "9 g/kg", "all nitrogen in the dry mass").to("160 g/kg"),
    plain!(soil.properties.mineral_nitrogen, "0.3 g/kg", "ammonium and nitrate nitrogen in the dry mass").to("160 g/kg"),
    plain!(soil.properties.organic_matter, "60 %", "organic matter in the dry mass").to("100 %"),
    plain!(soil.properties.ammonium_kd, "2 L/kg", "sorption of ammonium").to("1000 L/kg"),

    own!(cap.material, "filter_sand", "which sand or grit").needed(),
    depth!(cap, "40 mm", "how deep the cap lies; unknown for a tank that stands and is only checked"),
    edge!(cap.back = Back, "50 mm", "depth along the back"),
    edge!(cap.front = Front, "30 mm", "depth along the front"),
    edge!(cap.left = Left, "40 mm", "depth along the left side"),
    edge!(cap.right = Right, "40 mm", "depth along the right side"),
    Key::new("cap.bags", Sections, "[{ size = \"10 kg\", price = 8.00 }]", "the sizes it is sold in").at_most(12),
    Key::new("cap.bags[].size", BagSize, "10 kg", "what is in the bag").needed().above("0").to("1000"),
    Key::new("cap.bags[].price", Number, "8.00", "what the bag costs, in the keeper's own currency").from("0").to("10000000"),
    Key::new("cap.grading", Section, "{ d10 = \"0.48 mm\", d50 = \"0.65 mm\" }", "own sieve sizes that replace the catalogue's"),
    plain!(cap.grading.d10, "0.48 mm", "10 % by mass is finer").above("0 mm").to("100 mm"),
    plain!(cap.grading.d15, "0.50 mm", "15 % by mass is finer").above("0 mm").to("100 mm"),
    plain!(cap.grading.d50, "0.65 mm", "50 % by mass is finer").above("0 mm").to("100 mm"),
    plain!(cap.grading.d85, "0.90 mm", "85 % by mass is finer").above("0 mm").to("100 mm"),
    Key::new("cap.properties", Section, "{ porosity = \"40 %\" }", "own figures that replace the catalogue's"),
    placed!("cap.properties.dry_bulk_density", |draft, _| Ok(&mut draft.cap.dry_bulk_density), "1600 kg/m3", "dry mass per volume in place").plain().from("10 kg/m3").to("2650 kg/m3"),
    placed!("cap.properties.porosity", |draft, _| Ok(&mut draft.cap.porosity), "40 %", "pore share of the volume").plain().from("1 %").to("99 %"),

    placed!("hardscape[].material", |draft, item| Ok(&mut place::stone(draft, item)?.material), "granite", "which stone").needed(),
    placed!("hardscape[].mass", |draft, item| Ok(&mut place::stone(draft, item)?.mass), "2 kg", "how much of it").needed().above("0 kg").to("10000 kg"),

    placed!("plants[].name", |draft, item| Ok(&mut place::planting(draft, item)?.plant), "lemna_minor", "which plant, by species or trade name").needed(),
    placed!("plants[].amount", |draft, item| Ok(&mut place::planting(draft, item)?.amount), "30 %", "cover, fresh mass, or portions as sold").needed().above("0").to("100000"),
    placed!("plants[].emergent", |draft, item| Ok(&mut place::planting(draft, item)?.emergent), "0 %", "share of the leaves above the water").to("100 %"),
    placed!("plants[].price", |draft, item| Ok(&mut place::planting(draft, item)?.price), "0.90", "price of one portion as counted").from("0").to("10000000"),

    plain!(water.temperature, "24 C", "kept in the tank").from("0 C").to("40 C").or("\"24 C\"", "practice: suits most of the plants and animals listed"),
    plain!(water.ph, "7.4", "pH of the tank water").from("3").to("11").or("7.2", "judgement: near neutral; measure your own"),
    plain!(water.alkalinity, "4 dKH", "of the tap water").to("60 dKH").or("\"4 dKH\"", "judgement: fairly soft tap water; measure your own"),
    plain!(water.hardness, "6 dGH", "of the tap water").to("100 dGH").or("\"6 dGH\"", "judgement: fairly soft tap water; measure your own"),
    plain!(water.ammonia as Ammonia, "0.1 mg/L", "total ammonia of the tap water, as nitrogen").to("100 mg/L"),
    plain!(water.nitrite as Nitrite, "0.05 mg/L", "nitrite of the tap water, as NO2").to("100 mg/L"),
    plain!(water.nitrate as Nitrate, "5 mg/L", "nitrate of the tap water, as NO3").to("1000 mg/L").or("\"5 mg/L\"", "judgement: tap water low in nitrate; the supplier's report says yours"),
    plain!(water.phosphate as Phosphate, "0.5 mg/L", "phosphate of the tap water, as PO4").to("100 mg/L"),
    plain!(water.potassium, "2 mg/L", "of the tap water; a common range is taken where it is not known").to("1000 mg/L"),
    plain!(water.magnesium, "8 mg/L", "of the tap water; a common share of the hardness is taken where it is not known").to("1000 mg/L"),
    plain!(water.iron, "0.05 mg/L", "of the tap water; a common range is taken where it is not known").to("100 mg/L"),
    plain!(water.conductivity, "350 uS/cm", "of the tap water; a range by hardness and alkalinity is taken where it is not known").to("10 mS/cm"),
    plain!(water.disinfectant, "chlorine", "what the supplier keeps the tap water clean with; taken as chloramine where it is not known"),
    plain!(water.chlorine, "0.5 mg/L", "free and bound chlorine of the tap water, as Cl2").to("20 mg/L"),
    plain!(water.cold, "12 C", "at the cold tap").from("0 C").to("50 C"),
    plain!(water.hot, "60 C", "at the hot tap").from("0 C").to("99 C"),
    plain!(water.top_up, "soft", "what water lost to the air is replaced with: tap, soft, or the share of soft water in both; tap unless said").to("100 %"),
    Key::new("water.softened", Section, "{ hardness = \"0 dGH\" }", "rain, distilled or reverse-osmosis water to mix with; pure unless said"),
    plain!(water.softened.hardness, "0 dGH", "of the softened water").to("100 dGH"),
    plain!(water.softened.alkalinity, "0 dKH", "of the softened water").to("60 dKH"),
    plain!(water.softened.nitrate as Nitrate, "0 mg/L", "nitrate of the softened water, as NO3").to("1000 mg/L"),
    Key::new("water.goal", Section, "{ hardness = \"6 dGH\" }", "the water that is asked for"),
    plain!(water.goal.hardness, "6 dGH", "asked for").to("100 dGH"),
    plain!(water.goal.alkalinity, "4 dKH", "asked for").to("60 dKH"),
    Key::new("water.change", Section, "{ share = \"25 %\", every = \"7 d\" }", "regular water changes"),
    placed!("water.change.share", |draft, _| Ok(&mut place::change(draft)?.share), "25 %", "share of the water replaced").needed().above("0 %").to("100 %"),
    placed!("water.change.every", |draft, _| Ok(&mut place::change(draft)?.every), "7 d", "how often").needed().from("1 h").to("365 d").then(follow::first_change),
    placed!("water.change.from", |draft, _| Ok(&mut place::change(draft)?.from), "7", "day of the first change").from("0").to("3650"),
    placed!("water.change.until", |draft, _| Ok(&mut place::change(draft)?.until), "28", "day of the last change").from("0").to("3650").or("365", "judgement: kept up for a year unless said"),

    plain!(conditioner.label, "5 mL per 40 L", "the dose on its label").above("0").to("100"),

    Key::new("light.par", PHOTON_FLUX, "60 umol/m2/s", "light at the water surface").from("0 umol/m2/s").to("2500 umol/m2/s").varied(|entry| put_by(entry, |draft, _, par| { draft.light.level = LightLevel::Par(par); Ok(()) })).then(follow::lamp),
    Key::new("light.class", LightClass::KIND, "medium", "light in words: about 30, 60 or 120 umol/m2/s at the surface").or("\"medium\"", "judgement: a middling lamp, about 60 umol/m2/s at the surface").varied(|entry| put_by(entry, |draft, _, class| { draft.light.level = LightLevel::Class(class); Ok(()) })),
    Key::new("light.lumens", Number, "1200", "luminous flux from the lamp's label").above("0").to("1000000").varied(|entry| put_by(entry, |draft, _, lumens| { *place::lumens(draft)? = LuminousFlux::from_lumens(lumens); Ok(()) })).then(follow::lamp),
    placed!("light.height", |draft, _| place::lamp_height(draft), "20 cm", "from the lamp down to the water").above("0 cm").to("100 m"),
    plain!(light.hours, "8", "hours a day").from("0").to("24").or("8", "practice: longer days feed algae in a young tank"),

    Key::new("air.device", FlowDevice::KIND, "air_stone", "what moves air or water").or("\"none\"", "practice: low-tech tanks stand still unless said").varied(|entry| put_by(entry, |draft, _, device| place::change_device(draft, device))),
    placed!("air.flow", |draft, _| Ok(&mut place::moved(draft)?.flow), "0.5 L/min", "of air; of water for a pump").above("0 L/min").to("1000 L/min"),
    placed!("air.depth", |draft, _| Ok(&mut place::moved(draft)?.depth), "20 cm", "from the water surface down to the device").to("100 m"),
    placed!("air.hours", |draft, _| Ok(&mut place::moved(draft)?.hours), "night", "when it runs: night is while the lamp is off").or("\"always\"", "practice: a device runs day and night unless said"),

    placed!("animals[].name", |draft, item| Ok(&mut place::stock(draft, item)?.animal), "small_shrimp", "which kind of animal").needed().then(follow::animal),
    placed!("animals[].count", |draft, item| Ok(&mut place::stock(draft, item)?.count), "10", "how many").needed().from("0").to("100000").then(follow::feed),
    placed!("animals[].from_day", |draft, item| Ok(&mut place::stock(draft, item)?.from_day), "42", "the day they move in").from("0").to("3650"),

    own!(feed.mass_per_day, "50 mg", "dry food a day").to("10 kg"),
    own!(feed.protein, "45 %", "protein in the food").to("100 %").or(usual::PROTEIN_WRITTEN, usual::PROTEIN_WHY),

    plain!(room.temperature, "20 C", "of the room").from("-20 C").to("50 C").or("\"20 C\"", "judgement: a heated living room"),
    plain!(room.humidity, "50 %", "relative humidity of the room").to("100 %").or("\"50 %\"", "judgement: a heated living room"),
    plain!(room.altitude, "100 m", "above sea level").to("9000 m").or("\"0 m\"", "judgement: near sea level"),
    plain!(room.tariff, "0.30", "price of a kilowatt-hour, in the keeper's own currency").from("0").to("1000000"),

    plain!(harvest.floaters_above, "50 %", "cover the floaters are thinned back to").above("0 %").to("100 %").or("\"50 %\"", "practice: more cover starves the plants below"),
    plain!(harvest.stems_above, "150 g/m2", "dry mass of fast plants under water, on the floor, that they are cut back to").above("0 g/m2").to("10000 g/m2").or("\"200 g/m2\"", "practice: the mass to which fast plants are usually cut back"),

    Key::new("harvest.taken", Sections, "[{ day = 60, floaters = \"9 g\" }]", "prunings that were weighed; from the second on they tell how much grows").at_most(500),
    Key::new("harvest.taken[].day", Number, "60", "days since flooding").needed().from("0").to("3650"),
    Key::new("harvest.taken[].floaters", MASS, "9 g", "floaters taken out, fresh and drained").to("1000 kg"),
    Key::new("harvest.taken[].stems", MASS, "12 g", "fast growers cut off, fresh and drained").to("1000 kg"),

    placed!("events[].day", place::day, "21", "days since flooding").needed().from("0").to("3650"),
    placed!("events[].cap_added", place::cap_added, "10 mm", "sand spread over the whole bed").above("0 mm").to("1 m"),
    placed!("events[].water_change", place::water_change, "50 %", "share of the water replaced").above("0 %").to("100 %"),
    placed!("events[].disturbed", place::disturbed, "10 %", "share of the bed stirred").above("0 %").to("100 %"),
    Key::new("events[].plants_added", Sections, "[{ name = \"lemna_minor\", amount = \"10 %\" }]", "plants put in").at_most(100),
    Key::new("events[].plants_added[].name", Name("plants"), "lemna_minor", "which plant, by species or trade name").needed(),
    Key::new("events[].plants_added[].amount", Amount, "10 %", "cover, fresh mass, or portions as sold").needed().above("0").to("100000"),
    Key::new("events[].plants_added[].emergent", SHARE, "0 %", "share of the leaves above the water").to("100 %"),
    Key::new("events[].plants_added[].price", Number, "0.90", "price of one portion as counted").from("0").to("10000000"),
    Key::new("events[].plants_removed", Sections, "[{ name = \"lemna_minor\", amount = \"10 %\" }]", "plants taken out").at_most(100),
    Key::new("events[].plants_removed[].name", Name("plants"), "lemna_minor", "which plant, by species or trade name").needed(),
    Key::new("events[].plants_removed[].amount", Amount, "10 %", "cover, fresh mass, or portions as sold").needed().above("0").to("100000"),

    Key::new("events[].dosed", Section, "{ salt = \"potassium nitrate\", mass = \"0.2 g\" }", "a salt put in"),
    Key::new("events[].dosed.salt", <&Salt>::KIND, "potassium nitrate", "which salt").needed(),
    Key::new("events[].dosed.mass", MASS, "0.2 g", "how much of what is sold").needed().above("0 g").to("1 kg"),
    Key::new("events[].dosed.purity", SHARE, "98 %", "salt in what is sold; 98 % unless said").above("0 %").to("100 %"),
    Key::new("events[].fed", MASS, "200 mg", "dry food given beside what is fed every day").above("0 mg").to("10 kg"),
    Key::new("events[].topped_up", KeyKind::Quantity(Volume::NAME), "5 L", "water poured in for what went to the air; from the second on they tell how much goes").above("0 L").to("100000 L"),
    Key::new("events[].away", DURATION, "14 d", "nobody there: nothing fed, changed or thinned").from("1 h").to("365 d"),
    Key::new("events[].off", DURATION, "6 h", "filter and heater stood still").from("1 min").to("30 d"),
    Key::new("events[].drained", SHARE, "50 %", "emptied and carried elsewhere; share of the water that is new").above("0 %").to("100 %"),

    Key::new("events[].medicine", Text, "copper", "a medicine put in, by its active substance, or unknown"),
    Key::new("events[].filter_washed", Flag, "true", "the filter was washed or replaced"),
    Key::new("events[].lamp_changed", Flag, "true", "the lamp was changed for another"),
    Key::new("events[].animals_added", Sections, "[{ name = \"small_fish\", count = 4 }]", "animals that came from elsewhere; they stand under animals too").at_most(100),
    Key::new("events[].animals_added[].name", Name("animals"), "small_fish", "which kind of animal").needed(),
    Key::new("events[].animals_added[].count", Count, "4", "how many").needed().from("1").to("100000"),
    Key::new("events[].sprayed", Flag, "true", "something was sprayed, painted or polished in the room"),
    Key::new("events[].gas_added", Flag, "true", "carbon dioxide was led in"),

    Key::new("kit", Section, "{ nitrate = [0, 5, 10, 25, 50, 100] }", "the marks of your kits' cards, in mg/L"),
    Key::new("kit.ammonia", Numbers, "0, 0.2, 0.5, 1, 2, 5", "marks of the card for total ammonia, as nitrogen").from("0").to("1000").at_most(20),
    Key::new("kit.nitrite", Numbers, "0, 0.1, 0.3, 1, 3", "marks of the card for nitrite, as NO2").from("0").to("1000").at_most(20),
    Key::new("kit.nitrate", Numbers, "0, 5, 10, 25, 50, 100", "marks of the card for nitrate, as NO3").from("0").to("10000").at_most(20),

    Key::new("readings[].day", Number, "21", "days since flooding").from("0").to("3650"),
    Key::new("readings[].date", Date, "2027-03-27", "the date instead of the day, where start is given"),
    Key::new("readings[].ammonia", AMMONIA, "0.25-0.5 mg/L", "total ammonia, as nitrogen unless the scale is said; two marks where the colour lies between them").to("1000 mg/L"),
    Key::new("readings[].nitrite", NITRITE, "0.25 mg/L", "nitrite, as NO2 unless the scale is said; or two marks").to("1000 mg/L"),
    Key::new("readings[].nitrate", NITRATE, "40 mg/L", "nitrate, as NO3 unless the scale is said; or two marks").to("10000 mg/L"),
    Key::new("readings[].phosphate", PHOSPHATE, "0.5 mg/L", "phosphate, as PO4 unless the scale is said; or two marks").to("1000 mg/L"),
    Key::new("readings[].ph", Number, "7.2", "pH").from("3").to("11"),
    Key::new("readings[].temperature", TEMPERATURE, "24 C", "of the water").from("0 C").to("40 C"),
    Key::new("readings[].oxygen", CONCENTRATION, "7 mg/L", "dissolved oxygen").to("50 mg/L"),
    Key::new("readings[].hardness", KeyKind::Quantity(Hardness::NAME), "6 dGH", "calcium and magnesium").to("100 dGH"),
    Key::new("readings[].alkalinity", KeyKind::Quantity(Alkalinity::NAME), "4 dKH", "alkalinity").to("60 dKH"),
    Key::new("readings[].conductivity", KeyKind::Quantity(Conductivity::NAME), "350 uS/cm", "conductivity").to("20 mS/cm"),
    Key::new("readings[].potassium", CONCENTRATION, "5 mg/L", "potassium").to("1000 mg/L"),
    Key::new("readings[].iron", CONCENTRATION, "0.05 mg/L", "iron").to("100 mg/L"),
    Key::new("readings[].blank", Flag, "true", "whether the same kits showed nothing in water that holds nothing, tried beside the tank's"),

    Key::new("signs.observed", Names("signs"), "gasping_at_dawn", "what was seen, by the names of the sign table").at_most(100),
    Key::new("signs.absent", Names("signs"), "craters", "what was looked for and not seen").at_most(100),
    Key::new("signs.looked", Looked::KIND, "some", "some where not all of the common signs were looked for; all unless said"),

    plain!(goal.probability, "80 %", "share of the starts asked to hold, with changes by reading where they help").from("1 %").to("99 %").or("\"80 %\"", "judgement: four starts in five stay under the limits"),
    plain!(goal.ammonia as Ammonia, "0.5 mg/L", "replaces the watch limit for ammonia").above("0 mg/L").to("100 mg/L"),
    plain!(goal.nitrite as Nitrite, "0.33 mg/L", "replaces the watch limit for nitrite").above("0 mg/L").to("100 mg/L"),
    plain!(goal.nitrate as Nitrate, "40 mg/L", "replaces the watch limit for nitrate").above("0 mg/L").to("1000 mg/L"),
    plain!(goal.dawn_oxygen, "5 mg/L", "replaces the watch limit for dawn oxygen").above("0 mg/L").to("20 mg/L"),
];
