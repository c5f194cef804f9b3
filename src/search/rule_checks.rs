//! Looks for what there is to say against a set of rules, whatever the trade.
//!
//! Every question is whether some statement can hold. Each is proved one way or the other, or counted as not settled.

use super::finding::{Clash, Finding, FindingKind, Findings};
use super::realm::{Can, Example, Realm, can_hold, can_hold_for_all};
use crate::rules::{Doing, RuleId, RuleSet, Statement, SubjectKind};

/// How many boxes may be looked at for one question and one candidate.
pub const MOST: usize = 20_000;

/// Checks all rules of a set.
#[must_use]
pub fn check_rules(rules: &RuleSet, realm: &dyn Realm) -> Findings {
    let mut checks = Checks {
        rules,
        realm,
        findings: Findings::default(),
    };
    for subject in rules.subjects() {
        checks.subject(subject.id(), subject.kind());
    }
    checks.findings.sort();
    checks.findings
}

struct Checks<'r> {
    rules: &'r RuleSet,
    realm: &'r dyn Realm,
    findings: Findings,
}

impl Checks<'_> {
    fn subject(&mut self, subject: &str, kind: SubjectKind) {
        let mut living = Vec::new();
        for rule in self.rules.about(subject) {
            if self.can_be_true(subject, rule) {
                living.push(rule);
                self.always_true(subject, rule);
                self.knots(subject, rule);
                self.printed(subject, rule);
            }
        }
        for (place, &one) in living.iter().enumerate() {
            for &other in &living[place + 1..] {
                self.duplicate(subject, [one, other]);
                self.two_starts(subject, [one, other]);
            }
            for &other in &living {
                self.contained(subject, one, other);
                self.contradictory(subject, one, other);
            }
        }
        if kind == SubjectKind::Choice {
            self.none_left(subject, &living);
        }
    }

    fn can(&self, subject: &str, statement: &Statement) -> Can {
        can_hold(self.realm, subject, statement, MOST)
    }

    /// Counts a finding that is there if the statement can't hold.
    fn unless(
        &mut self,
        (kind, rules): (FindingKind, &[RuleId]),
        subject: &str,
        statement: &Statement,
        finding: impl FnOnce(&Self) -> Option<Finding>,
    ) -> bool {
        match self.can(subject, statement) {
            Can::Hold(_) => self.findings.absent(kind),
            Can::NotSettled => self.findings.open(kind, rules),
            Can::Never => match finding(self) {
                Some(finding) => {
                    self.findings.found(finding);
                    return true;
                }
                None => self.findings.open(kind, rules),
            },
        }
        false
    }

    /// Counts a finding that is there if the statement can hold.
    fn wherever(
        &mut self,
        (kind, rules): (FindingKind, &[RuleId]),
        subject: &str,
        statement: &Statement,
        finding: impl FnOnce(Example) -> Finding,
    ) {
        match self.can(subject, statement) {
            Can::Hold(example) => self.findings.found(finding(example)),
            Can::NotSettled => self.findings.open(kind, rules),
            Can::Never => self.findings.absent(kind),
        }
    }

    /// An example of a statement of which it is known that it can hold.
    fn example(&self, subject: &str, statement: &Statement) -> Option<Example> {
        match self.can(subject, statement) {
            Can::Hold(example) => Some(example),
            Can::Never | Can::NotSettled => None,
        }
    }

    fn can_be_true(&mut self, subject: &str, rule: RuleId) -> bool {
        if !self.rules.has_conditions(rule) {
            return true;
        }
        let when = self.rules.when(rule);
        !self.unless(
            (FindingKind::NeverTrue, &[rule]),
            subject,
            &when,
            |checks| {
                let ways = checks.rules.ways(rule);
                let clashes = ways.iter().map(|way| checks.clash(subject, way)).collect();
                Some(Finding::NeverTrue { rule, clashes })
            },
        )
    }

    /// The fewest tests that can't be met together.
    fn clash(&self, subject: &str, way: &[Statement]) -> Clash {
        let mut left = way.to_vec();
        let mut place = 0;
        while place < left.len() {
            let mut fewer = left.clone();
            fewer.remove(place);
            if left.len() > 1 && self.can(subject, &Statement::all(fewer.clone())) == Can::Never {
                left = fewer;
            } else {
                place += 1;
            }
        }
        let vocabulary = self.rules.vocabulary();
        let hint = match &left[..] {
            [only] => only
                .facts()
                .first()
                .and_then(|&fact| self.realm.hint(subject, fact)),
            _ => None,
        };
        Clash {
            conditions: left.iter().map(|test| test.told(vocabulary)).collect(),
            hint,
        }
    }

    fn always_true(&mut self, subject: &str, rule: RuleId) {
        if !self.rules.has_conditions(rule) {
            return;
        }
        let opposite = self.rules.when(rule).opposite();
        self.unless(
            (FindingKind::AlwaysTrue, &[rule]),
            subject,
            &opposite,
            |_| Some(Finding::AlwaysTrue { rule }),
        );
    }

    fn duplicate(&mut self, subject: &str, rules: [RuleId; 2]) {
        let [one, other] = rules;
        if !self.rules.same_doing(one, other) {
            return;
        }
        let (first, second) = (self.rules.when(one), self.rules.when(other));
        let apart = first.clone().and(second.clone().opposite());
        let apart = apart.or(second.clone().and(first.clone().opposite()));
        self.unless(
            (FindingKind::Duplicate, &rules),
            subject,
            &apart,
            |checks| {
                let example = checks.example(subject, &first.and(second))?;
                Some(Finding::Duplicate { rules, example })
            },
        );
    }

    fn counts(&self, rule: RuleId) -> bool {
        self.rules.rule(rule).disputes().is_none()
    }

    fn contained(&mut self, subject: &str, rule: RuleId, within: RuleId) {
        let stronger = match (self.rules.doing(rule), self.rules.doing(within)) {
            (Doing::Points | Doing::Caution(_) | Doing::RuleOut, Doing::RuleOut) => true,
            // Both are told; only what asks for nothing of its own adds nothing.
            (Doing::Caution(serious), Doing::Caution(more)) => {
                more && !serious && self.rules.rule(rule).then().is_none()
            }
            _ => false,
        };
        if !stronger || !self.counts(rule) || !self.counts(within) {
            return;
        }
        let when = self.rules.when(rule);
        // What gives points there contradicts; that is told by its own name.
        let favours = when.clone().and(self.rules.gives(rule));
        if self.can(subject, &favours) != Can::Never {
            self.findings.absent(FindingKind::Contained);
            return;
        }
        let outside = when.clone().and(self.rules.when(within).opposite());
        // Two that rule out the same are told as duplicates.
        let more = self.rules.when(within).and(when.clone().opposite());
        if self.rules.doing(rule) == Doing::RuleOut
            && self.can(subject, &outside) == Can::Never
            && self.can(subject, &more) == Can::Never
        {
            self.findings.absent(FindingKind::Contained);
            return;
        }
        self.unless(
            (FindingKind::Contained, &[rule, within]),
            subject,
            &outside,
            |checks| {
                let example = checks.example(subject, &when)?;
                Some(Finding::Contained {
                    rule,
                    within,
                    example,
                })
            },
        );
    }

    fn contradictory(&mut self, subject: &str, rule: RuleId, against: RuleId) {
        let apart = self.rules.doing(rule) != Doing::Points || !self.counts(rule);
        if apart || self.rules.doing(against) != Doing::RuleOut || !self.counts(against) {
            return;
        }
        let favours = self.rules.when(rule).and(self.rules.gives(rule));
        let Some(example) = self.example(subject, &favours) else {
            // It favours nothing.
            return;
        };
        let left = favours.and(self.rules.when(against).opposite());
        self.unless(
            (FindingKind::Contradictory, &[rule, against]),
            subject,
            &left,
            |_| {
                Some(Finding::Contradictory {
                    rule,
                    against,
                    example,
                })
            },
        );
    }

    fn two_starts(&mut self, subject: &str, rules: [RuleId; 2]) {
        let [one, other] = rules;
        let starts = |rule| self.rules.doing(rule) == Doing::Start && self.counts(rule);
        if !starts(one) || !starts(other) {
            return;
        }
        let both = Statement::all(
            rules
                .iter()
                .flat_map(|&rule| [self.rules.when(rule), self.rules.number_known(rule)]),
        );
        self.wherever(
            (FindingKind::TwoStarts, &rules),
            subject,
            &both,
            |example| Finding::TwoStarts { rules, example },
        );
    }

    fn knots(&mut self, subject: &str, rule: RuleId) {
        let Some((fact, knots)) = self.rules.knots(rule) else {
            return;
        };
        for (place, &knot) in knots.iter().enumerate() {
            let mut near = self.rules.when(rule).and(Statement::known(fact));
            if let Some(&next) = knots.get(place + 1) {
                near = near.and(Statement::below(fact, next));
            }
            if let Some(&before) = place.checked_sub(1).and_then(|before| knots.get(before)) {
                near = near.and(Statement::above(fact, before));
            }
            self.unless(
                (FindingKind::KnotOutOfReach, &[rule]),
                subject,
                &near,
                |_| Some(Finding::KnotOutOfReach { rule, fact, knot }),
            );
        }
    }

    fn printed(&mut self, subject: &str, rule: RuleId) {
        // The points of a candidate that is ruled out are told to nobody.
        let mut out = Vec::new();
        if self.rules.doing(rule) == Doing::Points {
            let all = self.rules.about(subject).into_iter();
            let rules_out = |&other: &RuleId| self.rules.doing(other) == Doing::RuleOut;
            out.extend(all.filter(rules_out).filter(|&other| self.counts(other)));
        }
        let out = Statement::any(out.iter().map(|&other| self.rules.when(other)));
        for fact in self.rules.printed(rule) {
            let told = self.rules.when(rule).and(self.rules.number_known(rule));
            let told = told.and(out.clone().opposite());
            let unknown = told.and(Statement::unknown(fact));
            self.wherever(
                (FindingKind::MayBeUnknown, &[rule]),
                subject,
                &unknown,
                |example| Finding::MayBeUnknown {
                    rule,
                    fact,
                    example,
                },
            );
        }
    }

    fn none_left(&mut self, subject: &str, living: &[RuleId]) {
        if self.realm.offered(subject) == 0 {
            return;
        }
        let out: Vec<RuleId> = living
            .iter()
            .copied()
            .filter(|&rule| self.rules.doing(rule) == Doing::RuleOut && self.counts(rule))
            .collect();
        let before = self.findings.counted(FindingKind::NoneLeft).found;
        for &rule in &out {
            self.none_left_by(subject, vec![rule]);
        }
        // Several together, where none does it alone.
        if out.len() > 1 && self.findings.counted(FindingKind::NoneLeft).found == before {
            self.none_left_by(subject, out);
        }
    }

    fn none_left_by(&mut self, subject: &str, rules: Vec<RuleId>) {
        let statements: Vec<Statement> = rules.iter().map(|&rule| self.rules.when(rule)).collect();
        match can_hold_for_all(self.realm, subject, &statements, MOST) {
            Can::Never => self.findings.absent(FindingKind::NoneLeft),
            Can::NotSettled => self.findings.open(FindingKind::NoneLeft, &rules),
            Can::Hold(example) => self.findings.found(Finding::NoneLeft {
                subject: subject.to_owned(),
                rules,
                example,
            }),
        }
    }
}
