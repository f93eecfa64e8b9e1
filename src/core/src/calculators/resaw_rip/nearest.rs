//! The nearest thing that works, where several questions offer the same.

use crate::measure::Length;
use crate::say;
use crate::sheet::{Field, Refusal, WayOut};

/// This length in that field, or more.
pub(super) fn at_least(field: &Field, length: Length) -> Option<WayOut> {
    WayOut::at_least("Use ", length, " or more.", field)
}

/// This length in that field, or less.
pub(super) fn at_most(field: &Field, length: Length) -> Option<WayOut> {
    WayOut::at_most("Use ", length, " or less.", field)
}

/// Where no width of the plan is thick enough to run between blade and fence.
pub(super) fn saw_it_thicker() -> Option<WayOut> {
    WayOut::advice(say!["Saw it thicker and plane it down, or glue it to a wider board first."])
}

/// A strip too thin to run between blade and fence.
pub(super) fn too_thin_at_fence(
    field: &Field,
    thin: Length,
    thinnest: Length,
    nearest: Option<WayOut>,
) -> Refusal {
    Refusal::at(
        field,
        "too-thin-at-fence",
        say![
            "A piece ",
            thin,
            " thin would run between blade and fence. Your limit is ",
            thinnest,
            "."
        ],
        nearest.or_else(saw_it_thicker),
    )
}
