//! Numbers of a roll in words. No bare signs, and no more digits than are known.

use super::plot::Span;

/// What is counted, in which steps, and how both ways are called.
#[derive(Clone, Copy, Debug)]
pub(super) struct Count {
    /// Steps in one whole.
    steps: f64,
    one: &'static str,
    many: &'static str,
    above: &'static str,
    below: &'static str,
    level: &'static str,
    /// Between `level` and what it is held against.
    joint: &'static str,
}

/// Boards to the side, in halves.
pub(super) fn boards(side: &'static str, other: &'static str) -> Count {
    Count {
        steps: 2.0,
        one: "board",
        many: "boards",
        above: side,
        below: other,
        level: "level",
        joint: "with",
    }
}

/// Feet down the lane.
pub(super) const FEET: Count = Count {
    steps: 1.0,
    one: "foot",
    many: "feet",
    above: "sooner",
    below: "later",
    level: "the same",
    joint: "as",
};

/// Degrees, in tenths.
pub(super) const DEGREES: Count = Count {
    steps: 10.0,
    one: "degree",
    many: "degrees",
    above: "more",
    below: "less",
    level: "the same",
    joint: "as",
};

impl Count {
    /// Whole steps; what is no number is none.
    fn steps(&self, value: f64) -> i64 {
        libm::round(value.clamp(-1e6, 1e6) * self.steps) as i64
    }

    /// `1 1/2`, `0.3`, `4`, without its sign.
    fn bare(&self, steps: i64) -> String {
        let steps = steps.abs();
        if self.steps == 10.0 {
            return format!("{}.{}", steps / 10, steps % 10);
        }
        let all = self.steps as i64;
        match (steps / all, steps % all) {
            (whole, 0) => whole.to_string(),
            (0, _) => "1/2".to_owned(),
            (whole, _) => format!("{whole} 1/2"),
        }
    }

    fn unit(&self, steps: i64) -> &'static str {
        let many = if self.steps == 10.0 {
            steps.abs() != 10
        } else {
            steps.abs() > self.steps as i64
        };
        if many { self.many } else { self.one }
    }

    fn way(&self, steps: i64) -> &'static str {
        if steps < 0 { self.below } else { self.above }
    }

    /// `1 1/2 boards left`, or `level`.
    pub(super) fn far(&self, value: f64) -> String {
        match self.steps(value) {
            0 => self.level.to_owned(),
            steps => format!(
                "{} {} {}",
                self.bare(steps),
                self.unit(steps),
                self.way(steps)
            ),
        }
    }

    /// `between 1 and 3 boards left`, `from 1 board right to 2 boards left`; nothing where both ends are alike.
    pub(super) fn range(&self, least: f64, most: f64) -> Option<String> {
        let (least, most) = (self.steps(least), self.steps(most));
        let (near, far) = if least.abs() <= most.abs() {
            (least, most)
        } else {
            (most, least)
        };
        if least == most {
            return None;
        }
        let whole = |steps: i64| self.far(steps as f64 / self.steps);
        if least < 0 && most > 0 {
            return Some(format!("from {} to {}", whole(least), whole(most)));
        }
        if near == 0 {
            return Some(format!("from {} to {}", self.level, whole(far)));
        }
        Some(format!("between {} and {}", self.bare(near), whole(far)))
    }
}

/// `about 2 boards left`, and `(between 1 and 3 boards left)` on a line of its own; `than` says what it is held against.
pub(super) fn about(count: Count, span: Span, than: &str) -> Vec<String> {
    let (value, least, most) = span;
    let first = match count.steps(value) {
        0 => count.level.to_owned(),
        _ => format!("about {}", count.far(value)),
    };
    let joint = match (than, count.steps(value)) {
        ("", _) => String::new(),
        (than, 0) => format!(" {} {than}", count.joint),
        (than, _) => format!(" than {than}"),
    };
    let range = count.range(least, most);
    std::iter::once(format!("{first}{joint}"))
        .chain(range.map(|range| format!("({range})")))
        .collect()
}

/// `about 43 ft`.
pub(super) fn feet(value: f64) -> String {
    format!("about {:.0} ft", value.clamp(0.0, 99.0))
}

/// `about 4.2 degrees`.
pub(super) fn degrees(value: f64) -> String {
    let steps = DEGREES.steps(value);
    format!("about {} {}", DEGREES.bare(steps), DEGREES.unit(steps))
}

/// A ball in a sentence: `the Daisy`; what has an article or an owner of its own keeps it.
pub(super) fn the(name: &str) -> String {
    let first = name.split_whitespace().next().unwrap_or_default();
    match first.to_lowercase().as_str() {
        "" => "the ball".to_owned(),
        "the" | "my" | "your" | "his" | "her" | "our" | "their" | "a" | "an" => name.to_owned(),
        _ => format!("the {name}"),
    }
}
