//! How the answer of the strength check is laid out.

use super::fields::{self, FIELDS, Question};
use super::{Answer, Bend, Section, Verdict, drawing, reckon};
use crate::calculators::{Calculator, ResultKind, ResultSpec, Stage};
use crate::measure::{Length, OutOfRange, Rounding, Unit};
use crate::say;
use crate::sheet::{
    self, Ask, Bench, Caution, Face, Figure, Note, Problems, Sentence, Source, Step, Table, Value,
    Working, face,
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

const RESULTS: &[ResultSpec] = &[
    ResultSpec { id: "verdict", label: "Verdict", kind: ResultKind::Words },
    ResultSpec { id: "sag", label: "Sag", kind: ResultKind::Number },
    ResultSpec { id: "most_sag", label: "Sag to let pass", kind: ResultKind::Number },
    ResultSpec { id: "stress", label: "Bending stress", kind: ResultKind::Number },
    ResultSpec { id: "longest_span", label: "Longest span", kind: ResultKind::Length },
    ResultSpec { id: "least_depth", label: "Least depth", kind: ResultKind::Length },
    ResultSpec { id: "later_sag", label: "Sag after years", kind: ResultKind::Number },
    ResultSpec { id: "dropped_sag", label: "Sag when dropped on", kind: ResultKind::Number },
    ResultSpec { id: "clamped_sag", label: "Sag with ends held stiff", kind: ResultKind::Number },
    ResultSpec {
        id: "turned_ratio",
        label: "Turned over, times as stiff",
        kind: ResultKind::Number,
    },
    ResultSpec { id: "rupture", label: "Clear wood breaks near", kind: ResultKind::Number },
    ResultSpec { id: "left_support", label: "On the left support", kind: ResultKind::Number },
    ResultSpec { id: "right_support", label: "On the right support", kind: ResultKind::Number },
    ResultSpec { id: "soil_volume", label: "Soil", kind: ResultKind::Number },
    ResultSpec { id: "soil_weight", label: "Soil, wet", kind: ResultKind::Number },
    ResultSpec { id: "ways", label: "Ways to build it", kind: ResultKind::Table },
    ResultSpec { id: "limits", label: "Longest and least", kind: ResultKind::Table },
];

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let question = fields::read(ask)?;
    let bench = ask.bench();
    let sheet = reckon(&question.input).and_then(|answer| {
        lay_out(&question, &answer, bench)
            .map_err(|out_of_range| Problems::from(super::Problem::from(out_of_range)))
    });
    sheet.map_or_else(|problems| ask.refuse(&problems), Some)
}

/// A sag: finer than any tape, so as a decimal in the unit of the tape.
fn fine(inches: f64, bench: &Bench) -> Value {
    match bench.tape.unit() {
        Unit::Inch | Unit::Foot => Value::Real(inches, 3, "in"),
        _ => Value::Real(inches / Unit::Millimetre.in_inches().to_f64(), 1, "mm"),
    }
}

/// The same for a drawing.
pub(super) fn fine_text(inches: f64, bench: &Bench) -> String {
    match face(&fine(inches, bench), bench) {
        Face::Line { text, .. } => text,
        Face::Measure(shown) => shown.exact,
        Face::Measures(_) => String::new(),
    }
}

fn lay_out(
    question: &Question,
    answer: &Answer,
    bench: &Bench,
) -> Result<sheet::Answer, OutOfRange> {
    let headline = Figure {
        id: "verdict",
        label: "Verdict",
        from: "",
        value: Value::Words(say![answer.bend.verdict.word()]),
    };
    let mut sheet = sheet::Answer::new(headline, working(question, answer, bench)?);
    sheet.figures = figures(question, answer, bench);
    sheet.tables = tables(question, answer, bench);
    sheet.notes = notes(question, answer);
    sheet.cautions = vec![Caution::Load];
    sheet.drawing = Some(drawing::draw(&question.input, answer, bench));
    Ok(sheet)
}

fn figures(question: &Question, answer: &Answer, bench: &Bench) -> Vec<Figure> {
    let bend = answer.bend;
    let figure = |id, label, from, value| Figure { id, label, from, value };
    let pounds = |pounds| Value::Real(pounds, 0, "lb");
    let mut figures = vec![
        figure("sag", "Sag", "below straight", fine(bend.sag, bench)),
        figure("most_sag", "Sag to let pass", "", fine(bend.most_sag, bench)),
        figure("stress", "Bending stress", "", Value::Real(bend.stress, 0, "psi")),
    ];
    if let Some(longest) = answer.longest_span() {
        let value = Value::Length(longest, Rounding::Down);
        figures.push(figure("longest_span", "Longest span", "support to support", value));
    }
    let (label, value) = match question.input.section {
        Section::Plank { .. } => ("Least depth", answer.least_depth()),
        Section::Round { .. } => ("Least diameter", answer.least_depth()),
    };
    figures.push(figure("least_depth", label, "", Value::Length(value, Rounding::Up)));
    if question.soil.is_some() || is_even(question) {
        let value = fine(bend.sag * (1.0 + CREEP), bench);
        figures.push(figure("later_sag", "Sag after years", "under a standing load", value));
    } else {
        let value = fine(bend.sag * DROPPED, bench);
        figures.push(figure("dropped_sag", "Sag when dropped on", "below straight", value));
    }
    if let Some(sag) = answer.clamped_sag {
        figures.push(figure(
            "clamped_sag",
            "Sag with ends held stiff",
            "at best",
            fine(sag, bench),
        ));
    }
    if let Section::Plank { across, depth } = question.input.section
        && answer.turned.is_some()
    {
        let value = Value::Real((across / depth) * (across / depth), 1, "times");
        figures.push(figure("turned_ratio", "Turned over, as stiff", "", value));
    }
    if let Some(psi) = question.input.wood.rupture {
        figures.push(figure("rupture", "Clear wood breaks near", "", Value::Real(psi, 0, "psi")));
    }
    if let Some((left, right)) = answer.on_supports {
        figures.push(figure("left_support", "On the left support", "each piece", pounds(left)));
        figures.push(figure("right_support", "On the right support", "each piece", pounds(right)));
    }
    if let Some(soil) = question.soil {
        figures.push(figure("soil_volume", "Soil", "", Value::Real(soil.cubic_feet, 1, "cu ft")));
        figures.push(figure("soil_weight", "Soil, wet", "", pounds(soil.pounds)));
    }
    figures
}

/// A standing load sags about half as much again over years: common practice, no source.
const CREEP: f64 = 0.5;

/// A load let go all at once bends a spring twice as far as the same load at rest.
const DROPPED: f64 = 2.0;

fn is_even(question: &Question) -> bool {
    matches!(question.input.load, super::Load::Even(..))
}

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
    let ways = Table {
        id: "ways",
        title: "Ways to build it",
        columns: &["Way", "Sag", "Stress", "Verdict"],
        rows,
    };
    let limit = |name: &'static str, limit: super::Limit| {
        let span = match limit.longest_span {
            Some(span) => Value::Length(span, Rounding::Down),
            None => Value::Words(say!["not told"]),
        };
        vec![Value::Words(say![name]), span, Value::Length(limit.least_depth, Rounding::Up)]
    };
    let limits = Table {
        id: "limits",
        title: "Longest and least",
        columns: &["To keep", "Longest span", "Least depth"],
        rows: vec![limit("the sag", answer.for_sag), limit("the stress", answer.for_stress)],
    };
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
        Verdict::Stiff => say!["Stiff: the sag and the stress are within their limits."],
        Verdict::Springy => say!["Springy: strong enough, but it sags more than the limit."],
        Verdict::Dont => {
            say!["Don't: the bending stress is over the limit. Put in a support, or go deeper."]
        }
    }];
    notes.push(case);
    if question.input.middle_supports > 0 {
        notes.push(say![
            "Each stretch between supports is taken as a beam of its own, on the safe side."
        ]);
    }
    if answer.clamped_sag.is_some() {
        notes.push(say!["Ends that are screwed on lie between resting and held stiff."]);
    }
    if bend.bay < SHORT_BEAM * question.input.section.depth() {
        notes.push(say!["Short for its depth: sag from shear is left out, and adds to this."]);
    }
    notes.push(say![
        "A knot or a notch in the middle, or two people on one spot, can make it break."
    ]);
    if question.input.wood.is_unverified() {
        notes.push(say!["The strength of this wood is from memory, unverified. Look it up."]);
    }
    notes
}

/// Below this span over depth the sag from shear counts; the stiffness of the tables was measured
/// at 14.
const SHORT_BEAM: f64 = 14.0;

fn working(question: &Question, answer: &Answer, bench: &Bench) -> Result<Working, OutOfRange> {
    let (input, bend) = (&question.input, answer.bend);
    let load = input.load.shared_by(input.sharing);
    let section = input.section;
    let mut steps = vec![
        Step {
            rule: "one stretch = span ÷ (middle supports + 1)".into(),
            put_in: say![Length::near(input.span)?, format!(" ÷ ({} + 1)", input.middle_supports)],
            gives: Value::Length(Length::near(bend.bay)?, Rounding::Nearest),
        },
        Step {
            rule: match section {
                Section::Plank { .. } => "I = width × depth³ ÷ 12",
                Section::Round { .. } => "I = π × diameter⁴ ÷ 64",
            }
            .into(),
            put_in: sizes(section)?,
            gives: Value::Real(section.inertia(), 4, "in⁴"),
        },
        Step {
            rule: "load on one piece of one stretch".into(),
            put_in: question.case.clone(),
            gives: Value::Real(load.total(bend.bay), 1, "lb"),
        },
    ];
    if let Some((species, moisture)) = input.wood.species {
        steps.push(Step {
            rule: "stiffness at its moisture = P12 × (P12 ÷ Pg)^((12 - M) ÷ (Mp - 12))".into(),
            put_in: say![format!("{}, {moisture} %", species.name)],
            gives: Value::Real(input.wood.stiffness, 0, "psi"),
        });
    }
    let (sag_rule, moment_rule) = match load.loading() {
        Some(_) => ("sag = kb × W × L³ ÷ (E × I)", "moment = km × W × L"),
        None => (
            "sag = sum of the sags of all loads, where it is greatest",
            "moment, where it is greatest",
        ),
    };
    let factors = load.loading().map_or_else(String::new, |loading| {
        format!("kb {:.5}, km {:.3}, ", loading.sag_factor(), loading.moment_factor())
    });
    let numbers = format!(
        "{factors}W {:.1} lb, L {:.2} in, E {:.0} psi, I {:.4}",
        load.total(bend.bay),
        bend.bay,
        input.wood.stiffness,
        section.inertia()
    );
    steps.push(Step {
        rule: sag_rule.into(),
        put_in: say![numbers.clone()],
        gives: fine(bend.sag, bench),
    });
    steps.push(Step {
        rule: "sag to let pass = span ÷ limit; for an overhang, twice the overhang".into(),
        put_in: say![format!("{:.2} in, 1/{}", bend.bay, question.limit.span_over_sag)],
        gives: fine(bend.most_sag, bench),
    });
    steps.push(Step {
        rule: moment_rule.into(),
        put_in: say![numbers],
        gives: Value::Real(bend.moment, 0, "in·lb"),
    });
    steps.push(Step {
        rule: match section {
            Section::Plank { .. } => "stress = moment ÷ (width × depth² ÷ 6)",
            Section::Round { .. } => "stress = moment ÷ (π × diameter³ ÷ 32)",
        }
        .into(),
        put_in: say![format!(
            "{:.0} ÷ {:.4}, limit {} psi",
            bend.moment,
            section.modulus(),
            input.most_stress
        )],
        gives: Value::Real(bend.stress, 0, "psi"),
    });
    Ok(Working { steps, sources: sources(question, answer) })
}

fn sizes(section: Section) -> Result<Sentence, OutOfRange> {
    Ok(match section {
        Section::Plank { across, depth } => {
            say![Length::near(across)?, " across, ", Length::near(depth)?, " deep"]
        }
        Section::Round { diameter } => say![Length::near(diameter)?],
    })
}

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
