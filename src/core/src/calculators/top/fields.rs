//! What the top asks, and what it answers with.

use crate::calculators::{ResultKind, ResultSpec};
use crate::sheet::{Column, Choice, Field, Kind, Refusal, Start};

// The sizes are those of our invented potting bench for a school garden.

pub(crate) const QUESTION: Field = Field::new("question", "Question", "",
    Kind::Choice(&[PLANKS_AND_GAPS, OVERHANG, TODAY_AND_LATER, SLOT, TIP]),
    Start::Question(PLANKS_AND_GAPS.id));
pub(crate) const PLANKS_AND_GAPS: Choice = Choice::new("planks", "Planks and gaps");
pub(crate) const OVERHANG: Choice = Choice::new("overhang", "Overhang");
pub(crate) const TODAY_AND_LATER: Choice = Choice::new("season", "Today and later");
pub(super) const SLOT: Choice = Choice::new("slot", "Holes to slot");
pub(super) const TIP: Choice = Choice::new("tip", "Does it tip");

pub(crate) const FIND: Field = Field::new("find", "Find", "",
    Kind::Choice(&[GAP_WANTED, RIP_ALL, RIP_OUTER, TOP]), Start::Question(GAP_WANTED.id))
    .only_for(QUESTION.id, &[PLANKS_AND_GAPS.id]);
pub(super) const GAP_WANTED: Choice = Choice::new("gap", "Gap");
pub(crate) const RIP_ALL: Choice = Choice::new("rip_all", "Rip all alike");
pub(crate) const RIP_OUTER: Choice = Choice::new("rip_outer", "Rip outer two");
pub(super) const TOP: Choice = Choice::new("top", "Top width");

pub(crate) const PLANKS: Field = Field::new("planks", "Plank widths",
    "as measured, from the left",
    Kind::Lengths, Start::Text("5 @ 5 1/2 in"))
    .only_for(QUESTION.id, &[PLANKS_AND_GAPS.id, TODAY_AND_LATER.id]);
pub(super) const TOP_WIDTH: Field = Field::new("top_width", "Top width", "across the planks",
    Kind::ABOVE_ZERO, Start::Inches("28 1/2"))
    .only_for(FIND.id, &[GAP_WANTED.id, RIP_ALL.id, RIP_OUTER.id]);
pub(super) const GAP: Field = Field::new("gap", "Gap", "between two planks",
    Kind::ZERO_UP, Start::Inches("1/4")).only_for(FIND.id, &[RIP_ALL.id, RIP_OUTER.id, TOP.id]);
pub(crate) const OVERHANG_FIND: Field = Field::new("overhang_find", "Find", "",
    Kind::Choice(&[OVERHANG, TOP_SIZE]), Start::Question(OVERHANG.id))
    .only_for(QUESTION.id, &[OVERHANG.id]);
pub(crate) const TOP_SIZE: Choice = Choice::new(TOP.id, "Top size");

pub(super) const BASE_LENGTH: Field = Field::new("base_length", "Base length",
    "as built, outside to outside",
    Kind::ABOVE_ZERO, Start::Inches("46")).only_for(QUESTION.id, &[OVERHANG.id]);
pub(super) const BASE_WIDTH: Field = Field::new("base_width", "Base width",
    "as built, outside to outside",
    Kind::ABOVE_ZERO, Start::Inches("24")).only_for(QUESTION.id, &[OVERHANG.id]);
pub(crate) const TOP_LENGTH: Field = Field::new("top_length", "Top length", "end to end",
    Kind::ABOVE_ZERO, Start::Inches("52")).only_for(OVERHANG_FIND.id, &[OVERHANG.id]);
pub(crate) const TOP_ACROSS: Field = Field::new("top_across", "Top width", "across the planks",
    Kind::ABOVE_ZERO, Start::Inches("28 1/2")).only_for(OVERHANG_FIND.id, &[OVERHANG.id]);
pub(super) const OVERHANG_END: Field = Field::new("overhang_end", "Overhang at ends", "each end",
    Kind::ZERO_UP, Start::Inches("3")).only_for(OVERHANG_FIND.id, &[TOP_SIZE.id]);
pub(super) const OVERHANG_SIDE: Field = Field::new("overhang_side", "Overhang at sides",
    "front and back",
    Kind::ZERO_UP, Start::Inches("2 1/4")).only_for(OVERHANG_FIND.id, &[TOP_SIZE.id]);
pub(super) const SEASON_FIND: Field = Field::new("season_find", "Find", "",
    Kind::Choice(&[LATER, TODAY]), Start::Question(LATER.id))
    .only_for(QUESTION.id, &[TODAY_AND_LATER.id]);
pub(super) const LATER: Choice = Choice::new("later", "Gaps later");
pub(super) const TODAY: Choice = Choice::new("today", "Gap to leave today");

pub(super) const GAP_NOW: Field = Field::new("gap_now", "Gap today", "0 when laid tight",
    Kind::ZERO_UP, Start::Text("0")).only_for(SEASON_FIND.id, &[LATER.id]);
pub(super) const GAP_LATER: Field = Field::new("gap_later", "Smallest gap later", "",
    Kind::ZERO_UP, Start::Inches("1/4")).only_for(SEASON_FIND.id, &[TODAY.id]);
pub(super) const LOOSE_SCREWS: Field = Field::new("loose_screws", "Loose screws",
    "each from the fixed one, across the grain",
    Kind::Lengths, Start::Text("3 1/2 in")).only_for(QUESTION.id, &[SLOT.id]);
pub(super) const HOLE: Field = Field::new("hole", "Hole", "that the screw slips through",
    Kind::ABOVE_ZERO, Start::Inches("13/64")).only_for(QUESTION.id, &[SLOT.id]);
pub(super) const SHRINKS_BY: Field = Field::new("shrinks_by", "Wood", "",
    Kind::Choice(&[SOFTWOOD, OWN]), Start::Text(SOFTWOOD.id))
    .only_for(QUESTION.id, &[TODAY_AND_LATER.id, SLOT.id]);
pub(super) const SOFTWOOD: Choice = Choice::new("softwood", "Ordinary softwood");
pub(super) const OWN: Choice = Choice::new("own", "My own figure");

pub(super) const NOW: Field = Field::new("now", "Boards today", "",
    Kind::Choice(&[WET, MEASURED]), Start::Text(WET.id)).only_for(SHRINKS_BY.id, &[SOFTWOOD.id]);
pub(super) const WET: Choice = Choice::new("wet", "Wet");
pub(super) const MEASURED: Choice = Choice::new("measured", "Drier, in percent");

pub(super) const MOISTURE_NOW: Field = Field::new("moisture_now", "Moisture today", "8 to 19 %",
    Kind::Number { least: 0, most: 300, unit: "%" }, Start::Text("12"))
    .only_for(NOW.id, &[MEASURED.id]);
pub(super) const MOISTURE_LATER: Field = Field::new("moisture_later", "Moisture later",
    "outdoors about 12 to 15 %",
    Kind::Number { least: 0, most: 300, unit: "%" }, Start::Text("12"))
    .only_for(SHRINKS_BY.id, &[SOFTWOOD.id]);
pub(super) const PERCENT: Field = Field::new("percent", "Shrinks across",
    "of its width, as for one species; below 0 when it swells",
    Kind::Number { least: -15, most: 15, unit: "%" }, Start::Text("2.5"))
    .only_for(SHRINKS_BY.id, &[OWN.id]);
pub(super) const BEYOND_LEGS: Field = Field::new("beyond_legs", "Load beyond feet",
    "outside of feet to the load",
    Kind::ZERO_UP, Start::Inches("4")).only_for(QUESTION.id, &[TIP.id]);
pub(super) const LEG_SPACING: Field = Field::new("leg_spacing", "Feet apart", "outside to outside",
    Kind::ABOVE_ZERO, Start::Inches("46")).only_for(QUESTION.id, &[TIP.id]);
pub(super) const WEIGHT: Field = Field::new("weight", "Weight of the piece", "",
    Kind::Number { least: 0, most: 5000, unit: "lb" }, Start::Text("70"))
    .only_for(QUESTION.id, &[TIP.id]);
pub(super) const LOAD: Field = Field::new("load", "Load", "a person leaning or sitting",
    Kind::Number { least: 0, most: 5000, unit: "lb" }, Start::Text("250"))
    .only_for(QUESTION.id, &[TIP.id]);

/// In the order asked.
pub(super) const FIELDS: &[Field] = &[
    QUESTION, FIND, PLANKS, TOP_WIDTH, GAP, OVERHANG_FIND, BASE_LENGTH, BASE_WIDTH, TOP_LENGTH,
    TOP_ACROSS, OVERHANG_END, OVERHANG_SIDE, SEASON_FIND, GAP_NOW, GAP_LATER, LOOSE_SCREWS, HOLE,
    SHRINKS_BY, NOW, MOISTURE_NOW, MOISTURE_LATER, PERCENT, BEYOND_LEGS, LEG_SPACING, WEIGHT, LOAD,
];

pub(super) const PLANK_GAP: ResultSpec = ResultSpec::new("plank_gap", "Gap", ResultKind::Length);
pub(crate) const PLANK_WIDTH: ResultSpec =
    ResultSpec::new("plank_width", "Plank width", ResultKind::Length);
pub(crate) const OUTER_WIDTH: ResultSpec =
    ResultSpec::new("outer_width", "Outer plank width", ResultKind::Length);
pub(super) const TOP_OVERALL: ResultSpec =
    ResultSpec::new("top_overall", "Top width", ResultKind::Length);
pub(super) const LEFT_EDGES: ResultSpec =
    ResultSpec::new("left_edges", "Left edges", ResultKind::Lengths);
pub(super) const GAPS_TOGETHER: ResultSpec =
    ResultSpec::new("gaps_together", "All spacers together", ResultKind::Length);
pub(super) const SPACERS: ResultSpec =
    ResultSpec::new("spacers", "Spacers on a mark", ResultKind::Table);
pub(super) const SPACER_COLUMN: Column = Column::new("spacer", "Spacer");
pub(super) const TOP_COMES_TO_COLUMN: Column = Column::new("top_comes_to", "Top comes to");
pub(super) const END_OVERHANG: ResultSpec =
    ResultSpec::new("end_overhang", "Overhang at ends", ResultKind::Length);
pub(super) const SIDE_OVERHANG: ResultSpec =
    ResultSpec::new("side_overhang", "Overhang at sides", ResultKind::Length);
pub(crate) const TOP_SIZE_LENGTH: ResultSpec =
    ResultSpec::new("top_size_length", "Top length", ResultKind::Length);
pub(crate) const TOP_SIZE_WIDTH: ResultSpec =
    ResultSpec::new("top_size_width", "Top width", ResultKind::Length);
pub(super) const GAP_TODAY: ResultSpec =
    ResultSpec::new("gap_today", "Gap today", ResultKind::Length);
pub(super) const GAP_SMALLEST: ResultSpec =
    ResultSpec::new("gap_smallest", "Smallest gap later", ResultKind::Length);
pub(super) const GAP_WIDEST: ResultSpec =
    ResultSpec::new("gap_widest", "Widest gap later", ResultKind::Length);
pub(super) const TOP_TODAY: ResultSpec =
    ResultSpec::new("top_today", "Top today", ResultKind::Length);
pub(super) const TOP_LATER: ResultSpec =
    ResultSpec::new("top_later", "Top later", ResultKind::Length);
pub(super) const MOVEMENT: ResultSpec =
    ResultSpec::new("movement", "Movement across", ResultKind::Number);
pub(super) const SEASON: ResultSpec =
    ResultSpec::new("season", "Planks today and later", ResultKind::Table);
pub(super) const TODAY_COLUMN: Column = Column::new("today", "Today");
pub(super) const LATER_COLUMN: Column = Column::new("later", "Later");
pub(super) const GAP_AFTER_IT_COLUMN: Column = Column::new("gap_after_it", "Gap after it");
pub(super) const SLOT_LONG: ResultSpec =
    ResultSpec::new("slot_long", "Farthest slot", ResultKind::Length);
pub(super) const LOOSE_BY: ResultSpec = ResultSpec::new("loose_by", "Loose by", ResultKind::Length);
pub(super) const SLOTS: ResultSpec = ResultSpec::new("slots", "Slots", ResultKind::Table);
pub(super) const FROM_FIXED_SCREW_COLUMN: Column = Column::new("from_fixed_screw", "From fixed screw");
pub(super) const MOVES_COLUMN: Column = Column::new("moves", "Moves");
pub(super) const SLOT_END_TO_END_COLUMN: Column = Column::new("slot_end_to_end", "Slot, end to end");
pub(super) const MOST_LOAD: ResultSpec =
    ResultSpec::new("most_load", "Largest load", ResultKind::Number);
pub(super) const MOST_BEYOND: ResultSpec =
    ResultSpec::new("most_beyond", "Farthest beyond feet", ResultKind::Length);
pub(super) const TIP_VERDICT: ResultSpec =
    ResultSpec::new("tip_verdict", "Tips", ResultKind::Words);

/// Every figure and table.
pub(super) const RESULTS: &[ResultSpec] = &[
    PLANK_GAP, PLANK_WIDTH, OUTER_WIDTH, TOP_OVERALL, LEFT_EDGES, GAPS_TOGETHER, SPACERS,
    END_OVERHANG, SIDE_OVERHANG, TOP_SIZE_LENGTH, TOP_SIZE_WIDTH, GAP_TODAY, GAP_SMALLEST,
    GAP_WIDEST, TOP_TODAY, TOP_LATER, MOVEMENT, SEASON, SLOT_LONG, LOOSE_BY, SLOTS, MOST_LOAD, MOST_BEYOND,
    TIP_VERDICT,
];

/// What is said of a number that is out of range.
pub(super) fn too_large() -> Refusal {
    Refusal::out_of_range(&QUESTION)
}
