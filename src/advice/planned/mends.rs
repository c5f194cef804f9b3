//! Which single change would mend a thin wall, in the steps and bounds that the rules give each number.

use super::super::drilling::PlannedWeb;
use super::Bench;
use super::holes::inches as written;
use crate::fitting::mend::{self, Bounds, Demand, Mend, Number, Steps};
use crate::fitting::{inches, sixty_fourths};
use crate::notation::Notation;
use crate::vocabulary::REFERENCES;

/// Half a sixty-fourth of an inch, in inches.
const HALF_A_STEP: f64 = 0.5 / 64.0;

impl Bench<'_, '_> {
    /// One line for each number that could mend this wall by itself.
    pub(super) fn mends(&self, web: &PlannedWeb) -> Vec<String> {
        let demand = Demand {
            // Walls are read to the nearest sixty-fourth.
            least: web.limit - HALF_A_STEP,
            references: &REFERENCES,
            old: &[],
            thumb: self.order.thumb_depth_known,
        };
        let mends = mend::mends_for(&self.ball, &self.order.grip, &demand, &self.steps());
        mends.iter().map(|mend| self.words(mend)).collect()
    }

    fn words(&self, mend: &Mend) -> String {
        let turned = |value: f64| if self.left { -value } else { value };
        let (what, from, to) = match mend.what {
            Number::Bridge => ("bridge".to_owned(), written(mend.from), written(mend.to)),
            Number::Depth(digit) => (
                format!("{} depth", digit.name()),
                written(mend.from),
                written(mend.to),
            ),
            Number::Size(digit) => (
                format!("{} hole as cut", digit.name()),
                written(mend.from),
                written(mend.to),
            ),
            Number::Forward(digit) => (
                format!("{} forward pitch", digit.name()),
                Notation::ForwardPitch.write(sixty_fourths(mend.from)),
                Notation::ForwardPitch.write(sixty_fourths(mend.to)),
            ),
            Number::Lateral(digit) => (
                format!("{} lateral pitch", digit.name()),
                Notation::LateralPitch.write(sixty_fourths(turned(mend.from))),
                Notation::LateralPitch.write(sixty_fourths(turned(mend.to))),
            ),
        };
        format!(
            "{what} {to} (now {from}): then {} of wall remains.",
            written(mend.least)
        )
    }

    /// Steps and bounds as the measures state them.
    fn steps(&self) -> Steps {
        let rules = self.consultation.shop.rules();
        let bounds = |measure: &str| {
            let range = rules.range(measure);
            Bounds {
                step: range.step.map_or(0.0, inches),
                lowest: range.lowest.map_or(f64::NEG_INFINITY, inches),
                highest: range.highest.map_or(f64::INFINITY, inches),
            }
        };
        let sleeve_wall = self.setting("bench.least_sleeve_wall");
        let stock = |measure: &str| rules.starts(measure).into_iter().map(inches).collect();
        Steps {
            bridge: bounds("bridge"),
            // The ring finger's outward is to the right, so its limits are outward as they stand.
            lateral: bounds("ring.lateral_pitch"),
            forward: bounds("middle.forward_pitch"),
            finger_depth: bounds("middle.depth"),
            thumb_depth: bounds("thumb.depth"),
            // A bore is the finger's size, and isn't made smaller for a wall.
            size: Bounds {
                step: 0.0,
                ..bounds("middle.bore")
            },
            finger_outsides: stock("middle.insert"),
            thumb_outsides: stock("thumb.slug"),
            insert_wall: sleeve_wall,
            slug_wall: sleeve_wall,
        }
    }
}
