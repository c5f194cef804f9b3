//! What answers back, as ratios to one plain ranking of the shelf in the same run: why not each ball, how sure, what if, the next question.
//!
//! `explain/plain.rs` says what that is. Everything else is measured as a caller has it, a compiled shop to a finished answer.

// A bench may stop as tests may.
#![allow(clippy::unwrap_used)]

#[path = "explain/plain.rs"]
mod plain;

use std::hint::black_box;
use std::time::Duration;

use criterion::Criterion;
use plain::{Plain, bowlers, time};
use spanwright::advice::Shop;
use spanwright::advice::interview::Next;
use spanwright::bowler::Bowler;

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
