//! Numbers of a drilling in the words of a sheet. A number that can't be written is a blank line to write on.

use super::hole::Hole;
use crate::fitting::sixty_fourths;
use crate::notation::shop_fraction;

/// To be filled in by hand.
pub(super) const BLANK: &str = "______";
/// A length above this is no length of a ball's.
const LONGEST: f64 = 99.0;

/// `1 1/8`, to the nearest sixty-fourth, without its sign.
fn fraction(inches: f64) -> Option<String> {
    (inches.abs() <= LONGEST).then(|| shop_fraction(sixty_fourths(inches).unsigned_abs()))
}

/// `1 1/8 in`.
pub(super) fn length(inches: f64) -> String {
    fraction(inches).map_or_else(|| format!("{BLANK} in"), |text| format!("{text} in"))
}

/// The same of a length that may be unknown; none where it is no length of a ball's.
pub(super) fn known(inches: Option<f64>) -> Option<String> {
    let inches = inches.filter(|inches| *inches >= 0.0)?;
    fraction(inches).map(|text| format!("{text} in"))
}

/// `3/8 in right`, or `none`'s words where there is nothing to set.
fn either(inches: f64, above: &str, below: &str, none: &str) -> String {
    let way = if inches < 0.0 { below } else { above };
    match fraction(inches) {
        None => format!("{BLANK} in"),
        Some(text) if text == "0" => none.to_owned(),
        Some(text) => format!("{text} in {way}"),
    }
}

/// `1/8 in reverse`.
pub(super) fn forward(inches: f64) -> String {
    either(inches, "forward", "reverse", "no forward pitch")
}

/// `3/8 in left`; `turn` is -1 for a left hand.
pub(super) fn lateral(inches: f64, turn: f64) -> String {
    either(inches * turn, "right", "left", "no lateral pitch")
}

/// `1/2 in right, then 2 3/4 in up`, from the grip centre.
pub(super) fn place((over, up): (f64, f64), turn: f64) -> String {
    let over = either(over * turn, "right", "left", "on the centreline");
    let up = either(up, "up", "down", "on the midline");
    format!("{over}, then {up}")
}

/// `1.25 oz`.
pub(super) fn ounces(value: f64) -> String {
    if value.is_finite() && value.abs() < 1e6 {
        // Half a hundredth is nothing, and nothing has no sign.
        format!("{:.2} oz", value.abs())
    } else {
        format!("{BLANK} oz")
    }
}

/// `0.30 oz toward the fingers`.
pub(super) fn leaning(value: f64, above: &str, below: &str) -> String {
    let text = ounces(value);
    if text == "0.00 oz" || !value.is_finite() {
        return text;
    }
    format!("{text} {}", if value < 0.0 { below } else { above })
}

/// `14.87 lb`.
pub(super) fn pounds(value: f64) -> String {
    if value.is_finite() && value.abs() < 1e6 {
        format!("{value:.2} lb")
    } else {
        format!("{BLANK} lb")
    }
}

/// `Thumb`, `Middle finger`, `Ring finger`.
pub(super) fn named(hole: &Hole<'_>) -> &'static str {
    match hole.plan.name() {
        "thumb" => "Thumb",
        "middle" => "Middle finger",
        "ring" => "Ring finger",
        _ => "Hole",
    }
}

/// What is cut and what is felt, a line each.
pub(super) fn sizes(hole: &Hole<'_>, turn: f64) -> Vec<String> {
    let put_in = if hole.is("thumb") { "slug" } else { "insert" };
    let felt = match hole.plan.oval() {
        Some((wide, narrow, _)) => format!("oval {} by {}", length(wide), length(narrow)),
        None => length(hole.plan.bore()),
    };
    let mut lines = match hole.plan.outside() {
        Some(outside) => vec![
            format!("cut {}", length(outside)),
            format!("{put_in} bore {felt}"),
        ],
        None => vec![format!("cut {felt}")],
    };
    if hole.plan.outside().is_some() {
        let wall = known(hole.plan.wall());
        lines.extend(wall.map(|wall| format!("{put_in} wall {wall}")));
    }
    if let Some((_, _, angle)) = hole.plan.oval() {
        lines.push(slant(angle, turn));
        if hole.is("thumb") {
            lines.push("span runs to the oval's edge".to_owned());
        }
    }
    lines
}

/// How the wide direction of an oval lies; the angle counts from the hole's right, counter-clockwise, of a right hand.
fn slant(angle: f64, turn: f64) -> String {
    if !(0.0..=180.0).contains(&angle) {
        return format!("wide way {BLANK}");
    }
    let (right_up, small) = (angle <= 90.0, angle.min(180.0 - angle));
    let end = if right_up == (turn > 0.0) {
        "right"
    } else {
        "left"
    };
    let small = super::canvas::number(libm::round(small * 10.0) / 10.0);
    match small.as_str() {
        "0" => "wide way straight across".to_owned(),
        "90" => "wide way straight up".to_owned(),
        _ => format!("wide way {small} degrees up to the {end}"),
    }
}

/// Both pitches, a line each; a finger's lateral also as counted from where both holes run side by side.
pub(super) fn pitches(hole: &Hole<'_>, turn: f64) -> Vec<String> {
    let mut lines = vec![
        forward(hole.plan.forward()),
        lateral(hole.plan.lateral(), turn),
    ];
    // The other way of counting, for whoever sets the machine by it.
    let parallel = hole
        .plan
        .parallel_lateral()
        .map(|inches| lateral(inches, turn));
    lines.extend(parallel.map(|words| format!("({words} from parallel)")));
    lines
}
