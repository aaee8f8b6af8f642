//! Work that the start-up model takes. A step count that jumps means a rate
//! became rougher or a tolerance tighter.

use lentic::source::Band;
use lentic::startup::{Inputs, Parameters, PlantedMass, run};
use lentic::units::{Mass, PhotonFlux, Share};

fn cube(light_umol_m2_s: f64, planting: PlantedMass) -> Inputs {
    Inputs {
        planting,
        light: PhotonFlux::from_umol_m2_s(light_umol_m2_s),
        floaters_above: Some(Share::from_percent(50.0)),
        ..Inputs::reference()
    }
}

#[test]
fn ninety_days_take_a_few_hundred_steps() {
    let heavy = PlantedMass {
        cover: Share::from_percent(40.0),
        fast: Mass::from_g(4.93),
        slow: Mass::from_g(1.2325),
        ..PlantedMass::default()
    };
    let parameters = Parameters::<Band>::reference().central();
    let statistics = [
        cube(0.0, PlantedMass::default()),
        cube(100.0, PlantedMass::default()),
        cube(100.0, heavy),
    ]
    .map(|inputs| run(&inputs, &parameters, 90).unwrap().statistics);
    insta::assert_debug_snapshot!(statistics);
}
