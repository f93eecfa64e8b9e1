//! Drawings to scale, in page units, without knowing how they are put on a page.
//!
//! A [`Scene`] is a list of shapes with roles; the page gives each role its look. A [`Board`]
//! maps lengths onto the page, and draws dimension lines, numbered marks and labels that do not
//! run into each other. Here lengths become floating-point numbers: a picture is never measured.

mod board;
mod scene;
mod sketch;

pub use board::Board;
pub use scene::{Anchor, Item, Role, SCENE_WIDTH, Scene, Shape, Size};
pub use sketch::{Sketch, points};
