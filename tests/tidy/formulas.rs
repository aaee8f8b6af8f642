//! Every formula that a program may call says where it comes from and shows a number.

use crate::tree;

/// The folders of formulas.
const FOLDERS: [&str; 10] = [
    "units",
    "geometry",
    "substrate",
    "plants",
    "water",
    "air",
    "heat",
    "startup",
    "night",
    "upkeep",
];

/// The comment above each public function of a text, with the line that names it.
fn documented(text: &str) -> Vec<(String, String)> {
    let mut found = Vec::new();
    let mut comment = String::new();
    let mut within_attribute = false;
    for line in text.lines().map(str::trim) {
        if let Some(words) = line.strip_prefix("///") {
            comment.push_str(words.trim_start());
            comment.push('\n');
        } else if within_attribute || line.starts_with("#[") {
            within_attribute = !line.ends_with(']');
        } else {
            if line.starts_with("pub fn ") || line.starts_with("pub const fn ") {
                found.push((line.to_owned(), comment.clone()));
            }
            comment.clear();
        }
    }
    found
}

#[test]
fn an_attribute_over_several_lines_keeps_the_comment_above_it() {
    let text = "/// One.\n#[expect(\n    lint,\n    reason = \"so\"\n)]\npub fn one() {}\n\npub fn two() {}\n";
    let found = documented(text);
    let comments: Vec<&str> = found.iter().map(|(_, comment)| comment.as_str()).collect();
    assert_eq!(comments, ["One.\n", ""]);
}

#[test]
fn every_formula_has_a_source_and_an_example() {
    let mut formulas = 0;
    for folder in FOLDERS {
        for path in tree::files(&format!("src/{folder}"), "rs") {
            for (name, comment) in documented(&tree::text(&path)) {
                if !comment.contains("```text") {
                    continue;
                }
                formulas += 1;
                for part in ["# Source\n", "# Example\n"] {
                    let title = part.trim();
                    assert!(
                        comment.contains(part),
                        "{}: {name} has a formula without {title}",
                        tree::short(&path)
                    );
                }
            }
        }
    }
    assert!(formulas > 80, "{formulas} formulas");
}
