//! Reads planks and moisture and lays today and later out side by side.

use super::{Answer, Find, Input, reckon};
use crate::calculators::top::Change;
use crate::calculators::top::fields::{
    GAP_AFTER_IT_COLUMN, GAP_LATER, GAP_NOW, GAP_SMALLEST, GAP_TODAY, GAP_WIDEST, LATER_COLUMN,
    PLANKS, SEASON, SEASON_FIND, TODAY, TODAY_COLUMN, TOP_LATER, TOP_TODAY, too_large,
};
use crate::drawing::{Anchor, Board, Role, Scene, Shape, Size};
use crate::measure::{Length, OutOfRange, Tape};
use crate::say;
use crate::sheet::{self, Ask, Note, Source, Step, Term, Value, Working};

pub(in crate::calculators::top) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let widths = ask.lengths(&PLANKS);
    let change = Change::read(ask);
    let find = match ask.choice(&SEASON_FIND) {
        TODAY => Find::Today { gap_later: ask.length(&GAP_LATER)? },
        _ => Find::Later { gap_now: ask.length(&GAP_NOW)? },
    };
    let input = Input { widths: widths?, change: change?, find };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused, too_large()),
    }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let smallest = answer.gaps_later.iter().copied().min().unwrap_or(answer.gap_now);
    let widest = answer.gaps_later.iter().copied().max().unwrap_or(answer.gap_now);
    let later = GAP_SMALLEST.called("Gap later").figure("plank to plank", smallest);
    let today = GAP_TODAY.figure("plank to plank", answer.gap_now);
    let (headline, other) = match input.find {
        Find::Later { .. } => (later, today),
        Find::Today { .. } => (today, later),
    };
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures.push(other);
    if widest != smallest {
        let from = "between the widest planks";
        laid.figures.push(GAP_WIDEST.figure(from, widest));
    }
    laid.figures.push(TOP_TODAY.figure("edge to edge", answer.top_now));
    laid.figures.push(TOP_LATER.figure("edge to edge", answer.top_later));
    laid.figures.extend(input.change.figure());
    let gaps = answer.gaps_later.iter().map(Some).chain([None]);
    let rows =
        input.widths.iter().zip(&answer.widths_later).zip(gaps).map(|((now, later), gap)| {
            let gap = gap.map_or_else(|| Value::Words(say!["-"]), |gap| (*gap).into());
            vec![(*now).into(), (*later).into(), gap]
        });
    laid.tables.push(
        SEASON
            .called("Planks from the left")
            .table(&[TODAY_COLUMN, LATER_COLUMN, GAP_AFTER_IT_COLUMN], rows.collect()),
    );
    if let Change::Softwood { .. } = input.change {
        laid.notes.push(Note::new("for_ordinary_softwood", say![
            "For ordinary softwood. Redwood and cedar shrink less: find theirs by species and give it here."
        ]));
    }
    laid.notes.push(Note::new(
        "planks_held_at_middle",
        say!["Each plank is held at its own middle. Real boards differ: take the gap as a guide."],
    ));
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let (mut steps, mut sources) = input.change.working();
    // Each edge of a plank moves by half of what it loses.
    let planks: Vec<(Length, Length)> =
        input.widths.iter().copied().zip(answer.widths_later.iter().copied()).collect();
    let half_lost = |[today, later]: [&str; 2], plank: (Length, Length)| {
        (Term::of(today, plank.0) - Term::of(later, plank.1)) / Term::fixed(2)
    };
    const FIRST: [&str; 2] = ["first plank", "first later"];
    if let Some(first) = planks.first() {
        let later = Term::of("today", first.0) * input.change.kept();
        steps.push(Step::of("plank later", later, first.1));
    }
    if let (Some(gap), Some(first), Some(second)) =
        (answer.gaps_later.first(), planks.first(), planks.get(1))
    {
        let opens = half_lost(FIRST, *first) + half_lost(["next plank", "next later"], *second);
        let later = Term::of("gap today", answer.gap_now) + opens;
        steps.push(Step::of("gap later", later, *gap));
    }
    if let (Some(first), Some(last)) = (planks.first(), planks.last()) {
        let top = Term::of("top today", answer.top_now);
        let later = top - half_lost(FIRST, *first) - half_lost(["last plank", "last later"], *last);
        steps.push(Step::of("top later", later, answer.top_later));
    }
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
            let shape = Shape::Rect(board.x(edge), y, board.size(*width), HIGH);
            if role == Role::Ghost {
                board.add(Role::Mate, shape.clone());
            }
            board.add(role, shape);
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
            let field = if role == Role::Wood { GAP_NOW.id } else { GAP_LATER.id };
            board.name(Role::StrongInk, (x, baseline, Anchor::End), label, Some(field));
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
