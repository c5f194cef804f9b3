//! Ranking 300 kites by 60 rules against the same rules written as a chain of `if`s over plain structs.
//!
//! Both work out the derived facts and give every total, the best five and their ledgers. The chain keeps what fired for each
//! kite in a list that it uses again for the next asker, so it allocates next to nothing. The rules stand in one table, from
//! which a macro makes the chain and another the rule file; the results are compared before anything is timed.

// A bench may stop as tests may.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

#[path = "rank/kites.rs"]
mod kites;
#[path = "rank/table.rs"]
mod table;

use std::hint::black_box;
use std::time::{Duration, Instant};

use criterion::Criterion;
use kites::{Asker, Day, Kite, askers, kites, vocabulary};
use spanwright::document::{Document, Format};
use spanwright::rules::{Chooser, RuleSet};
use table::{Chain, rule_file};

/// How many kites are shown.
const BEST: usize = 5;

/// The best kites with their totals and ledgers: rule and points of each line.
type Shown = Vec<(usize, i64, Vec<(String, i64)>)>;

fn main() {
    let vocabulary = vocabulary();
    let file = rule_file(&vocabulary);
    let document = Document::parse("kites.yaml", file.as_bytes(), Format::Yaml)
        .unwrap_or_else(|faults| panic!("{faults}"));
    let rules = RuleSet::read(&vocabulary, &[document]).unwrap_or_else(|faults| panic!("{faults}"));
    let (kites, askers) = (kites(300), askers(64));
    let chooser = rules
        .chooser("kite", &Day::new(&askers[0], &kites))
        .expect("kites are a choice");
    let mut chain = Chain::new(kites.len());
    compare(&rules, &chooser, &mut chain, &kites, &askers);

    for (name, askers) in [
        ("64 askers in turn", &askers[..]),
        ("one asker", &askers[7..8]),
    ] {
        let (engine, chain) = time(&chooser, &mut chain, &kites, askers);
        let ratio = engine.as_secs_f64() / chain.as_secs_f64();
        println!("{name}: engine {engine:?}, chain {chain:?}, ratio {ratio:.2}");
    }

    let mut criterion = Criterion::default().configure_from_args();
    for (name, askers) in [("in turn", &askers[..]), ("constant", &askers[7..8])] {
        let mut group = criterion.benchmark_group(format!("rank 300 by 60, {name}"));
        let mut turn = askers.iter().cycle();
        group.bench_function("engine", |bencher| {
            bencher.iter(|| by_engine(&chooser, &kites, next(&mut turn)));
        });
        let mut turn = askers.iter().cycle();
        group.bench_function("chain", |bencher| {
            bencher.iter(|| chain.answer(&kites, next(&mut turn), BEST).len());
        });
        group.finish();
    }
    criterion.final_summary();
}

fn next<'a>(turn: &mut impl Iterator<Item = &'a Asker>) -> &'a Asker {
    black_box(turn.next().expect("a cycle has no end"))
}

/// All that a shop would show, by the engine.
fn by_engine(chooser: &Chooser<'_>, kites: &[Kite], asker: &Asker) -> usize {
    let day = Day::new(asker, kites);
    let ranking = chooser.rank(&day);
    let best = ranking.best(BEST);
    let ledgers: Vec<_> = best
        .iter()
        .map(|&kite| chooser.ledger(&day, &ranking, kite))
        .collect();
    black_box(&ledgers);
    best.len()
}

/// Time for one asker: of 400 short rounds each, taken in turn, the one that a tenth of all are faster than. So what else the
/// machine does at the time hardly counts.
fn time(
    chooser: &Chooser<'_>,
    chain: &mut Chain,
    kites: &[Kite],
    askers: &[Asker],
) -> (Duration, Duration) {
    let (mut engine, mut other) = (Vec::new(), Vec::new());
    let each = 64;
    for _ in 0..400 {
        let mut turn = askers.iter().cycle();
        let start = Instant::now();
        for _ in 0..each {
            black_box(by_engine(chooser, kites, next(&mut turn)));
        }
        engine.push(start.elapsed() / each);
        let mut turn = askers.iter().cycle();
        let start = Instant::now();
        for _ in 0..each {
            black_box(chain.answer(kites, next(&mut turn), BEST));
        }
        other.push(start.elapsed() / each);
    }
    engine.sort_unstable();
    other.sort_unstable();
    (engine[40], other[40])
}

/// Checks that both say the same of every asker: every total, the best, each line.
fn compare(
    rules: &RuleSet,
    chooser: &Chooser<'_>,
    chain: &mut Chain,
    kites: &[Kite],
    askers: &[Asker],
) {
    for asker in askers {
        let day = Day::new(asker, kites);
        let ranking = chooser.rank(&day);
        let best = chain.answer(kites, asker, BEST).clone();
        for (kite, fired) in chain.fired().enumerate() {
            let total: i64 = fired.iter().map(|&(_, points)| i64::from(points)).sum();
            assert_eq!(ranking.total(kite), total);
            assert_eq!(ranking.is_ruled_out(kite), chain.is_out(kite));
        }
        let by_chain: Shown = best
            .iter()
            .map(|(kite, total, lines)| {
                let line =
                    |&(rule, points): &(u16, i32)| (Chain::id(rule).to_owned(), i64::from(points));
                (*kite, i64::from(*total), lines.iter().map(line).collect())
            })
            .collect();
        let by_engine: Shown = ranking
            .best(BEST)
            .into_iter()
            .map(|kite| {
                let ledger = chooser.ledger(&day, &ranking, kite);
                let lines = ledger.lines().iter();
                let line = |line: &spanwright::rules::Line| {
                    (rules.rule(line.rule()).id().to_owned(), line.points())
                };
                (kite, ledger.total(), lines.map(line).collect())
            })
            .collect();
        assert_eq!(by_engine, by_chain);
    }
}
