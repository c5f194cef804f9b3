//! The values that a line has seen: few are kept in place, many in a list.

use super::vocabulary::FactId;

/// So many values stand in a line itself; more are kept elsewhere. Most rules show fewer.
const FEW: usize = 4;

/// The values that a line shows.
#[derive(Clone, Debug)]
pub(super) enum Shown {
    Few(usize, [(FactId, i64); FEW]),
    Many(Box<[(FactId, i64)]>),
}

impl Shown {
    /// The values of an iterator that knows how many they are.
    pub(super) fn new(values: impl ExactSizeIterator<Item = (FactId, i64)>) -> Shown {
        let count = values.len();
        if count > FEW {
            return Shown::Many(values.collect());
        }
        let mut few = [(FactId(0), 0); FEW];
        few.iter_mut()
            .zip(values)
            .for_each(|(place, value)| *place = value);
        Shown::Few(count, few)
    }

    pub(super) fn as_slice(&self) -> &[(FactId, i64)] {
        match self {
            Shown::Few(count, few) => few.get(..*count).unwrap_or(few),
            Shown::Many(many) => many,
        }
    }
}

impl PartialEq for Shown {
    fn eq(&self, other: &Shown) -> bool {
        self.as_slice() == other.as_slice()
    }
}

impl Eq for Shown {}
