//! One piece of wood on the saw table, seen from its near end, against the fence.

use super::super::saw::Sweep;
use super::Page;
use crate::drawing::{Role, Size};
use crate::measure::Length;
use crate::sheet::Side;

/// Thickness of the fence on the page.
pub(super) const FENCE: f64 = 12.0;

/// Room for the heights of the blade beside the wood.
pub(super) const BESIDE: f64 = 56.0;

/// Where a piece stands on the page.
#[derive(Clone, Copy)]
pub(super) struct EndView {
    /// On which side of the piece the fence is.
    pub(super) side: Side,
    /// Page units across of the face of the fence.
    pub(super) fence_x: f64,
    /// Page units down of the table.
    pub(super) table_y: f64,
    /// Page units for an inch.
    pub(super) scale: f64,
    /// Thickness of the wood above the table.
    pub(super) depth: Length,
}

impl EndView {
    /// A piece so wide with its fence and the heights of the blade, all of it around `middle`.
    pub(super) fn around(
        middle: f64,
        width: Length,
        scale: f64,
        side: Side,
        table_y: f64,
        depth: Length,
    ) -> EndView {
        let reach = (width.to_f64() * scale + BESIDE - FENCE) / 2.0;
        let fence_x = match side {
            Side::Right => middle + reach,
            Side::Left => middle - reach,
        };
        EndView { side, fence_x, table_y, scale, depth }
    }

    /// Page units across for a place so far from the fence.
    pub(super) fn x(&self, from_fence: Length) -> f64 {
        match self.side {
            Side::Right => self.fence_x - from_fence.to_f64() * self.scale,
            Side::Left => self.fence_x + from_fence.to_f64() * self.scale,
        }
    }

    /// Page units down for a height above the table.
    pub(super) fn y(&self, above_table: Length) -> f64 {
        self.table_y - above_table.to_f64() * self.scale
    }

    /// Page units down of the upper side of the wood.
    pub(super) fn top(&self) -> f64 {
        self.y(self.depth)
    }

    /// A stretch of the wood between two distances from the fence.
    pub(super) fn wood(&self, page: &mut Page, role: Role, from: Length, to: Length) {
        page.rect(role, (self.x(from), self.top()), (self.x(to), self.table_y));
    }

    /// Fence and table.
    pub(super) fn fence_and_table(&self, page: &mut Page, width: Length) {
        let away = match self.side {
            Side::Right => FENCE,
            Side::Left => -FENCE,
        };
        page.rect(
            Role::Fence,
            (self.fence_x, self.top() - 6.0),
            (self.fence_x + away, self.table_y),
        );
        page.line(
            Role::Guide,
            (self.fence_x + away, self.table_y),
            (self.x(width) - away, self.table_y),
        );
    }

    /// Marks the face along the fence: the one that stays there when the piece is turned.
    pub(super) fn mark_at_fence(&self, page: &mut Page) {
        let x = self.fence_x;
        page.line(Role::ShowFace, (x, self.top()), (x, self.table_y));
    }

    /// Marks the upper face: the good one in a cut that comes through.
    pub(super) fn mark_upper(&self, page: &mut Page, width: Length) {
        let y = self.top();
        page.line(Role::ShowFace, (self.x(Length::ZERO), y), (self.x(width), y));
    }

    /// The kerf: from the table as high as the blade, and from the other edge as deep again when
    /// it takes two passes. Where the blade comes through, its tip shows above the wood.
    pub(super) fn kerf(&self, page: &mut Page, sweep: &Sweep, near: Length, far: Length) {
        let (near, far) = (self.x(near), self.x(far));
        let (table, top) = (self.table_y, self.top());
        let tip = self.y(sweep.height);
        if sweep.sides == 1 {
            page.rect(Role::Kerf, (near, top), (far, table));
            page.rect(Role::Blade, (near, tip), (far, top));
        } else {
            page.rect(Role::Kerf, (near, tip), (far, table));
            page.rect(Role::Kerf, (near, top), (far, top + (table - tip)));
        }
    }

    /// The height of the blade beside the wood, up from the table.
    pub(super) fn heights(&self, page: &mut Page, sweep: &Sweep, beyond: Length) {
        let outward = match self.side {
            Side::Right => -1.0,
            Side::Left => 1.0,
        };
        let x = self.x(beyond) + outward * 9.0;
        let label = page.amount(sweep.height);
        page.upright(x, self.y(sweep.height), self.table_y, label, None);
    }

    /// A label in the wood, if there is room for it; whether there was.
    pub(super) fn label(
        &self,
        page: &mut Page,
        (from, to): (Length, Length),
        label: &str,
        size: Size,
    ) -> bool {
        let (a, b) = (self.x(from), self.x(to));
        let room = (b - a).abs() - 4.0;
        let has_room = size.width_of(label, Role::StrongInk) <= room
            && size.height() <= self.table_y - self.top();
        if has_room {
            let middle = (self.top() + self.table_y) / 2.0 + size.height() * 0.35;
            page.name((a + b) / 2.0, middle, size, label.to_owned(), None);
        }
        has_room
    }
}

/// What the blade does, under the picture.
pub(super) fn tell_blade(page: &mut Page, sweep: &Sweep) {
    let height = page.amount(sweep.height);
    page.tell(match sweep.sides {
        2 => format!("blade {height} up, from both edges"),
        _ => format!("blade {height} up"),
    });
}
