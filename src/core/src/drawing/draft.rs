//! [`Draft`]: a drawing whose writing still has to find its place.

use super::{Anchor, Item, Role, Shape, Size};

/// Shapes that stand where they are, and writing with its wish. [`Draft::scene`] gives each label a place where it stays
/// inside, meets no other and is crossed by no line.
#[derive(Default)]
pub struct Draft {
    pub(super) shapes: Vec<Item>,
    pub(super) labels: Vec<Label>,
    pub(super) words: Vec<String>,
}

/// Writing that looks for a place.
pub(super) struct Label {
    pub(super) role: Role,
    pub(super) size: Size,
    pub(super) text: String,
    /// The field whose size it is.
    pub(super) field: Option<&'static str>,
    pub(super) wish: Wish,
    /// It is told under the picture too, so nothing is said where it has no room.
    pub(super) is_told: bool,
}

/// Where a label would stand, and what becomes of it where it cannot.
#[derive(Clone, Copy)]
pub(super) enum Wish {
    /// One of many numbers: there or nowhere.
    There(f64, f64, Anchor),
    /// Words that belong to no spot: along their row, or under the picture.
    Row(f64, f64, Anchor),
    /// What something is or measures: near it, with a leader from further away.
    Near(f64, f64, Anchor),
    /// The number of a dimension line across or upright: in the line, beside it, or with a leader.
    Between((f64, f64), (f64, f64)),
}

impl Draft {
    /// Adds a shape in page units.
    pub fn add(&mut self, role: Role, shape: Shape) {
        self.shapes.push(Item { role, shape, field: None });
    }

    /// What something is or measures, at its baseline. Where it cannot stand there it moves away, with a leader.
    pub fn name(
        &mut self,
        (role, size): (Role, Size),
        (x, y, anchor): (f64, f64, Anchor),
        text: impl Into<String>,
        field: Option<&'static str>,
    ) {
        let wish = Wish::Near(x, y, anchor);
        self.labels.push(Label { role, size, text: text.into(), field, wish, is_told: false });
    }

    /// What something is, where that is told under the picture too: it is left out where it has no room.
    pub fn name_of_told(
        &mut self,
        (role, size): (Role, Size),
        (x, y, anchor): (f64, f64, Anchor),
        text: impl Into<String>,
    ) {
        let wish = Wish::Near(x, y, anchor);
        self.labels.push(Label { role, size, text: text.into(), field: None, wish, is_told: true });
    }

    /// Words in a row of writing, at their baseline. What has no room there is written under the picture.
    pub fn row(
        &mut self,
        (role, size): (Role, Size),
        (x, y, anchor): (f64, f64, Anchor),
        text: impl Into<String>,
    ) {
        let wish = Wish::Row(x, y, anchor);
        self.labels.push(Label {
            role,
            size,
            text: text.into(),
            field: None,
            wish,
            is_told: false,
        });
    }

    /// One of many numbers, centred at its baseline. It is left out where it has no room.
    pub fn number(&mut self, role: Role, x: f64, y: f64, text: impl Into<String>) {
        let wish = Wish::There(x, y, Anchor::Middle);
        self.labels.push(Label {
            role,
            size: Size::Small,
            text: text.into(),
            field: None,
            wish,
            is_told: false,
        });
    }

    /// A dimension line across or upright with its number, and the field whose size that is.
    pub fn dimension(
        &mut self,
        role: Role,
        from: (f64, f64),
        to: (f64, f64),
        text: impl Into<String>,
        field: Option<&'static str>,
    ) {
        let wish = Wish::Between(from, to);
        self.labels.push(Label {
            role,
            size: Size::Small,
            text: text.into(),
            field,
            wish,
            is_told: false,
        });
    }

    /// Says something under the picture.
    pub fn tell(&mut self, words: impl Into<String>) {
        self.words.push(words.into());
    }
}
