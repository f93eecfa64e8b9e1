//! What the tape asks, and what it answers with.

use crate::calculators::{ResultKind, ResultSpec};
use crate::sheet::{Choice, Field, Kind, Start};

/// The start is of our invented potting bench: a shelf between two legs and two cleats.
pub(super) const STRIP: Field = Field::new("strip", "Work it out",
    "use the letter of a line above to go on from it",
    Kind::Strip, Start::Text("61 3/8 - 2 × 3 1/2 - 2 × 3/4"));
pub(super) const LINE: Field = Field::new("line", "Line in use", "empty for the last one",
    Kind::LineOf(STRIP.id), Start::Text(""));
pub(super) const DIVIDE: Field = Field::new("divide", "Divide", "",
    Kind::Choice(&[WHOLE, HALF, THIRD, EQUAL_PARTS]), Start::Without(WHOLE.id));
pub(super) const WHOLE: Choice = Choice::new("whole", "Whole");
pub(super) const HALF: Choice = Choice::new("half", "Half");
pub(super) const THIRD: Choice = Choice::new("third", "Third");
pub(super) const EQUAL_PARTS: Choice = Choice::new("parts", "Parts");

pub(super) const PARTS: Field = Field::new("parts", "Equal parts", "",
    Kind::Count { least: 2, most: 200 }, Start::Text("4")).only_for(DIVIDE.id, &[EQUAL_PARTS.id]);
pub(super) const START_MARK: Field = Field::new("start_mark", "Tape starts at",
    "1 when you hold the 1 in line at the end",
    Kind::ZERO_UP, Start::Without("0"));

/// In the order asked.
pub(super) const FIELDS: &[Field] = &[STRIP, LINE, DIVIDE, PARTS, START_MARK];

pub(super) const READ: ResultSpec = ResultSpec::new("read", "Read the tape at", ResultKind::Length);
pub(super) const MARKS: ResultSpec = ResultSpec::new("marks", "Running marks", ResultKind::Lengths);
pub(super) const LENGTH: ResultSpec = ResultSpec::new("length", "Length", ResultKind::Length);
pub(super) const EACH: ResultSpec = ResultSpec::new("each", "One part", ResultKind::Length);
pub(super) const STEPPING_ERROR: ResultSpec =
    ResultSpec::new("stepping_error", "If you step it off", ResultKind::Length);
pub(super) const CLOSES_AT: ResultSpec =
    ResultSpec::new("closes_at", "Last mark closes at", ResultKind::Length);
pub(super) const MILLIMETRES: ResultSpec =
    ResultSpec::new("millimetres", "In millimetres", ResultKind::Number);
pub(super) const INCHES: ResultSpec =
    ResultSpec::new("inches", "In decimal inches", ResultKind::Number);
pub(super) const FEET: ResultSpec =
    ResultSpec::new("feet", "In feet and inches", ResultKind::Words);
pub(super) const NUMBER: ResultSpec = ResultSpec::new("number", "Number", ResultKind::Number);
pub(super) const AREA: ResultSpec = ResultSpec::new("area", "Area", ResultKind::Area);

/// Every figure and table.
pub(super) const RESULTS: &[ResultSpec] = &[
    READ, MARKS, LENGTH, EACH, STEPPING_ERROR, CLOSES_AT, MILLIMETRES, INCHES, FEET, NUMBER, AREA,
];
