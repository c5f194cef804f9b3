//! Where facts meet the mathematics of the fit: steps in, steps out, rounded once.

use super::answers::INCH;
use super::{Interval, Situation};
use crate::bowler::{Along, Bowler, Finger, Grip, Span, SpanKind};
use crate::fitting::{Sphere, ring, span};
use crate::rules::UNKNOWN;

fn inches(steps: i64) -> f64 {
    // Steps of a hand are far below 2^52.
    steps as f64 / INCH as f64
}

fn steps(inches: f64) -> Interval {
    let rounded = libm::round(inches * INCH as f64);
    if rounded.is_finite() && rounded.abs() < 1e9 {
        Interval::point(rounded as i64)
    } else {
        Interval::NOT_KNOWN
    }
}

/// A span as the full length along the arc, whatever it was read as.
///
/// A chord becomes an arc. A span cut to cut needs the walls of insert and slug, which only a fit card can tell; one from
/// centre to centre needs the bores. What can't be converted stays unknown.
pub(super) fn span_answer(bowler: &Bowler, name: &str) -> Option<i64> {
    let hand = |grip, finger| {
        let fits = |s: &&Span| {
            s.grip() == Some(grip) && s.finger() == finger && s.kind() == SpanKind::Full
        };
        bowler.spans().iter().find(fits).and_then(along_the_arc)
    };
    match name {
        "hand.conventional_middle_span" => hand(Grip::Conventional, Finger::Middle),
        "hand.conventional_ring_span" => hand(Grip::Conventional, Finger::Ring),
        "hand.fingertip_middle_span" => hand(Grip::Fingertip, Finger::Middle),
        "hand.fingertip_ring_span" => hand(Grip::Fingertip, Finger::Ring),
        "card.middle_span" => card_span(bowler, Finger::Middle, "card.middle_bore"),
        "card.ring_span" => card_span(bowler, Finger::Ring, "card.ring_bore"),
        _ => return None,
    }
    .map(|inches| steps(inches).value())
    .filter(|value| *value != UNKNOWN)
}

fn along_the_arc(span: &Span) -> Option<f64> {
    match span.along() {
        Along::Arc => Some(inches(span.value())),
        Along::Chord => Sphere::default().chord_to_arc(inches(span.value())).ok(),
    }
}

fn card_span(bowler: &Bowler, finger: Finger, bore: &str) -> Option<f64> {
    let span = bowler
        .card()?
        .spans()
        .iter()
        .find(|span| span.finger() == finger)?;
    let arc = along_the_arc(span)?;
    let size = |name: &str| bowler.answer(name).map(inches);
    // The span runs to the oval's edge.
    let oval = ["card.oval_wide", "card.oval_narrow", "card.oval_angle"].map(|n| bowler.answer(n));
    let bore_of = |name: &str| match (name, oval) {
        ("card.thumb_bore", [Some(wide), Some(narrow), Some(angle)]) => across(wide, narrow, angle),
        _ => size(name),
    };
    let wall = |outside: &str, bore: &str| match (size(outside), bore_of(bore)) {
        (Some(outside), Some(bore)) => span::wall(outside, bore).ok(),
        // A fingertip ball has insert and slug; one whose size the card doesn't tell has a wall nobody knows.
        (None, _) => (bowler.answer("card.grip") == Some(0)).then_some(0.0),
        (Some(_), None) => None,
    };
    match span.kind() {
        SpanKind::Full => Some(arc),
        SpanKind::Cut => span::cut_to_full(
            arc,
            wall("card.slug", "card.thumb_bore")?,
            wall("card.insert", bore)?,
        )
        .ok(),
        SpanKind::Centre => {
            let bores = (bore_of("card.thumb_bore")?, size(bore)?);
            span::centre_to_full(&Sphere::default(), arc, bores.0, bores.1).ok()
        }
    }
}

/// The size of the round hole that reaches as far toward the fingers as this oval.
fn across(wide: i64, narrow: i64, angle: i64) -> Option<f64> {
    let degrees = angle as f64 / 10.0;
    let reach = span::oval_reach(inches(wide), inches(narrow), degrees).ok()?;
    Some(2.0 * reach)
}

/// Size of the thumb hole along the span; of an oval, as far as its edge.
fn thumb_along_the_span(s: &Situation) -> Option<f64> {
    if !s.is("fit.has_oval") {
        return s.known("fit.thumb.bore").map(inches);
    }
    across(
        s.known("fit.thumb.oval_wide")?,
        s.known("fit.thumb.oval_narrow")?,
        s.known("fit.thumb.oval_angle")?,
    )
}

/// Wall of the slug toward the fingers; none where there is no slug or no bore yet. `None` while a slug has no size yet.
fn thumb_wall(s: &Situation) -> Option<f64> {
    if !s.get("fit.thumb.slug").is_known() || !s.get("fit.thumb.bore").is_known() {
        return (!is_due(s, "thumb")).then_some(0.0);
    }
    let slug = s.known("fit.thumb.slug").map(inches)?;
    span::wall(slug, thumb_along_the_span(s)?).ok()
}

/// The widest of the thumb hole: its bore, or the wide size of an oval.
pub(super) fn widest_thumb(s: &Situation) -> Interval {
    s.get("fit.has_oval")
        .choose(s.get("fit.thumb.oval_wide"), s.get("fit.thumb.bore"))
}

/// Whether a slug, sleeve or insert goes into this digit's hole, its size known or not.
pub(super) fn is_due(s: &Situation, digit: &str) -> bool {
    match digit {
        "thumb" => s.is("fit.has_slug"),
        _ => s.is_word("settled.grip", "fingertip"),
    }
}

/// Wall of an insert; none where there is none. A bore wider than its sleeve has no wall, one without a size none yet.
fn wall(s: &Situation, outside: &str, bore: &str) -> Option<f64> {
    match (s.known(outside), s.known(bore)) {
        (Some(outside), Some(bore)) => span::wall(inches(outside), inches(bore)).ok(),
        (None, Some(_)) if is_due(s, "finger") => None,
        _ => Some(0.0),
    }
}

/// Cut-to-cut span: full less the walls of insert and slug.
pub(super) fn cut_span(s: &Situation, full: &str, insert: &str, bore: &str) -> Interval {
    let cut = || {
        let full = s.known(full)?;
        let finger = wall(s, insert, bore)?;
        let thumb = thumb_wall(s)?;
        span::full_to_cut(inches(full), thumb, finger).ok()
    };
    cut().map_or(Interval::NOT_KNOWN, steps)
}

/// Crease differences that leave both spans on the ball alike: 5/16 to 3/8 in. Kase Kazumi, drilling
/// lecture vol. 3, BBM bowling magazine, 2018-09-12.
const LEVEL_CREASES: (f64, f64) = (5.0 / 16.0, 3.0 / 8.0);

/// Ring span from the middle span and how far the middle crease leads.
pub(super) fn ring_span(middle: Interval, difference: Interval) -> Interval {
    match (middle.value(), difference.value()) {
        (UNKNOWN, _) | (_, UNKNOWN) => Interval::NOT_KNOWN,
        (middle, difference) => ring::ring_span(inches(middle), inches(difference), LEVEL_CREASES)
            .map_or(Interval::NOT_KNOWN, steps),
    }
}

/// Wall left of the thumb slug where it is thinnest.
pub(super) fn slug_wall(s: &Situation) -> Interval {
    s.get("fit.thumb.slug")
        .minus(s.get("fit.thumb.widest"))
        .rising(|both_walls| both_walls.div_euclid(2))
}
