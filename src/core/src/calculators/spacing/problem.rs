//! [`Problem`]: what can be in the way of a spacing, and what would work.

use super::{MOST_MARKS, MOST_ZONES};
use crate::measure::text::exact_text;
use crate::measure::{Length, OutOfRange};
use crate::say;
use crate::sheet::{self, Sentence, Span, WayOut};

/// A spacing that cannot be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Problem {
    /// The end distances leave nothing between them.
    EndsMeet {
        /// Length of the board.
        length: Length,
        /// Width of a slat, or zero.
        width: Length,
        /// Where the first would stand, from the left end.
        from: Length,
        /// Where the last would stand, from the right end.
        right: Length,
        /// Slats, not marks.
        is_slats: bool,
    },
    /// The first or the last stands in a zone.
    EndInZone {
        /// The first, not the last.
        is_left: bool,
        /// Slats, not marks.
        is_slats: bool,
        /// Its distance from its end.
        distance: Length,
        /// The nearest distance that is clear, if there is one.
        clear: Option<Length>,
    },
    /// A zone that is not on the board.
    ZoneOutside {
        /// The zone.
        zone: Span,
        /// Length of the board.
        length: Length,
        /// The zones that are on the board.
        rest: Vec<Span>,
    },
    /// More zones than [`MOST_ZONES`].
    TooManyZones {
        /// How many.
        zones: usize,
    },
    /// One mark or slat cannot stand at two set places.
    OneForTwoEnds {
        /// Id of the field with the count.
        field: &'static str,
    },
    /// So many do not fit.
    NoRoom {
        /// Id of the field that asks for them.
        field: &'static str,
        /// How many.
        wanted: u32,
        /// How many do.
        fits: u32,
        /// The least gap, if there is one.
        least: Option<Length>,
        /// Whether zones take some of the room.
        has_zones: bool,
    },
    /// No number of marks keeps every gap at or under this one.
    GapTooSmall {
        /// The greatest gap allowed.
        greatest: Length,
        /// The smallest greatest gap that can be kept, up to the next mark of the tape.
        smallest: Length,
        /// A zone that is wider than the greatest gap.
        across: Option<Span>,
        /// Whether there are zones at all.
        has_zones: bool,
    },
    /// The least gap is over the greatest one, the one wanted, or the step.
    LeastOverGap {
        /// Least gap.
        least: Length,
        /// The other one.
        gap: Length,
    },
    /// No two can stand so far apart here.
    LeastTooLarge {
        /// Least gap.
        least: Length,
    },
    /// The zones leave no place.
    NoFreePlace,
    /// A step so small that it gives more than [`MOST_MARKS`].
    TooManySteps {
        /// The smallest step that does not, up to the next mark of the tape.
        step: Length,
    },
    /// A gap so small that it takes more than [`MOST_MARKS`].
    TooManySlats {
        /// The smallest gap that does not, up to the next mark of the tape.
        gap: Length,
    },
    /// A mark of a fixed step falls in a zone.
    StepInZone {
        /// The mark, from the left end.
        mark: Length,
        /// The zone.
        zone: Span,
        /// The nearest first and last distances with which every mark is clear.
        clear: Option<(Length, Length)>,
    },
    /// A slat wider than the board or opening is long.
    SlatTooWide {
        /// Width of the slat.
        width: Length,
        /// Length of the board.
        length: Length,
    },
    /// A number with more digits than can be kept exactly.
    TooFine,
}

impl From<OutOfRange> for Problem {
    fn from(_: OutOfRange) -> Problem {
        Problem::TooFine
    }
}

/// Ids of the fields of the two ends.
fn end_field(is_left: bool, is_slats: bool) -> &'static str {
    match (is_left, is_slats) {
        (true, false) => "left_end",
        (false, false) => "right_end",
        (true, true) => "left_slat",
        (false, true) => "right_slat",
    }
}

impl sheet::Problem for Problem {
    fn code(&self) -> &'static str {
        match self {
            Problem::EndsMeet { .. } => "ends-meet",
            Problem::EndInZone { .. } => "end-in-zone",
            Problem::ZoneOutside { .. } => "zone-outside",
            Problem::TooManyZones { .. } => "too-many-zones",
            Problem::OneForTwoEnds { .. } => "one-for-two-ends",
            Problem::NoRoom { .. } => "no-room",
            Problem::GapTooSmall { .. } => "gap-too-small",
            Problem::LeastOverGap { .. } => "least-over-gap",
            Problem::LeastTooLarge { .. } => "least-too-large",
            Problem::NoFreePlace => "no-free-place",
            Problem::TooManySteps { .. } | Problem::TooManySlats { .. } => "too-many",
            Problem::StepInZone { .. } => "step-in-zone",
            Problem::SlatTooWide { .. } => "slat-too-wide",
            Problem::TooFine => "too-fine",
        }
    }

    fn field(&self) -> &'static str {
        match self {
            Problem::EndsMeet { is_slats, .. } => end_field(true, *is_slats),
            Problem::EndInZone { is_left, is_slats, .. } => end_field(*is_left, *is_slats),
            Problem::ZoneOutside { .. } | Problem::TooManyZones { .. } | Problem::NoFreePlace => {
                "keep_out"
            }
            Problem::OneForTwoEnds { field } | Problem::NoRoom { field, .. } => field,
            Problem::GapTooSmall { .. } => "greatest_gap",
            Problem::LeastOverGap { .. } | Problem::LeastTooLarge { .. } => "least_gap",
            Problem::TooManySteps { .. } => "step",
            Problem::TooManySlats { .. } => "slat_gap",
            Problem::StepInZone { .. } => "left_end",
            Problem::SlatTooWide { .. } => "slat_width",
            Problem::TooFine => "length",
        }
    }

    fn sentence(&self) -> Sentence {
        match self {
            Problem::EndsMeet { length, .. } => {
                say!["The two ends leave nothing between them on ", *length, "."]
            }
            Problem::EndInZone { distance, .. } => {
                say!["At ", *distance, " it stands in a zone to keep out of."]
            }
            Problem::ZoneOutside { zone, length, .. } => say![
                "The zone ",
                zone.from,
                " to ",
                zone.to,
                " is not on a length of ",
                *length,
                "."
            ],
            Problem::TooManyZones { zones } => {
                say![format!("There are {zones} zones; up to {MOST_ZONES} can be minded.")]
            }
            Problem::OneForTwoEnds { .. } => {
                say!["One cannot stand at both ends at once."]
            }
            Problem::NoRoom { wanted, least, has_zones, .. } => {
                let mut sentence = say![*wanted, " do not fit"];
                if let Some(least) = least {
                    sentence.0.extend(say![" with ", *least, " between them"].0);
                }
                sentence.0.extend(say![if *has_zones { " beside the zones." } else { "." }].0);
                sentence
            }
            Problem::GapTooSmall { greatest, across: Some(zone), .. } => say![
                "No gap of ",
                *greatest,
                " reaches over the zone ",
                zone.from,
                " to ",
                zone.to,
                "."
            ],
            Problem::GapTooSmall { greatest, has_zones: true, .. } => {
                say!["No marks beside the zones keep every gap at or under ", *greatest, "."]
            }
            Problem::GapTooSmall { greatest, .. } => say![
                "To keep every gap at or under ",
                *greatest,
                " takes more than ",
                MOST_MARKS,
                " marks, or a smaller least gap."
            ],
            Problem::LeastOverGap { least, gap } => {
                say!["The least gap ", *least, " is over the gap asked for, ", *gap, "."]
            }
            Problem::LeastTooLarge { least } => {
                say!["Nothing fits here with ", *least, " between."]
            }
            Problem::NoFreePlace => say!["The zones leave no free place."],
            Problem::TooManySteps { .. } | Problem::TooManySlats { .. } => {
                say!["That takes more than ", MOST_MARKS, "."]
            }
            Problem::StepInZone { mark, zone, .. } => {
                say!["The mark at ", *mark, " falls in the zone ", zone.from, " to ", zone.to, "."]
            }
            Problem::SlatTooWide { width, length } => {
                say!["A slat ", *width, " wide does not go into ", *length, "."]
            }
            Problem::TooFine => {
                say!["These numbers have too many digits to be kept exactly."]
            }
        }
    }

    fn way_out(&self) -> Option<WayOut> {
        match self {
            Problem::EndsMeet { length, width, from, right, is_slats } => {
                ends_apart(*length, *width, *from, *right, *is_slats)
            }
            Problem::EndInZone { is_left, is_slats, clear: Some(clear), .. } => WayOut::set_id(
                say!["It is clear at ", *clear, "."],
                end_field(*is_left, *is_slats),
                exact_text(*clear),
            ),
            Problem::EndInZone { .. } | Problem::NoFreePlace => {
                WayOut::advice(say!["Make the zone smaller, or leave it out."])
            }
            Problem::ZoneOutside { rest, .. } => {
                let zones: Vec<String> = rest
                    .iter()
                    .map(|zone| format!("{} to {}", exact_text(zone.from), exact_text(zone.to)))
                    .collect();
                WayOut::set_id(say!["Leave it out."], "keep_out", zones.join(", "))
            }
            Problem::TooManyZones { .. } => {
                WayOut::advice(say!["Join zones that lie close together."])
            }
            Problem::OneForTwoEnds { field } => {
                WayOut::set_id(say!["Use two."], field, "2".to_owned())
            }
            Problem::NoRoom { field, fits, .. } => {
                WayOut::set_id(say![*fits, " fit."], field, fits.to_string())
            }
            Problem::GapTooSmall { smallest, .. } => WayOut::set_id(
                say!["Allow gaps up to ", *smallest, "."],
                "greatest_gap",
                exact_text(*smallest),
            ),
            Problem::LeastOverGap { gap, .. } => {
                WayOut::set_id(say!["Use ", *gap, " or less."], "least_gap", exact_text(*gap))
            }
            Problem::LeastTooLarge { .. } => {
                WayOut::set_id(say!["Leave the least gap open."], "least_gap", String::new())
            }
            Problem::TooManySteps { step } => {
                WayOut::set_id(say!["Use ", *step, " or more."], "step", exact_text(*step))
            }
            Problem::TooManySlats { gap } => {
                WayOut::set_id(say!["Use ", *gap, " or more."], "slat_gap", exact_text(*gap))
            }
            Problem::StepInZone { clear: Some((left, right)), .. } => Some(WayOut {
                sentence: say!["Start ", *left, " from the left and ", *right, " from the right."],
                set: vec![("left_end", exact_text(*left)), ("right_end", exact_text(*right))],
            }),
            Problem::StepInZone { .. } => {
                WayOut::advice(say!["Space them evenly instead: the marks then miss the zones."])
            }
            Problem::SlatTooWide { length, .. } => {
                WayOut::set_id(say!["Up to ", *length, " fits."], "slat_width", exact_text(*length))
            }
            Problem::TooFine => WayOut::advice(say!["Use sizes from a tape."]),
        }
    }
}

/// The left end moved, where that is enough; else both.
fn ends_apart(
    length: Length,
    width: Length,
    from: Length,
    right: Length,
    is_slats: bool,
) -> Option<WayOut> {
    let (left_field, right_field) = (end_field(true, is_slats), end_field(false, is_slats));
    let room = ((length - width).ok()? / 4).ok()?;
    let spare = ((length - width).ok()? - right).ok()?;
    let spare = (spare / 2).ok()?;
    if spare.is_positive() && right.is_positive() && from != right && from > spare {
        return Some(WayOut {
            sentence: say!["Set the left end at ", spare, " or less."],
            set: vec![(left_field, exact_text(spare)), (right_field, exact_text(right))],
        });
    }
    if !room.is_positive() {
        return WayOut::advice(say!["Use fewer, or narrower ones."]);
    }
    Some(WayOut {
        sentence: say!["Set both ends at ", room, " or less."],
        set: vec![(left_field, exact_text(room)), (right_field, exact_text(room))],
    })
}
