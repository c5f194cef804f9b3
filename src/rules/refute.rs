//! Whether a statement's tests alone rule out that it ever holds.

use std::collections::BTreeMap;

use super::condition::{Allowed, Test};
use super::logic::{Node, Statement};
use super::vocabulary::{FactId, UNKNOWN};

/// How many ways to hold are gone through before it is left open.
const MOST: usize = 4_000;

impl Statement {
    /// Whether its tests alone rule out that it holds, as if each fact could be anything whatever the others are. False if that
    /// can't be told within a fixed amount of work.
    #[must_use]
    pub fn is_refuted(&self) -> bool {
        let plain = plain(&self.0, true);
        let mut left = MOST;
        !may_hold(vec![&plain], BTreeMap::new(), &mut left)
    }
}

/// The same, or its opposite, with nothing negated but within tests.
fn plain(node: &Node, wanted: bool) -> Node {
    let each = |nodes: &[Node]| nodes.iter().map(|node| plain(node, wanted)).collect();
    match (node, wanted) {
        (Node::Not(inner), _) => plain(inner, !wanted),
        (Node::All(nodes), true) | (Node::Any(nodes), false) => Node::All(each(nodes)),
        (Node::Any(nodes), true) | (Node::All(nodes), false) => Node::Any(each(nodes)),
        (Node::Test(test), true) => Node::Test(test.clone()),
        (Node::Test(test), false) => opposite(test),
    }
}

fn opposite(test: &Test) -> Node {
    let fact = test.fact;
    let one = |allowed: Allowed| Node::Test(Test { fact, allowed });
    match &test.allowed {
        Allowed::Ranges(ranges) => one(Allowed::Ranges(outside(ranges).into())),
        Allowed::Bits { has, any, none } => {
            let bits = |has: i64, none: i64| one(Allowed::Bits { has, any: 0, none });
            // What isn't known meets no test.
            let mut ways = vec![one(Allowed::Ranges([(UNKNOWN, UNKNOWN)].into()))];
            ways.extend(each_bit(*has).map(|bit| bits(0, bit)));
            ways.extend((*any != 0).then(|| bits(0, *any)));
            ways.extend(each_bit(*none).map(|bit| bits(bit, 0)));
            Node::Any(ways)
        }
    }
}

fn each_bit(mask: i64) -> impl Iterator<Item = i64> {
    (0..i64::BITS)
        .map(|place| 1_i64 << place)
        .filter(move |bit| mask & bit != 0)
}

/// All values outside of some ranges that are sorted and apart, the unknown one among them.
fn outside(ranges: &[(i64, i64)]) -> Vec<(i64, i64)> {
    let mut outside = Vec::new();
    let mut from = Some(UNKNOWN);
    for &(low, high) in ranges {
        if let Some(start) = from.filter(|&start| start < low) {
            outside.push((start, low - 1));
        }
        from = high.checked_add(1);
    }
    outside.extend(from.map(|start| (start, i64::MAX)));
    outside
}

/// What tests have left of a fact.
#[derive(Clone)]
struct Values {
    ranges: Vec<(i64, i64)>,
    has: i64,
    none: i64,
    any: Vec<i64>,
}

impl Values {
    fn all() -> Values {
        Values {
            ranges: vec![(UNKNOWN, i64::MAX)],
            has: 0,
            none: 0,
            any: Vec::new(),
        }
    }

    /// Leaves what a test lets through; whether there is anything left.
    fn meet(&mut self, allowed: &Allowed) -> bool {
        match allowed {
            Allowed::Ranges(ranges) => self.within(ranges),
            Allowed::Bits { has, any, none } => {
                self.within(&[(UNKNOWN + 1, i64::MAX)]);
                self.has |= has;
                self.none |= none;
                self.any.extend((*any != 0).then_some(*any));
            }
        }
        !self.ranges.is_empty()
            && self.has & self.none == 0
            && self.any.iter().all(|any| any & !self.none != 0)
    }

    fn within(&mut self, ranges: &[(i64, i64)]) {
        let both = |&(low, high): &(i64, i64)| {
            let met = ranges
                .iter()
                .map(move |&(other_low, other_high)| (low.max(other_low), high.min(other_high)));
            met.filter(|(low, high)| low <= high)
        };
        self.ranges = self.ranges.iter().flat_map(both).collect();
    }
}

/// Whether all of these may hold with what is left of each fact; also if there was no work left to find out.
fn may_hold(mut all: Vec<&Node>, mut left: BTreeMap<FactId, Values>, work: &mut usize) -> bool {
    if *work == 0 {
        return true;
    }
    *work -= 1;
    let mut forks: Vec<&Node> = Vec::new();
    while let Some(node) = all.pop() {
        match node {
            Node::Test(test) => {
                let values = left.entry(test.fact).or_insert_with(Values::all);
                if !values.meet(&test.allowed) {
                    return false;
                }
            }
            Node::All(nodes) => all.extend(nodes),
            Node::Any(_) => forks.push(node),
            // There are none of these left.
            Node::Not(_) => {}
        }
    }
    let Some(Node::Any(ways)) = forks.pop() else {
        return true;
    };
    ways.iter().any(|way| {
        let mut all = forks.clone();
        all.push(way);
        may_hold(all, left.clone(), work)
    })
}
