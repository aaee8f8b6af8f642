//! `lentic completions`.

use clap::builder::PossibleValuesParser;
use clap::{Command, CommandFactory, ValueHint, value_parser};
use clap_complete::aot::{Shell, generate};

use super::Outcome;
use super::args::{Arguments, CompletionsOptions};
use super::choice::ShellChoice;
use super::failure::Failure;
use super::output;
use crate::catalogue;
use crate::design::key::{KEYS, KeyKind};
use crate::explanation;
use crate::report::dictionary::{self, results};
use crate::source::Source;

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
    if let Some(path) = options.out.as_deref() {
        output::make_folder_of(path)?;
    }
    output::write(&script(options.shell), options.out.as_deref())?;
    Ok(Outcome::Done)
}

/// The completions of a shell.
fn script(shell: ShellChoice) -> String {
    let mut command = with_names(Arguments::command());
    let name = command.get_name().to_owned();
    let mut script = Vec::new();
    generate(Shell::from(shell), &mut command, name, &mut script);
    let script = String::from_utf8_lossy(&script).into_owned();
    match shell {
        ShellChoice::Bash => offered_in_bash(&script),
        ShellChoice::Fish => script + &offered_in_fish(),
        ShellChoice::Zsh => script,
    }
}

/// The command with the names that stand at their places: they are only offered, for what is
/// typed is read with more freedom.
fn with_names(command: Command) -> Command {
    let file =
        |command: Command| command.mut_arg("spec", |arg| arg.value_hint(ValueHint::FilePath));
    let result = |command: Command, arg: &'static str| {
        command.mut_arg(arg, |arg| {
            arg.value_parser(PossibleValuesParser::new(paths()))
        })
    };
    command
        .mut_subcommand("plan", |plan| {
            // what is given anew goes last, and the sections follow the spec; a shell offers the
            // names of a place at every place, and would insert one for the spec
            file(plan).mut_arg("sections", |arg| arg.value_parser(value_parser!(String)))
        })
        .mut_subcommand("startup", file)
        .mut_subcommand("night", file)
        .mut_subcommand("water", file)
        .mut_subcommand("check", file)
        .mut_subcommand("explain", |explain| {
            file(explain).mut_arg("what", |arg| {
                arg.value_parser(PossibleValuesParser::new(explained()))
            })
        })
        .mut_subcommand("solve", |solve| {
            file(solve).mut_arg("key", |arg| {
                arg.value_parser(PossibleValuesParser::new(turned()))
            })
        })
        .mut_subcommand("mend", |mend| {
            file(mend).mut_arg("keep", |arg| {
                arg.value_parser(PossibleValuesParser::new(turned()))
            })
        })
        .mut_subcommand("compare", |compare| {
            let compare = compare.mut_arg("specs", |arg| arg.value_hint(ValueHint::AnyPath));
            let compare = compare.mut_arg("vary", |arg| {
                arg.value_parser(PossibleValuesParser::new(varied()))
            });
            let named = ["columns", "sort", "minimise", "maximise", "sensitivity"];
            named.into_iter().fold(compare, result)
        })
}

/// What `explain` explains: codes, results and sources.
fn explained() -> Vec<&'static str> {
    let codes = explanation::topics()
        .iter()
        .map(|topic| topic.code.as_str());
    let sources = Source::ALL.iter().map(|source| source.key());
    codes.chain(paths()).chain(sources).collect()
}

/// The results of a plan; brackets of lists would have to be quoted from the shell.
fn paths() -> Vec<&'static str> {
    let of_plan = results()
        .iter()
        .filter(|row| row.command == dictionary::ResultCommand::Plan);
    let paths = of_plan.map(|row| row.path.as_str());
    paths.filter(|path| !path.contains('[')).collect()
}

/// The keys that can be turned, those in lists apart.
fn turned() -> Vec<&'static str> {
    let keys = KEYS.iter().filter(|key| key.prepare.is_some());
    let paths = keys.map(|key| key.path);
    paths.filter(|path| !path.contains('[')).collect()
}

/// The keys that can be varied, and those that name a row of the catalogue with each name.
fn varied() -> Vec<String> {
    let keys = turned().into_iter().map(|key| format!("{key}="));
    let named = named()
        .into_iter()
        .flat_map(|(key, names)| names.into_iter().map(move |name| format!("{key}={name}")));
    keys.chain(named).collect()
}

/// The keys that name a row of the catalogue, with the names of its list.
fn named() -> Vec<(&'static str, Vec<&'static str>)> {
    let keys = KEYS.iter().filter(|key| turned().contains(&key.path));
    let named = keys.filter_map(|key| match key.kind {
        KeyKind::Name(list) => Some((key.path, catalogue::names_in(list))),
        _ => None,
    });
    named.collect()
}

/// The names of what is no option, which are not written for fish by themselves; files are
/// offered beside them.
fn offered_in_fish() -> String {
    let line = |command: &str, words: Vec<&str>| {
        format!(
            "complete -c lentic -n \"__fish_lentic_using_subcommand {command}\" -a \"{}\"\n",
            words.join(" ")
        )
    };
    line("explain", explained()) + &line("solve", turned())
}

/// How words are offered in bash: options after a dash, else names, else the shell's files;
/// else TAB after a command would insert the dash that all its options share.
const OFFER: &str = r#"__lentic_offer() {
    local word words=""
    for word in ${opts}; do
        if [[ "${cur}" == -* && "${word}" == -* ]] || [[ "${cur}" != -* && "${word}" != -* ]]; then
            words+=" ${word}"
        fi
    done
    COMPREPLY=( $(compgen -W "${words}" -- "${cur}") )
}

"#;

/// What completes in bash: the shell parts words at an equals sign, and after one stand the
/// names that the key before it may be.
const COMPLETE: &str = r#"__lentic_complete() {
    local key="" names=""
    [[ "${COMP_WORDS[COMP_CWORD]}" == "=" ]] && key="${COMP_WORDS[COMP_CWORD-1]}"
    [[ "${COMP_WORDS[COMP_CWORD-1]}" == "=" ]] && key="${COMP_WORDS[COMP_CWORD-2]}"
    case "${key}" in
NAMED    esac
    if [[ -n "${names}" ]]; then
        COMPREPLY=( $(compgen -W "${names}" -- "$2") )
        return
    fi
    _lentic "$@"
    [[ "${COMPREPLY[0]}" == *= ]] && compopt -o nospace 2>/dev/null
}

"#;

fn offered_in_bash(script: &str) -> String {
    let plain = r#"COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )"#;
    let case = |(key, names): (&str, Vec<&str>)| {
        format!("        {key}) names=\"{}\" ;;\n", names.join(" "))
    };
    let cases: String = named().into_iter().map(case).collect();
    let script = script
        .replace(plain, "__lentic_offer")
        .replace("complete -F _lentic ", "complete -F __lentic_complete ");
    format!("{OFFER}{}{script}", COMPLETE.replace("NAMED", &cases))
}
