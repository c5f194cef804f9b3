//! The holes as cut, the walls between them, and the jig's settings.

use super::super::drilling::{PlannedHole, PlannedWeb, Refusal};
use super::Bench;
use crate::fitting::grip::{Digit, HoleOrder, place};
use crate::fitting::hole::{Hole, Section};
use crate::fitting::wall::{self, Wall};
use crate::fitting::{jig, sixty_fourths, slug};
use crate::notation::Notation;
use crate::vocabulary::{REFERENCES, ordered};

impl Bench<'_, '_> {
    /// Thumb, middle, ring.
    pub(super) fn holes(&self) -> Vec<PlannedHole> {
        let grip = &self.order.grip;
        self.placed
            .holes()
            .filter_map(|(digit, hole)| {
                let order = match digit {
                    Digit::Thumb => grip.thumb?,
                    Digit::Middle => grip.middle,
                    Digit::Ring => grip.ring,
                };
                self.hole(digit, &hole, &order)
            })
            .collect()
    }

    fn hole(&self, digit: Digit, hole: &Hole, order: &HoleOrder) -> Option<PlannedHole> {
        let place = hole.place(&self.ball).ok()?;
        let oval = match order.bore {
            Section::Oval {
                wide,
                narrow,
                angle,
            } => Some((wide, narrow, angle)),
            Section::Round { .. } => None,
        };
        Some(PlannedHole {
            name: digit.name(),
            bore: order.bore.drill(),
            outside: order.outside,
            wall: self
                .sleeve_wall(digit, hole)
                .filter(|_| order.outside.is_some()),
            oval,
            depth: order.depth,
            depth_known: self.depth_known(digit),
            place: (place.over(), place.up()),
            mouth: hole.mouth(),
            axis: hole.axis(),
            forward: order.pitches.forward,
            lateral: order.pitches.lateral,
            parallel_lateral: self.parallel(digit, order),
            jig: self.jig(digit, order),
        })
    }

    fn depth_known(&self, digit: Digit) -> bool {
        self.order.thumb_depth_known || digit != Digit::Thumb
    }

    /// What is left of slug, sleeve or insert around its bore.
    fn sleeve_wall(&self, digit: Digit, cut: &Hole) -> Option<f64> {
        let bores = &self.placed.bores;
        let bore = match digit {
            Digit::Thumb => bores.thumb?,
            Digit::Middle => bores.middle,
            Digit::Ring => bores.ring,
        };
        Some(slug::wall(&self.ball, cut, &bore).least)
    }

    /// A finger's lateral counted from where the two holes run side by side.
    fn parallel(&self, digit: Digit, order: &HoleOrder) -> Option<f64> {
        let outward = match digit {
            Digit::Thumb => return None,
            Digit::Middle => -1.0,
            Digit::Ring => 1.0,
        };
        let (one, other) = (self.placed.middle.mouth(), self.placed.ring.mouth());
        let squares = one.iter().zip(other).map(|(a, b)| (a - b) * (a - b));
        let between = libm::sqrt(squares.sum());
        let lateral = outward * order.pitches.lateral;
        let parallel = jig::parallel_lateral(&self.ball, between, lateral).ok()?;
        Some(outward * parallel)
    }

    /// What to set, for a table that slides and for a head that tilts.
    fn jig(&self, digit: Digit, order: &HoleOrder) -> Vec<String> {
        let setting = jig::setting(
            &self.ball,
            digit,
            order.cut_pitches(),
            order.cut(),
            order.depth,
        );
        let Ok(setting) = setting else {
            return Vec::new();
        };
        let (ahead, back) = match digit {
            Digit::Thumb => ("toward the fingers", "away from the fingers"),
            _ if self.order.grip.thumb.is_none() => ("toward the palm", "away from the palm"),
            Digit::Middle | Digit::Ring => ("toward the thumb", "away from the thumb"),
        };
        let (right, left) = match self.left {
            true => ("left", "right"),
            false => ("right", "left"),
        };
        let mut lines = Vec::new();
        let offsets: Vec<String> = [(setting.forward, ahead, back), (setting.right, right, left)]
            .into_iter()
            .filter(|(length, ..)| sixty_fourths(*length) != 0)
            .map(|(length, more, less)| {
                let way = if length > 0.0 { more } else { less };
                format!("{} {way}", inches(length.abs()))
            })
            .collect();
        lines.push(match offsets.is_empty() {
            true => "Sliding table at zero: straight at the ball's centre.".to_owned(),
            false => format!(
                "Sliding table, spindle off the ball's centre: {} ({:.3} in together).",
                offsets.join(", "),
                setting.total
            ),
        });
        if !offsets.is_empty() {
            lines.push(format!(
                "Tilting head: {:.1} degrees that way.",
                setting.tilt
            ));
        }
        if self.depth_known(digit) {
            lines.push(format!(
                "Stop the drill {:.3} in below where it first touches the ball.",
                setting.stop_below_touch
            ));
        }
        if let Some([forward, aside]) = setting.run {
            lines.push(format!(
                "Oval: run the table {:.3} in each way along the thumb's line and {:.3} in across it.",
                forward.abs(),
                aside.abs()
            ));
        }
        lines
    }

    /// Every wall that is known, the thinnest first; for each pair the worse way of counting forward pitch.
    pub(super) fn webs(&self) -> Vec<PlannedWeb> {
        let limit = self.setting("bench.least_web");
        let mut found: Vec<([Digit; 2], Wall)> = Vec::new();
        for reference in REFERENCES {
            let order = ordered(&self.consultation.situation, reference);
            let Some(placed) = order.and_then(|order| place(&self.ball, &order.grip).ok()) else {
                continue;
            };
            for pair in wall::within_grip(&self.ball, &placed) {
                if !self.order.thumb_depth_known && pair.holes.contains(&Digit::Thumb) {
                    continue;
                }
                match found.iter_mut().find(|(holes, _)| *holes == pair.holes) {
                    Some((_, worst)) if pair.wall.least < worst.least => *worst = pair.wall,
                    Some(_) => {}
                    None => found.push((pair.holes, pair.wall)),
                }
            }
        }
        let mut webs: Vec<PlannedWeb> = found
            .into_iter()
            .map(|([one, other], wall)| PlannedWeb {
                between: format!("{} and {}", one.name(), other.name()),
                least: wall.least,
                at_depth: wall.at_depth,
                breaks_at: wall.breaks_at,
                limit,
            })
            .collect();
        webs.extend(self.old_walls());
        // Beyond this only the last digits differ: a hand and its mirror image have the same walls, told in the same order.
        for web in &mut webs {
            web.least = libm::round(web.least * 1e10) / 1e10 + 0.0;
        }
        // Walls to plugs have no limit to be under, and come last.
        webs.sort_by(|a, b| {
            (a.limit.is_infinite().cmp(&b.limit.is_infinite()))
                .then_with(|| a.least.total_cmp(&b.least))
                .then_with(|| a.between.cmp(&b.between))
        });
        webs
    }

    /// Why the holes may not be drilled, with what would mend it.
    pub(super) fn refusals(&self, webs: &[PlannedWeb]) -> Vec<Refusal> {
        webs.iter()
            .filter(|web| is_thin(web))
            .map(|web| {
                let meets = match web.breaks_at {
                    Some(depth) if web.least <= 0.0 => format!("They meet {depth:.3} in down."),
                    _ => format!("The thinnest place lies {:.3} in down.", web.at_depth),
                };
                let remains = match web.least > 0.0 {
                    true => format!("only {:.3} in of wall remains", web.least),
                    false => "no wall remains".to_owned(),
                };
                Refusal {
                    what: format!(
                        "Between {} {remains}, and {} is the least. {meets}",
                        web.between,
                        inches(web.limit)
                    ),
                    mends: self.mends(web),
                }
            })
            .collect()
    }

    /// A bench setting that is a length, in inches.
    pub(super) fn setting(&self, name: &str) -> f64 {
        let steps = self.consultation.situation.known(name).unwrap_or(0);
        crate::fitting::inches(steps)
    }
}

/// Whether a wall is under its limit, read to the nearest sixty-fourth as shops do.
fn is_thin(web: &PlannedWeb) -> bool {
    web.limit.is_finite() && sixty_fourths(web.least) < sixty_fourths(web.limit)
}

/// A length as a fitter writes it, to a sixty-fourth.
pub(super) fn inches(length: f64) -> String {
    Notation::Length.write(sixty_fourths(length))
}
