//! Core numbers: how a model turns, for each weight it is made in.

use std::collections::{BTreeMap, BTreeSet};

use super::table::{Row, ball_weight, known_model, read_rows, steps};
use crate::document::{Document, Node, Reader};
use crate::notation::Notation;
use crate::standards::ApprovalLimits;

/// RG a ball of any weight can have at all, in 0.001 in. The end above is a 4.25 in ball with all its mass in the skin
/// (4.25 x sqrt(2/3)); the end below is own choice, to catch a lost digit.
const RG_POSSIBLE: std::ops::RangeInclusive<i64> = 2000..=3470;
/// Differential a ball of any weight can have at all, in 0.001 in. Own choice, to catch a lost decimal point.
const DIFFERENTIAL_POSSIBLE: std::ops::RangeInclusive<i64> = 0..=200;

/// How one model turns in one weight. All numbers in 0.001 in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CoreNumbers {
    pub(super) rg: i64,
    pub(super) differential: i64,
    pub(super) intermediate: i64,
}

impl CoreNumbers {
    /// Lowest, middle and highest radius of gyration, in 0.001 in.
    #[must_use]
    pub fn rgs(&self) -> [i64; 3] {
        let high = self.rg + self.differential;
        [self.rg, high - self.intermediate, high]
    }
}

/// A model's id and a weight in 0.01 lb.
pub(super) type Key<'d> = (&'d str, i64);

/// The core numbers of a file, every model and weight that has a row (faulty or not), and what is odd but no fault.
pub(super) struct Cores<'d> {
    pub(super) numbers: BTreeMap<Key<'d>, CoreNumbers>,
    pub(super) keys: BTreeSet<Key<'d>>,
    pub(super) questions: BTreeSet<String>,
}

impl Cores<'_> {
    /// The numbers by model and weight.
    pub(super) fn owned(&self) -> BTreeMap<(String, i64), CoreNumbers> {
        let numbers = self.numbers.iter();
        numbers
            .map(|(&(model, weight), core)| ((model.to_owned(), weight), *core))
            .collect()
    }
}

/// Reads the core numbers of the models named in `known`. `limits` is what a ball has to keep to be approved; whether that holds
/// for balls lighter than its weight isn't known.
pub(super) fn read<'d>(
    document: &'d Document,
    reader: &mut Reader<'d>,
    known: &BTreeSet<&'d str>,
    limits: &ApprovalLimits,
) -> Cores<'d> {
    let mut keys = BTreeSet::new();
    let mut questions = BTreeSet::new();
    let rows = read_rows(document, reader, "model and weight", |row, reader| {
        numbers(row, reader, (known, limits), &mut keys, &mut questions)
    });
    Cores {
        numbers: rows.into_iter().collect(),
        keys,
        questions,
    }
}

fn numbers<'d>(
    row: &mut Row<'d>,
    reader: &mut Reader<'d>,
    (known, limits): (&BTreeSet<&'d str>, &ApprovalLimits),
    keys: &mut BTreeSet<Key<'d>>,
    questions: &mut BTreeSet<String>,
) -> Option<(Key<'d>, CoreNumbers)> {
    let model_cell = row.cell("model", reader);
    let weight_cell = row.cell("weight", reader);
    let rg_cell = row.cell("rg", reader);
    let differential_cell = row.cell("differential", reader);
    let intermediate_cell = row.cell("intermediate", reader);

    let model = known_model(reader, model_cell, known);
    let weight = ball_weight(reader, weight_cell);
    let key = model.zip(weight);
    let repeated = key.is_some_and(|key| !keys.insert(key));
    if repeated && let (Some((model, weight)), Some(cell)) = (key, model_cell) {
        let weight = Notation::Weight.write(weight);
        reader.fault(
            cell,
            "repeated",
            format!("`{model}` at {weight} stands in an earlier row too"),
        );
    }

    let rg = steps(
        reader,
        rg_cell,
        "the RG",
        Notation::Thousandths,
        RG_POSSIBLE,
    );
    let differential = steps(
        reader,
        differential_cell,
        "the differential",
        Notation::Thousandths,
        DIFFERENTIAL_POSSIBLE,
    );
    let intermediate = steps(
        reader,
        intermediate_cell,
        "the intermediate differential",
        Notation::Thousandths,
        DIFFERENTIAL_POSSIBLE,
    );
    if let (Some(all), Some(part), Some(cell)) = (differential, intermediate, intermediate_cell)
        && part > all
    {
        let (all, part) = (
            Notation::Thousandths.write(all),
            Notation::Thousandths.write(part),
        );
        reader.fault(
            cell,
            "contradiction",
            format!("the intermediate differential is {part}; expected at most the whole differential, {all}"),
        );
    }

    let mut broken = false;
    for (value, cell, what, over, limit) in [
        (rg, rg_cell, "the RG", false, limits.rg_lowest),
        (rg, rg_cell, "the RG", true, limits.rg_highest),
        (
            differential,
            differential_cell,
            "the differential",
            true,
            limits.differential_highest,
        ),
    ] {
        let (Some(value), Some(cell), Some(weight)) = (value, cell, weight) else {
            continue;
        };
        if if over { value <= limit } else { value >= limit } {
            continue;
        }
        broken |= outside(
            reader,
            cell,
            (model, weight),
            what,
            value,
            (over, limit, limits.from_weight),
            questions,
        );
    }
    if repeated || broken {
        return None;
    }
    Some((
        key?,
        CoreNumbers {
            rg: rg?,
            differential: differential?,
            intermediate: intermediate?,
        },
    ))
}

/// Tells a number outside a limit: a fault where the limit is known to apply, else a question. True for a fault.
fn outside<'d>(
    reader: &mut Reader<'d>,
    cell: &'d Node,
    (model, weight): (Option<&str>, i64),
    what: &str,
    value: i64,
    (over, limit, from_weight): (bool, i64, i64),
    questions: &mut BTreeSet<String>,
) -> bool {
    let bound = if over { "at most" } else { "at least" };
    let (value, limit) = (
        Notation::Thousandths.write(value),
        Notation::Thousandths.write(limit),
    );
    let from = Notation::Weight.write(from_weight);
    if weight >= from_weight {
        reader.fault(
            cell,
            "limit",
            format!(
                "{what} is {value}; expected {bound} {limit}, the approval limit from {from} up"
            ),
        );
        return true;
    }
    if let Some(model) = model {
        let weight = Notation::Weight.write(weight);
        questions.insert(format!(
            "{model}, {weight}: {what} is {value}. From {from} up it has to be {bound} {limit}. Is it right?"
        ));
    }
    false
}
