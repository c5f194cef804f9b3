//! A ball document into facts, with every fault at its place.

use super::date::Period;
use super::facts::{BallFacts, CoverKind, Digit, HoleFacts, HoleKind};
use super::quantity::Quantity;
use crate::document::{Document, Faults, Fields, Node, Reader};
use crate::notation::Notation;

/// The most holes that are read; a ball with more is a colander.
const MOST_HOLES: usize = 40;
/// The longest name that is read.
const LONGEST_NAME: usize = 200;

impl BallFacts {
    /// Reads a ball document. Everything may be left out.
    ///
    /// # Errors
    /// Every fault, in order of place.
    pub fn read(document: &Document) -> Result<BallFacts, Faults> {
        let mut reader = Reader::new(document);
        let mut facts = BallFacts::default();
        if let Some(mut fields) = reader.fields(document.root(), "a ball") {
            ball(&mut fields, &mut facts, &mut reader);
            fields.close(&mut reader);
        }
        reader.finish()?;
        Ok(facts)
    }
}

fn ball<'d>(fields: &mut Fields<'d>, facts: &mut BallFacts, reader: &mut Reader<'d>) {
    if let Some(node) = fields.take("name") {
        let name = reader.text(node, "the name");
        if name.is_some_and(|name| name.chars().count() > LONGEST_NAME) {
            let message = format!("the name is longer than {LONGEST_NAME} characters");
            reader.fault(node, "too-long", message);
        }
        facts.name = name.map(str::to_owned);
    }
    facts.weight = number(fields, "weight", Quantity::Weight, reader);
    facts.diameter = number(fields, "diameter", Quantity::Diameter, reader);
    facts.circumference = number(fields, "circumference", Quantity::Circumference, reader);
    facts.out_of_round = number(fields, "out_of_round", Quantity::OutOfRound, reader);
    facts.approved = period(fields, "approved", reader);
    facts.made = period(fields, "made", reader);
    facts.listed = flag(fields, "listed", reader);
    facts.serial = flag(fields, "serial", reader);
    facts.plus_marks = number(fields, "plus_marks", Quantity::PlusMarks, reader);
    facts.all_at_once = flag(fields, "all_holes_at_once", reader);
    facts.raised = flag(fields, "raised_plug", reader);
    facts.softened = flag(fields, "softened", reader);
    facts.treated_in_play = flag(fields, "treated_in_play", reader);
    facts.statics_changed = flag(fields, "statics_changed_in_play", reader);
    part(fields, "core", reader, |core, reader| {
        facts.rg = number(core, "rg", Quantity::Rg, reader);
        let node = core.take("differential");
        facts.differential = node.and_then(|node| size(node, Quantity::Differential, reader));
        let node = core.take("intermediate");
        facts.intermediate = node.and_then(|node| size(node, Quantity::Intermediate, reader));
        if let (Some(all), Some(part), Some(node)) = (facts.differential, facts.intermediate, node)
            && part > all
        {
            let all = Notation::Thousandths.write(all);
            let message = format!("the intermediate differential is more than the whole, {all}");
            reader.fault(node, "contradiction", message);
        }
        facts.high_performance = flag(core, "high_performance", reader);
        if let Some(node) = core.take("densities") {
            let nodes = reader.list(node, "the densities").unwrap_or_default();
            let densities = nodes
                .iter()
                .filter_map(|node| size(node, Quantity::Density, reader));
            facts.densities = densities.collect();
        }
        facts.pin_to_axis = number(core, "pin_to_low_axis", Quantity::PinToAxis, reader);
        facts.mark_to_axis = number(core, "mark_to_high_axis", Quantity::MarkToAxis, reader);
    });
    part(fields, "cover", reader, |cover, reader| {
        let kinds = ["polyester", "urethane", "reactive"];
        let kind = cover.take("kind");
        let kind = kind.and_then(|node| reader.choice(node, "the cover", &kinds));
        facts.cover = kind.map(|at| match at {
            0 => CoverKind::Polyester,
            1 => CoverKind::Urethane,
            _ => CoverKind::Reactive,
        });
        facts.friction = number(cover, "friction", Quantity::Friction, reader);
        facts.roughness = number(cover, "roughness", Quantity::Roughness, reader);
        facts.absorption = number(cover, "absorption", Quantity::Absorption, reader);
        facts.hardness_approved = number(
            cover,
            "hardness_at_approval",
            Quantity::ApprovedHardness,
            reader,
        );
        facts.hardness_measured =
            number(cover, "hardness_measured", Quantity::FieldHardness, reader);
    });
    part(fields, "house_ball", reader, |house, reader| {
        facts.house_supplied = flag(house, "supplied_by_centre", reader);
        facts.house_fitted = flag(house, "fitted_to_bowler", reader);
        facts.house_left_behind = flag(house, "left_by_customer", reader);
    });
    if let Some(node) = fields.take("holes") {
        facts.holes = Some(holes(node, reader));
    }
    part(fields, "statics", reader, |statics, reader| {
        facts.top = signed(statics, ["top", "bottom"], Quantity::Top, reader);
        facts.side = signed(statics, ["side", "track_side"], Quantity::Side, reader);
        facts.finger = signed(statics, ["finger", "thumb"], Quantity::Finger, reader);
        facts.halves = number(statics, "any_two_halves", Quantity::Halves, reader);
    });
}

/// A map within the ball, if it is there.
fn part<'d>(
    fields: &mut Fields<'d>,
    key: &'static str,
    reader: &mut Reader<'d>,
    read: impl FnOnce(&mut Fields<'d>, &mut Reader<'d>),
) {
    let node = fields.take(key);
    if let Some(mut part) = node.and_then(|node| reader.fields(node, key)) {
        read(&mut part, reader);
        part.close(reader);
    }
}

fn holes<'d>(node: &'d Node, reader: &mut Reader<'d>) -> Vec<HoleFacts> {
    let nodes = reader.list(node, "the holes").unwrap_or_default();
    if nodes.len() > MOST_HOLES {
        let message = format!("{} holes are more than a ball has room for", nodes.len());
        reader.fault(node, "out-of-range", message);
        return Vec::new();
    }
    let mut holes = Vec::new();
    for node in nodes {
        let Some(mut fields) = reader.fields(node, "a hole") else {
            continue;
        };
        let hole = hole(&mut fields, reader);
        fields.close(reader);
        holes.extend(hole);
    }
    holes
}

fn hole<'d>(fields: &mut Fields<'d>, reader: &mut Reader<'d>) -> Option<HoleFacts> {
    let purposes = ["vent", "mill", "balance"];
    let digits = Digit::ALL.map(|(word, _)| word);
    let names: Vec<&str> = digits.iter().chain(&purposes).copied().collect();
    let purpose = fields.require("for", reader);
    let purpose = purpose.and_then(|node| reader.choice(node, "what the hole is for", &names));
    let digit = |at: usize| Digit::ALL.get(at).map(|(_, digit)| *digit);
    let of = fields.take("of");
    let whose = of.and_then(|node| reader.choice(node, "whose vent it is", &digits));
    let kind = purpose.and_then(|at| match (digit(at), names.get(at).copied()) {
        (Some(digit), _) => Some(HoleKind::Grip(digit)),
        (None, Some("vent")) => Some(HoleKind::Vent(whose.and_then(digit))),
        (None, Some("mill")) => Some(HoleKind::Mill),
        (None, Some(_)) => Some(HoleKind::Balance),
        (None, None) => None,
    });
    if let (Some(node), Some(kind)) = (of, kind)
        && !matches!(kind, HoleKind::Vent(_))
    {
        reader.fault(node, "contradiction", "only a vent is `of` another hole");
    }
    // Words for faults don't hang on the kind of hole.
    let diameter = number(fields, "diameter", Quantity::GripDiameter, reader);
    let mouth = number(fields, "mouth", Quantity::GripDiameter, reader);
    let depth = number(fields, "depth", Quantity::GripDepth, reader);
    let used = flag(fields, "used", reader);
    let plugged = flag(fields, "plugged", reader);
    let hidden = flag(fields, "hidden_hole", reader);
    let insert = flag(fields, "insert", reader);
    Some(HoleFacts {
        diameter,
        mouth,
        depth,
        used,
        plugged: plugged == Some(true),
        hidden: hidden == Some(true),
        insert: insert == Some(true),
        ..HoleFacts::new(kind?)
    })
}

fn number<'d>(
    fields: &mut Fields<'d>,
    key: &'static str,
    quantity: Quantity,
    reader: &mut Reader<'d>,
) -> Option<i64> {
    let node = fields.take(key)?;
    size(node, quantity, reader)
}

fn size<'d>(node: &'d Node, quantity: Quantity, reader: &mut Reader<'d>) -> Option<i64> {
    let what = quantity.about();
    let steps = reader.value(node, what, |text| quantity.unit().read(text))?;
    if steps < 0 {
        reader.fault(node, "out-of-range", format!("{what} is less than nothing"));
        return None;
    }
    if steps == 0 && quantity.is_never_nothing() {
        let message = format!("{what} can't be nothing");
        let help = "leave out what wasn't measured";
        reader.fault_with_help(node, "out-of-range", message, help);
        return None;
    }
    Some(steps)
}

/// The heavier half and by how much: the first key counts up, the second down.
fn signed<'d>(
    fields: &mut Fields<'d>,
    [up, down]: [&'static str; 2],
    quantity: Quantity,
    reader: &mut Reader<'d>,
) -> Option<i64> {
    let (up_node, down_node) = (fields.take(up), fields.take(down));
    if let (Some(_), Some(node)) = (up_node, down_node) {
        let message = format!("`{up}` and `{down}` are the two signs of one weight; give one");
        reader.fault(node, "contradiction", message);
    }
    match (up_node, down_node) {
        (Some(node), _) => size(node, quantity, reader),
        (None, Some(node)) => size(node, quantity, reader).map(|steps| -steps),
        (None, None) => None,
    }
}

fn flag<'d>(fields: &mut Fields<'d>, key: &'static str, reader: &mut Reader<'d>) -> Option<bool> {
    let node = fields.take(key)?;
    reader.flag(node, &format!("`{key}`"))
}

fn period<'d>(
    fields: &mut Fields<'d>,
    key: &'static str,
    reader: &mut Reader<'d>,
) -> Option<Period> {
    let node = fields.take(key)?;
    reader.value(node, &format!("`{key}`"), Period::read)
}
