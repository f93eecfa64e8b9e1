//! What finishing asks, and what it answers with.

use crate::calculators::{ResultKind, ResultSpec};
use crate::sheet::{Column, Choice, Field, Kind, Start};

/// Parts of our invented potting bench: top, legs, long rails, short rails.
const BENCH_PARTS: &str = "5 @ 48 in × 5 1/2 in × 1 1/2 in, 4 @ 34 in × 3 in × 1 1/2 in, \
     2 @ 41 in × 3 1/2 in × 1 1/2 in, 2 @ 17 1/2 in × 3 1/2 in × 1 1/2 in";

pub(super) const PARTS: Field = Field::new("parts", "Pieces",
    "how many, and length × width × thickness",
    Kind::Sizes, Start::Text(BENCH_PARTS));
pub(super) const FACES: Field = Field::new("faces", "Coat", "",
    Kind::Choice(&[ALL, NOT_UNDERSIDE, SHOW_FACE, ENDS]), Start::Text(ALL.id));
const ALL: Choice = Choice::new("all", "All faces");
pub(super) const NOT_UNDERSIDE: Choice = Choice::new("not_underside", "All but the underside");
pub(super) const SHOW_FACE: Choice = Choice::new("show_face", "One face");
pub(super) const ENDS: Choice = Choice::new("ends", "Ends only");

pub(super) const COATS: Field = Field::new("coats", "Coats", "",
    Kind::Count { least: 1, most: 10 }, Start::Text("2"));
pub(super) const SURFACE: Field = Field::new("surface", "Surface", "",
    Kind::Choice(&[SMOOTH, WEATHERED, ROUGH, AS_THE_CAN]), Start::Text(SMOOTH.id));
const SMOOTH: Choice = Choice::new("smooth", "Smooth");
pub(super) const WEATHERED: Choice = Choice::new("weathered", "Weathered");
pub(super) const ROUGH: Choice = Choice::new("rough", "Rough or old");
pub(super) const AS_THE_CAN: Choice = Choice::new("can", "As the can says");

pub(super) const COVERAGE: Field = Field::new("coverage", "Finish covers",
    "from the label, its lowest figure",
    Kind::Number { least: 20, most: 2000, unit: "sq ft/gal" }, Start::Text("250"))
    .only_for(SURFACE.id, &[AS_THE_CAN.id]);
pub(super) const RESERVE: Field = Field::new("reserve", "Reserve",
    "for spills, thirsty wood and touching up",
    Kind::Number { least: 0, most: 100, unit: "%" }, Start::Text("10"));
pub(super) const GALLON_PRICE: Field = Field::new("gallon_price", "Price of a gallon", "",
    Kind::OptionalMoney, Start::Text("")).only_on(false);
pub(super) const QUART_PRICE: Field = Field::new("quart_price", "Price of a quart", "",
    Kind::OptionalMoney, Start::Text("")).only_on(false);
pub(super) const PRICE_OF_5: Field = Field::new("price_of_5", "Price of a 5 L can", "",
    Kind::OptionalMoney, Start::Text("")).only_on(true);
pub(super) const PRICE_OF_2_5: Field = Field::new("price_of_2_5", "Price of a 2.5 L can", "",
    Kind::OptionalMoney, Start::Text("")).only_on(true);
pub(super) const PRICE_OF_1: Field = Field::new("price_of_1", "Price of a 1 L can", "",
    Kind::OptionalMoney, Start::Text("")).only_on(true);
pub(super) const PRICE_OF_0_75: Field = Field::new("price_of_0_75", "Price of a 0.75 L can", "",
    Kind::OptionalMoney, Start::Text("")).only_on(true);

/// In the order asked.
pub(super) const FIELDS: &[Field] = &[
    PARTS, FACES, COATS, SURFACE, COVERAGE, RESERVE, GALLON_PRICE, QUART_PRICE,
    PRICE_OF_5, PRICE_OF_2_5, PRICE_OF_1, PRICE_OF_0_75,
];

pub(super) const BUY: ResultSpec = ResultSpec::new("buy", "Buy", ResultKind::Words);
pub(super) const AREA: ResultSpec = ResultSpec::new("area", "Area", ResultKind::Area);
pub(super) const GALLONS_MOST: ResultSpec =
    ResultSpec::new("gallons_most", "Finish, at most", ResultKind::Number);
pub(super) const GALLONS_LEAST: ResultSpec =
    ResultSpec::new("gallons_least", "Finish, at least", ResultKind::Number);
pub(super) const FIRST_COAT: ResultSpec =
    ResultSpec::new("first_coat", "First coat, at most", ResultKind::Number);
pub(super) const WITH_RESERVE: ResultSpec =
    ResultSpec::new("with_reserve", "With the reserve", ResultKind::Number);
pub(super) const COST: ResultSpec = ResultSpec::new("cost", "Cost", ResultKind::Number);
pub(super) const PART_AREAS: ResultSpec =
    ResultSpec::new("part_areas", "Area of each piece", ResultKind::Table);
pub(super) const PARTS_COLUMN: Column = Column::new("parts", "Pieces");
pub(super) const AREA_COLUMN: Column = Column::new("area", "Area");

/// Every figure and table.
pub(super) const RESULTS: &[ResultSpec] = &[
    BUY, AREA, GALLONS_MOST, GALLONS_LEAST, FIRST_COAT, WITH_RESERVE, COST, PART_AREAS,
];
