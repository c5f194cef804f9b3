//! The shelf: the undrilled balls there are.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::cores::{CoreNumbers, Cores, Key};
use super::model::Model;
use super::table::{Row, ball_weight, known_model, read_rows, steps};
use crate::document::{Document, Reader};
use crate::notation::Notation;

/// How far a pin can lie from the centre of gravity, in 1/64 in: up to a quarter of the way round a 27 in ball.
const PIN_OUT: std::ops::RangeInclusive<i64> = 0..=432;
/// Top weight of an undrilled ball, in 0.01 oz. Own choice, to catch grams or pounds written for ounces.
const TOP_WEIGHT: std::ops::RangeInclusive<i64> = 0..=1000;
/// Balls alike on a shelf. Own choice, to catch a slip.
const COUNT: std::ops::RangeInclusive<i64> = 1..=999;

/// Undrilled balls of one model and weight that are alike.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub struct ShelfUnit {
    /// Distance from the pin to the centre of gravity, in 1/64 in.
    pub pin_out: i64,
    /// Top weight before drilling, in 0.01 oz.
    pub top_weight: i64,
    /// How many there are, at least 1.
    pub count: u32,
}

/// A model in a weight that stands on the shelf: what can be chosen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stock {
    model: Arc<Model>,
    weight: i64,
    numbers: CoreNumbers,
    units: Vec<ShelfUnit>,
}

impl Stock {
    /// The model.
    #[must_use]
    pub fn model(&self) -> &Model {
        &self.model
    }
    /// The weight the box says, in 0.01 lb: whole or half pounds from 6 to 16.
    #[must_use]
    pub fn weight(&self) -> i64 {
        self.weight
    }
    /// Radius of gyration about the axis it turns easiest on, in 0.001 in.
    #[must_use]
    pub fn rg(&self) -> i64 {
        self.numbers.rg
    }
    /// Highest less lowest radius of gyration, in 0.001 in.
    #[must_use]
    pub fn differential(&self) -> i64 {
        self.numbers.differential
    }
    /// Highest less middle radius of gyration, in 0.001 in; 0 for a core that is the same all round.
    #[must_use]
    pub fn intermediate(&self) -> i64 {
        self.numbers.intermediate
    }
    /// Its core numbers.
    #[must_use]
    pub fn numbers(&self) -> &CoreNumbers {
        &self.numbers
    }
    /// The balls there are, least pin-out first, then least top weight. Never empty.
    #[must_use]
    pub fn units(&self) -> &[ShelfUnit] {
        &self.units
    }
    /// How many there are in all.
    #[must_use]
    pub fn count(&self) -> u32 {
        self.units.iter().map(|unit| unit.count).sum()
    }
}

/// Reads the shelf: a row for each model, weight, pin-out and top weight; every model and weight needs core numbers.
/// Sorted by model id, then weight.
pub(super) fn read<'d>(
    document: &'d Document,
    reader: &mut Reader<'d>,
    known: &BTreeSet<&'d str>,
    cores: &Cores<'d>,
    models: &[Arc<Model>],
) -> Vec<Stock> {
    let mut seen = BTreeSet::new();
    let rows = read_rows(document, reader, "ball on the shelf", |row, reader| {
        unit(row, reader, known, &cores.keys, &mut seen)
    });
    let mut shelf: BTreeMap<Key<'d>, Vec<ShelfUnit>> = BTreeMap::new();
    for (key, unit) in rows {
        shelf.entry(key).or_default().push(unit);
    }
    let stock = shelf.into_iter().filter_map(|(key, mut units)| {
        units.sort_unstable();
        let at = models
            .binary_search_by(|model| model.id().cmp(key.0))
            .ok()?;
        Some(Stock {
            model: Arc::clone(models.get(at)?),
            weight: key.1,
            numbers: *cores.numbers.get(&key)?,
            units,
        })
    });
    stock.collect()
}

fn unit<'d>(
    row: &mut Row<'d>,
    reader: &mut Reader<'d>,
    known: &BTreeSet<&'d str>,
    keys: &BTreeSet<Key<'d>>,
    seen: &mut BTreeSet<(Key<'d>, i64, i64)>,
) -> Option<(Key<'d>, ShelfUnit)> {
    let model_cell = row.cell("model", reader);
    let weight_cell = row.cell("weight", reader);
    let pin_cell = row.cell("pin_out", reader);
    let top_cell = row.cell("top_weight", reader);
    let count_cell = row.cell("count", reader);

    let model = known_model(reader, model_cell, known);
    let weight = ball_weight(reader, weight_cell);
    let pin_out = steps(reader, pin_cell, "the pin-out", Notation::Length, PIN_OUT);
    let top_weight = steps(
        reader,
        top_cell,
        "the top weight",
        Notation::Ounces,
        TOP_WEIGHT,
    );
    let count = steps(reader, count_cell, "the count", Notation::Count, COUNT);

    let key = model.zip(weight)?;
    let (model, pounds) = (key.0, Notation::Weight.write(key.1));
    if !keys.contains(&key) {
        reader.fault(
            weight_cell?,
            "unknown-value",
            format!("`{model}` has no core numbers at {pounds}"),
        );
        return None;
    }
    let (pin_out, top_weight) = (pin_out?, top_weight?);
    if !seen.insert((key, pin_out, top_weight)) {
        reader.fault_with_help(
            model_cell?,
            "repeated",
            format!("`{model}` at {pounds} with this pin-out and top weight stands in an earlier row too"),
            "raise the count of that row",
        );
        return None;
    }
    Some((
        key,
        ShelfUnit {
            pin_out,
            top_weight,
            count: u32::try_from(count?).ok()?,
        },
    ))
}
