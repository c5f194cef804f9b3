//! The README says what is so: its commands, its example files, its columns. Its Rust example is a documentation test.

#![allow(clippy::unwrap_used)]

use std::fs;
use std::path::Path;
use std::process::Command;

use spanwright::advice::{Over, Shop, ShopFiles};
use spanwright::bowler::Bowler;
use spanwright::document::{Document, Format};

fn file(name: &str) -> String {
    fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(name)).unwrap()
}

/// The code blocks of a language.
fn blocks<'t>(text: &'t str, language: &str) -> Vec<&'t str> {
    let fence = format!("```{language}\n");
    text.split(&*fence)
        .skip(1)
        .map(|rest| rest.split("```").next().unwrap())
        .collect()
}

#[test]
fn the_two_commands_stand_near_the_top() {
    let readme = file("README.md");
    let block = blocks(&readme, "console")[0];
    let commands: Vec<&str> = block
        .lines()
        .map(|line| line.trim_start_matches("$ "))
        .collect();
    let advise = "cargo run --release -- advise catalog-demo/bowlers/first-ball.yaml";
    assert_eq!(commands, [advise, "cargo test"]);
    let ci = file(".ci/run");
    for command in commands {
        assert!(ci.contains(command), "{command} isn't run in CI");
    }
}

/// A word with a star is the files that a shell makes of it.
fn as_a_shell_would(word: &str) -> Vec<String> {
    let Some(folder) = word.strip_suffix("/*.yaml") else {
        return vec![word.to_owned()];
    };
    let entries = fs::read_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join(folder)).unwrap();
    let names = entries.map(|entry| entry.unwrap().file_name().into_string().unwrap());
    let names = names.filter(|name| name.ends_with(".yaml"));
    let mut paths: Vec<String> = names.map(|name| format!("{folder}/{name}")).collect();
    paths.sort();
    paths
}

#[test]
fn every_command_is_understood() {
    let readme = file("README.md");
    let folder = tempfile::tempdir().unwrap();
    let ours = folder.path().join("our-rules.yaml");
    let shown = blocks(&readme, "yaml");
    let rules = shown.iter().find(|b| b.starts_with("# our-rules.yaml"));
    fs::write(&ours, rules.unwrap()).unwrap();
    for line in blocks(&readme, "console").concat().lines() {
        let Some((_, words)) = line.split_once(" -- ") else {
            continue;
        };
        let words = words.split('#').next().unwrap();
        let bowler = match words.contains("--used") || words.contains("refit") {
            true => "catalog-demo/bowlers/hanging-thumb.yaml",
            false => "catalog-demo/bowlers/first-ball.yaml",
        };
        let page = folder.path().join("sheet.html");
        let drawing = folder.path().join("diff.svg");
        let words = words
            .replace("BOWLER", bowler)
            .replace("BALL", "catalog-demo/balls/drilled-yarrow.yaml")
            .replace("our-rules.yaml", ours.to_str().unwrap())
            .replace("sheet.html", page.to_str().unwrap())
            .replace("diff.svg", drawing.to_str().unwrap());
        let output = Command::new(env!("CARGO_BIN_EXE_spanwright"))
            .current_dir(env!("CARGO_MANIFEST_DIR"))
            .args(words.split_whitespace().flat_map(as_a_shell_would))
            .output()
            .unwrap();
        let complaint = String::from_utf8_lossy(&output.stderr);
        assert!(output.status.success(), "{words}: {complaint}");
    }
}

#[test]
fn the_profile_and_the_rules_shown_are_read_without_fault() {
    let readme = file("README.md");
    let blocks = blocks(&readme, "yaml");
    let named = |name: &str| {
        let name = format!("# {name}");
        *blocks
            .iter()
            .find(|block| block.starts_with(&name))
            .unwrap()
    };
    let profile = Document::parse("bowler.yaml", named("bowler.yaml").as_bytes(), Format::Yaml);
    let bowler = Bowler::read(&profile.unwrap()).unwrap();

    let folder = tempfile::tempdir().unwrap();
    let rules = folder.path().join("our-rules.yaml");
    fs::write(&rules, named("our-rules.yaml")).unwrap();
    let shop = Shop::open(&ShopFiles {
        rules: vec![rules],
        ..ShopFiles::default()
    });
    shop.unwrap_or_else(|trouble| panic!("{trouble}"))
        .advise(&bowler)
        .unwrap();
}

#[test]
fn the_unsure_profile_is_told_how_sure_it_is() {
    let readme = file("README.md");
    let blocks = blocks(&readme, "yaml");
    let mut blocks = blocks.iter();
    let block = blocks.find(|block| block.starts_with("# unsure.yaml"));
    let profile = Document::parse("unsure.yaml", block.unwrap().as_bytes(), Format::Yaml);
    let bowler = Bowler::read(&profile.unwrap()).unwrap();
    let sure = Shop::demo().unwrap().how_sure(&bowler).unwrap();
    let stated = sure.ranges().iter();
    let stated = stated.filter(|range| range.give_or_take().is_some());
    assert_eq!(stated.count(), 3);
    assert!(!matches!(sure.over(), Over::NothingStated));
}

#[test]
fn the_columns_are_those_of_the_demo() {
    let readme = file("README.md");
    for name in ["models.csv", "cores.csv", "shelf.csv"] {
        let part = readme.split(&format!("`{name}`, one row")).nth(1).unwrap();
        let table = part.split("\n\n").nth(1).unwrap();
        let rows = table.lines().skip(2);
        let columns: Vec<&str> = rows.map(|row| row.split('`').nth(1).unwrap()).collect();
        let catalog = file(&format!("catalog-demo/{name}"));
        assert_eq!(columns.join(","), catalog.lines().next().unwrap(), "{name}");
    }
}
