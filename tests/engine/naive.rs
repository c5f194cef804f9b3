//! Rules as plain data, a naive evaluator of them, and the YAML text that says the same.

use spanwright::rules::{Kind, UNKNOWN, Vocabulary};

/// A test of a fact, by its index in the vocabulary; all its matchers must be met.
#[derive(Clone, Debug)]
pub struct Test {
    pub fact: usize,
    pub matchers: Vec<Matcher>,
}

#[derive(Clone, Debug)]
pub enum Matcher {
    Above(i64),
    AtLeast(i64),
    AtMost(i64),
    Below(i64),
    Is(Vec<i64>),
    Not(Vec<i64>),
    Known(bool),
    Has(i64),
    HasAny(i64),
    HasNone(i64),
}

#[derive(Clone, Debug)]
pub enum Does {
    Points(i64),
    Curve(usize, Vec<(i64, i64)>),
    Out,
    Caution,
}

#[derive(Clone, Debug)]
pub struct PlainRule {
    pub when: Vec<Test>,
    pub any_of: Vec<Vec<Test>>,
    pub does: Does,
    /// Whether it disputes the rule `first`.
    pub disputes: bool,
}

/// Whether one matcher is met.
pub fn met(matcher: &Matcher, value: i64) -> bool {
    match matcher {
        Matcher::Known(known) => (value != UNKNOWN) == *known,
        _ if value == UNKNOWN => false,
        Matcher::Above(than) => value > *than,
        Matcher::AtLeast(than) => value >= *than,
        Matcher::AtMost(than) => value <= *than,
        Matcher::Below(than) => value < *than,
        Matcher::Is(values) => values.contains(&value),
        Matcher::Not(values) => !values.contains(&value),
        Matcher::Has(mask) => (0..62).all(|bit| mask >> bit & 1 == 0 || value >> bit & 1 == 1),
        Matcher::HasAny(mask) => (0..62).any(|bit| mask >> bit & 1 == 1 && value >> bit & 1 == 1),
        Matcher::HasNone(mask) => !met(&Matcher::HasAny(*mask), value),
    }
}

/// Whether a rule holds where facts have these values.
pub fn holds(rule: &PlainRule, value: &dyn Fn(usize) -> i64) -> bool {
    let all = |tests: &[Test]| {
        tests.iter().all(|test| {
            test.matchers
                .iter()
                .all(|matcher| met(matcher, value(test.fact)))
        })
    };
    all(&rule.when) && (rule.any_of.is_empty() || rule.any_of.iter().any(|tests| all(tests)))
}

/// The points that a rule gives where facts have these values.
pub fn points(rule: &PlainRule, value: &dyn Fn(usize) -> i64) -> i64 {
    match &rule.does {
        _ if !holds(rule, value) => 0,
        Does::Points(points) => *points,
        Does::Curve(fact, knots) => curve(knots, value(*fact)),
        Does::Out | Does::Caution => 0,
    }
}

fn curve(knots: &[(i64, i64)], at: i64) -> i64 {
    let (first, last) = (knots[0], knots[knots.len() - 1]);
    if at == UNKNOWN {
        0
    } else if at <= first.0 {
        first.1
    } else if at >= last.0 {
        last.1
    } else {
        let pair = knots.windows(2).find(|pair| at < pair[1].0).unwrap();
        let ((x0, y0), (x1, y1)) = (pair[0], pair[1]);
        // The sum is exact, so the division is the only rounding, and `round` is half away from zero.
        ((y0 * (x1 - at) + y1 * (at - x0)) as f64 / (x1 - x0) as f64).round() as i64
    }
}

/// The YAML text of a rule.
pub fn written(vocabulary: &Vocabulary, id: &str, rule: &PlainRule) -> String {
    let mut when = tests(vocabulary, &rule.when);
    if !rule.any_of.is_empty() {
        let any: Vec<_> = rule
            .any_of
            .iter()
            .map(|one| format!("{{ {} }}", tests(vocabulary, one).join(", ")))
            .collect();
        when.push(format!("any_of: [ {} ]", any.join(", ")));
    }
    let does = match &rule.does {
        Does::Points(points) => format!("points: {}", tenths(*points)),
        Does::Curve(fact, knots) => {
            let knot = |&(at, points): &(i64, i64)| {
                format!("{}: {}", value(vocabulary, *fact, at), tenths(points))
            };
            let knots: Vec<_> = knots.iter().map(knot).collect();
            let along = vocabulary.facts()[*fact].name;
            format!(
                "points: {{ along: {along}, at: {{ {} }} }}",
                knots.join(", ")
            )
        }
        Does::Out => "rule_out: true".to_owned(),
        Does::Caution => "caution: mild".to_owned(),
    };
    let disputes = if rule.disputes {
        ", disputes: first"
    } else {
        ""
    };
    let when = if when.is_empty() {
        String::new()
    } else {
        format!("when: {{ {} }}, ", when.join(", "))
    };
    format!("  - {{ id: {id}, {when}{does}{disputes}, because: So it is., source: own choice }}\n")
}

fn tests(vocabulary: &Vocabulary, tests: &[Test]) -> Vec<String> {
    let one = |test: &Test| {
        let name = vocabulary.facts()[test.fact].name;
        match test.matchers.as_slice() {
            [Matcher::Is(values)] => format!("{name}: {}", list(vocabulary, test.fact, values)),
            matchers => {
                let keys: Vec<_> = matchers
                    .iter()
                    .map(|one| matcher(vocabulary, test.fact, one))
                    .collect();
                format!("{name}: {{ {} }}", keys.join(", "))
            }
        }
    };
    tests.iter().map(one).collect()
}

fn matcher(vocabulary: &Vocabulary, fact: usize, matcher: &Matcher) -> String {
    let one = |than: &i64| value(vocabulary, fact, *than);
    let words = |mask: &i64| {
        let bits: Vec<i64> = (0..62).filter(|bit| mask >> bit & 1 == 1).collect();
        list(vocabulary, fact, &bits)
    };
    match matcher {
        Matcher::Above(than) => format!("above: {}", one(than)),
        Matcher::AtLeast(than) => format!("at_least: {}", one(than)),
        Matcher::AtMost(than) => format!("at_most: {}", one(than)),
        Matcher::Below(than) => format!("below: {}", one(than)),
        Matcher::Is(values) => list(vocabulary, fact, values),
        Matcher::Not(values) => format!("not: {}", list(vocabulary, fact, values)),
        Matcher::Known(known) => format!("known: {known}"),
        Matcher::Has(mask) => format!("has: {}", words(mask)),
        Matcher::HasAny(mask) => format!("has_any: {}", words(mask)),
        Matcher::HasNone(mask) => format!("has_none: {}", words(mask)),
    }
}

fn list(vocabulary: &Vocabulary, fact: usize, values: &[i64]) -> String {
    match values {
        [only] => value(vocabulary, fact, *only),
        values => {
            let values: Vec<_> = values
                .iter()
                .map(|one| value(vocabulary, fact, *one))
                .collect();
            format!("[{}]", values.join(", "))
        }
    }
}

/// A value as rule files have it; of a set, the word of that bit.
fn value(vocabulary: &Vocabulary, fact: usize, value: i64) -> String {
    match vocabulary.facts()[fact].kind {
        Kind::Number { notation, .. } => notation.write(value).replace(',', ""),
        Kind::Flag => (value == 1).to_string(),
        Kind::Choice(words) | Kind::Set(words) => words[value as usize].to_owned(),
    }
}

fn tenths(points: i64) -> String {
    let sign = if points < 0 { "-" } else { "" };
    format!("{sign}{}.{}", points.abs() / 10, points.abs() % 10)
}

/// Sorts matchers by their kind.
pub fn order(matcher: &Matcher) -> usize {
    match matcher {
        Matcher::Above(_) => 0,
        Matcher::AtLeast(_) => 1,
        Matcher::AtMost(_) => 2,
        Matcher::Below(_) => 3,
        Matcher::Is(_) => 4,
        Matcher::Not(_) => 5,
        Matcher::Known(_) => 6,
        Matcher::Has(_) => 7,
        Matcher::HasAny(_) => 8,
        Matcher::HasNone(_) => 9,
    }
}
