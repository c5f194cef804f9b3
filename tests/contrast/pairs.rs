//! All pairs of the demo shelf for all demo bowlers: the lines of a contrast are what the two ledgers differ in.

use std::collections::BTreeMap;

use rstest::rstest;
use spanwright::advice::{Contrast, Shop};
use spanwright::rules::Audience;

use crate::ledgers::{Ledger, advised, nothing_ruled_out};
use crate::{AVOIDED, BOWLERS, bowler};

/// Rule and points of each line, as shown.
fn shown(contrast: &Contrast) -> Vec<(String, i64)> {
    let lines = contrast.lines().iter();
    lines
        .map(|line| (line.rule().to_owned(), line.points()))
        .collect()
}

/// The same by subtracting one ledger from the other.
fn subtracted(one: &Ledger, other: &Ledger) -> Vec<(String, i64)> {
    let mut differences: BTreeMap<&str, i64> = BTreeMap::new();
    for (rule, points) in &one.points {
        *differences.entry(rule).or_default() += points;
    }
    for (rule, points) in &other.points {
        *differences.entry(rule).or_default() -= points;
    }
    let mut lines: Vec<(String, i64)> = differences
        .into_iter()
        .filter(|&(_, points)| points != 0)
        .map(|(rule, points)| (rule.to_owned(), points))
        .collect();
    lines.sort_by(|(a, x), (b, y)| y.abs().cmp(&x.abs()).then(a.cmp(b)));
    lines
}

fn the_sentence_is_short_and_kind(contrast: &Contrast) {
    for audience in [Audience::Newcomer, Audience::League, Audience::Fitter] {
        let sentence = contrast.sentence(audience);
        let words = sentence.split_whitespace().count();
        assert!((3..=20).contains(&words), "{words} words: {sentence}");
        assert!(sentence.ends_with('.'), "{sentence}");
        assert!(!sentence.contains('{'), "{sentence}");
    }
    let customers = contrast.sentence(Audience::Newcomer).to_lowercase();
    for word in AVOIDED {
        assert!(!customers.contains(word), "{word}: {customers}");
    }
}

/// What makes a sentence true: it names the ball that is ahead or the one that is behind or out, and the rest of it is a
/// reason that stands in the contrast.
fn the_sentence_is_made_of_reasons(contrast: &Contrast) {
    let sentence = contrast.sentence(Audience::Newcomer);
    let sides = [contrast.one(), contrast.other()];
    let barriers = sides.iter().flat_map(|side| side.barriers());
    let reasons = contrast
        .lines()
        .iter()
        .flat_map(|line| [line.one(), line.other()]);
    let mut texts = barriers
        .map(|barrier| barrier.line())
        .chain(reasons.flatten())
        .map(|line| line.text(Audience::Newcomer));
    let own_words = [
        "equally good",
        "has more in its favour than",
        "both are ruled out",
        "is ruled out, and",
    ];
    let said = sentence.split_once(": ").map_or("", |(_, said)| said);
    let quoted = !said.is_empty() && texts.any(|text| text.starts_with(said));
    let stated = own_words.iter().any(|words| sentence.contains(words));
    assert!(quoted || stated, "{sentence}");
}

#[rstest]
fn the_lines_of_all_pairs_add_up_to_the_gap(#[values(0, 1, 2, 3, 4, 5, 6, 7, 8, 9)] at: usize) {
    let shop = Shop::demo().unwrap();
    let bowler = bowler(BOWLERS[at]);
    let standing = shop.standing(&bowler).unwrap();
    let all: Vec<(String, Ledger)> = advised(&nothing_ruled_out(&shop), &bowler).left;
    let out = advised(&shop, &bowler).out;
    assert_eq!(all.len(), shop.catalog().stock().len());
    let no_ball_fits = out.len() == all.len();
    for (index, (a, one)) in all.iter().enumerate() {
        for (b, other) in &all[index + 1..] {
            let contrast = standing.compare(a, b).unwrap();
            let lines = shown(&contrast);
            let gap = one.total - other.total;
            assert_eq!(contrast.gap(), gap, "{a} {b}");
            assert_eq!(
                lines.iter().map(|(_, points)| points).sum::<i64>(),
                gap,
                "{a} {b}"
            );
            assert_eq!(lines, subtracted(one, other), "{a} {b}");
            assert_eq!(contrast.one().total(), one.total, "{a}");
            assert_eq!(contrast.other().total(), other.total, "{b}");
            assert_eq!(contrast.dearer(), Some(one.price - other.price), "{a} {b}");
            for (side, ball) in [(contrast.one(), a), (contrast.other(), b)] {
                let rules: Vec<&str> = side.barriers().iter().map(|b| b.line().rule()).collect();
                let wanted: &[String] = out.get(ball).map_or(&[], Vec::as_slice);
                assert_eq!(rules, wanted, "{ball}");
            }
            for school in contrast.schools() {
                let rule = &school.rule().to_owned();
                assert!(
                    one.schools.contains(rule) != other.schools.contains(rule),
                    "{a} {b} {rule}"
                );
                assert_eq!(school.one().or(school.other()).unwrap().points(), 0);
            }
            let back = standing.compare(b, a).unwrap();
            let turned: Vec<_> = shown(&back)
                .into_iter()
                .map(|(rule, points)| (rule, -points))
                .collect();
            assert_eq!(lines, turned, "{a} {b}");
            assert_eq!(back.gap(), -gap, "{a} {b}");
            assert_eq!(back.dearer(), Some(other.price - one.price), "{a} {b}");
            for audience in [Audience::Newcomer, Audience::League, Audience::Fitter] {
                let tie = contrast.sentence(audience).starts_with(contrast.names()[0]) && gap == 0;
                let same = contrast.sentence(audience) == back.sentence(audience);
                assert!(
                    same || tie || no_ball_fits,
                    "{a} {b}: {}",
                    contrast.sentence(audience)
                );
            }
            the_sentence_is_short_and_kind(&contrast);
            the_sentence_is_made_of_reasons(&contrast);
        }
    }
}
