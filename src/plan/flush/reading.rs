//! A keeper's readings against the band of their day.

use super::section::{DayRow, ReadingRow};
use crate::design::{Design, Reading};
use crate::plan::Estimate;
use crate::units::Concentration;

/// Every reading of a day that the run reaches.
pub(super) fn against(design: &Design, days: &[DayRow]) -> Vec<ReadingRow> {
    design
        .draft()
        .readings
        .iter()
        .filter_map(|reading| Some((reading, days.get(reading.day.round() as usize)?)))
        .flat_map(|(reading, day)| rows(reading, day))
        .collect()
}

fn rows(reading: &Reading, day: &DayRow) -> Vec<ReadingRow> {
    let measured: [(&str, Option<Concentration>, Estimate); 3] = [
        ("ammonia", reading.ammonia, day.ammonia_mg_l),
        ("nitrite", reading.nitrite, day.nitrite_mg_l),
        ("nitrate", reading.nitrate, day.nitrate_mg_l),
    ];
    measured
        .into_iter()
        .filter_map(|(analyte, value, band)| {
            let value_mg_l = value?.mg_l();
            let band_mg_l = band.band();
            Some(ReadingRow {
                day: reading.day,
                analyte,
                value_mg_l,
                band_mg_l,
                lies: if value_mg_l > band_mg_l.high {
                    "above"
                } else if value_mg_l < band_mg_l.low {
                    "below"
                } else {
                    "inside"
                },
            })
        })
        .collect()
}
