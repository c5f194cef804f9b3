//! How much a page says.

/// How much is said beside the numbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Detail {
    /// With the reason for each caution, and room between the parts.
    Airy,
    /// With the reason for each caution.
    Full,
    /// What to do, without the reason.
    Short,
}
