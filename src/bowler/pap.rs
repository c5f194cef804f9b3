//! The PAP: over along the midline and then up, as it is kept, or up first and then over, as some measure it.

use super::sheet::{Found, Key, Sheet, is_unknown};
use crate::document::{Content, Node};
use crate::fitting::layout::Point;
use crate::fitting::{Sphere, inches, sixty_fourths};

pub(super) const KEYS: &[Key] = &[("over", "bowler.pap_over"), ("up", "bowler.pap_up")];
/// Which of the two was measured first.
const FIRST: &[&str] = &["over", "up"];

/// The PAP says which of its two distances is which; a bare pair can't be told apart.
pub(super) fn read<'d>(sheet: &mut Sheet<'d>, node: &'d Node) {
    let is_pair =
        matches!(node.content(), Content::List(_)) || (node.text().is_some() && !is_unknown(node));
    if is_pair {
        let help = "write it with its two names: { over: 4 1/2, up: 1/2 up }";
        sheet.reader.fault_with_help(
            node,
            "shape",
            "the PAP doesn't say which is over and which is up",
            help,
        );
        return;
    }
    let names = KEYS.iter().map(|&(_, name)| name);
    if sheet.nothing(node, names) {
        return;
    }
    let Some(mut fields) = sheet.reader.fields(node, "the PAP") else {
        return;
    };
    let first = fields.take("first");
    let up_first =
        first.and_then(|node| sheet.word(node, "what was measured first", FIRST)) == Some(1);
    sheet.keys(&mut fields, KEYS);
    fields.close(&mut sheet.reader);
    if up_first {
        turn_round(sheet);
    }
}

/// Up and then over, as over and then up: the same point, two other numbers.
fn turn_round(sheet: &mut Sheet) {
    let (Some(over), Some(up)) = (sheet.found("bowler.pap_over"), sheet.found("bowler.pap_up"))
    else {
        return;
    };
    let point = Point::from_up_first(&Sphere::default(), inches(up.value), inches(over.value));
    let point = match point {
        Ok(point) => point,
        // Square to the centreline a quarter of the way around leads to its pole: there is nothing beyond.
        Err(misfit) => {
            let help = "measure again, or say `first: over` if that came first";
            sheet
                .reader
                .fault_with_help(over.node, "out-of-range", misfit.to_string(), help);
            return;
        }
    };
    for (name, length, node) in [
        ("bowler.pap_over", point.over(), over.node),
        ("bowler.pap_up", point.up(), up.node),
    ] {
        let value = sixty_fourths(length);
        sheet.found.insert(name, Found { value, node });
    }
}
