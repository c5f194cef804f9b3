//! Reading cases: profiles, cases, and everything that can be wrong with one.

use spanwright::advice::{Answer, Case, Question, Shop};
use spanwright::document::{Document, Faults, Format};

fn read(text: &str) -> Result<Case, Faults> {
    Case::read(&Document::parse("case.yaml", text.as_bytes(), Format::Yaml).unwrap())
}

fn faults(text: &str) -> Vec<String> {
    let faults = read(text).unwrap_err();
    faults.iter().map(|fault| fault.to_string()).collect()
}

const WHOLE: &str = "
name: A case
why: To see.
source: invented
profile: { intent: straight }
expect: { cover: polyester }
";

#[test]
fn a_case_and_a_profile_are_told_apart() {
    let case = read(WHOLE).unwrap();
    assert_eq!(case.questions(), [Question::Advise]);
    assert_eq!(case.expected().len(), 1);
    let profile = read("name: Ada\nintent: straight\n").unwrap();
    assert_eq!(profile.questions(), [Question::Advise]);
    assert!(profile.expected().is_empty());
    let checked = read("intent: hook\nfit_check: { symptoms: none }\n").unwrap();
    assert_eq!(checked.questions(), [Question::Advise, Question::Refit]);
}

#[test]
fn a_case_asks_what_it_says() {
    let asks = |more: &str| {
        read(&format!("{WHOLE}{more}\n"))
            .unwrap()
            .questions()
            .to_vec()
    };
    assert_eq!(asks("refit: yes"), [Question::Refit]);
    assert_eq!(asks("used: yes"), [Question::Used]);
    assert_eq!(asks("ball: daisy"), [Question::Fit("daisy".to_owned())]);
    assert_eq!(asks("refit: no"), [Question::Advise]);
    assert_eq!(asks("upgrade: yes"), [Question::Upgrade]);
    let roll = |balls: &[&str], lane: Option<&str>| Question::Roll {
        balls: balls.iter().map(|&ball| ball.to_owned()).collect(),
        lane: lane.map(str::to_owned),
    };
    assert_eq!(asks("roll: [daisy@14]"), [roll(&["daisy@14"], None)]);
    assert_eq!(
        asks("roll: [the old one, daisy@14]\nlane: long-flat"),
        [roll(&["the old one", "daisy@14"], Some("long-flat"))]
    );
}

#[test]
fn a_roll_is_of_one_ball_or_two_and_a_lane_is_for_a_roll() {
    let told = |more: &str| faults(&format!("{WHOLE}{more}\n")).join("\n");
    for none_or_many in ["roll: []", "roll: [a, b, c]"] {
        let all = told(none_or_many);
        assert!(
            all.contains("one ball or two") && all.contains("case.yaml:7:"),
            "{all}"
        );
    }
    let all = told("lane: long-flat");
    assert!(
        all.contains("belongs to `roll`") && all.contains("case.yaml:7:"),
        "{all}"
    );
    let all = told("roll: [daisy, daisy]\nupgrade: yes");
    assert!(all.contains("one question"), "{all}");
}

#[test]
fn every_fault_is_told_at_its_place() {
    let found = faults(
        "name: A case\nwhy:\nprofil: {}\nprofile: { intnt: straight }\nexpect: {}\nrefit: maybe\n",
    );
    let all = found.join("\n");
    for (words, place) in [
        ("`why`", "case.yaml:2:"),
        ("source", "case.yaml:"),
        ("profil", "case.yaml:3:"),
        ("intnt", "case.yaml:4:"),
        ("expects nothing", "case.yaml:5:"),
        ("maybe", "case.yaml:6:"),
    ] {
        let mut found = found.iter();
        assert!(
            found.any(|f| f.contains(words) && f.contains(place)),
            "{words} at {place} in\n{all}"
        );
    }
}

#[test]
fn one_question_at_a_time() {
    let all = faults(&format!("{WHOLE}refit: yes\nball: daisy\n")).join("\n");
    assert!(all.contains("one question"), "{all}");
}

#[test]
fn an_overlay_and_prices_are_files_of_their_own() {
    let all = faults(&format!("{WHOLE}overlay: [1]\nprices: \"a: [\"\n")).join("\n");
    assert!(all.contains("text of a file"), "{all}");
    assert!(all.contains("case.yaml (prices)"), "{all}");
    // What is wrong inside shows when it is laid over.
    let case = read(&format!(
        "{WHOLE}overlay: |\n  switch_off: [no-such-rule]\n"
    ))
    .unwrap();
    let shop = Shop::demo().unwrap();
    let trouble = case.ask(&shop).unwrap_err().to_string();
    assert!(trouble.contains("no-such-rule"), "{trouble}");
    let told = shop.coverage(&[case]).unwrap_err().to_string();
    assert!(told.contains("case.yaml (overlay)"), "{told}");
}

#[test]
fn what_keeps_a_case_from_an_answer_is_told_with_its_file() {
    let case = read(&format!("{WHOLE}ball: dasy\n")).unwrap();
    let told = Shop::demo()
        .unwrap()
        .coverage(&[case])
        .unwrap_err()
        .to_string();
    assert!(
        told.contains("case.yaml") && told.contains("daisy"),
        "{told}"
    );
}

#[test]
fn the_demo_customers_can_be_asked() {
    let shop = Shop::demo().unwrap();
    for case in Case::demo().unwrap() {
        for answer in case.ask(&shop).unwrap() {
            match answer {
                Answer::Advice(advice) => assert_eq!(advice.digest(), shop.digest()),
                Answer::Refit(refit) => assert_eq!(Some(refit.bowler()), case.bowler().name()),
                Answer::Upgrade(path) => assert_eq!(path.digest(), shop.digest()),
                Answer::Roll(roll) => assert_eq!(roll.digest(), shop.digest()),
            }
        }
    }
}
