//! A piece that is spoiled: how much of it is left goes on the rack.

use std::rc::Rc;

use reckoner_core::attention::{length_left, most_left, spoiling};
use reckoner_core::job::ItemId;
use reckoner_core::measure::Length;
use reckoner_core::sheet::{Ask, Sheet};
use yew::prelude::*;

use super::drafts::beside;
use super::open::{Open, Shared};
use crate::form::at_hand::{KnownNames, Manner, use_at_hand_as};
use crate::form::view::asks_about;
use crate::form::{Action, Form};
use crate::job_book::forms::{SPOILED, ids};
use crate::job_book::kept_form::{make_of_form, use_kept_form};
use crate::job_book::notes::bare;

/// Where the note about a piece stands.
pub(super) fn place(id: ItemId, index: usize) -> String {
    format!("spoiled/{}/{index}", id.0)
}

/// Whether something was written down of what is left of a piece, and not said to be so.
pub(super) fn is_begun(open: &Open, id: ItemId, index: usize) -> bool {
    let place = place(id, index);
    open.on_page.forms().into_iter().any(|(at, ..)| bare(&at) == place)
}

/// What is left, as it is written; `most` is what the piece was.
fn left_of(ask: &mut Ask, most: Length) -> Option<Length> {
    length_left(ask, ask.field(ids::LEFT), most)
}

#[derive(Properties, PartialEq)]
pub(super) struct SpoiledProps {
    pub(super) open: Shared,
    pub(super) id: ItemId,
    pub(super) index: usize,
    pub(super) close: Callback<()>,
    pub(super) on_keying: Callback<bool>,
}

/// How long what is left of a spoiled piece is.
#[component]
pub(super) fn Spoiled(props: &SpoiledProps) -> Html {
    let SpoiledProps { open: Shared(open), id, index, close, on_keying } = props;
    let (id, index, bench) = (*id, *index, open.settings.bench);
    let place = place(id, index);
    let at = place.clone();
    let form = use_kept_form(open.keeping(), &place, &SPOILED, Form::fresh(open.book.job.unit));
    let most = most_left(&open.book.job, &open.reckoned, id, index);
    let entries = form.entries().clone();
    let mut ask = Ask::new(SPOILED.fields, &entries, &bench, &*open.reckoned);
    let left = most.and_then(|most| left_of(&mut ask, most));
    let assumed = ask.assumed();
    let (echoes, refusals) = ask.finish();
    let sheet = Rc::new(Sheet { echoes, refusals, answer: None, assumed });
    let (names, manner) = (KnownNames::default(), Manner::of_no_examples());
    let at_hand = use_at_hand_as(form.clone(), sheet, open.settings.clone(), names, manner);
    {
        let on_keying = on_keying.clone();
        use_effect_with(at_hand.is_keying(), move |is| on_keying.emit(*is));
    }
    let take = {
        let (open, close, form) = (open.clone(), close.clone(), form.clone());
        Callback::from(move |_: MouseEvent| {
            let is_made = make_of_form(&open.on_page, &place, &form, |job, entries| {
                let mut ask = Ask::new(SPOILED.fields, entries, &bench, &*open.reckoned);
                let left = left_of(&mut ask, most?)?;
                spoiling(job, &open.reckoned, (id, index), left)
            });
            if is_made {
                close.emit(());
            } else {
                form.dispatch(Action::Check);
            }
        })
    };
    html! {
        <section class="different" aria-label="Spoiled" data-testid="spoiled-left">
            <p class="plan__words">{ "Say how long what is left of it is. It goes on the rack, and another piece is wanted." }</p>
            { asks_about(SPOILED.title, &at_hand) }
            <div class="board__steps">
                <button type="button" class="tool tool--take" data-testid="take-spoiled" data-ready={left.map(|_| "yes")} onclick={take}>
                    { "Put it on the rack" }
                </button>
                <button type="button" class="tool" data-testid="leave-spoiled" onclick={close.reform(|_: MouseEvent| ())}>{ "Not now" }</button>
            </div>
            { beside(open, &at, &SPOILED, &form) }
        </section>
    }
}
