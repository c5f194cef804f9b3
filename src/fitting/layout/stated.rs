//! One layout said in each of the usual ways.

use super::{Layout, phrase};
use crate::fitting::Sphere;

impl Layout {
    /// The layout in each usual way of stating it that exists for it: what the way is called, and the numbers. Lengths are
    /// written to a sixteenth, angles to a degree; `left_hand` chooses the words right and left.
    pub fn stated(&self, ball: &Sphere, left_hand: bool) -> Vec<(String, String)> {
        let mut ways = Vec::new();
        let mut say = |way: &str, numbers: String| ways.push((way.to_owned(), numbers));
        let (pin, length) = (self.pin(), phrase::length);
        say("pin, over and up", phrase::place(pin, left_hand));
        say(
            "pin from the grip centre",
            format!("{}, {}", length(pin.to_grip(ball)), self.height_of_pin()),
        );
        let aside = pin.to_centreline(ball);
        if !phrase::is_nothing(aside) {
            let side = phrase::side(aside, left_hand);
            say(
                "pin from the lines",
                format!(
                    "{} {side} of the centreline, {}",
                    length(aside),
                    self.height_of_pin()
                ),
            );
        }
        if let Some(pap) = self.pap() {
            say("PAP, over and up", phrase::place(pap, left_hand));
            let (up, over) = pap.up_first(ball);
            if !phrase::is_nothing(up) && !phrase::is_nothing(over) {
                say(
                    "the same PAP taken up first",
                    format!(
                        "{} {}, then {} to the {}",
                        length(up),
                        phrase::height(up),
                        length(over),
                        phrase::side(over, left_hand)
                    ),
                );
            }
        }
        if let Ok(angles) = self.angles(ball) {
            let distances = angles.distances(ball);
            say(
                "drilling angle, pin to PAP, VAL angle",
                format!(
                    "{} x {} x {}",
                    phrase::angle(angles.drilling()),
                    length(angles.pin()),
                    phrase::angle(angles.val())
                ),
            );
            say(
                "pin to PAP, mass bias to PAP, pin to VAL",
                format!(
                    "{} x {} x {}",
                    length(distances.pin()),
                    length(distances.mass_bias()),
                    length(distances.buffer())
                ),
            );
        } else if let (Some(distance), Ok(val)) = (self.pin_to_pap(ball), self.val(ball)) {
            say(
                "pin to PAP, VAL angle",
                format!("{} x {}", length(distance), phrase::angle(val)),
            );
            if let Some(buffer) = self.buffer(ball) {
                say(
                    "pin to PAP, pin to VAL",
                    format!("{} x {}", length(distance), length(buffer)),
                );
            }
        }
        if let Some(inches) = self.mass_bias_to_grip(ball) {
            say("mass bias to the grip centre", length(inches));
        }
        ways
    }

    fn height_of_pin(&self) -> String {
        let up = self.pin().up();
        if phrase::is_nothing(up) {
            "on the midline".to_owned()
        } else if up > 0.0 {
            format!("{} above the midline", phrase::length(up))
        } else {
            format!("{} below the midline", phrase::length(up))
        }
    }
}
