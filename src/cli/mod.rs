//! The command line: plain verbs over the library.
//!
//! Results go to standard output (or `-o FILE`), faults to standard error. Exit codes: 0 done, 1 bad input, 2 misuse.

mod answer;
mod arguments;
mod ask;
mod calibrate;
mod check;
mod compare;
mod coverage;
mod diff;
mod facts;
mod legal;
mod output;
mod refit;
mod roll;
mod sheet;
mod target;
mod upgrade;
mod whatif;

use std::ffi::OsString;
use std::process::ExitCode;

use clap::Parser;

use arguments::{Arguments, RulesVerb, Verb};

/// Exit code where the files or the bowler are at fault.
const BAD_INPUT: u8 = 1;
/// Exit code where the command itself is.
const MISUSE: u8 = 2;

/// What ends a command early: the words for standard error.
type Refusal = String;

/// Runs one command, given with the program's name first, and says how it ended.
///
/// Prints the result or all faults. Never panics on any input.
pub fn run(arguments: impl IntoIterator<Item = OsString>) -> ExitCode {
    let arguments = match Arguments::try_parse_from(arguments) {
        Ok(arguments) => arguments,
        Err(usage) => {
            // Help and version arrive here too, and are no misuse. A closed pipe is nobody's fault.
            let _ = usage.print();
            return if usage.use_stderr() {
                ExitCode::from(MISUSE)
            } else {
                ExitCode::SUCCESS
            };
        }
    };
    let done = target::check(&arguments).and_then(|()| run_verb(&arguments.verb));
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(refusal) => {
            output::complain(&refusal);
            ExitCode::from(BAD_INPUT)
        }
    }
}

fn run_verb(verb: &Verb) -> Result<(), Refusal> {
    match verb {
        Verb::Advise(ask) => answer::advise(ask),
        Verb::Fit(ask) => answer::fit(ask),
        Verb::Calibrate(ask) => calibrate::calibrate(ask),
        Verb::Legal(ask) => legal::judge(ask),
        Verb::Refit(ask) => refit::refit(ask),
        Verb::Sheet(ask) => sheet::draw(ask),
        Verb::Compare(ask) => compare::run(ask),
        Verb::Whatif(ask) => whatif::run(ask),
        Verb::Ask(ask) => ask::run(ask),
        Verb::Roll(ask) => roll::run(ask),
        Verb::Upgrade(ask) => upgrade::run(ask),
        Verb::Facts(ask) => facts::list(ask),
        Verb::Rules {
            verb: RulesVerb::Check(ask),
        } => check::check(ask),
        Verb::Rules {
            verb: RulesVerb::Coverage(ask),
        } => coverage::run(ask),
        Verb::Rules {
            verb: RulesVerb::Diff(ask),
        } => diff::run(ask),
    }
}
