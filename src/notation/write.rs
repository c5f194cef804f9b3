//! Steps to text.

use super::Notation;
use super::units::ways;

/// Prints steps in a notation.
pub(super) fn write(notation: Notation, steps: i64) -> String {
    let size = steps.unsigned_abs();
    let text = match notation {
        Notation::Count => size.to_string(),
        Notation::Counted(one, many) => format!("{size} {}", if size == 1 { one } else { many }),
        Notation::Points => format!(
            "{} {}",
            decimal(size, 10),
            if size == 10 { "point" } else { "points" }
        ),
        Notation::Money => money(size),
        Notation::Weight => format!("{} lb", decimal(size, 100)),
        Notation::Ounces => format!("{} oz", decimal(size, 100)),
        Notation::Speed => format!("{} mph", decimal(size, 10)),
        Notation::Rate => format!("{size} rpm"),
        Notation::Length | Notation::HoleSize => format!("{} in", shop_fraction(size)),
        Notation::ForwardPitch | Notation::LateralPitch | Notation::UpDown => shop_fraction(size),
        Notation::Thousandths => format!("{}.{:03} in", size / 1000, size % 1000),
        Notation::Fine => format!("{} in", fine(size)),
        Notation::Angle => format!(
            "{} {}",
            decimal(size, 10),
            if size == 10 { "degree" } else { "degrees" }
        ),
        Notation::Density => format!("{} g/cc", decimal(size, 1000)),
        Notation::Percent => format!("{size}%"),
        Notation::Feet => format!("{} ft", decimal(size, 10)),
        Notation::Boards => format!(
            "{} {}",
            decimal(size, 10),
            if size == 10 { "board" } else { "boards" }
        ),
        Notation::Coefficient => format!("{}.{:03}", size / 1000, size % 1000),
    };
    let ways = ways(notation);
    let way = match steps {
        0 => None,
        1.. => ways.above.first().filter(|_| ways.needed.is_some()),
        _ => ways.below.first(),
    };
    match way {
        Some(way) => format!("{text} {way}"),
        None => text,
    }
}

/// Sixty-fourths of an inch as a whole number and a reduced fraction: 280 is `4 3/8`.
pub fn shop_fraction(sixty_fourths: u64) -> String {
    let (whole, part) = (sixty_fourths / 64, sixty_fourths % 64);
    if part == 0 {
        return whole.to_string();
    }
    let halvings = part.trailing_zeros();
    let (top, bottom) = (part >> halvings, 64 >> halvings);
    if whole == 0 {
        format!("{top}/{bottom}")
    } else {
        format!("{whole} {top}/{bottom}")
    }
}

/// Sixty-fourths of an inch over a fixed bottom, not reduced: 50 over 64 is `50/64`, over 32 is `25/32`.
/// `None` if the bottom does not divide 64 or the size falls between its steps.
pub fn raw_fraction(sixty_fourths: u64, bottom: u64) -> Option<String> {
    let step = 64_u64.checked_div(bottom)?;
    if step == 0 || step * bottom != 64 || !sixty_fourths.is_multiple_of(step) {
        return None;
    }
    Some(format!("{}/{bottom}", sixty_fourths / step))
}

/// A decimal without idle zeros; `unit` is 10, 100 or 1000 steps.
fn decimal(steps: u64, unit: u64) -> String {
    let (whole, part) = (steps / unit, steps % unit);
    if part == 0 {
        return whole.to_string();
    }
    let digits = unit.ilog10() as usize;
    let part = format!("{part:0digits$}");
    format!("{whole}.{}", part.trim_end_matches('0'))
}

/// Eight-thousandths of an inch as a decimal of at most six places, exact.
fn fine(steps: u64) -> String {
    let (whole, part) = (steps / 8000, steps % 8000);
    if part == 0 {
        return whole.to_string();
    }
    let part = format!("{:06}", part * 125);
    format!("{whole}.{}", part.trim_end_matches('0'))
}

/// Dollars with commas between thousands, and cents when there are any.
fn money(cents: u64) -> String {
    let (dollars, cents) = (cents / 100, cents % 100);
    let digits = dollars.to_string();
    let mut text = String::from("$");
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && (digits.len() - at) % 3 == 0 {
            text.push(',');
        }
        text.push(digit);
    }
    if cents > 0 {
        text.push_str(&format!(".{cents:02}"));
    }
    text
}
