//! The built-in texts.

use spanwright::advice::Shop;
use spanwright::rules::Audience;

#[test]
fn the_rules_are_worded_plainly() {
    let shop = Shop::demo().unwrap();
    let found = shop.rules().wording();
    let shown: Vec<String> = found.iter().map(ToString::to_string).collect();
    assert!(found.is_empty(), "{}", shown.join("\n"));
}

#[test]
fn the_interview_asks_in_plain_words() {
    let shop = Shop::demo().unwrap();
    let interview = shop.interview().unwrap();
    let mut found = Vec::new();
    for question in interview.questions() {
        let labels = question.choices().iter().map(|choice| choice.label());
        let labels = labels.chain(question.none()).chain(question.other());
        let labels = labels.chain(question.open());
        for text in [question.ask(), question.help()].into_iter().chain(labels) {
            for (misworded, sentence) in shop.rules().wording_of(text, Audience::Newcomer) {
                found.push(format!("{}: {misworded}: {sentence}", question.id()));
            }
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}
