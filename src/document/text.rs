//! Text from outside made safe to show, and the nearest of some names.

use super::{At, Found, MOST_FOUND};

/// The most characters of someone's text that a message repeats.
const LONGEST_QUOTE: usize = 60;

/// The text with every control character, terminal escape and invisible direction mark replaced by U+FFFD.
pub fn clean(text: &str) -> String {
    text.chars()
        .map(|c| if is_unseen(c) { '\u{FFFD}' } else { c })
        .collect()
}

/// Someone's text as a message repeats it: in backticks, clean and shortened.
pub(super) fn quote(text: &str) -> String {
    let mut short: String = text.chars().take(LONGEST_QUOTE).collect();
    if short.len() < text.len() {
        short.push('…');
    }
    format!("`{}`", clean(&short))
}

/// Characters that show as nothing but change what is seen around them: controls, direction marks, line separators.
pub(super) fn is_unseen(c: char) -> bool {
    c.is_control()
        || matches!(c, '\u{200E}' | '\u{200F}' | '\u{2028}'..='\u{202E}' | '\u{2066}'..='\u{2069}' | '\u{FEFF}')
}

/// All characters a document may not have. Tabs and ends of lines are fine.
pub(super) fn control_characters(text: &str) -> Vec<Found> {
    text.char_indices()
        .filter(|&(_, c)| {
            (is_unseen(c) && !matches!(c, '\t' | '\n' | '\r'))
                || matches!(c, '\u{FFFE}' | '\u{FFFF}')
        })
        .take(MOST_FOUND)
        .map(|(at, c)| {
            let message = format!("control character U+{:04X} in the text", u32::from(c));
            Found::new(
                At::Bytes(at, at + c.len_utf8()),
                "control-character",
                message,
            )
            .help("delete it and type the text anew")
        })
        .collect()
}

/// The name most like `word`, if one is near: at most a third of its letters may differ (one letter always may). Of equally
/// near names the first wins.
pub fn nearest<'a>(word: &str, names: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    // Measuring a very long word against every name takes long, and no name is near it.
    let length = word.chars().take(LONGEST_QUOTE + 1).count();
    if length > LONGEST_QUOTE {
        return None;
    }
    let word = word.to_lowercase();
    names
        .into_iter()
        .filter_map(|name| {
            let distance = strsim::damerau_levenshtein(&word, &name.to_lowercase());
            let allowed = (length.max(name.chars().count()) / 3).max(1);
            (distance <= allowed && distance < length).then_some((distance, name))
        })
        .min_by_key(|&(distance, _)| distance)
        .map(|(_, name)| name)
}

/// "did you mean", if some name is near.
pub(super) fn did_you_mean<'a>(
    word: &str,
    names: impl IntoIterator<Item = &'a str>,
) -> Option<String> {
    nearest(word, names).map(|name| format!("did you mean `{name}`?"))
}
