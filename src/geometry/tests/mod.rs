//! Outlines, regions, places and refusals.

mod bed;
mod refusal;
mod shape;

use super::pane::Facing;
use super::plane::PlanPoint;
use super::plane::Plane;
use super::region::Region;
use super::zone::SphereZone;
use super::{Bed, Dimension, FloorPlace, GeometryError, LayerDepth, Measured, Shape, Vessel, Wall};
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
