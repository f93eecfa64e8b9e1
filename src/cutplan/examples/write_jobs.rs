//! Writes the jobs that may be kept in this repository as questions to the planner, one a line: family, name, known
//! optimum and question, with tabs between. For the measurements in the browser.
//!
//! `cargo run --release -p reckoner-cutplan --example write_jobs FILE`

#[path = "../tests/planner/support.rs"]
mod support;

use std::fmt::Write as _;

use reckoner_formats::{Ask, Question, write_question};

/// Lumber jobs stand first, and are numbered from 1.
fn main() {
    let file = std::env::args().nth(1).expect("a file to write to");
    let mut known = support::lumber(&support::data().join("lumber_jobs"));
    known.extend(support::cutting_stock(&support::data().join("cutting_stock")));
    let mut text = String::new();
    for (number, it) in (1..).zip(known) {
        let question = Question { number, job: it.job, ask: Ask::Cheapest { budget: u64::MAX } };
        writeln!(text, "{}\t{}\t{}\t{}", it.family, it.name, it.optimum, write_question(&question))
            .expect("writing to a text");
    }
    std::fs::write(&file, text).unwrap_or_else(|error| panic!("{file}: {error}"));
}
