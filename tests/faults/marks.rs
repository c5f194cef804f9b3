//! Files that hold every fault, each told by a mark below its line: `#! 7 code: message (help)` speaks of column 7.

use spanwright::document::{Fault, Faults};

/// A fault as a mark states it: line, column, "code: message (help)".
pub type Mark = (u32, u32, String);

/// The marks of a file; each speaks of the last line that is no mark.
pub fn marks(text: &str) -> Vec<Mark> {
    let mut found = Vec::new();
    let mut marked = 0;
    for (number, line) in (1..).zip(text.lines()) {
        match line.trim_start().strip_prefix("#! ") {
            Some(mark) => {
                let (column, rest) = mark.split_once(' ').unwrap();
                found.push((marked, column.parse().unwrap(), rest.trim().to_owned()));
            }
            None => marked = number,
        }
    }
    found.sort();
    found
}

/// The faults that were found, as marks; every fault has its place.
pub fn reported(faults: &Faults) -> Vec<Mark> {
    let one = |fault: &Fault| {
        let place = fault.place().unwrap();
        let help = fault
            .help()
            .map(|help| format!(" ({help})"))
            .unwrap_or_default();
        let words = format!("{}: {}{help}", fault.code(), fault.message());
        (place.line, place.column, words)
    };
    let mut found: Vec<Mark> = faults.iter().map(one).collect();
    found.sort();
    found
}
