//! A left-hander's drilling is the mirror image of a right-hander's; a ball that curves away leaves the hand alone.

use proptest::prelude::*;
use serde_json::{Value, json};
use spanwright::advice::{Advice, Reason};
use spanwright::notation::Notation::{Angle, LateralPitch};

use crate::profiles::{Profile, profile};
use crate::{advise, cases};

/// The same bowler in a mirror: the other hand, every lateral pitch of the card to the other side, every oval turned the
/// other way.
pub fn mirrored(profile: &Profile) -> Profile {
    let other = if profile.0["hand"] == "left" {
        "right"
    } else {
        "left"
    };
    let mut image = profile.with("hand", json!(other));
    if let Some(pitches) = image
        .0
        .pointer_mut("/fit_card/pitches")
        .and_then(Value::as_object_mut)
    {
        for hole in pitches.values_mut() {
            if let Some(lateral) = hole.get_mut("lateral")
                && let Ok(steps) = LateralPitch.read(lateral.as_str().unwrap())
            {
                *lateral = json!(LateralPitch.write(-steps));
            }
        }
    }
    for oval in ["/fit_card/oval/angle", "/measured/thumb/oval/angle"] {
        if let Some(angle) = image.0.pointer_mut(oval)
            && let Ok(tenths) = Angle.read(angle.as_str().unwrap())
        {
            *angle = json!(Angle.write(1800 - tenths));
        }
    }
    image
}

/// The thumb hole's oval as ordered, in tenths of a degree turned as on the ball; and as computed, for a right hand.
fn ovals(advice: &Advice) -> (Option<i64>, Option<f64>) {
    let ordered = advice.spec().number("thumb.oval_angle");
    let holes = advice.drilling().map(|drilling| drilling.holes());
    let computed = holes
        .into_iter()
        .flatten()
        .find_map(|hole| hole.oval())
        .map(|(_, _, angle)| angle);
    (ordered.and_then(|number| number.value()), computed)
}

fn points(lines: &[Reason], turn: i64) -> Vec<(String, i64)> {
    lines
        .iter()
        .map(|line| (line.rule().to_owned(), line.points() * turn))
        .collect()
}

type Numbers = Vec<(String, Option<i64>, Vec<(String, i64)>)>;

fn numbers(advice: &Advice, lateral: i64) -> Numbers {
    // An oval's angle turns the other way, which is no change of sign; it is compared on its own.
    let same = |name: &str| name != "thumb.oval_angle";
    let numbers = advice.spec().numbers().iter();
    let each = numbers.filter(|number| same(number.name())).map(|number| {
        let turn = if number.name().ends_with("lateral_pitch") {
            lateral
        } else {
            1
        };
        (
            number.name().to_owned(),
            number.value().map(|value| value * turn),
            points(number.lines(), turn),
        )
    });
    each.collect()
}

fn picks(advice: &Advice) -> Vec<(String, i64)> {
    advice
        .picks()
        .iter()
        .map(|pick| (pick.ball().to_owned(), pick.total()))
        .collect()
}

fn settled(advice: &Advice) -> Vec<(String, String, i64)> {
    advice
        .settled()
        .iter()
        .map(|s| (s.stage().to_owned(), s.value().to_owned(), s.total()))
        .collect()
}

proptest! {
    #![proptest_config(cases(96))]

    #[test]
    fn left_is_the_mirror_image_of_right(profile in profile()) {
        let (here, there) = (advise(&profile), advise(&mirrored(&profile)));
        prop_assert_eq!(picks(&here), picks(&there));
        prop_assert_eq!(settled(&here), settled(&there));
        prop_assert_eq!(numbers(&here, 1), numbers(&there, -1));
        let ((one, right), (other, left)) = (ovals(&here), ovals(&there));
        prop_assert_eq!(one, other.map(|angle| 1800 - angle));
        prop_assert_eq!(right.is_some(), left.is_some());
        prop_assert!(right.zip(left).is_none_or(|(a, b)| (a - b).abs() < 1e-9), "{right:?} {left:?}");
    }

    #[test]
    fn a_ball_that_curves_away_leaves_the_hand_alone(profile in profile()) {
        let profile = profile.without(&["settled"]);
        let usual = advise(&profile.with("curve", json!("usual")));
        let away = advise(&profile.with("curve", json!("away")));
        let hand = |advice: &Advice| -> Numbers {
            numbers(advice, 1).into_iter().filter(|(name, ..)| !name.starts_with("pin.")).collect()
        };
        prop_assert_eq!(hand(&usual), hand(&away));
    }
}
