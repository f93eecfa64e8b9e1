//! What the top calculator asks, and which question is answered.

use super::{overhang, planks, season, slot, tip};
use crate::calculators::top::fields::{
    FIELDS, OVERHANG, QUESTION, RESULTS, SLOT, TIP, TODAY_AND_LATER,
};
use crate::calculators::{Calculator, Stage};
use crate::sheet::{Answer, Ask};

/// Top: planks, gaps, overhang and movement.
pub const CALCULATOR: Calculator = Calculator {
    slug: "top",
    title: "Top",
    question: "Which planks and gaps make the top, and where does it land?",
    stage: Stage::Shape,
    fields: FIELDS,
    results: RESULTS,
    work,
};

fn work(ask: &mut Ask) -> Option<Answer> {
    match ask.choice(&QUESTION) {
        OVERHANG => overhang::work(ask),
        TODAY_AND_LATER => season::work(ask),
        SLOT => slot::work(ask),
        TIP => tip::work(ask),
        _ => planks::work(ask),
    }
}
