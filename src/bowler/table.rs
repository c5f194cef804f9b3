//! Every answer a profile can give, once: its name, what may be written, and what is worth asking again.

use super::answer::{Answer, Shape, number, plain, row};
use super::words::{
    ACHES, BALLS_NOW, COLOURS, COVERS, CURVES, DELIVERIES, EXPERIENCES, FLEXIBILITIES, GRIPS,
    HANDS, INJURIES, INTENTS, LANES, LIES, REST_TESTS, REV_LEVELS, SKINS, SYMPTOMS, THUMBS,
};
use crate::notation::Notation;

const YEARS: Notation = Notation::Counted("year", "years");
const GAMES: Notation = Notation::Counted("game", "games");
const WEEKS: Notation = Notation::Counted("week", "weeks");
const TAPES: Notation = Notation::Count;
/// A ball: 4 to 16 lb, the heaviest the rules of the sport allow.
const BALL: Shape = plain(Notation::Weight, 400, 1600);
/// A ball that can be drilled for somebody.
const NEW_BALL: Shape = plain(Notation::Weight, 600, 1600);
/// Outside 36 to 76 sixty-fourths a gauge size is asked again, not refused (common practice, row M25).
const GAUGE: Shape = number(Notation::HoleSize, 20, 96, (36, 76));
const BORE: Shape = plain(Notation::HoleSize, 20, 96);
const SPAN: Shape = number(Notation::Length, 96, 416, (144, 352));
const FORWARD: Shape = plain(Notation::ForwardPitch, -96, 96);
const LATERAL: Shape = plain(Notation::LateralPitch, -96, 96);
/// A hole: no rule allows one deeper than 4 1/2 in (USBC manual 2021, drilling section); a fit card may tell of an older one.
const DEPTH: Shape = number(Notation::Length, 16, 320, (48, 288));
/// An oval turned by half a turn is the same oval.
const HALF_TURN: Shape = plain(Notation::Angle, 0, 1800);
/// A person: an unlikely weight is asked again, not refused (own choice).
const BODY: Shape = number(Notation::Weight, 3000, 50000, (3500, 35000));

/// Every answer a profile can give. `usual` ranges other than the gauge sizes are our own choice.
pub const ANSWERS: &[Answer] = &[
    row("bowler.hand", "the hand", Shape::Choice(HANDS)),
    row("bowler.delivery", "the delivery", Shape::Choice(DELIVERIES)),
    row("bowler.thumb", "the thumb", Shape::Choice(THUMBS)),
    row("bowler.intent", "the intent", Shape::Choice(INTENTS)),
    row("bowler.curve", "the curve", Shape::Choice(CURVES)),
    row(
        "bowler.experience",
        "the experience",
        Shape::Choice(EXPERIENCES),
    ),
    row(
        "bowler.games_a_week",
        "the games a week",
        number(GAMES, 0, 60, (0, 40)),
    ),
    row("bowler.age", "the age", number(YEARS, 3, 110, (5, 95))),
    row("bowler.body_weight", "the body weight", BODY),
    row(
        "bowler.ball_now",
        "the ball used now",
        Shape::Choice(BALLS_NOW),
    ),
    row(
        "bowler.ball_now_weight",
        "the weight of the ball used now",
        BALL,
    ),
    row("bowler.hold_passed", "the weight held in comfort", BALL),
    row("bowler.hold_failed", "the weight that was too much", BALL),
    row("bowler.aches", "the aches", Shape::Set(ACHES)),
    row("bowler.injuries", "the injuries", Shape::Set(INJURIES)),
    row("bowler.skin", "the skin", Shape::Choice(SKINS)),
    row(
        "bowler.rev_rate",
        "the rev rate",
        number(Notation::Rate, 0, 700, (40, 600)),
    ),
    row(
        "bowler.rev_level",
        "the rev rate",
        Shape::Choice(REV_LEVELS),
    ),
    row(
        "bowler.speed",
        "the ball speed",
        number(Notation::Speed, 50, 300, (80, 240)),
    ),
    row(
        "bowler.rotation",
        "the axis rotation",
        plain(Notation::Angle, 0, 900),
    ),
    row(
        "bowler.tilt",
        "the axis tilt",
        number(Notation::Angle, 0, 900, (0, 450)),
    ),
    row(
        "bowler.pap_over",
        "the distance over to the PAP",
        number(Notation::Length, 128, 512, (192, 432)),
    ),
    row(
        "bowler.pap_up",
        "the distance up to the PAP",
        number(Notation::UpDown, -192, 192, (-96, 128)),
    ),
    row("bowler.lanes", "the lanes", Shape::Set(LANES)),
    row(
        "bowler.budget",
        "the budget",
        plain(Notation::Money, 0, 200_000),
    ),
    row("bowler.target_weight", "the weight asked for", NEW_BALL),
    row(
        "bowler.cover_wish",
        "the cover wished for",
        Shape::Choice(COVERS),
    ),
    row(
        "bowler.colour_wish",
        "the colour wished for",
        Shape::Choice(COLOURS),
    ),
    row("bowler.wrist_support", "the wrist support", Shape::Flag),
    row(
        "bowler.present",
        "whether the ball is a present",
        Shape::Flag,
    ),
    row("bowler.absent", "whether the bowler is absent", Shape::Flag),
    row(
        "bowler.wants_dearest",
        "whether the dearest ball is wanted",
        Shape::Flag,
    ),
    row(
        "owned.count",
        "the number of balls owned",
        plain(Notation::Count, 0, 40),
    ),
    row("owned.covers", "the covers owned", Shape::Set(COVERS)),
    row(
        "owned.games_since_service",
        "the games since the last service",
        plain(GAMES, 0, 5_000),
    ),
    row(
        "hand.measured",
        "whether the hand was measured",
        Shape::Flag,
    ),
    row("hand.thumb_gauge", "the gauge size of the thumb", GAUGE),
    row(
        "hand.thumb_gauge_warm",
        "the gauge size of the warm thumb",
        GAUGE,
    ),
    row(
        "hand.thumb_warm_games",
        "the games before the warm measuring",
        plain(GAMES, 0, 30),
    ),
    row(
        "hand.thumb_warm_tapes",
        "the tapes at the warm measuring",
        plain(TAPES, 0, 12),
    ),
    row(
        "hand.thumb_warm_brace",
        "the brace at the warm measuring",
        Shape::Flag,
    ),
    row(
        "hand.middle_gauge",
        "the gauge size of the middle finger",
        GAUGE,
    ),
    row(
        "hand.middle_gauge_warm",
        "the gauge size of the warm middle finger",
        GAUGE,
    ),
    row(
        "hand.ring_gauge",
        "the gauge size of the ring finger",
        GAUGE,
    ),
    row(
        "hand.ring_gauge_warm",
        "the gauge size of the warm ring finger",
        GAUGE,
    ),
    row(
        "hand.conventional_middle_span",
        "the conventional span to the middle finger",
        SPAN,
    ),
    row(
        "hand.conventional_ring_span",
        "the conventional span to the ring finger",
        SPAN,
    ),
    row(
        "hand.fingertip_middle_span",
        "the fingertip span to the middle finger",
        SPAN,
    ),
    row(
        "hand.fingertip_ring_span",
        "the fingertip span to the ring finger",
        SPAN,
    ),
    row(
        "hand.crease_difference",
        "the crease difference",
        number(Notation::Length, 0, 96, (0, 48)),
    ),
    row(
        "hand.thumb_flexibility",
        "how the thumb bends",
        Shape::Choice(FLEXIBILITIES),
    ),
    row("hand.thumb_lies", "how the thumb lies", Shape::Choice(LIES)),
    row(
        "hand.thumb_length",
        "the length of the thumb",
        number(Notation::Length, 64, 256, (96, 208)),
    ),
    row(
        "hand.finger_joints",
        "how the finger joints bend",
        Shape::Choice(FLEXIBILITIES),
    ),
    row(
        "hand.finger_reach",
        "the reach of the fingers",
        number(Notation::Length, 32, 224, (48, 176)),
    ),
    row(
        "hand.slim_fingers",
        "whether the fingers are slim",
        Shape::Flag,
    ),
    row("hand.oval_wide", "the wide size of the oval", GAUGE),
    row("hand.oval_narrow", "the narrow size of the oval", GAUGE),
    row("hand.oval_angle", "the angle of the oval", HALF_TURN),
    row(
        "hand.palm_mark",
        "how far the palm mark lies from the fingers",
        number(Notation::Length, 32, 416, (96, 320)),
    ),
    row("card.works", "whether the fit works", Shape::Flag),
    row(
        "card.complaint",
        "whether there is a complaint",
        Shape::Flag,
    ),
    row("card.grip", "the grip of the card", Shape::Choice(GRIPS)),
    row(
        "card.middle_span",
        "the card's span to the middle finger",
        SPAN,
    ),
    row("card.ring_span", "the card's span to the ring finger", SPAN),
    row(
        "card.bridge",
        "the card's bridge",
        plain(Notation::Length, 8, 64),
    ),
    row(
        "card.thumb_forward",
        "the card's forward pitch of the thumb",
        FORWARD,
    ),
    row(
        "card.middle_forward",
        "the card's forward pitch of the middle finger",
        FORWARD,
    ),
    row(
        "card.ring_forward",
        "the card's forward pitch of the ring finger",
        FORWARD,
    ),
    row(
        "card.thumb_lateral",
        "the card's lateral pitch of the thumb",
        LATERAL,
    ),
    row(
        "card.middle_lateral",
        "the card's lateral pitch of the middle finger",
        LATERAL,
    ),
    row(
        "card.ring_lateral",
        "the card's lateral pitch of the ring finger",
        LATERAL,
    ),
    row("card.thumb_bore", "the card's thumb hole", BORE),
    row("card.middle_bore", "the card's middle finger hole", BORE),
    row("card.ring_bore", "the card's ring finger hole", BORE),
    row(
        "card.slug",
        "the outside of the card's slug",
        plain(Notation::HoleSize, 48, 110),
    ),
    row(
        "card.insert",
        "the outside of the card's inserts",
        plain(Notation::HoleSize, 40, 96),
    ),
    row("card.tapes", "the card's tapes", plain(TAPES, 0, 12)),
    row("card.thumb_depth", "the card's thumb depth", DEPTH),
    row("card.middle_depth", "the card's middle finger depth", DEPTH),
    row("card.ring_depth", "the card's ring finger depth", DEPTH),
    row("card.oval_wide", "the card's wide thumb size", BORE),
    row("card.oval_narrow", "the card's narrow thumb size", BORE),
    row("card.oval_angle", "the card's oval angle", HALF_TURN),
    row(
        "card.sleeve",
        "whether the card's thumb has a sleeve",
        Shape::Flag,
    ),
    row("card.ball_weight", "the weight of the drilled ball", BALL),
    row("check.symptoms", "the symptoms", Shape::Set(SYMPTOMS)),
    row(
        "check.rest_test",
        "what the thumb does at rest",
        Shape::Choice(REST_TESTS),
    ),
    row(
        "check.joint_line",
        "the joint line's distance from the hole",
        plain(Notation::Length, 0, 128),
    ),
    row(
        "check.event_weeks",
        "the weeks to the event",
        plain(WEEKS, 0, 104),
    ),
    row("settled.weight", "the settled weight", NEW_BALL),
    row("settled.grip", "the settled grip", Shape::Choice(GRIPS)),
    row("settled.sleeve", "the settled sleeve", Shape::Flag),
];

/// The row of [`ANSWERS`] with this name.
pub fn answer(name: &str) -> Option<&'static Answer> {
    ANSWERS.iter().find(|answer| answer.name() == name)
}
