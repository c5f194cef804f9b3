//! What every drawing is made with: the page, its letters, words on leader lines, and text that runs down a column.

pub(in crate::report) mod canvas;
pub(in crate::report) mod flow;
pub(in crate::report) mod leaders;
pub(in crate::report) mod letters;
