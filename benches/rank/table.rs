//! The rules: one table, made into a chain of `if`s and into a rule file.

use spanwright::notation::Notation;
use spanwright::rules::{Kind, Vocabulary};

use super::kites::{Asker, Gap, Kite};

/// 60 rules: 15 give their points by a curve, 20 look at a fact of asker and kite together.
macro_rules! rules {
    ($make:ident, $asker:ident, $kite:ident, $gap:ident) => {
        $make! {
            ("r00", [], points 7);
            ("r01", [$asker.wind <= 2, $kite.shape == 1], points 60);
            ("r02", [$asker.wind <= 2, $kite.shape == 2], points -45);
            ("r03", [$asker.wind >= 6, $kite.shape == 2], points 50);
            ("r04", [$asker.wind >= 6, $kite.cloth == 0], rule_out);
            ("r05", [$asker.wind >= 4, $kite.cloth == 0], points -70);
            ("r06", [$kite.cloth == 2], points 12);
            ("r07", [$kite.cloth == 3, $asker.beach == 1], points -22);
            ("r08", [$kite.cloth == 1, $asker.beach == 1], points 9);
            ("r09", [$asker.beach == 1, $kite.tails == 1], points 18);
            ("r10", [$asker.beach == 0, $kite.tails == 1], points -8);
            ("r11", [$asker.age < 10, $kite.lines > 1], rule_out);
            ("r12", [$asker.age < 14, $kite.lines == 1], points 35);
            ("r13", [$asker.age < 14, $kite.shape == 0], points 25);
            ("r14", [$asker.age >= 60, $kite.span > 200], points -30);
            ("r15", [$asker.age >= 60, $kite.weight < 150], points 20);
            ("r16", [$asker.skill >= 4, $kite.lines >= 3], points 40);
            ("r17", [$asker.skill <= 1, $kite.lines >= 3], points -60);
            ("r18", [$asker.skill <= 1, $kite.shape == 3], points -25);
            ("r19", [$asker.skill >= 3, $kite.shape == 3], points 28);
            ("r20", [$asker.gusts >= 5, $kite.shape == 4], points 33);
            ("r21", [$asker.gusts >= 7, $kite.shape == 1], points -19);
            ("r22", [$asker.gusts <= 2, $kite.span >= 220], points 14);
            ("r23", [$asker.budget < 80, $kite.maker == 3], points 11);
            ("r24", [$asker.budget >= 200, $kite.maker == 4], points 16);
            ("r25", [$kite.maker == 0], points 5);
            ("r26", [$kite.maker == 5], points -4);
            ("r27", [$kite.tails == 1, $kite.shape == 0], points 13);
            ("r28", [$kite.tails == 0, $kite.shape == 0, $asker.wind >= 3], points -27);
            ("r29", [$asker.arm >= 60, $kite.span >= 180], points 10);
            ("r30", [$asker.arm < 45, $kite.span < 100], points 15);
            ("r31", [$asker.wind == 0], points -50);
            ("r32", [$kite.shape != 2, $asker.gusts > 8], points -6);
            ("r33", [$kite.shape == 3], curve $asker.wind [(0, -40), (3, 20), (8, 60)]);
            ("r34", [$kite.lines > 2], curve $asker.age [(8, -50), (20, 10), (60, 10), (80, -20)]);
            ("r35", [], curve $kite.price [(20, 20), (100, 0), (300, -45)]);
            ("r36", [$asker.wind >= 3], curve $kite.span [(40, -10), (120, 25), (300, -35)]);
            ("r37", [], curve $kite.weight [(20, 15), (420, -15)]);
            ("r38", [$asker.beach == 1], curve $kite.weight [(50, 0), (100, 8), (400, 30)]);
            ("r39", [$asker.skill >= 2], curve $kite.lines [(1, -10), (2, 5), (4, 22)]);
            ("r40", [], curve $gap.pull [(-20, -60), (0, -10), (60, 45), (120, -10), (240, -90)]);
            ("r41", [], curve $gap.over [(-150, 0), (-50, 20), (0, 10), (60, -80)]);
            ("r42", [], curve $gap.reach [(-150, -40), (0, 20), (80, -5)]);
            ("r43", [], curve $gap.skill [(-4, -10), (0, 30), (3, -25), (7, -80)]);
            ("r44", [$asker.gusts >= 3], curve $gap.load [(0, -30), (15, 0), (60, 25)]);
            ("r45", [$kite.shape == 1], curve $gap.pull [(0, 0), (90, 33)]);
            ("r46", [$asker.beach == 1], curve $gap.reach [(-60, -12), (60, 12)]);
            ("r47", [$kite.cloth == 2, $asker.wind >= 2], curve $gap.load [(5, -5), (30, 17)]);
            ("r48", [$gap.over > 60], rule_out);
            ("r49", [$gap.liked == 1], points 42);
            ("r50", [$gap.over <= -100, $kite.maker == 1], points -7);
            ("r51", [$gap.pull > 200], rule_out);
            ("r52", [$gap.pull >= 100, $asker.age < 14], points -66);
            ("r53", [$gap.pull < 5], points -38);
            ("r54", [$gap.reach > 50, $kite.tails == 0], points 9);
            ("r55", [$gap.skill >= 3], points -21);
            ("r56", [$gap.skill == 0, $asker.skill >= 2], points 17);
            ("r57", [$gap.load > 40, $asker.beach == 0], points -13);
            ("r58", [$gap.load < 8, $gap.pull > 20], points 24);
            ("r59", [$gap.over > 0, $gap.over <= 20], points -3);
        }
    };
}

/// A kite with its total and what fired: rule and points.
type Best = (usize, i32, Vec<(u16, i32)>);

/// The rules as `if`s, and all they leave behind.
pub struct Chain {
    totals: Vec<i32>,
    out: Vec<bool>,
    fired: Vec<Vec<(u16, i32)>>,
    order: Vec<u32>,
    best: Vec<Best>,
}

impl Chain {
    pub fn new(kites: usize) -> Chain {
        Chain {
            totals: vec![0; kites],
            out: vec![false; kites],
            fired: vec![Vec::new(); kites],
            order: Vec::with_capacity(kites),
            best: Vec::new(),
        }
    }

    /// What fired for each kite, by the number of the rule.
    pub fn fired(&self) -> impl Iterator<Item = &[(u16, i32)]> {
        self.fired.iter().map(Vec::as_slice)
    }

    pub fn is_out(&self, kite: usize) -> bool {
        self.out[kite]
    }

    /// The id of a rule by its number.
    pub fn id(rule: u16) -> &'static str {
        macro_rules! ids {
            ($(($id:literal, $tests:tt, $($does:tt)*);)*) => { [$($id),*] };
        }
        rules!(ids, asker, kite, gap)[usize::from(rule)]
    }

    /// The best kites with totals and ledgers.
    pub fn answer(&mut self, kites: &[Kite], asker: &Asker, best: usize) -> &Vec<Best> {
        for (place, kite) in kites.iter().enumerate() {
            let fired = &mut self.fired[place];
            fired.clear();
            (self.totals[place], self.out[place]) = judge(asker, kite, fired);
        }
        self.order.clear();
        self.order
            .extend((0..kites.len() as u32).filter(|&place| !self.out[place as usize]));
        let totals = &self.totals;
        let key = |place: &u32| (std::cmp::Reverse(totals[*place as usize]), *place);
        if self.order.len() > best {
            self.order.select_nth_unstable_by_key(best - 1, key);
            self.order.truncate(best);
        }
        self.order.sort_unstable_by_key(key);
        self.best.clear();
        for &place in &self.order {
            let place = place as usize;
            let mut lines = self.fired[place].clone();
            lines.sort_unstable_by_key(|&(rule, points)| (std::cmp::Reverse(points.abs()), rule));
            self.best.push((place, self.totals[place], lines));
        }
        &self.best
    }
}

/// The total of a kite and whether it is ruled out; what fires is noted.
fn judge(asker: &Asker, kite: &Kite, fired: &mut Vec<(u16, i32)>) -> (i32, bool) {
    let gap = Gap::of(asker, kite);
    let mut total = 0;
    let mut out = false;
    let mut number = 0_u16;
    macro_rules! give {
        (points $points:literal) => {{
            total += $points;
            fired.push((number, $points));
        }};
        (curve $who:ident.$fact:ident $knots:tt) => {{
            const KNOTS: &[(i64, i64)] = &$knots;
            let points = along(KNOTS, $who.$fact) as i32;
            if points != 0 {
                total += points;
                fired.push((number, points));
            }
        }};
        (rule_out) => {{
            out = true;
        }};
    }
    macro_rules! ifs {
        ($(($id:literal, [$($who:ident.$fact:ident $op:tt $value:literal),*], $($does:tt)*);)*) => {
            $(
                if true $(&& $who.$fact $op $value)* {
                    give!($($does)*);
                }
                number += 1;
            )*
        };
    }
    rules!(ifs, asker, kite, gap);
    debug_assert_eq!(number, 60);
    (total, out)
}

/// A line through knots, flat outside, rounded half away from zero.
fn along(knots: &[(i64, i64)], at: i64) -> i64 {
    if at <= knots[0].0 {
        return knots[0].1;
    }
    for pair in knots.windows(2) {
        let ((x0, y0), (x1, y1)) = (pair[0], pair[1]);
        if at <= x1 {
            let width = x1 - x0;
            let sum = y0 * (x1 - at) + y1 * (at - x0);
            let half = if sum < 0 { -width } else { width };
            return (2 * sum + half) / (2 * width);
        }
    }
    knots[knots.len() - 1].1
}

/// The rules as a rule file.
pub fn rule_file(vocabulary: &Vocabulary) -> String {
    let mut text = "
subjects:
  - { id: kite, kind: choice, meaning: what to fly }
subject: kite
rules:
"
    .to_owned();
    macro_rules! does {
        (points $points:literal) => {
            format!("points: {}", tenths($points))
        };
        (curve $who:ident.$fact:ident $knots:tt) => {{
            let name = concat!(stringify!($who), ".", stringify!($fact));
            let knots = $knots
                .map(|(at, points)| format!("{}: {}", value(vocabulary, name, at), tenths(points)));
            format!(
                "points: {{ along: {name}, at: {{ {} }} }}",
                knots.join(", ")
            )
        }};
        (rule_out) => {
            "rule_out: true".to_owned()
        };
    }
    macro_rules! lines {
        ($(($id:literal, [$($who:ident.$fact:ident $op:tt $value:literal),*], $($does:tt)*);)*) => {
            $(
                let tests: &[(&str, &str, i64)] =
                    &[$((concat!(stringify!($who), ".", stringify!($fact)), stringify!($op), $value)),*];
                text += &line(vocabulary, $id, tests, &does!($($does)*));
            )*
        };
    }
    rules!(lines, asker, kite, gap);
    text
}

fn line(vocabulary: &Vocabulary, id: &str, tests: &[(&str, &str, i64)], does: &str) -> String {
    let mut by_fact: Vec<(&str, Vec<String>)> = Vec::new();
    for &(name, op, at) in tests {
        let key = match op {
            "==" => "",
            "!=" => "not",
            "<" => "below",
            "<=" => "at_most",
            ">" => "above",
            _ => "at_least",
        };
        let value = value(vocabulary, name, at);
        let key = if key.is_empty() {
            value
        } else {
            format!("{key}: {value}")
        };
        match by_fact.iter_mut().find(|(known, _)| *known == name) {
            Some((_, keys)) => keys.push(key),
            None => by_fact.push((name, vec![key])),
        }
    }
    let test = |(name, keys): (&str, Vec<String>)| match keys.as_slice() {
        [only] if !only.contains(": ") => format!("{name}: {only}"),
        keys => format!("{name}: {{ {} }}", keys.join(", ")),
    };
    let when: Vec<String> = by_fact.into_iter().map(test).collect();
    let when = when.join(", ");
    format!(
        "  - {{ id: {id}, when: {{ {when} }}, {does}, because: It flies., source: own choice }}\n"
    )
}

fn value(vocabulary: &Vocabulary, name: &str, value: i64) -> String {
    let fact = vocabulary.fact(vocabulary.id(name).expect("the table names facts"));
    match fact.kind {
        Kind::Choice(words) => words[value as usize].to_owned(),
        Kind::Flag => (value == 1).to_string(),
        _ => Notation::Count.write(value),
    }
}

fn tenths(points: i64) -> String {
    format!(
        "{}{}.{}",
        if points < 0 { "-" } else { "" },
        points.abs() / 10,
        points.abs() % 10
    )
}
