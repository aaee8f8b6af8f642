//! What people write is read, and what could mislead is refused.

use approx::assert_relative_eq;

use super::size::Size;
use super::{
    Alkalinity, Analyte, Concentration, Flow, Hardness, Length, Mass, Pressure, Quantity,
    Temperature, UnitSystem, Volume, printable, show,
};

#[test]
fn lengths_are_read_as_people_write_them() {
    let two_inches = [
        "2 in", "2in", "2 inches", "2\"", " 2  IN ", "2 inch", "2.0 in.",
    ];
    for text in two_inches {
        assert_relative_eq!(
            Length::parse(text).unwrap().mm(),
            50.8,
            max_relative = 1e-12
        );
    }
    for (text, mm) in [
        ("5cm", 50.0),
        ("1/2 in", 12.7),
        ("1 1/2 in", 38.1),
        ("1-1/2 in", 38.1),
        ("1e1 mm", 10.0),
        ("2e+1 mm", 20.0),
        ("2E-1 cm", 2.0),
        ("3 feet", 914.4),
        (".5 cm", 5.0),
    ] {
        assert_relative_eq!(Length::parse(text).unwrap().mm(), mm, max_relative = 1e-12);
    }
}

#[test]
fn volumes_masses_and_temperatures_are_read_as_people_write_them() {
    for (text, litres) in [
        ("60 l", 60.0),
        ("60 Litres", 60.0),
        ("1.5 ft3", 42.475_269_888),
        ("1.5 ft³", 42.475_269_888),
        ("8 dry_qt", 8.809_767_541_72),
        ("8 dry quarts", 8.809_767_541_72),
        ("10 us_gal", 37.854_117_84),
        ("10 US gallons", 37.854_117_84),
        ("10 imp_gal", 45.4609),
    ] {
        assert_relative_eq!(
            Volume::parse(text).unwrap().litres(),
            litres,
            max_relative = 1e-11
        );
    }
    assert_relative_eq!(
        Mass::parse("50 lbs").unwrap().kg(),
        22.679_618_5,
        max_relative = 1e-12
    );
    assert_relative_eq!(
        Temperature::parse("75 F").unwrap().celsius(),
        // what is read is kept to thirteen digits
        23.888_888_888_888_89,
        max_relative = 1e-12
    );
    assert_relative_eq!(Temperature::parse("-4 °C").unwrap().celsius(), -4.0);
    assert_relative_eq!(Flow::parse("300 L/h").unwrap().l_min(), 5.0);
    // An imperial gallon is 4.54609 L by definition.
    assert_relative_eq!(Flow::parse("60 imp_gal/h").unwrap().l_min(), 4.546_09);
    assert_relative_eq!(
        Alkalinity::parse("4 dKH").unwrap().caco3_mg_l(),
        71.392,
        max_relative = 1e-3
    );
}

#[test]
fn ambiguous_units_are_refused_with_the_choices() {
    let gallon = Volume::parse("10 gal").unwrap_err().to_string();
    assert_eq!(
        gallon,
        "\"gal\" could mean us_gal or imp_gal; say which: us_gal or imp_gal"
    );
    assert!(
        Volume::parse("8 qts")
            .unwrap_err()
            .to_string()
            .contains("dry_qt or liq_qt")
    );
    assert!(
        Hardness::parse("8 ppm")
            .unwrap_err()
            .to_string()
            .contains("dGH")
    );
    assert!(Hardness::parse("8 mg/L").is_err());
    for gallons in ["50 gph", "50 gal/h", "50 gal/hr"] {
        let refused = Flow::parse(gallons).unwrap_err().to_string();
        assert!(
            refused.ends_with("say which: us_gal/h or imp_gal/h"),
            "{refused}"
        );
    }
    assert!(
        Alkalinity::parse("4 °")
            .unwrap_err()
            .to_string()
            .contains("dKH")
    );
}

#[test]
fn what_is_no_quantity_is_refused_with_a_way_out() {
    for (text, word) in [
        ("5", "no unit"),
        ("cm", "start with a number"),
        ("", "start with a number"),
        ("NaN cm", "finite"),
        ("inf cm", "finite"),
        ("1e999 cm", "finite"),
        ("-3 cm", "below zero"),
        ("1,5 cm", "decimal point"),
        ("5 kg", "mm"),
        ("5 cn", "for example \"5 cm\""),
    ] {
        let error = Length::parse(text).unwrap_err().to_string();
        assert!(error.contains(word), "{text}: {error}");
    }
}

#[test]
fn sizes_take_their_unit_from_the_last_number() {
    let size = Size::parse("20 x 10 x 12 in").unwrap();
    assert_relative_eq!(size.width.cm(), 25.4);
    let mixed = Size::parse("60 cm × 300 mm × 1 ft").unwrap();
    assert_relative_eq!(mixed.height.cm(), 30.48);
    assert!(
        Size::parse("60 x 30 cm")
            .unwrap_err()
            .to_string()
            .contains("2 of the 3")
    );
    assert!(Size::parse("60 x 30 x 36").is_err());
}

#[test]
fn readings_are_brought_to_the_scale_of_their_analyte() {
    for (analyte, text, own) in [
        (Analyte::Ammonia, "0.5 mg/L NH4", 0.388_25),
        (Analyte::Ammonia, "0.5 mg/L", 0.5),
        (Analyte::Nitrate, "20 mg/L NO3-N", 88.53),
        (Analyte::Nitrate, "20 ppm", 20.0),
        (Analyte::Nitrite, "0.25 mg N/L", 0.8211),
    ] {
        assert_relative_eq!(
            analyte.parse(text).unwrap().mg_l(),
            own,
            max_relative = 1e-3
        );
    }
    assert!(Analyte::Nitrate.parse("20 mg/L NH4").is_err());
    assert!(Analyte::Nitrate.parse("20").is_err());
}

#[test]
fn shown_numbers_carry_no_needless_digits() {
    for (value, shown) in [
        (0.0, "0"),
        (4.449, "4.4"),
        (1234.0, "1200"),
        (0.0456, "0.046"),
        (9.96, "10"),
    ] {
        assert_eq!(show::significant(value, 2), shown);
    }
    assert_eq!(show::fixed(-0.04, 1), "0");
}

/// Molar masses by the standard atomic weights of 2021: N 14.007, O 15.999, P 30.974.
#[test]
fn nitrogen_and_phosphorus_are_the_shares_of_their_ions() {
    for (analyte, element, ion) in [
        (Analyte::Ammonia, 1.0, 1.0),
        (Analyte::Nitrite, 14.007, 14.007 + 2.0 * 15.999),
        (Analyte::Nitrate, 14.007, 14.007 + 3.0 * 15.999),
        (Analyte::Phosphate, 30.974, 30.974 + 4.0 * 15.999),
    ] {
        let held = analyte.element(Concentration::from_mg_l(ion)).mg_l();
        assert_relative_eq!(held, element, max_relative = 1e-4);
        let whole = analyte.from_element(Concentration::from_mg_l(element));
        assert_relative_eq!(whole.mg_l(), ion, max_relative = 1e-4);
    }
    for (analyte, text, own) in [
        (Analyte::Ammonia, "17.031 mg/L NH3", 14.007),
        (Analyte::Ammonia, "18.039 mg/L NH4", 14.007),
        (Analyte::Phosphate, "30.974 mg/L PO4-P", 94.970),
    ] {
        let read = analyte.parse(text).unwrap().mg_l();
        assert_relative_eq!(read, own, max_relative = 1e-4);
    }
}

#[test]
fn results_are_shown_in_the_units_that_were_asked_for() {
    let (metric, us) = (UnitSystem::Metric, UnitSystem::Us);
    let inch = Length::from_mm(25.4);
    let two = Length::from_mm(50.8);
    let pound = |share: f64| Mass::from_kg(share * 0.453_592_37);
    let gallons = Volume::from_litres(2.0 * 3.785_411_784);
    for (shown, expected) in [
        (metric.depth(inch), "25 mm"),
        (us.depth(inch), "1 in"),
        (metric.depths([inch, two]), "25 mm to 51 mm"),
        (us.depths([inch, inch]), "1 in"),
        (metric.dimension(inch), "2.5 cm"),
        (us.dimension(two), "2 in"),
        (us.grain(Length::from_mm(0.456)), "0.46 mm"),
        (metric.volume(gallons), "7.57 L"),
        (us.volume(gallons), "2 US gal"),
        (metric.bulk_volume(Volume::from_litres(0.1)), "0.1 L"),
        (metric.bulk_volume(Volume::from_litres(0.05)), "50 mL"),
        (us.bulk_volume(Volume::from_litres(2.202_442)), "2 dry qt"),
        (metric.mass(Mass::from_kg(1.0)), "1 kg"),
        (metric.mass(Mass::from_kg(0.25)), "250 g"),
        (us.mass(pound(0.25)), "0.25 lb"),
        (us.mass(pound(0.125)), "2 oz"),
        // 28.3495 g to the ounce
        (us.plant_mass(Mass::from_kg(0.012)), "0.42 oz"),
        (metric.temperature(Temperature::from_celsius(24.0)), "24 C"),
        (us.temperature(Temperature::from_celsius(25.0)), "77 F"),
        (us.temperature(Temperature::from_celsius(-40.0)), "-40 F"),
        (metric.floor_pressure(Pressure::from_kpa(4.4)), "4.4 kPa"),
        (us.floor_pressure(Pressure::from_kpa(4.788_026)), "100 psf"),
        (metric.flow(Flow::from_l_min(0.5)), "0.5 L/min"),
        (us.flow(Flow::from_l_min(3.785_411_784)), "60 US gal/h"),
    ] {
        assert_eq!(shown, expected);
    }
}

#[test]
fn what_drives_a_terminal_or_turns_the_line_is_blanked() {
    for unprintable in [
        '\u{1b}', '\n', '\u{7f}', '\u{9b}', '\u{2028}', '\u{202e}', '\u{2066}',
    ] {
        assert_eq!(printable(&format!("a{unprintable}b")), "a b");
    }
    assert_eq!(
        printable("Teich \u{fc}ber \u{1f41f}"),
        "Teich \u{fc}ber \u{1f41f}"
    );
}
