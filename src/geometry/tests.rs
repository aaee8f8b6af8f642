//! Outlines, regions, places and refusals.

use super::edge::Point;
use super::pane::Facing;
use super::plane::Plane;
use super::region::Region;
use super::zone::SphereZone;
use super::{Bed, Dimension, GeometryError, LayerDepth, Measured, Place, Shape, Vessel, Wall};
use crate::units::{Length, Volume, size::Size};
use approx::assert_relative_eq;
use proptest::prelude::*;
use std::f64::consts::PI;

fn cm(value: f64) -> Length {
    Length::from_cm(value)
}

fn wall(thickness_cm: f64) -> Wall {
    Wall {
        sides: cm(thickness_cm),
        bottom: cm(thickness_cm),
    }
}

fn inside(shape: Shape) -> Vessel {
    Vessel::new(&shape, Measured::Inside, wall(0.5)).unwrap()
}

fn cuboid(length: f64, width: f64, height: f64) -> Shape {
    Shape::Box(Size {
        length: cm(length),
        width: cm(width),
        height: cm(height),
    })
}

fn bow_front(length: f64, end: f64, middle: f64) -> Shape {
    Shape::BowFront {
        length: cm(length),
        width_end: cm(end),
        width_middle: cm(middle),
        height: cm(40.0),
    }
}

fn cut_corner(cut_length: f64, cut_width: f64) -> Shape {
    Shape::CutCorner {
        length: cm(60.0),
        width: cm(60.0),
        cut_length: cm(cut_length),
        cut_width: cm(cut_width),
        height: cm(50.0),
    }
}

fn back_to_front(back: f64, front: f64) -> LayerDepth {
    LayerDepth::BackToFront {
        back: cm(back),
        front: cm(front),
    }
}

fn refused(shape: &Shape, measured: Measured, wall: Wall) -> GeometryError {
    Vessel::new(shape, measured, wall).unwrap_err()
}

#[test]
fn a_half_disc_has_its_centroid_at_four_thirds_of_the_radius_over_pi() {
    let half = Region::disc(Point::new(3.0, 1.0), 0.5)
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
        let disc = Region::disc(Point::new(0.0, 0.0), 0.5).unwrap();
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
                let beyond = edge.at(0.3).distance_m(Point::new(0.0, 0.0)) - 0.5;
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
fn a_slope_is_thinnest_where_it_is_lowest() {
    let tank = cuboid(60.0, 30.0, 36.0);
    let places = |soil: LayerDepth| {
        let bed = Bed::new(&inside(tank), soil, LayerDepth::Uniform(cm(4.0))).unwrap();
        assert_eq!(bed.cap.thinnest.place, Place::Everywhere);
        (bed.soil.thinnest.place, bed.soil.deepest.place)
    };
    assert_eq!(
        places(LayerDepth::Uniform(cm(3.0))),
        (Place::Everywhere, Place::Everywhere)
    );
    assert_eq!(places(back_to_front(6.0, 2.0)), (Place::Front, Place::Back));
    let to_right = LayerDepth::LeftToRight {
        left: cm(1.0),
        right: cm(5.0),
    };
    assert_eq!(places(to_right), (Place::Left, Place::Right));
    let both = LayerDepth::AllWalls {
        back: cm(6.0),
        front: cm(4.0),
        left: cm(6.0),
        right: cm(4.0),
    };
    assert_eq!(places(both), (Place::FrontRight, Place::BackLeft));
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
    assert_eq!(bed.soil.thinnest.place, Place::Front);
    assert_relative_eq!(bed.soil.thinnest.depth.cm(), 2.0, max_relative = 1e-12);
    assert_eq!(bed.cap.thinnest.place, Place::Back);
    assert_eq!(bed.top.highest.place, Place::Everywhere);
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
    assert_eq!(shallow.soil.thinnest.place, Place::Back);
    // The soil meets the rim at 20 cm from the back, the cap from 15 cm on.
    let heaped = Bed::new(&vessel, back_to_front(20.0, 44.0), cap).unwrap();
    assert!(heaped.meets_rim() && heaped.cap.runs_out && !heaped.soil.runs_out);
    assert_eq!(heaped.cap.thinnest.place, Place::Front);
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

#[test]
fn impossible_shapes_name_both_dimensions() {
    use Dimension as D;
    let bowl = |base, mouth| Shape::Bowl {
        diameter: cm(30.0),
        base: cm(base),
        mouth: cm(mouth),
    };
    let cases = [
        (
            bow_front(90.0, 45.0, 40.0),
            D::WidthEnd,
            Some(D::WidthMiddle),
        ),
        (bow_front(60.0, 20.0, 51.0), D::WidthMiddle, Some(D::Length)),
        (bowl(15.0, 31.0), D::Mouth, Some(D::Diameter)),
        (bowl(31.0, 15.0), D::Base, Some(D::Diameter)),
        (cut_corner(61.0, 30.0), D::CutLength, Some(D::Length)),
        (cut_corner(30.0, 61.0), D::CutWidth, Some(D::Width)),
        (cuboid(60.0, 0.0, 36.0), D::Width, None),
        (cuboid(60.0, f64::NAN, 36.0), D::Width, None),
        (bowl(30.0, 30.0), D::Height, None),
    ];
    for (shape, at_fault, other) in cases {
        let error = refused(&shape, Measured::Inside, wall(0.5));
        assert_eq!(error.dimensions(), (at_fault, other), "{error}");
        assert!(!error.way_out().is_empty());
    }
    let two = Shape::RegularPolygon {
        sides: 2,
        side: cm(20.0),
        height: cm(40.0),
    };
    assert_eq!(
        refused(&two, Measured::Inside, wall(0.5)),
        GeometryError::SideCount { sides: 2 }
    );
}

#[test]
fn a_refusal_tells_found_rule_and_way_out() {
    let error = refused(&bow_front(90.0, 45.0, 40.0), Measured::Inside, wall(0.5));
    assert_eq!(
        error.to_string(),
        "width_end 45 cm is more than width_middle 40 cm; width_end is at most width_middle"
    );
    assert_eq!(
        error.way_out(),
        "make width_end at most 40 cm, or width_middle at least 45 cm"
    );
}

#[test]
fn walls_thicker_than_the_tank_are_refused() {
    let outside = |shape, thickness| refused(&shape, Measured::Outside, wall(thickness));
    let across = outside(cuboid(60.0, 10.0, 36.0), 5.0);
    assert_eq!(
        across.dimensions(),
        (Dimension::Wall, Some(Dimension::Width))
    );
    let up = outside(cuboid(60.0, 30.0, 4.0), 4.0);
    assert_eq!(
        up.dimensions(),
        (Dimension::Bottom, Some(Dimension::Height))
    );
    let bowl = Shape::Bowl {
        diameter: cm(30.0),
        base: cm(1.0),
        mouth: cm(20.0),
    };
    let thin_floor = Wall {
        sides: cm(1.0),
        bottom: cm(0.1),
    };
    let round = refused(&bowl, Measured::Outside, thin_floor);
    assert_eq!(
        round.dimensions(),
        (Dimension::Bottom, Some(Dimension::Base))
    );
}

#[test]
fn beds_that_lie_on_no_plane_are_refused() {
    let level = LayerDepth::Uniform(cm(4.0));
    let twisted = LayerDepth::AllWalls {
        back: cm(6.0),
        front: cm(4.0),
        left: cm(6.0),
        right: cm(5.0),
    };
    assert_relative_eq!(twisted.mismatch().unwrap().cm(), -1.0, max_relative = 1e-12);
    let tank = inside(cuboid(60.0, 30.0, 36.0));
    let error = Bed::new(&tank, level, twisted).unwrap_err();
    assert_eq!(error.dimensions(), (Dimension::CapDepth, None));
    let bowl = inside(Shape::Bowl {
        diameter: cm(30.0),
        base: cm(15.0),
        mouth: cm(20.0),
    });
    let error = Bed::new(&bowl, back_to_front(6.0, 4.0), level).unwrap_err();
    assert_eq!(
        error.dimensions(),
        (Dimension::SoilDepth, Some(Dimension::Mouth))
    );
    assert!(Bed::new(&bowl, back_to_front(4.0, 4.0), level).is_ok());
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
