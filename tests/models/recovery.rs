//! Made-up tanks with a known cause: found again far more often than by chance. The full
//! experiment with its tables is `cargo bench --bench recovery`.

use lentic::diagnosis::case::CaseHistory;
use lentic::diagnosis::cause::{ByCause, Cause};
use lentic::diagnosis::dawn::Dawn;
use lentic::diagnosis::hypotheses::Hypotheses;
use lentic::diagnosis::narrowing::Narrowed;
use lentic::diagnosis::weighing::Weighing;
use lentic::plan::Options;

use crate::synthetic::tank;

const TANKS: u64 = 48;
/// Seeds of this test alone.
const FIRST: u64 = 500_000;

fn ranked(spec: &str) -> Vec<Cause> {
    let design = lentic::spec::parse(spec).expect("a sound spec");
    let case = CaseHistory::of(&design, &[]).expect("a case");
    let options = Options {
        members: 8,
        ..Options::default()
    };
    let hypotheses = Hypotheses::of(&case, options).expect("courses");
    let dawn = Dawn::of(&case, options.seed).ok();
    let posterior = Weighing::of(&case, &hypotheses, dawn).posterior;
    posterior
        .ranked()
        .into_iter()
        .map(|(cause, _)| cause)
        .collect()
}

#[test]
fn causes_are_found_again_and_shuffled_labels_are_not() {
    let found: Vec<(Cause, Vec<Cause>)> = (FIRST..FIRST + TANKS)
        .map(|seed| {
            let made = tank(seed);
            (made.cause, ranked(&made.spec))
        })
        .collect();
    let share = |first: usize, label: &dyn Fn(usize) -> Cause| {
        let hits = found
            .iter()
            .enumerate()
            .filter(|(place, (_, ranked))| ranked[..first].contains(&label(*place)));
        hits.count() as f64 / TANKS as f64
    };
    let own = |place: usize| found[place].0;
    let next = |place: usize| found[(place + 7) % found.len()].0;
    // four standard errors of 48 tanks below 60 and 85 % would be 32 and 64 %
    assert!(share(1, &own) > 0.40, "first {}", share(1, &own));
    assert!(share(3, &own) > 0.65, "first three {}", share(3, &own));
    assert!(share(1, &next) < 0.20, "shuffled {}", share(1, &next));
}

const YOUNG: &str = "[tank]\nshape = 'box'\nsize = '45 x 30 x 30 cm'\n\
    [soil]\nmaterial = 'garden_soil'\ndepth = '25 mm'\n\
    [cap]\nmaterial = 'filter_sand'\ndepth = '35 mm'\n\
    [[plants]]\nname = 'ludwigia_repens'\namount = '8 stems'\n";

/// The members of a sound tank that some readings of ammonia, nitrite and nitrate leave.
fn narrowed(readings: &[(u32, f64, f64, f64)]) -> Narrowed {
    let rows: Vec<String> = readings
        .iter()
        .map(|(day, ammonia, nitrite, nitrate)| format!("{day},{ammonia},{nitrite},{nitrate}"))
        .collect();
    let text = format!("day,ammonia,nitrite,nitrate\n{}\n", rows.join("\n"));
    let log = lentic::spec::log::parse(&text, None);
    let design = lentic::spec::parse(YOUNG).expect("a sound spec");
    let case = CaseHistory::of(&design, &log.measurements).expect("a case");
    let options = Options {
        members: 128,
        ..Options::default()
    };
    let hypotheses = Hypotheses::of(&case, options).expect("courses");
    let sound = ByCause::of(|cause| f64::from(u8::from(cause == Cause::AsExpected)));
    Narrowed::of(&case, &hypotheses, &sound, options.seed)
}

#[test]
fn more_dates_leave_fewer_members_and_what_collapses_is_drawn_anew() {
    let one = narrowed(&[(21, 1.0, 1.0, 5.0)]);
    let two = narrowed(&[(14, 1.0, 0.25, 5.0), (21, 1.0, 1.0, 5.0)]);
    assert!(two.effective < one.effective && one.effective < 128.0);
    assert!(!one.resampled, "{}", one.effective);
    // the course of a strong flush, which few draws of this soil take; readings that no draw
    // takes would leave all of them equally unlikely
    let strong = narrowed(&[
        (10, 4.0, 0.25, 5.0),
        (14, 4.0, 1.0, 5.0),
        (21, 2.0, 5.0, 10.0),
        (28, 0.25, 5.0, 40.0),
    ]);
    assert!(strong.resampled, "{}", strong.effective);
    assert!(strong.effective > 20.0, "{}", strong.effective);
    let sum: f64 = strong.members.iter().map(|(weight, ..)| weight).sum();
    assert!((sum - 1.0).abs() < 1e-9);
}
