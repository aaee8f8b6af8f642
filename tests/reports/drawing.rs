//! What is measured in a page's drawings is what the plan says.

use lentic::design::Design;
use lentic::geometry::Shape;
use lentic::units::UnitSystem;
use roxmltree::Node;

use crate::demo;
use crate::designed::{demo as demo_tank, page};
use crate::page::parsed;

/// A point in a picture, px.
type At = (f64, f64);

/// The outlines of one view by class, how many pixels a centimetre has, and how long the
/// bar is that tells of it.
struct View {
    outlines: Vec<(String, Vec<At>)>,
    px_per_cm: f64,
    bar_px: f64,
}

impl View {
    fn of(picture: Node<'_, '_>, across_cm: f64) -> Self {
        let polygons = picture
            .descendants()
            .filter(|node| ["polygon", "polyline"].contains(&node.tag_name().name()));
        let outlines: Vec<(String, Vec<At>)> = polygons
            .map(|node| {
                let class = node.attribute("class").unwrap_or_default().to_owned();
                (class, places(node.attribute("points").unwrap_or_default()))
            })
            .collect();
        let bar = picture
            .descendants()
            .find(|node| node.attribute("class") == Some("rule"))
            .and_then(|node| node.attribute("width")?.parse().ok());
        let mut view = Self {
            outlines,
            px_per_cm: 1.0,
            bar_px: bar.expect("a bar that tells the scale"),
        };
        let [left, right] = span(view.outline("air"), |at| at.0);
        view.px_per_cm = (right - left) / across_cm;
        view
    }

    fn outline(&self, class: &str) -> &[At] {
        let found = self.outlines.iter().find(|(name, _)| name == class);
        found.map_or(&[], |(_, places)| places)
    }

    /// Depth of a layer at one end, cm.
    fn depth_cm(&self, class: &str, end: End) -> f64 {
        let outline = self.outline(class);
        let [left, right] = span(outline, |at| at.0);
        let x = if end == End::Left { left } else { right };
        let there: Vec<At> = outline
            .iter()
            .filter(|at| (at.0 - x).abs() < 0.2)
            .copied()
            .collect();
        let [top, foot] = span(&there, |at| at.1);
        (foot - top) / self.px_per_cm
    }

    /// Area within an outline, cm2.
    fn area_cm2(&self, class: &str) -> f64 {
        let outline = self.outline(class);
        let next = outline.iter().cycle().skip(1);
        let twice: f64 = outline
            .iter()
            .zip(next)
            .map(|(a, b)| a.0 * b.1 - b.0 * a.1)
            .sum();
        (twice / 2.0).abs() / self.px_per_cm.powi(2)
    }

    /// Volume of what an outline encloses when it is turned about its middle, cm3.
    fn turned_cm3(&self, class: &str) -> f64 {
        let outline = self.outline(class);
        let [left, right] = span(outline, |at| at.0);
        let middle = f64::midpoint(left, right);
        let wall: Vec<At> = outline
            .iter()
            .filter(|at| at.0 >= middle)
            .copied()
            .collect();
        let slices = wall.windows(2).map(|pair| {
            let (a, b) = (pair[0].0 - middle, pair[1].0 - middle);
            (pair[1].1 - pair[0].1).abs() * (a * a + a * b + b * b) / 3.0
        });
        std::f64::consts::PI * slices.sum::<f64>() / self.px_per_cm.powi(3)
    }
}

#[derive(Clone, Copy, PartialEq)]
enum End {
    Left,
    Right,
}

fn places(points: &str) -> Vec<At> {
    let number = |text: &str| text.parse().expect("a coordinate");
    points
        .split_whitespace()
        .filter_map(|place| place.split_once(','))
        .map(|(x, y)| (number(x), number(y)))
        .collect()
}

fn span(outline: &[At], of: impl Fn(&At) -> f64) -> [f64; 2] {
    let values = outline.iter().map(&of);
    [
        values.clone().fold(f64::INFINITY, f64::min),
        values.fold(f64::NEG_INFINITY, f64::max),
    ]
}

/// Front, side and above of a design's page.
fn views(design: &Design, page: &str) -> [View; 3] {
    let document = parsed(page);
    let pictures = document
        .descendants()
        .filter(|node| node.attribute("role") == Some("img"));
    let pictures: Vec<Node<'_, '_>> = pictures.take(3).collect();
    let (length, width) = (design.vessel().length().cm(), design.vessel().width().cm());
    [
        View::of(pictures[0], length),
        View::of(pictures[1], width),
        View::of(pictures[2], length),
    ]
}

/// Depths of a layer at the ends of a view must be among those that the plan gives.
fn check(path: &str, what: &str, drawn: f64, expected: f64, within: f64) {
    assert!(
        (drawn - expected).abs() <= within,
        "{path}: {what}: drawn {drawn}, expected {expected}, within {within}"
    );
}

#[test]
fn every_view_tells_its_scale_and_has_the_tank_s_height_and_levels() {
    for path in demo::tanks() {
        let design = demo_tank(&path);
        let [front, side, above] = views(&design, &page(&design));
        let bar_cm = match design.draft().units {
            UnitSystem::Metric => 10.0,
            UnitSystem::Us => 10.16,
        };
        for view in [&front, &side, &above] {
            // coordinates are written to a tenth of a pixel
            let within = 0.2 * bar_cm / design.vessel().width().cm() + 0.05;
            let expected = bar_cm * view.px_per_cm;
            check(&path, "bar", view.bar_px, expected, within);
        }
        let within = 0.01 * side.px_per_cm;
        check(&path, "scale", above.px_per_cm, side.px_per_cm, within);
        let pixel_cm = 1.0 / side.px_per_cm;
        for view in [&front, &side] {
            let [rim, floor] = span(view.outline("air"), |at| at.1);
            let height_cm = (floor - rim) / view.px_per_cm;
            check(
                &path,
                "height",
                height_cm,
                design.vessel().height().cm(),
                pixel_cm,
            );
            let [level, _] = span(view.outline("water"), |at| at.1);
            let level_cm = (floor - level) / view.px_per_cm;
            check(
                &path,
                "level",
                level_cm,
                design.water_level().cm(),
                pixel_cm,
            );
        }
    }
}

#[test]
fn depths_and_volumes_of_the_bed_are_those_of_the_drawing() {
    for path in demo::tanks() {
        let design = demo_tank(&path);
        let [front, side, above] = views(&design, &page(&design));
        let pixel_cm = 1.0 / side.px_per_cm;
        let bed = design.bed();
        for (class, layer) in [("soil", bed.soil), ("cap", bed.cap)] {
            if matches!(design.vessel().shape(), Shape::Bowl { .. }) {
                let [top, foot] = span(front.outline(class), |at| at.1);
                check(
                    &path,
                    class,
                    (foot - top) / front.px_per_cm,
                    layer.mean.cm(),
                    pixel_cm,
                );
                let drawn = front.turned_cm3(class);
                let within = bed.area().cm2() * pixel_cm;
                check(&path, class, drawn, layer.volume.cm3(), within);
                continue;
            }
            let ends = [
                front.depth_cm(class, End::Left),
                front.depth_cm(class, End::Right),
                side.depth_cm(class, End::Left),
                side.depth_cm(class, End::Right),
            ];
            let (low, high) = (layer.thinnest.depth.cm(), layer.deepest.depth.cm());
            for depth in ends {
                assert!(
                    depth > low - pixel_cm && depth < high + pixel_cm,
                    "{path}: {class}: {depth}"
                );
            }
            // The front's right end is the side's left end.
            check(&path, class, ends[1], ends[2], 2.0 * pixel_cm);
            let most = ends.iter().copied().fold(0.0, f64::max);
            let least = ends.iter().copied().fold(f64::INFINITY, f64::min);
            check(&path, "least", least, low, pixel_cm);
            check(&path, "most", most, high, pixel_cm);
            // Beds of the demos slope one way at most, so their mean lies in the middle.
            let mean_cm =
                f64::midpoint(ends[0], ends[1]) + f64::midpoint(ends[2], ends[3]) - ends[1];
            let drawn = above.area_cm2("air") * mean_cm;
            let within = design.vessel().floor_area().cm2() * pixel_cm;
            check(&path, class, drawn, layer.volume.cm3(), within);
        }
    }
}

#[test]
fn the_plan_from_above_has_the_floor_s_area() {
    for path in demo::tanks() {
        let design = demo_tank(&path);
        let [_, _, above] = views(&design, &page(&design));
        let vessel = design.vessel();
        let pixel_cm = 1.0 / above.px_per_cm;
        let around_cm = 2.0 * (vessel.length() + vessel.width()).cm();
        let within = around_cm * pixel_cm;
        let water = design.surface().cm2();
        check(
            &path,
            "water's surface",
            above.area_cm2("water"),
            water,
            within,
        );
        let floor = vessel.floor_area().cm2();
        check(&path, "floor", above.area_cm2("far"), floor, within);
    }
}

#[test]
fn an_elevation_is_drawn_with_all_its_parts() {
    let page = page(&demo_tank("demo-tanks/hillside-60.toml"));
    let from = page
        .match_indices("<svg xmlns")
        .nth(1)
        .expect("a side view")
        .0;
    let to = from + page[from..].find("</svg>").expect("its end");
    insta::assert_snapshot!(&page[from..to]);
}
