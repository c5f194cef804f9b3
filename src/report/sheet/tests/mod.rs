//! The sheet, drawn from made-up drillings: everything on the page, nothing over anything else, to scale, and harmless.

#![allow(clippy::unwrap_used)]

#[path = "../../../../tests/sheet/drawn.rs"]
mod drawn;
mod fixture;

use std::path::Path;

use rstest::rstest;

use super::hole;
use crate::advice::Advice;
use drawn::Drawn;

fn named(name: &str) -> Advice {
    match name {
        "fingertip" => fixture::fingertip(),
        "oval-left" => fixture::oval_left(),
        "no-thumb" => fixture::no_thumb(),
        "refused" => fixture::refused(),
        "large" => fixture::large(),
        _ => fixture::advice("{ name: Nobody Yet }"),
    }
}

/// Writes every sheet into the folder SHEETS, for eyes: `SHEETS=/tmp cargo test --lib sheets_to_look_at -- --ignored`.
#[test]
#[ignore = "for eyes, not for machines"]
fn sheets_to_look_at() {
    let folder = std::env::var("SHEETS").unwrap();
    for name in [
        "fingertip",
        "oval-left",
        "no-thumb",
        "refused",
        "large",
        "blank",
    ] {
        let advice = named(name);
        std::fs::write(
            Path::new(&folder).join(format!("{name}.html")),
            super::html(&advice),
        )
        .unwrap();
        std::fs::write(
            Path::new(&folder).join(format!("{name}.svg")),
            super::svg(&advice),
        )
        .unwrap();
    }
}
