//! The command-line door.
fn main() {}
