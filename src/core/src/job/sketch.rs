//! The sketch of a job: front, side and top, to scale, from its sizes.

mod picture;

pub use picture::{Look, Picture, picture};

use std::collections::BTreeSet;

use super::{Item, ItemId, Job, Reckoned, Sketch};
use crate::drawing::{Board, Role, Scene};
use crate::measure::{Length, OutOfRange, Tape};
use crate::say;

/// Tallest a view is drawn, in page units.
const TALLEST: f64 = 210.0;

/// The three views, each with its heading.
#[derive(Clone, Debug, PartialEq)]
pub struct Views {
    /// From the front: along the length.
    pub front: Scene,
    /// From the side: along the depth.
    pub side: Scene,
    /// From above.
    pub top: Scene,
}

/// A size of the sketch: what it comes to, and whether it moved.
#[derive(Clone, Copy)]
struct Size {
    length: Length,
    moved: bool,
}

/// Everything drawn in a view from the side.
struct Sizes {
    height: Size,
    leg: Size,
    rail: Size,
    shelf: Option<Size>,
    top: Option<Size>,
    overhang: Size,
}

/// Draws the sketch of a job, if it has one and its sizes are known and fit each other.
///
/// Pieces whose size uses one of `moved` are outlined in the colour of a cut and named as moved
/// below, so that nothing is told by colour alone.
#[must_use]
pub fn views(
    job: &Job,
    reckoned: &Reckoned,
    moved: &BTreeSet<ItemId>,
    tape: Tape,
) -> Option<Views> {
    let sketch = job.items().find_map(|(_, item)| match item {
        Item::Sketch(sketch) => Some(sketch),
        _ => None,
    })?;
    let size = |text: &str| {
        let length = reckoned.length_of(text).ok().filter(|length| !length.is_negative())?;
        let moved = !reckoned.all_needed_for(text).is_disjoint(moved);
        Some(Size { length, moved })
    };
    let maybe = |text: &str| if text.trim().is_empty() { Some(None) } else { size(text).map(Some) };
    let Sketch { length, depth, height, leg, rail, shelf, top, overhang } = sketch;
    let still = Size { length: Length::ZERO, moved: false };
    let sizes = Sizes {
        height: size(height)?,
        leg: size(leg)?,
        rail: size(rail)?,
        shelf: maybe(shelf)?,
        top: maybe(top)?,
        overhang: maybe(overhang)?.unwrap_or(still),
    };
    let (length, depth) = (size(length)?, size(depth)?);
    let draw = || -> Result<Views, OutOfRange> {
        Ok(Views {
            front: upright("Front", length, &sizes, tape)?,
            side: upright("Side", depth, &sizes, tape)?,
            top: from_above(length, depth, &sizes, tape)?,
        })
    };
    // Legs that leave no room between them draw nothing that helps.
    let fits = |across: Size| (sizes.leg.length * 2).is_ok_and(|legs| legs < across.length);
    if fits(length) && fits(depth) && sizes.rail.length < sizes.height.length {
        draw().ok()
    } else {
        None
    }
}

/// Draws a piece, and marks it when it moved.
fn piece(board: &mut Board, role: Role, moved: bool, at: (Length, Length), size: (Length, Length)) {
    board.rect(role, at.0, at.1, size.0, size.1);
    if moved {
        let (left, top) = (board.x(at.0), board.y(at.1));
        let (width, height) = (board.size(size.0), board.size(size.1));
        let outline = vec![
            (left, top),
            (left + width, top),
            (left + width, top + height),
            (left, top + height),
            (left, top),
        ];
        board.add(Role::CutLine, crate::drawing::Shape::Polyline(outline));
    }
}

fn upright(
    view: &'static str,
    across: Size,
    sizes: &Sizes,
    tape: Tape,
) -> Result<Scene, OutOfRange> {
    let Sizes { height, leg, rail, shelf, top, overhang } = sizes;
    let slab = top.map_or(Length::ZERO, |top| top.length);
    let width = (across.length + (overhang.length * 2)?)?;
    let mut board = Board::fit(tape, width, (height.length + slab)?, TALLEST, 1, 3);
    let left = overhang.length;
    let right = ((left + across.length)? - leg.length)?;
    let between = (across.length - (leg.length * 2)?)?;
    let inside = (left + leg.length)?;
    if let Some(shelf) = shelf.filter(|shelf| shelf.length < height.length) {
        let down = ((slab + height.length)? - shelf.length)?;
        let thick = (rail.length / 2)?.min(shelf.length);
        piece(&mut board, Role::Mate, shelf.moved, (inside, down), (between, thick));
    }
    // Its ends stand at the legs: another leg is another rail.
    let rail_length_moved = leg.moved || across.moved;
    piece(
        &mut board,
        Role::Wood,
        rail.moved || rail_length_moved,
        (inside, slab),
        (between, rail.length),
    );
    for x in [left, right] {
        let moved = leg.moved || height.moved;
        piece(&mut board, Role::Wood, moved, (x, slab), (leg.length, height.length));
    }
    if let Some(top) = top {
        let moved = top.moved || overhang.moved || across.moved;
        piece(&mut board, Role::Wood, moved, (Length::ZERO, Length::ZERO), (width, top.length));
    }
    board.dimension(0, left, (left + across.length)?);
    board.dimension(1, inside, right);
    let named = [
        ("overall", across.moved),
        ("leg", leg.moved),
        ("height", height.moved),
        ("rail", rail.moved),
        ("rail length", rail_length_moved),
        ("top", top.is_some_and(|top| top.moved)),
        ("overhang", overhang.moved),
        ("shelf", shelf.is_some_and(|shelf| shelf.moved)),
    ];
    moved_row(&mut board, &named);
    Ok(board.scene(say![view, " view, ", across.length, " over the legs."]))
}

fn from_above(length: Size, depth: Size, sizes: &Sizes, tape: Tape) -> Result<Scene, OutOfRange> {
    let Sizes { leg, overhang, .. } = sizes;
    let over = overhang.length;
    let (width, height) = ((length.length + (over * 2)?)?, (depth.length + (over * 2)?)?);
    let mut board = Board::fit(tape, width, height, TALLEST, 1, 3);
    let moved = overhang.moved || length.moved || depth.moved;
    piece(&mut board, Role::Wood, moved, (Length::ZERO, Length::ZERO), (width, height));
    let far = |side: Length| -> Result<Length, OutOfRange> { (over + side)? - leg.length };
    for x in [over, far(length.length)?] {
        for y in [over, far(depth.length)?] {
            board.rect(Role::Ghost, x, y, leg.length, leg.length);
        }
    }
    board.dimension(0, Length::ZERO, width);
    let named = [("length", length.moved), ("depth", depth.moved), ("overhang", overhang.moved)];
    moved_row(&mut board, &named);
    Ok(board.scene(say!["From above, ", width, " × ", height, "; the legs dashed beneath."]))
}

/// Names what moved, in the last row.
fn moved_row(board: &mut Board, named: &[(&str, bool)]) {
    let moved: Vec<&str> =
        named.iter().filter(|(_, moved)| *moved).map(|(name, _)| *name).collect();
    if !moved.is_empty() {
        let (x, y) = (board.x(Length::ZERO), board.row(2));
        let words = format!("moved: {}", moved.join(", "));
        board.text(
            Role::StrongInk,
            x,
            y,
            crate::drawing::Anchor::Start,
            crate::drawing::Size::Small,
            words,
        );
    }
}
