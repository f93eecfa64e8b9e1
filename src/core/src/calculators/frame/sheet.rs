//! Which question about a frame is answered.

use super::fields::{FIELDS, LAP, QUESTION, RESULTS, SPACER, SQUARE, STRETCHER, SUPPORT, TENONS};
use super::{lap, rail, spacer, square, stretcher, support, tenon};
use crate::calculators::{Calculator, Stage};
use crate::sheet::{Answer, Ask};

/// Frame: rails, blocks, joints and squareness.
pub const CALCULATOR: Calculator = Calculator {
    slug: "frame",
    title: "Frame",
    question: "What length between the legs, and which block sets it?",
    stage: Stage::Frame,
    fields: FIELDS,
    results: RESULTS,
    work,
};

fn work(ask: &mut Ask) -> Option<Answer> {
    match ask.choice(&QUESTION) {
        SPACER => spacer::work(ask),
        STRETCHER => stretcher::work(ask),
        SUPPORT => support::work(ask),
        TENONS => tenon::work(ask),
        LAP => lap::work(ask),
        SQUARE => square::work(ask),
        _ => rail::work(ask),
    }
}
