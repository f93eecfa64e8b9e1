//! [`Scene`]: shapes with roles, and the sizes that can be tapped.

use super::letters;
use crate::sentence::Sentence;

/// Width of every scene in page units: one unit is one CSS pixel on a phone 360 wide.
pub const SCENE_WIDTH: f64 = 340.0;

/// CSS pixels of the narrowest place that a scene is shown in: a phone 320 wide.
pub const NARROWEST: f64 = 300.0;

/// CSS pixels of the widest place that a scene is shown in: its writing grows to 22 and stops.
pub const WIDEST: f64 = 498.0;

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
    /// The sizes that can be tapped, left to right and then top to bottom.
    pub tags: Vec<Tag>,
    /// What is written under the picture.
    pub words: Vec<String>,
}

impl Scene {
    /// Keeps the sizes of fields that have one: what stands where another field was left empty, or where the size is the
    /// answer, is a number like any other.
    pub fn keep_sizes(&mut self, is_given: impl Fn(&str) -> bool) {
        self.tags.retain(|tag| is_given(tag.field));
        for item in &mut self.items {
            item.field = item.field.filter(|field| is_given(field));
        }
    }

    /// A picture of nothing but its title.
    #[must_use]
    pub fn empty(title: Sentence) -> Scene {
        Scene {
            title,
            width: SCENE_WIDTH,
            height: 1.0,
            items: Vec::new(),
            tags: Vec::new(),
            words: Vec::new(),
        }
    }
}

/// A size that somebody gave, where it is measured: it opens its field.
#[derive(Clone, Debug, PartialEq)]
pub struct Tag {
    /// Id of the field. The lines of the size carry it too.
    pub field: &'static str,
    /// Index of its writing in the items.
    pub item: usize,
    /// What its writing takes, with the room for a line under it.
    pub writing: Area,
    /// What a finger may hit: 44 CSS pixels at the least wherever the scene is shown. No two meet.
    pub target: Area,
}

/// An upright rectangle, in page units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Area {
    /// Its left edge.
    pub left: f64,
    /// Its upper edge.
    pub top: f64,
    /// Its right edge.
    pub right: f64,
    /// Its lower edge.
    pub bottom: f64,
}

/// A shape and what it stands for.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// What it stands for.
    pub role: Role,
    /// Its outline, in page units, x to the right and y down.
    pub shape: Shape,
    /// Id of the field whose size it shows, where somebody gives that size.
    pub field: Option<&'static str>,
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
    /// A piece that is still to cut: an outline on paper.
    ToCut,
    /// A piece of a list that is still to cut: an outline.
    Listed,
    /// A piece of a list that is cut: filled.
    ListedCut,
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
    /// The line to cut, red.
    CutLine,
    /// The line to mark, or where a thing stands.
    Mark,
    /// A construction or centre line.
    Guide,
    /// A dimension line with its ends. It has its number.
    Dimension,
    /// From a number to what it belongs to, where it does not stand there.
    Leader,
    /// A line of a scale, the arc of an angle, the floor.
    Tick,
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
    /// 14 units high.
    Small,
    /// 15 units high.
    Medium,
}

impl Size {
    /// Height in page units.
    #[must_use]
    pub fn height(self) -> f64 {
        match self {
            Size::Small => 14.0,
            Size::Medium => 15.0,
        }
    }

    /// Width of a line of writing in page units, on the wide side; that which matters most is heavier.
    #[must_use]
    pub fn width_of(self, text: &str, role: Role) -> f64 {
        letters::width(text, role == Role::StrongInk) * self.height()
    }
}

/// Straight pieces that a curve is drawn with.
const PIECES: u32 = 64;

/// The points `f(0)` to `f(1)` of a curve, close enough together to look round.
pub fn points(f: impl Fn(f64) -> (f64, f64)) -> Vec<(f64, f64)> {
    (0..=PIECES).map(|n| f(f64::from(n) / f64::from(PIECES))).collect()
}
