//! [`Item`]: what a job is made of. Plain data, with every measure as the user wrote it.

use std::collections::BTreeMap;

use super::names::make_visible;
use super::{CutPlan, CutTicks, ItemId, Piece};
use crate::calculators;
use crate::measure::Length;
use crate::sheet::{Kind, Side};

/// Anything in a job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Item {
    /// A named size or number.
    Measure(Measure),
    /// A part to cut.
    Part(Part),
    /// A calculator kept with its entries.
    Kept(Kept),
    /// Measures and parts that must come out alike.
    Match(Match),
    /// A board or scrap on hand.
    RackBoard(RackBoard),
    /// A length the yard sells.
    YardBoard(YardBoard),
    /// A round thing the user owns.
    Round(Round),
    /// A saw.
    Saw(Saw),
    /// A screw size on hand.
    Screw(Screw),
    /// What the sketch of the job is drawn from.
    Sketch(Sketch),
    /// A cut plan.
    CutPlan(Box<CutPlan>),
    /// What has been bought and cut of a cut plan.
    CutTicks(CutTicks),
    /// What is close enough.
    CloseEnough(CloseEnough),
    /// What is ticked off that no piece and no board tells.
    Ticked(Ticked),
}

impl Item {
    /// What the user calls it, for the list of what moved and of what is in conflict.
    #[must_use]
    pub fn name(&self) -> &str {
        match self {
            Item::Measure(item) => &item.name,
            Item::Part(item) => &item.name,
            Item::Kept(item) => &item.title,
            Item::Match(item) => &item.name,
            Item::RackBoard(item) => &item.name,
            Item::YardBoard(item) => &item.section,
            Item::Round(item) => &item.name,
            Item::Saw(item) => &item.name,
            Item::Screw(_) => "screws",
            Item::Sketch(_) => "sketch",
            Item::CutPlan(item) => &item.title,
            Item::CutTicks(_) => "boards cut",
            Item::CloseEnough(_) => "close enough",
            Item::Ticked(_) => "ticked off",
        }
    }
}

/// What kind of value a measure has.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum MeasureKind {
    /// A length.
    #[default]
    Length,
    /// A plain number: how many slats.
    Number,
}

/// Where the planned value of a measure comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Written {
    /// A value or a formula over other names, as typed.
    Formula(String),
    /// A result of a kept reckoning: linked, not copied.
    Linked(Linked),
}

/// One result of a kept reckoning, or what one of its fields says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Linked {
    /// The [`Kept`] reckoning.
    pub kept: ItemId,
    /// Id of the result: `pitch`. Id of a field, `leg_left`, where no result has it.
    pub result: String,
    /// Which one of several, from 0, where the result is a list; the cells of a table are counted
    /// row by row.
    pub index: u32,
}

/// A named size or number of a job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Measure {
    /// Where it stands in the list.
    pub rank: i64,
    /// What the builder calls it: `front rail`. Any script; see [`check_name`](super::check_name).
    pub name: String,
    /// A length or a number.
    pub kind: MeasureKind,
    /// The plan.
    pub written: Written,
    /// The size the tape says on the real part, as typed. From then on it is the value in use.
    pub as_cut: Option<String>,
    /// The real part is cut: a change to it is a piece to recut, not a number.
    pub is_cut: bool,
    /// Not to be trusted until measured on the real thing: parts that need it wait.
    pub wait: bool,
    /// The user's note.
    pub note: String,
    /// By how much it is off as cut where somebody said to leave it so, signed.
    pub left: Option<Length>,
    /// Its plan is ours, and not the person's yet.
    pub is_ours: bool,
    /// What such a size is published as, by an id of [`USUAL`](crate::tables::furniture::USUAL); empty for nothing.
    pub usual: String,
}

impl Measure {
    /// A size or number of which no more is said than its plan.
    #[must_use]
    pub fn new(name: impl Into<String>, kind: MeasureKind, written: Written) -> Measure {
        Measure {
            rank: 0,
            name: name.into(),
            kind,
            written,
            as_cut: None,
            is_cut: false,
            wait: false,
            note: String::new(),
            left: None,
            is_ours: false,
            usual: String::new(),
        }
    }

    /// Whether it is still to be taken on the real thing.
    #[must_use]
    pub const fn is_to_measure(&self) -> bool {
        self.wait && self.as_cut.is_none()
    }
}

/// How the grain of a part runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Grain {
    /// Along its length, always.
    #[default]
    Locked,
    /// Either way.
    Free,
}

/// Whether a part has a mirror twin.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Hand {
    /// All alike.
    #[default]
    Alike,
    /// Half of them left, half right.
    Pairs,
}

/// A part to cut.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Part {
    /// Where it stands in the list.
    pub rank: i64,
    /// `front rail`
    pub name: String,
    /// How many, as typed; a number or a formula.
    pub quantity: String,
    /// As typed; a length or a formula.
    pub thickness: String,
    /// As typed.
    pub width: String,
    /// Along the grain, as typed.
    pub length: String,
    /// What it is cut from: `2x6`. Empty for any.
    pub stock: String,
    /// Grain.
    pub grain: Grain,
    /// Which face shows; empty when it does not matter.
    pub show_face: String,
    /// Left and right.
    pub hand: Hand,
    /// May be ripped from a wider board.
    pub may_rip: bool,
    /// May be resawn from a thicker board.
    pub may_resaw: bool,
    /// The user's note.
    pub note: String,
    /// What was done of it: piece by piece, as many as were touched.
    pub pieces: Vec<Piece>,
    /// The reckoning that it was made from, if it was.
    pub made: Option<Made>,
}

impl Part {
    /// A part with its name, how many, and its thickness, width and length, all as typed.
    #[must_use]
    pub fn new(name: &str, quantity: &str, size: [&str; 3]) -> Part {
        let [thickness, width, length] = size.map(str::to_owned);
        let (name, quantity) = (name.to_owned(), quantity.to_owned());
        Part { name, quantity, thickness, width, length, ..Part::default() }
    }
}

/// Where a part comes from, so that making parts again finds it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Made {
    /// The [`Kept`] reckoning.
    pub kept: ItemId,
    /// Which of its parts: `rail`.
    pub what: String,
}

/// A calculator kept in the job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Kept {
    /// Where it stands in the list.
    pub rank: i64,
    /// What the user calls it.
    pub title: String,
    /// Slug of the calculator.
    pub slug: String,
    /// Field ids and texts; a text may use the names of the job.
    pub entries: Vec<(String, String)>,
    /// In what its parts in the job are not as it makes them now, where somebody said to leave them so
    /// ([`make_parts::Making`](super::make_parts::Making)).
    pub left: Vec<String>,
}

/// Measures and parts that must come out alike: four legs, a pair of rails.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Match {
    /// `the four legs`
    pub name: String,
    /// The measures, and the parts: of these the length of every piece.
    pub measures: Vec<ItemId>,
    /// How far apart they may drift, as typed; empty for not at all.
    pub drift: String,
    /// How far apart they are where somebody said to leave them so.
    pub left: Option<Length>,
}

/// How far a piece may be off the size wanted and count as right.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CloseEnough {
    /// As typed.
    pub size: String,
}

/// What is ticked off that no piece and no board tells: screws bought, a setting of the fence ripped.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Ticked {
    /// What, by a name that stays the same as long as it is the same, and how many.
    pub done: BTreeMap<String, u32>,
}

/// A board or scrap on hand. Every size as typed.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct RackBoard {
    /// `scrap by the door`
    pub name: String,
    /// Its section, as parts ask for it: `2x6`.
    pub section: String,
    /// As measured.
    pub thickness: String,
    /// As measured, at its narrowest.
    pub width: String,
    /// As measured.
    pub length: String,
    /// How many.
    pub quantity: u32,
    /// Still wet.
    pub wet: bool,
    /// Both ends are sawn square and sound: nothing needs trimming off them.
    pub sawn_ends: bool,
    /// Zones to keep out of, `10 to 12 1/2`, from the marked end.
    pub knots: String,
}

/// A length the yard sells.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct YardBoard {
    /// Its section, as parts ask for it: `2x6`.
    pub section: String,
    /// Dressed, as typed.
    pub thickness: String,
    /// Dressed, as typed.
    pub width: String,
    /// As typed.
    pub length: String,
    /// Price in hundredths of the user's money.
    pub price: u64,
    /// How many can be had; `None` for as many as wanted.
    pub quantity: Option<u32>,
    /// Its size and price are ours, and not the person's yet.
    pub is_ours: bool,
}

impl YardBoard {
    /// A length at the yard, with its thickness, width and length as typed; as many as wanted can be had.
    #[must_use]
    pub fn new(section: &str, size: [&str; 3], price: u64) -> YardBoard {
        let [thickness, width, length] = size.map(str::to_owned);
        let section = section.to_owned();
        YardBoard { section, thickness, width, length, price, quantity: None, is_ours: false }
    }

    /// The length with one more to be had: of as many as wanted the first that is counted, and of none as many as wanted,
    /// for the yard has it again. `None` where the number cannot grow.
    #[must_use]
    pub fn one_more(&self) -> Option<YardBoard> {
        let quantity = match self.quantity {
            None => Some(1),
            Some(0) => None,
            Some(now) => Some(now.checked_add(1)?),
        };
        Some(YardBoard { quantity, ..self.clone() })
    }

    /// The length with one fewer to be had; `None` where it is the last, or there is no number to take one from.
    #[must_use]
    pub fn one_fewer(&self) -> Option<YardBoard> {
        self.with_quantity(self.quantity?.checked_sub(1)?)
    }

    /// The length with so many to be had; `None` for none at all.
    fn with_quantity(&self, count: u32) -> Option<YardBoard> {
        (count > 0).then(|| YardBoard { quantity: Some(count), ..self.clone() })
    }
}

/// A round thing the user owns, to draw curves with.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Round {
    /// `paint can`
    pub name: String,
    /// As typed.
    pub diameter: String,
}

/// A saw.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Saw {
    /// `table saw, thin blade`
    pub name: String,
    /// As typed.
    pub kerf: String,
    /// As typed.
    pub reach: String,
    /// Which side the fence is on.
    pub fence: Side,
}

/// A screw size on hand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Screw {
    /// Gauge number.
    pub gauge: u32,
    /// As typed.
    pub length: String,
    /// How many are left.
    pub quantity: u32,
}

/// What the sketch of the job is drawn from: a frame of four legs with a top.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Sketch {
    /// Front to show, outside of the legs; a formula. Empty leaves the sketch out.
    pub length: String,
    /// Front to back, outside of the legs.
    pub depth: String,
    /// Floor to the top of the legs.
    pub height: String,
    /// Side of a leg.
    pub leg: String,
    /// Height of the upper rail.
    pub rail: String,
    /// Floor to the lower shelf; empty for none.
    pub shelf: String,
    /// Thickness of the top; empty for none.
    pub top: String,
    /// Top beyond the legs, all round.
    pub overhang: String,
}

impl Item {
    /// The item as a job holds it: of its names what can be seen. What is typed, stored and handed on goes through here,
    /// so that reading what was written changes nothing. A name of nothing else becomes one to be seen.
    #[must_use]
    pub fn with_visible_names(mut self, id: ItemId) -> Item {
        let (name, others): (&mut String, Vec<&mut String>) = match &mut self {
            Item::Measure(Measure { name, .. })
            | Item::Kept(Kept { title: name, .. })
            | Item::Match(Match { name, .. })
            | Item::Round(Round { name, .. })
            | Item::Saw(Saw { name, .. }) => (name, Vec::new()),
            Item::Part(Part { name, stock, show_face, .. }) => (name, vec![stock, show_face]),
            Item::RackBoard(RackBoard { name, section, .. }) => (name, vec![section]),
            Item::YardBoard(YardBoard { section, .. }) => (section, Vec::new()),
            Item::CutPlan(plan) => {
                let labels = &mut plan.labels;
                let items = [&mut labels.parts, &mut labels.boards, &mut labels.scraps];
                let items = items.into_iter().flatten().map(|label| &mut label.name);
                let sections = labels.sections.iter_mut().map(|label| &mut label.name);
                (&mut plan.title, items.chain(sections).collect())
            }
            Item::Screw(_)
            | Item::Sketch(_)
            | Item::CutTicks(_)
            | Item::CloseEnough(_)
            | Item::Ticked(_) => return self,
        };
        make_visible(name, || format!("no name {}", id.0));
        for other in others {
            make_visible(other, String::new);
        }
        self
    }

    /// Every text of the item that may use a name.
    pub(super) fn each_text(&mut self, change: &mut dyn FnMut(&mut String)) {
        match self {
            Item::Measure(Measure { written: Written::Formula(text), .. }) => change(text),
            Item::Measure(_)
            | Item::Saw(_)
            | Item::Screw(_)
            | Item::Round(_)
            | Item::RackBoard(_)
            | Item::YardBoard(_)
            | Item::CutTicks(_)
            | Item::CloseEnough(_)
            | Item::Ticked(_)
            // A plan keeps what it was made with, whatever the names are later.
            | Item::CutPlan(_) => {}
            Item::Part(part) => {
                for text in
                    [&mut part.quantity, &mut part.thickness, &mut part.width, &mut part.length]
                {
                    change(text);
                }
            }
            Item::Kept(kept) => {
                let Kept { slug, entries, .. } = kept;
                for (_, text) in entries.iter_mut().filter(|(field, _)| takes_names(slug, field)) {
                    change(text);
                }
            }
            Item::Match(group) => change(&mut group.drift),
            Item::Sketch(sketch) => {
                let Sketch { length, depth, height, leg, rail, shelf, top, overhang } = sketch;
                for text in [length, depth, height, leg, rail, shelf, top, overhang] {
                    change(text);
                }
            }
        }
    }
}

/// Whether a field of a calculator may use names: what is chosen and not written has none, even
/// where a choice is called like a measure.
pub(super) fn takes_names(slug: &str, field: &str) -> bool {
    let fields = calculators::find(slug).map_or(&[][..], |calculator| calculator.fields);
    let kind = fields.iter().find(|it| it.id == field).map(|it| it.kind);
    !matches!(kind, Some(Kind::Choice(_) | Kind::YesNo | Kind::LineOf(_)))
}
