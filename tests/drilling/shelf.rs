//! Of several of one ball the one that stays farthest inside the limits is taken, and says so; the limits are told with their ground.

use std::fs;
use std::path::Path;

use rstest::rstest;
use spanwright::advice::{Advice, Predicted, Shop, ShopFiles};

use crate::{SHOP, bowler, drilling, measured};

/// Pin-outs and top weights, far enough apart that no two come out alike. Invented.
const UNITS: [(&str, &str); 5] = [
    ("1/2 in", "2 oz"),
    ("2 in", "3 oz"),
    ("3 1/2 in", "1 3/4 oz"),
    ("4 in", "3 1/2 oz"),
    ("1 in", "4 1/2 oz"),
];

/// The demo shop with these on the shelf in place of its own of that model and weight.
fn shop(units: &[(&str, &str)]) -> Shop {
    let folder = tempfile::tempdir().unwrap();
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("catalog-demo");
    for file in ["models.csv", "cores.csv", "prices.yaml"] {
        fs::copy(demo.join(file), folder.path().join(file)).unwrap();
    }
    let shelf = fs::read_to_string(demo.join("shelf.csv")).unwrap();
    let others = shelf
        .lines()
        .filter(|line| !line.starts_with("hawkbit,14 lb,"));
    let mut rows: Vec<String> = others.map(str::to_owned).collect();
    let row = |(pin_out, top): &(&str, &str)| format!("hawkbit,14 lb,{pin_out},{top},1");
    rows.extend(units.iter().map(row));
    fs::write(folder.path().join("shelf.csv"), rows.join("\n") + "\n").unwrap();
    let files = ShopFiles {
        catalog: Some(folder.path().to_owned()),
        ..ShopFiles::default()
    };
    Shop::open(&files).unwrap()
}

fn fitted(units: &[(&str, &str)]) -> Advice {
    shop(units).fit(&bowler(&measured()), "hawkbit@14").unwrap()
}

fn margin(advice: &Advice) -> f64 {
    drilling(advice)
        .balance()
        .as_ref()
        .unwrap()
        .margin()
        .unwrap()
}

#[test]
fn the_one_with_the_widest_margin_is_taken() {
    let mut alone: Vec<(f64, String, Advice)> = UNITS
        .iter()
        .map(|unit| {
            let advice = fitted(&[*unit]);
            let called = drilling(&advice)
                .balance()
                .as_ref()
                .unwrap()
                .unit()
                .to_owned();
            (margin(&advice), called, advice)
        })
        .collect();
    alone.sort_by(|one, other| other.0.total_cmp(&one.0));
    assert!(alone[0].0 - alone[1].0 > 0.01);
    let best = drilling(&alone[0].2);

    for turn in 0..UNITS.len() {
        let mut units = UNITS;
        units.rotate_left(turn);
        let advice = fitted(&units);
        let balance = drilling(&advice).balance().as_ref().unwrap();
        assert_eq!(balance.unit(), alone[0].1);
        assert!((margin(&advice) - alone[0].0).abs() < 1e-9);
        // Weights, layout and core are that one's too.
        let weights = |b: &Predicted| [b.top(), b.side(), b.finger(), b.pounds()];
        assert_eq!(weights(balance), weights(best.balance().as_ref().unwrap()));
        assert_eq!(drilling(&advice).layout(), best.layout());
        assert_eq!(drilling(&advice).core(), best.core());
        assert_eq!(advice.picks()[0].unit(), Some(balance.unit()));
        let why = balance.because().join(" ");
        assert!(why.contains("5 kinds"), "{why}");
        for (margin, ..) in &alone[..2] {
            assert!(
                why.contains(&format!("{:.2} oz", margin.abs())),
                "{why}: {margin}"
            );
        }
        assert!(why.contains(&alone[1].1), "{why}: {}", alone[1].1);
    }
}

/// Without the thumb's depth no weight is known, so the layout is for the first on the shelf, as the order says.
#[test]
fn without_weights_layout_and_order_name_the_same_one() {
    let mut profile = measured();
    let thumb = profile.pointer_mut("/measured/thumb").unwrap();
    thumb.as_object_mut().unwrap().remove("length");
    for turn in 0..UNITS.len() {
        let mut units = UNITS;
        units.rotate_left(turn);
        let advice = shop(&units).fit(&bowler(&profile), "hawkbit@14").unwrap();
        let named = advice.picks()[0].unit().unwrap();
        let open = drilling(&advice).open().join(" ");
        assert!(open.contains(named), "{named}: {open}");
    }
}

#[test]
fn the_only_one_says_that_it_is() {
    let advice = fitted(&UNITS[..1]);
    let balance = drilling(&advice).balance().as_ref().unwrap();
    assert!(
        balance.because()[0].contains("only kind"),
        "{:?}",
        balance.because()
    );
}

/// Over 10 lb: 3 oz each way, USBC release on new specifications (06/2018; rules/standards.yaml static-3-oz, published).
/// 8 to 10 lb: 2 oz top, 3/4 oz else; under 8 lb: 3/4 oz each. Both from memory (static-top-8-to-10, static-rest-8-to-10,
/// static-under-8), so half of them is aimed at.
#[rstest]
#[case("hawkbit@14", [3.0, 3.0, 3.0], true)]
#[case("harebell@12", [3.0, 3.0, 3.0], true)]
#[case("harebell@9", [1.0, 0.375, 0.375], false)]
#[case("harebell@6", [0.375, 0.375, 0.375], false)]
fn the_limits_of_the_weight_are_aimed_at(
    #[case] ball: &str,
    #[case] limits: [f64; 3],
    #[case] printed: bool,
) {
    let [top, side, finger] = limits;
    let advice = SHOP.fit(&bowler(&measured()), ball).unwrap();
    let balance = drilling(&advice).balance().as_ref().unwrap();
    let rooms = [
        top - balance.top().abs(),
        side - balance.side().abs(),
        finger - balance.finger().abs(),
    ];
    let room = rooms.into_iter().fold(f64::INFINITY, f64::min);
    assert!(
        (balance.margin().unwrap() - room).abs() < 1e-9,
        "{balance:?}"
    );
    let why = balance.because().join(" ");
    assert_eq!(
        why.contains("printed limit of this weight is 3 oz"),
        printed,
        "{why}"
    );
    let half =
        why.contains("Half of what memory has is aimed at") && why.contains(&format!("{top} oz"));
    assert_eq!(half, !printed, "{why}");
}
