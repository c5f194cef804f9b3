//! What earlier stages have settled, and the measures already worked out.

use super::answers::{INCH, POUND, number};
use super::words;
use crate::notation::Notation::{
    Angle, Count, ForwardPitch, HoleSize, LateralPitch, Length, Money, Weight,
};
use crate::rules::{Fact, Kind, Origin};

pub(super) fn settled(
    name: &'static str,
    meaning: &'static str,
    kind: Kind,
    from: &'static str,
) -> Fact {
    Fact {
        name,
        meaning,
        kind,
        origin: Origin::Settled,
        from,
        subject: None,
    }
}

/// Choices of the earlier stages.
pub(super) fn choices() -> Vec<Fact> {
    vec![
        settled(
            "settled.weight",
            "the weight that was settled",
            number(Weight, 6 * POUND, 16 * POUND),
            "the weight stage",
        ),
        settled(
            "settled.grip",
            "the grip that was settled",
            Kind::Choice(words::GRIPS),
            "the grip stage",
        ),
        settled(
            "settled.sleeve",
            "the fitter settled on a thumb sleeve that can be changed",
            Kind::Flag,
            "what the fitter has settled",
        ),
        settled(
            "settled.cover",
            "cover of the chosen ball",
            Kind::Choice(words::COVERS),
            "the ball stage",
        ),
        settled(
            "settled.core",
            "core shape of the chosen ball",
            Kind::Choice(words::CORES),
            "the ball stage",
        ),
        settled(
            "settled.layout",
            "the layout that was settled",
            Kind::Choice(words::LAYOUTS),
            "the layout stage",
        ),
    ]
}

/// What this shop charges for work that a reason may speak of.
pub(super) fn prices() -> Vec<Fact> {
    let money = || number(Money, 0, 200_000);
    let list = "the shop's price list";
    vec![
        settled(
            "price.plug",
            "filling one old hole, with tax",
            money(),
            list,
        ),
        settled(
            "price.inserts",
            "a pair of finger inserts, before tax",
            money(),
            list,
        ),
        settled(
            "price.redrill",
            "filling all holes and drilling the ball again for fingertip, with inserts, slug and tax",
            money(),
            list,
        ),
    ]
}

/// What is known of an old ball that is brought.
pub(super) fn used() -> Vec<Fact> {
    vec![
        settled(
            "used.open_holes",
            "old holes of the ball brought that are still open",
            number(Count, 0, 3),
            "the fit card and the used ball",
        ),
        settled(
            "used.plain_over",
            "how much more a new plain ball comes to than plugs and new holes",
            number(Money, -200_000, 200_000),
            "the two quotes",
        ),
        settled(
            "used.weight_over",
            "how much heavier the ball brought is than the weight that suits",
            number(Weight, -16 * POUND, 16 * POUND),
            "the ball brought and the weight stage",
        ),
    ]
}

/// What it means for a measure that no rule starts it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoStart {
    /// Something wasn't measured; the number stays blank.
    Missing,
    /// The ball has none if this choice has this word; else something is missing.
    NoneIn(&'static str, &'static str),
    /// The ball has none unless this flag is set; with it, something is missing.
    NoneUnless(&'static str),
}

/// One measure: its id, the fact that carries its result on, and which drillings have it at all.
#[derive(Debug)]
pub struct Measure {
    /// The subject's id in the rules.
    pub id: &'static str,
    /// The fact by which later measures see the result.
    pub fact: Fact,
    /// What the fitter does if this alone is missing.
    pub ask: &'static str,
    /// What it means that no rule starts it.
    pub no_start: NoStart,
    /// Choices a ball must have for the measure to make sense, as fact and word.
    pub only: &'static [(&'static str, &'static str)],
}

const THUMB: &[(&str, &str)] = &[("bowler.thumb", "in")];
const PIN: &[(&str, &str)] = &[("settled.layout", "pin_from_grip")];
const PAP: &[(&str, &str)] = &[("settled.layout", "pin_from_PAP")];
const PAP_AND_MASS_BIAS: &[(&str, &str)] = &[
    ("settled.layout", "pin_from_PAP"),
    ("settled.core", "asymmetric"),
];
const ALWAYS: &[(&str, &str)] = &[];

/// Which drillings have a measure: a ball without a thumb hole has no span.
fn only(id: &str) -> &'static [(&'static str, &'static str)] {
    match id {
        "pin.from_grip" | "pin.direction" => PIN,
        "pin.from_pap" | "pin.val_angle" => PAP,
        "pin.drilling_angle" => PAP_AND_MASS_BIAS,
        _ if id.starts_with("thumb.") || id.ends_with("span") => THUMB,
        _ => ALWAYS,
    }
}

/// Conventional holes are bored into the ball itself, unless there is a sleeve, or the card that is copied has a slug or
/// inserts. A round thumb hole has nothing of an oval.
fn no_start(id: &str) -> NoStart {
    match id {
        "thumb.slug" => NoStart::NoneUnless("fit.has_slug"),
        "middle.insert" | "ring.insert" => NoStart::NoneIn("settled.grip", "conventional"),
        _ if id.starts_with("thumb.oval_") => NoStart::NoneUnless("fit.has_oval"),
        _ => NoStart::Missing,
    }
}

/// What is missing where a measure has no start although the hand was measured.
fn ask(id: &str) -> &'static str {
    match id {
        "thumb.oval_wide" | "thumb.oval_narrow" => "Gauge the thumb the wide and the narrow way.",
        "thumb.oval_angle" => "Mark on the hand how far the oval is turned.",
        "thumb.depth" => "Measure the length of the thumb.",
        "middle.depth" | "ring.depth" => "Measure how deep the fingers reach.",
        "middle.span" => "Measure the span to the middle finger in this grip.",
        "ring.span" => "Measure the span to the ring finger in this grip.",
        "middle.cut_span" | "ring.cut_span" => {
            "It follows from the full span and the sizes of slug and insert."
        }
        "thumb.forward_pitch" => "Measure the span, then judge the thumb's pitch.",
        "thumb.lateral_pitch" => "See where the relaxed thumb points.",
        "pin.from_pap" | "pin.val_angle" | "pin.drilling_angle" => {
            "Measure the PAP after 10 to 20 games."
        }
        "thumb.slug" | "middle.insert" | "ring.insert" => {
            "Ask the supplier which outside sizes there are."
        }
        _ => "Measure the hand.",
    }
}

/// The measures in the order they are worked out. A later one may use an earlier one's result by its fact.
pub fn measures() -> Vec<Measure> {
    let row = |id, name, meaning, kind| Measure {
        id,
        fact: settled(name, meaning, kind, "worked out just before"),
        ask: ask(id),
        no_start: no_start(id),
        only: only(id),
    };
    let bore = || number(HoleSize, 0, 110);
    let length = || number(Length, 0, 10 * INCH);
    let angle = || number(Angle, 0, 1800);
    let forward = || number(ForwardPitch, -2 * INCH, 2 * INCH);
    let lateral = || number(LateralPitch, -2 * INCH, 2 * INCH);
    vec![
        row(
            "thumb.clearance",
            "fit.thumb.clearance",
            "what is added to the thumb's gauge size",
            number(HoleSize, -10, 20),
        ),
        row(
            "thumb.bore",
            "fit.thumb.bore",
            "thumb hole to start from",
            bore(),
        ),
        row(
            "thumb.oval_wide",
            "fit.thumb.oval_wide",
            "thumb hole the wide way, of an oval",
            bore(),
        ),
        row(
            "thumb.oval_narrow",
            "fit.thumb.oval_narrow",
            "thumb hole the narrow way, of an oval",
            bore(),
        ),
        row(
            "thumb.oval_angle",
            "fit.thumb.oval_angle",
            "how far the oval is turned, from straight across, counter-clockwise as one looks at the ball",
            number(Angle, 0, 1800),
        ),
        row(
            "thumb.slug",
            "fit.thumb.slug",
            "outside of the thumb slug or sleeve",
            bore(),
        ),
        row(
            "middle.bore",
            "fit.middle.bore",
            "middle finger bore",
            bore(),
        ),
        row("ring.bore", "fit.ring.bore", "ring finger bore", bore()),
        row(
            "middle.insert",
            "fit.middle.insert",
            "outside of the middle finger's insert",
            bore(),
        ),
        row(
            "ring.insert",
            "fit.ring.insert",
            "outside of the ring finger's insert",
            bore(),
        ),
        row(
            "middle.span",
            "fit.middle.span",
            "full span to the middle finger",
            length(),
        ),
        row(
            "ring.span",
            "fit.ring.span",
            "full span to the ring finger",
            length(),
        ),
        row(
            "middle.cut_span",
            "fit.middle.cut_span",
            "cut-to-cut span to the middle finger",
            length(),
        ),
        row(
            "ring.cut_span",
            "fit.ring.cut_span",
            "cut-to-cut span to the ring finger",
            length(),
        ),
        row(
            "bridge",
            "fit.bridge",
            "bridge between the finger holes as drilled",
            length(),
        ),
        row(
            "thumb.forward_pitch",
            "fit.thumb.forward_pitch",
            "thumb pitch, forward or reverse",
            forward(),
        ),
        row(
            "thumb.lateral_pitch",
            "fit.thumb.lateral_pitch",
            "thumb pitch to the side",
            lateral(),
        ),
        row(
            "middle.forward_pitch",
            "fit.middle.forward_pitch",
            "middle finger pitch, forward or reverse",
            forward(),
        ),
        row(
            "ring.forward_pitch",
            "fit.ring.forward_pitch",
            "ring finger pitch, forward or reverse",
            forward(),
        ),
        row(
            "middle.lateral_pitch",
            "fit.middle.lateral_pitch",
            "middle finger pitch to the side",
            lateral(),
        ),
        row(
            "ring.lateral_pitch",
            "fit.ring.lateral_pitch",
            "ring finger pitch to the side",
            lateral(),
        ),
        row(
            "middle.depth",
            "fit.middle.depth",
            "depth of the middle finger hole",
            length(),
        ),
        row(
            "ring.depth",
            "fit.ring.depth",
            "depth of the ring finger hole",
            length(),
        ),
        row(
            "thumb.depth",
            "fit.thumb.depth",
            "depth of the thumb hole",
            length(),
        ),
        row(
            "thumb.bevel",
            "fit.thumb.bevel",
            "bevel radius at the front of the thumb hole",
            length(),
        ),
        row(
            "finger.bevel",
            "fit.finger.bevel",
            "bevel radius of the finger holes",
            length(),
        ),
        row(
            "pin.from_grip",
            "fit.pin.from_grip",
            "how far the pin sits from the grip centre",
            length(),
        ),
        row(
            "pin.direction",
            "fit.pin.direction",
            "which way the pin sits from the grip centre, from the midline's PAP side toward the fingers",
            angle(),
        ),
        row(
            "pin.from_pap",
            "fit.pin.from_pap",
            "how far the pin sits from the PAP",
            length(),
        ),
        row(
            "pin.val_angle",
            "fit.pin.val_angle",
            "angle at the PAP from the upper VAL to the pin",
            angle(),
        ),
        row(
            "pin.drilling_angle",
            "fit.pin.drilling_angle",
            "angle at the pin from the PAP to the mass bias",
            angle(),
        ),
    ]
}
