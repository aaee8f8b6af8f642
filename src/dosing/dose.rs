//! Salts against what plants need, held under the limits of each ion.

use super::Hunger;
use super::need::{WEEK_D, nitrogen_of_feed};
use super::section::Dose;
use crate::units::constants::molar_mass;
use crate::water::salt::{
    EPSOM_SALT, Element, POTASSIUM_NITRATE, POTASSIUM_PHOSPHATE, POTASSIUM_SULFATE, PURITY, Salt,
};
use crate::water::tap;

/// Salt in a litre of stock solution, g: a millilitre holds 10 mg.
const STOCK_G_PER_L: f64 = 10.0;
/// More than one dose a day is none that a person keeps up.
const MOST_DOSES: u32 = 7;
/// Iron in a gram of chelate: practice, 6 to 13 % by label.
const CHELATE_IRON: f64 = 0.11;
/// Iron of a dose, mg/L, and doses a week: practice.
const IRON_DOSE_MG_L: f64 = 0.05;
const IRON_DOSES: u32 = 2;
/// Less than this is no need, mg a week.
const NO_NEED_MG: f64 = 1e-6;

/// An ion of the water, as kits read it, mg/L.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Ion {
    element: Element,
    /// Ion in a milligram of the element.
    per_element: f64,
    /// The most that a dose raises it by (judgement).
    dose: f64,
    /// The most that it stands at (judgement, far under what was seen to harm).
    standing: f64,
    /// The aim: from the first on none is given for it, over the second none beside
    /// another (practice).
    aim: (f64, f64),
    /// What it is called.
    name: &'static str,
}

/// It stands at 9 mg/L at most, the 2 mg N/L that protect the most sensitive animals of
/// Camargo 2005 (`camargo_2005`).
const NITRATE: Ion = Ion {
    element: Element::N,
    per_element: molar_mass::NO3 / molar_mass::N,
    dose: 5.0,
    standing: 9.0,
    aim: (2.0, 10.0),
    name: "nitrate",
};
const PHOSPHATE: Ion = Ion {
    element: Element::P,
    per_element: molar_mass::PO4 / molar_mass::P,
    dose: 0.3,
    standing: 1.0,
    aim: (0.1, 0.5),
    name: "phosphate",
};
const POTASSIUM: Ion = Ion {
    element: Element::K,
    per_element: 1.0,
    dose: 3.0,
    standing: 10.0,
    aim: (2.0, 8.0),
    name: "potassium",
};
const MAGNESIUM: Ion = Ion {
    element: Element::Mg,
    per_element: 1.0,
    dose: 3.0,
    standing: f64::INFINITY,
    aim: (3.0, 10.0),
    name: "magnesium",
};
/// Salts whose elements are reckoned with.
const SALTS: [&Salt; 4] = [
    &POTASSIUM_NITRATE,
    &POTASSIUM_SULFATE,
    &POTASSIUM_PHOSPHATE,
    &EPSOM_SALT,
];
/// Iron is reckoned by itself: its chelates are sold by label.
const IRON_AIM_MG_L: f64 = 0.02;

/// Every dose, and the nitrogen that none brings, mg a week.
pub(super) struct Doses {
    pub(super) list: Vec<Dose>,
    pub(super) nitrogen_left_mg: f64,
}

/// A salt that is wanted for an element.
struct WantedSalt {
    salt: &'static Salt,
    ion: Ion,
    need_mg: f64,
    /// Of the pure salt, a week.
    pure_mg: f64,
    /// What it is sized by, where that is not the element that it is given for.
    scarcer: Option<&'static str>,
}

impl WantedSalt {
    /// All that is needed of an element.
    fn for_all(salt: &'static Salt, ion: Ion, need_mg: f64) -> Self {
        Self {
            salt,
            ion,
            need_mg,
            pure_mg: need_mg / salt.share(ion.element),
            scarcer: None,
        }
    }

    /// Potassium nitrate by whichever of its elements is the scarcer.
    fn nitrate(hunger: &Hunger<'_>) -> Self {
        let need = hunger.need;
        let all = Self::for_all(&POTASSIUM_NITRATE, NITRATE, need.nitrogen);
        let by_potassium = need.potassium / POTASSIUM_NITRATE.share(Element::K);
        if by_potassium >= all.pure_mg {
            return all;
        }
        Self {
            pure_mg: by_potassium,
            scarcer: Some(POTASSIUM.name),
            ..all
        }
    }
}

/// The salts that are wanted, nitrogen first.
pub(super) fn all(hunger: &Hunger<'_>) -> Doses {
    let water = DosedWater::of(hunger);
    let need = hunger.need;
    let mut list = Vec::new();
    list.extend(water.dose(&WantedSalt::nitrate(hunger)));
    let brought = |list: &[Dose], element| -> f64 {
        let salts = list
            .iter()
            .map(|dose| dose.salt_mg_per_week * PURITY * share(dose, element));
        salts.sum()
    };
    let potassium_left = need.potassium - brought(&list, Element::K);
    for (salt, ion, need_mg) in [
        (&POTASSIUM_SULFATE, POTASSIUM, potassium_left),
        (&POTASSIUM_PHOSPHATE, PHOSPHATE, need.phosphorus),
        (&EPSOM_SALT, MAGNESIUM, need.magnesium),
    ] {
        list.extend(water.dose(&WantedSalt::for_all(salt, ion, need_mg)));
    }
    let nitrogen_left_mg = if water.is_at_aim(NITRATE) {
        0.0
    } else {
        (need.nitrogen - brought(&list, Element::N)).max(0.0)
    };
    let steady = water.potassium_steady(brought(&list, Element::K) - need.potassium);
    for dose in &mut list {
        dose.potassium_steady_mg_l = steady.filter(|_| share(dose, Element::K) > 0.0);
        if dose.salt == POTASSIUM_NITRATE.name {
            dose.feed_instead_mg = water.feed_mg_d(nitrogen_left_mg);
        }
    }
    list.extend(water.iron());
    Doses {
        list,
        nitrogen_left_mg,
    }
}

/// An element of the salt of a dose.
fn share(dose: &Dose, element: Element) -> f64 {
    let salt = SALTS.iter().find(|salt| salt.name == dose.salt);
    salt.map_or(0.0, |salt| salt.share(element))
}

/// What may go into the water of a tank.
struct DosedWater<'a> {
    hunger: &'a Hunger<'a>,
    litres: f64,
}

impl<'a> DosedWater<'a> {
    fn of(hunger: &'a Hunger<'a>) -> Self {
        Self {
            hunger,
            litres: hunger.design.water().litres(),
        }
    }

    /// What a fresh reading says of an ion; magnesium has no kit, and is that of the tap.
    fn read(&self, ion: Ion) -> Option<f64> {
        let readings = &self.hunger.readings;
        let read = match ion.element {
            Element::N => readings.nitrate,
            Element::P => readings.phosphate,
            Element::K => readings.potassium,
            _ => {
                let tap = &self.hunger.design.draft().water;
                return Some(tap::magnesium(tap.magnesium, tap.hardness).typical);
            }
        };
        readings.fresh(read)
    }

    fn is_at_aim(&self, ion: Ion) -> bool {
        self.read(ion).is_some_and(|read| read >= ion.aim.0)
    }

    /// The most of a pure salt that one dose may bring, mg, with the ion that allows no more.
    fn most(&self, salt: &Salt) -> (f64, &'static str) {
        let ions = [NITRATE, PHOSPHATE, POTASSIUM, MAGNESIUM].into_iter();
        let room = |ion: Ion| {
            let read = self.read(ion).unwrap_or(0.0);
            let beside = if read >= ion.aim.1 { 0.0 } else { ion.dose };
            beside.min((ion.standing - read).max(0.0))
        };
        let held = ions.filter(|ion| salt.share(ion.element) > 0.0).map(|ion| {
            let mg_l_per_mg = salt.share(ion.element) * ion.per_element / self.litres;
            (room(ion) / mg_l_per_mg, ion.name)
        });
        held.fold((f64::INFINITY, ""), |least, held| {
            if held.0 < least.0 { held } else { least }
        })
    }

    /// A salt in as few doses as its ions allow; nothing where it is not needed, or stands
    /// at its aim. Phosphate is given on a reading alone.
    fn dose(&self, asked: &WantedSalt) -> Option<Dose> {
        let WantedSalt { salt, ion, .. } = asked;
        let is_blind = ion.element == Element::P && self.read(*ion).is_none();
        if asked.need_mg <= NO_NEED_MG || is_blind || self.is_at_aim(*ion) {
            return None;
        }
        let (most_mg, held_by) = self.most(salt);
        let week_mg = asked.pure_mg.min(most_mg * f64::from(MOST_DOSES));
        let doses = if week_mg > 0.0 {
            // what rounding brings over a whole number asks for no further dose
            (week_mg / most_mg - 1e-9).ceil().max(1.0)
        } else {
            0.0
        };
        let one_mg = if doses > 0.0 { week_mg / doses } else { 0.0 };
        let nitrate = salt.share(Element::N) * NITRATE.per_element;
        Some(Dose {
            salt: salt.name,
            need_mg_per_week: asked.need_mg,
            salt_mg_per_week: week_mg / PURITY,
            stock_g_per_l: STOCK_G_PER_L,
            dose_ml: one_mg / PURITY / STOCK_G_PER_L,
            doses_per_week: doses as u32,
            raises_nitrate_mg_l: one_mg * nitrate / self.litres,
            potassium_steady_mg_l: None,
            capped_by: if week_mg < asked.pure_mg {
                Some(held_by)
            } else {
                asked.scarcer
            },
            feed_instead_mg: None,
            stop_at_mg_l: ion.aim.0,
        })
    }

    /// Iron by its label, as often as it is usual.
    fn iron(&self) -> Option<Dose> {
        let readings = &self.hunger.readings;
        if readings
            .fresh(readings.iron)
            .is_some_and(|read| read >= IRON_AIM_MG_L)
        {
            return None;
        }
        let one_mg = IRON_DOSE_MG_L * self.litres / CHELATE_IRON;
        Some(Dose {
            salt: "iron chelate",
            need_mg_per_week: IRON_DOSE_MG_L * self.litres * f64::from(IRON_DOSES),
            salt_mg_per_week: one_mg * f64::from(IRON_DOSES),
            stock_g_per_l: STOCK_G_PER_L,
            dose_ml: one_mg / STOCK_G_PER_L,
            doses_per_week: IRON_DOSES,
            raises_nitrate_mg_l: 0.0,
            potassium_steady_mg_l: None,
            capped_by: None,
            feed_instead_mg: None,
            stop_at_mg_l: IRON_AIM_MG_L,
        })
    }

    /// Where potassium settles that comes in beyond what plants take, mg a week: water
    /// changes alone hold it.
    fn potassium_steady(&self, beyond_mg: f64) -> Option<f64> {
        let tap = &self.hunger.design.draft().water;
        let of_tap = tap::potassium(tap.potassium).typical;
        if beyond_mg <= NO_NEED_MG {
            return Some(self.read(POTASSIUM).unwrap_or(of_tap));
        }
        let change = tap.change?;
        let changed_l = change.share.fraction() * self.litres * WEEK_D / change.every.days();
        Some(of_tap + beyond_mg / changed_l)
    }

    /// Food a day that brings so much nitrogen a week, where animals eat it.
    fn feed_mg_d(&self, nitrogen_mg: f64) -> Option<f64> {
        let draft = self.hunger.design.draft();
        let nitrogen = nitrogen_of_feed(draft.feed.protein);
        let eat = !draft.animals.is_empty() && nitrogen > 0.0 && nitrogen_mg > NO_NEED_MG;
        eat.then(|| nitrogen_mg / WEEK_D / nitrogen)
    }
}
