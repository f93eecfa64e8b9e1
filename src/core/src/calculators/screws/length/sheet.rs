//! Reads the thicknesses and lays the lengths out.

use super::{Answer, Fit, Input, MORE_IN_END_GRAIN, reckon};
use crate::calculators::screws::LEAST_INTO;
use crate::calculators::screws::at_hand::{ends_before, too_little_in};
use crate::calculators::screws::fastener::{chosen, goods};
use crate::calculators::screws::fields::{
    AT_HAND, AT_HAND_BEHIND, AT_HAND_INTO, BEHIND_TIP, BEST_LENGTH, END, ENOUGH, GAUGE, HEAD_SUNK,
    INTO, INTO_RECEIVER_COLUMN, LENGTH_COLUMN, LONGEST, MARGIN, RECEIVER_THICKNESS, STOCK,
    THREAD_IN_RECEIVER, TOP_THICKNESS, VERDICT_AT_HAND, VERDICT_COLUMN, out_of_range,
};
use crate::drawing::{Board, Role, Scene, Shape};
use crate::measure::{Length, OutOfRange, Rounding, Tape};
use crate::say;
use crate::sheet::{self, Act, Ask, Caution, Note, Sentence, Source, Step, Term, Value, Working};
use crate::tables::fasteners::{SIZES_SOURCE, STOCK_SOURCE};

pub(in crate::calculators::screws) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let top = ask.length(&TOP_THICKNESS);
    let receiver = ask.length(&RECEIVER_THICKNESS);
    let head_sunk = ask.length(&HEAD_SUNK);
    let margin = ask.length(&MARGIN);
    let at_hand = ask.optional_length(&AT_HAND);
    let input = Input {
        top: top?,
        receiver: receiver?,
        head_sunk: head_sunk?,
        margin: margin?,
        screw: chosen(ask, &GAUGE)?,
        end_grain: ask.choice(&INTO) == END,
        at_hand: at_hand?,
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused, out_of_range()),
    }
}

/// What becomes of a screw, in words.
fn verdict(input: &Input, fit: &Fit) -> Sentence {
    if fit.behind_tip.is_negative() {
        say!["shows through by ", fit.behind_tip.abs()]
    } else if fit.behind_tip < input.margin {
        say!["inside the margin: ", fit.behind_tip, " behind the tip"]
    } else if !fit.into_receiver.is_positive() {
        ends_before(fit.into_receiver.abs(), "the other piece")
    } else if fit.into_receiver < LEAST_INTO {
        too_little_in(fit.into_receiver)
    } else {
        say!["fits"]
    }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let best = answer.best;
    let longest = BEST_LENGTH.called("Longest that fits").figure("of stock lengths", best.length);
    let mut figures = Vec::new();
    if let Some(fit) = &answer.at_hand {
        figures.push(VERDICT_AT_HAND.figure("", Value::Words(verdict(input, fit))));
        if fit.into_receiver.is_positive() {
            // What was asked about stands first.
            figures
                .insert(0, AT_HAND_INTO.figure("the other piece's face to tip", fit.into_receiver));
            if !fit.behind_tip.is_negative() {
                figures.push(AT_HAND_BEHIND.figure("tip to far face", fit.behind_tip));
            }
        }
    }
    figures.push(longest);
    let headline = figures.remove(0);
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures = figures;
    let at_hand = input.at_hand.unwrap_or(best.length);
    laid.goods = vec![goods(input.screw, at_hand, None)];
    if let Some(enough) = answer.enough {
        laid.figures.push(ENOUGH.figure("with enough thread in the other piece", enough));
        laid.notes.push(Note::new(
            "enough_thread_is",
            say!["Enough thread in the other piece: ", answer.enough_thread, "."],
        ));
    }
    laid.figures.extend([
        THREAD_IN_RECEIVER
            .called("Thread in the other piece")
            .figure("face of the other piece to tip", best.thread_in_receiver),
        BEHIND_TIP.called("Behind the tip").figure("tip to far face", best.behind_tip),
        LONGEST.figure("head to tip", Value::Length(answer.longest, Rounding::Down)),
    ]);
    let rows = answer.stock.iter().map(|fit| {
        vec![fit.length.into(), fit.into_receiver.into(), Value::Words(verdict(input, fit))]
    });
    laid.tables
        .push(STOCK.table(&[LENGTH_COLUMN, INTO_RECEIVER_COLUMN, VERDICT_COLUMN], rows.collect()));
    if best.into_receiver < answer.least_by_rule {
        laid.notes.push(Note::new(
            "under_6_diameters",
            say![
                "Under 6 diameters, ",
                (answer.least_by_rule, Rounding::Up),
                ", in the other piece the design rules count nothing. It locates, it does not carry."
            ],
        ));
    }
    if input.end_grain {
        laid.notes.push(Note::new(
            "end_grain_holds_half",
            say![
                "End grain holds about half as well, and may split: go ",
                MORE_IN_END_GRAIN,
                " deeper."
            ],
        ));
    }
    if input.top > input.receiver {
        laid.notes.push(Note::new(
            "drive_through_thinner",
            say!["Drive through the thinner piece into the thicker one if you can."],
        ));
    }
    if let Ok(smooth) = best.length - best.thread_in_receiver
        && input.top > smooth
    {
        laid.notes.push(Note::new(
            "thread_stays_in_top",
            say!["Thread stays in the top piece: give it a clearance hole to clamp."],
        ));
    }
    laid.cautions = Caution::of(&[Act::Drill, Act::Fasten]);
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let best = answer.best;
    let length = || Term::of("length", best.length);
    let top = || Term::of("top", input.top);
    let receiver = || Term::of("other piece", input.receiver);
    let sunk = || Term::of("sunk", input.head_sunk);
    let longest = top() + receiver() - Term::of("margin", input.margin) - sunk();
    let thread = length() * Term::fixed(2) / Term::fixed(3);
    let mut steps = vec![
        Step::of("longest", longest, answer.longest),
        Step::of("into the other piece", sunk() + length() - top(), best.into_receiver),
        Step::of("thread", thread, best.thread_in_receiver)
            .at_most("what is in the other piece", best.into_receiver),
        Step::of("behind the tip", top() + receiver() - sunk() - length(), best.behind_tip),
    ];
    if let Some(fit) = &answer.at_hand
        && fit.into_receiver.is_positive()
    {
        let into = sunk() + Term::of("at hand", fit.length) - top();
        steps.push(Step::of("the one at hand goes in", into, fit.into_receiver));
    }
    let sources = vec![
        Source::Arithmetic,
        Source::Published(SIZES_SOURCE),
        Source::Published(STOCK_SOURCE),
        Source::Published("AWC NDS 2018, 12.1.5.6: 6 diameters in the other piece, tip counted"),
        Source::CommonPractice,
    ];
    Working { steps, sources }
}

/// Section along the screw: both pieces to scale, the screw in them.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    let zero = Length::ZERO;
    let both = (input.top + input.receiver)?;
    let wide = (both * 2)?;
    let mut board = Board::with_sides(tape, (wide, both), 190.0, (0, 1));
    board.rect(Role::Mate, zero, zero, wide, input.top);
    board.rect(Role::Wood, zero, input.top, wide, input.receiver);
    let keep_out = (both - input.margin)?.max(zero);
    board.rect(Role::KeepOut, zero, keep_out, wide, (both - keep_out)?);
    // The one at hand where it can be drawn in, else the longest that fits.
    let drawn = answer
        .at_hand
        .filter(|fit| fit.into_receiver.is_positive() && !fit.behind_tip.is_negative());
    let drawn = drawn.unwrap_or(answer.best);
    let shank = input.screw.shank()?;
    let middle = board.x((wide / 2)?);
    let (half, head) = (board.size(shank) / 2.0, board.size(shank));
    let tip = (input.head_sunk + drawn.length)?;
    let (from, to) = (board.y(input.head_sunk), board.y(tip));
    let cone = (from + head).min(to);
    let point = (to - head * 1.5).max(cone);
    board.add(
        Role::Fastener,
        Shape::Polygon(vec![
            (middle - head, from),
            (middle + head, from),
            (middle + half, cone),
            (middle + half, point),
            (middle, to),
            (middle - half, point),
            (middle - half, cone),
        ]),
    );
    let left = board.x(zero) - 12.0;
    let label = board.amount(input.top);
    board.upright(left, zero, input.top, label, Some(TOP_THICKNESS.id));
    let label = board.amount(input.receiver);
    board.upright(left, input.top, both, label, Some(RECEIVER_THICKNESS.id));
    let right = board.x(wide) + 12.0;
    if input.margin.is_positive() {
        let label = board.amount(input.margin);
        board.upright(right, keep_out, both, label, Some(MARGIN.id));
    }
    if input.head_sunk.is_positive() {
        let label = board.amount(input.head_sunk);
        board.upright(right, zero, input.head_sunk, label, Some(HEAD_SUNK.id));
    }
    let beside = middle + head + 10.0;
    let label = format!("in it {}", board.amount(drawn.into_receiver));
    if tip > input.top {
        board.upright(beside, input.top, tip, label, None);
    }
    board.tell("above: the piece under the head; below: the other piece");
    board.tell(format!("behind the tip {}", board.amount(drawn.behind_tip)));
    Ok(board.scene(say![
        "Section: a screw of ",
        drawn.length,
        " through ",
        input.top,
        " into ",
        input.receiver,
        ", with ",
        drawn.behind_tip,
        " behind its tip."
    ]))
}
