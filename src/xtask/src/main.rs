//! Commands for the people who work on this code.

fn main() {}
