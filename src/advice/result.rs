//! What a consultation gives back. Plain results with getters; nothing here computes.

use super::{Caution, DrillSpec, Drilling, HowSure, Offers, Reason};

/// The whole answer to "which ball, and how do I drill it?".
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Advice {
    pub(crate) bowler: String,
    pub(crate) cautions: Vec<Caution>,
    pub(crate) settled: Vec<Settled>,
    pub(crate) picks: Vec<Pick>,
    pub(crate) ruled_out: Vec<RuledOut>,
    pub(crate) near_misses: Vec<NearMiss>,
    pub(crate) assumptions: Vec<Assumed>,
    pub(crate) questions: Vec<String>,
    pub(crate) bill: Option<Bill>,
    pub(crate) spec: DrillSpec,
    pub(crate) drilling: Option<Drilling>,
    pub(crate) offers: Option<Offers>,
    pub(crate) how_sure: Option<HowSure>,
    pub(crate) drill_today: bool,
    pub(crate) digest: String,
}

/// One thing that was decided on the way: weight, grip, surface or layout.
#[derive(Clone, Debug)]
pub struct Settled {
    pub(crate) stage: String,
    pub(crate) value: String,
    pub(crate) by_fitter: bool,
    pub(crate) total: i64,
    pub(crate) lines: Vec<Reason>,
    pub(crate) runner_up: Option<String>,
    pub(crate) not_more: Option<(String, Reason)>,
}

/// A ranked ball: model and weight.
#[derive(Clone, Debug)]
pub struct Pick {
    pub(crate) ball: String,
    pub(crate) name: String,
    pub(crate) maker: String,
    pub(crate) weight: String,
    pub(crate) cover: String,
    pub(crate) colours: String,
    pub(crate) price: String,
    pub(crate) out_the_door: String,
    pub(crate) place: usize,
    pub(crate) total: i64,
    pub(crate) by_customer: bool,
    pub(crate) lines: Vec<Reason>,
    pub(crate) behind: Option<Behind>,
    pub(crate) unit: Option<String>,
}

/// The one line that cost a runner-up most against the pick.
#[derive(Clone, Debug)]
pub struct Behind {
    /// Tenths of a point lost on that line.
    pub points: i64,
    /// True if the runner-up lacks something the pick has; false if it has something against it.
    pub lacks: bool,
    /// The line.
    pub line: Reason,
}

/// A ball that is out, with every rule that says so.
#[derive(Clone, Debug)]
pub struct RuledOut {
    pub(crate) ball: String,
    pub(crate) name: String,
    pub(crate) lines: Vec<Reason>,
}

/// A ball that only the budget keeps out, and by how much.
#[derive(Clone, Debug)]
pub struct NearMiss {
    pub(crate) ball: String,
    pub(crate) name: String,
    pub(crate) out_the_door: String,
    pub(crate) over: String,
}

/// An answer nobody gave, and what was taken in its place.
#[derive(Clone, Debug)]
pub struct Assumed {
    pub(crate) fact: String,
    pub(crate) meaning: String,
    pub(crate) value: Option<String>,
    pub(crate) matters: bool,
    pub(crate) reason: String,
    pub(crate) source: String,
    pub(crate) strength: &'static str,
}

/// What it comes to.
#[derive(Clone, Debug)]
pub struct Bill {
    pub(crate) lines: Vec<(String, String)>,
    pub(crate) tax: String,
    pub(crate) total: String,
    pub(crate) total_cents: i64,
    pub(crate) ready_when: String,
    pub(crate) notes: Vec<String>,
}

macro_rules! getters {
    ($kind:ident { $($(#[$doc:meta])* $name:ident : $type:ty),* $(,)? }) => {
        impl $kind { $( $(#[$doc])* pub fn $name(&self) -> $type { &self.$name } )* }
    };
}

impl Advice {
    /// The customer's name, harmless to print; empty if none was given.
    pub fn bowler(&self) -> &str {
        &self.bowler
    }
    /// Serious first, then mild; the person's before the balls' and numbers'.
    pub fn cautions(&self) -> &[Caution] {
        &self.cautions
    }
    /// Weight, grip, surface, layout, in that order; a stage with nothing to settle is left out.
    pub fn settled(&self) -> &[Settled] {
        &self.settled
    }
    /// All balls still in, best first.
    pub fn picks(&self) -> &[Pick] {
        &self.picks
    }
    /// All balls ruled out, by id.
    pub fn ruled_out(&self) -> &[RuledOut] {
        &self.ruled_out
    }
    /// Balls that only the budget keeps out, nearest first.
    pub fn near_misses(&self) -> &[NearMiss] {
        &self.near_misses
    }
    /// What was assumed because it wasn't known, and what can't be judged without.
    pub fn assumptions(&self) -> &[Assumed] {
        &self.assumptions
    }
    /// Questions the profile raises, for the fitter to ask.
    pub fn questions(&self) -> &[String] {
        &self.questions
    }
    /// The quote for the best ball, if there is one.
    pub fn bill(&self) -> Option<&Bill> {
        self.bill.as_ref()
    }
    /// The first drill spec.
    pub fn spec(&self) -> &DrillSpec {
        &self.spec
    }
    /// The drilled ball as computed from the spec; none where nothing was measured or nothing may be drilled.
    pub fn drilling(&self) -> Option<&Drilling> {
        self.drilling.as_ref()
    }
    /// What else can be done about an old ball; only where one was brought.
    pub fn offers(&self) -> Option<&Offers> {
        self.offers.as_ref()
    }
    /// How sure the pick is, as far as what was measured goes; none for a ball of the customer's own choice, or one that was brought.
    pub fn how_sure(&self) -> Option<&HowSure> {
        self.how_sure.as_ref()
    }
    /// False when nothing may be drilled today (a present, or no hand measured).
    pub fn drill_today(&self) -> bool {
        self.drill_today
    }
    /// Digest of rules and catalog, so that two answers can be compared.
    pub fn digest(&self) -> &str {
        &self.digest
    }
}

getters!(Settled {
    /// The stage: `weight`, `grip`, `surface`, `layout`.
    stage: &str,
    /// What was chosen, as people say it.
    value: &str,
    /// All lines for the chosen candidate, largest first.
    lines: &[Reason],
});
impl Settled {
    /// True if the fitter fixed it in the profile.
    pub fn is_by_fitter(&self) -> bool {
        self.by_fitter
    }
    /// Tenths of a point; the sum of the lines.
    pub fn total(&self) -> i64 {
        self.total
    }
    /// What speaks most against the next larger choice, where choices have an order: its name, and the line.
    pub fn not_more(&self) -> Option<(&str, &Reason)> {
        self.not_more
            .as_ref()
            .map(|(name, line)| (name.as_str(), line))
    }
    /// The next best, if there was one.
    pub fn runner_up(&self) -> Option<&str> {
        self.runner_up.as_deref()
    }
}

getters!(Pick {
    /// `model-id@weight`, e.g. `field-daisy@12`.
    ball: &str,
    /// The ball's name.
    name: &str,
    /// Who makes it.
    maker: &str,
    /// Weight as people say it.
    weight: &str,
    /// Cover in words.
    cover: &str,
    /// Colours in words.
    colours: &str,
    /// List price.
    price: &str,
    /// Drilled, with everything and tax.
    out_the_door: &str,
    /// All lines, largest first; their points add up to `total`.
    lines: &[Reason],
});
impl Pick {
    /// 1 for the best.
    pub fn place(&self) -> usize {
        self.place
    }
    /// Tenths of a point; the sum of the lines.
    pub fn total(&self) -> i64 {
        self.total
    }
    /// True if the customer chose the ball and the rules did not.
    pub fn is_by_customer(&self) -> bool {
        self.by_customer
    }
    /// What put it behind the best, most costly line; none for the best itself.
    pub fn behind(&self) -> Option<&Behind> {
        self.behind.as_ref()
    }
    /// Which one from the shelf to take (pin-out and top weight), in the fitter's words.
    pub fn unit(&self) -> Option<&str> {
        self.unit.as_deref()
    }
    /// Lines in favour, largest first, none of them common, at most `most`.
    pub fn reasons_for(&self, most: usize) -> Vec<&Reason> {
        self.lines
            .iter()
            .filter(|l| !l.common && l.points > 0)
            .take(most)
            .collect()
    }
    /// Lines against, largest first, none of them common, at most `most`.
    pub fn reasons_against(&self, most: usize) -> Vec<&Reason> {
        self.lines
            .iter()
            .filter(|l| !l.common && l.points < 0)
            .take(most)
            .collect()
    }
}

getters!(RuledOut {
    /// `model-id@weight`.
    ball: &str,
    /// The ball's name and weight.
    name: &str,
    /// Every rule that rules it out.
    lines: &[Reason],
});
getters!(NearMiss {
    /// `model-id@weight`.
    ball: &str,
    /// The ball's name and weight.
    name: &str,
    /// Drilled, with everything and tax.
    out_the_door: &str,
    /// How much over the budget.
    over: &str,
});
getters!(Assumed {
    /// The fact's name.
    fact: &str,
    /// What it means, in a line.
    meaning: &str,
    /// Why this value, or why there is none.
    reason: &str,
    /// Source of the assumption.
    source: &str,
});
impl Assumed {
    /// True if a shown reason looked at it: for the choices, the best ball or a number of the spec.
    pub fn matters(&self) -> bool {
        self.matters
    }
    /// What was assumed; `None` if it can't be judged without.
    pub fn value(&self) -> Option<&str> {
        self.value.as_deref()
    }
    /// How sure the source is.
    pub fn strength(&self) -> &'static str {
        self.strength
    }
}
getters!(Bill {
    /// Label and amount of each line, before tax.
    lines: &[(String, String)],
    /// The tax.
    tax: &str,
    /// What the customer pays.
    total: &str,
    /// When it can be fetched.
    ready_when: &str,
    /// Free easing, warranty and the like.
    notes: &[String],
});
impl Bill {
    /// What the customer pays, in cents.
    pub fn total_cents(&self) -> i64 {
        self.total_cents
    }
}
