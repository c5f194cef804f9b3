//! Two balls told apart in one sentence, made of what the rules say and nothing else.

use super::contrast::{Compared, Difference};
use super::reason::Reason;
use crate::notation::Notation;
use crate::rules::Audience;

/// A sentence a customer can take in at once.
const MOST_WORDS: usize = 20;

/// What tells two balls apart; `names` are what they are called beside each other.
pub(super) fn one_sentence(
    one: &Compared,
    other: &Compared,
    names: &[String; 2],
    lines: &[Difference],
    audience: Audience,
) -> String {
    let [first, second] = names;
    match (one.is_ruled_out(), other.is_ruled_out()) {
        (true, true) => neither(one, other, audience),
        (true, false) => out(one, first, second, audience),
        (false, true) => out(other, second, first, audience),
        (false, false) => match one.total.cmp(&other.total) {
            std::cmp::Ordering::Equal => equal(one, other, names),
            ahead => better(names, lines, ahead.is_gt(), audience),
        },
    }
}

/// Both are ruled out.
fn neither(one: &Compared, other: &Compared, audience: Audience) -> String {
    let shared = one.barriers.iter().find_map(|barrier| {
        let text = barrier.line.text(audience);
        let same = |b: &super::why_not::Barrier| b.line.text(audience) == text;
        other.barriers.iter().any(same).then_some(text)
    });
    let said = shared.and_then(|text| fitting(&["Neither will do: "], text));
    said.unwrap_or_else(|| "Neither will do: both are ruled out.".to_owned())
}

/// One is ruled out and the other isn't.
fn out(ball: &Compared, name: &str, other: &str, audience: Audience) -> String {
    let leads = [format!("{name} is out: "), format!("{name}: ")];
    let leads = leads.each_ref().map(String::as_str);
    let texts = ball.barriers.iter().map(|b| b.line.text(audience));
    let mut said = texts.filter_map(|text| fitting(&leads, text));
    said.next()
        .unwrap_or_else(|| format!("{name} is ruled out, and {other} isn't."))
}

/// Neither has more; the price is a fact that tells them apart.
fn equal(one: &Compared, other: &Compared, [first, second]: &[String; 2]) -> String {
    let dearer = one
        .price
        .zip(other.price)
        .map_or(0, |(one, other)| one - other);
    let less = Notation::Money.write(dearer.abs());
    match dearer {
        0 => format!("{first} and {second} are equally good by our reasons."),
        d if d > 0 => format!("Both are equally good by our reasons; {second} costs {less} less."),
        _ => format!("Both are equally good by our reasons; {first} costs {less} less."),
    }
}

/// One has more: the weightiest of its advantages that fits a sentence.
fn better(names: &[String; 2], lines: &[Difference], first: bool, audience: Audience) -> String {
    let [one, other] = names;
    let (better, worse) = if first { (one, other) } else { (other, one) };
    let for_it = [
        format!("{better} suits you better: "),
        format!("{better}: "),
    ];
    let against = [
        format!("{worse} suits you less: "),
        format!("Against {worse}: "),
    ];
    let advantages = lines.iter().filter(|line| (line.points > 0) == first);
    let mut said = advantages.filter_map(|line| {
        let (own, others) = match first {
            true => (&line.one, &line.other),
            false => (&line.other, &line.one),
        };
        let speaks_for = own.as_ref().filter(|reason| reason.points() > 0);
        let speaks_against = others.as_ref().filter(|reason| reason.points() < 0);
        let say = |leads: &[String; 2], reason: &Reason| {
            fitting(&leads.each_ref().map(String::as_str), reason.text(audience))
        };
        speaks_for
            .and_then(|reason| say(&for_it, reason))
            .or_else(|| speaks_against.and_then(|reason| say(&against, reason)))
    });
    said.next()
        .unwrap_or_else(|| format!("{better} has more in its favour than {worse}."))
}

/// The first sentence of a text behind the longest lead that leaves it short enough.
fn fitting(leads: &[&str], text: &str) -> Option<String> {
    let sentence = first_sentence(text);
    let all = leads.iter().map(|lead| format!("{lead}{sentence}"));
    let words = |text: &String| text.split_whitespace().count();
    all.into_iter().find(|said| words(said) <= MOST_WORDS)
}

/// Up to the first mark that ends a sentence and has a space or nothing behind it.
fn first_sentence(text: &str) -> &str {
    let mut marks = text.match_indices(['.', '!', '?']);
    let end = marks.find(|(at, mark)| {
        let rest = &text[at + mark.len()..];
        rest.is_empty() || rest.starts_with(' ')
    });
    end.map_or(text, |(at, mark)| &text[..at + mark.len()])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sentence_ends_where_people_end_it() {
        let cases = [
            ("It costs $23.10 more. Really.", "It costs $23.10 more."),
            ("Is it? Yes.", "Is it?"),
            ("No mark at all", "No mark at all"),
            ("It is slow. (our-rules.yaml)", "It is slow."),
            ("", ""),
        ];
        for (text, first) in cases {
            assert_eq!(first_sentence(text), first);
        }
    }

    #[test]
    fn a_long_reason_gets_a_shorter_lead_or_none() {
        let text = |count: usize| format!("{}.", vec!["word"; count].join(" "));
        let leads = ["Daisy suits you better: ", "Daisy: "];
        let said = |count| fitting(&leads, &text(count));
        assert_eq!(said(16), Some(format!("{}{}", leads[0], text(16))));
        assert_eq!(said(17), Some(format!("{}{}", leads[1], text(17))));
        assert_eq!(said(19), Some(format!("{}{}", leads[1], text(19))));
        assert_eq!(said(20), None);
    }
}
