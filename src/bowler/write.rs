//! A profile written down as the reader takes it: every answer, what isn't known, spans, card, balls.

use super::card::{self, FitCard};
use super::hand::{self, GAUGES, HAND_KEYS, THUMB_KEYS, WARM_KEYS};
use super::sheet::Key;
use super::span::{ALONGS, Along, CARD_SPANS, FINGERS, Finger, Grip, HAND_SPANS, KINDS, SpanKind};
use super::words::{COVERS, GRIPS, OLD_HOLES, REV_LEVELS};
use super::written::{Page, Pair, UNKNOWN, bare, flow, number, shown, word};
use super::{Bowler, OwnedBall, Span, Statics, UsedBall, give_or_take, pap, read};
use crate::notation::Notation;

impl Bowler {
    /// The profile as YAML, ending in a line break; reading it gives the same answers again.
    #[must_use]
    pub fn to_yaml(&self) -> String {
        let mut page = Page::default();
        let text = |key, text: &Option<String>| Some((key, bare(text.as_deref()?)));
        page.lines(text("name", &self.name));
        page.lines(self.pairs(read::PLAIN_KEYS));
        page.map("ball_now", self.pairs(read::BALL_NOW_KEYS));
        page.map("hold_test", self.pairs(read::HOLD_TEST_KEYS));
        page.map("pap", self.pairs(pap::KEYS));
        page.lines(self.rev_rate());
        page.lines(self.speed());
        let settled = text("ball", &self.settled_ball).into_iter();
        let settled = settled.chain(self.pairs(read::SETTLED_KEYS)).collect();
        page.map("settled", settled);
        self.owned_balls(&mut page);
        self.measured(&mut page);
        self.fit_card(&mut page);
        if let Some(used) = &self.used {
            page.map("used_ball", used_ball(used));
        }
        page.map("fit_check", self.pairs(read::FIT_CHECK_KEYS));
        page.map("give_or_take", give_or_take::written(self));
        if page.text.is_empty() {
            return "{}\n".to_owned();
        }
        page.text
    }

    /// What stands behind a key that gives one answer; none if nobody asked.
    fn shown(&self, name: &'static str) -> Option<String> {
        match self.answer(name) {
            Some(value) => Some(shown(name, value)),
            None => self.is_unknown(name).then(|| UNKNOWN.to_owned()),
        }
    }

    fn pairs(&self, keys: &[Key]) -> Vec<Pair> {
        let pair = |&(key, name): &Key| Some((key, self.shown(name)?));
        keys.iter().filter_map(pair).collect()
    }

    fn rev_rate(&self) -> Option<Pair> {
        let level = || {
            let level = self.answer("bowler.rev_level")?;
            Some(word(REV_LEVELS, level))
        };
        let rate = self.answer("bowler.rev_rate");
        let rate = rate.map(|rate| shown("bowler.rev_rate", rate));
        let unknown = self.is_unknown("bowler.rev_rate") || self.is_unknown("bowler.rev_level");
        let unknown = unknown.then(|| UNKNOWN.to_owned());
        Some(("rev_rate", rate.or_else(level).or(unknown)?))
    }

    /// A speed is kept as it was at release, so that is where it was read.
    fn speed(&self) -> Option<Pair> {
        let speed = self.shown("bowler.speed")?;
        let told = self.answer("bowler.speed").is_some();
        let value = if told {
            flow(vec![("value", speed), ("where", "release".to_owned())])
        } else {
            speed
        };
        Some(("speed", value))
    }

    fn owned_balls(&self, page: &mut Page) {
        if self.answer("owned.count").is_none() {
            let unknown = self.is_unknown("owned.count").then(|| UNKNOWN.to_owned());
            page.lines(unknown.map(|unknown| ("owned", unknown)));
            return;
        }
        let mut asked = self.is_unknown("owned.games_since_service");
        let balls = self.owned.iter().map(|ball| {
            // The mark stands with one ball.
            let mark = asked && ball.games_since_service.is_none();
            asked &= !mark;
            owned_ball(ball, mark)
        });
        let balls: Vec<_> = balls.collect();
        if balls.is_empty() {
            page.lines([("owned", "none".to_owned())]);
        }
        page.list(0, "owned", balls);
    }

    fn measured(&self, page: &mut Page) {
        let all = HAND_KEYS.iter().chain(THUMB_KEYS).map(|&(_, name)| name);
        let all: Vec<&str> = all.chain(GAUGES).chain(HAND_SPANS).collect();
        let of_hand = |name: &&&str| name.starts_with("hand.");
        let unknown = self.notes.unknown.iter().filter(of_hand).count();
        let values = self.notes.values.keys().filter(of_hand);
        let told = values.filter(|name| **name != "hand.measured").count();
        let nothing = told == 0 && self.spans.is_empty();
        if nothing && unknown == 0 {
            return;
        }
        if nothing && unknown == all.len() && all.iter().all(|name| self.is_unknown(name)) {
            page.lines([("measured", UNKNOWN.to_owned())]);
            return;
        }
        page.open("measured");
        page.inside(self.thumb());
        let fingers = [
            ("middle", GAUGES[1], "hand.middle_gauge_warm"),
            ("ring", GAUGES[2], "hand.ring_gauge_warm"),
        ];
        for (key, cold, warm) in fingers {
            page.inside_map(key, self.pairs(&[("cold", cold), ("warm", warm)]));
        }
        let mut spans: Vec<Vec<Pair>> = self.spans.iter().map(|one| span(one, true)).collect();
        for name in HAND_SPANS.into_iter().filter(|name| self.is_unknown(name)) {
            spans.push(unknown_span(name, true));
        }
        page.list(1, "spans", spans);
        page.inside(self.pairs(HAND_KEYS));
    }

    fn thumb(&self) -> Option<Pair> {
        let own = self.pairs(THUMB_KEYS);
        let cold = self.pairs(&[("cold", GAUGES[0])]);
        let mut warm = self.pairs(WARM_KEYS);
        let oval = self.pairs(hand::OVAL_KEYS);
        let all: Vec<Pair> = cold.into_iter().chain(own).collect();
        let alone = warm.is_empty() && oval.is_empty();
        let unknown = |pairs: &[Pair]| pairs.iter().all(|(_, value)| value == UNKNOWN);
        if alone && all.len() == THUMB_KEYS.len() + 1 && unknown(&all) {
            return Some(("thumb", UNKNOWN.to_owned()));
        }
        let mut pairs = all;
        match &mut warm[..] {
            [] => {}
            [("size", size)] => pairs.push(("warm", std::mem::take(size))),
            _ => pairs.push(("warm", flow(warm))),
        }
        if !oval.is_empty() {
            pairs.push(("oval", flow(oval)));
        }
        (!pairs.is_empty()).then(|| ("thumb", flow(pairs)))
    }

    fn fit_card(&self, page: &mut Page) {
        let Some(card) = &self.card else {
            let unknown = self.is_unknown("card.works").then(|| UNKNOWN.to_owned());
            page.lines(unknown.map(|unknown| ("fit_card", unknown)));
            return;
        };
        let text = |key, text: &Option<String>| Some((key, bare(text.as_deref()?)));
        let complaint = || match (&card.complaint, self.answer("card.complaint")) {
            (Some(complaint), _) => Some(bare(complaint)),
            (None, Some(0)) => Some("none".to_owned()),
            (None, Some(_)) => Some("yes".to_owned()),
            (None, None) => self.shown("card.complaint"),
        };
        let date = card.date.clone().map(|date| ("date", date));
        let plain = [
            text("ball", &card.ball),
            date,
            text("serial", &card.serial),
            text("layout", &card.layout),
            complaint().map(|words| ("complaint", words)),
            self.shown("card.grip").map(|grip| ("grip", grip)),
        ];
        let plain: Vec<Pair> = plain.into_iter().flatten().collect();
        let groups = [
            ("pitches", self.pitches()),
            ("bores", self.pairs(card::BORE_KEYS)),
            ("depths", self.pairs(card::DEPTH_KEYS)),
            ("oval", self.pairs(card::OVAL_KEYS)),
            ("statics", statics(&card.statics)),
            ("before", before(card)),
        ];
        let rest = self.pairs(card::CARD_KEYS);
        let mut spans: Vec<Vec<Pair>> = card.spans.iter().map(|one| span(one, false)).collect();
        for name in CARD_SPANS.into_iter().filter(|name| self.is_unknown(name)) {
            spans.push(unknown_span(name, false));
        }
        let empty = plain.is_empty() && rest.is_empty() && spans.is_empty();
        if empty && card.entries.is_empty() && groups.iter().all(|(_, pairs)| pairs.is_empty()) {
            page.lines([("fit_card", "{}".to_owned())]);
            return;
        }
        page.open("fit_card");
        page.inside(plain);
        page.inside(rest);
        page.list(1, "spans", spans);
        for (key, pairs) in groups {
            page.inside_map(key, pairs);
        }
        let entries = card.entries.iter().map(|entry| {
            let mut pairs = vec![
                ("date", entry.date().to_owned()),
                ("kind", entry.kind().to_owned()),
            ];
            pairs.extend(entry.text().map(|text| ("text", bare(text))));
            let tapes = entry.tapes();
            pairs.extend(tapes.map(|tapes| ("tapes", Notation::Count.write(tapes))));
            pairs
        });
        page.list(1, "entries", entries.collect());
    }

    fn pitches(&self) -> Vec<Pair> {
        let hole = |(hole, _, keys): &(&'static str, &str, [Key; 2])| {
            let pairs = self.pairs(keys);
            (!pairs.is_empty()).then(|| (*hole, flow(pairs)))
        };
        card::PITCHES.iter().filter_map(hole).collect()
    }
}

fn span(span: &Span, of_hand: bool) -> Vec<Pair> {
    let grip = span.grip.filter(|_| of_hand);
    let grip = grip.map(|grip| ("grip", word(GRIPS, i64::from(grip == Grip::Fingertip))));
    let kind = match span.kind {
        SpanKind::Full => 0,
        SpanKind::Cut => 1,
        SpanKind::Centre => 2,
    };
    let rest = [
        (
            "finger",
            word(FINGERS, i64::from(span.finger == Finger::Ring)),
        ),
        ("value", number(Notation::Length, span.value)),
        ("kind", word(KINDS, kind)),
        ("along", word(ALONGS, i64::from(span.along == Along::Chord))),
    ];
    grip.into_iter().chain(rest).collect()
}

/// A span that was asked for and isn't known.
fn unknown_span(name: &str, of_hand: bool) -> Vec<Pair> {
    let place = HAND_SPANS.iter().position(|one| *one == name).unwrap_or(0);
    let ring = name.ends_with("ring_span");
    let grip = of_hand.then(|| ("grip", GRIPS[usize::from(place >= 2)].to_owned()));
    let rest = [
        ("finger", FINGERS[usize::from(ring)].to_owned()),
        ("value", UNKNOWN.to_owned()),
        ("kind", KINDS[0].to_owned()),
        ("along", ALONGS[0].to_owned()),
    ];
    grip.into_iter().chain(rest).collect()
}

fn owned_ball(ball: &OwnedBall, games_unknown: bool) -> Vec<Pair> {
    let text = |key, text: &Option<String>| Some((key, bare(text.as_deref()?)));
    let games = |games| shown("owned.games_since_service", games);
    let since = ball.games_since_service.map(games);
    let since = since.or_else(|| games_unknown.then(|| UNKNOWN.to_owned()));
    let weight = ball.weight.map(|weight| number(Notation::Weight, weight));
    let pin = ball.pin_from_pap.map(|pin| number(Notation::Length, pin));
    let pairs = [
        text("name", &ball.name),
        text("model", &ball.model),
        ball.cover.map(|cover| ("cover", word(COVERS, cover))),
        weight.map(|weight| ("weight", weight)),
        text("layout", &ball.layout),
        pin.map(|pin| ("pin_from_pap", pin)),
        text("surface", &ball.surface),
        ball.games.map(|all| ("games", games(all))),
        since.map(|since| ("games_since_service", since)),
        text("fit", &ball.fit),
        ball.spare.then(|| ("spare", "yes".to_owned())),
    ];
    pairs.into_iter().flatten().collect()
}

fn statics(statics: &Statics) -> Vec<Pair> {
    let side = |weight: Option<i64>, sides: [&'static str; 2]| {
        let weight = weight?;
        let written = number(Notation::Ounces, weight.abs());
        Some((sides[usize::from(weight < 0)], written))
    };
    let sides = [
        side(statics.top(), ["top", "bottom"]),
        side(statics.right(), ["right", "left"]),
        side(statics.finger(), ["finger", "thumb"]),
    ];
    sides.into_iter().flatten().collect()
}

fn before(card: &FitCard) -> Vec<Pair> {
    let weight = card.before.weight();
    let weight = weight.map(|weight| ("weight", number(Notation::Weight, weight)));
    let statics = statics(&card.before.statics());
    let statics = (!statics.is_empty()).then(|| ("statics", flow(statics)));
    weight.into_iter().chain(statics).collect()
}

fn used_ball(used: &UsedBall) -> Vec<Pair> {
    let grip = used.new_grip().map(|grip| {
        let pairs = vec![
            ("over", number(Notation::LateralPitch, grip.over())),
            ("up", number(Notation::UpDown, grip.up())),
            ("turned", number(Notation::Angle, grip.turned())),
        ];
        ("new_grip", flow(pairs))
    });
    let ball = used.ball().map(|ball| ("ball", bare(ball)));
    let holes = OLD_HOLES[usize::from(used.is_plugged())].to_owned();
    ball.into_iter()
        .chain([("holes", holes)])
        .chain(grip)
        .collect()
}
