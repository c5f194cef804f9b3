//! The words a profile chooses from. The value of a choice is its place in its list; of a set, one bit a word.

/// Hands, in the order of the fact `bowler.hand`.
pub const HANDS: &[&str] = &["right", "left"];
/// Deliveries, in the order of `bowler.delivery`.
pub const DELIVERIES: &[&str] = &["one_hand", "two_hands"];
/// Where the thumb is, in the order of `bowler.thumb`.
pub const THUMBS: &[&str] = &["in", "out"];
/// What the bowler means to do, in the order of `bowler.intent`.
pub const INTENTS: &[&str] = &["straight", "learn", "hook"];
/// Which way the ball curves, in the order of `bowler.curve`: `away` is a backup ball.
pub const CURVES: &[&str] = &["none", "usual", "away"];
/// How far along the bowler is, in the order of `bowler.experience`.
pub const EXPERIENCES: &[&str] = &["first_ball", "league", "tournament"];
/// Whose ball is thrown now, in the order of `bowler.ball_now`.
pub const BALLS_NOW: &[&str] = &["none", "house", "own"];
/// Aches, bit by bit in the order of `bowler.aches`.
pub const ACHES: &[&str] = &[
    "thumb",
    "fingers",
    "wrist",
    "elbow",
    "shoulder",
    "back",
    "knee",
    "numbness",
    "swelling",
    "night_pain",
];
/// Past injuries, bit by bit in the order of `bowler.injuries`.
pub const INJURIES: &[&str] = &["recent_surgery", "old_fracture", "tendon", "arthritis"];
/// Skins, in the order of `bowler.skin`.
pub const SKINS: &[&str] = &["dry", "normal", "damp", "lotion"];
/// Rough rev rates for people who were never measured, in the order of `bowler.rev_level`.
pub const REV_LEVELS: &[&str] = &["low", "medium", "high"];
/// Lanes bowled on, bit by bit in the order of `bowler.lanes`.
pub const LANES: &[&str] = &["house", "oily", "dry", "sport", "long_oil", "short_oil"];
/// Covers, in the order of `bowler.cover_wish` and `owned.covers`.
pub const COVERS: &[&str] = &["polyester", "urethane", "solid", "hybrid", "pearl"];
/// The first of [`COVERS`] that is reactive; it and all after it tire and want service.
pub(super) const FIRST_REACTIVE: i64 = 2;
/// Colours, in the order of `bowler.colour_wish`.
pub const COLOURS: &[&str] = &[
    "black", "blue", "green", "grey", "orange", "pink", "purple", "red", "silver", "white",
    "yellow",
];
/// Grips, in the order of `card.grip` and `settled.grip`.
pub const GRIPS: &[&str] = &["conventional", "fingertip"];
/// How a thumb or finger joint bends, in the order of `hand.thumb_flexibility` and `hand.finger_joints`.
pub const FLEXIBILITIES: &[&str] = &["stiff", "normal", "flexible"];
/// Under which finger the thumb lies, in the order of `hand.thumb_lies`.
pub const LIES: &[&str] = &["index", "halfway", "middle", "ring"];
/// What a bowler feels or a fitter sees in the fit check, bit by bit in the order of `check.symptoms`.
pub const SYMPTOMS: &[&str] = &[
    "thumb_hangs",
    "ball_drops",
    "tape_in_or_out",
    "squeezes",
    "wants_open_thumb",
    "blister_thumb_back",
    "blister_thumb_side",
    "thumb_tip_bruise",
    "thumb_base_callus",
    "blister_finger_side",
    "fingertips_ache",
    "nail_on_back_wall",
    "nail_base_shows",
    "joint_buried",
    "ring_finger_pain",
    "index_base_callus",
    "forearm_tension",
    "tendon_strain",
    "low_revs",
    "knuckle_pain",
    "fingertip_callus",
    "wide_knuckle",
];
/// What a relaxed thumb does in the hole at rest, in the order of `check.rest_test`.
pub const REST_TESTS: &[&str] = &["slides_out", "stays_in"];
/// What a dated entry of the fit card tells.
pub const ENTRIES: &[&str] = &[
    "ordered",
    "drilled",
    "tapes",
    "eased",
    "complaint",
    "outcome",
];
/// Whether the old holes of a used ball are filled.
pub const OLD_HOLES: &[&str] = &["open", "plugged"];
