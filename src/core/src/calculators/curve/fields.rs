//! What the curve asks, and what it answers with.

use crate::calculators::{ResultKind, ResultSpec};
use crate::sheet::{Column, Choice, Field, Kind, Start};

// The starts are those of our invented potting bench: the arched rail at its front, the rounded
// ends of its top, a paint can and its two curved brackets.

pub(super) const MODE: Field = Field::new("mode", "What to draw", "",
    Kind::Choice(&[ARC, RIM, ROUND_CORNER, END, S_CURVE]), Start::Question(ARC.id));
pub(super) const ARC: Choice = Choice::new("arc", "Arc");
pub(super) const RIM: Choice = Choice::new("rim", "Round thing");
pub(super) const ROUND_CORNER: Choice = Choice::new("corner", "Corner");
pub(super) const END: Choice = Choice::new("end", "Round end");
pub(super) const S_CURVE: Choice = Choice::new("s_curve", "S-curve");

pub(super) const CHORD: Field = Field::new("chord", "Width of the arc",
    "straight across, end to end",
    Kind::ABOVE_ZERO, Start::Inches("36")).only_for(MODE.id, &[ARC.id]);
pub(super) const RISE: Field = Field::new("rise", "Rise",
    "in the middle, from that straight line to the curve",
    Kind::ABOVE_ZERO, Start::Inches("2")).only_for(MODE.id, &[ARC.id]);
pub(super) const SHAPE: Field = Field::new("shape", "Edge of the board", "",
    Kind::Choice(&[HOLLOW, CROWN]), Start::Text(HOLLOW.id)).only_for(MODE.id, &[ARC.id]);
pub(super) const HOLLOW: Choice = Choice::new("hollow", "Hollow, an arch");
pub(super) const CROWN: Choice = Choice::new("crown", "Crowned");

pub(super) const MEASURED: Field = Field::new("measured", "Measured", "",
    Kind::Choice(&[ROUND_THE_RIM, STRAIGHTEDGE]), Start::Text(STRAIGHTEDGE.id))
    .only_for(MODE.id, &[RIM.id]);
pub(super) const ROUND_THE_RIM: Choice = Choice::new("around", "Round the rim");
pub(super) const STRAIGHTEDGE: Choice = Choice::new("straightedge", "With a straightedge");

pub(super) const AROUND: Field = Field::new("around", "Once round",
    "along the edge that the pencil will follow",
    Kind::ABOVE_ZERO, Start::Inches("37 3/4")).only_for(MEASURED.id, &[ROUND_THE_RIM.id]);
pub(super) const SHORT_CHORD: Field = Field::new("short_chord", "Straightedge",
    "between the two places where it touches",
    Kind::ABOVE_ZERO, Start::Inches("6")).only_for(MEASURED.id, &[STRAIGHTEDGE.id]);
pub(super) const SHORT_RISE: Field = Field::new("short_rise", "Rise under its middle",
    "from the straightedge to the rim",
    Kind::ABOVE_ZERO, Start::Inches("13/16")).only_for(MEASURED.id, &[STRAIGHTEDGE.id]);
pub(super) const RADIUS: Field = Field::new("radius", "Radius", "",
    Kind::ABOVE_ZERO, Start::Inches("2")).only_for(MODE.id, &[ROUND_CORNER.id]);
pub(super) const CORNER: Field = Field::new("corner", "Angle of the corner",
    "of the wood, 90 when square",
    Kind::Number { least: 10, most: 170, unit: "°" }, Start::Text("90"))
    .only_for(MODE.id, &[ROUND_CORNER.id]);
pub(super) const CORNERS: Field = Field::new("corners", "Round", "",
    Kind::Choice(&[ONE, BOTH]), Start::Text(BOTH.id)).only_for(MODE.id, &[ROUND_CORNER.id]);
pub(super) const ONE: Choice = Choice::new("one", "One corner");
pub(super) const BOTH: Choice = Choice::new("both", "Both ends of the edge");

pub(super) const EDGE: Field = Field::new("edge", "Length of the edge",
    "leave empty when there is plenty",
    Kind::MAYBE_LENGTH, Start::Inches("5 1/2")).only_for(MODE.id, &[ROUND_CORNER.id]);
pub(super) const END_WIDTH: Field = Field::new("end_width", "Width of the end", "",
    Kind::ABOVE_ZERO, Start::Inches("5 1/2")).only_for(MODE.id, &[END.id]);
pub(super) const RUN: Field = Field::new("run", "Run", "along the board, end to end of the curve",
    Kind::ABOVE_ZERO, Start::Inches("9")).only_for(MODE.id, &[S_CURVE.id]);
pub(super) const OFFSET: Field = Field::new("offset", "Offset",
    "across the board, end to end of the curve",
    Kind::ABOVE_ZERO, Start::Inches("3")).only_for(MODE.id, &[S_CURVE.id]);
pub(super) const STEP: Field = Field::new("step", "A mark every", "",
    Kind::ABOVE_ZERO, Start::Inches("3")).only_for(MODE.id, &[ARC.id, S_CURVE.id]);
pub(super) const BOARD: Field = Field::new("board", "Board width", "empty when it does not matter",
    Kind::MAYBE_LENGTH, Start::Text("")).only_for(MODE.id, &[ARC.id, S_CURVE.id]);
pub(super) const KEEP: Field = Field::new("keep", "Wood to leave", "at the narrowest place",
    Kind::ZERO_UP, Start::Inches("2")).only_for(MODE.id, &[ARC.id, S_CURVE.id]);
pub(super) const THINGS: Field = Field::new("things", "Round things I own",
    "across each",
    Kind::Lengths, Start::Text("4 1/4 in, 5 1/2 in, 6 1/2 in, 8 in, 10 1/4 in, 11 3/4 in, 23 in"))
    .only_for(MODE.id, &[ARC.id, ROUND_CORNER.id, END.id, S_CURVE.id]);

/// In the order asked.
pub(super) const FIELDS: &[Field] = &[
    MODE, CHORD, RISE, SHAPE, MEASURED, AROUND, SHORT_CHORD, SHORT_RISE, RADIUS, CORNER, CORNERS,
    EDGE, END_WIDTH, RUN, OFFSET, STEP, BOARD, KEEP, THINGS,
];

pub(super) const RADIUS_FOUND: ResultSpec = ResultSpec::new("radius", "Radius", ResultKind::Length);
pub(super) const TOUCHES: ResultSpec =
    ResultSpec::new("touches", "Round meets the edge", ResultKind::Length);
pub(super) const DIAMETER: ResultSpec = ResultSpec::new("diameter", "Diameter", ResultKind::Length);
pub(super) const CENTRE: ResultSpec = ResultSpec::new("centre", "Center", ResultKind::Length);
pub(super) const CORNER_TO_CENTRE: ResultSpec =
    ResultSpec::new("corner_to_centre", "Corner to center", ResultKind::Length);
pub(super) const LOST: ResultSpec = ResultSpec::new("lost", "Off the corner", ResultKind::Length);
pub(super) const STRAIGHT: ResultSpec =
    ResultSpec::new("straight", "Straight edge left", ResultKind::Length);
pub(super) const MEET_ALONG: ResultSpec =
    ResultSpec::new("meet_along", "Arcs meet, along", ResultKind::Length);
pub(super) const MEET_ACROSS: ResultSpec =
    ResultSpec::new("meet_across", "Arcs meet, across", ResultKind::Length);
pub(super) const NARROWEST: ResultSpec =
    ResultSpec::new("narrowest", "Left at the narrowest", ResultKind::Length);
pub(super) const CURVE_LENGTH: ResultSpec =
    ResultSpec::new("curve_length", "Along the curve", ResultKind::Length);
pub(super) const ONCE_ROUND: ResultSpec =
    ResultSpec::new("around", "Once round", ResultKind::Length);
pub(super) const LEAST: ResultSpec =
    ResultSpec::new("least", "Radius, at least", ResultKind::Length);
pub(super) const MOST: ResultSpec = ResultSpec::new("most", "Radius, at most", ResultKind::Length);
pub(super) const STICKS: ResultSpec =
    ResultSpec::new("sticks", "Between two sticks", ResultKind::Number);
pub(super) const STEEPEST: ResultSpec =
    ResultSpec::new("steepest", "Steepest place", ResultKind::Number);
pub(super) const WASTE: ResultSpec = ResultSpec::new("waste", "Cut away", ResultKind::Number);
pub(super) const THING: ResultSpec =
    ResultSpec::new("thing", "Nearest round thing", ResultKind::Length);
pub(super) const THING_CENTRE: ResultSpec =
    ResultSpec::new("thing_centre", "Its center", ResultKind::Length);
pub(super) const THING_OFF: ResultSpec =
    ResultSpec::new("thing_off", "Its radius", ResultKind::Words);
pub(super) const MARKS: ResultSpec =
    ResultSpec::new("marks", "Marks for a batten", ResultKind::Table);
pub(super) const FROM_THE_START_COLUMN: Column = Column::new("from_the_start", "From the start");
pub(super) const OFF_THE_STRAIGHT_LINE_COLUMN: Column = Column::new("off_the_straight_line", "Off the straight line");
pub(super) const FROM_THE_MIDDLE_COLUMN: Column = Column::new("from_the_middle", "From the middle");
pub(super) const UP_FROM_THE_CHORD_COLUMN: Column = Column::new("up_from_the_chord", "Up from the chord");
pub(super) const ROUND_THINGS: ResultSpec =
    ResultSpec::new("things", "Round things", ResultKind::Table);
pub(super) const ACROSS_COLUMN: Column = Column::new("across", "Across");
pub(super) const ITS_RADIUS_COLUMN: Column = Column::new("its_radius", "Its radius");
pub(super) const MEETS_EDGE_AT_COLUMN: Column = Column::new("meets_edge_at", "Meets edge at");
pub(super) const OFFSET_IT_GIVES_COLUMN: Column = Column::new("offset_it_gives", "Offset it gives");
pub(super) const RISE_IT_GIVES_COLUMN: Column = Column::new("rise_it_gives", "Rise it gives");

/// Every figure and table.
pub(super) const RESULTS: &[ResultSpec] = &[
    RADIUS_FOUND, TOUCHES, DIAMETER, CENTRE, CORNER_TO_CENTRE, LOST, STRAIGHT, MEET_ALONG,
    MEET_ACROSS, NARROWEST, CURVE_LENGTH, ONCE_ROUND, LEAST, MOST, STICKS, STEEPEST, WASTE, THING,
    THING_CENTRE, THING_OFF, MARKS, ROUND_THINGS,
];
