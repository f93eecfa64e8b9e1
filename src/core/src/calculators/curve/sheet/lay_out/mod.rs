//! Lays the answers of the curve out, one module for each question.

mod arc;
mod corner;
mod rim;
mod s_curve;

pub(super) use arc::lay_out as arc;
pub(super) use corner::{lay_out as corner, lay_out_end as end};
pub(super) use rim::lay_out as rim;
pub(super) use s_curve::lay_out as s_curve;

use crate::calculators::curve::fields::{
    MARKS, NARROWEST, ROUND_THINGS, THING, THING_CENTRE, THING_OFF, WASTE,
};
use crate::calculators::curve::things::Fit;
use crate::calculators::curve::{Board, Mark};
use crate::measure::{Length, OutOfRange};
use crate::say;
use crate::sheet::{Column, Figure, Note, Sentence, Source, Step, Table, Term, Value};

/// Most round things listed.
const MOST_LISTED: usize = 5;

const REGINA: Source =
    Source::Published("University of Regina, Math Central: radius from chord and rise");

fn degrees(degrees: f64) -> Value {
    Value::Real(degrees, 1, "°")
}

fn waste(from: &'static str, square_inches: f64) -> Figure {
    WASTE.figure(from, Value::Real(square_inches, 1, "sq in"))
}

/// The best round thing and the next ones; words when there is none.
struct Things {
    figures: Vec<Figure>,
    tables: Vec<Table>,
    notes: Vec<Note>,
}

/// How the radius of a thing compares with the wanted one.
fn off_by(off: Length) -> Sentence {
    if off.is_zero() {
        say!["just right"]
    } else if off.is_negative() {
        say![off.abs(), " too small"]
    } else {
        say![off, " too large"]
    }
}

/// `centre`: what the centre of the best one is measured from, and how far it is from there.
fn things(
    asked: &[Length],
    fits: &[Fit],
    columns: &'static [Column; 3],
    from: &'static str,
    centre: impl Fn(Fit) -> Result<Length, OutOfRange>,
    none_fits: Note,
) -> Things {
    let mut figures = Vec::new();
    let mut notes = Vec::new();
    match fits.first() {
        Some(best) => {
            figures.push(THING.figure("across", best.diameter));
            if let Ok(centre) = centre(*best) {
                figures.push(THING_CENTRE.figure(from, centre));
            }
            figures.push(THING_OFF.figure("", Value::Words(off_by(best.off))));
        }
        None if asked.is_empty() => {}
        None => notes.push(none_fits),
    }
    let rows: Vec<_> = fits
        .iter()
        .take(MOST_LISTED)
        .map(|fit| vec![fit.diameter.into(), Value::Words(off_by(fit.off)), fit.gives.into()])
        .collect();
    let tables = if rows.is_empty() {
        Vec::new()
    } else {
        vec![ROUND_THINGS.called("Round things, nearest first").table(columns, rows)]
    };
    Things { figures, tables, notes }
}

fn marks(title: &'static str, columns: &'static [Column], marks: &[Mark]) -> Table {
    let rows = marks.iter().map(|mark| vec![mark.along.into(), mark.height.into()]).collect();
    MARKS.called(title).table(columns, rows)
}

fn narrowest(board: Option<Board>, left: Option<Length>, takes: Length) -> Option<(Figure, Step)> {
    let (board, left) = (board?, left?);
    let figure = NARROWEST.figure("across the board", left);
    let formula = Term::of("board width", board.width) - Term::of("rise", takes);
    let step = Step::of("left at the narrowest", formula, left);
    Some((figure, step))
}

fn radius_step(chord: Length, rise: Length, radius: Length) -> Step {
    let chord = || Term::of("chord", chord);
    let rise = || Term::of("rise", rise);
    let formula = chord() * chord() / (Term::fixed(8) * rise()) + rise() / Term::fixed(2);
    Step::of("radius", formula, radius)
}

fn off_the_board() -> Note {
    Note::new(
        "center_is_off_board",
        say!["The center lies off the board. Lay scrap of the same thickness beside it."],
    )
}
