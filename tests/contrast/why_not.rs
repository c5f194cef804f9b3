//! What became of every ball, found again from the ledgers of a plain advice.

use std::collections::BTreeMap;

use rstest::rstest;
use serde_json::Value;
use spanwright::advice::{BallFate, Shop};
use spanwright::report;
use spanwright::rules::Audience;

use crate::ledgers::{Advised, Ledger, advised, nothing_ruled_out};
use crate::{BOWLERS, bowler};

/// By rule, the most that any ball left gets: 0 where one is left that it doesn't speak of and no other gets more.
fn best(left: &[(String, Ledger)]) -> BTreeMap<&str, i64> {
    let mut rules: Vec<&str> = left
        .iter()
        .flat_map(|(_, ledger)| ledger.points.keys().map(String::as_str))
        .collect();
    rules.sort_unstable();
    rules.dedup();
    let most = |rule: &str| {
        let points = left
            .iter()
            .map(|(_, ledger)| ledger.points.get(rule).copied().unwrap_or(0));
        points.max().unwrap()
    };
    rules.into_iter().map(|rule| (rule, most(rule))).collect()
}

/// Rule, own points and best points, most costly first.
fn costs<'a>(best: &BTreeMap<&'a str, i64>, own: &Ledger) -> Vec<(&'a str, i64, i64)> {
    let mut all: Vec<(&str, i64, i64)> = best
        .iter()
        .map(|(&rule, &best)| (rule, own.points.get(rule).copied().unwrap_or(0), best))
        .filter(|(_, own, best)| best > own)
        .collect();
    all.sort_by(|(a, x, best_x), (b, y, best_y)| (best_y - y).cmp(&(best_x - x)).then(a.cmp(b)));
    all.truncate(3);
    all
}

fn shown(fate: &BallFate) -> Vec<(&str, i64, i64)> {
    let costs = fate.costs().iter();
    costs
        .map(|cost| (cost.line().rule(), cost.own(), cost.best()))
        .collect()
}

/// The place of a ball among those left, as if nothing ruled it out; `open` ranks all balls, ruled out or not.
fn place_among(left: &Advised, open: &Advised, ball: &str) -> usize {
    let is_left = |id: &str| left.left.iter().any(|(other, _)| other == id);
    let order = open.left.iter().map(|(id, _)| id.as_str());
    1 + order
        .filter(|id| *id == ball || is_left(id))
        .position(|id| id == ball)
        .unwrap()
}

#[rstest]
fn every_ball_is_where_the_ledgers_put_it(#[values(0, 1, 2, 3, 4, 5, 6, 7, 8, 9)] at: usize) {
    let shop = Shop::demo().unwrap();
    let bowler = bowler(BOWLERS[at]);
    let standing = shop.standing(&bowler).unwrap();
    let plain = advised(&shop, &bowler);
    let open = advised(&nothing_ruled_out(&shop), &bowler);
    let ledgers: BTreeMap<&str, &Ledger> = open
        .left
        .iter()
        .map(|(id, ledger)| (id.as_str(), ledger))
        .collect();
    let best = best(&plain.left);
    let attainable: i64 = best.values().sum();
    assert_eq!(standing.attainable(), attainable);
    let all = standing.all();
    assert_eq!(all.len(), plain.left.len() + plain.out.len());
    for fate in &all {
        let ball = fate.ball();
        let own = ledgers[ball];
        assert_eq!(fate.total(), own.total, "{ball}");
        assert_eq!(fate.place(), place_among(&plain, &open, ball), "{ball}");
        let rules: Vec<&str> = fate
            .barriers()
            .iter()
            .map(|barrier| barrier.line().rule())
            .collect();
        match plain.out.get(ball) {
            Some(out) => {
                assert_eq!(&rules, out, "{ball}");
                assert!(fate.is_ruled_out() && fate.costs().is_empty() && !fate.is_pick());
            }
            None => {
                assert!(rules.is_empty(), "{ball}: {rules:?}");
                let place = plain.left.iter().position(|(id, _)| id == ball).unwrap() + 1;
                assert_eq!(fate.place(), place, "{ball}");
                assert_eq!(fate.is_pick(), place == 1, "{ball}");
                assert_eq!(fate.lost(), attainable - own.total, "{ball}");
                assert_eq!(
                    fate.behind_pick(),
                    plain.left[0].1.total - own.total,
                    "{ball}"
                );
                assert_eq!(shown(fate), costs(&best, own), "{ball}");
                for cost in fate.costs() {
                    let picks = plain.left[0].1.points.get(cost.line().rule());
                    assert_eq!(cost.pick(), picks.copied().unwrap_or(0), "{ball}");
                }
                let told: i64 = fate.costs().iter().map(|cost| cost.points()).sum();
                assert!(told <= fate.lost());
                // A low score is never a reason: whoever lost points is told on which rule.
                assert_eq!(fate.lost() > 0, !fate.costs().is_empty(), "{ball}");
            }
        }
        // Asked by name, a ball gets the same answer.
        let answer = standing.why_not(ball).unwrap();
        assert_eq!(format!("{:?}", answer.fates()), format!("{:?}", [fate]));
    }
}

/// A rule that keeps a ball out says what it found: with the value moved to what was wanted, the ball is in.
#[test]
fn what_was_found_and_wanted_is_told() {
    let shop = Shop::demo().unwrap();
    let standing = shop.standing(&bowler("first-ball")).unwrap();
    // Ada's budget is $175. Hawkbit is $129.95 and drilling $45, with 8.25 % tax: $189.38, so $14.38 over.
    let answer = standing.why_not("hawkbit@12").unwrap();
    let [fate] = answer.fates() else { panic!() };
    let [barrier] = fate.barriers() else { panic!() };
    let [found] = barrier.found() else { panic!() };
    assert_eq!(found.fact(), "match.over_budget");
    assert_eq!((found.value(), found.wanted()), ("$14.38", "at most $0"));
    // Her weight is 12 lb; three pounds more are too many, two would do.
    let answer = standing.why_not("marsh-marigold@15").unwrap();
    let [fate] = answer.fates() else { panic!() };
    let [weight, _] = fate.barriers() else {
        panic!()
    };
    let [found] = weight.found() else { panic!() };
    assert_eq!((found.value(), found.wanted()), ("3 lb", "at most 2 lb"));
}

#[rstest]
fn a_model_is_told_in_every_weight_best_first(#[values(0, 1, 2, 3, 4, 5, 6, 7, 8, 9)] at: usize) {
    let shop = Shop::demo().unwrap();
    let standing = shop.standing(&bowler(BOWLERS[at])).unwrap();
    for model in shop.catalog().models() {
        let answer = standing.why_not(model.id()).unwrap();
        let stock = shop.catalog().stock().iter();
        let weights = stock
            .filter(|stock| stock.model().id() == model.id())
            .count();
        assert_eq!(answer.fates().len(), weights, "{}", model.id());
        // Those left by place; of those ruled out first whatever has least against it, then whatever has most points.
        assert!(answer.fates().is_sorted_by_key(|fate| {
            let against = fate.barriers().len();
            let place = if against == 0 { fate.place() } else { 0 };
            let points = if against == 0 { 0 } else { fate.total() };
            (against, std::cmp::Reverse(points), place)
        }));
        assert!(answer.elsewhere().is_none());
        for fate in answer.fates() {
            // One weight alone: another that stands better is named, the best of them.
            let alone = standing.why_not(fate.ball()).unwrap();
            let better = answer
                .fates()
                .first()
                .filter(|best| !best.is_ruled_out() && best.ball() != fate.ball());
            assert_eq!(
                alone.elsewhere().map(|e| e.ball()),
                better.map(|b| b.ball()),
                "{}",
                fate.ball()
            );
        }
    }
}

/// The document says what the typed answer says.
#[rstest]
fn the_document_says_the_same(#[values(Audience::Newcomer, Audience::Fitter)] audience: Audience) {
    let shop = Shop::demo().unwrap();
    let answer = shop.why_not(&bowler("league-tired-ball"), "daisy").unwrap();
    let document: Value = serde_json::from_str(&report::why_not_json(&answer, audience)).unwrap();
    assert_eq!(document["contract"], 1);
    assert_eq!(document["question"], "why_not");
    assert_eq!(document["digest"], shop.digest());
    assert_eq!(document["ball"], "daisy");
    assert_eq!(document["attainable"], answer.attainable());
    let fates = document["fates"].as_array().unwrap();
    assert_eq!(fates.len(), answer.fates().len());
    for (document, fate) in fates.iter().zip(answer.fates()) {
        assert_eq!(document["ball"], fate.ball());
        assert_eq!(document["total"], fate.total());
        assert_eq!(document["place"], fate.place());
        match fate.is_ruled_out() {
            true => {
                assert_eq!(document["fate"], "ruled_out");
                assert!(document["lost"].is_null());
                let first = &document["ruled_out"][0]["line"];
                assert_eq!(first["rule"], fate.barriers()[0].line().rule());
                assert_eq!(first["reason"], fate.barriers()[0].line().text(audience));
            }
            false => {
                assert_eq!(document["fate"], "ranked");
                assert_eq!(document["lost"], fate.lost());
                let costs = document["costs"].as_array().unwrap();
                let points: Vec<i64> = costs
                    .iter()
                    .map(|cost| cost["points"].as_i64().unwrap())
                    .collect();
                assert_eq!(
                    points,
                    fate.costs()
                        .iter()
                        .map(|cost| cost.points())
                        .collect::<Vec<_>>()
                );
            }
        }
    }

    let contrast = shop
        .compare(&bowler("league-tired-ball"), "daisy", "silverweed")
        .unwrap();
    let document: Value =
        serde_json::from_str(&report::contrast_json(&contrast, audience)).unwrap();
    assert_eq!(document["question"], "compare");
    assert_eq!(document["sentence"], contrast.sentence(audience));
    assert_eq!(document["gap"], contrast.gap());
    let lines = document["lines"].as_array().unwrap();
    let sum: i64 = lines
        .iter()
        .map(|line| line["points"].as_i64().unwrap())
        .sum();
    assert_eq!(document["gap"], sum);
    let total = |side: &str| document[side]["total"].as_i64().unwrap();
    assert_eq!(total("one") - total("other"), sum);
    // A line's two sides differ by the line's points.
    for line in lines {
        let side = |side: &str| line[side]["points"].as_i64().unwrap_or(0);
        assert_eq!(line["points"], side("one") - side("other"));
    }
}
