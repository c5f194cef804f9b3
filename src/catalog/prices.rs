//! The price list: what the shop charges beside the ball, and what it promises.

use std::ops::RangeInclusive;

use crate::document::{Document, Fields, Node, Reader};
use crate::notation::Notation;

/// What a service or part may cost, in cents. Own choice, to catch a lost decimal point.
const AMOUNTS: RangeInclusive<i64> = 0..=50_000;
/// Sales tax, in thousandths of a percent: 0 to 30 %. Own choice; no sales tax we know of is higher.
const TAX: RangeInclusive<i64> = 0..=30_000;
/// Weeks of free easing. Own choice: up to a year.
const WEEKS: RangeInclusive<i64> = 0..=52;
/// Currencies that amounts can be printed in.
const CURRENCIES: &[&str] = &["USD"];

/// What the shop charges beside the ball, and what it promises. Amounts are in cents and before tax.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PriceList {
    pub(super) currency: &'static str,
    pub(super) drilling_with_ball: i64,
    pub(super) drilling_own_ball: i64,
    pub(super) redrill: i64,
    pub(super) finger_inserts: i64,
    pub(super) thumb_slug: i64,
    pub(super) thumb_sleeve: i64,
    pub(super) plug: i64,
    pub(super) tax: i64,
    pub(super) ready_when: String,
    pub(super) plug_ready_when: String,
    pub(super) free_easing_weeks: i64,
    pub(super) near_miss: i64,
    pub(super) warranty: String,
}

impl PriceList {
    /// The currency's three letters.
    #[must_use]
    pub fn currency(&self) -> &str {
        self.currency
    }
    /// Drilling a ball that is bought here.
    #[must_use]
    pub fn drilling_with_ball(&self) -> i64 {
        self.drilling_with_ball
    }
    /// Drilling an undrilled ball the customer brings.
    #[must_use]
    pub fn drilling_own_ball(&self) -> i64 {
        self.drilling_own_ball
    }
    /// New holes in a ball that was drilled before, its plugs not counted.
    #[must_use]
    pub fn redrill(&self) -> i64 {
        self.redrill
    }
    /// A pair of finger inserts, put in.
    #[must_use]
    pub fn finger_inserts(&self) -> i64 {
        self.finger_inserts
    }
    /// A solid thumb slug, put in and bored.
    #[must_use]
    pub fn thumb_slug(&self) -> i64 {
        self.thumb_slug
    }
    /// An interchangeable thumb sleeve, put in and bored; it takes the place of the slug.
    #[must_use]
    pub fn thumb_sleeve(&self) -> i64 {
        self.thumb_sleeve
    }
    /// Filling one old hole.
    #[must_use]
    pub fn plug(&self) -> i64 {
        self.plug
    }
    /// Sales tax, in thousandths of a percent: 8250 is 8.25 %.
    #[must_use]
    pub fn tax(&self) -> i64 {
        self.tax
    }
    /// When a new ball is ready, as a customer is told.
    #[must_use]
    pub fn ready_when(&self) -> &str {
        &self.ready_when
    }
    /// When a plugged ball is ready, as a customer is told.
    #[must_use]
    pub fn plug_ready_when(&self) -> &str {
        &self.plug_ready_when
    }
    /// For how many weeks tight holes are eased for free.
    #[must_use]
    pub fn free_easing_weeks(&self) -> i64 {
        self.free_easing_weeks
    }
    /// How far over the budget, in cents, a ball is still worth showing.
    #[must_use]
    pub fn near_miss(&self) -> i64 {
        self.near_miss
    }
    /// What is said about warranties before a ball is plugged or warmed.
    #[must_use]
    pub fn warranty(&self) -> &str {
        &self.warranty
    }
}

/// Reads a price list.
pub(super) fn read<'d>(document: &'d Document, reader: &mut Reader<'d>) -> Option<PriceList> {
    let mut list = reader.fields(document.root(), "a price list")?;
    let currency = list
        .require("currency", reader)
        .and_then(|node| reader.choice(node, "the currency", CURRENCIES));
    let drilling = list
        .require("drilling", reader)
        .and_then(|node| drilling(node, reader));
    let parts = list
        .require("parts", reader)
        .and_then(|node| parts(node, reader));
    let plug = amount(&mut list, "plug", reader);
    let tax = list
        .require("tax", reader)
        .and_then(|node| reader.value(node, "the tax", percent));
    let ready_when = sentence(&mut list, "ready_when", reader);
    let plug_ready_when = sentence(&mut list, "plug_ready_when", reader);
    let weeks = number(
        &mut list,
        "free_easing_weeks",
        Notation::Count,
        WEEKS,
        reader,
    );
    let near_miss = amount(&mut list, "near_miss", reader);
    let warranty = sentence(&mut list, "warranty", reader);
    list.close(reader);

    let [drilling_with_ball, drilling_own_ball, redrill] = drilling?;
    let [finger_inserts, thumb_slug, thumb_sleeve] = parts?;
    Some(PriceList {
        currency: CURRENCIES.get(currency?)?,
        drilling_with_ball,
        drilling_own_ball,
        redrill,
        finger_inserts,
        thumb_slug,
        thumb_sleeve,
        plug: plug?,
        tax: tax?,
        ready_when: ready_when?,
        plug_ready_when: plug_ready_when?,
        free_easing_weeks: weeks?,
        near_miss: near_miss?,
        warranty: warranty?,
    })
}

fn drilling<'d>(node: &'d Node, reader: &mut Reader<'d>) -> Option<[i64; 3]> {
    amounts(
        node,
        "drilling",
        ["with_ball", "own_ball", "redrill"],
        reader,
    )
}

fn parts<'d>(node: &'d Node, reader: &mut Reader<'d>) -> Option<[i64; 3]> {
    amounts(
        node,
        "parts",
        ["finger_inserts", "thumb_slug", "thumb_sleeve"],
        reader,
    )
}

fn amounts<'d>(
    node: &'d Node,
    what: &str,
    keys: [&'static str; 3],
    reader: &mut Reader<'d>,
) -> Option<[i64; 3]> {
    let mut fields = reader.fields(node, what)?;
    let [first, second, third] = keys.map(|key| amount(&mut fields, key, reader));
    fields.close(reader);
    Some([first?, second?, third?])
}

fn amount<'d>(fields: &mut Fields<'d>, key: &'static str, reader: &mut Reader<'d>) -> Option<i64> {
    number(fields, key, Notation::Money, AMOUNTS, reader)
}

fn number<'d>(
    fields: &mut Fields<'d>,
    key: &'static str,
    notation: Notation,
    range: RangeInclusive<i64>,
    reader: &mut Reader<'d>,
) -> Option<i64> {
    let node = fields.require(key, reader);
    super::table::steps(reader, node, &format!("`{key}`"), notation, range)
}

fn sentence<'d>(
    fields: &mut Fields<'d>,
    key: &'static str,
    reader: &mut Reader<'d>,
) -> Option<String> {
    let node = fields.require(key, reader)?;
    reader
        .sentence(node, &format!("`{key}`"))
        .map(str::to_owned)
}

/// Reads a percentage with up to three decimals, `8.25 %` or `8.25`; in thousandths of a percent. Tax rates are finer
/// than the whole percents of the trade's notation, hence a reader of its own.
fn percent(text: &str) -> Result<i64, String> {
    let wrong = || {
        "expected a percentage from 0 to 30 with at most three decimals, such as `8.25 %`"
            .to_owned()
    };
    let number = text.trim().strip_suffix('%').unwrap_or(text).trim();
    let (whole, decimals) = number.split_once('.').unwrap_or((number, "0"));
    let digits = |part: &str, most: usize| {
        (1..=most).contains(&part.len()) && part.bytes().all(|b| b.is_ascii_digit())
    };
    if !digits(whole, 2) || !digits(decimals, 3) {
        return Err(wrong());
    }
    let steps = format!("{whole}{decimals:0<3}")
        .parse()
        .map_err(|_| wrong())?;
    if TAX.contains(&steps) {
        Ok(steps)
    } else {
        Err(wrong())
    }
}

#[cfg(test)]
mod tests {
    use super::percent;

    #[test]
    fn percentages_are_read_to_a_thousandth() {
        for (text, steps) in [
            ("8.25 %", 8_250),
            ("8.875%", 8_875),
            ("0", 0),
            ("30 %", 30_000),
            ("7.5", 7_500),
        ] {
            assert_eq!(percent(text), Ok(steps), "{text}");
        }
        for text in [
            "", "%", "-1", "+1", "30.001", "8.2505", "8,25", "eight", "8 % %", "100", "8.", ".5",
        ] {
            assert!(percent(text).is_err(), "{text}");
        }
    }
}
