//! Why a question is not answered, put together from its parts.

use super::fields::KERF;
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};

/// Adds why a part of a question is not answered, so that all shows at once.
pub(super) fn add(refusals: &mut Vec<Refusal>, refused: Refused) {
    match refused {
        Refused::For(more) => refusals.extend(more),
        Refused::OutOfRange => refusals.push(out_of_range()),
    }
}

/// Beyond the limits of exact numbers.
pub(super) fn out_of_range() -> Refusal {
    Refusal::at(
        &KERF,
        "out-of-range",
        say!["These numbers are too large or too fine to keep exactly."],
        WayOut::advice(say!["Use numbers that a tape can show."]),
    )
}
