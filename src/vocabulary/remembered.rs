//! Columns that were worked out before: from one asker of a search to the next, most of what they are made of stays.

use std::sync::{Arc, Mutex};

use rustc_hash::FxHashMap;

use super::Interval;
use crate::rules::FactId;

/// So many columns are kept; then all are forgotten, so that a long search keeps what it used last.
const MOST: usize = 256;

/// A column's fact, and what it was worked out from.
type Question = (FactId, Vec<Interval>);

/// The columns of one list of candidates, by what they were worked out from.
#[derive(Debug, Default)]
pub struct Remembered(Mutex<FxHashMap<Question, Arc<[Interval]>>>);

impl Remembered {
    /// The column as it was worked out before from the same, else as `work` has it.
    pub(super) fn or_else(
        &self,
        fact: FactId,
        of: Vec<Interval>,
        work: impl FnOnce(&[Interval]) -> Arc<[Interval]>,
    ) -> Arc<[Interval]> {
        // Nobody panics while holding it; if somebody did, the column is simply worked out again.
        let Ok(mut known) = self.0.lock() else {
            return work(&of);
        };
        let question = (fact, of);
        if let Some(column) = known.get(&question) {
            return Arc::clone(column);
        }
        if known.len() >= MOST {
            known.clear();
        }
        let column = work(&question.1);
        known.insert(question, Arc::clone(&column));
        column
    }
}
