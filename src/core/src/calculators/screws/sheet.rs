//! Which question about screws is answered.

use super::fields::{BUY, CORNER, FIELDS, HOLD, PILOT, PLACING, POCKET, QUESTION, RESULTS, TOE};
use super::{angled, buy, corner, hold, length, pilot, placing};
use crate::calculators::{Calculator, Stage};
use crate::measure::Length;
use crate::sheet::{Answer, Ask, Field, Goods, Refusal};
use crate::tables::fasteners::{Fastener, fastener};

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

/// The fastener chosen in a field.
pub(super) fn chosen(ask: &Ask, field: &Field) -> Option<Fastener> {
    fastener(ask.choice(field).id)
}

/// So many screws of one size to buy, and so many spares; `None` where they are not counted.
pub(super) fn goods(screw: Fastener, length: Length, counted: Option<(u64, u64)>) -> Goods {
    let (count, spares) = counted.unzip();
    Goods {
        name: format!("{}s", screw.name),
        across: None,
        length: Some(length),
        count,
        spares: spares.unwrap_or(0),
        each: None,
    }
}

/// Said of a number that is out of range, whatever is asked.
pub(super) fn out_of_range() -> Refusal {
    Refusal::out_of_range(&QUESTION)
}

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
