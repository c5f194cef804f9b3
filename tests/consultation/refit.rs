//! What a case about a fit that doesn't sit right expects.

use spanwright::advice::{Change, Reason, Refit};
use spanwright::document::Content;

use crate::advice::shown;
use crate::case::Case;
use crate::nodes::{items, lists, pairs, scalar};

/// What comes out otherwise than argued.
pub fn differences(case: &Case, refit: &Refit) -> Vec<String> {
    let mut wrong = Vec::new();
    for (key, content) in &case.expected {
        for (what, found, wanted) in compared(case, refit, key, content) {
            if found != wanted {
                wrong.push(format!(
                    "{}: {what} is `{found}`, expected `{wanted}`",
                    case.file
                ));
            }
        }
    }
    wrong
}

type Compared = Vec<(String, String, String)>;

fn compared(case: &Case, refit: &Refit, key: &str, content: &Content) -> Compared {
    let one = |found: String| vec![(key.to_owned(), found, scalar(content).to_owned())];
    let each = |found: &dyn Fn(&str) -> String| -> Compared {
        pairs(content)
            .into_iter()
            .map(|(name, wanted)| {
                let found = found(&name);
                (format!("{key}: {name}"), found, wanted)
            })
            .collect()
    };
    let all = |wanted: bool, found: &dyn Fn(&str) -> bool| -> Compared {
        items(content)
            .into_iter()
            .map(|name| {
                let found = found(&name).to_string();
                (format!("{key}: {name}"), found, wanted.to_string())
            })
            .collect()
    };
    match key {
        // The likeliest, in order; others may follow.
        "causes" => {
            let wanted = items(content);
            let found = refit.causes().iter().map(|cause| cause.word());
            let found: Vec<&str> = found.take(wanted.len()).collect();
            vec![(key.to_owned(), found.join(", "), wanted.join(", "))]
        }
        "all_causes" => {
            let found: Vec<&str> = refit.causes().iter().map(|cause| cause.word()).collect();
            vec![(key.to_owned(), found.join(", "), items(content).join(", "))]
        }
        "cause_lines" => {
            let lines: Vec<&Reason> = refit.causes().iter().flat_map(|c| c.lines()).collect();
            each(&|rule| shown(&lines, rule))
        }
        "ruled_out" => each(&|cause| {
            let out = refit.ruled_out().iter().find(|c| c.word() == cause);
            let rules = out.map(|c| c.lines().iter().map(Reason::rule).collect::<Vec<_>>());
            rules.unwrap_or_default().join(", ")
        }),
        "held" => one(refit.is_held().to_string()),
        "first_step" => one(refit
            .steps()
            .first()
            .map(|step| step.id().to_owned())
            .unwrap_or_default()),
        "steps" => all(true, &|id| refit.steps().iter().any(|step| step.id() == id)),
        "no_steps" => all(false, &|id| {
            refit.steps().iter().any(|step| step.id() == id)
        }),
        "changes" => each(&|name| value(refit.change(name))),
        "changed" => {
            let found: Vec<&str> = refit.changes().iter().map(|c| c.number().name()).collect();
            vec![(key.to_owned(), found.join(", "), items(content).join(", "))]
        }
        "blanks" => each(&|name| {
            let blank = refit.change(name).and_then(|c| c.number().blank());
            blank.unwrap_or("not blank").to_owned()
        }),
        "later" => each(&|name| {
            let steps = refit.change(name).map(Change::later).unwrap_or_default();
            let shops: Vec<&str> = steps.iter().map(|(_, shop)| shop.as_str()).collect();
            shops.join(", ")
        }),
        "change_lines" => lists(content)
            .into_iter()
            .flat_map(|(name, rules)| rules.into_iter().map(move |rule| (name.clone(), rule)))
            .map(|(name, rule)| {
                let lines = refit.change(&name).map(|c| c.number().lines());
                let found = lines.unwrap_or_default().iter().any(|l| l.rule() == rule);
                (
                    format!("{name} has {rule}"),
                    found.to_string(),
                    "true".to_owned(),
                )
            })
            .collect(),
        "cautions" => all(true, &|rule| cautioned(refit, rule)),
        "no_cautions" => all(false, &|rule| cautioned(refit, rule)),
        "first_caution" => one(refit
            .cautions()
            .first()
            .map(|caution| caution.reason().rule().to_owned())
            .unwrap_or_default()),
        "to_write" => all(true, &|text| {
            refit.to_write().iter().any(|entry| entry.text() == text)
        }),
        other => panic!("{}: unknown expectation {other} of a refit", case.file),
    }
}

fn value(change: Option<&Change>) -> String {
    match change {
        None => "none".to_owned(),
        Some(change) if change.number().blank().is_some() => "blank".to_owned(),
        Some(change) => change.number().shop().to_owned(),
    }
}

fn cautioned(refit: &Refit, rule: &str) -> bool {
    refit
        .cautions()
        .iter()
        .any(|caution| caution.reason().rule() == rule)
}
