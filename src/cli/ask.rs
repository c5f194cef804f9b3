//! `ask`: the interview, on a terminal or through a pipe, one line an answer.

use std::io::{self, BufRead, IsTerminal, Write};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};

use super::arguments::Ask;
use super::{Refusal, answer, output};
use crate::advice::Shop;
use crate::advice::interview::{Interview, Misheard, Next, Question, Request};
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

/// The profile as it stands, written down after every answer, so that an interruption loses nothing.
#[derive(Clone)]
struct Kept {
    file: Option<PathBuf>,
    text: Arc<Mutex<Option<String>>>,
}

impl Kept {
    fn new(file: Option<PathBuf>, bowler: &Bowler) -> Result<Kept, Refusal> {
        let kept = Kept {
            file,
            text: Arc::default(),
        };
        kept.keep(bowler)?;
        Ok(kept)
    }

    fn keep(&self, bowler: &Bowler) -> Result<(), Refusal> {
        let text = bowler.to_yaml();
        // Held until the file is whole, so that an interruption doesn't come in between.
        let mut held = self.text.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(file) = &self.file {
            output::put_into(file, &text)?;
        }
        *held = Some(text);
        Ok(())
    }

    /// Writes the profile to standard output if no file has it; once only.
    fn hand_over(&self) -> Result<(), Refusal> {
        let mut held = self.text.lock().unwrap_or_else(PoisonError::into_inner);
        match (held.take(), &self.file) {
            (Some(text), None) => output::print(&text),
            _ => Ok(()),
        }
    }

    /// Hands the profile over when somebody interrupts.
    fn guard(&self) {
        let kept = self.clone();
        // Without a handler an interruption just ends the program; files are whole even then.
        let _ = ctrlc::set_handler(move || {
            let _ = kept.hand_over();
            output::complain("\nInterrupted. What was answered is kept.");
            std::process::exit(INTERRUPTED);
        });
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
        self.kept.hand_over()?;
        self.part(saved);
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
                Ok(next) => return Ok(Reply::Answer(Box::new(next))),
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

    /// Says what the last answer makes worth clearing up.
    fn remark(&self, before: &Bowler, after: &Bowler) {
        for question in after.questions() {
            if !before.questions().contains(question) {
                say(&format!("({})", clean(question.text())));
            }
        }
    }

    /// How many questions it took, and how to go on.
    fn part(&self, saved: Option<usize>) {
        let asked = self.steps.len();
        let plural = if asked == 1 { "" } else { "s" };
        let shown = self.kept.file.as_ref();
        let shown = shown.map(|file| clean(&file.display().to_string()));
        let file = shown.as_deref().unwrap_or("FILE");
        let keep = if shown.is_some() {
            ""
        } else {
            "Save what was printed as FILE. "
        };
        match saved {
            Some(saved) => {
                let were = if saved == 1 { "wasn't" } else { "weren't" };
                say(&format!(
                    "\n{asked} question{plural} asked, {saved} {were} needed.\n{keep}Go on with: spanwright advise {file}"
                ));
            }
            None => say(&format!(
                "\nThat's all for now: {asked} question{plural} asked.\n{keep}Go on later with: spanwright ask {file} -o {file}"
            )),
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
