//! A spec is the spec of one tank: longer lists and deeper nests are refused by name.

use lentic::spec::{self, KEYS, Key, KeyKind};

use crate::base;

/// A minimal spec whose list at a key has so many sections, each as in its example.
fn with_list(key: &Key, count: usize) -> String {
    if let KeyKind::Names(_) = key.kind {
        let names = vec![format!("\"{}\"", key.example); count].join(", ");
        let section = format!("[{}]\n{} = [{names}]\n", key.section(), key.leaf());
        return base::good("minimal.toml") + &section;
    }
    let example = key.example.trim_start_matches('[').trim_end_matches(']');
    // A hundred of the example's stones or plants would fill the tank.
    let example = example
        .replace("2 kg", "10 g")
        .replace("30 %", "1 %")
        .replace("10 %", "0.1 %");
    let items = vec![example.as_str(); count].join(", ");
    let list = format!("{} = [{items}]\n", key.leaf());
    let minimal = base::good("minimal.toml");
    match key.section() {
        "" => list + &minimal,
        // Plants are taken out that were put in.
        "events[]" => format!(
            "{minimal}[[plants]]\nname = \"lemna_minor\"\namount = \"1 %\"\n[[events]]\nday = 1\n{list}"
        ),
        section => {
            let heading = format!("[{section}]\n");
            if minimal.contains(&heading) {
                minimal.replace(&heading, &format!("{heading}{list}"))
            } else {
                format!("{minimal}{heading}{list}")
            }
        }
    }
}

#[test]
fn every_list_has_a_limit_that_is_kept() {
    let is_list = |key: &&Key| matches!(key.kind, KeyKind::Sections | KeyKind::Names(_));
    for key in KEYS.iter().filter(is_list) {
        let most = key.most.expect("a limit") as usize;
        let full = with_list(key, most);
        assert_eq!(base::faults(&full).0, [], "{}", key.path);
        let faults = base::faults(&with_list(key, most + 1)).0;
        assert_eq!(faults.len(), 1, "{}", key.path);
        assert_eq!(base::table_path(&faults[0].key), key.path);
        assert!(faults[0].rule.ends_with(&format!("at most {most}")));
    }
}

#[test]
fn the_limits_of_lists_are_those_documented() {
    for (path, most) in [
        ("plants", 100),
        ("animals", 100),
        ("hardscape", 100),
        ("events", 500),
        ("readings", 1000),
        ("soil.bags", 12),
        ("cap.bags", 12),
    ] {
        let key = KEYS.iter().find(|key| key.path == path).expect("a key");
        assert_eq!(key.most, Some(most), "{path}");
    }
}

#[test]
fn a_tank_with_every_list_full_is_planned() {
    let mut text = base::good("minimal.toml");
    for path in ["events", "plants", "animals", "readings", "hardscape"] {
        let key = KEYS.iter().find(|key| key.path == path).expect("a key");
        let item = key.example.trim_matches(['[', ']', '{', '}', ' ']);
        let section = format!("[[{path}]]\n{}\n", item.replace(", ", "\n"));
        // All the stones of the world do not fit into the tank.
        let count = if path == "hardscape" {
            1
        } else {
            key.most.expect("a limit")
        };
        text += &section.repeat(count as usize);
    }
    let text = text.replace("\"30 %\"", "\"1 %\"");
    let design = spec::parse(&text).unwrap_or_else(|faults| panic!("{faults}"));
    let options = lentic::plan::Options {
        members: 0,
        ..Default::default()
    };
    assert!(lentic::plan::plan(&design, options).is_ok());
}

#[test]
fn a_deep_nest_is_refused_with_the_depth() {
    for text in [
        format!("a = {}", "[".repeat(100_000)),
        format!("a = {}", "{ b = ".repeat(10_000)),
        format!("{}b = 1", "a.".repeat(100_000)),
        format!("[{}b]", "a.".repeat(100_000)),
    ] {
        let faults = base::faults(&text).0;
        let deep = faults.iter().find(|fault| fault.rule.contains("80 deep"));
        assert!(deep.is_some(), "{:?}", faults.first());
    }
}

#[test]
fn a_text_is_at_most_two_hundred_characters_long_whatever_it_says() {
    let most = "\u{fc}".repeat(200);
    let named = format!("name = \"{most}\"\n{}", base::good("minimal.toml"));
    assert_eq!(base::faults(&named).0, []);
    let files = base::files("good");
    let mut texts = 0;
    for key in KEYS.iter().filter(|key| key.kind.is_quoted()) {
        let (file, line) = base::with_key(&files, key).expect("a good spec");
        let is_heading = file
            .text
            .lines()
            .nth(line)
            .is_some_and(|line| line.starts_with('['));
        if is_heading || matches!(key.kind, KeyKind::Depth) {
            continue;
        }
        texts += 1;
        let long = format!("{} = \"{most}x\"", key.leaf());
        let faults = base::faults(&base::replaced(&file.text, line, &[long])).0;
        let found = faults
            .iter()
            .find(|fault| base::table_path(&fault.key) == key.path);
        let rule = &found.unwrap_or_else(|| panic!("{}", key.path)).rule;
        assert!(
            rule.ends_with("at most 200 characters long"),
            "{}: {rule}",
            key.path
        );
    }
    assert!(texts > 50, "{texts}");
}

/// The largest figures of every key at once, price and mass and number.
#[test]
fn a_tank_at_the_upper_limits_is_planned_in_finite_numbers() {
    let bags = |unit: &str| {
        format!(
            "bags = [{{ size = \"1000 {unit}\", price = 10000000 }}, {{ size = \"0.001 {unit}\", price = 10000000 }}]"
        )
    };
    let text = format!(
        "[tank]\nshape = \"box\"\nsize = \"100 x 100 x 100 m\"\nstand = \"10000 kg\"\n\
         [soil]\nmaterial = \"loam_topsoil\"\ndepth = \"1 m\"\n{}\n\
         [cap]\nmaterial = \"filter_sand\"\ndepth = \"1 m\"\n{}\n\
         [[hardscape]]\nmaterial = \"granite\"\nmass = \"10000 kg\"\n\
         [[plants]]\nname = \"ludwigia_repens\"\namount = \"100000 stems\"\nprice = 10000000\n\
         [[plants]]\nname = \"lemna_minor\"\namount = \"100000 g\"\nprice = 10000000\n\
         [[animals]]\nname = \"small_shrimp\"\ncount = 100000\n\
         [feed]\nmass_per_day = \"10 kg\"\n[room]\ntariff = 1000000\ntemperature = \"-20 C\"\n",
        bags("L"),
        bags("kg"),
    );
    let design = spec::parse(&text).unwrap_or_else(|faults| panic!("{faults}"));
    let options = lentic::plan::Options {
        members: 0,
        ..Default::default()
    };
    let plan = lentic::plan::plan(&design, options).expect("a plan");
    let cost = plan.cost.expect("prices are given").total;
    assert!(cost.is_finite() && cost > 0.0, "{cost}");
    assert!(plan.heat.kwh_per_year.is_finite() && plan.weight.total_kg.is_finite());
}

#[test]
fn a_log_has_a_limit_of_bytes_rows_and_characters() {
    let heads = "day,ammonia\n";
    let full = heads.to_owned() + &"1,0.25\n2,0.5\n".repeat(5_000);
    let first = |text: &str| {
        let log = spec::log::parse(text, None);
        let of_limits = |fault: &&spec::log::LogFault| fault.says.contains("at most");
        let found = log.faults.iter().find(of_limits);
        (log.measurements.len(), found.map(ToString::to_string))
    };
    assert_eq!(first(&full), (2, None));
    let (kept, fault) = first(&(full + "3,1\n"));
    let fault = fault.expect("a limit");
    assert!(
        kept == 2 && fault.starts_with("10002: a log has at most 10000 rows"),
        "{fault}"
    );
    let (kept, fault) = first(&format!("{heads}{}1\n", "#".repeat(1 << 20)));
    let fault = fault.expect("a limit");
    assert!(kept == 0 && fault.contains("1048576 bytes"), "{fault}");
    let (kept, fault) = first(&format!("{heads}1,{}1\n2,1\n", "0".repeat(60)));
    let fault = fault.expect("a limit");
    assert!(
        kept == 1 && fault.contains("a cell of 61 characters"),
        "{fault}"
    );
}

#[test]
fn a_date_lies_between_the_years_1_and_9999() {
    let tank = include_str!("good/minimal.toml");
    for (date, is_read) in [
        ("0000-12-31", false),
        ("0001-01-01", true),
        ("9999-12-31", true),
        ("10000-01-01", false),
    ] {
        let dated = format!("start = {date}\n{tank}");
        assert_eq!(spec::parse(&dated).is_ok(), is_read, "{date}");
    }
}
