//! `advise` and `fit`: a bowler in, an advice out.

use std::io::{self, Read};
use std::path::Path;

use super::Refusal;
use super::arguments::{Advise, AdviseOrWhyNot, Fit, ShopOptions};
use super::output;
use crate::advice::{Advice, Shop};
use crate::bowler::Bowler;
use crate::document::{Document, Faults, Format};
use crate::report::{self, Look};

/// The most that is read from standard input: far above any profile.
const MOST: u64 = 4 * 1024 * 1024;

/// Ranks the balls for a bowler, or tells why one of them isn't the pick.
pub(super) fn advise(ask: &AdviseOrWhyNot) -> Result<(), Refusal> {
    let (shop, bowler) = open(&ask.advise)?;
    if let Some(ball) = &ask.why_not {
        return why_not(&ask.advise, &shop, &bowler, ball);
    }
    let advice = shop
        .advise(&bowler)
        .map_err(|trouble| trouble.to_string())?;
    show(&ask.advise, &shop, &advice)
}

fn why_not(ask: &Advise, shop: &Shop, bowler: &Bowler, ball: &str) -> Result<(), Refusal> {
    let answer = shop
        .why_not(bowler, ball)
        .map_err(|trouble| trouble.to_string())?;
    let text = match ask.output.json {
        true => report::why_not_json(&answer, ask.reader.into()),
        false => report::why_not_text(&answer, &look(ask, shop)),
    };
    output::put(&ask.output, &text)
}

/// How a text looks where it goes.
pub(super) fn look(ask: &Advise, shop: &Shop) -> Look {
    let (width, colour) = output::surface(&ask.output);
    let look = Look::plain(ask.reader.into());
    let look = look.wide(width).coloured(colour);
    look.explaining(shop.rules().glossary())
}

/// Fits the ball that the customer chose, or brings.
pub(super) fn fit(ask: &Fit) -> Result<(), Refusal> {
    let (shop, bowler) = open(&ask.advise)?;
    // Without a ball from the shelf it is the one that is brought.
    let advice = match &ask.ball {
        Some(ball) => shop.fit(&bowler, ball),
        None => shop.fit_used(&bowler),
    }
    .map_err(|trouble| trouble.to_string())?;
    show(&ask.advise, &shop, &advice)
}

/// Reads shop and bowler; the faults of both are told together.
pub(super) fn open(ask: &Advise) -> Result<(Shop, Bowler), Refusal> {
    read(&ask.shop, &ask.bowler)
}

/// The same, from the files alone.
pub(super) fn read(shop: &ShopOptions, bowler: &Path) -> Result<(Shop, Bowler), Refusal> {
    let shop = Shop::open(&shop.files()).map_err(|trouble| trouble.to_string());
    let bowler = read_bowler(bowler);
    match (shop, bowler) {
        (Ok(shop), Ok(bowler)) => Ok((shop, bowler)),
        (Err(shop), Err(bowler)) => Err(format!("{}\n\n{bowler}", shop.trim_end())),
        (Err(one), Ok(_)) | (Ok(_), Err(one)) => Err(one),
    }
}

/// Reads a profile.
pub(super) fn read_bowler(path: &Path) -> Result<Bowler, Refusal> {
    Bowler::read(&document(path)?).map_err(told)
}

/// Reads a document from a file, or from standard input if the path is `-`.
pub(super) fn document(path: &Path) -> Result<Document, Refusal> {
    if path == Path::new("-") {
        return from_input();
    }
    Document::read(path).map_err(told)
}

fn from_input() -> Result<Document, Refusal> {
    let mut bytes = Vec::new();
    let read = io::stdin().lock().take(MOST + 1).read_to_end(&mut bytes);
    read.map_err(|why| format!("standard input can't be read: {why}"))?;
    if bytes.len() as u64 > MOST {
        return Err(format!("standard input is longer than {MOST} bytes"));
    }
    let first = bytes.iter().find(|byte| !byte.is_ascii_whitespace());
    let parse = |format| Document::parse("standard input", &bytes, format);
    if first != Some(&b'{') {
        return parse(Format::Yaml).map_err(told);
    }
    // A profile in braces is JSON, or YAML on one line.
    parse(Format::Json).or_else(|faults| parse(Format::Yaml).map_err(|_| told(faults)))
}

pub(super) fn told(faults: Faults) -> Refusal {
    faults.to_string()
}

fn show(ask: &Advise, shop: &Shop, advice: &Advice) -> Result<(), Refusal> {
    let audience = ask.reader.into();
    let text = if ask.output.json {
        report::json(advice, audience)
    } else {
        let (width, colour) = output::surface(&ask.output);
        let look = Look::plain(audience).wide(width).coloured(colour);
        report::text(advice, &look.explaining(shop.rules().glossary()))
    };
    output::put(&ask.output, &text)
}
