//! Reads planks and moisture and lays today and later out side by side.

use super::{Answer, Find, Input, reckon};
use crate::calculators::top::Change;
use crate::drawing::{Anchor, Board, Role, Scene, Shape, Size};
use crate::measure::{Length, OutOfRange, Rounding, Tape};
use crate::say;
use crate::sheet::{self, Ask, Figure, Source, Step, Table, Value, Working};

pub(in crate::calculators::top) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let widths = ask.lengths(ask.field("planks"));
    let change = Change::read(ask);
    let find = match ask.choice(ask.field("season_find")).id {
        "today" => Find::Today { gap_later: ask.length(ask.field("gap_later"))? },
        _ => Find::Later { gap_now: ask.length(ask.field("gap_now"))? },
    };
    let input = Input { widths: widths?, change: change?, find };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(problems) => ask.refuse(&problems),
    }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let smallest = answer.gaps_later.iter().copied().min().unwrap_or(answer.gap_now);
    let widest = answer.gaps_later.iter().copied().max().unwrap_or(answer.gap_now);
    let later = Figure::length("gap_smallest", "Gap later", "plank to plank", smallest);
    let today = Figure::length("gap_today", "Gap today", "plank to plank", answer.gap_now);
    let (headline, other) = match input.find {
        Find::Later { .. } => (later, today),
        Find::Today { .. } => (today, later),
    };
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures.push(other);
    if widest != smallest {
        let from = "between the widest planks";
        laid.figures.push(Figure::length("gap_widest", "Widest gap later", from, widest));
    }
    laid.figures.push(Figure::length("top_today", "Top today", "edge to edge", answer.top_now));
    laid.figures.push(Figure::length("top_later", "Top later", "edge to edge", answer.top_later));
    laid.figures.extend(input.change.figure());
    let gaps = answer.gaps_later.iter().map(Some).chain([None]);
    let rows =
        input.widths.iter().zip(&answer.widths_later).zip(gaps).map(|((now, later), gap)| {
            let length = |length: Length| Value::Length(length, Rounding::Nearest);
            let gap = gap.map_or_else(|| Value::Words(say!["-"]), |gap| length(*gap));
            vec![length(*now), length(*later), gap]
        });
    laid.tables.push(Table {
        id: "season",
        title: "Planks from the left",
        columns: &["Today", "Later", "Gap after it"],
        rows: rows.collect(),
    });
    if let Change::Softwood { .. } = input.change {
        laid.notes.push(say![
            "For ordinary softwood. Redwood and cedar shrink less: find theirs by species and give it here."
        ]);
    }
    laid.notes.push(say![
        "Each plank is held at its own middle. Real boards differ: take the gap as a guide."
    ]);
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let (step, mut sources) = input.change.working();
    let mut steps: Vec<Step> = step.into_iter().collect();
    if let (Some(now), Some(later)) = (input.widths.first(), answer.widths_later.first()) {
        steps.push(Step::length("plank later = today × (1 - lost)", say![*now], *later));
    }
    if let Some(gap) = answer.gaps_later.first() {
        steps.push(Step::length(
            "gap later = gap today + half of what both neighbours lose",
            say![answer.gap_now],
            *gap,
        ));
    }
    steps.push(Step::length(
        "top later = top today - half of what both outer planks lose",
        say![answer.top_now],
        answer.top_later,
    ));
    if !sources.contains(&Source::Arithmetic) {
        sources.push(Source::Arithmetic);
    }
    Working { steps, sources }
}

/// Two strips to one scale: the planks today, and dashed the planks later, middles in line.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    const HIGH: f64 = 30.0;
    let widest = answer.top_now.max(answer.top_later);
    let mut board = Board::along(tape, widest, 2.0 * HIGH + 26.0, 1, 1);
    let strips = [
        (&input.widths, answer.top_now, Role::Wood, board.top(), "today"),
        (&answer.widths_later, answer.top_later, Role::Ghost, board.top() + HIGH + 26.0, "later"),
    ];
    for (widths, top, role, y, name) in strips {
        let mut edge = ((widest - top)? / 2)?;
        let mut gaps = answer.gaps_later.iter();
        for width in widths {
            board.add(role, Shape::Rect(board.x(edge), y, board.size(*width), HIGH));
            let gap = match role {
                Role::Wood => answer.gap_now,
                _ => gaps.next().copied().unwrap_or(Length::ZERO),
            };
            edge = ((edge + *width)? + gap)?;
        }
        let baseline = if role == Role::Wood { board.row(-1) } else { board.row(0) };
        let x = board.x(Length::ZERO);
        let label = format!("{name} {}", board.amount(top));
        board.text(Role::Ink, x, baseline, Anchor::Start, Size::Small, label);
        let gap = match role {
            Role::Wood => Some(answer.gap_now),
            _ => answer.gaps_later.iter().copied().min(),
        };
        if let Some(gap) = gap {
            let (x, label) = (board.x(widest), format!("gap {}", board.amount(gap)));
            board.text(Role::StrongInk, x, baseline, Anchor::End, Size::Small, label);
        }
    }
    Ok(board.scene(say![
        "The planks today, ",
        answer.top_now,
        " over all, and dashed the same planks later, ",
        answer.top_later,
        " over all."
    ]))
}
