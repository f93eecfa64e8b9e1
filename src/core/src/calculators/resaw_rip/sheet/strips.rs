//! Strips from a board: fields in, strips, fence list and leftover out.

use super::super::drawing;
use super::super::fields::{
    ALLOWANCE, BOARD, BOARD_DRESSED, BOARD_LEFT_COLUMN, BOARD_THICKNESS, BOARD_WIDTH, CLEAN,
    CLEAN_UP_FENCE, CUT, CUT_COLUMN, EACH_STRIP, EQUAL, FALLS, FAR_SIDE, FENCE, FENCE_COLUMN,
    FENCE_LIST, FENCE_SIDE, FINISHED_COLUMN, FIRST_EDGE, GIVES_COLUMN, HOW_MANY_COLUMN, LEAN,
    LEFTOVER, LEFTOVER_EDGE, LIST, N_PASSES, N_SETTINGS, N_STRIPS, OTHER_EDGE, PLAN, SAWN_COLUMN,
    SAWN_WIDTH, STRIP_LIST, STRIP_WIDTH, STRIPS, WHERE_COLUMN, WIDTHS,
};
use super::super::lean::left;
use super::super::refused::out_of_range;
use super::super::saw::step_when_turned;
use super::super::strips::{Answer, Cut, Falls, Input, OtherEdge, Plan, Strip, reckon};
use super::told::{
    blade_figures, blade_notes, blade_step, cautions, lean_figure, lean_step, ridge_note, saw,
    side, stock, stock_source,
};
use crate::measure::{Length, Rounding};
use crate::say;
use crate::sheet::{self, Ask, Note, Rounded, Row, Sentence, Source, Step, Term, Value, Working};

pub(super) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let stock = stock(ask, &BOARD, &BOARD_DRESSED, [&BOARD_THICKNESS, &BOARD_WIDTH]);
    let plan = match ask.choice(&PLAN) {
        EQUAL => ask.count(&N_STRIPS).map(Plan::Equal),
        LIST => ask.lengths(&WIDTHS).map(Plan::List),
        _ => ask.length(&STRIP_WIDTH).map(Plan::Fit),
    };
    let first_edge = ask.length(&FIRST_EDGE);
    let allowance = ask.length(&ALLOWANCE);
    let saw = saw(ask);
    let lean = ask.length(&LEAN);
    let other_edge = match ask.choice(&OTHER_EDGE) {
        CLEAN => OtherEdge::Clean,
        CUT => OtherEdge::Cut,
        _ => OtherEdge::Raw,
    };
    let falls = match ask.choice(&FALLS) {
        FAR_SIDE => Falls::FarSide,
        _ => Falls::AtFence,
    };
    let (thickness, width) = stock?;
    let input = Input {
        thickness,
        width,
        plan: plan?,
        first_edge: first_edge?,
        other_edge,
        allowance: allowance?,
        falls,
        tape: ask.bench().tape,
        saw: saw?,
    };
    let answer = match reckon(&input) {
        Ok(answer) => answer,
        Err(refused) => return ask.refused(refused, out_of_range()),
    };
    let lean = lean?;
    let left = match left(&answer.sweep, lean, &input.saw) {
        Ok(left) => left,
        Err(refused) => return ask.refused(refused, out_of_range()),
    };
    let mut sources = vec![Source::Arithmetic, Source::CommonPractice];
    sources.extend(stock_source(ask, &BOARD));
    let drawing = drawing::strips(&input, &answer, side(ask, &FENCE_SIDE), ask.bench().tape);
    let mut laid = lay_out(&input, &answer, sources, drawing);
    if let Some(left) = left {
        laid.figures.push(lean_figure(left));
        if left.is_ridge {
            laid.notes.push(ridge_note(left));
        }
        laid.working.steps.push(lean_step(left, lean, input.saw.reach));
    }
    Some(laid)
}

fn lay_out(
    input: &Input,
    answer: &Answer,
    sources: Vec<Source>,
    drawing: crate::drawing::Scene,
) -> sheet::Answer {
    let n_strips = u32::try_from(answer.strips.len()).unwrap_or(u32::MAX);
    let count = STRIPS.figure("", n_strips);
    let first_strip = answer.cuts.iter().find(|cut| cut.strip.is_some());
    let fence = first_strip
        .map(|cut| FENCE.called("Fence, first strip").figure("fence to near tooth", cut.fence));
    let width = answer.strips.first().map(|strip| {
        // A strip too wide makes the last one too narrow: never up.
        let share = Value::Length(finished_share(input, answer, strip), Rounding::Down);
        EACH_STRIP.figure("finished, edge to edge", share)
    });
    let (headline, mut figures) = match (&input.plan, width, fence) {
        (Plan::Equal(_), Some(width), fence) => {
            (width, fence.into_iter().chain([count]).collect::<Vec<_>>())
        }
        (_, _, Some(fence)) => (fence, vec![count]),
        (_, _, None) => (count, Vec::new()),
    };
    if let Some(clean) = answer.cuts.first().filter(|cut| cut.strip.is_none()) {
        figures.push(
            CLEAN_UP_FENCE.called("Fence, clean edge").figure("fence to near tooth", clean.fence),
        );
    }
    if input.allowance.is_positive()
        && let (Plan::Fit(_) | Plan::Equal(_), Some(strip)) = (&input.plan, answer.strips.first())
    {
        figures.push(SAWN_WIDTH.figure("before planing", strip.sawn));
    }
    figures.push(LEFTOVER.figure("edge to edge", answer.leftover));
    figures
        .push(LEFTOVER_EDGE.called("Its far edge").figure("", Value::Words(leftover_edge(answer))));
    let step = first_strip.map_or(Ok(Length::ZERO), |cut| {
        let across = ((cut.board_left + cut.dust)?
            + cut.strip.map_or(Length::ZERO, |number| sawn(answer, number)))?;
        step_when_turned(across, input.saw.kerf, cut.fence)
    });
    figures.extend(blade_figures(&answer.sweep, step.unwrap_or(Length::ZERO)));
    figures.push(N_SETTINGS.figure("", answer.n_settings));
    figures.push(N_PASSES.figure("", answer.n_passes));

    let rows = (1..).zip(&answer.cuts).map(|(number, cut)| fence_row(answer, number, cut));
    let columns = &[CUT_COLUMN, FENCE_COLUMN, GIVES_COLUMN, WHERE_COLUMN, BOARD_LEFT_COLUMN];
    let mut tables = vec![FENCE_LIST.called("Fence, in this order").table(columns, rows.collect())];
    if input.allowance.is_positive() {
        tables.push(STRIP_LIST.called("Strips before and after planing").table(
            &[HOW_MANY_COLUMN, SAWN_COLUMN, FINISHED_COLUMN],
            answer.strips.chunk_by(|a, b| a == b).filter_map(strip_row).collect(),
        ));
    }
    let thinnest = answer.strips.iter().map(|strip| strip.sawn).min().unwrap_or(Length::ZERO);
    let narrowest = answer.cuts.iter().map(|cut| cut.fence).min().unwrap_or(Length::ZERO);
    sheet::Answer {
        goods: Vec::new(),
        headline,
        figures,
        tables,
        notes: notes(input, answer),
        cautions: cautions(&input.saw, narrowest, Some((thinnest, input.falls)), input.thickness),
        drawing: Some(drawing),
        template: None,
        working: working(input, answer, sources),
    }
}

/// The exact share of an equal split less its allowance, else the finished width.
fn finished_share(input: &Input, answer: &Answer, strip: &Strip) -> Length {
    let allowance = input.allowance * 2;
    answer.share.and_then(|share| (share - allowance.ok()?).ok()).unwrap_or(strip.finished)
}

fn sawn(answer: &Answer, number: u32) -> Length {
    let index = usize::try_from(number).ok().and_then(|number| number.checked_sub(1));
    index.and_then(|index| answer.strips.get(index)).map_or(Length::ZERO, |strip| strip.sawn)
}

/// A sum for the working; every part of it is within the board.
fn sum(lengths: impl IntoIterator<Item = Length>) -> Length {
    let mut lengths = lengths.into_iter();
    lengths.try_fold(Length::ZERO, |sum, length| sum + length).unwrap_or(Length::ZERO)
}

fn leftover_edge(answer: &Answer) -> Sentence {
    match (answer.leftover.is_positive(), answer.is_leftover_raw) {
        (false, _) => say!["nothing is left"],
        (true, true) => say!["still raw"],
        (true, false) => say!["clean"],
    }
}

fn fence_row(answer: &Answer, number: u64, cut: &Cut) -> Row {
    let (gives, place) = match cut.strip {
        None => (say!["clean edge"], say!["waste on far side"]),
        Some(strip) => {
            let place = if cut.is_strip_at_fence { "at the fence" } else { "far side" };
            (say!["strip ", strip, ": ", sawn(answer, strip)], say![place])
        }
    };
    vec![
        Value::Count(number),
        cut.fence.into(),
        Value::Words(gives),
        Value::Words(place),
        cut.board_left.into(),
    ]
}

fn strip_row(same: &[Strip]) -> Option<Row> {
    let strip = same.first()?;
    Some(vec![
        Value::Count(u64::try_from(same.len()).unwrap_or(u64::MAX)),
        strip.sawn.into(),
        strip.finished.into(),
    ])
}

fn notes(input: &Input, answer: &Answer) -> Vec<Note> {
    let mut notes = Vec::new();
    let n_strips = u32::try_from(answer.strips.len()).unwrap_or(u32::MAX);
    if let (Plan::Fit(_), true) = (&input.plan, n_strips < answer.fit_by_arithmetic) {
        notes.push(Note::new(
            "more_fit_by_arithmetic",
            say![
                answer.fit_by_arithmetic,
                " fit by arithmetic. After ",
                n_strips,
                " the board is too thin to run along the fence."
            ],
        ));
    }
    if let (Some(share), Some(strip)) = (answer.share, answer.strips.first())
        && share != strip.sawn
    {
        notes.push(Note::new(
            "set_fence_to_mark",
            say![
                "Set the fence to the mark ",
                strip.sawn,
                ", not above it: then all ",
                n_strips,
                " fit, and the last cut trims what is over."
            ],
        ));
    }
    if input.first_edge.is_positive() {
        notes.push(match input.falls {
            Falls::AtFence => Note::new("clean_edge_at_fence", say![
                "Clean the first edge with the other edge at the fence. Then turn the board: the clean edge runs at the fence."
            ]),
            Falls::FarSide => Note::new("clean_edge_on_far_side", say![
                "Clean the first edge with the other edge at the fence, and leave it so: the clean edge stays on the far side."
            ]),
        });
        notes.push(Note::new("no_straight_edge", say![
            "No straight edge? Screw on a straight strip, or run the hollow edge at the fence and cut the bulge off."
        ]));
    }
    let is_turned =
        |cut: &&Cut| input.falls == Falls::FarSide && cut.strip.is_some() && cut.is_strip_at_fence;
    if let Some(cut) = answer.cuts.iter().find(is_turned) {
        notes.push(Note::new("turn_board_for_strip", say![
            "Strip ",
            cut.strip.unwrap_or(1),
            ": turn the board, clean edge at the fence, for what is left is too thin to run there."
        ]));
    }
    if answer.is_last_strip_raw {
        notes.push(Note::new("last_strip_has_raw_edge", say![
            "The last strip keeps the raw edge of the board. Plane it, or choose to clean the other edge too."
        ]));
    }
    let is_trim = |cut: &&Cut| cut.strip.is_some() && cut.dust < input.saw.kerf;
    if let Some(cut) = answer.cuts.iter().find(is_trim) {
        notes.push(Note::new(
            "last_cut_less_than_kerf",
            say![
                "The last cut takes ",
                cut.dust,
                ", less than a kerf: the blade runs partly in air."
            ],
        ));
    }
    notes.extend(blade_notes(&[&answer.sweep]));
    notes.push(Note::new(
        "saw_one_and_measure",
        say!["Saw one, measure it, then saw the rest. Hollow side on the table."],
    ));
    notes
}

fn working(input: &Input, answer: &Answer, sources: Vec<Source>) -> Working {
    let kerf = || Term::of("kerf", input.saw.kerf);
    let mut steps = Vec::new();
    let cleaned = match input.other_edge {
        OtherEdge::Cut => 2,
        OtherEdge::Raw | OtherEdge::Clean => 1,
    };
    let usable = (input.first_edge * cleaned).and_then(|cleaned| input.width - cleaned);
    let usable = usable.unwrap_or(input.width);
    let off = Term::of("edges", cleaned) * Term::of("what is cleaned off one", input.first_edge);
    steps.push(Step::of("usable width", Term::of("board", input.width) - off, usable));
    let usable = || Term::of("usable", usable);
    if let (true, Some(strip)) = (input.allowance.is_positive(), answer.strips.first()) {
        let faces = Term::fixed(2) * Term::of("planing per face", input.allowance);
        let sawn = Term::of("finished width", strip.finished) + faces;
        steps.push(Step::of("sawn width", sawn, strip.sawn));
    }
    match (&input.plan, answer.strips.first()) {
        (Plan::Fit(_), Some(strip)) => {
            let strips = (usable() + kerf()) / (Term::of("strip", strip.sawn) + kerf());
            steps.push(Step::of("strips", strips, answer.fit_by_arithmetic).then(Rounded::Down));
        }
        (Plan::Equal(n_strips), _) => {
            let between = Term::of("kerfs between", n_strips.saturating_sub(1)) * kerf();
            let strip = (usable() - between) / Term::of("strips", *n_strips);
            let share = Value::Length(answer.share.unwrap_or(Length::ZERO), Rounding::Down);
            steps.push(Step::of("strip", strip, share).remarked("down to a mark", ""));
        }
        _ => {}
    }
    if let Some((cut, number)) = answer.cuts.iter().find_map(|cut| Some((cut, cut.strip?))) {
        let width = sawn(answer, number);
        let fence = if cut.is_strip_at_fence {
            Term::of("sawn width of the strip at the fence", width)
        } else {
            let board = (cut.board_left + cut.dust).and_then(|rest| rest + width);
            let board = Term::of("board as it is", board.unwrap_or(input.width));
            board - Term::of("strip", width) - Term::of("kerf", cut.dust)
        };
        steps.push(Step::of("fence", fence, cut.fence));
    }
    let strips = sum(answer.strips.iter().map(|strip| strip.sawn));
    let dust = sum(answer.cuts.iter().filter(|cut| cut.strip.is_some()).map(|cut| cut.dust));
    let leftover = Term::of("board", input.width)
        - Term::of("first edge", input.first_edge)
        - Term::of("strips", strips)
        - Term::of("their kerfs", dust);
    steps.push(Step::of("leftover", leftover, answer.leftover));
    steps.push(blade_step(&answer.sweep, input.saw.reach));
    Working { steps, sources }
}
