//! New water as a document.

use super::{finding, reason};
use crate::design::Design;
use crate::finding::Status;
use crate::makeup::{Makeup, working_of};
use crate::report::document::{Block, Document, Fact};
use crate::source::Band;
use crate::units::Volume;
use crate::units::show::{fixed, significant};

/// What it is mixed of, the work in its order, and what it is then.
pub fn water(design: &Design, made: &Makeup) -> Document {
    let mut blocks = vec![
        Block::Verdict(Status::Ok, verdict(design, made)),
        Block::Heading("Do".to_owned()),
        Block::Items(made.order.clone()),
        Block::Heading("The new water".to_owned()),
        Block::Facts(facts(made)),
    ];
    blocks.extend(finding::cautions(&made.cautions));
    Document {
        title: made.name.clone(),
        reasons: reason::worked(&blocks, &[], |code| working_of(design, made, code)),
        blocks,
    }
}

fn verdict(design: &Design, made: &Makeup) -> String {
    let total = design
        .draft()
        .units
        .volume(Volume::from_litres(made.total_l));
    format!(
        "{total} of new water, {} % of what the tank holds",
        fixed(made.share_pct, 0)
    )
}

fn facts(made: &Makeup) -> Vec<Fact> {
    let degrees = |value: f64, unit: &str| format!("{} {unit}", significant(value, 3));
    let mut facts = vec![
        Fact::new("hardness", degrees(made.hardness_dgh, "dGH"), "").by("water.mixture"),
        Fact::new("alkalinity", degrees(made.alkalinity_dkh, "dKH"), "").by("water.mixture"),
        Fact::new("nitrate", degrees(made.nitrate_mg_l, "mg/L"), "").by("water.mixture"),
        Fact::new(
            "conductivity",
            ranged(made.conductivity_us_cm, "uS/cm"),
            "a meter tells better",
        )
        .by("water.mixture"),
    ];
    if made.sodium_mg_l > 0.0 {
        let value = degrees(made.sodium_mg_l, "mg/L");
        facts.push(Fact::new("sodium", value, "from the baking soda").by("water.salts"));
    }
    if made.ammonia_left_mg_l.high > 0.0 {
        let rise = ranged(made.ammonia_rise_mg_l, "mg N/L");
        facts.push(
            Fact::new(
                "ammonia",
                ranged(made.ammonia_left_mg_l, "mg N/L"),
                format!("raises the tank's by {rise}"),
            )
            .by("water.chlorine"),
        );
    }
    facts
}

/// "0.2 mg/L (0.02 to 0.79)".
fn ranged(band: Band, unit: &str) -> String {
    let typical = format!("{} {unit}", significant(band.typical, 2));
    if band.low >= band.high {
        return typical;
    }
    format!(
        "{typical} ({} to {})",
        significant(band.low, 2),
        significant(band.high, 2)
    )
}
