//! What the moisture calculator asks, and what it answers with.

use super::woods::{SOFTWOOD, SPECIES_IDS, WOODS};
use crate::calculators::{ResultKind, ResultSpec};
use crate::sheet::{Choice, Column, Field, Kind, Start};
use crate::tables::air::PLACES;

const PERCENT: Kind = Kind::Number { least: 0, most: 300, unit: "%" };

/// Questions about wood, not about air.
const ABOUT_WOOD: &[&str] = &[ONE_BOARD.id, GAPS.id, OVER_THE_YEAR.id];

const TODAY_AND_LATER: &[&str] = &[ONE_BOARD.id, GAPS.id];

/// Given air, and the places.
const AIRS: &[Choice] = &{
    let mut choices = [GIVEN_AIR; PLACES.len() + 1];
    let mut i = 0;
    while i < PLACES.len() {
        choices[i + 1] = Choice::new(PLACES[i].id, PLACES[i].name);
        i += 1;
    }
    choices
};

// The starts are of our invented potting bench: its top of wet treated 2×6 boards.

pub(super) const QUESTION: Field = Field::new(
    "ask",
    "What",
    "",
    Kind::Choice(&[ONE_BOARD, GAPS, OVER_THE_YEAR, IN_AIR]),
    Start::Question(ONE_BOARD.id),
);
const ONE_BOARD: Choice = Choice::new("board", "One board");
pub(super) const GAPS: Choice = Choice::new("gap", "Gaps of a top");
pub(super) const OVER_THE_YEAR: Choice = Choice::new("swing", "Over the year");
pub(super) const IN_AIR: Choice = Choice::new("air", "Wood in this air");

pub(super) const WIDTH: Field = Field::new(
    "width",
    "Width today",
    "as measured; over the year: when driest",
    Kind::ABOVE_ZERO,
    Start::Inches("5 5/8"),
)
.only_for(QUESTION.id, ABOUT_WOOD);
pub(super) const THICKNESS: Field = Field::new(
    "thickness",
    "Thickness today",
    "as measured",
    Kind::ABOVE_ZERO,
    Start::Inches("1 9/16"),
)
.only_for(QUESTION.id, &[ONE_BOARD.id]);
pub(super) const BOARDS: Field =
    Field::new("boards", "Boards", "", Kind::Count { least: 2, most: 500 }, Start::Text("7"))
        .only_for(QUESTION.id, &[GAPS.id]);

pub(super) const KNOWN: Field = Field::new(
    "known",
    "Find",
    "",
    Kind::Choice(&[FIND_LATER, FIND_TODAY]),
    Start::Question(FIND_LATER.id),
)
.only_for(QUESTION.id, &[GAPS.id]);
pub(super) const FIND_LATER: Choice = Choice::new("later", "Gap later");
pub(super) const FIND_TODAY: Choice = Choice::new("today", "Gap to leave today");

pub(super) const GAP_TODAY: Field =
    Field::new("gap_now", "Gap today", "0 when laid tight", Kind::ZERO_UP, Start::Inches("0"))
        .only_for(KNOWN.id, &[FIND_LATER.id]);
pub(super) const GAP_WANTED: Field =
    Field::new("gap_later", "Gap wanted later", "", Kind::ZERO_UP, Start::Inches("1/4"))
        .only_for(KNOWN.id, &[FIND_TODAY.id]);
/// The percent, or a word for it.
const WORDS: Kind = Kind::Choice(&[BY_PERCENT, WET, YARD_DRY, IN_RAIN, UNDER_ROOF, INDOORS]);
pub(super) const BY_PERCENT: Choice = Choice::new("percent", "A percent");
pub(super) const WET: Choice = Choice::new("wet", "Wet, fresh from the treater: 28 %");
pub(super) const YARD_DRY: Choice = Choice::new("yard", "Kiln-dried, from the yard: 19 %");
pub(super) const IN_RAIN: Choice = Choice::new("rain", "Out in the rain: 15 %");
pub(super) const UNDER_ROOF: Choice = Choice::new("roof", "Under a roof: 12 %");
pub(super) const INDOORS: Choice = Choice::new("indoors", "Indoors in winter: 5 %");

pub(super) const TODAY_IS: Field =
    Field::new("now_is", "The wood is", "", WORDS, Start::Text(BY_PERCENT.id))
        .only_for(QUESTION.id, TODAY_AND_LATER);
pub(super) const LATER_IS: Field =
    Field::new("later_is", "It will be", "", WORDS, Start::Text(BY_PERCENT.id))
        .only_for(QUESTION.id, TODAY_AND_LATER);
pub(super) const DRIEST_IS: Field =
    Field::new("driest_is", "At its driest", "", WORDS, Start::Text(BY_PERCENT.id))
        .only_for(QUESTION.id, &[OVER_THE_YEAR.id]);
pub(super) const WETTEST_IS: Field =
    Field::new("wettest_is", "At its wettest", "", WORDS, Start::Text(BY_PERCENT.id))
        .only_for(QUESTION.id, &[OVER_THE_YEAR.id]);

pub(super) const MOISTURE_TODAY: Field = Field::new(
    "now",
    "Moisture today",
    "wet 28, yard-dry 19, shop-dry 12",
    PERCENT,
    Start::Text("28"),
)
.only_for(TODAY_IS.id, &[BY_PERCENT.id]);
pub(super) const MOISTURE_LATER: Field = Field::new(
    "later",
    "Moisture later",
    "12 under cover, 15 outdoors",
    PERCENT,
    Start::Text("15"),
)
.only_for(LATER_IS.id, &[BY_PERCENT.id]);
pub(super) const DRIEST: Field =
    Field::new("driest", "Driest of the year", "", PERCENT, Start::Text("12"))
        .only_for(DRIEST_IS.id, &[BY_PERCENT.id]);
pub(super) const WETTEST: Field =
    Field::new("wettest", "Wettest of the year", "", PERCENT, Start::Text("19"))
        .only_for(WETTEST_IS.id, &[BY_PERCENT.id]);
pub(super) const WOOD: Field =
    Field::new("wood", "Wood", "", Kind::Choice(WOODS), Start::Text(SOFTWOOD.id))
        .only_for(QUESTION.id, ABOUT_WOOD);

pub(super) const GRAIN: Field = Field::new(
    "grain",
    "Rings",
    "seen on the end",
    Kind::Choice(&[UNSURE, FLAT, QUARTER]),
    Start::Text(UNSURE.id),
)
.only_for(WOOD.id, SPECIES_IDS);
const UNSURE: Choice = Choice::new("unsure", "Unsure");
pub(super) const FLAT: Choice = Choice::new("flat", "Along the face (flat-sawn)");
pub(super) const QUARTER: Choice = Choice::new("quarter", "Across it (quarter-sawn)");

pub(super) const AIR: Field =
    Field::new("air", "Air", "", Kind::Choice(AIRS), Start::Text(GIVEN_AIR.id))
        .only_for(QUESTION.id, &[IN_AIR.id]);
const GIVEN_AIR: Choice = Choice::new(IN_AIR.id, "Warmth and humidity");

pub(super) const DEGREES: Field = Field::new(
    "degrees",
    "Degrees",
    "",
    Kind::Choice(&[IN_FAHRENHEIT, IN_CELSIUS]),
    Start::Question(IN_FAHRENHEIT.id),
)
.only_for(AIR.id, &[GIVEN_AIR.id]);
const IN_FAHRENHEIT: Choice = Choice::new("fahrenheit", "°F");
pub(super) const IN_CELSIUS: Choice = Choice::new("celsius", "°C");

pub(super) const FAHRENHEIT: Field = Field::new(
    "fahrenheit",
    "Warmth",
    "from 30 °F: the formula is not for colder air",
    Kind::Number { least: 30, most: 212, unit: "°F" },
    Start::Text("60"),
)
.only_for(DEGREES.id, &[IN_FAHRENHEIT.id]);
pub(super) const CELSIUS: Field = Field::new(
    "celsius",
    "Warmth",
    "from -1 °C: the formula is not for colder air",
    Kind::Number { least: -1, most: 100, unit: "°C" },
    Start::Text("15"),
)
.only_for(DEGREES.id, &[IN_CELSIUS.id]);
pub(super) const HUMIDITY: Field = Field::new(
    "humidity",
    "Humidity",
    "relative, on average",
    Kind::Number { least: 0, most: 95, unit: "%" },
    Start::Text("65"),
)
.only_for(AIR.id, &[GIVEN_AIR.id]);

/// In the order asked.
pub(super) const FIELDS: &[Field] = &[
    QUESTION,
    WIDTH,
    THICKNESS,
    BOARDS,
    KNOWN,
    GAP_TODAY,
    GAP_WANTED,
    TODAY_IS,
    MOISTURE_TODAY,
    LATER_IS,
    MOISTURE_LATER,
    DRIEST_IS,
    DRIEST,
    WETTEST_IS,
    WETTEST,
    WOOD,
    GRAIN,
    AIR,
    DEGREES,
    FAHRENHEIT,
    CELSIUS,
    HUMIDITY,
];

pub(super) const WIDTH_LATER: ResultSpec =
    ResultSpec::new("width_later", "Width later", ResultKind::Length);
pub(super) const THICKNESS_LATER: ResultSpec =
    ResultSpec::new("thickness_later", "Thickness later", ResultKind::Length);
pub(super) const CHANGE: ResultSpec =
    ResultSpec::new("change", "Change of width", ResultKind::Length);
pub(super) const LEAST: ResultSpec =
    ResultSpec::new("least", "If it moves least", ResultKind::Length);
pub(super) const MOST: ResultSpec = ResultSpec::new("most", "If it moves most", ResultKind::Length);
pub(super) const GAP_TO_LEAVE: ResultSpec =
    ResultSpec::new("gap_now", "Gap to leave today", ResultKind::Length);
pub(super) const GAP_LATER: ResultSpec =
    ResultSpec::new("gap_later", "Gap later", ResultKind::Length);
pub(super) const TOP_NOW: ResultSpec =
    ResultSpec::new("top_now", "Whole width today", ResultKind::Length);
pub(super) const TOP_LATER: ResultSpec =
    ResultSpec::new("top_later", "Whole width later", ResultKind::Length);
pub(super) const PANEL_LATER: ResultSpec =
    ResultSpec::new("panel_later", "As one panel, later", ResultKind::Length);
pub(super) const SWING: ResultSpec = ResultSpec::new("swing", "Swing", ResultKind::Length);
pub(super) const BY_GREEN_SIZE: ResultSpec =
    ResultSpec::new("by_green_size", "By the wet size", ResultKind::Length);
pub(super) const NEVER_CLOSES: ResultSpec =
    ResultSpec::new("never_closes", "Gap that never closes", ResultKind::Length);
pub(super) const DRIEST_MOISTURE: ResultSpec =
    ResultSpec::new("driest", "Moisture, driest", ResultKind::Number);
pub(super) const WETTEST_MOISTURE: ResultSpec =
    ResultSpec::new("wettest", "Moisture, wettest", ResultKind::Number);
pub(super) const NEWER_FORMULA: ResultSpec =
    ResultSpec::new("newer", "By the newer formula", ResultKind::Number);
pub(super) const SIZES: ResultSpec = ResultSpec::new("sizes", "Today and later", ResultKind::Table);
pub(super) const SIDE_COLUMN: Column = Column::new("side", "Side");
pub(super) const TODAY_COLUMN: Column = Column::new("today", "Today");
pub(super) const LATER_COLUMN: Column = Column::new("later", "Later");

/// Every figure and table.
pub(super) const RESULTS: &[ResultSpec] = &[
    WIDTH_LATER,
    THICKNESS_LATER,
    CHANGE,
    LEAST,
    MOST,
    GAP_TO_LEAVE,
    GAP_LATER,
    TOP_NOW,
    TOP_LATER,
    PANEL_LATER,
    SWING,
    BY_GREEN_SIZE,
    NEVER_CLOSES,
    DRIEST_MOISTURE,
    WETTEST_MOISTURE,
    NEWER_FORMULA,
    SIZES,
];
