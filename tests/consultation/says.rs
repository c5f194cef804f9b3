//! Words that an answer must say, whoever reads it.

use spanwright::advice::{Advice, Caution, Reason};
use spanwright::rules::Audience;

const EVERYBODY: [Audience; 3] = [Audience::Newcomer, Audience::League, Audience::Fitter];

/// Whether one of the counted reasons of a number has the words for every reader; another school's don't count.
pub fn number(advice: &Advice, name: &str, words: &str) -> bool {
    let number = advice.spec().number(name);
    let lines = number.map(|number| number.lines()).unwrap_or_default();
    let counted = |line: &&Reason| line.role() != "dispute";
    lines.iter().filter(counted).any(|line| {
        EVERYBODY
            .into_iter()
            .all(|reader| line.text(reader).contains(words))
    })
}

/// Whether a caution has the words for every reader, in what to do or in its reason.
pub fn caution(advice: &Advice, rule: &str, words: &str) -> bool {
    cautions(advice)
        .filter(|caution| caution.reason().rule() == rule)
        .any(|caution| {
            EVERYBODY.into_iter().all(|reader| {
                let action = caution.action(reader).unwrap_or_default();
                action.contains(words) || caution.reason().text(reader).contains(words)
            })
        })
}

/// Every caution, those of numbers too.
pub fn cautions(advice: &Advice) -> impl Iterator<Item = &Caution> {
    let of_numbers = advice.spec().numbers().iter().flat_map(|n| n.cautions());
    advice.cautions().iter().chain(of_numbers)
}
