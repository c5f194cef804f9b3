//! The balls owned as they are today: what each is, what it does on the lane, and which two do the same.

use super::consultation::Consultation;
use super::owned_motion::Motions;
use super::upgrade::{Does, Doubled, OwnedNow, PINS, whole};
use crate::bowler::{COVERS, OwnedBall};
use crate::notation::Notation;
use crate::vocabulary::{Alone, Interval};

/// The first of the covers that hooks: urethane, and all after it.
const FIRST_HOOKING: i64 = 1;
/// Tenths of a foot beyond which nobody asks where a ball would have finished.
const FARTHEST: i64 = 6_000;
/// The answers that tell an owned ball's weight where the bowler didn't say what is thrown now.
const BALL_NOW: [&str; 2] = ["bowler.ball_now", "bowler.ball_now_weight"];

/// The balls owned, with what was found of them.
pub(super) struct Owned {
    pub(super) balls: Vec<OwnedNow>,
    pub(super) doubled: Vec<Doubled>,
}

/// Whether a ball is for single pins: it is kept for them, or someone who hooks owns it in plastic.
fn is_spare(ball: &OwnedBall, hooks: bool) -> bool {
    ball.is_spare() || hooks && ball.cover().is_some_and(|cover| cover < FIRST_HOOKING)
}

fn hooks(ball: &OwnedBall) -> bool {
    ball.cover().is_some_and(|cover| cover >= FIRST_HOOKING)
}

impl Consultation<'_> {
    /// Whoever owns balls throws one of them now, unless the profile says otherwise.
    pub(super) fn take_owned_weight(&mut self) {
        let bowler = self.bowler;
        let told = BALL_NOW.iter().any(|name| bowler.tells(name));
        let first = |spare: bool| {
            let balls = bowler.owned().iter();
            let mut kind = balls.filter(|ball| ball.is_spare() == spare);
            kind.find_map(OwnedBall::weight)
        };
        let card = self.situation.known("card.ball_weight");
        if let (false, Some(weight)) = (told, first(false).or(card).or_else(|| first(true))) {
            let own = i64::try_from(OWN).unwrap_or_default();
            self.situation.set(BALL_NOW[0], Interval::point(own));
            self.situation.set(BALL_NOW[1], Interval::point(weight));
        }
    }

    /// What is owned, and the facts that the gaps are judged by.
    pub(super) fn owned_now(&mut self, motions: &Motions) -> Owned {
        let bowler = self.bowler;
        // Who owns nothing but plastic throws it at everything.
        let plastic = |ball: &OwnedBall| ball.cover().is_some_and(|cover| cover < FIRST_HOOKING);
        let intends =
            self.situation.is_word("bowler.intent", "hook") && !bowler.owned().iter().all(plastic);
        let main: Vec<usize> = (0..bowler.owned().len())
            .filter(|&at| !is_spare(&bowler.owned()[at], intends))
            .collect();
        let doubled = self.doubled(motions, &main);
        let hooking: Vec<&OwnedBall> = main
            .iter()
            .map(|&at| &bowler.owned()[at])
            .filter(|ball| hooks(ball))
            .collect();
        let count = |many: usize| Interval::point(i64::try_from(many).unwrap_or(i64::MAX));
        let spare = bowler.owned().iter().any(|ball| is_spare(ball, intends));
        let worn = hooking.iter().filter(|ball| ball.games().is_some());
        let worn = worn.max_by_key(|ball| ball.games());
        let mut set = |name: &str, value: Interval| self.situation.set(name, value);
        // A cover that nobody knows may be one that hooks.
        let unclear =
            hooking.is_empty() && main.iter().any(|&at| bowler.owned()[at].cover().is_none());
        if !unclear {
            set("upgrade.hooking", count(hooking.len()));
        }
        set("upgrade.has_spare", Interval::flag(spare));
        set("upgrade.doubled", count(doubled.len()));
        if let Some(worn) = worn {
            let told = |value: Option<i64>| value.map_or(Interval::NOT_KNOWN, Interval::point);
            set("upgrade.most_games", told(worn.games()));
            set("upgrade.worn_cover", told(worn.cover()));
        }
        self.spread(motions, &main);
        let balls = bowler.owned().iter().enumerate();
        let balls = balls.map(|(at, ball)| OwnedNow {
            name: called(bowler.owned(), at),
            about: about(ball),
            role: role(ball, intends),
            does: motions.of_owned(at).filter(|_| main.contains(&at)),
        });
        Owned {
            balls: balls.collect(),
            doubled,
        }
    }

    /// Where the balls for the first throw have finished hooking, and the widest gap between two neighbours.
    fn spread(&mut self, motions: &Motions, main: &[usize]) {
        let does = main.iter().filter_map(|&at| motions.of_owned(at));
        let mut does: Vec<Does> = does.collect();
        does.sort_by(|a, b| a.finished.total_cmp(&b.finished));
        let (Some(soonest), Some(latest)) = (does.first().copied(), does.last().copied()) else {
            return;
        };
        let mut set = |name: &str, value: i64| self.situation.set(name, Interval::point(value));
        set("upgrade.soonest", soonest.tenths_of_feet().min(FARTHEST));
        set("upgrade.latest", latest.tenths_of_feet().min(FARTHEST));
        set("upgrade.turn_done", soonest.percent_done().clamp(0, 100));
        let pairs = does.windows(2).filter_map(|pair| match pair {
            [one, other] => Some((one.finished.min(PINS), other.finished.min(PINS))),
            _ => None,
        });
        let widest = pairs.max_by(|a, b| (a.1 - a.0).total_cmp(&(b.1 - b.0)));
        if let Some((from, to)) = widest {
            set("upgrade.widest", whole((to - from) * 10.0));
            set("upgrade.between", whole((from + to) * 5.0));
        }
    }

    /// Pairs that do the same: by motion where that is known, else by cover and surface.
    fn doubled(&self, motions: &Motions, main: &[usize]) -> Vec<Doubled> {
        let within = |id: &str| {
            self.shop.observe(id, &Alone(&self.situation));
            let rules = self.shop.rules();
            rules.measure(id, &Alone(&self.situation)).value()
        };
        let boards = within("upgrade.alike_boards");
        let feet = within("upgrade.alike_feet");
        let owned = self.bowler.owned();
        let mut found = Vec::new();
        for (place, &one) in main.iter().enumerate() {
            for &other in &main[place + 1..] {
                let apart = match (motions.of_owned(one), motions.of_owned(other)) {
                    (Some(a), Some(b)) => {
                        let apart = (
                            (a.boards - b.boards).abs(),
                            (a.finished.min(PINS) - b.finished.min(PINS)).abs(),
                        );
                        let near = |apart: f64, most: Option<i64>| {
                            most.is_some_and(|most| whole(apart * 10.0) <= most)
                        };
                        if !near(apart.0, boards) || !near(apart.1, feet) {
                            continue;
                        }
                        Some(apart)
                    }
                    _ if alike(&owned[one], &owned[other]) => None,
                    _ => continue,
                };
                found.push(Doubled {
                    names: [one, other].map(|at| called(owned, at)),
                    apart,
                });
            }
        }
        found
    }
}

/// The place of `own` among the words for the ball thrown now.
const OWN: usize = 2;

/// The same cover with the same surface, both known; balls that aren't made to hook don't count.
fn alike(one: &OwnedBall, other: &OwnedBall) -> bool {
    let surface = |ball: &OwnedBall| ball.surface().map(|text| text.trim().to_lowercase());
    hooks(one)
        && one.cover() == other.cover()
        && surface(one).is_some()
        && surface(one) == surface(other)
}

/// What the bowler calls it, with its place in the list where two are called the same; or its cover and place.
pub(super) fn called(owned: &[OwnedBall], at: usize) -> String {
    let ball = owned.get(at);
    let name = ball.and_then(OwnedBall::name);
    let same = |ball: &&OwnedBall| ball.name() == name;
    let place = at + 1;
    match (name, ball.and_then(cover)) {
        (Some(name), _) if owned.iter().filter(same).count() > 1 => {
            format!("{name} (ball {place})")
        }
        (Some(name), _) => name.to_owned(),
        (None, Some(cover)) => format!("ball {place} ({cover})"),
        (None, None) => format!("ball {place}"),
    }
}

fn cover(ball: &OwnedBall) -> Option<&'static str> {
    let cover = usize::try_from(ball.cover()?).ok()?;
    COVERS.get(cover).copied()
}

fn about(ball: &OwnedBall) -> String {
    let games = Notation::Counted("game", "games");
    let mut parts = Vec::new();
    parts.extend(cover(ball).map(str::to_owned));
    parts.extend(ball.weight().map(|weight| Notation::Weight.write(weight)));
    parts.extend(ball.surface().map(str::to_owned));
    parts.extend(ball.games().map(|count| games.write(count)));
    let since = ball.games_since_service();
    parts.extend(since.map(|count| format!("{} since its last service", games.write(count))));
    parts.join("; ")
}

fn role(ball: &OwnedBall, intends: bool) -> &'static str {
    if is_spare(ball, intends) {
        return "for single pins";
    }
    match cover(ball) {
        None => "its cover isn't known",
        Some("polyester") => "goes straight",
        Some("urethane") => "hooks calmly",
        Some("solid") => "grips early",
        Some("hybrid") => "between early and late",
        Some(_) => "goes long, then turns",
    }
}
