//! Thumb, middle and ring finger.

/// Whose hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Digit {
    /// The thumb's.
    Thumb,
    /// The middle finger's.
    Middle,
    /// The ring finger's.
    Ring,
}

impl Digit {
    /// One lower-case word: thumb, middle or ring.
    pub fn name(self) -> &'static str {
        match self {
            Digit::Thumb => "thumb",
            Digit::Middle => "middle",
            Digit::Ring => "ring",
        }
    }
}
