//! The static weights of a drilled ball, as the shop's scale showed them.

use super::sheet::Sheet;
use crate::document::{Fields, Node};
use crate::notation::Notation;

/// The most a scale is believed to show, in 0.01 oz. Own choice: far above any limit.
const MOST: i64 = 1600;

/// Static weights in 0.01 oz; each is `None` if it wasn't measured.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Statics {
    top: Option<i64>,
    side: Option<i64>,
    finger: Option<i64>,
}

impl Statics {
    /// Top weight; bottom weight is below nothing.
    pub fn top(&self) -> Option<i64> {
        self.top
    }

    /// Weight to the right of the grip as the fitter looks at it, fingers up; to the left is below nothing.
    pub fn right(&self) -> Option<i64> {
        self.side
    }

    /// Finger weight; thumb weight is below nothing.
    pub fn finger(&self) -> Option<i64> {
        self.finger
    }
}

/// Reads `{ top: 1 oz, right: 1/2 oz, thumb: 1/4 oz }`: one of each two opposite sides, never a sign.
pub(super) fn read<'d>(sheet: &mut Sheet<'d>, node: &'d Node) -> Statics {
    if sheet.nothing(node, []) {
        return Statics::default();
    }
    let Some(mut fields) = sheet.reader.fields(node, "the static weights") else {
        return Statics::default();
    };
    let statics = Statics {
        top: either(sheet, &mut fields, ["top", "bottom"]),
        side: either(sheet, &mut fields, ["right", "left"]),
        finger: either(sheet, &mut fields, ["finger", "thumb"]),
    };
    fields.close(&mut sheet.reader);
    statics
}

/// The weight on one of two opposite sides; on the second it is below nothing.
fn either<'d>(
    sheet: &mut Sheet<'d>,
    fields: &mut Fields<'d>,
    sides: [&'static str; 2],
) -> Option<i64> {
    let [one, other] = sides.map(|side| fields.take(side).map(|node| (side, node)));
    let mut read = |(side, node): (&str, &'d Node)| {
        sheet.number(
            node,
            &format!("the {side} weight"),
            Notation::Ounces,
            0..=MOST,
        )
    };
    match (one, other) {
        (Some(one), None) => read(one),
        (None, Some(other)) => read(other).map(|weight| -weight),
        (None, None) => None,
        (Some(one), Some(other)) => {
            read(one);
            read(other);
            let message = format!(
                "a ball can't have {} and {} weight at once",
                sides[0], sides[1]
            );
            sheet.contradict(
                other.1,
                message,
                "keep the side that the scale showed heavier",
            );
            None
        }
    }
}
