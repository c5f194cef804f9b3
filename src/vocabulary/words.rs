//! The closed lists of words that facts are made of. An index into a list is the fact's value.

/// Bowling hand.
pub const HANDS: &[&str] = &["right", "left"];
/// Hands on the ball at release.
pub const DELIVERIES: &[&str] = &["one_hand", "two_hands"];
/// Thumb in the ball or not.
pub const THUMBS: &[&str] = &["in", "out"];
/// What the bowler wants the ball to do.
pub const INTENTS: &[&str] = &["straight", "learn", "hook"];
/// Which way the ball curves.
pub const CURVES: &[&str] = &["none", "usual", "away"];
/// How far along.
pub const EXPERIENCES: &[&str] = &["first_ball", "league", "tournament"];
/// Whose ball is used now.
pub const BALLS_NOW: &[&str] = &["none", "house", "own"];
/// What hurts.
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
/// Injuries and illnesses.
pub const INJURIES: &[&str] = &["recent_surgery", "old_fracture", "tendon", "arthritis"];
/// Skin of the hand.
pub const SKINS: &[&str] = &["dry", "normal", "damp", "lotion"];
/// A level nobody measured.
pub const LEVELS: &[&str] = &["low", "medium", "high"];
/// Lanes.
pub const LANES: &[&str] = &["house", "oily", "dry", "sport", "long_oil", "short_oil"];
/// Covers.
pub const COVERS: &[&str] = &["polyester", "urethane", "solid", "hybrid", "pearl"];
/// Colours.
pub const COLOURS: &[&str] = &[
    "black", "blue", "green", "grey", "orange", "pink", "purple", "red", "silver", "white",
    "yellow",
];
/// How far a joint bends.
pub const FLEXIBILITIES: &[&str] = &["stiff", "normal", "flexible"];
/// Where a relaxed thumb points.
pub const THUMB_LIES: &[&str] = &["index", "halfway", "middle", "ring"];
/// Grips that can be drilled.
pub const GRIPS: &[&str] = &["conventional", "fingertip"];
/// Core shapes.
pub const CORES: &[&str] = &["pancake", "symmetric", "asymmetric"];
/// Finishes.
pub const FINISHES: &[&str] = &["polished", "matte", "sanded"];
/// Price tiers.
pub const TIERS: &[&str] = &["starter", "entry", "middle", "high"];
/// What to do with the surface.
pub const SURFACES: &[&str] = &["factory", "smoother", "duller"];
/// Ways to lay a ball out.
pub const LAYOUTS: &[&str] = &["over_label", "pin_from_grip", "pin_from_PAP"];
