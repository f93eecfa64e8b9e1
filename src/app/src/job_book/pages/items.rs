//! An item in the lists of a job: the row that leads to it, the way to a new one, and the way out of the job.

use reckoner_core::job::make_parts::without;
use reckoner_core::job::{ItemId, Step};
use yew::prelude::*;

use super::drafts;
use super::open::Open;
use crate::components::icon::{Icon, icon};
use crate::job_book::kept_form::Keeping;
use crate::platform::address;

/// A row of a list that leads to an item.
pub(super) fn row(open: &Open, id: ItemId, name: &str, inside: Html) -> Html {
    html! {
        <li>
            <a class="row" href={open.at(&format!("item/{}", id.0))} data-testid={format!("item-{name}")}>
                { inside }
            </a>
        </li>
    }
}

/// A button that leads to a form for something new, below what was begun and not put in yet.
pub(super) fn add(open: &Open, form: &str, label: &str) -> Html {
    html! {
        <>
            { drafts::begun(open, form) }
            <a class="tool add" href={open.at(&drafts::fresh_place(open, form))} data-testid={format!("add-{form}")}>{ icon(Icon::Plus) }<span>{ label }</span></a>
        </>
    }
}

/// The end of the form of an item that is there: it is taken out, and the page goes `back`. What is typed in it goes in first,
/// so that it comes back with the item; what cannot be read stays in its form.
pub(super) fn take_out(open: &Open, id: ItemId, back: &str) -> Html {
    let onclick = {
        let (Keeping { on_page, reckoned, bench }, back) = (open.keeping(), open.at(back));
        Callback::from(move |_: MouseEvent| {
            address::go_by(|| {
                let place = format!("item/{}", id.0);
                if let Some(typed) = on_page.form(&place) {
                    on_page.fold(&place, &typed, &reckoned, &bench, None);
                }
                let is_out = on_page.make(|job| {
                    let words = format!("take out {}", job.item(id)?.name());
                    Some(Step::new(words, without(job, id)))
                });
                is_out.then(|| back.clone())
            });
        })
    };
    html! {
        <div class="adds">
            <button type="button" class="tool" data-testid="take-out" {onclick}>
                { icon(Icon::Clear) }<span>{ "Take it out" }</span>
            </button>
        </div>
    }
}
