//! The ball on the scales before it was drilled.

use super::answer::Shape;
use super::sheet::Sheet;
use super::statics::{self, Statics};
use super::table::answer;
use crate::document::Node;
use crate::notation::Notation;

/// The answer with the ball's weight after drilling.
const AFTER: &str = "card.ball_weight";

/// What the scales showed before drilling, about the grip as it was marked for drilling.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Weighed {
    weight: Option<i64>,
    statics: Statics,
}

impl Weighed {
    /// Its weight in 0.01 lb; `None` if it wasn't weighed.
    pub fn weight(&self) -> Option<i64> {
        self.weight
    }

    /// Its static weights.
    pub fn statics(&self) -> Statics {
        self.statics
    }
}

/// Reads the key `before`; the weight after drilling has been read.
pub(super) fn read<'d>(sheet: &mut Sheet<'d>, node: &'d Node) -> Weighed {
    if sheet.nothing(node, []) {
        return Weighed::default();
    }
    let Some(mut fields) = sheet.reader.fields(node, "the readings before drilling") else {
        return Weighed::default();
    };
    let weighed = Weighed {
        weight: fields
            .take("weight")
            .and_then(|node| read_weight(sheet, node)),
        statics: fields
            .take("statics")
            .map(|node| statics::read(sheet, node))
            .unwrap_or_default(),
    };
    fields.close(&mut sheet.reader);
    weighed
}

fn read_weight<'d>(sheet: &mut Sheet<'d>, node: &'d Node) -> Option<i64> {
    // The same balls are weighed before and after, so the same range holds.
    let Shape::Number {
        notation,
        lowest,
        highest,
        ..
    } = answer(AFTER)?.shape()
    else {
        return None;
    };
    let called = "the weight before drilling";
    let before = sheet.number(node, called, notation, lowest..=highest)?;
    if let Some(after) = sheet.found(AFTER)
        && after.value > before
    {
        let message = format!(
            "a ball of {} can't weigh {} once it is drilled (line {})",
            Notation::Weight.write(before),
            Notation::Weight.write(after.value),
            sheet.line(after.node)
        );
        sheet.contradict(node, message, "look whether the two were exchanged");
        return None;
    }
    Some(before)
}
