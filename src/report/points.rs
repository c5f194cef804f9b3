//! Points in a text: with a sign, as a ledger has them, or counted out.

use crate::notation::Notation;

/// `15`, `−7`, `1.5`; of tenths of a point.
pub(super) fn bare(tenths: i64) -> String {
    let minus = if tenths < 0 { "\u{2212}" } else { "" };
    format!("{minus}{}", size(tenths))
}

/// `+15`, `−7`, `0`.
pub(super) fn signed(tenths: i64) -> String {
    let plus = if tenths > 0 { "+" } else { "" };
    format!("{plus}{}", bare(tenths))
}

/// `15 points`, `1 point`, `−7 points`.
pub(super) fn counted(tenths: i64) -> String {
    let unit = if tenths == 10 { "point" } else { "points" };
    format!("{} {unit}", bare(tenths))
}

fn size(tenths: i64) -> String {
    let written = Notation::Points.write(tenths.saturating_abs());
    let number = written.split(' ').next();
    number.unwrap_or_default().to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tenths_are_written_as_people_read_them() {
        let cases = [
            (150, "15", "+15", "15 points"),
            (-74, "−7.4", "−7.4", "−7.4 points"),
            (10, "1", "+1", "1 point"),
            (0, "0", "0", "0 points"),
        ];
        for (tenths, as_bare, as_signed, as_counted) in cases {
            assert_eq!(bare(tenths), as_bare);
            assert_eq!(signed(tenths), as_signed);
            assert_eq!(counted(tenths), as_counted);
        }
    }
}
