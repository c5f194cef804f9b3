//! What people read. Read a changed snapshot aloud: as the customer, and as the fitter.

use rstest::rstest;
use spanwright::advice::Shop;
use spanwright::report::{self, Look};
use spanwright::rules::Audience;

use crate::{AVOIDED, BOWLERS, bowler};

fn look(shop: &Shop, audience: Audience) -> Look {
    Look::plain(audience).explaining(shop.rules().glossary())
}

#[rstest]
#[case("first-ball", "daisy", ["daisy", "hawkbit"])]
#[case("league-tired-ball", "knapweed@14", ["eyebright", "hawkbit"])]
fn both_read_well(
    #[case] name: &str,
    #[case] why_not: &str,
    #[case] pair: [&str; 2],
    #[values(
        (Audience::Newcomer, "customer"),
        (Audience::League, "league"),
        (Audience::Fitter, "fitter")
    )]
    reader: (Audience, &str),
) {
    let shop = Shop::demo().unwrap();
    let standing = shop.standing(&bowler(name)).unwrap();
    let look = look(&shop, reader.0);
    let answer = report::why_not_text(&standing.why_not(why_not).unwrap(), &look);
    let [one, other] = pair;
    let contrast = report::contrast_text(&standing.compare(one, other).unwrap(), &look);
    let text = format!("{answer}\n=====\n\n{contrast}");
    insta::with_settings!({ snapshot_path => "../snapshots", prepend_module_to_snapshot => false }, {
        insta::assert_snapshot!(format!("contrast-{name}-for-{}", reader.1), text);
    });
}

/// Every text about every ball, for every demo bowler: no word to avoid, nothing left unfilled, no line too wide.
#[rstest]
fn no_text_has_a_word_to_avoid(#[values(0, 1, 2, 3, 4, 5, 6, 7, 8, 9)] at: usize) {
    let shop = Shop::demo().unwrap();
    let standing = shop.standing(&bowler(BOWLERS[at])).unwrap();
    let look = look(&shop, Audience::Newcomer);
    let mut texts = Vec::new();
    for stock in shop.catalog().stock() {
        let weight = stock.weight() / 100;
        let ball = format!("{}@{weight}", stock.model().id());
        texts.push(report::why_not_text(
            &standing.why_not(&ball).unwrap(),
            &look,
        ));
        if ball != "daisy@6" {
            let contrast = standing.compare(&ball, "daisy@6").unwrap();
            texts.push(report::contrast_text(&contrast, &look));
        }
    }
    for model in shop.catalog().models() {
        texts.push(report::why_not_text(
            &standing.why_not(model.id()).unwrap(),
            &look,
        ));
    }
    for text in texts {
        let lower = text.to_lowercase();
        for word in AVOIDED {
            assert!(!lower.contains(word), "{word}: {text}");
        }
        assert!(!text.contains(['{', '}']), "{text}");
        assert!(
            text.lines().all(|line| line.chars().count() <= 80),
            "{text}"
        );
        assert!(text.ends_with(".\n") || text.ends_with(")\n"), "{text}");
    }
}
