//! What a shop has: rules, catalog and prices.

use std::collections::BTreeSet;
use std::path::PathBuf;
use std::sync::Arc;

use sha2::{Digest, Sha256};

use super::builtin;
use super::coverage::Watch;
use super::outcome::Trouble;
use super::spec::WorkStep;
use super::stock;
use crate::catalog::Catalog;
use crate::document::Document;
use crate::rules::{Audience, RuleSet, Vocabulary, World};
use crate::standards::Body;
use crate::vocabulary::{Alone, BallCandidate, Situation, vocabulary};

/// Where a shop's own files are; everything left out is the embedded demo's.
#[derive(Clone, Debug, Default)]
pub struct ShopFiles {
    /// Folder with models.csv, cores.csv, shelf.csv, prices.yaml, and lanes.yaml where a shop has its own.
    pub catalog: Option<PathBuf>,
    /// The shop's own rule files, laid over the built-in ones.
    pub rules: Vec<PathBuf>,
    /// Whose limits a drilled ball is held against; USBC's if nothing is said.
    pub body: Option<Body>,
}

/// The files, each where it is named first; one named twice is one file.
fn each_once(files: &[PathBuf]) -> impl Iterator<Item = &PathBuf> {
    let mut seen = BTreeSet::new();
    files.iter().filter(move |file| {
        // What can't be found is told where it is read.
        let place = std::fs::canonicalize(file);
        seen.insert(place.unwrap_or_else(|_| (*file).clone()))
    })
}

/// Rules and catalog, ready to advise.
#[derive(Debug)]
pub struct Shop {
    rules: RuleSet,
    catalog: Catalog,
    candidates: Vec<BallCandidate>,
    digest: String,
    body: Body,
    watch: Option<Watch>,
}

impl Shop {
    /// Reads a shop's files over the embedded ones.
    ///
    /// # Errors
    /// All faults of all files.
    pub fn open(files: &ShopFiles) -> Result<Shop, Trouble> {
        let vocabulary = vocabulary().map_err(Trouble::Rules)?;
        let catalog = match &files.catalog {
            Some(folder) => Catalog::read_folder(folder),
            None => Catalog::demo(),
        };
        let rules = builtin::rules(&vocabulary).and_then(|rules| {
            if files.rules.is_empty() {
                return Ok(rules);
            }
            let read: Vec<_> = each_once(&files.rules)
                .map(|path| Document::read(path))
                .collect();
            let mut faults = crate::document::Faults::default();
            let mut documents = Vec::new();
            for document in read {
                match document {
                    Ok(document) => documents.push(document),
                    Err(found) => faults.merge(found),
                }
            }
            match rules.overlay(&documents) {
                Ok(rules) if faults.is_empty() => Ok(rules),
                Ok(_) => Err(faults),
                Err(found) => {
                    faults.merge(found);
                    Err(faults)
                }
            }
        });
        match (rules, catalog) {
            (Ok(rules), Ok(catalog)) => {
                let body = files.body.unwrap_or(Body::Usbc);
                Ok(Shop::of(rules, catalog).judged_by(body))
            }
            (Err(mut a), Err(b)) => {
                a.merge(b);
                Err(a.into())
            }
            (Err(faults), _) | (_, Err(faults)) => Err(faults.into()),
        }
    }

    /// A shop of rules and a catalog read elsewhere.
    pub fn of(rules: RuleSet, catalog: Catalog) -> Shop {
        let candidates = stock::candidates(&catalog, &rules);
        let mut hash = Sha256::new();
        hash.update(rules.digest());
        hash.update(catalog.digest());
        let digest = hash
            .finalize()
            .iter()
            .take(8)
            .map(|byte| format!("{byte:02x}"))
            .collect();
        Shop {
            rules,
            catalog,
            candidates,
            digest,
            body: Body::Usbc,
            watch: None,
        }
    }

    /// The same shop under other rules and prices.
    pub(super) fn with(&self, rules: RuleSet, catalog: Catalog) -> Shop {
        Shop {
            body: self.body,
            watch: self.watch.clone(),
            ..Shop::of(rules, catalog)
        }
    }

    /// The same shop, its consultations noted.
    pub(super) fn watched(self, watch: &Watch) -> Shop {
        Shop {
            watch: Some(watch.clone()),
            ..self
        }
    }

    /// Notes how the rules of a subject stand, if anybody watches.
    pub(super) fn observe(&self, subject: &str, world: &dyn World) {
        if let Some(watch) = &self.watch {
            watch.observe(&self.rules, subject, world, true);
        }
    }

    /// The same for a subject that is left out.
    pub(super) fn observe_left_out(&self, subject: &str, world: &dyn World) {
        if let Some(watch) = &self.watch {
            watch.observe(&self.rules, subject, world, false);
        }
    }

    /// The same shop under another body's limits.
    #[must_use]
    pub fn judged_by(self, body: Body) -> Shop {
        Shop { body, ..self }
    }

    /// Whose limits a drilled ball is held against.
    pub fn body(&self) -> Body {
        self.body
    }

    /// The embedded demo shop.
    ///
    /// # Errors
    /// Never for the files as shipped; a test holds that.
    pub fn demo() -> Result<Shop, Trouble> {
        Shop::open(&ShopFiles::default())
    }

    pub(super) fn stock_model(&self, candidate: usize) -> &str {
        self.catalog.stock()[self.candidates[candidate].stock]
            .model()
            .id()
    }

    /// The rules in force.
    pub fn rules(&self) -> &RuleSet {
        &self.rules
    }
    /// The catalog in force.
    pub fn catalog(&self) -> &Catalog {
        &self.catalog
    }
    /// Every fact a rule may name.
    pub fn vocabulary(&self) -> &Arc<Vocabulary> {
        self.rules.vocabulary()
    }
    /// Digest of rules and catalog, sixteen hexadecimal digits.
    pub fn digest(&self) -> &str {
        &self.digest
    }
    pub(super) fn candidates(&self) -> &[BallCandidate] {
        &self.candidates
    }

    /// The steps of a part of the work that hold for this situation.
    pub(super) fn steps(&self, part: &str, situation: &Situation) -> Vec<WorkStep> {
        self.observe(part, &Alone(situation));
        self.rules
            .steps(part, &Alone(situation))
            .iter()
            .map(|line| {
                let rule = self.rules.rule(line.rule());
                let action = self.rules.action(line).unwrap_or_default();
                let reason = self.rules.reason(line, Audience::Fitter);
                let because = reason
                    .strip_prefix(&action)
                    .unwrap_or(&reason)
                    .trim_start()
                    .to_owned();
                WorkStep {
                    id: rule.id().to_owned(),
                    text: action,
                    because,
                    source: rule.source().to_string(),
                    strength: rule.source().strength().words(),
                }
            })
            .collect()
    }
}
