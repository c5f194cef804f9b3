//! What a shop's free words say of a surface and a layout, where they can be understood.

use crate::catalog::Finish;
use crate::notation::Notation;
use crate::vocabulary::GRITS;

/// The finish and the grit that a note such as `sanded, 2000` tells, the last of each: that is what was done last.
pub(super) fn surface(note: &str) -> (Option<Finish>, Option<i64>) {
    let words = || words(note);
    let finish = |word: String| {
        // `polish`, `polished`; `matt`, `matte`; `sanded`, `sand`.
        let of = [
            ("polish", Finish::Polished),
            ("matt", Finish::Matte),
            ("sand", Finish::Sanded),
        ];
        of.into_iter()
            .find(|(start, _)| word.starts_with(start))
            .map(|(_, finish)| finish)
    };
    let grit = |word: String| {
        let number = word.trim_end_matches("grit").parse().ok()?;
        GRITS.contains(&number).then_some(number)
    };
    let finish = words().filter_map(finish).last();
    let grit = words().filter_map(grit).last();
    match (finish, grit) {
        // A grit alone says that it was sanded.
        (None, Some(_)) => (Some(Finish::Sanded), grit),
        _ => (finish, grit),
    }
}

/// How far the pin is from the PAP in 1/64 in, from a note such as `pin 4 1/2 in from the PAP`.
pub(super) fn pin_from_pap(note: &str) -> Option<i64> {
    let note = note.to_lowercase();
    let (before, after) = note.split_once("from")?;
    let to_pap = words(after).find(|word| word != "the")? == "pap";
    let (_, distance) = before.rsplit_once("pin")?;
    let distance = distance.trim().trim_end_matches(" away");
    let distance = Notation::Length.read(distance).ok()?;
    (to_pap && (0..=QUARTER).contains(&distance)).then_some(distance)
}

/// A quarter of the way round a ball of 27 in, in 1/64 in.
const QUARTER: i64 = 27 * 64 / 4;

fn words(note: &str) -> impl Iterator<Item = String> + '_ {
    let parts = note.split(|c: char| !c.is_alphanumeric());
    parts.filter(|part| !part.is_empty()).map(str::to_lowercase)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn notes_on_a_surface_are_understood_where_they_can_be() {
        let both = |note| surface(note);
        assert_eq!(both("sanded, 2000"), (Some(Finish::Sanded), Some(2000)));
        assert_eq!(both("2000-grit"), (Some(Finish::Sanded), Some(2000)));
        assert_eq!(both("Polished"), (Some(Finish::Polished), None));
        assert_eq!(
            both("500, 1000, 2000grit, then polish"),
            (Some(Finish::Polished), Some(2000))
        );
        assert_eq!(both("matt"), (Some(Finish::Matte), None));
        assert_eq!(both("as it came"), (None, None));
        assert_eq!(both("done 3 times, in 12 minutes"), (None, None));
        assert_eq!(both("99999999999999999999999"), (None, None));
    }

    #[test]
    fn notes_on_a_layout_are_understood_where_they_can_be() {
        assert_eq!(pin_from_pap("pin 4 in from the PAP"), Some(256));
        assert_eq!(pin_from_pap("Pin 4 1/2 from PAP, over the ring"), Some(288));
        assert_eq!(pin_from_pap("pin 3 in from the grip centre"), None);
        assert_eq!(pin_from_pap("pin 40 in from the PAP"), None);
        assert_eq!(pin_from_pap("label"), None);
        assert_eq!(pin_from_pap("from"), None);
    }
}
