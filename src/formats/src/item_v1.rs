//! Version 1 of the items of a job, as stored.

use reckoner_core::job::{
    CutTicks, Grain, Hand, Item, ItemId, Kept, Linked, Made, Match, Measure, MeasureKind, Part,
    Piece, RackBoard, Round, Saw, Screw, Sketch, Written, YardBoard,
};
use reckoner_core::sheet::Side;
use serde::{Deserialize, Serialize};

use crate::cut_item_v1::{BoardStateV1, CutPlanItemV1, states, states_v1};

/// An item with its id.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct StoredItem {
    /// Given once in a job, never used again.
    pub(crate) id: u64,
    #[serde(flatten)]
    pub(crate) item: ItemV1,
}

/// Anything in a job. Every size is a text as the user wrote it: a measure or a formula.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(tag = "kind", rename_all = "snake_case")]
pub(crate) enum ItemV1 {
    /// A named size or number.
    Measure {
        rank: i64,
        name: String,
        #[serde(default, skip_serializing_if = "is_default")]
        number: bool,
        /// A value or a formula over other names. Either this or `linked`.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        formula: Option<String>,
        /// A result of a kept reckoning.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        linked: Option<LinkedV1>,
        /// The size the tape says on the real part.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        as_cut: Option<String>,
        #[serde(default, skip_serializing_if = "is_default")]
        is_cut: bool,
        /// Must be measured on the real thing before parts that need it are cut.
        #[serde(default, skip_serializing_if = "is_default")]
        wait: bool,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        note: String,
    },
    /// A part to cut.
    Part {
        rank: i64,
        name: String,
        quantity: String,
        thickness: String,
        width: String,
        length: String,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        stock: String,
        #[serde(default, skip_serializing_if = "is_default")]
        grain_free: bool,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        show_face: String,
        #[serde(default, skip_serializing_if = "is_default")]
        pairs: bool,
        #[serde(default, skip_serializing_if = "is_default")]
        may_rip: bool,
        #[serde(default, skip_serializing_if = "is_default")]
        may_resaw: bool,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        note: String,
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        pieces: Vec<PieceV1>,
        /// The kept reckoning that it was made from.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        made: Option<MadeV1>,
    },
    /// A calculator kept with its entries.
    Reckoning { rank: i64, title: String, calculator: String, entries: Vec<(String, String)> },
    /// Measures that must come out alike.
    Match {
        name: String,
        measures: Vec<u64>,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        drift: String,
    },
    /// A board or scrap on hand.
    RackBoard {
        name: String,
        section: String,
        thickness: String,
        width: String,
        length: String,
        quantity: u32,
        #[serde(default, skip_serializing_if = "is_default")]
        wet: bool,
        /// Nothing needs trimming off its ends.
        #[serde(default, skip_serializing_if = "is_default")]
        sawn_ends: bool,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        knots: String,
    },
    /// A length the yard sells; the price in hundredths of the user's money.
    YardBoard {
        section: String,
        thickness: String,
        width: String,
        length: String,
        price: u64,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        quantity: Option<u32>,
    },
    /// A round thing the user owns.
    Round { name: String, diameter: String },
    /// A saw.
    Saw { name: String, kerf: String, reach: String, fence: SideV1 },
    /// A screw size on hand.
    Screw { gauge: u32, length: String, quantity: u32 },
    /// What the sketch is drawn from.
    Sketch {
        length: String,
        depth: String,
        height: String,
        leg: String,
        rail: String,
        #[serde(default)]
        shelf: String,
        #[serde(default)]
        top: String,
        #[serde(default)]
        overhang: String,
    },
    /// A cut plan.
    CutPlan(Box<CutPlanItemV1>),
    /// What has been bought and cut of a cut plan; one entry for each of its boards.
    CutTicks { plan: u64, boards: Vec<BoardStateV1> },
}

/// A result of a kept reckoning.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct LinkedV1 {
    reckoning: u64,
    result: String,
    #[serde(default, skip_serializing_if = "is_default")]
    index: u32,
}

/// Where a part was made from.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct MadeV1 {
    reckoning: u64,
    /// Which of its parts.
    what: String,
}

/// One piece of a part.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct PieceV1 {
    #[serde(default, skip_serializing_if = "is_default")]
    done: bool,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    as_cut: Option<String>,
}

/// The side of the fence.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub(crate) enum SideV1 {
    Left,
    Right,
}

fn is_default<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}

impl From<&Item> for ItemV1 {
    fn from(item: &Item) -> ItemV1 {
        match item.clone() {
            Item::Measure(m) => {
                let (formula, linked) = match m.written {
                    Written::Formula(text) => (Some(text), None),
                    Written::Linked(Linked { kept, result, index }) => {
                        (None, Some(LinkedV1 { reckoning: kept.0, result, index }))
                    }
                };
                ItemV1::Measure {
                    rank: m.rank,
                    name: m.name,
                    number: m.kind == MeasureKind::Number,
                    formula,
                    linked,
                    as_cut: m.as_cut,
                    is_cut: m.is_cut,
                    wait: m.wait,
                    note: m.note,
                }
            }
            Item::Part(p) => ItemV1::Part {
                rank: p.rank,
                name: p.name,
                quantity: p.quantity,
                thickness: p.thickness,
                width: p.width,
                length: p.length,
                stock: p.stock,
                grain_free: p.grain == Grain::Free,
                show_face: p.show_face,
                pairs: p.hand == Hand::Pairs,
                may_rip: p.may_rip,
                may_resaw: p.may_resaw,
                note: p.note,
                pieces: p
                    .pieces
                    .into_iter()
                    .map(|Piece { done, as_cut }| PieceV1 { done, as_cut })
                    .collect(),
                made: p.made.map(|Made { kept, what }| MadeV1 { reckoning: kept.0, what }),
            },
            Item::Kept(Kept { rank, title, slug, entries }) => {
                ItemV1::Reckoning { rank, title, calculator: slug, entries }
            }
            Item::Match(Match { name, measures, drift }) => ItemV1::Match {
                name,
                measures: measures.into_iter().map(|id| id.0).collect(),
                drift,
            },
            Item::RackBoard(RackBoard {
                name,
                section,
                thickness,
                width,
                length,
                quantity,
                wet,
                sawn_ends,
                knots,
            }) => ItemV1::RackBoard {
                name,
                section,
                thickness,
                width,
                length,
                quantity,
                wet,
                sawn_ends,
                knots,
            },
            Item::YardBoard(YardBoard { section, thickness, width, length, price, quantity }) => {
                ItemV1::YardBoard { section, thickness, width, length, price, quantity }
            }
            Item::Round(Round { name, diameter }) => ItemV1::Round { name, diameter },
            Item::Saw(Saw { name, kerf, reach, fence }) => {
                let fence = if fence == Side::Left { SideV1::Left } else { SideV1::Right };
                ItemV1::Saw { name, kerf, reach, fence }
            }
            Item::Screw(Screw { gauge, length, quantity }) => {
                ItemV1::Screw { gauge, length, quantity }
            }
            Item::Sketch(Sketch { length, depth, height, leg, rail, shelf, top, overhang }) => {
                ItemV1::Sketch { length, depth, height, leg, rail, shelf, top, overhang }
            }
            Item::CutPlan(plan) => ItemV1::CutPlan(Box::new((&*plan).into())),
            Item::CutTicks(ticks) => {
                ItemV1::CutTicks { plan: ticks.plan.0, boards: states_v1(&ticks) }
            }
        }
    }
}

impl ItemV1 {
    /// The item, or why it cannot be one.
    pub(crate) fn item(self) -> Result<Item, String> {
        Ok(match self {
            ItemV1::Measure { rank, name, number, formula, linked, as_cut, is_cut, wait, note } => {
                let written = match (formula, linked) {
                    (Some(text), None) => Written::Formula(text),
                    (None, Some(LinkedV1 { reckoning, result, index })) => {
                        Written::Linked(Linked { kept: ItemId(reckoning), result, index })
                    }
                    _ => return Err("a measure has either a formula or a linked result".to_owned()),
                };
                let kind = if number { MeasureKind::Number } else { MeasureKind::Length };
                Item::Measure(Measure { rank, name, kind, written, as_cut, is_cut, wait, note })
            }
            ItemV1::Part {
                rank,
                name,
                quantity,
                thickness,
                width,
                length,
                stock,
                grain_free,
                show_face,
                pairs,
                may_rip,
                may_resaw,
                note,
                pieces,
                made,
            } => Item::Part(Part {
                rank,
                name,
                quantity,
                thickness,
                width,
                length,
                stock,
                grain: if grain_free { Grain::Free } else { Grain::Locked },
                show_face,
                hand: if pairs { Hand::Pairs } else { Hand::Alike },
                may_rip,
                may_resaw,
                note,
                pieces: pieces
                    .into_iter()
                    .map(|PieceV1 { done, as_cut }| Piece { done, as_cut })
                    .collect(),
                made: made.map(|MadeV1 { reckoning, what }| Made { kept: ItemId(reckoning), what }),
            }),
            ItemV1::Reckoning { rank, title, calculator, entries } => {
                Item::Kept(Kept { rank, title, slug: calculator, entries })
            }
            ItemV1::Match { name, measures, drift } => Item::Match(Match {
                name,
                measures: measures.into_iter().map(ItemId).collect(),
                drift,
            }),
            ItemV1::RackBoard {
                name,
                section,
                thickness,
                width,
                length,
                quantity,
                wet,
                sawn_ends,
                knots,
            } => Item::RackBoard(RackBoard {
                name,
                section,
                thickness,
                width,
                length,
                quantity,
                wet,
                sawn_ends,
                knots,
            }),
            ItemV1::YardBoard { section, thickness, width, length, price, quantity } => {
                Item::YardBoard(YardBoard { section, thickness, width, length, price, quantity })
            }
            ItemV1::Round { name, diameter } => Item::Round(Round { name, diameter }),
            ItemV1::Saw { name, kerf, reach, fence } => {
                let fence = if fence == SideV1::Left { Side::Left } else { Side::Right };
                Item::Saw(Saw { name, kerf, reach, fence })
            }
            ItemV1::Screw { gauge, length, quantity } => {
                Item::Screw(Screw { gauge, length, quantity })
            }
            ItemV1::Sketch { length, depth, height, leg, rail, shelf, top, overhang } => {
                Item::Sketch(Sketch { length, depth, height, leg, rail, shelf, top, overhang })
            }
            ItemV1::CutPlan(plan) => Item::CutPlan(Box::new(plan.plan()?)),
            ItemV1::CutTicks { plan, boards } => {
                Item::CutTicks(CutTicks { plan: ItemId(plan), boards: states(boards) })
            }
        })
    }
}
