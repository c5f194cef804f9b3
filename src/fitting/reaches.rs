//! Reaches: from each centre of a grip to its near edges, in radians.

use glam::DVec3;

use super::{
    edge::{reach, toward},
    figure::Figure,
    hole::Hole,
    order::Kind,
    placed::Placed,
};

/// From a hole's centre to its edge as cut and to its bore's edge.
#[derive(Clone, Copy, Default)]
pub(super) struct Edge {
    pub cut: f64,
    pub bore: f64,
}

impl Edge {
    fn of(cut: &Hole, bore: &Hole, toward: DVec3) -> Edge {
        Edge {
            cut: reach(cut, toward),
            bore: reach(bore, toward),
        }
    }
}

/// All the reaches of a grip; index 0 is the middle finger, 1 the ring finger.
#[derive(Clone, Copy, Default)]
pub(super) struct Reaches {
    /// Of the thumb, toward each finger.
    pub thumb: [Edge; 2],
    /// Of each finger, toward the thumb, or straight down the centreline without one.
    pub down: [Edge; 2],
    /// Of each finger as cut, toward the other.
    pub across: [f64; 2],
}

impl Reaches {
    /// The greatest difference between two drawings, in radians.
    pub fn farthest_from(&self, other: &Reaches) -> f64 {
        let edges = |r: &Reaches| {
            let [a, b] = r.thumb;
            let [c, d] = r.down;
            let [e, f] = r.across;
            [
                a.cut, a.bore, b.cut, b.bore, c.cut, c.bore, d.cut, d.bore, e, f,
            ]
        };
        let pairs = edges(self).into_iter().zip(edges(other));
        pairs
            .map(|(one, other)| libm::fabs(one - other))
            .fold(0.0, f64::max)
    }

    /// Both ends of a span of this kind.
    pub fn of_span(&self, finger: usize, kind: Kind) -> f64 {
        let (thumb, down) = (self.thumb[finger], self.down[finger]);
        match kind {
            Kind::Full => thumb.bore + down.bore,
            Kind::Cut => thumb.cut + down.cut,
            Kind::Centre => 0.0,
        }
    }
}

/// The reaches of a drawing.
pub(super) fn read(figure: &Figure, placed: &Placed) -> Reaches {
    let [middle, ring] = figure.fingers;
    let cuts = [&placed.middle, &placed.ring];
    let bores = [&placed.bores.middle, &placed.bores.ring];
    let mut reaches = Reaches {
        across: [
            reach(cuts[0], toward(middle, ring)),
            reach(cuts[1], toward(ring, middle)),
        ],
        ..Reaches::default()
    };
    for (index, finger) in figure.fingers.into_iter().enumerate() {
        let down = match (&placed.thumb, &placed.bores.thumb) {
            (Some(cut), Some(bore)) => {
                let up = toward(figure.foot, finger);
                reaches.thumb[index] = Edge::of(cut, bore, up);
                toward(finger, figure.foot)
            }
            _ => figure.down(finger),
        };
        reaches.down[index] = Edge::of(cuts[index], bores[index], down);
    }
    reaches
}
