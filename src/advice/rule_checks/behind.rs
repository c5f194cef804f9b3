//! Which answers and settled facts each worked fact follows from.
//!
//! What comes out of the mathematics of the drilled ball and of the roll is taken as free in its range: no statement about two such numbers is
//! called impossible for a reason that only geometry or mechanics knows.

/// Facts that follow from others by geometry or by the mechanics of the roll, or from such: any value in their range is taken as possible.
const BY_GEOMETRY: &[&str] = &[
    "hand.flat_ring_span",
    "fit.middle_cut_span",
    "fit.ring_cut_span",
    "fit.slug_wall",
    "fit.slug_wall_short",
    "fit.web_least",
    "fit.web_short",
    "roll.most_turn",
    "roll.turn_done",
    "roll.entry_angle",
    "roll.slip_ends",
    "roll.sideways",
];

const GRIP: &str = "settled.grip";
const SLEEVE: &[&str] = &[
    "bowler.thumb",
    "settled.sleeve",
    "card.works",
    "card.grip",
    GRIP,
    "card.sleeve",
];
const SLUG: &[&str] = &[
    "bowler.thumb",
    "settled.sleeve",
    "card.works",
    "card.grip",
    GRIP,
    "card.sleeve",
    "card.slug",
];
const OVAL: &[&str] = &[
    "bowler.thumb",
    "card.works",
    "card.grip",
    GRIP,
    "card.oval_wide",
    "card.oval_narrow",
    "card.thumb_bore",
    "hand.oval_wide",
    "hand.oval_narrow",
];
const WIDEST: &[&str] = &[
    "bowler.thumb",
    "card.works",
    "card.grip",
    GRIP,
    "card.oval_wide",
    "card.oval_narrow",
    "card.thumb_bore",
    "hand.oval_wide",
    "hand.oval_narrow",
    "fit.thumb.oval_wide",
    "fit.thumb.bore",
];
/// What a price follows from: grip and what the thumb gets.
const PRICE: &[&str] = SLUG;
const OVER_BUDGET: &[&str] = &[
    "bowler.thumb",
    "settled.sleeve",
    "card.works",
    "card.grip",
    GRIP,
    "card.sleeve",
    "card.slug",
    "bowler.budget",
];

/// What a place down the lane follows from, with the owned ball's that it is held against.
const BEFORE_SOONEST: &[&str] = &[
    "bowler.speed",
    "bowler.rev_rate",
    "bowler.rotation",
    "bowler.tilt",
    "bowler.lanes",
    "upgrade.soonest",
];
const AFTER_LATEST: &[&str] = &[
    "bowler.speed",
    "bowler.rev_rate",
    "bowler.rotation",
    "bowler.tilt",
    "bowler.lanes",
    "upgrade.latest",
];
const FROM_BETWEEN: &[&str] = &[
    "bowler.speed",
    "bowler.rev_rate",
    "bowler.rotation",
    "bowler.tilt",
    "bowler.lanes",
    "upgrade.between",
];

/// The free facts that a fact follows from; none if it is free itself, or of a candidate alone.
pub(super) fn behind(name: &str) -> &'static [&'static str] {
    match name {
        "bowler.child" | "bowler.older" => &["bowler.age"],
        "bowler.tenth_of_body" => &["bowler.body_weight"],
        "bowler.mirrored" => &["bowler.curve"],
        "hand.middle_span" => &[
            GRIP,
            "hand.conventional_middle_span",
            "hand.fingertip_middle_span",
        ],
        "hand.ring_span" => &[
            GRIP,
            "hand.conventional_ring_span",
            "hand.fingertip_ring_span",
        ],
        "card.fits" => &["card.works", "card.grip", GRIP],
        "hand.thumb_swell" => &["hand.thumb_gauge_warm", "hand.thumb_gauge"],
        "fit.has_sleeve" => SLEEVE,
        "fit.has_slug" => SLUG,
        "fit.has_oval" => OVAL,
        "fit.thumb.widest" => WIDEST,
        "fit.span_gap" => &["fit.ring.span", "fit.middle.span"],
        "refit.middle_span_gap" => &["fit.middle.span", "card.middle_span"],
        "refit.ring_span_gap" => &["fit.ring.span", "card.ring_span"],
        "refit.ring_lead" => &["card.ring_span", "card.middle_span"],
        "refit.thumb_forward_gap" => &["fit.thumb.forward_pitch", "card.thumb_forward"],
        "refit.thumb_lateral_gap" => &["fit.thumb.lateral_pitch", "card.thumb_lateral"],
        "refit.middle_forward_gap" => &["fit.middle.forward_pitch", "card.middle_forward"],
        "refit.ring_forward_gap" => &["fit.ring.forward_pitch", "card.ring_forward"],
        "refit.thumb_room" => &["card.thumb_bore", "hand.thumb_gauge"],
        "refit.thumb_room_warm" => &["card.thumb_bore", "hand.thumb_gauge_warm"],
        "weight.step" => &["bowler.ball_now_weight"],
        "weight.over_tenth" => &["bowler.body_weight"],
        "weight.over_age" => &["bowler.age"],
        "weight.over_hold" => &["bowler.hold_passed"],
        "weight.at_failed" => &["bowler.hold_failed"],
        "weight.off_target" => &["bowler.target_weight"],
        "match.weight_gap" | "match.heavier" => &["settled.weight"],
        "match.price_drilled" | "match.dearer_than_starter" => PRICE,
        "match.over_budget" => OVER_BUDGET,
        "match.colour" => &["bowler.colour_wish"],
        "match.cover_wish" => &["bowler.cover_wish"],
        "match.before_soonest" => BEFORE_SOONEST,
        "match.after_latest" => AFTER_LATEST,
        "match.from_between" => FROM_BETWEEN,
        "match.worn_cover" => &["upgrade.worn_cover"],
        "match.same_cover_owned" => &["owned.covers"],
        _ => &[],
    }
}

/// Whether any value in its range is taken as possible, whatever else is known.
pub(super) fn is_by_geometry(name: &str) -> bool {
    BY_GEOMETRY.contains(&name)
}
