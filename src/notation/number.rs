//! Splitting text into exact numbers and words.

use std::iter::Peekable;
use std::str::Chars;

/// Longest run of digits that is read. Keeps every product well inside 128 bits.
const MOST_DIGITS: usize = 9;

/// An exact fraction. The bottom is always above zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Ratio {
    pub(super) top: i128,
    pub(super) bottom: i128,
}

impl Ratio {
    /// This many steps, when a unit is `top/bottom` steps; the nearest whole number, halves upward.
    pub(super) fn steps(self, unit: (i128, i128)) -> i128 {
        let (top, bottom) = (self.top * unit.0, self.bottom * unit.1);
        (2 * top + bottom) / (2 * bottom)
    }

    /// Whether it lands exactly on a step.
    pub(super) fn is_exact(self, unit: (i128, i128)) -> bool {
        (self.top * unit.0) % (self.bottom * unit.1) == 0
    }
}

/// A piece of the text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Piece {
    Number(Ratio),
    /// Lower case; a unit, a direction, or one of the marks `$ % ° "`.
    Word(String),
}

/// Why the text is not a number; the second half of "expected …; …".
pub(super) type Trouble = &'static str;

/// No more to say than what was expected.
pub(super) const UNREADABLE: Trouble = "";
const TOO_LONG: Trouble = "at most nine digits are read";
const BOTTOM: Trouble = "the bottom of a fraction is 2, 4, 8, 16, 32 or 64";
const TOP: Trouble = "the fraction beside a whole number is less than one";
pub(super) const SIGN: Trouble = "it takes no plus or minus sign";

/// Splits text into numbers and words. `grouped` allows commas between thousands.
pub(super) fn pieces(text: &str, grouped: bool) -> Result<Vec<Piece>, Trouble> {
    let plain = plain(text);
    let mut characters = plain.chars().peekable();
    let mut pieces = Vec::new();
    while let Some(&next) = characters.peek() {
        if next.is_ascii_digit() || next == '.' {
            pieces.push(Piece::Number(number(&mut characters, grouped)?));
        } else if next.is_ascii_alphabetic() {
            pieces.push(Piece::Word(word(&mut characters)));
        } else if matches!(next, '$' | '%' | '°' | '"') {
            pieces.push(Piece::Word(next.to_string()));
            characters.next();
        } else if next == ' ' {
            characters.next();
        } else if matches!(next, '-' | '+') {
            return Err(SIGN);
        } else {
            return Err(UNREADABLE);
        }
    }
    Ok(pieces)
}

/// Lower case, with ready-made fraction signs, inch marks and minus signs spelled out.
fn plain(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for character in text.trim().chars() {
        match character {
            '¼' => plain.push_str(" 1/4"),
            '½' => plain.push_str(" 1/2"),
            '¾' => plain.push_str(" 3/4"),
            '⅛' => plain.push_str(" 1/8"),
            '⅜' => plain.push_str(" 3/8"),
            '⅝' => plain.push_str(" 5/8"),
            '⅞' => plain.push_str(" 7/8"),
            '\u{2044}' => plain.push('/'),
            '\u{2033}' | '\u{201d}' => plain.push('"'),
            '\u{2212}' => plain.push('-'),
            '\u{a0}' | '\u{2009}' | '\u{202f}' => plain.push(' '),
            other => plain.extend(other.to_lowercase()),
        }
    }
    plain
}

fn word(characters: &mut Peekable<Chars<'_>>) -> String {
    let mut word = String::new();
    while let Some(letter) =
        characters.next_if(|c| c.is_ascii_alphabetic() || matches!(c, '/' | '³'))
    {
        word.push(letter);
    }
    word
}

/// A whole number, a decimal, a fraction, or a whole number and a fraction after spaces or a hyphen.
fn number(characters: &mut Peekable<Chars<'_>>, grouped: bool) -> Result<Ratio, Trouble> {
    let whole = digits(characters, grouped)?;
    if characters.next_if_eq(&'.').is_some() {
        let after = digits(characters, false)?;
        if whole.is_empty() && after.is_empty() {
            return Err(UNREADABLE);
        }
        let bottom = 10_i128.pow(u32::try_from(after.len()).map_err(|_| TOO_LONG)?);
        return Ok(Ratio {
            top: value(&whole) * bottom + value(&after),
            bottom,
        });
    }
    if characters.next_if_eq(&'/').is_some() {
        return fraction(&whole, characters);
    }
    let alone = Ratio {
        top: value(&whole),
        bottom: 1,
    };
    // Look ahead on a copy: `12 lb 4 oz` has a number after a space too, but no fraction right behind it.
    let mut ahead = characters.clone();
    let mut gap = 0;
    while ahead.next_if_eq(&' ').is_some() {
        gap += 1;
    }
    if gap == 0 && ahead.next_if_eq(&'-').is_some() {
        gap = 1;
    }
    if gap == 0 {
        return Ok(alone);
    }
    let top = digits(&mut ahead, false)?;
    if top.is_empty() || ahead.next_if_eq(&'/').is_none() {
        return Ok(alone);
    }
    let part = fraction(&top, &mut ahead)?;
    if part.top >= part.bottom {
        return Err(TOP);
    }
    *characters = ahead;
    Ok(Ratio {
        top: alone.top * part.bottom + part.top,
        bottom: part.bottom,
    })
}

fn fraction(top: &str, characters: &mut Peekable<Chars<'_>>) -> Result<Ratio, Trouble> {
    let bottom = value(&digits(characters, false)?);
    if !matches!(bottom, 1 | 2 | 4 | 8 | 16 | 32 | 64) {
        return Err(BOTTOM);
    }
    Ok(Ratio {
        top: value(top),
        bottom,
    })
}

/// A run of digits; with `grouped`, commas may stand before each three.
fn digits(characters: &mut Peekable<Chars<'_>>, grouped: bool) -> Result<String, Trouble> {
    let mut digits = String::new();
    let mut since_comma = None;
    while let Some(next) = characters.next_if(|c| c.is_ascii_digit() || (grouped && *c == ',')) {
        if next == ',' {
            let first = since_comma.is_none() && (1..=3).contains(&digits.len());
            if !first && since_comma != Some(3) {
                return Err(UNREADABLE);
            }
            since_comma = Some(0);
            continue;
        }
        since_comma = since_comma.map(|seen| seen + 1);
        digits.push(next);
        if digits.len() > MOST_DIGITS {
            return Err(TOO_LONG);
        }
    }
    match since_comma {
        None | Some(3) => Ok(digits),
        Some(_) => Err(UNREADABLE),
    }
}

/// The value of at most [`MOST_DIGITS`] digits; none is zero.
fn value(digits: &str) -> i128 {
    digits
        .bytes()
        .fold(0, |sum, digit| sum * 10 + i128::from(digit - b'0'))
}
