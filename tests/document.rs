//! What reading a document promises: an exact place for everything in it and everything wrong with it, and no panic on any
//! bytes.
//!
//! Places in the expectations are counted by hand in the texts beside them; no outside source is needed for them.

// A helper of a test may end the test.
#![allow(clippy::expect_used, clippy::panic)]

use proptest::prelude::*;
use rstest::rstest;
use spanwright::document::{
    Content, DEEPEST, Document, Fault, Faults, Fields, Format, LARGEST, Node, Reader, clean,
    nearest, write_atomically,
};

fn parse(text: &str, format: Format) -> Result<Document, Faults> {
    Document::parse("a.file", text.as_bytes(), format)
}

fn yaml(text: &str) -> Document {
    parse(text, Format::Yaml).unwrap_or_else(|faults| panic!("{faults}"))
}

/// `line:column+length code` of a fault.
fn short(fault: &Fault) -> String {
    let place = fault.place().expect("a place");
    format!(
        "{}:{}+{} {}",
        place.line,
        place.column,
        place.length,
        fault.code()
    )
}

fn shorts(faults: &Faults) -> Vec<String> {
    faults.iter().map(short).collect()
}

/// The text that a node's place underlines, and where.
fn underlined(document: &Document, node: &Node) -> String {
    let place = document.place(node);
    let skip = (place.column - 1 - place.skipped) as usize;
    let text: String = place
        .source
        .chars()
        .skip(skip)
        .take(place.length as usize)
        .collect();
    format!("{}:{} {text}", place.line, place.column)
}

fn walk<'d>(node: &'d Node, visit: &mut impl FnMut(&'d Node)) {
    visit(node);
    match node.content() {
        Content::List(items) => items.iter().for_each(|item| walk(item, visit)),
        Content::Map(pairs) => pairs.iter().for_each(|(key, value)| {
            walk(key, visit);
            walk(value, visit);
        }),
        _ => {}
    }
}

fn all_underlined(document: &Document) -> Vec<String> {
    let mut all = Vec::new();
    walk(document.root(), &mut |node| {
        all.push(underlined(document, node))
    });
    all
}

#[test]
fn every_node_of_a_yaml_text_has_its_exact_place() {
    let text = "\
# a comment
name: Wells
speed: 16.50
list:
  - plain text
  - \"quoted\"
  - 'it''s'
  - \"tab\\there\"
flow: { a: 1, b: [true, ~], c: {} }
long: >
  folded
  lines
üß: ñ 4
none:
";
    let document = yaml(text);
    let expected = [
        "2:1 name",
        "2:1 name",
        "2:7 Wells",
        "3:1 speed",
        "3:8 16.50",
        "4:1 list",
        "5:3 -",
        "5:5 plain text",
        "6:6 quoted",
        "7:5 'it''s'",
        "8:5 \"tab\\there\"",
        "9:1 flow",
        "9:7 {",
        "9:9 a",
        "9:12 1",
        "9:15 b",
        "9:18 [",
        "9:19 true",
        "9:25 ~",
        "9:29 c",
        "9:32 {",
        "10:1 long",
        "10:7 >",
        "13:1 üß",
        "13:5 ñ 4",
        "14:1 none",
        "14:6 ",
    ];
    assert_eq!(all_underlined(&document), expected);
    assert_eq!(document.name(), "a.file");
}

#[test]
fn scalars_keep_their_text() {
    let document =
        yaml("[a b, 4, -4.50, true, 0x10, 007, 1/64, '', \"q\", 99999999999999999999999]");
    let mut texts = Vec::new();
    walk(document.root(), &mut |node| texts.extend(node.text()));
    let expected = [
        "a b",
        "4",
        "-4.5",
        "true",
        "16",
        "007",
        "1/64",
        "",
        "q",
        "99999999999999999999999",
    ];
    assert_eq!(texts, expected);
}

#[test]
fn every_node_of_a_json_text_has_its_exact_place() {
    let text = "{\n  \"a\": [1, 2.50, null, true],\r\n  \"\u{e9} b\": \"x\\ty\",\n\t\"m\": {\"k\": \"v\"}, \"l\": []\n}\n";
    let document = parse(text, Format::Json).expect("JSON");
    let expected = [
        "1:1 {",
        "2:4 a",
        "2:8 [",
        "2:9 1",
        "2:12 2.50",
        "2:18 null",
        "2:24 true",
        "3:4 é b",
        "3:10 \"x\\ty\"",
        "4:3 m",
        "4:7 {",
        "4:9 k",
        "4:14 v",
        "4:20 l",
        "4:24 [",
    ];
    assert_eq!(all_underlined(&document), expected);
    let mut texts = Vec::new();
    walk(document.root(), &mut |node| texts.extend(node.text()));
    assert_eq!(
        texts,
        ["a", "1", "2.50", "true", "é b", "x\ty", "m", "k", "v", "l"]
    );
}

#[test]
fn every_cell_of_a_csv_text_has_its_exact_place() {
    let text = "\u{feff}id,name ,count\r\nrue,\"Rue, \"\"dark\"\"\",3\r\n\r\n,,\r\nsorrel,  Sorrel ,\r\nyarrow,\"two\nlines\",5\r\nvetch,V,6";
    let document = parse(text, Format::Csv).expect("CSV");
    let Content::List(rows) = document.root().content() else {
        panic!("a list")
    };
    assert_eq!(rows.len(), 4);
    let cells = |row: &Node| {
        let Content::Map(pairs) = row.content() else {
            panic!("a map")
        };
        let place = |node: &Node| underlined(&document, node);
        pairs
            .iter()
            .map(|(key, value)| (place(key), place(value)))
            .collect::<Vec<_>>()
    };
    let own = |pairs: &[(&str, &str)]| -> Vec<(String, String)> {
        pairs
            .iter()
            .map(|&(k, v)| (k.to_owned(), v.to_owned()))
            .collect()
    };
    let expected = own(&[
        ("1:1 id", "2:1 rue"),
        ("1:4 name", "2:6 Rue, \"\"dark\"\""),
        ("1:10 count", "2:21 3"),
    ]);
    assert_eq!(cells(&rows[0]), expected);
    let expected = own(&[
        ("1:1 id", "5:1 sorrel"),
        ("1:4 name", "5:10 Sorrel"),
        ("1:10 count", "5:18 "),
    ]);
    assert_eq!(cells(&rows[1]), expected);
    let expected = own(&[
        ("1:1 id", "6:1 yarrow"),
        ("1:4 name", "6:9 two"),
        ("1:10 count", "7:8 5"),
    ]);
    assert_eq!(cells(&rows[2]), expected);
    let expected = own(&[
        ("1:1 id", "8:1 vetch"),
        ("1:4 name", "8:7 V"),
        ("1:10 count", "8:9 6"),
    ]);
    assert_eq!(cells(&rows[3]), expected);
    let Content::Map(pairs) = rows[0].content() else {
        panic!("a map")
    };
    assert_eq!(pairs[1].1.text(), Some("Rue, \"dark\""));
    let Content::Map(pairs) = rows[1].content() else {
        panic!("a map")
    };
    assert!(pairs[2].1.is_null());
    assert_eq!(pairs[1].1.text(), Some("Sorrel"));
}

#[rstest]
#[case::nothing("", "1:1+0 empty")]
#[case::blank(" \n\n", "1:1+0 empty")]
#[case::comment("# only\n", "1:1+0 empty")]
#[case::null("---\n", "1:1+0 empty")]
#[case::repeated("a: 1\nb: 2\na: 3\n", "3:1+1 repeated-key")]
#[case::repeated_number("m: { 1: x, 2: y, 1: z }\n", "1:18+1 repeated-key")]
#[case::tag("a: !range 3\n", "1:4+6 tag")]
#[case::tag_of_a_map("a: !range { b: 1 }\n", "1:4+6 tag")]
#[case::core_tag("a: !!str 3\n", "1:4+5 tag")]
#[case::core_tag_of_a_list("a: !!seq [3]\n", "1:4+5 tag")]
#[case::anchor("a: &x 1\n", "1:4+2 anchor")]
#[case::anchor_of_a_map("a: &x\n  b: 1\n", "1:4+2 anchor")]
#[case::alias("b: [&x 1, *x]\n", "1:11+2 alias")]
#[case::alias_only("a: *x\n", "1:4+2 alias")]
#[case::merge("a: &x { p: 1 }\nb: { <<: *x }\n", "2:10+2 alias")]
#[case::two("a: 1\n---\nb: 2\n", "2:1+3 several-documents")]
#[case::two_opened("---\na: 1\n---\nb: 2\n", "3:1+3 several-documents")]
#[case::bell("a: x\u{7}\n", "1:5+1 control-character")]
#[case::escaped_bell("a: 1\nb: \"x\\a\"\n", "2:4+5 control-character")]
#[case::direction("a: x\u{202e}y\n", "1:5+1 control-character")]
#[case::mark_inside("a: x\u{feff}y\n", "1:5+1 control-character")]
#[case::complex_key("? [a]\n: 1\n", "1:3+1 bad-key")]
#[case::no_key("a:\n  ~: 1\n", "2:3+1 bad-key")]
#[case::colon("because: Note: this one.\n", "1:14+1 syntax")]
#[case::tab("a:\n\tb: 1\n", "2:1+0 syntax")]
#[case::open("a: [1, 2\n", "2:1+0 syntax")]
#[case::brace("because: {x} is told.\n", "1:14+2 syntax")]
#[case::at_sign("a: @x\n", "1:4+2 syntax")]
#[case::indent("a:\n  b: 1\n c: 2\n", "3:2+1 syntax")]
#[case::quote("a: 'x\nb: 1\n", "3:1+0 syntax")]
fn yaml_traps(#[case] text: &str, #[case] expected: &str) {
    let faults = parse(text, Format::Yaml).expect_err("a fault");
    assert_eq!(shorts(&faults), [expected], "{faults}");
}

#[rstest]
#[case::nothing("", "1:1+0 empty")]
#[case::null("null", "1:1+0 empty")]
#[case::repeated("{\"a\": 1,\n \"a\": 2}", "2:3+1 repeated-key")]
#[case::comma("{\"a\": 1,\n}", "2:1+1 syntax")]
#[case::bare_key("{a: 1}", "1:2+1 syntax")]
#[case::two("{} {}", "1:4+1 syntax")]
#[case::cut("[1, 2", "1:5+1 syntax")]
#[case::half_pair("[\"a\", \"\\ud800\"]", "1:7+8 syntax")]
#[case::escaped("[\"a\\u0000\"]", "1:2+9 control-character")]
#[case::after_letters("[\"ééé\", x]", "1:9+1 syntax")]
fn json_traps(#[case] text: &str, #[case] expected: &str) {
    let faults = parse(text, Format::Json).expect_err("a fault");
    assert_eq!(shorts(&faults), [expected], "{faults}");
}

#[rstest]
#[case::nothing("", "1:1+0 empty")]
#[case::short("a,b\n1,2\n3\n", "3:1+1 wrong-number-of-cells")]
#[case::long("a,b\n1,2,3\n", "2:1+1 wrong-number-of-cells")]
#[case::repeated("a,b,a\n1,2,3\n", "1:5+1 repeated-key")]
#[case::nameless("a,,c\n1,2,3\n", "1:3+0 bad-key")]
#[case::open("a,b\n1,\"2\n3,4\n", "2:3+1 syntax")]
fn csv_traps(#[case] text: &str, #[case] expected: &str) {
    let faults = parse(text, Format::Csv).expect_err("a fault");
    assert_eq!(shorts(&faults), [expected], "{faults}");
}

#[rstest]
#[case("because: >\n  a *b* & c\n  *d* &e !f\n")]
#[case("because: \"x\n  *d* &e !f\"\n")]
#[case("# a: *x\na: 1 # &b\n")]
#[case("a: Hello, &you *there* !now\nb:\n  c: 'x & *y'\n")]
#[case("a: |\n  &x\nb:\n  c: 1\n")]
fn signs_inside_texts_are_no_aliases(#[case] text: &str) {
    yaml(text);
}

#[test]
fn all_faults_of_form_are_told_at_once() {
    let faults = parse("a: 1\na: 2\nb: { c: 1, c: 2 }\na: 3\n", Format::Yaml).expect_err("faults");
    assert_eq!(
        shorts(&faults),
        [
            "2:1+1 repeated-key",
            "3:12+1 repeated-key",
            "4:1+1 repeated-key"
        ]
    );
}

#[test]
fn nesting_has_a_limit() {
    for format in [Format::Yaml, Format::Json] {
        let nested = |depth: usize| format!("{}1{}", "[".repeat(depth), "]".repeat(depth));
        assert!(parse(&nested(DEEPEST), format).is_ok());
        for depth in [DEEPEST + 1, 100, 200, 100_000] {
            let faults = parse(&nested(depth), format).expect_err("a fault");
            assert_eq!(shorts(&faults), ["1:33+1 too-deep"], "{depth} {format:?}");
        }
    }
}

#[test]
fn an_alias_bomb_is_refused() {
    let mut text = "a0: &a0 [lol]\n".to_owned();
    for i in 1..30 {
        let before = format!("*a{}", i - 1);
        text.push_str(&format!("a{i}: &a{i} [{}]\n", vec![before; 9].join(", ")));
    }
    let faults = parse(&text, Format::Yaml).expect_err("a fault");
    assert_eq!(faults.iter().next().map(Fault::code), Some("alias"));
}

#[test]
fn size_has_a_limit() {
    let bytes = vec![b'#'; LARGEST + 1];
    let faults = Document::parse("big.yaml", &bytes, Format::Yaml).expect_err("a fault");
    assert_eq!(
        faults.to_string(),
        "`big.yaml` has 8.1 MB [too-large]\n  = help: at most 8 MB are read; split the file"
    );
}

#[test]
fn bytes_that_are_not_utf8_are_shown() {
    let faults =
        Document::parse("a.yaml", b"a: 1\nb: caf\xe9\n", Format::Yaml).expect_err("a fault");
    assert_eq!(shorts(&faults), ["2:7+1 not-utf-8"]);
    let faults = Document::parse("a.yaml", b"\xff\xfea\0:\0", Format::Yaml).expect_err("a fault");
    assert_eq!(shorts(&faults), ["1:1+1 not-utf-8"]);
}

#[rstest]
#[case(Format::Yaml, "a: 1")]
#[case(Format::Json, "{\"a\": 1}")]
#[case(Format::Csv, "a\n1")]
fn a_mark_at_the_start_is_skipped(#[case] format: Format, #[case] text: &str) {
    let document = parse(&format!("\u{feff}{text}"), format).expect("no fault");
    let mut texts = Vec::new();
    walk(document.root(), &mut |node| texts.extend(node.text()));
    assert_eq!(texts, ["a", "1"]);
}

#[path = "document/readers.rs"]
mod readers;
