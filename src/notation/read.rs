//! Text to steps.

use super::Notation;
use super::number::{Piece, Ratio, SIGN, Trouble, UNREADABLE, pieces};
use super::units::{Ways, hope, units, ways};

const NO_UNIT: Trouble = "that unit is not read here";
const NOT_WHOLE: Trouble = "it must be a whole number";
const CENTS: Trouble = "no parts of a cent";
const SMALL_PART: Trouble = "the ounces beside pounds are less than 16";

/// Reads text, or says what was expected.
pub(super) fn read(notation: Notation, text: &str) -> Result<i64, String> {
    steps(notation, text).map_err(|trouble| {
        let hope = hope(notation);
        let which = ways(notation).needed;
        match (trouble, which) {
            (UNREADABLE, _) => format!("expected {hope}"),
            (SIGN, Some(which)) => format!("expected {hope}; no plus or minus sign, but {which}"),
            _ => format!("expected {hope}; {trouble}"),
        }
    })
}

fn steps(notation: Notation, text: &str) -> Result<i64, Trouble> {
    let (text, negative) = signed(notation, text.trim());
    let mut pieces = pieces(text, notation == Notation::Money)?;
    let ways = ways(notation);
    let way = take_way(&mut pieces, &ways);
    if notation == Notation::Money && pieces.first() == Some(&Piece::Word("$".to_owned())) {
        pieces.rotate_left(1);
    }
    let size = size(notation, &pieces)?;
    match (way, negative) {
        (Some(_), true) => Err(SIGN),
        (None, false) if size != 0 => ways.needed.map_or(Ok(size), Err),
        (Some(false), _) | (_, true) => Ok(-size),
        _ => Ok(size),
    }
}

/// Takes a leading sign off points; nothing else has one.
fn signed(notation: Notation, text: &str) -> (&str, bool) {
    if notation != Notation::Points {
        return (text, false);
    }
    match text.strip_prefix(['-', '\u{2212}']) {
        Some(rest) => (rest, true),
        None => (text.strip_prefix('+').unwrap_or(text), false),
    }
}

/// Takes a direction off the end: true is above zero.
fn take_way(pieces: &mut Vec<Piece>, ways: &Ways) -> Option<bool> {
    let Some(Piece::Word(word)) = pieces.last() else {
        return None;
    };
    let is = |names: &[&str]| names.iter().any(|name| name.eq_ignore_ascii_case(word));
    let way = if is(ways.above) {
        true
    } else if is(ways.below) {
        false
    } else {
        return None;
    };
    pieces.pop();
    Some(way)
}

/// The size without its direction: one number and perhaps a unit, or pounds and ounces.
fn size(notation: Notation, pieces: &[Piece]) -> Result<i64, Trouble> {
    let size = match pieces {
        [Piece::Number(number)] => measured(notation, *number, None)?,
        [
            Piece::Number(pounds),
            Piece::Word(first),
            Piece::Number(ounces),
            Piece::Word(second),
        ] if notation == Notation::Weight
            && first.starts_with(['l', 'p'])
            && second.starts_with('o') =>
        {
            if ounces.top >= 16 * ounces.bottom {
                return Err(SMALL_PART);
            }
            // Add before rounding, so the sum is the nearest step.
            let together = Ratio {
                top: pounds.top * ounces.bottom * 16 + ounces.top * pounds.bottom,
                bottom: pounds.bottom * ounces.bottom * 16,
            };
            measured(notation, *pounds, Some(first))?;
            measured(notation, *ounces, Some(second))?;
            together.steps((100, 1))
        }
        [Piece::Number(number), words @ ..] => measured(notation, *number, Some(&joined(words)?))?,
        _ => return Err(UNREADABLE),
    };
    i64::try_from(size).map_err(|_| UNREADABLE)
}

/// Words joined by spaces, as the words of a count may be several: `games a week`.
fn joined(pieces: &[Piece]) -> Result<String, Trouble> {
    let mut words = Vec::with_capacity(pieces.len());
    for piece in pieces {
        match piece {
            Piece::Word(word) => words.push(word.as_str()),
            Piece::Number(_) => return Err(UNREADABLE),
        }
    }
    Ok(words.join(" "))
}

/// A number in a unit, in steps.
fn measured(notation: Notation, number: Ratio, word: Option<&str>) -> Result<i128, Trouble> {
    let units = units(notation);
    let unit = match (word, notation) {
        (None, _) => units.first(),
        (Some(word), Notation::Counted(one, many)) if word == one || word == many => units.first(),
        (Some(word), _) => units.iter().find(|(names, _)| names.contains(&word)),
    };
    let Some((_, unit)) = unit else {
        return Err(NO_UNIT);
    };
    match notation {
        Notation::Count | Notation::Counted(..) if !number.is_exact(*unit) => Err(NOT_WHOLE),
        Notation::Money if !number.is_exact(*unit) => Err(CENTS),
        _ => Ok(number.steps(*unit)),
    }
}
