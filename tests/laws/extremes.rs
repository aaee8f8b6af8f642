//! Plans at the ends of what a spec may say: every number is there and finite.

use lentic::plan::{Options, followed};

use crate::odd::odd_in;

/// One tank at some corner of the allowed values.
#[derive(Debug, Clone, Copy)]
struct Corner {
    celsius: f64,
    ph: f64,
    nitrate_mg_l: f64,
    light_hours: f64,
    planted: bool,
    emptied_on_day_0: bool,
}

impl Corner {
    fn spec(self) -> String {
        let plants = "[[plants]]\nname = \"duckweed\"\namount = \"30 %\"\n\
                      [[plants]]\nname = \"ludwigia_repens\"\namount = \"20 stems\"\n";
        let change = "[[events]]\nday = 0\nwater_change = \"100 %\"\n";
        format!(
            "[tank]\nshape = \"box\"\nsize = \"60 x 30 x 36 cm\"\n\
             [soil]\nmaterial = \"organic_potting_mix\"\ndepth = \"25 mm\"\n\
             [cap]\nmaterial = \"filter_sand\"\ndepth = \"35 mm\"\n\
             [water]\ntemperature = \"{} C\"\nph = {}\nnitrate = \"{} mg/L\"\n\
             [light]\nclass = \"medium\"\nhours = {}\n{}{}",
            self.celsius,
            self.ph,
            self.nitrate_mg_l,
            self.light_hours,
            if self.planted { plants } else { "" },
            if self.emptied_on_day_0 { change } else { "" },
        )
    }
}

/// Whether a case is followed, by the numbers of its values: of three or two values each,
/// any value still meets any other in one case of three. With `LENTIC_LAWS` set all are.
fn is_followed(numbers: &[usize]) -> bool {
    let all = std::env::var_os("LENTIC_LAWS").is_some();
    all || numbers.iter().sum::<usize>().is_multiple_of(3)
}

fn corners() -> Vec<Corner> {
    let mut corners = Vec::new();
    for (i, celsius) in [0.0, 24.0, 40.0].into_iter().enumerate() {
        for (j, ph) in [4.0, 7.0, 10.0].into_iter().enumerate() {
            for number in 0..16_usize {
                let [nitrate, light, planted, emptied] = [1, 2, 4, 8].map(|bit| number & bit != 0);
                let chosen = [nitrate, light, planted, emptied].map(usize::from);
                if is_followed(&[&[i, j], &chosen[..]].concat()) {
                    corners.push(Corner {
                        celsius,
                        ph,
                        nitrate_mg_l: if nitrate { 500.0 } else { 0.0 },
                        light_hours: if light { 9.0 } else { 0.0 },
                        planted,
                        emptied_on_day_0: emptied,
                    });
                }
            }
        }
    }
    corners
}

/// What is odd in all that a tank's plan, start and night give.
fn oddities(spec: &str, members: u32, days: u32) -> Vec<String> {
    let design = lentic::spec::parse(spec).unwrap_or_else(|faults| panic!("{faults}\n{spec}"));
    let options = Options {
        members,
        days,
        ..Options::default()
    };
    let (plan, course, night) =
        followed(&design, options).unwrap_or_else(|error| panic!("{error}\n{spec}"));
    [odd_in(&plan), odd_in(&course), odd_in(&night)].concat()
}

#[test]
fn every_corner_of_the_allowed_values_gives_finite_numbers() {
    for corner in corners() {
        let found = oddities(&corner.spec(), 0, 60);
        assert!(found.is_empty(), "{corner:?}: {found:?}");
    }
}

#[test]
fn an_ensemble_at_the_ends_gives_finite_numbers() {
    for (celsius, ph) in [(0.0, 4.0), (24.0, 7.0), (40.0, 10.0)] {
        for planted in [false, true] {
            let corner = Corner {
                celsius,
                ph,
                nitrate_mg_l: 500.0,
                light_hours: if planted { 9.0 } else { 0.0 },
                planted,
                emptied_on_day_0: true,
            };
            for members in [1, 9] {
                let found = oddities(&corner.spec(), members, 60);
                assert!(found.is_empty(), "{corner:?}: {found:?}");
            }
        }
    }
}

/// Air from next to none to 1,000 L/min, high in the mountains, in the cold, the heat and the
/// dark, with animals of no number and too many.
#[test]
fn nights_at_the_ends_give_finite_numbers() {
    let devices = ["air_stone", "sponge_filter", "pump"];
    for (i, device) in devices.into_iter().enumerate() {
        for (j, l_min) in ["0.001", "1000"].into_iter().enumerate() {
            for (k, celsius) in [0.0, 40.0].into_iter().enumerate() {
                for (l, (count, hours)) in [(0, 0), (200, 0), (200, 24)].into_iter().enumerate() {
                    if !is_followed(&[i, j, k, l]) {
                        continue;
                    }
                    let corner = Corner {
                        celsius,
                        ph: 7.0,
                        nitrate_mg_l: 5.0,
                        light_hours: f64::from(hours),
                        planted: hours > 0,
                        emptied_on_day_0: false,
                    };
                    let spec = format!(
                        "{}[air]\ndevice = \"{device}\"\nflow = \"{l_min} L/min\"\ndepth = \"10 cm\"\n\
                         [[animals]]\nname = \"small_fish\"\ncount = {count}\nfrom_day = 7\n\
                         [room]\naltitude = \"3000 m\"\ntemperature = \"{celsius} C\"\n",
                        corner.spec()
                    );
                    let found = oddities(&spec, 3, 14);
                    assert!(found.is_empty(), "{spec}: {found:?}");
                }
            }
        }
    }
}

#[test]
fn a_run_of_no_or_few_days_gives_finite_numbers() {
    let corner = corners()[0];
    for days in [0, 1, 2, 3] {
        for members in [0, 3] {
            let found = oddities(&corner.spec(), members, days);
            assert!(found.is_empty(), "{days} days: {found:?}");
        }
    }
}

/// The search itself has to find what it is for.
#[test]
fn a_missing_number_is_found_out() {
    let broken = std::collections::BTreeMap::from([
        ("bed", vec![Some(1.0), Some(f64::NAN)]),
        ("release", vec![Some(f64::INFINITY)]),
    ]);
    assert_eq!(odd_in(&broken), [".bed[1]: NaN", ".release[0]: inf"]);
    let words = std::collections::BTreeMap::from([("name", "infant"), ("says", "inf mg/L")]);
    assert_eq!(odd_in(&words), [".says: inf mg/L"]);
}
