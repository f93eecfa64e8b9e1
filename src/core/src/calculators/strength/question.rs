//! The question of the strength check, read from its fields.

use super::fields::{
    ACROSS, AND_EVEN, AT_THE_END, DEPTH, DIAMETER, EACH, EVEN_OVERHANG, EVENLY, IN_THE_MIDDLE,
    LIMIT, LOAD, MIDDLE_SUPPORTS, MOISTURE, MOST_STRESS, OWN, PAIR, PLACES, POUNDS,
    POUNDS_PER_FOOT, RESTING, ROUND, ROW, SEVERAL, SHAPE, SHARING, SOIL, SOIL_DEPTH, SOIL_WIDTH,
    SPAN, STEPS_UP, STIFFNESS, UNKNOWN, WOOD,
};
use super::{Input, Load, Section, UNKNOWN_SOFTWOOD, Wood};
use crate::measure::{Length, Number, Unit};
use crate::say;
use crate::sheet::{Ask, Sentence, Source, Value};
use crate::tables::beams::{self, DesignLoad, Loading, SagLimit};

/// The question as read.
pub(super) struct Question {
    pub(super) input: Input,
    /// The cross-section as typed, exactly.
    pub(super) sides: Sides,
    /// The span as typed, exactly.
    pub(super) span: Length,
    /// The load case, for the user.
    pub(super) case: Sentence,
    /// Where the load comes from.
    pub(super) load_source: Source,
    pub(super) limit: SagLimit,
    pub(super) soil: Option<Soil>,
}

/// The sides of a cross-section.
#[derive(Clone, Copy)]
pub(super) enum Sides {
    Plank { across: Length, depth: Length },
    Round(Length),
}

impl Sides {
    fn section(self) -> Section {
        match self {
            Sides::Plank { across, depth } => {
                Section::Plank { across: across.to_f64(), depth: depth.to_f64() }
            }
            Sides::Round(diameter) => Section::Round { diameter: diameter.to_f64() },
        }
    }
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
    let sides = if ask.choice(&SHAPE) == ROUND {
        ask.length(&DIAMETER).map(Sides::Round)
    } else {
        let (across, depth) = (ask.length(&ACROSS), ask.length(&DEPTH));
        across.zip(depth).map(|(across, depth)| Sides::Plank { across, depth })
    };
    let span = ask.length(&SPAN);
    let load = read_load(ask, span);
    let middle_supports =
        if RESTING.contains(&ask.choice(&LOAD).id) { ask.count(&MIDDLE_SUPPORTS) } else { Some(0) };
    let sharing = ask.count(&SHARING);
    let wood = match ask.choice(&WOOD) {
        UNKNOWN => Some(Wood::of_stiffness(UNKNOWN_SOFTWOOD)),
        OWN => ask.real(&STIFFNESS).map(|thousands| Wood::of_stiffness(thousands * 1000.0)),
        species => ask.real(&MOISTURE).and_then(|moisture| Wood::of_species(species.id, moisture)),
    };
    let limit = beams::sag_limit(ask.choice(&LIMIT).id);
    let most_stress = ask.real(&MOST_STRESS);
    let (load, case, load_source, soil) = load?;
    let (limit, sides, span) = (limit?, sides?, span?);
    let input = Input {
        section: sides.section(),
        span: span.to_f64(),
        middle_supports: middle_supports?,
        load,
        sharing: sharing?,
        wood: wood?,
        span_over_sag: f64::from(limit.span_over_sag),
        most_stress: most_stress?,
    };
    Some(Question { input, sides, span, case, load_source, limit, soil })
}

type ReadLoad = (Load, Sentence, Source, Option<Soil>);

fn read_load(ask: &mut Ask, span: Option<Length>) -> Option<ReadLoad> {
    let foot = Unit::Foot.in_inches().to_f64();
    let published = |load: Load, design: DesignLoad| {
        Some((load, design.case(), Source::Published(design.source), None))
    };
    let own = |load: Load, case: String| Some((load, say![case], Source::Arithmetic, None));
    let bench = *ask.bench();
    let lb = |pounds: f64| Value::Real(pounds, 0, "lb").in_line(&bench);
    let per_length = |pounds: f64| Value::Real(pounds, 0, "lb/ft").in_line(&bench);
    match ask.choice(&LOAD) {
        PAIR => {
            let load = Load::Point(Loading::QuartersResting, 2.0 * beams::PERSON.pounds);
            let each = lb(beams::PERSON.pounds);
            let case = say![format!("two people, {each} on each quarter point")];
            Some((load, case, Source::Published(beams::PERSON.source), None))
        }
        ROW => {
            let per_inch = beams::ROW_OF_PEOPLE.pounds / foot;
            published(Load::Even(Loading::EvenResting, per_inch), beams::ROW_OF_PEOPLE)
        }
        STEPS_UP => published(Load::Point(Loading::MiddleResting, beams::STEP.pounds), beams::STEP),
        IN_THE_MIDDLE => {
            let pounds = ask.real(&POUNDS)?;
            let case = format!("{} in the middle", lb(pounds));
            own(Load::Point(Loading::MiddleResting, pounds), case)
        }
        AT_THE_END => {
            let pounds = ask.real(&POUNDS)?;
            own(
                Load::Point(Loading::EndOverhang, pounds),
                format!("{} at the free end", lb(pounds)),
            )
        }
        chosen @ (EVENLY | EVEN_OVERHANG) => {
            let per_foot = ask.real(&POUNDS_PER_FOOT)?;
            let loading =
                if chosen == EVENLY { Loading::EvenResting } else { Loading::EvenOverhang };
            own(Load::Even(loading, per_foot / foot), format!("{} all along", per_length(per_foot)))
        }
        SEVERAL => {
            let (places, each, even) = (ask.lengths(&PLACES), ask.real(&EACH), ask.real(&AND_EVEN));
            let (places, each, even) = (places?, each?, even?);
            let case = match places.len() {
                1 => format!("{} at one place, {} all along", lb(each), per_length(even)),
                n => format!("{} at each of {n} places, {} all along", lb(each), per_length(even)),
            };
            let points = places.iter().map(|place| (place.to_f64(), each)).collect();
            own(Load::Several { points, even: even / foot }, case)
        }
        SOIL => {
            let (width, depth) = (ask.length(&SOIL_WIDTH), ask.length(&SOIL_DEPTH));
            let cubic_foot = foot * foot * foot;
            let section = width?.to_f64() * depth?.to_f64();
            let cubic_feet = section * span?.to_f64() / cubic_foot;
            let load = Load::Even(Loading::EvenResting, section * WET_SOIL / cubic_foot);
            let soil = Soil { cubic_feet, pounds: cubic_feet * WET_SOIL };
            let case =
                say!["a planter of wet soil, ", (Number::whole(WET_SOIL as i64), "lb/cu ft")];
            Some((load, case, Source::CommonPractice, Some(soil)))
        }
        _ => published(Load::Point(Loading::MiddleResting, beams::PERSON.pounds), beams::PERSON),
    }
}
