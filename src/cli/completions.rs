//! `lentic completions`.

use clap::CommandFactory;
use clap_complete::aot::{Shell, generate};

use super::Outcome;
use super::args::{Arguments, CompletionsOptions};
use super::choice::ShellChoice;
use super::failure::Failure;
use super::output;

impl From<ShellChoice> for Shell {
    fn from(choice: ShellChoice) -> Self {
        match choice {
            ShellChoice::Bash => Self::Bash,
            ShellChoice::Zsh => Self::Zsh,
            ShellChoice::Fish => Self::Fish,
        }
    }
}

pub(super) fn run(options: &CompletionsOptions) -> Result<Outcome, Failure> {
    let mut command = Arguments::command();
    let name = command.get_name().to_owned();
    let mut script = Vec::new();
    generate(Shell::from(options.shell), &mut command, name, &mut script);
    let script = String::from_utf8_lossy(&script);
    output::write(&script, options.out.as_deref())?;
    Ok(Outcome::Done)
}
