//! The page. Start, nothing else.

fn main() {}
