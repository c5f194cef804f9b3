//! Whose rules are asked for.

/// A governing body. A national federation follows the world body wherever the table has no row of its own.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Body {
    /// United States Bowling Congress.
    #[default]
    Usbc,
    /// International Bowling Federation, before that World Bowling and WTBA.
    Ibf,
    /// The Netherlands' federation, for its national events.
    Nbf,
    /// The Japan Bowling Congress.
    Jbc,
    /// Tenpin Bowling Australia.
    Tba,
}

impl Body {
    /// Every body, in the order of [`Body::word`]s as files list them.
    pub const ALL: [Body; 5] = [Body::Usbc, Body::Ibf, Body::Nbf, Body::Jbc, Body::Tba];

    /// The body with this word: `usbc`.
    #[must_use]
    pub fn named(word: &str) -> Option<Body> {
        Body::ALL.into_iter().find(|body| body.word() == word)
    }

    /// As files and the command line write it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Body::Usbc => "usbc",
            Body::Ibf => "ibf",
            Body::Nbf => "nbf",
            Body::Jbc => "jbc",
            Body::Tba => "tba",
        }
    }

    /// As people read it.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Body::Usbc => "USBC",
            Body::Ibf => "IBF",
            Body::Nbf => "NBF (Netherlands)",
            Body::Jbc => "JBC (Japan)",
            Body::Tba => "TBA (Australia)",
        }
    }

    /// Whose rows hold where this body has none of its own.
    pub(super) fn follows(self) -> Option<Body> {
        match self {
            Body::Usbc | Body::Ibf => None,
            Body::Nbf | Body::Jbc | Body::Tba => Some(Body::Ibf),
        }
    }
}
