//! A ball as the physics of the roll sees it: from the shelf, or one the bowler owns.

use super::Reason;
use crate::motion::{Attitude, Ball, Friction};

/// A ball as the physics of the roll sees it.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct RollBall {
    pub(crate) id: String,
    pub(crate) name: String,
    pub(crate) cover: Option<i64>,
    pub(crate) owned: bool,
    pub(crate) ball: Ball,
    pub(crate) attitude: Option<Attitude>,
    pub(crate) friction: Friction,
    pub(crate) friction_lines: [Vec<Reason>; 2],
    pub(crate) assumed: Vec<String>,
}

impl RollBall {
    /// `model-id@weight`, or what the bowler calls it.
    pub fn id(&self) -> &str {
        &self.id
    }
    /// As people say it.
    pub fn name(&self) -> &str {
        &self.name
    }
    /// Its cover, as an index of `COVERS`.
    pub fn cover(&self) -> Option<i64> {
        self.cover
    }
    /// Whether the bowler owns it.
    pub fn is_owned(&self) -> bool {
        self.owned
    }
    /// Mass, radius and moments.
    pub fn body(&self) -> &Ball {
        &self.ball
    }
    /// Where the pin stands at the release; none where it isn't known how far it is from the PAP: then flare can't be told.
    pub fn attitude(&self) -> Option<&Attitude> {
        self.attitude.as_ref()
    }
    /// The friction its cover finds.
    pub fn friction(&self) -> &Friction {
        &self.friction
    }
    /// Why that friction, in the oil: lines of a measure.
    pub fn friction_in_oil(&self) -> &[Reason] {
        &self.friction_lines[0]
    }
    /// Why that friction, on the dry.
    pub fn friction_on_dry(&self) -> &[Reason] {
        &self.friction_lines[1]
    }
    /// What was taken for granted about this ball, in a sentence each.
    pub fn assumed(&self) -> &[String] {
        &self.assumed
    }
}
