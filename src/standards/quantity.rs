//! What a rule book limits: names, units and words. No limit stands here.

use super::unit::Unit;
use crate::notation::Notation;

const BALL_WEIGHT: Unit = Unit::Trade(Notation::Weight);
const SIZE: Unit = Unit::Trade(Notation::Fine);
const TURNING: Unit = Unit::Trade(Notation::Thousandths);
const STATIC: Unit = Unit::Trade(Notation::Ounces);
const HOLES: Unit = Unit::Trade(Notation::Counted("hole", "holes"));
const MARKS: Unit = Unit::Trade(Notation::Counted("mark", "marks"));
const SHORE: Unit = Unit::Decimal(1, "Shore D", &["D"]);

/// What is asked where a number is missing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Missing {
    /// This must be known to judge a ball; the sentence says what to measure.
    Ask(&'static str),
    /// Judged if it is stated. The body measured it at approval, or it is nothing a shop measures.
    Skip,
}

use Missing::{Ask, Skip};

/// Makes the quantities and their table from one list: variant, word, words for people, unit, what if missing.
macro_rules! quantities {
    ($($variant:ident, $word:literal, $about:literal, $unit:expr, $missing:expr;)*) => {
        /// What a row of the table limits. Findings come in this order.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub(super) enum Quantity { $($variant),* }

        impl Quantity {
            /// Every quantity, in the order of findings.
            pub(super) const ALL: &'static [Quantity] = &[$(Quantity::$variant),*];
            /// The words of all, in the same order.
            pub(super) const WORDS: &'static [&'static str] = &[$($word),*];

            /// As the table writes it.
            pub(super) fn word(self) -> &'static str {
                match self { $(Quantity::$variant => $word),* }
            }

            /// As people read it.
            pub(super) fn about(self) -> &'static str {
                match self { $(Quantity::$variant => $about),* }
            }

            /// How it is written.
            pub(super) fn unit(self) -> Unit {
                match self { $(Quantity::$variant => $unit),* }
            }

            /// What is asked where it is missing.
            pub(super) fn missing(self) -> Missing {
                match self { $(Quantity::$variant => $missing),* }
            }
        }
    };
}

quantities! {
    Listed, "on-approved-list", "the approved list", Unit::Flag, Ask("Look the ball up on the approved list.");
    Serial, "serial-number", "the serial number", Unit::Flag, Skip;
    Made, "made", "the day it was made", Unit::Day, Ask("Find out when the ball was made.");
    Weight, "weight", "weight", BALL_WEIGHT, Ask("Weigh the ball as it is used.");
    Diameter, "diameter", "diameter", SIZE, Skip;
    Circumference, "circumference", "circumference", SIZE, Skip;
    OutOfRound, "out-of-round", "out of round", SIZE, Skip;
    Density, "component-density", "density of a component", Unit::Trade(Notation::Density), Skip;
    Rg, "rg", "RG", TURNING, Skip;
    Differential, "differential", "differential", TURNING, Skip;
    Intermediate, "intermediate", "intermediate differential", TURNING, Skip;
    Friction, "friction", "coefficient of friction", Unit::Decimal(3, "", &[]), Skip;
    Roughness, "roughness", "roughness at approval", Unit::Decimal(1, "µin", &["uin"]), Skip;
    Absorption, "absorption", "oil absorption", Unit::Time, Skip;
    ApprovedHardness, "hardness-at-approval", "hardness at approval", SHORE, Skip;
    FieldHardness, "hardness-measured", "hardness as measured", SHORE, Skip;
    SlowBall, "slow-absorbing", "a slowly absorbing ball with a high-performance core", Unit::Flag, Skip;
    PinToAxis, "pin-to-low-axis", "low-RG axis from the pin", SIZE, Skip;
    MarkToAxis, "mark-to-high-axis", "high-RG axis from its mark", SIZE, Skip;
    GripHoles, "gripping-holes", "gripping holes", HOLES, Ask("List every hole that isn't plugged.");
    HolesPerDigit, "holes-per-digit", "holes for one digit", HOLES, Skip;
    GripDiameter, "gripping-hole-diameter", "diameter of a gripping hole", SIZE, Ask("Measure the hole as cut, outside of slug, sleeve or insert.");
    GripDepth, "gripping-hole-depth", "depth of a gripping hole", SIZE, Ask("Measure how deep the hole is.");
    UnusedHoles, "unused-holes", "holes with no digit in them at delivery", HOLES, Ask("Say of every gripping hole if a digit is in it at delivery.");
    AllAtOnce, "all-holes-at-once", "using all holes at once", Unit::Flag, Ask("Let the bowler show that all holes can be used at once with that hand.");
    HiddenHole, "hidden-hole", "a second hole inside", Unit::Flag, Skip;
    VentsPerHole, "vents-per-hole", "vent holes for one gripping hole", HOLES, Skip;
    VentDiameter, "vent-diameter", "diameter of a vent hole", SIZE, Ask("Measure the vent hole, its opening included.");
    MillHoles, "mill-holes", "mill holes", HOLES, Skip;
    MillDiameter, "mill-diameter", "diameter of the mill hole", SIZE, Ask("Measure the mill hole.");
    MillDepth, "mill-depth", "depth of the mill hole", SIZE, Ask("Measure how deep the mill hole is.");
    BalanceHoles, "balance-holes", "balance holes", HOLES, Ask("Say if the thumb is in its hole at delivery; an empty one counts as a balance hole.");
    BalanceDiameter, "balance-diameter", "diameter of a balance hole", SIZE, Ask("Measure the balance hole at its widest, mouth included.");
    BalanceInsert, "balance-insert", "an insert in a balance hole", Unit::Flag, Skip;
    HolesInAll, "holes-in-all", "holes in all", HOLES, Skip;
    PlusMarks, "plus-mark", "plus mark in the palm", MARKS, Ask("Look for the plus mark near the centre of the palm.");
    Top, "static-top", "top weight", STATIC, Ask("Weigh top against bottom on the ball scale.");
    Side, "static-side", "side weight", STATIC, Ask("Weigh right against left on the ball scale.");
    Finger, "static-finger", "finger weight", STATIC, Ask("Weigh fingers against thumb on the ball scale.");
    Halves, "static-halves", "difference of any two halves", STATIC, Ask("Weigh halves against each other on the ball scale; keep the largest difference.");
    Raised, "raised-plug", "a plug, insert or tape above the surface", Unit::Flag, Skip;
    Softened, "softened", "a chemical that changed the hardness", Unit::Flag, Skip;
    TreatedInPlay, "treated-in-play", "a surface treated during competition", Unit::Flag, Skip;
    StaticsChanged, "statics-changed-in-play", "static weight changed during competition", Unit::Flag, Skip;
    // These are never found by themselves; other findings lean on them.
    HouseDifferential, "house-ball-differential", "differential of a house ball", TURNING, Skip;
    SlowAbsorption, "slow-absorption", "absorption that counts as slow", Unit::Time, Skip;
    ThumbAsBalance, "thumb-hole-as-balance-hole", "an unused thumb hole that counts as a balance hole", Unit::Flag, Skip;
}

impl Quantity {
    /// Whether a ball or hole without it isn't there at all, so that a zero stands for "not measured" and keeps no limit.
    pub(super) fn is_never_nothing(self) -> bool {
        matches!(
            self,
            Quantity::Weight
                | Quantity::Diameter
                | Quantity::Circumference
                | Quantity::Density
                | Quantity::Rg
                | Quantity::GripDiameter
                | Quantity::GripDepth
        )
    }

    /// Whether other findings lean on it, and none is made of it.
    pub(super) fn is_reference(self) -> bool {
        matches!(
            self,
            Quantity::HouseDifferential | Quantity::SlowAbsorption | Quantity::ThumbAsBalance
        )
    }
}
