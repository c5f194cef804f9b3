//! Layouts: where the pin goes, by trigonometry on the sphere.
//!
//! The grip centre is where latitude and longitude are zero. The midline is the equator and counts toward the axis point
//! (the *PAP*); latitude counts toward the fingers. The *VAL* is the line through the PAP square to the midline.
//!
//! Everything is stated for the usual side of a right hand. For a bowler whose ball curves the other way the layout is the
//! mirror image ([`Layout::mirrored`]) and the hand stays; for a left hand everything is.
//!
//! ```
//! use spanwright::fitting::{Sphere, layout::{Angles, Layout, Point}};
//!
//! let ball = Sphere::default();
//! let pap = Point::new(&ball, 5.0, 0.5)?;
//! let layout = Layout::from_angles(&ball, pap, &Angles::new(&ball, 50.0, 4.5, 30.0)?)?;
//! assert!((layout.pin().up() - 4.006).abs() < 0.001);
//! assert!((layout.distances(&ball)?.mass_bias() - 4.213).abs() < 0.001);
//! # Ok::<(), spanwright::fitting::Misfit>(())
//! ```

mod angles;
mod clearance;
mod flare;
mod gravity;
mod great_circle;
mod mass_bias;
mod path;
mod phrase;
mod placed;
mod point;
mod stated;
mod steps;

pub use angles::{Angles, Distances, drilling_angle, mass_bias_reach, val_angle};
pub use clearance::{Clearance, HoleMark, clearances, track_words};
pub use flare::{Wander, flare_share, is_high_flare, wander};
pub use gravity::{CgPlace, cg_places, cg_toward};
pub use mass_bias::{mass_bias_from_grip, mass_bias_place, mass_bias_through};
pub use placed::Layout;
pub use point::Point;
pub use steps::{Mark, steps};

/// Room for rounding when a ratio must not pass one.
const HAIR: f64 = 1e-9;
