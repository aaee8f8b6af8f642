//! Pages are well formed, whole in themselves, and say what text and JSON say.

use std::collections::BTreeSet;

use lentic::report::text::{self, Layout};
use lentic::report::{chart::Glyphs, compose, csv, json};
use lentic::units::show::significant;
use roxmltree::{Document, Node, ParsingOptions};

use crate::demo;
use crate::designed::{demo as demo_tank, design, page, planned};

/// A page is to be carried on a phone.
const MOST_BYTES: usize = 200_000;

/// Parses a page as XML, which takes nothing that is not well formed.
pub(crate) fn parsed(page: &str) -> Document<'_> {
    let options = ParsingOptions {
        allow_dtd: true,
        ..ParsingOptions::default()
    };
    Document::parse_with_options(page, options).expect("a well-formed page")
}

fn words_of(node: Node<'_, '_>) -> String {
    let texts = node.descendants().filter(Node::is_text);
    texts
        .filter_map(|text| text.text())
        .collect::<Vec<_>>()
        .join(" ")
}

#[test]
fn every_page_is_well_formed_small_and_asks_for_nothing() {
    for path in demo::tanks() {
        let page = page(&demo_tank(&path));
        assert!(page.len() < MOST_BYTES, "{path}: {} bytes", page.len());
        let document = parsed(&page);
        for node in document.descendants().filter(Node::is_element) {
            let name = node.tag_name().name();
            assert!(
                !["script", "iframe", "object", "img"].contains(&name),
                "{path}: {name}"
            );
            for attribute in node.attributes() {
                assert!(
                    !attribute.name().starts_with("on"),
                    "{path}: {}",
                    attribute.name()
                );
                let links = ["href", "src", "action"].contains(&attribute.name());
                let stays = attribute.value().starts_with('#') || attribute.value() == "data:,";
                assert!(!links || stays, "{path}: {}", attribute.value());
            }
        }
    }
}

#[test]
fn every_link_leads_to_the_rule_behind_a_figure() {
    for path in demo::tanks() {
        let page = page(&demo_tank(&path));
        let document = parsed(&page);
        let ids: BTreeSet<&str> = document
            .descendants()
            .filter_map(|node| node.attribute("id"))
            .collect();
        let links: Vec<&str> = document
            .descendants()
            .filter(|node| node.has_tag_name(("http://www.w3.org/1999/xhtml", "a")))
            .filter_map(|node| node.attribute("href"))
            .collect();
        assert!(links.len() > 20, "{path}: {} links", links.len());
        for link in links {
            assert!(ids.contains(&link[1..]), "{path}: {link}");
        }
    }
}

#[test]
fn every_picture_has_a_name_and_a_description() {
    for path in demo::tanks() {
        let page = page(&demo_tank(&path));
        let document = parsed(&page);
        let pictures = document
            .descendants()
            .filter(|node| node.attribute("role") == Some("img"));
        let mut count = 0;
        for picture in pictures {
            count += 1;
            for name in ["title", "desc"] {
                let said = picture
                    .children()
                    .find(|node| node.tag_name().name() == name)
                    .and_then(|node| node.text())
                    .unwrap_or_default();
                assert!(!said.is_empty(), "{path}: no {name}");
            }
        }
        assert!(count >= 3, "{path}: {count} pictures");
    }
}

/// Words with a digit, without the marks around them.
fn figures(text: &str) -> BTreeSet<String> {
    text.split_whitespace()
        .map(|word| word.trim_matches(|c: char| ",;:()[]".contains(c)))
        .filter(|word| word.contains(|c: char| c.is_ascii_digit()))
        .map(str::to_owned)
        .collect()
}

#[test]
fn text_and_page_of_a_plan_show_the_same_figures() {
    for path in demo::tanks() {
        let design = demo_tank(&path);
        let document = compose::plan(&design, &planned(&design));
        let layout = Layout {
            width: 2000,
            color: false,
            glyphs: Glyphs::ASCII,
        };
        let in_text = figures(&text::render(&document, layout));
        let page = lentic::report::html::render(&document);
        let in_page = figures(&words_of(parsed(&page).root()));
        let missing: Vec<_> = in_text.difference(&in_page).collect();
        assert!(missing.is_empty(), "{path}: not on the page: {missing:?}");
        assert!(in_text.len() > 40, "{path}: {} figures", in_text.len());
    }
}

/// Paths of a plan's JSON that its page shows, and with how many digits.
const SHOWN: [(&str, u8); 9] = [
    ("tank.brimful_l", 3),
    ("tank.water_l", 3),
    ("soil.buy_l", 2),
    ("cap.buy_kg", 3),
    ("weight.total_kg", 3),
    ("weight.footprint_pressure_kpa", 2),
    ("planting.floating_g", 2),
    ("planting.fast_g", 2),
    ("planting.index", 2),
];

#[test]
fn page_and_json_of_a_plan_show_the_same_figures() {
    for path in demo::tanks() {
        let mut draft = demo_tank(&path).into_draft();
        draft.units = lentic::units::UnitSystem::Metric;
        let design = draft.check().expect("the same tank");
        let plan = planned(&design);
        let object = json::object("lentic/plan/1", &plan);
        let cells = csv::flattened(&object, csv::Lists::Numbered);
        let page = page(&design);
        let shown = figures(&words_of(parsed(&page).root()));
        for (json_path, digits) in SHOWN {
            let value = cells.iter().find(|(path, _)| path == json_path);
            let value = value
                .and_then(|(_, value)| value.as_f64())
                .expect("a number");
            // Masses under a kilogram are shown in grams.
            let grams = significant(value * 1000.0, 2);
            let figure = significant(value, digits);
            assert!(
                shown.contains(&figure) || (json_path.ends_with("_kg") && shown.contains(&grams)),
                "{path}: {json_path}: no {figure}"
            );
        }
    }
}

/// A page with every text and attribute that is a name replaced.
fn without_name(page: &str, name: &str) -> Vec<String> {
    let document = parsed(page);
    let plain = |text: &str| text.replace(name, "NAME");
    document
        .descendants()
        .map(|node| {
            let attributes: Vec<String> = node
                .attributes()
                .map(|attribute| format!("{}={}", attribute.name(), plain(attribute.value())))
                .collect();
            format!(
                "{} {attributes:?} {}",
                node.tag_name().name(),
                plain(node.text().unwrap_or_default())
            )
        })
        .collect()
}

#[test]
fn a_hostile_name_changes_nothing_but_its_own_text() {
    let spec = |name: &str| {
        format!(
            "name = {}\n[tank]\nshape = \"box\"\nsize = \"40 x 25 x 25 cm\"\n[soil]\nmaterial = \"loam_topsoil\"\ndepth = \"25 mm\"\n[cap]\nmaterial = \"filter_sand\"\ndepth = \"40 mm\"\n",
            toml::Value::String(name.to_owned())
        )
    };
    let page_of = |name: &str| page(&design(&spec(name)));
    let plain = without_name(&page_of("Plain tank"), "Plain tank");
    let long = "long name ".repeat(20);
    for name in [
        "<script>alert(1)</script>",
        "</title></style></svg><img src=x onerror=alert(1)>",
        "\"quoted\" & 'half'",
        "{{ title }}{% if true %}",
        "]]>&#60;b&#62;&amp;",
        "\u{202e}txet dedrawkcab\u{2066}\u{200f}",
        long.trim(),
    ] {
        let page = page_of(name);
        let hostile = without_name(&page, name);
        assert_eq!(hostile, plain, "{name:.40}");
        assert!(
            parsed(&page)
                .descendants()
                .any(|node| node.text() == Some(name))
        );
    }
}

#[test]
fn a_character_that_no_page_may_hold_is_replaced() {
    let mut draft = demo_tank("demo-tanks/first-tank.toml").into_draft();
    draft.name = "bell\u{7} and \u{FFFE}".to_owned();
    let page = page(&draft.check().expect("the same tank"));
    assert!(
        parsed(&page)
            .descendants()
            .any(|node| node.text() == Some("bell\u{FFFD} and \u{FFFD}"))
    );
}
