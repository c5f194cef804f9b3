//! Answers that can't all be right, told from their values alone: the same for reading, answering and searching.

use super::words::FIRST_REACTIVE;
use crate::notation::Notation;

/// Everything that is read off a thumb which goes into a hole.
const OF_A_THUMB: [&str; 8] = [
    "hand.thumb_gauge",
    "hand.thumb_gauge_warm",
    "hand.thumb_length",
    "hand.thumb_flexibility",
    "hand.thumb_lies",
    "hand.oval_wide",
    "hand.oval_narrow",
    "hand.oval_angle",
];
const OVALS: [[&str; 2]; 2] = [
    ["hand.oval_wide", "hand.oval_narrow"],
    ["card.oval_wide", "card.oval_narrow"],
];

/// Two answers that can't both be right.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Contradiction {
    clash: Clash,
    first: (&'static str, i64),
    second: (&'static str, i64),
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Clash {
    Hold,
    NoBallNow,
    ThumbOut,
    Oval,
    TwoRevRates,
    MoreCoversThanBalls,
    NothingToService,
}

impl Contradiction {
    /// The names of the two answers; the second is the one at fault if both were written down.
    #[must_use]
    pub fn between(&self) -> (&'static str, &'static str) {
        (self.first.0, self.second.0)
    }

    /// Why not, in plain words.
    #[must_use]
    pub fn message(&self) -> String {
        self.told("")
    }

    /// The same, with the line of the first answer.
    pub(super) fn message_with_line(&self, line: u32) -> String {
        self.told(&format!(" (line {line})"))
    }

    /// What to do about it.
    #[must_use]
    pub fn help(&self) -> &'static str {
        match self.clash {
            Clash::Hold => "try both weights again",
            Clash::NoBallNow => "leave the weight out, or say whose ball it is: house or own",
            Clash::ThumbOut => "leave the thumb's measurements out, or write `thumb: in`",
            Clash::Oval => "exchange the two sizes, or measure again",
            Clash::TwoRevRates => "keep the rate that was measured",
            Clash::MoreCoversThanBalls => "count the balls again",
            Clash::NothingToService => "leave the games out, or name the cover of the ball",
        }
    }

    fn told(&self, place: &str) -> String {
        let (first, second) = (self.first.1, self.second.1);
        let pounds = |value| Notation::Weight.write(value);
        let size = |value| Notation::HoleSize.write(value);
        match self.clash {
            Clash::Hold => format!(
                "{} can't be too much: {} was held in comfort{place}",
                pounds(second),
                pounds(first)
            ),
            Clash::NoBallNow => {
                format!("no ball is used now{place}, so there is no weight of it")
            }
            Clash::ThumbOut => {
                format!("the thumb stays out of the ball{place}, yet it was measured for a hole")
            }
            Clash::Oval => format!(
                "the narrow size {} is over the wide size {}{place}",
                size(second),
                size(first)
            ),
            Clash::TwoRevRates => {
                format!("the rev rate is measured{place}, so there is no guess at it as well")
            }
            Clash::MoreCoversThanBalls => {
                format!("more kinds of cover are owned than balls{place}")
            }
            Clash::NothingToService => {
                format!("no ball owned has a cover that wants service{place}")
            }
        }
    }
}

/// A clash, the two answers it is between, and when two values do clash.
type Pair = (Clash, &'static str, &'static str, fn(i64, i64) -> bool);

/// The first pair of these answers that can't both be right; `get` gives the value of an answer by its name, if it is known.
pub fn contradiction(get: &dyn Fn(&str) -> Option<i64>) -> Option<Contradiction> {
    contradictions(get).next()
}

/// Every pair of these answers that can't both be right.
pub(super) fn contradictions<'g>(
    get: &'g dyn Fn(&str) -> Option<i64>,
) -> impl Iterator<Item = Contradiction> + 'g {
    let both = |one: &'static str, other: &'static str| {
        let first = (one, get(one)?);
        Some((first, (other, get(other)?)))
    };
    let clashing = move |clash, one, other, wrong: fn(i64, i64) -> bool| {
        let (first, second) = both(one, other)?;
        wrong(first.1, second.1).then_some(Contradiction {
            clash,
            first,
            second,
        })
    };
    let pairs: [Pair; 5] = [
        (
            Clash::Hold,
            "bowler.hold_passed",
            "bowler.hold_failed",
            |passed, failed| failed <= passed,
        ),
        (
            Clash::NoBallNow,
            "bowler.ball_now",
            "bowler.ball_now_weight",
            |whose, _| whose == 0,
        ),
        (
            Clash::TwoRevRates,
            "bowler.rev_rate",
            "bowler.rev_level",
            |_, _| true,
        ),
        (
            Clash::MoreCoversThanBalls,
            "owned.count",
            "owned.covers",
            |count, covers| i64::from(covers.count_ones()) > count,
        ),
        (
            Clash::NothingToService,
            "owned.covers",
            "owned.games_since_service",
            |covers, _| covers >> FIRST_REACTIVE == 0,
        ),
    ];
    let thumb = OF_A_THUMB
        .into_iter()
        .filter_map(move |name| clashing(Clash::ThumbOut, "bowler.thumb", name, |t, _| t == 1));
    let ovals = OVALS.into_iter().filter_map(move |[wide, narrow]| {
        clashing(Clash::Oval, wide, narrow, |wide, narrow| narrow > wide)
    });
    let pairs = pairs
        .into_iter()
        .filter_map(move |(clash, one, other, wrong)| clashing(clash, one, other, wrong));
    pairs.chain(ovals).chain(thumb)
}
