//! How the answers about lumber are laid out.

use super::fields::{self, Covering, FIELDS, Weighing};
use super::{amount, cover, drawing, size, weight};
use crate::calculators::{Calculator, ResultKind, ResultSpec, Stage};
use crate::measure::text::{decimal, exact_text};
use crate::measure::{Length, Number, Rounding, Unit};
use crate::say;
use crate::sheet::{self, Ask, Bench, Caution, Figure, Note, Source, Step, Table, Value, Working};
use crate::tables::lumber;

/// Lumber: real size, board feet, weight, boards for a width.
pub const CALCULATOR: Calculator = Calculator {
    slug: "lumber",
    title: "Lumber",
    question: "What does this board really measure, cost and weigh?",
    stage: Stage::Wood,
    fields: FIELDS,
    results: RESULTS,
    work,
};

const RESULTS: &[ResultSpec] = &[
    ResultSpec { id: "width", label: "Width", kind: ResultKind::Length },
    ResultSpec { id: "thickness", label: "Thickness", kind: ResultKind::Length },
    ResultSpec { id: "sizes", label: "Dry and green", kind: ResultKind::Table },
    ResultSpec { id: "board_feet", label: "Board feet", kind: ResultKind::Number },
    ResultSpec { id: "board_feet_each", label: "Board feet, one board", kind: ResultKind::Number },
    ResultSpec { id: "linear_feet", label: "Feet of length", kind: ResultKind::Number },
    ResultSpec { id: "total", label: "Price of all", kind: ResultKind::Number },
    ResultSpec { id: "per_piece", label: "Price of a board", kind: ResultKind::Number },
    ResultSpec { id: "per_foot", label: "Price of a foot", kind: ResultKind::Number },
    ResultSpec { id: "per_board_foot", label: "Price of a board foot", kind: ResultKind::Number },
    ResultSpec { id: "weight", label: "Weight of a board", kind: ResultKind::Number },
    ResultSpec { id: "weight_all", label: "Weight of all", kind: ResultKind::Number },
    ResultSpec { id: "weight_dry", label: "The same at 12 %", kind: ResultKind::Number },
    ResultSpec { id: "density", label: "Density", kind: ResultKind::Number },
    ResultSpec { id: "boards", label: "Boards to buy", kind: ResultKind::Count },
    ResultSpec { id: "rows", label: "Boards laid", kind: ResultKind::Count },
];

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    match ask.choice(ask.field("ask")).id {
        "amount" => {
            let input = fields::amount(ask)?;
            match amount::reckon(&input) {
                Ok(answer) => Some(lay_out_amount(&input, &answer, ask.bench())),
                Err(problems) => ask.refuse(&problems),
            }
        }
        "weight" => {
            let weighing = fields::weighing(ask)?;
            let found = size::reckon(&weighing.size).and_then(|size| {
                weight::reckon(&weighing.input(&size)).map(|weight| (size, weight))
            });
            match found {
                Ok((size, weight)) => Some(lay_out_weight(&weighing, &size, &weight, ask.bench())),
                Err(problems) => ask.refuse(&problems),
            }
        }
        "cover" => {
            let covering = fields::covering(ask)?;
            let found = size::reckon(&covering.size)
                .and_then(|size| cover::reckon(&covering.input(&size)).map(|cover| (size, cover)));
            match found {
                Ok((size, cover)) => Some(lay_out_cover(&covering, &size, &cover, ask.bench())),
                Err(problems) => ask.refuse(&problems),
            }
        }
        _ => {
            let input = fields::size(ask)?;
            match size::reckon(&input) {
                Ok(answer) => Some(lay_out_size(&input, &answer, ask.bench())),
                Err(problems) => ask.refuse(&problems),
            }
        }
    }
}

/// Half of a pair of sizes: where it comes from.
fn side_step(rule: &'static str, nominal: Length, measured: Option<Length>, found: Length) -> Step {
    let put_in = match measured {
        Some(_) => say!["measured on this board"],
        None => say![format!("nominal {}", exact_text(nominal))],
    };
    Step::length(rule, put_in, found)
}

fn size_steps(input: &size::Input, answer: &size::Answer) -> Vec<Step> {
    vec![
        side_step(
            "thickness = as measured, or else the dressed size of the table",
            input.nominal_thickness,
            input.measured_thickness,
            answer.thickness,
        ),
        side_step(
            "width = as measured, or else the dressed size of the table",
            input.nominal_width,
            input.measured_width,
            answer.width,
        ),
    ]
}

fn lay_out_size(input: &size::Input, answer: &size::Answer, bench: &Bench) -> sheet::Answer {
    let headline = Figure::length("width", "Width", "edge to edge", answer.width);
    let working = Working {
        steps: size_steps(input, answer),
        sources: vec![Source::Published(lumber::SOURCE)],
    };
    let mut sheet = sheet::Answer::new(headline, working);
    sheet.figures =
        vec![Figure::length("thickness", "Thickness", "face to face", answer.thickness)];
    if let (Some(thickness), Some(width)) = (answer.thickness_row, answer.width_row) {
        let row = |name: &'static str, thickness: Length, width: Length| {
            let nearest = |length| Value::Length(length, Rounding::Nearest);
            vec![Value::Words(say![name]), nearest(thickness), nearest(width)]
        };
        sheet.tables = vec![Table {
            id: "sizes",
            title: "Dry and green",
            columns: &["Dressed", "Thickness", "Width"],
            rows: vec![
                row("Dry", thickness.dry, width.dry),
                row("Green", thickness.green, width.green),
            ],
        }];
    }
    sheet.notes = size_notes(input, answer);
    sheet.drawing = Some(drawing::end_view(input, answer, bench));
    sheet
}

fn size_notes(input: &size::Input, answer: &size::Answer) -> Vec<Note> {
    let mut notes = vec![say![
        "These are least sizes at the mill. Measure each board, not the stack: the tag is a name."
    ]];
    let standard = answer.width_row.map(|row| row.dressed(input.seasoning));
    if let (Some(measured), Some(standard)) = (input.measured_width, standard)
        && let Ok(over) = measured - standard
        && !over.is_zero()
    {
        let words = if over.is_positive() { " over" } else { " under" };
        let mut note = say!["This board is ", over.abs(), words, " the table."];
        if over.is_positive() {
            note.0.extend(say![" It may still be wet, and shrink."].0);
        }
        notes.push(note);
    }
    notes
}

fn lay_out_amount(input: &amount::Input, answer: &amount::Answer, bench: &Bench) -> sheet::Answer {
    let figure = |id, label, number, unit| Figure {
        id,
        label,
        from: "",
        value: Value::Exact(number, 2, unit),
    };
    let headline = figure("board_feet", "Board feet", answer.total, "bd ft");
    let mut sheet = sheet::Answer::new(headline, amount_working(input, answer));
    if let Some(prices) = answer.prices {
        sheet.figures = vec![
            figure("total", "Price of all", prices.total, ""),
            figure("per_piece", "Price of a board", prices.piece, ""),
            figure("per_foot", "Price of a foot", prices.foot, ""),
            figure("per_board_foot", "Price of a board foot", prices.board_foot, ""),
        ];
    }
    sheet.figures.push(figure("board_feet_each", "Board feet, one board", answer.each, "bd ft"));
    sheet.figures.push(figure("linear_feet", "Feet of length", answer.linear_feet, "ft"));
    sheet.notes = vec![say!["Board feet go by the tag, not by the real size."]];
    if input.nominal_thickness.in_inches() < Number::ONE {
        sheet.notes.push(say![
            "Under 1 in counts as 1 in here. Some yards sell thin stock by the square foot of face."
        ]);
    }
    sheet.drawing = Some(drawing::face_view(input.nominal_width, input.length, input.count, bench));
    sheet
}

fn amount_working(input: &amount::Input, answer: &amount::Answer) -> Working {
    let feet = |length: Length| {
        length.in_unit(Unit::Foot).map_or_else(|_| String::new(), |feet| decimal(feet, 3))
    };
    let board_feet = |number| Value::Exact(number, 3, "bd ft");
    let mut steps = vec![
        Step {
            rule: "board feet = nominal thickness in × nominal width in ÷ 12 × length in ft".into(),
            put_in: say![format!(
                "{} × {} ÷ 12 × {} ft",
                exact_text(input.nominal_thickness),
                exact_text(input.nominal_width),
                feet(input.length)
            )],
            gives: board_feet(answer.each),
        },
        Step {
            rule: "all = boards × one".into(),
            put_in: say![format!("{} × {}", input.count, decimal(answer.each, 3))],
            gives: board_feet(answer.total),
        },
    ];
    if let Some(prices) = answer.prices {
        steps.push(Step {
            rule: "price of a foot = price of a board ÷ its feet".into(),
            put_in: say![format!("{} ÷ {}", decimal(prices.piece, 2), feet(input.length))],
            gives: Value::Exact(prices.foot, 2, ""),
        });
        steps.push(Step {
            rule: "price of a board foot = price of a board ÷ its board feet".into(),
            put_in: say![format!("{} ÷ {}", decimal(prices.piece, 2), decimal(answer.each, 3))],
            gives: Value::Exact(prices.board_foot, 2, ""),
        });
    }
    Working {
        steps,
        sources: vec![
            Source::Published(
                "PS 20-20, American Softwood Lumber Standard (NIST), 2.2 Board measure",
            ),
            Source::Published("NAVEDTRA 14069, Engineering Aid Basic, p. 6-7"),
        ],
    }
}

fn lay_out_weight(
    weighing: &Weighing,
    size: &size::Answer,
    weight: &weight::Answer,
    bench: &Bench,
) -> sheet::Answer {
    let pounds =
        |id, label, number| Figure { id, label, from: "", value: Value::Real(number, 1, "lb") };
    let headline = pounds("weight", "Weight of a board", weight.each);
    let mut sheet = sheet::Answer::new(headline, weight_working(weighing, size, weight));
    sheet.figures = vec![
        pounds("weight_all", "Weight of all", weight.total),
        pounds("weight_dry", "The same at 12 %", weight.dry_twin),
        Figure {
            id: "density",
            label: "Density",
            from: "",
            value: Value::Real(weight.density, 1, "lb/cu ft"),
        },
    ];
    sheet.notes = vec![say![
        "Single boards differ by a tenth and more. A board that weighs twice its dry twin is wet."
    ]];
    if weighing.wood.is_unverified {
        sheet.notes.push(say!["The gravity of this wood is from memory, unverified. Look it up."]);
    }
    sheet.cautions = vec![Caution::TreatedWood];
    sheet.drawing = Some(drawing::end_view(&weighing.size, size, bench));
    sheet
}

fn weight_working(weighing: &Weighing, size: &size::Answer, weight: &weight::Answer) -> Working {
    let mut steps = size_steps(&weighing.size, size);
    let moisture = weighing.moisture;
    steps.push(Step {
        rule: "G = Gb ÷ (1 - 0.265 × Gb × (1 - M ÷ 30)), M not over 30".into(),
        put_in: say![format!("{}, M {moisture} %", weighing.wood.name)],
        gives: Value::Real(weighing.wood.gravity.at(moisture), 3, ""),
    });
    steps.push(Step {
        rule: "density = 62.4 lb/cu ft × G × (1 + M ÷ 100)".into(),
        put_in: say![format!(
            "62.4 × {:.3} × (1 + {moisture} ÷ 100)",
            weighing.wood.gravity.at(moisture)
        )],
        gives: Value::Real(weight.density, 2, "lb/cu ft"),
    });
    steps.push(Step {
        rule: "weight = thickness × width × length × density".into(),
        put_in: say![format!(
            "{} × {} × {} × {:.2} lb/cu ft",
            exact_text(size.thickness),
            exact_text(size.width),
            exact_text(weighing.length),
            weight.density
        )],
        gives: Value::Real(weight.each, 1, "lb"),
    });
    let gravity = if weighing.wood.is_unverified {
        Source::Unverified(weighing.wood.source)
    } else {
        Source::Published(weighing.wood.source)
    };
    Working {
        steps,
        sources: vec![
            Source::Published(
                "USDA FPL Wood Handbook, FPL-GTR-282 (2021), Equations 4-3 and 4-11 to 4-14",
            ),
            gravity,
            Source::Published(lumber::SOURCE),
            // That single boards differ, and the test against a dry twin.
            Source::CommonPractice,
        ],
    }
}

fn lay_out_cover(
    covering: &Covering,
    size: &size::Answer,
    cover: &cover::Answer,
    bench: &Bench,
) -> sheet::Answer {
    let headline = Figure::count("boards", "Boards to buy", cover.buy);
    let mut steps = size_steps(&covering.size, size);
    steps.push(Step {
        rule: "laid = (width to cover + gap) ÷ (board + gap)".into(),
        put_in: say![format!(
            "({} + {}) ÷ ({} + {})",
            exact_text(covering.width),
            exact_text(covering.gap),
            exact_text(size.width),
            exact_text(covering.gap)
        )],
        gives: Value::Exact(cover.laid, 3, ""),
    });
    steps.push(Step {
        rule: "buy = laid ÷ (1 - waste), rounded up".into(),
        put_in: say![format!(
            "{} ÷ (1 - {} %)",
            decimal(cover.laid, 3),
            decimal(covering.waste, 1)
        )],
        gives: Value::Count(cover.buy.into()),
    });
    let sources = vec![
        Source::Published(
            "Army Engineer EN01136, lesson 5: width ÷ board ÷ (1 - waste), rounded up",
        ),
        Source::Published(lumber::SOURCE),
        Source::CommonPractice,
    ];
    let mut sheet = sheet::Answer::new(headline, Working { steps, sources });
    sheet.figures = vec![
        Figure::count("rows", "Boards laid", cover.rows),
        Figure::length("width", "Width of one", "edge to edge", size.width),
    ];
    sheet.notes = vec![
        say!["Waste runs from a tenth for straight good boards to half for low grades."],
        say!["Rip the last board, or share the difference between the two outer ones."],
    ];
    sheet.drawing = Some(drawing::covered(covering, size, cover, bench));
    sheet
}
