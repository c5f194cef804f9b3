//! The command-line door.

use std::process::ExitCode;

fn main() -> ExitCode {
    spanwright::cli::run(std::env::args_os())
}
