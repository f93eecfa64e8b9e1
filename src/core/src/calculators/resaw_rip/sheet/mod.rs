//! What is asked, and which of the three questions answers.

mod guide;
mod section;
mod strips;
mod told;

use super::fields::{FIELDS, GUIDED, QUESTION, RESULTS, RIP};
use crate::calculators::{Calculator, Stage};
use crate::sheet::{Answer, Ask};

/// Resaw and rip.
pub const CALCULATOR: Calculator = Calculator {
    slug: "resaw-rip",
    title: "Resaw and rip",
    question: "Where do I set the fence and the blade to get the pieces I need?",
    stage: Stage::Saw,
    fields: FIELDS,
    results: RESULTS,
    work,
};

fn work(ask: &mut Ask) -> Option<Answer> {
    match ask.choice(&QUESTION) {
        RIP => strips::work(ask),
        GUIDED => guide::work(ask),
        _ => section::work(ask),
    }
}
