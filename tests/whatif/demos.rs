//! The demo shop and its bowlers.

use std::path::{Path, PathBuf};

use spanwright::advice::Shop;
use spanwright::bowler::Bowler;
use spanwright::document::Document;

/// The embedded shop.
pub fn shop() -> Shop {
    Shop::demo().unwrap()
}

/// Every demo bowler with the name of its file.
pub fn bowlers() -> Vec<(String, Bowler)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("catalog-demo/bowlers");
    let entries = std::fs::read_dir(folder).unwrap();
    let mut paths: Vec<PathBuf> = entries.map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    let name = |path: &PathBuf| path.file_stem().unwrap().to_string_lossy().into_owned();
    let read = |path: &PathBuf| Bowler::read(&Document::read(path).unwrap()).unwrap();
    paths.iter().map(|path| (name(path), read(path))).collect()
}

/// One demo bowler.
pub fn demo(file: &str) -> Bowler {
    let found = bowlers().into_iter().find(|(name, _)| name == file);
    found.unwrap().1
}
