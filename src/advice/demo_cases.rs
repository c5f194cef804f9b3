//! The customers of the demo shop, part of the program.

use super::case::Case;
use crate::document::{Document, Faults, Format};

macro_rules! files {
    ($($name:literal),* $(,)?) => {
        &[$((concat!("catalog-demo/bowlers/", $name), include_str!(concat!("../../catalog-demo/bowlers/", $name)))),*]
    };
}

/// Name and text of every profile under `catalog-demo/bowlers/`; a test holds that none is missing.
const FILES: &[(&str, &str)] = files![
    "backup-bowler.yaml",
    "first-ball.yaml",
    "hanging-thumb.yaml",
    "knows-nothing.yaml",
    "league-tired-ball.yaml",
    "left-handed-child.yaml",
    "present.yaml",
    "sore-thumb.yaml",
    "straight-only.yaml",
    "two-balls.yaml",
    "two-handed-no-thumb.yaml",
];

impl Case {
    /// The customers of the demo shop, in the order of their files.
    ///
    /// # Errors
    /// Never for the files as shipped; a test holds that.
    pub fn demo() -> Result<Vec<Case>, Faults> {
        let read = |(name, text): &(&str, &str)| {
            Case::read(&Document::parse(name, text.as_bytes(), Format::Yaml)?)
        };
        FILES.iter().map(read).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::FILES;

    #[test]
    fn every_demo_customer_is_part_of_the_program() {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/catalog-demo/bowlers");
        let names = std::fs::read_dir(folder).into_iter().flatten();
        let mut names: Vec<String> = names
            .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
            .map(|name| format!("catalog-demo/bowlers/{name}"))
            .collect();
        names.sort();
        let built: Vec<&str> = FILES.iter().map(|(name, _)| *name).collect();
        assert_eq!(names, built);
    }
}
