//! The holes at full size, to lay on both parts and prick through.

use super::{Answer, Hold, Input};
use crate::measure::Length;
use crate::measure::text::exact_text;
use crate::paper::{Ink, Template};
use crate::say;

/// Paper beyond the hole, in inches: enough to tape it down.
const BEYOND: f64 = 1.5;

/// Paper below each part, in inches, for its words.
const BELOW: f64 = 0.5;

/// Both parts, inside faces toward the reader: the left part above, and below it the right one,
/// which is its mirror picture. Parts that reach far beyond the hole are drawn from the front end
/// to a little behind it.
pub(super) fn holes(input: &Input, answer: &Answer) -> Template {
    let (length, height) = (input.length.to_f64(), input.height.to_f64());
    let (from_front, from_top) = (answer.from_front.to_f64(), answer.from_top.to_f64());
    let near = from_front + answer.bit.to_f64() / 2.0 + BEYOND;
    let is_whole = near >= length - BEYOND;
    let width = if is_whole { length } else { near };
    let mut inks = Vec::new();
    for (part, is_left) in [("Left", true), ("Right", false)] {
        let down = if is_left { 0.0 } else { height + BELOW };
        let across = |from_front: f64| if is_left { from_front } else { width - from_front };
        let mut outline = vec![
            (across(width), down),
            (across(0.0), down),
            (across(0.0), down + height),
            (across(width), down + height),
        ];
        outline.extend(is_whole.then_some((across(width), down)));
        inks.push(Ink::Guide(outline));
        inks.push(Ink::Hole(across(from_front), down + from_top, answer.bit.to_f64()));
        let hand = if is_left { "left" } else { "right" };
        inks.push(Ink::Words(
            0.1,
            down + height + 0.2,
            format!(
                "{part} piece, inside face, top edge up, front end at your {hand}. {}",
                hole(input, answer, is_left)
            ),
        ));
    }
    let title = say!["Holes for a dowel of ", input.dowel];
    Template { title, width, height: 2.0 * (height + BELOW), inks }
}

/// The bit, and how deep.
fn hole(input: &Input, answer: &Answer, is_left: bool) -> String {
    let deep =
        |depth: Length| format!("Bit {}, {} deep.", exact_text(answer.bit), exact_text(depth));
    match input.hold {
        Hold::Blind(blind) => deep(blind.depth),
        Hold::OneEnd { blind, .. } if !is_left => deep(blind.depth),
        Hold::Through { .. } | Hold::OneEnd { .. } => {
            format!("Bit {}, through.", exact_text(answer.bit))
        }
    }
}
