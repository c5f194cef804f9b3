//! What a shop's free words say of a surface and a layout, in the words of its catalog.

use crate::bowler::{FINISHES, Surface};
use crate::catalog::Finish;
use crate::notation::Notation;

/// The finish and the grit that a note tells.
pub(super) fn surface(note: &str) -> (Option<Finish>, Option<i64>) {
    let surface = Surface::read(note);
    let word = surface.finish().and_then(|at| usize::try_from(at).ok());
    let word = word.and_then(|at| FINISHES.get(at));
    let finish = word.and_then(|word| Finish::ALL.iter().find(|it| it.name() == *word));
    (finish.copied(), surface.grit())
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
    fn a_note_tells_a_finish_of_the_catalog() {
        assert_eq!(surface("sanded, 2000"), (Some(Finish::Sanded), Some(2000)));
        assert_eq!(surface("Polished"), (Some(Finish::Polished), None));
        assert_eq!(surface("matt"), (Some(Finish::Matte), None));
        assert_eq!(surface("as it came"), (None, None));
        assert_eq!(FINISHES, Finish::NAMES);
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
