//! Today solid and later dashed, one over the other; gaps of today above those of later; and wood
//! in air on a scale of moisture.

use super::fields::{GAP_TODAY, GAP_WANTED, THICKNESS, WIDTH};
use super::{air, board, gap, swing};
use crate::drawing::{Anchor, Board, Draft, Role, SCENE_WIDTH, Scene, Shape, Size};
use crate::measure::{Length, OutOfRange};
use crate::say;
use crate::sheet::Bench;

/// A width and a thickness.
#[derive(Clone, Copy)]
struct End {
    width: Length,
    thickness: Length,
}

/// Two ends of one board on the same middle, the first solid, the second dashed, and the words
/// before their widths.
fn overlaid(bench: &Bench, solid: End, dashed: End, before: [&str; 2]) -> Board {
    let zero = Length::ZERO;
    let wide = solid.width.max(dashed.width);
    let high = solid.thickness.max(dashed.thickness);
    let mut board = Board::fit(bench.tape, wide, high, 110.0, 2, 2);
    let start = |all: Length, one: Length| (all - one).and_then(|rest| rest / 2).unwrap_or(zero);
    let places = [solid, dashed].map(|end| (start(wide, end.width), start(high, end.thickness)));
    for ((end, role), (left, top)) in
        [(solid, Role::EndGrain), (dashed, Role::Ghost)].into_iter().zip(places)
    {
        board.rect(role, left, top, end.width, end.thickness);
    }
    for (((end, row, field), (left, _)), before) in
        [(solid, -1, Some(WIDTH.id)), (dashed, 0, None)].into_iter().zip(places).zip(before)
    {
        let right = (left + end.width).unwrap_or(wide);
        let label = format!("{before}{}", board.amount(end.width));
        board.labelled(row, left, right, label, field);
    }
    board
}

/// One board today and later.
pub(super) fn board(input: &board::Input, answer: &board::Answer, bench: &Bench) -> Scene {
    let today = End { width: input.width, thickness: input.thickness };
    let thickness = answer.thickness.unwrap_or(input.thickness);
    let later = End { width: answer.width, thickness };
    let mut board = overlaid(bench, today, later, ["today ", "later "]);
    let middle = (board.top() + board.bottom()) / 2.0 + 4.0;
    let thick = format!("{} thick", board.amount(input.thickness));
    let at = (SCENE_WIDTH / 2.0, middle, Anchor::Middle);
    board.name(Role::Ink, at, thick, Some(THICKNESS.id));
    board.tell(format!("dashed: later, {} thick", board.amount(thickness)));
    board.scene(say![
        "End of the board: ",
        input.width,
        " wide today, ",
        answer.width,
        " later, dashed."
    ])
}

/// One board at its driest and its wettest; a quarter as thick as wide, because that is not asked.
pub(super) fn swing(input: &swing::Input, answer: &swing::Answer, bench: &Bench) -> Scene {
    let thickness = (input.width / 4).unwrap_or(Length::ZERO);
    let wet = (input.width + answer.swing).unwrap_or(input.width);
    let driest = End { width: input.width, thickness };
    let wettest = End { width: wet, thickness };
    let board = overlaid(bench, driest, wettest, ["driest ", "wettest "]);
    board.scene(say![
        "End of the board: ",
        input.width,
        " wide when driest, ",
        wet,
        " when wettest, dashed."
    ])
}

/// Most boards that are drawn one by one.
const MOST_DRAWN: u32 = 40;

/// Boards side by side, seen from the end: today above, later below.
pub(super) fn gaps(input: &gap::Input, answer: &gap::Answer, bench: &Bench) -> Scene {
    let boards = input.boards.min(MOST_DRAWN);
    let scene = || -> Result<Scene, OutOfRange> {
        let pitch = (input.width + answer.gap_now)?;
        // Half a board of room on each side, so that boards that swell stay on the page.
        let room = (input.width / 8)?;
        let between = (pitch * boards.saturating_sub(1))?;
        let wide = ((between + input.width)? + (room * 2)?)?;
        let strip = (wide / 10)?;
        let high = (strip * 3)?;
        let mut board = Board::fit(bench.tape, wide, high, 150.0, 2, 3);
        let half = (input.width / 2)?;
        for i in 0..boards {
            let middle = ((room + half)? + (pitch * i)?)?;
            let later_left = (middle - (answer.width_later / 2)?)?;
            board.rect(Role::EndGrain, (middle - half)?, Length::ZERO, input.width, strip);
            board.rect(Role::Mate, later_left, (strip * 2)?, answer.width_later, strip);
            board.rect(Role::Ghost, later_left, (strip * 2)?, answer.width_later, strip);
        }
        let drawn_now = (between + input.width)?;
        let drawn_later = (between + answer.width_later)?;
        if boards == input.boards {
            board.dimension(-1, room, (room + drawn_now)?);
            let left = ((room + half)? - (answer.width_later / 2)?)?;
            board.dimension(0, left, (left + drawn_later)?);
        }
        board.given(-2, room, (room + input.width)?, Some(WIDTH.id));
        let first = (room + input.width)?;
        let now = format!("gap {}", board.amount(answer.gap_now));
        board.labelled(1, first, (first + answer.gap_now)?, now, Some(GAP_TODAY.id));
        let later = format!("gap {} later", board.amount(answer.gap_later));
        let from = (((room + half)? + pitch)? - (answer.width_later / 2)?)?;
        board.labelled(2, (from - answer.gap_later)?, from, later, Some(GAP_WANTED.id));
        board.tell("above: today; below: later");
        if boards < input.boards {
            board.tell(format!("the first {boards} of {} boards", input.boards));
        }
        Ok(board.scene(say![
            input.boards,
            " boards: gaps of ",
            answer.gap_now,
            " today and ",
            answer.gap_later,
            " later."
        ]))
    };
    scene().unwrap_or_else(|_| Scene::empty(say!["Too large to draw."]))
}

/// Moisture on a scale from 0 to 30 %.
pub(super) fn air(answer: &air::Answer) -> Scene {
    let (left, wide, top) = (24.0, SCENE_WIDTH - 48.0, 34.0);
    let x = |percent: f64| left + wide * (percent / 30.0).clamp(0.0, 1.0);
    let mut draft = Draft::default();
    draft.add(Role::Mate, Shape::Rect(left, top, wide, 26.0));
    let (driest, wettest) = (x(answer.driest), x(answer.wettest));
    draft.add(Role::Wood, Shape::Rect(driest, top, (wettest - driest).max(3.0), 26.0));
    for tick in 0_u8..=6 {
        let percent = 5.0 * f64::from(tick);
        draft.add(Role::Tick, Shape::Line(x(percent), top + 26.0, x(percent), top + 33.0));
        let label = format!("{percent:.0} %");
        draft.number(Role::Ink, x(percent), top + 47.0, label);
    }
    let words = if answer.driest < answer.wettest {
        format!("{:.1} to {:.1} %", answer.driest, answer.wettest)
    } else {
        format!("{:.1} %", answer.driest)
    };
    let middle = (driest + wettest) / 2.0;
    draft.add(Role::CutLine, Shape::Line(driest, top - 6.0, driest, top + 26.0));
    if answer.driest < answer.wettest {
        draft.add(Role::CutLine, Shape::Line(wettest, top - 6.0, wettest, top + 26.0));
    }
    let ink = (Role::StrongInk, Size::Medium);
    draft.name(ink, (middle, top - 12.0, Anchor::Middle), words.clone(), None);
    draft.scene(say!["Moisture of the wood: ", words, "."], 90.0)
}
