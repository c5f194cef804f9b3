//! What a shop's free words say of a ball's surface, as far as they can be understood.

/// The grits that a surface may be sanded with: from what cuts a cover open to the finest pad. From memory of the trade, no source.
pub const GRITS: std::ops::RangeInclusive<i64> = 200..=10_000;
/// Finishes, as a profile may say them. The order is that of a catalog's words.
pub const FINISHES: &[&str] = &["polished", "matte", "sanded"];

/// How the words for each of [`FINISHES`] begin: `polish`, `polished`; `matt`, `matte`; `sand`, `sanded`.
const STARTS: [&str; 3] = ["polish", "matt", "sand"];
const POLISHED: i64 = 0;
/// Numbers below this may count something else, such as games or minutes.
const LIKE_A_GRIT: i64 = 100;
/// Words that turn the others round.
const DENIALS: [&str; 4] = ["not", "never", "no", "without"];

/// What a note such as `sanded, 2000` tells, the last of each: that is what was done last.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Surface {
    finish: Option<i64>,
    grit: Option<i64>,
    doubt: Option<Doubt>,
}

/// What has to be asked about a note.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Doubt {
    /// It isn't understood, or not all of it.
    Unclear,
    /// A number can't be a grit.
    NoGrit,
    /// It names more than one grit.
    ManyGrits,
}

impl Surface {
    /// Reads a note.
    pub fn read(note: &str) -> Surface {
        let finish = |word: &String| {
            let place = STARTS.iter().position(|start| word.starts_with(start))?;
            i64::try_from(place).ok()
        };
        let finishes: Vec<i64> = words(note).filter_map(|word| finish(&word)).collect();
        let numbers: Vec<i64> = words(note).filter_map(|word| number(&word)).collect();
        let (grits, others): (Vec<i64>, Vec<i64>) =
            numbers.iter().partition(|number| GRITS.contains(number));
        let grit = grits.last().copied();
        // A grit alone says that it was sanded.
        let finish = finishes.last().copied();
        let finish = finish.or(grit.and_then(|_| index("sanded")));
        let denied = words(note).any(|word| DENIALS.contains(&word.as_str()));
        let no_grit = |number: &i64| *number >= LIKE_A_GRIT;
        let is_bare = grit.is_none() && finish == index("sanded") && !others.is_empty();
        let doubt = if is_bare || others.iter().any(no_grit) {
            Some(Doubt::NoGrit)
        } else if finish.is_none() || denied {
            Some(Doubt::Unclear)
        } else if finish != Some(POLISHED) && grits.iter().any(|one| grit != Some(*one)) {
            Some(Doubt::ManyGrits)
        } else {
            None
        };
        Surface {
            finish,
            grit,
            doubt,
        }
    }

    /// Its finish, as an index of [`FINISHES`].
    pub fn finish(&self) -> Option<i64> {
        self.finish
    }

    /// The grit it was sanded with last, one of [`GRITS`].
    pub fn grit(&self) -> Option<i64> {
        self.grit
    }

    /// What to ask about it, of a ball that is called so; none where all of it is understood.
    pub(super) fn question(&self, called: &str) -> Option<String> {
        let (least, most) = (GRITS.start(), GRITS.end());
        let say = format!(
            "Please say the surface of {called} as polished, matte or sanded with a grit such as 2000."
        );
        match self.doubt? {
            Doubt::Unclear => Some(say),
            Doubt::NoGrit => Some(format!("{say} Grits go from {least} to {most}.")),
            Doubt::ManyGrits => {
                let grit = self.grit?;
                Some(format!(
                    "The surface of {called} names more than one grit. Was {grit} the last?"
                ))
            }
        }
    }
}

fn index(finish: &str) -> Option<i64> {
    let place = FINISHES.iter().position(|word| *word == finish)?;
    i64::try_from(place).ok()
}

/// A number that may be a grit, as in `2000` or `2000grit`; one too long to count is the highest.
fn number(word: &str) -> Option<i64> {
    let digits = word.trim_end_matches("grit");
    let is_number = !digits.is_empty() && digits.chars().all(|c| c.is_ascii_digit());
    is_number.then(|| digits.parse().unwrap_or(i64::MAX))
}

fn words(note: &str) -> impl Iterator<Item = String> + '_ {
    let parts = note.split(|c: char| !c.is_alphanumeric());
    parts.filter(|part| !part.is_empty()).map(str::to_lowercase)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(note: &str) -> (Option<&str>, Option<i64>) {
        let surface = Surface::read(note);
        let place = surface.finish().and_then(|at| usize::try_from(at).ok());
        (place.map(|at| FINISHES[at]), surface.grit())
    }

    fn asks(note: &str) -> Option<Doubt> {
        Surface::read(note).doubt
    }

    #[test]
    fn notes_on_a_surface_are_understood_where_they_can_be() {
        assert_eq!(told("sanded, 2000"), (Some("sanded"), Some(2000)));
        assert_eq!(told("2000-grit"), (Some("sanded"), Some(2000)));
        assert_eq!(told("Polished"), (Some("polished"), None));
        assert_eq!(
            told("500, 1000, 2000grit, then polish"),
            (Some("polished"), Some(2000))
        );
        assert_eq!(told("matt"), (Some("matte"), None));
        assert_eq!(told("as it came"), (None, None));
        assert_eq!(told("done 3 times, in 12 minutes"), (None, None));
        assert_eq!(told("99999999999999999999999"), (None, None));
        assert_eq!(told("sanded 199"), (Some("sanded"), None));
        assert_eq!(told("sanded 200"), (Some("sanded"), Some(200)));
        assert_eq!(told("sanded 10000"), (Some("sanded"), Some(10_000)));
        assert_eq!(told("sanded 10001"), (Some("sanded"), None));
    }

    #[test]
    fn what_is_understood_is_not_asked_again() {
        for note in [
            "sanded, 2000",
            "Sanded",
            "matte",
            "500, 1000, 2000grit, then polish",
            "sanded 2000, 3 weeks ago",
            "2000 grit",
            "sanded 2000, then 2000 again",
        ] {
            assert_eq!(asks(note), None, "{note}");
        }
    }

    #[test]
    fn what_is_not_understood_is_asked() {
        for note in ["banana", "as it came", "not polished", "3 times"] {
            assert_eq!(asks(note), Some(Doubt::Unclear), "{note}");
        }
        for note in [
            "sanded, 99999999",
            "sanded, 0",
            "sanded 199",
            "2000 grit, then 10001",
            "99999999999999999999999",
        ] {
            assert_eq!(asks(note), Some(Doubt::NoGrit), "{note}");
        }
        assert_eq!(asks("sanded 500, 2000"), Some(Doubt::ManyGrits));
        assert_eq!(told("sanded 500, 2000").1, Some(2000));
    }
}
