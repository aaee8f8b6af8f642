//! What may be typed.

use std::path::PathBuf;

use clap::builder::PossibleValuesParser;
use clap::{Args, Parser, Subcommand};

use super::choice::{
    ColorWhen, Format, ListTopic, MendFormat, RowFormat, ShellChoice, UnitsChoice,
};
use super::examples as example;
use super::shared::{EnsembleOptions, OUTPUT, SpecOptions};
use super::typed::{MOST_DAYS, away, bucket, litres, on_day, shard, stirred};
use crate::plan::{self, OnDay};
use crate::report::compose;
use crate::spec::starter::StarterSize;
use crate::study::Shard;
use crate::units::{Duration, Share, Volume};
use crate::upkeep;

/// Designs and checks low-tech planted freshwater tanks: soil under sand, planted heavily from day one.
#[derive(Debug, Parser)]
#[command(name = "lentic", version, subcommand_value_name = "COMMAND")]
#[command(after_help = format!("First steps:\n{}\n\n{}", example::FIRST_STEPS, example::EXIT_CODES))]
pub(super) struct Arguments {
    /// The command; without one, what to try first is shown.
    #[command(subcommand)]
    pub(super) command: Option<Command>,
}

/// The commands.
#[derive(Debug, Subcommand)]
pub(super) enum Command {
    /// Write a commented spec to start from.
    New(NewOptions),
    /// Plan a tank: quantities, weight, planting, findings.
    Plan(PlanOptions),
    /// Change a spec until its plan holds, by the fewest changes, and say why and what it costs.
    Mend(MendOptions),
    /// Follow the first ninety days: ammonia, nitrite, nitrate, and what to do when.
    Startup(StartupOptions),
    /// Follow a day and a night: oxygen, carbon dioxide, pH; air, flow, light, animals, heat.
    Night(NightOptions),
    /// Keep a running tank: what to thin, top up and change by the week, how its soil ages, and
    /// what happens if.
    Upkeep(UpkeepOptions),
    /// Make up new water: tap and soft water, salts, conditioner, warmth, and how fast it may go in.
    Water(WaterOptions),
    /// Say what is wrong with an existing tank by its readings and signs, and what to do next.
    Check(CheckOptions),
    /// Set tanks side by side, vary them, and pick the ones that no other beats.
    Compare(CompareOptions),
    /// Find the value of one key that just meets a condition.
    Solve(SolveOptions),
    /// List the soils, caps, stones, plants, animals, devices, sizes, signs, sources, rules or
    /// results known here.
    List(ListOptions),
    /// Explain a finding, a result or a source: rule, formula, source; with a spec, the working.
    Explain(ExplainOptions),
    /// Print the JSON Schema of a spec, by which editors check and complete one.
    Schema(SchemaOptions),
    /// Print the completions for a shell.
    Completions(CompletionsOptions),
    /// Print the manual page, or write a page for each command.
    Man(ManOptions),
}

/// Options of `startup`.
#[derive(Debug, Args)]
#[command(after_help = example::STARTUP)]
pub(super) struct StartupOptions {
    /// The spec file, or - for standard input.
    pub(super) spec: PathBuf,
    /// How to write the result; CSV has a row a day.
    #[arg(long, value_enum, default_value = "text", help_heading = OUTPUT)]
    pub(super) format: Format,
    /// Days to follow from the day the soil is flooded, 7 to 1825.
    #[arg(long, value_name = "N", default_value_t = plan::Options::default().days, value_parser = clap::value_parser!(u32).range(7..=MOST_DAYS))]
    pub(super) days: u32,
    #[command(flatten)]
    pub(super) ensemble: EnsembleOptions,
    #[command(flatten)]
    pub(super) common: SpecOptions,
}

/// Options of `night`.
#[derive(Debug, Args)]
#[command(after_help = example::NIGHT)]
pub(super) struct NightOptions {
    /// The spec file, or - for standard input.
    pub(super) spec: PathBuf,
    /// How to write the result; CSV has a row an hour.
    #[arg(long, value_enum, default_value = "text", help_heading = OUTPUT)]
    pub(super) format: Format,
    /// The day after filling, as a number, or: leanest (least oxygen at dawn once all
    /// animals are in), filling, flush-peak, grown-in (the ninetieth day).
    #[arg(long, value_name = "DAY", default_value = "leanest", value_parser = on_day)]
    pub(super) day: OnDay,
    #[command(flatten)]
    pub(super) ensemble: EnsembleOptions,
    #[command(flatten)]
    pub(super) common: SpecOptions,
}

/// Options of `upkeep`.
#[derive(Debug, Args)]
#[command(after_help = example::UPKEEP)]
pub(super) struct UpkeepOptions {
    /// The spec file, or - for standard input.
    pub(super) spec: PathBuf,
    /// The day after filling, 7 to 1825; by itself a year after it, or the last day that the
    /// spec names.
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(i64::from(upkeep::FIRST_DAY)..=i64::from(upkeep::LAST_DAY)))]
    pub(super) day: Option<u32>,
    /// What if so much of the bed is stirred: "20%".
    #[arg(long, value_name = "SHARE", value_parser = stirred, help_heading = WHAT_IF)]
    pub(super) stir: Option<Share>,
    /// What if nobody is there for so long: "14d".
    #[arg(long, value_name = "TIME", value_parser = away, help_heading = WHAT_IF)]
    pub(super) away: Option<Duration>,
    /// What if the tank is carried elsewhere.
    #[arg(long = "move", help_heading = WHAT_IF)]
    pub(super) moved: bool,
    /// What if the animals wait in so much water: "8L".
    #[arg(long, value_name = "VOLUME", value_parser = bucket, help_heading = WHAT_IF)]
    pub(super) bucket: Option<Volume>,
    /// Show everything: the account of nitrogen, the soil by years, cautions in full.
    #[arg(long)]
    pub(super) full: bool,
    /// How to write the result; CSV has a row a week of the year before.
    #[arg(long, value_enum, default_value = "text", help_heading = OUTPUT)]
    pub(super) format: Format,
    #[command(flatten)]
    pub(super) ensemble: EnsembleOptions,
    #[command(flatten)]
    pub(super) common: SpecOptions,
}

/// Heading of the questions to a running tank.
const WHAT_IF: &str = "What if";

/// Options of `plan`.
#[derive(Debug, Args)]
#[command(after_help = example::PLAN)]
pub(super) struct PlanOptions {
    /// The spec file, or - for standard input.
    pub(super) spec: PathBuf,
    /// Sections to show instead of the short plan; JSON, CSV and pages are always whole.
    #[arg(value_name = "SECTION", hide_possible_values = false, value_parser = PossibleValuesParser::new(compose::SECTIONS.map(|(name, _)| name)))]
    pub(super) sections: Vec<String>,
    /// Show every section.
    #[arg(long, conflicts_with = "sections")]
    pub(super) full: bool,
    /// How to write the result.
    #[arg(long, value_enum, default_value = "text", help_heading = OUTPUT)]
    pub(super) format: Format,
    #[command(flatten)]
    pub(super) ensemble: EnsembleOptions,
    #[command(flatten)]
    pub(super) common: SpecOptions,
}

/// Options of `mend`.
#[derive(Debug, Args)]
#[command(after_help = example::MEND)]
pub(super) struct MendOptions {
    /// The spec file, or - for standard input.
    pub(super) spec: PathBuf,
    /// Leave a key as it is, or all keys of a section or a list: `light`, `soil.depth`,
    /// `plants[0].amount`. May be given several times.
    #[arg(long, value_name = "KEY")]
    pub(super) keep: Vec<String>,
    /// Write the mended spec to this file, whole or not at all; nothing is written where no
    /// plan holds.
    #[arg(long, value_name = "NEW", help_heading = OUTPUT)]
    pub(super) out: Option<PathBuf>,
    /// How to write the result: text (what was changed, and why), toml (the mended spec) or
    /// json.
    #[arg(long, value_enum, default_value = "text", hide_possible_values = true, help_heading = OUTPUT)]
    pub(super) format: MendFormat,
    /// Units of the text: metric, or us (inches, US gallons, pounds); by itself those of the
    /// spec.
    #[arg(long, value_enum, hide_possible_values = true, help_heading = OUTPUT)]
    pub(super) units: Option<UnitsChoice>,
    /// Colour: auto (on a terminal, unless `NO_COLOR` is set), always or never.
    #[arg(long, value_enum, value_name = "WHEN", default_value = "auto", hide_possible_values = true, help_heading = OUTPUT)]
    pub(super) color: ColorWhen,
    #[command(flatten)]
    pub(super) ensemble: EnsembleOptions,
}

/// Options of `water`.
#[derive(Debug, Args)]
#[command(after_help = example::WATER)]
pub(super) struct WaterOptions {
    /// The spec file, or - for standard input.
    pub(super) spec: PathBuf,
    /// So much new water: litres, or a volume with its unit (`2 us_gal`). By itself the
    /// regular change of the spec, or a quarter of the water.
    #[arg(long, value_name = "L", value_parser = litres, allow_hyphen_values = true)]
    pub(super) litres: Option<Volume>,
    /// Fill the empty tank.
    #[arg(long, conflicts_with = "litres")]
    pub(super) fill: bool,
    /// How to write the result.
    #[arg(long, value_enum, default_value = "text", help_heading = OUTPUT)]
    pub(super) format: Format,
    #[command(flatten)]
    pub(super) common: SpecOptions,
}

/// Options of `check`.
#[derive(Debug, Args)]
#[command(after_help = example::CHECK)]
pub(super) struct CheckOptions {
    /// The spec file, or - for standard input.
    pub(super) spec: PathBuf,
    /// A log of readings beside those of the spec: CSV with a day or a date and a column
    /// for each of ammonia, nitrite, nitrate, phosphate, ph, temperature, oxygen, hardness,
    /// alkalinity, conductivity, potassium, iron that there is.
    #[arg(long, value_name = "FILE")]
    pub(super) readings: Option<PathBuf>,
    /// Show everything: the evidence, the bed, the weeks ahead, cautions in full.
    #[arg(long)]
    pub(super) full: bool,
    /// How to write the result.
    #[arg(long, value_enum, default_value = "text", help_heading = OUTPUT)]
    pub(super) format: Format,
    #[command(flatten)]
    pub(super) ensemble: EnsembleOptions,
    #[command(flatten)]
    pub(super) common: SpecOptions,
}

/// Options of `compare`.
#[derive(Debug, Args)]
#[command(after_help = example::COMPARE)]
pub(super) struct CompareOptions {
    /// Spec files, folders of them, or - for standard input.
    #[arg(required = true)]
    pub(super) specs: Vec<PathBuf>,
    /// How to write the rows.
    #[arg(long, value_enum, default_value = "text", help_heading = OUTPUT)]
    pub(super) format: RowFormat,
    /// Vary a key: `KEY=A..B/N` (N points from A to B; add log for equal ratios), or
    /// `KEY=x,y,z`. Given several times, every combination is a row.
    #[arg(long, value_name = "KEY=VALUES")]
    pub(super) vary: Vec<String>,
    /// Draw so many evenly spread samples of what is varied instead of every combination.
    #[arg(long, value_name = "N", requires = "vary", value_parser = clap::value_parser!(u32).range(1..))]
    pub(super) sample: Option<u32>,
    /// Results to show, by their JSON path in a plan: `weight.total_kg`, a whole section
    /// such as `tank`, a finding such as `findings.cap.coarse`, or `all`. A row computes only
    /// what it shows.
    #[arg(long, value_name = "RESULT,...", value_delimiter = ',')]
    pub(super) columns: Vec<String>,
    /// Sort by a result, or downwards by -RESULT.
    #[arg(long, value_name = "RESULT", allow_hyphen_values = true)]
    pub(super) sort: Option<String>,
    /// Keep rows that meet a condition: "planting.index>=2", "status<=note".
    #[arg(long, value_name = "CONDITION")]
    pub(super) subject_to: Vec<String>,
    /// Keep the rows with least of a result; with several, those that no other row beats.
    #[arg(long, value_name = "RESULT", visible_alias = "minimize")]
    pub(super) minimise: Vec<String>,
    /// The same for most of a result.
    #[arg(long, value_name = "RESULT", visible_alias = "maximize")]
    pub(super) maximise: Vec<String>,
    /// Say how much each varied key moves a result (text and json).
    #[arg(long, value_name = "RESULT", requires = "vary")]
    pub(super) sensitivity: Option<String>,
    /// Do the I-th of N shares of the rows, so that several processes share them.
    #[arg(long, value_name = "I/N", value_parser = shard)]
    pub(super) shard: Option<Shard>,
    #[command(flatten)]
    pub(super) ensemble: EnsembleOptions,
    #[command(flatten)]
    pub(super) common: SpecOptions,
}

/// Options of `solve`.
#[derive(Debug, Args)]
#[command(after_help = example::SOLVE)]
pub(super) struct SolveOptions {
    /// The key to turn: cap.depth, plants[0].amount, air.flow, water.change.share.
    pub(super) key: String,
    /// The spec file, or - for standard input.
    pub(super) spec: PathBuf,
    /// Where the search begins; the value nearest to it is the answer.
    #[arg(long, value_name = "VALUE", allow_hyphen_values = true)]
    pub(super) from: String,
    /// Where it ends; gives the unit.
    #[arg(long, value_name = "VALUE", allow_hyphen_values = true)]
    pub(super) to: String,
    /// What is to be met: a result by its JSON path in a plan against a number in the
    /// unit that its name ends in, or against a word.
    #[arg(long, value_name = "CONDITION")]
    pub(super) until: String,
    /// How to write the answer.
    #[arg(long, value_enum, default_value = "text", help_heading = OUTPUT)]
    pub(super) format: Format,
    #[command(flatten)]
    pub(super) ensemble: EnsembleOptions,
    #[command(flatten)]
    pub(super) common: SpecOptions,
}

/// Options of `new`.
#[derive(Debug, Args)]
#[command(after_help = example::NEW)]
pub(super) struct NewOptions {
    /// Write to this file instead of standard output; an existing file is kept.
    #[arg(long, value_name = "FILE")]
    pub(super) out: Option<PathBuf>,
    /// Units of the starter: metric, or us (inches, US gallons, pounds).
    #[arg(
        long,
        value_enum,
        default_value = "metric",
        hide_possible_values = true
    )]
    pub(super) units: UnitsChoice,
    /// Inside length x width x height with the unit; bed and planting are fitted to it. By
    /// itself "60 x 30 x 36 cm", or "24 x 12 x 16 in"; or a name of `lentic list sizes`.
    #[arg(long, value_name = "SIZE", value_parser = StarterSize::parse)]
    pub(super) size: Option<StarterSize>,
}

/// Options of `list`.
#[derive(Debug, Args)]
#[command(after_help = example::LIST)]
pub(super) struct ListOptions {
    /// What to list.
    #[arg(value_enum)]
    pub(super) what: ListTopic,
    /// How to write it.
    #[arg(long, value_enum, default_value = "text", help_heading = OUTPUT)]
    pub(super) format: Format,
    /// Colour: auto (on a terminal, unless `NO_COLOR` is set), always or never.
    #[arg(long, value_enum, value_name = "WHEN", default_value = "auto", hide_possible_values = true, help_heading = OUTPUT)]
    pub(super) color: ColorWhen,
    /// Write to this file, whole or not at all, instead of standard output.
    #[arg(long, value_name = "FILE", help_heading = OUTPUT)]
    pub(super) out: Option<PathBuf>,
}

/// Options of `explain`.
#[derive(Debug, Args)]
#[command(after_help = example::EXPLAIN)]
pub(super) struct ExplainOptions {
    /// A rule by the code of its finding (cap.thin), a result by its path in JSON
    /// (`weight.total_kg`) or a source by its key; a section (night) shows what is in it.
    pub(super) what: Option<String>,
    /// A spec whose numbers are worked through.
    pub(super) spec: Option<PathBuf>,
    /// How to write it.
    #[arg(long, value_enum, default_value = "text", help_heading = OUTPUT)]
    pub(super) format: Format,
    #[command(flatten)]
    pub(super) ensemble: EnsembleOptions,
    #[command(flatten)]
    pub(super) common: SpecOptions,
}

/// Options of `schema`.
#[derive(Debug, Args)]
#[command(after_help = example::SCHEMA)]
pub(super) struct SchemaOptions {
    /// Write to this file, whole or not at all, instead of standard output.
    #[arg(long, value_name = "FILE")]
    pub(super) out: Option<PathBuf>,
}

/// Options of `completions`.
#[derive(Debug, Args)]
#[command(after_help = example::COMPLETIONS)]
pub(super) struct CompletionsOptions {
    /// The shell.
    #[arg(value_enum)]
    pub(super) shell: ShellChoice,
    /// Write to this file, whole or not at all, instead of standard output.
    #[arg(long, value_name = "FILE")]
    pub(super) out: Option<PathBuf>,
}

/// Options of `man`.
#[derive(Debug, Args)]
#[command(after_help = example::MAN)]
pub(super) struct ManOptions {
    /// Write a page for each command into this folder instead of printing the main one.
    #[arg(long, value_name = "FOLDER")]
    pub(super) folder: Option<PathBuf>,
}
