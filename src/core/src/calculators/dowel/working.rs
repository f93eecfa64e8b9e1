//! How the length, the bit and the wood round the hole were found.

use super::{Answer, Apart, Blind, Hold, Input};
use crate::measure::Length;
use crate::measure::text::{decimal, exact_text};
use crate::say;
use crate::sheet::{Bench, Source, Step, Term, Value, Working};

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
    let left = || Term::of("left piece", input.left);
    let right = || Term::of("right piece", input.right);
    let clear = || Term::of("between the pieces", answer.clear);
    let mut steps = Vec::new();
    let mut sources = vec![Source::Arithmetic, Source::CommonPractice];
    let apart = match input.apart {
        Apart::Overall(overall) => Some(Term::of("outside to outside", overall) - left() - right()),
        Apart::Clear(_) => None,
        Apart::Legs { clear, leg, set_back } => {
            let leg = || Term::of("leg", leg);
            let inside = |part: Term| match set_back {
                None => (leg() - part) / Term::fixed(2),
                Some(set_back) => leg() - part - Term::of("set-back", set_back),
            };
            Some(Term::of("between the legs", clear) + inside(left()) + inside(right()))
        }
    };
    steps.extend(apart.map(|apart| Step::of("between the pieces", apart, answer.clear)));
    let held = |blind: Blind| {
        Term::of("hole depth", blind.depth) - Term::of("free at the bottom", blind.room)
    };
    let done = || Term::of("dowel when done", answer.finished);
    let mut finished = |formula| steps.push(Step::of("dowel when done", formula, answer.finished));
    let cut = match input.hold {
        Hold::Through { trim } => {
            finished(clear() + left() + right());
            done() + Term::fixed(2) * Term::of("trim", trim)
        }
        Hold::Blind(blind) => clear() + Term::fixed(2) * held(blind),
        Hold::OneEnd { trim, blind } => {
            finished(left() + clear() + held(blind));
            done() + Term::of("trim", trim)
        }
    };
    steps.push(Step::of("cut", cut, answer.rough));
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
    let thickest = fine(input.dowel.max(input.across), bench);
    steps.push(Step::in_words(
        "bit = dowel at its thickest, up to the next bit",
        say![format!("dowel {thickest}, bits by {}", exact_text(input.bits.step()))],
        Value::Words(say![exact_text(answer.bit)]),
    ));
    let half = Term::of("bit", answer.bit) / Term::fixed(2);
    if let Ok(edge) = (answer.bit / 2).and_then(|half| answer.wood + half) {
        let wood = Term::of("nearest edge to center", edge) - half;
        steps.push(Step::of("least wood", wood, answer.wood));
    }
    Working { steps, sources }
}
