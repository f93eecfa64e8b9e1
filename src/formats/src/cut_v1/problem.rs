//! What can be wrong with a cutting job, as text.

use reckoner_core::cutting::CutProblem;

use super::kinds::{MOST_CUT_LINES, TEXT, UNITS};
use crate::json::{Field, Kind, U32, U64, Value, Writer, may, must};

/// The losses that a job can name.
const LOSSES: [&str; 10] = [
    "end trim",
    "crosscut kerf",
    "rip kerf",
    "edge clean-up",
    "least strip width",
    "resaw kerf",
    "face clean-up",
    "least layer thickness",
    "greatest resaw width",
    "loss",
];

pub(super) const PROBLEM: Kind = Kind::Case(&[
    ("no_parts", None),
    ("no_boards", None),
    ("same_id", Some(TEXT)),
    ("unknown_section", Some(Kind::Record(UNKNOWN_SECTION))),
    ("length_not_positive", Some(TEXT)),
    ("length_too_large", Some(TEXT)),
    ("price_not_positive", Some(TEXT)),
    ("price_too_large", Some(TEXT)),
    ("too_many_parts", Some(U64)),
    ("loss_out_of_range", Some(TEXT)),
    ("knot_outside", Some(TEXT)),
    ("nothing_usable", Some(TEXT)),
    ("part_fits_nowhere", Some(Kind::Record(FITS_NOWHERE))),
    ("not_enough_boards", Some(Kind::Record(NOT_ENOUGH))),
]);

const UNKNOWN_SECTION: &[Field] = &[must("id", TEXT, ""), must("section", TEXT, "")];

const FITS_NOWHERE: &[Field] =
    &[must("id", TEXT, ""), must("length", UNITS, ""), may("longest_clear", UNITS, "")];

const NOT_ENOUGH: &[Field] = &[
    must("left_out", Kind::List(&Kind::Row(&[TEXT, U32]), MOST_CUT_LINES), ""),
    must("proved", Kind::Flag, ""),
];

pub(super) fn write_problem(w: &mut Writer, problem: &CutProblem) {
    let (name, id) = match problem {
        CutProblem::NoParts => return w.text("no_parts"),
        CutProblem::NoBoards => return w.text("no_boards"),
        CutProblem::SameId { id } => ("same_id", &**id),
        CutProblem::LengthNotPositive { id } => ("length_not_positive", &**id),
        CutProblem::LengthTooLarge { id } => ("length_too_large", &**id),
        CutProblem::PriceNotPositive { id } => ("price_not_positive", &**id),
        CutProblem::PriceTooLarge { id } => ("price_too_large", &**id),
        CutProblem::LossOutOfRange { what } => ("loss_out_of_range", *what),
        CutProblem::KnotOutside { id } => ("knot_outside", &**id),
        CutProblem::NothingUsable { id } => ("nothing_usable", &**id),
        CutProblem::TooManyParts { wanted } => {
            return w.case("too_many_parts", |w| w.int(*wanted));
        }
        CutProblem::UnknownSection { id, section } => {
            return w.case("unknown_section", |w| {
                w.record(UNKNOWN_SECTION, |out| {
                    out.text(id);
                    out.text(section);
                });
            });
        }
        CutProblem::PartFitsNowhere { id, length, longest_clear } => {
            return w.case("part_fits_nowhere", |w| {
                w.record(FITS_NOWHERE, |out| {
                    out.text(id);
                    out.int(*length);
                    out.maybe_int(*longest_clear);
                });
            });
        }
        CutProblem::NotEnoughBoards { left_out, proved } => {
            return w.case("not_enough_boards", |w| {
                w.record(NOT_ENOUGH, |out| {
                    out.list(left_out, |w, (id, count)| {
                        w.row(&mut [&mut |w| w.text(id), &mut |w| w.int(*count)]);
                    });
                    out.flag(*proved);
                });
            });
        }
    };
    w.case(name, |w| w.text(id));
}

pub(super) fn read_problem(value: Value) -> Option<CutProblem> {
    let (name, value) = value.case()?;
    let id = || value.map(|value| value.text()).unwrap_or_default();
    Some(match name {
        "no_parts" => CutProblem::NoParts,
        "no_boards" => CutProblem::NoBoards,
        "same_id" => CutProblem::SameId { id: id() },
        "length_not_positive" => CutProblem::LengthNotPositive { id: id() },
        "length_too_large" => CutProblem::LengthTooLarge { id: id() },
        "price_not_positive" => CutProblem::PriceNotPositive { id: id() },
        "price_too_large" => CutProblem::PriceTooLarge { id: id() },
        "knot_outside" => CutProblem::KnotOutside { id: id() },
        "nothing_usable" => CutProblem::NothingUsable { id: id() },
        "loss_out_of_range" => {
            let said = id();
            let what = LOSSES.into_iter().find(|loss| *loss == said).unwrap_or("loss");
            CutProblem::LossOutOfRange { what }
        }
        "too_many_parts" => CutProblem::TooManyParts { wanted: value?.int() },
        "unknown_section" => {
            let mut it = value?.record();
            CutProblem::UnknownSection { id: it.text(), section: it.text() }
        }
        "part_fits_nowhere" => {
            let mut it = value?.record();
            let (id, length) = (it.text(), it.int());
            CutProblem::PartFitsNowhere { id, length, longest_clear: it.maybe_int() }
        }
        _ => {
            let mut it = value?.record();
            let left_out = it.list(|value| {
                let mut row = value.row();
                (row.text(), row.int())
            });
            CutProblem::NotEnoughBoards { left_out, proved: it.flag() }
        }
    })
}
