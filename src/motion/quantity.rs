//! Quantities with their units: made from a unit, read in a unit, SI inside. Any number can be made; what a ball, a release or
//! a lane can have is checked where that is built.

use std::f64::consts::PI;

/// Metres in a foot, exact by definition.
const FOOT: f64 = 0.3048;
/// Metres in an inch, exact by definition.
const INCH: f64 = 0.0254;
/// Metres a second in a mile an hour, exact by definition.
const MPH: f64 = 0.44704;
/// Kilograms in a pound, exact by definition.
const POUND: f64 = 0.453_592_37;

/// A distance.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Length(f64);

impl Length {
    /// So many metres.
    pub const fn metres(value: f64) -> Length {
        Length(value)
    }
    /// So many feet.
    pub const fn feet(value: f64) -> Length {
        Length(value * FOOT)
    }
    /// So many inches.
    pub const fn inches(value: f64) -> Length {
        Length(value * INCH)
    }
    /// In metres.
    pub const fn as_metres(self) -> f64 {
        self.0
    }
    /// In feet.
    pub const fn as_feet(self) -> f64 {
        self.0 / FOOT
    }
    /// In inches.
    pub const fn as_inches(self) -> f64 {
        self.0 / INCH
    }
}

/// A speed along the lane.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Speed(f64);

impl Speed {
    /// So many metres a second.
    pub const fn metres_a_second(value: f64) -> Speed {
        Speed(value)
    }
    /// So many miles an hour.
    pub const fn mph(value: f64) -> Speed {
        Speed(value * MPH)
    }
    /// In metres a second.
    pub const fn as_metres_a_second(self) -> f64 {
        self.0
    }
    /// In miles an hour.
    pub const fn as_mph(self) -> f64 {
        self.0 / MPH
    }
}

/// A rate of turning.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Spin(f64);

impl Spin {
    /// So many radians a second.
    pub const fn radians_a_second(value: f64) -> Spin {
        Spin(value)
    }
    /// So many turns a minute.
    pub const fn rpm(value: f64) -> Spin {
        Spin(value * PI / 30.0)
    }
    /// In radians a second.
    pub const fn as_radians_a_second(self) -> f64 {
        self.0
    }
    /// In turns a minute.
    pub const fn as_rpm(self) -> f64 {
        self.0 * 30.0 / PI
    }
}

/// An angle.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Angle(f64);

impl Angle {
    /// So many radians.
    pub const fn radians(value: f64) -> Angle {
        Angle(value)
    }
    /// So many degrees.
    pub const fn degrees(value: f64) -> Angle {
        Angle(value * PI / 180.0)
    }
    /// In radians.
    pub const fn as_radians(self) -> f64 {
        self.0
    }
    /// In degrees.
    pub const fn as_degrees(self) -> f64 {
        self.0 * 180.0 / PI
    }
}

/// A mass.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Mass(f64);

impl Mass {
    /// So many kilograms.
    pub const fn kilograms(value: f64) -> Mass {
        Mass(value)
    }
    /// So many pounds.
    pub const fn pounds(value: f64) -> Mass {
        Mass(value * POUND)
    }
    /// In kilograms.
    pub const fn as_kilograms(self) -> f64 {
        self.0
    }
    /// In pounds.
    pub const fn as_pounds(self) -> f64 {
        self.0 / POUND
    }
}
