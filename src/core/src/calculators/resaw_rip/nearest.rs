//! The nearest thing that works, and the fields that carry it out.

use super::guide::{GuideOn, ShoeSide};
use super::strips::Falls;
use crate::measure::text::exact_text;
use crate::measure::{Length, Rounding};
use crate::say;
use crate::sheet::WayOut;

/// The nearest thing that works, as a change of the question.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Nearest {
    /// This length in that field, or more.
    AtLeast {
        /// Id of the field.
        field: &'static str,
        /// What to write there.
        length: Length,
    },
    /// This length in that field, or less.
    AtMost {
        /// Id of the field.
        field: &'static str,
        /// What to write there.
        length: Length,
    },
    /// So many equal strips.
    Strips(u32),
    /// This list of widths.
    Widths(Vec<Length>),
    /// Strips on this side of the blade.
    Falls(Falls),
    /// The guide there, with this side of the shoe along it.
    Guide(GuideOn, ShoeSide),
}

impl Nearest {
    pub(super) fn way_out(&self) -> Option<WayOut> {
        match self {
            Nearest::AtLeast { field, length } => WayOut::set_id(
                say!["Use ", (*length, Rounding::Up), " or more."],
                field,
                exact_text(*length),
            ),
            Nearest::AtMost { field, length } if length.is_zero() => {
                WayOut::set_id(say!["Leave the edge as it is."], field, "0".to_owned())
            }
            Nearest::AtMost { field, length } => WayOut::set_id(
                say!["Use ", (*length, Rounding::Down), " or less."],
                field,
                exact_text(*length),
            ),
            Nearest::Strips(count) => {
                WayOut::set_id(say!["Ask for ", *count, "."], "n_strips", count.to_string())
            }
            Nearest::Widths(widths) => {
                let list: Vec<String> = widths.iter().map(|width| exact_text(*width)).collect();
                let list = list.join(", ");
                WayOut::set_id(say![format!("Cut {list}.")], "widths", list)
            }
            Nearest::Falls(Falls::FarSide) => WayOut::set_id(
                say!["Let the strips fall on the far side of the blade."],
                "falls",
                "far_side".to_owned(),
            ),
            Nearest::Falls(Falls::AtFence) => WayOut::set_id(
                say!["Cut the strips between blade and fence."],
                "falls",
                "at_fence".to_owned(),
            ),
            Nearest::Guide(guide_on, shoe_side) => {
                let (place, on) = match guide_on {
                    GuideOn::Waste => ("waste", "waste"),
                    GuideOn::Strip => ("strip", "strip"),
                };
                let (side, shoe) = match shoe_side {
                    ShoeSide::Narrow => ("narrow", "narrow"),
                    ShoeSide::Wide => ("wide", "wide"),
                };
                Some(WayOut {
                    sentence: say![format!(
                        "Put the guide on the {place}, the {side} side of the shoe along it."
                    )],
                    set: vec![("guide_on", on.to_owned()), ("shoe_side", shoe.to_owned())],
                })
            }
        }
    }
}
