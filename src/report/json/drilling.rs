//! The computed ball in the answer document. Inches and degrees are rounded once, to four decimals; ounces and pounds to three.

use serde::Serialize;

use crate::advice::{
    CoreChange, Drilling, LayoutStep, PlannedHole, PlannedLayout, PlannedWeb, Predicted, Refusal,
};
use crate::standards::{Finding, Verdict};

#[derive(Serialize)]
pub(super) struct DrillingDoc<'a> {
    circumference: f64,
    left_hand: bool,
    refusals: Vec<RefusalDoc<'a>>,
    holes: Vec<HoleDoc<'a>>,
    webs: Vec<WebDoc<'a>>,
    layout: Option<LayoutDoc<'a>>,
    balance: Option<BalanceDoc<'a>>,
    core: Option<CoreDoc>,
    body: &'static str,
    findings: Vec<FindingDoc<'a>>,
    open: &'a [String],
}

#[derive(Serialize)]
struct RefusalDoc<'a> {
    what: &'a str,
    mends: &'a [String],
}

#[derive(Serialize)]
struct HoleDoc<'a> {
    name: &'a str,
    bore: f64,
    outside: Option<f64>,
    wall: Option<f64>,
    oval: Option<OvalDoc>,
    depth: Option<f64>,
    over: f64,
    up: f64,
    mouth: [f64; 3],
    axis: [f64; 3],
    forward: f64,
    lateral: f64,
    parallel_lateral: Option<f64>,
    jig: &'a [String],
}

#[derive(Serialize)]
struct OvalDoc {
    wide: f64,
    narrow: f64,
    angle: f64,
}

#[derive(Serialize)]
struct WebDoc<'a> {
    between: &'a str,
    least: f64,
    at_depth: f64,
    breaks_at: Option<f64>,
    limit: Option<f64>,
}

#[derive(Serialize)]
struct LayoutDoc<'a> {
    kind: &'a str,
    points: Vec<PointDoc<'a>>,
    stated: Vec<LabelledDoc<'a>>,
    steps: Vec<StepDoc<'a>>,
    track: &'a [String],
}

#[derive(Serialize)]
struct PointDoc<'a> {
    name: &'a str,
    over: f64,
    up: f64,
}

#[derive(Serialize)]
struct StepDoc<'a> {
    text: &'a str,
    line: Vec<[f64; 2]>,
}

#[derive(Serialize)]
pub(super) struct LabelledDoc<'a> {
    label: &'a str,
    value: &'a str,
}

#[derive(Serialize)]
struct BalanceDoc<'a> {
    unit: &'a str,
    because: &'a [String],
    ounces_out: f64,
    ounces_back: f64,
    pounds: f64,
    offset: f64,
    top: f64,
    side: f64,
    finger: f64,
    margin: Option<f64>,
    settings: Vec<LabelledDoc<'a>>,
}

#[derive(Serialize)]
struct CoreDoc {
    before: TurningDoc,
    after: TurningDoc,
    axes: [[f64; 3]; 3],
    moved: Option<f64>,
}

#[derive(Serialize)]
struct TurningDoc {
    rg: f64,
    differential: f64,
    intermediate: f64,
}

#[derive(Serialize)]
pub(super) struct FindingDoc<'a> {
    id: &'a str,
    verdict: &'static str,
    about: &'a str,
    says: &'a str,
    clause: &'a str,
    distance: Option<&'a str>,
}

impl<'a> DrillingDoc<'a> {
    pub(super) fn new(drilling: &'a Drilling) -> DrillingDoc<'a> {
        DrillingDoc {
            circumference: fine(drilling.circumference()),
            left_hand: drilling.left_hand(),
            refusals: drilling.refusals().iter().map(RefusalDoc::new).collect(),
            holes: drilling.holes().iter().map(HoleDoc::new).collect(),
            webs: drilling.webs().iter().map(WebDoc::new).collect(),
            layout: drilling.layout().as_ref().map(LayoutDoc::new),
            balance: drilling.balance().as_ref().map(BalanceDoc::new),
            core: drilling.core().as_ref().map(CoreDoc::new),
            body: drilling.body().word(),
            findings: drilling.findings().iter().map(FindingDoc::new).collect(),
            open: drilling.open(),
        }
    }
}

impl<'a> RefusalDoc<'a> {
    fn new(refusal: &'a Refusal) -> Self {
        RefusalDoc {
            what: refusal.what(),
            mends: refusal.mends(),
        }
    }
}

impl<'a> HoleDoc<'a> {
    fn new(hole: &'a PlannedHole) -> Self {
        let (over, up) = hole.place();
        HoleDoc {
            name: hole.name(),
            bore: fine(hole.bore()),
            outside: hole.outside().map(fine),
            wall: hole.wall().map(fine),
            oval: hole.oval().map(|(wide, narrow, angle)| OvalDoc {
                wide: fine(wide),
                narrow: fine(narrow),
                angle: fine(angle),
            }),
            depth: hole.depth_known().then(|| fine(hole.depth())),
            over: fine(over),
            up: fine(up),
            mouth: hole.mouth().map(fine),
            axis: hole.axis().map(finest),
            forward: fine(hole.forward()),
            lateral: fine(hole.lateral()),
            parallel_lateral: hole.parallel_lateral().map(fine),
            jig: hole.jig(),
        }
    }
}

impl<'a> WebDoc<'a> {
    fn new(web: &'a PlannedWeb) -> Self {
        WebDoc {
            between: web.between(),
            least: fine(web.least()),
            at_depth: fine(web.at_depth()),
            breaks_at: web.breaks_at().map(fine),
            limit: Some(web.limit())
                .filter(|limit| limit.is_finite())
                .map(fine),
        }
    }
}

impl<'a> LayoutDoc<'a> {
    fn new(layout: &'a PlannedLayout) -> Self {
        let point = |(name, (over, up)): &(&'static str, (f64, f64))| PointDoc {
            name,
            over: fine(*over),
            up: fine(*up),
        };
        LayoutDoc {
            kind: layout.kind(),
            points: layout.points().iter().map(point).collect(),
            stated: labelled(layout.stated()),
            steps: layout.steps().iter().map(StepDoc::new).collect(),
            track: layout.track(),
        }
    }
}

impl<'a> StepDoc<'a> {
    fn new(step: &'a LayoutStep) -> Self {
        let point = |&(over, up): &(f64, f64)| [fine(over), fine(up)];
        StepDoc {
            text: step.text(),
            line: step.line().iter().map(point).collect(),
        }
    }
}

impl<'a> BalanceDoc<'a> {
    fn new(balance: &'a Predicted) -> Self {
        BalanceDoc {
            unit: balance.unit(),
            because: balance.because(),
            ounces_out: coarse(balance.out()),
            ounces_back: coarse(balance.back()),
            pounds: coarse(balance.pounds()),
            offset: fine(balance.offset()),
            top: coarse(balance.top()),
            side: coarse(balance.side()),
            finger: coarse(balance.finger()),
            margin: balance.margin().map(coarse),
            settings: labelled(balance.settings()),
        }
    }
}

impl CoreDoc {
    fn new(core: &CoreChange) -> Self {
        let turning = |(rg, differential, intermediate)| TurningDoc {
            rg: fine(rg),
            differential: fine(differential),
            intermediate: fine(intermediate),
        };
        CoreDoc {
            before: turning(core.before()),
            after: turning(core.after()),
            axes: core.axes().map(|axis| axis.map(finest)),
            moved: core.moved().map(fine),
        }
    }
}

impl<'a> FindingDoc<'a> {
    pub(super) fn new(finding: &'a Finding) -> Self {
        FindingDoc {
            id: finding.id(),
            verdict: match finding.verdict() {
                Verdict::Pass => "pass",
                Verdict::Fail => "fail",
                Verdict::Ask => "ask",
            },
            about: finding.about(),
            says: finding.says(),
            clause: finding.clause(),
            distance: finding.distance(),
        }
    }
}

fn labelled(pairs: &[(String, String)]) -> Vec<LabelledDoc<'_>> {
    pairs
        .iter()
        .map(|(label, value)| LabelledDoc { label, value })
        .collect()
}

fn rounded(value: f64, steps: f64) -> f64 {
    // Adding zero keeps a rounded -0 from being printed.
    libm::round(value * steps) / steps + 0.0
}

fn fine(value: f64) -> f64 {
    rounded(value, 1e4)
}

fn finest(value: f64) -> f64 {
    rounded(value, 1e6)
}

fn coarse(value: f64) -> f64 {
    rounded(value, 1e3)
}
