//! Parts of a case file as plain texts, lists and pairs.

use spanwright::document::{Content, Node};

pub fn map(node: &Node) -> Vec<(String, &Node)> {
    map_of(node.content())
}

pub fn map_of(content: &Content) -> Vec<(String, &Node)> {
    match content {
        Content::Map(pairs) => pairs.iter().map(|(k, v)| (text(k).to_owned(), v)).collect(),
        other => panic!("a map was expected, not {other:?}"),
    }
}

pub fn text(node: &Node) -> &str {
    node.text().unwrap_or_default()
}

pub fn list(node: &Node) -> Vec<String> {
    items(node.content())
}

pub fn scalar(content: &Content) -> &str {
    match content {
        Content::Scalar(text) => text,
        _ => "",
    }
}

pub fn items(content: &Content) -> Vec<String> {
    match content {
        Content::List(nodes) => nodes.iter().map(|n| text(n).to_owned()).collect(),
        Content::Scalar(text) => vec![text.to_string()],
        _ => Vec::new(),
    }
}

pub fn pairs(content: &Content) -> Vec<(String, String)> {
    match content {
        Content::Map(pairs) => pairs
            .iter()
            .map(|(k, v)| (text(k).to_owned(), text(v).to_owned()))
            .collect(),
        _ => Vec::new(),
    }
}

pub fn lists(content: &Content) -> Vec<(String, Vec<String>)> {
    match content {
        Content::Map(pairs) => pairs
            .iter()
            .map(|(k, v)| (text(k).to_owned(), list(v)))
            .collect(),
        _ => Vec::new(),
    }
}

/// A node as JSON text, so that a profile inside a case is read by the same door as any other.
pub fn json(node: &Node) -> String {
    let quoted = |text: &str| serde_json::to_string(text).unwrap();
    match node.content() {
        Content::Null => "null".to_owned(),
        Content::Scalar(text) => quoted(text),
        Content::List(nodes) => {
            format!("[{}]", nodes.iter().map(json).collect::<Vec<_>>().join(","))
        }
        Content::Map(pairs) => {
            let inside: Vec<String> = pairs
                .iter()
                .map(|(k, v)| format!("{}:{}", quoted(text(k)), json(v)))
                .collect();
            format!("{{{}}}", inside.join(","))
        }
    }
}
