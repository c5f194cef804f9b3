//! Reasons: texts for each audience, with the values of facts filled in.

use super::vocabulary::{FactId, Vocabulary};

/// Who reads a reason.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Audience {
    /// Someone new to it all.
    Newcomer,
    /// Someone who does it regularly.
    League,
    /// The expert at the counter.
    Fitter,
}

impl Audience {
    /// Every audience with the key that files use for it.
    pub(super) const KEYS: [(Audience, &'static str); 3] = [
        (Audience::Newcomer, "newcomer"),
        (Audience::League, "league"),
        (Audience::Fitter, "fitter"),
    ];
}

/// A piece of a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Piece {
    /// Printed as it is.
    Text(String),
    /// The value of a fact.
    Fact(FactId),
}

/// A text with places for the values of facts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Template {
    /// As the file has it.
    pub(super) written: String,
    pub(super) pieces: Vec<Piece>,
}

impl Template {
    /// The facts that it prints.
    pub(super) fn facts(&self) -> impl Iterator<Item = FactId> + '_ {
        self.pieces.iter().filter_map(|piece| match piece {
            Piece::Fact(fact) => Some(*fact),
            Piece::Text(_) => None,
        })
    }

    /// The text with the values filled in; a fact that `values` lacks is not known.
    pub(super) fn fill(&self, vocabulary: &Vocabulary, values: &[(FactId, i64)]) -> String {
        let print = |piece: &Piece| match piece {
            Piece::Text(text) => text.clone(),
            Piece::Fact(fact) => {
                let value = values.iter().find(|(known, _)| known == fact);
                vocabulary.print(
                    *fact,
                    value.map_or(super::vocabulary::UNKNOWN, |&(_, value)| value),
                )
            }
        };
        self.pieces.iter().map(print).collect()
    }
}

/// A text for each audience.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Texts {
    pub(super) newcomer: Template,
    pub(super) league: Template,
    pub(super) fitter: Template,
}

impl Texts {
    /// The text for this audience.
    pub(super) fn of(&self, audience: Audience) -> &Template {
        match audience {
            Audience::Newcomer => &self.newcomer,
            Audience::League => &self.league,
            Audience::Fitter => &self.fitter,
        }
    }

    /// The text for this audience as its file has it, values not filled in.
    pub(super) fn written(&self, audience: Audience) -> &str {
        &self.of(audience).written
    }

    /// The facts that any of the texts prints.
    pub(super) fn facts(&self) -> impl Iterator<Item = FactId> + '_ {
        self.newcomer
            .facts()
            .chain(self.league.facts())
            .chain(self.fitter.facts())
    }
}

/// Splits a text at its placeholders: `Ok` pieces are text, `Err` pieces the names between braces.
///
/// # Errors
/// When braces do not pair up.
pub(super) fn split(text: &str) -> Result<Vec<Result<&str, &str>>, ()> {
    let mut pieces = Vec::new();
    let mut rest = text;
    while let Some(at) = rest.find(['{', '}']) {
        if rest[at..].starts_with('}') {
            return Err(());
        }
        let inside = &rest[at + 1..];
        let end = inside.find(['{', '}']).ok_or(())?;
        if inside[end..].starts_with('{') {
            return Err(());
        }
        if at > 0 {
            pieces.push(Ok(&rest[..at]));
        }
        pieces.push(Err(inside[..end].trim()));
        rest = &inside[end + 1..];
    }
    if !rest.is_empty() {
        pieces.push(Ok(rest));
    }
    Ok(pieces)
}
