//! What can be typed.

use std::path::PathBuf;

use clap::{ArgGroup, Args, Parser, Subcommand, ValueEnum};

use crate::advice::ShopFiles;
use crate::rules::Audience;
use crate::standards::{Body, Date};

/// Choose, fit and drill a ten-pin bowling ball, with a reason beside every suggestion and every number.
#[derive(Debug, Parser)]
#[command(name = "spanwright", version, arg_required_else_help = true)]
pub(super) struct Arguments {
    #[command(subcommand)]
    pub(super) verb: Verb,
}

#[derive(Debug, Subcommand)]
pub(super) enum Verb {
    /// Advise a bowler: weight, grip, balls with reasons, the quote, and a first drill spec
    Advise(AdviseOrWhyNot),
    /// The same for a ball of the customer's own choice
    Fit(Fit),
    /// Hold a ball against a governing body's limits
    Legal(Legal),
    /// From a fit card, a fit check and complaints to likely causes and one small change
    Refit(Advise),
    /// Draw the one-page sheet that lies beside the machine, as .html or .svg
    Sheet(Sheet),
    /// Find the shop's own scale arm and density from balls weighed before and after drilling
    Calibrate(Calibrate),
    /// Put two balls side by side for a bowler: only what differs, adding up to the gap
    Compare(Compare),
    /// Tell which answers would change the pick, and from where on
    Whatif(Advise),
    /// Ask what the pick still depends on, one question after another, and write the profile
    Ask(Ask),
    /// Tell what a ball does on a lane for this bowler, or how two differ; as .svg, draw the difference
    Roll(Roll),
    /// From the balls owned and the throw to what to do first and which ball comes next, or none yet
    Upgrade(Advise),
    /// List every fact that a rule may name
    Facts(Facts),
    /// Work on the rules
    Rules {
        #[command(subcommand)]
        verb: RulesVerb,
    },
}

#[derive(Debug, Subcommand)]
pub(super) enum RulesVerb {
    /// Read all of the shop's files and report every fault
    Check(Check),
    /// Tell which rules a set of cases never fires, and which limits it tries from one side only
    Coverage(Coverage),
    /// Tell which consultations come out otherwise under other rules, and by which lines
    Diff(Diff),
}

#[derive(Debug, Args)]
pub(super) struct Advise {
    /// The bowler's answers, YAML or JSON; `-` reads standard input
    pub(super) bowler: PathBuf,
    /// Whose words to use
    #[arg(long = "for", value_name = "READER", value_enum, default_value_t = Reader::Customer)]
    pub(super) reader: Reader,
    #[command(flatten)]
    pub(super) shop: ShopOptions,
    #[command(flatten)]
    pub(super) output: OutputOptions,
}

#[derive(Debug, Args)]
pub(super) struct AdviseOrWhyNot {
    /// Tell only why this ball isn't the pick: its id in the catalog, or `ID@WEIGHT`; without a weight, every weight there is
    #[arg(long, value_name = "BALL")]
    pub(super) why_not: Option<String>,
    #[command(flatten)]
    pub(super) advise: Advise,
}

#[derive(Debug, Args)]
#[command(group = ArgGroup::new("which").required(true).args(["ball", "used"]))]
pub(super) struct Fit {
    /// The ball: its id in the catalog, or `ID@WEIGHT` such as `daisy@12`
    #[arg(long, value_name = "ID")]
    pub(super) ball: Option<String>,
    /// The drilled ball of the bowler's fit card, drilled anew, with every other way to go on beside it
    #[arg(long)]
    pub(super) used: bool,
    #[command(flatten)]
    pub(super) advise: Advise,
}

/// One page in the order of work: the grip true to scale, sections, layout, weights, checks, rule book.
///
/// For people, so there is no --json: `fit --json` gives the same numbers to programs.
#[derive(Debug, Args)]
#[command(group = ArgGroup::new("which").required(true).args(["ball", "used"]))]
pub(super) struct Sheet {
    /// The bowler's answers, YAML or JSON; `-` reads standard input
    pub(super) bowler: PathBuf,
    /// The ball: its id in the catalog, or `ID@WEIGHT` such as `daisy@12`
    #[arg(long, value_name = "ID")]
    pub(super) ball: Option<String>,
    /// The drilled ball of the bowler's fit card, drilled anew
    #[arg(long)]
    pub(super) used: bool,
    #[command(flatten)]
    pub(super) shop: ShopOptions,
    /// Write to this file, .html or .svg; it is either written whole or left as it was
    #[arg(short = 'o', long = "output", value_name = "FILE")]
    pub(super) file: PathBuf,
}

#[derive(Debug, Args)]
pub(super) struct Legal {
    /// What is known of the ball, YAML or JSON; `-` reads standard input
    pub(super) ball: PathBuf,
    /// The day to judge for, such as 2024-10-01; else the last day the table knows
    #[arg(long, value_name = "DATE", value_parser = Date::read)]
    pub(super) on: Option<Date>,
    /// Whose limits: usbc, ibf, or a federation with limits of its own: nbf, jbc, tba
    #[arg(long, value_name = "BODY", default_value = "usbc", value_parser = body)]
    pub(super) body: Body,
    #[command(flatten)]
    pub(super) output: OutputOptions,
}

/// Fits both by least squares, and prints a rules file that sets them.
#[derive(Debug, Args)]
pub(super) struct Calibrate {
    /// Profiles whose `fit_card` tells its holes, `before`, `weight` and `statics`; one file a ball
    #[arg(required = true, value_name = "CARD")]
    pub(super) cards: Vec<PathBuf>,
    #[command(flatten)]
    pub(super) shop: ShopOptions,
    #[command(flatten)]
    pub(super) output: OutputOptions,
}

fn body(word: &str) -> Result<Body, String> {
    let known = Body::ALL.map(Body::word).join(", ");
    Body::named(word).ok_or_else(|| format!("expected one of {known}"))
}

#[derive(Debug, Args)]
pub(super) struct Facts {
    #[command(flatten)]
    pub(super) shop: ShopOptions,
    #[command(flatten)]
    pub(super) output: OutputOptions,
}

#[derive(Debug, Args)]
pub(super) struct Check {
    /// More rule files, laid over the others
    #[arg(value_name = "FILE")]
    pub(super) files: Vec<PathBuf>,
    /// Exit with 1 if there is anything to put right
    #[arg(long)]
    pub(super) strict: bool,
    #[command(flatten)]
    pub(super) shop: ShopOptions,
    #[command(flatten)]
    pub(super) output: OutputOptions,
}

#[derive(Debug, Args)]
pub(super) struct Compare {
    #[command(flatten)]
    pub(super) advise: Advise,
    /// One ball: its id in the catalog, or `ID@WEIGHT` such as `daisy@12`; without a weight, in the one that suits best
    #[arg(value_name = "BALL")]
    pub(super) one: String,
    /// The other ball, or the same in another weight
    #[arg(value_name = "OTHER")]
    pub(super) other: String,
}

/// One ball is told as a table of stations, two as the difference between them with its range.
#[derive(Debug, Args)]
pub(super) struct Roll {
    /// The ball: its id in the catalog, `ID@WEIGHT` such as `daisy@12`, or what the bowler calls one that is owned; twice for a comparison
    #[arg(long = "ball", value_name = "BALL", required = true)]
    pub(super) balls: Vec<String>,
    /// The lane: its id in the catalog's lanes.yaml; the one that suits the bowler's answer if left out
    #[arg(long, value_name = "LANE")]
    pub(super) lane: Option<String>,
    #[command(flatten)]
    pub(super) advise: Advise,
}

#[derive(Debug, Args)]
pub(super) struct Ask {
    /// What is known of the bowler already, YAML or JSON; nothing if left out
    pub(super) bowler: Option<PathBuf>,
    #[command(flatten)]
    pub(super) shop: ShopOptions,
    #[command(flatten)]
    pub(super) output: OutputOptions,
}

#[derive(Debug, Args)]
pub(super) struct Coverage {
    /// Case files or profiles, or folders of them
    #[arg(required = true, value_name = "CASES")]
    pub(super) cases: Vec<PathBuf>,
    /// Exit with code 1 if anything is missing
    #[arg(long)]
    pub(super) strict: bool,
    #[command(flatten)]
    pub(super) shop: ShopOptions,
    #[command(flatten)]
    pub(super) output: OutputOptions,
}

#[derive(Debug, Args)]
pub(super) struct Diff {
    /// The rules as they were: `built-in`, or a rule file or a folder of them, laid over the built-in rules
    #[arg(value_name = "OLD")]
    pub(super) old: PathBuf,
    /// The rules as they are to be, named in the same way
    #[arg(value_name = "NEW")]
    pub(super) new: PathBuf,
    /// The shop's own cases or profiles besides the demo's, or folders of them; may be repeated
    #[arg(long = "cases", value_name = "PATH")]
    pub(super) cases: Vec<PathBuf>,
    /// Folder with the shop's models.csv, cores.csv, shelf.csv, prices.yaml and, if it has one, lanes.yaml
    #[arg(long, value_name = "DIR")]
    pub(super) catalog: Option<PathBuf>,
    #[command(flatten)]
    pub(super) output: OutputOptions,
}

#[derive(Debug, Args)]
pub(super) struct ShopOptions {
    /// Folder with the shop's models.csv, cores.csv, shelf.csv, prices.yaml and, if it has one, lanes.yaml
    #[arg(long, value_name = "DIR")]
    catalog: Option<PathBuf>,
    /// A rule file of the shop's own, laid over the built-in rules; may be repeated
    #[arg(long = "rules", value_name = "FILE")]
    rules: Vec<PathBuf>,
    /// Whose limits a drilled ball is held against: usbc, ibf, nbf, jbc, tba
    #[arg(long, value_name = "BODY", default_value = "usbc", value_parser = body)]
    body: Body,
}

impl ShopOptions {
    pub(super) fn files(&self) -> ShopFiles {
        ShopFiles {
            catalog: self.catalog.clone(),
            rules: self.rules.clone(),
            body: Some(self.body),
        }
    }
}

#[derive(Debug, Args)]
pub(super) struct OutputOptions {
    /// Print JSON in place of text
    #[arg(long)]
    pub(super) json: bool,
    /// Write to a file; it is either written whole or left as it was
    #[arg(short = 'o', long = "output", value_name = "FILE")]
    pub(super) file: Option<PathBuf>,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum Reader {
    /// Someone who may be buying a first ball
    Customer,
    /// Someone who bowls in a league
    League,
    /// Whoever drills: every number with its reasons
    Fitter,
}

impl From<Reader> for Audience {
    fn from(reader: Reader) -> Audience {
        match reader {
            Reader::Customer => Audience::Newcomer,
            Reader::League => Audience::League,
            Reader::Fitter => Audience::Fitter,
        }
    }
}
