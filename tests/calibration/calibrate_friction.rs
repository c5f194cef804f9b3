//! Tells whether a table of friction keeps the conditions, and how far each of its numbers may move alone until one breaks.
//!
//! `cargo run --release --example calibrate_friction -- OWN_RULES.yaml…` does it with a shop's own rules laid over the built-in ones.

#![allow(clippy::unwrap_used)]

mod conditions;

use spanwright::advice::{Shop, ShopFiles};
use spanwright::catalog::{Cover, Finish};
use spanwright::motion::Friction;

/// The farthest that a number is moved, in steps of 0.001.
const FARTHEST: i32 = 200;

/// One number of the table: which balls it is for.
#[derive(Clone, Copy)]
enum Number {
    Start(Cover),
    Finish(Finish),
}

impl Number {
    fn is_of(self, cover: Cover, finish: Finish) -> bool {
        match self {
            Number::Start(own) => own == cover,
            Number::Finish(own) => own == finish && cover != Cover::Polyester,
        }
    }
}

fn main() {
    let rules = std::env::args_os().skip(1).map(Into::into).collect();
    let files = ShopFiles {
        rules,
        ..ShopFiles::default()
    };
    let shop = match Shop::open(&files) {
        Ok(shop) => shop,
        Err(why) => {
            eprintln!("{why}");
            std::process::exit(1);
        }
    };
    let known: Vec<Vec<Friction>> = (Cover::ALL.iter())
        .map(|cover| {
            let all = Finish::ALL.iter();
            all.map(|finish| conditions::table(&shop, *cover, *finish))
                .collect()
        })
        .collect();
    let plain = |cover: Cover, finish: Finish| known[cover.index()][finish.index()];
    for reached in conditions::machine(&shop, &plain) {
        println!(
            "{}: {:.4} to {:.4}{} (printed {} to {})",
            reached.what,
            reached.lowest,
            reached.highest,
            reached.unit,
            reached.printed.0,
            reached.printed.1
        );
    }
    let broken = conditions::broken(&shop, &plain);
    for line in &broken {
        println!("broken: {line}");
    }
    if !broken.is_empty() {
        std::process::exit(1);
    }
    println!("every condition holds; the room of each number, in steps of 0.001:");
    let starts = Cover::ALL.iter().map(|cover| Number::Start(*cover));
    let finishes = [Finish::Sanded, Finish::Polished].map(Number::Finish);
    for number in starts.chain(finishes) {
        for dry in [false, true] {
            let (name, value) = match number {
                Number::Start(cover) => (cover.name(), Some(plain(cover, Finish::Matte))),
                Number::Finish(finish) => (finish.name(), None),
            };
            let room = [-1, 1].map(|way| room(&shop, &plain, number, dry, way));
            let zone = if dry { "dry" } else { "oil" };
            let value = value.map_or(String::new(), |it| {
                format!(", {:.3} matte", if dry { it.dry() } else { it.oil() })
            });
            let [(less, below), (more, above)] = room;
            println!(
                "{zone} of {name}{value}: {less} steps less (then {below}), {more} steps more (then {above})"
            );
        }
    }
}

/// How many steps of 0.001 the number may move one way, and what breaks at the next.
fn room(
    shop: &Shop,
    plain: &dyn Fn(Cover, Finish) -> Friction,
    number: Number,
    dry: bool,
    way: i32,
) -> (i32, String) {
    for steps in 1..=FARTHEST {
        let moved = f64::from(way * steps) / 1000.0;
        let shifted = |cover: Cover, finish: Finish| {
            let own = plain(cover, finish);
            let (oil, dry) = match (number.is_of(cover, finish), dry) {
                (false, _) => (own.oil(), own.dry()),
                (true, false) => (own.oil() + moved, own.dry()),
                (true, true) => (own.oil(), own.dry() + moved),
            };
            Friction::new(oil, dry)
        };
        let all = Cover::ALL
            .iter()
            .flat_map(|c| Finish::ALL.iter().map(move |f| (*c, *f)));
        if all
            .into_iter()
            .any(|(cover, finish)| shifted(cover, finish).is_err())
        {
            return (steps - 1, "no friction can be so".to_owned());
        }
        let broken = conditions::broken(shop, &|cover, finish| shifted(cover, finish).unwrap());
        if let Some(first) = broken.into_iter().next() {
            return (steps - 1, first);
        }
    }
    (FARTHEST, "nothing".to_owned())
}
