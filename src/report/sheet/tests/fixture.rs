//! Jobs to draw: a real consultation each, with a drilling made up beside it. All numbers invented.

use std::f64::consts::TAU;

use glam::DVec3;

use crate::advice::{
    Advice, CoreChange, Drilling, LayoutStep, PlannedHole, PlannedLayout, PlannedWeb, Predicted,
    Refusal, Shop,
};
use crate::bowler::Bowler;
use crate::document::{Document, Format};
use crate::standards::{Body, Finding, Verdict};

const BALL: f64 = 27.0 / TAU;

/// A fingertip grip, everything measured.
pub(super) const FINGERTIP: &str = "
name: Ada Quill
hand: right
intent: hook
curve: usual
age: 31
hold_test: { passed: 15 lb, failed: 16 lb }
body_weight: 187 lb
aches: [wrist]
thumb: in
measured:
  thumb: { cold: 50/64, flexibility: normal, lies: halfway, length: 2 1/2 }
  middle: { cold: 47/64 }
  ring: { cold: 48/64 }
  spans:
    - { grip: fingertip, finger: middle, value: 4 1/2, kind: full, along: arc }
    - { grip: fingertip, finger: ring, value: 4 9/16, kind: full, along: arc }
  finger_joints: normal
settled: { grip: fingertip }
";

pub(super) fn advice(profile: &str) -> Advice {
    let document = Document::parse("bowler", profile.as_bytes(), Format::Yaml).unwrap();
    Shop::demo()
        .unwrap()
        .advise(&Bowler::read(&document).unwrap())
        .unwrap()
}

/// A fingertip grip with a slug and inserts, layout, balance, core and findings.
pub(super) fn fingertip() -> Advice {
    let mut advice = advice(FINGERTIP);
    advice.drilling = Some(drilling(vec![
        hole(
            "thumb",
            (0.0, -2.83),
            (0.78125, Some(1.3125)),
            (-0.125, 0.0),
            2.75,
        ),
        hole(
            "middle",
            (-0.745, 2.69),
            (0.734375, Some(0.96875)),
            (-0.25, -0.375),
            1.125,
        ),
        hole(
            "ring",
            (0.745, 2.74),
            (0.75, Some(0.96875)),
            (-0.25, 0.375),
            1.125,
        ),
    ]));
    advice
}

/// A left hand's conventional grip with an oval thumb.
pub(super) fn oval_left() -> Advice {
    let profile = FINGERTIP
        .replace("hand: right", "hand: left")
        .replace("grip: fingertip", "grip: conventional")
        .replace("4 1/2", "3 1/2")
        .replace("4 9/16", "3 9/16")
        .replace(
            "finger_joints: normal",
            "finger_joints: normal\n  finger_reach: 1 7/8",
        );
    let mut advice = advice(&profile);
    let mut thumb = hole("thumb", (0.0, -2.17), (0.78125, None), (0.0, 0.0625), 2.5);
    thumb.oval = Some((0.90625, 0.78125, 30.0));
    let mut drilling = drilling(vec![
        thumb,
        hole(
            "middle",
            (-0.66, 2.05),
            (0.734375, None),
            (0.1875, -0.3125),
            2.125,
        ),
        hole("ring", (0.67, 2.09), (0.75, None), (0.1875, 0.3125), 2.125),
    ]);
    drilling.left_hand = true;
    advice.drilling = Some(drilling);
    advice
}

/// Two hands, no thumb hole, and a ball that curves away from the usual side.
pub(super) fn no_thumb() -> Advice {
    let profile = "
name: Rowan Teal
hand: right
delivery: two hands
thumb: out
intent: hook
curve: away
hold_test: { passed: 15 lb, failed: 16 lb }
measured:
  middle: { cold: 27/32 }
  ring: { cold: 26/32 }
  finger_joints: normal
  finger_reach: 1 1/4
settled: { grip: fingertip }
";
    let mut advice = advice(profile);
    let mut drilling = drilling(vec![
        hole(
            "middle",
            (-0.69, 2.1),
            (0.734375, Some(0.96875)),
            (-0.375, -0.375),
            1.125,
        ),
        hole(
            "ring",
            (0.69, 2.1),
            (0.75, Some(0.96875)),
            (-0.375, 0.375),
            1.125,
        ),
    ]);
    for step in drilling
        .layout
        .iter_mut()
        .flat_map(|layout| &mut layout.steps)
    {
        for point in &mut step.line {
            point.0 = -point.0;
        }
    }
    advice.drilling = Some(drilling);
    advice
}

/// A bridge too thin for the laterals: not to be drilled.
pub(super) fn refused() -> Advice {
    let mut advice = fingertip();
    let drilling = advice.drilling.as_mut().unwrap();
    drilling.webs[0].least = 0.071;
    drilling.refusals = vec![Refusal {
        what:
            "The web between middle and ring is 5/64 in at 1 1/8 in deep; at least 1/8 in is wanted"
                .to_owned(),
        mends: vec![
            "bridge 11/32 in in place of 1/4 in".to_owned(),
            "middle lateral 3/8 L in place of 1/8 L".to_owned(),
            "depth 13/16 in in place of 1 1/8 in".to_owned(),
        ],
    }];
    advice
}

/// A very large hand.
pub(super) fn large() -> Advice {
    let mut advice = fingertip();
    advice.drilling = Some(drilling(vec![
        hole(
            "thumb",
            (0.05, -3.55),
            (1.15, Some(1.5)),
            (-0.375, 0.25),
            3.5,
        ),
        hole(
            "middle",
            (-1.02, 3.4),
            (0.95, Some(1.1875)),
            (-0.5, -0.5),
            1.5,
        ),
        hole("ring", (1.02, 3.3), (0.98, Some(1.1875)), (-0.5, 0.5), 1.5),
    ]));
    advice
}

pub(super) fn hole(
    name: &'static str,
    place: (f64, f64),
    (bore, outside): (f64, Option<f64>),
    (forward, lateral): (f64, f64),
    depth: f64,
) -> PlannedHole {
    let (over, up) = (place.0 / BALL, place.1 / BALL);
    let normal = DVec3::new(up.cos() * over.sin(), up.sin(), up.cos() * over.cos());
    let toward = if name == "thumb" {
        DVec3::Y
    } else {
        DVec3::NEG_Y
    };
    let ahead = toward.reject_from(normal).normalize();
    let right = DVec3::X.reject_from(normal).reject_from(ahead).normalize();
    let sin = forward.hypot(lateral) / BALL;
    let axis = (ahead * forward + right * lateral) / BALL - normal * (1.0 - sin * sin).sqrt();
    PlannedHole {
        wall: outside.map(|outside| (outside - bore) / 2.0),
        name,
        bore,
        outside,
        oval: None,
        depth,
        depth_known: true,
        place,
        mouth: (normal * BALL).to_array(),
        axis: axis.to_array(),
        forward,
        lateral,
        parallel_lateral: (name != "thumb").then_some(lateral / 3.0),
        jig: vec![
            "table 0.13 in away from the fingers".to_owned(),
            "0.38 in to the side".to_owned(),
            format!("depth stop {depth:.3} in"),
        ],
    }
}

fn drilling(holes: Vec<PlannedHole>) -> Drilling {
    let pap = (5.0, 0.5);
    let pin = (2.1, 2.6);
    let step = |text: &str, line: Vec<(f64, f64)>| LayoutStep {
        text: text.to_owned(),
        line,
    };
    let finding = |id: &str, verdict, about: &str, says: &str, distance: Option<&str>| Finding {
        id: id.to_owned(),
        verdict,
        about: about.to_owned(),
        says: says.to_owned(),
        clause: "USBC manual, drilling section, 2021; published, weak".to_owned(),
        distance: distance.map(str::to_owned),
        row: None,
        strength: None,
        close: false,
    };
    Drilling {
        circumference: 27.0,
        body: Body::Usbc,
        left_hand: false,
        holes,
        webs: vec![PlannedWeb {
            between: "middle and ring".to_owned(),
            least: 0.203,
            at_depth: 1.125,
            breaks_at: Some(2.2656),
            limit: 0.125,
        }],
        refusals: Vec::new(),
        layout: Some(PlannedLayout {
            kind: "pin from the axis point".to_owned(),
            points: vec![("pin", pin), ("PAP", pap)],
            stated: vec![
                (
                    "Angles".to_owned(),
                    "55 degrees, 3 3/8 in, 45 degrees".to_owned(),
                ),
                (
                    "Pin from grip".to_owned(),
                    "3 3/8 in, 2 1/8 in over".to_owned(),
                ),
            ],
            steps: vec![
                step(
                    "Mark the PAP: 5 in over along the midline, then 1/2 in up.",
                    vec![(0.0, 0.0), (5.0, 0.0), pap],
                ),
                step("Draw the line from the PAP to the pin.", vec![pap, pin]),
                step(
                    "Draw the centreline 2 1/8 in beside the pin.",
                    vec![(0.0, -4.0), (0.0, 4.0)],
                ),
                step(
                    "Draw the midline square to it.",
                    vec![(-4.0, 0.0), (6.0, 0.0)],
                ),
                step("Mark the grip centre where they cross.", vec![(0.0, 0.0)]),
                step(
                    "Mark the heavy spot, 3 1/4 in from the pin.",
                    vec![(0.8, -0.2)],
                ),
            ],
            track: vec!["The track stays 7/8 in clear of the thumb hole.".to_owned()],
        }),
        balance: Some(Predicted {
            unit: "pin-out 3 1/4 in, top weight 2.5 oz".to_owned(),
            because: vec!["It keeps all three weights farthest from their limits.".to_owned()],
            out: 6.62,
            back: 3.11,
            pounds: 14.83,
            offset: 0.012,
            top: 0.92,
            side: 0.31,
            finger: -0.22,
            margin: Some(2.08),
            settings: vec![
                ("Scale arm".to_owned(), "4.3 in, own choice".to_owned()),
                (
                    "Densities".to_owned(),
                    "slug 1.2, inserts 1.15, ball from its weight".to_owned(),
                ),
            ],
        }),
        core: Some(CoreChange {
            before: (2.5, 0.048, 0.0),
            after: (2.506, 0.044, 0.009),
            axes: [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]],
            moved: Some(0.3),
        }),
        findings: vec![
            finding(
                "static-side",
                Verdict::Pass,
                "side weight",
                "Side weight 0.31 oz of 3 oz.",
                Some("2.69 oz inside"),
            ),
            finding(
                "static-top",
                Verdict::Pass,
                "top weight",
                "Top weight 0.92 oz of 3 oz.",
                Some("2.08 oz inside"),
            ),
            finding(
                "hole-size",
                Verdict::Pass,
                "hole sizes",
                "No hole is wider than 1 9/16 in.",
                Some("1/4 in inside"),
            ),
            finding(
                "marks",
                Verdict::Ask,
                "serial number",
                "Ask whether the serial number can still be read.",
                None,
            ),
        ],
        open: vec!["Measure the PAP after ten to twenty games; it is blank.".to_owned()],
    }
}
