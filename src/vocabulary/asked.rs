//! What a computed fact looks at: the facts its code asks for, so that it is known which answers a rule hangs on.

/// The facts that a worked or derived fact is computed from; none if that isn't stated here, and then it may be anything.
pub fn computed_from(fact: &str) -> Option<&'static [&'static str]> {
    const PRICE: &[&str] = &["settled.grip", "fit.has_sleeve", "fit.has_slug"];
    Some(match fact {
        "bowler.child" | "bowler.older" | "weight.over_age" => &["bowler.age"],
        "bowler.tenth_of_body" => &["bowler.body_weight"],
        "bowler.mirrored" => &["bowler.curve"],
        "weight.step" => &["bowler.ball_now_weight"],
        "weight.over_tenth" => &["bowler.tenth_of_body"],
        "weight.over_hold" => &["bowler.hold_passed"],
        "weight.at_failed" => &["bowler.hold_failed"],
        "weight.off_target" => &["bowler.target_weight"],
        "card.fits" => &["card.works", "card.grip", "settled.grip"],
        "fit.has_sleeve" => &["bowler.thumb", "settled.sleeve", "card.fits", "card.sleeve"],
        "fit.has_slug" => &[
            "bowler.thumb",
            "settled.grip",
            "fit.has_sleeve",
            "card.fits",
            "card.slug",
        ],
        "match.weight_gap" | "match.heavier" => &["settled.weight"],
        "match.price_drilled" | "match.dearer_than_starter" => PRICE,
        "match.over_budget" => &["match.price_drilled", "bowler.budget"],
        "match.colour" => &["bowler.colour_wish"],
        "match.cover_wish" => &["bowler.cover_wish"],
        "match.same_cover_owned" => &["owned.covers"],
        _ => return None,
    })
}
