//! The unit and the place of its heavy spot that keep the static weights clear of their limits.

use spanwright::fitting::{
    Misfit, Sphere,
    balance::{Ball, Change, Model, Scale, finish},
    best_unit::{Limits, Unit, best},
    layout::Point,
    solid::drilled,
};

use crate::{Outcome, straight, three_holes};

const LIMITS: Limits = Limits {
    top: 3.0,
    side: 1.0,
    finger: 1.0,
};

fn ring(ball: &Sphere, away: f64, steps: u32) -> Result<Vec<Point>, Misfit> {
    (0..steps)
        .map(|step| {
            let angle = f64::from(step) * std::f64::consts::TAU / f64::from(steps);
            Point::new(ball, away * angle.cos(), away * angle.sin())
        })
        .collect()
}

fn changes(ball: &Sphere) -> Result<Vec<Change>, Misfit> {
    let holes = three_holes(ball)?;
    holes
        .iter()
        .map(|hole| Change::out(drilled(ball, hole)?, 1.2))
        .collect()
}

/// Every place of every unit, finished one by one.
#[test]
fn no_other_place_is_better() -> Outcome {
    let ball = Sphere::default();
    let changes = changes(&ball)?;
    for model in [Model::Moment, Model::Halves] {
        let scale = Scale::new(4.0, model)?;
        let tops: Vec<f64> = (0..12).map(|unit| 1.5 + f64::from(unit) / 4.0).collect();
        let places: Vec<_> = (0..12)
            .map(|unit| ring(&ball, 1.0 + f64::from(unit % 5) / 2.0, 24))
            .collect::<Result<_, _>>()?;
        let names: Vec<String> = (0..12).map(|unit| format!("unit-{unit:02}")).collect();
        let units: Vec<Unit<'_>> = (0..12)
            .map(|unit| Unit {
                id: &names[unit],
                top_weight: tops[unit],
                places: &places[unit],
            })
            .collect();
        let choices = best(&ball, &units, &changes, &scale, &LIMITS)?;
        assert_eq!(choices.len(), units.len());
        for choice in &choices {
            let unit = &units[choice.unit()];
            let margins = unit.places.iter().map(|place| -> Result<f64, Misfit> {
                let whole = Ball::undrilled(ball, 240.0, unit.top_weight, *place, &scale)?;
                let found = finish(&whole, &changes, &scale)?.statics();
                Ok((3.0 - found.top.abs())
                    .min(1.0 - found.side.abs())
                    .min(1.0 - found.finger.abs()))
            });
            let widest = margins
                .collect::<Result<Vec<_>, _>>()?
                .into_iter()
                .fold(f64::MIN, f64::max);
            assert!(
                (choice.margin() - widest).abs() < 1e-6,
                "{} {widest}",
                choice.margin()
            );
            let whole = Ball::undrilled(ball, 240.0, unit.top_weight, choice.place(), &scale)?;
            let found = finish(&whole, &changes, &scale)?.statics();
            assert!((found.side - choice.statics().side).abs() < 1e-12);
            assert!((found.finger - choice.statics().finger).abs() < 1e-12);
            assert!((found.top - choice.statics().top).abs() < 1e-12);
        }
        assert!(
            choices
                .windows(2)
                .all(|pair| pair[0].margin() >= pair[1].margin() - 1e-6)
        );
    }
    Ok(())
}

/// Mirror images are alike to the last digit that counts: the name decides, then the place named first.
#[test]
fn ties_go_by_name_and_then_by_order() -> Outcome {
    let ball = Sphere::default();
    let hole = straight(&ball, [0.0, 0.0, 1.0], 1.0, 2.0)?;
    let changes = [Change::out(drilled(&ball, &hole)?, 1.2)?];
    let scale = Scale::new(4.0, Model::Moment)?;
    let [right, left] = [Point::new(&ball, 1.3, 0.4)?, Point::new(&ball, -1.3, 0.4)?];
    let unit = |id, places| Unit {
        id,
        top_weight: 3.0,
        places,
    };
    let orders = [[right, left], [left, right]];
    for order in &orders {
        let units = [
            unit("b", &order[..]),
            unit("a", &order[..]),
            unit("nowhere", &[]),
        ];
        let choices = best(&ball, &units, &changes, &scale, &LIMITS)?;
        let found: Vec<_> = choices
            .iter()
            .map(|choice| (units[choice.unit()].id, choice.place()))
            .collect();
        assert_eq!(found, [("a", order[0]), ("b", order[0])]);
    }
    Ok(())
}

#[test]
fn a_unit_over_the_limit_comes_last_with_what_it_is_over() -> Outcome {
    let ball = Sphere::default();
    let place = [Point::new(&ball, 0.0, 0.0)?];
    let unit = |id, top_weight| Unit {
        id,
        top_weight,
        places: &place,
    };
    let units = [unit("over", 3.5), unit("under", 2.5)];
    let scale = Scale::new(4.0, Model::Moment)?;
    let choices = best(&ball, &units, &[], &scale, &LIMITS)?;
    let margins: Vec<_> = choices
        .iter()
        .map(|choice| (choice.unit(), choice.margin()))
        .collect();
    assert_eq!(margins, [(1, 0.5), (0, -0.5)]);
    assert!(best(&ball, &[unit("odd", f64::NAN)], &[], &scale, &LIMITS).is_err());
    let limits = Limits {
        side: f64::NAN,
        ..LIMITS
    };
    assert!(best(&ball, &units, &[], &scale, &limits).is_err());
    Ok(())
}
