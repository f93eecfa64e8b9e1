//! What is asked about a frame, and what each question answers with.

use crate::calculators::{ResultKind, ResultSpec};
use crate::sheet::{Choice, Column, Field, Kind, Refusal, Start};

// The sizes are those of our invented potting bench for a school garden.

pub(crate) const QUESTION: Field = Field::new("question", "Question", "",
    Kind::Choice(&[RAIL_BETWEEN_LEGS, SPACER, STRETCHER, SUPPORT, TENONS, LAP, SQUARE]),
    Start::Question(RAIL_BETWEEN_LEGS.id));
pub(crate) const RAIL_BETWEEN_LEGS: Choice = Choice::new("rail", "Rail between legs");
pub(crate) const SPACER: Choice = Choice::new("spacer", "Spacer under a rail");
pub(crate) const STRETCHER: Choice = Choice::new("stretcher", "Stretcher height");
pub(crate) const SUPPORT: Choice = Choice::new("support", "Supports between rails");
pub(super) const TENONS: Choice = Choice::new("tenons", "Tenons in one leg");
pub(crate) const LAP: Choice = Choice::new("lap", "Half-lap depth");
pub(super) const SQUARE: Choice = Choice::new("square", "Is it square");

pub(crate) const FIND: Field = Field::new("find", "Find", "",
    Kind::Choice(&[FIND_RAIL, FIND_OVERALL, FIND_LEGS]), Start::Question(FIND_RAIL.id))
    .only_for(QUESTION.id, &[RAIL_BETWEEN_LEGS.id]);
pub(super) const FIND_RAIL: Choice = Choice::new(RAIL_BETWEEN_LEGS.id, "Rail");
pub(crate) const FIND_OVERALL: Choice = Choice::new("overall", "Overall");
pub(crate) const FIND_LEGS: Choice = Choice::new("leg", "Legs");

pub(super) const JOINT: Field = Field::new("joint", "Rail ends", "",
    Kind::Choice(&[BUTTED, TENONED, LAPPED]), Start::Text(BUTTED.id))
    .only_for(QUESTION.id, &[RAIL_BETWEEN_LEGS.id]);
pub(super) const BUTTED: Choice = Choice::new("butt", "Square");
pub(super) const TENONED: Choice = Choice::new("tenon", "Tenons");
pub(super) const LAPPED: Choice = Choice::new(LAP.id, "Lapped over legs");

pub(super) const OVERALL: Field = Field::new("overall", "Overall",
    "outside of leg to outside of leg",
    Kind::ABOVE_ZERO, Start::Inches("46")).only_for(FIND.id, &[FIND_RAIL.id, FIND_LEGS.id]);
pub(crate) const RAIL: Field = Field::new("rail", "Rail as measured", "end to end, joints included",
    Kind::ABOVE_ZERO, Start::Inches("39")).only_for(FIND.id, &[FIND_OVERALL.id, FIND_LEGS.id]);
pub(crate) const LEG_LEFT: Field = Field::new("leg_left", "Left leg", "as measured, along the rail",
    Kind::ABOVE_ZERO, Start::Inches("3 1/2")).only_for(FIND.id, &[FIND_RAIL.id, FIND_OVERALL.id]);
pub(crate) const LEG_RIGHT: Field = Field::new("leg_right", "Right leg",
    "empty if the same as the left",
    Kind::MAYBE_LENGTH, Start::Text("")).only_for(FIND.id, &[FIND_RAIL.id, FIND_OVERALL.id]);
pub(super) const TENON: Field = Field::new("tenon", "Tenon", "each end, shoulder to tip",
    Kind::ABOVE_ZERO, Start::Inches("1")).only_for(JOINT.id, &[TENONED.id]);
pub(super) const LAP_SHORT: Field = Field::new("lap_short", "Short of the outside",
    "each end; 0 for flush",
    Kind::ZERO_UP, Start::Without("0")).only_for(JOINT.id, &[LAPPED.id]);
pub(super) const LAY: Field = Field::new("lay", "On the bench", "",
    Kind::Choice(&[OUTSIDE, INSIDE, RAIL_CENTRED, BLOCK_AT_HAND]), Start::Text(OUTSIDE.id))
    .only_for(QUESTION.id, &[SPACER.id]);
pub(super) const OUTSIDE: Choice = Choice::new("outside", "Outside down");
pub(super) const INSIDE: Choice = Choice::new("inside", "Inside down");
pub(super) const RAIL_CENTRED: Choice = Choice::new("centred", "Rail centered");
pub(super) const BLOCK_AT_HAND: Choice = Choice::new("block", "I have a block");

pub(super) const LEG: Field = Field::new("leg", "Leg", "as measured, outside to inside face",
    Kind::ABOVE_ZERO, Start::Inches("3 1/2")).only_for(QUESTION.id, &[SPACER.id, TENONS.id]);
pub(super) const RAIL_THICKNESS: Field = Field::new("rail_thickness", "Rail thickness",
    "as measured",
    Kind::ABOVE_ZERO, Start::Inches("1 1/2")).only_for(QUESTION.id, &[SPACER.id, SUPPORT.id]);
pub(super) const SET_BACK: Field = Field::new("set_back", "Set-back", "outside of leg to rail",
    Kind::ZERO_UP, Start::Inches("3/4")).only_for(LAY.id, &[OUTSIDE.id, INSIDE.id]);
pub(super) const BLOCK: Field = Field::new("block", "Block", "its thickness",
    Kind::ABOVE_ZERO, Start::Inches("3/4")).only_for(LAY.id, &[BLOCK_AT_HAND.id]);
pub(super) const HEIGHT: Field = Field::new("height", "Stretcher height", "above the floor",
    Kind::ABOVE_ZERO, Start::Inches("6")).only_for(QUESTION.id, &[STRETCHER.id]);
pub(super) const HEIGHT_TO: Field = Field::new("height_to", "Measured to its", "",
    Kind::Choice(&[LOWER, MIDDLE, UPPER]), Start::Text(LOWER.id))
    .only_for(QUESTION.id, &[STRETCHER.id]);
pub(super) const LOWER: Choice = Choice::new("lower", "Lower edge");
pub(super) const MIDDLE: Choice = Choice::new("middle", "Middle");
pub(super) const UPPER: Choice = Choice::new("upper", "Upper edge");

pub(crate) const STRETCHER_WIDTH: Field = Field::new("stretcher_width", "Stretcher width",
    "upper to lower edge",
    Kind::ABOVE_ZERO, Start::Inches("3 1/2")).only_for(QUESTION.id, &[STRETCHER.id]);
pub(crate) const LEG_LENGTH: Field = Field::new("leg_length", "Leg length", "floor to top of leg",
    Kind::ABOVE_ZERO, Start::Inches("34 1/2")).only_for(QUESTION.id, &[STRETCHER.id]);
pub(crate) const APRON_WIDTH: Field = Field::new("apron_width", "Apron width", "0 without one",
    Kind::ZERO_UP, Start::Inches("3 1/2")).only_for(QUESTION.id, &[STRETCHER.id]);
pub(super) const APRON_DOWN: Field = Field::new("apron_down", "Apron below leg top", "",
    Kind::ZERO_UP, Start::Without("0")).only_for(QUESTION.id, &[STRETCHER.id]);
pub(super) const DEPTH_OVERALL: Field = Field::new("depth_overall", "Depth",
    "outside of front leg to outside of back leg",
    Kind::ABOVE_ZERO, Start::Inches("24")).only_for(QUESTION.id, &[SUPPORT.id]);
pub(super) const RAIL_SET_BACK: Field = Field::new("rail_set_back", "Rail set-back",
    "outside of leg to rail",
    Kind::ZERO_UP, Start::Inches("3/4")).only_for(QUESTION.id, &[SUPPORT.id]);
pub(super) const BETWEEN_LEGS: Field = Field::new("between_legs", "Leg to leg", "along the rail",
    Kind::ABOVE_ZERO, Start::Inches("39")).only_for(QUESTION.id, &[SUPPORT.id]);
pub(crate) const SUPPORTS: Field = Field::new("supports", "Supports", "",
    Kind::Count { least: 1, most: 40 }, Start::Text("1")).only_for(QUESTION.id, &[SUPPORT.id]);
pub(crate) const SUPPORT_THICKNESS: Field = Field::new("support_thickness", "Support thickness",
    "along the rail",
    Kind::ABOVE_ZERO, Start::Inches("1 1/2")).only_for(QUESTION.id, &[SUPPORT.id]);
pub(super) const HOUSING: Field = Field::new("housing", "Each end goes in",
    "tenon or housing; 0 for square ends",
    Kind::ZERO_UP, Start::Without("0")).only_for(QUESTION.id, &[SUPPORT.id]);
pub(super) const TENON_A: Field = Field::new("tenon_a", "First tenon", "shoulder to tip",
    Kind::ABOVE_ZERO, Start::Inches("1")).only_for(QUESTION.id, &[TENONS.id]);
pub(super) const TENON_B: Field = Field::new("tenon_b", "Second tenon",
    "from the neighbouring face",
    Kind::ABOVE_ZERO, Start::Inches("1")).only_for(QUESTION.id, &[TENONS.id]);
pub(super) const TENON_THICKNESS: Field = Field::new("tenon_thickness", "Tenon thickness",
    "cheek to cheek",
    Kind::ABOVE_ZERO, Start::Inches("1/2")).only_for(QUESTION.id, &[TENONS.id]);
pub(super) const TENON_PLACE: Field = Field::new("tenon_place", "Tenons are", "",
    Kind::Choice(&[CENTRED_IN_LEG, MEASURED]), Start::Text(CENTRED_IN_LEG.id))
    .only_for(QUESTION.id, &[TENONS.id]);
pub(super) const CENTRED_IN_LEG: Choice = Choice::new(RAIL_CENTRED.id, "Centered in leg");
pub(super) const MEASURED: Choice = Choice::new("measured", "From outside face");

pub(super) const CHEEK: Field = Field::new("cheek", "Outside to cheek",
    "outside of leg to nearer cheek",
    Kind::ZERO_UP, Start::Inches("1")).only_for(TENON_PLACE.id, &[MEASURED.id]);
pub(crate) const FRONT_THICKNESS: Field = Field::new("front_thickness", "Front piece",
    "thickness, cut from its back",
    Kind::ABOVE_ZERO, Start::Inches("3/4")).only_for(QUESTION.id, &[LAP.id]);
pub(crate) const REAR_THICKNESS: Field = Field::new("rear_thickness", "Rear piece",
    "thickness, cut from its show face",
    Kind::ABOVE_ZERO, Start::Inches("1 1/2")).only_for(QUESTION.id, &[LAP.id]);
pub(super) const REAR_CUT: Field = Field::new("rear_cut", "Rear cut as made",
    "empty if not cut yet",
    Kind::MAYBE_LENGTH, Start::Text("")).only_for(QUESTION.id, &[LAP.id]);
pub(super) const NEAR_SIDE: Field = Field::new("near_side", "Near side",
    "left to right, corner to corner",
    Kind::ABOVE_ZERO, Start::Inches("46")).only_for(QUESTION.id, &[SQUARE.id]);
pub(super) const LEFT_SIDE: Field = Field::new("left_side", "Left side",
    "near to far, same corners",
    Kind::ABOVE_ZERO, Start::Inches("24")).only_for(QUESTION.id, &[SQUARE.id]);
pub(super) const DIAGONAL_A: Field = Field::new("diagonal_a", "Near left to far right",
    "empty if not measured",
    Kind::MAYBE_LENGTH, Start::Inches("52")).only_for(QUESTION.id, &[SQUARE.id]);
pub(super) const DIAGONAL_B: Field = Field::new("diagonal_b", "Near right to far left",
    "empty if not measured",
    Kind::MAYBE_LENGTH, Start::Inches("51 3/4")).only_for(QUESTION.id, &[SQUARE.id]);

/// In the order asked.
pub(super) const FIELDS: &[Field] = &[
    QUESTION, FIND, JOINT, OVERALL, RAIL, LEG_LEFT, LEG_RIGHT, TENON, LAP_SHORT, LAY, LEG,
    RAIL_THICKNESS, SET_BACK, BLOCK, HEIGHT, HEIGHT_TO, STRETCHER_WIDTH, LEG_LENGTH, APRON_WIDTH,
    APRON_DOWN, DEPTH_OVERALL, RAIL_SET_BACK, BETWEEN_LEGS, SUPPORTS, SUPPORT_THICKNESS, HOUSING,
    TENON_A, TENON_B, TENON_THICKNESS, TENON_PLACE, CHEEK, FRONT_THICKNESS, REAR_THICKNESS,
    REAR_CUT, NEAR_SIDE, LEFT_SIDE, DIAGONAL_A, DIAGONAL_B,
];

pub(crate) const RAIL_CUT: ResultSpec =
    ResultSpec::new("rail_cut", "Rail, cut length", ResultKind::Length);
pub(super) const OVERALL_LENGTH: ResultSpec =
    ResultSpec::new("overall_length", "Overall", ResultKind::Length);
pub(crate) const LEG_EACH: ResultSpec = ResultSpec::new("leg_each", "Each leg", ResultKind::Length);
pub(super) const LEG_TO_LEG: ResultSpec =
    ResultSpec::new("leg_to_leg", "Leg to leg", ResultKind::Length);
pub(super) const MORTISE: ResultSpec =
    ResultSpec::new("mortise", "Mortise depth", ResultKind::Length);
pub(crate) const SPACER_BLOCK: ResultSpec =
    ResultSpec::new("spacer_block", "Spacer block", ResultKind::Length);
pub(super) const RAIL_SET_BACK_OUTSIDE: ResultSpec =
    ResultSpec::new("rail_set_back_outside", "Set-back outside", ResultKind::Length);
pub(super) const RAIL_SET_BACK_INSIDE: ResultSpec =
    ResultSpec::new("rail_set_back_inside", "Set-back inside", ResultKind::Length);
pub(super) const BLOCKS: ResultSpec = ResultSpec::new("blocks", "Blocks", ResultKind::Table);
pub(super) const ON_THE_BENCH_COLUMN: Column = Column::new("on_the_bench", "On the bench");
pub(super) const BLOCK_COLUMN: Column = Column::new("block", "Block");
pub(crate) const FLOOR_BLOCK: ResultSpec =
    ResultSpec::new("floor_block", "Block on the floor", ResultKind::Length);
pub(super) const APRON_BLOCK: ResultSpec =
    ResultSpec::new("apron_block", "Block at the apron", ResultKind::Length);
pub(super) const UPPER_EDGE: ResultSpec =
    ResultSpec::new("upper_edge", "Upper edge", ResultKind::Length);
pub(super) const FROM_LEG_TOP: ResultSpec =
    ResultSpec::new("from_leg_top", "From leg top", ResultKind::Length);
pub(crate) const SUPPORT_CUT: ResultSpec =
    ResultSpec::new("support_cut", "Support, cut length", ResultKind::Length);
pub(super) const BETWEEN_RAILS: ResultSpec =
    ResultSpec::new("between_rails", "Rail to rail", ResultKind::Length);
pub(super) const BAY: ResultSpec = ResultSpec::new("bay", "Clear bay", ResultKind::Length);
pub(super) const SUPPORT_EDGES: ResultSpec =
    ResultSpec::new("support_edges", "Left edges", ResultKind::Lengths);
pub(super) const LONGEST_TENONS: ResultSpec =
    ResultSpec::new("longest_tenons", "Longest tenons alike", ResultKind::Length);
pub(super) const TENONS_CLEAR: ResultSpec =
    ResultSpec::new("tenons_clear", "Wood between tenons", ResultKind::Length);
pub(super) const OUTSIDE_TO_CHEEK: ResultSpec =
    ResultSpec::new("outside_to_cheek", "Outside to cheek", ResultKind::Length);
pub(super) const LAP_REAR: ResultSpec =
    ResultSpec::new("lap_rear", "Cut in rear piece", ResultKind::Length);
pub(super) const LAP_FRONT: ResultSpec =
    ResultSpec::new("lap_front", "Cut in front piece", ResultKind::Length);
pub(super) const LAP_REAR_LEFT: ResultSpec =
    ResultSpec::new("lap_rear_left", "Left of rear piece", ResultKind::Length);
pub(super) const LAP_STEP: ResultSpec =
    ResultSpec::new("lap_step", "Step at the back", ResultKind::Length);
pub(super) const SQUARE_DIAGONAL: ResultSpec =
    ResultSpec::new("square_diagonal", "Diagonal when square", ResultKind::Length);
pub(super) const PUSH_BY: ResultSpec =
    ResultSpec::new("push_by", "Push the far side", ResultKind::Length);
pub(super) const PUSH: ResultSpec = ResultSpec::new("push", "Which way to push", ResultKind::Words);
pub(super) const OUT_OF_SQUARE: ResultSpec =
    ResultSpec::new("out_of_square", "Out of square", ResultKind::Number);

/// Every figure and table.
pub(super) const RESULTS: &[ResultSpec] = &[
    RAIL_CUT, OVERALL_LENGTH, LEG_EACH, LEG_TO_LEG, MORTISE, SPACER_BLOCK, RAIL_SET_BACK_OUTSIDE,
    RAIL_SET_BACK_INSIDE, BLOCKS, FLOOR_BLOCK, APRON_BLOCK, UPPER_EDGE, FROM_LEG_TOP, SUPPORT_CUT,
    BETWEEN_RAILS, BAY, SUPPORT_EDGES, LONGEST_TENONS, TENONS_CLEAR, OUTSIDE_TO_CHEEK, LAP_REAR,
    LAP_FRONT, LAP_REAR_LEFT, LAP_STEP, SQUARE_DIAGONAL, PUSH_BY, PUSH, OUT_OF_SQUARE,
];

/// Said of a number that is out of range, whatever is asked.
pub(super) fn out_of_range() -> Refusal {
    Refusal::out_of_range(&QUESTION)
}
