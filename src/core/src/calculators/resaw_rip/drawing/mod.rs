//! The end view at the saw, from where the user stands, and the top view of a guided cut.

mod end_view;
mod guide;
mod section;
mod strips;

pub(super) use guide::guide;
pub(super) use section::section;
pub(super) use strips::strips;

use crate::drawing::{Anchor, Item, Role, SCENE_WIDTH, Scene, Shape, Size};
use crate::measure::text::show;
use crate::measure::{Length, Rounding, Tape};
use crate::sheet::Sentence;

/// Height of one row of writing.
const ROW: f64 = 17.0;

/// Free border left and right.
const MARGIN: f64 = 8.0;

/// Shapes in page units, with helpers for writing that stays on the page.
struct Page {
    tape: Tape,
    items: Vec<Item>,
}

impl Page {
    fn new(tape: Tape) -> Page {
        Page { tape, items: Vec::new() }
    }

    fn add(&mut self, role: Role, shape: Shape) {
        self.items.push(Item { role, shape });
    }

    /// A rectangle from any two opposite corners.
    fn rect(&mut self, role: Role, (x1, y1): (f64, f64), (x2, y2): (f64, f64)) {
        let shape = Shape::Rect(x1.min(x2), y1.min(y2), (x2 - x1).abs(), (y2 - y1).abs());
        self.add(role, shape);
    }

    fn line(&mut self, role: Role, (x1, y1): (f64, f64), (x2, y2): (f64, f64)) {
        self.add(role, Shape::Line(x1, y1, x2, y2));
    }

    /// Writing centred at `x`, moved in where it would leave the page.
    fn text(&mut self, role: Role, x: f64, y: f64, size: Size, text: impl Into<String>) {
        let text = text.into();
        let half = (size.width_of(&text) / 2.0).min(SCENE_WIDTH / 2.0);
        let x = x.clamp(half, SCENE_WIDTH - half);
        self.add(role, Shape::Text(x, y, Anchor::Middle, size, text));
    }

    /// Writing that begins at `x`.
    fn text_from(&mut self, role: Role, x: f64, y: f64, size: Size, text: impl Into<String>) {
        self.add(role, Shape::Text(x, y, Anchor::Start, size, text.into()));
    }

    /// The nearest mark, without a unit.
    fn amount(&self, length: Length) -> String {
        show(length, self.tape, Rounding::Nearest)
            .map_or_else(|_| length.to_string(), |shown| shown.mark.amount())
    }

    /// A dimension line across at height `y`, with its label above the middle of it.
    fn across(&mut self, x1: f64, x2: f64, y: f64, label: String) {
        for x in [x1, x2] {
            self.line(Role::Dimension, (x, y - 4.0), (x, y + 4.0));
        }
        self.line(Role::Dimension, (x1, y), (x2, y));
        self.text(Role::StrongInk, (x1 + x2) / 2.0, y - 4.0, Size::Small, label);
    }

    /// A dimension line upright at `x`.
    fn upright(&mut self, x: f64, y1: f64, y2: f64) {
        for y in [y1, y2] {
            self.line(Role::Dimension, (x - 3.0, y), (x + 3.0, y));
        }
        self.line(Role::Dimension, (x, y1), (x, y2));
    }

    fn scene(self, title: Sentence, height: f64) -> Scene {
        Scene { title, width: SCENE_WIDTH, height, items: self.items }
    }
}
