//! The search knows no trade: its code names none of the words of the one it was made for.

use std::path::Path;

#[test]
fn the_search_names_no_trade() {
    let words = [
        "ball", "balls", "bowler", "bowlers", "bowling", "lane", "grip", "weight", "thumb",
        "customer", "shop", "kite", "racket",
    ];
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/search");
    let mut files = 0;
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let text = std::fs::read_to_string(&path).unwrap().to_lowercase();
        let named = text
            .split(|letter: char| !letter.is_ascii_alphabetic())
            .find(|word| words.contains(word));
        assert_eq!(named, None, "{}", path.display());
        files += 1;
    }
    assert!(files > 5);
}
