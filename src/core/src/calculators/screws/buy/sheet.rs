//! Reads the counts and says how many to buy.

use super::{Answer, Input, reckon};
use crate::measure::text::decimal;
use crate::say;
use crate::sheet::{self, Ask, Caution, Figure, Source, Step, Value, Working};

pub(in crate::calculators::screws) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let n_planks = ask.count(ask.field("planks"));
    let n_rails = ask.count(ask.field("rails"));
    let per_crossing = ask.count(ask.field("per_crossing"));
    let spare = ask.number(ask.field("spare"));
    let box_of = ask.count(ask.field("box_of"));
    let input = Input {
        n_planks: n_planks?,
        n_rails: n_rails?,
        per_crossing: per_crossing?,
        spare: spare?,
        box_of: box_of?,
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer)),
        Err(problems) => ask.refuse(&problems),
    }
}

fn lay_out(input: &Input, answer: &Answer) -> sheet::Answer {
    let count = |id, label, count| Figure { id, label, from: "", value: Value::Count(count) };
    let mut laid = sheet::Answer::new(count("to_buy", "Buy", answer.buy), working(input, answer));
    laid.figures.push(count("needed", "In the work", answer.needed));
    if input.box_of > 1 {
        laid.figures.push(count("boxes", "Boxes", answer.boxes));
    }
    laid.figures.push(count("spare_left", "Left over", answer.left_over));
    laid.notes.push(say!["Count each size of screw by itself, with its own spares."]);
    laid.cautions.push(Caution::Corrosion);
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let steps = vec![
        Step {
            rule: "in the work = planks × rails × screws each time".into(),
            put_in: say![input.n_planks, " × ", input.n_rails, " × ", input.per_crossing],
            gives: Value::Count(answer.needed),
        },
        Step {
            rule: "buy = in the work × (1 + spare), rounded up".into(),
            put_in: say![format!("{} + {} %", answer.needed, decimal(input.spare, 1))],
            gives: Value::Count(answer.buy),
        },
    ];
    Working { steps, sources: vec![Source::Arithmetic, Source::CommonPractice] }
}
