//! The ball stage: stocked model-and-weight pairs against what was settled and what is wished for.

use super::answers::{POUND, number};
use super::stage::{Column::*, StageFact};
use super::{Interval, Situation, words};
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
    pub drilled: [[i64; 3]; 2],
    /// The cheapest out-the-door price on the shelf in this weight, same order.
    pub cheapest: [[i64; 3]; 2],
}

impl BallCandidate {
    /// The price over all grips there could be, with whatever the thumb could get.
    fn at_grip(prices: &[[i64; 3]; 2], s: &Situation) -> Interval {
        let among =
            |fact: &str, word: usize| i64::try_from(word).is_ok_and(|word| s.get(fact).holds(word));
        if !s.get("settled.grip").is_known() {
            return Interval::NOT_KNOWN;
        }
        let grips = prices
            .iter()
            .enumerate()
            .filter(|(grip, _)| among("settled.grip", *grip));
        let thumbs = grips.flat_map(|(_, row)| row.iter().enumerate());
        let open = thumbs.filter(|(thumb, _)| match thumb {
            2 => among("fit.has_sleeve", 1),
            slug => among("fit.has_sleeve", 0) && among("fit.has_slug", *slug),
        });
        open.map(|(_, price)| Interval::point(*price))
            .reduce(Interval::or)
            .unwrap_or(Interval::NOT_KNOWN)
    }

    /// Out-the-door price in the settled grip.
    pub fn out_the_door(&self, s: &Situation) -> Interval {
        BallCandidate::at_grip(&self.drilled, s)
    }
}

/// Is the wished index among the bits of this set?
fn wished(set: i64, wish: Interval) -> Interval {
    let has = |v: i64| (0..62).contains(&v) && set >> v & 1 == 1;
    if !wish.is_known() {
        return Interval::NOT_KNOWN;
    }
    let any = (wish.lowest()..=wish.highest()).any(has);
    let all = (wish.lowest()..=wish.highest()).all(has);
    Interval::between(i64::from(all), i64::from(any))
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
    column: fn(&Situation, &BallCandidate) -> Interval,
) -> StageFact<BallCandidate> {
    StageFact {
        name,
        meaning,
        kind,
        from,
        column: Derived(column),
    }
}

/// Facts of a ball.
pub fn facts() -> Vec<StageFact<BallCandidate>> {
    vec![
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
            |s, c| {
                Interval::point(c.weight)
                    .minus(s.get("settled.weight"))
                    .distance()
            },
        ),
        derived(
            "match.heavier",
            "heavier than the settled weight",
            Kind::Flag,
            "the ball's weight against the settled weight",
            |s, c| Interval::point(c.weight - 1).is_at_least(s.get("settled.weight")),
        ),
        derived(
            "match.price_drilled",
            "its price drilled, with everything and tax",
            number(Money, 0, 400_000),
            "the price list",
            |s, c| c.out_the_door(s),
        ),
        derived(
            "match.over_budget",
            "how far it is over the budget",
            number(Money, -400_000, 400_000),
            "the drilled price less the budget",
            |s, c| c.out_the_door(s).minus(s.get("bowler.budget")),
        ),
        derived(
            "match.colour",
            "has the colour wished for",
            Kind::Flag,
            "the ball's colours against the wish",
            |s, c| wished(c.colours, s.get("bowler.colour_wish")),
        ),
        derived(
            "match.cover_wish",
            "has the cover wished for",
            Kind::Flag,
            "the ball's cover against the wish",
            |s, c| s.get("bowler.cover_wish").is(c.cover),
        ),
        derived(
            "match.same_cover_owned",
            "a ball with this cover is owned already",
            Kind::Flag,
            "the ball's cover against the balls owned",
            |s, c| match s.known("owned.covers") {
                Some(set) => Interval::flag(set >> c.cover & 1 == 1),
                None => Interval::either_if(s.get("owned.covers").is_known()),
            },
        ),
        derived(
            "match.dearer_than_starter",
            "how much dearer it is than the cheapest ball at this weight, drilled",
            number(Money, 0, 400_000),
            "the drilled price less the cheapest one's",
            |s, c| {
                c.out_the_door(s)
                    .minus(BallCandidate::at_grip(&c.cheapest, s))
            },
        ),
    ]
}
