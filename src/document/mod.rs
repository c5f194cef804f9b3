//! Text in: a placed tree from YAML, JSON or CSV, with every fault at its line and column.
//!
//! A [`Document`] is a whole file read into plain [`Node`]s: scalars as text, lists, and maps as lists of pairs. What the
//! scalars mean is for the caller, who walks the tree with a [`Reader`]. The reader collects every fault it meets instead of
//! stopping at the first.
//!
//! Only this module knows the crates that read YAML, JSON and CSV.

mod fault;
mod file;
mod json;
mod place;
mod reader;
mod table;
mod text;
mod yaml;

use std::path::Path;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Arc, OnceLock};

pub use fault::{Fault, Faults};
pub use file::{write_atomically, yaml_and_json_in};
pub use place::Place;
pub use reader::{Fields, Reader};
pub use text::{clean, nearest};

use place::Text;

/// The most bytes a document may have.
pub const LARGEST: usize = 8 * 1024 * 1024;

/// The deepest that lists and maps may be nested.
pub const DEEPEST: usize = 32;

/// The most faults of form collected; a file with so many is something else altogether.
const MOST_FOUND: usize = 1000;

/// The most bytes walked again to place lists and maps; past it, which only takes a huge file full of faults, the first scalar inside
/// stands for them.
const MOST_WALKED: usize = 4 * LARGEST;

/// How a document is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Format {
    /// One YAML document, without aliases, anchors and tags.
    Yaml,
    /// One JSON value.
    Json,
    /// Comma-separated values; the first line names the columns.
    Csv,
}

/// A file read into a tree, with its text at hand to tell places.
#[derive(Debug)]
pub struct Document {
    text: Text,
    root: Node,
    format: Format,
    /// Byte places of all YAML scalars, found by a second walk the first time one is asked for that the first walk couldn't
    /// place.
    marks: OnceLock<Vec<Option<usize>>>,
    /// Bytes walked again so far for the places of lists and maps.
    walked: AtomicUsize,
}

/// One value of a document.
#[derive(Clone, Debug)]
pub struct Node {
    content: Content,
    /// Its number in document order; the root is 0.
    number: u32,
    /// Bytes of the text it stands at, if the reading told.
    span: Option<(u32, u32)>,
}

/// What a node holds.
#[derive(Clone, Debug)]
pub enum Content {
    /// Nothing: `null`, `~`, an empty value, an empty cell.
    Null,
    /// A text, number or truth value, as text.
    Scalar(Box<str>),
    /// Values in order.
    List(Vec<Node>),
    /// Pairs of key and value in order; keys are scalars, and none repeats.
    Map(Vec<(Node, Node)>),
}

impl Node {
    /// What the node holds.
    pub fn content(&self) -> &Content {
        &self.content
    }

    /// Whether the node holds nothing.
    pub fn is_null(&self) -> bool {
        matches!(self.content, Content::Null)
    }

    /// The text of a scalar; `None` for anything else.
    pub fn text(&self) -> Option<&str> {
        match &self.content {
            Content::Scalar(text) => Some(text),
            _ => None,
        }
    }

    /// What the node holds, in a word or two for messages.
    pub(crate) fn shape(&self) -> &'static str {
        match self.content {
            Content::Null => "nothing",
            Content::Scalar(_) => "a single value",
            Content::List(_) => "a list",
            Content::Map(_) => "a map of keys and values",
        }
    }
}

/// A fault found while a document is read, before places are worked out.
#[derive(Debug)]
struct Found {
    at: At,
    code: &'static str,
    message: String,
    help: Option<String>,
}

/// Where in the text a fault lies.
#[derive(Clone, Copy, Debug)]
enum At {
    /// Bytes from and to.
    Bytes(usize, usize),
    /// The node of this number; its bytes if known.
    Node(u32, Option<(u32, u32)>),
}

impl Found {
    fn new(at: At, code: &'static str, message: impl Into<String>) -> Found {
        Found {
            at,
            code,
            message: message.into(),
            help: None,
        }
    }

    fn help(mut self, help: impl Into<String>) -> Found {
        self.help = Some(help.into());
        self
    }
}

impl Document {
    /// Reads a document from bytes. `name` is what faults call it.
    ///
    /// A byte-order mark at the start of UTF-8 is skipped, since spreadsheets and some editors write one.
    ///
    /// # Errors
    /// Faults of form only: too large, not UTF-8, control characters, broken syntax, repeated keys, aliases, anchors and tags,
    /// nesting deeper than [`DEEPEST`], several documents, nothing in the file.
    pub fn parse(name: &str, bytes: &[u8], format: Format) -> Result<Document, Faults> {
        let name: Arc<str> = Arc::from(text::clean(name));
        if bytes.len() > LARGEST {
            return Err(Fault::too_large(&name, bytes.len() as u64).into());
        }
        let bytes = bytes.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(bytes);
        let source = match std::str::from_utf8(bytes) {
            Ok(source) => Text::new(name, source.into()),
            Err(error) => return Err(not_utf8(name, bytes, error.valid_up_to()).into()),
        };
        let found = text::control_characters(source.as_str());
        if !found.is_empty() {
            return Err(collect(&source, found, |_| None));
        }
        if source.as_str().trim().is_empty() {
            return Err(empty(&source).into());
        }
        let tree = match format {
            Format::Yaml => yaml::read(source.as_str()),
            Format::Json => json::read(source.as_str()),
            Format::Csv => table::read(source.as_str()),
        };
        match tree {
            Ok(root) if root.is_null() => Err(empty(&source).into()),
            Ok(root) => Ok(Document {
                text: source,
                root,
                format,
                marks: OnceLock::new(),
                walked: AtomicUsize::new(0),
            }),
            Err(found) => {
                let mut marks = None;
                Err(collect(&source, found, |number| {
                    let marks = marks.get_or_insert_with(|| yaml::scalar_marks(source.as_str()));
                    let scalar = marks.get(number as usize).copied().flatten();
                    scalar.or_else(|| yaml::mark_of(source.as_str(), number))
                }))
            }
        }
    }

    /// Reads a file; the ending `.yaml`, `.yml`, `.json` or `.csv` tells its format.
    ///
    /// # Errors
    /// As [`Document::parse`]; and if there is no such file, it is a directory, can't be read or has another ending.
    pub fn read(path: &Path) -> Result<Document, Faults> {
        let (bytes, format) = file::load(path)?;
        Document::parse(&path.display().to_string(), &bytes, format)
    }

    /// The name faults call it by.
    pub fn name(&self) -> &str {
        self.text.name()
    }

    /// The whole of it.
    pub fn root(&self) -> &Node {
        &self.root
    }

    /// Where a node of this document stands. A scalar's place is its first character, inside the quotes if it stands in the
    /// file just as it reads; a map's or list's is where it begins.
    pub fn place(&self, node: &Node) -> Place {
        if let Some((start, end)) = node.span {
            return self.text.place(start as usize, end as usize);
        }
        let mark = if matches!(self.format, Format::Yaml) {
            self.mark(node)
        } else {
            None
        };
        match mark {
            Some(start) => self
                .text
                .place(start, yaml::end_of(self.text.as_str(), start, node)),
            None => self.text.place(0, 0),
        }
    }

    fn mark(&self, node: &Node) -> Option<usize> {
        let text = self.text.as_str();
        let marks = || self.marks.get_or_init(|| yaml::scalar_marks(text));
        let number = node.number as usize;
        match &node.content {
            Content::Null | Content::Scalar(_) => return marks().get(number).copied().flatten(),
            Content::Map(pairs) => {
                let key = pairs.first().and_then(|(key, _)| key.span);
                let plain = key.and_then(|(key, _)| yaml::block_start(text, key as usize));
                if plain.is_some() {
                    return plain;
                }
            }
            Content::List(_) => {}
        }
        if self.walked.fetch_add(text.len(), Ordering::Relaxed) < MOST_WALKED {
            yaml::mark_of(text, node.number)
        } else {
            marks().get(number..)?.iter().find_map(|mark| *mark)
        }
    }
}

/// Turns what was found into faults with places.
fn collect(
    source: &Text,
    mut found: Vec<Found>,
    mut mark: impl FnMut(u32) -> Option<usize>,
) -> Faults {
    let more = found.len().saturating_sub(fault::MOST_SHOWN);
    found.truncate(fault::MOST_SHOWN);
    let mut faults = Faults::default();
    for each in found {
        let (start, end) = match each.at {
            At::Bytes(start, end) => (start, end),
            At::Node(_, Some((start, end))) => (start as usize, end as usize),
            At::Node(number, None) => {
                let start = mark(number).unwrap_or(0);
                (start, yaml::end_of_scalar(source.as_str(), start))
            }
        };
        let mut fault = Fault::new(each.code, each.message).at(source.place(start, end));
        if let Some(help) = each.help {
            fault = fault.with_help(help);
        }
        faults.push(fault);
    }
    faults.leave_out(more);
    faults
}

fn empty(source: &Text) -> Fault {
    Fault::new("empty", "there is nothing in this file").at(source.place(0, 0))
}

fn not_utf8(name: Arc<str>, bytes: &[u8], valid: usize) -> Fault {
    let source = Text::new(name, String::from_utf8_lossy(bytes).into());
    let byte = bytes.get(valid).copied().unwrap_or(0);
    Fault::new("not-utf-8", format!("byte {byte:02X} isn't UTF-8 text"))
        .at(source.place(valid, valid + '\u{FFFD}'.len_utf8()))
        .with_help("save the file as UTF-8 text")
}
