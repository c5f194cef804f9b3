//! A result never replaces what it is made from, and no text takes a drawing's name.

use std::fs;
use std::path::{Path, PathBuf};

use rstest::rstest;

use crate::{demo, refused, said, spanwright};

/// A folder with a profile, a rule file, a case folder and a catalog of its own.
fn shop() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name);
    fs::copy(demo("league-tired-ball"), at("bowler.yaml")).unwrap();
    fs::write(at("rules.yaml"), "rules: []\n").unwrap();
    fs::write(at("ball.yaml"), "weight: 15 lb\n").unwrap();
    for name in ["shop", "shop/sub", "cases"] {
        fs::create_dir(at(name)).unwrap();
    }
    fs::copy(demo("first-ball"), at("cases/one.yaml")).unwrap();
    let demo_shop = Path::new(env!("CARGO_MANIFEST_DIR")).join("catalog-demo");
    for name in [
        "models.csv",
        "cores.csv",
        "shelf.csv",
        "prices.yaml",
        "lanes.yaml",
    ] {
        fs::copy(demo_shop.join(name), at("shop").join(name)).unwrap();
    }
    folder
}

/// `arguments` with each `@name` as a file of the folder.
fn placed(folder: &Path, arguments: &[&str]) -> Vec<PathBuf> {
    let place = |argument: &&str| match argument.strip_prefix('@') {
        Some(name) => folder.join(name),
        None => PathBuf::from(argument),
    };
    arguments.iter().map(place).collect()
}

#[rstest]
#[case::advise(&["advise", "@bowler.yaml", "-o"], "bowler.yaml", "bowler's profile")]
#[case::json(&["advise", "@bowler.yaml", "--json", "-o"], "bowler.yaml", "bowler's profile")]
#[case::fit(&["fit", "@bowler.yaml", "--ball", "daisy", "-o"], "bowler.yaml", "bowler's profile")]
#[case::refit(&["refit", "@bowler.yaml", "-o"], "bowler.yaml", "bowler's profile")]
#[case::sheet(&["sheet", "@bowler.yaml", "--ball", "daisy", "--rules", "@link.svg", "-o"], "link.svg", "a rule file")]
#[case::compare(&["compare", "@bowler.yaml", "daisy", "hawkbit", "-o"], "bowler.yaml", "bowler's profile")]
#[case::whatif(&["whatif", "@bowler.yaml", "-o"], "bowler.yaml", "bowler's profile")]
#[case::roll(&["roll", "@bowler.yaml", "--ball", "daisy", "-o"], "bowler.yaml", "bowler's profile")]
#[case::upgrade(&["upgrade", "@bowler.yaml", "-o"], "bowler.yaml", "bowler's profile")]
#[case::a_longer_way(&["upgrade", "@bowler.yaml", "-o"], "shop/sub/../../bowler.yaml", "bowler's profile")]
#[case::through_a_link(&["upgrade", "@bowler.yaml", "-o"], "link.yaml", "bowler's profile")]
#[case::from_a_link(&["upgrade", "@link.yaml", "-o"], "bowler.yaml", "bowler's profile")]
#[case::rules(&["upgrade", "@bowler.yaml", "--rules", "@rules.yaml", "-o"], "rules.yaml", "a rule file")]
#[case::catalog(&["upgrade", "@bowler.yaml", "--catalog", "@shop", "-o"], "shop/prices.yaml", "a file of the catalog")]
#[case::lanes(&["facts", "--catalog", "@shop", "-o"], "shop/lanes.yaml", "a file of the catalog")]
#[case::ask_rules(&["ask", "--rules", "@rules.yaml", "-o"], "rules.yaml", "a rule file")]
#[case::ask_json(&["ask", "@bowler.yaml", "--json", "-o"], "bowler.yaml", "bowler's profile")]
#[case::legal(&["legal", "@ball.yaml", "-o"], "ball.yaml", "the ball")]
#[case::calibrate(&["calibrate", "@cases/one.yaml", "@bowler.yaml", "-o"], "bowler.yaml", "a fit card")]
#[case::check(&["rules", "check", "@rules.yaml", "-o"], "rules.yaml", "a rule file")]
#[case::coverage(&["rules", "coverage", "@cases", "-o"], "cases/one.yaml", "a case")]
#[case::diff(&["rules", "diff", "built-in", "@rules.yaml", "-o"], "rules.yaml", "a rule file")]
#[case::diff_cases(&["rules", "diff", "built-in", "@rules.yaml", "--cases", "@cases/one.yaml", "-o"], "cases/one.yaml", "a case")]
fn no_output_replaces_an_input(
    #[case] arguments: &[&str],
    #[case] output: &str,
    #[case] called: &str,
) {
    let folder = shop();
    let link = |to: &str, from: &str| {
        std::os::unix::fs::symlink(folder.path().join(to), folder.path().join(from)).unwrap();
    };
    link("bowler.yaml", "link.yaml");
    link("rules.yaml", "link.svg");
    let output = folder.path().join(output);
    let before = fs::read(&output).unwrap();
    let mut arguments = placed(folder.path(), arguments);
    arguments.push(output.clone());
    let words = refused(&spanwright(&arguments));
    assert!(
        words.contains(called) && words.contains("name another file"),
        "{words}"
    );
    assert_eq!(fs::read(&output).unwrap(), before);
}

/// A profile is asked further where it lies, and an older answer beside the inputs is replaced.
#[test]
fn what_is_no_input_is_written_over() {
    let folder = shop();
    let at = |name: &str| folder.path().join(name);
    let upgrade = |output: &str| {
        fs::write(at(output), "old").unwrap();
        let arguments = ["upgrade", "@bowler.yaml", "--catalog", "@shop", "-o"];
        let mut arguments = placed(folder.path(), &arguments);
        arguments.push(at(output));
        said(spanwright(&arguments));
        assert_ne!(fs::read_to_string(at(output)).unwrap(), "old");
    };
    upgrade("answer.txt");
    upgrade("shop/answer.txt");
    let bowler = at("bowler.yaml");
    let output = spanwright([
        "ask".as_ref(),
        bowler.as_os_str(),
        "-o".as_ref(),
        bowler.as_os_str(),
    ]);
    assert_eq!(output.status.code(), Some(0));
}

#[rstest]
#[case::advise(&["advise", "@bowler.yaml"], "svg")]
#[case::fit(&["fit", "@bowler.yaml", "--ball", "daisy"], "html")]
#[case::upgrade(&["upgrade", "@bowler.yaml"], "html")]
#[case::capitals(&["upgrade", "@bowler.yaml"], "SVG")]
#[case::json(&["upgrade", "@bowler.yaml", "--json"], "png")]
#[case::roll(&["roll", "@bowler.yaml", "--ball", "daisy"], "html")]
#[case::roll_json(&["roll", "@bowler.yaml", "--ball", "daisy", "--json"], "pdf")]
#[case::sheet(&["sheet", "@bowler.yaml", "--ball", "daisy"], "pdf")]
#[case::ask(&["ask", "@bowler.yaml", "--json"], "svg")]
#[case::facts(&["facts"], "htm")]
#[case::check(&["rules", "check"], "svg")]
fn no_text_takes_a_drawings_name(#[case] arguments: &[&str], #[case] ending: &str) {
    let folder = shop();
    let output = folder.path().join("answer").with_extension(ending);
    let mut arguments = placed(folder.path(), arguments);
    arguments.extend([PathBuf::from("-o"), output.clone()]);
    let words = refused(&spanwright(&arguments));
    for told in ["`sheet`, into .svg or .html", "`roll`, into .svg"] {
        assert!(words.contains(told), "{words}");
    }
    assert!(!output.exists());
}
