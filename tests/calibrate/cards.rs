//! Cards of made-up balls, with what a known scale shows of them.

use spanwright::bowler::Bowler;
use spanwright::document::{Document, Format};
use spanwright::fitting::Sphere;
use spanwright::fitting::balance::{Ball, Change, Model, Scale, Statics, finish};
use spanwright::fitting::grip::{Placed, Reference};
use spanwright::fitting::layout::Point;
use spanwright::fitting::solid::{drilled, sleeve};

/// Derived: the rules' own density of slugs and inserts, in g/cm³ (rules/bench.density_back.yaml).
const BACK: f64 = 1.2;

/// A grip to the right hand's side: thumb pitch, finger pitches, bores, parts. OUT and IN are L and R for a right hand.
pub struct Grip {
    lateral: [&'static str; 3],
    bores: [&'static str; 3],
    depths: [&'static str; 3],
    parts: &'static str,
    spans: [&'static str; 2],
    /// Pounds, top weight, and where the heavy spot lies: over to the right, up.
    whole: (f64, f64, f64, f64),
}

pub const GRIPS: [Grip; 5] = [
    Grip {
        lateral: ["1/2 OUT", "1/4 OUT", "1/4 OUT"],
        bores: ["1 1/32", "25/32", "25/32"],
        depths: ["2 3/8", "1 1/4", "1 1/2"],
        parts: "slug: 1 1/4, insert: 31/32",
        spans: ["4 3/8", "4 7/16"],
        whole: (15.19, 3.1, 0.9, 0.4),
    },
    Grip {
        lateral: ["3/4 IN", "1/2 IN", "3/8 IN"],
        bores: ["7/8", "21/32", "11/16"],
        depths: ["2 1/8", "1 1/8", "1 1/8"],
        parts: "slug: 1 3/16, insert: 31/32",
        spans: ["3 15/16", "3 7/8"],
        whole: (14.13, 2.4, -0.6, 1.1),
    },
    Grip {
        lateral: ["0", "0", "0"],
        bores: ["55/64", "23/32", "3/4"],
        depths: ["2", "1 7/8", "1 7/8"],
        parts: "",
        spans: ["3 1/4", "3 5/16"],
        whole: (12.06, 2.9, 1.6, -0.5),
    },
    Grip {
        lateral: ["1/8 IN", "1/8 OUT", "5/8 OUT"],
        bores: ["1 3/16", "7/8", "27/32"],
        depths: ["2 3/4", "1 1/4", "1 1/4"],
        parts: "slug: 1 3/8, insert: 1 1/32",
        spans: ["4 5/8", "4 5/8"],
        whole: (15.06, 3.6, 0.2, 1.8),
    },
    Grip {
        lateral: ["7/8 OUT", "0", "1/2 IN"],
        bores: ["1", "3/4", "3/4"],
        depths: ["3", "2", "1 1/4"],
        parts: "",
        spans: ["4", "4 1/16"],
        whole: (13.5, 1.9, -1.4, -0.9),
    },
];

impl Grip {
    /// The card without its readings.
    pub fn card(&self, left: bool) -> String {
        let [thumb, middle, ring] = self.lateral;
        let [d1, d2, d3] = self.depths;
        let [b1, b2, b3] = self.bores;
        let [one, other] = self.spans;
        let grip = if self.parts.is_empty() {
            "conventional"
        } else {
            "fingertip"
        };
        let text = format!(
            "  grip: {grip}
  spans:
    - {{ finger: middle, value: {one}, kind: full, along: arc }}
    - {{ finger: ring, value: {other}, kind: full, along: arc }}
  bridge: 1/4
  pitches:
    thumb: {{ forward: 1/8 F, lateral: {thumb} }}
    middle: {{ forward: 0, lateral: {middle} }}
    ring: {{ forward: 1/8 R, lateral: {ring} }}
  bores: {{ thumb: {b1}, middle: {b2}, ring: {b3} }}
  depths: {{ thumb: {d1}, middle: {d2}, ring: {d3} }}
{}",
            self.parts
                .split(", ")
                .filter(|part| !part.is_empty())
                .map(|part| format!("  {part}\n"))
                .collect::<String>()
        );
        let (out, inside) = if left { ("R", "L") } else { ("L", "R") };
        let hand = if left { "left" } else { "right" };
        let text = text.replace("OUT", out).replace("IN", inside);
        format!("hand: {hand}\nfit_card:\n{text}")
    }

    fn placed(&self) -> Placed {
        let text = self.card(false);
        let document = Document::parse("card", text.as_bytes(), Format::Yaml).unwrap();
        let bowler = Bowler::read(&document).unwrap_or_else(|faults| panic!("{faults}"));
        bowler
            .old_grip(&Sphere::default(), Reference::OwnLine)
            .unwrap()
    }

    /// The card with what scales of this arm show for stuff of this density, read to 0.01 oz and 0.01 lb.
    pub fn weighed(&self, (arm, density): (f64, f64), left: bool) -> String {
        let [before, after] = self.readings(arm, density);
        let shown = |statics: Statics| {
            let sides = [
                ("top", "bottom", statics.top),
                (
                    if left { "left" } else { "right" },
                    if left { "right" } else { "left" },
                    statics.side,
                ),
                ("finger", "thumb", statics.finger),
            ];
            let sides = sides.map(|(above, below, ounces)| {
                let side = if ounces < 0.0 { below } else { above };
                format!("{side}: {:.2} oz", ounces.abs())
            });
            format!("{{ {} }}", sides.join(", "))
        };
        format!(
            "{}  before: {{ weight: {:.2} lb, statics: {} }}\n  weight: {:.2} lb\n  statics: {}\n",
            self.card(left),
            before.0 / 16.0,
            shown(before.1),
            after.0 / 16.0,
            shown(after.1)
        )
    }

    fn readings(&self, arm: f64, density: f64) -> [(f64, Statics); 2] {
        let ball = Sphere::default();
        let scale = Scale::new(arm, Model::Moment).unwrap();
        let (pounds, top, over, up) = self.whole;
        let spot = Point::new(&ball, over, up).unwrap();
        let whole = Ball::undrilled(ball, pounds * 16.0, top, spot, &scale).unwrap();
        let grip = self.placed();
        let bores = [
            grip.bores.thumb.unwrap(),
            grip.bores.middle,
            grip.bores.ring,
        ];
        let mut changes = Vec::new();
        for ((_, cut), bore) in grip.holes().zip(bores) {
            changes.push(Change::out(drilled(&ball, &cut).unwrap(), density).unwrap());
            if !self.parts.is_empty() {
                changes.push(Change::back(sleeve(&ball, &cut, &bore).unwrap(), BACK).unwrap());
            }
        }
        [&[][..], &changes].map(|changes| {
            let finished = finish(&whole, changes, &scale).unwrap();
            (finished.ounces(), finished.statics())
        })
    }
}
