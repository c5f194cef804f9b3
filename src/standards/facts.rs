//! What is known of a ball that is to be judged. Everything may be unknown.

use super::date::Period;

/// What is known of one ball. Start from [`BallFacts::default`], which knows nothing, and fill in.
#[non_exhaustive]
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct BallFacts {
    /// What it is called in the answer.
    pub name: Option<String>,
    /// Weight as it is used, in 0.01 lb.
    pub weight: Option<i64>,
    /// Diameter, in 1/8000 in.
    pub diameter: Option<i64>,
    /// Circumference, in 1/8000 in. Not judged beside a diameter, since the printed limits of both differ by a hair.
    pub circumference: Option<i64>,
    /// Largest difference between two diameters, in 1/8000 in.
    pub out_of_round: Option<i64>,
    /// When the body approved it.
    pub approved: Option<Period>,
    /// Whether it is on the approved list now.
    pub listed: Option<bool>,
    /// Whether it bears a serial number.
    pub serial: Option<bool>,
    /// When it was made.
    pub made: Option<Period>,
    /// Lowest RG, in 0.001 in.
    pub rg: Option<i64>,
    /// Highest less lowest RG, in 0.001 in.
    pub differential: Option<i64>,
    /// Intermediate differential, in 0.001 in.
    pub intermediate: Option<i64>,
    /// Whether it has what the body calls a high-performance core.
    pub high_performance: Option<bool>,
    /// Density of each component that is known, in 0.001 g/mL.
    pub densities: Vec<i64>,
    /// What the cover is made of.
    pub cover: Option<CoverKind>,
    /// Coefficient of friction, in 0.001.
    pub friction: Option<i64>,
    /// Roughness Ra of a sample at approval, in 0.1 microinch.
    pub roughness: Option<i64>,
    /// Time to absorb the test's drop of oil, in seconds.
    pub absorption: Option<i64>,
    /// Hardness at approval, in 0.1 Shore D.
    pub hardness_approved: Option<i64>,
    /// Hardness of this very ball, measured later, in 0.1 Shore D.
    pub hardness_measured: Option<i64>,
    /// Distance of the low-RG axis from the pin's centre, in 1/8000 in.
    pub pin_to_axis: Option<i64>,
    /// Distance of the high-RG axis from its mark's centre, in 1/8000 in.
    pub mark_to_axis: Option<i64>,
    /// How many plus marks show how it is held.
    pub plus_marks: Option<i64>,
    /// Every hole; an empty list is a ball without holes.
    pub holes: Option<Vec<HoleFacts>>,
    /// Whether the bowler can use all gripping holes at once with one hand.
    pub all_at_once: Option<bool>,
    /// Top less bottom, in 0.01 oz: positive is heavier on the grip's side.
    pub top: Option<i64>,
    /// Right less left, in 0.01 oz: positive is heavier on the side of the positive axis point (right of the grip for a
    /// right-hander).
    pub side: Option<i64>,
    /// Finger less thumb, in 0.01 oz: positive is heavier on the finger side.
    pub finger: Option<i64>,
    /// Largest difference between any two halves of a ball without holes, in 0.01 oz.
    pub halves: Option<i64>,
    /// Whether the centre that hosts the event supplied it.
    pub house_supplied: Option<bool>,
    /// Whether it was drilled for this bowler.
    pub house_fitted: Option<bool>,
    /// Whether a customer left it behind.
    pub house_left_behind: Option<bool>,
    /// Whether a plug, insert or tape stands above the surface.
    pub raised: Option<bool>,
    /// Whether a chemical changed its hardness after it was made.
    pub softened: Option<bool>,
    /// Whether its surface was treated during competition.
    pub treated_in_play: Option<bool>,
    /// Whether its static weight was changed during competition.
    pub statics_changed: Option<bool>,
}

/// What a cover is made of, as far as a rule book asks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum CoverKind {
    /// Polyester.
    Polyester,
    /// Plain urethane.
    Urethane,
    /// Reactive urethane of any kind.
    Reactive,
}

/// What a hole is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum HoleKind {
    /// A gripping hole or indentation.
    Grip(Digit),
    /// A vent hole of a gripping hole, if it is known of which.
    Vent(Option<Digit>),
    /// A hole for inspection.
    Mill,
    /// A balance hole.
    Balance,
}

/// A thumb or finger.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Digit {
    /// The thumb.
    Thumb,
    /// The index finger.
    Index,
    /// The middle finger.
    Middle,
    /// The ring finger.
    Ring,
    /// The little finger.
    Little,
}

impl Digit {
    /// Every digit with its word.
    pub(super) const ALL: [(&'static str, Digit); 5] = [
        ("thumb", Digit::Thumb),
        ("index", Digit::Index),
        ("middle", Digit::Middle),
        ("ring", Digit::Ring),
        ("little", Digit::Little),
    ];

    /// As files and people write it.
    pub(super) fn word(self) -> &'static str {
        match self {
            Digit::Thumb => "thumb",
            Digit::Index => "index",
            Digit::Middle => "middle",
            Digit::Ring => "ring",
            Digit::Little => "little",
        }
    }
}

/// What is known of one hole.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HoleFacts {
    /// What it is for.
    pub kind: HoleKind,
    /// Diameter as cut, outside of slug, interchangeable sleeve or insert, in 1/8000 in.
    pub diameter: Option<i64>,
    /// Diameter at the mouth if it differs, in 1/8000 in.
    pub mouth: Option<i64>,
    /// Depth, in 1/8000 in.
    pub depth: Option<i64>,
    /// Whether a digit is in it on every delivery.
    pub used: Option<bool>,
    /// Whether it is plugged; it is no hole any more then.
    pub plugged: bool,
    /// Whether it hides a smaller hole that isn't for gripping or venting.
    pub hidden: bool,
    /// Whether it holds an insert.
    pub insert: bool,
}

impl HoleFacts {
    /// A hole of which nothing else is known.
    #[must_use]
    pub fn new(kind: HoleKind) -> HoleFacts {
        HoleFacts {
            kind,
            diameter: None,
            mouth: None,
            depth: None,
            used: None,
            plugged: false,
            hidden: false,
            insert: false,
        }
    }

    /// The widest it is anywhere, if its diameter is known.
    pub(super) fn widest(&self) -> Option<i64> {
        self.diameter
            .map(|diameter| self.mouth.map_or(diameter, |mouth| mouth.max(diameter)))
    }
}
