//! Writes the jobs that may be kept in this repository as questions to the planner, one a line: family, name, known
//! optimum and question, with tabs between. For the measurements in the browser.
//!
//! `cargo run --release -p reckoner-cutplan --example write_jobs FILE [all]`; with `all`, those of the shared collection too.

#[path = "../tests/planner/support.rs"]
mod support;

use std::fmt::Write as _;

use reckoner_formats::{Ask, Question, write_question};

/// Lumber jobs stand first, and are numbered from 1.
fn main() {
    let mut arguments = std::env::args().skip(1);
    let file = arguments.next().expect("a file to write to");
    let shared = arguments.next().filter(|word| word == "all").and_then(|_| support::shared());
    let mut known = support::lumber(&support::data().join("lumber_jobs"));
    let folder = shared.unwrap_or_else(support::data).join("cutting_stock");
    known.extend(support::cutting_stock(&folder));
    let mut text = String::new();
    for (number, it) in (1..).zip(known) {
        let question = Question { number, job: it.job, ask: Ask::Cheapest { budget: u64::MAX } };
        writeln!(text, "{}\t{}\t{}\t{}", it.family, it.name, it.optimum, write_question(&question))
            .expect("writing to a text");
    }
    std::fs::write(&file, text).unwrap_or_else(|error| panic!("{file}: {error}"));
}
