//! Where the ammonia oxidisers sit: on the bed, fed from below and above, and elsewhere,
//! fed through still water and by what a sponge filter draws past them.

use super::nitrification::{Oxidation, Oxidiser};
use super::uptake::saturation;
use crate::numerics::real::Scalar;
use crate::parameters::Nitrifiers;

/// The two places, with how ammonia gets to them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Habitat {
    pub(super) oxidiser: Oxidiser,
    /// Share of the cells on the bed.
    bed_share: f64,
    /// Between the water and the bed's surface, m/d.
    film_m_d: f64,
    /// Between the water and the other cells, m/d.
    elsewhere_m_d: f64,
}

/// What comes up from the soil at one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct FromBelow<S> {
    /// Conductance of soil and cap, m/d.
    pub(super) conductance_m_d: S,
    /// Ammonium in the pore water, mg N/L.
    pub(super) pore_water_mg_l: S,
}

/// Ways of ammonia at one moment, g N/(m2 d).
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Ways<S = f64> {
    /// From the soil to the bed's surface.
    pub(super) from_soil: S,
    /// From the bed's surface to the water.
    pub(super) to_water: S,
    /// Oxidised on the bed and elsewhere.
    pub(super) on_bed: S,
    pub(super) elsewhere: S,
    /// Change of the cells, g COD/(m2 d).
    pub(super) cells: S,
}

impl Habitat {
    /// The two places of a tank, with what a sponge filter draws past the cells in it.
    pub(super) fn new(
        numbers: &Nitrifiers<f64>,
        oxidiser: Oxidiser,
        film_m_d: f64,
        sponge_m_d: f64,
    ) -> Self {
        Self {
            oxidiser,
            bed_share: numbers.bed_share,
            film_m_d,
            elsewhere_m_d: numbers.film_velocity + sponge_m_d,
        }
    }

    /// The ways of ammonia with the oxidisers at both places at balance with what reaches them.
    ///
    /// ```text
    /// g (Cs - Ci) + kf (C - Ci) = s V Ci/(K + Ci)         on the bed
    /// h (C - Cw) = (1 - s) V Cw/(K + Cw)                  elsewhere
    /// ```
    ///
    /// `Cs`, `C` ammonia in pore water and water, `Ci`, `Cw` at the cells, `V` what they can
    /// oxidise at most, `s` their share on the bed.
    ///
    /// # Source
    /// A film at balance with its supply: mass balance; the two places: judgement.
    pub(super) fn ways<S: Scalar>(&self, below: &FromBelow<S>, water_mg_l: S, cells: S) -> Ways<S> {
        let half = self.oxidiser.substrate_half_mg_l;
        let capacity = self.oxidiser.capacity_g_m2_d(cells);
        let (bed, elsewhere) = (capacity * self.bed_share, capacity * (1.0 - self.bed_share));
        let supply = below.conductance_m_d * below.pore_water_mg_l + water_mg_l * self.film_m_d;
        let at_bed = met(below.conductance_m_d + self.film_m_d, supply, bed, half);
        let at_rest = met(
            S::splat(self.elsewhere_m_d),
            water_mg_l * self.elsewhere_m_d,
            elsewhere,
            half,
        );
        let busy_on_bed = saturation(at_bed, half);
        let busy_at_rest = saturation(at_rest, half);
        let busy = busy_on_bed * self.bed_share + busy_at_rest * (1.0 - self.bed_share);
        let Oxidation { cells: change, .. } = self
            .oxidiser
            .working(busy * self.oxidiser.growth_per_d, cells);
        Ways {
            from_soil: below.conductance_m_d * (below.pore_water_mg_l - at_bed),
            to_water: (at_bed - water_mg_l) * self.film_m_d,
            on_bed: bed * busy_on_bed,
            elsewhere: elsewhere * busy_at_rest,
            cells: change,
        }
    }
}

/// Concentration at which a supply `supply - velocity C` is what cells take,
/// `capacity C/(half + C)`.
///
/// The positive root of `velocity C^2 + b C - supply half = 0` with
/// `b = velocity half + capacity - supply`, in the form that loses no digits.
fn met<S: Scalar>(velocity: S, supply: S, capacity: S, half: f64) -> S {
    let linear = velocity * half + capacity - supply;
    let root = (linear * linear + velocity * supply * (4.0 * half)).sqrt();
    let above = linear.if_positive(supply * (2.0 * half), root - linear);
    above / linear.if_positive(linear + root, velocity * 2.0)
}

#[cfg(test)]
mod tests {
    use super::met;

    #[test]
    fn what_arrives_is_what_is_taken() {
        for (velocity, supply, capacity, half) in [
            (0.17, 0.5, 3.0, 0.2),
            (0.17, 0.5, 1e-6, 0.2),
            (2.0, 1e-9, 0.1, 0.03),
        ] {
            let at: f64 = met(velocity, supply, capacity, half);
            let (arrives, taken) = (supply - velocity * at, capacity * at / (half + at));
            assert!((arrives - taken).abs() <= 1e-12 * supply.max(taken) + 1e-16);
        }
        assert!(met(0.17, 0.0, 1.0, 0.2).abs() < 1e-300);
    }
}
