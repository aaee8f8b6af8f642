//! Layers of a bed, and what lies below a level.

use super::*;

#[test]
fn a_slope_is_thinnest_where_it_is_lowest() {
    let tank = cuboid(60.0, 30.0, 36.0);
    let places = |soil: LayerDepth| {
        let bed = Bed::new(&inside(tank), soil, LayerDepth::Uniform(cm(4.0))).unwrap();
        assert_eq!(bed.cap.thinnest.place, FloorPlace::Everywhere);
        (bed.soil.thinnest.place, bed.soil.deepest.place)
    };
    assert_eq!(
        places(LayerDepth::Uniform(cm(3.0))),
        (FloorPlace::Everywhere, FloorPlace::Everywhere)
    );
    assert_eq!(
        places(back_to_front(6.0, 2.0)),
        (FloorPlace::Front, FloorPlace::Back)
    );
    let to_right = LayerDepth::LeftToRight {
        left: cm(1.0),
        right: cm(5.0),
    };
    assert_eq!(places(to_right), (FloorPlace::Left, FloorPlace::Right));
    let both = LayerDepth::AllWalls {
        back: cm(6.0),
        front: cm(4.0),
        left: cm(6.0),
        right: cm(4.0),
    };
    assert_eq!(places(both), (FloorPlace::FrontRight, FloorPlace::BackLeft));
}

#[test]
fn a_round_tank_is_thinnest_at_the_wall_and_not_in_a_corner() {
    let round = Shape::Cylinder {
        diameter: cm(30.0),
        height: cm(40.0),
    };
    let bed = Bed::new(
        &inside(round),
        back_to_front(6.0, 2.0),
        back_to_front(1.0, 5.0),
    )
    .unwrap();
    assert_eq!(bed.soil.thinnest.place, FloorPlace::Front);
    assert_relative_eq!(bed.soil.thinnest.depth.cm(), 2.0, max_relative = 1e-12);
    assert_eq!(bed.cap.thinnest.place, FloorPlace::Back);
    assert_eq!(bed.top.highest.place, FloorPlace::Everywhere);
    assert!(bed.top.slope_deg.abs() < 1e-9);
    let slope = (4.0_f64 / 30.0).atan().to_degrees();
    assert_relative_eq!(bed.soil.slope_deg, slope, max_relative = 1e-12);
}

#[test]
fn layers_that_run_out_or_meet_the_rim_say_so() {
    let vessel = inside(cuboid(60.0, 30.0, 36.0));
    let cap = LayerDepth::Uniform(cm(4.0));
    let shallow = Bed::new(&vessel, back_to_front(-4.0, 8.0), cap).unwrap();
    assert!(shallow.soil.runs_out && !shallow.cap.runs_out && !shallow.meets_rim());
    assert_eq!(shallow.soil.thinnest.depth, Length::ZERO);
    assert_eq!(shallow.soil.thinnest.place, FloorPlace::Back);
    // The soil meets the rim at 20 cm from the back, the cap from 15 cm on.
    let heaped = Bed::new(&vessel, back_to_front(20.0, 44.0), cap).unwrap();
    assert!(heaped.meets_rim() && heaped.cap.runs_out && !heaped.soil.runs_out);
    assert_eq!(heaped.cap.thinnest.place, FloorPlace::Front);
    assert_relative_eq!(
        heaped.cap.volume.cm3(),
        60.0 * (15.0 + 2.5) * 4.0,
        max_relative = 1e-12
    );
    assert_relative_eq!(
        heaped.area_above(cm(30.0)).cm2(),
        60.0 * 22.5,
        max_relative = 1e-12
    );
    assert!(heaped.rises_above(cm(30.0)) && !heaped.rises_above(cm(36.0)));
}

#[test]
fn what_lies_below_a_level_is_cut_there() {
    let vessel = inside(cuboid(40.0, 30.0, 30.0));
    // 2 cm of soil under 4 cm of sand at the back and none at the front
    let bed = Bed::new(
        &vessel,
        LayerDepth::Uniform(cm(2.0)),
        back_to_front(4.0, 0.0),
    )
    .unwrap();
    let below = |level: f64| {
        [
            bed.soil_below(cm(level)),
            bed.cap_below(cm(level)),
            bed.volume_below(cm(level)),
            bed.water_below(cm(level)),
        ]
        .map(Volume::litres)
    };
    let expected = [
        (-1.0, [0.0; 4]),
        (1.0, [1.2, 0.0, 1.2, 0.0]),
        // half of the slope's wedge lies below 4 cm up, all but a quarter of the sand
        (4.0, [2.4, 1.8, 4.2, 0.6]),
        (10.0, [2.4, 2.4, 4.8, 7.2]),
    ];
    for (level, litres) in expected {
        for (found, litres) in below(level).into_iter().zip(litres) {
            assert_relative_eq!(found, litres, epsilon = 1e-12, max_relative = 1e-12);
        }
    }
    assert_relative_eq!(bed.area_above(cm(4.0)).cm2(), 600.0, max_relative = 1e-12);
    assert_relative_eq!(bed.cap_beyond(cm(2.0)).litres(), 0.6, max_relative = 1e-12);
    assert_relative_eq!(
        bed.cap_short_of(cm(2.0)).litres(),
        0.6,
        max_relative = 1e-12
    );
}

#[test]
fn a_bowl_is_as_wide_as_its_sphere_there() {
    // the triangle of 5, 12 and 13
    let zone = SphereZone {
        radius_m: 0.13,
        floor_m: -0.05,
        rim_m: 0.05,
    };
    for level_m in [0.0, 0.10] {
        assert_relative_eq!(zone.reach_m(level_m), 0.12, max_relative = 1e-12);
    }
    assert_relative_eq!(zone.reach_m(0.05), 0.13, max_relative = 1e-12);
    assert_relative_eq!(zone.widest_m(), 0.26, max_relative = 1e-12);
}

#[test]
fn layers_of_a_bowl_are_as_deep_as_they_were_laid() {
    let bowl = Shape::Bowl {
        diameter: cm(26.0),
        base: cm(8.0),
        mouth: cm(8.0),
    };
    let vessel = inside(bowl);
    let (soil, cap) = (LayerDepth::Uniform(cm(2.0)), LayerDepth::Uniform(cm(3.0)));
    let bed = Bed::new(&vessel, soil, cap).unwrap();
    assert_relative_eq!(bed.soil.mean.cm(), 2.0, max_relative = 1e-12);
    assert_relative_eq!(bed.cap.mean.cm(), 3.0, max_relative = 1e-12);
    assert_relative_eq!(bed.cap.thinnest.depth.cm(), 3.0, max_relative = 1e-12);
    assert_relative_eq!(bed.cap.deepest.depth.cm(), 3.0, max_relative = 1e-12);
    assert_relative_eq!(bed.area_above(cm(6.0)).cm2(), 0.0);
    assert_relative_eq!(bed.area_above(cm(4.0)).cm2(), bed.area().cm2());
    let beyond = bed.cap_beyond(cm(1.0)) + bed.cap_short_of(cm(3.0));
    let above_3_cm = bed.volume() - bed.volume_below(cm(3.0));
    assert_relative_eq!(beyond.litres(), above_3_cm.litres(), max_relative = 1e-12);
}
