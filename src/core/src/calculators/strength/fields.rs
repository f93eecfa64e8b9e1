//! What the strength check asks, and what it answers with.

use crate::calculators::{ResultKind, ResultSpec};
use crate::sheet::{Column, Choice, Field, Kind, Start};
use crate::tables::beams;

/// Loads with both ends resting, which can have supports in between.
pub(super) const RESTING: &[&str] = &[
    ONE_PERSON.id, PAIR.id, ROW.id, STEPS_UP.id, IN_THE_MIDDLE.id, EVENLY.id, SOIL.id,
];

/// The species offered: those whose strength is in the table.
const WOODS: &[Choice] = &[
    UNKNOWN, Choice::new("loblolly_pine", "Loblolly pine"),
    Choice::new("longleaf_pine", "Longleaf pine"), Choice::new("shortleaf_pine", "Shortleaf pine"),
    Choice::new("slash_pine", "Slash pine"), Choice::new("douglas_fir", "Douglas-fir, coast"),
    Choice::new("western_hemlock", "Western hemlock"),
    Choice::new("western_larch", "Western larch"), Choice::new("lodgepole_pine", "Lodgepole pine"),
    Choice::new("jack_pine", "Jack pine"), Choice::new("engelmann_spruce", "Engelmann spruce"),
    Choice::new("white_spruce", "White spruce"), Choice::new("red_spruce", "Red spruce"),
    Choice::new("balsam_fir", "Balsam fir"), Choice::new("subalpine_fir", "Subalpine fir"),
    Choice::new("eastern_white_pine", "Eastern white pine"),
    Choice::new("ponderosa_pine", "Ponderosa pine"),
    Choice::new("western_redcedar", "Western redcedar"),
    Choice::new("northern_white_cedar", "Northern white cedar"),
    Choice::new("atlantic_white_cedar", "Atlantic white cedar"),
    Choice::new("eastern_redcedar", "Eastern redcedar"),
    Choice::new("yellow_cedar", "Yellow cedar"), Choice::new("redwood_old", "Redwood, old-growth"),
    Choice::new("redwood_young", "Redwood, young-growth"),
    Choice::new("baldcypress", "Baldcypress"), Choice::new("white_oak", "White oak"),
    Choice::new("northern_red_oak", "Northern red oak"),
    Choice::new("black_locust", "Black locust"), Choice::new("sugar_maple", "Sugar maple"),
    Choice::new("white_ash", "White ash"), Choice::new("black_walnut", "Black walnut"),
    Choice::new("black_cherry", "Black cherry"), Choice::new("yellow_poplar", "Yellow-poplar"),
    Choice::new("teak", "Teak"), Choice::new("ipe", "Ipe"), OWN,
];

/// Every wood that is a species.
const SPECIES_IDS: &[&str] = &{
    let mut ids = [""; WOODS.len() - 2];
    let mut i = 0;
    while i < ids.len() {
        ids[i] = WOODS[i + 1].id;
        i += 1;
    }
    ids
};

const LIMITS_OF_SAG: &[Choice] = &{
    let mut limits = [Choice::new("", ""); beams::SAG_LIMITS.len()];
    let mut i = 0;
    while i < limits.len() {
        limits[i] = Choice::new(beams::SAG_LIMITS[i].id, beams::SAG_LIMITS[i].name);
        i += 1;
    }
    limits
};

// The starts are of the bench top of our invented potting bench: a flat 2×6 over two frames. It starts
// without its middle rail: who forgets to say how it is supported must not be told that it holds.

pub(super) const SHAPE: Field = Field::new("shape", "Shape", "",
    Kind::Choice(&[PLANK, ROUND]), Start::Text(PLANK.id));
const PLANK: Choice = Choice::new("plank", "Plank, slat or rail");
pub(super) const ROUND: Choice = Choice::new("round", "Round");

pub(super) const ACROSS: Field = Field::new("across", "Width", "level; a flat 2×6 is 5 1/2",
    Kind::ABOVE_ZERO, Start::Inches("5 1/2")).metric_hint("level; a flat 2×6 is about 140").only_for(SHAPE.id, &[PLANK.id]);
pub(super) const DEPTH: Field = Field::new("depth", "Depth", "up and down, as measured",
    Kind::ABOVE_ZERO, Start::Inches("1 1/2")).only_for(SHAPE.id, &[PLANK.id]);
pub(super) const DIAMETER: Field = Field::new("diameter", "Diameter", "at its thinnest",
    Kind::ABOVE_ZERO, Start::Inches("1")).only_for(SHAPE.id, &[ROUND.id]);
pub(super) const SPAN: Field = Field::new("span", "Span", "between outer supports, or the overhang",
    Kind::ABOVE_ZERO, Start::Inches("44"));
pub(super) const LOAD: Field = Field::new("load", "Load", "",
    Kind::Choice(&[
        ONE_PERSON, PAIR, ROW, STEPS_UP, SOIL, IN_THE_MIDDLE, EVENLY, SEVERAL, AT_THE_END,
        EVEN_OVERHANG,
    ]),
    Start::Text(ONE_PERSON.id));
const ONE_PERSON: Choice = Choice::new("person", "One person in the middle");
pub(super) const PAIR: Choice = Choice::new("pair", "Two people at the quarters");
pub(super) const ROW: Choice = Choice::new("row", "A row of people");
pub(super) const STEPS_UP: Choice = Choice::new("step", "Someone steps up on it");
pub(super) const SOIL: Choice = Choice::new("soil", "A planter of wet soil");
pub(super) const IN_THE_MIDDLE: Choice = Choice::new("point", "A load in the middle");
pub(super) const EVENLY: Choice = Choice::new("even", "An even load");
pub(super) const SEVERAL: Choice = Choice::new("several", "Loads at marked places");
pub(super) const AT_THE_END: Choice = Choice::new("end", "Overhang, load at its end");
pub(super) const EVEN_OVERHANG: Choice = Choice::new("even_end", "Overhang, even load");

pub(super) const POUNDS: Field = Field::new("pounds", "How heavy", "",
    Kind::Number { least: 1, most: 100_000, unit: "lb" }, Start::Text("250"))
    .only_for(LOAD.id, &[IN_THE_MIDDLE.id, AT_THE_END.id]);
pub(super) const POUNDS_PER_FOOT: Field = Field::new("pounds_per_foot", "Even load",
    "120 is a row of people",
    Kind::Number { least: 1, most: 10_000, unit: "lb/ft" }, Start::Text("120"))
    .metric_hint("179 is a row of people").only_for(LOAD.id, &[EVENLY.id, EVEN_OVERHANG.id]);
pub(super) const PLACES: Field = Field::new("places", "Places",
    "from the left support; two there for twice the load",
    Kind::Lengths, Start::Text("12 in, 24 in")).only_for(LOAD.id, &[SEVERAL.id]);
pub(super) const EACH: Field = Field::new("each", "Load at each place", "",
    Kind::Number { least: 1, most: 100_000, unit: "lb" }, Start::Text("100"))
    .only_for(LOAD.id, &[SEVERAL.id]);
pub(super) const AND_EVEN: Field = Field::new("and_even", "And an even load",
    "the wood itself, or 0",
    Kind::Number { least: 0, most: 10_000, unit: "lb/ft" }, Start::Without("0"))
    .only_for(LOAD.id, &[SEVERAL.id]);
pub(super) const SOIL_WIDTH: Field = Field::new("soil_width", "Planter width", "inside",
    Kind::ABOVE_ZERO, Start::Inches("12")).only_for(LOAD.id, &[SOIL.id]);
pub(super) const SOIL_DEPTH: Field = Field::new("soil_depth", "Soil depth", "",
    Kind::ABOVE_ZERO, Start::Inches("12")).only_for(LOAD.id, &[SOIL.id]);
pub(super) const MIDDLE_SUPPORTS: Field = Field::new("middle_supports", "Middle supports",
    "evenly placed",
    Kind::Count { least: 0, most: 20 }, Start::Text("0")).only_for(LOAD.id, RESTING);
pub(super) const SHARING: Field = Field::new("sharing", "Pieces that share it",
    "1 when one may take it all",
    Kind::Count { least: 1, most: 100 }, Start::Text("1"));
pub(super) const WOOD: Field = Field::new("wood", "Wood", "",
    Kind::Choice(WOODS), Start::Text(UNKNOWN.id));
pub(super) const UNKNOWN: Choice = Choice::new("unknown", "Outdoor softwood, unknown");
pub(super) const OWN: Choice = Choice::new("own", "By its stiffness");

pub(super) const MOISTURE: Field = Field::new("moisture", "Moisture",
    "12 to 15 outdoors, over 25 wet",
    Kind::Number { least: 6, most: 200, unit: "%" }, Start::Text("15"))
    .only_for(WOOD.id, SPECIES_IDS);
pub(super) const STIFFNESS: Field = Field::new("stiffness", "Stiffness",
    "modulus of elasticity; 1200 for unknown softwood",
    Kind::Number { least: 100, most: 30_000, unit: "thousand psi" }, Start::Text("1200"))
    .metric_hint("modulus of elasticity; 8.3 for unknown softwood").only_for(WOOD.id, &[OWN.id]);
pub(super) const LIMIT: Field = Field::new("limit", "Sag to let pass", "",
    Kind::Choice(LIMITS_OF_SAG), Start::Text(beams::FLOOR.id));
pub(super) const MOST_STRESS: Field = Field::new("most_stress", "Stress to let pass",
    "800 to 900 is common practice",
    Kind::Number { least: 50, most: 50_000, unit: "psi" }, Start::Text("850"))
    .metric_hint("5.5 to 6.2 is common practice");

/// In the order asked.
pub(super) const FIELDS: &[Field] = &[
    SHAPE, ACROSS, DEPTH, DIAMETER, SPAN, LOAD, POUNDS, POUNDS_PER_FOOT, PLACES, EACH, AND_EVEN,
    SOIL_WIDTH, SOIL_DEPTH, MIDDLE_SUPPORTS, SHARING, WOOD, MOISTURE, STIFFNESS, LIMIT, MOST_STRESS,
];

pub(super) const VERDICT: ResultSpec = ResultSpec::new("verdict", "Verdict", ResultKind::Words);
pub(super) const SAG: ResultSpec = ResultSpec::new("sag", "Sag", ResultKind::Number);
pub(super) const MOST_SAG: ResultSpec =
    ResultSpec::new("most_sag", "Sag to let pass", ResultKind::Number);
pub(super) const STRESS: ResultSpec =
    ResultSpec::new("stress", "Bending stress", ResultKind::Number);
pub(super) const LONGEST_SPAN: ResultSpec =
    ResultSpec::new("longest_span", "Longest span", ResultKind::Length);
pub(super) const LEAST_DEPTH: ResultSpec =
    ResultSpec::new("least_depth", "Least depth", ResultKind::Length);
pub(super) const LATER_SAG: ResultSpec =
    ResultSpec::new("later_sag", "Sag after years", ResultKind::Number);
pub(super) const SUDDEN_SAG: ResultSpec =
    ResultSpec::new("sudden_sag", "Sag, put on suddenly", ResultKind::Number);
pub(super) const SUDDEN_STRESS: ResultSpec =
    ResultSpec::new("sudden_stress", "Stress, put on suddenly", ResultKind::Number);
pub(super) const CLAMPED_SAG: ResultSpec =
    ResultSpec::new("clamped_sag", "Sag with ends held stiff", ResultKind::Number);
pub(super) const TURNED_RATIO: ResultSpec =
    ResultSpec::new("turned_ratio", "Turned over, times as stiff", ResultKind::Number);
pub(super) const RUPTURE: ResultSpec =
    ResultSpec::new("rupture", "Clear wood breaks near", ResultKind::Number);
pub(super) const LEFT_SUPPORT: ResultSpec =
    ResultSpec::new("left_support", "On the left support", ResultKind::Number);
pub(super) const RIGHT_SUPPORT: ResultSpec =
    ResultSpec::new("right_support", "On the right support", ResultKind::Number);
pub(super) const SOIL_VOLUME: ResultSpec =
    ResultSpec::new("soil_volume", "Soil", ResultKind::Number);
pub(super) const SOIL_WEIGHT: ResultSpec =
    ResultSpec::new("soil_weight", "Soil, wet", ResultKind::Number);
pub(super) const WAYS: ResultSpec = ResultSpec::new("ways", "Ways to build it", ResultKind::Table);
pub(super) const WAY_COLUMN: Column = Column::new("way", "Way");
pub(super) const SAG_COLUMN: Column = Column::new("sag", "Sag");
pub(super) const STRESS_COLUMN: Column = Column::new("stress", "Stress");
pub(super) const VERDICT_COLUMN: Column = Column::new("verdict", "Verdict");
pub(super) const LIMITS: ResultSpec =
    ResultSpec::new("limits", "Longest and least", ResultKind::Table);
pub(super) const TO_KEEP_COLUMN: Column = Column::new("to_keep", "To keep");
pub(super) const LONGEST_SPAN_COLUMN: Column = Column::new("longest_span", "Longest span");
pub(super) const LEAST_DEPTH_COLUMN: Column = Column::new("least_depth", "Least depth");

/// Every figure and table.
pub(super) const RESULTS: &[ResultSpec] = &[
    VERDICT, SAG, MOST_SAG, STRESS, LONGEST_SPAN, LEAST_DEPTH, LATER_SAG, SUDDEN_SAG,
    SUDDEN_STRESS, CLAMPED_SAG, TURNED_RATIO, RUPTURE, LEFT_SUPPORT, RIGHT_SUPPORT, SOIL_VOLUME, SOIL_WEIGHT, WAYS, LIMITS,
];
