//! Reads the texts of the table of questions.

use super::spoken::plain;
use crate::document::{Fields, Node, Reader};

/// The most words in a sentence that a customer reads.
const LONGEST: usize = 20;
/// The most a question may cost.
const DEAREST: i64 = 1_000;

/// What a question costs.
pub(super) fn number<'d>(reader: &mut Reader<'d>, node: &'d Node) -> Option<i64> {
    let read = |text: &str| {
        let number = text.parse().ok();
        let fits = number.filter(|number| (0..=DEAREST).contains(number));
        fits.ok_or_else(|| format!("expected a whole number from 0 to {DEAREST}"))
    };
    reader.value(node, "the cost", read)
}

/// Whole sentences of at most twenty words.
pub(super) fn sentences<'d>(reader: &mut Reader<'d>, node: &'d Node, what: &str) -> Option<String> {
    let text = reader.sentence(node, what)?;
    for sentence in text.split_inclusive(['.', '!', '?']) {
        let words = sentence.split_whitespace().count();
        if words > LONGEST {
            let message = format!("a sentence of {words} words; {LONGEST} are the most");
            reader.fault(node, "too-long", message);
        }
    }
    Some(text.to_owned())
}

/// A list of texts as they are written.
pub(super) fn texts<'d>(reader: &mut Reader<'d>, node: &'d Node) -> Vec<String> {
    let items = reader.list(node, "what people say").unwrap_or_default();
    if items.is_empty() {
        reader.fault(node, "missing", "nothing is said here");
    }
    let texts = items
        .iter()
        .map(|item| reader.text(item, "what people say"));
    texts.flatten().map(str::to_owned).collect()
}

/// A list of texts as they are heard.
pub(super) fn sayings<'d>(reader: &mut Reader<'d>, node: &'d Node) -> Vec<String> {
    texts(reader, node).iter().map(|text| plain(text)).collect()
}

/// An optional list of sayings, and the first as it is written.
pub(super) fn spoken<'d>(
    reader: &mut Reader<'d>,
    fields: &mut Fields<'d>,
    key: &'static str,
) -> (Vec<String>, Option<String>) {
    let texts = fields.take(key).map(|node| texts(reader, node));
    let texts = texts.unwrap_or_default();
    let heard = texts.iter().map(|text| plain(text)).collect();
    (heard, texts.into_iter().next())
}

/// Words and what stands for each, longer words first, so that "miles an hour" isn't taken apart.
pub(super) fn pairs<'d>(
    reader: &mut Reader<'d>,
    fields: &mut Fields<'d>,
    key: &'static str,
) -> Vec<(String, String)> {
    let mut pairs = Vec::new();
    if let Some(node) = fields.take(key)
        && let Some(mut words) = reader.fields(node, "the words for the same")
    {
        for (key, value) in words.rest() {
            if let Some(text) = reader.text(value, "a word") {
                let from = plain(key.text().unwrap_or_default());
                pairs.push((from, text.to_owned()));
            }
        }
        words.close(reader);
    }
    pairs.sort_by_key(|(from, _)| std::cmp::Reverse(from.len()));
    pairs
}

/// Number words and their numbers: below a hundred, a hundred or a thousand.
pub(super) fn numbers<'d>(
    reader: &mut Reader<'d>,
    fields: &mut Fields<'d>,
    key: &'static str,
) -> Vec<(String, i64)> {
    let mut numbers = Vec::new();
    if let Some(node) = fields.take(key)
        && let Some(mut words) = reader.fields(node, "the number words")
    {
        for (key, value) in words.rest() {
            if let Some(number) = number(reader, value) {
                numbers.push((plain(key.text().unwrap_or_default()), number));
            }
        }
        words.close(reader);
    }
    numbers
}

/// Sayings that are asked back to, and with which sentences.
pub(super) fn ask_back<'d>(
    reader: &mut Reader<'d>,
    node: &'d Node,
) -> Option<(Vec<String>, String)> {
    let mut fields = reader.fields(node, "what is asked back")?;
    let to = fields.require("to", reader);
    let to = to.map(|node| sayings(reader, node));
    let with = fields.require("with", reader);
    let with = with.and_then(|node| sentences(reader, node, "what is asked back"));
    fields.close(reader);
    to.zip(with)
}
