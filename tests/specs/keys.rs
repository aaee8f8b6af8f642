//! The keys that files in the field rely on.

use lentic::spec::{self, KEYS, KeyKind};

use crate::base;

/// Every key, typed in here: no key changes its name, none goes.
const PROMISED: &str = "
name units start tank soil cap hardscape plants water light air animals feed room harvest events
kit readings signs goal
tank.shape tank.size tank.length tank.width tank.height tank.diameter tank.radius tank.width_end
tank.width_middle tank.sides tank.side tank.cut_length tank.cut_width tank.front tank.back tank.base
tank.mouth tank.outside tank.wall tank.bottom tank.material tank.freeboard tank.lid tank.rim tank.stand
soil.material soil.depth soil.depth.back soil.depth.front soil.depth.left soil.depth.right soil.soaked
soil.bags soil.bags[].size soil.bags[].price soil.properties soil.properties.dry_bulk_density
soil.properties.porosity soil.properties.total_nitrogen soil.properties.mineral_nitrogen
soil.properties.organic_matter soil.properties.ammonium_kd
cap.material cap.depth cap.depth.back cap.depth.front cap.depth.left cap.depth.right
cap.bags cap.bags[].size cap.bags[].price cap.grading cap.grading.d10 cap.grading.d15 cap.grading.d50
cap.grading.d85 cap.properties cap.properties.dry_bulk_density cap.properties.porosity
hardscape[].material hardscape[].mass
plants[].name plants[].amount plants[].emergent plants[].price
water.temperature water.ph water.alkalinity water.hardness water.ammonia water.nitrite water.nitrate
water.phosphate water.potassium water.magnesium water.iron water.conductivity water.disinfectant
water.chlorine water.cold water.hot water.top_up water.softened water.softened.hardness
water.softened.alkalinity water.softened.nitrate water.goal water.goal.hardness
water.goal.alkalinity conditioner conditioner.label
water.change water.change.share water.change.every water.change.from water.change.until
light.par light.class light.lumens light.height light.hours
air.device air.flow air.depth air.hours
animals[].name animals[].count animals[].from_day feed.mass_per_day feed.protein
room.temperature room.humidity room.altitude room.tariff harvest.floaters_above
harvest.stems_above harvest.taken harvest.taken[].day harvest.taken[].floaters harvest.taken[].stems
events[].day events[].cap_added events[].water_change events[].disturbed
events[].plants_added events[].plants_added[].name events[].plants_added[].amount
events[].plants_added[].emergent events[].plants_added[].price
events[].plants_removed events[].plants_removed[].name events[].plants_removed[].amount
events[].medicine events[].filter_washed events[].lamp_changed events[].sprayed events[].gas_added
events[].dosed events[].dosed.salt events[].dosed.mass events[].dosed.purity events[].fed
events[].topped_up events[].away events[].off events[].drained
events[].animals_added events[].animals_added[].name events[].animals_added[].count
kit.ammonia kit.nitrite kit.nitrate
readings[].day readings[].date readings[].ammonia readings[].nitrite readings[].nitrate
readings[].phosphate readings[].ph readings[].temperature readings[].oxygen readings[].hardness
readings[].alkalinity readings[].conductivity readings[].potassium readings[].iron
readings[].blank
signs.observed signs.absent signs.looked
goal.probability goal.ammonia goal.nitrite goal.nitrate goal.dawn_oxygen
";

/// Every sign, typed in here as well.
const SIGNS: &str = "
gasping_at_dawn gasping_all_day white_haze green_haze tea_haze soil_plume soil_visible
bubbles_from_bed craters black_bed sulfide_smell brown_dust green_dust hair_algae blue_green_slime
surface_film stalled_plants melting_leaves old_leaves_yellow new_leaves_pale pale_floaters
melting_floaters pitted_shells falling_ph deaths_after_change plants_floating_up
spots_on_animals rubbing clamped_fins listless failed_moult circling unknown_creatures growing_well
pearling lively breeding foul_smell chlorine_smell muddy_water wood_fuzz spot_algae flat_worms
leggy_stems leaf_pinholes roots_in_sand body_left_lying
";

#[test]
fn every_promised_sign_is_read_by_its_name() {
    for sign in SIGNS.split_whitespace() {
        let signs = format!("[signs]\nobserved = [\"{sign}\"]\n");
        let draft = spec::parse_draft(&(base::good("minimal.toml") + &signs), "tank");
        let names = draft.map(|draft| draft.signs.observed[0].name.clone());
        assert_eq!(names, Ok(sign.to_owned()));
    }
}

#[test]
fn the_table_holds_the_promised_keys_and_no_other() {
    let mut promised: Vec<&str> = PROMISED.split_whitespace().collect();
    let mut table: Vec<&str> = KEYS.iter().map(|key| key.path).collect();
    promised.sort_unstable();
    table.sort_unstable();
    assert_eq!(promised, table);
}

#[test]
fn the_limits_of_single_keys_are_those_documented() {
    for (path, words) in [
        ("water.ph", "from 3 to 11"),
        ("readings[].ph", "from 3 to 11"),
        ("water.temperature", "from 0 C to 40 C"),
        ("conditioner.label", "above 0, up to 100"),
        ("light.hours", "from 0 to 24"),
        ("soil.soaked", "from 0 to 10"),
        ("room.humidity", "at most 100 %"),
        ("water.change.share", "above 0 %, up to 100 %"),
        ("goal.probability", "from 1 % to 99 %"),
        ("tank.sides", "from 3 to 64"),
        ("tank.height", "from 1 mm to 100 m"),
        ("events[].day", "from 0 to 3650"),
        ("soil.bags[].price", "from 0 to 10000000"),
        ("soil.bags[].size", "above 0, up to 1000"),
        ("plants[].amount", "above 0, up to 100000"),
        ("plants[].price", "from 0 to 10000000"),
        ("room.tariff", "from 0 to 1000000"),
        ("tank.stand", "at most 10000 kg"),
        ("hardscape[].mass", "above 0 kg, up to 10000 kg"),
        ("cap.grading.d10", "above 0 mm, up to 100 mm"),
    ] {
        let key = KEYS.iter().find(|key| key.path == path).expect("a key");
        assert_eq!(key.limits.words(), words, "{path}");
    }
}

#[test]
fn every_good_spec_is_read() {
    for file in base::files("good") {
        let faults = base::faults(&file.text);
        assert!(
            faults.0.is_empty(),
            "{}",
            spec::draw(&faults, &file.text, &file.name, false)
        );
    }
}

#[test]
fn every_key_stands_in_a_good_spec() {
    let files = base::files("good");
    for key in KEYS {
        assert!(
            base::with_key(&files, key).is_some(),
            "{} is in no good spec",
            key.path
        );
    }
}

#[test]
fn every_example_of_the_table_is_read_where_it_belongs() {
    let files = base::files("good");
    for key in KEYS {
        let (file, line) = base::with_key(&files, key).expect("a good spec");
        if file
            .text
            .lines()
            .nth(line)
            .expect("a line")
            .starts_with('[')
        {
            continue;
        }
        let text = base::replaced(&file.text, line, &[key.written()]);
        let faults = base::faults(&text);
        let at_key = |fault: &&spec::Fault| base::table_path(&fault.key) == key.path;
        assert_eq!(faults.0.iter().find(at_key), None, "{}", key.written());
    }
}

#[test]
fn every_word_of_the_table_is_read() {
    let files = base::files("good");
    for key in KEYS {
        let KeyKind::Word(words) = key.kind else {
            continue;
        };
        let (file, line) = base::with_key(&files, key).expect("a good spec");
        for word in words {
            let by = format!("{} = \"{word}\"", key.leaf());
            let faults = base::faults(&base::replaced(&file.text, line, &[by]));
            let at_key = |fault: &&spec::Fault| fault.key == key.path;
            assert_eq!(faults.0.iter().find(at_key), None, "{} {word}", key.path);
        }
    }
}
