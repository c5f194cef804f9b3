//! What a shop sells: models of balls, their core numbers in each weight, the shelf, and the price list.
//!
//! Four files make a catalog: `models.csv`, `cores.csv`, `shelf.csv` and `prices.yaml`; a fifth, `lanes.yaml`, may stand beside them, else the
//! built-in lanes count. [`Catalog::read_folder`] reads a shop's own; [`Catalog::demo`] is an invented shop that is built in. The order of
//! rows never matters.

mod cores;
mod lane_row;
mod lanes;
mod model;
mod prices;
mod quote;
mod shelf;
mod table;
mod words;

pub use cores::CoreNumbers;
pub use lane_row::LaneRow;
pub use lanes::{LANE_WORDS, Lanes};
pub use model::Model;
pub use prices::PriceList;
pub use quote::{Grip, Order, Quote};
pub use shelf::{ShelfUnit, Stock};
pub use words::{Colour, Core, Cover, Finish, Tier};

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use sha2::{Digest as _, Sha256};

use crate::document::{Document, Fault, Faults, Format, Reader, clean, nearest};
use crate::standards::{ApprovalLimits, Standards};

/// What a shop sells. Sorted, whatever the order of the rows it was read from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Catalog {
    models: Vec<Arc<Model>>,
    stock: Vec<Stock>,
    prices: PriceList,
    lanes: Arc<Lanes>,
    /// Every model and weight that is made, on the shelf or not.
    cores: BTreeMap<(String, i64), CoreNumbers>,
    questions: BTreeSet<String>,
    digest: String,
}

/// No ball has this id.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub struct UnknownBall {
    /// The id that was asked for, safe to print.
    pub id: String,
    /// The id that looks most like it, if one does.
    pub nearest: Option<String>,
}

impl std::fmt::Display for UnknownBall {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "no ball has the id `{}`", self.id)?;
        match &self.nearest {
            Some(near) => write!(f, "; did you mean `{near}`?"),
            None => Ok(()),
        }
    }
}

impl std::error::Error for UnknownBall {}

/// No lane has this id.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub struct UnknownLane {
    /// The id that was asked for, safe to print.
    pub id: String,
    /// The id that looks most like it, if one does.
    pub nearest: Option<String>,
    /// The ids there are.
    pub known: Vec<String>,
}

impl std::fmt::Display for UnknownLane {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "no lane has the id `{}`", self.id)?;
        match &self.nearest {
            Some(near) => write!(f, "; did you mean `{near}`?"),
            None => write!(f, "; there are {}", self.known.join(", ")),
        }
    }
}

impl std::error::Error for UnknownLane {}

/// What a ball has to keep to be approved, from the built-in table of standards.
fn approval_limits() -> Result<ApprovalLimits, Faults> {
    let limits = Standards::builtin()?.approval_limits();
    limits.ok_or_else(|| Fault::new("missing", "the standards limit no core numbers").into())
}

impl Catalog {
    /// Reads a catalog from its four files, on the built-in lanes.
    ///
    /// # Errors
    /// Every fault of all four, sorted by place.
    pub fn read(
        models: &Document,
        cores: &Document,
        shelf: &Document,
        prices: &Document,
    ) -> Result<Self, Faults> {
        Self::read_all([models, cores, shelf, prices], Lanes::builtin())
    }

    fn read_all(
        [models, cores, shelf, prices]: [&Document; 4],
        lanes: Result<Lanes, Faults>,
    ) -> Result<Self, Faults> {
        let limits = approval_limits()?;
        let mut readers = [models, cores, shelf, prices].map(Reader::new);
        let [of_models, of_cores, of_shelf, of_prices] = &mut readers;
        let known = model::read(models, of_models);
        let cores = cores::read(cores, of_cores, &known.ids, &limits);
        let models: Vec<Arc<Model>> = known.models.into_iter().map(Arc::new).collect();
        let stock = shelf::read(shelf, of_shelf, &known.ids, &cores, &models);
        let prices = prices::read(prices, of_prices);

        let mut faults = Faults::new();
        for new in readers
            .into_iter()
            .filter_map(|reader| reader.finish().err())
        {
            faults.merge(new);
        }
        let lanes = lanes.map_err(|new| faults.merge(new)).ok();
        match prices.zip(lanes) {
            Some((prices, lanes)) if faults.is_empty() => {
                let digest = digest(&models, &cores, &stock, &prices, &lanes);
                Ok(Self {
                    models,
                    stock,
                    prices,
                    lanes: Arc::new(lanes),
                    cores: cores.owned(),
                    questions: cores.questions,
                    digest,
                })
            }
            _ => Err(faults),
        }
    }

    /// Reads `models.csv`, `cores.csv`, `shelf.csv` and `prices.yaml` from a folder, and `lanes.yaml` if there is one.
    ///
    /// # Errors
    /// Files that can't be opened or have broken syntax, all of them; else every fault of all.
    pub fn read_folder(folder: &Path) -> Result<Self, Faults> {
        let lanes = folder.join("lanes.yaml");
        // What is there and can't be opened is told when it is read.
        let lanes = match std::fs::symlink_metadata(&lanes) {
            Err(why) if why.kind() == std::io::ErrorKind::NotFound => None,
            _ => Some(Document::read(&lanes)),
        };
        Self::from_documents(FILES.map(|name| Document::read(&folder.join(name))), lanes)
    }

    /// The files that are read of a folder, `lanes.yaml` whether it is there or not.
    pub(crate) fn files_of(folder: &Path) -> impl Iterator<Item = PathBuf> {
        let names = FILES.into_iter().chain(["lanes.yaml"]);
        let files: Vec<PathBuf> = names.map(|name| folder.join(name)).collect();
        files.into_iter()
    }

    /// The same balls on other lanes.
    ///
    /// # Errors
    /// Every fault of the list of lanes.
    pub fn on_lanes(&self, lanes: &Document) -> Result<Self, Faults> {
        let lanes = Lanes::read(lanes)?;
        let mut text = self.digest.clone();
        text.extend(lanes.rows().iter().map(LaneRow::text));
        Ok(Self {
            digest: hashed(&text),
            lanes: Arc::new(lanes),
            ..self.clone()
        })
    }

    /// The same balls at another shop's prices.
    ///
    /// # Errors
    /// Every fault of the price list.
    pub fn priced(&self, prices: &Document) -> Result<Self, Faults> {
        let mut reader = Reader::new(prices);
        let read = prices::read(prices, &mut reader);
        reader.finish()?;
        let prices = read.unwrap_or_else(|| self.prices.clone());
        let both = format!("{}\n{prices:?}", self.digest);
        Ok(Self {
            digest: hashed(&both),
            prices,
            ..self.clone()
        })
    }

    /// The invented shop that is built in.
    ///
    /// # Errors
    /// None in a released crate: the tests read these very files.
    pub fn demo() -> Result<Self, Faults> {
        let [models, cores, shelf, prices] = FILES;
        let documents = [
            Document::parse(
                models,
                include_bytes!("../../catalog-demo/models.csv"),
                Format::Csv,
            ),
            Document::parse(
                cores,
                include_bytes!("../../catalog-demo/cores.csv"),
                Format::Csv,
            ),
            Document::parse(
                shelf,
                include_bytes!("../../catalog-demo/shelf.csv"),
                Format::Csv,
            ),
            Document::parse(
                prices,
                include_bytes!("../../catalog-demo/prices.yaml"),
                Format::Yaml,
            ),
        ];
        Self::from_documents(documents, None)
    }

    fn from_documents(
        documents: [Result<Document, Faults>; 4],
        lanes: Option<Result<Document, Faults>>,
    ) -> Result<Self, Faults> {
        let lanes = match lanes {
            Some(lanes) => lanes.and_then(|lanes| Lanes::read(&lanes)),
            None => Lanes::builtin(),
        };
        match documents {
            [Ok(models), Ok(cores), Ok(shelf), Ok(prices)] => {
                Self::read_all([&models, &cores, &shelf, &prices], lanes)
            }
            broken => {
                let mut faults = Faults::new();
                let broken = broken.into_iter().filter_map(Result::err);
                for new in broken.chain(lanes.err()) {
                    faults.merge(new);
                }
                Err(faults)
            }
        }
    }

    /// The models, sorted by id.
    pub fn models(&self) -> impl ExactSizeIterator<Item = &Model> {
        self.models.iter().map(AsRef::as_ref)
    }

    /// What stands on the shelf, one for each model and weight, sorted by model id, then weight.
    #[must_use]
    pub fn stock(&self) -> &[Stock] {
        &self.stock
    }

    /// The core numbers of every model in every weight it is made in, on the shelf or not: model id, weight in 0.01 lb, numbers. Sorted by
    /// id, then weight.
    pub fn core_numbers(&self) -> impl ExactSizeIterator<Item = (&str, i64, CoreNumbers)> {
        let all = self.cores.iter();
        all.map(|((model, weight), core)| (model.as_str(), *weight, *core))
    }

    /// The price list.
    #[must_use]
    pub fn prices(&self) -> &PriceList {
        &self.prices
    }

    /// The lanes.
    #[must_use]
    pub fn lanes(&self) -> &Arc<Lanes> {
        &self.lanes
    }

    /// What looks odd but may be right, each a sentence or two for the person who keeps the files.
    #[must_use]
    pub fn questions(&self) -> &BTreeSet<String> {
        &self.questions
    }

    /// Sixteen hex digits that change when anything in the catalog does, but not with the order of rows.
    #[must_use]
    pub fn digest(&self) -> &str {
        &self.digest
    }

    /// The model with this id.
    ///
    /// # Errors
    /// There is none; the error names the id most like it.
    pub fn find(&self, id: &str) -> Result<&Model, UnknownBall> {
        match self
            .models
            .binary_search_by(|model| model.id().cmp(id))
            .ok()
            .and_then(|at| self.models.get(at))
        {
            Some(model) => Ok(model),
            None => Err(UnknownBall {
                id: clean(id),
                nearest: nearest(id, self.models().map(Model::id)).map(str::to_owned),
            }),
        }
    }
}

/// The names of the four files, in the order they are read.
const FILES: [&str; 4] = ["models.csv", "cores.csv", "shelf.csv", "prices.yaml"];

/// Digests the sorted content. Tabs and line ends can't stand in a name, so no two catalogs give the same text.
fn digest(
    models: &[Arc<Model>],
    cores: &cores::Cores<'_>,
    stock: &[Stock],
    prices: &PriceList,
    lanes: &Lanes,
) -> String {
    let mut text = String::new();
    for model in models {
        let colours: Vec<&str> = model.colours().iter().map(|colour| colour.name()).collect();
        text.push_str(
            &[
                model.id(),
                model.name(),
                model.maker(),
                model.cover().name(),
                model.core().name(),
                model.finish().name(),
                model.tier().name(),
                &model.price().to_string(),
                &colours.join(" "),
            ]
            .join("\t"),
        );
        text.push('\n');
    }
    // Writing to a string can't fail.
    for ((model, weight), core) in &cores.numbers {
        let _ = writeln!(
            text,
            "{model}\t{weight}\t{}\t{}\t{}",
            core.rg, core.differential, core.intermediate
        );
    }
    for stock in stock {
        for unit in stock.units() {
            let _ = writeln!(
                text,
                "{}\t{}\t{}\t{}\t{}",
                stock.model().id(),
                stock.weight(),
                unit.pin_out,
                unit.top_weight,
                unit.count
            );
        }
    }
    for amount in [
        prices.drilling_with_ball,
        prices.drilling_own_ball,
        prices.redrill,
        prices.finger_inserts,
        prices.thumb_slug,
        prices.thumb_sleeve,
        prices.plug,
        prices.tax,
        prices.free_easing_weeks,
        prices.near_miss,
    ] {
        let _ = writeln!(text, "{amount}");
    }
    text.push_str(
        &[
            prices.currency(),
            prices.ready_when(),
            prices.plug_ready_when(),
            prices.warranty(),
        ]
        .join("\n"),
    );
    text.push('\n');
    text.extend(lanes.rows().iter().map(LaneRow::text));
    hashed(&text)
}

fn hashed(text: &str) -> String {
    let hash = Sha256::digest(text.as_bytes());
    hash.iter()
        .take(8)
        .map(|byte| format!("{byte:02x}"))
        .collect()
}
