//! The printed sheet: one page of sound drawing for every demo bowler, harmless whatever a name says, and silent about health.

#![allow(clippy::unwrap_used, clippy::panic)]

#[path = "sheet/drawn.rs"]
mod drawn;

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use rstest::rstest;
use spanwright::advice::{Advice, Shop};
use spanwright::bowler::Bowler;
use spanwright::document::Document;
use spanwright::report::sheet;

use drawn::Drawn;

fn demo(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("catalog-demo/bowlers/{name}.yaml"))
}

/// The advice for a profile and the ball it puts first.
fn advice(profile: &Path) -> Advice {
    let shop = Shop::demo().unwrap();
    let bowler = Bowler::read(&Document::read(profile).unwrap()).unwrap();
    let first = shop.advise(&bowler).unwrap();
    match first.picks().first() {
        Some(pick) => shop.fit(&bowler, pick.ball()).unwrap(),
        None => first,
    }
}

fn draw(profile: &Path, ball: &str, into: &Path) -> Output {
    Command::new(env!("CARGO_BIN_EXE_spanwright"))
        .arg("sheet")
        .arg(profile)
        .args(["--ball", ball, "-o"])
        .arg(into)
        .output()
        .unwrap()
}

#[rstest]
fn every_demo_bowler_gets_one_sound_page(
    #[values(
        "first-ball",
        "straight-only",
        "league-tired-ball",
        "left-handed-child",
        "two-handed-no-thumb",
        "sore-thumb",
        "backup-bowler",
        "present",
        "knows-nothing"
    )]
    name: &str,
) {
    let advice = advice(&demo(name));
    let page = sheet::html(&advice);
    assert_eq!(page, sheet::html(&advice));
    let drawn = Drawn::read(&page);
    assert_eq!(drawn.faults(), Vec::<String>::new());
    assert!(Drawn::read(&sheet::svg(&advice)).faults().is_empty());

    // Without a thumb hole and a palm mark nobody knows where the grip centre is, so none is drawn.
    let drawn_centre = drawn.lines.iter().any(|line| line.role == "grip-centre");
    if let Some(drilling) = advice.drilling() {
        let thumb = drilling.holes().iter().any(|hole| hole.name() == "thumb");
        assert_eq!(drawn_centre, thumb || drilling.layout().is_some(), "{name}");
        for hole in drilling.holes().iter().filter(|_| drawn_centre) {
            let dot = format!("centre {}", hole.name());
            drawn.is_true(&dot, hole.mouth(), drilling.left_hand());
        }
    }

    let words = drawn.words().to_lowercase();
    // The order of work.
    let parts = [
        "1 ball and",
        "2 the grip",
        "3 sections",
        "4 layout",
        "5 weights",
        "6 defaults",
        "7 at the",
        "8 what",
    ];
    assert!(parts.iter().all(|part| words.contains(part)), "{words}");
    for secret in [
        "body weight",
        "ache",
        "sore",
        "doctor",
        "numbness",
        "swell",
        "injur",
    ] {
        assert!(!words.contains(secret), "{name}: {secret}");
    }
    let ready = advice.drill_today() && advice.drilling().is_some_and(|d| d.refusals().is_empty());
    assert_eq!(words.contains("not to be drilled"), !ready, "{name}");
}

#[test]
fn the_ending_says_what_is_drawn() {
    let folder = tempfile::tempdir().unwrap();
    for (name, start) in [
        ("a.svg", "<?xml"),
        ("a.html", "<!DOCTYPE html>"),
        ("B.HTM", "<!DOCTYPE html>"),
    ] {
        let file = folder.path().join(name);
        let output = draw(&demo("first-ball"), "harebell@12", &file);
        assert_eq!(
            output.status.code(),
            Some(0),
            "{}",
            String::from_utf8_lossy(&output.stderr)
        );
        assert!(output.stdout.is_empty());
        assert!(fs::read_to_string(&file).unwrap().starts_with(start));
    }
    for name in ["a.png", "a", "a.svg.bak"] {
        let file = folder.path().join(name);
        let output = draw(&demo("first-ball"), "harebell@12", &file);
        assert_eq!(output.status.code(), Some(1));
        let told = String::from_utf8_lossy(&output.stderr).into_owned();
        assert!(told.contains(".html") && told.contains(".svg"), "{told}");
        assert!(!file.exists());
    }
}

#[test]
fn a_file_that_cant_be_drawn_stays_as_it_was() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("old.svg");
    fs::write(&file, "old").unwrap();
    let output = draw(&demo("first-ball"), "no-such-ball", &file);
    assert_eq!(output.status.code(), Some(1));
    assert_eq!(fs::read_to_string(&file).unwrap(), "old");
    let output = draw(
        &demo("first-ball"),
        "harebell@12",
        &folder.path().join("nowhere/new.svg"),
    );
    assert_eq!(output.status.code(), Some(1));
    let words = String::from_utf8_lossy(&output.stderr).into_owned();
    assert!(
        words.contains("can't be written: there is no directory"),
        "{words}"
    );
}

/// The old ball is known by the name on its card; a weight that nobody knows is a line to write on.
#[test]
fn the_used_ball_is_named_on_its_sheet() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("old.svg");
    let mut command = Command::new(env!("CARGO_BIN_EXE_spanwright"));
    command.arg("sheet").arg(demo("league-tired-ball"));
    let output = command.args(["--used", "-o"]).arg(&file).output().unwrap();
    assert_eq!(output.status.code(), Some(0));
    let drawn = fs::read_to_string(&file).unwrap();
    assert!(drawn.contains(">the old solid<"));
    assert!(!drawn.contains(">27 in around<"));
}

#[test]
fn without_ball_or_file_it_is_misuse() {
    for arguments in [
        &["sheet", "x.yaml", "-o", "x.svg"][..],
        &["sheet", "x.yaml", "--ball", "daisy"],
    ] {
        let output = Command::new(env!("CARGO_BIN_EXE_spanwright"))
            .args(arguments)
            .output()
            .unwrap();
        assert_eq!(output.status.code(), Some(2));
    }
}

/// Both ways to name a ball are told, and both at once are refused.
#[rstest]
#[case(&["sheet", "x.yaml", "-o", "x.svg"])]
#[case(&["sheet", "x.yaml", "-o", "x.svg", "--ball", "daisy", "--used"])]
#[case(&["fit", "x.yaml"])]
#[case(&["fit", "x.yaml", "--used", "--ball", "daisy"])]
fn a_ball_is_named_or_it_is_the_used_one(#[case] arguments: &[&str]) {
    let mut command = Command::new(env!("CARGO_BIN_EXE_spanwright"));
    let output = command.args(arguments).output().unwrap();
    assert_eq!(output.status.code(), Some(2));
    let words = String::from_utf8_lossy(&output.stderr).into_owned();
    assert!(
        words.contains("--ball") && words.contains("--used"),
        "{words}"
    );
}

#[rstest]
#[case("<script>&\"'</script>")]
#[case("]]><!-- ${x} {{y}} -->")]
fn a_hostile_name_stays_a_name(#[case] name: &str) {
    let folder = tempfile::tempdir().unwrap();
    // A profile takes names of up to 200 letters.
    for name in [name.to_owned(), name.repeat(200 / name.len())] {
        let profile = folder.path().join("bowler.json");
        fs::write(&profile, serde_json::json!({ "name": name }).to_string()).unwrap();
        let page = sheet::html(&advice(&profile));
        assert!(!page.contains("<script"));
        let drawn = Drawn::read(&page);
        assert_eq!(drawn.faults(), Vec::<String>::new());
        let start: String = name.chars().take(12).collect();
        assert!(drawn.words().contains(&start), "{}", drawn.words());
    }
}
