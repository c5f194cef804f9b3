//! How the quantities of a rule book are written, and what one whole step of each is.

use super::date::Date;
use crate::notation::Notation;

/// How a quantity is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Unit {
    /// A number of the trade.
    Trade(Notation),
    /// A decimal: digits after the point, unit, other spellings of the unit.
    Decimal(u32, &'static str, &'static [&'static str]),
    /// A length of time in whole seconds.
    Time,
    /// Yes (1) or no (0).
    Flag,
    /// A day, as 20241001.
    Day,
}

/// More digits than any reading of a gauge has.
const MOST_DIGITS: usize = 9;

impl Unit {
    /// Reads text into whole steps. Decimals finer than a step are refused, so that none is rounded into a limit.
    ///
    /// # Errors
    /// What was expected.
    pub(super) fn read(self, text: &str) -> Result<i64, String> {
        match self {
            Unit::Trade(notation) => match too_fine(notation, text) {
                Some(places) => Err(format!("expected at most {places} digits after the point")),
                None => notation.read(text),
            },
            Unit::Decimal(places, unit, also) => {
                decimal(text, places, unit, also).ok_or_else(|| {
                    format!(
                        "expected a number such as `{}`",
                        self.write(example(places))
                    )
                })
            }
            Unit::Time => time(text).ok_or_else(|| {
                "expected a time such as `90 min`, `2 min 15 s` or `135 s`".to_owned()
            }),
            Unit::Flag => match text {
                "yes" | "true" => Ok(1),
                "no" | "false" => Ok(0),
                _ => Err("expected yes or no".to_owned()),
            },
            Unit::Day => Date::read(text).map(Date::number),
        }
    }

    /// Prints whole steps.
    pub(super) fn write(self, steps: i64) -> String {
        match self {
            Unit::Trade(notation) => notation.write(steps),
            Unit::Decimal(places, unit, _) => {
                let one = 10_u64.pow(places);
                let size = steps.unsigned_abs();
                let minus = if steps < 0 { "-" } else { "" };
                let width = places as usize;
                let text = if places == 0 {
                    format!("{minus}{size}")
                } else {
                    format!("{minus}{}.{:0width$}", size / one, size % one)
                };
                format!("{text} {unit}").trim_end().to_owned()
            }
            Unit::Time => match (steps / 60, steps % 60) {
                (0, seconds) => format!("{seconds} s"),
                (minutes, 0) => format!("{minutes} min"),
                (minutes, seconds) => format!("{minutes} min {seconds} s"),
            },
            Unit::Flag => if steps == 0 { "no" } else { "yes" }.to_owned(),
            Unit::Day => {
                Date::from_number(steps).map_or_else(|| steps.to_string(), |date| date.to_string())
            }
        }
    }

    /// Prints half of so many whole steps, exactly where the unit has digits for it; else the whole step below.
    pub(super) fn write_half(self, steps: i64) -> String {
        let finer = match self {
            _ if steps % 2 == 0 => return self.write(steps / 2),
            Unit::Trade(notation) => {
                places(notation).map(|places| (places as u32, notation.unit()))
            }
            Unit::Decimal(places, unit, _) => Some((places, unit)),
            Unit::Time | Unit::Flag | Unit::Day => None,
        };
        match (finer, steps.checked_mul(5)) {
            (Some((places, unit)), Some(tenths)) => {
                Unit::Decimal(places + 1, unit, &[]).write(tenths)
            }
            _ => self.write(steps / 2),
        }
    }

    /// Whether it counts things.
    pub(super) fn is_count(self) -> bool {
        matches!(self, Unit::Trade(Notation::Counted(..)))
    }

    /// Whether the difference of two values says anything.
    pub(super) fn has_distance(self) -> bool {
        !matches!(self, Unit::Flag | Unit::Day)
    }
}

/// A number to show what is meant.
fn example(places: u32) -> i64 {
    7 * 10_i64.pow(places)
}

/// The digits after the point that a step has, if a number in the notation's own unit has more: rounding could turn a broken
/// limit into a kept one.
fn too_fine(notation: Notation, text: &str) -> Option<usize> {
    let places = places(notation)?;
    let (_, part) = text.split_once('.')?;
    let end = part
        .find(|c: char| !c.is_ascii_digit())
        .unwrap_or(part.len());
    let (digits, unit) = part.split_at(end);
    let is_own = unit.trim().is_empty() || unit.trim().starts_with(notation.unit());
    (is_own && digits.trim_end_matches('0').len() > places).then_some(places)
}

/// The digits after the point of a notation's step, if it is a decimal.
fn places(notation: Notation) -> Option<usize> {
    match notation {
        Notation::Weight | Notation::Ounces => Some(2),
        Notation::Thousandths | Notation::Density => Some(3),
        _ => None,
    }
}

fn decimal(text: &str, places: u32, unit: &str, also: &[&str]) -> Option<i64> {
    let text = text.trim();
    let end = text
        .find(|c: char| !c.is_ascii_digit() && c != '.')
        .unwrap_or(text.len());
    let (number, word) = text.split_at(end);
    let word = word.trim();
    if !(word.is_empty() || word == unit || also.contains(&word)) {
        return None;
    }
    let (whole, part) = number.split_once('.').unwrap_or((number, ""));
    let part = part.trim_end_matches('0');
    let has_digits = !number.trim_matches('.').is_empty() && !part.contains('.');
    if !has_digits || whole.len() > MOST_DIGITS || part.len() > places as usize {
        return None;
    }
    let digits = format!("{whole}{part:0<width$}", width = places as usize);
    digits.parse().ok()
}

fn time(text: &str) -> Option<i64> {
    let words: Vec<&str> = text.split_whitespace().collect();
    let number = |word: &str| decimal(word, 0, "", &[]);
    match words.as_slice() {
        [minutes, "min"] => Some(60 * number(minutes)?),
        [seconds, "s"] => number(seconds),
        [minutes, "min", seconds, "s"] => {
            let seconds = number(seconds).filter(|seconds| *seconds < 60)?;
            Some(60 * number(minutes)? + seconds)
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_of_a_gauge_are_read_exactly_or_not_at_all() {
        let hardness = Unit::Decimal(1, "Shore D", &["D"]);
        assert_eq!(hardness.read("72.50 D"), Ok(725));
        assert_eq!(hardness.read("72"), Ok(720));
        assert_eq!(hardness.write(725), "72.5 Shore D");
        for refused in ["72.55", "", ".", "72 C", "-1", "1.2.3", "9999999999"] {
            assert!(hardness.read(refused).is_err(), "{refused}");
        }
        let ounces = Unit::Trade(Notation::Ounces);
        // Half of 3/4 oz is 3/8 oz.
        assert_eq!(ounces.write_half(75), "0.375 oz");
        assert_eq!(ounces.write_half(-75), "-0.375 oz");
        assert_eq!(ounces.write_half(200), "1 oz");
        assert_eq!(hardness.write_half(725), "36.25 Shore D");
        assert_eq!(Unit::Time.write_half(135), "1 min 7 s");
        assert_eq!(ounces.write_half(i64::MAX), ounces.write(i64::MAX / 2));
        assert_eq!(ounces.read("3.000 oz"), Ok(300));
        assert_eq!(ounces.read("85.05 g"), Ok(300));
        assert!(ounces.read("3.004 oz").is_err());
        assert_eq!(Unit::Time.read("2 min 15 s"), Ok(135));
        assert_eq!(Unit::Time.read("90 min"), Ok(5400));
        assert_eq!(Unit::Time.write(135), "2 min 15 s");
        assert!(Unit::Time.read("2:15").is_err());
    }
}
