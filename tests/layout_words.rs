//! A layout reads as steps in the order of work, and nothing is promised about flare.

#![allow(clippy::unwrap_used)]

use spanwright::fitting::{
    Sphere,
    layout::{Angles, HoleMark, Layout, Point, clearances, steps, track_words, wander},
};

/// The bench's words: in order, plain, and nothing about a PAP that nobody measured.
#[test]
fn the_steps_from_the_grip() {
    let ball = Sphere::default();
    let pin = Point::from_grip(&ball, 4.0, 75.0).unwrap();
    let ring = HoleMark::new("ring hole", Point::new(&ball, 0.6, 2.4).unwrap(), 0.484).unwrap();
    let texts: Vec<String> = steps(&ball, &Layout::from_pin(pin), &[ring], false)
        .iter()
        .map(|mark| mark.text().to_owned())
        .collect();
    assert_eq!(
        texts,
        [
            "Find the pin: everything is measured from it.",
            "From the pin, draw a line 4 in long, any way. It ends at the grip centre.",
            "At the grip centre, turn 15 degrees counter-clockwise from the line to the pin. Draw the centreline, fingers that way.",
            "Draw the midline square to it, through the grip centre.",
            "Where they cross is the grip centre.",
            "Leave the PAP blank; measure it after 10 to 20 games.",
            // By hand: sin up = sin 53.33 sin 75 gives 50.79 degrees, 3.81 in; tan over = tan 53.33 cos 75 gives 19.17 degrees,
            // 1.44 in; straight across asin(sin 53.33 cos 75) = 11.98 degrees, 0.90 in; along atan(tan 53.33 sin 75) = 52.38
            // degrees, 3.93 in.
            "Check the pin by the midline: 1 7/16 in to the right, then 3 13/16 in up.",
            "Check the pin by the centreline: 3 15/16 in up along it, then 7/8 in straight to the right.",
            // The middles are 19.17 - 8 = 11.17 degrees over and 50.79 - 32 = 18.79 up apart: by the law of haversines 20.47
            // degrees, 1.535 in, less the hole's 0.485.
            "Check: pin to the near edge of the ring hole, 1 1/16 in.",
        ]
    );
}

/// From a PAP: over, up, the pin's line with its angle, and where the mass bias comes to lie (4.213 in from the PAP, as the
/// table of worked layouts has it).
#[test]
fn the_steps_from_a_pap() {
    let ball = Sphere::default();
    let pap = Point::new(&ball, 5.0, 0.5).unwrap();
    let angles = Angles::new(&ball, 50.0, 4.5, 30.0).unwrap();
    let layout = Layout::from_angles(&ball, pap, &angles).unwrap();
    let marks = steps(&ball, &layout, &[], false);
    let said = |words: &str| marks.iter().position(|mark| mark.text().contains(words));
    let order = [
        "line from the pin to the mass bias mark",
        "At the pin, turn",
        "Draw the centreline",
        "Draw the midline",
        "Where they cross",
        "Over: mark 5 in along the midline to the right.",
        "1/2 in up it is the PAP.",
        "Join pin and PAP: 4 1/2 in. At the PAP it stands 30 degrees from the upper VAL.",
        "Check the pin by the midline: 1 1/2 in to the right, then 4 in up.",
        "The mass bias mark comes to lie 2 1/8 in to the right, then 2 3/4 in down, 4 3/16 in from the PAP.",
    ];
    let places: Vec<Option<usize>> = order.iter().map(|words| said(words)).collect();
    assert!(
        places.iter().all(Option::is_some) && places.is_sorted(),
        "{places:?}"
    );
    assert!(!marks.iter().any(|mark| mark.text().contains("blank")));
}

/// What is said of the flare: never that it will be so.
#[test]
fn the_flare_and_the_holes_in_words() {
    let ball = Sphere::default();
    let pap = Point::new(&ball, 5.0, 0.5).unwrap();
    let thumb = HoleMark::new("thumb hole", Point::new(&ball, 0.0, -2.2).unwrap(), 0.55).unwrap();
    let holes = [thumb];
    let say = |tilt: f64, pin: Option<Point>, likely| {
        track_words(&clearances(&ball, pap, pin, tilt, &holes).unwrap(), likely).remove(0)
    };
    // By the law of cosines the thumb's middle is 73.37 degrees from the PAP, 5.50 in, and its far edge 6.05: a ring at 6.75
    // passes 0.70 in from it.
    assert!(say(0.0, None, None).contains("passes 11/16 in from the thumb hole"));
    let little = wander(&ball, 5.25, 2.55, 0.01, 5.0).unwrap();
    let much = wander(&ball, 3.375, 2.48, 0.052, 14.0).unwrap();
    assert!(say(0.0, None, Some(little)).starts_with("The flare should stay clear"));
    assert!(say(0.0, None, Some(much)).starts_with("The flare may run over the thumb hole."));
    // A hole on the ring itself.
    let on = Point::new(&ball, 5.0 - 6.75, 0.5).unwrap();
    let on = [HoleMark::new("middle hole", on, 0.5).unwrap()];
    let words = track_words(
        &clearances(&ball, pap, None, 0.0, &on).unwrap(),
        Some(little),
    );
    assert!(words[0].contains("the first ring of oil runs over the middle hole"));
}
