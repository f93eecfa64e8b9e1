//! Reads fastener and board and lays the least distances out.

use super::{Answer, Input, reckon};
use crate::calculators::screws::Wood;
use crate::calculators::screws::fastener::chosen;
use crate::calculators::screws::fields::{
    BOARD_WIDTH, DIAMETERS_COLUMN, DRILLED, EDGE_DISTANCE, END_DISTANCE, END_PUSHED, FASTENER,
    FROM_COLUMN, LEAST_COLUMN, ROWS_THAT_FIT, SPACING, STEEL, out_of_range,
};
use crate::drawing::{Board, Role, Scene};
use crate::measure::{Length, OutOfRange, Rounding, Tape, text::show};
use crate::say;
use crate::sheet::{self, Act, Ask, Caution, Note, Rounded, Source, Step, Term, Value, Working};
use crate::tables::fasteners::{LAG_SPACING_SOURCE, LARGE, SIZES_SOURCE, SPACING_SOURCE};

/// How far from an end a screw is put in the shop: 2 in. Common practice, no source.
const SHOP_END: Length = Length::sixty_fourths(128);

pub(in crate::calculators::screws) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let board_width = ask.length(&BOARD_WIDTH);
    let input = Input {
        fastener: chosen(ask, &FASTENER)?,
        wood: Wood::read(ask)?,
        drilled: ask.yes(&DRILLED),
        steel_plate: ask.yes(&STEEL),
        board_width: board_width?,
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused, out_of_range()),
    }
}

fn up(length: Length) -> Value {
    Value::Length(length, Rounding::Up)
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let headline =
        END_DISTANCE.called("From the end").figure("end to center", up(answer.end_pulled));
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures = vec![
        END_PUSHED.called("If pushed away").figure("end to center", up(answer.end_pushed)),
        EDGE_DISTANCE.called("From the edge").figure("edge to center", up(answer.edge)),
        ROWS_THAT_FIT.called("Rows side by side").figure("", answer.n_rows),
    ];
    let halves = answer.halves;
    let row = |words: &'static str, halves: u8, length| {
        let diameters = format!("{}", f64::from(halves) / 2.0);
        vec![Value::Words(say![words]), Value::Words(say![diameters]), up(length)]
    };
    laid.tables.push(SPACING.table(
        &[FROM_COLUMN, DIAMETERS_COLUMN, LEAST_COLUMN],
        vec![
            row("end, load pulls towards it", halves.end_pulled, answer.end_pulled),
            row("end, load pushes away", halves.end_pushed, answer.end_pushed),
            row("edge", halves.edge, answer.edge),
            row("next one along the grain", halves.along, answer.along),
            row("next one across the grain", halves.across, answer.across),
            row("next row, side by side", halves.rows, answer.rows),
            row("next row, staggered", halves.rows_staggered, answer.rows_staggered),
        ],
    ));
    if input.fastener.is_large() {
        laid.notes.push(Note::new(
            "full_value",
            say!["Full value. An edge that the load pushes against needs 4 diameters."],
        ));
    } else {
        laid.notes.push(Note::new(
            "advice_not_a_rule",
            say!["Advice, not a rule, for screws and nails under ", LARGE, "."],
        ));
        laid.notes.push(Note::new(
            "shop_end_distance",
            say!["In the shop: ", SHOP_END, " from an end, or a pilot hole."],
        ));
    }
    laid.cautions = Caution::of(&[Act::Drill]);
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let shank = input.fastener.shank_text();
    let halves = answer.halves;
    let step = |name, halves: u8, length| {
        let diameters = Term::of("diameters", (f64::from(halves) / 2.0).to_string());
        Step::of(name, diameters * Term::of("shank", shank.clone()), up(length))
    };
    let free =
        Term::of("width", input.board_width) - Term::fixed(2) * Term::of("edge", answer.edge);
    let rows = free / Term::of("row distance", answer.rows) + Term::fixed(1);
    let steps = vec![
        step("from an end", halves.end_pulled, answer.end_pulled),
        step("from an edge", halves.edge, answer.edge),
        Step::of("rows", rows, answer.n_rows).then(Rounded::WholeOnes),
    ];
    let source = if input.fastener.is_large() { LAG_SPACING_SOURCE } else { SPACING_SOURCE };
    let sources =
        vec![Source::Published(source), Source::Published(SIZES_SOURCE), Source::CommonPractice];
    Working { steps, sources }
}

/// The end of the board from above, with where screws may not go.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    let zero = Length::ZERO;
    let long = ((answer.end_pulled + answer.along)? + answer.end_pushed)?;
    let width = input.board_width;
    let mut board = Board::with_sides(tape, (long, width), 150.0, (0, 2));
    board.rect(Role::Wood, zero, zero, long, width);
    board.rect(Role::KeepOut, zero, zero, answer.end_pulled, width);
    let rest = (long - answer.end_pulled)?;
    board.rect(Role::KeepOut, answer.end_pulled, zero, rest, answer.edge);
    board.rect(Role::KeepOut, answer.end_pulled, (width - answer.edge)?, rest, answer.edge);
    let shank = input.fastener.shank()?;
    let second = (answer.end_pulled + answer.along)?;
    for x in [answer.end_pulled, second] {
        board.circle(Role::Fastener, x, answer.edge, shank);
        if answer.n_rows > 1 {
            board.circle(Role::Fastener, x, (answer.edge + answer.rows)?, shank);
        }
    }
    let least = |length| show(length, tape, Rounding::Up).map(|shown| shown.mark.amount());
    board.dimension_labelled(0, zero, answer.end_pulled, least(answer.end_pulled)?);
    board.dimension_labelled(1, answer.end_pulled, second, least(answer.along)?);
    let label = board.amount(width);
    board.upright(board.x(long) + 14.0, zero, width, label, Some(BOARD_WIDTH.id));
    let label = least(answer.edge)?;
    board.upright(board.x(zero) - 14.0, zero, answer.edge, label, None);
    board.tell("hatched: no screw there");
    Ok(board.scene(say![
        "The end of a board: the first screw ",
        (answer.end_pulled, Rounding::Up),
        " from the end and ",
        (answer.edge, Rounding::Up),
        " from the edge."
    ]))
}
