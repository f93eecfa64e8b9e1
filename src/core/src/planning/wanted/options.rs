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

const FIELDS: &[Field] = &[
    Field::new("kerf", "Kerf", "width of the cut", Kind::ZERO_UP, Start::Kerf),
    Field::new("reach", "Blade reach", "deepest cut", Kind::ABOVE_ZERO, Start::BladeReach),
    end_trim("the cut included"),
    Field::new("may_rip", "Rip wider boards", "", YES_NO, Start::Text("yes")),
    Field::new("may_resaw", "Resaw thicker boards", "", YES_NO, Start::Text("yes")),
    Field::new("crosscut_first", "Crosscut before ripping", "", YES_NO, Start::Text("no")),
    Field::new(
        "edge_cleanup",
        "Clean each edge",
        "of a board that is ripped, the cut included",
        Kind::ZERO_UP,
        Start::Inches("1/8"),
    ),
    Field::new(
        "face_cleanup",
        "Clean each face",
        "of a board that is resawn, the cut included",
        Kind::ZERO_UP,
        Start::Inches("0"),
    ),
    up_to_100("spare_each", "Spare pieces", "of each kind"),
    up_to_100("extra_percent", "Extra", "per cent of each kind"),
    Field::new("rack_only", "From the rack only", "buy nothing", YES_NO, Start::Text("no")),
    KEEP_FROM,
];

/// What is lost at the ends of a board.
pub(in crate::planning) const fn end_trim(hint: &'static str) -> Field {
    Field::new("end_trim", "Trim each end", hint, Kind::ZERO_UP, Start::Inches("1/2"))
}

/// More pieces than wanted: so many, or so many in a hundred.
pub(in crate::planning) const fn up_to_100(
    id: &'static str,
    label: &'static str,
    hint: &'static str,
) -> Field {
    Field::new(id, label, hint, Kind::Count { least: 0, most: 100 }, Start::Text("0"))
}

/// The shortest offcut worth keeping.
pub(in crate::planning) const KEEP_FROM: Field = Field::new(
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
    let (kerf, reach) = (ask.length(ask.field("kerf")), ask.length(ask.field("reach")));
    let (end_trim, edge_cleanup) =
        (ask.length(ask.field("end_trim")), ask.length(ask.field("edge_cleanup")));
    let (face_cleanup, keep_from) =
        (ask.length(ask.field("face_cleanup")), ask.length(ask.field("keep_from")));
    let (spare_each, extra_percent) =
        (ask.count(ask.field("spare_each")), ask.count(ask.field("extra_percent")));
    Some(Options {
        kerf: kerf?,
        reach: reach?,
        may_rip: ask.yes(ask.field("may_rip")),
        may_resaw: ask.yes(ask.field("may_resaw")),
        crosscut_first: ask.yes(ask.field("crosscut_first")),
        end_trim: end_trim?,
        edge_cleanup: edge_cleanup?,
        face_cleanup: face_cleanup?,
        spare_each: spare_each?,
        extra_percent: extra_percent?,
        rack_only: ask.yes(ask.field("rack_only")),
        keep_from: keep_from?,
    })
}

/// What the form of a job starts with beyond the bench: kerf and reach of the job's own saw, if it has one.
#[must_use]
pub fn start_entries(job: &Job) -> Entries {
    let saw = job.items().find_map(|(_, item)| match item {
        Item::Saw(saw) => Some([("kerf", saw.kerf.clone()), ("reach", saw.reach.clone())]),
        _ => None,
    });
    let mut entries = Entries::from_pairs(saw.into_iter().flatten());
    entries.set_unit(Some(job.unit));
    entries
}
