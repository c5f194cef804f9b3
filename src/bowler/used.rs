//! A drilled ball that is to be drilled anew: which one it is, and where the new grip goes.

use super::sheet::Sheet;
use super::words::OLD_HOLES;
use super::{FitCard, OwnedBall};
use crate::document::{Node, clean};
use crate::notation::Notation;

/// Half around the largest ball there is: no grip lies farther from another, in 1/64 in.
const FARTHEST: i64 = 864;
/// A full turn, in 0.1 degree.
const TURN: i64 = 3600;

/// A drilled ball that is to be drilled anew. Its old holes are those of the fit card.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UsedBall {
    ball: Option<String>,
    plugged: bool,
    new_grip: Option<NewGrip>,
}

/// Where the new grip lies on the old one's ball, as the fitter looks at the old grip with its fingers up.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct NewGrip {
    over: i64,
    up: i64,
    turned: i64,
}

impl UsedBall {
    /// The ball, as the card or its owner calls it.
    pub fn ball(&self) -> Option<&str> {
        self.ball.as_deref()
    }

    /// Whether the old holes are filled already.
    pub fn is_plugged(&self) -> bool {
        self.plugged
    }

    /// Where the new grip lies; `None` if that was left open.
    pub fn new_grip(&self) -> Option<NewGrip> {
        self.new_grip
    }
}

impl NewGrip {
    /// How far the new grip centre lies over from the old one along its midline, in 1/64 in; right is more.
    pub fn over(&self) -> i64 {
        self.over
    }

    /// Then how far up from there, toward the old fingers, in 1/64 in; down is below nothing.
    pub fn up(&self) -> i64 {
        self.up
    }

    /// By how much the new centreline is turned against the old one, counter-clockwise, in 0.1 degree.
    pub fn turned(&self) -> i64 {
        self.turned
    }
}

/// Reads the key `used_ball`.
pub(super) fn read<'d>(
    sheet: &mut Sheet<'d>,
    node: &'d Node,
    card: Option<&FitCard>,
    owned: &[OwnedBall],
) -> Option<UsedBall> {
    if sheet.nothing(node, []) {
        return None;
    }
    let mut fields = sheet.reader.fields(node, "the used ball")?;
    let named = fields.take("ball");
    let ball = named.and_then(|node| sheet.words(node, "the used ball's name"));
    let plugged = fields
        .take("holes")
        .filter(|node| !sheet.nothing(node, []))
        .and_then(|node| sheet.word(node, "the old holes", OLD_HOLES));
    let new_grip = fields
        .take("new_grip")
        .and_then(|node| read_grip(sheet, node));
    fields.close(&mut sheet.reader);
    let Some(card) = card else {
        let message = "no fit card tells the holes of the used ball";
        let help = "write its holes down as `fit_card`, read off the ball";
        sheet.reader.fault_with_help(node, "missing", message, help);
        return None;
    };
    if let (Some(name), Some(node)) = (&ball, named) {
        check_name(sheet, node, name, card, owned);
    }
    Some(UsedBall {
        ball: ball.or_else(|| card.ball().map(str::to_owned)),
        plugged: plugged == Some(1),
        new_grip,
    })
}

/// The ball is the card's own, or one that is owned and drilled alike; any other name is a slip.
fn check_name(sheet: &mut Sheet, node: &Node, name: &str, card: &FitCard, owned: &[OwnedBall]) {
    if card.ball().is_none() || card.ball() == Some(name) {
        return;
    }
    let mut known: Vec<&str> = owned.iter().filter_map(OwnedBall::name).collect();
    if known.contains(&name) {
        let text = "The fit card is of another ball. Are the used ball's holes just the same?";
        sheet.ask("card.works", text);
        return;
    }
    if let Some(ball) = card.ball().filter(|ball| !known.contains(ball)) {
        known.push(ball);
    }
    let message = format!("no ball is called `{}`", clean(name));
    let help = format!("the card and the balls owned name: {}", known.join(", "));
    sheet
        .reader
        .fault_with_help(node, "unknown-value", message, help);
}

fn read_grip<'d>(sheet: &mut Sheet<'d>, node: &'d Node) -> Option<NewGrip> {
    if sheet.nothing(node, []) {
        return None;
    }
    let mut fields = sheet.reader.fields(node, "the new grip")?;
    let mut read = |key, called, notation, range| match fields.take(key) {
        Some(node) => sheet.number(node, called, notation, range),
        None => Some(0),
    };
    let across = -FARTHEST..=FARTHEST;
    let over = read(
        "over",
        "the distance over to the new grip",
        Notation::LateralPitch,
        across.clone(),
    );
    let up = read(
        "up",
        "the distance up to the new grip",
        Notation::UpDown,
        across,
    );
    let turned = read(
        "turned",
        "the turn of the new grip",
        Notation::Angle,
        0..=TURN,
    );
    fields.close(&mut sheet.reader);
    Some(NewGrip {
        over: over?,
        up: up?,
        turned: turned?,
    })
}
