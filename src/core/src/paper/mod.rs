//! What goes onto paper at full size.
//!
//! A [`Template`] is what goes onto the wood: a story stick, an outline to trace, holes to
//! prick through. [`tile`] lays it out over sheets of [`Paper`]. Here lengths become
//! floating-point inches; a printed page is good to 1/64 in at best, and a float to far less.

mod template;
mod tile;

pub use template::{Ink, Template, slat_stick, story_stick};
pub use tile::{MOST_PAGES, Page, Pages, Paper, PaperProblem, tile};
