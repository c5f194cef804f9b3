//! A sheet read back.
pub struct Drawn;
