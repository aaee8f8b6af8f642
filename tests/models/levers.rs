//! What a keeper's levers do to the odds, against 200 members of an independent prototype of
//! the same equations, within 0.05. `cargo test --test models levers -- --ignored` prints both.

use lentic::source::Band;
use lentic::startup::{Draw, Inputs, Parameters, PlantedMass, ensemble};
use lentic::units::{Area, Length, Mass, PhotonFlux, Share, Temperature};

const FLOOR: f64 = 0.05;
/// Dry mass of a bunch of stems on a square metre of floor.
const BUNCH_G_M2: f64 = 17.6;
const AMMONIA_MG_L: f64 = 0.5;
const NITRITE_MG_L: f64 = 0.1;
const WITHIN: f64 = 0.05;

/// The potting-mix cube with its levers.
#[derive(Clone, Copy)]
struct Cube {
    soil_mm: f64,
    cap_mm: f64,
    soaked: u32,
    cover_pct: f64,
    fast_g_m2: f64,
    slow_g_m2: f64,
    light: f64,
    hours: f64,
    grain_mm: f64,
}

const PLANNED: Cube = Cube {
    soil_mm: 25.0,
    cap_mm: 40.0,
    soaked: 0,
    cover_pct: 35.0,
    fast_g_m2: 52.7,
    slow_g_m2: 27.4,
    light: 80.0,
    hours: 9.0,
    grain_mm: 0.5,
};

impl Cube {
    fn inputs(&self) -> Inputs {
        let floor = Area::from_m2(FLOOR);
        let dry = |g_m2: f64| Mass::from_g(g_m2 * FLOOR);
        Inputs {
            floor,
            water: floor * Length::from_cm(18.0),
            soil_depth: Length::from_mm(self.soil_mm),
            cap_depth: Length::from_mm(self.cap_mm),
            planting: PlantedMass {
                cover: Share::from_percent(self.cover_pct),
                fast: dry(self.fast_g_m2),
                slow: dry(self.slow_g_m2),
                ..PlantedMass::default()
            },
            light: PhotonFlux::from_umol_m2_s(self.light),
            light_hours: self.hours,
            temperature: Temperature::from_celsius(24.0),
            ph: 7.4,
            floaters_above: Some(Share::from_percent(self.cover_pct.max(50.0))),
            ..Inputs::reference()
        }
    }

    fn bands(&self) -> Parameters<Band> {
        let mut bands = Parameters::<Band>::reference();
        let soil = &mut bands.soil;
        soil.dry_bulk_density = Band::new(95.0, 150.0, 250.0);
        soil.porosity = Band::new(0.82, 0.88, 0.95);
        soil.total_nitrogen = Band::new(5.0, 9.0, 14.0);
        soil.mineral_nitrogen = Band::new(0.10, 0.40, 0.90);
        soil.ammonium_kd = Band::new(2.0, 8.0, 20.0);
        soil.pore_phosphate = Band::new(1.0, 5.0, 15.0);
        soil.reducible_phosphorus = Band::new(0.01, 0.05, 0.20);
        soil.fast_share = Band::new(0.004, 0.015, 0.05);
        soil.slow_share = Band::new(0.01, 0.04, 0.12);
        // what the prototype does not know
        soil.stable_mineralisation = Band::exact(0.0);
        soil.stable_phosphorus_return = Band::exact(0.0);
        soil.exchange_turnover = Band::exact(0.0);
        let left = bands.central().soil.left_after_soaking(self.soaked);
        let soil = &mut bands.soil;
        soil.mineral_nitrogen = soil.mineral_nitrogen.scaled(left.ammonium);
        soil.pore_phosphate = soil.pore_phosphate.scaled(left.phosphate);
        bands.cap.porosity = Band::new(0.36, 0.40, 0.45);
        bands.cap.effective_grain = Band::exact(self.grain_mm);
        bands.floating.closed_layer = Band::new(20.0, 50.0, 80.0);
        bands.tap.nitrate = Band::exact(1.13);
        bands
    }

    fn odds(&self) -> f64 {
        let draw = Draw {
            members: 200,
            seed: 1,
        };
        let members = ensemble::members(&self.inputs(), &self.bands(), 90, draw, &|_| ());
        assert_eq!(members.len(), 200);
        let quiet = members.iter().filter(|member| {
            member.ammonia.value <= AMMONIA_MG_L && member.nitrite.value <= NITRITE_MG_L
        });
        quiet.count() as f64 / 200.0
    }
}

const BARE: Cube = Cube {
    cover_pct: 0.0,
    fast_g_m2: 0.0,
    slow_g_m2: 0.0,
    ..PLANNED
};

const fn stems(bunches: f64) -> Cube {
    Cube {
        fast_g_m2: bunches * BUNCH_G_M2,
        ..PLANNED
    }
}

const fn floaters(cover_pct: f64) -> Cube {
    Cube {
        cover_pct,
        ..PLANNED
    }
}

const fn grain(grain_mm: f64) -> Cube {
    Cube {
        grain_mm,
        ..PLANNED
    }
}

/// Each lever with the odds of the prototype.
const TABLE: &[(&str, Cube, f64)] = &[
    ("as planned", PLANNED, 0.970),
    (
        "soil 10 mm",
        Cube {
            soil_mm: 10.0,
            ..PLANNED
        },
        0.995,
    ),
    (
        "soil 50 mm",
        Cube {
            soil_mm: 50.0,
            ..PLANNED
        },
        0.925,
    ),
    (
        "cap 15 mm",
        Cube {
            cap_mm: 15.0,
            ..PLANNED
        },
        0.815,
    ),
    (
        "cap 75 mm",
        Cube {
            cap_mm: 75.0,
            ..PLANNED
        },
        0.995,
    ),
    (
        "soaked twice",
        Cube {
            soaked: 2,
            ..PLANNED
        },
        1.000,
    ),
    (
        "soaked three times",
        Cube {
            soaked: 3,
            ..PLANNED
        },
        1.000,
    ),
    ("floaters 0 %", floaters(0.0), 0.640),
    ("floaters 12 %", floaters(12.0), 0.885),
    ("floaters 60 %", floaters(60.0), 0.990),
    ("no stems", stems(0.0), 0.740),
    ("1 bunch", stems(1.0), 0.910),
    ("15 bunches", stems(15.0), 1.000),
    (
        "light 40",
        Cube {
            light: 40.0,
            ..PLANNED
        },
        0.860,
    ),
    (
        "light 200",
        Cube {
            light: 200.0,
            ..PLANNED
        },
        0.990,
    ),
    (
        "6 h",
        Cube {
            hours: 6.0,
            ..PLANNED
        },
        0.900,
    ),
    (
        "14 h",
        Cube {
            hours: 14.0,
            ..PLANNED
        },
        0.990,
    ),
    ("grain 0.2 mm", grain(0.2), 0.975),
    ("grain 1 mm", grain(1.0), 0.940),
    ("grain 2.1 mm", grain(2.1), 0.900),
    ("grain 5.2 mm", grain(5.2), 0.700),
    ("no plants", BARE, 0.020),
    (
        "slow growers only",
        Cube {
            slow_g_m2: 27.4,
            ..BARE
        },
        0.020,
    ),
    (
        "5 % and 1 bunch",
        Cube {
            cover_pct: 5.0,
            ..stems(1.0)
        },
        0.450,
    ),
    (
        "50 % and 8 bunches",
        Cube {
            cover_pct: 50.0,
            ..stems(8.0)
        },
        0.995,
    ),
];

#[test]
#[ignore = "five thousand starts; run when the model changes"]
fn levers_move_the_odds_as_in_an_independent_prototype() {
    let mut off = Vec::new();
    for (name, cube, printed) in TABLE {
        let odds = cube.odds();
        println!("{name:20} {odds:.3} prototype {printed:.3}");
        if (odds - printed).abs() > WITHIN + 1e-9 {
            off.push((name, odds, printed));
        }
    }
    assert!(off.is_empty(), "{off:?}");
}
