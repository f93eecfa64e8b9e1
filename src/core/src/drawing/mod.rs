//! Drawings to scale, in page units, without knowing how they are put on a page.
//!
//! A [`Scene`] is a list of shapes with roles; the page gives each role its look. A [`Draft`] is a scene whose labels
//! still look for a place where they stay inside, meet no other and are crossed by no line; a [`Board`] is a draft
//! that maps lengths onto the page. Here lengths become floating-point numbers: a picture is never measured.

mod board;
mod draft;
mod letters;
mod outline;
mod place;
mod scene;
mod sketch;

pub use board::Board;
pub use draft::Draft;
pub use outline::Outline;
pub use place::{LEFT_OUT, strokes};
pub use scene::{
    Anchor, Area, Item, NARROWEST, Role, SCENE_WIDTH, Scene, Shape, Size, Tag, WIDEST, points,
};
pub use sketch::Sketch;
