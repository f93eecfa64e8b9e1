//! How the answers about moisture are laid out.

mod told;

use super::fields::{
    BY_GREEN_SIZE, CHANGE, DRIEST_MOISTURE, FIELDS, GAP_LATER, GAP_TO_LEAVE, GAPS, IN_AIR,
    LATER_COLUMN, LEAST, MOST, NEVER_CLOSES, NEWER_FORMULA, OVER_THE_YEAR, PANEL_LATER, QUESTION,
    RESULTS, SIDE_COLUMN, SIZES, SWING, THICKNESS_LATER, TODAY_COLUMN, TOP_LATER, TOP_NOW,
    WETTEST_MOISTURE, WIDTH, WIDTH_LATER,
};
use super::movement::{Moistures, Wood};
use super::{air, board, drawing, gap, question, swing, weather};
use crate::calculators::{Calculator, ResultSpec, Stage};
use crate::measure::{Length, Rounding};
use crate::say;
use crate::sheet::{
    self, Act, Ask, Bench, Caution, Figure, Note, Refusal, Refused, Source, Step, Term, Value,
    Working,
};
use crate::tables::shrinkage::Across;

/// Wet and dry: one board, gaps, the year, the air.
pub const CALCULATOR: Calculator = Calculator {
    slug: "moisture",
    title: "Wet and dry",
    question: "How wide will it be when it dries, and which gap do I leave?",
    stage: Stage::Wood,
    fields: FIELDS,
    results: RESULTS,
    work,
};

/// What the working calls the figure that a size of today is multiplied by.
const FACTOR: &str = "later over today";

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let bench = ask.bench();
    let found: Result<sheet::Answer, Refused> = match ask.choice(&QUESTION) {
        GAPS => {
            let input = question::gap(ask)?;
            gap::reckon(&input).map(|answer| lay_out_gap(&input, &answer, bench))
        }
        OVER_THE_YEAR => {
            let input = question::swing(ask)?;
            swing::reckon(&input).map(|answer| lay_out_swing(&input, &answer, bench))
        }
        IN_AIR => {
            let input = question::air(ask)?;
            Ok(lay_out_air(&input, &air::reckon(&input)))
        }
        _ => {
            let input = question::board(ask)?;
            board::reckon(&input).map(|answer| lay_out_board(&input, &answer, bench))
        }
    };
    match found {
        Ok(mut answer) => {
            weather::cite(ask, &mut answer);
            Some(answer)
        }
        Err(refused) => {
            let refused = weather::beside_words(ask, refused);
            ask.refused(refused, too_large())
        }
    }
}

fn too_large() -> Refusal {
    Refusal::too_large(&WIDTH, "Use smaller numbers or plainer fractions.")
}

/// The least and the most as two figures, where they are known.
fn ends(
    ends: Option<(Length, Length)>,
    figure: impl Fn(&ResultSpec, Length) -> Figure,
) -> Vec<Figure> {
    ends.map_or_else(Vec::new, |(least, most)| vec![figure(&LEAST, least), figure(&MOST, most)])
}

fn lay_out_board(input: &board::Input, answer: &board::Answer, bench: &Bench) -> sheet::Answer {
    let headline = WIDTH_LATER.figure("edge to edge", answer.width);
    let width = &answer.width_spread.likely;
    let mut steps = told::factor_steps(FACTOR, input.wood, input.moistures, width);
    let later = Term::of("width today", input.width) * told::factor(FACTOR, width);
    steps.push(Step::of("width later", later, answer.width));
    if let (Some(thickness), Some(spread)) = (answer.thickness, &answer.thickness_spread) {
        let name = "later over today of the thickness";
        steps.extend(told::factor_steps(name, input.wood, input.moistures, &spread.likely));
        let later =
            Term::of("thickness today", input.thickness) * told::factor(name, &spread.likely);
        steps.push(Step::of("thickness later", later, thickness));
    }
    let spreads: Vec<_> =
        core::iter::once(&answer.width_spread).chain(&answer.thickness_spread).collect();
    let sources = told::sources(&spreads);
    let mut sheet = sheet::Answer::new(headline, Working { steps, sources });
    let lost = (input.width - answer.width).unwrap_or(Length::ZERO);
    let label = if lost.is_negative() { "It gains" } else { "It loses" };
    sheet.figures = vec![CHANGE.called(label).figure("of its width", lost.abs())];
    let row = |name: &'static str, now: Length, later: Length| {
        vec![Value::Words(say![name]), now.into(), later.into()]
    };
    let mut rows = vec![row("Width", input.width, answer.width)];
    if let Some(thickness) = answer.thickness {
        let figure = THICKNESS_LATER.figure("face to face", thickness);
        sheet.figures.insert(0, figure);
        rows.push(row("Thickness", input.thickness, thickness));
    }
    sheet.figures.extend(ends(answer.width_ends, |end, width| end.figure("edge to edge", width)));
    sheet.tables = vec![SIZES.table(&[SIDE_COLUMN, TODAY_COLUMN, LATER_COLUMN], rows)];
    sheet.notes = told::notes(input.wood, &spreads);
    if answer.thickness.is_none() {
        sheet.notes.push(Note::new(
            "thickness_is_left_out",
            say!["How its thickness moves is not known, and is left out."],
        ));
    }
    sheet.notes.push(Note::new(
        "lengths_stay",
        say!["Along the grain wood hardly moves: cut lengths stay."],
    ));
    sheet.cautions = Caution::of(&[Act::Handle]);
    sheet.drawing = Some(drawing::board(input, answer, bench));
    sheet
}

fn lay_out_gap(input: &gap::Input, answer: &gap::Answer, bench: &Bench) -> sheet::Answer {
    let now = GAP_TO_LEAVE.figure("board to board", answer.gap_now);
    let later = GAP_LATER.figure("board to board", answer.gap_later);
    let (headline, other) = match input.known {
        gap::Known::Today(_) => (later, now),
        gap::Known::Later(_) => (now, later),
    };
    let likely = &answer.spread.likely;
    let mut steps = told::factor_steps(FACTOR, input.wood, input.moistures, likely);
    let width_today = || Term::of("width today", input.width);
    let gap_today = || Term::of("gap today", answer.gap_now);
    let width_later = || Term::of("width later", answer.width_later);
    let one = width_today() * told::factor(FACTOR, likely);
    steps.push(Step::of("one board later", one, answer.width_later));
    let gap = gap_today() + width_today() - width_later();
    steps.push(Step::of("gap later", gap, answer.gap_later));
    let between = Term::of("boards", input.boards) - Term::fixed(1);
    let whole = between * (width_today() + gap_today()) + width_later();
    steps.push(Step::of("whole width later", whole, answer.top_later));
    let mut sources = told::sources(&[&answer.spread]);
    sources.push(Source::CommonPractice);
    let mut sheet = sheet::Answer::new(headline, Working { steps, sources });
    sheet.figures = vec![
        other,
        TOP_NOW.figure("edge to edge", answer.top_now),
        TOP_LATER.figure("edge to edge", answer.top_later),
        PANEL_LATER.figure("edge to edge", answer.panel_later),
        WIDTH_LATER.called("One board later").figure("edge to edge", answer.width_later),
    ];
    sheet.figures.extend(ends(answer.gap_ends, |end, gap| end.figure("gap later", gap)));
    sheet.notes = told::notes(input.wood, &[&answer.spread]);
    if answer.gap_ends.is_some_and(|(least, most)| least.is_negative() || most.is_negative()) {
        sheet.notes.push(Note::new(
            "boards_may_press",
            say!["Boards that move most would press on each other: leave more."],
        ));
    }
    sheet.notes.push(Note::new(
        "boards_held_at_middle",
        say![
            "Each board is held at its own middle, so the outer edges move by half a board's loss."
        ],
    ));
    sheet.notes.push(Note::new("gap_for_wet_boards", say![
        "Builders disagree on wet boards: laid tight, or a nail apart. Seasoned, the gap sought is ",
        Length::sixty_fourths(8),
        " to ",
        Length::sixty_fourths(16),
        "."
    ]));
    sheet.cautions = Caution::of(&[Act::Handle]);
    sheet.drawing = Some(drawing::gaps(input, answer, bench));
    sheet
}

fn lay_out_swing(input: &swing::Input, answer: &swing::Answer, bench: &Bench) -> sheet::Answer {
    let headline = SWING.figure("driest to wettest", answer.swing);
    let mut steps = Vec::new();
    let width = || Term::of("width", input.width);
    let Moistures { from, to, .. } = input.moistures;
    if input.wood == Wood::OrdinarySoftwood {
        let lost = |name, percent| Term::of(name, told::lost_text(Across::Width, percent));
        let less = lost("lost when driest", from) - lost("lost when wettest", to);
        steps.push(Step::of("swing", width() * less, answer.swing));
    }
    let likely = &answer.spread.likely;
    steps.extend(told::factor_steps(FACTOR, input.wood, input.moistures, likely));
    let more = told::factor(FACTOR, likely) - Term::fixed(1);
    steps.push(Step::of("by the wet size", width() * more, answer.by_green_size));
    let mut sheet =
        sheet::Answer::new(headline, Working { steps, sources: told::sources(&[&answer.spread]) });
    let never_closes = Value::Length(answer.never_closes, Rounding::Up);
    sheet.figures = vec![NEVER_CLOSES.figure("left when driest", never_closes)];
    if input.wood == Wood::OrdinarySoftwood {
        sheet.figures.push(BY_GREEN_SIZE.figure("driest to wettest", answer.by_green_size));
    }
    sheet.figures.extend(ends(answer.ends, |end, swing| end.figure("swing", swing)));
    sheet.notes = told::notes(input.wood, &[&answer.spread]);
    sheet.drawing = Some(drawing::swing(input, answer, bench));
    sheet
}

fn lay_out_air(input: &air::Input, answer: &air::Answer) -> sheet::Answer {
    let percent = |number| Value::Real(number, 1, "%");
    let is_range = answer.driest < answer.wettest;
    let label = if is_range { "Wood, driest" } else { "Wood settles at" };
    let headline = DRIEST_MOISTURE.called(label).figure("", percent(answer.driest));
    let mut sheet = sheet::Answer::new(headline, told::air_working(input, answer));
    if is_range {
        let wettest = WETTEST_MOISTURE.called("Wood, wettest");
        sheet.figures.push(wettest.figure("", percent(answer.wettest)));
    }
    if let Some(newer) = answer.newer {
        sheet.figures.push(NEWER_FORMULA.figure("", percent(newer)));
    }
    sheet.notes = vec![
        Note::new(
            "air_is_under_cover",
            say![
                "Under cover and given time. Rain, sun and bare ground change it more than the town does."
            ],
        ),
        Note::new("use_as_moisture_later", say!["Use it as the moisture later."]),
    ];
    if answer.newer.is_some() {
        sheet.notes.insert(
            0,
            Note::new(
                "printed_tables_differ",
                say!["Printed tables differ from the formula by up to half a point."],
            ),
        );
    }
    sheet.drawing = Some(drawing::air(answer));
    sheet
}
