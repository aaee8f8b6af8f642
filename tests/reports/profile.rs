//! The tank in characters: in any terminal, in any width.

use lentic::report::chart::Glyphs;
use lentic::report::compose;
use lentic::report::text::{self, Layout};

use crate::demo;
use crate::designed::{demo as demo_tank, planned};

fn layout(width: usize, glyphs: Glyphs) -> Layout {
    Layout {
        width,
        color: false,
        glyphs,
    }
}

/// The lines between the facts on the tank and the shopping list.
fn drawn(path: &str, layout: Layout) -> String {
    let design = demo_tank(path);
    let text = text::render(&compose::plan(&design, &planned(&design)), layout);
    let from = text.find("\nTank\n").expect("the tank");
    let to = text.find("\nBuy\n").expect("the list");
    text[from..to].to_owned()
}

#[test]
fn every_tank_is_drawn_with_all_it_holds() {
    for path in demo::tanks() {
        let drawn = drawn(&path, layout(80, Glyphs::UNICODE));
        for part in [
            "░",
            "▓",
            "~",
            "│",
            "└",
            "freeboard ",
            "water ",
            "cap ",
            "soil ",
        ] {
            assert!(drawn.contains(part), "{path}: no {part}\n{drawn}");
        }
        let plain = drawn.lines().filter(|line| line.contains('▓'));
        for line in plain {
            assert!(
                !line.contains('~') && !line.contains("freeboard"),
                "{path}\n{drawn}"
            );
        }
    }
}

#[test]
fn a_slope_a_bowl_and_a_plain_terminal_are_drawn_as_they_are() {
    let slope = drawn("demo-tanks/hillside-60.toml", layout(80, Glyphs::UNICODE));
    let bowl = drawn("demo-tanks/desk-bowl.toml", layout(80, Glyphs::UNICODE));
    let plain = drawn(
        "demo-tanks/kitchen-counter-20x10x12.toml",
        layout(80, Glyphs::ASCII),
    );
    insta::assert_snapshot!(format!("{slope}\n{bowl}\n{plain}"));
}

#[test]
fn a_terminal_without_unicode_gets_ascii_and_a_narrow_one_no_drawing() {
    for path in demo::tanks() {
        let ascii = drawn(&path, layout(80, Glyphs::ASCII));
        assert!(ascii.is_ascii(), "{path}\n{ascii}");
        assert!(
            ascii.contains('#') && ascii.contains('.'),
            "{path}\n{ascii}"
        );
        let narrow = drawn(&path, layout(44, Glyphs::UNICODE));
        assert!(!narrow.contains('▓'), "{path}\n{narrow}");
    }
}

#[test]
fn color_adds_escape_codes_and_nothing_else() {
    let path = "demo-tanks/reading-room-cube.toml";
    let plain = drawn(path, layout(80, Glyphs::UNICODE));
    assert!(!plain.contains('\u{1b}'));
    let design = demo_tank(path);
    let colored = Layout {
        color: true,
        ..layout(80, Glyphs::UNICODE)
    };
    let text = text::render(&compose::plan(&design, &planned(&design)), colored);
    assert!(text.contains("\u{1b}[32m"), "no green plants");
    let stripped = anstream::adapter::strip_str(&text).to_string();
    assert!(stripped.contains(&plain), "{stripped}");
}
