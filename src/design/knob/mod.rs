//! Knobs: the closed list of what may be varied about a tank, and turning them.

mod follow;
mod turn;

use super::{Amount, Device, Draft, DutyHours, Material, Rim, Violation};
use crate::catalogue;
use crate::geometry::Dimension;
use crate::plants::light::LightClass;
use crate::units::size::Size;
use crate::units::{
    Alkalinity, Concentration, Content, Density, Duration, Flow, Hardness, Length, Mass,
    PhotonFlux, Share, Sorption, Temperature,
};

/// One thing that may be varied about a tank.
///
/// # Example
/// ```
/// use lentic::design::{Knob, KnobKind, Value};
/// use lentic::units::Length;
/// # let text = "[tank]\nshape = \"box\"\nsize = \"60 x 30 x 36 cm\"\n[soil]\nmaterial = \"loam_topsoil\"\ndepth = \"25 mm\"\n[cap]\nmaterial = \"filter_sand\"\ndepth = \"40 mm\"";
/// # let mut draft = lentic::spec::parse(text)?.into_draft();
/// let cap = Knob::of(KnobKind::CapDepth);
/// cap.turn(&mut draft, Value::Length(Length::from_mm(30.0)))?;
/// assert_eq!(draft.cap.depth.middle().mm(), 30.0);
/// assert_eq!(cap.path(), "cap.depth");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Knob {
    /// What it turns.
    pub kind: KnobKind,
    /// Which of a list of plants, animals, stones or events, counted from 0.
    pub item: usize,
}

/// Declares the knobs with the paths of what they turn.
macro_rules! kinds {
    ($($name:ident = $path:literal,)+) => {
        /// What a knob turns, named as the key that says it.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        pub enum KnobKind {
            $(#[doc = concat!("`", $path, "`.")] $name,)+
        }

        impl KnobKind {
            /// Every kind.
            pub const ALL: &'static [Self] = &[$(Self::$name),+];

            /// The path; `[]` stands for any item of a list.
            pub const fn pattern(self) -> &'static str {
                match self {
                    $(Self::$name => $path,)+
                }
            }
        }
    };
}

kinds! {
    TankSize = "tank.size",
    TankLength = "tank.length",
    TankWidth = "tank.width",
    TankHeight = "tank.height",
    TankDiameter = "tank.diameter",
    TankRadius = "tank.radius",
    TankWidthEnd = "tank.width_end",
    TankWidthMiddle = "tank.width_middle",
    TankSides = "tank.sides",
    TankSide = "tank.side",
    TankCutLength = "tank.cut_length",
    TankCutWidth = "tank.cut_width",
    TankFront = "tank.front",
    TankBack = "tank.back",
    TankBase = "tank.base",
    TankMouth = "tank.mouth",
    TankOutside = "tank.outside",
    TankWall = "tank.wall",
    TankBottom = "tank.bottom",
    TankMaterial = "tank.material",
    TankFreeboard = "tank.freeboard",
    TankLid = "tank.lid",
    TankRim = "tank.rim",
    TankStand = "tank.stand",
    SoilMaterial = "soil.material",
    SoilDepth = "soil.depth",
    SoilDepthBack = "soil.depth.back",
    SoilDepthFront = "soil.depth.front",
    SoilDepthLeft = "soil.depth.left",
    SoilDepthRight = "soil.depth.right",
    SoilSoaked = "soil.soaked",
    SoilDryBulkDensity = "soil.properties.dry_bulk_density",
    SoilPorosity = "soil.properties.porosity",
    SoilTotalNitrogen = "soil.properties.total_nitrogen",
    SoilMineralNitrogen = "soil.properties.mineral_nitrogen",
    SoilOrganicMatter = "soil.properties.organic_matter",
    SoilAmmoniumKd = "soil.properties.ammonium_kd",
    CapMaterial = "cap.material",
    CapDepth = "cap.depth",
    CapDepthBack = "cap.depth.back",
    CapDepthFront = "cap.depth.front",
    CapDepthLeft = "cap.depth.left",
    CapDepthRight = "cap.depth.right",
    CapD10 = "cap.grading.d10",
    CapD15 = "cap.grading.d15",
    CapD50 = "cap.grading.d50",
    CapD85 = "cap.grading.d85",
    CapDryBulkDensity = "cap.properties.dry_bulk_density",
    CapPorosity = "cap.properties.porosity",
    StoneMaterial = "hardscape[].material",
    StoneMass = "hardscape[].mass",
    PlantName = "plants[].name",
    PlantAmount = "plants[].amount",
    PlantEmergent = "plants[].emergent",
    PlantPrice = "plants[].price",
    WaterTemperature = "water.temperature",
    WaterPh = "water.ph",
    WaterAlkalinity = "water.alkalinity",
    WaterHardness = "water.hardness",
    WaterAmmonia = "water.ammonia",
    WaterNitrite = "water.nitrite",
    WaterNitrate = "water.nitrate",
    WaterPhosphate = "water.phosphate",
    ChangeShare = "water.change.share",
    ChangeEvery = "water.change.every",
    ChangeFrom = "water.change.from",
    ChangeUntil = "water.change.until",
    LightPar = "light.par",
    LightClass = "light.class",
    LightLumens = "light.lumens",
    LightHeight = "light.height",
    LightHours = "light.hours",
    AirDevice = "air.device",
    AirFlow = "air.flow",
    AirDepth = "air.depth",
    AirHours = "air.hours",
    AnimalName = "animals[].name",
    AnimalCount = "animals[].count",
    AnimalFromDay = "animals[].from_day",
    FeedMass = "feed.mass_per_day",
    FeedProtein = "feed.protein",
    RoomTemperature = "room.temperature",
    RoomHumidity = "room.humidity",
    RoomAltitude = "room.altitude",
    RoomTariff = "room.tariff",
    HarvestFloatersAbove = "harvest.floaters_above",
    EventDay = "events[].day",
    EventCapAdded = "events[].cap_added",
    EventWaterChange = "events[].water_change",
    EventDisturbed = "events[].disturbed",
    GoalProbability = "goal.probability",
    GoalAmmonia = "goal.ammonia",
    GoalNitrite = "goal.nitrite",
    GoalNitrate = "goal.nitrate",
    GoalDawnOxygen = "goal.dawn_oxygen",
}

impl KnobKind {
    /// The kind with this path.
    pub fn find(pattern: &str) -> Option<Self> {
        let is_named = |kind: &Self| kind.pattern() == pattern;
        Self::ALL.iter().copied().find(is_named)
    }

    /// The dimension of the vessel that it turns, where it turns one.
    const fn dimension(self) -> Option<Dimension> {
        Some(match self {
            Self::TankLength => Dimension::Length,
            Self::TankWidth => Dimension::Width,
            Self::TankHeight => Dimension::Height,
            Self::TankDiameter => Dimension::Diameter,
            Self::TankRadius => Dimension::Radius,
            Self::TankWidthEnd => Dimension::WidthEnd,
            Self::TankWidthMiddle => Dimension::WidthMiddle,
            Self::TankSide => Dimension::Side,
            Self::TankCutLength => Dimension::CutLength,
            Self::TankCutWidth => Dimension::CutWidth,
            Self::TankFront => Dimension::Front,
            Self::TankBack => Dimension::Back,
            Self::TankBase => Dimension::Base,
            Self::TankMouth => Dimension::Mouth,
            _ => return None,
        })
    }
}

/// What a knob is turned to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Value {
    /// A length.
    Length(Length),
    /// A mass.
    Mass(Mass),
    /// A share of a whole.
    Share(Share),
    /// A density.
    Density(Density),
    /// A content in dry mass.
    Content(Content),
    /// A sorption.
    Sorption(Sorption),
    /// A temperature.
    Temperature(Temperature),
    /// An alkalinity.
    Alkalinity(Alkalinity),
    /// A hardness.
    Hardness(Hardness),
    /// A concentration, of a nutrient on its own scale.
    Concentration(Concentration),
    /// A time.
    Duration(Duration),
    /// Light at the water surface.
    PhotonFlux(PhotonFlux),
    /// A flow.
    Flow(Flow),
    /// A plain number: hours, days, pH, a price, lumens.
    Number(f64),
    /// A whole number.
    Count(u32),
    /// Yes or no.
    Flag(bool),
    /// Length, width and height of a box.
    Size(Size),
    /// How much of a plant.
    Amount(Amount),
    /// A soil of the catalogue.
    Soil(&'static catalogue::Soil),
    /// A cap of the catalogue.
    Cap(&'static catalogue::Cap),
    /// A stone of the catalogue.
    Stone(&'static catalogue::Stone),
    /// A plant of the catalogue.
    Plant(&'static catalogue::Plant),
    /// An animal of the catalogue.
    Animal(&'static catalogue::Animal),
    /// What walls are made of.
    Material(Material),
    /// How the upper edge is held.
    Rim(Rim),
    /// A lamp in words.
    LightClass(LightClass),
    /// What moves air or water.
    Device(Device),
    /// When a device runs.
    DutyHours(DutyHours),
}

impl Knob {
    /// A knob that is no item of a list, or the first item's.
    pub const fn of(kind: KnobKind) -> Self {
        Self { kind, item: 0 }
    }

    /// The path of what it turns: `plants[2].amount`.
    pub fn path(&self) -> String {
        self.kind
            .pattern()
            .replace("[]", &format!("[{}]", self.item))
    }

    /// Turns it; what stood for a key not said follows where it hangs on this one.
    ///
    /// # Errors
    /// When the draft has nothing there to turn, or the value is of another kind.
    pub fn turn(&self, draft: &mut Draft, value: Value) -> Result<(), Violation> {
        turn::turn(*self, draft, value)?;
        follow::follow(*self, draft);
        Ok(())
    }
}
