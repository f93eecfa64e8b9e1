//! Which plan of the boards a job goes by, and how far it is.

use super::{BoardState, CutPlan, CutTicks, Item, ItemId, Job};

impl Job {
    /// A plan with its ticks.
    #[must_use]
    pub fn cut_plan(&self, id: ItemId) -> Option<(&CutPlan, Vec<BoardState>)> {
        let Some(Item::CutPlan(plan)) = self.item(id) else { return None };
        let mut boards = self.ticks_of(id).map_or_else(Vec::new, |(_, ticks)| ticks.boards.clone());
        boards.resize(plan.plan.boards.len(), BoardState::ToCut);
        Some((plan, boards))
    }

    /// The plan of the job's own parts, or of its quick list.
    #[must_use]
    pub fn find_cut_plan(&self, is_list: bool) -> Option<ItemId> {
        let mut plans = self.items().filter_map(|(id, item)| match item {
            Item::CutPlan(plan) if plan.is_list == is_list => Some(id),
            _ => None,
        });
        plans.next()
    }

    /// The plan in use: of the job's own parts, or else of its quick list.
    #[must_use]
    pub fn plan_in_use(&self) -> Option<ItemId> {
        self.find_cut_plan(false).or_else(|| self.find_cut_plan(true))
    }

    /// What has been bought and cut of a plan, and as which item that is kept.
    pub(crate) fn ticks_of(&self, plan: ItemId) -> Option<(ItemId, &CutTicks)> {
        self.items().find_map(|(id, item)| match item {
            Item::CutTicks(ticks) if ticks.plan == plan => Some((id, ticks)),
            _ => None,
        })
    }
}
