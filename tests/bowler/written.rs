//! Profiles written in a test, read as files are.

use spanwright::bowler::Bowler;
use spanwright::document::{Document, Faults, Format};

/// The bowler, or every fault.
pub fn parse(text: &str) -> Result<Bowler, Faults> {
    Bowler::read(&Document::parse(
        "profile.yaml",
        text.as_bytes(),
        Format::Yaml,
    )?)
}

/// The bowler of a profile without fault.
pub fn bowler(text: &str) -> Bowler {
    parse(text).unwrap_or_else(|faults| panic!("{faults}"))
}
