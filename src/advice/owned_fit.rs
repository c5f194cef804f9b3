//! What a fitter has to ask about the balls owned: a fit that isn't praised, and a ball for single pins that isn't like the other.

use super::owned_now::{called, hooks, is_spare};
use crate::bowler::{Bowler, OwnedBall};
use crate::notation::Notation;

/// Words by which people say that a ball fits. Own choice.
const PRAISE: &[&str] = &[
    "good",
    "great",
    "fine",
    "well",
    "perfect",
    "comfortable",
    "ok",
    "okay",
    "nice",
    "easy",
    "excellent",
    "right",
];
/// Words that may stand beside them and change nothing. Own choice.
const AROUND: &[&str] = &[
    "a", "all", "and", "feels", "fit", "fits", "is", "it", "its", "my", "quite", "really", "so",
    "very",
];
/// Hundredths of a pound by which the weights may differ before anyone asks: half a pound, as for a new ball for single pins.
const WEIGHT_GAP: i64 = 50;

/// True if the bowler says something else of its fit than that it is good.
pub(super) fn fits_badly(ball: &OwnedBall) -> bool {
    let Some(text) = ball.fit() else {
        return false;
    };
    let text = text.to_lowercase();
    let mut words = text
        .split(|letter: char| !letter.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .peekable();
    words.peek().is_some() && !words.all(|word| PRAISE.contains(&word) || AROUND.contains(&word))
}

/// What to ask about the balls owned.
pub(super) fn questions(bowler: &Bowler, intends: bool) -> Vec<String> {
    let owned = || bowler.owned().iter().enumerate();
    let mut found = Vec::new();
    for (at, ball) in owned().filter(|(_, ball)| fits_badly(ball)) {
        let fit = ball.fit().unwrap_or_default();
        let name = called(bowler.owned(), at);
        found.push(format!(
            "What is wrong with the fit of {name} (\u{201c}{fit}\u{201d})? Another ball would get the same."
        ));
    }
    let first = owned().find(|(_, ball)| hooks(ball) && !is_spare(ball, intends));
    for (at, ball) in owned().filter(|(_, ball)| is_spare(ball, intends)) {
        let name = called(bowler.owned(), at);
        if ball.is_spare() && hooks(ball) {
            found.push(format!(
                "Does {name} go straight enough for single pins? A ball for those is polyester."
            ));
        }
        let weights = first
            .and_then(|(_, first)| first.weight())
            .zip(ball.weight());
        let apart = weights.map(|(one, other)| (one - other).abs());
        if let (Some((main, _)), Some(apart)) = (first, apart.filter(|apart| *apart > WEIGHT_GAP)) {
            found.push(format!(
                "{name} and {} are {} apart. Does the swing stay the same? Both have one weight at best.",
                called(bowler.owned(), main),
                Notation::Weight.write(apart)
            ));
        }
    }
    found
}
