//! Words and numbers as people say and write them: `a hundred and fifty`, `180ish`, `5,4`, `12 or 13`, `-5`.

/// Text in small letters, one space between words, without marks at its ends. A dash stays where it may be a minus or a range.
pub(super) fn plain(text: &str) -> String {
    let even = |c: char| match c {
        '\u{2018}' | '\u{2019}' | '`' => '\'',
        '\u{2010}'..='\u{2015}' | '\u{2212}' | '\u{ff0d}' => '-',
        '_' => ' ',
        c if c.is_control() => ' ',
        c => c,
    };
    let small: String = text
        .trim()
        .chars()
        .map(even)
        .flat_map(char::to_lowercase)
        .collect();
    let small = without_hyphens(&small);
    let words: Vec<&str> = small.split_whitespace().collect();
    let whole = words.join(" ");
    let marks = ['.', ',', '!', '?', ';', ':', '"', '\'', '(', ')'];
    let bare = whole.trim_matches(marks).trim();
    if bare.is_empty() {
        whole
    } else {
        bare.to_owned()
    }
}

/// Every dash but those before a number becomes a space.
fn without_hyphens(text: &str) -> String {
    let mut before: Option<char> = None;
    let mut kept = String::with_capacity(text.len());
    for (place, c) in text.char_indices() {
        let after = text.get(place + c.len_utf8()..).unwrap_or_default();
        // "- 5" at the very beginning is a minus as well.
        let after = if before.is_none() {
            after.trim_start()
        } else {
            after
        };
        let after = after.strip_prefix('$').unwrap_or(after);
        let is_number = after.starts_with(|c: char| c.is_ascii_digit());
        let is_apart = before.is_none_or(|c| c == ' ' || c == '$' || c.is_ascii_digit());
        kept.push(if c == '-' && !(is_number && is_apart) {
            ' '
        } else {
            c
        });
        before = Some(c);
    }
    kept
}

/// The text with number words as digits; `words` has what each word stands for.
pub(super) fn in_digits(text: &str, words: &[(String, i64)]) -> String {
    let said: Vec<&str> = text.split_whitespace().collect();
    let mut left = &said[..];
    let mut kept: Vec<String> = Vec::new();
    while let Some((first, rest)) = left.split_first() {
        if let Some((count, value)) = number(left, words) {
            kept.push(value.to_string());
            left = left.get(count..).unwrap_or_default();
        } else {
            kept.push((*first).to_owned());
            left = rest;
        }
    }
    kept.join(" ")
}

/// How many words at the beginning are one number, and which.
fn number(said: &[&str], words: &[(String, i64)]) -> Option<(usize, i64)> {
    let value = |at: usize| {
        let said = said.get(at)?;
        words
            .iter()
            .find(|(word, _)| word == said)
            .map(|(_, value)| *value)
    };
    let is_a_hundred = said.first() == Some(&"a") && value(1).is_some_and(|value| value >= 100);
    let (mut at, mut part) = if is_a_hundred { (1, 1) } else { (0, 0) };
    let mut thousands = 0;
    // What comes next must be smaller than this: after "thirty" only one to nine go on with the same number.
    let mut room = 1_000;
    loop {
        let and = usize::from(at > 0 && room >= 100 && said.get(at) == Some(&"and"));
        match value(at + and) {
            Some(1_000) if thousands == 0 && part < 1_000 => {
                thousands = part.max(1) * 1_000;
                (part, room) = (0, 1_000);
            }
            Some(100) if part < 20 && room != 100 => (part, room) = (part.max(1) * 100, 100),
            Some(value) if value < 100 && value < room => {
                part += value;
                room = if value >= 20 { 10 } else { 1 };
            }
            _ => break,
        }
        at += and + 1;
    }
    (at > 0).then_some((at, thousands + part))
}

/// Marks at a number set apart, `180ish` as 180 and `12#` as `12 #`, and a comma before so many digits at most as a decimal point.
pub(super) fn loosened(text: &str, decimals: usize) -> String {
    let words = text.split_whitespace().map(|word| {
        let bare = word.strip_suffix("ish");
        let word = bare
            .filter(|bare| bare.ends_with(|c: char| c.is_ascii_digit()))
            .unwrap_or(word);
        match word.split_once(',') {
            Some((whole, part)) if whole.ends_with(|c: char| c.is_ascii_digit()) => {
                let digits = part.chars().take_while(char::is_ascii_digit).count();
                if (1..=decimals).contains(&digits) && !part.contains(',') {
                    format!("{whole}.{part}")
                } else {
                    word.to_owned()
                }
            }
            _ => word.replace('#', " # ").trim().to_owned(),
        }
    });
    words.collect::<Vec<String>>().join(" ")
}

/// Whether the number is below nothing.
pub(super) fn is_below_nothing(text: &str) -> bool {
    let bare = text.strip_prefix('$').unwrap_or(text);
    bare.starts_with('-') || bare.starts_with("minus ")
}

/// The numbers that stand in the text, each once.
pub(super) fn numbers_in(text: &str) -> Vec<&str> {
    let is_mark = |c: char| !c.is_ascii_digit() && c != '.';
    let numbers = text.split(is_mark).map(|one| one.trim_matches('.'));
    let mut once: Vec<&str> = Vec::new();
    for one in numbers.filter(|one| !one.is_empty()) {
        if !once.contains(&one) {
            once.push(one);
        }
    }
    once
}

/// Whether these words begin with this saying.
pub(super) fn begins(words: &[&str], saying: &str) -> bool {
    let mut said = words.iter();
    saying.split(' ').all(|word| said.next() == Some(&word))
}

/// The text with some of its words changed: at each place, how many words are replaced by what.
pub(super) fn replaced<'r>(
    text: &str,
    change: impl Fn(&[&str]) -> Option<(usize, &'r str)>,
) -> String {
    let words: Vec<&str> = text.split_whitespace().collect();
    let mut left = &words[..];
    let mut kept: Vec<&str> = Vec::new();
    while let Some((first, rest)) = left.split_first() {
        match change(left) {
            Some((count, by)) if count > 0 => {
                kept.extend((!by.is_empty()).then_some(by));
                left = left.get(count..).unwrap_or_default();
            }
            _ => {
                kept.push(first);
                left = rest;
            }
        }
    }
    kept.join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn digits(text: &str) -> String {
        let words = [
            ("one", 1),
            ("two", 2),
            ("five", 5),
            ("twelve", 12),
            ("thirty", 30),
            ("forty", 40),
            ("fifty", 50),
            ("hundred", 100),
            ("thousand", 1_000),
        ];
        let words = words.map(|(word, value)| (word.to_owned(), value));
        in_digits(text, &words)
    }

    #[test]
    fn number_words_are_numbers() {
        for (said, meant) in [
            ("thirty five", "35"),
            ("forty two pounds", "42 pounds"),
            ("two hundred", "200"),
            ("a hundred and fifty", "150"),
            ("one thousand two hundred and five", "1205"),
            ("twelve hundred", "1200"),
            ("a ball", "a ball"),
            ("one plastic one solid", "1 plastic 1 solid"),
            ("five and two", "5 and 2"),
            ("thirty forty", "30 40"),
            ("hundred hundred hundred", "100 100 100"),
        ] {
            assert_eq!(digits(said), meant, "{said}");
        }
    }

    #[test]
    fn marks_at_a_number_are_read() {
        assert_eq!(loosened("180ish", 1), "180");
        assert_eq!(loosened("12#", 1), "12 #");
        assert_eq!(loosened("5,4 kg", 1), "5.4 kg");
        assert_eq!(loosened("1,200", 2), "1,200");
        assert_eq!(loosened("12,13", 1), "12,13");
        assert_eq!(loosened("ish", 1), "ish");
    }

    #[test]
    fn a_minus_stays_and_a_hyphen_goes() {
        assert_eq!(plain("-5"), "-5");
        assert_eq!(plain("- 5"), "- 5");
        assert_eq!(plain("\u{2212}5"), "-5");
        assert_eq!(plain("150\u{2013}200"), "150-200");
        assert_eq!(plain("Forty-Two"), "forty two");
        assert_eq!(plain("-straight"), "straight");
        assert!(is_below_nothing("$-5") && is_below_nothing("-$5"));
        assert_eq!(numbers_in("12 or 13.5."), ["12", "13.5"]);
    }
}
