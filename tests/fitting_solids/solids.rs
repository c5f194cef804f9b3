//! What a drill takes out, against closed forms and against cubes counted one by one.

use std::f64::consts::PI;

use proptest::prelude::*;
use rstest::rstest;
use spanwright::fitting::{
    Misfit, Sphere,
    hole::{Hole, Section},
    solid::{Solid, drilled, sleeve},
};

use crate::{Outcome, brute::counted, near, round, straight, three_holes};

/// Derived. A straight hole of radius r at depth d into a ball of radius R, along z; the floor is at f = R - d, the rim at
/// c = √(R² - r²). At distance ρ from the axis the drill empties z from f up to s = √(R² - ρ²), so
///
/// - volume = ∫ 2πρ (s - f) dρ = 2π/3 (R³ - c³) - π r² f. Said otherwise: the cylinder from f to the rim, π r² (c - f), and the
///   cap above it, π h² (3R - h) / 3 with h = R - c;
/// - first moment along z = ∫ 2πρ (s² - f²)/2 dρ = π ((R² - f²) r²/2 - r⁴/4);
/// - second along z = ∫ 2πρ (s³ - f³)/3 dρ = 2π/3 ((R⁵ - c⁵)/5 - f³ r²/2);
/// - second across = half of ∫ 2πρ ρ² (s - f) dρ = π ((R² (R³ - c³)/3 - (R⁵ - c⁵)/5) - f r⁴/4).
pub fn straight_hole(ball: &Sphere, size: f64, depth: f64) -> [f64; 4] {
    let (big, r) = (ball.radius(), size / 2.0);
    let f = big - depth;
    let c = (big * big - r * r).sqrt();
    let (cubes, fifths) = (big.powi(3) - c.powi(3), big.powi(5) - c.powi(5));
    [
        2.0 * PI / 3.0 * cubes - PI * r * r * f,
        PI * ((big * big - f * f) * r * r / 2.0 - r.powi(4) / 4.0),
        2.0 * PI / 3.0 * (fifths / 5.0 - f.powi(3) * r * r / 2.0),
        PI * (big * big * cubes / 3.0 - fifths / 5.0 - f * r.powi(4) / 4.0),
    ]
}

#[rstest]
#[case(1.0, 2.5)]
#[case(31.0 / 32.0, 1.25)]
#[case(0.5, 0.25)]
#[case(2.0, 4.6)]
fn a_straight_hole(#[case] size: f64, #[case] depth: f64) -> Outcome {
    for ball in [Sphere::default(), Sphere::across(8.5)?] {
        let [volume, along, twice, across] = straight_hole(&ball, size, depth);
        let cap = ball.radius() - (ball.radius().powi(2) - size * size / 4.0).sqrt();
        let said = PI * size * size / 4.0 * (depth - cap)
            + PI * cap * cap * (3.0 * ball.radius() - cap) / 3.0;
        assert!(
            (volume / said - 1.0).abs() < 1e-11,
            "the derivation's two ways agree"
        );

        let solid = drilled(&ball, &straight(&ball, [0.0, 0.0, 1.0], size, depth)?)?;
        assert!((solid.volume() / volume - 1.0).abs() < 1e-10);
        near(solid.first(), [0.0, 0.0, along], 1e-10 * along);
        let second = solid.second();
        near(second[0], [across, 0.0, 0.0], 1e-10 * twice);
        near(second[1], [0.0, across, 0.0], 1e-10 * twice);
        near(second[2], [0.0, 0.0, twice], 1e-10 * twice);
        assert!((second[0][0] / across - 1.0).abs() < 1e-9);
        near(
            solid.centroid().ok_or("no volume")?,
            [0.0, 0.0, along / volume],
            1e-10,
        );
    }
    Ok(())
}

/// The same hole anywhere: the first moment points at it, and the trace of the second, the sum of squared distances, stays.
#[test]
fn a_straight_hole_is_the_same_everywhere() -> Outcome {
    let ball = Sphere::default();
    let [volume, along, twice, across] = straight_hole(&ball, 1.0, 2.5);
    let unit = [2.0 / 7.0, -3.0 / 7.0, 6.0 / 7.0];
    let solid = drilled(&ball, &straight(&ball, unit, 1.0, 2.5)?)?;
    assert!((solid.volume() - volume).abs() < 1e-10);
    near(solid.first(), unit.map(|part| part * along), 1e-10);
    for (row, one) in solid.second().iter().zip(unit) {
        for (column, other) in row.iter().zip(unit) {
            let same = if one == other { across } else { 0.0 };
            assert!((column - (same + (twice - across) * one * other)).abs() < 1e-9);
        }
    }
    Ok(())
}

/// Two depths of one leaning hole differ by a plain prism: its area times the difference, its middle on the axis.
#[rstest]
#[case(Section::Round { size: 0.96875 })]
#[case(Section::Oval { wide: 1.125, narrow: 0.875, angle: 30.0 })]
fn drilling_deeper_takes_a_prism(#[case] section: Section) -> Outcome {
    let ball = Sphere::default();
    let hole = |depth| {
        let wide = [0.8, 0.5, 0.1];
        Hole::along(
            &ball,
            [0.4, -2.0, 3.6],
            [0.15, 0.3, -0.9],
            wide,
            section,
            depth,
        )
    };
    let (deep, shallow) = (hole(2.5)?, hole(1.0)?);
    let prism = drilled(&ball, &deep)?.less(&drilled(&ball, &shallow)?);
    let drill = section.drill();
    let volume = 1.5 * (PI / 4.0 * drill * drill + section.run() * drill);
    assert!((prism.volume() / volume - 1.0).abs() < 1e-10);
    let (mouth, axis) = (deep.mouth(), deep.axis());
    let middle = [0, 1, 2].map(|part| mouth[part] + 1.75 * axis[part]);
    near(prism.centroid().ok_or("no volume")?, middle, 1e-10);
    Ok(())
}

/// Cubes of 1/64 in get a volume right to half a percent; the quadrature must lie inside that.
#[rstest]
#[case([0.0, -2.1, 3.7], [0.08, 0.55, -0.84], Section::Round { size: 1.0 }, 2.5)]
#[case([0.3, -2.1, 3.7], [-0.3, 0.3, -0.9], Section::Oval { wide: 1.125, narrow: 0.875, angle: 0.0 }, 2.5)]
#[case([1.0, 0.2, 4.0], [-0.5, 0.3, -0.8], Section::Round { size: 1.25 }, 4.0)]
#[case([1.0, 0.2, 4.0], [-0.5, 0.3, -0.8], Section::Oval { wide: 1.5, narrow: 1.0, angle: 0.0 }, 4.6)]
fn against_cubes(
    #[case] mouth: [f64; 3],
    #[case] axis: [f64; 3],
    #[case] section: Section,
    #[case] depth: f64,
) -> Outcome {
    let ball = Sphere::default();
    let hole = Hole::along(&ball, mouth, axis, [0.7, 0.7, 0.1], section, depth)?;
    let solid = drilled(&ball, &hole)?;
    let cubes = counted(&ball, &hole, 1.0 / 64.0);
    let hair = 0.005 * solid.volume();
    assert!(
        (solid.volume() - cubes.volume).abs() < hair,
        "{} {}",
        solid.volume(),
        cubes.volume
    );
    near(solid.first(), cubes.first, 4.0 * hair);
    near(solid.halves(), cubes.halves, 2.0 * hair);
    Ok(())
}

/// A sleeve is what lies between two concentric holes: their areas' difference times the depth, less the domed top.
#[test]
fn a_hollow_sleeve() -> Outcome {
    let ball = Sphere::default();
    let (outside, bore) = (
        straight(&ball, [0.0, 0.6, 0.8], 1.25, 2.75)?,
        straight(&ball, [0.0, 0.6, 0.8], 1.0, 2.5)?,
    );
    let slug = sleeve(&ball, &outside, &bore)?;
    let volume = straight_hole(&ball, 1.25, 2.75)[0] - straight_hole(&ball, 1.0, 2.5)[0];
    assert!((slug.volume() / volume - 1.0).abs() < 1e-10);
    Ok(())
}

#[test]
fn a_bore_that_leaves_its_sleeve_is_refused() -> Outcome {
    let ball = Sphere::default();
    let mouth = [0.0, -0.5, 0.85];
    let outside = straight(&ball, mouth, 1.25, 2.75)?;
    let wide = straight(&ball, mouth, 1.375, 2.5)?;
    let deep = straight(&ball, mouth, 1.0, 2.875)?;
    // An eighth of wall lasts for a lean of two degrees over two and a half inches, but not for five.
    let lean = |degrees: f64| {
        let hole = outside.axis();
        let aside = outside.wide();
        let (sine, cosine) = degrees.to_radians().sin_cos();
        let axis = [0, 1, 2].map(|part| hole[part] * cosine + aside[part] * sine);
        round(&ball, mouth, axis, 1.0, 2.5)
    };
    assert!(sleeve(&ball, &outside, &lean(2.0)?).is_ok());
    for bore in [wide, deep, lean(5.0)?] {
        let refused = sleeve(&ball, &outside, &bore);
        assert!(
            matches!(refused, Err(Misfit::TooLarge { .. })),
            "{refused:?}"
        );
    }
    Ok(())
}

/// No hole is deep enough to come out again, but a very shallow one that leans leaves part of its bottom in the air.
#[test]
fn too_shallow_is_refused_with_the_least_depth() -> Outcome {
    let ball = Sphere::default();
    let hole = |depth| round(&ball, [0.0, 0.0, 1.0], [0.3, 0.0, -0.95], 1.0, depth);
    let Err(Misfit::TooSmall {
        what: "depth",
        lowest,
        ..
    }) = drilled(&ball, &hole(0.0)?)
    else {
        return Err("a hole without depth was drilled".into());
    };
    // A quarter inch or so: the lean lifts one side of a bottom an inch across by 0.15 in, the round surface adds 0.03.
    assert!((0.15..0.25).contains(&lowest), "{lowest}");
    assert!(drilled(&ball, &hole(lowest + 1e-9)?).is_ok());
    assert!(round(&ball, [0.0, 0.0, 1.0], [0.0, 0.0, -1.0], 1.0, -0.5).is_err());
    Ok(())
}

#[test]
fn solids_add_and_subtract() -> Outcome {
    let ball = Sphere::default();
    let [one, other, _] = three_holes(&ball)?;
    let (one, other) = (drilled(&ball, &one)?, drilled(&ball, &other)?);
    let both = one.add(&other);
    assert!((both.volume() - one.volume() - other.volume()).abs() < 1e-12);
    let back = both.less(&other);
    near(back.first(), one.first(), 1e-12);
    near(one.scaled(2.0).first(), one.add(&one).first(), 1e-12);
    assert_eq!(Solid::default().centroid(), None);
    Ok(())
}

proptest! {
    /// A hole seen in a mirror is the mirror image, and no hole is bigger than its flat-topped cylinder by more than its dome.
    #[test]
    fn mirrored(
        over in -2.0..2.0, up in -2.0..2.0, lean in prop::array::uniform2(-0.3..0.3), size in 0.4..1.5, run in 0.0..0.4,
        depth in 1.0..4.0,
    ) {
        let ball = Sphere::default();
        let section = Section::Oval { wide: size + run, narrow: size, angle: 0.0 };
        let hole = |sign: f64| {
            let axis = [sign * (lean[0] - over / 4.0), lean[1] - up / 4.0, -1.0];
            let hole = Hole::along(&ball, [sign * over, up, 3.8], axis, [sign, 0.2, 0.3], section, depth);
            hole.and_then(|hole| drilled(&ball, &hole))
        };
        // A few of these lean too far to be holes.
        if let (Ok(one), Ok(other)) = (hole(1.0), hole(-1.0)) {
            prop_assert!((one.volume() - other.volume()).abs() < 1e-11);
            for (mirrored, sign) in [(0, -1.0), (1, 1.0), (2, 1.0)] {
                prop_assert!((one.first()[mirrored] - sign * other.first()[mirrored]).abs() < 1e-10);
                prop_assert!((one.halves()[mirrored] - sign * other.halves()[mirrored]).abs() < 1e-3);
            }
            let flat = depth * (PI / 4.0 * size * size + run * size);
            prop_assert!(one.volume() < flat * 1.3 && one.volume() > flat * 0.7);
            for part in one.halves() {
                prop_assert!(part.abs() <= one.volume() * (1.0 + 1e-9) + 1e-4);
            }
        }
    }
}
