//! One plain ranking of the shelf, what benches of answers are ratios to: every ball's total and the first ball for a demo bowler whose
//! weight and grip are settled, compiled once, the situation made anew each time, nothing explained.

use std::hint::black_box;
use std::path::Path;
use std::time::{Duration, Instant};

use spanwright::advice::Shop;
use spanwright::bowler::Bowler;
use spanwright::document::Document;
use spanwright::rules::{Chooser, Interval};
use spanwright::vocabulary::{BallCandidate, Situation, StageFact, StageWorld, ball_facts};

/// Every demo bowler.
pub fn bowlers() -> Vec<Bowler> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("catalog-demo/bowlers");
    let entries = std::fs::read_dir(folder).unwrap();
    let mut paths: Vec<_> = entries.map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    let read = |path| Bowler::read(&Document::read(path).unwrap()).unwrap();
    paths.iter().map(|path| read(path)).collect()
}

/// The ball stage alone, for made-up candidates like the shelf's: as many, with the models' own numbers.
pub struct Plain<'s> {
    shop: &'s Shop,
    facts: Vec<StageFact<BallCandidate>>,
    shelf: Vec<BallCandidate>,
    chooser: Chooser<'s>,
}

impl<'s> Plain<'s> {
    pub fn new(shop: &'s Shop, bowlers: &[Bowler]) -> Self {
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

    pub fn rank(&self, bowler: &Bowler) -> usize {
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
pub fn time(mut run: impl FnMut() -> usize) -> Duration {
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
