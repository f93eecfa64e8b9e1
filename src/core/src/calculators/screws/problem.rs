//! What no screw can do, and the nearest thing that one can.

use super::LEAST_INTO;
use crate::measure::{Length, OutOfRange, Rounding, text::exact_text};
use crate::say;
use crate::sheet::{self, Sentence, WayOut};
use crate::tables::fasteners::stock_lengths;

/// A question about screws that cannot or should not be answered as it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "each variant's sentence says what its numbers are")]
pub enum Problem {
    HeadThroughTop { head_sunk: Length, top: Length },
    NoStockSoLong { top: Length },
    ReceiverTooThin { top: Length, receiver: Length, receiver_needed: Length, swapped_works: bool },
    DoesNotReach { length: Length, top: Length },
    BoardTooNarrow { board_width: Length, least: Length },
    ExitOutside { exit: Length, thickness: Length, start: Length, solves_exit: bool },
    SeatOutside { wood: Length, axis: Length, half: Length },
    NoAngledScrew { receiver: Length, too_far_aside: bool },
    ThroughLeg { field: &'static str, deep: Length, leg: Length, half: Length },
    OutsideLeg { field: &'static str, leg: Length, middle: Length, fits: bool },
    TheyMeet { height: Length, apart: Length },
    TooLittleIn { into_receiver: Length, least: Length, stock: Option<Length> },
    NailInWet,
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
            Problem::HeadThroughTop { .. } => "head-through-top",
            Problem::NoStockSoLong { .. } => "no-stock-so-long",
            Problem::ReceiverTooThin { .. } => "receiver-too-thin",
            Problem::DoesNotReach { .. } => "does-not-reach",
            Problem::BoardTooNarrow { .. } => "board-too-narrow",
            Problem::ExitOutside { .. } => "exit-outside",
            Problem::SeatOutside { .. } => "seat-outside",
            Problem::NoAngledScrew { .. } => "no-angled-screw",
            Problem::ThroughLeg { .. } => "through-leg",
            Problem::OutsideLeg { .. } => "outside-leg",
            Problem::TheyMeet { .. } => "they-meet",
            Problem::TooLittleIn { .. } => "too-little-in",
            Problem::NailInWet => "nail-in-wet",
            Problem::OutOfRange => "out-of-range",
        }
    }

    fn field(&self) -> &'static str {
        match self {
            Problem::HeadThroughTop { .. } => "head_sunk",
            Problem::NoStockSoLong { .. } => "top_thickness",
            Problem::ReceiverTooThin { .. } | Problem::NoAngledScrew { .. } => "receiver_thickness",
            Problem::DoesNotReach { .. } | Problem::TooLittleIn { .. } => "screw_length",
            Problem::BoardTooNarrow { .. } => "board_width",
            Problem::ExitOutside { solves_exit: true, .. } => "start_back",
            Problem::ExitOutside { .. } => "exit",
            Problem::SeatOutside { .. } => "seat_wood",
            Problem::ThroughLeg { field, .. } | Problem::OutsideLeg { field, .. } => field,
            Problem::TheyMeet { .. } => "b_height",
            Problem::NailInWet => "wet",
            Problem::OutOfRange => "question",
        }
    }

    fn sentence(&self) -> Sentence {
        match *self {
            Problem::HeadThroughTop { head_sunk, top } => {
                say!["Sunk ", head_sunk, ", the head goes right through a piece of ", top, "."]
            }
            Problem::NoStockSoLong { top } => {
                say!["No stock screw is long enough for a piece of ", top, "."]
            }
            Problem::ReceiverTooThin { receiver, .. } => say![
                "No stock screw holds in a receiver of ",
                receiver,
                " and keeps its tip inside the margin."
            ],
            Problem::DoesNotReach { length, top } => {
                say!["At ", length, " it does not come out of a piece of ", top, "."]
            }
            Problem::BoardTooNarrow { board_width, least } => say![
                "A board of ",
                board_width,
                " is narrower than two edge distances, ",
                (least, Rounding::Up),
                "."
            ],
            Problem::ExitOutside { exit, thickness, solves_exit, .. } => {
                if solves_exit {
                    say![
                        "From there the screw breaks out of the far face: it would reach the end ",
                        exit,
                        " down, in a part of ",
                        thickness,
                        "."
                    ]
                } else {
                    say!["An exit ", exit, " down is outside a part of ", thickness, "."]
                }
            }
            Problem::SeatOutside { wood, axis, .. } => say![
                "There is only ",
                axis,
                " of wood along the screw: a seat cannot leave ",
                wood,
                "."
            ],
            Problem::NoAngledScrew { too_far_aside: true, .. } => {
                say!["The screw drifts out of the side of the receiver before it holds."]
            }
            Problem::NoAngledScrew { receiver, .. } => say![
                "No stock screw holds in a receiver of ",
                receiver,
                " and keeps its tip inside the margin."
            ],
            Problem::ThroughLeg { deep, leg, .. } => {
                say!["Going in ", deep, " comes out of a leg of ", leg, "."]
            }
            Problem::OutsideLeg { leg, .. } => {
                say!["At that place it stands outside a leg of ", leg, "."]
            }
            Problem::TheyMeet { .. } => say!["The two meet in the leg."],
            Problem::TooLittleIn { into_receiver, least, .. } => {
                if into_receiver.is_negative() {
                    say![
                        "It does not reach the receiver; ",
                        (least, Rounding::Up),
                        " is the least."
                    ]
                } else {
                    say![
                        "Only ",
                        into_receiver,
                        " is in the receiver; under ",
                        (least, Rounding::Up),
                        " the rules count nothing."
                    ]
                }
            }
            Problem::NailInWet => say!["Our tables have no value for nails in wet wood."],
            Problem::OutOfRange => {
                say!["These sizes are too large or too fine to be kept exactly."]
            }
        }
    }

    fn way_out(&self) -> Option<WayOut> {
        match *self {
            Problem::HeadThroughTop { .. } => {
                WayOut::set_id(say!["Leave the head flush: 0."], "head_sunk", "0".to_owned())
            }
            Problem::NoStockSoLong { .. } => {
                WayOut::advice(say!["Use a bolt, or bore a wide hole to sink the head deeper."])
            }
            Problem::ReceiverTooThin { top, receiver, swapped_works: true, .. } => Some(WayOut {
                sentence: say!["Drive it from the other side, through the thinner piece."],
                set: vec![
                    ("top_thickness", exact_text(receiver)),
                    ("receiver_thickness", exact_text(top)),
                ],
            }),
            Problem::ReceiverTooThin { receiver_needed, .. } => WayOut::set_id(
                say!["The receiver must be ", (receiver_needed, Rounding::Up), " at least."],
                "receiver_thickness",
                exact_text(receiver_needed),
            ),
            Problem::DoesNotReach { top, .. } => {
                let holds = |length: &Length| (*length - top).is_ok_and(|into| into >= LEAST_INTO);
                match stock_lengths().into_iter().find(holds) {
                    Some(length) => WayOut::set_id(
                        say!["Use ", length, " or longer."],
                        "screw_length",
                        exact_text(length),
                    ),
                    None => WayOut::advice(say!["Use a bolt."]),
                }
            }
            Problem::BoardTooNarrow { least, .. } => WayOut::set_id(
                say!["Use a board of ", (least, Rounding::Up), ", or a thinner screw."],
                "board_width",
                exact_text(least),
            ),
            Problem::ExitOutside { start, solves_exit: true, .. } => WayOut::set_id(
                say!["Start ", start, " from the end to leave it in the middle."],
                "start_back",
                exact_text(start),
            ),
            Problem::ExitOutside { .. } => WayOut::set_id(
                say!["Leave it empty for the middle of the thickness."],
                "exit",
                String::new(),
            ),
            Problem::SeatOutside { half, .. } => {
                WayOut::set_id(say!["Leave ", half, ", half of it."], "seat_wood", exact_text(half))
            }
            Problem::NoAngledScrew { too_far_aside: true, .. } => WayOut::advice(say![
                "Leave the end nearer the drilled face, or drill less steeply."
            ]),
            Problem::NoAngledScrew { .. } => {
                WayOut::advice(say!["Leave more wood under the head, or use a thicker receiver."])
            }
            Problem::ThroughLeg { field, half, .. } => {
                WayOut::set_id(say!["Half way in is ", half, "."], field, exact_text(half))
            }
            Problem::OutsideLeg { field, middle, fits: true, .. } => {
                WayOut::set_id(say!["The middle is ", middle, "."], field, exact_text(middle))
            }
            Problem::OutsideLeg { .. } => WayOut::advice(say!["It is thicker than the leg."]),
            Problem::TheyMeet { height, apart } => WayOut::set_id(
                say!["Set them ", (apart, Rounding::Up), " apart in height."],
                "b_height",
                exact_text(height),
            ),
            Problem::TooLittleIn { stock: Some(stock), .. } => WayOut::set_id(
                say!["Use ", stock, " or longer."],
                "screw_length",
                exact_text(stock),
            ),
            Problem::TooLittleIn { .. } => WayOut::advice(say!["Use a thinner piece, or a bolt."]),
            Problem::NailInWet => {
                WayOut::set_id(say!["Use screws outdoors."], "fastener", "screw_8".to_owned())
            }
            Problem::OutOfRange => None,
        }
    }
}
