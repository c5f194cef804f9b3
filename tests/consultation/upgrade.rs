//! What a case about the next ball, or none, expects.
//!
//! ```yaml
//! expect:
//!   upgrade:
//!     gaps: [spare_ball]            # what a ball is told for, in order; [nothing_yet] where none is
//!     no_gaps: [more_for_oil]       # for these none is told
//!     before: [draw-the-oil]        # steps before buying, in this order; others may stand between
//!     no_before: [refit-first]
//!     doubled: [[name a, name b]]   # owned balls that do the same, all of them
//!     next: { spare_ball: { ball: daisy@14, cover: polyester, weight: 14 lb, tier: starter, out_the_door: $167.73 } }
//!     own_choice: { first_hooking_ball: { tier: high } }   # the dear ball beside it; the same keys
//!     held: no                      # a serious caution comes before any purchase
//!     cautions: [wants-the-dearest]
//!     no_cautions: [tired-ball-first]
//!   says: [words]                   # in the customer's answer
//!   never_says: [words]
//! ```

use spanwright::advice::{Pick, Upgrade};
use spanwright::catalog::Catalog;
use spanwright::document::{Content, Node};
use spanwright::report;
use spanwright::rules::Audience;

use crate::case::Case;
use crate::nodes::{items, map_of};
use crate::told::{Compared, each, list_of, one, otherwise, said, words};

/// The answer document, for the fitter.
pub fn document(upgrade: &Upgrade) -> String {
    report::upgrade_json(upgrade, Audience::Fitter)
}

/// What comes out otherwise than argued.
pub fn differences(case: &Case, upgrade: &Upgrade) -> Vec<String> {
    let mut compared = sound(upgrade);
    for (key, content) in &case.expected {
        compared.extend(match key.as_str() {
            "upgrade" => {
                let keys = map_of(content).into_iter();
                keys.flat_map(|(key, node)| path(case, upgrade, &key, node))
                    .collect()
            }
            "says" => words(key, content, true, &customer(upgrade)),
            "never_says" => words(key, content, false, &customer(upgrade)),
            other => panic!("{}: unknown expectation {other} of an upgrade", case.file),
        });
    }
    otherwise(&case.file, compared)
}

/// What holds of every path: a ball is told with its gap's reasons, a price and something to wait for; while it is held, none is.
fn sound(upgrade: &Upgrade) -> Compared {
    let mut compared = Vec::new();
    let mut must = |what: String, holds: bool| compared.push((what, said(holds), said(true)));
    if upgrade.is_held() {
        must("nothing told while held".into(), upgrade.next().is_empty());
    }
    for next in upgrade.next() {
        let word = next.gap().word();
        must(
            format!("{word} has reasons"),
            !next.gap().lines().is_empty(),
        );
        must(format!("{word} has a trigger"), !next.triggers().is_empty());
        let price = next.pick().is_none() || next.bill().is_some();
        must(format!("{word} has a price"), price);
    }
    for gap in upgrade.gaps() {
        let sum: i64 = gap.lines().iter().map(|line| line.points()).sum();
        must(
            format!("lines of {} add up", gap.word()),
            sum == gap.total(),
        );
        let sources = gap.lines().iter().all(|line| !line.source().is_empty());
        must(format!("{} has sources", gap.word()), sources);
    }
    compared
}

fn path(case: &Case, upgrade: &Upgrade, key: &str, node: &Node) -> Compared {
    let content = node.content();
    match key {
        "gaps" => vec![(
            key.to_owned(),
            told(upgrade).join(", "),
            items(content).join(", "),
        )],
        "no_gaps" => each(key, content, false, &|word| told(upgrade).contains(&word)),
        "before" => {
            let wanted = items(content);
            let ids = upgrade.before().iter().map(|step| step.id());
            let found: Vec<&str> = ids
                .filter(|id| wanted.iter().any(|want| want == id))
                .collect();
            vec![(key.to_owned(), found.join(", "), wanted.join(", "))]
        }
        "no_before" => each(key, content, false, &|id| {
            upgrade.before().iter().any(|step| step.id() == id)
        }),
        "doubled" => {
            let pair = |mut names: Vec<String>| {
                names.sort();
                names.join(" and ")
            };
            let found = upgrade.doubled().iter();
            let mut found: Vec<String> = found
                .map(|two| pair(two.names().map(str::to_owned).to_vec()))
                .collect();
            let mut wanted: Vec<String> = match content {
                Content::List(pairs) => pairs.iter().map(|two| pair(list_of(two))).collect(),
                _ => panic!("{}: doubled is a list of pairs", case.file),
            };
            found.sort();
            wanted.sort();
            vec![(key.to_owned(), found.join(", "), wanted.join(", "))]
        }
        "next" => {
            let wanted = map_of(content).into_iter();
            let compared = wanted.flat_map(|(gap, node)| {
                let mut told = upgrade.next().iter();
                match told.find(|next| next.gap().word() == gap) {
                    Some(next) => ball(case, next.gap().word(), next.pick(), node),
                    None => vec![(
                        format!("next {gap}"),
                        "none".to_owned(),
                        "a ball".to_owned(),
                    )],
                }
            });
            compared.collect()
        }
        "own_choice" => {
            let wanted = map_of(content).into_iter();
            let compared = wanted.flat_map(|(gap, node)| {
                let mut told = upgrade.next().iter();
                let next = told.find(|next| next.gap().word() == gap);
                let own = next.and_then(|next| next.own_choice());
                ball(
                    case,
                    &format!("{gap}, own choice"),
                    own.map(|own| own.pick()),
                    node,
                )
            });
            compared.collect()
        }
        "held" => one(key, said(upgrade.is_held()), content),
        "cautions" => each(key, content, true, &|rule| cautioned(upgrade, rule)),
        "no_cautions" => each(key, content, false, &|rule| cautioned(upgrade, rule)),
        other => panic!("{}: unknown expectation {other} of an upgrade", case.file),
    }
}

/// The gaps that a ball is told for, or `nothing_yet`.
fn told(upgrade: &Upgrade) -> Vec<&str> {
    let words: Vec<&str> = upgrade
        .next()
        .iter()
        .map(|next| next.gap().word())
        .collect();
    match words.is_empty() {
        true => vec!["nothing_yet"],
        false => words,
    }
}

/// The ball for a gap; a list of words means one of them.
fn ball(case: &Case, gap: &str, pick: Option<&Pick>, node: &Node) -> Compared {
    let Some(pick) = pick else {
        let what = format!("next {gap}");
        return vec![(what, "no ball".to_owned(), "a ball".to_owned())];
    };
    let (model, weight) = pick.ball().split_once('@').unwrap();
    let wanted = map_of(node.content()).into_iter();
    let compared = wanted.map(|(key, node)| {
        let found = match key.as_str() {
            "ball" => pick.ball().to_owned(),
            "cover" => pick.cover().to_owned(),
            "weight" => format!("{weight} lb"),
            "tier" => {
                let catalog = Catalog::demo().unwrap();
                let mut models = catalog.models();
                let model = models.find(|found| found.id() == model).unwrap();
                model.tier().name().to_owned()
            }
            "out_the_door" => pick.out_the_door().to_owned(),
            other => panic!("{}: unknown expectation {other} of a next ball", case.file),
        };
        let one_of = list_of(node);
        let what = format!("next {gap}: {key}");
        match one_of.contains(&found) {
            true => (what, found.clone(), found),
            false => (what, found, one_of.join(" or ")),
        }
    });
    compared.collect()
}

fn cautioned(upgrade: &Upgrade, rule: &str) -> bool {
    let of_balls = upgrade.next().iter().flat_map(|next| next.cautions());
    let mut all = upgrade.cautions().iter().chain(of_balls);
    all.any(|caution| caution.reason().rule() == rule)
}

/// What customers read, one text for each kind of reader.
fn customer(upgrade: &Upgrade) -> Vec<String> {
    let readers = [Audience::Newcomer, Audience::League];
    let look = |reader| report::Look::plain(reader);
    readers
        .into_iter()
        .map(|reader| report::upgrade_text(upgrade, &look(reader)))
        .collect()
}
