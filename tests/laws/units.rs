//! What is written in a unit is read back in it.

use approx::assert_relative_eq;
use lentic::units::{
    Alkalinity, Area, ArealDensity, Concentration, Content, Density, Duration, Flow, Hardness,
    Length, Mass, PhotonFlux, Power, Pressure, Quantity, Share, Sorption, Temperature, Volume,
};
use proptest::prelude::*;

/// A value in each unit of a quantity is its own value over every other unit's.
fn round_trips<Q: Quantity>(value: f64) {
    for unit in Q::UNITS {
        let read = Q::parse(&format!("{value} {}", unit.name)).unwrap();
        for other in Q::UNITS {
            let in_other = read.base() / other.factor - other.shift;
            let back = Q::parse(&format!("{in_other:e} {}", other.name));
            // A few degrees above zero in one scale may lie below it in another.
            let back = back.unwrap_or_else(|error| panic!("{}: {error}", other.name));
            assert_relative_eq!(
                back.base(),
                read.base(),
                max_relative = 1e-12,
                epsilon = 1e-9
            );
        }
    }
}

proptest! {
    #[test]
    fn every_quantity_survives_every_unit(value in 1e-3_f64..1e4) {
        round_trips::<Length>(value);
        round_trips::<Area>(value);
        round_trips::<Volume>(value);
        round_trips::<Mass>(value);
        round_trips::<Density>(value);
        round_trips::<Content>(value);
        round_trips::<Sorption>(value);
        round_trips::<ArealDensity>(value);
        round_trips::<Temperature>(value);
        round_trips::<Pressure>(value);
        round_trips::<Power>(value);
        round_trips::<Concentration>(value);
        round_trips::<Hardness>(value);
        round_trips::<Alkalinity>(value);
        round_trips::<PhotonFlux>(value);
        round_trips::<Share>(value);
        round_trips::<Duration>(value);
        round_trips::<Flow>(value);
    }

    #[test]
    fn no_text_at_all_breaks_the_reader(text in ".{0,40}") {
        let _ = Length::parse(&text);
        let _ = Volume::parse(&text);
        let _ = lentic::units::size::Size::parse(&text);
        let _ = lentic::units::Analyte::Ammonia.parse(&text);
    }
}
