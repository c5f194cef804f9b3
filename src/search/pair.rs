//! Two answers that turn the pick together.

use super::decision::Decision;
use crate::rules::Interval;

/// Two answers that turn the pick together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pair<P> {
    /// Which answers, each with its value there; the first has the lower number.
    pub steps: [(usize, i64); 2],
    /// What is picked there.
    pub pick: P,
}

/// The nearest two answers that turn the pick together, where no single one does.
///
/// Nearest by the sum of each answer's distance as a part of its range (a word or a bit counts as a whole range), then by number of
/// the answers, then by value. The second value is whether that was certain within `most` boxes and points.
pub fn pair<D: Decision>(
    decision: &D,
    start: &[i64],
    area: &[Interval],
    most: usize,
) -> (Option<Pair<D::Pick>>, bool) {
    let _ = (decision, start, area, most);
    (None, false)
}
