//! Reading a table with a header line: the faults of the header are told once, not once a row.

use std::collections::BTreeSet;
use std::ops::RangeInclusive;

use crate::document::{Content, Document, Fields, Node, Reader, clean, nearest};
use crate::notation::Notation;

/// One row of a table, and whether it is the row that tells the faults of the header.
pub(super) struct Row<'d> {
    fields: Fields<'d>,
    columns: Vec<&'static str>,
    first: bool,
}

impl<'d> Row<'d> {
    /// The cell in a column every table of this kind has. A header without the column is one fault, an empty cell another.
    pub(super) fn cell(
        &mut self,
        column: &'static str,
        reader: &mut Reader<'d>,
    ) -> Option<&'d Node> {
        self.columns.push(column);
        let Some(cell) = self.fields.take(column) else {
            if self.first {
                let heading = heading(self.fields.node());
                reader.fault(
                    heading,
                    "missing",
                    format!("the column `{column}` is missing"),
                );
            }
            return None;
        };
        if cell.is_null() {
            reader.fault(
                cell,
                "missing",
                format!("the cell under `{column}` is empty"),
            );
            return None;
        }
        Some(cell)
    }

    /// Ends the row; an unknown column is told at its heading, once.
    fn close(mut self, reader: &mut Reader<'d>) {
        if !self.first {
            return;
        }
        for (heading, _) in self.fields.rest() {
            let name = heading.text().unwrap_or_default();
            let message = format!("unknown column `{}`", shown(name));
            suggest(
                reader,
                heading,
                "unknown-key",
                message,
                name,
                self.columns.iter().copied(),
            );
        }
    }
}

/// The first heading of the table a row belongs to.
fn heading(row: &Node) -> &Node {
    match row.content() {
        Content::Map(pairs) => pairs.first().map_or(row, |(heading, _)| heading),
        _ => row,
    }
}

/// Text of a file as a message repeats it: not longer than a line.
pub(super) fn shown(text: &str) -> String {
    let mut short: String = text.chars().take(60).collect();
    if short.len() < text.len() {
        short.push('…');
    }
    clean(&short)
}

/// Notes a fault, with the nearest of the names as help if one is near.
pub(super) fn suggest<'d, 'n>(
    reader: &mut Reader<'d>,
    node: &'d Node,
    code: &'static str,
    message: String,
    word: &str,
    names: impl IntoIterator<Item = &'n str>,
) {
    match nearest(word, names) {
        Some(near) => {
            reader.fault_with_help(node, code, message, format!("did you mean `{near}`?"))
        }
        None => reader.fault(node, code, message),
    }
}

/// Reads every row with `read`, which has to ask for every column even after a fault. Rows that `read` gives nothing
/// for are left out. A table without rows is a fault.
pub(super) fn read_rows<'d, T>(
    document: &'d Document,
    reader: &mut Reader<'d>,
    what: &str,
    mut read: impl FnMut(&mut Row<'d>, &mut Reader<'d>) -> Option<T>,
) -> Vec<T> {
    let Some(rows) = reader.list(document.root(), "the table") else {
        return Vec::new();
    };
    if rows.is_empty() {
        reader.fault(
            document.root(),
            "missing",
            format!("the table has no rows; expected one for each {what}"),
        );
    }
    let mut kept = Vec::with_capacity(rows.len());
    let mut first = true;
    for node in rows {
        let Some(fields) = reader.fields(node, what) else {
            continue;
        };
        let mut row = Row {
            fields,
            columns: Vec::new(),
            first,
        };
        first = false;
        kept.extend(read(&mut row, reader));
        row.close(reader);
    }
    kept
}

/// Reads a cell that holds a whole number of steps of a notation, within bounds given in those steps.
pub(super) fn steps<'d>(
    reader: &mut Reader<'d>,
    cell: Option<&'d Node>,
    what: &str,
    notation: Notation,
    range: RangeInclusive<i64>,
) -> Option<i64> {
    let cell = cell?;
    let steps = reader.value(cell, what, |text| notation.read(text))?;
    if !range.contains(&steps) {
        let (lowest, highest) = (notation.write(*range.start()), notation.write(*range.end()));
        reader.fault(
            cell,
            "out-of-range",
            format!(
                "{what} is {}; expected {lowest} to {highest}",
                notation.write(steps)
            ),
        );
        return None;
    }
    Some(steps)
}

/// Reads the name of a ball's model, which has to be one of `known`.
pub(super) fn known_model<'d>(
    reader: &mut Reader<'d>,
    cell: Option<&'d Node>,
    known: &BTreeSet<&str>,
) -> Option<&'d str> {
    let cell = cell?;
    let id = reader.text(cell, "the model")?;
    if known.contains(id) {
        return Some(id);
    }
    let message = format!("no model has the id `{}`", shown(id));
    suggest(
        reader,
        cell,
        "unknown-value",
        message,
        id,
        known.iter().copied(),
    );
    None
}

/// Reads a weight a ball is made in: whole or half pounds from 6 to 16; in 0.01 lb.
pub(super) fn ball_weight<'d>(reader: &mut Reader<'d>, cell: Option<&'d Node>) -> Option<i64> {
    let weight = steps(reader, cell, "the weight", Notation::Weight, 600..=1600)?;
    if weight % 50 != 0 {
        let found = Notation::Weight.write(weight);
        reader.fault(
            cell?,
            "out-of-range",
            format!("the weight is {found}; expected whole or half pounds"),
        );
        return None;
    }
    Some(weight)
}
