//! What the strength check asks, and how it is read.

use super::{Input, Load, Section, UNKNOWN_SOFTWOOD, Wood};
use crate::measure::{Length, Unit};
use crate::say;
use crate::sheet::{Ask, Choice, Field, Kind, Sentence, Source, Start};
use crate::tables::beams::{self, DesignLoad, Loading, SagLimit};

/// Loads with both ends resting, which can have supports in between.
const RESTING: &[&str] = &["person", "pair", "row", "step", "point", "even", "soil"];

const LOADS: &[Choice] = &[
    Choice { id: "person", label: "One person in the middle" },
    Choice { id: "pair", label: "Two people at the quarters" },
    Choice { id: "row", label: "A row of people" },
    Choice { id: "step", label: "Someone steps up on it" },
    Choice { id: "soil", label: "A planter of wet soil" },
    Choice { id: "point", label: "A load in the middle" },
    Choice { id: "even", label: "An even load" },
    Choice { id: "several", label: "Loads at marked places" },
    Choice { id: "end", label: "Overhang, load at its end" },
    Choice { id: "even_end", label: "Overhang, even load" },
];

/// The species offered: those whose strength is in the table.
const WOODS: &[Choice] = &[
    Choice { id: "unknown", label: "Outdoor softwood, unknown" },
    Choice { id: "loblolly_pine", label: "Loblolly pine" },
    Choice { id: "longleaf_pine", label: "Longleaf pine" },
    Choice { id: "shortleaf_pine", label: "Shortleaf pine" },
    Choice { id: "slash_pine", label: "Slash pine" },
    Choice { id: "douglas_fir", label: "Douglas-fir, coast" },
    Choice { id: "western_hemlock", label: "Western hemlock" },
    Choice { id: "western_larch", label: "Western larch" },
    Choice { id: "lodgepole_pine", label: "Lodgepole pine" },
    Choice { id: "jack_pine", label: "Jack pine" },
    Choice { id: "engelmann_spruce", label: "Engelmann spruce" },
    Choice { id: "white_spruce", label: "White spruce" },
    Choice { id: "red_spruce", label: "Red spruce" },
    Choice { id: "balsam_fir", label: "Balsam fir" },
    Choice { id: "subalpine_fir", label: "Subalpine fir" },
    Choice { id: "eastern_white_pine", label: "Eastern white pine" },
    Choice { id: "ponderosa_pine", label: "Ponderosa pine" },
    Choice { id: "western_redcedar", label: "Western redcedar" },
    Choice { id: "northern_white_cedar", label: "Northern white cedar" },
    Choice { id: "atlantic_white_cedar", label: "Atlantic white cedar" },
    Choice { id: "eastern_redcedar", label: "Eastern redcedar" },
    Choice { id: "yellow_cedar", label: "Yellow cedar" },
    Choice { id: "redwood_old", label: "Redwood, old-growth" },
    Choice { id: "redwood_young", label: "Redwood, young-growth" },
    Choice { id: "baldcypress", label: "Baldcypress" },
    Choice { id: "white_oak", label: "White oak" },
    Choice { id: "northern_red_oak", label: "Northern red oak" },
    Choice { id: "black_locust", label: "Black locust" },
    Choice { id: "sugar_maple", label: "Sugar maple" },
    Choice { id: "white_ash", label: "White ash" },
    Choice { id: "black_walnut", label: "Black walnut" },
    Choice { id: "black_cherry", label: "Black cherry" },
    Choice { id: "yellow_poplar", label: "Yellow-poplar" },
    Choice { id: "teak", label: "Teak" },
    Choice { id: "ipe", label: "Ipe" },
    Choice { id: "own", label: "By its stiffness" },
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

const LIMITS: &[Choice] = &{
    let mut limits = [Choice { id: "", label: "" }; beams::SAG_LIMITS.len()];
    let mut i = 0;
    while i < limits.len() {
        limits[i] = Choice { id: beams::SAG_LIMITS[i].id, label: beams::SAG_LIMITS[i].name };
        i += 1;
    }
    limits
};

/// The bench top of our invented potting bench: a flat 2×6 over two frames and a middle rail.
pub(super) const FIELDS: &[Field] = &[
    Field::new(
        "shape",
        "Shape",
        "",
        Kind::Choice(&[
            Choice { id: "plank", label: "Plank, slat or rail" },
            Choice { id: "round", label: "Round" },
        ]),
        Start::Text("plank"),
    ),
    Field::new(
        "across",
        "Width",
        "level; a flat 2×6 is 5 1/2",
        Kind::ABOVE_ZERO,
        Start::Inches("5 1/2"),
    )
    .only_for("shape", &["plank"]),
    Field::new(
        "depth",
        "Depth",
        "up and down, as measured",
        Kind::ABOVE_ZERO,
        Start::Inches("1 1/2"),
    )
    .only_for("shape", &["plank"]),
    Field::new("diameter", "Diameter", "at its thinnest", Kind::ABOVE_ZERO, Start::Inches("1"))
        .only_for("shape", &["round"]),
    Field::new(
        "span",
        "Span",
        "between outer supports, or the overhang",
        Kind::ABOVE_ZERO,
        Start::Inches("44"),
    ),
    Field::new("load", "Load", "", Kind::Choice(LOADS), Start::Text("person")),
    Field::new(
        "pounds",
        "How heavy",
        "",
        Kind::Number { least: 1, most: 100_000, unit: "lb" },
        Start::Text("250"),
    )
    .only_for("load", &["point", "end"]),
    Field::new(
        "pounds_per_foot",
        "On each foot",
        "120 is a row of people",
        Kind::Number { least: 1, most: 10_000, unit: "lb" },
        Start::Text("120"),
    )
    .only_for("load", &["even", "even_end"]),
    Field::new(
        "places",
        "Places",
        "from the left support; twice for twice the load",
        Kind::Lengths,
        Start::Text("12 in, 24 in"),
    )
    .only_for("load", &["several"]),
    Field::new(
        "each",
        "Load at each place",
        "",
        Kind::Number { least: 1, most: 100_000, unit: "lb" },
        Start::Text("100"),
    )
    .only_for("load", &["several"]),
    Field::new(
        "and_even",
        "And on each foot",
        "the wood itself, or 0",
        Kind::Number { least: 0, most: 10_000, unit: "lb" },
        Start::Text("0"),
    )
    .only_for("load", &["several"]),
    Field::new("soil_width", "Planter width", "inside", Kind::ABOVE_ZERO, Start::Inches("12"))
        .only_for("load", &["soil"]),
    Field::new("soil_depth", "Soil depth", "", Kind::ABOVE_ZERO, Start::Inches("12"))
        .only_for("load", &["soil"]),
    Field::new(
        "middle_supports",
        "Middle supports",
        "evenly placed",
        Kind::Count { least: 0, most: 20 },
        Start::Text("1"),
    )
    .only_for("load", RESTING),
    Field::new(
        "sharing",
        "Pieces that share it",
        "1 when one may take it all",
        Kind::Count { least: 1, most: 100 },
        Start::Text("1"),
    ),
    Field::new("wood", "Wood", "", Kind::Choice(WOODS), Start::Text("unknown")),
    Field::new(
        "moisture",
        "Moisture",
        "12 to 15 outdoors, over 25 wet",
        Kind::Number { least: 6, most: 200, unit: "%" },
        Start::Text("15"),
    )
    .only_for("wood", SPECIES_IDS),
    Field::new(
        "stiffness",
        "Stiffness",
        "modulus of elasticity; 1200 for unknown softwood",
        Kind::Number { least: 100, most: 30_000, unit: "thousand psi" },
        Start::Text("1200"),
    )
    .only_for("wood", &["own"]),
    Field::new("limit", "Sag to let pass", "", Kind::Choice(LIMITS), Start::Text("floor")),
    Field::new(
        "most_stress",
        "Stress to let pass",
        "800 to 900 is common practice",
        Kind::Number { least: 50, most: 50_000, unit: "psi" },
        Start::Text("850"),
    ),
];

/// The question as read.
pub(super) struct Question {
    pub(super) input: Input,
    /// The load case, for the user.
    pub(super) case: Sentence,
    /// Where the load comes from.
    pub(super) load_source: Source,
    pub(super) limit: SagLimit,
    pub(super) soil: Option<Soil>,
}

/// Wet soil in a planter that stands on the span.
#[derive(Clone, Copy)]
pub(super) struct Soil {
    pub(super) cubic_feet: f64,
    pub(super) pounds: f64,
}

/// Weight of wet soil in pounds to the cubic foot: common practice, no source.
const WET_SOIL: f64 = 100.0;

/// Reads the fields.
pub(super) fn read(ask: &mut Ask) -> Option<Question> {
    let section = match ask.choice(ask.field("shape")).id {
        "round" => {
            ask.length(ask.field("diameter")).map(|d| Section::Round { diameter: d.to_f64() })
        }
        _ => {
            let (across, depth) = (ask.length(ask.field("across")), ask.length(ask.field("depth")));
            across.zip(depth).map(|(across, depth)| Section::Plank {
                across: across.to_f64(),
                depth: depth.to_f64(),
            })
        }
    };
    let span = ask.length(ask.field("span"));
    let load = read_load(ask, span);
    let middle_supports = if RESTING.contains(&ask.choice(ask.field("load")).id) {
        ask.count(ask.field("middle_supports"))
    } else {
        Some(0)
    };
    let sharing = ask.count(ask.field("sharing"));
    let wood = match ask.choice(ask.field("wood")).id {
        "unknown" => Some(Wood::of_stiffness(UNKNOWN_SOFTWOOD)),
        "own" => {
            ask.real(ask.field("stiffness")).map(|thousands| Wood::of_stiffness(thousands * 1000.0))
        }
        id => ask.real(ask.field("moisture")).and_then(|moisture| Wood::of_species(id, moisture)),
    };
    let limit = beams::sag_limit(ask.choice(ask.field("limit")).id);
    let most_stress = ask.real(ask.field("most_stress"));
    let (load, case, load_source, soil) = load?;
    let limit = limit?;
    let input = Input {
        section: section?,
        span: span?.to_f64(),
        middle_supports: middle_supports?,
        load,
        sharing: sharing?,
        wood: wood?,
        span_over_sag: f64::from(limit.span_over_sag),
        most_stress: most_stress?,
    };
    Some(Question { input, case, load_source, limit, soil })
}

type ReadLoad = (Load, Sentence, Source, Option<Soil>);

fn read_load(ask: &mut Ask, span: Option<Length>) -> Option<ReadLoad> {
    let foot = Unit::Foot.in_inches().to_f64();
    let published = |load: Load, design: DesignLoad| {
        Some((load, say![design.name], Source::Published(design.source), None))
    };
    let own = |load: Load, case: String| Some((load, say![case], Source::Arithmetic, None));
    match ask.choice(ask.field("load")).id {
        "pair" => {
            let load = Load::Point(Loading::QuartersResting, 2.0 * beams::PERSON.pounds);
            let case = say!["two people, 250 lb on each quarter point"];
            Some((load, case, Source::Published(beams::PERSON.source), None))
        }
        "row" => {
            let per_inch = beams::ROW_OF_PEOPLE.pounds / foot;
            published(Load::Even(Loading::EvenResting, per_inch), beams::ROW_OF_PEOPLE)
        }
        "step" => published(Load::Point(Loading::MiddleResting, beams::STEP.pounds), beams::STEP),
        "point" => {
            let pounds = ask.real(ask.field("pounds"))?;
            let case = format!("{pounds} lb in the middle");
            own(Load::Point(Loading::MiddleResting, pounds), case)
        }
        "end" => {
            let pounds = ask.real(ask.field("pounds"))?;
            own(Load::Point(Loading::EndOverhang, pounds), format!("{pounds} lb at the free end"))
        }
        id @ ("even" | "even_end") => {
            let per_foot = ask.real(ask.field("pounds_per_foot"))?;
            let loading = if id == "even" { Loading::EvenResting } else { Loading::EvenOverhang };
            own(Load::Even(loading, per_foot / foot), format!("{per_foot} lb on each foot"))
        }
        "several" => {
            let (places, each, even) = (
                ask.lengths(ask.field("places")),
                ask.real(ask.field("each")),
                ask.real(ask.field("and_even")),
            );
            let (places, each, even) = (places?, each?, even?);
            let case =
                format!("{each} lb at each of {} places, {even} lb on each foot", places.len());
            let points = places.iter().map(|place| (place.to_f64(), each)).collect();
            own(Load::Several { points, even: even / foot }, case)
        }
        "soil" => {
            let (width, depth) =
                (ask.length(ask.field("soil_width")), ask.length(ask.field("soil_depth")));
            let cubic_foot = foot * foot * foot;
            let section = width?.to_f64() * depth?.to_f64();
            let cubic_feet = section * span?.to_f64() / cubic_foot;
            let load = Load::Even(Loading::EvenResting, section * WET_SOIL / cubic_foot);
            let soil = Soil { cubic_feet, pounds: cubic_feet * WET_SOIL };
            let case = say!["a planter of wet soil, 100 lb to the cubic foot"];
            Some((load, case, Source::CommonPractice, Some(soil)))
        }
        _ => published(Load::Point(Loading::MiddleResting, beams::PERSON.pounds), beams::PERSON),
    }
}
