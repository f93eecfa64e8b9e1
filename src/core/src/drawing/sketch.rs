//! [`Sketch`]: curves and slanted lines on a board.

use super::{Board, Role, Shape};
use crate::measure::{Length, Tape};

/// Half the size of the cross that marks a centre, and of a dot, in page units.
const CROSS: f64 = 6.0;
const DOT: f64 = 3.0;

/// A [`Board`] whose places are floats from an origin of its own: for curves and slanted lines,
/// which have no exact places. `x` runs to the right and `y` down, in inches.
pub struct Sketch {
    /// For rows of writing and for shapes in page units.
    pub board: Board,
    x: f64,
    y: f64,
    scale: f64,
}

impl Sketch {
    /// A window from `(left, top)` to `(right, bottom)`, scaled to fill the page's width, but
    /// never taller than `tallest` page units, with so many rows of writing above and below.
    #[must_use]
    pub fn new(
        tape: Tape,
        (left, top): (f64, f64),
        (right, bottom): (f64, f64),
        tallest: f64,
        rows: (u8, u8),
    ) -> Sketch {
        let size = |from: f64, to: f64| Length::near(to - from).unwrap_or(Length::ZERO);
        let (width, height) = (size(left, right), size(top, bottom));
        let board = Board::fit(tape, width, height, tallest, rows.0, rows.1);
        let scale = board.size(Length::sixty_fourths(64));
        let (x, y) = (board.x(Length::ZERO) - left * scale, board.y(Length::ZERO) - top * scale);
        Sketch { board, x, y, scale }
    }

    /// Page units of one inch.
    #[must_use]
    pub fn scale(&self) -> f64 {
        self.scale
    }

    /// The place on the page.
    #[must_use]
    pub fn at(&self, (x, y): (f64, f64)) -> (f64, f64) {
        (self.x + x * self.scale, self.y + y * self.scale)
    }

    /// A closed outline.
    pub fn polygon(&mut self, role: Role, points: &[(f64, f64)]) {
        let points = points.iter().map(|point| self.at(*point)).collect();
        self.board.add(role, Shape::Polygon(points));
    }

    /// An open line with corners.
    pub fn polyline(&mut self, role: Role, points: &[(f64, f64)]) {
        let points = points.iter().map(|point| self.at(*point)).collect();
        self.board.add(role, Shape::Polyline(points));
    }

    /// A straight line.
    pub fn line(&mut self, role: Role, from: (f64, f64), to: (f64, f64)) {
        let ((x1, y1), (x2, y2)) = (self.at(from), self.at(to));
        self.board.add(role, Shape::Line(x1, y1, x2, y2));
    }

    /// A circle by its radius.
    pub fn circle(&mut self, role: Role, centre: (f64, f64), radius: f64) {
        let (x, y) = self.at(centre);
        self.board.add(role, Shape::Circle(x, y, radius * self.scale));
    }

    /// A dot where two lines meet smoothly.
    pub fn dot(&mut self, place: (f64, f64)) {
        let (x, y) = self.at(place);
        self.board.add(Role::Tick, Shape::Circle(x, y, DOT));
    }

    /// The cross at a centre.
    pub fn cross(&mut self, place: (f64, f64)) {
        let (x, y) = self.at(place);
        self.board.add(Role::Guide, Shape::Line(x - CROSS, y, x + CROSS, y));
        self.board.add(Role::Guide, Shape::Line(x, y - CROSS, x, y + CROSS));
    }

    /// Labels over marks along the board, `x` in inches.
    pub fn labels(&mut self, row: i8, labels: &[(f64, String)]) {
        self.labels_in_rows(row, 1, labels);
    }

    /// The same, by turns in so many rows away from the window.
    pub fn labels_in_rows(&mut self, first: i8, rows: u8, labels: &[(f64, String)]) {
        let placed = self.placed(labels);
        self.board.labels_in_rows(first, rows, &placed);
    }

    /// How many rows labels over marks need, as [`Board::rows_of`].
    #[must_use]
    pub fn rows_of(&self, labels: &[(f64, String)]) -> u8 {
        self.board.rows_of(&self.placed(labels))
    }

    fn placed(&self, labels: &[(f64, String)]) -> Vec<(Length, String)> {
        let left = self.board.x(Length::ZERO);
        let placed = labels.iter().filter_map(|(x, label)| {
            let from_left = (self.x + x * self.scale - left) / self.scale;
            Some((Length::near(from_left).ok()?, label.clone()))
        });
        placed.collect()
    }

    /// A dimension across, `x` in inches, with its own label.
    pub fn dimension(&mut self, row: i8, from: f64, to: f64, label: String) {
        self.given(row, from, to, label, None);
    }

    /// The same, of a size that is given in this field, if it is.
    pub fn given(
        &mut self,
        row: i8,
        from: f64,
        to: f64,
        label: String,
        field: Option<&'static str>,
    ) {
        let left = self.board.x(Length::ZERO);
        let place = |x: f64| Length::near((self.x + x * self.scale - left) / self.scale);
        if let (Ok(from), Ok(to)) = (place(from), place(to)) {
            self.board.labelled(row, from, to, label, field);
        }
    }
}
