use spanwright::advice::Upgrade;
pub fn document(upgrade: &Upgrade) -> String {
    format!("{upgrade:?}")
}
pub fn differences(_: &crate::case::Case, _: &Upgrade) -> Vec<String> {
    Vec::new()
}
