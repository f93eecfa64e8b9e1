//! What the dowel asks, and what it answers with.

use crate::calculators::{ResultKind, ResultSpec};
use crate::sheet::{Column, Choice, Field, Kind, Least, Start};

// The starts are of our invented potting bench: a rail for hand tools through both end frames.

pub(super) const HOLD: Field = Field::new("hold", "Holes", "",
    Kind::Choice(&[THROUGH, BLIND, ONE_END]), Start::Text(THROUGH.id));
pub(super) const THROUGH: Choice = Choice::new("through", "Through both");
pub(super) const BLIND: Choice = Choice::new("blind", "Blind in both");
pub(super) const ONE_END: Choice = Choice::new("one_end", "Through left, blind right");

pub(super) const MEASURED: Field = Field::new("measured", "Frames measured", "",
    Kind::Choice(&[OVERALL_KNOWN, BETWEEN_THE_PARTS, LEGS]), Start::Question(OVERALL_KNOWN.id));
pub(super) const OVERALL_KNOWN: Choice = Choice::new("overall", "Outside to outside");
pub(super) const BETWEEN_THE_PARTS: Choice = Choice::new("clear", "Between the pieces");
pub(super) const LEGS: Choice = Choice::new("legs", "Between the legs");

pub(super) const OVERALL: Field = Field::new("overall", "Outside to outside",
    "of the drilled pieces",
    Kind::ABOVE_ZERO, Start::Inches("43 1/2")).only_for(MEASURED.id, &[OVERALL_KNOWN.id]);
pub(super) const CLEAR: Field = Field::new("clear", "Between the pieces", "inside to inside",
    Kind::ABOVE_ZERO, Start::Inches("40 1/2")).only_for(MEASURED.id, &[BETWEEN_THE_PARTS.id]);
pub(super) const BETWEEN_LEGS: Field = Field::new("between_legs", "Between the legs",
    "inside to inside",
    Kind::ABOVE_ZERO, Start::Inches("38 3/4")).only_for(MEASURED.id, &[LEGS.id]);
pub(super) const LEG: Field = Field::new("leg", "Leg", "thickness along the dowel",
    Kind::ABOVE_ZERO, Start::Inches("3 1/4")).only_for(MEASURED.id, &[LEGS.id]);
pub(super) const SET_BACK: Field = Field::new("set_back", "Set-back",
    "outside of leg to outside of piece; the middle if left empty",
    Kind::OptionalLength(Least::Zero), Start::Text("")).only_for(MEASURED.id, &[LEGS.id]);
pub(crate) const LEFT_PART: Field = Field::new("left_part", "Piece", "thickness along the dowel",
    Kind::ABOVE_ZERO, Start::Inches("1 1/2"));
pub(crate) const RIGHT_PART: Field = Field::new("right_part", "Right piece", "as the left if left empty",
    Kind::MAYBE_LENGTH, Start::Text(""));
pub(super) const TRIM: Field = Field::new("trim", "Trim", "at each through end",
    Kind::ZERO_UP, Start::Inches("1/4")).only_for(HOLD.id, &[THROUGH.id, ONE_END.id]);
pub(super) const DEPTH: Field = Field::new("depth", "Hole depth", "blind hole",
    Kind::ABOVE_ZERO, Start::Inches("1")).only_for(HOLD.id, &[BLIND.id, ONE_END.id]);
pub(super) const ROOM: Field = Field::new("room", "Free at the bottom", "of a blind hole",
    Kind::ZERO_UP, Start::Inches("1/16")).only_for(HOLD.id, &[BLIND.id, ONE_END.id]);
pub(crate) const DOWEL: Field = Field::new("dowel", "Dowel", "measured, at its thickest",
    Kind::ABOVE_ZERO, Start::Inches("0.985"));
pub(crate) const ACROSS: Field = Field::new("across", "Dowel across",
    "at right angles; round if left empty",
    Kind::MAYBE_LENGTH, Start::Text(""));
pub(super) const BITS: Field = Field::new("bits", "Bits", "",
    Kind::Choice(&[SIXTY_FOURTHS, THIRTY_SECONDS, SIXTEENTHS, MILLIMETRES]),
    Start::Text(SIXTY_FOURTHS.id));
pub(super) const SIXTY_FOURTHS: Choice = Choice::new("sixty_fourths", "By 1/64 in");
pub(super) const THIRTY_SECONDS: Choice = Choice::new("thirty_seconds", "By 1/32 in");
pub(super) const SIXTEENTHS: Choice = Choice::new("sixteenths", "By 1/16 in");
pub(super) const MILLIMETRES: Choice = Choice::new("millimetres", "By 1 mm");

pub(super) const PART_HEIGHT: Field = Field::new("part_height", "Piece height",
    "the face that is drilled",
    Kind::ABOVE_ZERO, Start::Inches("3 1/4"));
pub(super) const FROM_TOP: Field = Field::new("from_top", "Hole from top",
    "to its center; the middle if left empty",
    Kind::MAYBE_LENGTH, Start::Text(""));
pub(super) const PART_LENGTH: Field = Field::new("part_length", "Piece length", "front to back",
    Kind::ABOVE_ZERO, Start::Inches("17"));
pub(super) const FROM_FRONT: Field = Field::new("from_front", "Hole from front",
    "to its center; the middle if left empty",
    Kind::MAYBE_LENGTH, Start::Inches("5"));
pub(super) const LEAST_WOOD: Field = Field::new("least_wood", "Least wood",
    "round the hole; half the hole if left empty",
    Kind::OptionalLength(Least::Zero), Start::Text(""));

/// In the order asked.
pub(super) const FIELDS: &[Field] = &[
    HOLD, MEASURED, OVERALL, CLEAR, BETWEEN_LEGS, LEG, SET_BACK, LEFT_PART, RIGHT_PART, TRIM, DEPTH,
    ROOM, DOWEL, ACROSS, BITS, PART_HEIGHT, FROM_TOP, PART_LENGTH, FROM_FRONT, LEAST_WOOD,
];

pub(crate) const CUT: ResultSpec = ResultSpec::new("cut", "Cut the dowel", ResultKind::Length);
pub(super) const FINISHED: ResultSpec =
    ResultSpec::new("finished", "Dowel when done", ResultKind::Length);
pub(super) const VISIBLE: ResultSpec = ResultSpec::new("visible", "Dowel seen", ResultKind::Length);
pub(super) const OVERALL_FOUND: ResultSpec =
    ResultSpec::new("overall", "Outside to outside", ResultKind::Length);
pub(super) const BIT: ResultSpec = ResultSpec::new("bit", "Bit", ResultKind::Words);
pub(super) const CLEARANCE: ResultSpec =
    ResultSpec::new("clearance", "Clearance", ResultKind::Words);
pub(super) const WOOD: ResultSpec =
    ResultSpec::new("wood", "Least wood round the hole", ResultKind::Length);
pub(super) const UNDER: ResultSpec =
    ResultSpec::new("under", "Wood under the hole", ResultKind::Length);
pub(super) const HOLES: ResultSpec = ResultSpec::new("holes", "Holes", ResultKind::Table);
pub(super) const FRAME_COLUMN: Column = Column::new("frame", "Frame");
pub(super) const FRONT_AT_YOUR_COLUMN: Column = Column::new("front_at_your", "Front at your");
pub(super) const FROM_LEFT_HAND_COLUMN: Column = Column::new("from_left_hand", "From left hand");
pub(super) const FROM_TOP_COLUMN: Column = Column::new("from_top", "From top");

/// Every figure and table.
pub(super) const RESULTS: &[ResultSpec] = &[
    CUT, FINISHED, VISIBLE, OVERALL_FOUND, BIT, CLEARANCE, WOOD, UNDER, HOLES,
];
