//! How the length, the bit and the wood round the hole were found.

use super::{Answer, Apart, Blind, Hold, Input};
use crate::measure::Length;
use crate::measure::text::{decimal, exact_text};
use crate::say;
use crate::sheet::{Bench, Source, Step, Value, Working};

/// A small size with decimals, in the unit of the tape: a bit or a caliper reads no sixteenths.
pub(super) fn fine(length: Length, bench: &Bench) -> String {
    let unit = bench.tape.unit();
    let places = if unit.is_metric() { 2 } else { 3 };
    match length.in_unit(unit) {
        Ok(number) => format!("{} {}", decimal(number, places), unit.short()),
        Err(_) => exact_text(length),
    }
}

/// The steps and their sources.
pub(super) fn working(input: &Input, answer: &Answer, bench: &Bench) -> Working {
    let text = exact_text;
    let (left, right) = (text(input.left), text(input.right));
    let mut steps = Vec::new();
    let mut sources = vec![Source::Arithmetic, Source::CommonPractice];
    match input.apart {
        Apart::Overall(overall) => steps.push(Step::length(
            "between the parts = outside to outside - both parts",
            say![format!("{} - {left} - {right}", text(overall))],
            answer.clear,
        )),
        Apart::Clear(_) => {}
        Apart::Legs { clear, leg, set_back: None } => steps.push(Step::length(
            "between the parts = between the legs + (leg - part) ÷ 2 for each",
            say![format!(
                "{} + ({leg} - {left}) ÷ 2 + ({leg} - {right}) ÷ 2",
                text(clear),
                leg = text(leg)
            )],
            answer.clear,
        )),
        Apart::Legs { clear, leg, set_back: Some(set_back) } => steps.push(Step::length(
            "between the parts = between the legs + leg - part - set-back for each",
            say![format!(
                "{} + {leg} - {left} - {back} + {leg} - {right} - {back}",
                text(clear),
                leg = text(leg),
                back = text(set_back)
            )],
            answer.clear,
        )),
    }
    let clear = text(answer.clear);
    let held = |blind: Blind| format!("{} - {}", text(blind.depth), text(blind.room));
    match input.hold {
        Hold::Through { trim } => {
            steps.push(Step::length(
                "dowel when done = between the parts + both parts",
                say![format!("{clear} + {left} + {right}")],
                answer.finished,
            ));
            steps.push(Step::length(
                "cut = dowel when done + 2 × trim",
                say![format!("{} + 2 × {}", text(answer.finished), text(trim))],
                answer.rough,
            ));
        }
        Hold::Blind(blind) => steps.push(Step::length(
            "cut = between the parts + 2 × (hole depth - free at the bottom)",
            say![format!("{clear} + 2 × ({})", held(blind))],
            answer.rough,
        )),
        Hold::OneEnd { trim, blind } => {
            steps.push(Step::length(
                "dowel when done = left part + between the parts + hole depth - free at the bottom",
                say![format!("{left} + {clear} + {}", held(blind))],
                answer.finished,
            ));
            steps.push(Step::length(
                "cut = dowel when done + trim",
                say![format!("{} + {}", text(answer.finished), text(trim))],
                answer.rough,
            ));
        }
    }
    if !matches!(input.hold, Hold::Through { .. }) {
        sources.push(Source::Published(
            "Dowels 1/8 in shorter than the two holes together: an older mechanics text, How-To: Dowelling (chestofbooks copy)",
        ));
    }
    if answer.rough > Length::sixty_fourths(48 * 64) {
        sources.push(Source::Published(
            "Dowel rods of 36, 42 and 48 in: W. Noyes, Handwork in Wood (1910), Dowel-rods",
        ));
    }
    steps.push(Step {
        rule: "bit = dowel at its thickest, up to the next bit".into(),
        put_in: say![format!(
            "{}, bits by {}",
            fine(input.dowel.max(input.across), bench),
            text(input.bits.step())
        )],
        gives: Value::Words(say![text(answer.bit)]),
    });
    steps.push(Step::length(
        "least wood = nearest edge to center - half the bit; at least half the bit is wanted",
        say![format!("half of {}", text(answer.bit))],
        answer.wood,
    ));
    Working { steps, sources }
}
