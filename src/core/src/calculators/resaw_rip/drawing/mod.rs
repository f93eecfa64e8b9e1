//! The end view at the saw, from where the user stands, and the top view of a guided cut.

mod end_view;
mod guide;
mod section;
mod strips;

pub(super) use guide::guide;
pub(super) use section::section;
pub(super) use strips::strips;

use crate::drawing::{Anchor, Draft, Role, Scene, Shape, Size};
use crate::measure::text::show;
use crate::measure::{Length, Rounding, Tape};
use crate::sheet::Sentence;

/// Height of one row of writing.
const ROW: f64 = 20.0;

/// Free border left and right.
const MARGIN: f64 = 8.0;

/// Shapes in page units, with helpers for writing that stays on the page.
struct Page {
    tape: Tape,
    draft: Draft,
}

impl Page {
    fn new(tape: Tape) -> Page {
        Page { tape, draft: Draft::default() }
    }

    fn add(&mut self, role: Role, shape: Shape) {
        self.draft.add(role, shape);
    }

    /// A rectangle from any two opposite corners.
    fn rect(&mut self, role: Role, (x1, y1): (f64, f64), (x2, y2): (f64, f64)) {
        let shape = Shape::Rect(x1.min(x2), y1.min(y2), (x2 - x1).abs(), (y2 - y1).abs());
        self.add(role, shape);
    }

    fn line(&mut self, role: Role, (x1, y1): (f64, f64), (x2, y2): (f64, f64)) {
        self.add(role, Shape::Line(x1, y1, x2, y2));
    }

    /// Words in a row of writing, centred at `x`.
    fn row(&mut self, x: f64, y: f64, text: impl Into<String>) {
        self.draft.row((Role::Ink, Size::Small), (x, y, Anchor::Middle), text);
    }

    /// The name of what stands there, centred at `x`.
    fn name(&mut self, x: f64, y: f64, size: Size, text: String, field: Option<&'static str>) {
        self.draft.name((Role::StrongInk, size), (x, y, Anchor::Middle), text, field);
    }

    /// Says something under the picture.
    fn tell(&mut self, words: impl Into<String>) {
        self.draft.tell(words);
    }

    /// The nearest mark, without a unit.
    fn amount(&self, length: Length) -> String {
        show(length, self.tape, Rounding::Nearest)
            .map_or_else(|_| length.to_string(), |shown| shown.mark.amount())
    }

    /// A dimension line across at height `y`, and the field whose size it is.
    fn across(&mut self, x1: f64, x2: f64, y: f64, label: String, field: Option<&'static str>) {
        self.draft.dimension(Role::StrongInk, (x1, y), (x2, y), label, field);
    }

    /// A dimension line upright at `x`, and the field whose size it is.
    fn upright(&mut self, x: f64, y1: f64, y2: f64, label: String, field: Option<&'static str>) {
        self.draft.dimension(Role::StrongInk, (x, y1), (x, y2), label, field);
    }

    fn scene(self, title: Sentence, height: f64) -> Scene {
        self.draft.scene(title, height)
    }
}
