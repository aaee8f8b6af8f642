//! Volumes of tanks and of beds in them.
//!
//! Sources: mensuration of CRC Standard Mathematical Tables (circular segment, spherical
//! zone; from memory), the cylindrical wedge (Wolfram `MathWorld`), the truncated prism of Kern
//! and Bland, Solid Mensuration, 1938, p. 81. Each value was evaluated from the closed
//! form to 15 digits and confirmed by numerical quadrature (mpmath) or by a polygon with
//! 400 000 chords (shapely). Lengths in cm, volumes in cm3, agreement to 1e-9.

use crate::compare::{Within, check};
use lentic::geometry::{Bed, LayerDepth, Measured, Shape, Vessel, Wall};
use lentic::units::{Length, size::Size};

const EXACT: Within = Within::Relative(1e-9);

fn cm(value: f64) -> Length {
    Length::from_cm(value)
}

fn inside(shape: Shape) -> Vessel {
    let wall = Wall {
        sides: cm(0.6),
        bottom: cm(0.6),
    };
    Vessel::new(&shape, Measured::Inside, wall).unwrap()
}

fn cuboid(length: f64, width: f64, height: f64) -> Shape {
    Shape::Box(Size {
        length: cm(length),
        width: cm(width),
        height: cm(height),
    })
}

fn polygon(sides: u32, side: f64, height: f64) -> Shape {
    Shape::RegularPolygon {
        sides,
        side: cm(side),
        height: cm(height),
    }
}

fn cylinder(radius: f64, height: f64) -> Shape {
    Shape::Cylinder {
        diameter: cm(2.0 * radius),
        height: cm(height),
    }
}

fn bow_front(length: f64, end: f64, middle: f64, height: f64) -> Shape {
    Shape::BowFront {
        length: cm(length),
        width_end: cm(end),
        width_middle: cm(middle),
        height: cm(height),
    }
}

fn quarter(radius: f64, height: f64) -> Shape {
    Shape::QuarterCylinder {
        radius: cm(radius),
        height: cm(height),
    }
}

fn back_to_front(back: f64, front: f64) -> LayerDepth {
    LayerDepth::BackToFront {
        back: cm(back),
        front: cm(front),
    }
}

fn all_walls(back: f64, front: f64, left: f64, right: f64) -> LayerDepth {
    LayerDepth::AllWalls {
        back: cm(back),
        front: cm(front),
        left: cm(left),
        right: cm(right),
    }
}

fn soil(shape: Shape, depth: LayerDepth) -> f64 {
    let bed = Bed::new(&inside(shape), depth, LayerDepth::Uniform(cm(0.0))).unwrap();
    bed.soil.volume.cm3()
}

#[test]
fn prisms_hold_plan_times_height() {
    let across_flats = 40.0 * (std::f64::consts::PI / 6.0).tan();
    let cases = [
        ("box", cuboid(60.0, 30.0, 36.0), 64_800.0),
        ("cylinder", cylinder(15.0, 40.0), 28_274.333_882_308_1),
        ("hexagon", polygon(6, 20.0, 45.0), 46_765.371_804_359_7),
        ("octagon", polygon(8, 14.0, 50.0), 47_318.585_822_512_7),
        ("pentagon", polygon(5, 18.0, 30.0), 16_723.040_333_724_8),
        (
            "hexagon 40 across flats",
            polygon(6, across_flats, 45.0),
            62_353.829_072_479_6,
        ),
        (
            "bow front",
            bow_front(90.0, 35.0, 45.0, 50.0),
            187_794.239_678_005,
        ),
        (
            "bow front, deep",
            bow_front(120.0, 40.0, 60.0, 55.0),
            353_925.609_836_306,
        ),
        (
            "quarter cylinder",
            quarter(45.0, 45.0),
            71_569.407_639_592_5,
        ),
        (
            "half cylinder",
            Shape::HalfCylinder {
                diameter: cm(60.0),
                height: cm(40.0),
            },
            56_548.667_764_616_3,
        ),
        (
            "trapezoid",
            Shape::Trapezoid {
                front: cm(80.0),
                back: cm(50.0),
                width: cm(40.0),
                height: cm(45.0),
            },
            117_000.0,
        ),
        (
            "cut corner",
            Shape::CutCorner {
                length: cm(60.0),
                width: cm(60.0),
                cut_length: cm(30.0),
                cut_width: cm(30.0),
                height: cm(50.0),
            },
            157_500.0,
        ),
    ];
    for (name, shape, volume) in cases {
        check(name, inside(shape).brimful().cm3(), volume, EXACT);
    }
}

#[test]
fn a_bowl_is_a_zone_of_a_sphere() {
    let by_heights = inside(Shape::Bowl {
        diameter: cm(30.0),
        base: cm(2.0 * 56.0_f64.sqrt()),
        mouth: cm(2.0 * 125.0_f64.sqrt()),
    });
    check(
        "from -13 to 10",
        by_heights.brimful().cm3(),
        12_909.851_411_151_7,
        EXACT,
    );
    let by_widths = inside(Shape::Bowl {
        diameter: cm(30.0),
        base: cm(15.0),
        mouth: cm(20.0),
    });
    let height = by_widths.height();
    check("height", height.cm(), 24.170_720_944_265_5, EXACT);
    check(
        "brimful",
        by_widths.brimful().cm3(),
        13_326.182_964_530_8,
        EXACT,
    );
    let filled = by_widths.volume_below(height - cm(3.0));
    check(
        "to 3 cm below the mouth",
        filled.cm3(),
        12_095.862_839_439_3,
        EXACT,
    );
    let layer = |depth| LayerDepth::Uniform(cm(depth));
    let bed = Bed::new(&by_widths, layer(2.0), layer(3.0)).unwrap();
    check(
        "bed of 5 cm",
        bed.volume().cm3(),
        1_772.935_382_304_3,
        EXACT,
    );
}

#[test]
fn a_sloped_bed_holds_area_times_depth_at_the_centroid() {
    let long = cuboid(60.0, 30.0, 36.0);
    check("3 to 8", soil(long, back_to_front(3.0, 8.0)), 9900.0, EXACT);
    // Corners 3 and 4 at the back, 8 and 9 at the front.
    check(
        "both ways",
        soil(long, all_walls(3.5, 8.5, 5.5, 6.5)),
        10_800.0,
        EXACT,
    );
    let round = soil(cylinder(15.0, 40.0), back_to_front(2.0, 8.0));
    check("cylinder 2 to 8", round, 3_534.291_735_288_52, EXACT);
    let bow = bow_front(90.0, 35.0, 45.0, 50.0);
    check(
        "bow front 9 to 3",
        soil(bow, back_to_front(9.0, 3.0)),
        23_301.022_289_448_3,
        EXACT,
    );
    // 10 cm in the corner, falling 6 cm in 45 cm along the bisector.
    let per_cm = 6.0 / 45.0 / std::f64::consts::SQRT_2;
    let at = |x: f64, y: f64| 10.0 - per_cm * (x + y);
    let depth = all_walls(at(22.5, 0.0), at(22.5, 45.0), at(0.0, 22.5), at(45.0, 22.5));
    check(
        "quarter cylinder",
        soil(quarter(45.0, 45.0), depth),
        10_176.747_881_187_3,
        EXACT,
    );
}

#[test]
fn the_depth_of_a_bow_fronts_centroid_is_the_mean_of_its_distances() {
    let vessel = inside(bow_front(90.0, 35.0, 45.0, 50.0));
    let distance = back_to_front(0.0, 45.0);
    let bed = Bed::new(&vessel, distance, LayerDepth::Uniform(cm(0.0))).unwrap();
    check("centroid", bed.soil.mean.cm(), 20.970_972_413_609_5, EXACT);
}

#[test]
fn a_bed_that_meets_the_floor_or_the_rim_is_cut_there() {
    let long = cuboid(60.0, 30.0, 36.0);
    check(
        "meets the floor",
        soil(long, back_to_front(-4.0, 8.0)),
        4800.0,
        EXACT,
    );
    check(
        "passes the rim",
        soil(long, back_to_front(20.0, 44.0)),
        55_200.0,
        EXACT,
    );
    // z = -3 + 0.05 x + 0.2 y.
    let corner = soil(cuboid(90.0, 45.0, 45.0), all_walls(-0.75, 8.25, 1.5, 6.0));
    check("meets the floor in a corner", corner, 15_637.5, EXACT);
    // z = -1 + 0.2 x from the middle of the plan.
    let hexagon = LayerDepth::LeftToRight {
        left: cm(-5.0),
        right: cm(3.0),
    };
    check(
        "hexagon",
        soil(polygon(6, 20.0, 45.0), hexagon),
        375.277_674_973_257,
        EXACT,
    );
}

#[test]
fn a_bed_that_meets_a_round_floor_is_a_cylindrical_wedge() {
    // Radius, width of the wet floor along the fall, height at the far wall.
    let cases = [
        (15.0, 15.0, 6.0, 900.0),
        (15.0, 10.0, 6.0, 512.605_277_549_417),
        (15.0, 20.0, 6.0, 1_316.590_159_361_26),
        (12.0, 24.0, 5.0, 1_130.973_355_292_33),
    ];
    for (radius, wet, high, volume) in cases {
        let front = high - high * 2.0 * radius / wet;
        let found = soil(cylinder(radius, 40.0), back_to_front(high, front));
        check(&format!("R {radius}, b {wet}"), found, volume, EXACT);
    }
}
