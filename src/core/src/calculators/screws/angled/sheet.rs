//! Reads part, angle and seat and lays the angled screw out.

use super::{Answer, Fault, Find, Fit, Input, Seat, drawing, reckon};
use crate::calculators::screws::at_hand::{ends_before, too_little_in};
use crate::calculators::screws::fastener::chosen;
use crate::calculators::screws::fields::{
    ANGLE_FROM, ANGLED_FIND, AT_HAND, AT_HAND_BEHIND, AT_HAND_INTO, AXIS, BEST_LENGTH, BEYOND,
    DEEP, DEEP_COLUMN, DRIFT, EXIT, EXIT_FROM_FACE, FROM_FACE, FROM_RECEIVER, GAUGE, LENGTH_COLUMN,
    MARGIN, PART_THICKNESS, POCKET, POCKET_ANGLE, QUESTION, RECEIVER, RECEIVER_THICKNESS,
    SEAT_WOOD, START, START_BACK, STOCK, TO_SEAT, TOE_ANGLE, VERDICT_AT_HAND, VERDICT_COLUMN,
    WANTED_DEEP, WHERE_IT_COMES_OUT, out_of_range,
};
use crate::measure::{Angle, Length, Tape};
use crate::say;
use crate::sheet::{
    self, Act, Amount, Ask, Caution, Note, Sentence, Source, Step, Term, Value, Working,
};
use crate::tables::fasteners::{Fastener, STOCK_SOURCE};

pub(in crate::calculators::screws) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let is_pocket = ask.choice(&QUESTION) == POCKET;
    let degrees = ask.real(if is_pocket { &POCKET_ANGLE } else { &TOE_ANGLE });
    let thickness = ask.length(&PART_THICKNESS);
    let receiver = ask.length(&RECEIVER_THICKNESS);
    let margin = ask.length(&MARGIN);
    let wanted_deep = ask.length(&WANTED_DEEP);
    let beyond = ask.length(&BEYOND);
    let at_hand = ask.optional_length(&AT_HAND);
    let find = match ask.choice(&ANGLED_FIND) {
        WHERE_IT_COMES_OUT => ask.length(&START_BACK).map(Find::Exit),
        _ => ask.optional_length(&EXIT).map(Find::Start),
    };
    let seat =
        if is_pocket { ask.length(&SEAT_WOOD).map(Seat::Shoulder) } else { Some(Seat::Face) };
    let given = Angle::degrees(degrees?);
    let angle = match ask.choice(&ANGLE_FROM) {
        RECEIVER => given.complement(),
        _ => given,
    };
    let input = Input {
        thickness: thickness?,
        angle,
        find: find?,
        seat: seat?,
        receiver: receiver?,
        beyond: beyond?,
        margin: margin?,
        wanted_deep: wanted_deep?,
        at_hand: at_hand?,
    };
    let screw = chosen(ask, &GAUGE)?;
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, screw, ask.bench().tape)),
        Err(refused) => ask.refused(refused, out_of_range()),
    }
}

fn verdict(input: &Input, fit: &Fit) -> Sentence {
    match fit.fault {
        Some(Fault::TooShort) if !fit.past_end.is_positive() => {
            ends_before(fit.past_end.abs(), "the end of the piece")
        }
        Some(Fault::TooShort) => too_little_in(fit.deep),
        Some(Fault::TooDeep) if fit.deep > input.receiver => say!["comes out of the back"],
        Some(Fault::TooDeep) => say!["inside the margin at the back"],
        Some(Fault::TooFarAside) => say!["too far aside"],
        None if fit.deep < input.wanted_deep => say!["fits, less than wanted"],
        None => say!["fits"],
    }
}

fn lay_out(input: &Input, answer: &Answer, screw: Fastener, tape: Tape) -> sheet::Answer {
    let best = answer.best;
    let start = START.figure("from the end, on the face", answer.start);
    let exit = EXIT_FROM_FACE.figure("from the face", answer.exit);
    let (headline, other) = match input.find {
        Find::Start(_) => (start, exit),
        Find::Exit(_) => (exit, start),
    };
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures = vec![
        BEST_LENGTH.called("Screw").figure("of stock lengths", best.length),
        other,
        DEEP.called("Deep in the other piece").figure("square to its face", best.deep),
        DRIFT.called("Goes sideways").figure("away from drilled face", best.drift),
        AXIS.figure("face to end, along it", answer.axis),
    ];
    if let Seat::Shoulder(_) = input.seat {
        laid.figures.push(
            TO_SEAT.called("Stop collar at").figure("face to seat, along it", answer.to_seat),
        );
    }
    if let Some(fit) = &answer.at_hand {
        // Where the line runs is set first, and then comes what was asked of the screw.
        laid.figures.insert(0, VERDICT_AT_HAND.figure("", Value::Words(verdict(input, fit))));
        if fit.past_end.is_positive() {
            laid.figures
                .insert(1, AT_HAND_INTO.figure("square to the other piece's face", fit.deep));
            if let Ok(behind) = input.receiver - fit.deep
                && !behind.is_negative()
            {
                laid.figures.insert(2, AT_HAND_BEHIND.figure("tip to far face", behind));
            }
        }
    }
    let degrees = |angle: Angle| Value::Real(angle.in_degrees(), 1, "°");
    laid.figures.extend([
        FROM_FACE.called("Angle").figure("from the drilled face", degrees(input.angle)),
        FROM_RECEIVER
            .called("The same angle")
            .figure("from the other piece's face", degrees(input.angle.complement())),
    ]);
    let rows = answer
        .stock
        .iter()
        .map(|fit| vec![fit.length.into(), fit.deep.into(), Value::Words(verdict(input, fit))]);
    laid.tables.push(STOCK.table(&[LENGTH_COLUMN, DEEP_COLUMN, VERDICT_COLUMN], rows.collect()));
    laid.notes.push(match input.seat {
        Seat::Shoulder(_) => {
            Note::new("seat_decides_depth", say!["The seat decides how far the screw goes in, not where the bit went in. Try it in scrap."])
        }
        Seat::Face => {
            Note::new("first_toed_screw_pushes", say!["The first toed screw pushes the piece: clamp it, or drive the opposite one at once."])
        }
    });
    laid.cautions = Caution::of(&[Act::Drill, Act::Fasten]);
    laid.drawing = drawing::draw(input, answer, screw, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let best = answer.best;
    let angle = || Term::of("A", Amount::angle(input.angle.in_degrees()));
    let (exit, start) = (|| Term::of("exit", answer.exit), Term::of("start", answer.start));
    let first = match input.find {
        Find::Start(_) => Step::of("start", exit() / angle().tan(), answer.start),
        Find::Exit(_) => Step::of("exit", start * angle().tan(), answer.exit),
    };
    let under_head = match input.seat {
        Seat::Face => answer.axis,
        Seat::Shoulder(wood) => wood,
    };
    let past_end = Term::of("screw", best.length) - Term::of("wood under the head", under_head);
    let deep = |past_end: Length, deep: Length| {
        Step::of("deep", Term::of("P", past_end) * angle().cos(), deep)
    };
    let mut steps = vec![
        first.remarked("A from the drilled face", ""),
        Step::of("hole in the drilled piece", exit() / angle().sin(), answer.axis),
        Step::of("P, past the end", past_end, best.past_end),
        deep(best.past_end, best.deep),
        Step::of("sideways", Term::of("P", best.past_end) * angle().sin(), best.drift),
    ];
    if let Some(fit) = &answer.at_hand
        && fit.past_end.is_positive()
    {
        let past_end =
            Term::of("at hand", fit.length) - Term::of("wood under the head", under_head);
        steps.push(Step::of("P of the one at hand", past_end, fit.past_end));
        steps.push(deep(fit.past_end, fit.deep));
    }
    let sources = vec![Source::Arithmetic, Source::Published(STOCK_SOURCE), Source::CommonPractice];
    Working { steps, sources }
}
