//! Both frames from above, the front toward the user, with the dowel, its trims and its holes.

use super::fields::{CLEAR, DEPTH, DOWEL, FROM_FRONT, LEFT_PART, OVERALL, RIGHT_PART, TRIM};
use super::{Answer, Apart, Hold, Input};
use crate::drawing::{Anchor, Board, Role, Scene, Shape};
use crate::measure::{Length, OutOfRange};
use crate::say;
use crate::sheet::Bench;

/// Tallest the frames are drawn, in page units.
const TALLEST: f64 = 190.0;

/// Draws the frames from above, the left one on the left.
pub(super) fn draw(input: &Input, answer: &Answer, bench: &Bench) -> Scene {
    let title = say!["Both frames from above, with a dowel of ", answer.finished, " between them."];
    // Sizes that were added once add up again; a picture without its parts is still a picture.
    match Plan::of(input, answer) {
        Ok(plan) => plan.draw(input, answer, bench).scene(title),
        Err(OutOfRange) => Board::along(bench.tape, answer.rough, TALLEST, 1, 1).scene(title),
    }
}

/// Places across, from the left end of what is drawn.
struct Plan {
    /// The trims to the left and right of the frames.
    trims: (Length, Length),
    /// Outside and inside faces of the left part, inside and outside faces of the right part.
    faces: [Length; 4],
    /// Ends of the finished dowel.
    ends: (Length, Length),
    /// Bottoms of the holes.
    bottoms: (Length, Length),
    /// Width and height of the window.
    window: (Length, Length),
    /// The center of the hole from the front edge of the window, and how much of the parts is
    /// drawn: all, unless they are much longer than the dowel.
    center: Length,
    /// The legs: thickness, and how far their outside lies outside the parts.
    legs: Option<(Length, Length, Length)>,
    dowel: Length,
    bit: Length,
}

impl Plan {
    fn of(input: &Input, answer: &Answer) -> Result<Plan, OutOfRange> {
        let (mut trims, mut room) = ((Length::ZERO, Length::ZERO), (Length::ZERO, Length::ZERO));
        let mut depth = (input.left, input.right);
        match input.hold {
            Hold::Through { trim } => trims = (trim, trim),
            Hold::Blind(blind) => {
                depth = (blind.depth, blind.depth);
                room = (blind.room, blind.room);
            }
            Hold::OneEnd { trim, blind } => {
                trims.0 = trim;
                depth.1 = blind.depth;
                room.1 = blind.room;
            }
        }
        let legs = match input.apart {
            Apart::Legs { leg, set_back, .. } => {
                let back = |part: Length| set_back.map_or_else(|| (leg - part)? / 2, Ok);
                Some((leg, back(input.left)?, back(input.right)?))
            }
            _ => None,
        };
        let (out_left, out_right) = legs.map_or((Length::ZERO, Length::ZERO), |(_, l, r)| (l, r));
        let start = trims.0.max(out_left);
        let inside = (start + input.left)?;
        let far_inside = (inside + answer.clear)?;
        let far = (far_inside + input.right)?;
        let bottoms = ((inside - depth.0)?, (far_inside + depth.1)?);
        // Parts much longer than the dowel are drawn around the hole only.
        let most = ((answer.rough * 3)? / 5)?.max((answer.bit * 4)?);
        let height = input.length.min(most);
        let before = (answer.from_front - (height / 2)?)?;
        let before = before.clamp(Length::ZERO, (input.length - height)?);
        Ok(Plan {
            trims,
            faces: [start, inside, far_inside, far],
            ends: ((bottoms.0 + room.0)?, (bottoms.1 - room.1)?),
            bottoms,
            window: ((far + trims.1.max(out_right))?, height),
            center: (answer.from_front - before)?,
            legs,
            dowel: input.dowel.max(input.across),
            bit: answer.bit,
        })
    }

    fn draw(&self, input: &Input, answer: &Answer, bench: &Bench) -> Board {
        let rows = if answer.rough == answer.finished { 2 } else { 3 };
        let mut board = Board::fit(bench.tape, self.window.0, self.window.1, TALLEST, 2, rows);
        let [outside, inside, far_inside, far] = self.faces;
        if let Some((leg, left, right)) = self.legs {
            // Dashed: the legs stand at both ends of the parts, outside of what is drawn.
            for (face, back, is_left) in [(outside, left, true), (far, right, false)] {
                let (x, wide) = (board.x(face), board.size(leg));
                let x = if is_left { x - board.size(back) } else { x + board.size(back) - wide };
                let (top, high) = (board.top(), board.bottom() - board.top());
                board.add(Role::Ghost, Shape::Rect(x, top, wide, high));
            }
        }
        for (from, to) in [(outside, inside), (far_inside, far)] {
            self.band(&mut board, Role::Wood, from, to, None);
        }
        self.band(&mut board, Role::Hole, self.bottoms.0, inside, Some(self.bit));
        self.band(&mut board, Role::Hole, far_inside, self.bottoms.1, Some(self.bit));
        self.band(&mut board, Role::Fastener, inside, far_inside, Some(self.dowel));
        self.band(&mut board, Role::Ghost, self.ends.0, inside, Some(self.dowel));
        self.band(&mut board, Role::Ghost, far_inside, self.ends.1, Some(self.dowel));
        for (trim, face, is_left) in [(self.trims.0, outside, true), (self.trims.1, far, false)] {
            let ends = if is_left {
                (face - trim).map(|from| (from, face))
            } else {
                (face + trim).map(|to| (face, to))
            };
            if let (Ok((from, to)), true) = (ends, trim.is_positive()) {
                self.band(&mut board, Role::Waste, from, to, Some(self.dowel));
                let x = board.x(face);
                let half = board.size(self.dowel) / 2.0 + 5.0;
                let y = self.middle(&board);
                board.add(Role::CutLine, Shape::Line(x, y - half, x, y + half));
            }
        }
        self.writing(&mut board, input, answer);
        board
    }

    /// Page units down to the center of the hole. The front is at the bottom.
    fn middle(&self, board: &Board) -> f64 {
        board.bottom() - board.size(self.center)
    }

    /// A rectangle from `from` to `to`, as wide as `wide` about the hole, or as the window.
    fn band(&self, board: &mut Board, role: Role, from: Length, to: Length, wide: Option<Length>) {
        let (x, right) = (board.x(from), board.x(to));
        let (top, high) = match wide {
            Some(wide) => {
                let high = board.size(wide);
                (self.middle(board) - high / 2.0, high)
            }
            None => (board.top(), board.bottom() - board.top()),
        };
        board.add(role, Shape::Rect(x, top, (right - x).max(0.0), high));
    }

    fn writing(&self, board: &mut Board, input: &Input, answer: &Answer) {
        let [outside, inside, far_inside, far] = self.faces;
        board.given(-1, outside, inside, Some(LEFT_PART.id));
        board.given(-1, far_inside, far, Some(RIGHT_PART.id));
        match input.apart {
            Apart::Overall(_) => board.given(-2, outside, far, Some(OVERALL.id)),
            Apart::Clear(_) | Apart::Legs { .. } => board.dimension(-2, outside, far),
        }
        let middle = (board.x(inside) + board.x(far_inside)) / 2.0;
        let from_front = format!("{} from front", board.amount(answer.from_front));
        let (center, bottom) = (self.middle(board), board.bottom());
        board.between((middle, center), (middle, bottom), from_front, Some(FROM_FRONT.id));
        let clear = match input.apart {
            Apart::Clear(_) => Some(CLEAR.id),
            _ => None,
        };
        board.given(0, inside, far_inside, clear);
        let depth = match input.hold {
            Hold::Blind(_) | Hold::OneEnd { .. } => Some((far_inside, self.bottoms.1)),
            Hold::Through { .. } => None,
        };
        if let Some((from, to)) = depth {
            let label = format!(
                "{} deep",
                (to - from).map_or_else(|_| String::new(), |it| board.amount(it))
            );
            board.labelled(0, from, to, label, Some(DEPTH.id));
        }
        if self.trims.0.is_positive()
            && let Ok(from) = outside - self.trims.0
        {
            let label = format!("trim {}", board.amount(self.trims.0));
            board.labelled(0, from, outside, label, Some(TRIM.id));
        }
        let thick = format!("dowel {}", board.amount(input.dowel));
        let above = center - board.size(self.dowel) / 2.0 - 6.0;
        let quarter = f64::midpoint(board.x(inside), middle);
        board.name(Role::Ink, (quarter, above, Anchor::Middle), thick, Some(DOWEL.id));
        if let Apart::Legs { clear, .. } = input.apart {
            board.tell(format!("between the legs {}", board.amount(clear)));
        }
        let amount = board.amount(answer.finished);
        board.dimension_labelled(1, self.ends.0, self.ends.1, amount);
        if answer.rough != answer.finished {
            let from = (self.ends.0 - self.trims.0).unwrap_or(self.ends.0);
            let to = (self.ends.1 + self.trims.1).unwrap_or(self.ends.1);
            let label = format!("cut {}", board.amount(answer.rough));
            board.dimension_labelled(2, from, to, label);
        }
        board.tell("from above, front of the bench below");
    }
}
