//! Logs as keepers write them.

use super::*;
use crate::diagnosis::{Measurand, Reported};

fn read(text: &str) -> ReadingLog {
    parse(text, "2027-03-06".parse().ok())
}

#[test]
fn heads_are_told_however_they_are_written() {
    for head in [
        "NO3",
        "nitrate",
        "Nitrate (ppm)",
        "NO3 [mg/L]",
        "nitrates",
        "nitrate_mg_l",
    ] {
        let log = read(&format!("Day,{head}\n3,20\n"));
        assert_eq!(log.measurements.len(), 1, "{head}: {:?}", log.faults);
        assert_eq!(log.measurements[0].of, Measurand::Nitrate);
        assert!(
            (log.measurements[0].value.number() - 20.0).abs() < 1e-9,
            "{head}"
        );
    }
    let log = read("date;temp (F);pH;DO\n2027-03-16;77;7.1;6\n");
    assert!(log.faults.is_empty(), "{:?}", log.faults);
    assert_eq!(log.measurements.len(), 3);
    assert!((log.measurements[0].value.number() - 25.0).abs() < 1e-9);
    assert!((log.measurements[0].day - 10.0).abs() < 1e-9);
}

/// 14.007/18.039 and 62.004/14.007 by molar masses.
#[test]
fn scales_of_head_and_cell_are_followed() {
    let log = read("day,NH4,nitrate\n3,1,10 mg/L NO3-N\n");
    assert!((log.measurements[0].value.number() - 0.7765).abs() < 1e-3);
    assert!((log.measurements[1].value.number() - 44.27).abs() < 0.05);
}

#[test]
fn cells_say_less_more_trace_and_nothing() {
    let log = read("day,ammonia,nitrite,nitrate\n3,0,trace,>80\n4,<0.25,nd,80+\n5,-,,?\n");
    let values: Vec<Reported> = log.measurements.iter().map(|one| one.value).collect();
    assert_eq!(
        values,
        [
            Reported::Value(0.0),
            Reported::Below(0.25),
            Reported::Above(80.0),
            Reported::Below(0.25),
            Reported::Value(0.0),
            Reported::Above(80.0),
        ]
    );
    assert!(log.faults.is_empty(), "{:?}", log.faults);
}

#[test]
fn what_cannot_be_used_is_named_by_line_and_the_rest_is_kept() {
    let log = read(
        "day,date,ammonia,temp,colour\n\
         -2,,1,,\n\
         ,2027-03-01,1,,\n\
         x,,1,,\n\
         ,,1,,\n\
         5,,-1,24 C,\n\
         6,,0.5,24,\n\
         6,,0.5,24,\n\
         9999,,0.5,,\n",
    );
    let told: Vec<String> = log.faults.iter().map(ToString::to_string).collect();
    let expected = [
        "1: colour: no reading",
        "2: day -2 lies before",
        "3: day -5 lies before",
        "4: \"x\" is no day",
        "5: no day and no date",
        "6: ammonia: ",
        "7: temp: ",
        "8: the row repeats",
        "9: day 9999 is beyond",
    ];
    assert_eq!(told.len(), expected.len(), "{told:#?}");
    for (told, expected) in told.iter().zip(expected) {
        assert!(told.starts_with(expected), "{told} for {expected}");
    }
    assert_eq!(log.measurements.len(), 2);
}

#[test]
fn a_day_that_is_not_that_of_its_date_is_refused_with_both() {
    let log = read("day,date,ammonia\n10,2027-03-16,0.5\n9,2027-03-16,0.5\n10.5,2027-03-16,1\n");
    let told: Vec<String> = log.faults.iter().map(ToString::to_string).collect();
    assert_eq!(told.len(), 1, "{told:#?}");
    assert!(
        told[0].starts_with("3: day 9 and 2027-03-16, which is day 10"),
        "{told:#?}"
    );
    assert_eq!(log.measurements.len(), 2);
    let undated = parse("day,date,ammonia\n9,2027-03-16,0.5\n", None);
    assert_eq!((undated.measurements.len(), undated.faults.len()), (1, 0));
}

#[test]
fn a_second_column_of_one_reading_is_named_and_not_used() {
    let log = read("day,day,ammonia,NH4-N,note,note\n3,4,0.5,0.9,x,y\n");
    let told: Vec<String> = log.faults.iter().map(ToString::to_string).collect();
    let repeated = told.iter().filter(|says| says.contains("holds the same"));
    assert_eq!(repeated.count(), 2, "{told:#?}");
    assert_eq!(log.measurements.len(), 1);
    assert!((log.measurements[0].day - 3.0).abs() < 1e-9);
    assert_eq!(log.measurements[0].value, Reported::Value(0.5));
}

#[test]
fn cells_beyond_the_last_head_are_refused_and_empty_ones_are_not() {
    let log = read("day,ammonia\n3,0.5,0.6\n4,0,5\n5,0.5,,\n");
    let told: Vec<String> = log.faults.iter().map(ToString::to_string).collect();
    assert_eq!(told.len(), 2, "{told:#?}");
    assert!(told[0].starts_with("2: 3 cells, where the first line heads 2"));
    assert_eq!(log.measurements.len(), 1);
}

/// 17.848 mg/L of calcium carbonate are a degree.
#[test]
fn minerals_are_read_in_the_unit_of_their_head() {
    let log = read("day,GH,KH (mg/L CaCO3),EC,potassium,Fe\n3,8,53.544,420,5,0.05\n");
    assert!(log.faults.is_empty(), "{:?}", log.faults);
    let read_as = |of| {
        let found = log.measurements.iter().find(|one| one.of == of);
        found.expect("a reading").value.number()
    };
    for (of, expected) in [
        (Measurand::Hardness, 8.0),
        (Measurand::Alkalinity, 3.0),
        (Measurand::Conductivity, 420.0),
        (Measurand::Potassium, 5.0),
        (Measurand::Iron, 0.05),
    ] {
        assert!((read_as(of) - expected).abs() < 1e-4, "{of:?}");
    }
    // hardness comes in mg/L of more than one thing
    let unsaid = read("day,hardness\n3,120\n");
    assert_eq!((unsaid.measurements.len(), unsaid.faults.len()), (0, 1));
}

/// As programs of many European countries write it.
#[test]
fn semicolons_with_decimal_commas_are_refused_by_name() {
    let log = read("day;ammonia\n3;0,5\n");
    assert!(log.measurements.is_empty());
    assert!(
        log.faults[0].to_string().contains("a comma"),
        "{:?}",
        log.faults
    );
}

#[test]
fn years_begin_with_the_first() {
    let log = parse(
        "date,ammonia\n0000-12-31,0.5\n0001-01-03,0.5\n",
        "0001-01-01".parse().ok(),
    );
    assert_eq!((log.measurements.len(), log.faults.len()), (1, 1));
}

#[test]
fn an_empty_log_holds_nothing() {
    for text in ["", "\n", "day,ammonia\n", "\u{feff}", ",,,\n"] {
        assert!(read(text).measurements.is_empty(), "{text:?}");
    }
}
