//! One consultation under way: the shop, the bowler, and what is known and said so far.

use super::reason::Caution;
use super::result::Settled;
use super::shop::Shop;
use crate::bowler::Bowler;
use crate::vocabulary::Situation;

/// What a caution of the person is about.
pub(super) const PERSON: &str = "person";

/// A ball that was decided on before the rules were asked: a candidate, and whether the customer chose it.
#[derive(Clone, Copy)]
pub(super) struct Chosen {
    pub(super) candidate: usize,
    pub(super) by_customer: bool,
}

/// One consultation under way.
pub(super) struct Consultation<'s> {
    pub(super) shop: &'s Shop,
    pub(super) bowler: &'s Bowler,
    pub(super) situation: Situation,
    pub(super) cautions: Vec<Caution>,
    pub(super) settled: Vec<Settled>,
}
