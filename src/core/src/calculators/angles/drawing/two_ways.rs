//! The leg from above: where its foot lands, and the sightline between the two.

use super::angle_arc;
use crate::calculators::angles::fields::THICKNESS;
use crate::calculators::angles::two_ways::{Answer, Faces, Input};
use crate::drawing::{Anchor, Role, Scene, Sketch};
use crate::measure::{Angle, Tape};
use crate::say;

pub(in super::super) fn draw(input: &Input, answer: &Answer, tape: Tape) -> Scene {
    // From above, the front of the bench below: front to back runs down, side to side across.
    let (across, down) = (answer.foot_splay.to_f64(), answer.foot_rake.to_f64());
    let thick = input.thickness.to_f64();
    let reach = across.max(down).max(2.0 * thick);
    let room = thick.max(reach * 0.25);
    let mut sketch = Sketch::new(
        tape,
        (-room * 2.0, -room),
        (across.max(reach * 0.7) + room * 2.0, down.max(reach * 0.7) + room),
        210.0,
        (1, 1),
    );
    sketch.line(Role::Guide, (-room, 0.0), (across.max(reach * 0.7) + room, 0.0));
    sketch.line(Role::Guide, (0.0, -room * 0.8), (0.0, down.max(reach * 0.7) + room * 0.8));
    let half = thick / 2.0;
    match input.faces {
        Faces::Turned => {
            sketch.circle(Role::Wood, (0.0, 0.0), half);
            sketch.circle(Role::Mate, (across, down), half);
        }
        Faces::Square => {
            let square = |x: f64, y: f64| {
                [
                    (x - half, y - half),
                    (x + half, y - half),
                    (x + half, y + half),
                    (x - half, y + half),
                ]
            };
            sketch.polygon(Role::Wood, &square(0.0, 0.0));
            sketch.polygon(Role::Mate, &square(across, down));
        }
    }
    sketch.line(Role::CutLine, (0.0, 0.0), (across, down));
    let label = |length| sketch.board.amount(length);
    let (across_label, down_label) = (label(answer.foot_splay), label(answer.foot_rake));
    let (corner, foot) = (sketch.at((across, 0.0)), sketch.at((across, down)));
    let below = sketch.at((0.0, down));
    let side = sketch.at((across + half, down)).0 + 10.0;
    if down > 0.0 {
        sketch.board.between((side, corner.1), (side, foot.1), down_label, None);
    }
    let under = sketch.at((0.0, down + half)).1 + 14.0;
    if across > 0.0 {
        sketch.board.between((below.0, under), (foot.0, under), across_label, None);
    }
    let leg = sketch.board.amount(input.thickness);
    let (from, to) = (sketch.at((-half, 0.0)), sketch.at((half, 0.0)));
    let over = sketch.at((0.0, -half)).1 - 12.0;
    sketch.board.between((from.0, over), (to.0, over), leg, Some(THICKNESS.id));
    let front = Angle::SQUARE;
    let line = Angle::radians(front.in_radians() - answer.sightline.in_radians());
    angle_arc(&mut sketch, (0.0, 0.0), reach * 0.55, line, front);

    let lean = format!(
        "lean {:.1}°, sightline {:.1}° from front to back",
        answer.resultant.in_degrees(),
        answer.sightline.in_degrees()
    );
    sketch.board.tell(lean);
    let (x, y) = sketch.at((-half, 0.0));
    sketch.board.name(Role::Ink, (x - 6.0, y + 5.0, Anchor::End), "top".to_owned(), None);
    let (x, y) = sketch.at((across, down));
    sketch.board.name(Role::Ink, (x, y + 5.0, Anchor::Middle), "foot".to_owned(), None);
    sketch.board.tell("from above, front of the bench below");
    sketch.board.scene(say![
        "A leg from above. Its foot stands ",
        answer.foot_rake,
        " to the front and ",
        answer.foot_splay,
        format!(
            " to the side; the sightline is {:.2} degrees from front to back.",
            answer.sightline.in_degrees()
        )
    ])
}
