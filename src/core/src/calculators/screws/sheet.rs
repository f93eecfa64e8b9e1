//! Which question about screws is answered.

use super::fields::{BUY, CORNER, FIELDS, HOLD, PILOT, PLACING, POCKET, QUESTION, RESULTS, TOE};
use super::{angled, buy, corner, hold, length, pilot, placing};
use crate::calculators::{Calculator, Stage};
use crate::sheet::{Answer, Ask};

/// Screws: lengths, bits, places, angles and what they hold.
pub const CALCULATOR: Calculator = Calculator {
    slug: "screws",
    title: "Screws",
    question: "Which screw, which bits, where, and will it show through?",
    stage: Stage::Fasten,
    fields: FIELDS,
    results: RESULTS,
    work,
};

fn work(ask: &mut Ask) -> Option<Answer> {
    match ask.choice(&QUESTION) {
        PILOT => pilot::work(ask),
        PLACING => placing::work(ask),
        POCKET | TOE => angled::work(ask),
        CORNER => corner::work(ask),
        HOLD => hold::work(ask),
        BUY => buy::work(ask),
        _ => length::work(ask),
    }
}
