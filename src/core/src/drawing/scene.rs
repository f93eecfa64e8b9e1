//! [`Scene`]: shapes with roles.

use crate::sentence::Sentence;

/// Width of every scene in page units: one unit is one CSS pixel on a phone 360 wide.
pub const SCENE_WIDTH: f64 = 340.0;

/// A drawing, laid out.
#[derive(Clone, Debug, PartialEq)]
pub struct Scene {
    /// What it shows, for who cannot see it.
    pub title: Sentence,
    /// Always [`SCENE_WIDTH`].
    pub width: f64,
    /// In page units.
    pub height: f64,
    /// Back to front.
    pub items: Vec<Item>,
}

/// A shape and what it stands for.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// What it stands for.
    pub role: Role,
    /// Its outline, in page units, x to the right and y down.
    pub shape: Shape,
}

/// What a shape stands for. Each has its own line, fill or hatch, so that none is told by colour
/// alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// Wood that stays.
    Wood,
    /// Wood that stays, seen from the end.
    EndGrain,
    /// Another part of the same drawing, lighter.
    Mate,
    /// The saw cut: solid and dark.
    Kerf,
    /// Hatched.
    Waste,
    /// A place to keep out of: hatched the other way.
    KeepOut,
    /// The fence.
    Fence,
    /// The blade.
    Blade,
    /// A dashed outline: later, hidden, or a guide.
    Ghost,
    /// The line to mark or to cut, red.
    CutLine,
    /// A construction or centre line.
    Guide,
    /// A dimension line with its ends.
    Dimension,
    /// A hole.
    Hole,
    /// A screw, nail or dowel.
    Fastener,
    /// The good face.
    ShowFace,
    /// A piece still to cut that changes size.
    Changes,
    /// Writing.
    Ink,
    /// Writing that matters most.
    StrongInk,
}

/// An outline.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// Corner, width and height.
    Rect(f64, f64, f64, f64),
    /// Two ends.
    Line(f64, f64, f64, f64),
    /// Centre and radius.
    Circle(f64, f64, f64),
    /// Closed.
    Polygon(Vec<(f64, f64)>),
    /// Open.
    Polyline(Vec<(f64, f64)>),
    /// One line of writing, at its baseline.
    Text(f64, f64, Anchor, Size, String),
}

/// How writing stands at its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// It begins there.
    Start,
    /// It is centred there.
    Middle,
    /// It ends there.
    End,
}

/// Size of writing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Size {
    /// 12 units high.
    Small,
    /// 15 units high.
    Medium,
    /// 22 units high.
    Large,
}

impl Size {
    /// Height in page units.
    #[must_use]
    pub fn height(self) -> f64 {
        match self {
            Size::Small => 12.0,
            Size::Medium => 15.0,
            Size::Large => 22.0,
        }
    }

    /// Estimated width of a line of writing in page units, on the wide side.
    #[must_use]
    pub fn width_of(self, text: &str) -> f64 {
        text.chars().count() as f64 * self.height() * 0.56
    }
}
