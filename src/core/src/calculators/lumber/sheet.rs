//! How the answers about lumber are laid out.

use super::fields::{
    AMOUNT, ASK, BOARD_FEET, BOARD_FEET_EACH, BOARDS, COVER, DENSITY, DRESSED_COLUMN, FIELDS,
    LINEAR_FEET, PER_BOARD_FOOT, PER_FOOT, PER_PIECE, RESULTS, ROWS, SECTION, SIZES, THICKNESS,
    THICKNESS_COLUMN, TOTAL, WEIGHT, WEIGHT_ALL, WEIGHT_DRY, WEIGHT_EACH, WIDTH, WIDTH_COLUMN,
};
use super::question::{self, Covering, Weighing};
use super::{amount, cover, drawing, size, weight};
use crate::calculators::{Calculator, ResultSpec, Stage};
use crate::measure::text::exact_text;
use crate::measure::{Length, Number};
use crate::say;
use crate::sheet::{
    self, Act, Amount, Ask, Bench, Caution, Note, Refusal, Refused, Rounded, Source, Step, Term,
    Value, Working,
};
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

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let bench = ask.bench();
    let laid_out = match ask.choice(&ASK) {
        AMOUNT => {
            let input = question::amount(ask)?;
            let answer = amount::reckon(&input).map_err(Refused::from);
            answer.map(|answer| lay_out_amount(&input, &answer, bench))
        }
        WEIGHT => {
            let weighing = question::weighing(ask)?;
            size::reckon(&weighing.size).and_then(|size| {
                let weight = weight::reckon(&weighing.input(&size))?;
                Ok(lay_out_weight(&weighing, &size, &weight, bench))
            })
        }
        COVER => {
            let covering = question::covering(ask)?;
            size::reckon(&covering.size).and_then(|size| {
                let cover = cover::reckon(&covering.input(&size))?;
                Ok(lay_out_cover(&covering, &size, &cover, bench))
            })
        }
        _ => {
            let input = question::size(ask)?;
            size::reckon(&input).map(|answer| lay_out_size(&input, &answer, bench))
        }
    };
    match laid_out {
        Ok(answer) => Some(answer),
        Err(refused) => ask.refused(refused, too_large()),
    }
}

fn too_large() -> Refusal {
    Refusal::too_large(&SECTION, "Use smaller numbers or plainer fractions.")
}

/// Half of a pair of sizes: where it comes from.
fn side_step(rule: &'static str, nominal: Length, measured: Option<Length>, found: Length) -> Step {
    let put_in = match measured {
        Some(_) => say!["measured on this board"],
        None => say![format!("nominal {}", exact_text(nominal))],
    };
    Step::in_words(rule, put_in, found)
}

fn size_steps(input: &size::Input, answer: &size::Answer) -> Vec<Step> {
    vec![
        side_step(
            "thickness = as measured, or else as in the table",
            input.nominal_thickness,
            input.measured_thickness,
            answer.thickness,
        ),
        side_step(
            "width = as measured, or else as in the table",
            input.nominal_width,
            input.measured_width,
            answer.width,
        ),
    ]
}

fn lay_out_size(input: &size::Input, answer: &size::Answer, bench: &Bench) -> sheet::Answer {
    let headline = WIDTH.figure("edge to edge", answer.width);
    let working = Working {
        steps: size_steps(input, answer),
        sources: vec![Source::Published(lumber::SOURCE)],
    };
    let mut sheet = sheet::Answer::new(headline, working);
    sheet.figures = vec![THICKNESS.figure("face to face", answer.thickness)];
    if let (Some(thickness), Some(width)) = (answer.thickness_row, answer.width_row) {
        let row = |name: &'static str, thickness: Length, width: Length| {
            vec![Value::Words(say![name]), thickness.into(), width.into()]
        };
        sheet.tables = vec![SIZES.table(
            &[DRESSED_COLUMN, THICKNESS_COLUMN, WIDTH_COLUMN],
            vec![row("Dry", thickness.dry, width.dry), row("Wet", thickness.green, width.green)],
        )];
    }
    sheet.notes = size_notes(input, answer);
    sheet.drawing = Some(drawing::end_view(input, answer, bench));
    sheet
}

fn size_notes(input: &size::Input, answer: &size::Answer) -> Vec<Note> {
    let mut notes = vec![Note::new(
        "least_sizes_at_the_mill",
        say![
            "These are least sizes at the mill. Measure each board, not the stack: the tag is a name."
        ],
    )];
    let standard = answer.width_row.map(|row| row.dressed(input.seasoning));
    if let (Some(measured), Some(standard)) = (input.measured_width, standard)
        && let Ok(over) = measured - standard
        && !over.is_zero()
    {
        let way = if over.is_positive() { " over" } else { " under" };
        let mut words = say!["This board is ", over.abs(), way, " the table."];
        if over.is_positive() {
            words.0.extend(say![" It may still be wet, and shrink."].0);
        }
        notes.push(Note::new("board_off_the_table", words));
    }
    notes
}

fn lay_out_amount(input: &amount::Input, answer: &amount::Answer, bench: &Bench) -> sheet::Answer {
    let figure =
        |result: ResultSpec, number, unit| result.figure("", Value::Exact(number, 2, unit));
    let board_feet = figure(BOARD_FEET, answer.total, "bd ft");
    let (headline, figures) = match answer.prices {
        // Who says a price wants to know what all of it costs.
        Some(prices) => (
            figure(TOTAL, prices.total, ""),
            vec![
                board_feet,
                figure(PER_PIECE, prices.piece, ""),
                figure(PER_FOOT, prices.foot, ""),
                figure(PER_BOARD_FOOT, prices.board_foot, ""),
            ],
        ),
        None => (board_feet, Vec::new()),
    };
    let mut sheet = sheet::Answer::new(headline, amount_working(input, answer));
    sheet.figures = figures;
    sheet.figures.push(figure(BOARD_FEET_EACH, answer.each, "bd ft"));
    sheet.figures.push(figure(LINEAR_FEET, answer.linear_feet, "ft"));
    sheet.notes = vec![Note::new(
        "board_feet_go_by_tag",
        say!["Board feet go by the tag, not by the real size."],
    )];
    if input.nominal_thickness.in_inches() < Number::ONE {
        sheet.notes.push(Note::new("thin_counts_as_one_inch", say![
            "Thinner than 4/4 counts as 4/4 here. Some yards sell thin stock by the square foot of face."
        ]));
    }
    sheet.drawing = Some(drawing::face_view(input.nominal_width, input.length, input.count, bench));
    sheet
}

fn amount_working(input: &amount::Input, answer: &amount::Answer) -> Working {
    let board_feet = |number| Value::Exact(number, 3, "bd ft");
    let each = || Term::of("one", answer.each);
    let feet = |name| Term::of(name, answer.feet);
    let section = Term::of("nominal thickness", answer.thickness)
        * Term::of("nominal width", input.nominal_width);
    let formula = section / Term::fixed(12) * feet("feet of length");
    let mut steps = vec![
        Step::of("board feet", formula, board_feet(answer.each))
            .remarked("at least 1 in thick", ""),
        Step::of("all", Term::of("boards", input.count) * each(), board_feet(answer.total)),
    ];
    if let Some(prices) = answer.prices {
        let money = |number| Value::Exact(number, 2, "");
        let piece = || Term::of("price of a board", prices.piece);
        let its = Term::of("its board feet", answer.each);
        steps.push(Step::of("price of a foot", piece() / feet("its feet"), money(prices.foot)));
        steps.push(Step::of("price of a board foot", piece() / its, money(prices.board_foot)));
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
    let pounds = |result: ResultSpec, number| result.figure("", Value::Real(number, 1, "lb"));
    let headline = pounds(WEIGHT_EACH, weight.each);
    let mut sheet = sheet::Answer::new(headline, weight_working(weighing, size, weight));
    sheet.figures = vec![
        pounds(WEIGHT_ALL, weight.total),
        pounds(WEIGHT_DRY, weight.dry_twin),
        DENSITY.figure("", Value::Real(weight.density, 1, "lb/cu ft")),
    ];
    sheet.notes = vec![Note::new(
        "boards_differ_in_weight",
        say![
            "Single boards differ by a tenth and more. A board that weighs twice its dry twin is wet."
        ],
    )];
    if weighing.wood.is_unverified {
        sheet.notes.push(Note::new(
            "gravity_is_unverified",
            say!["The gravity of this wood is from memory, unverified. Look it up."],
        ));
    }
    sheet.cautions = Caution::of(&[Act::Handle]);
    sheet.drawing = Some(drawing::end_view(&weighing.size, size, bench));
    sheet
}

fn weight_working(weighing: &Weighing, size: &size::Answer, weight: &weight::Answer) -> Working {
    let mut steps = size_steps(&weighing.size, size);
    let moisture = weighing.moisture;
    let fixed = |number| Term::fixed(Amount::real(number, ""));
    let points = |percent| Term::of("M", Amount::real(percent, ""));
    let gravity = weighing.wood.gravity;
    let basic = || Term::of("Gb", Amount::real(gravity.basic(), ""));
    let swollen = points(moisture.min(weight::FIBERS_FULL)) / fixed(weight::FIBERS_FULL);
    let shrunk = fixed(weight::VOLUME_SHRINKAGE) * basic() * (Term::fixed(1) - swollen);
    let at_moisture = Value::Real(gravity.at(moisture), 3, "");
    steps.push(
        Step::of("G", basic() / (Term::fixed(1) - shrunk), at_moisture)
            .remarked("M not over 30", weighing.wood.name),
    );
    let water = Term::fixed(Amount::real(weight::WATER, "lb/cu ft"));
    let wood = water * Term::of("G", Amount::real(gravity.at(moisture), ""));
    let wet = Term::fixed(1) + points(moisture) / Term::fixed(100);
    steps.push(Step::of("density", wood * wet, Value::Real(weight.density, 2, "lb/cu ft")));
    let inches = |name, length: Length| Term::of(name, length.in_inches());
    let cubic_inches = inches("thickness in", size.thickness)
        * inches("width in", size.width)
        * inches("length in", weighing.length);
    let density = Term::of("density", Amount::real(weight.density, "lb/cu ft"));
    let cubic_feet = cubic_inches / Term::fixed(1728);
    steps.push(Step::of("weight", cubic_feet * density, Value::Real(weight.each, 1, "lb")));
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
    let headline = BOARDS.figure("", cover.buy);
    let mut steps = size_steps(&covering.size, size);
    let gap = || Term::of("gap", covering.gap);
    let all = Term::of("width to cover", covering.width) + gap();
    let laid = all / (Term::of("board", size.width) + gap());
    steps.push(Step::of("laid", laid, Value::Exact(cover.laid, 3, "")));
    let kept = Term::fixed(1) - Term::of("waste", Amount::percent(covering.waste));
    let buy = Step::of("buy", Term::of("laid", cover.laid) / kept, cover.buy);
    steps.push(buy.then(Rounded::Up));
    let sources = vec![
        Source::Published(
            "Army Engineer EN01136, lesson 5: width ÷ board ÷ (1 - waste), rounded up",
        ),
        Source::Published(lumber::SOURCE),
        Source::CommonPractice,
    ];
    let mut sheet = sheet::Answer::new(headline, Working { steps, sources });
    sheet.figures = vec![
        ROWS.figure("", cover.rows),
        WIDTH.called("Width of one").figure("edge to edge", size.width),
    ];
    sheet.notes = vec![
        Note::new(
            "share_of_waste",
            say!["Waste runs from a tenth for straight good boards to half for low grades."],
        ),
        Note::new(
            "rip_the_last_board",
            say!["Rip the last board, or share the difference between the two outer ones."],
        ),
    ];
    sheet.drawing = Some(drawing::covered(covering, size, cover, bench));
    sheet
}
