//! Reads the stretcher's fields and lays its answer out.

use super::{Answer, Input, Line, reckon};
use crate::calculators::frame::fields::{
    APRON_BLOCK, APRON_DOWN, APRON_WIDTH, FLOOR_BLOCK, FROM_LEG_TOP, HEIGHT, HEIGHT_TO, LEG_LENGTH,
    MIDDLE, STRETCHER_WIDTH, UPPER, UPPER_EDGE, out_of_range,
};
use crate::drawing::{Anchor, Board, Role, Scene, Size};
use crate::measure::{Length, OutOfRange, Tape};
use crate::say;
use crate::sheet::{self, Act, Ask, Caution, Note, Source, Step, Term, Working};

pub(in crate::calculators::frame) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let leg_length = ask.length(&LEG_LENGTH);
    let apron_down = ask.length(&APRON_DOWN);
    let apron_width = ask.length(&APRON_WIDTH);
    let stretcher_width = ask.length(&STRETCHER_WIDTH);
    let height = ask.length(&HEIGHT);
    let line = match ask.choice(&HEIGHT_TO) {
        MIDDLE => Line::Middle,
        UPPER => Line::UpperEdge,
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
        Err(refused) => ask.refused(refused, out_of_range()),
    }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let headline = FLOOR_BLOCK
        .called("Block under stretcher")
        .figure("floor to lower edge", answer.floor_block);
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures = vec![
        APRON_BLOCK.called("Block upside down").figure("apron to stretcher", answer.apron_block),
        UPPER_EDGE.figure("above the floor", answer.upper_edge),
        FROM_LEG_TOP.called("Upper edge").figure("from top of leg", answer.from_leg_top),
    ];
    laid.notes.push(Note::new(
        "cut_two_blocks",
        say!["Cut two blocks at one stop setting and use them for every leg, instead of the tape."],
    ));
    laid.cautions = Caution::of(&[Act::SawAtStop]);
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let stretcher = || Term::of("stretcher", input.stretcher_width);
    let height = |name| Term::of(name, input.height);
    let floor = match input.line {
        Line::LowerEdge => height("height of lower edge"),
        Line::Middle => height("height of middle") - stretcher() / Term::fixed(2),
        Line::UpperEdge => height("height of upper edge") - stretcher(),
    };
    let under_apron = Term::of("leg", input.leg_length)
        - Term::of("apron drop", input.apron_down)
        - Term::of("apron", input.apron_width);
    let apron = under_apron - stretcher() - Term::of("floor block", answer.floor_block);
    let steps = vec![
        Step::of("floor block", floor, answer.floor_block),
        Step::of("apron block", apron, answer.apron_block),
    ];
    Working { steps, sources: vec![Source::Arithmetic] }
}

/// A leg from the side, with apron, stretcher and both blocks.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    let zero = Length::ZERO;
    let leg = input.leg_length;
    let wide = (leg * 2)?;
    let mut board = Board::with_sides(tape, (wide, leg), 210.0, (0, 1));
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
    board.line(Role::Tick, (zero, leg), (wide, leg));
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
    let left = board.x(zero) - 14.0;
    let label = board.amount(leg);
    board.upright(left, zero, leg, label, Some(LEG_LENGTH.id));
    let right = board.x(wide) + 10.0;
    if input.apron_width.is_positive() {
        let label = board.amount(input.apron_width);
        board.upright(right, input.apron_down, apron_edge, label, Some(APRON_WIDTH.id));
    }
    if input.apron_down.is_positive() {
        let label = board.amount(input.apron_down);
        board.upright(right, zero, input.apron_down, label, Some(APRON_DOWN.id));
    }
    let label = board.amount(input.stretcher_width);
    board.upright(right, answer.from_leg_top, lower_edge, label, Some(STRETCHER_WIDTH.id));
    let to = match input.line {
        Line::LowerEdge => lower_edge,
        Line::Middle => ((lower_edge + answer.from_leg_top)? / 2)?,
        Line::UpperEdge => answer.from_leg_top,
    };
    let label = board.amount(input.height);
    board.upright(board.x(wide) - 14.0, to, leg, label, Some(HEIGHT.id));
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
