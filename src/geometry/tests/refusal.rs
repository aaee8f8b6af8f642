//! What cannot be built is refused with the rule.

use super::*;

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
