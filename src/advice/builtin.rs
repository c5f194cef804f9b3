//! The built-in rule files, part of the program.

use std::sync::Arc;

use crate::document::{Document, Faults, Format};
use crate::rules::{RuleSet, Vocabulary};

macro_rules! files {
    ($($name:literal),* $(,)?) => {
        &[$((concat!("rules/", $name), include_str!(concat!("../../rules/", $name)))),*]
    };
}

/// Name and text of every rule file under `rules/`; a test holds that none is missing. `standards.yaml` and
/// `phrases.yaml` hold no rules of advice: the standards and the turning points read them themselves.
pub(super) const FILES: &[(&str, &str)] = files![
    "assumptions.yaml",
    "ball.yaml",
    "ball.roll.yaml",
    "bench.density_back.yaml",
    "bench.density_out.yaml",
    "bench.density_plug.yaml",
    "bench.least_sleeve_wall.yaml",
    "bench.least_web.yaml",
    "bench.scale_arm.yaml",
    "bridge.yaml",
    "finger.bevel.yaml",
    "friction.yaml",
    "glossary.yaml",
    "grip.yaml",
    "handover.yaml",
    "layout.yaml",
    "middle.bore.yaml",
    "middle.cut_span.yaml",
    "middle.depth.yaml",
    "middle.forward_pitch.yaml",
    "middle.insert.yaml",
    "middle.lateral_pitch.yaml",
    "middle.span.yaml",
    "offer.yaml",
    "person.yaml",
    "pin.direction.yaml",
    "pin.drilling_angle.yaml",
    "pin.from_grip.yaml",
    "pin.from_pap.yaml",
    "pin.val_angle.yaml",
    "plain_words.yaml",
    "refit.care.yaml",
    "refit.cause.yaml",
    "refit.change.yaml",
    "refit.steps.yaml",
    "ring.bore.yaml",
    "ring.cut_span.yaml",
    "ring.depth.yaml",
    "ring.forward_pitch.yaml",
    "ring.insert.yaml",
    "ring.lateral_pitch.yaml",
    "ring.span.yaml",
    "roll.say.yaml",
    "roll.yaml",
    "sources.yaml",
    "subjects.yaml",
    "surface.yaml",
    "thumb.bevel.yaml",
    "thumb.bore.yaml",
    "thumb.clearance.yaml",
    "thumb.depth.yaml",
    "thumb.forward_pitch.yaml",
    "thumb.lateral_pitch.yaml",
    "thumb.oval.yaml",
    "thumb.slug.yaml",
    "upgrade.alike_boards.yaml",
    "upgrade.alike_feet.yaml",
    "upgrade.ball.yaml",
    "upgrade.before.yaml",
    "upgrade.gap.yaml",
    "upgrade.most_balls.yaml",
    "upgrade.trigger.yaml",
    "weight.yaml",
    "work.yaml",
];

/// Reads the built-in rules.
pub(super) fn rules(vocabulary: &Arc<Vocabulary>) -> Result<RuleSet, Faults> {
    let mut documents = Vec::new();
    let mut faults = Faults::default();
    for (name, text) in FILES {
        match Document::parse(name, text.as_bytes(), Format::Yaml) {
            Ok(document) => documents.push(document),
            Err(found) => faults.merge(found),
        }
    }
    match RuleSet::read(vocabulary, &documents) {
        Ok(rules) if faults.is_empty() => Ok(rules),
        Ok(_) => Err(faults),
        Err(found) => {
            faults.merge(found);
            Err(faults)
        }
    }
}
