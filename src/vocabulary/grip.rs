//! The grip, surface and layout stages: short lists of words.

use super::stage::{Column::Fixed, StageFact};
use super::words;
use crate::rules::Kind;

/// One word of a closed list, by its index.
#[derive(Clone, Copy, Debug)]
pub struct WordCandidate(pub i64);

fn kind_of(
    name: &'static str,
    meaning: &'static str,
    list: &'static [&'static str],
    from: &'static str,
) -> Vec<StageFact<WordCandidate>> {
    vec![StageFact {
        name,
        meaning,
        kind: Kind::Choice(list),
        from,
        column: Fixed(|c| c.0),
    }]
}

/// Facts of a grip.
pub fn grip_facts() -> Vec<StageFact<WordCandidate>> {
    kind_of(
        "grip.kind",
        "the grip",
        words::GRIPS,
        "grips the shop drills",
    )
}

/// Facts of a surface.
pub fn surface_facts() -> Vec<StageFact<WordCandidate>> {
    kind_of(
        "surface.kind",
        "what to do with the surface",
        words::SURFACES,
        "what can be done before hand-over",
    )
}

/// Facts of a layout.
pub fn layout_facts() -> Vec<StageFact<WordCandidate>> {
    kind_of(
        "layout.kind",
        "how the ball is laid out",
        words::LAYOUTS,
        "ways of laying a ball out",
    )
}

/// All candidates of a list of words.
pub fn all(list: &[&str]) -> Vec<WordCandidate> {
    (0..).map(WordCandidate).take(list.len()).collect()
}
