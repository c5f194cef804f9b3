//! How the core turns: less taken out changes it less, and an asymmetric ball has its mass bias on the layout.

use spanwright::advice::{Advice, CoreChange, Shop};
use spanwright::catalog::Catalog;
use spanwright::document::{Document, Format};
use spanwright::notation::Notation::Density;
use spanwright::report::{self, Look};
use spanwright::rules::Audience;

use serde_json::json;

use crate::bench::{shop, straight};
use crate::{SHOP, bowler, drilling, measured};

fn core(advice: &Advice) -> &CoreChange {
    drilling(advice).core().as_ref().unwrap()
}

fn change(core: &CoreChange) -> f64 {
    let (one, other) = (core.before(), core.after());
    (one.0 - other.0).abs() + (one.1 - other.1).abs() + (one.2 - other.2).abs()
}

/// Derived: what weighs nothing turns nothing.
#[test]
fn less_density_changes_the_core_less() {
    let lowest = SHOP.rules().range("bench.density_out").lowest.unwrap();
    let light = shop(
        "bench.density_out",
        "drilled-out-like-a-cover",
        &Density.write(lowest),
    );
    let (usual, light) = (straight(&SHOP), straight(&light));
    let (usual, light) = (change(core(&usual)), change(core(&light)));
    assert!(light < usual && usual > 0.0, "{light} {usual}");
}

/// A core turns least easily about the highest axis: differentials lie between nothing and the total one.
#[test]
fn the_numbers_keep_their_order() {
    for ball in ["hawkbit@14", "harebell@14", "devils-bit@14", "sainfoin@15"] {
        let Ok(advice) = SHOP.fit(&bowler(&measured()), ball) else {
            panic!("{ball} isn't on the shelf");
        };
        for (low, total, intermediate) in [core(&advice).before(), core(&advice).after()] {
            assert!(low > 2.0 && low < 3.47, "{ball}: {low}");
            assert!(
                (0.0..=total).contains(&intermediate),
                "{ball}: {intermediate} of {total}"
            );
        }
    }
}

#[test]
fn an_asymmetric_ball_has_a_mass_bias() {
    let points = |ball: &str| -> Vec<&str> {
        let advice = SHOP.fit(&bowler(&measured()), ball).unwrap();
        let layout = drilling(&advice).layout().as_ref().unwrap();
        layout.points().iter().map(|(name, _)| *name).collect()
    };
    assert!(points("devils-bit@14").contains(&"mass bias"));
    assert!(!points("hawkbit@14").contains(&"mass bias"));
    let before = |ball: &str| {
        let advice = SHOP.fit(&bowler(&measured()), ball).unwrap();
        core(&advice).before().2
    };
    assert!(before("devils-bit@14") > 0.0);
    assert_eq!(before("hawkbit@14"), 0.0);
}

#[test]
fn over_the_label_the_heavy_spot_is_in_the_grip() {
    let advice = straight(&SHOP);
    let layout = drilling(&advice).layout().as_ref().unwrap();
    assert!(
        layout.kind().contains("over the label"),
        "{}",
        layout.kind()
    );
    let spot = layout
        .points()
        .iter()
        .find(|(name, _)| *name == "centre of gravity")
        .unwrap();
    assert!(spot.1.0.abs() < 1e-9 && spot.1.1.abs() < 1e-9, "{spot:?}");
}

/// Without its drilling angle an asymmetric ball has no layout: the mass bias lies nowhere by chance.
#[test]
fn an_angle_that_is_not_settled_leaves_the_layout_open() {
    let rule = "{ id: one-more, start: 45 degrees, because: Ours., source: own choice }";
    let overlay = format!("subject: pin.drilling_angle\nrules:\n  - {rule}\n");
    let document = Document::parse("ours.yaml", overlay.as_bytes(), Format::Yaml).unwrap();
    let rules = SHOP.rules().overlay(&[document]).unwrap();
    let twice = Shop::of(rules, Catalog::demo().unwrap());
    let mut profile = measured();
    profile["pap"] = json!({ "over": "5", "up": "1/2 up" });
    let bowler = bowler(&profile);
    let settled = SHOP.fit(&bowler, "sainfoin@15").unwrap();
    assert!(drilling(&settled).layout().is_some());
    let advice = twice.fit(&bowler, "sainfoin@15").unwrap();
    let computed = drilling(&advice);
    assert!(computed.layout().is_none() && computed.balance().is_none());
    let open = computed.open().join(" ");
    assert!(open.contains("Settle the layout's numbers"), "{open}");
    assert!(!advice.drill_today());
    // A symmetric ball has no such angle.
    let symmetric = twice.fit(&bowler, "hawkbit@14").unwrap();
    assert!(drilling(&symmetric).layout().is_some());
}

/// A drilled differential of 0.050 and up is called high flare (Sharon Herald, 6 October 2022, "Symmetrical cores",
/// published); a plain ball's isn't.
#[test]
fn high_flare_is_called_so_where_it_is() {
    for (ball, high) in [("silverweed@15", true), ("harebell@14", false)] {
        let advice = SHOP.fit(&bowler(&measured()), ball).unwrap();
        let (_, differential, _) = core(&advice).after();
        assert_eq!(differential >= 0.050, high, "{ball}: {differential}");
        let text = report::text(&advice, &Look::plain(Audience::Fitter));
        assert_eq!(text.contains("high flare"), high, "{ball}");
    }
}

/// Principal axes are square to each other, and the lowest lies as far from the pin as is told.
#[test]
fn the_axes_are_square_and_as_far_from_the_pin_as_is_told() {
    let advice = SHOP.fit(&bowler(&measured()), "hawkbit@14").unwrap();
    let core = core(&advice);
    let dot = |a: [f64; 3], b: [f64; 3]| -> f64 { a.iter().zip(b).map(|(a, b)| a * b).sum() };
    let [low, middle, high] = core.axes();
    for (one, other) in [(low, middle), (middle, high), (low, high)] {
        assert!(dot(one, other).abs() < 1e-9);
    }
    let layout = drilling(&advice).layout().as_ref().unwrap();
    let (_, (over, up)) = layout.points()[0];
    // Inches along a ball 27 in around as radians.
    let radius = 27.0 / std::f64::consts::TAU;
    let (over, up) = (over / radius, up / radius);
    let pin = [up.cos() * over.sin(), up.sin(), up.cos() * over.cos()];
    let apart = radius * dot(low, pin).abs().min(1.0).acos();
    assert!(
        (apart - core.moved().unwrap()).abs() < 1e-6,
        "{apart} {core:?}"
    );
}
