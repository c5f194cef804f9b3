//! What is chosen, measured or cautioned about.

use crate::notation::Notation;

/// What kind of answer a subject has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SubjectKind {
    /// Candidates are ranked by points.
    Choice,
    /// Lines sum to a number.
    Measure(Notation),
    /// Nothing is chosen; rules caution the person.
    Person,
    /// Nothing is chosen; rules list what to do, in order.
    Steps,
}

/// What is chosen, measured or cautioned about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Subject {
    pub(super) id: String,
    pub(super) kind: SubjectKind,
    pub(super) meaning: String,
}

impl Subject {
    /// Its id, such as `kite` or `line.length`.
    #[must_use]
    pub fn id(&self) -> &str {
        &self.id
    }

    /// What kind of answer it has.
    #[must_use]
    pub fn kind(&self) -> SubjectKind {
        self.kind
    }

    /// The notation of a measure.
    #[must_use]
    pub fn notation(&self) -> Option<Notation> {
        match self.kind {
            SubjectKind::Measure(notation) => Some(notation),
            _ => None,
        }
    }

    /// What it is, in a line.
    #[must_use]
    pub fn meaning(&self) -> &str {
        &self.meaning
    }
}
