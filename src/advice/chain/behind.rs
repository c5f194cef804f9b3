//! Which facts stand behind which.

use crate::rules::FactId;
use crate::vocabulary::Situation;

/// What stands behind worked facts, while some facts are open.
pub(super) struct Behind {
    open: Vec<FactId>,
    read: Vec<(FactId, Option<Vec<FactId>>)>,
}

impl Behind {
    pub(super) fn new(situation: &Situation, open: &[FactId]) -> Self {
        Behind {
            open: open.to_vec(),
            read: situation.reads(open),
        }
    }

    /// These facts and all facts behind them.
    pub(super) fn of(&self, facts: impl IntoIterator<Item = FactId>) -> Vec<FactId> {
        let mut all: Vec<FactId> = Vec::new();
        let mut next: Vec<FactId> = facts.into_iter().collect();
        while let Some(fact) = next.pop() {
            if all.contains(&fact) {
                continue;
            }
            all.push(fact);
            match self.read.iter().find(|(worked, _)| *worked == fact) {
                Some((_, Some(read))) => next.extend(read),
                Some((_, None)) => {
                    next.extend(&self.open);
                    next.extend(self.read.iter().map(|(worked, _)| worked));
                }
                None => {}
            }
        }
        all
    }
}
