//! What the help of each command shows at its end; every example is run by a test.

/// Commands that lead from nothing to a plan that is understood, and out of trouble.
pub(super) const FIRST_STEPS: &str = concat!(
    "  lentic new --out my-tank.toml     write a commented spec to fill in\n",
    "  lentic plan my-tank.toml          see what to buy and what will happen\n",
    "  lentic explain flush.ammonia      see the rule and the source behind a finding\n",
    "  lentic check my-tank.toml         find out what is wrong with a tank that runs",
);

pub(super) const EXIT_CODES: &str =
    "Exit codes: 0 done, 1 a finding at or above --fail-on, 2 bad input, 3 a fault of lentic.";

pub(super) const NEW: &str = "\
Examples:
  A starter for the tank at hand
    lentic new --size \"45 x 30 x 30 cm\" --out shelf.toml
  In inches, US gallons and pounds
    lentic new --units us --size \"16 x 8 x 10 in\"";

pub(super) const PLAN: &str = "\
Examples:
  What to buy, how to plant, what will happen
    lentic plan cube.toml
  One page to print or to read on a phone
    lentic plan cube.toml --format html --out cube.html
  Stop a script where something has to be mended
    lentic plan cube.toml --fail-on act --format json --out cube.json";

pub(super) const MEND: &str = "\
Examples:
  What to change so that nothing is left to mend or watch
    lentic mend cube.toml
  The mended spec into a new file; lamp and soil stay as they are
    lentic mend cube.toml --keep light --keep soil.depth --out sound.toml
  The changes for a script
    lentic mend cube.toml --format json

Exit codes: 0 the plan holds, 1 no plan does and the nearest is told, 2 bad input.";

pub(super) const STARTUP: &str = "\
Examples:
  Ammonia, nitrite and nitrate with their bands, and the calendar
    lentic startup cube.toml
  A row a day for a spreadsheet
    lentic startup cube.toml --days 60 --format csv --out days.csv";

pub(super) const NIGHT: &str = "\
Examples:
  The night with least oxygen once all animals are in
    lentic night cube.toml
  The thirtieth night
    lentic night cube.toml --day 30";

pub(super) const UPKEEP: &str = "\
Examples:
  What a week asks for a year after filling, and how the soil ages
    lentic upkeep cube.toml
  The second year, as a page with its course
    lentic upkeep cube.toml --day 730 --format html --out year.html
  A big plant dug out, two weeks of holiday
    lentic upkeep cube.toml --stir 20% --away 14d
  Moving house, with the animals in a bucket
    lentic upkeep cube.toml --move --bucket 8L";

pub(super) const WATER: &str = "\
Examples:
  New water for the next change
    lentic water cube.toml
  The first fill
    lentic water cube.toml --fill
  Eight litres, for a script
    lentic water cube.toml --litres 8 --format json

What the tap gives and what is asked for stand in the spec under [water]: hardness,
alkalinity, softened, goal, disinfectant, chlorine, cold, hot; the conditioner's dose
under [conditioner].";

pub(super) const CHECK: &str = "\
Examples:
  By the readings and signs in the spec
    lentic check cube.toml
  With a log of readings
    printf 'day,NH4,NO2,NO3\\n21,0.5,1,10\\n28,<0.25,0.25,20\\n' > log.csv
    lentic check cube.toml --readings log.csv

lentic list signs shows the words for what can be seen.";

pub(super) const COMPARE: &str = "\
Examples:
  Three tanks side by side
    lentic compare cube.toml shelf.toml hall.toml
  Every tank of a folder, as CSV
    lentic compare tanks/ --format csv --out tanks.csv
  Which cap, how deep?
    lentic compare cube.toml --vary cap.material=play_sand,filter_sand --vary cap.depth=20..60mm/5
  The cheapest of 40 samples that hold the flush in at least 80 % of the starts
    lentic compare cube.toml --vary cap.depth=20..60mm --vary 'plants[0].amount=5..45%' \\
      --sample 40 --subject-to 'planting.probability_under_limits>=0.8' --minimise cost.total
  Light against heavy: the rows that no other beats in both
    lentic compare cube.toml --vary soil.depth=15..50mm/8 --vary cap.depth=20..60mm/9 \\
      --minimise weight.total_kg --minimise bed.release_peak_mg_n_m2_d
  A large grid on four processes
    seq 4 | xargs -P4 -I{} lentic compare cube.toml --vary cap.depth=20..60mm/400 \\
      --columns weight.total_kg --shard {}/4 --format jsonl --out part-{}.jsonl

A row that is no tank is named at the end, and the others go on. Bounds are plain numbers
in the unit that the result's name ends in.";

pub(super) const SOLVE: &str = "\
Examples:
  How deep a cap keeps the peak of ammonia under 0.5 mg/L?
    lentic solve cap.depth cube.toml --from 20mm --to 60mm --until 'startup.ammonia_peak_mg_l<=0.5'
  How many floaters until four starts in five stay under the limits?
    lentic solve 'plants[0].amount' cube.toml --from 0.1% --to 45% \\
      --until 'planting.probability_under_limits>=0.8'
  How high may the tank be under 100 kg?
    lentic solve tank.height cube.toml --from 60cm --to 20cm --until 'weight.total_kg<=100'

The range is looked at in 16 steps and the answer found to a ten-thousandth of it. Where
the condition is never met, or comes and goes, the answer says so.";

pub(super) const LIST: &str = "\
Examples:
  Every name that a plant is known by
    lentic list plants
  The grains of every cap, for a spreadsheet
    lentic list caps --format csv --out caps.csv";

pub(super) const EXPLAIN: &str = "\
Examples:
  A rule and where it comes from
    lentic explain cap.coarse
  A result of a tank, worked through
    lentic explain night.dawn_oxygen_mg_l cube.toml
  What rests on a source
    lentic explain boudreau_1996

All names: lentic list rules, lentic list results, lentic list sources.";

pub(super) const SCHEMA: &str = "\
Example:
  Beside the specs, where editors with TOML support look for it
    lentic schema --out lentic.schema.json";

pub(super) const COMPLETIONS: &str = "\
Where shells look for them:
    lentic completions bash --out ~/.local/share/bash-completion/completions/lentic
    lentic completions fish --out ~/.config/fish/completions/lentic.fish
    lentic completions zsh --out _lentic     in a folder of $fpath";

pub(super) const MAN: &str = "\
Examples:
  For man ./lentic.1
    lentic man > lentic.1
  A page for each command
    mkdir man1; lentic man --folder man1";
