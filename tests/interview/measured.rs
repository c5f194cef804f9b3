//! Asks a great many made-up customers and prints how many questions it takes, and how long one takes.
//!
//! `cargo run --release --example interview -- 5000`. Ends with an error if a single customer would get another pick.

#![allow(clippy::unwrap_used)]

mod customers;

use std::process::ExitCode;
use std::time::{Duration, Instant};

use customers::{Chance, by_what_matters, complete, interviewed, pick};
use spanwright::advice::Shop;
use spanwright::advice::interview::{Interview, Question};
use spanwright::bowler::Bowler;

/// Above this a question is timed again.
const LONG: Duration = Duration::from_millis(5);

/// Counts and the largest of them.
#[derive(Default)]
struct Tally {
    sum: usize,
    worst: usize,
}

impl Tally {
    fn add(&mut self, count: usize) {
        self.sum += count;
        self.worst = self.worst.max(count);
    }

    fn join(&mut self, other: &Tally) {
        self.sum += other.sum;
        self.worst = self.worst.max(other.worst);
    }

    fn print(&self, words: &str, customers: u64) {
        let mean = self.sum as f64 / customers as f64;
        println!("{words:<44} mean {mean:5.2}, worst {:2}", self.worst);
    }
}

/// What some customers needed.
#[derive(Default)]
struct Measured {
    all: Tally,
    asked: Tally,
    fixed: Tally,
    times: Vec<Duration>,
    /// Who gets another pick, and the profile.
    wrong: Vec<(u64, String)>,
}

impl Measured {
    fn measure(&mut self, shop: &Shop, interview: &Interview<'_>, seed: u64) {
        let nobody = Bowler::unheard();
        let mut chance = Chance::new(seed);
        let (whole, questions) = complete(interview, &nobody, &mut chance);
        self.all.add(questions);
        let times = &mut self.times;
        let (partial, questions) = interviewed(interview, &nobody, &whole, |interview, bowler| {
            let timed = || {
                let begin = Instant::now();
                let next = by_what_matters(interview, bowler);
                (begin.elapsed(), next)
            };
            let (mut time, next) = timed();
            // Others work on the same machine: what took long is timed again, and the shortest time counts.
            for _ in 0..3 {
                if time > LONG {
                    time = time.min(timed().0);
                }
            }
            times.push(time);
            next
        });
        self.asked.add(questions);
        let (_, questions) = interviewed(interview, &nobody, &whole, in_fixed_order);
        self.fixed.add(questions);
        if pick(shop, &partial) != pick(shop, &whole) {
            self.wrong.push((seed, whole.to_yaml()));
        }
    }
}

/// The cheapest unanswered question, as long as the interview isn't over: a fixed order with the same stopping test.
fn in_fixed_order(interview: &Interview<'_>, bowler: &Bowler) -> Option<Question> {
    by_what_matters(interview, bowler)?;
    interview
        .unanswered(bowler)
        .first()
        .map(|question| (*question).clone())
}

fn main() -> ExitCode {
    let count = std::env::args().nth(1);
    let count: u64 = count.map_or(5_000, |count| count.parse().unwrap());
    let shop = Shop::demo().unwrap();
    let interview = shop.interview().unwrap();
    let threads = std::thread::available_parallelism().map_or(1, std::num::NonZero::get) as u64;
    // A part of the customers each; sums and the largest come out the same however they are dealt.
    let parts: Vec<Measured> = std::thread::scope(|scope| {
        let (shop, interview) = (&shop, &interview);
        let part = |first| {
            scope.spawn(move || {
                let mut part = Measured::default();
                for seed in (first..=count).step_by(threads as usize) {
                    part.measure(shop, interview, seed);
                }
                part
            })
        };
        let running: Vec<_> = (1..=threads).map(part).collect();
        running.into_iter().map(|one| one.join().unwrap()).collect()
    });
    let mut whole = Measured::default();
    for part in parts {
        whole.all.join(&part.all);
        whole.asked.join(&part.asked);
        whole.fixed.join(&part.fixed);
        whole.times.extend(part.times);
        whole.wrong.extend(part.wrong);
    }
    let Measured {
        all,
        asked,
        fixed,
        mut times,
        mut wrong,
    } = whole;
    wrong.sort();
    for (seed, profile) in &wrong {
        println!("customer {seed} gets another pick:\n{profile}");
    }
    let wrong = wrong.len();
    println!("{count} customers, {wrong} with another pick than the complete profile's");
    all.print("questions that make sense", count);
    asked.print("questions asked", count);
    fixed.print("in a fixed order with the same stopping test", count);
    times.sort_unstable();
    let milliseconds = |time: Duration| time.as_secs_f64() * 1e3;
    let sum: Duration = times.iter().sum();
    let mean = milliseconds(sum) / times.len().max(1) as f64;
    let at = |part: usize| times.get(times.len() * part / 1_000).copied();
    let percentile = |part| at(part).map_or(0.0, milliseconds);
    println!(
        "a question took {mean:.2} ms in the mean, {:.2} ms in 99 of 100, {:.2} ms at worst",
        percentile(990),
        times.last().copied().map_or(0.0, milliseconds)
    );
    if wrong == 0 {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    }
}
