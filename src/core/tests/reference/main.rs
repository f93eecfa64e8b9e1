//! Agreement with published and hand-worked examples, one file for each calculator.
//!
//! Each check names its source. `[WH]` cases are worked by hand from the formula shown there.
//! A departure from a source is marked `DEPARTS:` with the reason.

mod angles;
mod board_measure;
mod crosscut;
mod curve;
mod cutting;
mod dowel;
mod drawings;
mod finish;
mod frame;
mod gravity;
mod items;
mod job;
mod lumber;
mod measure;
mod moisture;
mod one_piece;
mod resaw_rip;
mod screws;
mod shrinkage;
mod spacing;
mod species;
mod strength;
mod tape;
mod top;
