//! A shop's own arm and density out of its readings.

use spanwright::fitting::{
    Misfit, Sphere,
    balance::{Ball, Change, Model, Scale, Statics, finish},
    calibrate::{CannotTell, Reading, ReadingPair, calibrate},
    layout::Point,
    solid::drilled,
};

use crate::{Outcome, round};

/// Numbers that look like chance, the same every time (the multiplier is Knuth's for 64 bits).
struct Chance(u64);

impl Chance {
    fn even(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Twelve even ones added are bell-shaped with a spread of one.
    fn bell(&mut self) -> f64 {
        (0..12).map(|_| self.even()).sum::<f64>() - 6.0
    }
}

/// A ball drilled with a slug, as a scale with this arm shows it; `misread` is what the reader makes of every number.
fn pair(
    chance: &mut Chance,
    (arm, density): (f64, f64),
    misread: &mut dyn FnMut(&mut Chance, f64) -> f64,
) -> Result<ReadingPair, Misfit> {
    let ball = Sphere::default();
    let scale = Scale::new(arm, Model::Moment)?;
    let mut spot = |most: f64| (chance.even() * 2.0 - 1.0) * most;
    let cg = Point::new(&ball, spot(2.0), spot(2.0))?;
    let thumb = [spot(0.3), -2.1 + spot(0.3), 3.6];
    let axis = |mouth: [f64; 3]| mouth.map(|part| -part);
    let slug = drilled(&ball, &round(&ball, thumb, axis(thumb), 1.25, 2.75)?)?;
    let bore = drilled(&ball, &round(&ball, thumb, axis(thumb), 1.0, 2.5)?)?;
    let mut removed = vec![slug];
    for side in [-0.6, 0.6] {
        let finger = [side + spot(0.1), 2.0 + spot(0.3), 3.7];
        removed.push(drilled(
            &ball,
            &round(&ball, finger, axis(finger), 31.0 / 32.0, 1.25 + spot(0.2))?,
        )?);
    }
    let put_back = vec![(slug.less(&bore), 1.15)];
    let mut changes = vec![Change::back(put_back[0].0, 1.15)?];
    for solid in &removed {
        changes.push(Change::out(*solid, density)?);
    }
    let whole = Ball::undrilled(ball, 230.0 + spot(10.0), 3.0, cg, &scale)?;
    let mut read = |ounces: f64, statics: Statics| Reading {
        ounces: Some(misread(chance, ounces)),
        statics: Statics {
            top: misread(chance, statics.top),
            side: misread(chance, statics.side),
            finger: misread(chance, statics.finger),
        },
    };
    let (before, after) = (
        finish(&whole, &[], &scale)?,
        finish(&whole, &changes, &scale)?,
    );
    Ok(ReadingPair {
        removed,
        put_back,
        before: read(before.ounces(), before.statics()),
        after: read(after.ounces(), after.statics()),
    })
}

fn pairs(
    count: usize,
    seed: u64,
    truth: (f64, f64),
    misread: &mut dyn FnMut(&mut Chance, f64) -> f64,
) -> Result<Vec<ReadingPair>, Misfit> {
    let mut chance = Chance(seed);
    (0..count)
        .map(|_| pair(&mut chance, truth, misread))
        .collect()
}

/// Without any error one ball is enough, and the answer is the truth itself.
#[test]
fn exact_readings_give_exact_numbers() -> Outcome {
    for truth in [(3.1, 1.25), (4.3, 0.95), (9.0, 1.6)] {
        let found = calibrate(&pairs(1, 7, truth, &mut |_, value| value)?)?;
        assert!((found.arm() / truth.0 - 1.0).abs() < 1e-10);
        assert!((found.density() / truth.1 - 1.0).abs() < 1e-10);
        assert!(found.residual_rms() < 1e-10 && found.arm_error() < 1e-8 && found.n() == 4);
    }
    Ok(())
}

/// Known noise of 0.05 oz a reading, so 0.05 √2 in a difference. The truth must lie within one standard error about 68 times in 100
/// and within two about 95 times: 300 tries, with three spreads of that count (8 and 4) for chance.
#[test]
fn the_reported_error_is_the_error() -> Outcome {
    let truth = (4.0, 1.2);
    let (mut within, mut rms) = ([[0; 2]; 2], 0.0);
    for seed in 0..300 {
        let readings = pairs(8, seed * 77 + 5, truth, &mut |chance, value| {
            value + 0.05 * chance.bell()
        })?;
        let found = calibrate(&readings)?;
        assert_eq!(found.n(), 32);
        rms += found.residual_rms() / 300.0;
        let off = [
            (found.arm() - truth.0).abs() / found.arm_error(),
            (found.density() - truth.1).abs() / found.density_error(),
        ];
        for (number, off) in off.into_iter().enumerate() {
            within[number][0] += i32::from(off < 1.0);
            within[number][1] += i32::from(off < 2.0);
        }
    }
    for [one, two] in within {
        assert!((204 - 24..=204 + 24).contains(&one), "{within:?}");
        assert!((285 - 14..=285 + 12).contains(&two), "{within:?}");
    }
    // Two of 32 readings are used up by the two numbers.
    let expected = 0.05 * 2.0_f64.sqrt() * (30.0_f64 / 32.0).sqrt();
    assert!((rms / expected - 1.0).abs() < 0.03, "{rms} {expected}");
    Ok(())
}

/// A scale read to a quarter of an ounce: a dozen balls tell the arm and the density, within two of their stated errors.
#[test]
fn a_scale_read_to_a_quarter_ounce() -> Outcome {
    for (truth, seed) in [((3.2, 1.25), 3), ((4.0, 1.1), 4), ((4.3, 1.3), 5)] {
        let readings = pairs(12, seed, truth, &mut |_, value| (value * 4.0).round() / 4.0)?;
        let found = calibrate(&readings)?;
        assert!(
            (found.arm() - truth.0).abs() < 2.0 * found.arm_error(),
            "{found:?}"
        );
        assert!(
            (found.density() - truth.1).abs() < 2.0 * found.density_error(),
            "{found:?}"
        );
        // Rounding spreads evenly over a quarter ounce: 1/(4 √12), and √2 of it in a difference.
        assert!((0.07..0.14).contains(&found.residual_rms()), "{found:?}");
        assert!(
            found.arm_error() < 0.5 && found.density_error() < 0.1,
            "{found:?}"
        );
    }
    Ok(())
}

/// Least squares by themselves: summed here anew, they rise in every direction from what was found, alike on both sides.
#[test]
fn no_other_arm_and_density_fit_better() -> Outcome {
    let heavy = 16.387_064 / 28.349_523_125;
    let readings = pairs(5, 21, (3.7, 1.15), &mut |chance, value| {
        value + 0.2 * chance.bell()
    })?;
    let squares = |arm: f64, density: f64| -> f64 {
        let ball = |pair: &ReadingPair| {
            let mut model = [0.0; 4];
            let out = pair.removed.iter().map(|solid| (solid, -density));
            for (solid, density) in out.chain(
                pair.put_back
                    .iter()
                    .map(|(solid, density)| (solid, *density)),
            ) {
                let [side, finger, top] = solid.first().map(|part| part / arm);
                for (sum, part) in model.iter_mut().zip([solid.volume(), side, finger, top]) {
                    *sum += heavy * density * part;
                }
            }
            let shown = |reading: &Reading| {
                let Statics { top, side, finger } = reading.statics;
                [reading.ounces.unwrap_or(f64::NAN), side, finger, top]
            };
            let (before, after) = (shown(&pair.before), shown(&pair.after));
            (0..4)
                .map(|row| (model[row] - after[row] + before[row]).powi(2))
                .sum::<f64>()
        };
        readings.iter().map(ball).sum()
    };
    let found = calibrate(&readings)?;
    let (arm, density) = (found.arm(), found.density());
    let least = squares(arm, density);
    assert!((found.residual_rms() - (least / found.n() as f64).sqrt()).abs() < 1e-12);
    let around = |more: f64, denser: f64| squares(arm + more, density + denser) - least;
    for (more, denser) in [(1e-3, 0.0), (0.0, 1e-3), (1e-3, 1e-3), (1e-3, -1e-3)] {
        let (one, other) = (around(more, denser), around(-more, -denser));
        assert!(one > 0.0 && other > 0.0, "{one} {other}");
        assert!((one / other - 1.0).abs() < 0.02, "{one} {other}");
    }
    // The textbook's standard errors: half the curvature, inverted, times the variance of a reading.
    let step = 1e-3;
    let bent = |more: f64, denser: f64| {
        (around(more, denser) + around(-more, -denser)) / (2.0 * step * step)
    };
    let (a, b) = (bent(step, 0.0), bent(0.0, step));
    let cross = (bent(step, step) - bent(step, -step)) / 4.0;
    let variance = least / (found.n() - 2) as f64;
    let whole = a * b - cross * cross;
    assert!((found.arm_error() / (variance * b / whole).sqrt() - 1.0).abs() < 0.02);
    assert!((found.density_error() / (variance * a / whole).sqrt() - 1.0).abs() < 0.02);
    Ok(())
}

#[test]
fn says_what_to_measure_next() -> Outcome {
    let exact = &mut |_: &mut Chance, value: f64| value;
    let said = |pairs: &[ReadingPair]| calibrate(pairs).err();
    assert_eq!(said(&[]), Some(CannotTell::TooFew { n: 0, needed: 3 }));

    let mut idle = pairs(2, 1, (4.0, 1.2), exact)?;
    for pair in &mut idle {
        (pair.removed, pair.put_back) = (Vec::new(), Vec::new());
    }
    assert_eq!(said(&idle), Some(CannotTell::NoMomentChange));

    let mut plugged = pairs(2, 1, (4.0, 1.2), exact)?;
    for pair in &mut plugged {
        pair.removed = Vec::new();
    }
    assert_eq!(said(&plugged), Some(CannotTell::NothingDrilled));

    // Static weights alone, nothing put back: only the density over the arm shows.
    let mut unweighed = pairs(3, 1, (4.0, 1.2), exact)?;
    for pair in &mut unweighed {
        pair.put_back = Vec::new();
        pair.before.ounces = None;
        let whole: [f64; 3] = pair
            .removed
            .iter()
            .map(|solid| solid.first())
            .fold([0.0; 3], |sum, part| {
                [0, 1, 2].map(|axis| sum[axis] + part[axis])
            });
        let heavy = 1.2 * 16.387_064 / 28.349_523_125 / 4.0;
        pair.after.statics = Statics {
            side: pair.before.statics.side - whole[0] * heavy,
            finger: pair.before.statics.finger - whole[1] * heavy,
            top: pair.before.statics.top - whole[2] * heavy,
        };
    }
    let refused = said(&unweighed);
    assert_eq!(refused, Some(CannotTell::Inseparable));
    assert!(
        refused
            .map(|refused| refused.to_string())
            .unwrap_or_default()
            .starts_with("weigh the ball")
    );

    let wild = pairs(2, 9, (4.0, 1.2), &mut |chance, value| {
        value + 2.0 * chance.bell()
    })?;
    assert!(said(&wild).is_some());

    let mut broken = pairs(2, 1, (4.0, 1.2), exact)?;
    broken[0].after.statics.top = f64::NAN;
    assert!(matches!(
        said(&broken),
        Some(CannotTell::Unlikely(Misfit::NotANumber { .. }))
    ));
    let mut leaden = pairs(2, 1, (4.0, 1.2), exact)?;
    leaden[1].put_back[0].1 = 11.3;
    assert!(matches!(
        said(&leaden),
        Some(CannotTell::Unlikely(Misfit::TooLarge { .. }))
    ));
    Ok(())
}

/// A ball that got heavier when drilled fits a density below zero: refused, not reported.
#[test]
fn readings_the_wrong_way_round_are_refused() -> Outcome {
    let mut swapped = pairs(4, 2, (4.0, 1.2), &mut |_, value| value)?;
    for pair in &mut swapped {
        std::mem::swap(&mut pair.before, &mut pair.after);
    }
    let refused = calibrate(&swapped);
    assert!(refused.is_err(), "{refused:?}");
    Ok(())
}
