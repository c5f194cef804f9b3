//! What there is to say against a shop's rules, as people and programs read it.

use serde::Serialize;

use super::Look;
use super::json::{Head, written};
use super::page::{Page, capitalised};
use crate::advice::{RuleChecks, Shop};
use crate::rules::{Doing, FactId, RuleId};
use crate::search::{Clash, Example, Finding, FindingKind, MOST};

#[derive(Serialize)]
struct Document<'a> {
    #[serde(flatten)]
    head: Head<'a>,
    rules: usize,
    files: usize,
    /// How many boxes were looked at for one question at most.
    work_limit: usize,
    kinds: Vec<KindCount>,
    findings: Vec<FindingDocument<'a>>,
}

#[derive(Serialize)]
struct KindCount {
    kind: &'static str,
    found: usize,
    proved_absent: usize,
    not_settled: usize,
}

#[derive(Serialize)]
struct FindingDocument<'a> {
    kind: &'static str,
    note: bool,
    rules: Vec<RuleDocument<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    subject: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    fact: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    word: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    candidate: Option<&'a str>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    beaten_by: Vec<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    knot: Option<String>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    clashes: Vec<ClashDocument<'a>>,
    says: String,
    what_to_do: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    example: Option<ExampleDocument<'a>>,
}

#[derive(Serialize)]
struct RuleDocument<'a> {
    id: &'a str,
    file: &'a str,
}

#[derive(Serialize)]
struct ClashDocument<'a> {
    conditions: &'a [String],
    #[serde(skip_serializing_if = "Option::is_none")]
    hint: Option<&'a str>,
}

#[derive(Serialize)]
struct ExampleDocument<'a> {
    facts: Vec<ValueDocument<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    candidate: Option<String>,
}

#[derive(Serialize)]
struct ValueDocument<'a> {
    fact: &'a str,
    value: String,
    steps: i64,
}

/// The findings as a document.
#[must_use]
pub fn rule_checks_json(shop: &Shop, checks: &RuleChecks) -> String {
    let digest = shop.rules().digest();
    let teller = Teller { shop };
    let findings = checks.findings();
    let count = |kind: FindingKind| {
        let counted = findings.counted(kind);
        KindCount {
            kind: kind.words(),
            found: counted.found,
            proved_absent: counted.absent,
            not_settled: counted.open,
        }
    };
    written(&Document {
        head: Head::new("rules check").digest(&digest),
        rules: shop.rules().rules().len(),
        files: teller.files(),
        work_limit: MOST,
        kinds: FindingKind::ALL.into_iter().map(count).collect(),
        findings: findings
            .findings
            .iter()
            .map(|one| teller.document(one))
            .collect(),
    })
}

/// The findings as text: what ought to be put right, then what may well be meant, then the count.
#[must_use]
pub fn rule_checks_text(shop: &Shop, checks: &RuleChecks, look: &Look) -> String {
    let mut page = Page::new(look);
    let teller = Teller { shop };
    let all = &checks.findings().findings;
    let (notes, faults): (Vec<&Finding>, Vec<&Finding>) =
        all.iter().partition(|finding| finding.is_note());
    page.heading(&format!(
        "{} rules in {} files read without fault",
        shop.rules().rules().len(),
        teller.files()
    ));
    for (title, findings) in [("To put right", &faults), ("It may be meant", &notes)] {
        if findings.is_empty() {
            continue;
        }
        page.heading(title);
        for finding in findings {
            teller.write(&mut page, finding);
        }
    }
    page.heading("What was looked for");
    for kind in FindingKind::ALL {
        let counted = checks.findings().counted(kind);
        let mut text = format!("{} found, {} proved absent", counted.found, counted.absent);
        if counted.open > 0 {
            text = format!(
                "{text}, {} not settled within {MOST} looks each",
                counted.open
            );
        }
        page.row(2, 20, kind.words(), &text);
    }
    if !checks.findings().not_settled.is_empty() {
        page.heading("Not settled");
        for (kind, rules, candidate) in &checks.findings().not_settled {
            let rules: Vec<String> = rules.iter().map(|&rule| teller.named(rule)).collect();
            let asked = candidate.clone().unwrap_or_else(|| rules.join(" and "));
            page.row(2, 20, kind.words(), &asked);
        }
    }
    page.finish()
}

struct Teller<'s> {
    shop: &'s Shop,
}

impl<'s> Teller<'s> {
    fn files(&self) -> usize {
        let mut files: Vec<&str> = self
            .shop
            .rules()
            .rules()
            .iter()
            .map(|rule| rule.file())
            .collect();
        files.sort_unstable();
        files.dedup();
        files.len()
    }

    fn fact(&self, fact: FactId) -> &'s str {
        self.shop.vocabulary().fact(fact).name
    }

    /// The rule with its file.
    fn named(&self, rule: RuleId) -> String {
        let rule = self.shop.rules().rule(rule);
        format!("`{}` ({})", rule.id(), rule.file())
    }

    fn write(&self, page: &mut Page<'_>, finding: &Finding) {
        page.item(
            2,
            &format!("{}: ", capitalised(finding.kind().words())),
            &self.says(finding),
        );
        if let Some(example) = finding.example() {
            let example = self.example(finding, example);
            page.paragraph(4, &format!("For example: {example}."));
        }
        page.paragraph(4, &what_to_do(finding));
    }

    fn says(&self, finding: &Finding) -> String {
        match finding {
            Finding::NeverTrue { rule, clashes } => {
                let clashes: Vec<String> = clashes.iter().map(clash).collect();
                format!(
                    "{} can never hold: {}.",
                    self.named(*rule),
                    clashes.join("; ")
                )
            }
            Finding::AlwaysTrue { rule } => {
                format!("the conditions of {} always hold.", self.named(*rule))
            }
            Finding::Duplicate {
                rules: [one, other],
                ..
            } => format!(
                "{} and {} hold for the same and do the same.",
                self.named(*one),
                self.named(*other)
            ),
            Finding::Contained { rule, within, .. } => {
                let (one, other) = (self.named(*rule), self.named(*within));
                match self.shop.rules().doing(*rule) {
                    Doing::RuleOut => format!("wherever {one} rules out, {other} does as well."),
                    _ => format!("wherever {one} holds, the stronger {other} holds as well."),
                }
            }
            Finding::Contradictory { rule, against, .. } => format!(
                "{} rules out all that {} favours.",
                self.named(*against),
                self.named(*rule)
            ),
            Finding::TwoStarts {
                rules: [one, other],
                ..
            } => format!(
                "{} and {} can both start {}.",
                self.named(*one),
                self.named(*other),
                self.shop.rules().rule(*one).subject()
            ),
            Finding::KnotOutOfReach { rule, fact, knot } => format!(
                "the curve of {} has a knot at {}, and {} never comes near it.",
                self.named(*rule),
                self.shop.vocabulary().print(*fact, *knot),
                self.fact(*fact)
            ),
            Finding::MayBeUnknown { rule, fact, .. } => format!(
                "{} prints {}, which may not be known where it holds.",
                self.named(*rule),
                self.fact(*fact)
            ),
            Finding::UnusedFact { fact, .. } => format!("nothing looks at {}.", self.fact(*fact)),
            Finding::UnusedWord { word, .. } => {
                format!("the glossary explains \"{word}\", which no text uses.")
            }
            Finding::Unreachable {
                name,
                subject,
                beaten_by,
                ..
            } => match beaten_by.as_slice() {
                [] => format!("{name} is never the first {subject}: it is always ruled out."),
                ahead => format!(
                    "{name} is never the first {subject}, whoever asks: {} is ahead of it wherever it isn't ruled out.",
                    ahead.join(" or ")
                ),
            },
            Finding::Wording { rule, says } => match rule {
                Some(rule) => format!("{}: {says}", self.named(*rule)),
                None => says.clone(),
            },
            Finding::NoneLeft { subject, rules, .. } => {
                let rules: Vec<String> = rules.iter().map(|&rule| self.named(rule)).collect();
                format!(
                    "no {subject} may be left: {} rules all out.",
                    rules.join(" and ")
                )
            }
        }
    }

    /// Facts with values, then the candidate.
    fn example(&self, finding: &Finding, example: &Example) -> String {
        let vocabulary = self.shop.vocabulary();
        let one = |&(fact, value): &(FactId, i64)| {
            format!(
                "{} {}",
                vocabulary.fact(fact).name,
                vocabulary.print(fact, value)
            )
        };
        let mut parts: Vec<String> = example.values.iter().map(one).collect();
        parts.extend(self.candidate(finding, example));
        if parts.is_empty() {
            return "whoever asks".to_owned();
        }
        parts.join(", ")
    }

    fn candidate(&self, finding: &Finding, example: &Example) -> Option<String> {
        let rule = self.shop.rules().rule(*finding.rules().first()?);
        let name = self.shop.candidate_name(rule.subject(), example.candidate?);
        Some(format!("{} {name}", rule.subject()))
    }

    fn document<'f>(&self, finding: &'f Finding) -> FindingDocument<'f>
    where
        's: 'f,
    {
        let rule = |&id: &RuleId| {
            let rule = self.shop.rules().rule(id);
            RuleDocument {
                id: rule.id(),
                file: rule.file(),
            }
        };
        let value = |&(fact, steps): &(FactId, i64)| ValueDocument {
            fact: self.fact(fact),
            value: self.shop.vocabulary().print(fact, steps),
            steps,
        };
        let mut document = FindingDocument {
            kind: finding.kind().words(),
            note: finding.is_note(),
            rules: finding.rules().iter().map(rule).collect(),
            subject: None,
            fact: None,
            word: None,
            candidate: None,
            beaten_by: Vec::new(),
            knot: None,
            clashes: Vec::new(),
            says: self.says(finding),
            what_to_do: what_to_do(finding),
            example: finding.example().map(|example| ExampleDocument {
                facts: example.values.iter().map(value).collect(),
                candidate: self.candidate(finding, example),
            }),
        };
        match finding {
            Finding::NeverTrue { clashes, .. } => {
                document.clashes = clashes.iter().map(clash_document).collect();
            }
            Finding::KnotOutOfReach { fact, knot, .. } => {
                document.fact = Some(self.fact(*fact));
                document.knot = Some(self.shop.vocabulary().print(*fact, *knot));
            }
            Finding::MayBeUnknown { fact, .. } | Finding::UnusedFact { fact, .. } => {
                document.fact = Some(self.fact(*fact));
            }
            Finding::UnusedWord { word, .. } => document.word = Some(word),
            Finding::Unreachable {
                subject,
                name,
                beaten_by,
                ..
            } => {
                document.beaten_by = beaten_by.iter().map(String::as_str).collect();
                document.subject = Some(subject);
                document.candidate = Some(name);
            }
            Finding::NoneLeft { subject, .. } => document.subject = Some(subject),
            _ => {}
        }
        document
    }
}

fn clash(clash: &Clash) -> String {
    let conditions = clash.conditions.join(" against ");
    match &clash.hint {
        Some(hint) => format!("{conditions} ({hint})"),
        None => conditions,
    }
}

fn clash_document(clash: &Clash) -> ClashDocument<'_> {
    ClashDocument {
        conditions: &clash.conditions,
        hint: clash.hint.as_deref(),
    }
}

fn what_to_do(finding: &Finding) -> String {
    match finding {
        Finding::NeverTrue { .. } => "Change one of these conditions, or leave the rule out.",
        Finding::AlwaysTrue { .. } => "Leave `when` out, or narrow it to what is meant.",
        Finding::Duplicate { .. } => "Leave one of the two out, or say what sets them apart.",
        Finding::Contained { .. } => {
            "The first of the two adds nothing. Leave it out, or let the other hold in fewer cases."
        }
        Finding::Contradictory { .. } => {
            "One of the two is not meant so. Narrow the one that rules out, or leave the points out."
        }
        Finding::TwoStarts { .. } => {
            "The number would stay blank. Narrow one start, let one dispute the other, or add in place of starting."
        }
        Finding::KnotOutOfReach { .. } => "Leave the knot out, or check which number was meant.",
        Finding::MayBeUnknown { .. } => {
            "\"not known\" would be printed. Ask in `when` that it is known, or leave it out of the text."
        }
        Finding::UnusedFact { may_be_meant: true, .. } => {
            "Leave it so, or write a rule that looks at it."
        }
        Finding::UnusedWord { may_be_meant: true, .. } => {
            "Leave it so: the rules that used the word are gone, and it does no harm."
        }
        Finding::UnusedFact { .. } => "Write a rule that looks at it, or don't ask for it.",
        Finding::UnusedWord { .. } => "Leave the word out of the glossary, or use it.",
        Finding::Unreachable { .. } => {
            "Look whether the shelf needs it, or which rule keeps it back."
        }
        Finding::Wording { .. } => "Say it in plainer words, or explain the word in the glossary.",
        Finding::NoneLeft { .. } => {
            "Leave it so if there is really nothing to offer then; else narrow the rule."
        }
    }
    .to_owned()
}
