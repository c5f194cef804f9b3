//! The built program, through a pipe: one line an answer, the profile at the end, whatever comes in.

use std::fs;
use std::io::{Read, Write};
use std::path::Path;
use std::process::{Child, Command, Output, Stdio};

use spanwright::bowler::Bowler;
use spanwright::document::{Document, Format};

fn start(arguments: &[&str]) -> Child {
    Command::new(env!("CARGO_BIN_EXE_spanwright"))
        .arg("ask")
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap()
}

fn ask(arguments: &[&str], said: &[u8]) -> Output {
    let mut child = start(arguments);
    let mut input = child.stdin.take().unwrap();
    let said = said.to_vec();
    let writer = std::thread::spawn(move || {
        // The program may have heard enough before all is written.
        let _ = input.write_all(&said);
    });
    let output = child.wait_with_output().unwrap();
    writer.join().unwrap();
    output
}

fn profile(output: &Output) -> Bowler {
    let text = String::from_utf8_lossy(&output.stderr);
    assert_eq!(output.status.code(), Some(0), "{text}");
    let document = Document::parse("printed", &output.stdout, Format::Yaml).unwrap();
    Bowler::read(&document).unwrap()
}

fn talk(output: &Output) -> String {
    String::from_utf8(output.stderr.clone()).unwrap()
}

#[test]
fn an_interview_ends_with_a_profile() {
    let said = "straight\n".to_owned() + &"I don't know\n".repeat(30);
    let output = ask(&[], said.as_bytes());
    let bowler = profile(&output);
    assert_eq!(bowler.answer("bowler.intent"), Some(0));
    assert!(bowler.to_yaml().contains("unknown"));
    let talk = talk(&output);
    assert!(
        talk.contains("How would you like to roll the ball?"),
        "{talk}"
    );
    assert!(talk.contains("questions asked, "), "{talk}");
    assert!(
        talk.contains("Save what was printed as FILE.yaml."),
        "{talk}"
    );
    assert!(talk.contains("spanwright advise FILE.yaml"), "{talk}");
}

#[test]
fn nobody_is_asked_twice_for_what_they_do_not_know() {
    let output = ask(&[], "dunno\n".repeat(40).as_bytes());
    let bowler = profile(&output);
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("bowler.yaml");
    fs::write(&file, bowler.to_yaml()).unwrap();
    let again = ask(&[file.to_str().unwrap()], b"");
    assert_eq!(profile(&again), bowler);
    assert!(
        talk(&again).contains("0 questions asked"),
        "{}",
        talk(&again)
    );
}

#[test]
fn one_step_back_is_possible() {
    let bowler = profile(&ask(&[], b"hook\nback\nstraight\n"));
    assert_eq!(bowler.answer("bowler.intent"), Some(0));
    let output = ask(&[], b"back\nhook\n");
    assert!(talk(&output).contains("This is the first question."));
    assert_eq!(profile(&output).answer("bowler.intent"), Some(2));
}

#[test]
fn help_and_silence_ask_again() {
    let output = ask(&[], b"help\n\n?\nstraight\nstop\n");
    let talk = talk(&output);
    assert_eq!(
        talk.matches("Straight means the ball keeps its line.")
            .count(),
        2,
        "{talk}"
    );
    assert_eq!(
        talk.matches("I didn't hear an answer.").count(),
        1,
        "{talk}"
    );
    assert!(talk.contains("1 question asked"), "{talk}");
    assert_eq!(profile(&output).answer("bowler.intent"), Some(0));
}

#[test]
fn nonsense_changes_nothing() {
    for said in [
        b"colourless green ideas\n".repeat(2_000),
        b"\xff\xfe\x00\x01\n".repeat(50),
        [b"x".repeat(3_000_000), b"\n".to_vec()].concat(),
        [b"x".repeat(3_000_000)].concat(),
        b"\n".repeat(2_000),
    ] {
        let output = ask(&[], &said);
        assert_eq!(profile(&output), Bowler::unheard());
        assert!(output.stderr.len() < 1_000_000);
        assert!(!talk(&output).contains('\u{1b}'));
    }
}

#[test]
fn after_nonsense_an_answer_still_counts() {
    let said = [b"blah\n".repeat(100), b"straight\r\n".to_vec()].concat();
    assert_eq!(profile(&ask(&[], &said)).answer("bowler.intent"), Some(0));
}

#[test]
fn nothing_said_is_a_profile_of_nothing() {
    let output = ask(&[], b"");
    assert_eq!(profile(&output), Bowler::unheard());
    assert!(talk(&output).contains("0 questions asked"));
}

#[test]
fn the_end_in_the_middle_keeps_what_was_said() {
    // The last line lacks its end, and counts.
    let bowler = profile(&ask(&[], b"hook\nleague"));
    assert_eq!(bowler.answer("bowler.intent"), Some(2));
    assert_eq!(bowler.answer("bowler.experience"), Some(1));
}

#[test]
fn a_file_has_every_answer_at_once() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("bowler.yaml");
    let name = file.to_str().unwrap();
    let mut child = start(&["-o", name]);
    let mut input = child.stdin.take().unwrap();
    input.write_all(b"straight\n").unwrap();
    wait_for(&file, "intent: straight");
    input.write_all(b"I don't know\n").unwrap();
    wait_for(&file, "unknown");
    drop(input);
    let output = child.wait_with_output().unwrap();
    assert_eq!(output.status.code(), Some(0));
    assert!(output.stdout.is_empty());
    // And it goes on from there.
    let output = ask(&[name, "-o", name], b"dunno\n");
    assert_eq!(output.status.code(), Some(0));
    let bowler = Bowler::read(&Document::read(&file).unwrap()).unwrap();
    assert_eq!(bowler.answer("bowler.intent"), Some(0));
    assert!(talk(&output).contains(name));
}

fn wait_for(file: &Path, words: &str) {
    for _ in 0..600 {
        if fs::read_to_string(file).is_ok_and(|text| text.contains(words)) {
            return;
        }
        std::thread::sleep(std::time::Duration::from_millis(50));
    }
    panic!("{words} never came");
}

#[test]
fn a_name_that_could_not_be_read_again_is_refused_at_once() {
    let folder = tempfile::tempdir().unwrap();
    for name in ["ask.json", "prof1", "ask.csv", ".yaml"] {
        let file = folder.path().join(name);
        let output = ask(&["-o", file.to_str().unwrap()], b"hook\n");
        assert_eq!(output.status.code(), Some(1), "{name}");
        let talk = talk(&output);
        assert!(talk.contains("must end in .yaml or .yml"), "{talk}");
        assert!(!talk.contains("How would you like"), "{talk}");
        assert!(!file.exists(), "{name}");
    }
    let file = folder.path().join("ask.YML");
    let name = file.to_str().unwrap();
    assert_eq!(profile_in(&ask(&["-o", name], b"hook\n"), &file), Some(2));
}

fn profile_in(output: &Output, file: &Path) -> Option<i64> {
    assert_eq!(output.status.code(), Some(0), "{}", talk(output));
    let bowler = Bowler::read(&Document::read(file).unwrap()).unwrap();
    bowler.answer("bowler.intent")
}

/// Who has no drilled ball can't say what is wrong with it.
#[test]
fn no_fitting_ball_leaves_nothing_to_clear_up() {
    let said = "hook\nleague\n".to_owned() + &"no\n".repeat(3);
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("bowler.yaml");
    fs::write(&file, "experience: league\nfit_card: { works: no }\n").unwrap();
    let output = ask(&[file.to_str().unwrap()], said.as_bytes());
    assert!(
        !talk(&output).contains("What is wrong with it"),
        "{}",
        talk(&output)
    );
    assert_eq!(
        profile(&output).questions_about("card.complaint").count(),
        0
    );
    // A card that tells of a ball is still asked about.
    for card in ["grip: fingertip", "bores: { thumb: 1 in }", "ball: Cowslip"] {
        let text = format!("fit_card: {{ works: no, {card} }}");
        let document = Document::parse("card", text.as_bytes(), Format::Yaml).unwrap();
        let bowler = Bowler::read(&document).unwrap();
        assert_eq!(
            bowler.questions_about("card.complaint").count(),
            1,
            "{card}"
        );
    }
}

#[test]
fn choices_named_by_number_are_said_back() {
    // Where only one answer is taken the first line is asked back to, and the second is the answer.
    let said = "hook\nleague\n".to_owned() + &"1 and 3\ndunno\n".repeat(20);
    let output = ask(&[], said.as_bytes());
    let talk = talk(&output);
    assert!(talk.contains("(That is: ordinary, dry.)"), "{talk}");
    assert!(talk.contains("Which one is it: 1 or 3?"), "{talk}");
}

#[cfg(unix)]
#[test]
fn an_end_and_an_interruption_are_one_of_the_two() {
    for wait in 0..12_u64 {
        let mut child = start(&[]);
        let mut input = child.stdin.take().unwrap();
        input.write_all(b"hook\n").unwrap();
        // The first question is asked once interruptions are heard.
        let mut error = child.stderr.take().unwrap();
        let mut heard = String::new();
        let mut piece = [0; 256];
        while !heard.contains("first own ball") {
            let read = error.read(&mut piece).unwrap();
            assert!(read > 0, "{heard}");
            heard.push_str(&String::from_utf8_lossy(&piece[..read]));
        }
        let number = child.id().to_string();
        let interrupt = std::thread::spawn(move || {
            std::thread::sleep(std::time::Duration::from_micros(wait * 100));
            Command::new("kill").args(["-INT", &number]).output()
        });
        drop(input);
        error.read_to_string(&mut heard).unwrap();
        let output = child.wait_with_output().unwrap();
        let _ = interrupt.join();
        let ended = heard.contains("That's all for now");
        let interrupted = heard.contains("Interrupted. What was answered is kept.");
        assert!(
            heard.contains("Save what was printed as FILE.yaml."),
            "{heard}"
        );
        match output.status.code() {
            Some(0) => assert!(ended && !interrupted, "{heard}"),
            Some(130) => assert!(interrupted && !ended, "{heard}"),
            // The signal may come when the handler is gone, after all was said.
            other => assert!(
                other.is_none() && ended && !interrupted,
                "{other:?} {heard}"
            ),
        }
        let text = String::from_utf8(output.stdout).unwrap();
        assert_eq!(text.matches("intent: hook").count(), 1, "{text}");
    }
}

#[cfg(unix)]
#[test]
fn an_interruption_keeps_what_was_said() {
    let mut child = start(&[]);
    let mut input = child.stdin.take().unwrap();
    input.write_all(b"hook\n").unwrap();
    // The second question is asked once the first answer is kept.
    let mut error = child.stderr.take().unwrap();
    let mut heard = String::new();
    let mut piece = [0; 256];
    while !heard.contains("first own ball") {
        let read = error.read(&mut piece).unwrap();
        assert!(read > 0, "{heard}");
        heard.push_str(&String::from_utf8_lossy(&piece[..read]));
    }
    let interrupt = Command::new("kill")
        .args(["-INT", &child.id().to_string()])
        .status();
    assert!(interrupt.unwrap().success());
    let output = child.wait_with_output().unwrap();
    assert_eq!(output.status.code(), Some(130));
    let bowler =
        Bowler::read(&Document::parse("printed", &output.stdout, Format::Yaml).unwrap()).unwrap();
    assert_eq!(bowler.answer("bowler.intent"), Some(2));
    drop(input);
}

#[test]
fn a_profile_at_fault_is_told_with_its_place() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("bowler.yaml");
    fs::write(&file, "intent: strait\n").unwrap();
    let output = ask(&[file.to_str().unwrap()], b"hook\n");
    assert_eq!(output.status.code(), Some(1));
    assert!(
        talk(&output).contains("bowler.yaml:1:9"),
        "{}",
        talk(&output)
    );
    assert!(output.stdout.is_empty());
    let missing = ask(&["nowhere.yaml"], b"");
    assert_eq!(missing.status.code(), Some(1));
    let both = ask(&["-"], b"");
    assert_eq!(both.status.code(), Some(1));
    assert!(talk(&both).contains("standard input holds the answers"));
    let place = ask(&["-o", "nowhere/bowler.yaml"], b"hook\n");
    assert_eq!(place.status.code(), Some(1));
}

#[test]
fn programs_get_the_next_question_as_a_document() {
    let output = ask(
        &["-", "--json"],
        b"intent: straight\nexperience: first_ball\nball_now: { whose: house }\n",
    );
    assert_eq!(output.status.code(), Some(0), "{}", talk(&output));
    let document: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(document["question"], "ask");
    assert_eq!(document["done"], false);
    let answer = &document["next"]["answer"];
    assert!(
        document["next"]["ask"].as_str().unwrap().ends_with('?'),
        "{document}"
    );
    assert_eq!(answer["not_known"], "I don't know");
    let every = "unknown";
    let known = format!(
        "intent: {every}\nexperience: {every}\nball_now: {every}\nhold_test: {every}\nthumb: {every}\nage: {every}\n\
         body_weight: {every}\naches: {every}\ninjuries: {every}\nbudget: {every}\ncolour_wish: {every}\ntarget_weight: {every}\n"
    );
    let output = ask(&["-", "--json"], known.as_bytes());
    let document: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(document["done"], true, "{document}");
    assert_eq!(document["saved"], 0);
}
