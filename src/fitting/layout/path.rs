//! A straight way along the ball as a row of points, for drawing.

use super::Point;
use super::great_circle::{apart, heading, walk};
use crate::fitting::Sphere;

/// Degrees between two points of a drawn line.
const FINE: f64 = 5.0;
/// Points of a line half way around.
const MOST: f64 = 36.0;

/// The straight way from one point to another, ends included. Opposite points are joined by way of the grip's half.
pub(super) fn line(ball: &Sphere, from: Point, to: Point) -> Vec<Point> {
    let (start, end) = (from.unit(ball), to.unit(ball));
    let angle = apart(start, end);
    let Some(along) = heading(start, end) else {
        return if angle < 1.0 {
            vec![from]
        } else {
            vec![from, Point::grip_centre(), to]
        };
    };
    // The cast is from 1 to 36.
    let count = (angle.to_degrees() / FINE).ceil().clamp(1.0, MOST) as u32;
    let between = (1..count).map(|index| {
        let part = angle * f64::from(index) / f64::from(count);
        Point::of(ball, walk(start, along, part))
    });
    std::iter::once(from)
        .chain(between)
        .chain(std::iter::once(to))
        .collect()
}

/// The point this far along the straight way from one point to another; `from` itself if there is no such way.
pub(super) fn part_way(ball: &Sphere, from: Point, to: Point, inches: f64) -> Point {
    match heading(from.unit(ball), to.unit(ball)) {
        Some(along) => Point::of(ball, walk(from.unit(ball), along, ball.radians(inches))),
        None => from,
    }
}
