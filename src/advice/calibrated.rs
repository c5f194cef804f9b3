//! A shop's own scale arm and density of what it drills out, from balls that were weighed before and after drilling.

use std::fmt;

use super::builtin;
use super::shop::Shop;
use super::weighings::{CardTrouble, Weighing, weighing};
use crate::bowler::Bowler;
use crate::document::{Document, Format};
use crate::fitting::calibrate::{Calibration, CannotTell, ReadingPair, Steps, calibrate_to};
use crate::notation::Notation;
use crate::rules::{Measured, Role, RuleSet};
use crate::vocabulary::{Alone, Situation};

/// The steps of a profile's readings, 0.01 lb and 0.01 oz, in ounces. What the shop's scale can show may be coarser.
const STEPS: Steps = Steps {
    weight: 0.16,
    statics: 0.01,
};
/// From fewer balls an error is itself a guess. Own choice.
const FEW_BALLS: usize = 3;

/// Arm and density with their errors, beside what is set now, and a rules file that sets them.
#[derive(Clone, Debug)]
pub struct Calibrated {
    balls: usize,
    calibration: Calibration,
    settings: [Setting; 2],
    notes: Vec<String>,
    rules_file: String,
    digest: String,
}

/// One setting of the bench: what it is, and what the readings say.
#[derive(Clone, Debug, PartialEq)]
pub struct Setting {
    subject: &'static str,
    notation: Notation,
    present: Option<i64>,
    rule: Option<Stated>,
    value: f64,
    error: f64,
}

/// The rule that a setting has now.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Stated {
    id: String,
    /// The shop's own file that it stands in, if it isn't a built-in one.
    file: Option<String>,
}

/// Why the cards give no arm and density.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum NotCalibrated {
    /// These cards lack something.
    Cards(Vec<CardTrouble>),
    /// Two cards tell the same holes and readings: one ball counted twice would make the errors look smaller than they are.
    Repeated(String, String),
    /// The readings don't tell.
    CannotTell(CannotTell),
    /// The rules can't be used.
    Rules(String),
}

impl fmt::Display for NotCalibrated {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            NotCalibrated::Cards(cards) => {
                let cards: Vec<String> = cards.iter().map(CardTrouble::to_string).collect();
                f.write_str(&cards.join("\n"))
            }
            NotCalibrated::Repeated(one, other) => {
                write!(f, "{other} tells just what {one} does: give each ball once")
            }
            NotCalibrated::CannotTell(why) => write!(f, "{why}"),
            NotCalibrated::Rules(why) => write!(f, "the rules can't be used: {why}"),
        }
    }
}

impl std::error::Error for NotCalibrated {}

impl Shop {
    /// Fits the arm of the shop's scale and the density of what it drills out to these cards, each with what to call it,
    /// such as its file.
    ///
    /// Each card tells its holes, `before`, and after drilling its static weights; the ball's weight before and after makes the
    /// density certain. Slugs and inserts count at the rules' `bench.density_back`. The fit is
    /// [`calibrate_to`](crate::fitting::calibrate::calibrate_to).
    ///
    /// # Errors
    ///
    /// [`NotCalibrated`], with what to measure; the troubles of all cards at once.
    pub fn calibrate(&self, cards: &[(String, Bowler)]) -> Result<Calibrated, NotCalibrated> {
        let mut weighings = Vec::new();
        let mut troubles = Vec::new();
        for (card, bowler) in cards {
            match weighing(self, card, bowler) {
                Ok(weighing) => weighings.push(weighing),
                Err(trouble) => troubles.push(trouble),
            }
        }
        if !troubles.is_empty() {
            return Err(NotCalibrated::Cards(troubles));
        }
        for (index, (weighing, (card, _))) in weighings.iter().zip(cards).enumerate() {
            // Whatever else is written on the card: the same holes with the same readings are the same ball.
            let before = weighings.iter().zip(cards).take(index);
            let mut same = before.filter(|(other, _)| other.pair == weighing.pair);
            if let Some((_, (first, _))) = same.next() {
                return Err(NotCalibrated::Repeated(first.clone(), card.clone()));
            }
        }
        let pairs: Vec<ReadingPair> = weighings.iter().map(|each| each.pair.clone()).collect();
        let calibration = calibrate_to(&pairs, STEPS).map_err(NotCalibrated::CannotTell)?;
        let settings = [
            self.setting(
                ("bench.scale_arm", Notation::Thousandths),
                (calibration.arm(), calibration.arm_error()),
            ),
            self.setting(
                ("bench.density_out", Notation::Density),
                (calibration.density(), calibration.density_error()),
            ),
        ];
        let built_in = builtin::rules(self.vocabulary())
            .map_err(|faults| NotCalibrated::Rules(faults.to_string()))?;
        let basis = format!("{} readings of {}", calibration.n(), balls(pairs.len()));
        let rules_file = rules_file(&settings, &basis, |id| built_in.find(id).is_some());
        // Laid over the rules in force now, a shop's own rules are there to be overridden too.
        let tried = rules_file_over(self, &settings, &basis)?;
        let mut notes = self.notes(&settings, &weighings, &tried);
        notes.push(
            "Bevels and the drill's point take out a little more than the card's flat holes; the density carries that too."
                .to_owned(),
        );
        Ok(Calibrated {
            balls: pairs.len(),
            calibration,
            settings,
            notes,
            rules_file,
            digest: self.digest().to_owned(),
        })
    }

    fn setting(
        &self,
        (subject, notation): (&'static str, Notation),
        (value, error): (f64, f64),
    ) -> Setting {
        let measured = alone(self.rules(), subject);
        let start = measured
            .lines()
            .iter()
            .find(|line| line.role() == Role::Start);
        Setting {
            subject,
            notation,
            present: measured.value(),
            rule: start.map(|line| {
                let rule = self.rules().rule(line.rule());
                Stated {
                    id: rule.id().to_owned(),
                    file: rule.is_overlay().then(|| rule.file().to_owned()),
                }
            }),
            value,
            error,
        }
    }

    fn notes(&self, settings: &[Setting], weighings: &[Weighing], tried: &RuleSet) -> Vec<String> {
        let mut notes = Vec::new();
        if weighings.len() < FEW_BALLS {
            notes.push(format!(
                "Weigh more balls: from {} the error itself is a guess.",
                balls(weighings.len())
            ));
        }
        for setting in settings {
            let subject = setting.subject;
            if setting.agrees() {
                notes.push(format!(
                    "{subject} may stay as it is: the readings lie within twice the error of it."
                ));
            }
            let then = alone(tried, subject).value();
            if then != Some(setting.steps()) {
                let comes = then.map_or("no number".to_owned(), |v| setting.notation.write(v));
                notes.push(format!(
                    "Look at the other rules of {subject}: with the new start it comes to {comes}."
                ));
            }
            if let Some(Stated {
                id,
                file: Some(file),
            }) = &setting.rule
            {
                notes.push(format!(
                    "Put the new rule in place of `{id}` in {file}: two files can't both state it."
                ));
            }
        }
        let squares = weighings.iter().filter_map(|each| each.ounces_a_density);
        let squares: f64 = squares.map(|ounces| ounces * ounces).sum();
        // A value rounded to a step has the variance step²/12, and a change of weight is made of two.
        let floor = STEPS.weight / libm::sqrt(6.0 * squares);
        if squares > 0.0 && 2.0 * floor > settings[1].error {
            notes.push(format!(
                "Weights are kept to 0.01 lb: by weight alone these balls tell the density no closer than {floor:.3} g/cc."
            ));
        }
        if let Some(back) = weighings.iter().find_map(|each| each.back) {
            notes.push(format!(
                "Slugs and inserts were counted at {}; if yours differ, set bench.density_back first.",
                Notation::Density.write(back)
            ));
        }
        notes
    }
}

impl Calibrated {
    /// How many balls were weighed.
    pub fn balls(&self) -> usize {
        self.balls
    }

    /// The fit itself.
    pub fn calibration(&self) -> &Calibration {
        &self.calibration
    }

    /// The two settings of the bench: the arm, then the density.
    pub fn settings(&self) -> &[Setting; 2] {
        &self.settings
    }

    /// What to know before the numbers are used, in sentences.
    pub fn notes(&self) -> &[String] {
        &self.notes
    }

    /// A file for `--rules` that sets both.
    pub fn rules_file(&self) -> &str {
        &self.rules_file
    }

    /// Digest of the rules and catalog in force.
    pub fn digest(&self) -> &str {
        &self.digest
    }
}

impl Setting {
    /// The subject of its rules, such as `bench.scale_arm`.
    pub fn subject(&self) -> &'static str {
        self.subject
    }

    /// How it is written.
    pub fn notation(&self) -> Notation {
        self.notation
    }

    /// What is set now, in steps; `None` if the rules come to no number.
    pub fn present(&self) -> Option<i64> {
        self.present
    }

    /// The rule that sets it now.
    pub fn rule(&self) -> Option<&str> {
        self.rule.as_ref().map(|rule| rule.id.as_str())
    }

    /// What the readings say, in inches or g/cm³.
    pub fn value(&self) -> f64 {
        self.value
    }

    /// Its standard error.
    pub fn error(&self) -> f64 {
        self.error
    }

    /// What the readings say, in the steps of its notation: thousandths.
    pub fn steps(&self) -> i64 {
        // The fit keeps both far inside the whole numbers.
        libm::round(self.value * 1000.0) as i64
    }

    /// Whether what is set now can't be told from what the readings say.
    pub fn agrees(&self) -> bool {
        let apart = |present: i64| (present as f64 / 1000.0 - self.value).abs();
        self.present
            .is_some_and(|present| apart(present) <= 2.0 * self.error)
    }
}

/// A measure where nothing is known of a bowler: settings hang on none.
fn alone(rules: &RuleSet, subject: &str) -> Measured {
    rules.measure(subject, &Alone(&Situation::empty(rules.vocabulary())))
}

fn balls(count: usize) -> String {
    Notation::Counted("ball", "balls").write(i64::try_from(count).unwrap_or(i64::MAX))
}

/// The rules in force with the new settings.
fn rules_file_over(
    shop: &Shop,
    settings: &[Setting],
    basis: &str,
) -> Result<RuleSet, NotCalibrated> {
    let text = rules_file(settings, basis, |id| shop.rules().find(id).is_some());
    Document::parse("calibrated", text.as_bytes(), Format::Yaml)
        .and_then(|document| shop.rules().overlay(&[document]))
        .map_err(|faults| NotCalibrated::Rules(faults.to_string()))
}

/// One file that sets all; a rule that `there` knows is overridden.
fn rules_file(settings: &[Setting], basis: &str, there: impl Fn(&str) -> bool) -> String {
    let mut text = format!("# Fitted by `spanwright calibrate` to {basis}.\nrules:\n");
    for setting in settings {
        let own = setting.subject.replace(['.', '_'], "-");
        let id = setting.rule().unwrap_or(&own);
        let overrides = if there(id) {
            "    override: true\n"
        } else {
            ""
        };
        text += &format!(
            "  - id: {id}\n    subject: {}\n{overrides}    start: {}\n    because: Fitted to {basis}, give or take {:.3} {}.\n    source: derived\n",
            setting.subject,
            setting.notation.write(setting.steps()),
            setting.error,
            setting.notation.unit()
        );
    }
    text
}
