//! What is in the way of a cut, and the nearest thing that works.

use super::nearest::Nearest;
use super::saw::{LARGEST, NARROWEST, SHORTEST};
use super::section::Way;
use super::strips::MOST_STRIPS;
use crate::measure::text::exact_text;
use crate::measure::{Length, OutOfRange, Rounding};
use crate::say;
use crate::sheet::{self, Sentence, WayOut};

/// A cut that cannot or should not be made as asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Problem {
    /// A section cannot grow.
    TargetLarger {
        /// Which way across the section.
        way: Way,
        /// Wanted.
        target: Length,
        /// There.
        stock: Length,
        /// Target width and thickness turned a quarter, when that fits.
        turned: Option<(Length, Length)>,
    },
    /// The section has its target size already.
    NothingToCut,
    /// A kerf off the first face leaves nothing to clean the second with.
    NothingForSecondFace {
        /// Which way across the section.
        way: Way,
        /// All that comes off.
        off: Length,
        /// The kerf.
        kerf: Length,
    },
    /// A strip too thin to run between blade and fence.
    TooThinAtFence {
        /// Id of the field.
        field: &'static str,
        /// So thin.
        thin: Length,
        /// The user's limit.
        thinnest: Length,
        /// What works.
        nearest: Option<Nearest>,
    },
    /// The rest of the board becomes too thin to run between blade and fence.
    BoardTooThinAtFence {
        /// Id of the field.
        field: &'static str,
        /// So thin.
        thin: Length,
        /// The user's limit.
        thinnest: Length,
        /// What works.
        nearest: Option<Nearest>,
    },
    /// Not even from both edges.
    CannotReach {
        /// Wood above the table.
        depth: Length,
        /// Of the blade.
        reach: Length,
        /// What stays between the two kerfs.
        core: Length,
    },
    /// Too short to push through.
    TooShort {
        /// Of the piece.
        length: Length,
    },
    /// Too narrow both ways to hold.
    TooNarrow {
        /// Id of the field.
        field: &'static str,
        /// The wider of its two sides.
        widest: Length,
    },
    /// Larger than lumber comes.
    TooLarge {
        /// Id of the field.
        field: &'static str,
        /// The side.
        side: Length,
    },
    /// Cleaning the edges leaves no board.
    CleanUpTakesAll {
        /// Of the board.
        width: Length,
    },
    /// One strip is wider than what the board gives.
    StripTooWide {
        /// As sawn.
        width: Length,
        /// Of the board, after its edges are cleaned.
        usable: Length,
        /// What works.
        nearest: Option<Nearest>,
    },
    /// More strips than are listed.
    TooManyStrips {
        /// What works.
        nearest: Option<Nearest>,
    },
    /// So many equal strips leave no width for any.
    NoRoomForStrips {
        /// Asked for.
        n_strips: u32,
        /// Of the board, after its edges are cleaned.
        usable: Length,
        /// What works.
        nearest: Option<Nearest>,
    },
    /// The widths and the kerfs between them need more than the board gives.
    ListTooWide {
        /// Strips, kerfs and allowances together.
        need: Length,
        /// Of the board, after its edges are cleaned.
        usable: Length,
        /// What works.
        nearest: Option<Nearest>,
    },
    /// No widths are listed.
    NoWidths,
    /// The strip to keep is the whole board.
    NothingBesideStrip {
        /// To keep.
        strip: Length,
        /// There.
        board_width: Length,
        /// What works.
        nearest: Option<Nearest>,
    },
    /// The board does not carry the guide.
    GuideOffBoard {
        /// Where the guide would be.
        from_kept_edge: Length,
        /// How much board would lie under it; below zero when it hangs off.
        bearing: Length,
        /// What works.
        nearest: Option<Nearest>,
    },
    /// Beyond the limits of exact numbers.
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
            Problem::TargetLarger { .. } => "target-larger",
            Problem::NothingToCut => "nothing-to-cut",
            Problem::NothingForSecondFace { .. } => "nothing-for-second-face",
            Problem::TooThinAtFence { .. } => "too-thin-at-fence",
            Problem::BoardTooThinAtFence { .. } => "board-too-thin-at-fence",
            Problem::CannotReach { .. } => "cannot-reach",
            Problem::TooShort { .. } => "too-short",
            Problem::TooNarrow { .. } => "too-narrow",
            Problem::TooLarge { .. } => "too-large",
            Problem::CleanUpTakesAll { .. } => "clean-up-takes-all",
            Problem::StripTooWide { .. } => "strip-too-wide",
            Problem::TooManyStrips { .. } => "too-many-strips",
            Problem::NoRoomForStrips { .. } => "no-room-for-strips",
            Problem::ListTooWide { .. } => "list-too-wide",
            Problem::NoWidths => "no-widths",
            Problem::NothingBesideStrip { .. } => "nothing-beside-strip",
            Problem::GuideOffBoard { .. } => "guide-off-board",
            Problem::OutOfRange => "out-of-range",
        }
    }

    fn field(&self) -> &'static str {
        match self {
            Problem::TargetLarger { way, .. } => way.target_field(),
            Problem::NothingToCut => "target_width",
            Problem::NothingForSecondFace { .. } => "share",
            Problem::TooThinAtFence { field, .. }
            | Problem::BoardTooThinAtFence { field, .. }
            | Problem::TooNarrow { field, .. }
            | Problem::TooLarge { field, .. } => field,
            Problem::CannotReach { .. } => "reach",
            Problem::TooShort { .. } => "piece_length",
            Problem::CleanUpTakesAll { .. } => "first_edge",
            Problem::StripTooWide { .. } | Problem::TooManyStrips { .. } => "strip_width",
            Problem::NoRoomForStrips { .. } => "n_strips",
            Problem::ListTooWide { .. } | Problem::NoWidths => "widths",
            Problem::NothingBesideStrip { .. } => "guide_strip",
            Problem::GuideOffBoard { .. } => "guide_on",
            Problem::OutOfRange => "kerf",
        }
    }

    fn sentence(&self) -> Sentence {
        match self {
            Problem::TargetLarger { target, stock, .. } => {
                say![
                    "The target is ",
                    *target,
                    " but the stock only ",
                    *stock,
                    ". A saw takes off."
                ]
            }
            Problem::NothingToCut => {
                say!["The stock has this size already. There is nothing to cut."]
            }
            Problem::NothingForSecondFace { off, kerf, .. } => say![
                "Only ",
                *off,
                " comes off. A kerf of ",
                *kerf,
                " off the first face leaves nothing for the second."
            ],
            Problem::TooThinAtFence { thin, thinnest, .. } => say![
                "A piece ",
                *thin,
                " thin would run between blade and fence. Your limit is ",
                *thinnest,
                "."
            ],
            Problem::BoardTooThinAtFence { thin, .. } if thin.is_zero() => {
                say!["Nothing of the board would be left between blade and fence to hold it by."]
            }
            Problem::BoardTooThinAtFence { thin, thinnest, .. } => say![
                "Only ",
                *thin,
                " of the board would be left between blade and fence. Your limit is ",
                *thinnest,
                "."
            ],
            Problem::CannotReach { depth, reach, core } => say![
                "The blade reaches ",
                *reach,
                ". From both edges of ",
                *depth,
                " it leaves ",
                *core,
                " uncut in the middle."
            ],
            Problem::TooShort { length } => {
                say!["A piece ", *length, " long is too short to rip on a table saw."]
            }
            Problem::TooNarrow { widest, .. } => {
                say!["A stick no wider than ", *widest, " cannot be held down and pushed."]
            }
            Problem::TooLarge { side, .. } => {
                say![*side, " is more than lumber comes in. The limit here is ", LARGEST, "."]
            }
            Problem::CleanUpTakesAll { width } => {
                say!["Cleaning the edges leaves nothing of the ", *width, " board."]
            }
            Problem::StripTooWide { width, usable, .. } => {
                say!["One strip takes ", *width, " as sawn. The board gives ", *usable, "."]
            }
            Problem::TooManyStrips { .. } => {
                say!["That is more than ", MOST_STRIPS, " strips."]
            }
            Problem::NoRoomForStrips { n_strips, usable, .. } => say![
                "Kerfs and allowances of ",
                *n_strips,
                " strips leave nothing of the ",
                *usable,
                " the board gives."
            ],
            Problem::ListTooWide { need, usable, .. } => {
                say![
                    "These strips and their kerfs take ",
                    *need,
                    ". The board gives ",
                    *usable,
                    "."
                ]
            }
            Problem::NoWidths => say!["Write at least one width, as in 2 @ 2 3/4, 1 1/2."],
            Problem::NothingBesideStrip { strip, board_width, .. } => say![
                "A strip of ",
                *strip,
                " leaves nothing to cut off a ",
                *board_width,
                " board."
            ],
            Problem::GuideOffBoard { bearing, .. } if bearing.is_negative() => {
                say!["There the guide hangs off the board by ", -*bearing, "."]
            }
            Problem::GuideOffBoard { bearing, .. } => {
                say!["Only ", *bearing, " of board is there to clamp the guide on."]
            }
            Problem::OutOfRange => say!["These numbers are too large or too fine to keep exactly."],
        }
    }

    fn way_out(&self) -> Option<WayOut> {
        match self {
            Problem::TargetLarger { turned: Some((width, thickness)), .. } => Some(WayOut {
                sentence: say![
                    "Turned a quarter it fits: ",
                    *width,
                    " wide, ",
                    *thickness,
                    " thick."
                ],
                set: vec![
                    ("target_width", exact_text(*width)),
                    ("target_thickness", exact_text(*thickness)),
                ],
            }),
            Problem::TargetLarger { way, stock, .. } => WayOut::set_id(
                say!["Use ", (*stock, Rounding::Down), " or less."],
                way.target_field(),
                exact_text(*stock),
            ),
            Problem::NothingToCut => {
                WayOut::advice(say!["Give a target that is smaller in one way at least."])
            }
            Problem::NothingForSecondFace { .. } => {
                WayOut::set_id(say!["Take the same off both faces."], "share", "even".to_owned())
            }
            Problem::TooThinAtFence { nearest: None, .. }
            | Problem::BoardTooThinAtFence { nearest: None, .. } => WayOut::advice(say![
                "Saw it thicker and plane it down, or glue it to a wider board first."
            ]),
            Problem::TooThinAtFence { nearest, .. }
            | Problem::BoardTooThinAtFence { nearest, .. }
            | Problem::StripTooWide { nearest, .. }
            | Problem::TooManyStrips { nearest }
            | Problem::NoRoomForStrips { nearest, .. }
            | Problem::NothingBesideStrip { nearest, .. } => {
                nearest.as_ref().and_then(Nearest::way_out)
            }
            Problem::ListTooWide { nearest, .. } => match nearest {
                Some(nearest) => nearest.way_out(),
                None => WayOut::advice(say!["Use a wider board."]),
            },
            Problem::GuideOffBoard { nearest, .. } => match nearest {
                Some(nearest) => nearest.way_out(),
                None => WayOut::advice(say![
                    "Lay a second board of the same thickness beside it, to carry the guide."
                ]),
            },
            Problem::CannotReach { core, .. } => WayOut::set_id(
                say!["Leave the ", *core, " core and finish it with a hand saw."],
                "core_by_hand",
                "yes".to_owned(),
            ),
            Problem::TooShort { .. } => WayOut::set_id(
                say!["Rip it from a piece of ", SHORTEST, " or more, then cut it to length."],
                "piece_length",
                exact_text(SHORTEST),
            ),
            Problem::TooNarrow { .. } => WayOut::advice(say![
                "Cut it from a board of ",
                NARROWEST,
                " or wider, and let it fall on the far side."
            ]),
            Problem::TooLarge { field, .. } => {
                WayOut::set_id(say!["Use ", LARGEST, " or less."], field, exact_text(LARGEST))
            }
            Problem::CleanUpTakesAll { .. } => {
                WayOut::set_id(say!["Take less off, or nothing."], "first_edge", "0".to_owned())
            }
            Problem::NoWidths => {
                WayOut::set_id(say!["Start with one strip."], "widths", "1 3/4 in".to_owned())
            }
            Problem::OutOfRange => WayOut::advice(say!["Use numbers that a tape can show."]),
        }
    }
}
