//! What cannot be joined, and the nearest thing that can.

use crate::measure::{Length, OutOfRange, Rounding, text::exact_text};
use crate::say;
use crate::sheet::{self, Sentence, WayOut};

/// A frame that cannot be put together as asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "each variant's sentence says what its numbers are")]
pub enum Problem {
    LegsFillOverall { overall: Length, legs: Length },
    RailFillsOverall { overall: Length, cut: Length, limit: Length },
    RailPastOverall { overall: Length, cut: Length },
    RailAllJoint { cut: Length, joints: Length },
    LapHidesLegs,
    LapMissesLeg { short: Length, leg: Length },
    TenonThroughLeg { tenon: Length, leg: Length },
    RailThickerThanLeg { rail: Length, leg: Length },
    SetBackTooDeep { set_back: Length, most: Length },
    BlockTooThick { block: Length, most: Length },
    NoRoomForStretcher { left: Length, stretcher_width: Length, most: Length },
    StretcherBelowFloor { height: Length, least: Length },
    StretcherInApron { height: Length, most: Length },
    RailsMeet { depth_overall: Length, taken: Length },
    HousingThroughRail { housing: Length, rail_thickness: Length },
    SupportsDoNotFit { n_supports: u32, most: i128 },
    TenonOutsideLeg { thickness: Length, leg: Length, most: Length },
    LegTooThinForTenon { leg: Length },
    MortiseComesOut { field: &'static str, tenon: Length, most: Length },
    TenonsMeet { by: Length, most: Length },
    LapLeavesNothing { cut: Length, thinner: Length },
    DiagonalsDoNotBelong { diagonal: Length },
    OutOfRange,
}

impl From<OutOfRange> for Problem {
    fn from(_: OutOfRange) -> Problem {
        Problem::OutOfRange
    }
}

/// Advice that one field carries out with a length.
fn use_length(
    words: &'static str,
    length: Length,
    end: &'static str,
    field: &'static str,
) -> Option<WayOut> {
    WayOut::set_id(say![words, (length, Rounding::Down), end], field, exact_text(length))
}

impl sheet::Problem for Problem {
    fn code(&self) -> &'static str {
        match self {
            Problem::LegsFillOverall { .. } => "legs-fill-overall",
            Problem::RailFillsOverall { .. } => "rail-fills-overall",
            Problem::RailPastOverall { .. } => "rail-past-overall",
            Problem::RailAllJoint { .. } => "rail-all-joint",
            Problem::LapHidesLegs => "lap-hides-legs",
            Problem::LapMissesLeg { .. } => "lap-misses-leg",
            Problem::TenonThroughLeg { .. } => "tenon-through-leg",
            Problem::RailThickerThanLeg { .. } => "rail-thicker-than-leg",
            Problem::SetBackTooDeep { .. } => "set-back-too-deep",
            Problem::BlockTooThick { .. } => "block-too-thick",
            Problem::NoRoomForStretcher { .. } => "no-room-for-stretcher",
            Problem::StretcherBelowFloor { .. } => "stretcher-below-floor",
            Problem::StretcherInApron { .. } => "stretcher-in-apron",
            Problem::RailsMeet { .. } => "rails-meet",
            Problem::HousingThroughRail { .. } => "housing-through-rail",
            Problem::SupportsDoNotFit { .. } => "supports-do-not-fit",
            Problem::TenonOutsideLeg { .. } => "tenon-outside-leg",
            Problem::LegTooThinForTenon { .. } => "leg-too-thin-for-tenon",
            Problem::MortiseComesOut { .. } => "mortise-comes-out",
            Problem::TenonsMeet { .. } => "tenons-meet",
            Problem::LapLeavesNothing { .. } => "lap-leaves-nothing",
            Problem::DiagonalsDoNotBelong { .. } => "diagonals-do-not-belong",
            Problem::OutOfRange => "out-of-range",
        }
    }

    fn field(&self) -> &'static str {
        match self {
            Problem::LegsFillOverall { .. } => "overall",
            Problem::RailFillsOverall { .. }
            | Problem::RailPastOverall { .. }
            | Problem::RailAllJoint { .. } => "rail",
            Problem::LapHidesLegs => "joint",
            Problem::LapMissesLeg { .. } => "lap_short",
            Problem::TenonThroughLeg { .. } => "tenon",
            Problem::RailThickerThanLeg { .. } => "rail_thickness",
            Problem::SetBackTooDeep { .. } => "set_back",
            Problem::BlockTooThick { .. } => "block",
            Problem::NoRoomForStretcher { .. } => "leg_length",
            Problem::StretcherBelowFloor { .. } | Problem::StretcherInApron { .. } => "height",
            Problem::RailsMeet { .. } => "depth_overall",
            Problem::HousingThroughRail { .. } => "housing",
            Problem::SupportsDoNotFit { .. } => "supports",
            Problem::TenonOutsideLeg { .. } => "tenon_thickness",
            Problem::LegTooThinForTenon { .. } => "leg",
            Problem::MortiseComesOut { field, .. } => field,
            Problem::TenonsMeet { .. } => "tenon_a",
            Problem::LapLeavesNothing { .. } => "rear_cut",
            Problem::DiagonalsDoNotBelong { .. } => "diagonal_a",
            Problem::OutOfRange => "question",
        }
    }

    fn sentence(&self) -> Sentence {
        match *self {
            Problem::LegsFillOverall { overall, legs } => {
                say!["The two legs take ", legs, " of ", overall, ": no rail is left."]
            }
            Problem::RailFillsOverall { overall, cut, .. } => {
                say!["A rail of ", cut, " leaves nothing of ", overall, " for the legs."]
            }
            Problem::RailPastOverall { overall, cut } => {
                say!["A rail of ", cut, " has tenons that come out of legs ", overall, " overall."]
            }
            Problem::RailAllJoint { cut, joints } => {
                say!["The joints take ", joints, " of a rail of ", cut, "."]
            }
            Problem::LapHidesLegs => {
                say!["A lapped rail runs over the legs, so it does not tell how wide they are."]
            }
            Problem::LapMissesLeg { short, leg } => {
                say!["Stopping ", short, " short, the rail does not reach over a leg of ", leg, "."]
            }
            Problem::TenonThroughLeg { tenon, leg } => {
                say!["A tenon of ", tenon, " sticks out of a leg of ", leg, "."]
            }
            Problem::RailThickerThanLeg { rail, leg } => {
                say!["A rail of ", rail, " is thicker than the leg of ", leg, "."]
            }
            Problem::SetBackTooDeep { set_back, .. } => {
                say!["Set back ", set_back, ", the rail stands out behind the leg."]
            }
            Problem::BlockTooThick { block, .. } => {
                say!["A block of ", block, " lifts the rail out of the leg."]
            }
            Problem::NoRoomForStretcher { left, stretcher_width, .. } => {
                if left.is_negative() {
                    say!["The apron reaches ", left.abs(), " below the foot of the leg."]
                } else {
                    say![
                        "Under the apron is only ",
                        left,
                        ", and the stretcher is ",
                        stretcher_width,
                        " wide."
                    ]
                }
            }
            Problem::StretcherBelowFloor { height, .. } => {
                say!["At ", height, " the stretcher reaches below the floor."]
            }
            Problem::StretcherInApron { height, .. } => {
                say!["At ", height, " the stretcher runs into the apron."]
            }
            Problem::RailsMeet { depth_overall, taken } => {
                say!["Rails and set-backs take ", taken, " of ", depth_overall, "."]
            }
            Problem::HousingThroughRail { housing, rail_thickness } => {
                say!["Ends ", housing, " deep come out of a rail of ", rail_thickness, "."]
            }
            Problem::SupportsDoNotFit { n_supports, .. } => {
                say![n_supports, " supports do not fit beside each other between the legs."]
            }
            Problem::TenonOutsideLeg { thickness, leg, .. } => {
                say!["A tenon of ", thickness, " at that place lies outside a leg of ", leg, "."]
            }
            Problem::LegTooThinForTenon { leg } => {
                say!["A leg of ", leg, " is too thin for any blind tenon."]
            }
            Problem::MortiseComesOut { tenon, .. } => say![
                "The mortise for a tenon of ",
                tenon,
                " leaves less than 1/8 in on the outside of the leg."
            ],
            Problem::TenonsMeet { by, .. } => {
                say!["The two tenons meet in the leg by ", by, "."]
            }
            Problem::LapLeavesNothing { cut, thinner } => {
                say!["A cut of ", cut, " leaves nothing of the thinner piece, ", thinner, "."]
            }
            Problem::DiagonalsDoNotBelong { .. } => {
                say!["No frame with these sides has these diagonals. Measure again."]
            }
            Problem::OutOfRange => {
                say!["These sizes are too large or too fine to be kept exactly."]
            }
        }
    }

    fn way_out(&self) -> Option<WayOut> {
        match *self {
            Problem::LegsFillOverall { legs, .. } => {
                WayOut::advice(say!["Make the overall more than ", (legs, Rounding::Up), "."])
            }
            Problem::RailFillsOverall { limit, .. } => {
                WayOut::advice(say!["The rail must be shorter than ", limit, "."])
            }
            Problem::RailPastOverall { overall, .. } => {
                use_length("The rail may be ", overall, " at most.", "rail")
            }
            Problem::RailAllJoint { joints, .. } => {
                WayOut::advice(say!["The rail must be longer than ", (joints, Rounding::Up), "."])
            }
            Problem::LapHidesLegs => {
                WayOut::set_id(say!["Find the rail instead."], "find", "rail".to_owned())
            }
            Problem::LapMissesLeg { .. } => {
                WayOut::set_id(say!["Let it end flush: 0."], "lap_short", "0".to_owned())
            }
            Problem::TenonThroughLeg { leg, .. } => {
                use_length("Cut it through and flush: ", leg, ".", "tenon")
            }
            Problem::RailThickerThanLeg { leg, .. } => {
                use_length("Use a rail of ", leg, " or less.", "rail_thickness")
            }
            Problem::SetBackTooDeep { most, .. } => {
                use_length("Set it back ", most, " or less.", "set_back")
            }
            Problem::BlockTooThick { most, .. } => {
                use_length("Use a block of ", most, " or less.", "block")
            }
            Problem::NoRoomForStretcher { most, .. } if most.is_positive() => Some(WayOut {
                sentence: say!["Without an apron there is room."],
                set: vec![("apron_width", "0".into()), ("apron_down", "0".into())],
            }),
            Problem::NoRoomForStretcher { stretcher_width, .. } => WayOut::advice(say![
                "The leg must be longer than apron and stretcher, ",
                stretcher_width,
                " at least."
            ]),
            Problem::StretcherBelowFloor { least, .. } => {
                use_length("Lowest is ", least, ", on the floor.", "height")
            }
            Problem::StretcherInApron { most, .. } => {
                use_length("Highest is ", most, ", right under the apron.", "height")
            }
            Problem::RailsMeet { taken, .. } => {
                WayOut::advice(say!["The depth must be more than ", (taken, Rounding::Up), "."])
            }
            Problem::HousingThroughRail { rail_thickness, .. } => {
                use_length("Go in ", rail_thickness, " or less.", "housing")
            }
            Problem::SupportsDoNotFit { most, .. } if most >= 1 => {
                WayOut::set_id(say![format!("At most {most} fit.")], "supports", most.to_string())
            }
            Problem::SupportsDoNotFit { .. } => {
                WayOut::advice(say!["Use a thinner support: not even one fits."])
            }
            Problem::TenonOutsideLeg { most, .. } if !most.is_negative() => {
                let sentence = say!["Centre the tenons in the leg."];
                WayOut::set_id(sentence, "tenon_place", "centred".to_owned())
            }
            Problem::TenonOutsideLeg { leg, .. } => {
                use_length("Tenons of ", leg, " or less lie in it.", "tenon_thickness").map(
                    |mut w| {
                        w.set.push(("tenon_place", "centred".into()));
                        w
                    },
                )
            }
            Problem::LegTooThinForTenon { .. } => {
                WayOut::advice(say!["Use screws or a lap instead of tenons."])
            }
            Problem::MortiseComesOut { field, most, .. } => {
                use_length("Use a tenon of ", most, " or less.", field)
            }
            Problem::TenonsMeet { most, .. } if most.is_positive() => {
                let text = exact_text(most);
                Some(WayOut {
                    sentence: say!["Both alike may be ", (most, Rounding::Down), " long."],
                    set: vec![("tenon_a", text.clone().into()), ("tenon_b", text.into())],
                })
            }
            Problem::TenonsMeet { .. } => {
                WayOut::advice(say!["Move the tenons nearer the outside of the leg."])
            }
            Problem::LapLeavesNothing { .. } => WayOut::set_id(
                say!["Leave it empty to cut half of the thinner piece."],
                "rear_cut",
                String::new(),
            ),
            Problem::DiagonalsDoNotBelong { diagonal } => {
                WayOut::advice(say!["Square, both would be ", diagonal, "."])
            }
            Problem::OutOfRange => None,
        }
    }
}
