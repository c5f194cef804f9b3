//! The answer document, contract 1. Within the contract fields are only added; their order is fixed.

mod contrast;
mod drilling;
mod head;
mod offers;
mod refit;
mod roll;
mod spec;
mod upgrade;
mod whatif;
mod why_not;

use serde::Serialize;

use crate::advice::{Advice, Assumed, Bill, Caution, Pick, Reason, RuledOut, Settled};
use crate::rules::{Audience, Severity};
use drilling::DrillingDoc;
use offers::OffersDoc;
use spec::SpecDoc;
use whatif::SureDoc;

pub use contrast::contrast_json;
pub(crate) use head::Head;
pub use offers::offers_json;
pub use refit::refit_json;
pub use roll::roll_json;
pub use upgrade::upgrade_json;
pub use whatif::what_if_json;
pub use why_not::why_not_json;

/// The number of the contract that answer documents follow.
pub const CONTRACT: u32 = 1;

/// Writes the advice as an answer document, ending in a line break.
///
/// Points are whole tenths; `lines[].points` add up to the `total` beside them, and to the `value` of a number, always.
/// The same advice gives the same bytes.
#[must_use]
pub fn json(advice: &Advice, audience: Audience) -> String {
    written(&Answer::new(advice, audience))
}

/// A document as text. Strings, whole numbers and lists always have a JSON form.
pub(crate) fn written(document: &impl Serialize) -> String {
    let mut text = serde_json::to_string_pretty(document).unwrap_or_default();
    text.push('\n');
    text
}

/// A reader's name, as the command line has it.
fn audience_name(audience: Audience) -> &'static str {
    match audience {
        Audience::Newcomer => "customer",
        Audience::League => "league",
        Audience::Fitter => "fitter",
    }
}

#[derive(Serialize)]
struct Answer<'a> {
    #[serde(flatten)]
    head: Head<'a>,
    cautions: Vec<CautionDoc<'a>>,
    settled: Vec<SettledDoc<'a>>,
    picks: Vec<PickDoc<'a>>,
    ruled_out: Vec<RuledOutDoc<'a>>,
    near_misses: Vec<NearMissDoc<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    how_sure: Option<SureDoc<'a>>,
    assumptions: Vec<AssumedDoc<'a>>,
    questions: &'a [String],
    quote: Option<QuoteDoc<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    offers: Option<OffersDoc<'a>>,
    spec: SpecDoc<'a>,
    drilling: Option<DrillingDoc<'a>>,
}

#[derive(Serialize)]
struct LineDoc<'a> {
    rule: &'a str,
    points: i64,
    shown: &'a str,
    reason: &'a str,
    source: &'a str,
    strength: &'a str,
    common: bool,
    role: &'a str,
    file: &'a str,
    facts: Vec<FactDoc<'a>>,
}

#[derive(Serialize)]
struct FactDoc<'a> {
    fact: &'a str,
    value: &'a str,
}

#[derive(Serialize)]
struct CautionDoc<'a> {
    severity: &'static str,
    about: &'a str,
    action: Option<&'a str>,
    reason: &'a str,
    rule: &'a str,
    source: &'a str,
    strength: &'a str,
}

/// The next larger choice, and what speaks most against it.
#[derive(Serialize)]
struct NotMoreDoc<'a> {
    value: &'a str,
    line: LineDoc<'a>,
}

#[derive(Serialize)]
struct SettledDoc<'a> {
    stage: &'a str,
    value: &'a str,
    by_fitter: bool,
    runner_up: Option<&'a str>,
    not_more: Option<NotMoreDoc<'a>>,
    total: i64,
    lines: Vec<LineDoc<'a>>,
}

#[derive(Serialize)]
struct PickDoc<'a> {
    ball: &'a str,
    name: &'a str,
    maker: &'a str,
    weight: &'a str,
    cover: &'a str,
    colours: &'a str,
    price: &'a str,
    out_the_door: &'a str,
    place: usize,
    by_customer: bool,
    unit: Option<&'a str>,
    total: i64,
    lines: Vec<LineDoc<'a>>,
    behind: Option<BehindDoc<'a>>,
}

#[derive(Serialize)]
struct BehindDoc<'a> {
    points: i64,
    lacks: bool,
    rule: &'a str,
    reason: &'a str,
}

#[derive(Serialize)]
struct RuledOutDoc<'a> {
    ball: &'a str,
    name: &'a str,
    rule: &'a str,
    reason: &'a str,
    lines: Vec<LineDoc<'a>>,
}

#[derive(Serialize)]
struct NearMissDoc<'a> {
    ball: &'a str,
    name: &'a str,
    out_the_door: &'a str,
    over: &'a str,
}

#[derive(Serialize)]
struct AssumedDoc<'a> {
    fact: &'a str,
    meaning: &'a str,
    value: Option<&'a str>,
    reason: &'a str,
    source: &'a str,
    strength: &'a str,
    matters: bool,
}

#[derive(Serialize)]
struct QuoteDoc<'a> {
    lines: Vec<AmountDoc<'a>>,
    tax: &'a str,
    total: &'a str,
    total_cents: i64,
    ready_when: &'a str,
    notes: &'a [String],
}

#[derive(Serialize)]
struct AmountDoc<'a> {
    label: &'a str,
    amount: &'a str,
}

impl<'a> Answer<'a> {
    fn new(advice: &'a Advice, audience: Audience) -> Answer<'a> {
        let own = advice.picks().iter().any(Pick::is_by_customer);
        let question = if own || advice.offers().is_some() {
            "fit"
        } else {
            "advise"
        };
        Answer {
            head: Head::new(question)
                .digest(advice.digest())
                .about(advice.bowler(), audience_name(audience)),
            cautions: cautions(advice.cautions(), audience),
            settled: advice
                .settled()
                .iter()
                .map(|s| SettledDoc::new(s, audience))
                .collect(),
            picks: advice
                .picks()
                .iter()
                .map(|p| PickDoc::new(p, audience))
                .collect(),
            ruled_out: advice
                .ruled_out()
                .iter()
                .map(|r| RuledOutDoc::new(r, audience))
                .collect(),
            near_misses: advice
                .near_misses()
                .iter()
                .map(|miss| NearMissDoc {
                    ball: miss.ball(),
                    name: miss.name(),
                    out_the_door: miss.out_the_door(),
                    over: miss.over(),
                })
                .collect(),
            how_sure: advice.how_sure().map(SureDoc::new),
            assumptions: advice.assumptions().iter().map(AssumedDoc::new).collect(),
            questions: advice.questions(),
            quote: advice.bill().map(QuoteDoc::new),
            offers: advice.offers().map(OffersDoc::new),
            spec: SpecDoc::new(advice.spec(), advice.drill_today(), audience),
            drilling: advice.drilling().map(DrillingDoc::new),
        }
    }
}

fn lines(lines: &[Reason], audience: Audience) -> Vec<LineDoc<'_>> {
    let line = |line| LineDoc::new(line, audience);
    lines.iter().map(line).collect()
}

fn cautions(cautions: &[Caution], audience: Audience) -> Vec<CautionDoc<'_>> {
    let caution = |caution| CautionDoc::new(caution, audience);
    cautions.iter().map(caution).collect()
}

impl<'a> LineDoc<'a> {
    fn new(line: &'a Reason, audience: Audience) -> LineDoc<'a> {
        LineDoc {
            rule: line.rule(),
            points: line.points(),
            shown: line.shown(),
            reason: line.text(audience),
            source: line.source(),
            strength: line.strength(),
            common: line.is_common(),
            role: line.role(),
            file: line.file(),
            facts: line
                .facts()
                .iter()
                .map(|(fact, value)| FactDoc { fact, value })
                .collect(),
        }
    }
}

impl<'a> CautionDoc<'a> {
    fn new(caution: &'a Caution, audience: Audience) -> CautionDoc<'a> {
        CautionDoc {
            severity: match caution.severity() {
                Severity::Serious => "serious",
                Severity::Mild => "mild",
            },
            about: caution.about(),
            action: caution.action(audience),
            reason: caution.reason().text(audience),
            rule: caution.reason().rule(),
            source: caution.reason().source(),
            strength: caution.reason().strength(),
        }
    }
}

impl<'a> SettledDoc<'a> {
    fn new(settled: &'a Settled, audience: Audience) -> SettledDoc<'a> {
        SettledDoc {
            stage: settled.stage(),
            value: settled.value(),
            by_fitter: settled.is_by_fitter(),
            runner_up: settled.runner_up(),
            not_more: settled.not_more().map(|(value, line)| NotMoreDoc {
                value,
                line: LineDoc::new(line, audience),
            }),
            total: settled.total(),
            lines: lines(settled.lines(), audience),
        }
    }
}

impl<'a> PickDoc<'a> {
    fn new(pick: &'a Pick, audience: Audience) -> PickDoc<'a> {
        PickDoc {
            ball: pick.ball(),
            name: pick.name(),
            maker: pick.maker(),
            weight: pick.weight(),
            cover: pick.cover(),
            colours: pick.colours(),
            price: pick.price(),
            out_the_door: pick.out_the_door(),
            place: pick.place(),
            by_customer: pick.is_by_customer(),
            unit: pick.unit(),
            total: pick.total(),
            lines: lines(pick.lines(), audience),
            behind: pick.behind().map(|behind| BehindDoc {
                points: behind.points,
                lacks: behind.lacks,
                rule: behind.line.rule(),
                reason: behind.line.text(audience),
            }),
        }
    }
}

impl<'a> RuledOutDoc<'a> {
    fn new(out: &'a RuledOut, audience: Audience) -> RuledOutDoc<'a> {
        let first = out.lines().first();
        RuledOutDoc {
            ball: out.ball(),
            name: out.name(),
            rule: first.map_or("", Reason::rule),
            reason: first.map_or("", |line| line.text(audience)),
            lines: lines(out.lines(), audience),
        }
    }
}

impl<'a> AssumedDoc<'a> {
    fn new(assumed: &'a Assumed) -> AssumedDoc<'a> {
        AssumedDoc {
            fact: assumed.fact(),
            meaning: assumed.meaning(),
            value: assumed.value(),
            reason: assumed.reason(),
            source: assumed.source(),
            strength: assumed.strength(),
            matters: assumed.matters(),
        }
    }
}

impl<'a> QuoteDoc<'a> {
    fn new(bill: &'a Bill) -> QuoteDoc<'a> {
        let amount = |(label, amount): &'a (String, String)| AmountDoc { label, amount };
        QuoteDoc {
            lines: bill.lines().iter().map(amount).collect(),
            tax: bill.tax(),
            total: bill.total(),
            total_cents: bill.total_cents(),
            ready_when: bill.ready_when(),
            notes: bill.notes(),
        }
    }
}
