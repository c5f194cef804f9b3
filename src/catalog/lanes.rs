//! The lanes a shop's customers bowl on: generic zones of oil, and which answer of a profile each stands for.

use std::collections::BTreeSet;

use super::UnknownLane;
use super::lane_row::{LaneRow, rows};
use crate::document::{Document, Faults, Format, Reader, clean, nearest};

/// The words of a profile for lanes, bit by bit in the order of the answer `bowler.lanes`; a test holds that the two lists are one.
pub const LANE_WORDS: &[&str] = &["house", "oily", "dry", "sport", "long_oil", "short_oil"];

/// The bit of the word that ordinary lanes go by.
pub(super) const HOUSE: i64 = 1;
/// Words of much oil, and words of little: lanes of both kinds pull apart.
const MUCH: i64 = 1 << 1 | 1 << 4;
const LITTLE: i64 = 1 << 2 | 1 << 5;

/// The lanes of a shop, sorted by id; at least one of them is an ordinary house lane.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Lanes {
    rows: Vec<LaneRow>,
    /// The house lane, for who says nothing; without oil in an empty list.
    house: LaneRow,
    /// For every set of words, where its lane stands among the rows.
    answers: Vec<usize>,
}

impl Lanes {
    /// Reads a list of lanes.
    ///
    /// # Errors
    /// Every fault, sorted by place.
    pub fn read(document: &Document) -> Result<Lanes, Faults> {
        let mut reader = Reader::new(document);
        let mut rows = rows(document, &mut reader);
        rows.sort_by(|a, b| a.id().cmp(b.id()));
        let house = rows.iter().find(|row| row.answers() & HOUSE != 0).cloned();
        if house.is_none() && !reader.has_faults() {
            let help = "give one of them `answers: [house]`";
            let message = "no lane stands for `house`, which is taken when nobody knows the lane";
            reader.fault_with_help(document.root(), "missing", message, help);
        }
        reader.finish()?;
        let sets = 0..1_i64 << LANE_WORDS.len();
        Ok(Lanes {
            answers: sets.map(|set| best(&rows, set)).collect(),
            house: house.unwrap_or_default(),
            rows,
        })
    }

    /// The lanes that are built in.
    ///
    /// # Errors
    /// None in a released crate: the tests read this very file.
    pub fn builtin() -> Result<Lanes, Faults> {
        let text = include_bytes!("../../catalog-demo/lanes.yaml");
        Lanes::read(&Document::parse("lanes.yaml", text, Format::Yaml)?)
    }

    /// The lanes, sorted by id.
    #[must_use]
    pub fn rows(&self) -> &[LaneRow] {
        &self.rows
    }

    /// The lane with this id.
    ///
    /// # Errors
    /// There is none; the error names the id most like it.
    pub fn named(&self, id: &str) -> Result<&LaneRow, UnknownLane> {
        let found = self.rows.iter().find(|row| row.id() == id);
        found.ok_or_else(|| UnknownLane {
            id: clean(id),
            nearest: nearest(id, self.rows.iter().map(LaneRow::id)).map(str::to_owned),
            known: self.rows.iter().map(|row| clean(row.id())).collect(),
        })
    }

    /// The one lane that stands for a set of words, bit by bit in the order of [`LANE_WORDS`].
    ///
    /// Words of much oil (`oily`, `long_oil`) and of little (`dry`, `short_oil`) cancel where there are both. Of what is left the lane
    /// with the most words in common is taken; of several, the one with the fewest words beside those; then one that stands for
    /// `house`; then the first by id. Without any word in common, and for an empty set, it is the house lane.
    #[must_use]
    pub fn for_answer(&self, set: i64) -> &LaneRow {
        let known = (1 << LANE_WORDS.len()) - 1;
        let place = usize::try_from(set & known).ok();
        place
            .and_then(|place| self.answers.get(place))
            .and_then(|&at| self.rows.get(at))
            .unwrap_or(&self.house)
    }
}

/// Where the lane for a set of words stands; beyond the end for the house lane.
fn best(rows: &[LaneRow], set: i64) -> usize {
    let set = match set & MUCH != 0 && set & LITTLE != 0 {
        true => set & !(MUCH | LITTLE),
        false => set,
    };
    let suits = |row: &LaneRow| {
        let common = (row.answers() & set).count_ones();
        let beside = (row.answers() & !set).count_ones();
        let house = row.answers() & HOUSE;
        (common > 0).then_some((common, std::cmp::Reverse(beside), house))
    };
    let all = rows.iter().enumerate();
    let suited = all.filter_map(|(at, row)| Some((suits(row)?, std::cmp::Reverse(at))));
    suited.max().map_or(rows.len(), |(_, at)| at.0)
}

/// Every id once, told at the second.
pub(super) type Ids<'d> = BTreeSet<&'d str>;
