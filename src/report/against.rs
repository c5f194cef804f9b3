//! How balls differ for one bowler, in words: a new one beside an owned one, and the owned ones that do the same.

use crate::advice::{Against, Doubled};

/// Ranges of whole boards and feet, a sentence each; never a promise.
pub(super) fn words(against: &Against) -> [String; 2] {
    let boards = range(against.boards, ["board", "boards"], ["more", "less"]);
    let feet = range(against.sooner, ["foot", "feet"], ["sooner", "later"]);
    let finished = match (against.unfinished, against.sooner) {
        ([true, true], _) => "Neither has finished hooking at the pins.".to_owned(),
        ([true, false], _) => {
            "It hasn't finished hooking at the pins. The ball you own has.".to_owned()
        }
        ([false, true], _) => {
            "It has finished hooking before the pins. The ball you own hasn't.".to_owned()
        }
        (_, (0, 0)) => "It has finished hooking at about the same place.".to_owned(),
        _ => format!("It has finished hooking {feet}."),
    };
    let owned = &against.owned;
    [
        format!("Next to {owned}, by our sums: {boards} to the side at the pins."),
        finished,
    ]
}

fn range((least, most): (i64, i64), [one, many]: [&str; 2], [up, down]: [&str; 2]) -> String {
    let unit = |count: i64| if count.abs() == 1 { one } else { many };
    if least >= 0 {
        return span(least, most, unit(most), up);
    }
    if most <= 0 {
        return span(-most, -least, unit(least), down);
    }
    format!(
        "{} {} {down} to {most} {} {up}",
        -least,
        unit(least),
        unit(most)
    )
}

fn span(least: i64, most: i64, unit: &str, way: &str) -> String {
    match least == most {
        true if most == 0 => "about the same".to_owned(),
        true => format!("about {most} {unit} {way}"),
        false => format!("{least} to {most} {unit} {way}"),
    }
}

/// Balls of which each does the same as each other, and whether that was measured on the lane; a pair that is told in a group isn't told again.
pub(super) fn alike(pairs: &[Doubled]) -> Vec<(Vec<&str>, bool)> {
    let same = |one: &str, other: &str| {
        let mut all = pairs.iter().map(Doubled::names);
        all.any(|names| names == [one, other] || names == [other, one])
    };
    let mut groups: Vec<(Vec<&str>, bool)> = Vec::new();
    for pair in pairs {
        let names = pair.names();
        let within = |(group, _): &(Vec<&str>, bool)| {
            group.iter().filter(|name| names.contains(name)).count() == names.len()
        };
        if groups.iter().any(within) {
            continue;
        }
        let mut group = Vec::from(names);
        for other in pairs.iter().flat_map(Doubled::names) {
            if !group.contains(&other) && group.iter().all(|name| same(name, other)) {
                group.push(other);
            }
        }
        groups.push((group, pair.apart().is_some()));
    }
    groups
}
