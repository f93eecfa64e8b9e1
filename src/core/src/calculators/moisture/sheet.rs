//! How the answers about moisture are laid out.

mod told;

use super::movement::{Moistures, Wood};
use super::{Problem, air, board, drawing, fields, gap, swing};
use crate::calculators::{Calculator, ResultKind, ResultSpec, Stage};
use crate::measure::text::exact_text;
use crate::measure::{Length, Rounding};
use crate::say;
use crate::sheet::{
    self, Ask, Bench, Caution, Figure, Problems, Source, Step, Table, Value, Working,
};

/// Wet and dry: one board, gaps, the year, the air.
pub const CALCULATOR: Calculator = Calculator {
    slug: "moisture",
    title: "Wet and dry",
    question: "How wide will it be when it dries, and which gap do I leave?",
    stage: Stage::Wood,
    fields: fields::FIELDS,
    results: RESULTS,
    work,
};

const RESULTS: &[ResultSpec] = &[
    ResultSpec { id: "width_later", label: "Width later", kind: ResultKind::Length },
    ResultSpec { id: "thickness_later", label: "Thickness later", kind: ResultKind::Length },
    ResultSpec { id: "change", label: "Change of width", kind: ResultKind::Length },
    ResultSpec { id: "least", label: "If it moves least", kind: ResultKind::Length },
    ResultSpec { id: "most", label: "If it moves most", kind: ResultKind::Length },
    ResultSpec { id: "gap_now", label: "Gap to leave today", kind: ResultKind::Length },
    ResultSpec { id: "gap_later", label: "Gap later", kind: ResultKind::Length },
    ResultSpec { id: "top_now", label: "Whole width today", kind: ResultKind::Length },
    ResultSpec { id: "top_later", label: "Whole width later", kind: ResultKind::Length },
    ResultSpec { id: "panel_later", label: "As one panel, later", kind: ResultKind::Length },
    ResultSpec { id: "swing", label: "Swing", kind: ResultKind::Length },
    ResultSpec { id: "by_green_size", label: "By the green size", kind: ResultKind::Length },
    ResultSpec { id: "never_closes", label: "Gap that never closes", kind: ResultKind::Length },
    ResultSpec { id: "driest", label: "Moisture, driest", kind: ResultKind::Number },
    ResultSpec { id: "wettest", label: "Moisture, wettest", kind: ResultKind::Number },
    ResultSpec { id: "newer", label: "By the newer formula", kind: ResultKind::Number },
    ResultSpec { id: "sizes", label: "Today and later", kind: ResultKind::Table },
];

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let bench = ask.bench();
    let found: Result<sheet::Answer, Problems<Problem>> = match ask.choice(ask.field("ask")).id {
        "gap" => {
            let input = fields::gap(ask)?;
            gap::reckon(&input).map(|answer| lay_out_gap(&input, &answer, bench))
        }
        "swing" => {
            let input = fields::swing(ask)?;
            swing::reckon(&input).map(|answer| lay_out_swing(&input, &answer, bench))
        }
        "air" => {
            let input = fields::air(ask)?;
            Ok(lay_out_air(&input, &air::reckon(&input)))
        }
        _ => {
            let input = fields::board(ask)?;
            board::reckon(&input).map(|answer| lay_out_board(&input, &answer, bench))
        }
    };
    found.map_or_else(|problems| ask.refuse(&problems), Some)
}

fn nearest(length: Length) -> Value {
    Value::Length(length, Rounding::Nearest)
}

/// The least and the most as two figures, where they are known.
fn ends(from: &'static str, ends: Option<(Length, Length)>) -> Vec<Figure> {
    ends.map_or_else(Vec::new, |(least, most)| {
        vec![
            Figure::length("least", "If it moves least", from, least),
            Figure::length("most", "If it moves most", from, most),
        ]
    })
}

fn lay_out_board(input: &board::Input, answer: &board::Answer, bench: &Bench) -> sheet::Answer {
    let headline = Figure::length("width_later", "Width later", "edge to edge", answer.width);
    let mut steps = told::factor_steps(input.wood, input.moistures, &answer.width_spread);
    steps.push(Step::length(
        "width later = width today × later over today",
        say![exact_text(input.width)],
        answer.width,
    ));
    if let Some(thickness) = answer.thickness {
        steps.push(Step::length(
            "thickness later, the same with its own figure",
            say![exact_text(input.thickness)],
            thickness,
        ));
    }
    let spreads: Vec<_> =
        core::iter::once(&answer.width_spread).chain(&answer.thickness_spread).collect();
    let sources = told::sources(&spreads);
    let mut sheet = sheet::Answer::new(headline, Working { steps, sources });
    let lost = (input.width - answer.width).unwrap_or(Length::ZERO);
    let label = if lost.is_negative() { "It gains" } else { "It loses" };
    sheet.figures = vec![Figure::length("change", label, "of its width", lost.abs())];
    let row = |name: &'static str, now, later| {
        vec![Value::Words(say![name]), nearest(now), nearest(later)]
    };
    let mut rows = vec![row("Width", input.width, answer.width)];
    if let Some(thickness) = answer.thickness {
        let figure =
            Figure::length("thickness_later", "Thickness later", "face to face", thickness);
        sheet.figures.insert(0, figure);
        rows.push(row("Thickness", input.thickness, thickness));
    }
    sheet.figures.extend(ends("edge to edge", answer.width_ends));
    let columns = &["Side", "Today", "Later"];
    sheet.tables = vec![Table { id: "sizes", title: "Today and later", columns, rows }];
    sheet.notes = told::notes(input.wood, &spreads);
    if answer.thickness.is_none() {
        sheet.notes.push(say!["How its thickness moves is not known, and is left out."]);
    }
    sheet.notes.push(say!["Along the grain wood hardly moves: cut lengths stay."]);
    sheet.cautions = vec![Caution::TreatedWood];
    sheet.drawing = Some(drawing::board(input, answer, bench));
    sheet
}

fn lay_out_gap(input: &gap::Input, answer: &gap::Answer, bench: &Bench) -> sheet::Answer {
    let now = Figure::length("gap_now", "Gap to leave today", "board to board", answer.gap_now);
    let later = Figure::length("gap_later", "Gap later", "board to board", answer.gap_later);
    let (headline, other) = match input.known {
        gap::Known::Today(_) => (later, now),
        gap::Known::Later(_) => (now, later),
    };
    let mut steps = told::factor_steps(input.wood, input.moistures, &answer.spread);
    steps.push(Step::length(
        "one board later = width today × later over today",
        say![exact_text(input.width)],
        answer.width_later,
    ));
    steps.push(Step::length(
        "gap later = gap today + width today - width later",
        say![answer.gap_now, " + ", input.width, " - ", answer.width_later],
        answer.gap_later,
    ));
    steps.push(Step::length(
        "whole width later = (boards - 1) × (width today + gap today) + width later",
        say![
            format!("({} - 1) × (", input.boards),
            input.width,
            " + ",
            answer.gap_now,
            ") + ",
            answer.width_later
        ],
        answer.top_later,
    ));
    let mut sources = told::sources(&[&answer.spread]);
    sources.push(Source::CommonPractice);
    let mut sheet = sheet::Answer::new(headline, Working { steps, sources });
    sheet.figures = vec![
        other,
        Figure::length("top_now", "Whole width today", "edge to edge", answer.top_now),
        Figure::length("top_later", "Whole width later", "edge to edge", answer.top_later),
        Figure::length("panel_later", "As one panel, later", "edge to edge", answer.panel_later),
        Figure::length("width_later", "One board later", "edge to edge", answer.width_later),
    ];
    sheet.figures.extend(ends("gap later", answer.gap_ends));
    sheet.notes = told::notes(input.wood, &[&answer.spread]);
    if answer.gap_ends.is_some_and(|(least, most)| least.is_negative() || most.is_negative()) {
        sheet.notes.push(say!["Boards that move most would press on each other: leave more."]);
    }
    sheet.notes.push(say![
        "Each board is held at its own middle, so the outer edges move by half a board's loss."
    ]);
    sheet.notes.push(say![
        "Builders disagree on wet boards: laid tight, or a nail apart. Seasoned, the gap sought is ",
        Length::sixty_fourths(8),
        " to ",
        Length::sixty_fourths(16),
        "."
    ]);
    sheet.cautions = vec![Caution::TreatedWood];
    sheet.drawing = Some(drawing::gaps(input, answer, bench));
    sheet
}

fn lay_out_swing(input: &swing::Input, answer: &swing::Answer, bench: &Bench) -> sheet::Answer {
    let headline = Figure::length("swing", "Swing", "driest to wettest", answer.swing);
    let mut steps = Vec::new();
    let Moistures { from, to, .. } = input.moistures;
    if input.wood == Wood::OrdinarySoftwood {
        steps.push(Step::length(
            "swing = width × (lost when driest - lost when wettest)",
            say![format!(
                "{} × ({} - {}) %",
                exact_text(input.width),
                told::lost_text(from),
                told::lost_text(to)
            )],
            answer.swing,
        ));
    }
    steps.extend(told::factor_steps(input.wood, input.moistures, &answer.spread));
    steps.push(Step::length(
        "by the green size: width × (later over today - 1)",
        say![exact_text(input.width)],
        answer.by_green_size,
    ));
    let mut sheet =
        sheet::Answer::new(headline, Working { steps, sources: told::sources(&[&answer.spread]) });
    sheet.figures = vec![Figure {
        id: "never_closes",
        label: "Gap that never closes",
        from: "left when driest",
        value: Value::Length(answer.never_closes, Rounding::Up),
    }];
    if input.wood == Wood::OrdinarySoftwood {
        let from = "driest to wettest";
        sheet.figures.push(Figure::length(
            "by_green_size",
            "By the green size",
            from,
            answer.by_green_size,
        ));
    }
    sheet.figures.extend(ends("swing", answer.ends));
    sheet.notes = told::notes(input.wood, &[&answer.spread]);
    sheet.drawing = Some(drawing::swing(input, answer, bench));
    sheet
}

fn lay_out_air(input: &air::Input, answer: &air::Answer) -> sheet::Answer {
    let percent =
        |id, label, number| Figure { id, label, from: "", value: Value::Real(number, 1, "%") };
    let is_range = answer.driest < answer.wettest;
    let headline = if is_range {
        percent("driest", "Wood, driest", answer.driest)
    } else {
        percent("driest", "Wood settles at", answer.driest)
    };
    let mut sheet = sheet::Answer::new(headline, told::air_working(input, answer));
    if is_range {
        sheet.figures.push(percent("wettest", "Wood, wettest", answer.wettest));
    }
    if let Some(newer) = answer.newer {
        sheet.figures.push(percent("newer", "By the newer formula", newer));
    }
    sheet.notes = vec![
        say![
            "Under cover and given time. Rain, sun and bare ground change it more than the town does."
        ],
        say!["Use it as the moisture later."],
    ];
    if answer.newer.is_some() {
        sheet
            .notes
            .insert(0, say!["Printed tables differ from the formula by up to half a point."]);
    }
    sheet.drawing = Some(drawing::air(answer));
    sheet
}
