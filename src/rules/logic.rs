//! Statements about facts, judged over ranges: a rule's condition, and what is put together from such.

use super::condition::{Allowed, Condition, LOWEST, Test};
use super::interval::Interval;
use super::rule::{Amount, Effect, Rule, RuleId};
use super::set::RuleSet;
use super::vocabulary::{FactId, UNKNOWN, Vocabulary};

/// What is known of a statement over a box of values.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Truth {
    /// It holds nowhere.
    No,
    /// It may hold here and not there.
    Open,
    /// It holds everywhere.
    Yes,
}

impl Truth {
    fn not(self) -> Truth {
        match self {
            Truth::No => Truth::Yes,
            Truth::Open => Truth::Open,
            Truth::Yes => Truth::No,
        }
    }
}

/// A statement about facts.
#[derive(Clone, Debug)]
pub struct Statement(pub(super) Node);

#[derive(Clone, Debug)]
pub(super) enum Node {
    Test(Test),
    All(Vec<Node>),
    Any(Vec<Node>),
    Not(Box<Node>),
}

impl Statement {
    /// What always holds.
    #[must_use]
    pub fn always() -> Statement {
        Statement(Node::All(Vec::new()))
    }

    /// That nobody knows the fact.
    #[must_use]
    pub fn unknown(fact: FactId) -> Statement {
        Statement::within(fact, UNKNOWN, UNKNOWN)
    }

    /// That the fact is known.
    #[must_use]
    pub fn known(fact: FactId) -> Statement {
        Statement::within(fact, LOWEST, i64::MAX)
    }

    /// That the fact is known and less than this.
    #[must_use]
    pub fn below(fact: FactId, value: i64) -> Statement {
        Statement::within(fact, LOWEST, value.saturating_sub(1))
    }

    /// That the fact is known and more than this.
    #[must_use]
    pub fn above(fact: FactId, value: i64) -> Statement {
        Statement::within(fact, value.saturating_add(1), i64::MAX)
    }

    pub(super) fn within(fact: FactId, lowest: i64, highest: i64) -> Statement {
        let allowed = Allowed::Ranges([(lowest, highest)].into());
        Statement(Node::Test(Test { fact, allowed }))
    }

    /// That both hold.
    #[must_use]
    pub fn and(self, other: Statement) -> Statement {
        Statement(Node::All(vec![self.0, other.0]))
    }

    /// That either holds, or both.
    #[must_use]
    pub fn or(self, other: Statement) -> Statement {
        Statement(Node::Any(vec![self.0, other.0]))
    }

    /// That it doesn't hold. What isn't known meets no test, so here it holds.
    #[must_use]
    pub fn opposite(self) -> Statement {
        Statement(Node::Not(Box::new(self.0)))
    }

    /// That any of these holds; with none of them, it never does.
    #[must_use]
    pub fn any(statements: impl IntoIterator<Item = Statement>) -> Statement {
        Statement(Node::Any(statements.into_iter().map(|one| one.0).collect()))
    }

    /// That all of these hold; with none of them, it always does.
    #[must_use]
    pub fn all(statements: impl IntoIterator<Item = Statement>) -> Statement {
        Statement(Node::All(statements.into_iter().map(|one| one.0).collect()))
    }

    /// The facts it speaks of, each once.
    #[must_use]
    pub fn facts(&self) -> Vec<FactId> {
        let mut facts = Vec::new();
        self.0.each_test(&mut |test| facts.push(test.fact));
        facts.sort_unstable();
        facts.dedup();
        facts
    }

    /// The values of a fact from which on it says something else, lowest first.
    #[must_use]
    pub fn cuts(&self, fact: FactId) -> Vec<i64> {
        let mut cuts = Vec::new();
        self.0.each_test(&mut |test| {
            if let (true, Allowed::Ranges(ranges)) = (test.fact == fact, &test.allowed) {
                cuts.extend(ranges.iter().map(|&(low, _)| low));
                cuts.extend(ranges.iter().filter_map(|&(_, high)| high.checked_add(1)));
            }
        });
        cuts.retain(|&cut| cut > LOWEST);
        cuts.sort_unstable();
        cuts.dedup();
        cuts
    }

    /// The bits of a set that it asks for.
    #[must_use]
    pub fn bits(&self, fact: FactId) -> i64 {
        let mut bits = 0;
        self.0.each_test(&mut |test| {
            if let (true, Allowed::Bits { has, any, none }) = (test.fact == fact, &test.allowed) {
                bits |= has | any | none;
            }
        });
        bits
    }

    /// What is known of it when each fact may be what `value` says. With one value for each fact it is never open.
    pub fn truth(&self, value: &dyn Fn(FactId) -> Interval) -> Truth {
        self.0.truth(value)
    }

    /// The facts that keep it open; none if it isn't.
    pub fn open(&self, value: &dyn Fn(FactId) -> Interval) -> Vec<FactId> {
        let mut open = Vec::new();
        self.0.collect_open(value, &mut open);
        open.sort_unstable();
        open.dedup();
        open
    }

    /// It in words: `bowler.age is at least 20 years`. Empty for what always holds.
    #[must_use]
    pub fn told(&self, vocabulary: &Vocabulary) -> String {
        self.0.told(vocabulary)
    }
}

impl Node {
    fn of(condition: &Condition) -> Node {
        let mut all: Vec<Node> = condition.tests.iter().cloned().map(Node::Test).collect();
        if !condition.any_of.is_empty() {
            all.push(Node::Any(condition.any_of.iter().map(Node::of).collect()));
        }
        Node::All(all)
    }

    fn each_test(&self, seen: &mut dyn FnMut(&Test)) {
        match self {
            Node::Test(test) => seen(test),
            Node::All(nodes) | Node::Any(nodes) => {
                nodes.iter().for_each(|node| node.each_test(seen));
            }
            Node::Not(node) => node.each_test(seen),
        }
    }

    fn truth(&self, value: &dyn Fn(FactId) -> Interval) -> Truth {
        match self {
            Node::Test(test) => truth(&test.allowed, value(test.fact)),
            Node::All(nodes) => {
                let truths = nodes.iter().map(|node| node.truth(value));
                truths.min().unwrap_or(Truth::Yes)
            }
            Node::Any(nodes) => {
                let truths = nodes.iter().map(|node| node.truth(value));
                truths.max().unwrap_or(Truth::No)
            }
            Node::Not(node) => node.truth(value).not(),
        }
    }

    fn collect_open(&self, value: &dyn Fn(FactId) -> Interval, open: &mut Vec<FactId>) {
        if self.truth(value) != Truth::Open {
            return;
        }
        match self {
            Node::Test(test) => open.push(test.fact),
            Node::All(nodes) | Node::Any(nodes) => {
                nodes.iter().for_each(|node| node.collect_open(value, open));
            }
            Node::Not(node) => node.collect_open(value, open),
        }
    }

    fn told(&self, vocabulary: &Vocabulary) -> String {
        let joined = |nodes: &[Node], word: &str| {
            let parts: Vec<String> = nodes.iter().map(|node| node.told(vocabulary)).collect();
            parts.join(word)
        };
        match self {
            Node::Test(test) => super::told::test(vocabulary, test),
            Node::All(nodes) => joined(nodes, " and "),
            Node::Any(nodes) => joined(nodes, " or "),
            Node::Not(node) => format!("not: {}", node.told(vocabulary)),
        }
    }
}

/// Whether a value is let through, over all that it may be.
fn truth(allowed: &Allowed, value: Interval) -> Truth {
    let (mut some, mut all) = (false, true);
    if value.may_be_unknown() {
        let passes = allowed.contains(UNKNOWN);
        (some, all) = (some | passes, all & passes);
    }
    if value.may_be_known() {
        let (lowest, highest) = (value.lowest(), value.highest());
        let (known_some, known_all) = match allowed {
            Allowed::Ranges(ranges) => (
                ranges
                    .iter()
                    .any(|&(low, high)| low <= highest && lowest <= high),
                ranges
                    .iter()
                    .any(|&(low, high)| low <= lowest && highest <= high),
            ),
            // The ends of a set are what is certainly in it and what may be.
            Allowed::Bits { has, any, none } => (
                has & !highest == 0 && (*any == 0 || any & highest != 0) && none & lowest == 0,
                has & !lowest == 0 && (*any == 0 || any & lowest != 0) && none & highest == 0,
            ),
        };
        (some, all) = (some | known_some, all & known_all);
    }
    match (some, all) {
        (false, _) => Truth::No,
        (true, true) => Truth::Yes,
        (true, false) => Truth::Open,
    }
}

/// What a rule does, as far as rules are compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doing {
    /// It gives points or takes them.
    Points,
    /// It rules out.
    RuleOut,
    /// It cautions, seriously if so.
    Caution(bool),
    /// It starts a measure.
    Start,
    /// Anything else.
    Other,
}

impl RuleSet {
    /// When a rule holds.
    #[must_use]
    pub fn when(&self, id: RuleId) -> Statement {
        Statement(Node::of(&self.rule(id).when))
    }

    /// Whether a rule states conditions at all.
    #[must_use]
    pub fn has_conditions(&self, id: RuleId) -> bool {
        self.rule(id).when != Condition::default()
    }

    /// The ways in which a rule can hold, each a list of tests that must all pass.
    #[must_use]
    pub fn ways(&self, id: RuleId) -> Vec<Vec<Statement>> {
        let one = |test: &&Test| Statement(Node::Test((*test).clone()));
        let ways = self.rule(id).when.ways();
        ways.iter()
            .map(|way| way.iter().map(one).collect())
            .collect()
    }

    /// What a rule does.
    #[must_use]
    pub fn doing(&self, id: RuleId) -> Doing {
        match &self.rule(id).effect {
            Effect::Points(_) => Doing::Points,
            Effect::RuleOut => Doing::RuleOut,
            Effect::Caution(severity) => {
                Doing::Caution(*severity == super::rule::Severity::Serious)
            }
            Effect::Start(_) => Doing::Start,
            Effect::Add(_) | Effect::Limit { .. } | Effect::Rounding(_) | Effect::Step(_) => {
                Doing::Other
            }
        }
    }

    /// Whether two rules do the same to the same subject.
    #[must_use]
    pub fn same_doing(&self, one: RuleId, other: RuleId) -> bool {
        let key = |rule: &Rule| {
            (
                rule.subject.clone(),
                rule.effect.clone(),
                rule.disputes.clone(),
            )
        };
        key(self.rule(one)) == key(self.rule(other))
    }

    /// When the number that a rule gives is known; always for a rule that gives none or a plain one.
    #[must_use]
    pub fn number_known(&self, id: RuleId) -> Statement {
        let fact = self.rule(id).effect.amount().and_then(Amount::fact);
        fact.map_or_else(Statement::always, Statement::known)
    }

    /// When a rule's number is above nothing, apart from its conditions; never for a rule without a number.
    #[must_use]
    pub fn gives(&self, id: RuleId) -> Statement {
        match self.rule(id).effect.amount() {
            Some(Amount::Number(number)) if *number > 0 => Statement::always(),
            Some(Amount::Along(curve)) => super::gain::above_nothing(curve),
            _ => Statement::any([]),
        }
    }

    /// The knots of a rule's curve, lowest first, and the fact it runs along.
    #[must_use]
    pub fn knots(&self, id: RuleId) -> Option<(FactId, Vec<i64>)> {
        match self.rule(id).effect.amount() {
            Some(Amount::Along(curve)) => Some((
                curve.along(),
                curve.knots().iter().map(|&(at, _)| at).collect(),
            )),
            _ => None,
        }
    }

    /// The facts whose values a rule's texts print, each once.
    #[must_use]
    pub fn printed(&self, id: RuleId) -> Vec<FactId> {
        let rule = self.rule(id);
        let then = rule.then.iter().flat_map(super::reason::Template::facts);
        let mut printed: Vec<FactId> = then.chain(rule.because.facts()).collect();
        printed.sort_unstable();
        printed.dedup();
        printed
    }

    /// The rules of a subject, in the order of their ids.
    #[must_use]
    pub fn about(&self, subject: &str) -> Vec<RuleId> {
        self.rules_of(subject).map(|(id, _)| id).collect()
    }
}
