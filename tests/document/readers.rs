//! Readers, faults as people see them, files, and what holds for any bytes.

use super::*;

const BOWLER: &str = "\
intent: strait
hand: both
games: lots
aches: wrist
extra: { a: 1 }
because: The wrist hurts # says the bowler
why: {name} is told
present: perhaps
thumb:
  gauge: 25/32
  gage: 26/32
notes: |
  two
  lines
empty:
";

fn read_bowler(document: &Document) -> Result<(), Faults> {
    let mut reader = Reader::new(document);
    let mut fields: Fields<'_> = reader.fields(document.root(), "the bowler").expect("a map");
    if let Some(node) = fields.take("intent") {
        reader.choice(node, "intent", &["straight", "learn", "hook"]);
    }
    if let Some(node) = fields.take("hand") {
        reader.choice(node, "hand", &["right", "left"]);
    }
    if let Some(node) = fields.take("games") {
        let count = |text: &str| {
            text.parse::<u32>()
                .map_err(|_| "expected a count such as 3".to_owned())
        };
        reader.value(node, "games", count);
    }
    if let Some(node) = fields.take("aches") {
        reader.list(node, "aches");
    }
    if let Some(node) = fields.take("because") {
        reader.sentence(node, "because");
    }
    if let Some(node) = fields.take("why") {
        reader.sentence(node, "why");
    }
    if let Some(node) = fields.take("present") {
        reader.flag(node, "present");
    }
    if let Some(node) = fields.take("notes") {
        reader.text(node, "notes");
    }
    if let Some(node) = fields.take("empty") {
        reader.text(node, "empty");
    }
    if let Some(node) = fields.take("thumb") {
        let mut thumb = reader.fields(node, "thumb").expect("a map");
        thumb.take("gauge");
        thumb.require("joint", &mut reader);
        thumb.close(&mut reader);
    }
    fields.require("speed", &mut reader);
    fields.close(&mut reader);
    reader.finish()
}

#[test]
fn a_reader_tells_every_fault_at_its_place() {
    let text = BOWLER.replace("why: {name} is told", "why: {name: is told}");
    let faults = read_bowler(&yaml(&text)).expect_err("faults");
    let expected = [
        "1:1+6 missing",
        "1:9+6 unknown-value",
        "2:7+4 unknown-value",
        "3:8+4 bad-value",
        "4:8+5 shape",
        "5:1+5 unknown-key",
        "6:10+15 cut-short",
        "7:6+1 shape",
        "8:10+7 unknown-value",
        "10:3+5 missing",
        "11:3+4 unknown-key",
        "12:8+1 shape",
        "15:7+0 shape",
    ];
    assert_eq!(shorts(&faults), expected, "{faults}");
    insta::assert_snapshot!("reader_faults", faults.to_string());
}

#[test]
fn a_reason_that_begins_with_a_brace_is_told_apart() {
    let faults = parse(BOWLER, Format::Yaml).expect_err("a fault");
    insta::assert_snapshot!("brace", faults.to_string());
}

#[test]
fn a_reader_without_faults_is_fine() {
    let document = yaml("a: yes\nb: true\nc: \"no\"\nd: >\n  It is\n  so.\ne: [x]\nf: 1");
    let mut reader = Reader::new(&document);
    let mut fields = reader.fields(document.root(), "all").expect("a map");
    let mut flag = |key| fields.take(key).and_then(|node| reader.flag(node, key));
    assert_eq!(
        [flag("a"), flag("b"), flag("c")],
        [Some(true), Some(true), Some(false)]
    );
    let node = fields.require("d", &mut reader).expect("d");
    assert_eq!(reader.sentence(node, "d"), Some("It is so."));
    let rest = fields.rest();
    let keys: Vec<_> = rest.iter().filter_map(|(key, _)| key.text()).collect();
    assert_eq!(keys, ["e", "f"]);
    assert!(fields.rest().is_empty());
    fields.close(&mut reader);
    assert!(!reader.has_faults());
    assert_eq!(reader.finish(), Ok(()));
}

#[test]
fn a_column_with_an_unknown_name_is_told_once() {
    let document = parse("id,nmae\na,1\nb,2\nc,3\n", Format::Csv).expect("CSV");
    let mut reader = Reader::new(&document);
    for row in reader.list(document.root(), "rows").expect("a list") {
        let mut fields = reader.fields(row, "a row").expect("a map");
        fields.take("id");
        fields.take("name");
        fields.close(&mut reader);
    }
    let faults = reader.finish().expect_err("a fault");
    assert_eq!(shorts(&faults), ["1:4+4 unknown-key"]);
}

#[test]
fn at_most_a_hundred_faults_are_shown() {
    let text: String = (0..5000).map(|i| format!("k{i}: 1\n")).collect();
    let document = yaml(&text);
    let mut reader = Reader::new(&document);
    reader
        .fields(document.root(), "all")
        .expect("a map")
        .close(&mut reader);
    let faults = reader.finish().expect_err("faults");
    assert_eq!(faults.len(), 5000);
    assert_eq!(faults.iter().count(), 100);
    assert!(faults.to_string().ends_with("\n\nand 4900 more"));
    let mut many = Faults::new();
    many.merge(faults);
    many.extend((0..50).map(|_| Fault::new("x", "again")));
    assert_eq!(many.len(), 5050);
    assert!(many.to_string().ends_with("\n\nand 4950 more"));
}

#[test]
fn what_someone_wrote_is_shown_harmless_and_short() {
    assert_eq!(
        clean("a\u{1b}[31m\u{202e}b\n"),
        "a\u{fffd}[31m\u{fffd}b\u{fffd}"
    );
    let long = "x".repeat(300);
    let document = yaml(&format!("a: {long}"));
    let mut reader = Reader::new(&document);
    let mut fields = reader.fields(document.root(), "all").expect("a map");
    let node = fields.take("a").expect("a");
    reader.choice(node, "a", &["b"]);
    let faults = reader.finish().expect_err("a fault");
    insta::assert_snapshot!("long_line", faults.to_string());
}

#[test]
fn a_line_is_shown_without_its_escapes() {
    let faults = parse("\ta: \u{1b}[31mred\n", Format::Yaml).expect_err("a fault");
    let expected = "\
a.file:1:5: control character U+001B in the text [control-character]
  |
1 | \ta: \u{fffd}[31mred
  | \t   ^
  = help: delete it and type the text anew";
    assert_eq!(faults.to_string(), expected);
}

#[rstest]
#[case("strait", Some("straight"))]
#[case("Hook", Some("hook"))]
#[case("hok", Some("hook"))]
#[case("hookk", Some("hook"))]
#[case("zebra", None)]
#[case("x", None)]
#[case("", None)]
fn the_nearest_name(#[case] word: &str, #[case] expected: Option<&str>) {
    assert_eq!(nearest(word, ["straight", "learn", "hook"]), expected);
}

#[test]
fn files_are_found_or_told_why_not() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = |name: &str| folder.path().join(name);
    write_atomically(&path("bowler.yaml"), b"a: 1\n").expect("written");
    write_atomically(&path("bowler.yaml"), b"b: 2\n").expect("written over");
    write_atomically(&path("shelf.csv"), b"a\n1\n").expect("written");
    write_atomically(&path("notes.txt"), b"hello\n").expect("written");
    assert_eq!(std::fs::read(path("bowler.yaml")).expect("read"), b"b: 2\n");
    assert_eq!(std::fs::read_dir(folder.path()).expect("read").count(), 3);
    assert!(write_atomically(&path("no/such.yaml"), b"x").is_err());

    assert!(Document::read(&path("bowler.yaml")).is_ok());
    assert!(Document::read(&path("shelf.csv")).is_ok());
    let fault = |name: &str| {
        let faults = Document::read(&path(name)).expect_err("a fault");
        let first = faults.iter().next().expect("one").clone();
        (first.code(), first.help().unwrap_or("").to_owned())
    };
    assert_eq!(
        fault("bowlr.yaml"),
        ("no-such-file", "did you mean `bowler.yaml`?".to_owned())
    );
    assert_eq!(fault("zzzzzzzzz.json"), ("no-such-file", String::new()));
    assert_eq!(fault("no/such.yaml").0, "no-such-file");
    assert_eq!(fault("").0, "directory");
    assert_eq!(fault("notes.txt").0, "unknown-format");
    write_atomically(&path("big.json"), &vec![b' '; LARGEST + 1]).expect("written");
    assert_eq!(fault("big.json").0, "too-large");
}

#[test]
fn broken_files_are_shown_as_people_will_see_them() {
    insta::glob!("../faults/document", "*.*", |path| {
        let bytes = std::fs::read(path).expect("a file");
        let name = path.file_name().and_then(|n| n.to_str()).expect("a name");
        let format = match path.extension().and_then(|e| e.to_str()) {
            Some("csv") => Format::Csv,
            Some("json") => Format::Json,
            _ => Format::Yaml,
        };
        let faults = Document::parse(name, &bytes, format).expect_err("faults");
        insta::assert_snapshot!(faults.to_string());
    });
}

/// Reads and asks for every place.
fn use_up(bytes: &[u8]) {
    for format in [Format::Yaml, Format::Json, Format::Csv] {
        match Document::parse("x", bytes, format) {
            Ok(document) => {
                let mut reader = Reader::new(&document);
                let mut count = 0;
                walk(document.root(), &mut |node| {
                    if count < 40 {
                        document.place(node);
                        reader.sentence(node, "it");
                        count += 1;
                    }
                });
                let _ = reader.finish().map_err(|faults| faults.to_string());
            }
            Err(faults) => {
                assert!(!faults.is_empty());
                assert!(!faults.to_string().is_empty());
            }
        }
    }
}

/// Texts made of the signs that mean something to a reader.
fn tricky() -> impl Strategy<Value = String> {
    let pieces = prop::sample::select(vec![
        "a",
        "b: ",
        ": ",
        "- ",
        "? ",
        "\n",
        "\n  ",
        "\r\n",
        "\r",
        "[",
        "]",
        "{",
        "}",
        ", ",
        ",",
        "\"",
        "'",
        "&x ",
        "*x",
        "!t ",
        "!!str ",
        "# c",
        "|\n",
        ">\n",
        "---\n",
        "...\n",
        "1",
        "2.5",
        "~",
        "true",
        "é",
        "\u{1F3B3}",
        "\\",
        "\\u00e9",
        "\t",
        "<<: ",
        "%Y",
        "@",
        "`",
        "\u{feff}",
        "null",
    ]);
    prop::collection::vec(pieces, 0..24).prop_map(|pieces| pieces.concat())
}

proptest! {
    #[test]
    fn no_bytes_make_it_panic(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
        use_up(&bytes);
    }

    #[test]
    fn no_text_makes_it_panic(text in "\\PC{0,80}") {
        use_up(text.as_bytes());
    }

    #[test]
    fn no_tricky_text_makes_it_panic(text in tricky()) {
        use_up(text.as_bytes());
    }

    #[test]
    fn aliases_never_pass(text in tricky()) {
        // Whatever is accepted reads the same when nothing can be an alias: no scalar is told from another's place.
        if let Ok(document) = parse(&text, Format::Yaml) {
            let mut last = (0, 0);
            walk(document.root(), &mut |node| {
                let place = document.place(node);
                assert!((place.line, place.column) >= last, "{text:?}");
                last = (place.line, place.column);
            });
        }
    }

    #[test]
    fn places_of_strings_point_at_their_text(text in tricky()) {
        for format in [Format::Yaml, Format::Json] {
            let Ok(document) = parse(&text, format) else { continue };
            walk(document.root(), &mut |node| {
                let Some(scalar) = node.text() else { return };
                let at = underlined(&document, node);
                let shown = at.split_once(' ').map_or("", |(_, shown)| shown);
                let number = |text: &str| text.parse::<f64>().ok();
                // A text with escapes is marked with its quotes, one of several lines at its first word.
                let is_exact = shown == scalar
                    || shown.starts_with(['"', '\'', '|', '>'])
                    || (!shown.is_empty() && scalar.starts_with(shown))
                    || (number(shown).is_some() && number(shown) == number(scalar));
                assert!(is_exact, "{at} {scalar:?} in {text:?}");
            });
        }
    }

    #[test]
    fn places_of_plain_words_are_exact(words in prop::collection::vec("[a-zé]{1,6}[ ]?[a-z]{1,6}q", 1..8), deep in 0usize..6) {
        let indent = " ".repeat(deep);
        let mut text = "list:\n".to_owned();
        for word in &words {
            text.push_str(&format!("{indent}- {word}\n"));
        }
        let document = yaml(&text);
        let mut all = all_underlined(&document);
        let places: Vec<_> = all.split_off(3);
        let expected: Vec<_> = words.iter().enumerate().map(|(i, word)| format!("{}:{} {word}", i + 2, deep + 3)).collect();
        prop_assert_eq!(places, expected);
        let json = format!("[\n{}\n]", words.iter().map(|w| format!("{indent}\"{w}\"")).collect::<Vec<_>>().join(",\n"));
        let document = parse(&json, Format::Json).expect("JSON");
        let expected: Vec<_> = words.iter().enumerate().map(|(i, word)| format!("{}:{} {word}", i + 2, deep + 2)).collect();
        prop_assert_eq!(all_underlined(&document).split_off(1), expected);
    }
}
