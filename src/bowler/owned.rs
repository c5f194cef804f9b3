//! The balls the bowler owns already.

use super::sheet::{Found, Sheet};
use super::surface::Surface;
use super::words::{COVERS, FIRST_REACTIVE};
use crate::document::Node;
use crate::notation::Notation;

/// The most balls that are taken.
const MOST: usize = 40;

/// A ball the bowler owns. Whatever isn't known is `None`.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct OwnedBall {
    pub(super) name: Option<String>,
    pub(super) model: Option<String>,
    pub(super) cover: Option<i64>,
    pub(super) weight: Option<i64>,
    pub(super) layout: Option<String>,
    pub(super) pin_from_pap: Option<i64>,
    pub(super) surface: Option<String>,
    pub(super) games: Option<i64>,
    pub(super) games_since_service: Option<i64>,
    pub(super) fit: Option<String>,
    pub(super) spare: bool,
}

impl OwnedBall {
    /// What the bowler calls it.
    pub fn name(&self) -> Option<&str> {
        self.name.as_deref()
    }

    /// The id of its model in a shop's catalog, as it was written.
    pub fn model(&self) -> Option<&str> {
        self.model.as_deref()
    }

    /// Its cover, as an index of [`COVERS`].
    pub fn cover(&self) -> Option<i64> {
        self.cover
    }

    /// Whether its cover is reactive; `None` if the cover isn't known.
    pub fn is_reactive(&self) -> Option<bool> {
        self.cover.map(|cover| cover >= FIRST_REACTIVE)
    }

    /// Its weight in 0.01 lb.
    pub fn weight(&self) -> Option<i64> {
        self.weight
    }

    /// Its layout, in the shop's words.
    pub fn layout(&self) -> Option<&str> {
        self.layout.as_deref()
    }

    /// How far the pin is from the PAP, in 1/64 in along the surface.
    pub fn pin_from_pap(&self) -> Option<i64> {
        self.pin_from_pap
    }

    /// Its surface, in the shop's words.
    pub fn surface(&self) -> Option<&str> {
        self.surface.as_deref()
    }

    /// The games on it.
    pub fn games(&self) -> Option<i64> {
        self.games
    }

    /// The games since it was last cleaned out and resurfaced.
    pub fn games_since_service(&self) -> Option<i64> {
        self.games_since_service
    }

    /// How it fits, in the bowler's words.
    pub fn fit(&self) -> Option<&str> {
        self.fit.as_deref()
    }

    /// Whether it is the ball for spares.
    pub fn is_spare(&self) -> bool {
        self.spare
    }
}

/// Reads the key `owned`; `none` and an empty list both mean that no ball is owned.
pub(super) fn read<'d>(sheet: &mut Sheet<'d>, node: &'d Node) -> Vec<OwnedBall> {
    if sheet.nothing(
        node,
        ["owned.count", "owned.covers", "owned.games_since_service"],
    ) {
        return Vec::new();
    }
    let balls: Vec<OwnedBall> = if node.text().is_some_and(|text| text.trim() == "none") {
        Vec::new()
    } else {
        let Some(items) = sheet.reader.list(node, "the balls owned") else {
            return Vec::new();
        };
        if items.len() > MOST {
            let message = format!("{} balls are more than one bowler owns", items.len());
            let help = format!("list at most {MOST}, those in use");
            sheet
                .reader
                .fault_with_help(node, "out-of-range", message, help);
        }
        items
            .iter()
            .filter_map(|item| read_one(sheet, item))
            .collect()
    };
    let count = i64::try_from(balls.len()).unwrap_or(i64::MAX);
    let covers = balls
        .iter()
        .filter_map(|ball| ball.cover)
        .fold(0, |bits, cover| bits | (1 << cover));
    let served = balls.iter().filter(|ball| ball.is_reactive() == Some(true));
    sheet
        .found
        .insert("owned.count", Found { value: count, node });
    sheet.found.insert(
        "owned.covers",
        Found {
            value: covers,
            node,
        },
    );
    if let Some(value) = served.filter_map(|ball| ball.games_since_service).max() {
        sheet
            .found
            .insert("owned.games_since_service", Found { value, node });
    }
    balls
}

/// Up to a quarter of the way round the ball, 6 3/4 in: farther from one end of the axis is nearer to the other.
fn pin_from_pap<'d>(sheet: &mut Sheet<'d>, node: &'d Node) -> Option<i64> {
    const CALLED: &str = "the distance from pin to PAP";
    const MOST: i64 = 27 * 64 / 4;
    let read = |text: &str| Notation::Length.read(text);
    let value = sheet.reader.value(node, CALLED, read)?;
    if (0..=MOST).contains(&value) {
        return Some(value);
    }
    sheet.out_of_range(node, CALLED, Notation::Length, value, (0, MOST));
    None
}

fn read_one<'d>(sheet: &mut Sheet<'d>, item: &'d Node) -> Option<OwnedBall> {
    let mut fields = sheet.reader.fields(item, "a ball owned")?;
    let mut ball = OwnedBall::default();
    if let Some(node) = fields.take("name") {
        ball.name = sheet.words(node, "the name of the ball");
    }
    if let Some(node) = fields.take("model") {
        ball.model = sheet.words(node, "the model of the ball");
    }
    if let Some(node) = fields.take("cover")
        && !sheet.nothing(node, [])
    {
        ball.cover = sheet.word(node, "the cover of the ball", COVERS);
    }
    if let Some(node) = fields.take("weight")
        && !sheet.nothing(node, [])
    {
        ball.weight = sheet.read_as("bowler.ball_now_weight", "the weight of the ball", node);
    }
    if let Some(node) = fields.take("layout") {
        ball.layout = sheet.words(node, "the layout of the ball");
    }
    if let Some(node) = fields.take("pin_from_pap")
        && !sheet.nothing(node, [])
    {
        ball.pin_from_pap = pin_from_pap(sheet, node);
    }
    if let Some(node) = fields.take("surface") {
        ball.surface = sheet.words(node, "the surface of the ball");
        let called = ball.name.as_deref().or(ball.model.as_deref());
        let note = ball.surface.as_deref().map(Surface::read);
        if let Some(question) = note.and_then(|it| it.question(called.unwrap_or("your ball"))) {
            sheet.ask("owned.covers", question);
        }
    }
    let mut since = None;
    if let Some(node) = fields.take("games")
        && !sheet.nothing(node, [])
    {
        ball.games = sheet.read_as("owned.games_since_service", "the games on the ball", node);
    }
    if let Some(node) = fields.take("games_since_service") {
        let what = "the games since the last service";
        ball.games_since_service = sheet.read_as("owned.games_since_service", what, node);
        since = Some(node);
    }
    if let Some(node) = fields.take("fit") {
        ball.fit = sheet.words(node, "the fit of the ball");
    }
    if let Some(node) = fields.take("spare")
        && !sheet.nothing(node, [])
    {
        ball.spare = sheet
            .reader
            .flag(node, "whether it is the spare ball")
            .unwrap_or_default();
    }
    fields.close(&mut sheet.reader);
    if let (Some(games), Some(served), Some(node)) = (ball.games, ball.games_since_service, since)
        && served > games
    {
        let message = "there can't be more games since the last service than games in all";
        sheet.contradict(
            node,
            message,
            "count the games since the last service again",
        );
    }
    Some(ball)
}
