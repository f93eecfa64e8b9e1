//! What is said where gaps between boards close or open as they swell or dry, in one place for the
//! calculators that ask it: one question, one answer.

use crate::measure::{Length, Rounding};
use crate::say;
use crate::sheet::{Choice, Field, Refusal, WayOut};

/// Boards that swell by `swell` each press on each other: the gap of `today` closes.
pub(super) fn closes(today: &Field, code: &'static str, swell: Length) -> Refusal {
    // The mark above, so that the gap set is enough.
    let least = (swell, Rounding::Up);
    Refusal::at(
        today,
        code,
        say![
            "The gaps would close, and the boards press on each other: each swells by ",
            swell,
            "."
        ],
        WayOut::set(say!["Leave ", least, " or more today."], today, least),
    )
}

/// Boards that lose `lost` each gap more than is wanted later, even when they lie tight today.
///
/// Carried out by asking it the other way round: `find` is answered with `from_today`, and the gap
/// today is nothing. What opens is then seen as it is, not rounded to a gap that can be typed.
pub(super) fn opens_further(
    wanted: &Field,
    code: &'static str,
    lost: Length,
    (find, from_today): (&Field, Choice),
    today: &Field,
) -> Refusal {
    Refusal::at(
        wanted,
        code,
        say!["Even laid tight today, the boards gap ", lost, " later."],
        Some(WayOut {
            sentence: say!["Lay them tight, and take ", lost, "."],
            set: vec![(find.id, from_today.id.into()), (today.id, "0".into())],
        }),
    )
}
