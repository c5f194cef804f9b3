//! Whether a candidate stays first for every asker of a box of answers.

use super::compile::Chooser;
use super::over::{Over, Pair};
use super::ranged::Ranged;
use super::vocabulary::FactId;

/// Whether a candidate stays first over a box of answers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Challenge {
    /// Certainly, for every asker in the box.
    Holds,
    /// Bounds don't show it.
    Open {
        /// Who comes nearest to beating it, if that is what is open.
        rival: Option<usize>,
        /// What the undecided rules look at, what widens the gap most first; facts of askers and of candidates.
        facts: Vec<FactId>,
    },
}

impl Chooser<'_> {
    /// Whether `first` stays first over the box of `area`; with none, whether all candidates stay ruled out.
    ///
    /// Compares in pairs, rule by rule: what favours both alike cancels. `area` has this chooser's candidates in the same
    /// order. Never says so wrongly; where bounds are too loose it is left open. At a single point it is always right.
    #[must_use]
    pub fn challenge(&self, area: &dyn Ranged, first: Option<usize>) -> Challenge {
        let over = Over::new(self, area);
        match first {
            Some(first) if first < self.count => over.stays_first(first),
            Some(_) => Challenge::Open {
                rival: None,
                facts: Vec::new(),
            },
            None => over.stays_empty(),
        }
    }
}

impl Over<'_, '_> {
    /// Whether nothing can beat this candidate.
    fn stays_first(&self, first: usize) -> Challenge {
        if !self.stays_in(first) {
            return Challenge::Open {
                rival: None,
                facts: self.facts_of_rule_outs(first),
            };
        }
        let rivals = (0..self.candidates()).filter(|&rival| rival != first && !self.is_out(rival));
        let gaps = rivals.map(|rival| {
            let pair = Pair { first, rival };
            (self.least_gap(pair), self.tie_place(rival), rival)
        });
        match gaps.min() {
            Some((gap, place, rival)) if gap < 0 || gap == 0 && place < self.tie_place(first) => {
                let mut facts = self.facts_of_gap(Pair { first, rival });
                for fact in self.facts_of_rule_outs(rival) {
                    if !facts.contains(&fact) {
                        facts.push(fact);
                    }
                }
                Challenge::Open {
                    rival: Some(rival),
                    facts,
                }
            }
            _ => Challenge::Holds,
        }
    }

    /// Whether all candidates stay ruled out.
    fn stays_empty(&self) -> Challenge {
        match (0..self.candidates()).find(|&candidate| !self.is_out(candidate)) {
            None => Challenge::Holds,
            Some(rival) => Challenge::Open {
                rival: Some(rival),
                facts: self.facts_of_rule_outs(rival),
            },
        }
    }
}
