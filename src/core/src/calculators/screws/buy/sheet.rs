//! Reads the counts and says how many to buy.

use super::{Answer, Input, reckon};
use crate::calculators::screws::fastener::{chosen, goods};
use crate::calculators::screws::fields::{
    BOX_OF, BOXES, GAUGE, NEEDED, PER_CROSSING, PLANKS, RAILS, SCREW_LENGTH, SPARE, SPARE_LEFT,
    TO_BUY, out_of_range,
};
use crate::measure::Length;
use crate::say;
use crate::sheet::{
    self, Act, Amount, Ask, Caution, Note, Rounded, Source, Step, Term, Value, Working,
};
use crate::tables::fasteners::Fastener;

pub(in crate::calculators::screws) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let screw = chosen(ask, &GAUGE);
    let length = ask.length(&SCREW_LENGTH);
    let n_planks = ask.count(&PLANKS);
    let n_rails = ask.count(&RAILS);
    let per_crossing = ask.count(&PER_CROSSING);
    let spare = ask.number(&SPARE);
    let box_of = ask.count(&BOX_OF);
    let input = Input {
        n_planks: n_planks?,
        n_rails: n_rails?,
        per_crossing: per_crossing?,
        spare: spare?,
        box_of: box_of?,
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out((screw?, length?), &input, &answer)),
        Err(refused) => ask.refused(refused, out_of_range()),
    }
}

fn lay_out((screw, length): (Fastener, Length), input: &Input, answer: &Answer) -> sheet::Answer {
    let mut laid =
        sheet::Answer::new(TO_BUY.figure("", Value::Count(answer.buy)), working(input, answer));
    if input.box_of > 1 {
        laid.figures.push(BOXES.figure("", Value::Count(answer.boxes)));
    }
    laid.figures.push(NEEDED.figure("", Value::Count(answer.needed)));
    laid.figures.push(SPARE_LEFT.figure("", Value::Count(answer.left_over)));
    let spares = answer.buy.saturating_sub(answer.needed);
    laid.goods = vec![goods(screw, length, Some((answer.needed, spares)))];
    laid.notes.push(Note::new(
        "count_each_size_alone",
        say!["Count each size of screw by itself, with its own spares."],
    ));
    laid.cautions = Caution::of(&[Act::Fasten]);
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let each_time = Term::of("screws each time", input.per_crossing);
    let needed = Term::of("planks", input.n_planks) * Term::of("rails", input.n_rails) * each_time;
    let share = Term::fixed(1) + Term::of("spare", Amount::percent(input.spare));
    let buy = Term::of("in the work", answer.needed.to_string()) * share;
    let steps = vec![
        Step::of("in the work", needed, Value::Count(answer.needed)),
        Step::of("buy", buy, Value::Count(answer.buy)).then(Rounded::Up),
    ];
    Working { steps, sources: vec![Source::Arithmetic, Source::CommonPractice] }
}
