//! [`Board`]: maps lengths onto the page.

use super::scene::SCENE_WIDTH;
use super::{Anchor, Item, Role, Scene, Shape, Size};
use crate::measure::text::show;
use crate::measure::{Length, Rounding, Tape};
use crate::sentence::Sentence;

/// Free border on the left and right, so that writing at an end stays inside.
const MARGIN: f64 = 18.0;

/// Height of one row of writing.
const ROW: f64 = 17.0;

/// A drawing in progress: a window of the real thing, to scale, with rows of writing above and
/// below it.
///
/// `x` and `y` are real lengths from the top left corner of the window; the scale is the same in
/// both directions.
pub struct Board {
    tape: Tape,
    scale: f64,
    left: f64,
    top: f64,
    bottom: f64,
    height: f64,
    items: Vec<Item>,
}

impl Board {
    /// A window `width` × `height` of the real thing, scaled to fill the page's width, but never
    /// taller than `tallest` page units, with so many rows of writing above and below.
    #[must_use]
    pub fn fit(
        tape: Tape,
        width: Length,
        height: Length,
        tallest: f64,
        rows_above: u8,
        rows_below: u8,
    ) -> Board {
        let (wide, high) = (width.to_f64().max(1e-9), height.to_f64().max(1e-9));
        let scale = ((SCENE_WIDTH - 2.0 * MARGIN) / wide).min(tallest / high);
        let top = ROW * f64::from(rows_above) + 4.0;
        let bottom = top + high * scale;
        Board {
            tape,
            scale,
            left: (SCENE_WIDTH - wide * scale) / 2.0,
            top,
            bottom,
            height: bottom + ROW * f64::from(rows_below) + 6.0,
            items: Vec::new(),
        }
    }

    /// A window `width` wide to scale and `page_height` page units high: for lengths along a
    /// board, where its own height says nothing. Places down are in page units only.
    #[must_use]
    pub fn along(
        tape: Tape,
        width: Length,
        page_height: f64,
        rows_above: u8,
        rows_below: u8,
    ) -> Board {
        let fitted = Board::fit(tape, width, Length::ZERO, 0.0, rows_above, rows_below);
        let scale = (SCENE_WIDTH - 2.0 * MARGIN) / width.to_f64().max(1e-9);
        Board {
            scale,
            left: MARGIN,
            bottom: fitted.top + page_height,
            height: fitted.height - (fitted.bottom - fitted.top) + page_height,
            ..fitted
        }
    }

    /// Page units across for a real place from the left.
    #[must_use]
    pub fn x(&self, from_left: Length) -> f64 {
        self.left + from_left.to_f64() * self.scale
    }

    /// Page units down for a real place from the top.
    #[must_use]
    pub fn y(&self, from_top: Length) -> f64 {
        self.top + from_top.to_f64() * self.scale
    }

    /// Page units for a real size.
    #[must_use]
    pub fn size(&self, length: Length) -> f64 {
        length.to_f64() * self.scale
    }

    /// Page units of the window's lower edge; the rows below start here.
    #[must_use]
    pub fn bottom(&self) -> f64 {
        self.bottom
    }

    /// Page units of the window's upper edge; the rows above end here.
    #[must_use]
    pub fn top(&self) -> f64 {
        self.top
    }

    /// Adds a shape in page units.
    pub fn add(&mut self, role: Role, shape: Shape) {
        self.items.push(Item { role, shape });
    }

    /// A rectangle of the real thing: left and top corner, width and height.
    pub fn rect(&mut self, role: Role, left: Length, top: Length, width: Length, height: Length) {
        let shape = Shape::Rect(self.x(left), self.y(top), self.size(width), self.size(height));
        self.add(role, shape);
    }

    /// A circle of the real thing: centre and diameter.
    pub fn circle(&mut self, role: Role, x: Length, y: Length, diameter: Length) {
        let shape = Shape::Circle(self.x(x), self.y(y), self.size(diameter) / 2.0);
        self.add(role, shape);
    }

    /// A straight line of the real thing.
    pub fn line(&mut self, role: Role, from: (Length, Length), to: (Length, Length)) {
        let shape = Shape::Line(self.x(from.0), self.y(from.1), self.x(to.0), self.y(to.1));
        self.add(role, shape);
    }

    /// Writing in page units.
    pub fn text(
        &mut self,
        role: Role,
        x: f64,
        y: f64,
        anchor: Anchor,
        size: Size,
        text: impl Into<String>,
    ) {
        self.add(role, Shape::Text(x, y, anchor, size, text.into()));
    }

    /// A length as it is written on a drawing: its nearest mark.
    #[must_use]
    pub fn amount(&self, length: Length) -> String {
        show(length, self.tape, Rounding::Nearest)
            .map_or_else(|_| length.to_string(), |shown| shown.mark.amount())
    }

    /// A dimension line across, in a row of writing: row 0 is next to the window, negative rows
    /// are above it. The length written is `to - from`.
    pub fn dimension(&mut self, row: i8, from: Length, to: Length) {
        let label = (to - from).map_or_else(|_| String::new(), |length| self.amount(length));
        self.dimension_labelled(row, from, to, label);
    }

    /// A dimension line across with its own label.
    pub fn dimension_labelled(&mut self, row: i8, from: Length, to: Length, label: String) {
        let (x1, x2) = (self.x(from), self.x(to));
        let baseline = self.row(row);
        let y = baseline - 4.0;
        let width = Size::Small.width_of(&label);
        let middle = (x1 + x2) / 2.0;
        for end in [x1, x2] {
            self.add(Role::Dimension, Shape::Line(end, y - 4.0, end, y + 4.0));
        }
        if (x2 - x1).abs() > width + 12.0 {
            self.add(Role::Dimension, Shape::Line(x1, y, middle - width / 2.0 - 3.0, y));
            self.add(Role::Dimension, Shape::Line(middle + width / 2.0 + 3.0, y, x2, y));
            self.text(Role::Ink, middle, baseline, Anchor::Middle, Size::Small, label);
        } else {
            // Too narrow to hold its label, which goes beside it, on the side with more room.
            self.add(Role::Dimension, Shape::Line(x1, y, x2, y));
            let (x, anchor) = if middle < SCENE_WIDTH / 2.0 {
                (x1.max(x2) + 4.0, Anchor::Start)
            } else {
                (x1.min(x2) - 4.0, Anchor::End)
            };
            self.text(Role::Ink, x, baseline, anchor, Size::Small, label);
        }
    }

    /// Baseline of a row of writing in page units: 0, 1, 2 below the window, -1, -2 above it.
    #[must_use]
    pub fn row(&self, row: i8) -> f64 {
        if row < 0 {
            self.top - ROW * (f64::from(-row) - 1.0) - 5.0
        } else {
            self.bottom + ROW * (f64::from(row) + 1.0) - 2.0
        }
    }

    /// Labels at real places across, in one row. A label that would run into another one is left
    /// out; the last always stands.
    pub fn labels(&mut self, row: i8, labels: &[(Length, String)]) {
        let baseline = self.row(row);
        let placed: Vec<(f64, f64, &String)> = labels
            .iter()
            .map(|(at, label)| {
                let half = Size::Small.width_of(label) / 2.0;
                let x = self.x(*at).clamp(
                    half.min(SCENE_WIDTH / 2.0),
                    (SCENE_WIDTH - half).max(SCENE_WIDTH / 2.0),
                );
                (x, half, label)
            })
            .collect();
        let last_from = placed.last().map_or(f64::INFINITY, |(x, half, _)| x - half);
        let mut free_from = f64::NEG_INFINITY;
        let mut items = Vec::new();
        for (index, (x, half, label)) in placed.iter().enumerate() {
            let is_last = index + 1 == placed.len();
            let fits = x - half > free_from + 4.0 && (is_last || x + half + 4.0 < last_from);
            if fits || is_last {
                items.push((*x, (*label).clone()));
                free_from = x + half;
            }
        }
        for (x, label) in items {
            self.text(Role::Ink, x, baseline, Anchor::Middle, Size::Small, label);
        }
    }

    /// The finished drawing.
    #[must_use]
    pub fn scene(self, title: Sentence) -> Scene {
        Scene { title, width: SCENE_WIDTH, height: self.height, items: self.items }
    }
}
