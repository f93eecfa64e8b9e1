//! Writes the jobs that may be kept in this repository as questions to the planner, one a line: family, name, known
//! optimum, what is proved of it, and question, with tabs between. For the measurements in the browser.
//!
//! `cargo run --release -p reckoner-cutplan --example write_jobs FILE [all]`; with `all`, those of the shared collection too.

#[path = "../tests/planner/rip_jobs.rs"]
mod rip_jobs;
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
    let folder = shared.unwrap_or_else(support::data);
    known.extend(rip_jobs::rip_jobs(&folder.join("rip_jobs")));
    known.extend(support::cutting_stock(&folder.join("cutting_stock")));
    let mut text = String::new();
    for (number, it) in (1..).zip(known) {
        let question = Question { number, job: it.job, ask: Ask::Cheapest { budget: u64::MAX } };
        let (known, asked) = ([it.optimum, it.at_least], write_question(&question));
        writeln!(text, "{}\t{}\t{}\t{}\t{asked}", it.family, it.name, known[0], known[1])
            .expect("writing to a text");
    }
    std::fs::write(&file, text).unwrap_or_else(|error| panic!("{file}: {error}"));
}
