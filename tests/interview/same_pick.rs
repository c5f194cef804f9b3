//! Who answers only what is asked gets the pick of the complete profile.

use spanwright::advice::Shop;
use spanwright::advice::interview::Next;
use spanwright::bowler::Bowler;
use spanwright::document::Document;

use crate::customers::{Chance, by_what_matters, complete, interviewed, pick};

/// Customers; thousands more are asked by `tests/interview/run`.
const CUSTOMERS: u64 = 150;

#[test]
fn only_what_is_asked_is_needed() {
    let shop = Shop::demo().unwrap();
    let interview = shop.interview().unwrap();
    let nobody = Bowler::unheard();
    for seed in 1..=CUSTOMERS {
        let mut chance = Chance::new(seed + 1_000_000);
        let (whole, all) = complete(&interview, &nobody, &mut chance);
        let (partial, asked) = interviewed(&interview, &nobody, &whole, by_what_matters);
        assert!(asked <= all, "{asked} asked, and only {all} make sense");
        let words = whole.to_yaml();
        assert_eq!(
            pick(&shop, &partial),
            pick(&shop, &whole),
            "{seed}:\n{words}"
        );
        let Next::Done { answered, .. } = interview.next(&partial) else {
            panic!("it goes on");
        };
        assert_eq!(answered, asked, "{words}");
    }
}

/// Profiles with a hand, a card and balls, as far as they go.
#[test]
fn what_is_known_already_is_not_asked() {
    let shop = Shop::demo().unwrap();
    let interview = shop.interview().unwrap();
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/catalog-demo/bowlers");
    let mut files: Vec<_> = std::fs::read_dir(folder)
        .unwrap()
        .map(|e| e.unwrap().path())
        .collect();
    files.sort();
    for file in files {
        let known = Bowler::read(&Document::read(&file).unwrap()).unwrap();
        for seed in 1..=4 {
            let (whole, _) = complete(&interview, &known, &mut Chance::new(seed));
            let (partial, _) = interviewed(&interview, &known, &whole, |interview, bowler| {
                let next = by_what_matters(interview, bowler)?;
                for name in next.answers() {
                    assert!(!known.tells(name) && !known.is_unknown(name), "{name}");
                }
                Some(next)
            });
            assert_eq!(
                pick(&shop, &partial),
                pick(&shop, &whole),
                "{}",
                file.display()
            );
        }
    }
}

#[test]
fn the_same_profile_is_always_asked_the_same() {
    let shop = Shop::demo().unwrap();
    let bowler = Bowler::unheard().answered("bowler.intent", 2).unwrap();
    let first = shop.next_question(&bowler).unwrap();
    assert_eq!(first, shop.next_question(&bowler).unwrap());
    assert_eq!(first, shop.interview().unwrap().next(&bowler));
}
