//! What a shop has: rules, catalog and prices.

use std::path::PathBuf;

use super::{Advice, Trouble};
use crate::bowler::Bowler;

/// Where a shop's own files are; everything left out is the embedded demo's.
#[derive(Clone, Debug, Default)]
pub struct ShopFiles {
    /// Folder with models.csv, cores.csv, shelf.csv, prices.yaml.
    pub catalog: Option<PathBuf>,
    /// The shop's own rule files, laid over the built-in ones.
    pub rules: Vec<PathBuf>,
}

/// Rules and catalog, ready to advise.
#[derive(Debug)]
pub struct Shop {}

impl Shop {
    /// Reads a shop's files over the embedded ones.
    ///
    /// # Errors
    /// All faults of all files.
    pub fn open(_files: &ShopFiles) -> Result<Shop, Trouble> {
        Err(Trouble::Rules("being written".into()))
    }
    /// The embedded demo shop.
    ///
    /// # Errors
    /// Never for the files as shipped; a test holds that.
    pub fn demo() -> Result<Shop, Trouble> {
        Shop::open(&ShopFiles::default())
    }
    /// The consultation.
    ///
    /// # Errors
    /// [`Trouble`] where the rules can't be used.
    pub fn advise(&self, _bowler: &Bowler) -> Result<Advice, Trouble> {
        Err(Trouble::Rules("being written".into()))
    }
    /// The same for a ball of the customer's choice (`model-id` or `model-id@weight`), marked as theirs.
    ///
    /// # Errors
    /// Unknown ball, ball not on the shelf.
    pub fn fit(&self, _bowler: &Bowler, _ball: &str) -> Result<Advice, Trouble> {
        Err(Trouble::Rules("being written".into()))
    }
}
