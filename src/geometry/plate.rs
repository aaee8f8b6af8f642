//! Bending of a flat pane under water: an informative estimate, never a design.
//!
//! Linear theory of thin plates on hinged edges. It knows nothing of chips and
//! scratches, of uneven support, of knocks, of heat or of the seams, and no building
//! standard covers a home tank: whoever builds or repairs one asks a glazier or a
//! glass engineer.

use crate::units::{Length, Pressure, constants::GRAVITY_M_S2};

/// Density of the water behind a pane, kg/m3, rounded up on purpose.
const WATER_KG_M3: f64 = 1000.0;

/// One row: length over height, then the factors of stress and deflection.
type Row = [f64; 3];

/// Hinged on four edges under water to the rim.
///
/// Levy's series, at least 120 odd terms, Poisson's ratio 0.3.
const FOUR_EDGES: [Row; 30] = [
    [0.1, 0.006_21, 0.000_011_67],
    [0.2, 0.021_24, 0.000_157_9],
    [0.3, 0.041_09, 0.000_678],
    [0.4, 0.062_75, 0.001_812],
    [0.5, 0.0840, 0.003_715],
    [0.6, 0.1031, 0.006_42],
    [0.7, 0.1191, 0.009_82],
    [0.8, 0.1317, 0.013_76],
    [0.9, 0.1424, 0.018_02],
    [0.95, 0.1514, 0.020_22],
    [1.0, 0.1619, 0.022_43],
    [1.1, 0.1838, 0.026_82],
    [1.2, 0.2045, 0.031_08],
    [1.3, 0.2238, 0.035_11],
    [1.4, 0.2416, 0.038_88],
    [1.5, 0.2578, 0.042_37],
    [1.6, 0.2724, 0.045_55],
    [1.7, 0.2856, 0.048_43],
    [1.8, 0.2974, 0.051_04],
    [1.9, 0.3079, 0.053_37],
    [2.0, 0.3172, 0.055_46],
    [2.1, 0.3254, 0.057_33],
    [2.2, 0.3327, 0.058_98],
    [2.3, 0.3392, 0.060_46],
    [2.4, 0.3448, 0.061_76],
    [2.6, 0.3542, 0.063_93],
    [3.0, 0.3670, 0.066_93],
    [3.5, 0.3759, 0.069_04],
    [4.0, 0.3804, 0.070_12],
    // A long pane bends as a strip: 6/(9 sqrt 3) and 12 (1 - 0.3^2) 0.006522.
    [5.0, 0.3849, 0.071_22],
];

/// Hinged on three edges with the top free, under water to the top; as above.
const TOP_FREE: [Row; 26] = [
    [0.1, 0.006_21, 0.000_011_67],
    [0.2, 0.021_24, 0.000_157_9],
    [0.3, 0.041_10, 0.000_678_4],
    [0.4, 0.063_00, 0.001_822],
    [0.5, 0.0854, 0.003_81],
    [0.6, 0.1078, 0.006_86],
    [0.7, 0.1303, 0.011_26],
    [0.8, 0.1533, 0.017_36],
    [0.85, 0.1650, 0.021_22],
    [0.9, 0.1769, 0.026_58],
    [1.0, 0.2014, 0.040_18],
    [1.05, 0.2141, 0.048_37],
    [1.1, 0.2304, 0.057_52],
    [1.2, 0.2647, 0.078_84],
    [1.3, 0.2976, 0.104_29],
    [1.4, 0.3288, 0.133_95],
    [1.5, 0.3579, 0.167_87],
    [1.6, 0.3850, 0.206_06],
    [1.7, 0.4100, 0.248_49],
    [1.8, 0.4329, 0.295_12],
    [1.9, 0.4539, 0.345_91],
    [2.0, 0.4730, 0.400_80],
    [2.1, 0.4904, 0.459_72],
    [2.2, 0.5062, 0.522_63],
    [2.3, 0.5204, 0.589_45],
    [2.4, 0.5335, 0.660_13],
];

/// Length over height up to which an unbraced pane has a figure.
pub const UNBRACED_RATIO_MOST: f64 = 2.4;

/// How the edges of an upright pane are held.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Support {
    /// Sides and bottom; nothing holds the top.
    TopFree,
    /// All four edges: a stiff frame runs around the whole rim.
    FourEdges,
}

/// An upright pane with water to its upper edge, which errs on the careful side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SidePane {
    /// Between its upright edges.
    pub length: Length,
    /// From the floor to the rim.
    pub height: Length,
    /// How thick it is.
    pub thickness: Length,
    /// Young's modulus.
    pub stiffness: Pressure,
}

/// What a pane does under its water.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SideBending {
    /// It bends by so much.
    Figures(Bending),
    /// No figure: without a brace at the rim a pane of this length over height twists
    /// off-centre and nears a hinged flap.
    NeedsBrace {
        /// Length over height.
        ratio: f64,
    },
}

/// Stress and deflection at their greatest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bending {
    /// Tensile stress.
    pub stress: Pressure,
    /// Out of the plane of the pane.
    pub deflection: Length,
    /// Length over height; for a bottom, long over short side.
    pub ratio: f64,
    /// Stress over pressure at the bottom times (height/thickness) squared.
    pub stress_factor: f64,
    /// Deflection over pressure x height^4 / (stiffness x thickness^3).
    pub deflection_factor: f64,
    /// The deflection is at most half the thickness, as linear theory asks.
    pub small: bool,
}

impl SidePane {
    /// Greatest stress and deflection.
    ///
    /// ```text
    /// stress     = beta p0 H2 / t2,   p0 = rho g H
    /// deflection = alpha p0 H4 / (E t3)
    /// ```
    ///
    /// # Valid range
    /// Deflection up to half the thickness (`small`). Unbraced, length over height up to
    /// [`UNBRACED_RATIO_MOST`]: beyond it no figure. Braced panes longer than 5 heights
    /// bend as a strip, to 0.3 %.
    ///
    /// # Source
    /// Theory: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed.
    /// The factors were computed by Levy's series and agree with Roark's Formulas for
    /// Stress and Strain, 7th ed., table 11.4, cases 1d and 1e, to its two digits.
    ///
    /// # Example
    /// ```
    /// use lentic::geometry::plate::{SideBending, SidePane, Support};
    /// use lentic::units::{Length, Pressure};
    /// let pane = SidePane {
    ///     length: Length::from_cm(60.0),
    ///     height: Length::from_cm(36.0),
    ///     thickness: Length::from_mm(6.0),
    ///     stiffness: Pressure::from_mpa(70_000.0),
    /// };
    /// let SideBending::Figures(bending) = pane.bend(Support::TopFree) else {
    ///     panic!("shorter than 2.4 heights");
    /// };
    /// assert!((bending.stress.mpa() - 5.108).abs() < 0.02);
    /// ```
    ///
    /// # Limits
    /// Poisson's ratio is 0.3; that of glass, 0.2, gives up to 6 % less stress and a
    /// deflection within 6 %.
    pub fn bend(&self, support: Support) -> SideBending {
        let ratio = self.length / self.height;
        let table: &[Row] = match support {
            Support::FourEdges => &FOUR_EDGES,
            // A pane of just that ratio must not be refused for its rounding.
            Support::TopFree if ratio > UNBRACED_RATIO_MOST * (1.0 + 1e-9) => {
                return SideBending::NeedsBrace { ratio };
            }
            Support::TopFree => &TOP_FREE,
        };
        SideBending::Figures(Bending::new(
            table,
            ratio,
            water_pressure_pa(self.height),
            &Slab {
                span: self.height,
                thickness: self.thickness,
                stiffness: self.stiffness,
            },
        ))
    }
}

/// What a plate's factors are multiplied with.
struct Slab {
    span: Length,
    thickness: Length,
    stiffness: Pressure,
}

impl Bending {
    fn new(table: &[Row], ratio: f64, pressure_pa: f64, slab: &Slab) -> Self {
        let [stress_factor, deflection_factor] = interpolated(table, ratio);
        let slenderness = slab.span / slab.thickness;
        let stress_pa = stress_factor * pressure_pa * slenderness.powi(2);
        let deflection = slab.span
            * (deflection_factor * pressure_pa * slenderness.powi(3) / slab.stiffness.pa());
        Self {
            stress: Pressure::from_pa(stress_pa),
            deflection,
            ratio,
            stress_factor,
            deflection_factor,
            small: deflection <= slab.thickness * 0.5,
        }
    }
}

fn water_pressure_pa(depth: Length) -> f64 {
    WATER_KG_M3 * GRAVITY_M_S2 * depth.m()
}

/// Both factors at a ratio: a power of the ratio between rows and below the first,
/// constant beyond the last.
fn interpolated(table: &[Row], ratio: f64) -> [f64; 2] {
    for pair in table.windows(2) {
        if let [low, high] = pair
            && ratio < high[0]
        {
            let share = (ratio / low[0]).ln() / (high[0] / low[0]).ln();
            return [1, 2].map(|column| low[column] * (high[column] / low[column]).powf(share));
        }
    }
    table.last().map_or([f64::NAN; 2], |row| [row[1], row[2]])
}
