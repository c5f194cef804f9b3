//! Numbers of the trade, in and out.
//!
//! Inside the crate a number is a whole count of small steps: sixty-fourths of an inch, hundredths of a pound, cents.
//! So sums are exact. This module reads what a fitter writes (`4 3/8`, `111 mm`, `3/8 F`, `12 lb 4 oz`) into steps
//! and prints steps back. Reading back what was printed always gives the same steps.
//!
//! ```
//! use spanwright::notation::Notation;
//!
//! let span = Notation::Length.read("4-3/8 in")?;
//! assert_eq!(span, 280);
//! assert_eq!(Notation::Length.write(span), "4 3/8 in");
//! assert_eq!(Notation::ForwardPitch.write(-16), "1/4 R");
//! # Ok::<(), String>(())
//! ```

mod number;
mod read;
mod units;
mod write;

pub use write::{raw_fraction, shop_fraction};

/// How a number is written, and what one step of it is.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Notation {
    /// A whole number without a unit: `3`.
    Count,
    /// A whole number of things, with the word for one and for many: `12 games`.
    Counted(&'static str, &'static str),
    /// Points for or against, in tenths. The only notation that reads a sign.
    Points,
    /// Money in cents: `$1,299.50`.
    Money,
    /// Ball and body weight, in hundredths of a pound: `12.5 lb`.
    Weight,
    /// Small weights, in hundredths of an ounce: `2.5 oz`.
    Ounces,
    /// Speed in tenths of a mile an hour: `16.5 mph`.
    Speed,
    /// Turns a minute: `300 rpm`.
    Rate,
    /// Spans and distances, in sixty-fourths of an inch: `4 3/8 in`.
    Length,
    /// The size of a hole, in sixty-fourths of an inch: `25/32 in`.
    HoleSize,
    /// Forward (+) or reverse (-) pitch, in sixty-fourths of an inch: `3/8 F`, `1/4 R`.
    ForwardPitch,
    /// Pitch to the right (+) or left (-), in sixty-fourths of an inch: `1/8 R`, `1/4 L`.
    LateralPitch,
    /// Up (+) or down (-) from a line, in sixty-fourths of an inch: `1/2 up`.
    UpDown,
    /// Thousandths of an inch, as radius of gyration is given: `0.048 in`.
    Thousandths,
    /// Sizes held against a rule book, in eight-thousandths of an inch, so that sixty-fourths and thousandths are both whole:
    /// `1.5625 in`.
    Fine,
    /// Tenths of a degree: `12.5 degrees`.
    Angle,
    /// Density in thousandths of a gram in a cubic centimetre: `1.2 g/cc`.
    Density,
    /// Whole hundredths of something: `40%`.
    Percent,
    /// Along a lane, in tenths of a foot: `38.5 ft`.
    Feet,
    /// Across a lane, in tenths of a board: `2.5 boards`.
    Boards,
    /// A coefficient of friction, in thousandths: `0.024`.
    Coefficient,
}

/// The names that rule files use, with their notations. `Counted` has no name, as its words come from code.
const NAMES: [(&str, Notation); 20] = [
    ("count", Notation::Count),
    ("points", Notation::Points),
    ("money", Notation::Money),
    ("weight", Notation::Weight),
    ("ounces", Notation::Ounces),
    ("speed", Notation::Speed),
    ("rate", Notation::Rate),
    ("length", Notation::Length),
    ("hole size", Notation::HoleSize),
    ("forward pitch", Notation::ForwardPitch),
    ("lateral pitch", Notation::LateralPitch),
    ("up down", Notation::UpDown),
    ("thousandths", Notation::Thousandths),
    ("fine length", Notation::Fine),
    ("angle", Notation::Angle),
    ("density", Notation::Density),
    ("percent", Notation::Percent),
    ("feet", Notation::Feet),
    ("boards", Notation::Boards),
    ("coefficient", Notation::Coefficient),
];

impl Notation {
    /// The notation with this name, such as `hole size`.
    pub fn named(name: &str) -> Option<Notation> {
        NAMES
            .iter()
            .find(|(known, _)| *known == name)
            .map(|(_, notation)| *notation)
    }

    /// The names that [`Notation::named`] knows.
    pub fn names() -> impl Iterator<Item = &'static str> {
        NAMES.iter().map(|(name, _)| *name)
    }

    /// Reads a number into whole steps. Decimals and other units are rounded to the nearest step, halves upward.
    ///
    /// # Errors
    ///
    /// What was expected, with an example or two, such as "expected a length such as `4 3/8`, `4.375 in` or `111 mm`".
    pub fn read(self, text: &str) -> Result<i64, String> {
        read::read(self, text)
    }

    /// Prints whole steps. There is never a bare sign: directions are letters or words, less than nothing is a word.
    pub fn write(self, steps: i64) -> String {
        write::write(self, steps)
    }

    /// What one whole step is: `1/64 in`, `0.01 lb`.
    pub fn step(self) -> &'static str {
        match self {
            Notation::Count | Notation::Counted(..) => "1",
            Notation::Points => "0.1 points",
            Notation::Money => "$0.01",
            Notation::Weight => "0.01 lb",
            Notation::Ounces => "0.01 oz",
            Notation::Speed => "0.1 mph",
            Notation::Rate => "1 rpm",
            Notation::Length
            | Notation::HoleSize
            | Notation::ForwardPitch
            | Notation::LateralPitch
            | Notation::UpDown => "1/64 in",
            Notation::Thousandths => "0.001 in",
            Notation::Fine => "1/8000 in",
            Notation::Angle => "0.1 degrees",
            Notation::Density => "0.001 g/cc",
            Notation::Percent => "1 %",
            Notation::Feet => "0.1 ft",
            Notation::Boards => "0.1 boards",
            Notation::Coefficient => "0.001",
        }
    }

    /// The unit's usual short form, empty where there is none.
    pub fn unit(self) -> &'static str {
        match self {
            Notation::Count => "",
            Notation::Counted(_, many) => many,
            Notation::Points => "points",
            Notation::Money => "$",
            Notation::Weight => "lb",
            Notation::Ounces => "oz",
            Notation::Speed => "mph",
            Notation::Rate => "rpm",
            Notation::Length
            | Notation::HoleSize
            | Notation::ForwardPitch
            | Notation::LateralPitch
            | Notation::UpDown
            | Notation::Thousandths
            | Notation::Fine => "in",
            Notation::Angle => "degrees",
            Notation::Density => "g/cc",
            Notation::Percent => "%",
            Notation::Feet => "ft",
            Notation::Boards => "boards",
            Notation::Coefficient => "",
        }
    }
}
