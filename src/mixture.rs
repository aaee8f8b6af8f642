//! Tap and soft water in one bucket, with the salts that it lacks then.

use serde::Serialize;
use thiserror::Error;

use crate::design::FillWater;
use crate::result::results;
use crate::source::Band;
use crate::units::constants::CACO3_MG_L_PER_DEGREE;
use crate::units::show::significant;
use crate::units::{Alkalinity, Concentration, Hardness, Share, Volume};
use crate::water::mixing::tap_share;
use crate::water::salt::{BAKING_SODA, EPSOM_SALT, Element, GYPSUM, Salt};
use crate::water::tap;

/// Share of added hardness that is magnesium: practice, three parts of calcium to one.
const MAGNESIUM_SHARE: f64 = 0.25;
/// Less of a degree than this is no lack.
const NO_LACK: f64 = 1e-6;

results! {
    /// A salt to dissolve in new water.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct SaltMass {
        /// what shops call it
        pub name: &'static str => Section,
        /// so much of it
        pub mass_g: f64 => Section,
    }
}

/// Both waters have more than is asked for.
#[derive(Debug, Clone, PartialEq, Error)]
#[error(
    "no mixture has {goal} {unit}: the tap has {tap} and the water that it is mixed with {soft}"
)]
pub struct NoMixture {
    /// The spec's key of the goal.
    pub key: &'static str,
    /// What is asked for.
    pub goal: String,
    /// What the tap has.
    pub tap: String,
    /// What the softened water has.
    pub soft: String,
    /// The degrees that all three are in.
    pub unit: &'static str,
}

/// A mixture with its salts.
#[derive(Debug, Clone)]
pub struct Mixture {
    water: FillWater,
    volume: Volume,
    tap_share: Share,
    /// Degrees that salts have to bring.
    lacks_dgh: f64,
    lacks_dkh: f64,
}

/// One of hardness and alkalinity, in degrees.
struct Degrees {
    key: &'static str,
    unit: &'static str,
    tap: f64,
    soft: f64,
    goal: Option<f64>,
}

impl Degrees {
    /// The most tap water that the goal bears; all of it where the tap has no more.
    fn most_tap(&self) -> Result<Share, NoMixture> {
        let whole = Share::from_fraction(1.0);
        let Some(goal) = self.goal.filter(|goal| self.tap > *goal) else {
            return Ok(whole);
        };
        tap_share(goal, self.soft, self.tap).ok_or_else(|| NoMixture {
            key: self.key,
            goal: significant(goal, 3),
            tap: significant(self.tap, 3),
            soft: significant(self.soft, 3),
            unit: self.unit,
        })
    }

    fn at(&self, tap_share: Share) -> f64 {
        let share = tap_share.fraction();
        self.tap * share + self.soft * (1.0 - share)
    }

    /// What the mixture lacks.
    fn lack(&self, tap_share: Share) -> f64 {
        let lack = self.goal.map_or(0.0, |goal| goal - self.at(tap_share));
        if lack > NO_LACK { lack } else { 0.0 }
    }
}

fn hardness(water: &FillWater) -> Degrees {
    Degrees {
        key: "hardness",
        unit: "dGH",
        tap: water.hardness.dgh(),
        soft: water.softened.hardness.dgh(),
        goal: water.goal.hardness.map(Hardness::dgh),
    }
}

fn alkalinity(water: &FillWater) -> Degrees {
    Degrees {
        key: "alkalinity",
        unit: "dKH",
        tap: water.alkalinity.dkh(),
        soft: water.softened.alkalinity.dkh(),
        goal: water.goal.alkalinity.map(Alkalinity::dkh),
    }
}

impl Mixture {
    /// As much tap water as neither goal forbids; salts bring what is lacking then.
    ///
    /// # Errors
    /// Where both waters have more than is asked for.
    pub fn of(water: &FillWater, volume: Volume) -> Result<Self, NoMixture> {
        let (hardness, alkalinity) = (hardness(water), alkalinity(water));
        let tap_share = hardness.most_tap()?.min(alkalinity.most_tap()?);
        Ok(Self {
            water: water.clone(),
            volume,
            tap_share,
            lacks_dgh: hardness.lack(tap_share),
            lacks_dkh: alkalinity.lack(tap_share),
        })
    }

    /// Share of tap water in it, 0 to 1.
    pub fn tap_share(&self) -> f64 {
        self.tap_share.fraction()
    }

    /// Tap water in it.
    pub fn tap(&self) -> Volume {
        self.volume * self.tap_share()
    }

    /// Softened water in it.
    pub fn soft(&self) -> Volume {
        self.volume - self.tap()
    }

    /// Hardness with its salts.
    pub fn hardness(&self) -> Hardness {
        Hardness::from_dgh(hardness(&self.water).at(self.tap_share) + self.lacks_dgh)
    }

    /// Alkalinity with its salts.
    pub fn alkalinity(&self) -> Alkalinity {
        Alkalinity::from_dkh(alkalinity(&self.water).at(self.tap_share) + self.lacks_dkh)
    }

    /// Nitrate, as NO3.
    pub fn nitrate(&self) -> Concentration {
        let soft = self.water.softened.nitrate;
        soft + (self.water.nitrate - soft) * self.tap_share()
    }

    /// Each salt with the degrees that it brings.
    fn additions(&self) -> [(&'static Salt, f64); 3] {
        [
            (&BAKING_SODA, self.lacks_dkh),
            (&GYPSUM, self.lacks_dgh * (1.0 - MAGNESIUM_SHARE)),
            (&EPSOM_SALT, self.lacks_dgh * MAGNESIUM_SHARE),
        ]
    }

    /// The salts that it lacks, for all of it.
    pub fn salts(&self) -> Vec<SaltMass> {
        let added = self.additions().into_iter();
        added
            .filter(|(_, degrees)| *degrees > 0.0)
            .map(|(salt, degrees)| SaltMass {
                name: salt.name,
                mass_g: salt.mg_per_degree_l() * degrees * self.volume.litres() * 1e-3,
            })
            .collect()
    }

    /// What the salts bring; the tap's own is not known.
    pub fn sodium(&self) -> Concentration {
        let soda = BAKING_SODA.mg_per_degree_l() * self.lacks_dkh;
        Concentration::from_mg_l(soda * BAKING_SODA.share(Element::Na))
    }

    /// Of both waters by their shares, and of the salts as of as many degrees.
    pub fn conductivity_us_cm(&self) -> Band {
        let (water, soft) = (&self.water, &self.water.softened);
        let of_tap = tap::conductivity(water.conductivity, water.hardness, water.alkalinity);
        let of_soft = tap::conductivity(None, soft.hardness, soft.alkalinity);
        let added =
            Hardness::from_caco3_mg_l((self.lacks_dgh + self.lacks_dkh) * CACO3_MG_L_PER_DEGREE);
        let of_salts = tap::conductivity(None, added, Alkalinity::ZERO);
        let share = self.tap_share();
        let sum = |end: fn(Band) -> f64| {
            end(of_tap) * share + end(of_soft) * (1.0 - share) + end(of_salts)
        };
        Band::new(
            sum(|band| band.low),
            sum(|band| band.typical),
            sum(|band| band.high),
        )
    }
}
