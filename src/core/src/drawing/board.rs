//! [`Board`]: maps lengths onto the page.

use super::scene::SCENE_WIDTH;
use super::{Anchor, Draft, Role, Scene, Shape, Size};
use crate::measure::text::show;
use crate::measure::{Length, Rounding, Tape};
use crate::sentence::Sentence;

/// Free border on the left and right, so that writing at an end stays inside.
const MARGIN: f64 = 18.0;

/// The same where upright dimensions stand there.
const SIDE: f64 = 66.0;

/// Height of one row of writing.
const ROW: f64 = 20.0;

/// From the baseline of a row up to the dimension lines in it: a little over the middle of a figure, so that the line
/// under a size is clear of the row below it.
const LINE: f64 = 5.1;

/// Most rows that one kind of number takes, and what lies between two of a row.
const MOST_ROWS: u8 = 4;
const APART: f64 = 4.0;

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
    draft: Draft,
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
        Board::between_sides(tape, (width, height), tallest, (rows_above, rows_below), MARGIN)
    }

    /// The same with room for an upright dimension on its left and right.
    #[must_use]
    pub fn with_sides(tape: Tape, size: (Length, Length), tallest: f64, rows: (u8, u8)) -> Board {
        Board::between_sides(tape, size, tallest, rows, SIDE)
    }

    fn between_sides(
        tape: Tape,
        (width, height): (Length, Length),
        tallest: f64,
        (rows_above, rows_below): (u8, u8),
        side: f64,
    ) -> Board {
        let (wide, high) = (width.to_f64().max(1e-9), height.to_f64().max(1e-9));
        let scale = ((SCENE_WIDTH - 2.0 * side) / wide).min(tallest / high);
        let top = ROW * f64::from(rows_above) + 4.0;
        let bottom = top + high * scale;
        Board {
            tape,
            scale,
            left: (SCENE_WIDTH - wide * scale) / 2.0,
            top,
            bottom,
            height: bottom + ROW * f64::from(rows_below) + 6.0,
            draft: Draft::default(),
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
        self.draft.add(role, shape);
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

    /// Writing in page units: inside the window the name of what is there, outside of it words in their row.
    pub fn text(
        &mut self,
        role: Role,
        x: f64,
        y: f64,
        anchor: Anchor,
        size: Size,
        text: impl Into<String>,
    ) {
        if y > self.top && y < self.bottom {
            self.draft.name((role, size), (x, y, anchor), text, None);
        } else {
            self.draft.row((role, size), (x, y, anchor), text);
        }
    }

    /// The name of what stands at a place in page units, and the field whose size it says.
    pub fn name(
        &mut self,
        role: Role,
        at: (f64, f64, Anchor),
        text: String,
        field: Option<&'static str>,
    ) {
        self.draft.name((role, Size::Small), at, text, field);
    }

    /// Words in a row that begins at a place in page units.
    pub fn row_of(&mut self, x: f64, y: f64, words: String) {
        self.draft.row((Role::Ink, Size::Small), (x, y, Anchor::Start), words);
    }

    /// Says something under the picture.
    pub fn tell(&mut self, words: impl Into<String>) {
        self.draft.tell(words);
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
        self.given(row, from, to, None);
    }

    /// The same, of a size that is given in this field, if it is.
    pub fn given(&mut self, row: i8, from: Length, to: Length, field: Option<&'static str>) {
        let label = (to - from).map_or_else(|_| String::new(), |length| self.amount(length));
        self.labelled(row, from, to, label, field);
    }

    /// A dimension line across with its own label.
    pub fn dimension_labelled(&mut self, row: i8, from: Length, to: Length, label: String) {
        self.labelled(row, from, to, label, None);
    }

    /// The same, of a size that is given in this field, if it is.
    pub fn labelled(
        &mut self,
        row: i8,
        from: Length,
        to: Length,
        label: String,
        field: Option<&'static str>,
    ) {
        let y = self.row(row) - LINE;
        let (from, to) = ((self.x(from), y), (self.x(to), y));
        self.draft.dimension(Role::Ink, from, to, label, field);
    }

    /// A dimension line upright at `x` page units, between two real places from the top.
    pub fn upright(
        &mut self,
        x: f64,
        from: Length,
        to: Length,
        label: String,
        field: Option<&'static str>,
    ) {
        let (from, to) = ((x, self.y(from)), (x, self.y(to)));
        self.draft.dimension(Role::Ink, from, to, label, field);
    }

    /// A dimension line across or upright between two places in page units.
    pub fn between(
        &mut self,
        from: (f64, f64),
        to: (f64, f64),
        label: String,
        field: Option<&'static str>,
    ) {
        self.draft.dimension(Role::Ink, from, to, label, field);
    }

    /// Baseline of a row of writing in page units: 0, 1, 2 below the window, -1, -2 above it.
    #[must_use]
    pub fn row(&self, row: i8) -> f64 {
        if row < 0 {
            self.top - ROW * (f64::from(-row) - 1.0) - 6.0
        } else {
            self.bottom + ROW * (f64::from(row) + 1.0) - 3.0
        }
    }

    /// Labels at real places across, in one row. One that has no room is left out; the last
    /// looks for its room before the others.
    pub fn labels(&mut self, row: i8, labels: &[(Length, String)]) {
        let baseline = self.row(row);
        let last = labels.last().into_iter();
        let others = labels.iter().take(labels.len().saturating_sub(1));
        for (at, label) in last.chain(others) {
            let x = self.x(*at);
            self.draft.number(Role::Ink, x, baseline, label.clone());
        }
    }

    /// How many rows these labels need so that each has room beside its neighbours, up to [`MOST_ROWS`].
    #[must_use]
    pub fn rows_of(&self, labels: &[(Length, String)]) -> u8 {
        let places: Vec<(f64, f64)> = labels
            .iter()
            .map(|(at, label)| {
                let wide = Size::Small.width_of(label, Role::Ink);
                let left = (self.x(*at) - wide / 2.0).min(SCENE_WIDTH - wide).max(0.0);
                (left, left + wide)
            })
            .collect();
        let fits = |rows: u8| {
            let neighbours = places.iter().zip(places.iter().skip(rows.into()));
            neighbours.into_iter().all(|((_, right), (left, _))| right + APART < *left)
        };
        (1..MOST_ROWS).find(|rows| fits(*rows)).unwrap_or(MOST_ROWS)
    }

    /// Labels at real places across, by turns in so many rows away from the window.
    pub fn labels_in_rows(&mut self, first: i8, rows: u8, labels: &[(Length, String)]) {
        let away = if first < 0 { -1 } else { 1 };
        let mut row = first;
        for turn in 0..rows {
            let of_row = labels.iter().skip(turn.into()).step_by(rows.max(1).into());
            self.labels(row, &of_row.cloned().collect::<Vec<_>>());
            row = row.saturating_add(away);
        }
    }

    /// A number in page units that is left out where it has no room.
    pub fn number(&mut self, role: Role, x: f64, y: f64, text: String) {
        self.draft.number(role, x, y, text);
    }

    /// The finished drawing.
    #[must_use]
    pub fn scene(self, title: Sentence) -> Scene {
        self.draft.scene(title, self.height)
    }
}
