//! Where results go, and what may be done to them there.

use std::io::{self, ErrorKind, IsTerminal, Write};
use std::path::Path;

use super::Refusal;
use super::arguments::OutputOptions;
use crate::document;

/// Columns where the width isn't known.
const WIDTH: usize = 80;
/// Longer lines are tiring to read, however wide the terminal.
const WIDEST: usize = 100;

/// Width in columns and whether colour may be used.
pub(super) fn surface(options: &OutputOptions) -> (usize, bool) {
    if options.file.is_some() || !io::stdout().is_terminal() {
        return (WIDTH, false);
    }
    let width = terminal_size::terminal_size().map_or(WIDTH, |(width, _)| usize::from(width.0));
    let refused = std::env::var_os("NO_COLOR").is_some_and(|value| !value.is_empty());
    let dumb = std::env::var_os("TERM").is_some_and(|term| term == "dumb");
    (width.min(WIDEST), !refused && !dumb)
}

/// Puts a result where it was asked for.
pub(super) fn put(options: &OutputOptions, text: &str) -> Result<(), Refusal> {
    if let Some(path) = &options.file {
        return put_into(path, text);
    }
    print(text)
}

/// Puts a text on standard output.
pub(super) fn print(text: &str) -> Result<(), Refusal> {
    let mut out = io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        // The reader has had enough, as in `| head`.
        Err(why) if why.kind() == ErrorKind::BrokenPipe => Ok(()),
        other => other.map_err(|why| format!("standard output can't be written: {why}")),
    }
}

/// Puts a result into a file, whole or not at all.
pub(super) fn put_into(path: &Path, text: &str) -> Result<(), Refusal> {
    document::write_atomically(path, text.as_bytes()).map_err(|why| {
        let shown = document::clean(&path.display().to_string());
        format!("{shown} can't be written: {why}")
    })
}

/// Says on standard error what is wrong.
pub(super) fn complain(words: &str) {
    // With standard error closed there is nobody left to tell.
    let _ = writeln!(io::stderr().lock(), "{}", words.trim_end());
}
