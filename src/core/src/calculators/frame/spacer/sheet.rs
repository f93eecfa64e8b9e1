//! Reads the spacer's fields and lays its answer out.

use super::{Answer, Input, Lay, reckon};
use crate::drawing::{Anchor, Board, Role, Scene, Shape, Size};
use crate::measure::{Length, OutOfRange, Rounding, Tape};
use crate::say;
use crate::sheet::{self, Ask, Figure, Source, Step, Table, Value, Working};

pub(in crate::calculators::frame) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let (leg, rail) = (ask.length(ask.field("leg")), ask.length(ask.field("rail_thickness")));
    let lay = match ask.choice(ask.field("lay")).id {
        "inside" => ask.length(ask.field("set_back")).map(Lay::InsideDown),
        "centred" => Some(Lay::Centred),
        "block" => ask.length(ask.field("block")).map(Lay::Block),
        _ => ask.length(ask.field("set_back")).map(Lay::OutsideDown),
    };
    let input = Input { leg: leg?, rail: rail?, lay: lay? };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(problems) => ask.refuse(&problems),
    }
}

/// The block that is used for the lay that was chosen.
fn block(input: &Input, answer: &Answer) -> Length {
    match input.lay {
        Lay::InsideDown(_) => answer.inside_down,
        _ => answer.outside_down,
    }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let block = block(input, answer);
    let set_back = Figure::length(
        "rail_set_back_outside",
        "Set-back",
        "outside of leg to rail",
        answer.outside_down,
    );
    let inside = Figure::length(
        "rail_set_back_inside",
        "Set-back inside",
        "inside of leg to rail",
        answer.inside_down,
    );
    let figure = Figure::length("spacer_block", "Spacer block", "bench to rail", block);
    let mut laid = match input.lay {
        Lay::Block(_) => sheet::Answer::new(set_back, working(input, answer)),
        _ => {
            let mut laid = sheet::Answer::new(figure, working(input, answer));
            laid.figures.push(set_back);
            laid
        }
    };
    laid.figures.push(inside);
    let row = |words: &'static str, length| {
        vec![Value::Words(say![words]), Value::Length(length, Rounding::Nearest)]
    };
    laid.tables.push(Table {
        id: "blocks",
        title: "Block for each way",
        columns: &["On the bench", "Block"],
        rows: vec![
            row("Outside faces down", answer.outside_down),
            row("Inside faces down", answer.inside_down),
            row("Rail centred", answer.centred),
        ],
    });
    if block.is_zero() {
        laid.notes.push(say!["No block: rail and leg both lie on the bench."]);
    }
    if answer.outside_down.is_zero() && !block.is_zero() {
        laid.notes.push(say![
            "Flush outside shows every 1/32 in of difference. A small set-back hides it."
        ]);
    }
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let Input { leg, rail, lay } = *input;
    let step = match lay {
        Lay::OutsideDown(set_back) => {
            Step::length("outside down: block = set-back", say![set_back], answer.outside_down)
        }
        Lay::InsideDown(set_back) => Step::length(
            "inside down: block = leg - rail - set-back",
            say![leg, " - ", rail, " - ", set_back],
            answer.inside_down,
        ),
        Lay::Centred => Step::length(
            "centred: block = (leg - rail) ÷ 2",
            say!["(", leg, " - ", rail, ") ÷ 2"],
            answer.centred,
        ),
        Lay::Block(block) => Step::length(
            "outside down: set-back = block; turned over, leg - rail - block",
            say![leg, " - ", rail, " - ", block],
            answer.inside_down,
        ),
    };
    Working { steps: vec![step], sources: vec![Source::Arithmetic] }
}

/// The corner as it lies on the bench, seen along the leg: leg, rail and block to scale.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    let leg = input.leg;
    let zero = Length::ZERO;
    let block = block(input, answer);
    let is_inside_down = matches!(input.lay, Lay::InsideDown(_));
    let width = (leg * 3)?;
    let mut board = Board::fit(tape, width, leg, 130.0, 1, 1);
    let rail_top = ((leg - block)? - input.rail)?;
    board.rect(Role::EndGrain, zero, zero, leg, leg);
    board.rect(Role::Mate, leg, rail_top, (leg * 2)?, input.rail);
    board.rect(Role::Waste, (leg + (leg / 2)?)?, (leg - block)?, leg, block);
    let bench = board.bottom() + 1.5;
    board.add(Role::Kerf, Shape::Rect(board.x(zero) - 6.0, bench, board.size(width) + 12.0, 3.0));
    let labels = [(zero, leg, "leg"), (leg, (leg * 2)?, "rail")];
    for (left, wide, name) in labels {
        let x = board.x(left) + board.size(wide) / 2.0;
        let y = match name {
            "rail" => board.y(rail_top) + board.size(input.rail) / 2.0 + 4.0,
            _ => (board.top() + board.bottom()) / 2.0 + 4.0,
        };
        board.text(Role::Ink, x, y, Anchor::Middle, Size::Small, name);
    }
    let face = if is_inside_down { "outside face up" } else { "outside face down" };
    let (x, y) = (board.x(zero), if is_inside_down { board.row(-1) } else { board.row(0) });
    board.text(Role::Ink, x, y, Anchor::Start, Size::Small, face);
    let x = board.x(width);
    let label = format!("block {}", board.amount(block));
    let y = board.row(0);
    board.text(Role::StrongInk, x, y, Anchor::End, Size::Small, label);
    Ok(board.scene(say![
        "The leg on the bench, the rail on a block of ",
        block,
        ", ",
        answer.outside_down,
        " back from the outside of the leg."
    ]))
}
