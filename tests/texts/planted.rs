//! What is planted in a rule set is found, and nothing else.

use std::sync::Arc;

use spanwright::document::{Document, Format};
use spanwright::notation::Notation;
use spanwright::rules::{
    Audience, Fact, Kind, Misworded, Origin, RuleSet, TextPlace, Vocabulary, Wording,
};

/// Facts of a kite shop.
fn vocabulary() -> Arc<Vocabulary> {
    let fact = |name, kind| Fact {
        name,
        meaning: "Of the one who flies.",
        kind,
        origin: Origin::Answer,
        from: "asked",
        subject: None,
    };
    let weight = Kind::Number {
        notation: Notation::Weight,
        lowest: 100,
        highest: 3000,
    };
    let facts = vec![
        fact("flyer.weight", weight),
        fact(
            "flyer.place",
            Kind::Choice(&["beach", "a_very_windy_hill", "park"]),
        ),
        fact(
            "flyer.lines",
            Kind::Set(&["one", "the_thin_two", "all_of_the_four"]),
        ),
    ];
    Arc::new(Vocabulary::new(facts).unwrap())
}

const WORDS: &str = "
subjects:
  - { id: person, kind: person, meaning: Who flies. }
  - { id: bench, kind: person, meaning: What the maker does. }
glossary:
  - { word: tow point, also: [tow points], meaning: Where the line is tied to the kite. }
plain_words:
  words: [a, and, at, carry, fly, from, good, hold, is, it, kite, line, of, the, tie, tied, to, where, wind, you, your]
  fitter_only: [bench]
  instead:
    - { not: stiff, say: '`bends little`' }
    - { not: goes where you aim, say: where it goes }
    - { not: color, say: '`colour`', readers: everyone }
";

fn set(rules: &str) -> RuleSet {
    let documents = [("words.yaml", WORDS), ("kites.yaml", rules)];
    let documents: Vec<Document> = documents
        .into_iter()
        .map(|(name, text)| Document::parse(name, text.as_bytes(), Format::Yaml).unwrap())
        .collect();
    RuleSet::read(&vocabulary(), &documents).unwrap()
}

/// A rule with this reason, one text or three.
fn rule(because: &str) -> RuleSet {
    set(&format!(
        "subject: person\nrules:\n  - {{ id: r, caution: mild, because: {because}, source: own choice }}\n"
    ))
}

/// What is found, without its place.
fn found(set: &RuleSet) -> Vec<Misworded> {
    set.wording().into_iter().map(|one| one.misworded).collect()
}

fn not_plain(word: &str, near: Option<&str>) -> Misworded {
    Misworded::NotPlain {
        word: word.to_owned(),
        near: near.map(str::to_owned),
    }
}

fn avoided(words: &str, say: &str) -> Misworded {
    Misworded::Avoided {
        words: words.to_owned(),
        say: say.to_owned(),
    }
}

#[test]
fn a_word_that_is_neither_plain_nor_explained() {
    let set = rule("\"The kite flies. It oscillates.\"");
    let wanted = Wording {
        file: "kites.yaml".to_owned(),
        place: TextPlace::Because("r".to_owned()),
        audience: Audience::Newcomer,
        misworded: not_plain("oscillates", None),
        sentence: "It oscillates.".to_owned(),
    };
    assert_eq!(set.wording(), [wanted]);
}

#[test]
fn a_slip_of_the_pen_is_told_with_the_word_that_was_meant() {
    let found = found(&rule("The kite fleis to the windd."));
    assert!(
        found.contains(&not_plain("windd", Some("wind"))),
        "{found:?}"
    );
}

#[test]
fn regular_forms_numbers_and_explained_phrases_are_plain() {
    let texts = [
        "The kites' line isn't tied.",
        "\"It carries 3 of the kites, holding 1/8 lines.\"",
        "\"The tow point is good: tow points hold.\"",
        "The tow point's line.",
        "\"Your {flyer.place} is good.\"",
    ];
    for text in texts {
        assert_eq!(found(&rule(text)), [], "{text}");
    }
}

#[test]
fn a_phrase_is_not_explained_by_its_halves() {
    assert_eq!(
        found(&rule("\"You tow, point to it.\"")),
        [not_plain("point", None), not_plain("tow", Some("to"))]
    );
}

#[test]
fn only_the_newcomers_words_are_held_against_the_list() {
    let set = rule(
        "{ newcomer: The kite flies., league: The kite oscillates., fitter: Aspect ratio 4. }",
    );
    assert_eq!(found(&set), []);
}

#[test]
fn words_to_avoid_are_found_for_customers_in_their_forms() {
    let set = rule(
        "{ newcomer: It is good., league: A stiffer kite., fitter: A stiff kite of good color. }",
    );
    let found = set.wording();
    let seen: Vec<(Audience, Misworded)> = found
        .into_iter()
        .map(|one| (one.audience, one.misworded))
        .collect();
    let wanted = [
        (Audience::League, avoided("stiff", "`bends little`")),
        (Audience::Fitter, avoided("color", "`colour`")),
    ];
    assert_eq!(seen, wanted);
}

#[test]
fn a_word_to_avoid_is_told_once() {
    assert_eq!(
        found(&rule("A stiff line.")),
        [avoided("stiff", "`bends little`")]
    );
}

#[test]
fn a_phrase_to_avoid_is_found_whatever_stands_around_it() {
    let found = found(&rule("\"It Goes where you aim, and it is good.\""));
    assert!(
        found.contains(&avoided("goes where you aim", "where it goes")),
        "{found:?}"
    );
}

#[test]
fn twenty_words_are_the_most() {
    let twenty = ["kite"; 20].join(" ");
    assert_eq!(found(&rule(&format!("{twenty}."))), []);
    assert_eq!(
        found(&rule(&format!("{twenty} flies."))),
        [Misworded::TooLong { words: 21 }]
    );
    assert_eq!(
        found(&rule(&format!("{twenty}. {twenty}."))),
        [],
        "each sentence by itself"
    );
    let league =
        format!("{{ newcomer: It is., league: {twenty} flies., fitter: {twenty} flies. }}");
    assert_eq!(
        found(&rule(&league)),
        [Misworded::TooLong { words: 21 }],
        "the fitter reads on"
    );
}

/// `10 lb` is two words, `a very windy hill` four; two of a set are four, `and`, and three.
#[test]
fn a_placeholder_counts_as_the_most_words_it_prints() {
    for (placeholder, words) in [
        ("{flyer.weight}", 2),
        ("{flyer.place}", 4),
        ("{flyer.lines}", 8),
    ] {
        let fitting = ["kite"; 20].join(" ");
        let text = format!("\"{placeholder} {fitting}.\"");
        assert_eq!(
            found(&rule(&text)),
            [Misworded::TooLong { words: 20 + words }],
            "{placeholder}"
        );
    }
}

#[test]
fn what_to_do_assumptions_and_meanings_are_read_too() {
    let set = set("
subject: person
rules:
  - { id: r, caution: mild, then: Luff it., because: It is good., source: own choice }
assumptions:
  - { fact: flyer.weight, value: 3 lb, because: It luffs., source: own choice }
glossary:
  - { word: spar, meaning: A rod of the kite. }
");
    let places: Vec<(TextPlace, String)> = set
        .wording()
        .into_iter()
        .map(|one| (one.place, one.misworded.to_string()))
        .collect();
    let says =
        |word: &str| format!("`{word}` is neither a plain word nor explained in the glossary");
    let wanted = [
        (TextPlace::Meaning("spar".to_owned()), says("rod")),
        (TextPlace::Then("r".to_owned()), says("luff")),
        (
            TextPlace::Assumption("flyer.weight".to_owned()),
            says("luffs"),
        ),
    ];
    assert_eq!(places, wanted);
}

#[test]
fn texts_that_only_the_fitter_reads_may_use_the_trades_words() {
    let texts = "
subject: bench
rules:
  - { id: r, caution: mild, then: Camber the spar., because: It oscillates in color., source: own choice }
";
    assert_eq!(found(&set(texts)), [avoided("color", "`colour`")]);
}

#[test]
fn any_text_can_be_held_against_the_words() {
    let set = rule("It is good.");
    let seen = set.wording_of(
        "Is it good? {flyer.weight} luffs. {nothing}",
        Audience::Newcomer,
    );
    let words: Vec<String> = seen.iter().map(|(one, _)| one.to_string()).collect();
    assert!(
        words.iter().any(|word| word.contains("`luffs`")),
        "{words:?}"
    );
    assert_eq!(set.wording_of("It luffs {", Audience::Fitter), []);
}

#[test]
fn a_shops_own_files_are_read_too_and_bring_their_own_words() {
    let below = rule("It is good.");
    let over = |text: &str| {
        let document = Document::parse("ours.yaml", text.as_bytes(), Format::Yaml).unwrap();
        below.overlay(&[document]).unwrap()
    };
    let luff = "
rules:
  - { id: ours, subject: person, caution: mild, because: It luffs., source: own choice }
";
    let found_ = over(luff).wording();
    let seen: Vec<&str> = found_.iter().map(|one| one.file.as_str()).collect();
    assert_eq!(seen, ["ours.yaml"]);
    assert_eq!(
        found_.first().and_then(|one| one.place.rule()),
        Some("ours")
    );
    let with_word = format!("{luff}plain_words: {{ words: [luff] }}\n");
    assert_eq!(over(&with_word).wording(), []);
}

#[test]
fn without_a_list_no_word_is_strange() {
    let text = "
subjects: [{ id: person, kind: person, meaning: Who flies. }]
subject: person
rules: [{ id: r, caution: mild, because: It oscillates., source: own choice }]
";
    let document = Document::parse("kites.yaml", text.as_bytes(), Format::Yaml).unwrap();
    let set = RuleSet::read(&vocabulary(), &[document]).unwrap();
    assert_eq!(set.wording(), []);
}
