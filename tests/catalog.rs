//! What the catalog promises: the built-in shop is a fair one, quotes add up, order doesn't matter, every fault is told.

#![allow(clippy::unwrap_used, clippy::panic)] // a helper of a test fails the test

#[path = "catalog/faults.rs"]
mod faults;
#[path = "catalog/lanes.rs"]
mod lanes;

use std::collections::BTreeSet;
use std::path::Path;

use proptest::prelude::*;
use spanwright::catalog::{Catalog, Core, Cover, Grip, Order, Tier};
use spanwright::document::{Document, Faults, Format};
use spanwright::standards::Standards;

const MODELS: &str = include_str!("../catalog-demo/models.csv");
const CORES: &str = include_str!("../catalog-demo/cores.csv");
const SHELF: &str = include_str!("../catalog-demo/shelf.csv");
const PRICES: &str = include_str!("../catalog-demo/prices.yaml");

fn read(models: &str, cores: &str, shelf: &str, prices: &str) -> Result<Catalog, Faults> {
    let csv = |name: &str, text: &str| Document::parse(name, text.as_bytes(), Format::Csv).unwrap();
    let prices = Document::parse("prices.yaml", prices.as_bytes(), Format::Yaml).unwrap();
    Catalog::read(
        &csv("models.csv", models),
        &csv("cores.csv", cores),
        &csv("shelf.csv", shelf),
        &prices,
    )
}

fn demo() -> Catalog {
    Catalog::demo().unwrap_or_else(|faults| panic!("{faults}"))
}

// ---- The invented shop

/// At least 28 models of 5 makers and 80 rows of shelf, and something at every whole pound from 6 to 16. Own choice.
#[test]
fn the_demo_shop_is_big_enough() {
    let demo = demo();
    let makers: BTreeSet<_> = demo.models().map(|model| model.maker()).collect();
    assert!(demo.models().len() >= 28, "{}", demo.models().len());
    assert!(makers.len() >= 5, "{makers:?}");
    assert!(
        demo.stock()
            .iter()
            .map(|stock| stock.units().len())
            .sum::<usize>()
            >= 80
    );
    for pounds in 6..=16 {
        let here = demo
            .stock()
            .iter()
            .filter(|stock| stock.weight() == pounds * 100)
            .count();
        assert!(here >= 3, "{pounds} lb: {here} models");
    }
    assert!(demo.questions().is_empty(), "{:?}", demo.questions());
}

/// The weights people are most often fitted with offer plastic and balls that grip, in more than one price class.
#[test]
fn the_common_weights_offer_a_choice() {
    let demo = demo();
    for pounds in [10, 12, 14, 15] {
        let here: Vec<_> = demo
            .stock()
            .iter()
            .filter(|stock| stock.weight() == pounds * 100)
            .collect();
        let covers: BTreeSet<_> = here.iter().map(|stock| stock.model().cover()).collect();
        let tiers: BTreeSet<_> = here.iter().map(|stock| stock.model().tier()).collect();
        assert!(covers.len() >= 4, "{pounds} lb: {covers:?}");
        assert!(
            tiers.len() >= if pounds == 10 { 2 } else { 4 },
            "{pounds} lb: {tiers:?}"
        );
    }
}

/// RG at least 2.46: USBC release of 24 Aug 2009. RG at most 2.80: USBC manual 2012, second-hand. Differential at most
/// 0.060: USBC release, Jan 2005. Known for 13 lb and up only. Intermediate at most the total: from the definition.
#[test]
fn the_demo_numbers_keep_the_limits() {
    let limits = Standards::builtin().unwrap().approval_limits().unwrap();
    assert_eq!(
        (
            limits.from_weight,
            limits.rg_lowest,
            limits.rg_highest,
            limits.differential_highest
        ),
        (1300, 2460, 2800, 60)
    );
    for stock in demo().stock() {
        let what = format!("{} {}", stock.model().id(), stock.weight());
        assert!((2460..=2800).contains(&stock.rg()), "{what}");
        assert!((0..=60).contains(&stock.differential()), "{what}");
        assert!(
            (0..=stock.differential()).contains(&stock.intermediate()),
            "{what}"
        );
        // Asymmetric means an intermediate differential that isn't zero: a glossary of the sport, published.
        assert_eq!(
            stock.intermediate() > 0,
            stock.model().core() == Core::Asymmetric,
            "{what}"
        );
    }
}

/// Price classes of the 2020s in dollars: plastic 70-130, entry 110-160, middle 150-200, high 190-260; drilling with
/// inserts and slug 60-120. From memory.
#[test]
fn the_demo_prices_look_like_the_trade() {
    let demo = demo();
    for model in demo.models() {
        let (lowest, highest) = match model.tier() {
            Tier::Starter => (70, 130),
            Tier::Entry => (110, 160),
            Tier::Middle => (150, 200),
            Tier::High => (190, 260),
        };
        assert!(
            (lowest * 100..=highest * 100).contains(&model.price()),
            "{}",
            model.id()
        );
        assert_eq!(
            model.tier() == Tier::Starter,
            model.cover() == Cover::Polyester,
            "{}",
            model.id()
        );
    }
    let prices = demo.prices();
    let drilled = prices.drilling_with_ball() + prices.finger_inserts() + prices.thumb_slug();
    assert!((6_000..=12_000).contains(&drilled), "{drilled}");
}

/// A high-end ball at about $230 where an entry-level one is half of that: common practice, no source.
#[test]
fn an_entry_ball_costs_half_of_a_high_end_one() {
    let demo = demo();
    let price = |id| demo.find(id).unwrap().price();
    assert_eq!((price("sainfoin"), price("cats-ear")), (22_995, 11_495));
}

#[test]
fn a_name_nearly_right_is_suggested() {
    let demo = demo();
    assert_eq!(demo.find("hawkbit").unwrap().name(), "Hawkbit");
    assert_eq!(
        demo.find("hawkbti").unwrap_err().to_string(),
        "no ball has the id `hawkbti`; did you mean `hawkbit`?"
    );
    assert_eq!(
        demo.find("zzzzzzzz").unwrap_err().to_string(),
        "no ball has the id `zzzzzzzz`"
    );
    assert!(
        !demo
            .find("\u{1b}[31m")
            .unwrap_err()
            .to_string()
            .contains('\u{1b}')
    );
}

// ---- Quotes. The amounts are those of the demo's price list; the sums were done by hand.

fn lines(catalog: &Catalog, order: &Order<'_>) -> (Vec<String>, i64, i64) {
    let quote = catalog.prices().quote(order);
    let lines = quote
        .lines()
        .iter()
        .map(|(label, cents)| format!("{label}: {cents}"))
        .collect();
    (lines, quote.tax(), quote.total())
}

#[test]
fn a_ball_with_fingertip_grip_and_slug() {
    let demo = demo();
    let mut order = Order::ball(demo.find("hawkbit").unwrap(), 1400);
    order.grip = Grip::Fingertip;
    order.slug = true;
    // 129.95 + 45 + 20 + 15 = 209.95; 8.25 % of it is 17.320875.
    let want = [
        "Hawkbit, 14 lb: 12995",
        "Drilling: 4500",
        "Finger inserts, a pair: 2000",
        "Thumb slug: 1500",
    ];
    assert_eq!(
        lines(&demo, &order),
        (want.map(str::to_owned).to_vec(), 1732, 22_727)
    );

    order.sleeve = true;
    // The sleeve takes the place of the slug: 129.95 + 45 + 20 + 38 = 232.95; 19.218375.
    assert_eq!(lines(&demo, &order).2, 23_295 + 1922);

    order.undrilled = true;
    // 129.95; 10.720875.
    assert_eq!(
        lines(&demo, &order),
        (vec!["Hawkbit, 14 lb: 12995".to_owned()], 1072, 14_067)
    );
}

#[test]
fn an_old_ball_plugged_and_drilled_again() {
    // 3 x 18 + 55 = 109; 8.9925.
    let want = vec![
        "Filling 3 old holes: 5400".to_owned(),
        "Drilling new holes: 5500".to_owned(),
    ];
    assert_eq!(lines(&demo(), &Order::redrill(3)), (want, 899, 11_799));
    // 18 + 55 = 73; 6.0225.
    assert_eq!(
        lines(&demo(), &Order::redrill(1)).0[0],
        "Filling an old hole: 1800"
    );
    assert_eq!(lines(&demo(), &Order::redrill(1)).2, 7_300 + 602);
}

#[test]
fn new_parts_in_an_old_ball() {
    // Easing is listed although it costs nothing.
    assert_eq!(
        lines(&demo(), &Order::easing()),
        (vec!["Easing the holes: 0".to_owned()], 0, 0)
    );
    // 20; 1.65.
    let mut order = Order::new_parts();
    order.grip = Grip::Fingertip;
    let want = vec!["Finger inserts, a pair: 2000".to_owned()];
    assert_eq!(lines(&demo(), &order), (want, 165, 2_165));
    // 20 + 38 = 58; 4.785.
    order.sleeve = true;
    assert_eq!(lines(&demo(), &order).2, 5_800 + 479);
}

#[test]
fn a_ball_the_customer_brings() {
    // 65; 5.3625.
    assert_eq!(
        lines(&demo(), &Order::own_ball()),
        (vec!["Drilling your own ball: 6500".to_owned()], 536, 7_036)
    );
    assert_eq!(lines(&demo(), &Order::default()), (vec![], 0, 0));
}

#[test]
fn half_a_cent_of_tax_is_rounded_up() {
    // $65 at 7.7 % is 5.005; at 7.699 % it is 5.00435.
    for (rate, tax) in [("7.7 %", 501), ("7.699 %", 500), ("0", 0)] {
        let catalog = read(MODELS, CORES, SHELF, &PRICES.replace("8.25 %", rate)).unwrap();
        assert_eq!(
            catalog.prices().quote(&Order::own_ball()).tax(),
            tax,
            "{rate}"
        );
    }
}

proptest! {
    /// The lines and the tax are the total, and the tax is never further than half a cent from the exact one.
    #[test]
    fn quotes_add_up(
        at in 0usize..1000, plugs: u8, undrilled: bool, own_ball: bool, redrill: bool, fingertip: bool, slug: bool,
        sleeve: bool, rate in 0i64..=30_000,
    ) {
        let rate_text = format!("{}.{:03} %", rate / 1000, rate % 1000);
        let catalog = read(MODELS, CORES, SHELF, &PRICES.replace("8.25 %", &rate_text)).unwrap();
        let stock = &catalog.stock()[at % catalog.stock().len()];
        let mut order = Order::ball(stock.model(), stock.weight());
        (order.undrilled, order.own_ball, order.redrill, order.plugs) = (undrilled, own_ball, redrill, plugs);
        order.grip = if fingertip { Grip::Fingertip } else { Grip::Conventional };
        (order.slug, order.sleeve) = (slug, sleeve);
        let quote = catalog.prices().quote(&order);
        let net: i64 = quote.lines().iter().map(|(_, cents)| cents).sum();
        prop_assert_eq!(quote.total(), net + quote.tax());
        let off = quote.tax() * 100_000 - net * rate;
        prop_assert!((-49_999..=50_000).contains(&off), "{}", off);
    }

    /// Rows in any order make the same catalog.
    #[test]
    fn the_order_of_rows_does_not_matter(seed: u64) {
        let shuffled = read(&shuffle(MODELS, seed), &shuffle(CORES, seed), &shuffle(SHELF, seed), PRICES).unwrap();
        prop_assert_eq!(shuffled, demo());
    }
}

/// The table with its rows in another order, the header kept on top.
fn shuffle(table: &str, seed: u64) -> String {
    let (header, rows) = table.split_once('\n').unwrap();
    let mut rows: Vec<(u64, &str)> = rows
        .lines()
        .enumerate()
        .map(|(at, row)| (mix(seed ^ at as u64), row))
        .collect();
    rows.sort_unstable();
    let rows: Vec<&str> = rows.into_iter().map(|(_, row)| row).collect();
    format!("{header}\n{}\n", rows.join("\n"))
}

fn mix(seed: u64) -> u64 {
    let mixed = seed
        .wrapping_add(0x9e37_79b9_7f4a_7c15)
        .wrapping_mul(0xbf58_476d_1ce4_e5b9);
    mixed ^ (mixed >> 29)
}

#[test]
fn the_digest_is_hex_and_changes_with_every_file() {
    let digest = demo().digest().to_owned();
    assert_eq!(digest.len(), 16);
    assert!(digest.bytes().all(|byte| byte.is_ascii_hexdigit()));
    let one = |text: &str, from: &str, to: &str| {
        assert!(text.contains(from), "{from}");
        text.replacen(from, to, 1)
    };
    for changed in [
        read(&one(MODELS, "$74.95", "$74.96"), CORES, SHELF, PRICES),
        read(
            MODELS,
            &one(CORES, "daisy,15 lb,2.690", "daisy,15 lb,2.691"),
            SHELF,
            PRICES,
        ),
        read(
            MODELS,
            CORES,
            &one(SHELF, "daisy,6 lb,1 in", "daisy,6 lb,2 in"),
            PRICES,
        ),
        read(
            MODELS,
            CORES,
            SHELF,
            &one(PRICES, "near_miss: $25", "near_miss: $26"),
        ),
    ] {
        assert_ne!(changed.unwrap().digest(), digest);
    }
}

#[test]
fn a_folder_of_ones_own_is_read() {
    let shop = tempfile::tempdir().unwrap();
    let files = [
        ("models.csv", MODELS),
        ("cores.csv", CORES),
        ("shelf.csv", SHELF),
        ("prices.yaml", PRICES),
    ];
    for (name, text) in files {
        std::fs::write(shop.path().join(name), text).unwrap();
    }
    assert_eq!(Catalog::read_folder(shop.path()).unwrap(), demo());
    std::fs::remove_file(shop.path().join("cores.csv")).unwrap();
    std::fs::remove_file(shop.path().join("prices.yaml")).unwrap();
    // Every file that can't be opened is told, not the first alone.
    assert_eq!(Catalog::read_folder(shop.path()).unwrap_err().len(), 2);
    assert_eq!(
        Catalog::read_folder(Path::new("no-such-shop"))
            .unwrap_err()
            .len(),
        4
    );
}
