//! What the spacing asks, and what it answers with.

use crate::calculators::{ResultKind, ResultSpec};
use crate::sheet::{Column, Choice, Field, Kind, Least, Start};

/// Most marks or slats of one answer.
pub const MOST_MARKS: u32 = 200;

const HOW_MANY_FIT: Kind = Kind::Count { least: 1, most: MOST_MARKS };
const END: Kind = Kind::OptionalLength(Least::Zero);
const OF_MARKS: &[&str] = &[NO_GAP_OVER.id, SO_MANY.id, FIXED_STEP.id];
const OF_SLATS: &[&str] = &[SLATS_NEAR.id, SO_MANY_SLATS.id];

// The starts are of our invented potting bench: screws along a rail, and its slatted shelf.

pub(super) const MODE: Field = Field::new("mode", "What do you want to know?", "",
    Kind::Choice(&[NO_GAP_OVER, SO_MANY, FIXED_STEP, SLATS_NEAR, SO_MANY_SLATS]),
    Start::Question(NO_GAP_OVER.id));
const NO_GAP_OVER: Choice = Choice::new("greatest_gap", "Evenly, at most so far apart");
pub(super) const SO_MANY: Choice = Choice::new("count", "So many marks, evenly");
pub(super) const FIXED_STEP: Choice = Choice::new("step", "One fixed step from an end");
pub(super) const SLATS_NEAR: Choice = Choice::new("slats_near", "Slats, close to a gap I like");
pub(super) const SO_MANY_SLATS: Choice = Choice::new("slats", "So many slats");

pub(super) const LENGTH: Field = Field::new("length", "Length", "the board, or the opening",
    Kind::ABOVE_ZERO, Start::Inches("43 1/2"));
pub(super) const GREATEST_GAP: Field = Field::new("greatest_gap", "At most apart",
    "center to center",
    Kind::ABOVE_ZERO, Start::Inches("8")).only_for(MODE.id, &[NO_GAP_OVER.id]);
pub(super) const COUNT: Field = Field::new("count", "How many", "",
    HOW_MANY_FIT, Start::Text("5")).only_for(MODE.id, &[SO_MANY.id]);
pub(super) const STEP: Field = Field::new("step", "Step", "set off from both ends",
    Kind::ABOVE_ZERO, Start::Inches("6")).only_for(MODE.id, &[FIXED_STEP.id]);
pub(super) const SLAT_WIDTH: Field = Field::new("slat_width", "Slat width", "as measured",
    Kind::ABOVE_ZERO, Start::Inches("2 3/4")).only_for(MODE.id, OF_SLATS);
pub(super) const SLAT_GAP: Field = Field::new("slat_gap", "Gap wanted", "slat to slat",
    Kind::ZERO_UP, Start::Inches("3/8")).only_for(MODE.id, &[SLATS_NEAR.id]);
pub(super) const SLATS: Field = Field::new("slats", "Slats", "how many",
    HOW_MANY_FIT, Start::Text("14")).only_for(MODE.id, &[SO_MANY_SLATS.id]);
pub(super) const LEFT_END: Field = Field::new("left_end", "First mark",
    "from left end; like the gaps if left empty",
    END, Start::Inches("2")).only_for(MODE.id, OF_MARKS);
pub(super) const RIGHT_END: Field = Field::new("right_end", "Last mark",
    "from right end; as the first if left empty",
    END, Start::Text("")).only_for(MODE.id, OF_MARKS);
pub(super) const LEFT_SLAT: Field = Field::new("left_slat", "First slat at",
    "from left end; 0 is flush; like the gaps if left empty",
    END, Start::Text("")).only_for(MODE.id, OF_SLATS);
pub(super) const RIGHT_SLAT: Field = Field::new("right_slat", "Last slat at",
    "from right end; as the first if left empty",
    END, Start::Text("")).only_for(MODE.id, OF_SLATS);
pub(super) const KEEP_OUT: Field = Field::new("keep_out", "Keep clear of",
    "from left end, as 10 to 12 1/2, 30 to 33",
    Kind::Spans, Start::Text(""));
pub(super) const LEAST_GAP: Field = Field::new("least_gap", "Least apart", "empty for none",
    Kind::MAYBE_LENGTH, Start::Text(""));

/// In the order asked.
pub(super) const FIELDS: &[Field] = &[
    MODE, LENGTH, GREATEST_GAP, COUNT, STEP, SLAT_WIDTH, SLAT_GAP, SLATS, LEFT_END, RIGHT_END,
    LEFT_SLAT, RIGHT_SLAT, KEEP_OUT, LEAST_GAP,
];

pub(super) const EACH_END: ResultSpec =
    ResultSpec::new("each_end", "Marks from each end", ResultKind::Lengths);
pub(super) const MARKS: ResultSpec =
    ResultSpec::new("marks", "Marks from the left end", ResultKind::Lengths);
pub(super) const FROM_RIGHT: ResultSpec =
    ResultSpec::new("from_right", "Marks from the right end", ResultKind::Lengths);
pub(super) const PITCH: ResultSpec =
    ResultSpec::new("pitch", "Center to center", ResultKind::Length);
pub(super) const GAP: ResultSpec = ResultSpec::new("gap", "Gap", ResultKind::Length);
pub(super) const HOW_MANY: ResultSpec = ResultSpec::new("count", "How many", ResultKind::Count);
pub(super) const WIDEST: ResultSpec = ResultSpec::new("widest", "Widest gap", ResultKind::Length);
pub(super) const NARROWEST: ResultSpec =
    ResultSpec::new("narrowest", "Narrowest gap", ResultKind::Length);
pub(super) const CLOSES_AT: ResultSpec =
    ResultSpec::new("closes_at", "Adds up to", ResultKind::Length);
pub(super) const STEP_ERROR: ResultSpec =
    ResultSpec::new("step_error", "If you step it off", ResultKind::Length);
pub(super) const LAYOUT: ResultSpec = ResultSpec::new("layout", "Marks", ResultKind::Table);
pub(super) const SLAT_COLUMN: Column = Column::new("slat", "Slat");
pub(super) const LEFT_EDGE_COLUMN: Column = Column::new("left_edge", "Left edge");
pub(super) const FROM_RIGHT_COLUMN: Column = Column::new("from_right", "From right");
pub(super) const GAP_AFTER_COLUMN: Column = Column::new("gap_after", "Gap after");
pub(super) const MARK_COLUMN: Column = Column::new("mark", "Mark");
pub(super) const FROM_LEFT_COLUMN: Column = Column::new("from_left", "From left");
pub(super) const TO_NEXT_COLUMN: Column = Column::new("to_next", "To next");
pub(super) const OTHERS: ResultSpec =
    ResultSpec::new("others", "Fewer or more marks", ResultKind::Table);
pub(super) const HOW_MANY_COLUMN: Column = Column::new("how_many", "How many");
pub(super) const WIDEST_GAP_COLUMN: Column = Column::new("widest_gap", "Widest gap");

/// Every figure and table.
pub(super) const RESULTS: &[ResultSpec] = &[
    EACH_END, MARKS, FROM_RIGHT, PITCH, GAP, HOW_MANY, WIDEST, NARROWEST, CLOSES_AT, STEP_ERROR,
    LAYOUT, OTHERS,
];
