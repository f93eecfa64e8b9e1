//! [`use_together`]: a form and the item it is about, kept alike in both directions.

use reckoner_core::job::{Change, Item, ItemId, Step};
use reckoner_core::sheet::Entries;
use yew::prelude::*;

use super::Open;
use crate::form::{Action, Form};
use crate::job_book::book::Edit;

/// What a form writes into.
pub(super) struct Stands {
    /// The item.
    pub(super) id: ItemId,
    /// As it stands in the job.
    pub(super) item: Item,
    /// Its texts.
    pub(super) entries: Entries,
}

/// Keeps `new` when its field is left, and takes over what undo or another page made of the item.
///
/// What is kept is a change of what the form was filled with, so that another page's edit in
/// between is refused by name and not overwritten.
#[hook]
pub(super) fn use_together(
    open: &Open,
    form: &UseReducerHandle<Form>,
    stands: Option<Stands>,
    new: Option<Item>,
    with_it: impl Fn(&Open, ItemId, &Item) -> Vec<Change> + 'static,
) {
    let filled_with = {
        let first = stands.as_ref().map(|it| (it.item.clone(), it.entries.clone()));
        use_mut_ref(move || first)
    };
    let editing = form.editing();
    let stored = stands.as_ref().map(|it| it.entries.clone());
    let (open, dispatcher) = (open.clone(), form.dispatcher());
    let typed = form.entries().clone();
    use_effect_with((editing, typed, stored), move |(editing, typed, _)| {
        let (Some(stands), None) = (stands, editing) else { return };
        let mut filled = filled_with.borrow_mut();
        let Some((before, texts)) = filled.clone() else { return };
        let here = (stands.item.clone(), stands.entries.clone());
        let is_typed = *typed != texts;
        match new.filter(|new| is_typed && *new != before) {
            Some(new) => {
                let mut changes = with_it(&open, stands.id, &new);
                let is_behind = before != stands.item && texts != stands.entries;
                let seen = if is_behind { before } else { stands.item };
                changes.push(Change {
                    id: stands.id,
                    before: Some(seen),
                    after: Some(new.clone()),
                });
                let label = format!("change {}", new.name());
                open.on_page.edit(Edit::Make(Step::new(label, changes)));
                if is_behind {
                    dispatcher.dispatch(Action::Replace(here.1.clone()));
                    *filled = Some(here);
                } else {
                    *filled = Some((new, typed.clone()));
                }
            }
            // Nothing was typed here: what stands in the job stands in the form.
            None if !is_typed && texts != stands.entries => {
                dispatcher.dispatch(Action::Replace(here.1.clone()));
                *filled = Some(here);
            }
            None => {}
        }
    });
}
