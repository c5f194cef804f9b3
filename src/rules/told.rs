//! A test of a condition in words.

use super::condition::{Allowed, LOWEST, Test};
use super::vocabulary::{Kind, UNKNOWN, Vocabulary, listed, spaced};

/// `bowler.age is at least 20 years`.
pub(super) fn test(vocabulary: &Vocabulary, test: &Test) -> String {
    let fact = vocabulary.fact(test.fact);
    let wanted = match (&test.allowed, fact.kind) {
        (Allowed::Bits { has, any, none }, _) => {
            let print = |mask: i64| vocabulary.print(test.fact, mask);
            let has = (*has != 0).then(|| format!("has {}", print(*has)));
            let any = (*any != 0).then(|| format!("has any of {}", print(*any)));
            let none = (*none != 0).then(|| format!("has none of {}", print(*none)));
            let parts: Vec<String> = [has, any, none].into_iter().flatten().collect();
            if parts.is_empty() {
                "is known".to_owned()
            } else {
                listed(&parts, "and")
            }
        }
        (Allowed::Ranges(ranges), kind) => {
            if ranges[..] == [(UNKNOWN, UNKNOWN)] {
                "is not known".to_owned()
            } else if ranges[..] == [(LOWEST, i64::MAX)] {
                "is known".to_owned()
            } else if let Kind::Number {
                lowest, highest, ..
            } = kind
            {
                let print = |value| vocabulary.print(test.fact, value);
                let one = |&(low, high): &(i64, i64)| match (low <= lowest, high >= highest) {
                    _ if low == high => print(low),
                    (true, _) => format!("at most {}", print(high)),
                    (_, true) => format!("at least {}", print(low)),
                    _ => format!("{} to {}", print(low), print(high)),
                };
                format!(
                    "is {}",
                    listed(&ranges.iter().map(one).collect::<Vec<_>>(), "or")
                )
            } else {
                let words = fact.words().iter().enumerate();
                let passing = words.filter(|(index, _)| test.allowed.contains(*index as i64));
                let passing: Vec<String> = passing.map(|(_, word)| spaced(word)).collect();
                format!("is {}", listed(&passing, "or"))
            }
        }
    };
    format!("{} {wanted}", fact.name)
}
