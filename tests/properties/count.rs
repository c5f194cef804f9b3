//! How many random cases a property is tried on.

use proptest::test_runner::Config;

/// So many random cases; times `PROPERTY_TIMES` for a long look.
pub fn cases(count: u32) -> Config {
    let times = std::env::var("PROPERTY_TIMES")
        .ok()
        .and_then(|times| times.parse().ok())
        .unwrap_or(1);
    Config {
        cases: count.saturating_mul(times),
        failure_persistence: None,
        ..Config::default()
    }
}
