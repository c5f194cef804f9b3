//! The units each notation reads, and the words for its two directions.

use super::Notation;

/// A unit: its spellings, and how many steps it is (top, bottom).
pub(super) type Unit = (&'static [&'static str], (i128, i128));

const INCH: &[&str] = &["in", "inch", "inches", "\""];
const INCHES: &[Unit] = &[
    (INCH, (64, 1)),
    (&["mm"], (640, 254)),
    (&["cm"], (6400, 254)),
];
const THOUSANDTHS: &[Unit] = &[
    (INCH, (1000, 1)),
    (&["mm"], (10_000, 254)),
    (&["cm"], (100_000, 254)),
];
const FINE: &[Unit] = &[
    (INCH, (8000, 1)),
    (&["mm"], (80_000, 254)),
    (&["cm"], (800_000, 254)),
];
const POUNDS: &[Unit] = &[
    (&["lb", "lbs", "pound", "pounds"], (100, 1)),
    (&["oz", "ounce", "ounces"], (100, 16)),
    (&["kg"], (10_000_000_000, 45_359_237)),
    (&["g"], (10_000_000, 45_359_237)),
];
const OUNCES: &[Unit] = &[
    (&["oz", "ounce", "ounces"], (100, 1)),
    (&["g"], (160_000_000, 45_359_237)),
];
const SPEEDS: &[Unit] = &[
    (&["mph"], (10, 1)),
    (&["km/h", "kmh", "kph"], (10_000_000, 1_609_344)),
    (&["m/s"], (36_000_000, 1_609_344)),
];
const RATES: &[Unit] = &[(&["rpm"], (1, 1))];
const ANGLES: &[Unit] = &[(&["deg", "degree", "degrees", "°"], (10, 1))];
/// Grams in a cubic centimetre; a millilitre is the same.
const DENSITIES: &[Unit] = &[(&["g/cc", "g/ml", "g/cm³"], (1000, 1))];
const PERCENTS: &[Unit] = &[(&["%", "percent"], (1, 1))];
const FEET: &[Unit] = &[
    (&["ft", "foot", "feet"], (10, 1)),
    (&["m"], (100_000, 3048)),
];
const BOARDS: &[Unit] = &[(&["boards", "board"], (10, 1))];
const COEFFICIENTS: &[Unit] = &[(&[], (1000, 1))];
const POINTS: &[Unit] = &[(&["point", "points"], (10, 1))];
const DOLLARS: &[Unit] = &[(&["$", "dollar", "dollars"], (100, 1))];
const PLAIN: &[Unit] = &[(&[], (1, 1))];

/// The units a notation reads; the first is meant when none is written.
pub(super) fn units(notation: Notation) -> &'static [Unit] {
    match notation {
        Notation::Count | Notation::Counted(..) => PLAIN,
        Notation::Points => POINTS,
        Notation::Money => DOLLARS,
        Notation::Weight => POUNDS,
        Notation::Ounces => OUNCES,
        Notation::Speed => SPEEDS,
        Notation::Rate => RATES,
        Notation::Length
        | Notation::HoleSize
        | Notation::ForwardPitch
        | Notation::LateralPitch
        | Notation::UpDown => INCHES,
        Notation::Thousandths => THOUSANDTHS,
        Notation::Fine => FINE,
        Notation::Angle => ANGLES,
        Notation::Density => DENSITIES,
        Notation::Percent => PERCENTS,
        Notation::Feet => FEET,
        Notation::Boards => BOARDS,
        Notation::Coefficient => COEFFICIENTS,
    }
}

/// The words for above and below zero. The first of each is printed.
pub(super) struct Ways {
    pub(super) above: &'static [&'static str],
    pub(super) below: &'static [&'static str],
    /// Whether a number above zero must say which way.
    pub(super) needed: Option<&'static str>,
}

/// The directions of a notation.
pub(super) fn ways(notation: Notation) -> Ways {
    match notation {
        Notation::ForwardPitch => Ways {
            above: &["F", "forward"],
            below: &["R", "reverse"],
            needed: Some("say which way: F for forward, R for reverse"),
        },
        Notation::LateralPitch => Ways {
            above: &["R", "right"],
            below: &["L", "left"],
            needed: Some("say which way: R for right, L for left"),
        },
        Notation::UpDown => Ways {
            above: &["up"],
            below: &["down"],
            needed: Some("say which way: up or down"),
        },
        Notation::Money => Ways {
            above: &["over", "more"],
            below: &["under", "less"],
            needed: None,
        },
        Notation::Points => Ways {
            above: &["for"],
            below: &["against"],
            needed: None,
        },
        Notation::Count | Notation::Counted(..) => Ways {
            above: &["more"],
            below: &["fewer", "less"],
            needed: None,
        },
        _ => Ways {
            above: &["more", "over"],
            below: &["less", "under"],
            needed: None,
        },
    }
}

/// What a reader of a notation hopes for, with examples.
pub(super) fn hope(notation: Notation) -> String {
    let text = match notation {
        Notation::Count => "a whole number such as `3`",
        Notation::Counted(_, many) => return format!("a whole number such as `3` or `3 {many}`"),
        Notation::Points => "points such as `14`, `-2.5` or `0`",
        Notation::Money => "an amount such as `$129` or `$1,299.50`",
        Notation::Weight => "a weight such as `12 lb`, `12 lb 4 oz` or `5.4 kg`",
        Notation::Ounces => "a small weight such as `2 1/2 oz` or `70 g`",
        Notation::Speed => "a speed such as `16 mph` or `25.7 km/h`",
        Notation::Rate => "turns a minute such as `300 rpm`",
        Notation::Length => "a length such as `4 3/8`, `4.375 in` or `111 mm`",
        Notation::HoleSize => "a hole size such as `25/32`, `1 1/64 in` or `20 mm`",
        Notation::ForwardPitch => "a pitch such as `3/8 F`, `1/4 R` or `0`",
        Notation::LateralPitch => "a pitch such as `1/8 R`, `1/4 L` or `0`",
        Notation::UpDown => "a distance such as `1/2 up`, `1/4 down` or `0`",
        Notation::Thousandths => "thousandths of an inch such as `2.500` or `0.048 in`",
        Notation::Fine => "a size such as `1 9/16 in`, `8.595` or `218.3 mm`",
        Notation::Angle => "an angle such as `10 degrees` or `12.5`",
        Notation::Density => "a density such as `1.2 g/cc`",
        Notation::Percent => "a percentage such as `40%`",
        Notation::Feet => "a distance along the lane such as `38.5 ft` or `12 m`",
        Notation::Boards => "a number of boards such as `2.5 boards`",
        Notation::Coefficient => "a coefficient of friction such as `0.04`",
    };
    text.to_owned()
}
