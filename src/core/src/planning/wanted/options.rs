//! [`Options`]: what a plan may do, as a form and as exact values.

use crate::calculators::{Calculator, Stage};
use crate::job::{Item, Job};
use crate::measure::Length;
use crate::sheet::{Answer, Ask, Entries, Field, Kind, Start};

/// What a plan may do, and what it must keep.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Options {
    /// Width of every cut.
    pub kerf: Length,
    /// Deepest cut of the saw; from both sides it cuts twice as deep.
    pub reach: Length,
    /// A part may be ripped from a wider board, if the part allows it too.
    pub may_rip: bool,
    /// A part may be resawn from a thicker board, if the part allows it too.
    pub may_resaw: bool,
    /// A board may be crosscut first and ripped then.
    pub crosscut_first: bool,
    /// Lost at each end of every board, the cut included.
    pub end_trim: Length,
    /// Lost along each edge of a board that is ripped, the cut included.
    pub edge_cleanup: Length,
    /// Lost off each face of a board that is resawn, the cut included.
    pub face_cleanup: Length,
    /// At least so many spare pieces of each part.
    pub spare_each: u32,
    /// At least so many per cent more of each part.
    pub extra_percent: u32,
    /// Nothing is bought: as many parts as the rack gives, in the order of the list.
    pub rack_only: bool,
    /// The shortest offcut worth keeping.
    pub keep_from: Length,
}

/// The form of the [`Options`].
pub static OPTIONS: Calculator = Calculator {
    slug: "",
    title: "Plan",
    question: "What may the plan do?",
    stage: Stage::Wood,
    fields: FIELDS,
    results: &[],
    work,
};

const YES_NO: Kind = Kind::YesNo;

const KERF: Field = Field::new("kerf", "Kerf", "width of the cut", Kind::ZERO_UP, Start::Kerf);
const REACH: Field =
    Field::new("reach", "Blade reach", "deepest cut", Kind::ABOVE_ZERO, Start::BladeReach);
const END_TRIM: Field = end_trim("the cut included");
const MAY_RIP: Field = Field::new("may_rip", "Rip wider boards", "", YES_NO, Start::Text("yes"));
const MAY_RESAW: Field =
    Field::new("may_resaw", "Resaw thicker boards", "", YES_NO, Start::Text("yes"));
const CROSSCUT_FIRST: Field =
    Field::new("crosscut_first", "Crosscut before ripping", "", YES_NO, Start::Without("no"));
const EDGE_CLEANUP: Field = Field::new(
    "edge_cleanup",
    "Clean each edge",
    "of a board that is ripped, the cut included",
    Kind::ZERO_UP,
    Start::Inches("1/8"),
);
const FACE_CLEANUP: Field = Field::new(
    "face_cleanup",
    "Clean each face",
    "of a board that is resawn, the cut included",
    Kind::ZERO_UP,
    Start::Without("0"),
);
const SPARE_EACH: Field = spare_each("of each kind");
const EXTRA_PERCENT: Field = extra_percent("per cent of each kind");
const RACK_ONLY: Field =
    Field::new("rack_only", "From the rack only", "buy nothing", YES_NO, Start::Without("no"));

const FIELDS: &[Field] = &[
    KERF,
    REACH,
    END_TRIM,
    MAY_RIP,
    MAY_RESAW,
    CROSSCUT_FIRST,
    EDGE_CLEANUP,
    FACE_CLEANUP,
    SPARE_EACH,
    EXTRA_PERCENT,
    RACK_ONLY,
    KEEP_FROM,
];

/// What is lost at the ends of a board.
pub(in crate::planning) const fn end_trim(hint: &'static str) -> Field {
    Field::new("end_trim", "Trim each end", hint, Kind::ZERO_UP, Start::Inches("1/2"))
}

const UP_TO_100: Kind = Kind::Count { least: 0, most: 100 };

/// So many pieces more than wanted.
pub(in crate::planning) const fn spare_each(hint: &'static str) -> Field {
    Field::new("spare_each", "Spare pieces", hint, UP_TO_100, Start::Without("0"))
}

/// So many in a hundred more than wanted.
pub(in crate::planning) const fn extra_percent(hint: &'static str) -> Field {
    Field::new("extra_percent", "Extra", hint, UP_TO_100, Start::Without("0"))
}

/// The shortest offcut worth keeping.
pub const KEEP_FROM: Field = Field::new(
    "keep_from",
    "Keep offcuts from",
    "this long",
    Kind::ABOVE_ZERO,
    Start::Inches("12"),
);

fn work(ask: &mut Ask) -> Option<Answer> {
    options(ask);
    None
}

/// Reads the form [`OPTIONS`]. `None` when a refusal was kept in the [`Ask`].
pub fn options(ask: &mut Ask) -> Option<Options> {
    let (kerf, reach) = (ask.kerf(&KERF), ask.length(&REACH));
    let (end_trim, edge_cleanup) = (ask.length(&END_TRIM), ask.length(&EDGE_CLEANUP));
    let (face_cleanup, keep_from) = (ask.length(&FACE_CLEANUP), ask.length(&KEEP_FROM));
    let (spare_each, extra_percent) = (ask.count(&SPARE_EACH), ask.count(&EXTRA_PERCENT));
    Some(Options {
        kerf: kerf?,
        reach: reach?,
        may_rip: ask.yes(&MAY_RIP),
        may_resaw: ask.yes(&MAY_RESAW),
        crosscut_first: ask.yes(&CROSSCUT_FIRST),
        end_trim: end_trim?,
        edge_cleanup: edge_cleanup?,
        face_cleanup: face_cleanup?,
        spare_each: spare_each?,
        extra_percent: extra_percent?,
        rack_only: ask.yes(&RACK_ONLY),
        keep_from: keep_from?,
    })
}

/// What the form of a job starts with beyond the bench: kerf and reach of the job's own saw, if it has one.
#[must_use]
pub fn start_entries(job: &Job) -> Entries {
    let saw = job.items().find_map(|(_, item)| match item {
        Item::Saw(saw) => Some([(KERF.id, saw.kerf.clone()), (REACH.id, saw.reach.clone())]),
        _ => None,
    });
    let mut entries = Entries::from_pairs(saw.into_iter().flatten());
    entries.set_unit(Some(job.unit));
    entries
}
