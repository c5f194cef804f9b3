//! From a grip as ordered to holes on the ball.
//!
//! Spans and bridge run between edges, and where an edge lies depends on how its hole leans, which depends on where the
//! holes are. So the grip is drawn from assumed reaches (from each centre to its near edges), the reaches are read off
//! the drawing, and so on until they stand still. A reach hardly depends on the drawing: some ten rounds give the last
//! digit.

use glam::{DMat3, DVec3};

use super::{
    Misfit, Sphere,
    digit::Digit,
    edge::{apart, step, toward},
    figure::{Figure, with_palm_mark, with_thumb},
    hole::{Facing, Hole},
    order::{GripOrder, HoleOrder, Reading, Reference, SPANS},
    placed::{Bores, Placed},
    reaches::{Reaches, read},
    unplaceable::{Fault, Unplaceable},
};

/// Far more rounds than any grip needs.
const ROUNDS: usize = 200;
/// Radians: reaches that move less stand still.
const STILL: f64 = 1e-15;
/// Radians: reaches that still move this much after all rounds belong to no grip.
const RESTLESS: f64 = 1e-12;

/// Places a grip on the ball.
///
/// # Errors
///
/// Every number that no grip can have, with its limit; if there is none, spans and a bridge that close no triangle,
/// with the ring spans that would.
pub fn place(ball: &Sphere, order: &GripOrder) -> Result<Placed, Unplaceable> {
    let faults = order.faults(ball);
    if !faults.is_empty() {
        return Err(Unplaceable::new(faults));
    }
    let grip = Grip::new(ball, order)?;
    if let Some(drawn) = grip.draw(Closing::ByItself)? {
        return Ok(grip.framed(&drawn)?);
    }
    Err(grip.open_triangle()?.into())
}

/// What an order says, in radians.
struct Grip<'a> {
    ball: &'a Sphere,
    order: &'a GripOrder,
    base: Base,
    bridge: f64,
}

/// What the fingers are placed from.
enum Base {
    Thumb {
        hole: HoleOrder,
        spans: [f64; 2],
        readings: [Reading; 2],
    },
    PalmMark(f64),
}

/// How the triangle of thumb and fingers is closed.
#[derive(Clone, Copy, PartialEq)]
enum Closing {
    /// By its three sides.
    ByItself,
    /// Flat, the ring finger nearest the thumb: the middle side less the bridge side.
    Shortest,
    /// Flat, the ring finger farthest: the middle side and the bridge side.
    Longest,
}

/// A drawing of the grip, not yet in its frame, with the reaches it was drawn from.
struct Drawn {
    figure: Figure,
    placed: Placed,
    reaches: Reaches,
}

impl Grip<'_> {
    fn new<'a>(ball: &'a Sphere, order: &'a GripOrder) -> Result<Grip<'a>, Fault> {
        let base = match (order.thumb, order.spans, order.palm_mark) {
            (Some(hole), Some(readings), _) => {
                let mut spans = [0.0; 2];
                for (index, reading) in readings.iter().enumerate() {
                    let arc = reading.arc(ball, SPANS[index]).map_err(Fault::InGrip)?;
                    spans[index] = ball.radians(arc);
                }
                Base::Thumb {
                    hole,
                    spans,
                    readings,
                }
            }
            (_, _, mark) => Base::PalmMark(ball.radians(mark.unwrap_or_default())),
        };
        Ok(Grip {
            ball,
            order,
            base,
            bridge: ball.radians(order.bridge),
        })
    }

    /// `None` if the triangle doesn't close.
    fn draw(&self, closing: Closing) -> Result<Option<Drawn>, Fault> {
        let mut reaches = Reaches::default();
        for _ in 0..ROUNDS {
            let (figure, closed) = self.figure(&reaches, closing);
            let placed = self.drilled(&figure)?;
            let read = read(&figure, &placed);
            let moved = read.farthest_from(&reaches);
            reaches = read;
            if moved <= STILL {
                return Ok(closed.then_some(Drawn {
                    figure,
                    placed,
                    reaches,
                }));
            }
        }
        // Rounding may keep the last digit moving.
        let (figure, closed) = self.figure(&reaches, closing);
        let placed = self.drilled(&figure)?;
        let settled = read(&figure, &placed).farthest_from(&reaches) < RESTLESS;
        Ok((closed && settled).then_some(Drawn {
            figure,
            placed,
            reaches,
        }))
    }

    /// The points of the grip, if these are the reaches; and whether they are points of a real triangle.
    fn figure(&self, reaches: &Reaches, closing: Closing) -> (Figure, bool) {
        let across = self.bridge + reaches.across[0] + reaches.across[1];
        let to_bridge = reaches.across[0] + 0.5 * self.bridge;
        match &self.base {
            Base::PalmMark(mark) => {
                let down = [reaches.down[0].bore, reaches.down[1].bore];
                (with_palm_mark(to_bridge, across, down, *mark), true)
            }
            Base::Thumb {
                spans, readings, ..
            } => {
                let side =
                    |finger: usize| spans[finger] + reaches.of_span(finger, readings[finger].kind);
                let middle = side(0);
                let ring = match closing {
                    Closing::ByItself => side(1),
                    Closing::Shortest => libm::fabs(middle - across),
                    Closing::Longest => middle + across,
                };
                let closed = closing != Closing::ByItself
                    || (libm::fabs(middle - across) < ring && ring < middle + across);
                (with_thumb([middle, ring], across, to_bridge), closed)
            }
        }
    }

    /// The holes at the points of the figure.
    fn drilled(&self, figure: &Figure) -> Result<Placed, Fault> {
        let [middle, ring] = figure.fingers;
        let middle = self.drill(
            Digit::Middle,
            &self.order.middle,
            middle,
            self.finger(figure, middle),
        )?;
        let ring = self.drill(
            Digit::Ring,
            &self.order.ring,
            ring,
            self.finger(figure, ring),
        )?;
        let thumb = match &self.base {
            Base::Thumb { hole, .. } => {
                let forward = toward(figure.foot, figure.bridge);
                let facing = Facing {
                    forward,
                    up: forward,
                };
                Some(self.drill(Digit::Thumb, hole, figure.foot, facing)?)
            }
            Base::PalmMark(_) => None,
        };
        Ok(Placed {
            thumb: thumb.map(|(cut, _)| cut),
            middle: middle.0,
            ring: ring.0,
            bores: Bores {
                thumb: thumb.map(|(_, bore)| bore),
                middle: middle.1,
                ring: ring.1,
            },
        })
    }

    /// A hole as cut, and its bore.
    fn drill(
        &self,
        digit: Digit,
        order: &HoleOrder,
        out: DVec3,
        facing: Facing,
    ) -> Result<(Hole, Hole), Fault> {
        let hole = |section, pitches| {
            Hole::pitched(self.ball, out, facing, pitches, section, order.depth)
                .map_err(|misfit| Fault::InHole { digit, misfit })
        };
        Ok((
            hole(order.cut(), order.cut_pitches())?,
            hole(order.bore, order.pitches)?,
        ))
    }

    /// Forward is toward the thumb, or down the centreline.
    fn finger(&self, figure: &Figure, out: DVec3) -> Facing {
        let forward = match (&self.base, self.order.reference) {
            (Base::Thumb { .. }, Reference::OwnLine) => toward(out, figure.foot),
            _ => figure.down(out),
        };
        Facing {
            forward,
            up: -forward,
        }
    }

    /// The grip turned into its frame.
    fn framed(&self, drawn: &Drawn) -> Result<Placed, Fault> {
        let Figure {
            foot,
            fingers,
            bridge,
        } = drawn.figure;
        let right = bridge.cross(foot).normalize_or_zero();
        let centre = match &self.base {
            Base::PalmMark(_) => foot,
            Base::Thumb { .. } => {
                let [left_middle, right_middle] = [0, 1].map(|finger| {
                    let (near, far) = (
                        drawn.reaches.thumb[finger].cut,
                        drawn.reaches.down[finger].cut,
                    );
                    let whole = apart(foot, fingers[finger]);
                    step(
                        foot,
                        toward(foot, fingers[finger]),
                        0.5 * (near + whole - far),
                    )
                });
                crossing(left_middle, right_middle, right)
            }
        };
        let fingers = centre.cross(right);
        let view = DMat3::from_cols(right, fingers, centre).transpose();
        let placed = drawn.placed.map(|hole| hole.turned(&view));
        if placed
            .holes()
            .all(|(_, hole)| hole.mouth_vec().is_finite() && hole.axis_vec().is_finite())
        {
            Ok(placed)
        } else {
            Err(Fault::InGrip(Misfit::NotANumber {
                what: "grip centre",
            }))
        }
    }

    /// Which ring spans this middle span and this bridge allow.
    fn open_triangle(&self) -> Result<Fault, Fault> {
        let nothing = Fault::InGrip(Misfit::NotANumber { what: "ring span" });
        let Base::Thumb { readings, .. } = &self.base else {
            return Ok(nothing);
        };
        let [_, ring] = readings;
        let limit = |closing| {
            let drawn = self.draw(closing)?.ok_or(nothing)?;
            let side = apart(drawn.figure.foot, drawn.figure.fingers[1]);
            let arc = side - drawn.reaches.of_span(1, ring.kind);
            Ok(ring.read(self.ball, self.ball.radius() * arc))
        };
        Ok(Fault::OpenTriangle {
            ring: ring.value,
            shortest: limit(Closing::Shortest)?.max(0.0),
            longest: limit(Closing::Longest)?,
        })
    }
}

/// Where the great circle through a point on the left and one on the right crosses the plane whose right side this is.
fn crossing(left: DVec3, right: DVec3, side: DVec3) -> DVec3 {
    let on_plane = left * right.dot(side) - right * left.dot(side);
    // What rounding left of the side is taken out, so that the frame is square.
    (on_plane - side * on_plane.dot(side)).normalize_or_zero()
}
