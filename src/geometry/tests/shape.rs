//! Shapes, walls and panes.

use super::*;

#[test]
fn a_half_disc_has_its_centroid_at_four_thirds_of_the_radius_over_pi() {
    let half = Region::disc(PlanPoint::new(3.0, 1.0), 0.5)
        .unwrap()
        .clip(Plane::Y - Plane::level(1.0))
        .unwrap();
    assert_relative_eq!(half.area_m2(), PI / 8.0, max_relative = 1e-14);
    assert_relative_eq!(half.perimeter_m(), 1.0 + PI / 2.0, max_relative = 1e-14);
    let centroid = half.integral_m3(Plane::Y) / half.area_m2();
    assert_relative_eq!(centroid, 1.0 + 2.0 / (3.0 * PI), max_relative = 1e-14);
    let extents = half.extents();
    assert_relative_eq!(extents.front_m, 1.5, max_relative = 1e-14);
    assert_relative_eq!(extents.length_m(), 1.0, max_relative = 1e-14);
}

proptest! {
    #[test]
    fn the_parts_of_a_cut_region_add_up(
        turn in 0.0..2.0 * PI, offset in -0.6..0.6_f64, across in -0.4..0.4_f64
    ) {
        let line = |angle: f64, offset: f64| Plane {
            origin_m: offset,
            per_x: angle.cos(),
            per_y: angle.sin(),
        };
        let disc = Region::disc(PlanPoint::new(0.0, 0.0), 0.5).unwrap();
        let cut = line(turn + 1.0, across);
        let Some(part) = disc.clip(cut) else { return Ok(()) };
        let (above, below) = part.split(line(turn, offset));
        let parts: Vec<&Region> = above.iter().chain(&below).collect();
        let area: f64 = parts.iter().map(|region| region.area_m2()).sum();
        prop_assert!((area - part.area_m2()).abs() < 1e-14);
        for plane in [Plane::X, Plane::Y] {
            let moment: f64 = parts.iter().map(|region| region.integral_m3(plane)).sum();
            prop_assert!((moment - part.integral_m3(plane)).abs() < 1e-14);
        }
        for region in parts {
            for edge in region.edges() {
                let beyond = edge.at(0.3).distance_m(PlanPoint::new(0.0, 0.0)) - 0.5;
                prop_assert!(beyond < 1e-12);
                prop_assert!(cut.at(edge.at(0.7)) > -1e-12);
            }
        }
    }
}

#[test]
fn a_nearly_straight_bow_is_a_box_and_a_sliver() {
    for bow in [1e-9, 1e-6, 1e-3] {
        let volume = inside(bow_front(90.0, 45.0, 45.0 + bow)).brimful().cm3();
        // A flat segment is two thirds of its chord times its height.
        let expected = (90.0 * 45.0 + 90.0 * bow * 2.0 / 3.0) * 40.0;
        assert_relative_eq!(volume, expected, max_relative = 1e-12);
        let slope = LayerDepth::LeftToRight {
            left: cm(-5.0),
            right: cm(10.0),
        };
        let bed = Bed::new(
            &inside(bow_front(90.0, 45.0, 45.0 + bow)),
            slope,
            LayerDepth::Uniform(cm(4.0)),
        );
        let soil = bed.unwrap().soil.volume.cm3();
        assert_relative_eq!(soil, 60.0 * 5.0 * 45.0, max_relative = bow);
    }
    let straight = inside(bow_front(90.0, 45.0, 45.0));
    assert_relative_eq!(straight.brimful().cm3(), 162_000.0, max_relative = 1e-14);
}

#[test]
fn walls_around_a_shape_and_walls_within_it_undo_each_other() {
    let around = inside(bow_front(90.0, 35.0, 45.0));
    let end = {
        // R = 106.25 cm keeps its centre; the end moves out with the wall.
        let (radius, half) = (106.25_f64 + 0.5, 45.5_f64);
        45.0 - 106.25 + (radius * radius - half * half).sqrt() + 0.5
    };
    let shape = Shape::BowFront {
        length: cm(91.0),
        width_end: cm(end),
        width_middle: cm(46.0),
        height: cm(40.5),
    };
    let within = Vessel::new(&shape, Measured::Outside, wall(0.5)).unwrap();
    assert_relative_eq!(
        within.brimful().cm3(),
        around.brimful().cm3(),
        max_relative = 1e-12
    );
    assert_relative_eq!(
        within.shell().cm3(),
        around.shell().cm3(),
        max_relative = 1e-12
    );
    assert_relative_eq!(around.outer_length().cm(), 91.0, max_relative = 1e-14);
    assert_relative_eq!(around.outer_height().cm(), 40.5, max_relative = 1e-14);
}

#[test]
fn the_wall_of_a_regular_polygon_follows_its_inner_circle() {
    let hexagon = |side: f64| Shape::RegularPolygon {
        sides: 6,
        side: cm(side),
        height: cm(40.0),
    };
    // Moving each side out by t lengthens it by 2 t tan(30 deg).
    let outside = 20.0 + 2.0 * 0.5 * (PI / 6.0).tan();
    let expected = inside(hexagon(outside)).floor_area().cm2();
    assert_relative_eq!(
        inside(hexagon(20.0)).footprint().cm2(),
        expected,
        max_relative = 1e-13
    );
}

#[test]
fn a_cut_shorter_than_the_wall_vanishes_inside() {
    // The cut side of 2.8 mm would have to shrink by 8.3 mm.
    let vessel = Vessel::new(&cut_corner(0.2, 0.2), Measured::Outside, wall(1.0)).unwrap();
    assert_relative_eq!(vessel.floor_area().cm2(), 58.0 * 58.0, max_relative = 1e-12);
    assert_eq!(vessel.panes().len(), 4);
}

#[test]
fn a_bowl_of_glass_is_the_difference_of_two_zones() {
    let bowl = Shape::Bowl {
        diameter: cm(30.0),
        base: cm(15.0),
        mouth: cm(20.0),
    };
    let vessel = inside(bowl);
    let zone = |radius: f64, low: f64, high: f64| {
        PI * (radius * radius * (high - low) - (high.powi(3) - low.powi(3)) / 3.0)
    };
    let (floor, rim) = (-(225.0_f64 - 56.25).sqrt(), 125.0_f64.sqrt());
    let expected = zone(15.5, floor - 0.5, rim) - zone(15.0, floor, rim);
    assert_relative_eq!(vessel.shell().cm3(), expected, max_relative = 1e-12);
    assert_relative_eq!(vessel.length().cm(), 30.0, max_relative = 1e-14);
    let wetted = vessel.wall_area(vessel.height()).cm2();
    assert_relative_eq!(wetted, 30.0 * PI * (rim - floor), max_relative = 1e-12);
}

#[test]
fn panes_face_where_they_stand() {
    let facing = |shape: Shape| -> Vec<(Facing, f64)> {
        let panes = inside(shape).panes();
        panes
            .iter()
            .map(|p| (p.facing, p.length.cm().round()))
            .collect()
    };
    let bow = facing(bow_front(90.0, 35.0, 45.0));
    assert_eq!(
        bow,
        [
            (Facing::Back, 90.0),
            (Facing::Right, 35.0),
            (Facing::Left, 35.0)
        ]
    );
    let cut = facing(cut_corner(30.0, 40.0));
    assert!(cut.contains(&(Facing::Aslant, 50.0)) && cut.contains(&(Facing::Right, 20.0)));
    let quarter = Shape::QuarterCylinder {
        radius: cm(45.0),
        height: cm(45.0),
    };
    let mut quarter_panes = facing(quarter);
    quarter_panes.sort_by_key(|pane| pane.0 == Facing::Left);
    assert_eq!(quarter_panes, [(Facing::Back, 45.0), (Facing::Left, 45.0)]);
    let round = Shape::Cylinder {
        diameter: cm(30.0),
        height: cm(40.0),
    };
    assert!(facing(round).is_empty() && inside(round).end_pane().is_none());
    let end = inside(cut_corner(30.0, 40.0)).end_pane().unwrap();
    assert_eq!((end.facing, end.length.cm().round()), (Facing::Left, 60.0));
}
