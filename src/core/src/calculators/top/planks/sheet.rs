//! Reads the planks and lays their answer out.

use super::{Answer, Find, Input, reckon};
use crate::calculators::top::fields::{
    FIND, GAP, GAPS_TOGETHER, LEFT_EDGES, OUTER_WIDTH, PLANK_GAP, PLANK_WIDTH, PLANKS, RIP_ALL,
    RIP_OUTER, SPACER_COLUMN, SPACERS, TOP, TOP_COMES_TO_COLUMN, TOP_OVERALL, TOP_WIDTH, too_large,
};
use crate::drawing::{Board, Role, Scene, Shape};
use crate::measure::{Length, OutOfRange, Tape};
use crate::say;
use crate::sheet::{self, Act, Ask, Caution, Note, Source, Step, Term, Value, Working};

/// A plank narrower than this is called a sliver: 1 1/2 in. Common practice, no source.
const SLIVER: Length = Length::sixty_fourths(96);

/// A gap wider than this is called wide: 1/2 in. Common practice, no source.
const WIDE_GAP: Length = Length::sixty_fourths(32);

pub(in crate::calculators::top) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let widths = ask.lengths(&PLANKS);
    let find = match ask.choice(&FIND) {
        RIP_ALL => {
            let (top, gap) = (ask.length(&TOP_WIDTH), ask.length(&GAP));
            Find::RipAll { top: top?, gap: gap? }
        }
        RIP_OUTER => {
            let (top, gap) = (ask.length(&TOP_WIDTH), ask.length(&GAP));
            Find::RipOuter { top: top?, gap: gap? }
        }
        TOP => Find::Top { gap: ask.length(&GAP)? },
        _ => Find::Gap { top: ask.length(&TOP_WIDTH)? },
    };
    let input = Input { widths: widths?, find };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused, too_large()),
    }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let first = answer.widths.first().copied().unwrap_or(Length::ZERO);
    let gap = PLANK_GAP.figure("plank to plank", answer.gap);
    let top = TOP_OVERALL.figure("edge to edge", answer.top);
    let (headline, mut figures) = match input.find {
        Find::Gap { .. } => (gap, vec![top]),
        Find::Top { .. } => (top, vec![gap]),
        Find::RipAll { .. } => {
            (PLANK_WIDTH.called("Rip every plank to").figure("edge to edge", first), vec![gap, top])
        }
        Find::RipOuter { .. } => {
            (OUTER_WIDTH.called("Rip outer two to").figure("edge to edge", first), vec![gap, top])
        }
    };
    figures.push(
        LEFT_EDGES
            .figure("from the left edge of the top", Value::Lengths(answer.left_edges.clone())),
    );
    if answer.gaps_together.is_positive() {
        figures.push(GAPS_TOGETHER.figure("side by side, to check", answer.gaps_together));
    }
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures = figures;
    if let Some(spacers) = answer.spacers {
        let rows = spacers.map(|spacer| vec![spacer.thickness.into(), spacer.top.into()]);
        laid.tables.push(SPACERS.table(&[SPACER_COLUMN, TOP_COMES_TO_COLUMN], rows.to_vec()));
    }
    laid.notes = notes(input, answer);
    let rips = matches!(input.find, Find::RipAll { .. } | Find::RipOuter { .. });
    laid.cautions = Caution::of(&[if rips { Act::Rip } else { Act::Handle }]);
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn notes(input: &Input, answer: &Answer) -> Vec<Note> {
    let mut notes = Vec::new();
    let n_gaps = answer.widths.len().saturating_sub(1);
    if n_gaps > 0 && answer.gap.is_zero() {
        notes.push(Note::new("tight_boards_hold_water", say![
            "No gaps: outdoors, tight boards hold water. Fine for wet boards, which will shrink."
        ]));
    }
    if answer.gap > WIDE_GAP {
        let narrowest = answer.widths.iter().copied().min().unwrap_or(Length::ZERO);
        if answer.gaps_together >= narrowest {
            notes.push(Note::new(
                "room_for_one_more_plank",
                say!["The gaps together would take one more plank."],
            ));
        } else {
            notes.push(Note::new(
                "gap_is_wide",
                say!["Over ", WIDE_GAP, " is a wide gap: small things fall through."],
            ));
        }
    }
    let narrow = answer.widths.iter().find(|width| **width < SLIVER);
    if let Some(narrow) = narrow {
        notes.push(Note::new(
            "plank_is_a_sliver",
            say![
                "A plank of ",
                *narrow,
                " is a sliver. Leave one out and rip the rest, or use wider gaps."
            ],
        ));
    }
    if matches!(input.find, Find::RipAll { .. } | Find::RipOuter { .. }) {
        notes.push(Note::new(
            "rip_both_edges_alike",
            say!["Rip off both round edges alike, so that the gaps look the same."],
        ));
    }
    if n_gaps > 0 {
        notes.push(Note::new(
            "mark_edges_from_left",
            say!["Mark every edge from the left. Do not step off spacers alone."],
        ));
    }
    notes
}

fn working(input: &Input, answer: &Answer) -> Working {
    let n = u32::try_from(answer.widths.len()).unwrap_or(u32::MAX);
    let planks = (answer.top - answer.gaps_together).unwrap_or(answer.top);
    let first = answer.widths.first().copied().unwrap_or(Length::ZERO);
    let number = || Term::of("number of planks", n);
    let n_gaps = || number() - Term::fixed(1);
    let gaps = |gap| n_gaps() * Term::of("gap", gap);
    let top_of = |top| Term::of("top", top);
    let step = match input.find {
        Find::Gap { top } => {
            let gap = (top_of(top) - Term::of("planks", planks)) / n_gaps();
            Step::of("gap", gap, answer.gap)
        }
        Find::Top { gap } => Step::of("top", Term::of("planks", planks) + gaps(gap), answer.top),
        Find::RipAll { top, gap } => Step::of("plank", (top_of(top) - gaps(gap)) / number(), first),
        Find::RipOuter { top, gap } => {
            let middle = (first * 2).and_then(|outer| planks - outer).unwrap_or(Length::ZERO);
            let rest = top_of(top) - gaps(gap) - Term::of("middle planks", middle);
            Step::of("outer", rest / Term::fixed(2), first)
        }
    };
    let edges = Step::in_words(
        "left edge of a plank = planks and gaps before it",
        say!["from the left edge of the top, never rounded"],
        Value::Lengths(answer.left_edges.clone()),
    );
    Working { steps: vec![step, edges], sources: vec![Source::Arithmetic] }
}

/// From above: the planks to scale, numbered, with their running left edges.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    const HIGH: f64 = 96.0;
    let mut board = Board::along(tape, answer.top, HIGH, 1, 3);
    let top = board.top();
    let n = answer.widths.len();
    let mut numbers = Vec::new();
    let mut amounts = Vec::new();
    for (index, (width, edge)) in answer.widths.iter().zip(&answer.left_edges).enumerate() {
        let is_outer = index == 0 || index + 1 == n;
        let is_ripped = match input.find {
            Find::RipAll { .. } => true,
            Find::RipOuter { .. } => is_outer,
            _ => false,
        };
        let (x, wide) = (board.x(*edge), board.size(*width));
        board.add(Role::Wood, Shape::Rect(x, top, wide, HIGH));
        if is_ripped {
            let cut = if index == 0 { x } else { x + wide };
            board.add(Role::CutLine, Shape::Line(cut, top, cut, top + HIGH));
        }
        if wide > 40.0 {
            let (middle, label) = (x + wide / 2.0, board.amount(*width));
            let y = top + HIGH / 2.0 + 4.0;
            board.number(Role::Ink, middle, y, label);
        }
        numbers.push(((*edge + (*width / 2)?)?, (index + 1).to_string()));
        amounts.push((*edge, board.amount(*edge)));
    }
    board.labels(-1, &numbers);
    board.labels(0, &amounts);
    board.given(1, Length::ZERO, answer.top, Some(TOP_WIDTH.id));
    let second = (answer.left_edges.get(1), answer.left_edges.first(), answer.widths.first());
    if let (Some(to), Some(edge), Some(width)) = second
        && answer.gap.is_positive()
    {
        let label = format!("gap {}", board.amount(answer.gap));
        board.labelled(2, (*edge + *width)?, *to, label, Some(GAP.id));
    }
    Ok(board.scene(say![
        "The top from above, ",
        answer.top,
        " wide: planks numbered from the left, with a gap of ",
        answer.gap,
        " between them."
    ]))
}
