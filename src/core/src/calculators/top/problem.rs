//! What no top can do, and the nearest thing that it can.

use crate::measure::{Length, Number, OutOfRange, Rounding, text::exact_text};
use crate::say;
use crate::sheet::{self, Sentence, WayOut};
use crate::tables::shrinkage::{DRIEST, WETTEST};

/// A top that cannot be made as asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "each variant's sentence says what its numbers are")]
pub enum Problem {
    NoPlanks,
    OnePlank { width: Length },
    PlanksOverfill { planks: Length, top: Length },
    GapsFillTop { top: Length, without_gaps: bool },
    PlankTooNarrow { wanted: Length, have: Length, gap: Option<Length> },
    TopSmallerThanBase { field: &'static str, top: Length, base: Length },
    PlanksWillPush { by: Length, gap: Length },
    OpensWider { wanted: Length, least: Length },
    MoistureOutside { field: &'static str, nearest: i64 },
    Tips { load: Number, most: Length },
    OutOfRange,
}

impl From<OutOfRange> for Problem {
    fn from(_: OutOfRange) -> Problem {
        Problem::OutOfRange
    }
}

impl sheet::Problem for Problem {
    fn code(&self) -> &'static str {
        match self {
            Problem::NoPlanks => "no-planks",
            Problem::OnePlank { .. } => "one-plank",
            Problem::PlanksOverfill { .. } => "planks-overfill",
            Problem::GapsFillTop { .. } => "gaps-fill-top",
            Problem::PlankTooNarrow { .. } => "plank-too-narrow",
            Problem::TopSmallerThanBase { .. } => "top-smaller-than-base",
            Problem::PlanksWillPush { .. } => "planks-will-push",
            Problem::OpensWider { .. } => "opens-wider",
            Problem::MoistureOutside { .. } => "moisture-outside",
            Problem::Tips { .. } => "tips",
            Problem::OutOfRange => "out-of-range",
        }
    }

    fn field(&self) -> &'static str {
        match self {
            Problem::NoPlanks | Problem::OnePlank { .. } | Problem::PlankTooNarrow { .. } => {
                "planks"
            }
            Problem::PlanksOverfill { .. } => "top_width",
            Problem::GapsFillTop { .. } => "gap",
            Problem::TopSmallerThanBase { field, .. } | Problem::MoistureOutside { field, .. } => {
                field
            }
            Problem::PlanksWillPush { .. } => "gap_now",
            Problem::OpensWider { .. } => "gap_later",
            Problem::Tips { .. } => "beyond_legs",
            Problem::OutOfRange => "question",
        }
    }

    fn sentence(&self) -> Sentence {
        match *self {
            Problem::NoPlanks => say!["There are no planks."],
            Problem::OnePlank { .. } => say!["One plank has no gaps and no outer two."],
            Problem::PlanksOverfill { planks, top } => {
                say!["The planks alone take ", planks, ", more than a top of ", top, "."]
            }
            Problem::GapsFillTop { top, .. } => {
                say!["The gaps leave nothing of ", top, " for these planks."]
            }
            Problem::PlankTooNarrow { wanted, have, .. } => {
                say!["A plank of ", wanted, " is wanted, and one is only ", have, "."]
            }
            Problem::TopSmallerThanBase { top, base, .. } => {
                say!["A top of ", top, " does not cover a base of ", base, "."]
            }
            Problem::PlanksWillPush { by, .. } => {
                say!["Swollen, the planks push on each other by ", by, " at a gap."]
            }
            Problem::OpensWider { wanted, least } => {
                say!["Even laid tight today, the gaps open to ", least, ", more than ", wanted, "."]
            }
            Problem::MoistureOutside { .. } => say![format!(
                "The formula holds from {DRIEST} to {WETTEST} % moisture, and for wet boards."
            )],
            Problem::Tips { load, .. } => {
                let load = crate::measure::text::decimal(load, 0);
                say![format!("A load of {load} lb at the end tips the top up.")]
            }
            Problem::OutOfRange => {
                say!["These sizes are too large or too fine to be kept exactly."]
            }
        }
    }

    fn way_out(&self) -> Option<WayOut> {
        match *self {
            Problem::NoPlanks => {
                WayOut::set_id(say!["Start with two."], "planks", "2 @ 5 1/2 in".to_owned())
            }
            Problem::OnePlank { width } => {
                let text = format!("2 @ {}", exact_text(width));
                WayOut::set_id(say!["Use two or more."], "planks", text)
            }
            Problem::PlanksOverfill { .. } => {
                let sentence = say!["Rip the outer two instead."];
                WayOut::set_id(sentence, "find", "rip_outer".to_owned())
            }
            Problem::GapsFillTop { without_gaps: true, .. } => {
                WayOut::set_id(say!["Without gaps they fit."], "gap", "0".to_owned())
            }
            Problem::GapsFillTop { .. } => WayOut::advice(say!["Leave out a plank."]),
            Problem::PlankTooNarrow { gap: Some(gap), .. } => {
                let sentence = say!["A gap of ", gap, " makes up for it."];
                WayOut::set_id(sentence, "gap", exact_text(gap))
            }
            Problem::PlankTooNarrow { gap: None, .. } => WayOut::advice(say!["Add a plank."]),
            Problem::TopSmallerThanBase { field, base, .. } => WayOut::set_id(
                say!["It must be ", (base, Rounding::Up), " at least."],
                field,
                exact_text(base),
            ),
            Problem::PlanksWillPush { gap, .. } => WayOut::set_id(
                say!["Leave a gap of ", (gap, Rounding::Up), " today, or more."],
                "gap_now",
                exact_text(gap),
            ),
            Problem::OpensWider { least, .. } => WayOut::set_id(
                say!["Lay them tight and take ", least, "."],
                "gap_later",
                exact_text(least),
            ),
            Problem::MoistureOutside { field, nearest } => {
                WayOut::set_id(say![format!("Use {nearest} %.")], field, nearest.to_string())
            }
            Problem::Tips { most, .. } => WayOut::set_id(
                say!["Let it stand ", (most, Rounding::Down), " or less beyond the legs."],
                "beyond_legs",
                exact_text(most),
            ),
            Problem::OutOfRange => None,
        }
    }
}
