//! A question of the interview as people and programs read it.

use serde::Serialize;

use super::Look;
use super::json::Head;
use super::page::Page;
use crate::advice::interview::{Form, Next, Question};
use crate::bowler::Bowler;

/// How to say that one doesn't know.
const NOT_KNOWN: &str = "I don't know";

/// Writes the question with what can be chosen, or examples of what to say.
#[must_use]
pub fn question_text(question: &Question, look: &Look) -> String {
    let mut page = Page::new(look);
    page.heading(question.ask());
    for (index, choice) in question.choices().iter().enumerate() {
        // A number is the number itself where one may be said, and a count of balls where those are asked for.
        let is_numbered = question.quantity().is_none() && question.form() != Form::Balls;
        let label = if is_numbered {
            format!("{:>2}  ", index + 1)
        } else {
            "-   ".to_owned()
        };
        page.item(2, &label, choice.label());
    }
    for other in [question.none(), question.other(), question.open()]
        .into_iter()
        .flatten()
    {
        page.item(2, "-   ", other);
    }
    if let [first, rest @ ..] = question.such_as() {
        let others = rest.iter().map(|one| format!(" or \"{one}\""));
        let text = format!("Such as \"{first}\"{}.", others.collect::<String>());
        page.paragraph(2, &text);
    }
    if question.form() == Form::Several {
        page.paragraph(2, "You may name several.");
    }
    page.finish()
}

/// Writes the sentences of help.
#[must_use]
pub fn help_text(question: &Question, look: &Look) -> String {
    let mut page = Page::new(look);
    page.paragraph(2, question.help());
    page.finish()
}

#[derive(Serialize)]
struct AskDoc<'a> {
    #[serde(flatten)]
    head: Head<'a>,
    done: bool,
    #[serde(skip_serializing_if = "Option::is_none")]
    next: Option<QuestionDoc<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    answered: Option<usize>,
    #[serde(skip_serializing_if = "Option::is_none")]
    saved: Option<usize>,
    remarks: Vec<RemarkDoc<'a>>,
}

#[derive(Serialize)]
struct QuestionDoc<'a> {
    id: &'a str,
    answers: &'a [&'static str],
    cost: i64,
    ask: &'a str,
    help: &'a str,
    answer: FormDoc<'a>,
}

/// What may be said: a choice, several of them, a ball each, or a number.
#[derive(Serialize)]
struct FormDoc<'a> {
    kind: &'static str,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    choices: Vec<ChoiceDoc<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    number: Option<NumberDoc<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    none: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    other: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    open: Option<&'a str>,
    not_known: &'static str,
}

#[derive(Serialize)]
struct ChoiceDoc<'a> {
    label: &'a str,
    word: &'static str,
}

#[derive(Serialize)]
struct NumberDoc<'a> {
    unit: &'static str,
    step: &'static str,
    lowest: String,
    highest: String,
    such_as: &'a [String],
}

#[derive(Serialize)]
struct RemarkDoc<'a> {
    about: &'a str,
    text: &'a str,
}

/// Writes what comes next as an answer document, ending in a line break: the question with what may be said, or that none is left.
#[must_use]
pub fn next_json(next: &Next, bowler: &Bowler, digest: &str) -> String {
    let (question, done) = match next {
        Next::Ask(question) => (Some(question.as_ref()), None),
        Next::Done { answered, saved } => (None, Some((*answered, *saved))),
    };
    let remarks = bowler.questions().iter().map(|remark| RemarkDoc {
        about: remark.about(),
        text: remark.text(),
    });
    let document = AskDoc {
        head: Head::new("ask").digest(digest),
        done: done.is_some(),
        next: question.map(QuestionDoc::new),
        answered: done.map(|(answered, _)| answered),
        saved: done.map(|(_, saved)| saved),
        remarks: remarks.collect(),
    };
    super::json::written(&document)
}

impl<'a> QuestionDoc<'a> {
    fn new(question: &'a Question) -> QuestionDoc<'a> {
        let choices = question.choices().iter().map(|choice| ChoiceDoc {
            label: choice.label(),
            word: choice.word(),
        });
        let number = question.quantity().map(|number| NumberDoc {
            unit: number.notation.unit(),
            step: number.notation.step(),
            lowest: number.notation.write(number.lowest),
            highest: number.notation.write(number.highest),
            such_as: question.such_as(),
        });
        let kind = match question.form() {
            Form::Several => "several",
            Form::Balls => "balls",
            _ if question.choices().is_empty() => "number",
            _ => "choice",
        };
        QuestionDoc {
            id: question.id(),
            answers: question.answers(),
            cost: question.cost(),
            ask: question.ask(),
            help: question.help(),
            answer: FormDoc {
                kind,
                choices: choices.collect(),
                number,
                none: question.none(),
                other: question.other(),
                open: question.open(),
                not_known: NOT_KNOWN,
            },
        }
    }
}
