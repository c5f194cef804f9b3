//! A left-hander's drilling is the mirror image of a right-hander's; a ball that curves away leaves the hand alone.

use proptest::prelude::*;
use serde_json::{Value, json};
use spanwright::advice::{Advice, Reason};
use spanwright::notation::Notation::LateralPitch;

use crate::profiles::{Profile, profile};
use crate::{advise, cases};

/// The same bowler in a mirror: the other hand, and every lateral pitch of the card to the other side.
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
    image
}

fn points(lines: &[Reason], turn: i64) -> Vec<(String, i64)> {
    lines
        .iter()
        .map(|line| (line.rule().to_owned(), line.points() * turn))
        .collect()
}

type Numbers = Vec<(String, Option<i64>, Vec<(String, i64)>)>;

fn numbers(advice: &Advice, lateral: i64) -> Numbers {
    let each = advice.spec().numbers().iter().map(|number| {
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
