//! What the lumber calculator asks, and what it answers with.

use crate::calculators::{ResultKind, ResultSpec};
use crate::sheet::{Column, Choice, Field, Kind, Start};
use crate::tables::gravity::{self, GROUPS};
use crate::tables::lumber::{self, SECTIONS};

/// The sections of a yard, and any other.
const SECTION_CHOICES: &[Choice] = &{
    let mut choices = [OTHER; SECTIONS.len() + 1];
    let mut i = 0;
    while i < SECTIONS.len() {
        choices[i] = Choice::new(SECTIONS[i].id, SECTIONS[i].label);
        i += 1;
    }
    choices
};

/// Species that are not sold under a group of the gravity table.
const MORE_WOODS: [Choice; 7] = [
    Choice::new("baldcypress", "Baldcypress"), Choice::new("black_locust", "Black locust"),
    Choice::new("white_ash", "White ash"), Choice::new("black_walnut", "Black walnut"),
    Choice::new("black_cherry", "Black cherry"), Choice::new("teak", "Teak"),
    Choice::new("ipe", "Ipe"),
];

/// Lumber groups first, because a stamp names the group.
const WOOD_CHOICES: &[Choice] = &{
    let mut choices = [Choice::new("", ""); GROUPS.len() + MORE_WOODS.len()];
    let mut i = 0;
    while i < GROUPS.len() {
        choices[i] = Choice::new(GROUPS[i].id, GROUPS[i].name);
        i += 1;
    }
    while i < choices.len() {
        choices[i] = MORE_WOODS[i - GROUPS.len()];
        i += 1;
    }
    choices
};

/// Questions that need the actual size.
const ACTUAL: &[&str] = &[SIZE.id, WEIGHT.id, COVER.id];

// The starts are of our invented potting bench: its top of 2×6 boards, eight feet long.
pub(super) const ASK: Field = Field::new("ask", "What", "",
    Kind::Choice(&[SIZE, AMOUNT, WEIGHT, COVER]), Start::Question(SIZE.id));
pub(super) const SIZE: Choice = Choice::new("size", "Real size");
pub(super) const AMOUNT: Choice = Choice::new("amount", "Board feet, price");
pub(super) const WEIGHT: Choice = Choice::new("weight", "Weight");
pub(super) const COVER: Choice = Choice::new("cover", "Boards for a width");

pub(super) const SECTION: Field = Field::new("section", "Tag says", "nominal size",
    Kind::Choice(SECTION_CHOICES), Start::Text(lumber::TWO_BY_SIX.id));
const OTHER: Choice = Choice::new("other", "Another size");
pub(super) const NOMINAL_THICKNESS: Field = Field::new("nominal_thickness", "Nominal thickness",
    "5/4 is 1 1/4", Kind::ABOVE_ZERO, Start::Inches("2")).only_for(SECTION.id, &[OTHER.id]);
pub(super) const NOMINAL_WIDTH: Field = Field::new("nominal_width", "Nominal width", "",
    Kind::ABOVE_ZERO, Start::Inches("6")).only_for(SECTION.id, &[OTHER.id]);
pub(super) const SEASONING: Field = Field::new("seasoning", "Dry or wet",
    "when it was planed; wet treated boards: as measured",
    Kind::Choice(&[DRY, GREEN]), Start::Text(DRY.id)).only_for(ASK.id, ACTUAL);
pub(super) const DRY: Choice = Choice::new("dry", "Dry");
pub(super) const GREEN: Choice = Choice::new("green", "Wet");
pub(super) const MEASURED_THICKNESS: Field = Field::new("measured_thickness", "Thickness measured",
    "as the table if left empty", Kind::MAYBE_LENGTH, Start::Text("")).only_for(ASK.id, ACTUAL);
pub(super) const MEASURED_WIDTH: Field = Field::new("measured_width", "Width measured",
    "as the table if left empty", Kind::MAYBE_LENGTH, Start::Text("")).only_for(ASK.id, ACTUAL);
pub(super) const LENGTH: Field = Field::new("length", "Length", "one board",
    Kind::ABOVE_ZERO, Start::Inches("96")).only_for(ASK.id, &[AMOUNT.id, WEIGHT.id]);
pub(super) const COUNT: Field = Field::new("count", "Boards", "",
    Kind::Count { least: 1, most: 100_000 }, Start::Text("6"))
    .only_for(ASK.id, &[AMOUNT.id, WEIGHT.id]);
pub(super) const PRICE: Field = Field::new("price", "Price", "of what is named below",
    Kind::OptionalMoney, Start::Text("")).only_for(ASK.id, &[AMOUNT.id]);
pub(super) const PER: Field = Field::new("per", "Price is for", "",
    Kind::Choice(&[PIECE, FOOT, BOARD_FOOT]), Start::Text(PIECE.id)).only_for(ASK.id, &[AMOUNT.id]);
pub(super) const PIECE: Choice = Choice::new("piece", "A board");
pub(super) const FOOT: Choice = Choice::new("foot", "A foot");
pub(super) const BOARD_FOOT: Choice = Choice::new("board_foot", "A board foot");
pub(super) const WOOD: Field = Field::new("wood", "Wood", "as stamped",
    Kind::Choice(WOOD_CHOICES), Start::Text(gravity::SOUTHERN_PINE.id))
    .only_for(ASK.id, &[WEIGHT.id]);
pub(super) const MOISTURE: Field = Field::new("moisture", "Moisture",
    "wet treated 35 to 75, kiln dried 19, shop 12",
    Kind::Number { least: 0, most: 300, unit: "%" }, Start::Text("19"))
    .only_for(ASK.id, &[WEIGHT.id]);
pub(super) const COVER_WIDTH: Field = Field::new("cover_width", "Width to cover", "",
    Kind::ABOVE_ZERO, Start::Inches("48")).only_for(ASK.id, &[COVER.id]);
pub(super) const GAP: Field = Field::new("gap", "Gap", "between two boards",
    Kind::ZERO_UP, Start::Inches("0")).only_for(ASK.id, &[COVER.id]);
pub(super) const WASTE: Field = Field::new("waste", "Waste",
    "15 for good boards, 30 for low grades",
    Kind::Number { least: 0, most: 100, unit: "%" }, Start::Text("15"))
    .only_for(ASK.id, &[COVER.id]);

/// In the order asked.
pub(super) const FIELDS: &[Field] = &[
    ASK, SECTION, NOMINAL_THICKNESS, NOMINAL_WIDTH, SEASONING, MEASURED_THICKNESS, MEASURED_WIDTH,
    LENGTH, COUNT, PRICE, PER, WOOD, MOISTURE, COVER_WIDTH, GAP, WASTE,
];

pub(super) const WIDTH: ResultSpec = ResultSpec::new("width", "Width", ResultKind::Length);
pub(super) const THICKNESS: ResultSpec =
    ResultSpec::new("thickness", "Thickness", ResultKind::Length);
pub(super) const SIZES: ResultSpec = ResultSpec::new("sizes", "Dry and wet", ResultKind::Table);
pub(super) const DRESSED_COLUMN: Column = Column::new("dressed", "Planed");
pub(super) const THICKNESS_COLUMN: Column = Column::new("thickness", "Thickness");
pub(super) const WIDTH_COLUMN: Column = Column::new("width", "Width");
pub(super) const BOARD_FEET: ResultSpec =
    ResultSpec::new("board_feet", "Board feet", ResultKind::Number);
pub(super) const BOARD_FEET_EACH: ResultSpec =
    ResultSpec::new("board_feet_each", "Board feet, one board", ResultKind::Number);
pub(super) const LINEAR_FEET: ResultSpec =
    ResultSpec::new("linear_feet", "Length in all", ResultKind::Number);
pub(super) const TOTAL: ResultSpec = ResultSpec::new("total", "Price of all", ResultKind::Number);
pub(super) const PER_PIECE: ResultSpec =
    ResultSpec::new("per_piece", "Price of a board", ResultKind::Number);
pub(super) const PER_FOOT: ResultSpec =
    ResultSpec::new("per_foot", "Price of a foot", ResultKind::Number);
pub(super) const PER_BOARD_FOOT: ResultSpec =
    ResultSpec::new("per_board_foot", "Price of a board foot", ResultKind::Number);
pub(super) const WEIGHT_EACH: ResultSpec =
    ResultSpec::new("weight", "Weight of a board", ResultKind::Number);
pub(super) const WEIGHT_ALL: ResultSpec =
    ResultSpec::new("weight_all", "Weight of all", ResultKind::Number);
pub(super) const WEIGHT_DRY: ResultSpec =
    ResultSpec::new("weight_dry", "The same at 12 %", ResultKind::Number);
pub(super) const DENSITY: ResultSpec = ResultSpec::new("density", "Density", ResultKind::Number);
pub(super) const BOARDS: ResultSpec = ResultSpec::new("boards", "Boards to buy", ResultKind::Count);
pub(super) const ROWS: ResultSpec = ResultSpec::new("rows", "Boards laid", ResultKind::Count);

/// Every figure and table.
pub(super) const RESULTS: &[ResultSpec] = &[
    WIDTH, THICKNESS, SIZES, BOARD_FEET, BOARD_FEET_EACH, LINEAR_FEET, TOTAL, PER_PIECE, PER_FOOT,
    PER_BOARD_FOOT, WEIGHT_EACH, WEIGHT_ALL, WEIGHT_DRY, DENSITY, BOARDS, ROWS,
];
