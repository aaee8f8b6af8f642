//! The `lentic` command.

fn main() {}
