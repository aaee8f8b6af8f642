//! `lentic man`.

use std::path::Path;

use clap::{Command, CommandFactory};
use clap_mangen::Man;

use super::Outcome;
use super::args::{Arguments, ManOptions};
use super::failure::Failure;
use super::output;

pub(super) fn run(options: &ManOptions) -> Result<Outcome, Failure> {
    let mut main = Arguments::command().disable_help_subcommand(true);
    // Gives every command its full name: lentic-plan.
    main.build();
    match options.folder.as_deref() {
        None => output::write(&page(&main)?, None)?,
        Some(folder) => write_all(&main, folder)?,
    }
    Ok(Outcome::Done)
}

/// A page for the program and one for each of its commands.
fn write_all(main: &Command, folder: &Path) -> Result<(), Failure> {
    for command in std::iter::once(main).chain(main.get_subcommands()) {
        let name = command.get_display_name().unwrap_or(command.get_name());
        let file = folder.join(format!("{name}.1"));
        output::write(&page(command)?, Some(&file))?;
    }
    Ok(())
}

fn page(command: &Command) -> Result<String, Failure> {
    let mut page = Vec::new();
    Man::new(command.clone())
        .source(concat!("lentic ", env!("CARGO_PKG_VERSION")))
        .manual("lentic")
        .render(&mut page)
        .map_err(Failure::Output)?;
    // What stands at the end of a help are its examples.
    Ok(String::from_utf8_lossy(&page).replace("\n.SH EXTRA\n", "\n.SH EXAMPLES\n"))
}
