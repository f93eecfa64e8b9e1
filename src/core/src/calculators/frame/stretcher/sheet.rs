//! Reads the stretcher's fields and lays its answer out.

use super::{Answer, Input, Line, reckon};
use crate::drawing::{Anchor, Board, Role, Scene, Size};
use crate::measure::{Length, OutOfRange, Tape};
use crate::say;
use crate::sheet::{self, Ask, Figure, Source, Step, Working};

pub(in crate::calculators::frame) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let leg_length = ask.length(ask.field("leg_length"));
    let apron_down = ask.length(ask.field("apron_down"));
    let apron_width = ask.length(ask.field("apron_width"));
    let stretcher_width = ask.length(ask.field("stretcher_width"));
    let height = ask.length(ask.field("height"));
    let line = match ask.choice(ask.field("height_to")).id {
        "middle" => Line::Middle,
        "upper" => Line::UpperEdge,
        _ => Line::LowerEdge,
    };
    let input = Input {
        leg_length: leg_length?,
        apron_down: apron_down?,
        apron_width: apron_width?,
        stretcher_width: stretcher_width?,
        height: height?,
        line,
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(problems) => ask.refuse(&problems),
    }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let headline = Figure::length(
        "floor_block",
        "Block under stretcher",
        "floor to lower edge",
        answer.floor_block,
    );
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures = vec![
        Figure::length(
            "apron_block",
            "Block upside down",
            "apron to stretcher",
            answer.apron_block,
        ),
        Figure::length("upper_edge", "Upper edge", "above the floor", answer.upper_edge),
        Figure::length("from_leg_top", "Upper edge", "from top of leg", answer.from_leg_top),
    ];
    laid.notes.push(say![
        "Cut two blocks at one stop setting and use them for every leg, instead of the tape."
    ]);
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let Input { leg_length, apron_down, apron_width, stretcher_width, height, line } = *input;
    let floor = match line {
        Line::LowerEdge => {
            Step::length("floor block = height of lower edge", say![height], answer.floor_block)
        }
        Line::Middle => Step::length(
            "floor block = height of middle - stretcher ÷ 2",
            say![height, " - ", stretcher_width, " ÷ 2"],
            answer.floor_block,
        ),
        Line::UpperEdge => Step::length(
            "floor block = height of upper edge - stretcher",
            say![height, " - ", stretcher_width],
            answer.floor_block,
        ),
    };
    let apron = Step::length(
        "apron block = leg - apron drop - apron - stretcher - floor block",
        say![
            leg_length,
            " - ",
            apron_down,
            " - ",
            apron_width,
            " - ",
            stretcher_width,
            " - ",
            answer.floor_block
        ],
        answer.apron_block,
    );
    Working { steps: vec![floor, apron], sources: vec![Source::Arithmetic] }
}

/// A leg from the side, with apron, stretcher and both blocks.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    let zero = Length::ZERO;
    let leg = input.leg_length;
    let wide = (leg * 2)?;
    let mut board = Board::fit(tape, wide, leg, 190.0, 0, 1);
    let leg_wide = (leg / 10)?;
    let rail_wide = ((leg * 3)? / 5)?;
    let apron_edge = (input.apron_down + input.apron_width)?;
    board.rect(Role::Wood, zero, zero, leg_wide, leg);
    board.rect(Role::Mate, leg_wide, input.apron_down, rail_wide, input.apron_width);
    board.rect(Role::Mate, leg_wide, answer.from_leg_top, rail_wide, input.stretcher_width);
    let block_left = (leg_wide * 2)?;
    let lower_edge = (leg - answer.floor_block)?;
    board.rect(Role::Waste, block_left, lower_edge, leg_wide, answer.floor_block);
    board.rect(Role::Ghost, block_left, apron_edge, leg_wide, answer.apron_block);
    board.line(Role::Dimension, (zero, leg), (wide, leg));
    let text_left = board.x((leg_wide + rail_wide)?) + 6.0;
    let middle =
        |board: &Board, from: Length, size: Length| board.y(from) + board.size(size) / 2.0 + 4.0;
    let block_text = board.x((block_left + leg_wide)?) + 6.0;
    let lines = [
        (text_left, middle(&board, input.apron_down, input.apron_width), "apron".to_owned()),
        (
            text_left,
            middle(&board, answer.from_leg_top, input.stretcher_width),
            "stretcher".to_owned(),
        ),
        (
            block_text,
            middle(&board, lower_edge, answer.floor_block),
            format!("block {}", board.amount(answer.floor_block)),
        ),
        (
            block_text,
            middle(&board, apron_edge, answer.apron_block),
            format!("or block {}", board.amount(answer.apron_block)),
        ),
    ];
    for (x, y, words) in lines {
        board.text(Role::Ink, x, y, Anchor::Start, Size::Small, words);
    }
    let (x, y) = (board.x(wide), board.row(0));
    board.text(Role::Ink, x, y, Anchor::End, Size::Small, "floor");
    Ok(board.scene(say![
        "A leg from the side: the stretcher stands on a block of ",
        answer.floor_block,
        ", ",
        answer.apron_block,
        " below the apron."
    ]))
}
