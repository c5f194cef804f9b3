//! What a case says about the words and the yes-or-no of an answer: found and wanted, side by side.

use spanwright::document::{Content, Node};

use crate::nodes::{items, scalar, text};

/// What, found, wanted.
pub type Compared = Vec<(String, String, String)>;

/// Everything that is otherwise than wanted, with the case's file before it.
pub fn otherwise(file: &str, compared: Compared) -> Vec<String> {
    let wrong = compared
        .into_iter()
        .filter(|(_, found, wanted)| found != wanted);
    wrong
        .map(|(what, found, wanted)| format!("{file}: {what} is `{found}`, expected `{wanted}`"))
        .collect()
}

/// `yes` or `no`.
pub fn said(flag: bool) -> String {
    if flag { "yes" } else { "no" }.to_owned()
}

/// One value.
pub fn one(key: &str, found: impl Into<String>, content: &Content) -> Compared {
    vec![(key.to_owned(), found.into(), scalar(content).to_owned())]
}

/// Each of a list must be there, or mustn't.
pub fn each(key: &str, content: &Content, wanted: bool, found: &dyn Fn(&str) -> bool) -> Compared {
    let compared = |name: String| {
        let there = said(found(&name));
        (format!("{key}: {name}"), there, said(wanted))
    };
    items(content).into_iter().map(compared).collect()
}

/// Words that a customer's answer must hold, or mustn't, whoever reads it; spaces and line breaks count alike.
pub fn words(key: &str, content: &Content, wanted: bool, texts: &[String]) -> Compared {
    let flat = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let texts: Vec<String> = texts.iter().map(|text| flat(text)).collect();
    each(key, content, wanted, &|part| {
        let holds = |text: &String| text.contains(part);
        match wanted {
            true => texts.iter().all(holds),
            false => texts.iter().any(holds),
        }
    })
}

/// The nodes of a list, or a single node's own.
pub fn list_of(node: &Node) -> Vec<String> {
    match node.content() {
        Content::List(nodes) => nodes.iter().map(|node| text(node).to_owned()).collect(),
        _ => vec![text(node).to_owned()],
    }
}
