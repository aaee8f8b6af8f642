//! A keeper's readings against the band of their day.

use super::section::{DayRow, ReadingRow};
use crate::design::{Design, Draft, Reading};
use crate::plan::estimate::Estimate;
use crate::source::Band;
use crate::units::{Analyte, Concentration};
use crate::water::card::Card;

/// Every reading of a day that the run reaches.
pub(super) fn against(design: &Design, days: &[DayRow]) -> Vec<ReadingRow> {
    design
        .draft()
        .readings
        .iter()
        .filter_map(|reading| Some((reading, days.get(reading.day.round() as usize)?)))
        .flat_map(|(reading, day)| rows(design.draft(), reading, day))
        .collect()
}

fn rows(draft: &Draft, reading: &Reading, day: &DayRow) -> Vec<ReadingRow> {
    let measured: [(Analyte, &str, Option<Concentration>, Estimate); 3] = [
        (
            Analyte::Ammonia,
            "ammonia",
            reading.ammonia,
            day.ammonia_mg_l,
        ),
        (
            Analyte::Nitrite,
            "nitrite",
            reading.nitrite,
            day.nitrite_mg_l,
        ),
        (
            Analyte::Nitrate,
            "nitrate",
            reading.nitrate,
            day.nitrate_mg_l,
        ),
    ];
    measured
        .into_iter()
        .filter_map(|(of, analyte, value, band)| {
            let value_mg_l = value?.mg_l();
            let band_mg_l = band.band();
            Some(ReadingRow {
                day: reading.day,
                analyte,
                value_mg_l,
                band_mg_l,
                lies: lies(draft.card(of), value_mg_l, band_mg_l),
            })
        })
        .collect()
}

/// Where the water that a kit's card read lies: a mark stands for a range, and 0 for
/// all that the kit cannot tell from nothing.
fn lies(card: Option<Card<'_>>, value_mg_l: f64, band_mg_l: Band) -> &'static str {
    let read = card.map(|card| card.between(value_mg_l));
    let (low, high) = read.unwrap_or((value_mg_l, value_mg_l));
    if low > band_mg_l.high {
        "above"
    } else if high < band_mg_l.low {
        "below"
    } else {
        "inside"
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mark_lies_where_the_water_behind_it_does() {
        // marks 0, 0.25 and 0.5: water under 0.125, up to 0.354, up to 0.707 mg/L
        for (read, low, high, lies_there) in [
            (0.0, 0.003, 0.03, "inside"),
            (0.0, 0.2, 0.3, "below"),
            (0.25, 0.003, 0.03, "above"),
            (0.25, 0.3, 0.4, "inside"),
            (0.5, 0.8, 0.9, "below"),
        ] {
            let band = Band::new(low, low, high);
            assert_eq!(
                lies(Card::of(Analyte::Ammonia), read, band),
                lies_there,
                "{read}"
            );
        }
    }
}
