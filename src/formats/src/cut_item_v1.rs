//! Version 1 of a cut plan kept in a job, and of its ticks, as stored.

use reckoner_core::cutting::scale::CommonUnit;
use reckoner_core::cutting::{CheckOptions, check_plan};
use reckoner_core::job::cut_labels::{Label, Labels, Money, SectionLabel};
use reckoner_core::job::{BoardState, CutPlan, CutTicks, ItemId};
use reckoner_core::measure::text::exact_text;
use reckoner_core::measure::{Length, length};
use serde::{Deserialize, Serialize};
use serde_json::Value;

use crate::cut_v1::{read_cut, write_cut};

/// A cut plan with all that it was made from.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct CutPlanItemV1 {
    title: String,
    /// It comes from a quick list, not from the parts of the job.
    #[serde(default, skip_serializing_if = "is_default")]
    list: bool,
    /// The form that it was made with.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    entries: Vec<(String, String)>,
    /// How many units make an inch.
    per_inch: u64,
    sections: Vec<SectionNameV1>,
    parts: Vec<NameV1>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    boards: Vec<NameV1>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    scraps: Vec<NameV1>,
    /// Without prices: how much board stands for a hundredth of money.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    wood_for_a_cent: Option<String>,
    /// Pieces wanted of each part, without spares.
    pieces: Vec<u32>,
    /// What was asked, and the plan.
    // As any JSON here, and read by the one reader that the planner's messages need too: a reader of its own for the
    // inside of an item would be some 50 kB of the program.
    #[cfg_attr(feature = "schema", schemars(with = "crate::cut_v1::Kept"))]
    cut: Value,
    bound_cents: i64,
}

/// What something is called, and which item of the job it is.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct NameV1 {
    name: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    item: Option<u64>,
}

/// What a section is called, with its thickness and width.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct SectionNameV1 {
    name: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    size: Option<(String, String)>,
}

/// How far one board of a plan is.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub(crate) enum BoardStateV1 {
    ToCut,
    /// On the rack as this item.
    Bought(Option<u64>),
    Cut,
    Different {
        /// Part and how many.
        good: Vec<(usize, u32)>,
        /// Lengths left, as measured.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        left: Vec<String>,
    },
}

fn is_default<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}

impl From<&CutPlan> for CutPlanItemV1 {
    fn from(it: &CutPlan) -> CutPlanItemV1 {
        let names = |labels: &[Label]| {
            labels
                .iter()
                .map(|label| NameV1 { name: label.name.clone(), item: label.item.map(|id| id.0) })
                .collect()
        };
        let section = |label: &SectionLabel| SectionNameV1 {
            name: label.name.clone(),
            size: label.size.map(|(thick, wide)| (exact_text(thick), exact_text(wide))),
        };
        CutPlanItemV1 {
            title: it.title.clone(),
            list: it.is_list,
            entries: it.entries.clone(),
            // A unit that does not fit was never planned with: its lengths would be out of range.
            per_inch: u64::try_from(it.labels.unit.per_inch()).unwrap_or(0),
            sections: it.labels.sections.iter().map(section).collect(),
            parts: names(&it.labels.parts),
            boards: names(&it.labels.boards),
            scraps: names(&it.labels.scraps),
            wood_for_a_cent: match it.labels.money {
                Money::Cents => None,
                Money::Wood { each } => Some(exact_text(each)),
            },
            pieces: it.pieces.clone(),
            cut: serde_json::from_str(&write_cut(&it.asked, &it.plan)).unwrap_or_default(),
            bound_cents: it.bound_cents,
        }
    }
}

impl CutPlanItemV1 {
    /// The plan, or why it cannot be one.
    pub(crate) fn plan(self) -> Result<CutPlan, String> {
        let (asked, plan) =
            read_cut(&self.cut.to_string()).map_err(|problem| problem.to_string())?;
        asked.validate().map_err(|_| "the job of this plan cannot be planned")?;
        check_plan(&asked, &plan, CheckOptions { may_leave_out: true })
            .map_err(|_| "this plan does not keep to its own job")?;
        let unit = CommonUnit::of(&[(1, i128::from(self.per_inch))])
            .map_err(|_| "the unit of this plan is out of range")?;
        let names = |names: Vec<NameV1>, wanted: usize| {
            let labels: Vec<Label> = names
                .into_iter()
                .map(|name| Label { name: name.name, item: name.item.map(ItemId) })
                .collect();
            if labels.len() == wanted { Ok(labels) } else { Err("a name of this plan is missing") }
        };
        let mut sections = Vec::new();
        for section in self.sections {
            let size = match section.size {
                Some((thick, wide)) => Some((read(&thick)?, read(&wide)?)),
                None => None,
            };
            sections.push(SectionLabel { name: section.name, size });
        }
        if sections.len() != asked.sections.len() || self.pieces.len() != asked.parts.len() {
            return Err("a section or part of this plan is missing".to_owned());
        }
        if !(0..=plan.cost_cents).contains(&self.bound_cents) {
            return Err("the bound of this plan is out of range".to_owned());
        }
        let labels = Labels {
            unit,
            sections,
            parts: names(self.parts, asked.parts.len())?,
            boards: names(self.boards, asked.boards.len())?,
            scraps: names(self.scraps, asked.scraps.len())?,
            money: match self.wood_for_a_cent {
                None => Money::Cents,
                Some(each) => Money::Wood { each: read(&each)? },
            },
        };
        Ok(CutPlan {
            title: self.title,
            is_list: self.list,
            entries: self.entries,
            pieces: self.pieces,
            bound_cents: self.bound_cents,
            asked,
            labels,
            plan,
        })
    }
}

fn read(text: &str) -> Result<Length, String> {
    let found = length(text).map_err(|problem| problem.to_string())?;
    if found.is_positive() {
        Ok(found)
    } else {
        Err("a size of this plan is zero or less".to_owned())
    }
}

/// The states of a plan's boards as stored.
pub(crate) fn states_v1(ticks: &CutTicks) -> Vec<BoardStateV1> {
    let state = |state: &BoardState| match state {
        BoardState::ToCut => BoardStateV1::ToCut,
        BoardState::Bought(rack) => BoardStateV1::Bought(rack.map(|id| id.0)),
        BoardState::Cut => BoardStateV1::Cut,
        BoardState::Different { good, left } => {
            BoardStateV1::Different { good: good.clone(), left: left.clone() }
        }
    };
    ticks.boards.iter().map(state).collect()
}

/// The states of a plan's boards.
pub(crate) fn states(stored: Vec<BoardStateV1>) -> Vec<BoardState> {
    let state = |state| match state {
        BoardStateV1::ToCut => BoardState::ToCut,
        BoardStateV1::Bought(rack) => BoardState::Bought(rack.map(ItemId)),
        BoardStateV1::Cut => BoardState::Cut,
        BoardStateV1::Different { good, left } => BoardState::Different { good, left },
    };
    stored.into_iter().map(state).collect()
}
