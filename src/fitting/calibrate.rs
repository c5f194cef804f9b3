//! A shop's own scale arm and ball density, from what its scales showed before and after drilling.
//!
//! Model, in ounces: the weight changes by what goes out and comes back; each static weight by the change of the moment over the
//! arm ([`Model::Moment`](super::balance::Model::Moment)). All readings count alike, since all are ounces off a scale. Least squares by Gauss-Newton in density and in the arm's
//! inverse, in which the model is straight for either alone.

mod cannot_tell;

pub use cannot_tell::CannotTell;

use glam::DVec3;

use super::balance::{DENSITIES, Statics};
use super::solid::Solid;
use super::{removed, within};

/// Steps after which the sums have settled or never will.
const STEPS: usize = 60;
/// A step this small, as a share, is none.
const SETTLED: f64 = 1e-13;
/// Columns nearer to parallel than this can't be told apart in double precision.
const PARALLEL: f64 = 1e-10;
/// An error above this share of the number says that the number is not known.
const ROUGH: f64 = 0.5;
/// The arms that [`Scale`](super::balance::Scale) takes, in inches.
const ARMS: (f64, f64) = (0.5, 20.0);

/// One ball on the scales at one time.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Reading {
    /// Its weight in ounces; `None` if it was not weighed.
    pub ounces: Option<f64>,
    /// What the scale showed, in ounces, about the same grip before and after.
    pub statics: Statics,
}

/// One ball before and after, and what was done between.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ReadingPair {
    /// Every hole drilled, whole.
    pub removed: Vec<Solid>,
    /// Every slug, insert or plug put in, each with its density (0.3 to 4 g/cm³).
    pub put_back: Vec<(Solid, f64)>,
    /// The readings before.
    pub before: Reading,
    /// The readings after.
    pub after: Reading,
}

/// What the readings say, with one standard error each: two times in three the truth lies no farther off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Calibration {
    arm: f64,
    arm_error: f64,
    density: f64,
    density_error: f64,
    residual_rms: f64,
    n: usize,
}

impl Calibration {
    /// The scale's arm in inches.
    pub fn arm(&self) -> f64 {
        self.arm
    }

    /// Standard error of the arm in inches.
    pub fn arm_error(&self) -> f64 {
        self.arm_error
    }

    /// Density of what was drilled out, in g/cm³.
    pub fn density(&self) -> f64 {
        self.density
    }

    /// Standard error of the density in g/cm³.
    pub fn density_error(&self) -> f64 {
        self.density_error
    }

    /// Root mean square of what the model leaves unexplained, in ounces a reading.
    pub fn residual_rms(&self) -> f64 {
        self.residual_rms
    }

    /// How many readings (differences of weight and of static weights) went in.
    pub fn n(&self) -> usize {
        self.n
    }
}

/// One observed change: `fixed` and `out` times the density, both over the arm if `lever`.
#[derive(Clone, Copy, Debug)]
struct Row {
    lever: bool,
    fixed: f64,
    out: f64,
    seen: f64,
}

impl Row {
    /// What the model says less what was seen, and how that changes with density and with the arm's inverse.
    fn at(&self, density: f64, inverse: f64) -> (f64, [f64; 2]) {
        let whole = self.fixed + self.out * density;
        if self.lever {
            (whole * inverse - self.seen, [self.out * inverse, whole])
        } else {
            (whole - self.seen, [self.out, 0.0])
        }
    }
}

/// How finely readings were written down, in ounces.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Steps {
    /// One step of a ball's weight.
    pub weight: f64,
    /// One step of a static weight.
    pub statics: f64,
}

/// Fits the arm of the scale and the density of the drilled stuff to readings before and after.
///
/// # Errors
///
/// Readings that can't tell the two apart, or not well enough; the message says what to measure next. A number that no scale
/// shows.
pub fn calibrate(pairs: &[ReadingPair]) -> Result<Calibration, CannotTell> {
    calibrated(pairs, None)
}

/// The same for readings that were rounded to these steps (0 to 16 oz): no error is told as smaller than the rounding makes it.
///
/// The two scales may be unlike: the spread of the weights and that of the static weights are each taken as the largest of what
/// that kind leaves unexplained, what all readings do, and the rounding. So a standard error is rather too large than too small.
///
/// # Errors
///
/// As of [`calibrate`].
pub fn calibrate_to(pairs: &[ReadingPair], steps: Steps) -> Result<Calibration, CannotTell> {
    within("step of the weights", steps.weight, 0.0, 16.0)?;
    within("step of the static weights", steps.statics, 0.0, 16.0)?;
    calibrated(pairs, Some(steps))
}

fn calibrated(pairs: &[ReadingPair], steps: Option<Steps>) -> Result<Calibration, CannotTell> {
    let rows = rows(pairs)?;
    if rows.len() < 3 {
        return Err(CannotTell::TooFew {
            n: rows.len(),
            needed: 3,
        });
    }
    if !rows
        .iter()
        .any(|row| row.lever && row.out.abs() + row.fixed.abs() > 1e-6)
    {
        return Err(CannotTell::NoMomentChange);
    }
    if !rows.iter().any(|row| row.out.abs() > 1e-6) {
        return Err(CannotTell::NothingDrilled);
    }
    let (density, inverse) = fit(&rows)?;
    let sums = Sums::of(&rows, density, inverse);
    let squares = squares(&rows, density, inverse);
    let spread = squares / (rows.len() - 2) as f64;
    let kinds = match steps {
        None => vec![(sums, spread)],
        Some(steps) => kinds(&rows, (density, inverse), spread, steps),
    };
    let [density_error, inverse_error] = sums.errors(&kinds).ok_or(CannotTell::Inseparable)?;
    let found = Calibration {
        arm: 1.0 / inverse,
        arm_error: inverse_error / (inverse * inverse),
        density,
        density_error,
        residual_rms: libm::sqrt(squares / rows.len() as f64),
        n: rows.len(),
    };
    plausible(found)
}

/// What the model leaves unexplained, squared and added.
fn squares(rows: &[Row], density: f64, inverse: f64) -> f64 {
    let left = rows.iter().map(|row| row.at(density, inverse).0);
    left.map(|left| left * left).sum()
}

/// The normal equations of the weights and of the static weights, each with the variance of a reading of its kind.
fn kinds(
    rows: &[Row],
    (density, inverse): (f64, f64),
    spread: f64,
    steps: Steps,
) -> Vec<(Sums, f64)> {
    let kind = |(lever, step): (bool, f64)| {
        let of_kind = rows.iter().copied().filter(|row| row.lever == lever);
        let of_kind: Vec<Row> = of_kind.collect();
        // Each kind settles one of the two numbers, so it has one freedom less than readings.
        let freedom = of_kind.len().saturating_sub(1).max(1) as f64;
        let own = squares(&of_kind, density, inverse) / freedom;
        // A value rounded to a step has the variance step²/12, and a change is made of two.
        let rounding = step * step / 6.0;
        let variance = spread.max(own).max(rounding);
        (Sums::of(&of_kind, density, inverse), variance)
    };
    [(false, steps.weight), (true, steps.statics)]
        .map(kind)
        .to_vec()
}

/// Refuses what is too rough to use or can't be.
fn plausible(found: Calibration) -> Result<Calibration, CannotTell> {
    if found.density_error > ROUGH * found.density || found.arm_error > ROUGH * found.arm.abs() {
        return Err(CannotTell::TooRough {
            arm: found.arm,
            arm_error: found.arm_error,
            density: found.density,
            density_error: found.density_error,
        });
    }
    within(
        "arm of the scale that fits the readings",
        found.arm,
        ARMS.0,
        ARMS.1,
    )?;
    let what = "density in g/cm³ that fits the readings";
    within(what, found.density, DENSITIES.0, DENSITIES.1)?;
    Ok(found)
}

/// Density and the arm's inverse of the least squares.
fn fit(rows: &[Row]) -> Result<(f64, f64), CannotTell> {
    // From the middle of what a ball can be: each of the two alone is a straight line.
    let mut density = 1.2;
    let mut inverse = alone(
        rows.iter()
            .filter(|row| row.lever)
            .map(|row| (row.fixed + row.out * density, row.seen)),
    );
    for _ in 0..STEPS {
        let sums = Sums::of(rows, density, inverse);
        let [more, steeper] = sums.step().ok_or(CannotTell::Inseparable)?;
        density += more;
        inverse += steeper;
        if !(density.is_finite() && inverse.is_finite()) {
            break;
        }
        if more.abs() <= SETTLED * density.abs() && steeper.abs() <= SETTLED * inverse.abs() {
            return Ok((density, inverse));
        }
    }
    Err(CannotTell::NotSettled)
}

/// The slope through zero.
fn alone(points: impl Iterator<Item = (f64, f64)>) -> f64 {
    let (mut square, mut product) = (0.0, 0.0);
    for (at, seen) in points {
        square += at * at;
        product += at * seen;
    }
    product / square
}

/// The normal equations.
#[derive(Clone, Copy, Debug, Default)]
struct Sums {
    square: [f64; 2],
    cross: f64,
    slope: [f64; 2],
}

impl Sums {
    fn of(rows: &[Row], density: f64, inverse: f64) -> Sums {
        let mut sums = Sums::default();
        for row in rows {
            let (left, [by_density, by_inverse]) = row.at(density, inverse);
            sums.square[0] += by_density * by_density;
            sums.square[1] += by_inverse * by_inverse;
            sums.cross += by_density * by_inverse;
            sums.slope[0] += by_density * left;
            sums.slope[1] += by_inverse * left;
        }
        sums
    }

    /// The determinant, unless the two columns are as good as parallel.
    fn determinant(&self) -> Option<f64> {
        let whole = self.square[0] * self.square[1];
        let determinant = whole - self.cross * self.cross;
        (determinant > PARALLEL * whole).then_some(determinant)
    }

    /// The Gauss-Newton step.
    fn step(&self) -> Option<[f64; 2]> {
        let determinant = self.determinant()?;
        Some([
            (self.cross * self.slope[1] - self.square[1] * self.slope[0]) / determinant,
            (self.cross * self.slope[0] - self.square[0] * self.slope[1]) / determinant,
        ])
    }

    /// Standard errors for kinds of readings, each with its own normal equations and variance.
    fn errors(&self, kinds: &[(Sums, f64)]) -> Option<[f64; 2]> {
        let determinant = self.determinant()?;
        let of = |own: usize| {
            let mut weights = [-self.cross / determinant; 2];
            weights[own] = self.square[1 - own] / determinant;
            let kind = |(sums, variance): &(Sums, f64)| {
                let square = weights[0] * weights[0] * sums.square[0]
                    + 2.0 * weights[0] * weights[1] * sums.cross
                    + weights[1] * weights[1] * sums.square[1];
                variance * square
            };
            libm::sqrt(kinds.iter().map(kind).sum::<f64>().max(0.0))
        };
        Some([of(0), of(1)])
    }
}

/// Every observed change as a row.
fn rows(pairs: &[ReadingPair]) -> Result<Vec<Row>, CannotTell> {
    let mut rows = Vec::new();
    for pair in pairs {
        let (mut weight, mut moment) = ((0.0, 0.0), (DVec3::ZERO, DVec3::ZERO));
        for solid in &pair.removed {
            let heaviness = removed::ounces_a_cubic_inch(1.0);
            weight.1 -= solid.volume() * heaviness;
            moment.1 -= solid.first_moment() * heaviness;
        }
        for (solid, density) in &pair.put_back {
            let density = within("density in g/cm³", *density, DENSITIES.0, DENSITIES.1)?;
            let heaviness = removed::ounces_a_cubic_inch(density);
            weight.0 += solid.volume() * heaviness;
            moment.0 += solid.first_moment() * heaviness;
        }
        if let (Some(before), Some(after)) = (pair.before.ounces, pair.after.ounces) {
            let before = within("weight in ounces before", before, 16.0, 480.0)?;
            let after = within("weight in ounces after", after, 16.0, 480.0)?;
            rows.push(Row {
                lever: false,
                fixed: weight.0,
                out: weight.1,
                seen: after - before,
            });
        }
        let (before, after) = (pair.before.statics.vector(), pair.after.statics.vector());
        for axis in 0..3 {
            within("static weight before", before[axis], -16.0, 16.0)?;
            within("static weight after", after[axis], -16.0, 16.0)?;
            rows.push(Row {
                lever: true,
                fixed: moment.0[axis],
                out: moment.1[axis],
                seen: after[axis] - before[axis],
            });
        }
    }
    Ok(rows)
}
