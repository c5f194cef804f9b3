//! What facts may be together, and whether a statement about them can hold.

use super::decision::Shape;
use super::reach::{Judged, Reached, Region, reach};
use crate::rules::{FactId, Interval, Kind, Statement, Truth, UNKNOWN, Vocabulary};

/// What the facts of a trade may be together, when the rules of a subject are judged.
///
/// Some facts are free: each may be anything in its range. The others follow from those, and from a candidate.
pub trait Realm {
    /// The facts.
    fn vocabulary(&self) -> &Vocabulary;

    /// The free facts that a fact follows from; itself if it is free; none if it is the candidate's alone.
    fn behind(&self, fact: FactId) -> Vec<FactId>;

    /// All that a free fact may be when the rules of this subject are judged.
    fn range(&self, subject: &str, fact: FactId) -> Interval;

    /// What a free fact is when nobody says anything of it: examples leave it so where they can.
    fn plain(&self, subject: &str, fact: FactId) -> i64 {
        let range = self.range(subject, fact);
        if range.may_be_unknown() {
            return UNKNOWN;
        }
        range.lowest()
    }

    /// How many candidates a choice has in all; 0 for a subject without any.
    fn candidates(&self, subject: &str) -> usize;

    /// How many of them, from the first on, are offered to everybody. The others come in by somebody's wish.
    fn offered(&self, subject: &str) -> usize {
        self.candidates(subject)
    }

    /// What each of the wanted facts may be, for a candidate, where the free facts are what `area` says, in the same order.
    fn values(
        &self,
        subject: &str,
        candidate: Option<usize>,
        free: &[FactId],
        area: &[Interval],
        wanted: &[FactId],
    ) -> Vec<Interval>;

    /// Whether the free facts can be so together.
    fn possible(&self, _free: &[FactId], _area: &[Interval]) -> Truth {
        Truth::Yes
    }

    /// Why a fact can't be what a single test asks, in words; none if there is nothing to say.
    fn hint(&self, _subject: &str, _fact: FactId) -> Option<String> {
        None
    }
}

/// Values of free facts, and a candidate, at which something holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Example {
    /// Each free fact with its value, but for those that are what they are when nobody says anything.
    pub values: Vec<(FactId, i64)>,
    /// The candidate, for a choice.
    pub candidate: Option<usize>,
}

/// Whether a statement can hold.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Can {
    /// Yes: here.
    Hold(Example),
    /// Never.
    Never,
    /// The work limit was reached first.
    NotSettled,
}

/// Whether `statement` can hold when rules of `subject` are judged, looking at no more than `most` boxes a candidate.
pub fn can_hold(realm: &dyn Realm, subject: &str, statement: &Statement, most: usize) -> Can {
    // What tests alone rule out needs no search.
    if statement.is_refuted() {
        return Can::Never;
    }
    let loose = Loose(realm);
    if one(&loose, subject, statement, None, most) == Can::Never {
        return Can::Never;
    }
    let facts = statement.facts();
    let count = realm.candidates(subject);
    let own = |fact: &FactId| !realm.vocabulary().fact(*fact).origin.is_scalar();
    if count == 0 || !facts.iter().any(own) {
        let candidate = (count > 0).then_some(0);
        return one(realm, subject, statement, candidate, most);
    }
    let mut settled = true;
    for candidate in 0..count {
        match one(realm, subject, statement, Some(candidate), most) {
            Can::Hold(example) => return Can::Hold(example),
            Can::Never => {}
            Can::NotSettled => settled = false,
        }
    }
    if settled { Can::Never } else { Can::NotSettled }
}

fn one(
    realm: &dyn Realm,
    subject: &str,
    statement: &Statement,
    candidate: Option<usize>,
    most: usize,
) -> Can {
    let place = Place::new(
        realm,
        subject,
        std::slice::from_ref(statement),
        vec![candidate],
    );
    place.search(most)
}

/// Whether it can be that for every offered candidate one of the statements holds.
pub fn can_hold_for_all(
    realm: &dyn Realm,
    subject: &str,
    statements: &[Statement],
    most: usize,
) -> Can {
    let candidates = (0..realm.offered(subject)).map(Some).collect();
    Place::new(realm, subject, statements, candidates).search(most)
}

/// The same facts, each as if it followed from nothing: what can't be here can't be at all, and that is soon seen.
struct Loose<'r>(&'r dyn Realm);

impl Realm for Loose<'_> {
    fn vocabulary(&self) -> &Vocabulary {
        self.0.vocabulary()
    }

    fn behind(&self, fact: FactId) -> Vec<FactId> {
        vec![fact]
    }

    fn range(&self, subject: &str, fact: FactId) -> Interval {
        if self.0.behind(fact) == [fact] {
            return self.0.range(subject, fact);
        }
        match self.vocabulary().fact(fact).kind {
            Kind::Number {
                lowest, highest, ..
            } => Interval::between(lowest, highest),
            Kind::Choice(words) => Interval::between(0, words.len() as i64 - 1),
            Kind::Flag => Interval::either(),
            Kind::Set(words) => Interval::between(0, (1 << words.len()) - 1),
        }
        .or_unknown()
    }

    fn candidates(&self, _subject: &str) -> usize {
        0
    }

    fn values(
        &self,
        _subject: &str,
        _candidate: Option<usize>,
        free: &[FactId],
        area: &[Interval],
        wanted: &[FactId],
    ) -> Vec<Interval> {
        let place = |fact: &FactId| free.iter().position(|known| known == fact);
        let value = |fact: &FactId| place(fact).and_then(|place| area.get(place).copied());
        wanted
            .iter()
            .map(|fact| value(fact).unwrap_or(Interval::NOT_KNOWN))
            .collect()
    }

    fn possible(&self, free: &[FactId], area: &[Interval]) -> Truth {
        self.0.possible(free, area)
    }
}

/// Any of some statements, for all of some candidates, as a region over the free facts behind.
struct Place<'r> {
    realm: &'r dyn Realm,
    subject: &'r str,
    statement: Statement,
    candidates: Vec<Option<usize>>,
    free: Vec<FactId>,
    cuts: Vec<Vec<i64>>,
    /// The facts of the statement, each with the free facts behind it.
    wanted: Vec<FactId>,
    behind: Vec<Vec<usize>>,
}

impl<'r> Place<'r> {
    fn new(
        realm: &'r dyn Realm,
        subject: &'r str,
        statements: &[Statement],
        candidates: Vec<Option<usize>>,
    ) -> Place<'r> {
        let statement = match statements {
            [only] => only.clone(),
            all => Statement::any(all.iter().cloned()),
        };
        let wanted = statement.facts();
        let sources: Vec<Vec<FactId>> = wanted.iter().map(|&fact| realm.behind(fact)).collect();
        let mut free: Vec<FactId> = sources.iter().flatten().copied().collect();
        free.sort_unstable();
        free.dedup();
        let places = |facts: &Vec<FactId>| {
            let place = |fact| free.iter().position(|known| known == fact);
            facts.iter().filter_map(place).collect()
        };
        let behind: Vec<Vec<usize>> = sources.iter().map(places).collect();
        let cuts = free
            .iter()
            .map(|&fact| match realm.vocabulary().fact(fact).kind {
                // Through a fact that follows from a set, any of its bits may matter.
                Kind::Set(words) if !wanted.contains(&fact) => vec![(1 << words.len()) - 1],
                Kind::Set(_) => vec![statement.bits(fact)],
                _ => statement.cuts(fact),
            })
            .collect();
        Place {
            realm,
            subject,
            statement,
            candidates,
            free,
            cuts,
            wanted,
            behind,
        }
    }

    fn search(&self, most: usize) -> Can {
        let range = |&fact: &FactId| self.realm.range(self.subject, fact);
        let area: Vec<Interval> = self.free.iter().map(range).collect();
        match reach(self, &area, most).0 {
            Reached::Nowhere => Can::Never,
            Reached::NotSettled => Can::NotSettled,
            Reached::At(point) => {
                let point = self.plainer(point);
                let told =
                    |(fact, value): &(FactId, i64)| *value != self.realm.plain(self.subject, *fact);
                let candidate = match self.candidates[..] {
                    [only] => only,
                    _ => None,
                };
                Can::Hold(Example {
                    values: self.free.iter().copied().zip(point).filter(told).collect(),
                    candidate,
                })
            }
        }
    }
}

impl Place<'_> {
    /// The same point with as much as possible left plain.
    fn plainer(&self, mut point: Vec<i64>) -> Vec<i64> {
        for answer in 0..point.len() {
            let before = point[answer];
            point[answer] = self.realm.plain(self.subject, self.free[answer]);
            let area: Vec<Interval> = point.iter().copied().map(Interval::point).collect();
            if point[answer] != before && self.judge(&area) != Judged::Everywhere {
                point[answer] = before;
            }
        }
        point
    }
}

impl Region for Place<'_> {
    fn shape(&self, answer: usize) -> Shape {
        let kind = self
            .free
            .get(answer)
            .map(|&fact| self.realm.vocabulary().fact(fact).kind);
        match kind {
            Some(Kind::Set(_)) => Shape::Bits,
            Some(Kind::Choice(_) | Kind::Flag) => Shape::Words,
            _ => Shape::Steps,
        }
    }

    fn cuts(&self, answer: usize) -> &[i64] {
        self.cuts.get(answer).map_or(&[], Vec::as_slice)
    }

    fn judge(&self, area: &[Interval]) -> Judged {
        let possible = self.realm.possible(&self.free, area);
        if possible == Truth::No {
            return Judged::Nowhere;
        }
        let mut open: Vec<usize> = Vec::new();
        let mut everywhere = true;
        for &candidate in &self.candidates {
            let realm = self.realm;
            let values = realm.values(self.subject, candidate, &self.free, area, &self.wanted);
            let value = |fact: FactId| {
                let place = self.wanted.iter().position(|&wanted| wanted == fact);
                place
                    .and_then(|place| values.get(place).copied())
                    .unwrap_or(Interval::NOT_KNOWN)
            };
            match self.statement.truth(&value) {
                Truth::No => return Judged::Nowhere,
                Truth::Yes => {}
                Truth::Open => {
                    everywhere = false;
                    // What keeps the first open candidate open is as good as any.
                    if open.is_empty() {
                        let facts = self.statement.open(&value);
                        let place = |fact| self.wanted.iter().position(|&wanted| wanted == fact);
                        let places = facts.into_iter().filter_map(place);
                        // What hangs on the fewest answers is decided first.
                        let left = |place: &usize| {
                            let unsettled = |answer: &&usize| !area[**answer].is_point();
                            self.behind[*place].iter().filter(unsettled).count()
                        };
                        let nearest = places.min_by_key(left);
                        open = nearest.map_or_else(Vec::new, |place| self.behind[place].clone());
                        open.sort_unstable();
                        open.dedup();
                    }
                }
            }
        }
        match (everywhere, possible) {
            (true, Truth::Yes) => Judged::Everywhere,
            _ => Judged::Open(open),
        }
    }
}
