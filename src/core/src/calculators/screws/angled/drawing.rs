//! Section along an angled screw: a pocket from the side, a toed screw standing.

use super::super::fields::{EXIT, PART_THICKNESS, RECEIVER_THICKNESS, START_BACK};
use super::{Answer, Find, Input, Seat};
use crate::drawing::{Board, Role, Scene, Shape};
use crate::measure::{Length, OutOfRange, Tape};
use crate::say;
use crate::tables::fasteners::Fastener;

/// Along the part towards the receiver, and across it away from the drilled face.
type Place = (f64, f64);

pub(super) fn draw(
    input: &Input,
    answer: &Answer,
    screw: Fastener,
    tape: Tape,
) -> Result<Scene, OutOfRange> {
    // The one at hand where it fits, else the best of stock lengths.
    let drawn = answer.at_hand.filter(|fit| fit.fault.is_none()).unwrap_or(answer.best);
    let zero = Length::ZERO;
    let is_toed = input.seat == Seat::Face;
    // The part is broken off a little past the start; its end lies at `end`.
    let end = ((answer.start * 5)? / 4)?.max(input.thickness);
    let long = (end + input.receiver)?;
    let across = (input.thickness + input.beyond)?;
    let mut board = if is_toed {
        Board::with_sides(tape, (across, long), 230.0, (1, 1))
    } else {
        Board::with_sides(tape, (long, across), 150.0, (1, 2))
    };
    let place = |board: &Board, (along, aside): Place| {
        let (x, y) = (board.x(zero), board.y(zero));
        let unit = board.size(long) / long.to_f64().max(1e-9);
        let (along, aside) = (along * unit, aside * unit);
        if is_toed { (x + aside, y + along) } else { (x + along, y + aside) }
    };
    let rect = |board: &mut Board, role, from: Place, to: Place| {
        let ((x1, y1), (x2, y2)) = (place(board, from), place(board, to));
        board.add(role, Shape::Rect(x1, y1, (x2 - x1).max(0.0), (y2 - y1).max(0.0)));
    };
    let (end_at, wide) = (end.to_f64(), input.thickness.to_f64());
    rect(&mut board, Role::Mate, (0.0, 0.0), (end_at, wide));
    rect(&mut board, Role::Wood, (end_at, 0.0), (long.to_f64(), across.to_f64()));
    let start: Place = (end_at - answer.start.to_f64(), 0.0);
    let (cos, sin) = (input.angle.cos(), input.angle.sin());
    let on_axis = |distance: f64| -> Place { (start.0 + distance * cos, distance * sin) };
    let seat = answer.to_seat.to_f64();
    let tip = seat + drawn.length.to_f64();
    let (from, to) = (place(&board, start), place(&board, on_axis(tip)));
    board.add(Role::Guide, Shape::Line(from.0, from.1, to.0, to.1));
    // The screw: a head, a shank as thick as it is, and a point.
    let half = screw.diameter() / 2.0;
    let aside = |distance: f64, off: f64| -> Place {
        let (along, across) = on_axis(distance);
        (along - off * sin, across + off * cos)
    };
    let neck = (seat + 2.0 * half).min(tip);
    let point = (tip - 3.0 * half).max(neck);
    let outline = [
        aside(seat, 2.0 * half),
        aside(neck, half),
        aside(point, half),
        on_axis(tip),
        aside(point, -half),
        aside(neck, -half),
        aside(seat, -2.0 * half),
    ];
    let outline = outline.into_iter().map(|corner| place(&board, corner)).collect();
    board.add(Role::Fastener, Shape::Polygon(outline));
    let exit = place(&board, (end_at, answer.exit.to_f64()));
    board.add(Role::Hole, Shape::Circle(exit.0, exit.1, 3.0));
    label(&mut board, input, answer, drawn.deep, [from, exit], end)?;
    Ok(board.scene(say![
        "Section: the screw starts ",
        answer.start,
        " from the end, leaves it ",
        answer.exit,
        " from the drilled face and goes ",
        drawn.deep,
        " deep into the other piece."
    ]))
}

fn label(
    board: &mut Board,
    input: &Input,
    answer: &Answer,
    deep: Length,
    [from, exit]: [(f64, f64); 2],
    end: Length,
) -> Result<(), OutOfRange> {
    let zero = Length::ZERO;
    let start = match input.find {
        Find::Start(_) => None,
        Find::Exit(_) => Some(START_BACK.id),
    };
    let across = (input.thickness + input.beyond)?;
    let label_deep = format!("deep {}", board.amount(deep));
    let receiver = (end, (end + input.receiver)?);
    if input.seat == Seat::Face {
        let left = board.x(zero) - 12.0;
        let label = board.amount(answer.start);
        board.between((left, from.1), (left, exit.1), label, start);
        let right = board.x(across) + 12.0;
        board.upright(right, end, (end + deep)?, label_deep, None);
        let label = board.amount(input.receiver);
        board.upright(left, receiver.0, receiver.1, label, Some(RECEIVER_THICKNESS.id));
        board.given(-1, zero, input.thickness, Some(PART_THICKNESS.id));
        let label = format!("exit {}", board.amount(answer.exit));
        board.labelled(0, zero, answer.exit, label, Some(EXIT.id));
        board.tell("left: the drilled face; below: the other piece");
    } else {
        board.given(-1, (end - answer.start)?, end, start);
        board.labelled(0, end, (end + deep)?, label_deep, None);
        board.given(1, receiver.0, receiver.1, Some(RECEIVER_THICKNESS.id));
        let left = board.x(zero) - 12.0;
        let label = board.amount(input.thickness);
        board.upright(left, zero, input.thickness, label, Some(PART_THICKNESS.id));
        let label = format!("exit {}", board.amount(answer.exit));
        let right = board.x((end + input.receiver)?) + 12.0;
        board.upright(right, zero, answer.exit, label, Some(EXIT.id));
        board.tell("above: the drilled face; right: the other piece");
    }
    board.tell(format!("{:.0}° from the drilled face", input.angle.in_degrees()));
    Ok(())
}
