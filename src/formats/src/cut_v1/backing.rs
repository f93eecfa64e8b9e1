//! What was proved of a plan that is kept, as text.

use reckoner_core::cutting::{Backing, Ties};

use crate::json::{Fault, Field, Fields, I64, Kind, Record, Value, Writer, may};

/// What the search that a plan came from proved of it.
pub(crate) const BACKING: &[Field] = &[
    may("proved", Kind::Flag, "No plan costs less, or none cuts more from the rack."),
    may("checked", Kind::Flag, "The whole bound was worked out again by a second check."),
    may("ties", Kind::Record(TIES), "What is proved of its rank among plans of equal money."),
    may(
        "in_place_of",
        I64,
        "What the plan cost that was found, and that it was taken in place of.",
    ),
];

const TIES: &[Field] = &[
    may("fewest_boards", Kind::Flag, ""),
    may("fewest_settings", Kind::Flag, ""),
    may("fewest_cuts", Kind::Flag, ""),
    may("longest_offcut", Kind::Flag, ""),
];

/// Four fields in this order: of a record of their own, or among others.
pub(super) fn write_ties(out: &mut Fields, ties: Ties) {
    out.flag(ties.fewest_boards);
    out.flag(ties.fewest_settings);
    out.flag(ties.fewest_cuts);
    out.flag(ties.longest_offcut);
}

pub(super) fn read_ties(it: &mut Record) -> Ties {
    Ties {
        fewest_boards: it.flag(),
        fewest_settings: it.flag(),
        fewest_cuts: it.flag(),
        longest_offcut: it.flag(),
    }
}

pub(crate) fn write_backing(w: &mut Writer, it: &Backing) {
    w.record(BACKING, |out| {
        out.flag(it.is_proved);
        out.flag(it.is_checked);
        out.value(it.ties, |w, ties| w.record(TIES, |out| write_ties(out, ties)));
        out.maybe_int(it.in_place_of);
    });
}

/// Reads what was proved of a plan. It claims no more than the plan's cost and bound do.
pub(crate) fn read_backing(value: Value, (cost_cents, bound_cents): (i64, i64)) -> Backing {
    let mut it = value.record();
    let (is_proved, is_checked) = (it.flag(), it.flag());
    let ties = it.next().map(|value| read_ties(&mut value.record()));
    let in_place_of = it.maybe_int();
    let is_open = is_proved && bound_cents != cost_cents;
    if is_open || in_place_of.is_some_and(|found| found < bound_cents) {
        value
            .faults
            .add(Fault::Said("more is said to be proved of this plan than its bound".to_owned()));
    }
    Backing { is_proved, is_checked, ties, in_place_of }
}
