//! A friction table that can't be is one fault, with the cover, the measure and the file of the rules; a ball told in two ways is asked about.

use std::fs;

use rstest::rstest;

use crate::{refused, said, spanwright};

const BOWLER: &str = "intent: hook\nexperience: league\nspeed: { value: 16 mph, where: release }\nrev_rate: 250 rpm\n\
    rotation: 45 deg\ntilt: 15 deg\nowned:\n";

/// A rule file of one rule.
fn rule(id: &str, subject: &str, more: &str) -> String {
    format!(
        "rules:\n  - id: {id}\n    subject: {subject}\n    {more}\n    because: X.\n    source: own choice\n"
    )
}

const SOLID: &str = "when: { roll.cover: solid }";

#[rstest]
#[case::far_too_little(rule("less", "friction.dry", &format!("{SOLID}\n    add: 0.5 less")), &["solid cover", "friction.dry comes to 0.", "`less` in own.yaml 0.500 less", "0.020 is the least"])]
#[case::far_too_much(rule("more", "friction.oil", &format!("{SOLID}\n    add: 0.5")), &["solid cover", "friction.oil comes to 0.5", "`more` in own.yaml 0.500", "0.100 is the most"])]
#[case::oil_above_dry(rule("less", "friction.dry", &format!("{SOLID}\n    add: 0.05 less")) + &rule("oil", "friction.oil", &format!("{SOLID}\n    add: 0.06")).replace("rules:\n", ""), &["solid cover", "the oil grips more than the dry", "`less` in own.yaml 0.050 less", "`oil` in own.yaml 0.060", "friction.oil is", "friction.dry is"])]
#[case::no_start(rule("dry-solid", "friction.dry", "override: true\n    when: { roll.cover: solid, roll.games: { above: 4000 games } }\n    start: 0.15"), &["solid cover", "no rule starts friction.dry", "`dry-solid` in own.yaml"])]
#[case::two_starts(rule("again", "friction.oil", &format!("{SOLID}\n    start: 0.03")), &["solid cover", "more than one rule starts friction.oil: again and oil-solid", "`again` in own.yaml"])]
fn a_friction_table_that_cant_be(#[case] rules: String, #[case] told: &[&str]) {
    let folder = tempfile::tempdir().unwrap();
    let file = |name: &str, text: &str| {
        let path = folder.path().join(name);
        fs::write(&path, text).unwrap();
        path.to_str().unwrap().to_owned()
    };
    let rules = file("own.yaml", &rules);
    let bowler = file(
        "bowler.yaml",
        &format!("{BOWLER}  - {{ name: red, cover: pearl, weight: 15 lb }}\n"),
    );
    let asked = [
        vec!["roll", &bowler, "--ball", "red", "--rules", &rules],
        vec!["upgrade", &bowler, "--rules", &rules],
        vec!["rules", "check", &rules],
    ];
    for arguments in asked {
        let words = refused(&spanwright(&arguments));
        assert!(
            words.starts_with("the friction table can't be used: "),
            "{words}"
        );
        let words = words.replace(&rules, "own.yaml");
        for told in told {
            assert!(words.contains(told), "{told}: {words}");
        }
    }
    // Whom to fit and what to sell goes by more than the roll.
    said(spanwright(["advise", &bowler, "--rules", &rules]));
}

#[test]
fn a_cover_that_the_model_has_not_is_asked_about() {
    let folder = tempfile::tempdir().unwrap();
    let profile = folder.path().join("bowler.yaml");
    let ask = |ball: &str| {
        fs::write(
            &profile,
            format!("{BOWLER}  - {{ name: red, {ball}, weight: 15 lb }}\n"),
        )
        .unwrap();
        let bowler = profile.to_str().unwrap();
        [
            vec!["roll", bowler, "--ball", "red"],
            vec!["upgrade", bowler],
            vec!["advise", bowler],
        ]
        .map(|arguments| {
            said(spanwright(&arguments))
                .split_whitespace()
                .collect::<Vec<_>>()
                .join(" ")
        })
    };
    let question =
        "For red, the cover is told as solid, yet Daisy has a polyester one. Which is right?";
    for text in ask("model: daisy, cover: solid") {
        assert!(text.contains(question), "{text}");
    }
    for text in ask("model: daisy, cover: polyester") {
        assert!(!text.contains("Which is right?"), "{text}");
    }
}

#[rstest]
#[case(&["--ball", "daisy", "--lane", ""], "no lane was named")]
#[case(&["--ball", "daisy", "--lane", " "], "no lane was named")]
#[case(&["--ball", "daisy@"], "no weight stands behind the `@` of `daisy@`")]
fn what_was_left_empty_is_said(#[case] more: &[&str], #[case] told: &str) {
    let folder = tempfile::tempdir().unwrap();
    let profile = folder.path().join("bowler.yaml");
    fs::write(&profile, format!("{BOWLER}  - {{ cover: pearl }}\n")).unwrap();
    let arguments = ["roll", profile.to_str().unwrap()];
    let words = refused(&spanwright(arguments.iter().chain(more)));
    assert!(words.contains(told), "{words}");
}
