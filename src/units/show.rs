//! Quantities as people read them: the one place that rounds.

use super::{Flow, Length, Mass, Pressure, Temperature, Volume};

/// Part of a step that conversions may be off by.
const ROUNDING: f64 = 1e-6;

/// The units results are shown in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum UnitSystem {
    /// Centimetres, litres, kilograms, degrees Celsius.
    #[default]
    Metric,
    /// Inches, US gallons, pounds, degrees Fahrenheit.
    Us,
}

impl UnitSystem {
    /// A depth or thickness: "40 mm", "1.6 in".
    ///
    /// # Example
    /// ```
    /// use lentic::units::{Length, UnitSystem};
    /// assert_eq!(UnitSystem::Metric.depth(Length::from_cm(2.5)), "25 mm");
    /// ```
    pub fn depth(self, depth: Length) -> String {
        match self {
            Self::Metric => format!("{} mm", fixed(depth.mm(), 0)),
            Self::Us => format!("{} in", fixed(depth.inches(), 2)),
        }
    }

    /// A depth as it is advised: up to the next half centimetre, or quarter of an inch.
    ///
    /// # Example
    /// ```
    /// use lentic::units::{Length, UnitSystem};
    /// let up = |mm| UnitSystem::Metric.up(Length::from_mm(mm)).mm();
    /// assert!((up(21.0) - 25.0).abs() < 1e-9 && (up(25.0) - 25.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn up(self, depth: Length) -> Length {
        let step = self.step();
        step * (depth / step - ROUNDING).ceil()
    }

    /// The same down to the one before.
    #[must_use]
    pub fn down(self, depth: Length) -> Length {
        let step = self.step();
        step * (depth / step + ROUNDING).floor()
    }

    /// What advised depths are counted in.
    fn step(self) -> Length {
        match self {
            Self::Metric => Length::from_mm(5.0),
            Self::Us => Length::from_inches(0.25),
        }
    }

    /// The least and the greatest of a depth: "20 mm to 40 mm", or "40 mm" where they
    /// are shown alike.
    pub fn depths(self, [least, greatest]: [Length; 2]) -> String {
        let (low, high) = (self.depth(least), self.depth(greatest));
        if low == high {
            low
        } else {
            format!("{low} to {high}")
        }
    }

    /// An outer or inner dimension: "60 cm", "23.6 in".
    pub fn dimension(self, length: Length) -> String {
        match self {
            Self::Metric => format!("{} cm", fixed(length.cm(), 1)),
            Self::Us => format!("{} in", fixed(length.inches(), 1)),
        }
    }

    /// A grain size, always metric as sieves are named: "0.46 mm".
    pub fn grain(self, size: Length) -> String {
        format!("{} mm", significant(size.mm(), 2))
    }

    /// A volume of water or tank: "54.9 L", "14.5 US gal".
    pub fn volume(self, volume: Volume) -> String {
        match self {
            Self::Metric => format!("{} L", significant(volume.litres(), 3)),
            Self::Us => format!("{} US gal", significant(volume.us_gal(), 3)),
        }
    }

    /// A volume of soil or sand: "4.5 L", "4.1 dry qt".
    pub fn bulk_volume(self, volume: Volume) -> String {
        match self {
            Self::Metric if volume.litres() < 0.1 => format!("{} mL", significant(volume.ml(), 2)),
            Self::Metric => format!("{} L", significant(volume.litres(), 2)),
            Self::Us => format!("{} dry qt", significant(volume.dry_qt(), 2)),
        }
    }

    /// A mass: "12.3 kg", "27 lb"; small ones in grams or ounces.
    pub fn mass(self, mass: Mass) -> String {
        match self {
            Self::Metric if mass.kg() < 1.0 => format!("{} g", significant(mass.g(), 2)),
            Self::Metric => format!("{} kg", significant(mass.kg(), 3)),
            Self::Us if mass.lb() < 0.25 => format!("{} oz", significant(mass.lb() * 16.0, 2)),
            Self::Us => format!("{} lb", significant(mass.lb(), 3)),
        }
    }

    /// A plant's or an animal's fresh mass: "47 g", "1.7 oz".
    pub fn plant_mass(self, mass: Mass) -> String {
        match self {
            Self::Metric => format!("{} g", significant(mass.g(), 2)),
            Self::Us => format!("{} oz", significant(mass.lb() * 16.0, 2)),
        }
    }

    /// A temperature: "24 C", "75 F".
    pub fn temperature(self, temperature: Temperature) -> String {
        match self {
            Self::Metric => format!("{} C", fixed(temperature.celsius(), 1)),
            Self::Us => format!("{} F", fixed(temperature.fahrenheit(), 1)),
        }
    }

    /// A pressure on a floor: "4.4 kPa", "92 psf".
    pub fn floor_pressure(self, pressure: Pressure) -> String {
        match self {
            Self::Metric => format!("{} kPa", significant(pressure.kpa(), 2)),
            Self::Us => format!("{} psf", significant(pressure.psf(), 2)),
        }
    }

    /// A flow of air: "0.5 L/min", "0.5 L/min (1.1 ft3/h)"; pumps are sold by litres a minute
    /// in either system.
    pub fn air_flow(self, flow: Flow) -> String {
        let l_min = significant(flow.l_min(), 2);
        match self {
            Self::Metric => format!("{l_min} L/min"),
            Self::Us => {
                let ft3_h = flow.l_min() * 60.0 / super::constants::L_PER_FT3;
                format!("{l_min} L/min ({} ft3/h)", significant(ft3_h, 2))
            }
        }
    }

    /// A pressure that a pump has to exceed: "2.9 kPa", "0.42 psi".
    pub fn pump_pressure(self, pressure: Pressure) -> String {
        match self {
            Self::Metric => format!("{} kPa", significant(pressure.kpa(), 2)),
            Self::Us => format!("{} psi", significant(pressure.psi(), 2)),
        }
    }

    /// A flow of air or water: "0.5 L/min", "30 gal/h".
    pub fn flow(self, flow: Flow) -> String {
        match self {
            Self::Metric => format!("{} L/min", significant(flow.l_min(), 2)),
            Self::Us => format!(
                "{} US gal/h",
                significant(flow.l_min() * 60.0 / super::constants::L_PER_US_GAL, 2)
            ),
        }
    }
}

/// A whole number with what it counts: "1 day", "22 days".
///
/// # Example
/// ```
/// use lentic::units::show::counted;
/// assert_eq!(counted(1.0, "more day"), "1 more day");
/// assert_eq!(counted(0.0, "day"), "0 days");
/// ```
pub fn counted(number: f64, one: &str) -> String {
    let whole = fixed(number, 0);
    let ending = if whole == "1" { "" } else { "s" };
    format!("{whole} {one}{ending}")
}

/// A number with `digits` significant figures and no needless zeros.
///
/// # Example
/// ```
/// use lentic::units::show::significant;
/// assert_eq!(significant(0.012_34, 2), "0.012");
/// ```
pub fn significant(value: f64, digits: u8) -> String {
    if value == 0.0 || !value.is_finite() {
        return "0".to_owned();
    }
    let magnitude = value.abs().log10().floor();
    let decimals = (f64::from(digits) - 1.0 - magnitude).max(0.0);
    let step = 10_f64.powf(f64::from(digits) - 1.0 - magnitude);
    let rounded = (value * step).round() / step;
    // Ten decimals show any value that a tank can have.
    fixed(rounded, decimals.min(10.0) as u8)
}

/// A number with at most `decimals` decimals and no needless zeros.
///
/// # Example
/// ```
/// use lentic::units::show::fixed;
/// assert_eq!(fixed(2.5, 2), "2.5");
/// ```
pub fn fixed(value: f64, decimals: u8) -> String {
    let text = format!("{value:.0$}", usize::from(decimals));
    let text = if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.')
    } else {
        &text
    };
    if text == "-0" {
        "0".to_owned()
    } else {
        text.to_owned()
    }
}
