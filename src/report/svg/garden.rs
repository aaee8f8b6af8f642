//! Where plants and stones stand in a bed: the same places in every view of a tank.

use super::bounds::Bounds;
use super::canvas::At;
use crate::catalogue::{GrowthForm, PlantGroup};
use crate::geometry::Spot;
use crate::plan::{Drawing, DrawnStand};

/// More plants than that are drawn as fewer, larger ones.
const MOST_PLANTS: f64 = 34.0;
/// Places tried for each plant before a narrow bed counts as full.
const TRIES: usize = 40;
/// Steps across and along that fill a square evenly, and a line too where there are few:
/// 1/g with g2 = g + 1, and 1/h with h3 = h + 1.
pub(super) const EVEN: [f64; 2] = [0.618_033_988_7, 0.754_877_666_2];
/// How far plants keep from the walls, of the way to the middle.
const INWARDS: f64 = 0.06;

/// How a form is drawn: its share of the depth of water, the most that it grows to, the
/// room that one takes, and between which shares of the way from front to back it is planted
/// (judgement: tall at the back, low in front).
struct FormDrawing {
    depth_share: f64,
    most_m: f64,
    room_m: f64,
    zone: [f64; 2],
}

const fn look(form: GrowthForm) -> FormDrawing {
    let (depth_share, most_m, room_m, zone) = match form {
        GrowthForm::SubmergedStem => (0.82, 0.60, 0.05, [0.45, 1.0]),
        GrowthForm::AmphibiousStem => (0.65, 0.45, 0.06, [0.40, 1.0]),
        GrowthForm::RunnerRosette => (0.55, 0.40, 0.07, [0.20, 0.9]),
        GrowthForm::SlowRosette => (0.35, 0.18, 0.08, [0.05, 0.6]),
        GrowthForm::Epiphyte => (0.25, 0.14, 0.09, [0.10, 0.7]),
        GrowthForm::Moss => (0.10, 0.03, 0.08, [0.0, 0.6]),
        GrowthForm::SmallFloating | GrowthForm::LargeFloating => (0.0, 0.0, 0.05, [0.0, 1.0]),
    };
    FormDrawing {
        depth_share,
        most_m,
        room_m,
        zone,
    }
}

/// A plant in its place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Placed {
    pub(super) form: GrowthForm,
    /// From the left and from the front, m.
    pub(super) place_m: [f64; 2],
    /// From 0 at the front to 1 at the back, and from 0 on the left to 1 on the right.
    pub(super) back: f64,
    pub(super) right: f64,
    pub(super) width_m: f64,
}

impl Placed {
    /// How high it stands in water of a depth, m.
    pub(super) fn height_m(&self, depth_m: f64) -> f64 {
        let look = look(self.form);
        (depth_m * look.depth_share).min(look.most_m)
    }
}

/// The plants of a bed, those at the back first.
pub(super) fn plants(drawing: &Drawing) -> Vec<Placed> {
    let rooted = drawing.stands.iter();
    let rooted: Vec<&DrawnStand> = rooted
        .filter(|stand| stand.group != PlantGroup::Floater)
        .collect();
    let area = area_m2(&drawing.bed);
    let count = |stand: &DrawnStand, stretch: f64| {
        let room = look(stand.form).room_m * stretch;
        stand.share.fraction().min(1.0) * area / (room * room)
    };
    let all: f64 = rooted.iter().map(|stand| count(stand, 1.0)).sum();
    let stretch = (all / MOST_PLANTS).sqrt().max(1.0);
    let mut placed: Vec<Placed> = rooted
        .iter()
        .enumerate()
        .flat_map(|(i, stand)| {
            let wanted = count(stand, stretch).round().max(1.0) as usize;
            let look = look(stand.form);
            let width_m = look.room_m * stretch;
            let places = places(&drawing.bed, look.zone, i).take(wanted * TRIES);
            places.flatten().take(wanted).map(move |place| Placed {
                form: stand.form,
                place_m: place.0,
                back: place.1[1],
                right: place.1[0],
                width_m,
            })
        })
        .collect();
    placed.sort_by(|a, b| b.back.total_cmp(&a.back));
    placed
}

/// A place from the left and from the front, m, and as shares of both ways.
type GardenPlace = ([f64; 2], [f64; 2]);

/// Evenly spread places in a zone of an outline; none for those that lie beside it.
fn places(
    outline: &[Spot],
    [front, back]: [f64; 2],
    variant: usize,
) -> impl Iterator<Item = Option<GardenPlace>> {
    let frame = Bounds::of(outline);
    let corners: Vec<At> = outline
        .iter()
        .map(|spot| (spot.across.m(), spot.up.m()))
        .collect();
    let middle = [
        f64::midpoint(frame.left_m, frame.right_m),
        f64::midpoint(frame.low_m, frame.high_m),
    ];
    (1..).map(move |i: usize| {
        let [across, up] = EVEN.map(|step| (step * i as f64 + 0.37 * variant as f64).fract());
        let shares = [across, front + (back - front) * up];
        let at = [
            frame.left_m + frame.across_m() * shares[0],
            frame.low_m + frame.up_m() * shares[1],
        ];
        let inwards = |axis: usize| at[axis] + (middle[axis] - at[axis]) * INWARDS;
        let place = [inwards(0), inwards(1)];
        is_inside(&corners, (at[0], at[1])).then_some((place, shares))
    })
}

/// The middles of stones, from the left and from the front, m.
pub(super) fn stones(drawing: &Drawing) -> Vec<[f64; 2]> {
    let frame = Bounds::of(&drawing.bed);
    let count = drawing.stones.len() as f64;
    (0..drawing.stones.len())
        .map(|i| {
            let right = 0.16 + 0.6 * (i as f64 + 0.5) / count;
            let back = if i % 2 == 0 { 0.42 } else { 0.58 };
            [
                frame.left_m + frame.across_m() * right,
                frame.low_m + frame.up_m() * back,
            ]
        })
        .collect()
}

/// Where the device hangs, from the left and from the front, m.
pub(super) fn device(drawing: &Drawing) -> [f64; 2] {
    let frame = Bounds::of(&drawing.bed);
    [
        frame.left_m + frame.across_m() * 0.9,
        frame.low_m + frame.up_m() * 0.6,
    ]
}

fn area_m2(outline: &[Spot]) -> f64 {
    let next = outline.iter().cycle().skip(1);
    let twice: f64 = outline
        .iter()
        .zip(next)
        .map(|(a, b)| a.across.m() * b.up.m() - b.across.m() * a.up.m())
        .sum();
    (twice / 2.0).abs()
}

/// Whether a place lies inside an outline: a ray to the right crosses it an odd number of
/// times.
pub(super) fn is_inside(outline: &[At], (x, y): At) -> bool {
    let next = outline.iter().cycle().skip(1);
    let crossings = outline
        .iter()
        .zip(next)
        .filter(|(a, b)| (a.1 > y) != (b.1 > y) && x < a.0 + (y - a.1) / (b.1 - a.1) * (b.0 - a.0));
    crossings.count() % 2 == 1
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Length;

    #[test]
    fn a_place_is_inside_or_not() {
        let spot = |across, up| Spot {
            across: Length::from_m(across),
            up: Length::from_m(up),
        };
        let corners = [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)];
        assert!(is_inside(&corners, (0.5, 0.5)));
        assert!(!is_inside(&corners, (1.5, 0.5)));
        assert!(!is_inside(&corners, (0.5, -0.1)));
        let square = corners.map(|(across, up)| spot(across, up));
        assert!((area_m2(&square) - 1.0).abs() < 1e-12);
        let found: Vec<GardenPlace> = places(&square, [0.4, 1.0], 0).flatten().take(9).collect();
        assert!(found.iter().all(|place| place.1[1] >= 0.4));
    }
}
