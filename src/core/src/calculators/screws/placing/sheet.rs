//! Reads fastener and board and lays the least distances out.

use super::{Answer, Input, reckon};
use crate::calculators::screws::{Wood, sheet::chosen};
use crate::drawing::{Board, Role, Scene};
use crate::measure::{Length, OutOfRange, Rounding, Tape, text::show};
use crate::say;
use crate::sheet::{self, Ask, Caution, Figure, Source, Step, Table, Value, Working};
use crate::tables::fasteners::{LAG_SPACING_SOURCE, Make, SIZES_SOURCE, SPACING_SOURCE};

pub(in crate::calculators::screws) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let board_width = ask.length(ask.field("board_width"));
    let input = Input {
        fastener: chosen(ask, "fastener")?,
        wood: Wood::read(ask)?,
        drilled: ask.yes(ask.field("drilled")),
        steel_plate: ask.yes(ask.field("steel")),
        board_width: board_width?,
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(problems) => ask.refuse(&problems),
    }
}

fn up(length: Length) -> Value {
    Value::Length(length, Rounding::Up)
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let least = |id, label, from, length| Figure { id, label, from, value: up(length) };
    let headline = least("end_distance", "From the end", "end to centre", answer.end_pulled);
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures = vec![
        least("end_pushed", "If pushed away", "end to centre", answer.end_pushed),
        least("edge_distance", "From the edge", "edge to centre", answer.edge),
        Figure::count("rows_that_fit", "Rows side by side", answer.n_rows),
    ];
    let halves = answer.halves;
    let row = |words: &'static str, halves: u8, length| {
        let diameters = format!("{}", f64::from(halves) / 2.0);
        vec![Value::Words(say![words]), Value::Words(say![diameters]), up(length)]
    };
    laid.tables.push(Table {
        id: "spacing",
        title: "Least distances",
        columns: &["From", "Diameters", "Least"],
        rows: vec![
            row("end, load pulls towards it", halves.end_pulled, answer.end_pulled),
            row("end, load pushes away", halves.end_pushed, answer.end_pushed),
            row("edge", halves.edge, answer.edge),
            row("next one along the grain", halves.along, answer.along),
            row("next one across the grain", halves.across, answer.across),
            row("next row, side by side", halves.rows, answer.rows),
            row("next row, staggered", halves.rows_staggered, answer.rows_staggered),
        ],
    });
    if input.fastener.make == Make::LagScrew {
        laid.notes
            .push(say!["Full value. An edge that the load pushes against needs 4 diameters."]);
    } else {
        laid.notes.push(say!["Advice, not a rule, for screws and nails under 1/4 in."]);
        laid.notes.push(say!["In the shop: 2 in from an end, or a pilot hole."]);
    }
    laid.cautions.push(Caution::Drilling);
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let shank = f64::from(input.fastener.shank) / 1000.0;
    let halves = answer.halves;
    let step = |rule: &'static str, halves: u8, length| {
        let put_in = say![format!("{} × {shank:.3} in", f64::from(halves) / 2.0)];
        Step { rule: rule.into(), put_in, gives: up(length) }
    };
    let steps = vec![
        step("from an end = diameters × shank", halves.end_pulled, answer.end_pulled),
        step("from an edge = diameters × shank", halves.edge, answer.edge),
        Step {
            rule: "rows = (width - 2 × edge) ÷ row distance, whole, + 1".into(),
            put_in: say![
                "(",
                input.board_width,
                " - 2 × ",
                (answer.edge, Rounding::Up),
                ") ÷ ",
                (answer.rows, Rounding::Up)
            ],
            gives: Value::Count(answer.n_rows.into()),
        },
    ];
    let source = match input.fastener.make {
        Make::LagScrew => LAG_SPACING_SOURCE,
        _ => SPACING_SOURCE,
    };
    let sources =
        vec![Source::Published(source), Source::Published(SIZES_SOURCE), Source::CommonPractice];
    Working { steps, sources }
}

/// The end of the board from above, with where screws may not go.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    let zero = Length::ZERO;
    let long = ((answer.end_pulled + answer.along)? + answer.end_pushed)?;
    let width = input.board_width;
    let mut board = Board::fit(tape, long, width, 150.0, 0, 2);
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
    Ok(board.scene(say![
        "The end of a board: the first screw ",
        (answer.end_pulled, Rounding::Up),
        " from the end and ",
        (answer.edge, Rounding::Up),
        " from the edge."
    ]))
}
