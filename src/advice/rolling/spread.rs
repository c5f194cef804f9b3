//! How far each number of a throw may be off, and how that is told.

use super::throw::Throw;
use crate::bowler::Bowler;
use crate::notation::Notation;

/// The settings, by the names of their measures.
pub(super) const SETTINGS: [&str; 5] = [
    "band.speed",
    "band.rev_rate",
    "band.rotation",
    "band.friction",
    "band.rg",
];
/// The settings that stand in for what the bowler says of a measurement.
const MEASURED: [(&str, &str); 3] = [
    ("bowler.speed", "band.speed"),
    ("bowler.rev_rate", "band.rev_rate"),
    ("bowler.rotation", "band.rotation"),
];

/// Whether the bowler's own word stands before this setting.
pub(super) fn is_told(bowler: &Bowler, setting: &str) -> bool {
    let mut rows = MEASURED.iter();
    rows.any(|(answer, name)| *name == setting && bowler.give_or_take(answer).is_some())
}

/// How far each number may be off either way, in steps of its notation; friction and RG in hundredths.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Spread {
    pub(super) speed: i64,
    pub(super) revs: i64,
    pub(super) rotation: i64,
    pub(super) friction: i64,
    pub(super) rg: i64,
}

impl Spread {
    /// What the bowler says of the measurement, or else the settings of the rules, asked by their names.
    pub(super) fn of(bowler: &Bowler, setting: &dyn Fn(&str) -> Option<i64>) -> Option<Spread> {
        let [speed, revs, rotation] = MEASURED.map(|(answer, name)| {
            let own = bowler.give_or_take(answer);
            own.or_else(|| setting(name))
        });
        Some(Spread {
            speed: speed?,
            revs: revs?,
            rotation: rotation?,
            friction: setting("band.friction")?,
            rg: setting("band.rg")?,
        })
    }

    /// A line each.
    pub(super) fn said(&self, throw: Throw) -> Vec<String> {
        let about = |what: &str, notation: Notation, value: i64, off: i64| match off {
            0 => format!("{what} {}", notation.write(value)),
            off => format!(
                "{what} {}, give or take {}",
                notation.write(value),
                notation.write(off)
            ),
        };
        let percent = |value: i64| Notation::Percent.write(value);
        vec![
            about("speed", Notation::Speed, throw.speed, self.speed),
            about("rev rate", Notation::Rate, throw.revs, self.revs),
            about(
                "axis rotation",
                Notation::Angle,
                throw.rotation,
                self.rotation,
            ),
            format!(
                "the lane's grip on both balls alike, give or take {}",
                percent(self.friction)
            ),
            format!(
                "the RG of each ball by itself, give or take {}",
                percent(self.rg)
            ),
        ]
    }
}
