//! Where a result may be written: never over what it is made from, and never as what it isn't.

use std::path::{Path, PathBuf};

use super::Refusal;
use super::arguments::{Arguments, RulesVerb, ShopOptions, Verb};
use crate::catalog::Catalog;
use crate::document::{clean, yaml_and_json_in};

/// Endings of pages and pictures, which no text and no JSON is.
const DRAWN: [&str; 8] = ["svg", "html", "htm", "xhtml", "png", "pdf", "jpg", "jpeg"];

/// What one command reads, and where it writes.
struct Target<'a> {
    /// As it is typed.
    verb: &'static str,
    output: Option<&'a Path>,
    inputs: Vec<Input>,
    /// The drawings it makes, by their endings.
    draws: &'static [&'static str],
}

/// A file that a command reads.
struct Input {
    path: PathBuf,
    called: &'static str,
}

impl Input {
    fn new(path: &Path, called: &'static str) -> Self {
        let path = path.to_owned();
        Input { path, called }
    }
}

/// Refuses an output that can't be meant; nothing was read or written yet.
pub(super) fn check(arguments: &Arguments) -> Result<(), Refusal> {
    let target = Target::of(&arguments.verb);
    let Some(output) = target.output else {
        return Ok(());
    };
    target.check_ending(output)?;
    target.check_inputs(output)
}

impl<'a> Target<'a> {
    fn of(verb: &'a Verb) -> Target<'a> {
        let target = Target::new;
        match verb {
            Verb::Advise(ask) => target("advise", &ask.advise.output.file)
                .bowler(&ask.advise.bowler)
                .shop(&ask.advise.shop),
            Verb::Fit(ask) => target("fit", &ask.advise.output.file)
                .bowler(&ask.advise.bowler)
                .shop(&ask.advise.shop),
            Verb::Refit(ask) => target("refit", &ask.output.file)
                .bowler(&ask.bowler)
                .shop(&ask.shop),
            Verb::Whatif(ask) => target("whatif", &ask.output.file)
                .bowler(&ask.bowler)
                .shop(&ask.shop),
            Verb::Upgrade(ask) => target("upgrade", &ask.output.file)
                .bowler(&ask.bowler)
                .shop(&ask.shop),
            Verb::Compare(ask) => target("compare", &ask.advise.output.file)
                .bowler(&ask.advise.bowler)
                .shop(&ask.advise.shop),
            Verb::Roll(ask) => target("roll", &ask.advise.output.file)
                .drawing(&["svg"])
                .bowler(&ask.advise.bowler)
                .shop(&ask.advise.shop),
            Verb::Sheet(ask) => Target {
                output: Some(&ask.file),
                ..target("sheet", &None)
            }
            .drawing(&["svg", "html", "htm"])
            .bowler(&ask.bowler)
            .shop(&ask.shop),
            Verb::Legal(ask) => target("legal", &ask.output.file).with(&ask.ball, "the ball"),
            Verb::Calibrate(ask) => target("calibrate", &ask.output.file)
                .all(&ask.cards, "a fit card")
                .shop(&ask.shop),
            // The profile goes on where it was: it may be written over, as long as it is one.
            Verb::Ask(ask) => match &ask.bowler {
                Some(bowler) if ask.output.json => target("ask", &ask.output.file)
                    .bowler(bowler)
                    .shop(&ask.shop),
                _ => target("ask", &ask.output.file).shop(&ask.shop),
            },
            Verb::Facts(ask) => target("facts", &ask.output.file).shop(&ask.shop),
            Verb::Rules {
                verb: RulesVerb::Check(ask),
            } => target("rules check", &ask.output.file)
                .all(&ask.files, "a rule file")
                .shop(&ask.shop),
            Verb::Rules {
                verb: RulesVerb::Coverage(ask),
            } => target("rules coverage", &ask.output.file)
                .all(&ask.cases, "a case")
                .shop(&ask.shop),
            Verb::Rules {
                verb: RulesVerb::Diff(ask),
            } => target("rules diff", &ask.output.file)
                .with(&ask.old, "a rule file")
                .with(&ask.new, "a rule file")
                .all(&ask.cases, "a case")
                .catalog(ask.catalog.as_deref()),
        }
    }

    fn new(verb: &'static str, output: &'a Option<PathBuf>) -> Self {
        Target {
            verb,
            output: output.as_deref(),
            inputs: Vec::new(),
            draws: &[],
        }
    }

    fn drawing(self, draws: &'static [&'static str]) -> Self {
        Target { draws, ..self }
    }

    fn bowler(self, bowler: &Path) -> Self {
        self.with(bowler, "the bowler's profile")
    }

    fn shop(self, shop: &ShopOptions) -> Self {
        let files = shop.files();
        self.all(&files.rules, "a rule file")
            .catalog(files.catalog.as_deref())
    }

    fn catalog(mut self, folder: Option<&Path>) -> Self {
        let files = folder.into_iter().flat_map(Catalog::files_of);
        self.inputs
            .extend(files.map(|file| Input::new(&file, "a file of the catalog")));
        self
    }

    fn all(self, paths: &[PathBuf], called: &'static str) -> Self {
        paths.iter().fold(self, |it, path| it.with(path, called))
    }

    /// A file, or every file that is read of a folder.
    fn with(mut self, path: &Path, called: &'static str) -> Self {
        if path.is_dir() {
            // A folder that can't be read is told where it is read.
            let files = yaml_and_json_in(path).unwrap_or_default();
            self.inputs
                .extend(files.iter().map(|file| Input::new(file, called)));
        } else if path != Path::new("-") {
            self.inputs.push(Input::new(path, called));
        }
        self
    }

    /// Text and JSON under the name of a drawing open nowhere.
    fn check_ending(&self, output: &Path) -> Result<(), Refusal> {
        let ending = output.extension().map(|ending| ending.to_ascii_lowercase());
        let ending = ending.as_ref().and_then(|ending| ending.to_str());
        let Some(ending) = ending.filter(|ending| DRAWN.contains(ending)) else {
            return Ok(());
        };
        if self.draws.contains(&ending) {
            return Ok(());
        }
        let writes = match self.draws.is_empty() {
            true => "text, or JSON with --json",
            false => "drawings only as those",
        };
        Err(format!(
            "`{}` can't be written: `{}` writes {writes}. Drawn are: the page beside the machine by `sheet`, into .svg or .html; \
             what a ball does on the lane by `roll`, into .svg",
            shown(output),
            self.verb,
        ))
    }

    /// What the result is made from stays as it is, whatever it is called here.
    fn check_inputs(&self, output: &Path) -> Result<(), Refusal> {
        // What isn't there yet is no input.
        let Ok(real) = std::fs::canonicalize(output) else {
            return Ok(());
        };
        let same = |input: &&Input| std::fs::canonicalize(&input.path).is_ok_and(|it| it == real);
        match self.inputs.iter().find(same) {
            Some(input) => Err(format!(
                "`{}` is {} of this very command and would be lost; name another file after -o",
                shown(output),
                input.called
            )),
            None => Ok(()),
        }
    }
}

fn shown(path: &Path) -> String {
    clean(&path.display().to_string())
}
