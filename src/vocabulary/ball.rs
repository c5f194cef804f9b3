//! The ball stage: stocked model-and-weight pairs against what was settled and what is wished for.

use std::sync::Arc;

use super::answers::{POUND, number};
use super::stage::{Column::*, Given, StageFact};
use super::{Interval, Situation, words};
use crate::catalog::Lanes;
use crate::motion::Friction;
use crate::notation::Notation::{Money, Thousandths, Weight};
use crate::rules::Kind;

/// One stocked model in one weight, as whole steps.
#[derive(Clone, Debug, Default)]
pub struct BallCandidate {
    /// `model-id@weight`.
    pub id: String,
    /// Where it stands in the catalog's stock.
    pub stock: usize,
    /// Index into [`words::COVERS`].
    pub cover: i64,
    /// Index into [`words::CORES`].
    pub core: i64,
    /// Index into [`words::FINISHES`].
    pub finish: i64,
    /// Index into [`words::TIERS`].
    pub tier: i64,
    /// List price in cents.
    pub price: i64,
    /// Hundredths of a pound.
    pub weight: i64,
    /// Thousandths of an inch.
    pub rg: i64,
    /// Thousandths of an inch.
    pub differential: i64,
    /// Thousandths of an inch.
    pub intermediate: i64,
    /// Bit set over [`words::COLOURS`].
    pub colours: i64,
    /// Out-the-door price in cents for each grip of [`words::GRIPS`], without a thumb slug, with one, with a sleeve.
    pub drilled: [[i64; 3]; GRIPS],
    /// The cheapest out-the-door price on the shelf in this weight, same order.
    pub cheapest: [[i64; 3]; GRIPS],
    /// What its cover and finish grip by the rules' table; none where they give no number.
    pub friction: Option<Friction>,
    /// The mean of its three moments of inertia over mass times radius squared, undrilled; 0 where its numbers make no ball.
    pub beta: f64,
    /// The lanes of the shop.
    pub lanes: Arc<Lanes>,
}

/// The facts that the price of a drilled ball depends on: the grip, and what the thumb gets.
const DRILLED_BY: [&str; 3] = ["settled.grip", "fit.has_sleeve", "fit.has_slug"];

/// What comes of the grip and of what the thumb gets, over all there could be: by the first three facts given.
fn at_grip(given: &Given<'_>, price: impl Fn(usize, usize) -> i64) -> Interval {
    let [grip, sleeve, slug] = [0, 1, 2].map(|place| given.at(place));
    let grips = || (0..GRIPS).filter(|&word| among(grip, word));
    let thumbs = || {
        let plain = (0..SLEEVE).filter(|&word| among(sleeve, 0) && among(slug, word));
        plain.chain(among(sleeve, 1).then_some(SLEEVE))
    };
    let prices = grips().flat_map(|grip| thumbs().map(move |thumb| (grip, thumb)));
    let price = prices
        .map(|(grip, thumb)| Interval::point(price(grip, thumb)))
        .reduce(Interval::or)
        .unwrap_or(Interval::NOT_KNOWN);
    // With a sleeve nobody asks for a slug.
    let slug_asked = sleeve.holds(0) && slug.may_be_unknown();
    match grip.may_be_unknown() || sleeve.may_be_unknown() || slug_asked {
        true => price.or_unknown(),
        false => price,
    }
}

fn among(fact: Interval, word: usize) -> bool {
    i64::try_from(word).is_ok_and(|word| fact.holds(word))
}

/// How many grips have prices.
const GRIPS: usize = words::GRIPS.len();
/// Where the price with a sleeve stands among those of a grip.
const SLEEVE: usize = 2;

impl BallCandidate {
    /// Out-the-door price in the settled grip.
    pub fn out_the_door(&self, s: &Situation) -> Interval {
        self.drilled_price(&Given::of(&DRILLED_BY.map(|name| s.get(name))))
    }

    fn drilled_price(&self, given: &Given<'_>) -> Interval {
        at_grip(given, |grip, thumb| self.drilled[grip][thumb])
    }
}

/// Is the wished word among the bits of this set?
fn wished(set: i64, wish: Interval) -> Interval {
    let has = |word: i64| (0..62).contains(&word) && set >> word & 1 == 1;
    if !wish.may_be_known() {
        return Interval::NOT_KNOWN;
    }
    let mut words = wish.lowest()..=wish.highest();
    let any = words.clone().any(has);
    let all = words.all(has);
    let known = Interval::between(i64::from(all), i64::from(any));
    match wish.may_be_unknown() {
        true => known.or_unknown(),
        false => known,
    }
}

fn fixed(
    name: &'static str,
    meaning: &'static str,
    kind: Kind,
    column: fn(&BallCandidate) -> i64,
) -> StageFact<BallCandidate> {
    StageFact {
        name,
        meaning,
        kind,
        from: "the shop's catalog",
        column: Fixed(column),
    }
}

fn derived(
    name: &'static str,
    meaning: &'static str,
    kind: Kind,
    from: &'static str,
    of: &'static [&'static str],
    column: fn(&BallCandidate, &Given<'_>) -> Interval,
) -> StageFact<BallCandidate> {
    StageFact {
        name,
        meaning,
        kind,
        from,
        column: Derived(of, column),
    }
}

/// Facts of a ball.
pub fn facts() -> Vec<StageFact<BallCandidate>> {
    let mut facts = vec![
        fixed(
            "ball.cover",
            "the ball's cover",
            Kind::Choice(words::COVERS),
            |c| c.cover,
        ),
        fixed(
            "ball.core",
            "the shape of its core",
            Kind::Choice(words::CORES),
            |c| c.core,
        ),
        fixed(
            "ball.finish",
            "its finish as delivered",
            Kind::Choice(words::FINISHES),
            |c| c.finish,
        ),
        fixed(
            "ball.tier",
            "its place in the price list",
            Kind::Choice(words::TIERS),
            |c| c.tier,
        ),
        fixed(
            "ball.price",
            "its price undrilled",
            number(Money, 0, 200_000),
            |c| c.price,
        ),
        fixed(
            "ball.weight",
            "its weight",
            number(Weight, 6 * POUND, 16 * POUND),
            |c| c.weight,
        ),
        fixed("ball.rg", "its RG", number(Thousandths, 2000, 3500), |c| {
            c.rg
        }),
        fixed(
            "ball.differential",
            "its differential",
            number(Thousandths, 0, 200),
            |c| c.differential,
        ),
        fixed(
            "ball.intermediate",
            "its intermediate differential",
            number(Thousandths, 0, 200),
            |c| c.intermediate,
        ),
        fixed(
            "ball.colours",
            "its colours",
            Kind::Set(words::COLOURS),
            |c| c.colours,
        ),
        derived(
            "match.weight_gap",
            "how far its weight is from the settled one",
            number(Weight, 0, 10 * POUND),
            "the ball's weight against the settled weight",
            &["settled.weight"],
            |c, given| Interval::point(c.weight).minus(given.at(0)).distance(),
        ),
        derived(
            "match.heavier",
            "heavier than the settled weight",
            Kind::Flag,
            "the ball's weight against the settled weight",
            &["settled.weight"],
            |c, given| Interval::point(c.weight - 1).is_at_least(given.at(0)),
        ),
        derived(
            "match.price_drilled",
            "its price drilled, with everything and tax",
            number(Money, 0, 400_000),
            "the price list",
            &DRILLED_BY,
            BallCandidate::drilled_price,
        ),
        StageFact {
            name: "match.over_budget",
            meaning: "how far it is over the budget",
            kind: number(Money, -400_000, 400_000),
            from: "the drilled price less the budget",
            column: DerivedLess(
                &[DRILLED_BY[0], DRILLED_BY[1], DRILLED_BY[2], "bowler.budget"],
                BallCandidate::drilled_price,
            ),
        },
        derived(
            "match.colour",
            "has the colour wished for",
            Kind::Flag,
            "the ball's colours against the wish",
            &["bowler.colour_wish"],
            |c, given| wished(c.colours, given.at(0)),
        ),
        derived(
            "match.cover_wish",
            "has the cover wished for",
            Kind::Flag,
            "the ball's cover against the wish",
            &["bowler.cover_wish"],
            |c, given| given.at(0).is(c.cover),
        ),
        derived(
            "match.same_cover_owned",
            "a ball with this cover is owned already",
            Kind::Flag,
            "the ball's cover against the balls owned",
            &["owned.covers"],
            |c, given| given.at(0).has(c.cover),
        ),
        derived(
            "match.dearer_than_starter",
            "how much dearer it is than the cheapest ball at this weight, drilled",
            number(Money, 0, 400_000),
            "the drilled price less the cheapest one's",
            &DRILLED_BY,
            |c, given| {
                at_grip(given, |grip, thumb| {
                    c.drilled[grip][thumb] - c.cheapest[grip][thumb]
                })
            },
        ),
    ];
    facts.extend(super::roll::columns());
    facts.extend(super::upgrade::columns());
    facts
}
