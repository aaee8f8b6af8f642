//! `[tank]`: the vessel.

use super::section::SpecSection;
use crate::design::key::{Value, word};
use crate::design::{Material, Rim, Tank, Violation, usual};
use crate::geometry::Shape;
use crate::units::list::either;
use crate::units::size::Size;
use crate::units::{Length, Mass};

/// A shape's word and the keys of its dimensions.
pub(super) struct ShapeKeys {
    /// Its word.
    pub(super) word: &'static str,
    /// Its keys; of a box, its size or the lengths after it.
    pub(super) keys: &'static [&'static str],
}

/// Every shape with its keys.
pub(super) const FORMS: &[ShapeKeys] = &[
    ShapeKeys {
        word: "box",
        keys: &["size", "length", "width", "height"],
    },
    ShapeKeys {
        word: "cylinder",
        keys: &["diameter", "height"],
    },
    ShapeKeys {
        word: "bow_front",
        keys: &["length", "width_end", "width_middle", "height"],
    },
    ShapeKeys {
        word: "regular_polygon",
        keys: &["sides", "side", "height"],
    },
    ShapeKeys {
        word: "quarter_cylinder",
        keys: &["radius", "height"],
    },
    ShapeKeys {
        word: "half_cylinder",
        keys: &["diameter", "height"],
    },
    ShapeKeys {
        word: "cut_corner",
        keys: &["length", "width", "cut_length", "cut_width", "height"],
    },
    ShapeKeys {
        word: "trapezoid",
        keys: &["front", "back", "width", "height"],
    },
    ShapeKeys {
        word: "bowl",
        keys: &["diameter", "base", "mouth"],
    },
];

/// Reads `[tank]`.
pub(super) fn read(section: &SpecSection<'_>) -> Option<Tank> {
    let shape = shape(section);
    let outside = section.optional("outside", Value::read);
    let wall = wall(section, shape.as_ref(), outside == Some(true));
    let bottom = bottom(section, wall);
    section.plain();
    Some(Tank {
        shape: shape?,
        outside: outside.unwrap_or(false),
        wall: wall?,
        bottom: bottom?,
        material: Material::default(),
        freeboard: Length::ZERO,
        lid: false,
        rim: Rim::default(),
        stand: Mass::ZERO,
    })
}

/// The walls: as given, or as usual for the height where the dimensions are inside.
fn wall(section: &SpecSection<'_>, shape: Option<&Shape>, outside: bool) -> Option<Length> {
    if section.has("wall") {
        return section.optional("wall", Value::read);
    }
    if outside && section.misspells("wall") {
        return None;
    }
    if outside {
        section.report(
            "wall",
            Violation::new(
                "missing",
                "dimensions outside the walls need the wall's thickness",
                "for example wall = \"5 mm\"; or measure inside and leave outside away",
            )
            .beside(section.span("outside"), "outside is true"),
        );
        return None;
    }
    let wall = usual::wall(shape?);
    section.assume("wall", &usual::wall_in_words(wall), usual::WALL_WHY);
    Some(wall)
}

fn bottom(section: &SpecSection<'_>, wall: Option<Length>) -> Option<Length> {
    if section.has("bottom") {
        return section.optional("bottom", Value::read);
    }
    section.assume(
        "bottom",
        &usual::wall_in_words(wall?),
        "judgement: as thick as the wall",
    );
    wall
}

fn shape(section: &SpecSection<'_>) -> Option<Shape> {
    let Some(form) = form(section) else {
        read_dimensions(section);
        return None;
    };
    refuse_foreign_keys(section, form);
    let length = |name: &str| section.required(name, Value::read);
    match form.word {
        "box" => box_size(section).map(Shape::Box),
        "cylinder" => {
            let (diameter, height) = (length("diameter"), length("height"));
            Some(Shape::Cylinder {
                diameter: diameter?,
                height: height?,
            })
        }
        "half_cylinder" => {
            let (diameter, height) = (length("diameter"), length("height"));
            Some(Shape::HalfCylinder {
                diameter: diameter?,
                height: height?,
            })
        }
        "quarter_cylinder" => {
            let (radius, height) = (length("radius"), length("height"));
            Some(Shape::QuarterCylinder {
                radius: radius?,
                height: height?,
            })
        }
        "regular_polygon" => {
            let sides = section.required("sides", Value::read);
            let (side, height) = (length("side"), length("height"));
            Some(Shape::RegularPolygon {
                sides: sides?,
                side: side?,
                height: height?,
            })
        }
        "bowl" => {
            let (diameter, base, mouth) = (length("diameter"), length("base"), length("mouth"));
            Some(Shape::Bowl {
                diameter: diameter?,
                base: base?,
                mouth: mouth?,
            })
        }
        _ => slanted_or_bowed(form.word, length),
    }
}

/// The shape as said; a size alone is that of a box.
fn form(section: &SpecSection<'_>) -> Option<&'static ShapeKeys> {
    let find = |word: &str| FORMS.iter().find(|form| form.word == word);
    if section.has("shape") {
        return section.optional("shape", word(find));
    }
    if section.has("size") && !section.misspells("shape") {
        return find("box");
    }
    miss_shape(section);
    None
}

/// Reports that the shape is not there, with the line of each that takes the dimensions given.
fn miss_shape(section: &SpecSection<'_>) {
    let given: Vec<&str> = dimension_keys()
        .into_iter()
        .filter(|name| section.has(name))
        .collect();
    let takes = |form: &&ShapeKeys| given.iter().all(|name| form.keys.contains(name));
    let lines: Vec<String> = FORMS
        .iter()
        .filter(takes)
        .map(|form| format!("shape = \"{}\"", form.word))
        .collect();
    let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
    let help = if given.is_empty() || lines.is_empty() {
        "for example shape = \"box\"".to_owned()
    } else {
        format!("add the line {}", either(&lines))
    };
    section.miss("shape", "[tank] needs shape".to_owned(), help);
}

/// The shapes with four and five dimensions.
fn slanted_or_bowed(word: &str, length: impl Fn(&str) -> Option<Length>) -> Option<Shape> {
    let height = length("height");
    match word {
        "bow_front" => {
            let (along, end, middle) = (
                length("length"),
                length("width_end"),
                length("width_middle"),
            );
            Some(Shape::BowFront {
                length: along?,
                width_end: end?,
                width_middle: middle?,
                height: height?,
            })
        }
        "cut_corner" => {
            let (along, width) = (length("length"), length("width"));
            let (cut_length, cut_width) = (length("cut_length"), length("cut_width"));
            Some(Shape::CutCorner {
                length: along?,
                width: width?,
                cut_length: cut_length?,
                cut_width: cut_width?,
                height: height?,
            })
        }
        _ => {
            let (front, back, width) = (length("front"), length("back"), length("width"));
            Some(Shape::Trapezoid {
                front: front?,
                back: back?,
                width: width?,
                height: height?,
            })
        }
    }
}

/// A box from its size, or from length, width and height.
fn box_size(section: &SpecSection<'_>) -> Option<Size> {
    let apart = ["length", "width", "height"];
    if section.has("size") {
        for name in apart.into_iter().filter(|name| section.has(name)) {
            section.report(
                name,
                Violation::new(
                    "given beside size",
                    "a box has size, or length, width and height, not both",
                    format!("remove size or {name}"),
                )
                .beside(section.span("size"), "size says it already"),
            );
        }
        return section.optional("size", Value::read);
    }
    if !apart.iter().any(|name| section.has(name)) {
        section.missing(
            "size",
            "a box needs size, or length, width and height".to_owned(),
        );
        return None;
    }
    let [length, width, height] = apart.map(|name| section.required(name, Value::read));
    Some(Size {
        length: length?,
        width: width?,
        height: height?,
    })
}

/// Brings up what is wrong with dimensions whose shape is not known.
fn read_dimensions(section: &SpecSection<'_>) {
    for name in dimension_keys() {
        match name {
            "size" => drop(section.optional(name, Size::read)),
            "sides" => drop(section.optional(name, u32::read)),
            _ => drop(section.optional(name, Length::read)),
        }
    }
}

/// Every dimension of every shape, each once.
fn dimension_keys() -> Vec<&'static str> {
    let mut keys: Vec<_> = FORMS.iter().flat_map(|form| form.keys).copied().collect();
    keys.sort_unstable();
    keys.dedup();
    keys
}

/// Refuses dimensions that belong to other shapes.
fn refuse_foreign_keys(section: &SpecSection<'_>, form: &ShapeKeys) {
    for name in dimension_keys() {
        if form.keys.contains(&name) || !section.has(name) {
            continue;
        }
        let owners: Vec<&str> = FORMS
            .iter()
            .filter(|form| form.keys.contains(&name))
            .map(|form| form.word)
            .collect();
        section.report(
            name,
            Violation::new(
                format!("a {} has no {name}", form.word),
                format!("a {} takes {}", form.word, form.keys.join(", ")),
                format!("{name} belongs to {}", either(&owners)),
            )
            .beside(section.span("shape"), format!("the shape is {}", form.word)),
        );
    }
}
