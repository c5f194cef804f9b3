//! The ways in which the numbers of a throw are off together.

use super::spread::Spread;
use super::throw::Throw;

/// How far each way is tried, as a share of how far a number may be off: the whole, the half, and less where a ball doesn't stay.
pub(super) const SHARES: [f64; 4] = [1.0, HALF, 0.25, 0.125];
/// What is always tried.
pub(super) const HALF: f64 = 0.5;

/// How far each number is off, as a share of how far it may be: below 0 is less of it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Way {
    /// Speed, revs, rotation, friction.
    shared: [f64; 4],
    /// The RG of each ball, either way.
    rg: f64,
    corner: bool,
}

/// Both ends of every number together, in every way; each number at both ends alone; and the RG alone.
pub(super) fn all(spread: Spread) -> Vec<Way> {
    let offs = [spread.speed, spread.revs, spread.rotation, spread.friction];
    let [speeds, revs, rotations, grips] = offs.map(ends);
    let mut found = Vec::new();
    for &speed in speeds {
        for &revs in revs {
            for &rotation in rotations {
                for &grip in grips {
                    found.push(Way {
                        shared: [speed, revs, rotation, grip],
                        rg: 1.0,
                        corner: true,
                    });
                }
            }
        }
    }
    let alone = |shared, rg| Way {
        shared,
        rg,
        corner: false,
    };
    found.push(alone([0.0; 4], 1.0));
    for number in 0..4 {
        for end in [-1.0, 1.0] {
            let off = |at| if at == number { end } else { 0.0 };
            found.push(alone(std::array::from_fn(off), 0.0));
        }
    }
    found
}

/// Both ends, or the one value where there is nothing to vary.
fn ends(off: i64) -> &'static [f64] {
    match off {
        0 => &[0.0],
        _ => &[-1.0, 1.0],
    }
}

impl Way {
    /// The same, so far.
    pub(super) fn share(self, share: f64) -> Way {
        Way {
            shared: self.shared.map(|off| off * share),
            rg: self.rg * share,
            corner: self.corner && share >= 1.0,
        }
    }

    /// Whether every number is at an end.
    pub(super) fn is_corner(&self) -> bool {
        self.corner
    }

    /// The throw that is off this way, within what a release can have.
    pub(super) fn throw(&self, throw: Throw, spread: Spread) -> Throw {
        let off = |share: f64, most: i64| libm::round(share * most as f64) as i64;
        let [speed, revs, rotation, _] = self.shared;
        Throw {
            speed: (throw.speed + off(speed, spread.speed)).clamp(30, 400),
            revs: (throw.revs + off(revs, spread.revs)).clamp(0, 1000),
            rotation: (throw.rotation + off(rotation, spread.rotation)).clamp(0, 900),
            tilt: throw.tilt,
        }
    }

    /// How much more the lane grips, as a share of its grip.
    pub(super) fn friction(&self, spread: Spread) -> f64 {
        let [.., grip] = self.shared;
        grip * spread.friction as f64 / 100.0
    }

    /// How much more the RG of a ball is, as a share of it: either way, or not at all.
    pub(super) fn rgs(&self, spread: Spread) -> Vec<f64> {
        let off = self.rg * spread.rg as f64 / 100.0;
        match off == 0.0 {
            true => vec![0.0],
            false => vec![-off, off],
        }
    }
}
