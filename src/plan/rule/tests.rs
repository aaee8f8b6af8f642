//! Verdicts at and beside their limits. Expected values are the trade's
//! practice (common practice, no source) unless a line says otherwise.

use super::bed_gas::GasRelease;
use super::cap_coarse::CoarseLimits;
use super::cap_deep::{BedDepth, CapDepth};
use super::cap_fine::{FineLimits, Fineness};
use super::cap_slope::Slope;
use super::cap_thin::{CapDepthLimits, Thickness};
use super::soil_depth::{Richness, SoilDepthLimits};
use crate::finding::Status::{self, Act, Note, Ok, Watch};
use crate::substrate::filter::{BaseSoil, FilterSoil};
use crate::substrate::repose::GrainShape;
use crate::units::{Length, Share, Volume};

fn mm(value: f64) -> Length {
    Length::from_mm(value)
}

fn coarse(d15_mm: f64) -> Status {
    CoarseLimits::over(&FilterSoil::Organic)
        .judge(mm(d15_mm))
        .status()
}

#[test]
fn coarse_caps_over_potting_mix_are_judged_as_the_trade_does() {
    // 20/40, filter sand, 12/20 and 1-2 mm sound; 2-4 mm watched; 4-8 mm and pea gravel not.
    let d15_mm = [0.459, 0.58, 0.918, 1.08, 2.16, 4.32, 5.4];
    assert_eq!(d15_mm.map(coarse), [Ok, Ok, Ok, Ok, Watch, Act, Act]);
}

#[test]
fn a_sandy_soil_takes_a_coarser_cap_and_clay_a_finer_one() {
    let base = |fines: f64, d85_mm: f64| {
        FilterSoil::Mineral(BaseSoil {
            fines: Share::from_percent(fines),
            d85: mm(d85_mm),
            d15: mm(0.002),
        })
    };
    let sand = CoarseLimits::over(&base(10.0, 1.0));
    assert_eq!(sand.judge(mm(6.4)).status(), Ok);
    assert_eq!(sand.judge(mm(6.5)).status(), Act);
    let clay = CoarseLimits::over(&base(90.0, 0.03));
    assert_eq!(clay.judge(mm(0.43)).status(), Ok);
    assert_eq!(clay.judge(mm(0.46)).status(), Watch);
}

fn fine(d10_mm: f64, d15_mm: f64, fines: Option<f64>) -> Fineness {
    FineLimits::over(&FilterSoil::Organic).judge(
        mm(d10_mm),
        mm(d15_mm),
        fines.map(Share::from_percent),
    )
}

#[test]
fn fine_caps_are_judged_as_the_trade_does() {
    assert_eq!(fine(0.04, 0.05, Some(60.0)).status(), Act, "silt");
    assert_eq!(fine(0.16, 0.21, Some(1.0)).status(), Watch, "masonry sand");
    assert_eq!(fine(0.20, 0.23, None).status(), Watch, "play sand");
    assert_eq!(fine(0.26, 0.28, None).status(), Ok, "30/60");
}

#[test]
fn fines_alone_make_a_cap_silty() {
    assert_eq!(fine(0.3, 0.4, Some(5.1)), Fineness::Silty);
    assert_eq!(fine(0.3, 0.4, Some(5.0)), Fineness::Loose);
    assert_eq!(fine(0.08, 0.099, None), Fineness::Seals);
}

#[test]
fn a_coarse_mineral_soil_asks_for_a_coarser_cap() {
    let soil = FilterSoil::Mineral(BaseSoil {
        fines: Share::from_percent(5.0),
        d85: mm(1.0),
        d15: mm(0.2),
    });
    let limits = FineLimits::over(&soil);
    assert_eq!(limits.judge(mm(0.5), mm(0.79), None), Fineness::Seals);
    assert_eq!(limits.judge(mm(0.5), mm(0.81), None), Fineness::Loose);
}

fn thin(litres: f64, thinnest_mm: f64) -> Status {
    let limits = CapDepthLimits::in_tank(Volume::from_litres(litres));
    limits.judge(mm(thinnest_mm)).status()
}

#[test]
fn thin_caps_are_judged_by_the_size_of_the_tank() {
    assert_eq!(
        [14.9, 15.0, 24.9, 25.0].map(|depth| thin(60.0, depth)),
        [Act, Watch, Watch, Ok]
    );
    assert_eq!(
        [9.9, 10.0, 14.9, 15.0].map(|depth| thin(19.9, depth)),
        [Act, Watch, Watch, Ok]
    );
    assert_eq!(thin(20.0, 15.0), Watch);
}

#[test]
fn what_a_thin_cap_misses_makes_it_sound() {
    let limits = CapDepthLimits::in_tank(Volume::from_litres(60.0));
    let Thickness::TooThin { missing } = limits.judge(mm(12.0)) else {
        panic!("12 mm counts as thick enough");
    };
    assert!((missing.mm() - 13.0).abs() < 1e-9);
    assert_eq!(limits.judge(mm(12.0) + missing), Thickness::Enough);
}

#[test]
fn a_depth_given_in_another_unit_is_not_thin_by_rounding() {
    let limits = CapDepthLimits::in_tank(Volume::from_litres(60.0));
    assert_eq!(
        limits.judge(mm(25.0) - Length::from_m(1e-12)),
        Thickness::Enough
    );
}

fn bed(cap_mm: f64, soil_mm: f64, height_mm: f64) -> BedDepth {
    BedDepth {
        cap: mm(cap_mm),
        soil: mm(soil_mm),
        tank_height: mm(height_mm),
        cap_least: mm(25.0),
    }
}

fn deep(cap_mm: f64, soil_mm: f64, height_mm: f64) -> Status {
    CapDepth::judge(&bed(cap_mm, soil_mm, height_mm)).status()
}

#[test]
fn deep_caps_are_watched_from_80_and_mended_from_100_mm() {
    // 80 mm: Kim et al. 2007.
    let judged = [79.9, 80.0, 99.9, 100.0].map(|cap| deep(cap, 30.0, 600.0));
    assert_eq!(judged, [Ok, Watch, Watch, Act]);
}

#[test]
fn a_cap_is_deep_for_its_soil_only_over_50_mm_and_three_times_the_soil() {
    assert_eq!(deep(50.0, 10.0, 600.0), Ok);
    assert_eq!(deep(51.0, 10.0, 600.0), Watch);
    assert_eq!(deep(75.0, 25.0, 600.0), Ok);
    assert_eq!(deep(76.0, 25.0, 600.0), Watch);
}

#[test]
fn a_bed_may_take_a_third_of_the_height() {
    assert_eq!(deep(40.0, 30.0, 210.0), Ok);
    assert_eq!(deep(40.0, 30.0, 209.0), Watch);
}

#[test]
fn taking_off_what_is_said_makes_a_deep_cap_sound() {
    for (cap, soil, height, take_off) in [
        (120.0, 40.0, 600.0, 120.0 - 75.0),
        (60.0, 15.0, 600.0, 60.0 - 50.0),
        (60.0, 25.0, 200.0, 60.0 - (200.0 / 3.0 - 25.0)),
    ] {
        let verdict = CapDepth::judge(&bed(cap, soil, height));
        assert_ne!(verdict.status(), Ok);
        assert!((verdict.take_off.mm() - take_off).abs() < 1e-9);
        assert_eq!(
            deep(cap - verdict.take_off.mm(), soil, height),
            Ok,
            "cap {cap} mm"
        );
    }
}

#[test]
fn a_cap_is_never_thinned_below_what_is_sound() {
    let verdict = CapDepth::judge(&bed(30.0, 80.0, 250.0));
    assert_eq!(verdict.status(), Watch);
    assert!((verdict.take_off.mm() - 5.0).abs() < 1e-9);
    let thin = CapDepth::judge(&bed(20.0, 80.0, 250.0));
    assert_eq!(thin.take_off, Length::ZERO);
}

fn soil(richness: Richness, mean_mm: f64, deepest_mm: f64) -> Status {
    let limits = SoilDepthLimits::of(richness);
    limits.judge(mm(mean_mm), mm(deepest_mm)).status()
}

#[test]
fn soil_is_noted_when_thin_and_judged_at_its_deepest_place() {
    let plain = |mean, deepest| soil(Richness::Plain, mean, deepest);
    assert_eq!(plain(9.9, 9.9), Note);
    assert_eq!(plain(10.0, 50.0), Ok);
    assert_eq!(plain(30.0, 50.1), Watch);
    assert_eq!(plain(30.0, 75.0), Watch);
    assert_eq!(plain(30.0, 75.1), Act);
}

#[test]
fn rich_soil_is_watched_from_30_mm() {
    assert_eq!(soil(Richness::Rich, 29.9, 29.9), Ok);
    assert_eq!(soil(Richness::Rich, 30.0, 30.0), Watch);
    assert_eq!(soil(Richness::Plain, 30.0, 30.0), Ok);
}

#[test]
fn bubbles_are_a_note_and_never_more() {
    let judged =
        [(0.9, 3.0), (1.1, 3.0), (50.0, 0.5)].map(|(made, entry)| GasRelease::judge(made, entry));
    let wanted = [
        GasRelease::Dissolved,
        GasRelease::BubblesPushingGrains,
        GasRelease::BubblesThroughPores,
    ];
    assert_eq!(judged, wanted);
    assert_eq!(judged.map(GasRelease::status), [Ok, Note, Note]);
}

#[test]
fn round_grains_slide_on_slopes_where_sharp_ones_stand() {
    // 25 and 34 degrees: Kleinhans et al. 2011; centrifuge avalanches.
    assert_eq!(Slope::judge(30.0, GrainShape::Rounded).status(), Watch);
    assert_eq!(Slope::judge(30.0, GrainShape::Angular).status(), Ok);
    assert_eq!(Slope::judge(34.1, GrainShape::Angular).status(), Watch);
}
