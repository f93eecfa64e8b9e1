//! What crosscutting asks, and what it answers with.

use crate::calculators::{ResultKind, ResultSpec};
use crate::sheet::{Column, Field, Kind, Start};

// The starts are of our invented potting bench: slats of its lower shelf from an eight-footer.

pub(super) const BOARD: Field = Field::new("board", "Board", "end to end, as measured",
    Kind::ABOVE_ZERO, Start::Inches("96"));
pub(super) const TRIM: Field = Field::new("trim", "Trim each end",
    "past the checks, the cut included",
    Kind::ZERO_UP, Start::Inches("1/2"));
pub(super) const PART: Field = Field::new("part", "One piece", "",
    Kind::ABOVE_ZERO, Start::Inches("17 1/2"));
pub(super) const WANTED: Field = Field::new("wanted", "Pieces wanted", "",
    Kind::Count { least: 1, most: 9999 }, Start::Text("10"));
pub(super) const KERF: Field = Field::new("kerf", "Kerf", "", Kind::ZERO_UP, Start::Kerf);
pub(super) const KNOTS: Field = Field::new("knots", "Keep clear of",
    "knots from the left end, as 30 to 33 1/2",
    Kind::Spans, Start::Text(""));

/// In the order asked.
pub(super) const FIELDS: &[Field] = &[BOARD, TRIM, PART, WANTED, KERF, KNOTS];

pub(super) const PARTS: ResultSpec =
    ResultSpec::new("parts", "Pieces from one board", ResultKind::Count);
pub(super) const LEFTOVER: ResultSpec =
    ResultSpec::new("leftover", "Left over", ResultKind::Length);
pub(super) const BOARDS: ResultSpec =
    ResultSpec::new("boards", "Boards for the job", ResultKind::Count);
pub(super) const STOP: ResultSpec = ResultSpec::new("stop", "Stop block", ResultKind::Length);
pub(super) const FOR_ONE_MORE: ResultSpec =
    ResultSpec::new("for_one_more", "Board for one piece more", ResultKind::Length);
pub(super) const CUTS: ResultSpec = ResultSpec::new("cuts", "Marks", ResultKind::Table);
pub(super) const PART_COLUMN: Column = Column::new("part", "Piece");
pub(super) const FROM_COLUMN: Column = Column::new("from", "From");
pub(super) const TO_COLUMN: Column = Column::new("to", "To");
pub(super) const PASSED_OVER: ResultSpec =
    ResultSpec::new("passed_over", "Falls out at knots", ResultKind::Table);

/// Every figure and table.
pub(super) const RESULTS: &[ResultSpec] = &[
    PARTS, LEFTOVER, BOARDS, STOP, FOR_ONE_MORE, CUTS, PASSED_OVER,
];
