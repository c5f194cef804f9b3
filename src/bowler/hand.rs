//! What was measured on the hand.

use super::sheet::{Found, Key, Sheet, is_unknown};
use super::span::{self, Grip, HAND_SPANS, Origin, Span, SpanKind};
use crate::document::{Content, Fields, Node};

/// The answers a measured hand gives.
pub(super) const HAND_KEYS: &[Key] = &[
    ("crease_difference", "hand.crease_difference"),
    ("finger_joints", "hand.finger_joints"),
    ("finger_reach", "hand.finger_reach"),
    ("slim_fingers", "hand.slim_fingers"),
    ("palm_mark", "hand.palm_mark"),
];
pub(super) const THUMB_KEYS: &[Key] = &[
    ("length", "hand.thumb_length"),
    ("flexibility", "hand.thumb_flexibility"),
    ("lies", "hand.thumb_lies"),
];
pub(super) const OVAL_KEYS: &[Key] = &[
    ("wide", "hand.oval_wide"),
    ("narrow", "hand.oval_narrow"),
    ("angle", "hand.oval_angle"),
];
pub(super) const WARM_KEYS: &[Key] = &[
    ("size", "hand.thumb_gauge_warm"),
    ("games", "hand.thumb_warm_games"),
    ("tape", "hand.thumb_warm_tapes"),
    ("brace", "hand.thumb_warm_brace"),
];
pub(super) const GAUGES: [&str; 3] = ["hand.thumb_gauge", "hand.middle_gauge", "hand.ring_gauge"];

/// Where the parts of the hand were written, for the checks that compare them with the rest.
#[derive(Default)]
pub(super) struct Hand<'d> {
    pub(super) node: Option<&'d Node>,
    pub(super) thumb: Option<&'d Node>,
    pub(super) spans: Vec<Span>,
    pub(super) spans_node: Option<&'d Node>,
}

/// Reads the key `measured`.
pub(super) fn read<'d>(sheet: &mut Sheet<'d>, node: &'d Node) -> Hand<'d> {
    let keys = HAND_KEYS.iter().chain(THUMB_KEYS);
    let all = keys.map(|&(_, name)| name).chain(GAUGES).chain(HAND_SPANS);
    if sheet.nothing(node, all) {
        return Hand::default();
    }
    let Some(mut fields) = sheet.reader.fields(node, "the measured hand") else {
        return Hand::default();
    };
    let mut hand = Hand {
        node: Some(node),
        ..Hand::default()
    };
    if let Some(thumb) = fields.take("thumb") {
        hand.thumb = read_thumb(sheet, thumb);
    }
    if let Some(middle) = fields.take("middle") {
        read_finger(sheet, middle, "hand.middle_gauge", "hand.middle_gauge_warm");
    }
    if let Some(ring) = fields.take("ring") {
        read_finger(sheet, ring, "hand.ring_gauge", "hand.ring_gauge_warm");
    }
    if let Some(spans) = fields.take("spans") {
        hand.spans = span::read(sheet, spans, Origin::Hand);
        hand.spans_node = Some(spans);
    }
    sheet.keys(&mut fields, HAND_KEYS);
    fields.close(&mut sheet.reader);
    hand
}

/// Reads the thumb; the node is given back if it tells anything that was measured.
fn read_thumb<'d>(sheet: &mut Sheet<'d>, node: &'d Node) -> Option<&'d Node> {
    if sheet.nothing(
        node,
        THUMB_KEYS.iter().map(|&(_, name)| name).chain([GAUGES[0]]),
    ) {
        return None;
    }
    let mut fields = sheet.reader.fields(node, "the thumb")?;
    cold(sheet, &mut fields, GAUGES[0]);
    if let Some(warm) = fields.take("warm") {
        if matches!(warm.content(), Content::Map(_)) {
            sheet.group(warm, "the warm thumb", WARM_KEYS);
        } else {
            sheet.answer("hand.thumb_gauge_warm", warm);
        }
    }
    sheet.keys(&mut fields, THUMB_KEYS);
    if let Some(oval) = fields.take("oval") {
        sheet.group(oval, "the oval", OVAL_KEYS);
    }
    fields.close(&mut sheet.reader);
    let keys = [THUMB_KEYS, WARM_KEYS, OVAL_KEYS].concat();
    let mut names = keys.into_iter().map(|(_, name)| name).chain([GAUGES[0]]);
    names
        .any(|name| sheet.value(name).is_some())
        .then_some(node)
}

fn read_finger<'d>(sheet: &mut Sheet<'d>, node: &'d Node, gauge: &'static str, warm: &'static str) {
    if sheet.nothing(node, [gauge, warm]) {
        return;
    }
    let Some(mut fields) = sheet.reader.fields(node, "the finger") else {
        return;
    };
    cold(sheet, &mut fields, gauge);
    sheet.keys(&mut fields, &[("warm", warm)]);
    fields.close(&mut sheet.reader);
}

/// Reads a cold gauge size: one size, or the two it lies between, of which the smaller counts (row P15).
fn cold<'d>(sheet: &mut Sheet<'d>, fields: &mut Fields<'d>, name: &'static str) {
    let Some(node) = fields.take("cold") else {
        return;
    };
    let Content::List(sizes) = node.content() else {
        sheet.answer(name, node);
        return;
    };
    if sizes.len() != 2 || sizes.iter().any(|size| size.is_null() || is_unknown(size)) {
        let help = "write one size, or the two sizes the gauge lies between";
        sheet
            .reader
            .fault_with_help(node, "shape", "this isn't a gauge size", help);
        return;
    }
    let read: Vec<i64> = sizes
        .iter()
        .filter_map(|size| sheet.read(name, size))
        .collect();
    if let (2, Some(value)) = (read.len(), read.iter().min()) {
        sheet.found.insert(
            name,
            Found {
                value: *value,
                node,
            },
        );
    }
}

/// Whether enough was measured to drill: snug sizes of all that goes in, and both full spans of one grip.
///
/// Without the thumb there is no span to measure. A settled grip must be the grip that was measured.
pub(super) fn is_measured(sheet: &Sheet, spans: &[Span]) -> bool {
    let thumb_out = sheet.value("bowler.thumb") == Some(1);
    let gauges = if thumb_out { &GAUGES[1..] } else { &GAUGES[..] };
    let sized = gauges.iter().all(|name| sheet.value(name).is_some());
    let settled = sheet.value("settled.grip").map(span::grip);
    let spanned = [Grip::Conventional, Grip::Fingertip]
        .into_iter()
        .any(|grip| {
            let fingers = spans
                .iter()
                .filter(|span| span.grip() == Some(grip) && span.kind() == SpanKind::Full)
                .map(Span::finger);
            let mut both: Vec<_> = fingers.collect();
            both.sort_unstable();
            both.dedup();
            both.len() == 2 && settled.is_none_or(|settled| settled == grip)
        });
    sized && (thumb_out || spanned)
}
