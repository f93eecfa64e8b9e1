//! What is said of a screw that somebody has, whichever way it is driven.

use super::LEAST_INTO;
use crate::measure::Length;
use crate::say;
use crate::sheet::Sentence;

/// It ends by so much before it would hold.
pub(super) fn ends_before(by: Length, what: &'static str) -> Sentence {
    if by.is_zero() {
        say!["too short: it ends at ", what]
    } else {
        say!["too short: it ends ", by, " before ", what]
    }
}

/// It holds by less than what is called a hold at all.
pub(super) fn too_little_in(into: Length) -> Sentence {
    say!["too short: only ", into, " goes in, ", LEAST_INTO, " is the least"]
}
