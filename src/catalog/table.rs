//! Reading a table with a header line: the faults of the header are told once, not once a row.

use crate::document::{Document, Fields, Node, Reader};

/// One row of a table, and whether it is the row that tells the faults of the header.
pub(super) struct Row<'d> {
    fields: Fields<'d>,
    first: bool,
}

impl<'d> Row<'d> {
    /// The cell in a column every table of this kind has. A header without the column is one fault, an empty cell another.
    pub(super) fn cell(&mut self, column: &'static str, reader: &mut Reader<'d>) -> Option<&'d Node> {
        let cell = if self.first { self.fields.require(column, reader) } else { self.fields.take(column) }?;
        if cell.is_null() {
            reader.fault(cell, "missing", format!("the cell is empty; every row needs its `{column}`"));
            return None;
        }
        Some(cell)
    }

    /// Ends the row; an unknown column is told at its heading, once.
    pub(super) fn close(self, reader: &mut Reader<'d>) {
        if self.first {
            self.fields.close(reader);
        }
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
    let Some(rows) = reader.list(document.root(), "a table") else { return Vec::new() };
    if rows.is_empty() {
        reader.fault(document.root(), "missing", format!("the table has no rows; expected one for each {what}"));
    }
    let mut kept = Vec::with_capacity(rows.len());
    let mut first = true;
    for node in rows {
        let Some(fields) = reader.fields(node, what) else { continue };
        let mut row = Row { fields, first };
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
    notation: crate::notation::Notation,
    range: std::ops::RangeInclusive<i64>,
) -> Option<i64> {
    let cell = cell?;
    let steps = reader.value(cell, what, |text| notation.read(text))?;
    if !range.contains(&steps) {
        let (lowest, highest) = (notation.write(*range.start()), notation.write(*range.end()));
        reader.fault(
            cell,
            "out-of-range",
            format!("{what} is {}; expected {lowest} to {highest}", notation.write(steps)),
        );
        return None;
    }
    Some(steps)
}

/// Reads the name of a ball's model, which has to be one of `known`.
pub(super) fn known_model<'d>(
    reader: &mut Reader<'d>,
    cell: Option<&'d Node>,
    known: &std::collections::BTreeSet<&str>,
) -> Option<&'d str> {
    let cell = cell?;
    let id = reader.text(cell, "the model")?;
    if known.contains(id) {
        return Some(id);
    }
    let message = format!("no ball of the models has the id `{id}`");
    match crate::document::nearest(id, known.iter().copied()) {
        Some(near) => reader.fault_with_help(cell, "unknown-value", message, format!("did you mean `{near}`?")),
        None => reader.fault(cell, "unknown-value", message),
    }
    None
}

/// Reads a weight a ball is made in: whole or half pounds from 6 to 16; in 0.01 lb.
pub(super) fn ball_weight<'d>(reader: &mut Reader<'d>, cell: Option<&'d Node>) -> Option<i64> {
    let weight = steps(reader, cell, "the weight", crate::notation::Notation::Weight, 600..=1600)?;
    if weight % 50 != 0 {
        let found = crate::notation::Notation::Weight.write(weight);
        reader.fault(cell?, "out-of-range", format!("the weight is {found}; expected whole or half pounds"));
        return None;
    }
    Some(weight)
}
