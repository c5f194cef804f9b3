//! Reading the values of facts, of measures and of points.

use super::{Reading, unknown};
use crate::document::{Content, Node, Reader};
use crate::notation::Notation;
use crate::rules::vocabulary::{FactId, Kind};

/// The most points a rule may give or take, in tenths.
pub(super) const MOST_TENTHS: i64 = 100_000;

/// The furthest from 0 that a rule may take a measure, in steps.
const MOST_STEPS: i64 = 1_000_000;

/// A notation by its name.
pub(super) fn notation<'d>(reader: &mut Reader<'d>, node: &'d Node) -> Option<Notation> {
    let names: Vec<&str> = Notation::names().collect();
    let index = reader.choice(node, "a notation", &names)?;
    names.get(index).and_then(|name| Notation::named(name))
}

/// A number in a notation.
pub(super) fn number<'d>(
    reader: &mut Reader<'d>,
    node: &'d Node,
    notation: Notation,
) -> Option<i64> {
    let text = reader.text(node, "a number")?;
    match notation.read(text) {
        Ok(steps) => Some(steps),
        Err(expected) => {
            reader.fault_with_help(
                node,
                "not-a-number",
                format!("`{text}` is not a value here"),
                expected,
            );
            None
        }
    }
}

/// A number of steps for a measure.
pub(super) fn steps<'d>(
    reader: &mut Reader<'d>,
    node: &'d Node,
    notation: Notation,
) -> Option<i64> {
    let steps = number(reader, node, notation)?;
    let fits = (-MOST_STEPS..=MOST_STEPS).contains(&steps);
    if !fits {
        let message = format!("{} is too far from nothing", notation.write(steps));
        reader.fault(node, "out-of-bounds", message);
    }
    fits.then_some(steps)
}

/// Points, as whole tenths.
pub(super) fn points<'d>(reader: &mut Reader<'d>, node: &'d Node) -> Option<i64> {
    let text = reader.text(node, "points")?;
    let (sign, size) = match text.strip_prefix(['-', '+']) {
        Some(size) => (if text.starts_with('-') { -1 } else { 1 }, size),
        None => (1, text),
    };
    let (whole, fraction) = size.split_once('.').unwrap_or((size, "0"));
    let digits = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
    if !digits(whole) || !digits(fraction) {
        let message = format!("`{text}` is not a number of points");
        reader.fault_with_help(
            node,
            "not-a-number",
            message,
            "expected points such as 4, -12 or 2.5",
        );
        return None;
    }
    let fraction = fraction.trim_end_matches('0');
    if fraction.len() > 1 {
        let message = format!("`{text}` is not whole tenths of a point");
        reader.fault(node, "not-tenths", message);
        return None;
    }
    let tenths = whole
        .parse::<i64>()
        .ok()
        .and_then(|whole| whole.checked_mul(10));
    let tenths = tenths.map(|tenths| sign * (tenths.saturating_add(fraction.parse().unwrap_or(0))));
    let fits = tenths.filter(|tenths| (-MOST_TENTHS..=MOST_TENTHS).contains(tenths));
    if fits.is_none() {
        let message = format!("`{text}` is beyond {} points", MOST_TENTHS / 10);
        reader.fault(node, "out-of-bounds", message);
    }
    fits
}

impl<'d> Reading<'d> {
    /// A value of a fact: a number within its bounds, a word's index, a flag as 0 or 1, or one bit of a set.
    pub(super) fn value(&self, reader: &mut Reader<'d>, node: &'d Node, id: FactId) -> Option<i64> {
        let fact = self.vocabulary.fact(id);
        match fact.kind {
            Kind::Number {
                notation,
                lowest,
                highest,
            } => {
                let value = number(reader, node, notation)?;
                let fits = (lowest..=highest).contains(&value);
                if !fits {
                    let print = |steps| notation.write(steps);
                    let message = format!(
                        "{} is outside {} to {}, the bounds of `{}`",
                        print(value),
                        print(lowest),
                        print(highest),
                        fact.name
                    );
                    reader.fault(node, "out-of-bounds", message);
                }
                fits.then_some(value)
            }
            Kind::Flag => match reader.text(node, "true or false")? {
                "true" | "yes" => Some(1),
                "false" | "no" => Some(0),
                text => {
                    let message = format!("`{}` is true or false, not `{text}`", fact.name);
                    reader.fault(node, "unknown-value", message);
                    None
                }
            },
            Kind::Choice(words) | Kind::Set(words) => {
                let text = reader.text(node, "a word")?;
                let Some(index) = words.iter().position(|word| *word == text) else {
                    let message = format!("`{}` has no value `{text}`", fact.name);
                    unknown(
                        reader,
                        node,
                        "unknown-value",
                        &message,
                        text,
                        words.iter().copied(),
                    );
                    return None;
                };
                Some(if matches!(fact.kind, Kind::Set(_)) {
                    1 << index
                } else {
                    index as i64
                })
            }
        }
    }

    /// One value or a list of them; the values that could be read, if all could.
    pub(super) fn values(
        &self,
        reader: &mut Reader<'d>,
        node: &'d Node,
        id: FactId,
    ) -> Option<Vec<i64>> {
        let Content::List(items) = node.content() else {
            return self.value(reader, node, id).map(|value| vec![value]);
        };
        let values: Vec<_> = items
            .iter()
            .map(|item| self.value(reader, item, id))
            .collect();
        values.into_iter().collect()
    }
}
