//! The calculators, one folder each.
//!
//! # What a calculator is made of
//!
//! | file | holds |
//! | --- | --- |
//! | `mod.rs` | the question in a builder's words, the rule and its source; `Input`, `Answer`; `pub fn reckon(&Input) -> Result<Answer, Refused>`, which refuses where it finds what is in the way |
//! | `fields.rs` | what it asks and what it answers with: a constant for each field, choice and result, the one place where its id is spelled |
//! | `sheet.rs` | `pub const CALCULATOR: Calculator` and `fn work(&mut Ask) -> Option<sheet::Answer>`, which reads the fields into an `Input`, reckons, and lays the `Answer` out |
//! | `drawing.rs` | `Answer` to [`Scene`](crate::drawing::Scene) |
//! | `tests.rs` | one `check` helper and a table of cases |
//!
//! Where `reckon` works with other files of the folder, what is asked stands below them, in `asked.rs`, and `mod.rs` lends it on.
//!
//! Published and hand-worked examples stand in `tests/reference/NAME.rs`, laws in
//! `tests/laws/NAME.rs`. Calculators do not use each other; what they share moves down to
//! [`measure`](crate::measure), [`sheet`](crate::sheet) or `tables`; what several say alike stands in
//! a file here, such as `wet_gaps.rs`.

pub mod angles;
mod calculator;
pub mod crosscut;
pub mod curve;
pub mod dowel;
pub mod finish;
pub mod frame;
pub mod lumber;
pub mod moisture;
mod questions;
pub mod resaw_rip;
pub mod screws;
pub mod spacing;
pub mod strength;
pub mod tape;
pub mod top;
#[cfg(test)]
mod trial;
mod wet_gaps;

pub use calculator::{Calculator, Listed, ResultKind, ResultSpec, Run, Stage};
pub use questions::{Found, find_questions};

/// The calculators up to the saw ([`Run::Wood`]), in the order of the job.
// One a line, so that two new ones never meet in a merge.
#[rustfmt::skip]
pub const WOOD: &[&Calculator] = &[
    &tape::CALCULATOR,
    &lumber::CALCULATOR,
    &moisture::CALCULATOR,
    &resaw_rip::CALCULATOR,
    &crosscut::CALCULATOR,
];

/// The calculators of frames, holes and screws ([`Run::Joints`]), in the order of the job.
#[rustfmt::skip]
pub const JOINTS: &[&Calculator] = &[
    &frame::CALCULATOR,
    &dowel::CALCULATOR,
    &screws::CALCULATOR,
    &spacing::CALCULATOR,
];

/// The calculators from the top on ([`Run::Shapes`]), in the order of the job.
#[rustfmt::skip]
pub const SHAPES: &[&Calculator] = &[
    &top::CALCULATOR,
    &curve::CALCULATOR,
    &angles::CALCULATOR,
    &strength::CALCULATOR,
    &finish::CALCULATOR,
];

/// Every calculator, in the order of the job.
pub const ALL: &[&Calculator] =
    &joined::<{ WOOD.len() + JOINTS.len() + SHAPES.len() }>([WOOD, JOINTS, SHAPES]);

/// The runs, one behind the other.
const fn joined<const N: usize>(runs: [&[&'static Calculator]; 3]) -> [&'static Calculator; N] {
    let mut all = [runs[0][0]; N];
    let (mut at, mut run) = (0, 0);
    while run < runs.len() {
        let mut place = 0;
        while place < runs[run].len() {
            all[at] = runs[run][place];
            at += 1;
            place += 1;
        }
        run += 1;
    }
    all
}

/// Every calculator as a list shows it, in the same order.
pub static LIST: [Listed; ALL.len()] = {
    let mut list = [ALL[0].listed(); ALL.len()];
    let mut at = 1;
    while at < ALL.len() {
        list[at] = ALL[at].listed();
        at += 1;
    }
    list
};

/// What a list shows of the calculator with this slug.
#[must_use]
pub fn listed(slug: &str) -> Option<&'static Listed> {
    LIST.iter().find(|listed| listed.slug == slug)
}

/// The calculator with this slug.
#[must_use]
pub fn find(slug: &str) -> Option<&'static Calculator> {
    ALL.iter().copied().find(|calculator| calculator.slug == slug)
}
