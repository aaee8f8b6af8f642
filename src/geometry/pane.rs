//! The flat panes around a tank and under it.

use super::edge::Edge;
use super::vessel::{Body, Vessel};
use crate::units::Length;

/// Flat pieces of a wall shorter than this are rounding, m.
const SHORTEST_M: f64 = 1e-9;

/// A flat upright pane, as wide as the space inside it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pane {
    /// Which way it faces.
    pub facing: Facing,
    /// Its inner length; its height is the vessel's.
    pub length: Length,
}

/// Which way a pane faces, seen from the front.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Facing {
    /// To the back.
    Back,
    /// To the front.
    Front,
    /// To the left.
    Left,
    /// To the right.
    Right,
    /// Between two of these.
    Aslant,
}

impl Vessel {
    /// The flat panes of the walls; a bowl and a cylinder have none.
    pub fn panes(&self) -> Vec<Pane> {
        match self.inside() {
            Body::Prism { plan, .. } => plan
                .edges()
                .iter()
                .filter(|edge| edge.is_straight() && edge.chord_m() > SHORTEST_M)
                .map(|edge| Pane {
                    facing: facing(edge),
                    length: Length::from_m(edge.chord_m()),
                })
                .collect(),
            Body::Zone(_) => Vec::new(),
        }
    }

    /// The longest flat pane.
    pub fn long_pane(&self) -> Option<Pane> {
        longest(self.panes())
    }

    /// The longer of the flat panes that face left and right.
    pub fn end_pane(&self) -> Option<Pane> {
        let mut ends = self.panes();
        ends.retain(|pane| matches!(pane.facing, Facing::Left | Facing::Right));
        longest(ends)
    }
}

fn longest(panes: Vec<Pane>) -> Option<Pane> {
    panes
        .into_iter()
        .max_by(|a, b| a.length.m().total_cmp(&b.length.m()))
}

/// The interior lies to the left of an edge.
fn facing(edge: &Edge) -> Facing {
    let (right_m, front_m) = (edge.to.x_m - edge.from.x_m, edge.to.y_m - edge.from.y_m);
    let slack_m = 1e-9 * edge.chord_m();
    if front_m.abs() <= slack_m {
        if right_m > 0.0 {
            Facing::Back
        } else {
            Facing::Front
        }
    } else if right_m.abs() <= slack_m {
        if front_m > 0.0 {
            Facing::Right
        } else {
            Facing::Left
        }
    } else {
        Facing::Aslant
    }
}
