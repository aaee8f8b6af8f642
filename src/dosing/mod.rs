//! What hungry plants are given: salts sized by the scarcest ion that may go in, as a
//! stock solution that can be measured, or nitrogen among the roots.

mod dose;
mod need;
mod readings;
mod root_zone;
mod section;
mod words;
mod working;

pub use need::Nutrients;
pub use readings::{Readings, Refusal};
pub use section::{Dose, Dosing, RootZone};
pub use working::steps;

use crate::design::Design;

/// A tank whose plants lack something.
#[derive(Debug, Clone, Copy)]
pub struct Hunger<'a> {
    /// The tank.
    pub design: &'a Design,
    /// What the plants would take in a week beyond all that comes in by itself.
    pub need: Nutrients,
    /// What was read, and when today is.
    pub readings: Readings,
}

/// What is given to a hungry tank, each dose after a test.
///
/// # Errors
/// Where nothing may be given: ammonia or nitrite over its limit, or no fresh reading.
///
/// # Example
/// ```
/// use lentic::dosing::{Hunger, Nutrients, Readings, dosing};
/// let design = lentic::spec::parse(
///     r#"
///     [tank]
///     size = "45 x 30 x 30 cm"
///     [soil]
///     material = "sandy_loam"
///     depth = "20 mm"
///     [cap]
///     material = "filter_sand"
///     depth = "40 mm"
///     [[readings]]
///     day = 420
///     nitrate = "0 mg/L"
///     "#,
/// )?;
/// let hunger = Hunger {
///     design: &design,
///     need: Nutrients::of_growth(1.2),
///     readings: Readings::of(&design, None),
/// };
/// let given = dosing(&hunger)?;
/// // 30 mg of potassium are in 77.6 mg of pure salt
/// assert_eq!(given.dosing[0].salt, "potassium nitrate");
/// assert!((given.dosing[0].salt_mg_per_week * 0.98 - 77.6).abs() < 0.1);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn dosing(hunger: &Hunger<'_>) -> Result<Dosing, Refusal> {
    hunger.readings.allow()?;
    let doses = dose::all(hunger);
    let nitrogen = doses.nitrogen_left_mg;
    Ok(Dosing {
        root_zone: (nitrogen > 0.0)
            .then(|| root_zone::of(hunger.design, hunger.need.nitrogen))
            .flatten(),
        dosing: doses.list,
    })
}
