//! The models: what a maker sells, whatever its weight.

use std::collections::BTreeSet;
use std::ops::RangeInclusive;

use super::table::{Row, read_rows, shown, steps, suggest};
use super::words::{Colour, Core, Cover, Finish, Tier};
use crate::document::{Document, Node, Reader};
use crate::notation::Notation;

/// Prices a new ball can have, in cents: a dollar to two thousand. Outside is taken for a slip of the pen (own choice).
pub(super) const PRICES: RangeInclusive<i64> = 100..=200_000;

/// A ball as a maker sells it, whatever its weight.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Model {
    pub(super) id: String,
    pub(super) name: String,
    pub(super) maker: String,
    pub(super) cover: Cover,
    pub(super) core: Core,
    pub(super) finish: Finish,
    pub(super) tier: Tier,
    pub(super) price: i64,
    pub(super) colours: BTreeSet<Colour>,
}

impl Model {
    /// The short name files and commands use: letters, digits and `-`.
    #[must_use]
    pub fn id(&self) -> &str {
        &self.id
    }
    /// The name on the ball.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }
    /// Who makes it.
    #[must_use]
    pub fn maker(&self) -> &str {
        &self.maker
    }
    /// What its outside is made of.
    #[must_use]
    pub fn cover(&self) -> Cover {
        self.cover
    }
    /// The shape of its core.
    #[must_use]
    pub fn core(&self) -> Core {
        self.core
    }
    /// Its surface from the factory.
    #[must_use]
    pub fn finish(&self) -> Finish {
        self.finish
    }
    /// Its price class.
    #[must_use]
    pub fn tier(&self) -> Tier {
        self.tier
    }
    /// Its price undrilled and before tax, in cents.
    #[must_use]
    pub fn price(&self) -> i64 {
        self.price
    }
    /// The colours on it, at least one.
    #[must_use]
    pub fn colours(&self) -> &BTreeSet<Colour> {
        &self.colours
    }
}

/// The models of a file and every id that could be read, those of rows with other faults included.
pub(super) struct Models<'d> {
    pub(super) models: Vec<Model>,
    pub(super) ids: BTreeSet<&'d str>,
}

/// Reads the models. An id that stands in a faulty row still counts as known, so that one slip isn't told twice.
pub(super) fn read<'d>(document: &'d Document, reader: &mut Reader<'d>) -> Models<'d> {
    let mut ids = BTreeSet::new();
    let mut models = read_rows(document, reader, "ball", |row, reader| {
        model(row, reader, &mut ids)
    });
    models.sort_by(|a, b| a.id.cmp(&b.id));
    Models { models, ids }
}

fn model<'d>(
    row: &mut Row<'d>,
    reader: &mut Reader<'d>,
    ids: &mut BTreeSet<&'d str>,
) -> Option<Model> {
    let id = row
        .cell("id", reader)
        .and_then(|cell| id(cell, reader, ids));
    let name = row
        .cell("name", reader)
        .and_then(|cell| reader.text(cell, "the name"));
    let maker = row
        .cell("maker", reader)
        .and_then(|cell| reader.text(cell, "the maker"));
    let cover = word(row, reader, "cover", Cover::NAMES, Cover::ALL);
    let core = word(row, reader, "core", Core::NAMES, Core::ALL);
    let finish = word(row, reader, "finish", Finish::NAMES, Finish::ALL);
    let tier = word(row, reader, "tier", Tier::NAMES, Tier::ALL);
    let price = row.cell("price", reader);
    let price = steps(reader, price, "the price", Notation::Money, PRICES);
    let colours = row
        .cell("colours", reader)
        .and_then(|cell| colours(cell, reader));
    Some(Model {
        id: id?.to_owned(),
        name: name?.to_owned(),
        maker: maker?.to_owned(),
        cover: cover?,
        core: core?,
        finish: finish?,
        tier: tier?,
        price: price?,
        colours: colours?,
    })
}

pub(super) fn id<'d>(
    cell: &'d Node,
    reader: &mut Reader<'d>,
    ids: &mut BTreeSet<&'d str>,
) -> Option<&'d str> {
    // Short, so that it can be typed and printed anywhere.
    let plain = |id: &str| {
        id.len() <= 40
            && id
                .bytes()
                .all(|byte| byte.is_ascii_alphanumeric() || byte == b'-')
    };
    let wrong = || "expected at most 40 letters, digits and `-`".to_owned();
    reader.value(cell, "the id", |id| {
        if plain(id) { Ok(()) } else { Err(wrong()) }
    })?;
    let id = reader.text(cell, "the id")?;
    if !ids.insert(id) {
        reader.fault(
            cell,
            "repeated",
            format!("the id `{id}` stands in an earlier row too"),
        );
        return None;
    }
    Some(id)
}

fn word<'d, T: Copy>(
    row: &mut Row<'d>,
    reader: &mut Reader<'d>,
    column: &'static str,
    names: &[&str],
    values: &[T],
) -> Option<T> {
    let cell = row.cell(column, reader)?;
    let index = reader.choice(cell, &format!("the {column}"), names)?;
    values.get(index).copied()
}

/// One or more colours with spaces between them. Every word that is no colour is a fault of its own.
fn colours<'d>(cell: &'d Node, reader: &mut Reader<'d>) -> Option<BTreeSet<Colour>> {
    let text = reader.text(cell, "the colours")?;
    let mut colours = BTreeSet::new();
    let mut good = true;
    for word in text.split_whitespace() {
        if let Some(colour) = Colour::ALL.iter().find(|colour| colour.name() == word) {
            colours.insert(*colour);
            continue;
        }
        good = false;
        let message = format!(
            "`{}` is no colour; expected one or more of {}",
            shown(word),
            Colour::NAMES.join(", ")
        );
        suggest(
            reader,
            cell,
            "unknown-value",
            message,
            word,
            Colour::NAMES.iter().copied(),
        );
    }
    good.then_some(colours)
}
