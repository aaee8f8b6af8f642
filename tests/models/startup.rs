//! Work that the start-up model takes. A step count that jumps means a rate
//! became rougher or a tolerance tighter.

use lentic::source::Band;
use lentic::startup::{Feed, Inputs, Parameters, Planting, run};
use lentic::units::{Area, Concentration, Length, Mass, PhotonFlux, Share, Temperature};

fn cube(light_umol_m2_s: f64, planting: Planting) -> Inputs {
    let floor = Area::from_m2(0.05);
    Inputs {
        floor,
        water: floor * Length::from_cm(16.0),
        soil_depth: Length::from_mm(25.0),
        cap_depth: Length::from_mm(25.0),
        planting,
        light: PhotonFlux::from_umol_m2_s(light_umol_m2_s),
        light_hours: 10.0,
        temperature: Temperature::from_celsius(25.0),
        ph: 7.2,
        oxygen: Concentration::from_mg_l(7.0),
        feed: Feed::default(),
        floaters_above: Some(Share::from_percent(50.0)),
        events: Vec::new(),
    }
}

#[test]
fn ninety_days_take_a_few_hundred_steps() {
    let heavy = Planting {
        cover: Share::from_percent(40.0),
        fast: Mass::from_g(5.0),
        slow: Mass::from_g(1.25),
        ..Planting::default()
    };
    let parameters = Parameters::<Band>::reference().central();
    let statistics = [
        cube(0.0, Planting::default()),
        cube(100.0, Planting::default()),
        cube(100.0, heavy),
    ]
    .map(|inputs| run(&inputs, &parameters, 90).unwrap().statistics);
    insta::assert_debug_snapshot!(statistics);
}
