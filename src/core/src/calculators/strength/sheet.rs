//! How the answer of the strength check is laid out.

use super::fields::{
    CLAMPED_SAG, FIELDS, LATER_SAG, LEAST_DEPTH, LEAST_DEPTH_COLUMN, LEFT_SUPPORT, LIMITS,
    LONGEST_SPAN, LONGEST_SPAN_COLUMN, MOST_SAG, RESULTS, RIGHT_SUPPORT, RUPTURE, SAG, SAG_COLUMN,
    SOIL_VOLUME, SOIL_WEIGHT, SPAN, STRESS, STRESS_COLUMN, SUDDEN_SAG, SUDDEN_STRESS,
    TO_KEEP_COLUMN, TURNED_RATIO, VERDICT, VERDICT_COLUMN, WAY_COLUMN, WAYS,
};
use super::question::{self, Question, Sides};
use super::shown::fine;
use super::{Answer, Bend, FOR_A_MOMENT, Input, Load, SUDDENLY, Section, Verdict, drawing, reckon};
use crate::calculators::{Calculator, Stage};
use crate::measure::{Length, OutOfRange, Rounding, Unit};
use crate::say;
use crate::sheet::{
    self, Act, Amount, Ask, Bench, Caution, Figure, Note, Refusal, Source, Step, Table, Term,
    Value, Working,
};
use crate::tables::beams::LOADING_SOURCE;

/// Strength: sag, stress and a verdict.
pub const CALCULATOR: Calculator = Calculator {
    slug: "strength",
    title: "Strength",
    question: "Will it sag, and will it hold?",
    stage: Stage::Last,
    fields: FIELDS,
    results: RESULTS,
    work,
};

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let question = question::read(ask)?;
    let bench = ask.bench();
    let sheet = reckon(&question.input).and_then(|answer| Ok(lay_out(&question, &answer, bench)?));
    sheet.map_or_else(|refused| ask.refused(refused, too_large()), Some)
}

fn too_large() -> Refusal {
    Refusal::too_large(&SPAN, "Use sizes of a bench, not of a bridge.")
}

fn lay_out(
    question: &Question,
    answer: &Answer,
    bench: &Bench,
) -> Result<sheet::Answer, OutOfRange> {
    let verdict = Value::Words(say![answer.bend.verdict.word()]);
    let headline = VERDICT.figure(supports_counted(&question.input), verdict);
    let mut sheet = sheet::Answer::new(headline, working(question, answer, bench)?);
    sheet.figures = figures(question, answer, bench);
    sheet.tables = tables(question, answer, bench);
    sheet.notes = notes(question, answer);
    sheet.cautions = Caution::of(&[Act::Load]);
    sheet.drawing = Some(drawing::draw(&question.input, answer, bench));
    Ok(sheet)
}

/// The middle supports that the verdict counts on; nothing for a load that can have none.
fn supports_counted(input: &Input) -> &'static str {
    let loading = input.load.loading();
    if loading.is_none_or(|loading| loading.is_overhang()) {
        return "";
    }
    match input.middle_supports {
        0 => "with no middle support",
        1 => "with 1 middle support",
        2 => "with 2 middle supports",
        3 => "with 3 middle supports",
        _ => "with all the middle supports",
    }
}

fn figures(question: &Question, answer: &Answer, bench: &Bench) -> Vec<Figure> {
    let bend = answer.bend;
    let pounds = |pounds| Value::Real(pounds, 0, "lb");
    let mut figures = vec![
        SAG.figure("below straight", fine(bend.sag, bench)),
        MOST_SAG.figure("", fine(bend.most_sag, bench)),
        STRESS.figure("", Value::Real(bend.stress, 0, "psi")),
    ];
    if let Some(longest) = answer.longest_span() {
        let value = Value::Length(longest, Rounding::Down);
        figures.push(LONGEST_SPAN.figure("support to support", value));
    }
    let (label, value) = match question.input.section {
        Section::Plank { .. } => ("Least depth", answer.least_depth()),
        Section::Round { .. } => ("Least diameter", answer.least_depth()),
    };
    figures.push(LEAST_DEPTH.called(label).figure("", Value::Length(value, Rounding::Up)));
    if let Some(stress) = bend.sudden_stress {
        let value = fine(bend.sag * SUDDENLY, bench);
        figures.push(SUDDEN_SAG.figure("let go on it from no height", value));
        figures.push(SUDDEN_STRESS.figure("for a moment", Value::Real(stress, 0, "psi")));
    } else {
        let value = fine(bend.sag * (1.0 + CREEP), bench);
        figures.push(LATER_SAG.figure("under a standing load", value));
    }
    if let Some(sag) = answer.clamped_sag {
        figures.push(CLAMPED_SAG.figure("at best", fine(sag, bench)));
    }
    if let Section::Plank { across, depth } = question.input.section
        && answer.turned.is_some()
    {
        let value = Value::Real((across / depth) * (across / depth), 1, "times");
        figures.push(TURNED_RATIO.called("Turned over, as stiff").figure("", value));
    }
    if let Some(psi) = question.input.wood.rupture {
        figures.push(RUPTURE.figure("", Value::Real(psi, 0, "psi")));
    }
    if let Some((left, right)) = answer.on_supports {
        figures.push(LEFT_SUPPORT.figure("each piece", pounds(left)));
        figures.push(RIGHT_SUPPORT.figure("each piece", pounds(right)));
    }
    if let Some(soil) = question.soil {
        figures.push(SOIL_VOLUME.figure("", Value::Real(soil.cubic_feet, 1, "cu ft")));
        figures.push(SOIL_WEIGHT.figure("", pounds(soil.pounds)));
    }
    figures
}

/// A standing load sags about half as much again over years: common practice, no source.
const CREEP: f64 = 0.5;

fn tables(question: &Question, answer: &Answer, bench: &Bench) -> Vec<Table> {
    let row = |name: sheet::Sentence, bend: Bend| {
        vec![
            Value::Words(name),
            fine(bend.sag, bench),
            Value::Real(bend.stress, 0, "psi"),
            Value::Words(say![bend.verdict.word()]),
        ]
    };
    let mut rows = vec![row(say!["As asked"], answer.bend)];
    if let Some(bend) = answer.supported {
        let n = question.input.middle_supports.saturating_add(1);
        let name = format!("{n} middle {}", if n == 1 { "support" } else { "supports" });
        rows.push(row(say![name], bend));
    }
    if let (Some(bend), Section::Plank { across, depth }) = (answer.turned, question.input.section)
    {
        rows.push(row(say![if across > depth { "On edge" } else { "Flat" }], bend));
    }
    let n = question.input.sharing.saturating_mul(2);
    rows.push(row(say![format!("{n} share it")], answer.doubled));
    let ways = WAYS.table(&[WAY_COLUMN, SAG_COLUMN, STRESS_COLUMN, VERDICT_COLUMN], rows);
    let limit = |name: &'static str, limit: super::Limit| {
        let span = match limit.longest_span {
            Some(span) => Value::Length(span, Rounding::Down),
            None => Value::Words(say!["not told"]),
        };
        vec![Value::Words(say![name]), span, Value::Length(limit.least_depth, Rounding::Up)]
    };
    let limits = LIMITS.table(
        &[TO_KEEP_COLUMN, LONGEST_SPAN_COLUMN, LEAST_DEPTH_COLUMN],
        vec![limit("the sag", answer.for_sag), limit("the stress", answer.for_stress)],
    );
    vec![ways, limits]
}

fn notes(question: &Question, answer: &Answer) -> Vec<Note> {
    let bend = answer.bend;
    let shared = match question.input.sharing {
        1 => String::new(),
        n => format!(", shared by {n} pieces"),
    };
    let mut case = say!["Load case: "];
    case.0.extend(question.case.0.clone());
    let own_weight =
        if question.input.load.loading().is_some() { " Its own weight is left out." } else { "" };
    case.0.extend(say![format!("{shared}.{own_weight}")].0);
    let mut notes = vec![match bend.verdict {
        Verdict::Stiff => {
            Note::new("stiff", say!["Stiff: the sag and the stress are within their limits."])
        }
        Verdict::Springy => {
            Note::new("springy", say!["Springy: strong enough, but it sags more than the limit."])
        }
        Verdict::Dont if bend.stress > question.input.most_stress => Note::new(
            "stress_over_limit",
            say!["Don't: the bending stress is over the limit. Put in a support, or go deeper."],
        ),
        Verdict::Dont => Note::new(
            "sudden_load_over_limit",
            say![
                "Don't: put on suddenly, as when someone sits down, the load strains it twice as \
                 much, over what is let pass for a moment. Put in a support, or go deeper."
            ],
        ),
    }];
    notes.push(Note::new("load_case", case));
    if question.input.middle_supports > 0 {
        notes.push(Note::new(
            "stretches_taken_alone",
            say!["Each stretch between supports is taken as a beam of its own, on the safe side."],
        ));
    }
    if answer.clamped_sag.is_some() {
        notes.push(Note::new(
            "screwed_ends_lie_between",
            say!["Ends that are screwed on lie between resting and held stiff."],
        ));
    }
    if bend.bay < SHORT_BEAM * question.input.section.depth() {
        notes.push(Note::new(
            "shear_is_left_out",
            say!["Short for its depth: sag from shear is left out, and adds to this."],
        ));
    }
    notes.push(Note::new(
        "knot_in_the_middle",
        say!["A knot or a notch in the middle, or two people on one spot, can make it break."],
    ));
    if question.input.wood.is_unverified() {
        notes.push(Note::new(
            "strength_is_unverified",
            say!["The strength of this wood is from memory, unverified. Look it up."],
        ));
    }
    notes
}

/// Below this span over depth the sag from shear counts; the stiffness of the tables was measured
/// at 14.
const SHORT_BEAM: f64 = 14.0;

fn working(question: &Question, answer: &Answer, bench: &Bench) -> Result<Working, OutOfRange> {
    let (input, bend) = (&question.input, answer.bend);
    // Exact where it can be kept so.
    let bay = match question.span / input.middle_supports.saturating_add(1) {
        Ok(bay) => bay,
        Err(_) => Length::near(bend.bay)?,
    };
    let stretches = Term::of("middle supports", input.middle_supports) + Term::fixed(1);
    let mut steps = vec![
        Step::of("one stretch", Term::of("span", question.span) / stretches, bay),
        inertia(question),
        Step::of(
            "W on one piece",
            load_on_one(input, bay),
            Value::Real(input.load.shared_by(input.sharing).total(bend.bay), 1, "lb"),
        ),
    ];
    if let Some((species, moisture)) = input.wood.species {
        steps.push(Step::in_words(
            "stiffness at its moisture = P12 × (P12 ÷ Pg)^((12 - M) ÷ (Mp - 12))",
            say![format!("{}, {moisture} %", species.name)],
            Value::Real(input.wood.stiffness, 0, "psi"),
        ));
    }
    let [sag, moment] = bending(input, bend, bay, bench);
    steps.push(sag);
    let is_overhang = input.load.loading().is_some_and(|loading| loading.is_overhang());
    let length = if is_overhang {
        Term::fixed(2) * Term::of("overhang", bay)
    } else {
        Term::of("stretch", bay)
    };
    let limit = Term::of("limit", question.limit.span_over_sag);
    steps.push(Step::of("sag to let pass", length / limit, fine(bend.most_sag, bench)));
    steps.extend([moment, modulus(question)]);
    let moment = Term::of("moment", Amount::real(bend.moment, "in·lb"));
    let modulus = Term::of("S", Amount::real(input.section.modulus(), ""));
    let mut stress = Step::of("stress", moment / modulus, Value::Real(bend.stress, 0, "psi"));
    stress.put_in.0.push(format!(", limit {}", Amount::real(input.most_stress, "psi")).into());
    steps.push(stress);
    if let Some(sudden) = bend.sudden_stress {
        let at_rest = Term::of("stress", Amount::real(bend.stress, "psi"));
        let fixed = |factor: f64| Term::fixed(Amount::real(factor, ""));
        let psi = |stress| Value::Real(stress, 0, "psi");
        steps.push(Step::of("put on suddenly", fixed(SUDDENLY) * at_rest, psi(sudden)));
        let limit = Term::of("limit", Amount::real(input.most_stress, "psi"));
        let most = psi(FOR_A_MOMENT * input.most_stress);
        steps.push(Step::of("let pass for a moment", fixed(FOR_A_MOMENT) * limit, most));
    }
    Ok(Working { steps, sources: sources(question, answer) })
}

fn pi() -> Term {
    Term::fixed("π".to_owned())
}

fn inertia(question: &Question) -> Step {
    let gives = Value::Real(question.input.section.inertia(), 4, "in⁴");
    match question.sides {
        Sides::Plank { across, depth } => {
            // Plain numbers: no unit is an inch to the fourth power.
            let depth = || Term::of("depth", depth.in_inches());
            let width = Term::of("width", across.in_inches());
            Step::of("I", width * depth() * depth() * depth() / Term::fixed(12), gives)
        }
        Sides::Round(diameter) => {
            let diameter = Term::of("diameter", diameter.in_inches()).to_the_fourth();
            Step::of("I", pi() * diameter / Term::fixed(64), gives)
        }
    }
}

fn modulus(question: &Question) -> Step {
    let gives = Value::Real(question.input.section.modulus(), 4, "in³");
    match question.sides {
        Sides::Plank { across, depth } => {
            let depth = || Term::of("depth", depth.in_inches());
            let width = Term::of("width", across.in_inches());
            Step::of("S", width * depth() * depth() / Term::fixed(6), gives)
        }
        Sides::Round(diameter) => {
            let diameter = Term::of("diameter", diameter.in_inches()).cubed();
            Step::of("S", pi() * diameter / Term::fixed(32), gives)
        }
    }
}

/// What one piece bears on one stretch.
fn load_on_one(input: &Input, bay: Length) -> Term {
    let pounds = |pounds: f64| Amount::real(pounds, "lb");
    let evenly = |per_inch: f64| {
        let per_foot = per_inch * Unit::Foot.in_inches().to_f64();
        let on_each_foot = Term::of("load on each foot", pounds(per_foot));
        on_each_foot * Term::of("L", bay.in_inches()) / Term::fixed(12)
    };
    let all = match &input.load {
        Load::Point(_, load) => Term::of("load", pounds(*load)),
        Load::Even(_, per_inch) => evenly(*per_inch),
        Load::Several { points, even } => {
            let at_places = points.iter().map(|(_, load)| load).sum();
            Term::of("load at the places", pounds(at_places)) + evenly(*even)
        }
    };
    all / Term::of("pieces", input.sharing)
}

/// The sag and the moment.
fn bending(input: &Input, bend: Bend, bay: Length, bench: &Bench) -> [Step; 2] {
    let load = input.load.shared_by(input.sharing);
    let total = load.total(bend.bay);
    let (sag, moment) = (fine(bend.sag, bench), Value::Real(bend.moment, 0, "in·lb"));
    let Some(loading) = load.loading() else {
        let numbers = format!(
            "W {total:.1} lb, L {:.2} in, E {:.0} psi, I {:.4}",
            bend.bay,
            input.wood.stiffness,
            input.section.inertia()
        );
        let rule = "sag = sum of the sags of all loads, where it is greatest";
        let sag = Step::in_words(rule, say![numbers.clone()], sag);
        return [sag, Step::in_words("moment, where it is greatest", say![numbers], moment)];
    };
    let real = |name, number, unit| Term::of(name, Amount::real(number, unit));
    let force = || real("W", total, "lb");
    let stiff = real("E", input.wood.stiffness, "psi") * real("I", input.section.inertia(), "");
    // In inches, as E and I are.
    let cube = Term::of("L", bay.in_inches()).cubed();
    let factor = real("km", loading.moment_factor(), "");
    [
        Step::of("sag", real("kb", loading.sag_factor(), "") * force() * cube / stiff, sag),
        Step::of("moment", factor * force() * Term::of("L", bay), moment),
    ]
}

/// The document behind [`FOR_A_MOMENT`].
const MOMENT_SOURCE: &str =
    "AWC NDS 2018, Table 2.3.2 and its note 2: 1.6 at most for treated wood, even for impact";

fn sources(question: &Question, answer: &Answer) -> Vec<Source> {
    let input = &question.input;
    let mut sources = vec![match input.load.loading() {
        Some(_) => Source::Published(LOADING_SOURCE),
        None => Source::Arithmetic,
    }];
    if question.load_source != Source::Arithmetic {
        sources.push(question.load_source);
    }
    sources.push(question.limit.source.map_or(Source::CommonPractice, Source::Published));
    if input.wood.species.is_some() {
        let document = input.wood.document();
        sources.push(if input.wood.is_unverified() {
            Source::Unverified(document)
        } else {
            Source::Published(document)
        });
        sources.push(Source::Published(
            "USDA FPL Wood Handbook, FPL-GTR-282 (2021), Equation 5-3 and Table 5-13; green over dry \
             from Army TM 5-852-4 Table 2-2",
        ));
    }
    if answer.bend.sudden_stress.is_some() {
        sources.push(Source::Published(MOMENT_SOURCE));
    }
    if answer.bend.bay < SHORT_BEAM * input.section.depth() {
        sources
            .push(Source::Unverified("USDA FPL Wood Handbook, FPL-GTR-190, Table 5-3 footnote c"));
    }
    if !sources.contains(&Source::CommonPractice) {
        // The stress limit, the unknown softwood and the growth over years.
        sources.push(Source::CommonPractice);
    }
    sources
}
