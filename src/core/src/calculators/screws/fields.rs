//! What is asked about screws, and what each question answers with.

use crate::calculators::{ResultKind, ResultSpec};
use crate::sheet::{Column, Choice, Field, Kind, Refusal, Start};
use crate::tables::fasteners::FASTENERS;
use crate::tables::gravity::GROUPS;

const ALL_FASTENERS: [Choice; FASTENERS.len()] = {
    let mut choices = [Choice::new("", ""); FASTENERS.len()];
    let mut index = 0;
    while index < FASTENERS.len() {
        let it = FASTENERS[index];
        choices[index] = Choice::new(it.id, it.name).across(it.across);
        index += 1;
    }
    choices
};

// The sizes are those of our invented potting bench for a school garden.

pub(crate) const QUESTION: Field = Field::new("question", "Question", "",
    Kind::Choice(&[LENGTH, PILOT, PLACING, POCKET, TOE, CORNER, HOLD, BUY]), Start::Question(LENGTH.id))
    ;
const LENGTH: Choice = Choice::new("length", "How long");
pub(crate) const PILOT: Choice = Choice::new("pilot", "Which bits");
pub(crate) const PLACING: Choice = Choice::new("placing", "How far from ends");
pub(crate) const POCKET: Choice = Choice::new("pocket", "Pocket screw");
pub(crate) const TOE: Choice = Choice::new("toe", "Toed screw");
pub(crate) const CORNER: Choice = Choice::new("corner", "Do two meet");
pub(crate) const HOLD: Choice = Choice::new("hold", "What it holds");
pub(crate) const BUY: Choice = Choice::new("buy", "How many to buy");

pub(super) const GAUGE: Field = Field::new("gauge", "Screw", "",
    Kind::Choice(&[NO_6, NO_7, NO_8, NO_9, NO_10, NO_12, NO_14, NO_16, NO_18, NO_20, NO_24]), Start::Text(NO_8.id))
    .only_for(QUESTION.id, &[LENGTH.id, POCKET.id, TOE.id, BUY.id]);
const NO_6: Choice = Choice::new("screw_6", "No. 6").across(FASTENERS[0].across);
const NO_7: Choice = Choice::new("screw_7", "No. 7").across(FASTENERS[1].across);
pub(super) const NO_8: Choice = Choice::new("screw_8", "No. 8").across(FASTENERS[2].across);
const NO_9: Choice = Choice::new("screw_9", "No. 9").across(FASTENERS[3].across);
const NO_10: Choice = Choice::new("screw_10", "No. 10").across(FASTENERS[4].across);
const NO_12: Choice = Choice::new("screw_12", "No. 12").across(FASTENERS[5].across);
const NO_14: Choice = Choice::new("screw_14", "No. 14").across(FASTENERS[6].across);
const NO_16: Choice = Choice::new("screw_16", "No. 16").across(FASTENERS[7].across);
const NO_18: Choice = Choice::new("screw_18", "No. 18").across(FASTENERS[8].across);
const NO_20: Choice = Choice::new("screw_20", "No. 20").across(FASTENERS[9].across);
const NO_24: Choice = Choice::new("screw_24", "No. 24").across(FASTENERS[10].across);

/// The answers of the wood field: every group of the table.
const WOODS: [Choice; GROUPS.len()] = {
    let mut choices = [Choice::new("", ""); GROUPS.len()];
    let mut index = 0;
    while index < GROUPS.len() {
        choices[index] = Choice::new(GROUPS[index].id, GROUPS[index].name);
        index += 1;
    }
    choices
};

pub(super) const FASTENER: Field = Field::new("fastener", "Screw or nail", "",
    Kind::Choice(&ALL_FASTENERS), Start::Text(NO_8.id))
    .only_for(QUESTION.id, &[PILOT.id, PLACING.id, HOLD.id]);
pub(super) const WOOD: Field = Field::new("wood", "Wood", "",
    Kind::Choice(&WOODS), Start::Text(WOODS[0].id))
    .only_for(QUESTION.id, &[PILOT.id, PLACING.id, HOLD.id]);
pub(super) const SCREW_LENGTH: Field = Field::new("screw_length", "Its length", "",
    Kind::ABOVE_ZERO, Start::Inches("2 1/2"))
    .only_for(QUESTION.id, &[PILOT.id, HOLD.id, BUY.id]);
pub(super) const PART_THICKNESS: Field = Field::new("part_thickness", "Drilled piece",
    "thickness, drilled face to far face",
    Kind::ABOVE_ZERO, Start::Inches("1 1/2")).only_for(QUESTION.id, &[POCKET.id, TOE.id]);
pub(super) const TOP_THICKNESS: Field = Field::new("top_thickness", "Piece under head", "thickness",
    Kind::ABOVE_ZERO, Start::Inches("1")).only_for(QUESTION.id, &[LENGTH.id, PILOT.id, HOLD.id]);
pub(super) const RECEIVER_THICKNESS: Field = Field::new("receiver_thickness", "Other piece",
    "the screw ends in it; thickness along the screw",
    Kind::ABOVE_ZERO, Start::Inches("1 1/2"))
    .only_for(QUESTION.id, &[LENGTH.id, POCKET.id, TOE.id]);
pub(super) const INTO: Field = Field::new("into", "Into", "",
    Kind::Choice(&[SIDE, END]), Start::Text(SIDE.id)).only_for(QUESTION.id, &[LENGTH.id, HOLD.id]);
const SIDE: Choice = Choice::new("side", "Face or edge");
pub(super) const END: Choice = Choice::new("end", "End grain");

pub(super) const HEAD_SUNK: Field = Field::new("head_sunk", "Head sunk",
    "top of head below the face",
    Kind::ZERO_UP, Start::Inches("1/8")).only_for(QUESTION.id, &[LENGTH.id]);
pub(super) const MARGIN: Field = Field::new("margin", "Margin", "wood left behind the tip",
    Kind::ZERO_UP, Start::Inches("1/8")).only_for(QUESTION.id, &[LENGTH.id, POCKET.id, TOE.id]);
pub(super) const AT_HAND: Field = Field::new("at_hand", "Screws at hand",
    "their length; empty if none",
    Kind::MAYBE_LENGTH, Start::Text("")).only_for(QUESTION.id, &[LENGTH.id, POCKET.id, TOE.id]);
pub(super) const DRILLED: Field = Field::new("drilled", "Pilot hole drilled", "",
    Kind::YesNo, Start::Text("yes")).only_for(QUESTION.id, &[PLACING.id]);
pub(super) const STEEL: Field = Field::new("steel", "Through a steel plate", "",
    Kind::YesNo, Start::Without("no")).only_for(QUESTION.id, &[PLACING.id]);
pub(super) const BOARD_WIDTH: Field = Field::new("board_width", "Board width", "edge to edge",
    Kind::ABOVE_ZERO, Start::Inches("3 1/2")).only_for(QUESTION.id, &[PLACING.id]);
pub(super) const POCKET_ANGLE: Field = Field::new("pocket_angle", "Angle", "",
    Kind::Number { least: 5, most: 80, unit: "°" }, Start::Text("15"))
    .only_for(QUESTION.id, &[POCKET.id]);
pub(super) const TOE_ANGLE: Field = Field::new("toe_angle", "Angle", "",
    Kind::Number { least: 5, most: 80, unit: "°" }, Start::Text("30"))
    .only_for(QUESTION.id, &[TOE.id]);
pub(super) const ANGLE_FROM: Field = Field::new("angle_from", "Angle is from", "",
    Kind::Choice(&[FACE, RECEIVER]), Start::Text(FACE.id))
    .only_for(QUESTION.id, &[POCKET.id, TOE.id]);
const FACE: Choice = Choice::new("face", "Drilled face");
pub(super) const RECEIVER: Choice = Choice::new("receiver", "Other piece's face");

pub(super) const ANGLED_FIND: Field = Field::new("angled_find", "Find", "",
    Kind::Choice(&[WHERE_TO_START, WHERE_IT_COMES_OUT]), Start::Question(WHERE_TO_START.id))
    .only_for(QUESTION.id, &[POCKET.id, TOE.id]);
const WHERE_TO_START: Choice = Choice::new("start", "Where to start");
pub(super) const WHERE_IT_COMES_OUT: Choice = Choice::new("exit", "Where it comes out");

pub(super) const EXIT: Field = Field::new("exit", "Leaves the end",
    "from the drilled face; empty for the middle",
    Kind::MAYBE_LENGTH, Start::Text("")).only_for(ANGLED_FIND.id, &[WHERE_TO_START.id]);
pub(super) const START_BACK: Field = Field::new("start_back", "Starts",
    "from the end, along the drilled face",
    Kind::ABOVE_ZERO, Start::Inches("1 1/4")).only_for(ANGLED_FIND.id, &[WHERE_IT_COMES_OUT.id]);
pub(super) const SEAT_WOOD: Field = Field::new("seat_wood", "Wood under the head",
    "seat to end, along the screw",
    Kind::ABOVE_ZERO, Start::Inches("1 1/2")).only_for(QUESTION.id, &[POCKET.id]);
pub(super) const WANTED_DEEP: Field = Field::new("wanted_deep", "Go in at least",
    "square into the other piece",
    Kind::ABOVE_ZERO, Start::Inches("3/4")).only_for(QUESTION.id, &[POCKET.id, TOE.id]);
pub(super) const BEYOND: Field = Field::new("beyond", "Other piece goes on",
    "past the far face of the drilled piece",
    Kind::ZERO_UP, Start::Without("0")).only_for(QUESTION.id, &[POCKET.id, TOE.id]);
pub(super) const SECTION: Field = Field::new("section", "They are", "",
    Kind::Choice(&[ROUND, TENON]), Start::Text(ROUND.id)).only_for(QUESTION.id, &[CORNER.id]);
const ROUND: Choice = Choice::new("round", "Screws or dowels");
pub(super) const TENON: Choice = Choice::new("tenon", "Tenons");

pub(super) const LEG: Field = Field::new("leg", "Leg", "square, as measured",
    Kind::ABOVE_ZERO, Start::Inches("3 1/2")).only_for(QUESTION.id, &[CORNER.id]);
pub(super) const SIZE: Field = Field::new("size", "Thickness", "diameter, or cheek to cheek",
    Kind::ABOVE_ZERO, Start::Inches("3/8")).only_for(QUESTION.id, &[CORNER.id]);
pub(super) const TALL: Field = Field::new("tall", "Tenon height", "along the leg",
    Kind::ABOVE_ZERO, Start::Inches("2 1/2")).only_for(SECTION.id, &[TENON.id]);
pub(super) const A_DEEP: Field = Field::new("a_deep", "First goes in", "from the inner face",
    Kind::ABOVE_ZERO, Start::Inches("2")).only_for(QUESTION.id, &[CORNER.id]);
pub(super) const A_OUTSIDE: Field = Field::new("a_outside", "First from outside",
    "outside face to its middle",
    Kind::ABOVE_ZERO, Start::Inches("1 3/4")).only_for(QUESTION.id, &[CORNER.id]);
pub(super) const A_HEIGHT: Field = Field::new("a_height", "First height",
    "to its middle, same end for both",
    Kind::ZERO_UP, Start::Inches("30")).only_for(QUESTION.id, &[CORNER.id]);
pub(super) const B_DEEP: Field = Field::new("b_deep", "Second goes in", "from the other inner face",
    Kind::ABOVE_ZERO, Start::Inches("2")).only_for(QUESTION.id, &[CORNER.id]);
pub(super) const B_OUTSIDE: Field = Field::new("b_outside", "Second from outside",
    "outside face to its middle",
    Kind::ABOVE_ZERO, Start::Inches("1 3/4")).only_for(QUESTION.id, &[CORNER.id]);
pub(super) const B_HEIGHT: Field = Field::new("b_height", "Second height",
    "to its middle, same end for both",
    Kind::ZERO_UP, Start::Inches("33")).only_for(QUESTION.id, &[CORNER.id]);
pub(super) const WET: Field = Field::new("wet", "Wet in use",
    "over 19 % moisture, as outdoors on the ground",
    Kind::YesNo, Start::Text("yes")).only_for(QUESTION.id, &[HOLD.id]);
pub(super) const PLANKS: Field = Field::new("planks", "Planks or joints", "",
    Kind::Count { least: 1, most: 10_000 }, Start::Text("5")).only_for(QUESTION.id, &[BUY.id]);
pub(super) const RAILS: Field = Field::new("rails", "Rails crossed by each", "1 for joints",
    Kind::Count { least: 1, most: 1000 }, Start::Text("3")).only_for(QUESTION.id, &[BUY.id]);
pub(super) const PER_CROSSING: Field = Field::new("per_crossing", "Screws each time", "",
    Kind::Count { least: 1, most: 100 }, Start::Text("2")).only_for(QUESTION.id, &[BUY.id]);
pub(super) const SPARE: Field = Field::new("spare", "Spare", "lost, snapped, spoilt",
    Kind::Number { least: 0, most: 200, unit: "%" }, Start::Text("10"))
    .only_for(QUESTION.id, &[BUY.id]);
pub(super) const BOX_OF: Field = Field::new("box_of", "Box of", "1 when sold singly",
    Kind::Count { least: 1, most: 10_000 }, Start::Text("1")).only_for(QUESTION.id, &[BUY.id]);

/// In the order asked.
pub(super) const FIELDS: &[Field] = &[
    QUESTION, GAUGE, FASTENER, WOOD, SCREW_LENGTH, PART_THICKNESS, TOP_THICKNESS,
    RECEIVER_THICKNESS, INTO, HEAD_SUNK, MARGIN, AT_HAND, DRILLED, STEEL, BOARD_WIDTH, POCKET_ANGLE,
    TOE_ANGLE, ANGLE_FROM, ANGLED_FIND, EXIT, START_BACK, SEAT_WOOD, WANTED_DEEP, BEYOND, SECTION,
    LEG, SIZE, TALL, A_DEEP, A_OUTSIDE, A_HEIGHT, B_DEEP, B_OUTSIDE, B_HEIGHT, WET, PLANKS, RAILS,
    PER_CROSSING, SPARE, BOX_OF,
];

pub(super) const BEST_LENGTH: ResultSpec =
    ResultSpec::new("best_length", "Screw length", ResultKind::Length);
pub(super) const ENOUGH: ResultSpec = ResultSpec::new("enough", "Long enough", ResultKind::Length);
pub(super) const LONGEST: ResultSpec =
    ResultSpec::new("longest", "Longest there is room for", ResultKind::Length);
pub(super) const INTO_RECEIVER: ResultSpec =
    ResultSpec::new("into_receiver", "Into the other piece", ResultKind::Length);
pub(super) const THREAD_IN_RECEIVER: ResultSpec =
    ResultSpec::new("thread_in_receiver", "Thread in the other piece", ResultKind::Length);
pub(super) const BEHIND_TIP: ResultSpec =
    ResultSpec::new("behind_tip", "Wood behind the tip", ResultKind::Length);
pub(super) const VERDICT_AT_HAND: ResultSpec =
    ResultSpec::new("verdict_at_hand", "The one at hand", ResultKind::Words);
pub(super) const AT_HAND_INTO: ResultSpec =
    ResultSpec::new("at_hand_into", "The one at hand goes in", ResultKind::Length);
pub(super) const AT_HAND_BEHIND: ResultSpec =
    ResultSpec::new("at_hand_behind", "Wood behind its tip", ResultKind::Length);
pub(super) const STOCK: ResultSpec = ResultSpec::new("stock", "Stock lengths", ResultKind::Table);
pub(super) const LENGTH_COLUMN: Column = Column::new("length", "Length");
pub(super) const DEEP_COLUMN: Column = Column::new("deep", "Deep");
pub(super) const VERDICT_COLUMN: Column = Column::new("verdict", "");
pub(super) const INTO_RECEIVER_COLUMN: Column = Column::new("into_receiver", "Into the other piece");
pub(super) const PILOT_BIT: ResultSpec =
    ResultSpec::new("pilot_bit", "Pilot bit", ResultKind::Words);
pub(super) const CLEARANCE_BIT: ResultSpec =
    ResultSpec::new("clearance_bit", "Clearance bit", ResultKind::Words);
pub(super) const SHANK: ResultSpec = ResultSpec::new("shank", "Shank", ResultKind::Number);
pub(super) const ROOT: ResultSpec = ResultSpec::new("root", "Root of thread", ResultKind::Number);
pub(super) const HEAD_WIDTH: ResultSpec =
    ResultSpec::new("head_width", "Countersink width", ResultKind::Number);
pub(super) const CLEARANCE_DEPTH: ResultSpec =
    ResultSpec::new("clearance_depth", "Clearance depth", ResultKind::Length);
pub(super) const PILOT_DEPTH: ResultSpec =
    ResultSpec::new("pilot_depth", "Pilot depth in the other piece", ResultKind::Length);
pub(super) const END_DISTANCE: ResultSpec =
    ResultSpec::new("end_distance", "From an end, pulled towards", ResultKind::Length);
pub(super) const END_PUSHED: ResultSpec =
    ResultSpec::new("end_pushed", "From an end, pushed away", ResultKind::Length);
pub(super) const EDGE_DISTANCE: ResultSpec =
    ResultSpec::new("edge_distance", "From an edge", ResultKind::Length);
pub(super) const ROWS_THAT_FIT: ResultSpec =
    ResultSpec::new("rows_that_fit", "Rows that fit", ResultKind::Count);
pub(super) const SPACING: ResultSpec =
    ResultSpec::new("spacing", "Least distances", ResultKind::Table);
pub(super) const FROM_COLUMN: Column = Column::new("from", "From");
pub(super) const DIAMETERS_COLUMN: Column = Column::new("diameters", "Diameters");
pub(super) const LEAST_COLUMN: Column = Column::new("least", "Least");
pub(super) const START: ResultSpec = ResultSpec::new("start", "Start", ResultKind::Length);
pub(super) const EXIT_FROM_FACE: ResultSpec =
    ResultSpec::new("exit_from_face", "Leaves the end", ResultKind::Length);
pub(super) const AXIS: ResultSpec = ResultSpec::new("axis", "Hole in the drilled piece", ResultKind::Length);
pub(super) const TO_SEAT: ResultSpec =
    ResultSpec::new("to_seat", "Pocket depth", ResultKind::Length);
pub(super) const DEEP: ResultSpec =
    ResultSpec::new("deep", "Deep in the other piece", ResultKind::Length);
pub(super) const DRIFT: ResultSpec = ResultSpec::new("drift", "Goes sideways", ResultKind::Length);
pub(super) const FROM_FACE: ResultSpec =
    ResultSpec::new("from_face", "Angle from the drilled face", ResultKind::Number);
pub(super) const FROM_RECEIVER: ResultSpec =
    ResultSpec::new("from_receiver", "Angle from the other piece's face", ResultKind::Number);
pub(super) const BETWEEN: ResultSpec =
    ResultSpec::new("between", "Wood between", ResultKind::Length);
pub(super) const ALWAYS_CLEAR: ResultSpec =
    ResultSpec::new("always_clear", "Clear at any depth", ResultKind::Length);
pub(super) const SIDE_LOAD: ResultSpec =
    ResultSpec::new("side_load", "Side load", ResultKind::Number);
pub(super) const PULL: ResultSpec = ResultSpec::new("pull", "Pull", ResultKind::Number);
pub(super) const PULL_PER_INCH: ResultSpec =
    ResultSpec::new("pull_per_inch", "Pull for each length of thread", ResultKind::Number);
pub(super) const GIVES_WAY: ResultSpec =
    ResultSpec::new("gives_way", "What gives way first", ResultKind::Words);
pub(super) const TEST_PULL: ResultSpec =
    ResultSpec::new("test_pull", "Pulled out in tests", ResultKind::Number);
pub(super) const TEST_SIDE: ResultSpec =
    ResultSpec::new("test_side", "Stays bent in tests", ResultKind::Number);
pub(super) const TO_BUY: ResultSpec = ResultSpec::new("to_buy", "Buy", ResultKind::Count);
pub(super) const NEEDED: ResultSpec = ResultSpec::new("needed", "In the work", ResultKind::Count);
pub(super) const BOXES: ResultSpec = ResultSpec::new("boxes", "Boxes", ResultKind::Count);
pub(super) const SPARE_LEFT: ResultSpec =
    ResultSpec::new("spare_left", "Left over", ResultKind::Count);

/// Every figure and table.
pub(super) const RESULTS: &[ResultSpec] = &[
    BEST_LENGTH, ENOUGH, LONGEST, INTO_RECEIVER, THREAD_IN_RECEIVER, BEHIND_TIP, VERDICT_AT_HAND,
    AT_HAND_INTO, AT_HAND_BEHIND, STOCK, PILOT_BIT, CLEARANCE_BIT, SHANK, ROOT, HEAD_WIDTH, CLEARANCE_DEPTH, PILOT_DEPTH,
    END_DISTANCE, END_PUSHED, EDGE_DISTANCE, ROWS_THAT_FIT, SPACING, START, EXIT_FROM_FACE, AXIS,
    TO_SEAT, DEEP, DRIFT, FROM_FACE, FROM_RECEIVER, BETWEEN, ALWAYS_CLEAR, SIDE_LOAD, PULL, PULL_PER_INCH, GIVES_WAY,
    TEST_PULL, TEST_SIDE, TO_BUY, NEEDED, BOXES, SPARE_LEFT,
];

/// Said of a number that is out of range, whatever is asked.
pub(super) fn out_of_range() -> Refusal {
    Refusal::out_of_range(&QUESTION)
}
