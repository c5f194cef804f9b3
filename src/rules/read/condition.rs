//! Reading conditions.

use super::Reading;
use crate::document::{Content, Fields, Node, Reader};
use crate::rules::condition::{Allowed, Condition, Intervals, LOWEST, Test};
use crate::rules::subject::Subject;
use crate::rules::vocabulary::{FactId, Kind};

impl<'d> Reading<'d> {
    /// A conjunction: a map of facts to matchers, with `any_of` for alternatives.
    pub(super) fn condition(
        &self,
        reader: &mut Reader<'d>,
        node: &'d Node,
        subject: Option<&Subject>,
    ) -> Option<Condition> {
        let mut fields = reader.fields(node, "the conditions")?;
        let alternatives = fields.take("any_of");
        let mut tests = Vec::new();
        let mut whole = true;
        for (key, matcher) in fields.rest() {
            let name = key.text().unwrap_or_default();
            let Some(fact) = self.fact(reader, key, name) else {
                whole = false;
                continue;
            };
            whole &= self.in_scope(reader, key, fact, subject);
            match self.matcher(reader, matcher, fact) {
                Some(allowed) => tests.push(Test { fact, allowed }),
                None => whole = false,
            }
        }
        fields.close(reader);
        let any_of = match alternatives {
            Some(node) => self.alternatives(reader, node, subject),
            None => Some(Vec::new()),
        };
        let condition = Condition {
            tests,
            any_of: any_of?,
        };
        whole.then_some(condition)
    }

    fn alternatives(
        &self,
        reader: &mut Reader<'d>,
        node: &'d Node,
        subject: Option<&Subject>,
    ) -> Option<Vec<Condition>> {
        let items = reader.list(node, "the alternatives")?;
        if items.is_empty() {
            reader.fault(node, "never-holds", "no alternatives, so this never holds");
            return None;
        }
        let read: Vec<_> = items
            .iter()
            .map(|item| self.condition(reader, item, subject))
            .collect();
        read.into_iter().collect()
    }

    fn matcher(&self, reader: &mut Reader<'d>, node: &'d Node, id: FactId) -> Option<Allowed> {
        let fact = self.vocabulary.fact(id);
        let is_set = matches!(fact.kind, Kind::Set(_));
        match node.content() {
            Content::Map(_) => {
                let mut fields = reader.fields(node, "a matcher")?;
                let read = if is_set {
                    self.set_matcher(reader, &mut fields, id)
                } else {
                    self.interval_matcher(reader, &mut fields, id)
                };
                fields.close(reader);
                read
            }
            Content::Null => {
                let message = format!("which value of `{}` is meant?", fact.name);
                reader.fault(node, "wrong-matcher", message);
                None
            }
            _ if is_set => {
                let message = format!("`{}` is a set", fact.name);
                let help = "say `has`, `has_any` or `has_none`";
                reader.fault_with_help(node, "wrong-matcher", message, help);
                None
            }
            _ => {
                let intervals = Intervals::of(&self.values(reader, node, id)?);
                possible(reader, node, !intervals.is_empty())?;
                Some(intervals.allowed())
            }
        }
    }

    /// `above`, `at_least`, `at_most`, `below`, `not` and `known`, all of which must agree.
    fn interval_matcher(
        &self,
        reader: &mut Reader<'d>,
        fields: &mut Fields<'d>,
        id: FactId,
    ) -> Option<Allowed> {
        let kind = self.vocabulary.fact(id).kind;
        let mut met = self.known_matcher(reader, fields);
        for key in ["above", "at_least", "at_most", "below"] {
            let Some(node) = fields.take(key) else {
                continue;
            };
            if !matches!(kind, Kind::Number { .. }) {
                self.wrong_matcher(reader, node, key, id);
                met.faulty = true;
                continue;
            }
            let interval = self.value(reader, node, id).map(|value| match key {
                "above" => Intervals::between(value + 1, i64::MAX),
                "at_least" => Intervals::between(value, i64::MAX),
                "at_most" => Intervals::between(LOWEST, value),
                _ => Intervals::between(LOWEST, value - 1),
            });
            met.meet(interval);
        }
        if let Some(node) = fields.take("not") {
            let values = self.values(reader, node, id);
            met.meet(values.map(|values| Intervals::of(&values).complement()));
        }
        for key in ["has", "has_any", "has_none"] {
            if let Some(node) = fields.take(key) {
                self.wrong_matcher(reader, node, key, id);
                met.faulty = true;
            }
        }
        let intervals = met.finish(reader, fields.node())?;
        let can_be = match kind {
            Kind::Number {
                lowest, highest, ..
            } => Intervals::between(lowest, highest),
            _ => Intervals::between(0, self.vocabulary.fact(id).words().len() as i64 - 1),
        };
        let reachable = !intervals.meet(&can_be).is_empty() || intervals == Intervals::unknown();
        possible(reader, fields.node(), reachable)?;
        Some(intervals.allowed())
    }

    /// `has`, `has_any`, `has_none` and `known`, all of which must agree.
    fn set_matcher(
        &self,
        reader: &mut Reader<'d>,
        fields: &mut Fields<'d>,
        id: FactId,
    ) -> Option<Allowed> {
        let mut met = self.known_matcher(reader, fields);
        let mut masks = [0; 3];
        for (mask, key) in masks.iter_mut().zip(["has", "has_any", "has_none"]) {
            let Some(node) = fields.take(key) else {
                continue;
            };
            match self.values(reader, node, id) {
                Some(bits) => *mask = bits.into_iter().fold(0, |mask, bit| mask | bit),
                None => met.faulty = true,
            }
            if matches!(node.content(), Content::List(items) if items.is_empty()) {
                reader.fault(node, "wrong-matcher", format!("`{key}` names no word"));
                met.faulty = true;
            }
            met.any = true;
        }
        for key in ["above", "at_least", "at_most", "below", "not"] {
            if let Some(node) = fields.take(key) {
                self.wrong_matcher(reader, node, key, id);
                met.faulty = true;
            }
        }
        let known = met.finish(reader, fields.node())?;
        let [has, any, none] = masks;
        let asks = has | any | none != 0;
        let clash = has & none != 0 || (any != 0 && any & !none == 0);
        possible(
            reader,
            fields.node(),
            !(clash || asks && known == Intervals::unknown()),
        )?;
        if known == Intervals::unknown() {
            return Some(known.allowed());
        }
        Some(Allowed::Bits { has, any, none })
    }

    /// `known`, from which the other keys take away.
    fn known_matcher(&self, reader: &mut Reader<'d>, fields: &mut Fields<'d>) -> Met {
        let Some(node) = fields.take("known") else {
            return Met {
                intervals: Intervals::known(),
                any: false,
                faulty: false,
            };
        };
        let known = reader.flag(node, "known");
        let intervals = if known == Some(false) {
            Intervals::unknown()
        } else {
            Intervals::known()
        };
        Met {
            intervals,
            any: true,
            faulty: known.is_none(),
        }
    }

    fn wrong_matcher(&self, reader: &mut Reader<'d>, node: &'d Node, key: &str, id: FactId) {
        let fact = self.vocabulary.fact(id);
        let (is, allows) = match fact.kind {
            Kind::Number { .. } => ("a number", "above, at_least, at_most, below, not, known"),
            Kind::Choice(_) => ("a choice", "not, known"),
            Kind::Flag => ("true or false", "not, known"),
            Kind::Set(_) => ("a set", "has, has_any, has_none, known"),
        };
        let message = format!("`{key}` cannot be asked of `{}`, which is {is}", fact.name);
        reader.fault_with_help(
            node,
            "wrong-matcher",
            message,
            format!("it allows {allows}"),
        );
    }
}

/// What the keys of a matcher have left so far.
struct Met {
    intervals: Intervals,
    any: bool,
    faulty: bool,
}

impl Met {
    /// Takes away what is outside; none was faulty.
    fn meet(&mut self, other: Option<Intervals>) {
        self.any = true;
        match other {
            Some(other) => self.intervals = self.intervals.meet(&other),
            None => self.faulty = true,
        }
    }

    /// What is left, if no key was faulty and there was one.
    fn finish<'d>(self, reader: &mut Reader<'d>, node: &'d Node) -> Option<Intervals> {
        if !self.any && !self.faulty {
            // A map with nothing but unknown keys has been reported already; one with none at all has not.
            if matches!(node.content(), Content::Map(pairs) if pairs.is_empty()) {
                reader.fault(node, "wrong-matcher", "an empty matcher asks nothing");
            }
            return None;
        }
        (!self.faulty).then_some(self.intervals)
    }
}

/// A fault if nothing can meet the matcher.
fn possible<'d>(reader: &mut Reader<'d>, node: &'d Node, possible: bool) -> Option<()> {
    if !possible {
        reader.fault(node, "never-holds", "no value can meet this");
    }
    possible.then_some(())
}
