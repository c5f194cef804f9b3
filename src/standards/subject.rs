//! What of a ball is held against each quantity.

use super::body::Body;
use super::date::{Date, Period};
use super::facts::{BallFacts, Digit, HoleFacts, HoleKind};
use super::quantity::Quantity;
use super::situation::{Situation, balance_holes, open_holes};
use super::table::Standards;

/// Something with a value that is to keep a limit.
#[derive(Clone, Debug)]
pub(super) struct Subject {
    pub(super) about: String,
    /// Least and most it may be, as far as it is known.
    pub(super) value: Option<(i64, i64)>,
}

/// What is judged for a quantity; nothing if the ball has nothing of the kind.
pub(super) fn subjects(
    quantity: Quantity,
    facts: &BallFacts,
    situation: &Situation,
    (standards, date, body): (&Standards, Date, Body),
) -> Vec<Subject> {
    let holes = facts.holes.as_deref().unwrap_or_default();
    let open: Vec<&HoleFacts> = open_holes(holes).collect();
    let is_drilled = !open.is_empty();
    let is_bare = facts.holes.is_some() && !is_drilled;
    let one = |value: Option<i64>| vec![subject(quantity, value.map(|value| (value, value)))];
    let flag = |value: Option<bool>| one(value.map(i64::from));
    let stated = |value: Option<bool>| value.map(|is| one(Some(i64::from(is)))).unwrap_or_default();
    let period = |period: Option<Period>| {
        let ends = period.map(|days| (days.first().number(), days.last().number()));
        vec![subject(quantity, ends)]
    };
    let of = |wanted: fn(HoleKind) -> bool| open.iter().filter(move |hole| wanted(hole.kind));
    let count = |wanted: fn(HoleKind) -> bool| of(wanted).count() as i64;
    let each = |wanted: fn(HoleKind) -> bool, what: &str, value: fn(&HoleFacts) -> Option<i64>| {
        let several = of(wanted).map(|hole| Subject {
            about: format!("{}: {what}", hole_name(hole)),
            value: value(hole).map(|value| (value, value)),
        });
        several.collect::<Vec<_>>()
    };
    let if_any = |count: i64| {
        if count > 0 {
            one(Some(count))
        } else {
            Vec::new()
        }
    };
    match quantity {
        Quantity::Listed => flag(facts.listed),
        Quantity::Serial => flag(facts.serial),
        Quantity::Made => period(facts.made),
        Quantity::Weight => one(facts.weight),
        Quantity::Diameter => one(facts.diameter),
        Quantity::Circumference if facts.diameter.is_some() => Vec::new(),
        Quantity::Circumference => one(facts.circumference),
        Quantity::OutOfRound => one(facts.out_of_round),
        Quantity::Density => {
            let densities = facts.densities.iter();
            densities.flat_map(|density| one(Some(*density))).collect()
        }
        Quantity::Rg => one(facts.rg),
        Quantity::Differential => one(facts.differential),
        Quantity::Intermediate => one(facts.intermediate),
        Quantity::Friction => one(facts.friction),
        Quantity::Roughness => one(facts.roughness),
        Quantity::Absorption => one(facts.absorption),
        Quantity::ApprovedHardness => one(facts.hardness_approved),
        Quantity::FieldHardness => one(facts.hardness_measured),
        Quantity::SlowBall => stated(situation.slow.filter(|is| *is)),
        Quantity::PinToAxis => one(facts.pin_to_axis),
        Quantity::MarkToAxis => one(facts.mark_to_axis),
        Quantity::GripHoles if is_bare => Vec::new(),
        Quantity::GripHoles => one(facts.holes.is_some().then(|| count(is_grip))),
        Quantity::HolesPerDigit => if_any(most_per_digit(&open)),
        Quantity::GripDiameter => each(is_grip, "diameter", |hole| hole.diameter),
        Quantity::GripDepth => each(is_grip, "depth", |hole| hole.depth),
        Quantity::UnusedHoles if count(is_grip) == 0 => Vec::new(),
        Quantity::UnusedHoles => {
            let empty = of(is_grip).filter(|hole| hole.used == Some(false)).count() as i64;
            let unknown = of(is_grip).filter(|hole| hole.used.is_none()).count() as i64;
            vec![subject(quantity, Some((empty, empty + unknown)))]
        }
        Quantity::AllAtOnce => {
            let is_empty = |hole: &&&HoleFacts| {
                hole.used == Some(false) && hole.kind != HoleKind::Grip(Digit::Thumb)
            };
            if of(is_grip).any(|hole| is_empty(&hole)) {
                flag(facts.all_at_once)
            } else {
                Vec::new()
            }
        }
        Quantity::HiddenHole => each(
            |_| true,
            "a second hole inside",
            |hole| hole.hidden.then_some(1),
        )
        .into_iter()
        .filter(|hole| hole.value.is_some())
        .collect(),
        Quantity::VentsPerHole => if_any(vents_per_hole(&open)),
        Quantity::VentDiameter => each(is_vent, "diameter, opening included", HoleFacts::widest),
        Quantity::MillHoles => if_any(count(is_mill)),
        Quantity::MillDiameter => each(is_mill, "diameter", |hole| hole.diameter),
        Quantity::MillDepth => each(is_mill, "depth", |hole| hole.depth),
        Quantity::BalanceHoles if !is_drilled => Vec::new(),
        Quantity::BalanceHoles => {
            let range = balance_holes(holes, standards, date, body);
            vec![subject(quantity, Some(range))]
        }
        Quantity::BalanceDiameter => each(is_balance, "diameter at the widest", HoleFacts::widest),
        Quantity::BalanceInsert => {
            let inserts = each(is_balance, "an insert", |hole| hole.insert.then_some(1));
            let inserts = inserts.into_iter().filter(|hole| hole.value.is_some());
            inserts.collect()
        }
        Quantity::HolesInAll => if_any(open.len() as i64),
        Quantity::PlusMarks if count(is_grip) == 0 || situation.thumb != Some(false) => Vec::new(),
        Quantity::PlusMarks => one(facts.plus_marks),
        Quantity::Top | Quantity::Side | Quantity::Finger if is_holeless(facts) => Vec::new(),
        Quantity::Top => one(facts.top),
        Quantity::Side => one(facts.side),
        Quantity::Finger => one(facts.finger),
        Quantity::Halves if !is_holeless(facts) => Vec::new(),
        Quantity::Halves => one(facts.halves),
        Quantity::Raised => stated(facts.raised),
        Quantity::Softened => stated(facts.softened),
        Quantity::TreatedInPlay => stated(facts.treated_in_play),
        Quantity::StaticsChanged => stated(facts.statics_changed),
        Quantity::HouseDifferential | Quantity::SlowAbsorption | Quantity::ThumbAsBalance => {
            Vec::new()
        }
    }
}

/// A subject named for its quantity. Static weights lose their sign to their name: less top than nothing is bottom weight.
fn subject(quantity: Quantity, value: Option<(i64, i64)>) -> Subject {
    let is_less = value.is_some_and(|(least, _)| least < 0);
    let about = match quantity {
        Quantity::Top if is_less => "bottom weight",
        Quantity::Side if is_less => "side weight toward the track",
        Quantity::Finger if is_less => "thumb weight",
        other => other.about(),
    };
    let is_static = matches!(
        quantity,
        Quantity::Top | Quantity::Side | Quantity::Finger | Quantity::Halves
    );
    let value = match value {
        Some((least, most)) if is_static => Some((least.saturating_abs(), most.saturating_abs())),
        other => other,
    };
    Subject {
        about: about.to_owned(),
        value,
    }
}

/// Whether the ball is known or taken to have no holes: none listed, and only halves weighed.
fn is_holeless(facts: &BallFacts) -> bool {
    match &facts.holes {
        Some(holes) => open_holes(holes).next().is_none(),
        None => {
            let no_statics = [facts.top, facts.side, facts.finger]
                .into_iter()
                .all(|reading| reading.is_none());
            no_statics && facts.halves.is_some()
        }
    }
}

fn hole_name(hole: &HoleFacts) -> String {
    match hole.kind {
        HoleKind::Grip(digit) => format!("{} hole", digit.word()),
        HoleKind::Vent(Some(digit)) => format!("vent of the {} hole", digit.word()),
        HoleKind::Vent(None) => "vent hole".to_owned(),
        HoleKind::Mill => "mill hole".to_owned(),
        HoleKind::Balance => "balance hole".to_owned(),
    }
}

fn is_grip(kind: HoleKind) -> bool {
    matches!(kind, HoleKind::Grip(_))
}

fn is_vent(kind: HoleKind) -> bool {
    matches!(kind, HoleKind::Vent(_))
}

fn is_mill(kind: HoleKind) -> bool {
    kind == HoleKind::Mill
}

fn is_balance(kind: HoleKind) -> bool {
    kind == HoleKind::Balance
}

/// The most holes that one digit has.
fn most_per_digit(open: &[&HoleFacts]) -> i64 {
    let of = |digit: Digit| {
        let mine = open
            .iter()
            .filter(|hole| hole.kind == HoleKind::Grip(digit));
        mine.count() as i64
    };
    let digits = Digit::ALL.into_iter().map(|(_, digit)| of(digit));
    digits.max().unwrap_or(0)
}

/// The most vents one gripping hole must have: those said to be its own, or all shared out evenly.
fn vents_per_hole(open: &[&HoleFacts]) -> i64 {
    let count = |wanted: &dyn Fn(HoleKind) -> bool| {
        let wanted = open.iter().filter(|hole| wanted(hole.kind));
        wanted.count() as i64
    };
    let own = |digit: Digit| count(&|kind| kind == HoleKind::Vent(Some(digit)));
    let most = Digit::ALL.into_iter().map(|(_, digit)| own(digit)).max();
    let vents = count(&is_vent);
    let grips = count(&is_grip).max(1);
    most.unwrap_or(0).max((vents + grips - 1) / grips)
}
