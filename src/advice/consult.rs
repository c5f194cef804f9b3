//! The stages in order (being written).
