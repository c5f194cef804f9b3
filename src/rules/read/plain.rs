//! Reading the plain words: the list, what to say in place of what, and the subjects that only the fitter reads.

use super::Reading;
use crate::document::{Node, Reader};
use crate::rules::plain::Instead;

/// Who avoids the words of an entry.
const READERS: [&str; 2] = ["customers", "everyone"];

impl<'d> Reading<'d> {
    /// The `plain_words` of a file; those of several files come together.
    pub(super) fn read_plain_words(&mut self, reader: &mut Reader<'d>, node: Option<&'d Node>) {
        let Some(mut fields) = node.and_then(|node| reader.fields(node, "the plain words")) else {
            return;
        };
        let words = fields.take("words");
        let instead = fields.take("instead");
        let fitter_only = fields.take("fitter_only");
        fields.close(reader);
        let words = words.and_then(|node| reader.list(node, "the words"));
        self.read_words(reader, words.unwrap_or_default());
        let instead = instead.and_then(|node| reader.list(node, "the words to avoid"));
        for node in instead.unwrap_or_default() {
            self.read_instead(reader, node);
        }
        let subjects = fitter_only.and_then(|node| reader.list(node, "the subjects"));
        for node in subjects.unwrap_or_default() {
            let subject = self.subject_named(reader, node);
            self.plain.fitter_only.extend(subject);
        }
    }

    /// The list, which is kept in the order of the alphabet so that a missing word is seen.
    fn read_words(&mut self, reader: &mut Reader<'d>, nodes: &'d [Node]) {
        let mut before: Option<&str> = None;
        for node in nodes {
            let Some(word) = reader.text(node, "a word") else {
                continue;
            };
            let letters = |c: char| c.is_alphabetic() && c.is_lowercase() || c == '\'';
            if word.is_empty() || !word.chars().all(letters) {
                let message = format!("`{word}` is no plain word: small letters only");
                reader.fault(node, "bad-word", message);
                continue;
            }
            match before {
                Some(before) if before == word => {
                    reader.fault(node, "repeated-word", format!("`{word}` stands twice"));
                }
                Some(before) if before > word => {
                    let message =
                        format!("`{word}` stands after `{before}`; the list follows the alphabet");
                    reader.fault(node, "out-of-order", message);
                }
                _ => before = Some(word),
            }
            self.plain.words.insert(word.to_owned());
        }
    }

    fn read_instead(&mut self, reader: &mut Reader<'d>, node: &'d Node) {
        let Some(mut fields) = reader.fields(node, "words to avoid") else {
            return;
        };
        let not = fields.require("not", reader);
        let words = not.and_then(|node| reader.text(node, "the words to avoid"));
        let say = fields.require("say", reader);
        let say = say.and_then(|node| reader.text(node, "what to say"));
        let readers = fields.take("readers");
        let readers = readers.map_or(Some(0), |node| {
            reader.choice(node, "who avoids them", &READERS)
        });
        fields.close(reader);
        let (Some(not), Some(words), Some(say), Some(readers)) = (not, words, say, readers) else {
            return;
        };
        let small = words.to_lowercase();
        let stated = Instead {
            words: small.split([' ', '-']).map(str::to_owned).collect(),
            say: say.to_owned(),
            everywhere: readers == 1,
        };
        let plain = stated.words.iter().find(|word| {
            let one = stated.words.len() == 1;
            one && self.plain.words.contains(*word)
        });
        if plain.is_some() {
            let message = format!("`{words}` is to be avoided, and is in the list of plain words");
            reader.fault(not, "avoided-and-plain", message);
            return;
        }
        self.plain.instead.push(stated);
    }
}
