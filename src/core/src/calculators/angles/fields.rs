//! What the angles ask, and what they answer with.

use crate::calculators::{ResultKind, ResultSpec};
use crate::sheet::{Choice, Field, Kind, Start};

// The starts are those of our invented potting bench: its stool with splayed legs, and a tapered
// planter beside it.

pub(super) const MODE: Field = Field::new("mode", "What leans", "",
    Kind::Choice(&[LEG, TWO_WAYS, BOX]), Start::Question(LEG.id));
pub(super) const LEG: Choice = Choice::new("leg", "Leg, one way");
pub(super) const TWO_WAYS: Choice = Choice::new("two_ways", "Leg, two ways");
pub(super) const BOX: Choice = Choice::new("sides", "Sides of a box");

pub(super) const HEIGHT: Field = Field::new("height", "Height",
    "straight up, floor to the underside of the top",
    Kind::ABOVE_ZERO, Start::Inches("17")).only_for(MODE.id, &[LEG.id, TWO_WAYS.id]);
pub(super) const KNOWN: Field = Field::new("known", "I know", "",
    Kind::Choice(&[ANGLE_KNOWN, FOOT_OUT_KNOWN]), Start::Question(ANGLE_KNOWN.id))
    .only_for(MODE.id, &[LEG.id]);
pub(super) const ANGLE_KNOWN: Choice = Choice::new("angle", "The angle");
pub(super) const FOOT_OUT_KNOWN: Choice = Choice::new("foot_out", "How far out the foot is");

pub(super) const ANGLE: Field = Field::new("angle", "Lean", "from upright",
    Kind::Number { least: 0, most: 60, unit: "°" }, Start::Text("10"))
    .only_for(KNOWN.id, &[ANGLE_KNOWN.id]);
pub(super) const FOOT_OUT: Field = Field::new("foot_out", "Foot out",
    "beyond the top, one edge of the leg to the same edge",
    Kind::ZERO_UP, Start::Inches("3")).only_for(KNOWN.id, &[FOOT_OUT_KNOWN.id]);
pub(super) const WIDTH: Field = Field::new("width", "Width of the leg",
    "in the direction in which it leans",
    Kind::ABOVE_ZERO, Start::Inches("3 1/2")).only_for(MODE.id, &[LEG.id]);
pub(super) const RAKE: Field = Field::new("rake", "Lean front to back",
    "from upright, seen from the side",
    Kind::Number { least: 0, most: 60, unit: "°" }, Start::Text("8"))
    .only_for(MODE.id, &[TWO_WAYS.id]);
pub(super) const SPLAY: Field = Field::new("splay", "Lean side to side",
    "from upright, seen from the front",
    Kind::Number { least: 0, most: 60, unit: "°" }, Start::Text("12"))
    .only_for(MODE.id, &[TWO_WAYS.id]);
pub(super) const THICKNESS: Field = Field::new("thickness", "Leg",
    "across when round, one side when square",
    Kind::ABOVE_ZERO, Start::Inches("1 1/2")).only_for(MODE.id, &[TWO_WAYS.id]);
pub(super) const FACES: Field = Field::new("faces", "Shape", "",
    Kind::Choice(&[TURNED, SQUARE]), Start::Text(TURNED.id)).only_for(MODE.id, &[TWO_WAYS.id]);
pub(super) const TURNED: Choice = Choice::new("turned", "Round, or turned to the lean");
pub(super) const SQUARE: Choice = Choice::new("square", "Square, side faces to the rails");

pub(super) const APART: Field = Field::new("apart", "Tops apart, side to side",
    "outside to outside of two legs; may be empty",
    Kind::MAYBE_LENGTH, Start::Inches("14")).only_for(MODE.id, &[LEG.id, TWO_WAYS.id]);
pub(super) const APART_FRONT: Field = Field::new("apart_front", "Tops apart, front to back",
    "outside to outside of two legs; may be empty",
    Kind::MAYBE_LENGTH, Start::Inches("10")).only_for(MODE.id, &[TWO_WAYS.id]);
pub(super) const SIDES: Field = Field::new("sides", "Sides", "",
    Kind::Count { least: 3, most: 12 }, Start::Text("6")).only_for(MODE.id, &[BOX.id]);
pub(super) const LEAN: Field = Field::new("lean", "Lean",
    "from upright: 0 straight, 90 a flat frame",
    Kind::Number { least: 0, most: 90, unit: "°" }, Start::Text("10")).only_for(MODE.id, &[BOX.id]);
pub(super) const JOINT: Field = Field::new("joint", "Ends", "",
    Kind::Choice(&[MITRED, BUTT]), Start::Text(MITRED.id)).only_for(MODE.id, &[BOX.id]);
pub(super) const MITRED: Choice = Choice::new("mitred", "Mitred");
pub(super) const BUTT: Choice = Choice::new("butt", "Butted");

pub(super) const LAY: Field = Field::new("lay", "Board on the saw", "",
    Kind::Choice(&[FLAT, ON_EDGE]), Start::Text(FLAT.id)).only_for(MODE.id, &[BOX.id]);
pub(super) const FLAT: Choice = Choice::new("flat", "Flat, face down");
pub(super) const ON_EDGE: Choice = Choice::new("on_edge", "On edge");

pub(super) const ACROSS: Field = Field::new("across", "Across the wide end",
    "flat to flat outside; may be empty",
    Kind::MAYBE_LENGTH, Start::Inches("16")).only_for(JOINT.id, &[MITRED.id]);
pub(super) const BOARD: Field = Field::new("board", "Board width", "along the slope; may be empty",
    Kind::MAYBE_LENGTH, Start::Inches("7 1/4")).only_for(JOINT.id, &[MITRED.id]);

/// In the order asked.
pub(super) const FIELDS: &[Field] = &[
    MODE, HEIGHT, KNOWN, ANGLE, FOOT_OUT, WIDTH, RAKE, SPLAY, THICKNESS, FACES, APART, APART_FRONT,
    SIDES, LEAN, JOINT, LAY, ACROSS, BOARD,
];

pub(super) const BLANK: ResultSpec = ResultSpec::new("blank", "Blank", ResultKind::Length);
pub(super) const SETTING: ResultSpec =
    ResultSpec::new("setting", "Gauge and tilt", ResultKind::Words);
pub(super) const GAUGE: ResultSpec = ResultSpec::new("gauge", "Gauge", ResultKind::Number);
pub(super) const GAUGE_FROM_EDGE: ResultSpec =
    ResultSpec::new("gauge_from_edge", "Gauge, from the edge", ResultKind::Number);
pub(super) const TILT: ResultSpec = ResultSpec::new("tilt", "Blade tilt", ResultKind::Number);
pub(super) const TILT_FROM_TABLE: ResultSpec =
    ResultSpec::new("tilt_from_table", "Blade, from the table", ResultKind::Number);
pub(super) const EDGE: ResultSpec = ResultSpec::new("edge", "Along the edge", ResultKind::Length);
pub(super) const MIDDLE: ResultSpec =
    ResultSpec::new("middle", "Along the middle", ResultKind::Length);
pub(super) const FOOT_OUT_FOUND: ResultSpec =
    ResultSpec::new("foot_out", "Foot out", ResultKind::Length);
pub(super) const FOOT_FRONT: ResultSpec =
    ResultSpec::new("foot_front", "Foot out, front to back", ResultKind::Length);
pub(super) const FOOT_SIDE: ResultSpec =
    ResultSpec::new("foot_side", "Foot out, side to side", ResultKind::Length);
pub(super) const SPREAD: ResultSpec =
    ResultSpec::new("spread", "Feet apart, side to side", ResultKind::Length);
pub(super) const SPREAD_FRONT: ResultSpec =
    ResultSpec::new("spread_front", "Feet apart, front to back", ResultKind::Length);
pub(super) const END_CUT: ResultSpec =
    ResultSpec::new("end_cut", "Along the end cut", ResultKind::Length);
pub(super) const RESULTANT: ResultSpec =
    ResultSpec::new("resultant", "Lean, both together", ResultKind::Number);
pub(super) const FROM_TOP: ResultSpec =
    ResultSpec::new("from_top", "Drill, from the top", ResultKind::Number);
pub(super) const SIGHTLINE: ResultSpec =
    ResultSpec::new("sightline", "Sightline", ResultKind::Number);
pub(super) const SIGHTLINE_SIDE: ResultSpec =
    ResultSpec::new("sightline_side", "Sightline, from the side", ResultKind::Number);
pub(super) const LONGER: ResultSpec = ResultSpec::new("longer", "Longer face", ResultKind::Words);
pub(super) const WIDE_EDGE: ResultSpec =
    ResultSpec::new("wide_edge", "Wide end of a side", ResultKind::Length);
pub(super) const NARROW_EDGE: ResultSpec =
    ResultSpec::new("narrow_edge", "Narrow end of a side", ResultKind::Length);
pub(super) const OTHER_SETTING: ResultSpec =
    ResultSpec::new("other_setting", "The other way on the saw", ResultKind::Words);

/// Every figure and table.
pub(super) const RESULTS: &[ResultSpec] = &[
    BLANK, SETTING, GAUGE, GAUGE_FROM_EDGE, TILT, TILT_FROM_TABLE, EDGE, MIDDLE, FOOT_OUT_FOUND,
    FOOT_FRONT, FOOT_SIDE, SPREAD, SPREAD_FRONT, END_CUT, RESULTANT, FROM_TOP, SIGHTLINE,
    SIGHTLINE_SIDE, LONGER, WIDE_EDGE, NARROW_EDGE, OTHER_SETTING,
];
