//! The drill spec: every number with its ledger, or blank with what to do instead.

use super::{Caution, Reason};

/// What to drill, in the order of work.
#[derive(Clone, Debug, Default)]
#[non_exhaustive]
pub struct DrillSpec {
    pub(crate) for_ball: Option<String>,
    pub(crate) copied_from_card: bool,
    pub(crate) numbers: Vec<SpecNumber>,
    pub(crate) work: Vec<WorkStep>,
    pub(crate) handover: Vec<WorkStep>,
}

/// One number of the spec.
#[derive(Clone, Debug)]
pub struct SpecNumber {
    pub(crate) name: String,
    pub(crate) meaning: String,
    pub(crate) value: Option<i64>,
    pub(crate) unit: &'static str,
    pub(crate) shop: String,
    pub(crate) blank: Option<String>,
    pub(crate) lines: Vec<Reason>,
    pub(crate) cautions: Vec<Caution>,
}

/// One step of the work or of handing over.
#[derive(Clone, Debug)]
pub struct WorkStep {
    pub(crate) id: String,
    pub(crate) text: String,
    pub(crate) because: String,
    pub(crate) source: String,
    pub(crate) strength: &'static str,
}

impl DrillSpec {
    /// The ball it is for, as `model-id@weight`.
    pub fn for_ball(&self) -> Option<&str> {
        self.for_ball.as_deref()
    }
    /// True if a fit that works was copied.
    pub fn is_copied(&self) -> bool {
        self.copied_from_card
    }
    /// The numbers, in the order of work.
    pub fn numbers(&self) -> &[SpecNumber] {
        &self.numbers
    }
    /// One number by name, e.g. `thumb.forward_pitch`.
    pub fn number(&self, name: &str) -> Option<&SpecNumber> {
        self.numbers.iter().find(|n| n.name == name)
    }
    /// What to do, in order.
    pub fn work(&self) -> &[WorkStep] {
        &self.work
    }
    /// What to check before the customer leaves.
    pub fn handover(&self) -> &[WorkStep] {
        &self.handover
    }
}

impl SpecNumber {
    /// The measure's name.
    pub fn name(&self) -> &str {
        &self.name
    }
    /// What it is, in a line.
    pub fn meaning(&self) -> &str {
        &self.meaning
    }
    /// Whole steps of the measure's notation (the sum of the lines); `None` if blank.
    pub fn value(&self) -> Option<i64> {
        self.value
    }
    /// The unit of one step.
    pub fn unit(&self) -> &'static str {
        self.unit
    }
    /// As a fitter writes it: `3/8 in R`; empty if blank.
    pub fn shop(&self) -> &str {
        &self.shop
    }
    /// Why it is blank, the action first: "Measure the hand: …".
    pub fn blank(&self) -> Option<&str> {
        self.blank.as_deref()
    }
    /// Start, additions, limit, rounding and disputes, with reasons; they add up to the value.
    pub fn lines(&self) -> &[Reason] {
        &self.lines
    }
    /// Cautions on this number.
    pub fn cautions(&self) -> &[Caution] {
        &self.cautions
    }
}

impl WorkStep {
    /// Its id in the rules.
    pub fn id(&self) -> &str {
        &self.id
    }
    /// What to do.
    pub fn text(&self) -> &str {
        &self.text
    }
    /// Why, if it needs saying.
    pub fn because(&self) -> Option<&str> {
        (!self.because.is_empty()).then_some(self.because.as_str())
    }
    /// Where the step comes from.
    pub fn source(&self) -> &str {
        &self.source
    }
    /// How sure the source is.
    pub fn strength(&self) -> &'static str {
        self.strength
    }
}
