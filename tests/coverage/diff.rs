//! What other rules change.

use std::path::PathBuf;

use spanwright::advice::{Case, ChangeKind, ChangedCase, OutcomeChange, RulesDiff, Shop};
use spanwright::catalog::Catalog;
use spanwright::document::{Document, Format};
use spanwright::report::{rules_diff_json, rules_diff_text};

/// The demo shop with these rules laid over.
fn with(overlay: &str) -> Shop {
    let document = Document::parse("ours.yaml", overlay.as_bytes(), Format::Yaml).unwrap();
    let rules = Shop::demo().unwrap().rules().overlay(&[document]).unwrap();
    Shop::of(rules, Catalog::demo().unwrap())
}

fn demo() -> Vec<Case> {
    Case::demo().unwrap()
}

fn difference<'d>(case: &'d ChangedCase, kind: &str, name: &str) -> &'d OutcomeChange {
    let mut found = case.differences.iter();
    found
        .find(|d| d.kind == kind && d.name == name)
        .unwrap_or_else(|| panic!("{kind} {name} among {:#?}", case.differences))
}

/// A shop that drills every thumb a 64th over the gauge, as k-04 does.
const A_64TH_OVER: &str = "
subject: thumb.clearance
rules:
  - { id: a-64th-over, add: 1/64, because: We drill a little over., source: own choice }
";

/// A shop that would rather see a pearl for a straight ball than plastic.
const LESS_PLASTIC: &str = "
subject: ball
rules:
  - id: polyester-for-straight
    override: true
    when: { bowler.intent: straight, ball.cover: polyester }
    points: 1
    because: We like it less.
    source: own choice
  - id: pearl-for-straight
    when: { bowler.intent: straight, ball.cover: pearl }
    points: 30
    because: It leaves room to learn.
    source: own choice
";

#[test]
fn a_set_against_itself_is_empty() {
    let built_in = Shop::demo().unwrap();
    let diff = RulesDiff::between(&built_in, &Shop::demo().unwrap(), &demo());
    assert!(diff.is_empty(), "{diff:#?}");
    // Eleven customers, two of whom had a fit check, and four of whom own balls and could ask what comes next.
    assert_eq!(diff.unchanged, 17);
    let ours = with(LESS_PLASTIC);
    assert!(RulesDiff::between(&ours, &with(LESS_PLASTIC), &demo()).is_empty());
}

#[test]
fn a_64th_over_shows_where_a_thumb_was_gauged() {
    let diff = RulesDiff::between(&Shop::demo().unwrap(), &with(A_64TH_OVER), &demo());
    let rules: Vec<_> = diff
        .rules
        .iter()
        .map(|r| (&*r.id, &*r.file, r.kind))
        .collect();
    assert_eq!(rules, [("a-64th-over", "ours.yaml", ChangeKind::Added)]);
    // By the profiles: who has a gauged thumb in the ball and no fit that is copied.
    let files: Vec<&str> = diff
        .changed
        .iter()
        .filter(|case| case.question == "advise")
        .map(|case| &*case.file)
        .collect();
    for name in ["first-ball", "hanging-thumb", "straight-only"] {
        assert!(
            files.iter().any(|file| file.contains(name)),
            "{name} in {files:?}"
        );
    }
    for name in ["present", "two-handed-no-thumb", "knows-nothing"] {
        assert!(
            !files.iter().any(|file| file.contains(name)),
            "{name} in {files:?}"
        );
    }
    // 25/32 is the gauge, so 51/64 is drilled.
    let ada = diff
        .changed
        .iter()
        .find(|case| case.file.contains("first-ball"));
    let ada = ada.unwrap();
    let clearance = difference(ada, "number", "thumb.clearance");
    assert_eq!(clearance.before.as_deref(), Some("0 in"));
    assert_eq!(clearance.after.as_deref(), Some("1/64 in"));
    let [line] = &*clearance.lines else {
        panic!("{:#?}", clearance.lines)
    };
    assert_eq!(line.rule, "a-64th-over");
    assert!(line.by_rule);
    assert_eq!(
        (line.before.as_deref(), line.after.as_deref()),
        (None, Some("1/64 in"))
    );
    let bore = difference(ada, "number", "thumb.bore");
    assert_eq!(bore.before.as_deref(), Some("25/32 in"));
    assert_eq!(bore.after.as_deref(), Some("51/64 in"));
    // The line of the bore follows from the clearance: its own rule is as it was.
    let [line] = &*bore.lines else {
        panic!("{:#?}", bore.lines)
    };
    assert_eq!((&*line.rule, line.by_rule), ("thumb-bore-clearance", false));
    // Only numbers at the thumb are otherwise.
    for difference in &ada.differences {
        assert!(difference.name.contains("thumb") || difference.kind != "number");
    }
}

#[test]
fn another_pick_names_the_lines_that_made_it() {
    let diff = RulesDiff::between(&Shop::demo().unwrap(), &with(LESS_PLASTIC), &demo());
    let kinds: Vec<_> = diff.rules.iter().map(|r| (&*r.id, r.kind)).collect();
    assert_eq!(
        kinds,
        [
            ("pearl-for-straight", ChangeKind::Added),
            ("polyester-for-straight", ChangeKind::Changed)
        ]
    );
    let tom = diff
        .changed
        .iter()
        .find(|case| case.file.contains("straight-only"));
    let first = difference(tom.unwrap(), "pick", "1");
    let (was, is) = (first.before.clone().unwrap(), first.after.clone().unwrap());
    let line = |of: &str, rule: &str| {
        let mut lines = first.lines.iter();
        let found = lines.find(|line| line.of == of && line.rule == rule);
        let found = found.unwrap_or_else(|| panic!("{rule} of {of} in {:#?}", first.lines));
        (found.before.clone(), found.after.clone(), found.by_rule)
    };
    let points = |text: &str| Some(text.to_owned());
    // A changed rule has other points, a new one points where there was no line.
    let plastic = line(&was, "polyester-for-straight");
    assert_eq!(plastic, (points("+14 points"), points("+1 point"), true));
    assert_eq!(
        line(&is, "pearl-for-straight"),
        (None, points("+30 points"), true)
    );
}

/// A rule that is gone shows in the settled weight, though the lighter ball never had that line.
#[test]
fn a_settled_weight_names_the_rule_that_held_it() {
    let off = with("switch_off: [heavier-carries-better]");
    let diff = RulesDiff::between(&Shop::demo().unwrap(), &off, &demo());
    let weights: Vec<&OutcomeChange> = diff
        .changed
        .iter()
        .flat_map(|case| &case.differences)
        .filter(|d| d.kind == "settled" && d.name == "weight")
        .collect();
    assert!(!weights.is_empty());
    for weight in weights {
        let mut lines = weight.lines.iter();
        assert!(lines.any(|line| line.rule == "heavier-carries-better" && line.by_rule));
    }
}

#[test]
fn swapped_it_is_mirrored() {
    for overlay in [
        A_64TH_OVER,
        LESS_PLASTIC,
        "switch_off: [heavier-carries-better, draw-lines]",
    ] {
        let (old, new) = (Shop::demo().unwrap(), with(overlay));
        let there = RulesDiff::between(&old, &new, &demo());
        let mut back = RulesDiff::between(&new, &old, &demo());
        assert!(!there.is_empty());
        for rule in &mut back.rules {
            rule.kind = match rule.kind {
                ChangeKind::Added => ChangeKind::Removed,
                ChangeKind::Removed => ChangeKind::Added,
                kind => kind,
            };
        }
        for difference in back
            .changed
            .iter_mut()
            .flat_map(|case| &mut case.differences)
        {
            std::mem::swap(&mut difference.before, &mut difference.after);
            difference.more = difference.more.map(|more| -more);
            for line in &mut difference.lines {
                std::mem::swap(&mut line.before, &mut line.after);
            }
        }
        let ids = |diff: &RulesDiff| -> Vec<(String, ChangeKind)> {
            diff.rules.iter().map(|r| (r.id.clone(), r.kind)).collect()
        };
        assert_eq!(ids(&there), ids(&back));
        assert_eq!(there.changed, back.changed);
        assert_eq!(there.unchanged, back.unchanged);
    }
}

#[test]
fn other_words_change_no_consultation() {
    let words = with(
        "
        subject: work
        rules:
          - id: draw-lines
            override: true
            step: 40
            then: Draw all lines.
            because: Lines show a mistake before the drill does.
            source: common practice
        ",
    );
    let diff = RulesDiff::between(&Shop::demo().unwrap(), &words, &demo());
    assert!(diff.changed.is_empty());
    let kinds: Vec<_> = diff.rules.iter().map(|r| (&*r.id, r.kind)).collect();
    assert_eq!(kinds, [("draw-lines", ChangeKind::Text)]);
}

#[test]
fn a_step_that_moves_is_told_as_an_order() {
    let moved = with(
        "
        subject: work
        rules:
          - id: draw-lines
            override: true
            step: 55
            then: Draw centreline, midline and pin line; mark spans and bridge.
            because: Lines show a mistake before the drill does.
            source: common practice
        ",
    );
    let diff = RulesDiff::between(&Shop::demo().unwrap(), &moved, &demo());
    let case = diff.changed.first().unwrap();
    let order = difference(case, "step", "work order");
    let place = |text: &Option<String>, id: &str| text.as_ref().unwrap().find(id).unwrap();
    assert!(place(&order.before, "draw-lines") < place(&order.before, "read-back"));
    assert!(place(&order.after, "draw-lines") > place(&order.after, "read-back"));
}

/// The overlay of a case, against the very number that the case argues.
#[test]
fn the_overlay_of_a_case_comes_out_as_the_case_says() {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/cases");
    let file = folder.join("v-01-bent-joints-full-card.yaml");
    // v-02 is the same hand with a card that isn't copied: its chart gives 1/4 F at 3 3/4, and 1/8 more for a thumb that bends far.
    let failed = folder.join("v-02-bent-joints-card-that-failed.yaml");
    let cases = Case::read_all(&[file, failed]).unwrap();
    let older = with("follow: [thumb-forward-older-extrapolated]");
    let diff = RulesDiff::between(&Shop::demo().unwrap(), &older, &cases);
    // A fit that works is copied whatever the chart says.
    let files: Vec<&str> = diff.changed.iter().map(|case| &*case.file).collect();
    assert_eq!(files.len(), 1, "{files:?}");
    assert_eq!(diff.unchanged, 1);
    let case = diff.changed.first().unwrap();
    let pitch = difference(case, "number", "thumb.forward_pitch");
    // The older chart lies 1/8 further back: halfway between 1/4 F at 3 1/2 and 0 at 4 is 1/8 F, and 1/8 more.
    assert_eq!(pitch.before.as_deref(), Some("3/8 F"));
    assert_eq!(pitch.after.as_deref(), Some("1/4 F"));
    let rules: Vec<&str> = pitch.lines.iter().map(|line| &*line.rule).collect();
    assert!(rules.contains(&"thumb-forward-extrapolated"));
    assert!(rules.contains(&"thumb-forward-older-extrapolated"));
}

#[test]
fn text_and_json_say_the_same() {
    let diff = RulesDiff::between(&Shop::demo().unwrap(), &with(A_64TH_OVER), &demo());
    let text = rules_diff_text(&diff);
    let json: serde_json::Value = serde_json::from_str(&rules_diff_json(&diff)).unwrap();
    let changed = json["changed"].as_array().unwrap();
    assert_eq!(changed.len(), diff.changed.len());
    for case in changed {
        assert!(text.contains(case["case"].as_str().unwrap()));
    }
    let all = diff.changed.len() + diff.unchanged;
    assert!(text.ends_with(&format!(
        "{} of {all} consultations come out otherwise.\n",
        changed.len()
    )));
    assert!(text.contains("thumb.bore: 25/32 in -> 51/64 in"));
}

/// Straight bowlers' plastic balls get 14 points more, each of them, so the order stays.
const MORE_PLASTIC: &str = "
subject: ball
rules:
  - id: more-plastic
    when: { bowler.intent: straight, ball.cover: polyester }
    points: 14
    because: We have always liked it.
    source: own choice
";

#[test]
fn the_same_pick_with_other_points_is_told() {
    let diff = RulesDiff::between(&Shop::demo().unwrap(), &with(MORE_PLASTIC), &demo());
    let mut cases = diff.changed.iter();
    let tom = cases.find(|case| case.file.contains("straight-only"));
    let tom = tom.unwrap();
    for place in ["1", "2", "3"] {
        let pick = difference(tom, "pick", place);
        assert_eq!(pick.before, pick.after);
        assert_eq!(pick.more, Some(140));
        let lines: Vec<_> = pick.lines.iter().map(|l| (&*l.rule, l.by_rule)).collect();
        assert_eq!(lines, [("more-plastic", true)]);
    }
    // Every plastic ball is told, no other, and nothing else is otherwise.
    assert!(tom.differences.iter().any(|d| d.kind == "further"));
    for difference in &tom.differences {
        assert!(["pick", "further"].contains(&difference.kind));
        assert!(
            difference
                .lines
                .iter()
                .any(|line| line.rule == "more-plastic")
        );
    }
    let text = rules_diff_text(&diff);
    assert!(
        text.contains("  pick 1: same, daisy@14, +14 points\n"),
        "{text}"
    );
    assert!(!text.contains("come out the same"));
}

/// Points on one cover move balls past others that have the very lines they had.
#[test]
fn every_moved_pick_and_number_names_a_line() {
    let covers = ["solid", "pearl", "hybrid", "polyester", "urethane"];
    let points = [-30, -9, -3, 3, 9, 30];
    let mut moved = 0;
    for (cover, points) in covers.iter().flat_map(|c| points.map(|p| (c, p))) {
        let overlay = format!(
            "
            subject: ball
            rules:
              - id: one-cover
                when: {{ ball.cover: {cover} }}
                points: {points}
                because: We like it so.
                source: own choice
            "
        );
        let diff = RulesDiff::between(&Shop::demo().unwrap(), &with(&overlay), &demo());
        for case in &diff.changed {
            for difference in &case.differences {
                if ["pick", "number"].contains(&difference.kind) {
                    assert!(
                        !difference.lines.is_empty(),
                        "{cover} {points}: {difference:?}"
                    );
                }
                if difference.kind == "pick" && difference.before != difference.after {
                    moved += 1;
                    let mut lines = difference.lines.iter();
                    let by_rule = lines.any(|line| line.rule == "one-cover" && line.by_rule);
                    assert!(by_rule, "{cover} {points}: {difference:?}");
                }
            }
        }
    }
    assert!(moved > 20, "{moved}");
}

/// A ball that is ruled out loses its other lines for that alone, even those of a rule that is changed too.
#[test]
fn lines_that_vanish_with_their_ball_follow() {
    let new = with(
        "
        subject: ball
        rules:
          - id: polyester-for-straight
            override: true
            when: { bowler.intent: straight, ball.cover: polyester }
            points: 20
            because: We like it more.
            source: own choice
          - id: no-plastic
            when: { ball.cover: polyester }
            rule_out: true
            because: We have none.
            source: own choice
        ",
    );
    let diff = RulesDiff::between(&Shop::demo().unwrap(), &new, &demo());
    let mut cases = diff.changed.iter();
    let tom = cases.find(|case| case.file.contains("straight-only"));
    let first = difference(tom.unwrap(), "pick", "1");
    let was = first.before.clone().unwrap();
    let line = |rule: &str| {
        let mut lines = first.lines.iter();
        lines
            .find(|line| line.of == was && line.rule == rule)
            .unwrap()
    };
    assert_eq!(line("no-plastic").after.as_deref(), Some("ruled out"));
    assert!(line("no-plastic").by_rule);
    assert_eq!(line("polyester-for-straight").after, None);
    assert!(!line("polyester-for-straight").by_rule);
}

#[test]
fn a_changed_rule_says_what_is_changed() {
    let ours = "
        assumptions:
          - { fact: bowler.age, value: 40, because: Not asked., source: own choice }
        glossary:
          - { word: pearl, meaning: A shiny cover. }
        subject: ball
        rules:
          - id: polyester-for-straight
            override: true
            when: { bowler.intent: straight, ball.cover: polyester, bowler.age: { at_least: 20 } }
            points: 20
            because: We like it more.
            source: own choice
        ";
    let diff = RulesDiff::between(&Shop::demo().unwrap(), &with(ours), &demo());
    let parts: Vec<_> = diff.rules.iter().flat_map(|rule| &rule.parts).collect();
    let parts: Vec<_> = parts
        .iter()
        .map(|part| (part.name, part.before.as_deref(), part.after.as_deref()))
        .collect();
    let grown_up = "bowler.age is at least 20 years";
    assert_eq!(
        parts,
        [
            ("value", Some("30 years"), Some("40 years")),
            ("when", None, Some(grown_up)),
            ("points", Some("14 points"), Some("20 points")),
        ]
    );
    let words: Vec<&str> = diff.words.iter().map(|word| &*word.word).collect();
    assert_eq!(words, ["pearl"]);
    let text = rules_diff_text(&diff);
    for said in [
        "  assumption bowler.age (ours.yaml): 30 years -> 40 years\n",
        "(ours.yaml): when none -> bowler.age is at least 20 years; 14 points -> 20 points\n",
        "Words explained otherwise: pearl\n",
    ] {
        assert!(text.contains(said), "{said} in {text}");
    }
}
