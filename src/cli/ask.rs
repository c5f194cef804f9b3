//! `ask`: the interview, on a terminal or through a pipe, one line an answer.

use std::io::{self, BufRead, IsTerminal, Write};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use super::arguments::Ask;
use super::{Refusal, answer, output};
use crate::advice::Shop;
use crate::advice::interview::{Form, Interview, Misheard, Next, Question, Request};
use crate::bowler::Bowler;
use crate::document::clean;
use crate::report::{self, Look};
use crate::rules::Audience;

/// More of a line than this, in bytes, isn't kept: it is no answer anyhow.
const LONGEST_LINE: usize = 4096;
/// What a shell expects of a program that was interrupted.
const INTERRUPTED: i32 = 130;
/// Columns of the questions.
const WIDTH: usize = 80;

/// Asks what the pick still hangs on, and writes the profile.
pub(super) fn run(ask: &Ask) -> Result<(), Refusal> {
    let from_input = ask.bowler.as_deref() == Some(Path::new("-"));
    if from_input && !ask.output.json {
        return Err(
            "standard input holds the answers; name the profile as a file, or ask for --json"
                .to_owned(),
        );
    }
    if !ask.output.json
        && let Some(file) = &ask.output.file
    {
        check_name(file)?;
    }
    let (shop, bowler) = match &ask.bowler {
        Some(path) => answer::read(&ask.shop, path)?,
        None => {
            let shop = Shop::open(&ask.shop.files()).map_err(|trouble| trouble.to_string())?;
            (shop, Bowler::unheard())
        }
    };
    let interview = shop.interview().map_err(|trouble| trouble.to_string())?;
    if ask.output.json {
        let next = interview.next(&bowler);
        let document = report::next_json(&next, &bowler, shop.digest());
        return output::put(&ask.output, &document);
    }
    let kept = Kept::new(ask.output.file.clone(), &bowler)?;
    kept.guard();
    let mut talk = Talk {
        interview: &interview,
        kept,
        steps: Vec::new(),
        look: Look::plain(Audience::Newcomer).wide(WIDTH),
        is_terminal: io::stderr().is_terminal(),
        is_typed: io::stdin().is_terminal(),
    };
    talk.hold(bowler)
}

/// A profile is written as YAML, and is read again by the ending of its name.
fn check_name(file: &Path) -> Result<(), Refusal> {
    let ending = file.extension().map(|ending| ending.to_ascii_lowercase());
    match ending.as_ref().and_then(|ending| ending.to_str()) {
        Some("yaml" | "yml") => Ok(()),
        _ => Err(format!(
            "the profile can't be written into `{}`: its name must end in .yaml or .yml",
            clean(&file.display().to_string())
        )),
    }
}

/// The profile as it stands, written down after every answer, so that an interruption loses nothing.
#[derive(Clone)]
struct Kept {
    file: Option<PathBuf>,
    held: Arc<Mutex<Held>>,
}

/// What an end and an interruption at the same moment must not both do.
#[derive(Default)]
struct Held {
    text: String,
    is_over: bool,
}

impl Kept {
    fn new(file: Option<PathBuf>, bowler: &Bowler) -> Result<Kept, Refusal> {
        let kept = Kept {
            file,
            held: Arc::default(),
        };
        kept.keep(bowler)?;
        Ok(kept)
    }

    fn held(&self) -> MutexGuard<'_, Held> {
        self.held.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn keep(&self, bowler: &Bowler) -> Result<(), Refusal> {
        let text = bowler.to_yaml();
        // Held until the file is whole, so that an interruption doesn't come in between.
        let mut held = self.held();
        if let Some(file) = &self.file {
            output::put_into(file, &text)?;
        }
        held.text = text;
        Ok(())
    }

    /// Ends the interview with these words, and writes the profile to standard output if no file has it. Whoever comes first ends it;
    /// whether that was us.
    fn end(&self, words: &str) -> Result<bool, Refusal> {
        let mut held = self.held();
        if std::mem::replace(&mut held.is_over, true) {
            return Ok(false);
        }
        if self.file.is_none() {
            output::print(&held.text)?;
        }
        say(words);
        Ok(true)
    }

    /// Hands the profile over when somebody interrupts.
    fn guard(&self) {
        let kept = self.clone();
        // Without a handler an interruption just ends the program; files are whole even then.
        let _ = ctrlc::set_handler(move || {
            let words = format!(
                "\nInterrupted. What was answered is kept.\n{}",
                kept.how_to_go_on()
            );
            if !matches!(kept.end(&words), Ok(false)) {
                std::process::exit(INTERRUPTED);
            }
        });
    }

    /// The name to go on with, and how it comes to be if it isn't there yet.
    fn name(&self) -> (String, &'static str) {
        match &self.file {
            Some(file) => (clean(&file.display().to_string()), ""),
            None => (
                "FILE.yaml".to_owned(),
                "Save what was printed as FILE.yaml. ",
            ),
        }
    }

    fn how_to_go_on(&self) -> String {
        let (file, save) = self.name();
        format!("{save}Go on later with: spanwright ask {file} -o {file}")
    }
}

/// One interview.
struct Talk<'t> {
    interview: &'t Interview<'t>,
    kept: Kept,
    /// The profile before each answer.
    steps: Vec<Bowler>,
    look: Look,
    is_terminal: bool,
    is_typed: bool,
}

/// How one question ended.
enum Reply {
    Answer(Box<Bowler>),
    Back,
    Stop,
}

impl Talk<'_> {
    fn hold(&mut self, mut bowler: Bowler) -> Result<(), Refusal> {
        let mut greeted = false;
        let saved = loop {
            let question = match self.interview.next(&bowler) {
                Next::Ask(question) => question,
                Next::Done { saved, .. } => break Some(saved),
            };
            if !greeted {
                greeted = true;
                say(
                    "A few questions. You can always say \"I don't know\", or \"help\" for what a question means.\n\
                     \"go back\" takes one step back, \"stop\" ends.",
                );
            }
            match self.ask(&question, &bowler)? {
                Reply::Answer(next) => {
                    self.remark(&bowler, &next);
                    self.kept.keep(&next)?;
                    self.steps.push(std::mem::replace(&mut bowler, *next));
                }
                Reply::Back => match self.steps.pop() {
                    Some(before) => {
                        bowler = before;
                        self.kept.keep(&bowler)?;
                    }
                    None => say("This is the first question."),
                },
                Reply::Stop => break None,
            }
        };
        if !self.kept.end(&self.farewell(saved))? {
            // An interruption came first; it ends the program.
            loop {
                std::thread::park();
            }
        }
        Ok(())
    }

    /// Asks one question until there is an answer, or no more to hear.
    fn ask(&self, question: &Question, bowler: &Bowler) -> Result<Reply, Refusal> {
        say(report::question_text(question, &self.look).trim_end());
        loop {
            prompt();
            let line = hear()?;
            if !self.is_typed {
                // A person's own line break isn't seen here.
                say("");
            }
            let Some(line) = line else {
                return Ok(Reply::Stop);
            };
            match self.interview.request(question, &line) {
                Some(Request::Help) => {
                    say(report::help_text(question, &self.look).trim_end());
                    continue;
                }
                Some(Request::Back) => return Ok(Reply::Back),
                Some(Request::Stop) => return Ok(Reply::Stop),
                None => {}
            }
            match self.interview.hear(bowler, question.id(), &line) {
                Ok(next) => {
                    self.say_back(question, &line, &next);
                    return Ok(Reply::Answer(Box::new(next)));
                }
                Err(why) => {
                    say(&why.to_string());
                    // On a terminal the question has scrolled away when the answer was long.
                    if self.is_terminal && why == Misheard::TooLong {
                        say(question.ask());
                    }
                }
            }
        }
    }

    /// Says what was chosen where it was said by its numbers.
    fn say_back(&self, question: &Question, line: &str, after: &Bowler) {
        let is_by_number = line.contains(|c: char| c.is_ascii_digit());
        let chosen = question.chosen(after);
        if is_by_number && question.form() == Form::Several && !chosen.is_empty() {
            say(&format!("(That is: {}.)", chosen.join(", ")));
        }
    }

    /// Says what the last answer makes worth clearing up.
    fn remark(&self, before: &Bowler, after: &Bowler) {
        for question in after.questions() {
            if !before.questions().contains(question) {
                say(&format!("({})", clean(question.text())));
            }
        }
    }

    /// How many questions it took, and how to go on.
    fn farewell(&self, saved: Option<usize>) -> String {
        let asked = self.steps.len();
        let plural = if asked == 1 { "" } else { "s" };
        match saved {
            Some(saved) => {
                let were = if saved == 1 { "wasn't" } else { "weren't" };
                let (file, save) = self.kept.name();
                format!(
                    "\n{asked} question{plural} asked, {saved} {were} needed.\n{save}Go on with: spanwright advise {file}"
                )
            }
            None => format!(
                "\nThat's all for now: {asked} question{plural} asked.\n{}",
                self.kept.how_to_go_on()
            ),
        }
    }
}

/// Says something on standard error, where it isn't taken for the profile.
fn say(words: &str) {
    // With standard error closed there is nobody to talk to, and answers still come in.
    let _ = writeln!(io::stderr().lock(), "{words}");
}

fn prompt() {
    let mut error = io::stderr().lock();
    let _ = error.write_all(b"> ").and_then(|()| error.flush());
}

/// One line of standard input, of which no more than an answer is kept; none at its end.
fn hear() -> Result<Option<String>, Refusal> {
    let mut input = io::stdin().lock();
    let mut line = Vec::new();
    let mut heard = false;
    loop {
        let piece = match input.fill_buf() {
            Ok(piece) => piece,
            Err(why) if why.kind() == io::ErrorKind::Interrupted => continue,
            Err(why) => return Err(format!("standard input can't be read: {why}")),
        };
        if piece.is_empty() {
            return Ok(heard.then(|| text(&line)));
        }
        heard = true;
        let end = piece.iter().position(|byte| *byte == b'\n');
        let until = end.unwrap_or(piece.len());
        let room = LONGEST_LINE.saturating_sub(line.len()).min(until);
        line.extend_from_slice(piece.get(..room).unwrap_or_default());
        let used = end.map_or(piece.len(), |end| end + 1);
        input.consume(used);
        if end.is_some() {
            return Ok(Some(text(&line)));
        }
    }
}

fn text(line: &[u8]) -> String {
    String::from_utf8_lossy(line).into_owned()
}
