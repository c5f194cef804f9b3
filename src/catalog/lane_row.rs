//! One lane of the list: its oil in the trade's numbers, held against what the physics allows.

use super::lanes::{Ids, LANE_WORDS};
use super::table::{shown, suggest};
use crate::document::{Document, Fields, Node, Reader};
use crate::motion::{Impossible, Lane, Length};
use crate::notation::Notation;

/// How sure a row is.
const STRENGTHS: &[&str] = &[
    "published",
    "published, weak",
    "common practice",
    "from memory",
    "own choice",
    "derived",
];

/// A lane and its oil, by id.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LaneRow {
    id: String,
    name: String,
    answers: i64,
    lane: Lane,
    written: [i64; 5],
    because: String,
    source: String,
    strength: &'static str,
}

// Every number of a lane that was read is one; so each row equals itself.
impl Eq for LaneRow {}

impl LaneRow {
    /// Its id.
    #[must_use]
    pub fn id(&self) -> &str {
        &self.id
    }
    /// As people say it, with its article: `an ordinary house lane`.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }
    /// The words of a profile that it stands for, bit by bit in the order of [`LANE_WORDS`].
    #[must_use]
    pub fn answers(&self) -> i64 {
        self.answers
    }
    /// The lane as the physics sees it.
    #[must_use]
    pub fn lane(&self) -> &Lane {
        &self.lane
    }
    /// How far the oil goes, in 0.1 ft.
    #[must_use]
    pub fn oil(&self) -> i64 {
        self.written[0]
    }
    /// Over how much of its end the oil thins out, in 0.1 ft.
    #[must_use]
    pub fn ramp(&self) -> i64 {
        self.written[1]
    }
    /// Oil inside over oil outside, in tenths; 10 where it is alike on every board.
    #[must_use]
    pub fn ratio(&self) -> i64 {
        self.written[2]
    }
    /// The first board, from either side, that has the whole oil, in tenths; 0 on a flat lane that doesn't say.
    #[must_use]
    pub fn inside(&self) -> i64 {
        self.written[3]
    }
    /// Over how many boards it thins from there, in tenths.
    #[must_use]
    pub fn taper(&self) -> i64 {
        self.written[4]
    }
    /// Why these numbers, in a sentence.
    #[must_use]
    pub fn because(&self) -> &str {
        &self.because
    }
    /// Where they come from.
    #[must_use]
    pub fn source(&self) -> &str {
        &self.source
    }
    /// How sure that is: `published`, `common practice`, `own choice`…
    #[must_use]
    pub fn strength(&self) -> &'static str {
        self.strength
    }
    /// Everything that is told of it, for a digest.
    pub(super) fn text(&self) -> String {
        format!(
            "{}\t{}\t{}\t{:?}\t{}\t{}\t{}\n",
            self.id,
            self.name,
            self.answers,
            self.written,
            self.because,
            self.source,
            self.strength
        )
    }
}

/// Reads the rows; a list without any is a fault.
pub(super) fn rows<'d>(document: &'d Document, reader: &mut Reader<'d>) -> Vec<LaneRow> {
    let Some(mut fields) = reader.fields(document.root(), "a list of lanes") else {
        return Vec::new();
    };
    let list = fields.require("lanes", reader);
    fields.close(reader);
    let Some(node) = list else {
        return Vec::new();
    };
    let Some(items) = reader.list(node, "the lanes") else {
        return Vec::new();
    };
    if items.is_empty() {
        reader.fault(
            node,
            "missing",
            "the list has no lanes; expected at least one",
        );
    }
    let mut ids = Ids::new();
    items
        .iter()
        .filter_map(|item| row(item, reader, &mut ids))
        .collect()
}

fn row<'d>(item: &'d Node, reader: &mut Reader<'d>, ids: &mut Ids<'d>) -> Option<LaneRow> {
    let mut fields = reader.fields(item, "a lane")?;
    let id = fields
        .require("id", reader)
        .and_then(|node| super::model::id(node, reader, ids));
    let name = fields
        .require("name", reader)
        .and_then(|node| reader.text(node, "the name"));
    let answers = fields
        .require("answers", reader)
        .and_then(|node| answers(node, reader));
    let oil = oil(&mut fields, reader);
    let because = fields
        .require("because", reader)
        .and_then(|node| reader.sentence(node, "`because`"));
    let source = fields
        .require("source", reader)
        .and_then(|node| reader.text(node, "the source"));
    let strength = fields
        .require("strength", reader)
        .and_then(|node| reader.choice(node, "the strength", STRENGTHS));
    fields.close(reader);
    let (lane, written) = oil?;
    Some(LaneRow {
        id: id?.to_owned(),
        name: name?.to_owned(),
        answers: answers?,
        lane,
        written,
        because: because?.to_owned(),
        source: source?.to_owned(),
        strength: STRENGTHS.get(strength?)?,
    })
}

/// A list of words of [`LANE_WORDS`]; each that is none is a fault of its own, and so is one that stands there twice.
fn answers<'d>(node: &'d Node, reader: &mut Reader<'d>) -> Option<i64> {
    let mut set = 0;
    let mut good = true;
    for item in reader.list(node, "`answers`")? {
        let Some(word) = reader.text(item, "a word for lanes") else {
            good = false;
            continue;
        };
        let Some(at) = LANE_WORDS.iter().position(|known| *known == word) else {
            good = false;
            let all = LANE_WORDS.join(", ");
            let message = format!("`{}` is no word for lanes; expected {all}", shown(word));
            let names = LANE_WORDS.iter().copied();
            suggest(reader, item, "unknown-value", message, word, names);
            continue;
        };
        if set >> at & 1 == 1 {
            good = false;
            reader.fault(item, "repeated", format!("`{word}` stands here already"));
        }
        set |= 1 << at;
    }
    good.then_some(set)
}

/// The oil, each number held against the physics for itself, so that every one that can't be is told.
fn oil<'d>(fields: &mut Fields<'d>, reader: &mut Reader<'d>) -> Option<(Lane, [i64; 5])> {
    let feet = |text: &str| Notation::Feet.read(text);
    let boards = |text: &str| Notation::Boards.read(text);
    let oil_node = fields.require("oil", reader);
    let ramp_node = fields.require("ramp", reader);
    let ratio_node = fields.require("ratio", reader);
    let oil = oil_node.and_then(|node| reader.value(node, "the length of the oil", feet));
    let ramp = ramp_node.and_then(|node| reader.value(node, "the ramp", feet));
    let ratio = ratio_node.and_then(|node| reader.value(node, "the ratio", times));

    let oiled = |oil, ramp| Lane::oiled(length(oil), length(ramp));
    let long = held(reader, oil_node, oil.map(|oil| oiled(oil, 0)))
        .zip(oil.zip(ramp))
        .and_then(|(_, (oil, ramp))| held(reader, ramp_node, Some(oiled(oil, ramp))));
    let across = |ratio, inside, taper| {
        Lane::default().crosswise(tenths(ratio), tenths(inside), tenths(taper))
    };
    let tried = ratio.map(|ratio| across(ratio, FLAT, 0));
    let ratio = held(reader, ratio_node, tried).and(ratio);

    // Where the oil is alike on every board there is nothing to thin.
    let told = fields.take("inside").or(fields.take("taper")).is_some();
    if !told && ratio.is_none_or(|ratio| ratio == FLAT) {
        return Some((long?, [oil?, ramp?, ratio?, 0, 0]));
    }
    let inside_node = fields.require("inside", reader);
    let taper_node = fields.require("taper", reader);
    let inside = inside_node.and_then(|node| reader.value(node, "the inside board", boards));
    let taper = taper_node.and_then(|node| reader.value(node, "the taper", boards));
    let tried = inside.map(|inside| across(FLAT, inside, 0));
    let inside = held(reader, inside_node, tried).and(inside)?;
    let tried = taper.map(|taper| across(FLAT, inside, taper));
    let taper = held(reader, taper_node, tried).and(taper)?;
    let ratio = ratio?;
    let lane = long?
        .crosswise(tenths(ratio), tenths(inside), tenths(taper))
        .ok()?;
    Some((lane, [oil?, ramp?, ratio, inside, taper]))
}

/// What stood the physics' test; else its refusal is told at the number.
fn held<'d>(
    reader: &mut Reader<'d>,
    node: Option<&'d Node>,
    tried: Option<Result<Lane, Impossible>>,
) -> Option<Lane> {
    match tried? {
        Ok(lane) => Some(lane),
        Err(why) => {
            reader.fault(node?, "out-of-range", why.to_string());
            None
        }
    }
}

/// Alike on every board; also the first board: 1, in tenths.
const FLAT: i64 = 10;

fn length(steps: i64) -> Length {
    Length::feet(tenths(steps))
}

fn tenths(steps: i64) -> f64 {
    // A number that was read is small enough to be exact.
    steps as f64 / 10.0
}

/// Reads `8:1` or `2.5:1`, in tenths.
fn times(text: &str) -> Result<i64, String> {
    let wrong = || "expected a ratio such as `8:1` or `2.5:1`".to_owned();
    let number = text.trim().strip_suffix(":1").ok_or_else(wrong)?;
    let (whole, decimal) = number
        .trim()
        .split_once('.')
        .unwrap_or((number.trim(), "0"));
    let digits = |part: &str, most: usize| {
        (1..=most).contains(&part.len()) && part.bytes().all(|byte| byte.is_ascii_digit())
    };
    if !digits(whole, 4) || !digits(decimal, 1) {
        return Err(wrong());
    }
    format!("{whole}{decimal}").parse().map_err(|_| wrong())
}
