//! What the shop's bench is set to: the scale, densities, the least wall. Measures like any other, so a shop can change them.

use super::answers::INCH;
use super::answers::number;
use super::settled::settled;
use crate::notation::Notation::{Density, Length, Thousandths};
use crate::rules::Fact;

/// The settings as facts; each has the same name as its subject in the rules.
pub fn bench() -> Vec<Fact> {
    let setting = |name, meaning, kind| settled(name, meaning, kind, "the bench's settings");
    vec![
        setting(
            "bench.scale_arm",
            "the arm at which the shop's scale reads a weight in full",
            number(Thousandths, 0, 20_000),
        ),
        setting(
            "bench.density_out",
            "density of what the drill takes out",
            number(Density, 0, 5_000),
        ),
        setting(
            "bench.density_back",
            "density of slugs, sleeves and inserts",
            number(Density, 0, 5_000),
        ),
        setting(
            "bench.density_plug",
            "density of what fills an old hole",
            number(Density, 0, 5_000),
        ),
        setting(
            "bench.least_web",
            "the least wall that may be left between two holes",
            number(Length, 0, INCH),
        ),
        setting(
            "bench.least_sleeve_wall",
            "the least wall of a slug, sleeve or insert",
            number(Length, 0, INCH),
        ),
    ]
}
