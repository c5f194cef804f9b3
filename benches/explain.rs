//! What answers back, as ratios to one plain ranking of the shelf in the same run: why not each ball, how sure, what if, the next question.
//!
//! The plain ranking gives every ball's total and the first ball for a demo bowler whose weight and grip are settled: compiled once, the
//! situation made anew each time, nothing explained. Everything else is measured as a caller has it, a compiled shop to a finished answer.

// A bench may stop as tests may.
#![allow(clippy::unwrap_used)]

use std::hint::black_box;
use std::path::Path;
use std::time::{Duration, Instant};

use criterion::Criterion;
use spanwright::advice::Shop;
use spanwright::advice::interview::Next;
use spanwright::bowler::Bowler;
use spanwright::document::Document;
use spanwright::rules::{Chooser, Interval};
use spanwright::vocabulary::{BallCandidate, Situation, StageFact, StageWorld, ball_facts};

/// What is timed of one bowler.
type Timed<'a> = (&'static str, Box<dyn FnMut(usize) -> usize + 'a>);

fn main() {
    let shop = Shop::demo().unwrap();
    let bowlers = bowlers();
    let plain = Plain::new(&shop, &bowlers);
    let interview = shop.interview().unwrap();
    // As profiles begin: nothing known, or only that one answer.
    let open: Vec<Bowler> = bowlers
        .iter()
        .map(|bowler| Bowler::unheard().with("bowler.intent", bowler.answer("bowler.intent")))
        .collect();
    let mut all: Vec<Timed> = vec![
        ("plain ranking", Box::new(|at| plain.rank(&bowlers[at]))),
        (
            "pick, not compiled",
            Box::new(|at| usize::from(shop.pick(&bowlers[at]).unwrap().ball().is_some())),
        ),
        (
            "why not, all balls",
            Box::new(|at| shop.standing(&bowlers[at]).unwrap().all().len()),
        ),
        (
            "how sure",
            Box::new(|at| shop.how_sure(&bowlers[at]).unwrap().ranges().len()),
        ),
        (
            "what if",
            Box::new(|at| shop.what_if(&bowlers[at]).unwrap().turns().len()),
        ),
        (
            "next question, at the start",
            Box::new(|at| usize::from(matches!(interview.next(&open[at]), Next::Ask(_)))),
        ),
        (
            "next question, at the end",
            Box::new(|at| usize::from(matches!(interview.next(&bowlers[at]), Next::Ask(_)))),
        ),
        (
            "advise, with how sure",
            Box::new(|at| shop.advise(&bowlers[at]).unwrap().picks().len()),
        ),
    ];
    let mut reference = None;
    for (name, run) in &mut all {
        let times: Vec<Duration> = (0..bowlers.len()).map(|at| time(|| run(at))).collect();
        let mean = times.iter().sum::<Duration>() / u32::try_from(times.len()).unwrap();
        let worst = *times.iter().max().unwrap();
        let one = *reference.get_or_insert(mean);
        let ratio = mean.as_secs_f64() / one.as_secs_f64();
        println!("{name}: mean {mean:?}, worst {worst:?}, ratio {ratio:.1}");
    }

    let mut criterion = Criterion::default().configure_from_args();
    let mut group = criterion.benchmark_group("explain, one demo bowler after another");
    for (name, run) in &mut all {
        let mut turn = (0..bowlers.len()).cycle();
        group.bench_function(*name, |bencher| {
            bencher.iter(|| run(black_box(turn.next().unwrap())));
        });
    }
    group.finish();
    criterion.final_summary();
}

/// Every demo bowler.
fn bowlers() -> Vec<Bowler> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("catalog-demo/bowlers");
    let entries = std::fs::read_dir(folder).unwrap();
    let mut paths: Vec<_> = entries.map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    let read = |path| Bowler::read(&Document::read(path).unwrap()).unwrap();
    paths.iter().map(|path| read(path)).collect()
}

/// The ball stage alone, for made-up candidates like the shelf's: as many, with the models' own numbers.
struct Plain<'s> {
    shop: &'s Shop,
    facts: Vec<StageFact<BallCandidate>>,
    shelf: Vec<BallCandidate>,
    chooser: Chooser<'s>,
}

impl<'s> Plain<'s> {
    fn new(shop: &'s Shop, bowlers: &[Bowler]) -> Self {
        let facts = ball_facts();
        let stock = shop.catalog().stock().iter().enumerate();
        let index = |place: usize| i64::try_from(place).unwrap();
        let shelf: Vec<BallCandidate> = stock
            .map(|(place, unit)| BallCandidate {
                id: format!("{}@{}", unit.model().id(), unit.weight()),
                stock: place,
                cover: index(unit.model().cover().index()),
                core: index(unit.model().core().index()),
                finish: index(unit.model().finish().index()),
                tier: index(unit.model().tier().index()),
                price: unit.model().price(),
                weight: unit.weight(),
                rg: unit.rg(),
                differential: unit.differential(),
                intermediate: unit.intermediate(),
                drilled: [[unit.model().price() + 6_000; 3]; 2],
                cheapest: [[14_000; 3]; 2],
                ..BallCandidate::default()
            })
            .collect();
        let nobody = situation(shop, &bowlers[0]);
        let world = StageWorld::new(&nobody, &facts, &shelf, |c| c.price);
        let chooser = shop.rules().chooser("ball", &world).unwrap();
        Plain {
            shop,
            facts,
            shelf,
            chooser,
        }
    }

    fn rank(&self, bowler: &Bowler) -> usize {
        let situation = situation(self.shop, bowler);
        let world = StageWorld::new(&situation, &self.facts, &self.shelf, |c| c.price);
        let ranking = self.chooser.rank(&world);
        black_box(ranking.best(1).first().copied().unwrap_or(0))
    }
}

fn situation(shop: &Shop, bowler: &Bowler) -> Situation {
    let mut situation = Situation::of(bowler, shop.rules());
    for (fact, value) in [("settled.weight", 1_400), ("settled.grip", 1)] {
        situation.set(fact, Interval::point(value));
    }
    situation
}

/// Of many rounds the one that a tenth of all are faster than, so that what else the machine does hardly counts.
fn time(mut run: impl FnMut() -> usize) -> Duration {
    black_box(run());
    let started = Instant::now();
    let mut rounds = Vec::new();
    while rounds.len() < 20
        || (rounds.len() < 400 && started.elapsed() < Duration::from_millis(300))
    {
        let start = Instant::now();
        black_box(run());
        rounds.push(start.elapsed());
    }
    rounds.sort_unstable();
    rounds[rounds.len() / 10]
}
