//! The regular forms of English words: plural, past, comparison, and the short forms after an apostrophe.

/// What may follow an apostrophe, and `n't`.
const SHORT: [&str; 6] = ["'s", "'ll", "'d", "'re", "'ve", "n't"];

/// The words that this may be a regular form of, some of them no words at all.
///
/// A form is its word with `-s`, `-ed`, `-ing`, `-er`, `-est` or `-ly`, spelled as usual: a final `e` goes or stays single, a
/// final `y` becomes `i`, a final consonant may double. Other forms are listed as words of their own.
pub(super) fn bases(form: &str) -> Vec<String> {
    let whole = SHORT.iter().find_map(|short| form.strip_suffix(short));
    let mut bases: Vec<String> = whole.iter().map(|&whole| whole.to_owned()).collect();
    let whole = whole.unwrap_or(form);
    if let Some(stem) = whole.strip_suffix('s') {
        bases.push(stem.to_owned());
        bases.extend(stem.strip_suffix('e').map(str::to_owned));
        bases.extend(stem.strip_suffix("ie").map(with_y));
    }
    for ending in ["ed", "er", "est", "ing"] {
        let Some(stem) = whole.strip_suffix(ending) else {
            continue;
        };
        bases.extend([stem.to_owned(), format!("{stem}e")]);
        bases.extend(stem.strip_suffix('i').map(with_y));
        bases.extend(single(stem));
    }
    if let Some(stem) = whole.strip_suffix("ly") {
        bases.extend([stem.to_owned(), format!("{stem}le"), format!("{stem}l")]);
        bases.extend(stem.strip_suffix('i').map(with_y));
    }
    bases
}

fn with_y(stem: &str) -> String {
    format!("{stem}y")
}

/// The stem with its doubled last letter once.
fn single(stem: &str) -> Option<String> {
    let last = stem.chars().next_back()?;
    let less = stem.strip_suffix(last)?;
    less.ends_with(last).then(|| less.to_owned())
}

#[cfg(test)]
mod tests {
    use super::bases;

    #[test]
    fn regular_forms_lead_back_to_their_word() {
        let forms = [
            ("balls", "ball"),
            ("touches", "touch"),
            ("carries", "carry"),
            ("carried", "carry"),
            ("rolled", "roll"),
            ("measured", "measure"),
            ("gripped", "grip"),
            ("grips", "grip"),
            ("taking", "take"),
            ("swelling", "swell"),
            ("swinging", "swing"),
            ("wider", "wide"),
            ("easiest", "easy"),
            ("easily", "easy"),
            ("gently", "gentle"),
            ("slowly", "slow"),
            ("isn't", "is"),
            ("thumb's", "thumb"),
        ];
        for (form, word) in forms {
            let found = bases(form);
            assert!(found.contains(&word.to_owned()), "{form}: {found:?}");
        }
    }

    #[test]
    fn other_words_do_not() {
        for (form, word) in [("spindle", "spin"), ("undo", "do"), ("lateral", "late")] {
            assert!(!bases(form).contains(&word.to_owned()), "{form}");
        }
    }
}
