//! Spans as they were read off the hand or the ball: never without their kind and the way they were read.

use super::sheet::{Sheet, is_unknown};
use crate::document::Node;

/// Which joint the fingers go in to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Grip {
    /// To the second joint.
    Conventional,
    /// To the first joint.
    Fingertip,
}

/// A finger that goes into the ball.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Finger {
    /// The middle finger.
    Middle,
    /// The ring finger.
    Ring,
}

/// Between which edges a span was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SpanKind {
    /// From hole to hole with insert and slug in place.
    Full,
    /// From cut edge to cut edge, before insert and slug.
    Cut,
    /// From hole centre to hole centre.
    Centre,
}

/// How a length was read on the ball.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Along {
    /// Over the surface, with a tape.
    Arc,
    /// Straight across, with a calliper.
    Chord,
}

/// One span as it was read. Nothing is converted here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Span {
    pub(super) grip: Option<Grip>,
    pub(super) finger: Finger,
    pub(super) value: i64,
    pub(super) kind: SpanKind,
    pub(super) along: Along,
}

impl Span {
    /// The grip it was read for; a fit card without a grip leaves it open.
    pub fn grip(&self) -> Option<Grip> {
        self.grip
    }

    /// The finger it runs to, from the thumb.
    pub fn finger(&self) -> Finger {
        self.finger
    }

    /// The length in 1/64 in, as read.
    pub fn value(&self) -> i64 {
        self.value
    }

    /// Between which edges it was read.
    pub fn kind(&self) -> SpanKind {
        self.kind
    }

    /// Whether it was read along the arc or across the chord.
    pub fn along(&self) -> Along {
        self.along
    }

    /// Whether it needs no conversion: full, along the arc.
    pub fn is_full_arc(&self) -> bool {
        self.kind == SpanKind::Full && self.along == Along::Arc
    }
}

pub(super) const FINGERS: &[&str] = &["middle", "ring"];
pub(super) const KINDS: &[&str] = &["full", "cut", "centre"];
pub(super) const ALONGS: &[&str] = &["arc", "chord"];

/// The answers that spans measured on the hand can give.
pub(super) const HAND_SPANS: [&str; 4] = [
    "hand.conventional_middle_span",
    "hand.conventional_ring_span",
    "hand.fingertip_middle_span",
    "hand.fingertip_ring_span",
];
/// The answers that the spans of a fit card can give.
pub(super) const CARD_SPANS: [&str; 2] = ["card.middle_span", "card.ring_span"];

/// Where a list of spans comes from.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Origin {
    /// Measured on the hand: each span names its grip.
    Hand,
    /// On a fit card: all spans are of the card's grip.
    Card(Option<Grip>),
}

/// The grip with this index in the order of [`super::GRIPS`].
pub(super) fn grip(index: i64) -> Grip {
    if index == 0 {
        Grip::Conventional
    } else {
        Grip::Fingertip
    }
}

/// Reads a list of spans; those that are full and along the arc are kept as answers too.
pub(super) fn read<'d>(sheet: &mut Sheet<'d>, node: &'d Node, origin: Origin) -> Vec<Span> {
    let names: &[&'static str] = if origin == Origin::Hand {
        &HAND_SPANS
    } else {
        &CARD_SPANS
    };
    if sheet.nothing(node, names.iter().copied()) {
        return Vec::new();
    }
    let Some(items) = sheet.reader.list(node, "the spans") else {
        return Vec::new();
    };
    let mut spans: Vec<(Span, &Node)> = Vec::new();
    for item in items {
        let Some(span) = read_one(sheet, item, origin) else {
            continue;
        };
        let twin = spans
            .iter()
            .find(|(other, _)| is_same_reading(other, &span));
        if let Some((_, first)) = twin {
            let message = format!("this span was given already, on line {}", sheet.line(first));
            sheet.contradict(item, message, "keep the one that was measured last");
            continue;
        }
        spans.push((span, item));
    }
    spans.into_iter().map(|(span, _)| span).collect()
}

fn is_same_reading(one: &Span, other: &Span) -> bool {
    (one.grip, one.finger, one.kind, one.along)
        == (other.grip, other.finger, other.kind, other.along)
}

fn read_one<'d>(sheet: &mut Sheet<'d>, item: &'d Node, origin: Origin) -> Option<Span> {
    let mut fields = sheet.reader.fields(item, "a span")?;
    let grip = match origin {
        Origin::Hand => {
            let node = fields.require("grip", &mut sheet.reader);
            node.and_then(|node| sheet.word(node, "the grip of the span", super::GRIPS))
                .map(grip)
        }
        Origin::Card(grip) => grip,
    };
    let node = fields.require("finger", &mut sheet.reader);
    let finger = node.and_then(|node| sheet.word(node, "the finger of the span", FINGERS));
    let finger = finger.map(|index| {
        if index == 0 {
            Finger::Middle
        } else {
            Finger::Ring
        }
    });
    let value_node = fields.take("value");
    let node = fields.require("kind", &mut sheet.reader);
    let kind = node
        .and_then(|node| sheet.word(node, "the kind of the span", KINDS))
        .map(kind);
    let node = fields.require("along", &mut sheet.reader);
    let along = node.and_then(|node| sheet.word(node, "the way the span was read", ALONGS));
    let along = along.map(|index| if index == 0 { Along::Arc } else { Along::Chord });
    fields.close(&mut sheet.reader);

    // The value is read even where the rest is faulty, so that all faults show at once.
    let name = name(origin, grip, finger.unwrap_or(Finger::Middle));
    let value_node = value_node?;
    if is_unknown(value_node) && finger.is_none() {
        return None;
    }
    let value = sheet.read(name, value_node);
    if origin == Origin::Hand {
        grip?;
    }
    let span = Span {
        grip,
        finger: finger?,
        value: value?,
        kind: kind?,
        along: along?,
    };
    if span.is_full_arc() {
        sheet.found.entry(name).or_insert(super::sheet::Found {
            value: span.value,
            node: value_node,
        });
    }
    Some(span)
}

fn kind(index: i64) -> SpanKind {
    match index {
        0 => SpanKind::Full,
        1 => SpanKind::Cut,
        _ => SpanKind::Centre,
    }
}

/// The answer a span gives.
fn name(origin: Origin, grip: Option<Grip>, finger: Finger) -> &'static str {
    match (origin, grip, finger) {
        (Origin::Card(_), _, Finger::Middle) => CARD_SPANS[0],
        (Origin::Card(_), _, Finger::Ring) => CARD_SPANS[1],
        (Origin::Hand, Some(Grip::Conventional), Finger::Middle) => HAND_SPANS[0],
        (Origin::Hand, Some(Grip::Conventional), Finger::Ring) => HAND_SPANS[1],
        (Origin::Hand, _, Finger::Middle) => HAND_SPANS[2],
        (Origin::Hand, _, Finger::Ring) => HAND_SPANS[3],
    }
}
