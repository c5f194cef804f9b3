//! The card over the years, and what a refit writes on it today.

use super::consultation::Consultation;
use super::refit::{Change, Past, ToWrite};
use crate::bowler::Bowler;
use crate::notation::Notation;

/// The card over the years.
pub(super) fn past(bowler: &Bowler) -> Vec<Past> {
    let entries = bowler.card().map(|card| card.entries()).unwrap_or_default();
    let told = |text: Option<&str>, tapes: Option<i64>| match (text, tapes) {
        (text, None) => text.unwrap_or_default().to_owned(),
        (None, Some(tapes)) => tapes_in(tapes),
        (Some(text), Some(tapes)) => {
            format!("{}; {}", text.trim_end_matches('.'), tapes_in(tapes))
        }
    };
    entries
        .iter()
        .map(|entry| Past {
            date: entry.date().to_owned(),
            kind: entry.kind(),
            text: told(entry.text(), entry.tapes()),
        })
        .collect()
}

fn tapes_in(tapes: i64) -> String {
    Notation::Counted("piece of tape", "pieces of tape").write(tapes)
}

impl Consultation<'_> {
    /// The day is for whoever writes it: there is no clock here.
    pub(super) fn to_write(&self, held: bool, changes: &[Change]) -> Vec<ToWrite> {
        let mut entries = Vec::new();
        let signs = self.printed("check.symptoms");
        if let Some(signs) = signs {
            let rest = self.printed("check.rest_test");
            let rest = rest.map(|rest| format!("; at rest the thumb {rest}"));
            entries.push(ToWrite {
                kind: "complaint",
                text: format!("{signs}{}.", rest.unwrap_or_default()),
            });
        }
        if held {
            entries.push(ToWrite {
                kind: "outcome",
                text: "Nothing changed; sent to a doctor or to rest first.".to_owned(),
            });
        }
        for change in changes {
            let number = &change.number;
            if let (Some(value), Some(card)) = (number.value, change.card)
                && value != card
            {
                let name = number.name.trim_start_matches("refit.").replace('_', " ");
                let kind = match number.name.as_str() {
                    "refit.tapes" => "tapes",
                    "refit.thumb_bore" => "eased",
                    _ => "ordered",
                };
                let text = format!("{name} from {} to {}.", change.card_shop, number.shop);
                entries.push(ToWrite { kind, text });
            }
        }
        entries
    }

    /// A fact as people read it; none if it isn't known or names nothing.
    fn printed(&self, fact: &str) -> Option<String> {
        let vocabulary = self.situation.vocabulary();
        let value = self.situation.known(fact)?;
        let is_set = fact == "check.symptoms";
        if is_set && value == 0 {
            return None;
        }
        vocabulary
            .id(fact)
            .map(|id| vocabulary.print(id, value).replace('_', " "))
    }
}
