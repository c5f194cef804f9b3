//! One hand-written file for every kind of finding; the examples do what they claim.

use std::fs;
use std::sync::LazyLock;

use spanwright::advice::{RuleChecks, Shop, ShopFiles};
use spanwright::bowler::Bowler;
use spanwright::document::{Document, Format};
use spanwright::search::{Example, Finding, FindingKind};

fn shop(rules: &str) -> Shop {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("own.yaml");
    fs::write(&path, rules).unwrap();
    let files = ShopFiles {
        rules: vec![path],
        ..ShopFiles::default()
    };
    Shop::open(&files).unwrap_or_else(|trouble| panic!("{trouble}"))
}

/// What is found in the built-in rules alone.
static BUILT_IN: LazyLock<Vec<Finding>> = LazyLock::new(|| {
    let checks = Shop::demo().unwrap().check_rules().unwrap();
    checks.findings().findings.clone()
});

/// The findings of a kind beside those of the built-in rules.
fn found(shop: &Shop, kind: FindingKind) -> Vec<Finding> {
    let checks = shop.check_rules().unwrap();
    // Ids of rules shift when rules are added; texts of findings about rules of the file don't.
    let own = |finding: &&Finding| {
        finding
            .rules()
            .iter()
            .any(|&rule| shop.rules().rule(rule).file().ends_with("own.yaml"))
            || finding.rules().is_empty() && !BUILT_IN.contains(finding)
    };
    let of_kind = |finding: &&Finding| finding.kind() == kind;
    checks
        .findings()
        .findings
        .iter()
        .filter(own)
        .filter(of_kind)
        .cloned()
        .collect()
}

fn ids(shop: &Shop, finding: &Finding) -> Vec<String> {
    finding
        .rules()
        .iter()
        .map(|&rule| shop.rules().rule(rule).id().to_owned())
        .collect()
}

/// The one finding of a kind, with the rules it names.
fn one(shop: &Shop, kind: FindingKind, rules: &[&str]) -> Finding {
    let all = found(shop, kind);
    assert_eq!(all.len(), 1, "{all:?}");
    assert_eq!(ids(shop, &all[0]), rules);
    all[0].clone()
}

/// Somebody of whom an example holds.
fn somebody(shop: &Shop, example: &Example) -> Bowler {
    let document = Document::parse("somebody", b"{}", Format::Json).unwrap();
    let nobody = Bowler::read(&document).unwrap();
    example
        .values
        .iter()
        .fold(nobody, |bowler, &(fact, value)| {
            bowler.with(shop.vocabulary().fact(fact).name, Some(value))
        })
}

fn rule(id: &str, subject: &str, when: &str, does: &str) -> String {
    format!(
        "  - {{ id: {id}, subject: {subject}, when: {{ {when} }}, {does}, because: It is so., source: own choice }}\n"
    )
}

fn file(rules: &[String]) -> String {
    format!("rules:\n{}", rules.concat())
}

#[test]
fn the_built_in_rules_have_nothing_to_put_right() {
    let shop = Shop::demo().unwrap();
    let checks: RuleChecks = shop.check_rules().unwrap();
    let wrong: Vec<&Finding> = checks
        .findings()
        .findings
        .iter()
        .filter(|finding| !matches!(finding.kind(), FindingKind::NoneLeft | FindingKind::Wording))
        .collect();
    assert!(wrong.is_empty(), "{wrong:?}");
    for kind in FindingKind::ALL {
        assert_eq!(checks.findings().counted(kind).open, 0, "{kind:?}");
    }
}

#[test]
fn a_child_of_twenty_never_is_and_the_clash_is_named() {
    let shop = shop(&file(&[rule(
        "grown-child",
        "ball",
        "bowler.child: yes, bowler.intent: hook, bowler.age: { at_least: 20 years }",
        "points: 3",
    )]));
    let finding = one(&shop, FindingKind::NeverTrue, &["grown-child"]);
    let Finding::NeverTrue { clashes, .. } = finding else {
        panic!("{finding:?}")
    };
    assert_eq!(clashes.len(), 1);
    assert_eq!(
        clashes[0].conditions,
        ["bowler.child is yes", "bowler.age is at least 20 years"]
    );
}

#[test]
fn an_assumed_answer_is_never_missing() {
    let shop = shop(&file(&[rule(
        "nobody-said",
        "grip",
        "bowler.intent: { known: false }",
        "points: 3",
    )]));
    let finding = one(&shop, FindingKind::NeverTrue, &["nobody-said"]);
    let Finding::NeverTrue { clashes, .. } = finding else {
        panic!("{finding:?}")
    };
    assert!(
        clashes[0]
            .hint
            .as_ref()
            .is_some_and(|hint| hint.contains("straight is assumed"))
    );
}

#[test]
fn the_cover_isnt_known_before_there_is_a_ball() {
    let shop = shop(&file(&[rule(
        "cover-too-early",
        "weight",
        "settled.cover: pearl",
        "points: 3",
    )]));
    let finding = one(&shop, FindingKind::NeverTrue, &["cover-too-early"]);
    let Finding::NeverTrue { clashes, .. } = finding else {
        panic!("{finding:?}")
    };
    assert!(
        clashes[0]
            .hint
            .as_ref()
            .is_some_and(|hint| hint.contains("after weight"))
    );
}

#[test]
fn no_ball_on_the_shelf_is_polyester_and_dear() {
    // Of the demo catalog every polyester ball is a starter.
    let shop = shop(&file(&[rule(
        "dear-plastic",
        "ball",
        "ball.cover: polyester, ball.tier: high",
        "points: -3",
    )]));
    one(&shop, FindingKind::NeverTrue, &["dear-plastic"]);
}

#[test]
fn a_hand_is_always_right_or_left() {
    let shop = shop(&file(&[rule(
        "any-hand",
        "ball",
        "bowler.hand: [right, left]",
        "points: 3",
    )]));
    one(&shop, FindingKind::AlwaysTrue, &["any-hand"]);
}

#[test]
fn fourteen_or_younger_is_a_child() {
    let shop = shop(&file(&[
        rule(
            "young-a",
            "grip",
            "bowler.age: { at_most: 14 years }, grip.kind: fingertip",
            "points: -3",
        ),
        rule(
            "young-b",
            "grip",
            "grip.kind: fingertip, bowler.child: yes",
            "points: -3",
        ),
    ]));
    one(&shop, FindingKind::Duplicate, &["young-a", "young-b"]);
}

#[test]
fn points_within_a_rule_out_never_count() {
    let shop = shop(&file(&[
        rule(
            "no-asymmetric",
            "ball",
            "ball.core: asymmetric, bowler.child: yes",
            "rule_out: true",
        ),
        rule(
            "asymmetric-for-the-young",
            "ball",
            "ball.core: asymmetric, bowler.age: { below: 10 years }",
            "points: -4",
        ),
    ]));
    let finding = one(
        &shop,
        FindingKind::Contained,
        &["asymmetric-for-the-young", "no-asymmetric"],
    );
    rules_it_out(&shop, &finding, "no-asymmetric");
}

/// Asks the whole consultation about the example: the candidate is ruled out by this rule.
fn rules_it_out(shop: &Shop, finding: &Finding, rule: &str) {
    let example = finding.example().unwrap();
    let advice = shop.advise(&somebody(shop, example)).unwrap();
    let name = shop.candidate_name("ball", example.candidate.unwrap());
    let out = advice
        .ruled_out()
        .iter()
        .find(|out| out.ball() == name)
        .unwrap();
    assert!(out.lines().iter().any(|line| line.rule() == rule));
}

#[test]
fn a_mild_caution_within_a_serious_one_adds_nothing() {
    let shop = shop(&file(&[
        rule(
            "sore-wrist",
            "person",
            "bowler.aches: { has: wrist }",
            "caution: serious",
        ),
        rule(
            "sore-wrist-and-elbow",
            "person",
            "bowler.aches: { has: [wrist, elbow] }",
            "caution: mild",
        ),
    ]));
    let finding = one(
        &shop,
        FindingKind::Contained,
        &["sore-wrist-and-elbow", "sore-wrist"],
    );
    let advice = shop
        .advise(&somebody(&shop, finding.example().unwrap()))
        .unwrap();
    for rule in ["sore-wrist", "sore-wrist-and-elbow"] {
        assert!(
            advice
                .cautions()
                .iter()
                .any(|caution| caution.reason().rule() == rule)
        );
    }
}

#[test]
fn one_rule_favours_all_that_another_rules_out() {
    let shop = shop(&file(&[
        rule(
            "urethane-for-oil",
            "ball",
            "ball.cover: urethane, bowler.lanes: { has: oily }",
            "points: 6",
        ),
        rule(
            "no-urethane",
            "ball",
            "ball.cover: [urethane, pearl]",
            "rule_out: true",
        ),
    ]));
    let all = found(&shop, FindingKind::Contradictory);
    let ours: Vec<Vec<String>> = all.iter().map(|finding| ids(&shop, finding)).collect();
    // Built-in points for urethane alone are ruled out as well.
    assert!(
        ours.contains(&vec![
            "urethane-for-oil".to_owned(),
            "no-urethane".to_owned()
        ]),
        "{ours:?}"
    );
    assert!(ours.iter().all(|ids| ids[1] == "no-urethane"), "{ours:?}");
    for finding in &all {
        rules_it_out(&shop, finding, "no-urethane");
    }
}

#[test]
fn two_starts_at_once_leave_the_number_blank() {
    let shop = shop(&file(&[rule(
        "own-bridge",
        "bridge",
        "bowler.child: yes",
        "start: 1/4",
    )]));
    let all = found(&shop, FindingKind::TwoStarts);
    assert!(!all.is_empty());
    assert!(
        all.iter()
            .all(|finding| ids(&shop, finding).contains(&"own-bridge".to_owned()))
    );
}

#[test]
fn a_knot_that_no_ball_comes_near() {
    // Over 12 lb only, so that nothing lies between 6 and 8 lb.
    let shop = shop(&file(&[rule(
        "heavy-balls",
        "ball",
        "ball.weight: { above: 12 lb }",
        "points: { along: ball.weight, at: { 6 lb: 0, 8 lb: 1, 14 lb: 2, 16 lb: 3 } }",
    )]));
    let finding = one(&shop, FindingKind::KnotOutOfReach, &["heavy-balls"]);
    assert!(
        matches!(finding, Finding::KnotOutOfReach { knot: 600, .. }),
        "{finding:?}"
    );
}

#[test]
fn a_text_prints_what_nobody_may_know() {
    let shop = shop(
        "rules:\n  - id: many-revs\n    subject: ball\n    when: { bowler.intent: hook, any_of: [ { bowler.rev_rate: { above: 380 rpm } }, { bowler.rev_level: high } ], ball.cover: pearl }\n    points: 2\n    because: You turn it {bowler.rev_rate}.\n    source: own choice\n",
    );
    let finding = one(&shop, FindingKind::MayBeUnknown, &["many-revs"]);
    let example = finding.example().unwrap();
    let advice = shop.advise(&somebody(&shop, example)).unwrap();
    let texts: Vec<String> = advice
        .picks()
        .iter()
        .flat_map(|pick| pick.lines())
        .filter(|line| line.rule() == "many-revs")
        .map(|line| line.text(spanwright::rules::Audience::Newcomer).to_owned())
        .collect();
    assert!(
        texts.iter().all(|text| text.contains("not known")),
        "{texts:?}"
    );
}

#[test]
fn what_no_rule_looks_at_any_more_is_unused() {
    let shop = shop("switch_off: [colour-the-customer-likes]\n");
    let all = found(&shop, FindingKind::UnusedFact);
    let names: Vec<&str> = all
        .iter()
        .map(|finding| match finding {
            Finding::UnusedFact { fact, .. } => shop.vocabulary().fact(*fact).name,
            _ => "",
        })
        .collect();
    assert_eq!(names, ["match.colour"]);
    // Nobody is asked for it, and the shop wanted the rule away.
    assert!(shop.check_rules().unwrap().is_clean());
}

#[test]
fn a_word_that_no_text_uses_is_unused() {
    let shop = shop("glossary:\n  - { word: zither, meaning: An instrument with strings. }\n");
    let all = found(&shop, FindingKind::UnusedWord);
    assert_eq!(
        all,
        [Finding::UnusedWord {
            word: "zither".to_owned(),
            may_be_meant: false,
        }]
    );
    assert!(!shop.check_rules().unwrap().is_clean());
}

#[test]
fn a_rule_that_rules_out_all_balls_leaves_none() {
    let shop = shop(&file(&[rule(
        "nothing-for-lotion",
        "ball",
        "bowler.age: { above: 90 years }",
        "rule_out: true",
    )]));
    let finding = one(&shop, FindingKind::NoneLeft, &["nothing-for-lotion"]);
    let advice = shop
        .advise(&somebody(&shop, finding.example().unwrap()))
        .unwrap();
    assert!(advice.picks().is_empty());
}

#[test]
fn switching_off_one_rule_leaves_no_fact_or_word_to_put_right() {
    // The last one that looks at a fact, or whose text uses a word of the glossary.
    let off = [
        "failed-the-hold-test",
        "rather-lighter-than-heavier",
        "over-the-label-for-straight",
        "colour-the-customer-likes",
    ];
    for rule in off {
        let shop = shop(&format!("switch_off: [{rule}]\n"));
        let checks = shop.check_rules().unwrap();
        let unused = |finding: &&Finding| {
            matches!(
                finding.kind(),
                FindingKind::UnusedFact | FindingKind::UnusedWord
            )
        };
        let found: Vec<&Finding> = checks.findings().findings.iter().filter(unused).collect();
        assert!(!found.is_empty(), "{rule}");
        assert!(found.iter().all(|finding| finding.is_note()), "{found:?}");
    }
}

#[test]
fn a_cover_owned_is_on_a_ball() {
    let shop = shop(&file(&[rule(
        "cover-without-a-ball",
        "ball",
        "owned.count: { at_most: 0 }, owned.covers: { has: solid }",
        "points: 3",
    )]));
    let finding = one(&shop, FindingKind::NeverTrue, &["cover-without-a-ball"]);
    let Finding::NeverTrue { clashes, .. } = finding else {
        panic!("{finding:?}")
    };
    assert_eq!(
        clashes[0].conditions,
        ["owned.count is at most 0", "owned.covers has solid"]
    );
}

#[test]
fn as_many_balls_as_covers_may_be_owned() {
    let shop = shop(&file(&[
        rule(
            "two-covers-two-balls",
            "ball",
            "owned.count: 2, owned.covers: { has: [solid, pearl] }",
            "points: 3",
        ),
        rule(
            "two-covers-one-ball",
            "ball",
            "owned.count: 1, owned.covers: { has: [solid, pearl] }",
            "points: 3",
        ),
    ]));
    one(&shop, FindingKind::NeverTrue, &["two-covers-one-ball"]);
}

#[test]
fn a_measured_rev_rate_isnt_guessed_as_well() {
    let shop = shop(&file(&[rule(
        "guessed-and-measured",
        "ball",
        "bowler.rev_level: low, bowler.rev_rate: { at_least: 400 rpm }",
        "points: 3",
    )]));
    one(&shop, FindingKind::NeverTrue, &["guessed-and-measured"]);
}

#[test]
fn a_thumb_out_of_the_ball_has_no_gauge() {
    let shop = shop(&file(&[rule(
        "gauge-of-no-thumb",
        "ball",
        "bowler.thumb: out, hand.thumb_gauge: { known: true }",
        "points: 3",
    )]));
    one(&shop, FindingKind::NeverTrue, &["gauge-of-no-thumb"]);
}

#[test]
fn a_rule_out_within_another_adds_nothing() {
    let shop = shop(&file(&[
        rule("no-pearl", "ball", "ball.cover: pearl", "rule_out: true"),
        rule(
            "no-pearl-for-the-young",
            "ball",
            "ball.cover: pearl, bowler.child: yes",
            "rule_out: true",
        ),
    ]));
    let finding = one(
        &shop,
        FindingKind::Contained,
        &["no-pearl-for-the-young", "no-pearl"],
    );
    rules_it_out(&shop, &finding, "no-pearl");
    assert!(found(&shop, FindingKind::Duplicate).is_empty());
}

#[test]
fn two_that_rule_out_the_same_are_told_once() {
    let shop = shop(&file(&[
        rule("no-pearl", "ball", "ball.cover: pearl", "rule_out: true"),
        rule(
            "no-pearl-again",
            "ball",
            "ball.cover: { not: [polyester, urethane, solid, hybrid] }",
            "rule_out: true",
        ),
    ]));
    one(
        &shop,
        FindingKind::Duplicate,
        &["no-pearl", "no-pearl-again"],
    );
    assert!(found(&shop, FindingKind::Contained).is_empty());
}

/// Whatever the budget is made of, a condition with one more test is narrower: nothing about it is left open.
#[test]
fn one_more_test_is_settled_without_looking_at_prices() {
    for points in [-3, 3] {
        let shop = shop(&file(&[rule(
            "over-budget-and-pearl",
            "ball",
            "match.over_budget: { above: $0 }, ball.cover: pearl",
            &format!("points: {points}"),
        )]));
        let kind = match points {
            3 => FindingKind::Contradictory,
            _ => FindingKind::Contained,
        };
        one(&shop, kind, &["over-budget-and-pearl", "over-budget"]);
        let checks = shop.check_rules().unwrap();
        let open = |(kind, ..): &&(FindingKind, _, _)| *kind != FindingKind::Unreachable;
        let open: Vec<_> = checks.findings().not_settled.iter().filter(open).collect();
        assert!(open.is_empty(), "{open:?}");
    }
}

/// Each line of the README's overlay may be taken over as it stands: no customer of the demo gets another weight by it.
#[test]
fn the_overlay_of_the_readme_is_safe_to_take_over() {
    let readme = fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/README.md")).unwrap();
    let (_, overlay) = readme.split_once("# our-rules.yaml\n").unwrap();
    let (overlay, _) = overlay.split_once("```").unwrap();
    let (ours, built_in) = (shop(overlay), Shop::demo().unwrap());
    assert!(ours.check_rules().unwrap().is_clean());
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/catalog-demo/bowlers");
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let bowler = Bowler::read(&Document::read(&path).unwrap()).unwrap();
        let weight = |shop: &Shop| {
            let advice = shop.advise(&bowler).unwrap();
            advice.picks().first().map(|pick| pick.weight().to_owned())
        };
        assert_eq!(weight(&ours), weight(&built_in), "{}", path.display());
    }
}
