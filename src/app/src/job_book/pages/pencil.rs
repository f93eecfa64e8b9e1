//! What in a job is ours and not the person's yet, and the way through it.

use reckoner_core::job::kinds::{check, checks, next_ours, ours, ours_line};
use reckoner_core::job::{Item, ItemId, Step};
use reckoner_core::planning::{assumed_of, examples_left, line_of_money};
use reckoner_core::sheet::Assumed;
use yew::prelude::*;

use super::Open;
use crate::components::icon::{Icon, icon};
use crate::components::sentence::sentence;
use crate::form::at_hand::AtHand;
use crate::platform::address;

/// Whether the job still rests on sizes, kept reckonings or prices of ours.
pub(super) fn is_on_ours(open: &Open) -> bool {
    !ours(&open.book.job, &open.reckoned).is_empty()
}

/// Whether what the plan in use costs does.
pub(super) fn is_money_on_ours(open: &Open) -> bool {
    line_of_money(&open.book.job, &open.reckoned, &open.settings.bench).is_some()
}

/// What the job still rests on, in one line, with the way through it.
pub(super) fn line(open: &Open) -> Html {
    told(open, ours_line(&open.book.job, &open.reckoned))
}

/// The same, with the plan in use.
pub(super) fn line_with_plan(open: &Open) -> Html {
    told(open, line_of_money(&open.book.job, &open.reckoned, &open.settings.bench))
}

fn told(open: &Open, words: Option<String>) -> Html {
    let first = ours(&open.book.job, &open.reckoned).first().copied();
    let to = first.map_or_else(|| open.at("boards"), |first| at(open, first));
    html! {
        if let Some(words) = words {
            <div class="pencil" data-testid="pencil-line">
                { icon(Icon::Pencil) }
                <p>{ words }{ "." }</p>
                <a class="tool" href={to} data-testid="go-through">{ "Go through them" }</a>
            </div>
        }
    }
}

/// What of a plan is ours, in one line: its options, which their own form goes through, or the quick list that it comes
/// from, which has no form here.
pub(super) fn line_of_options(assumed: &Assumed, at_hand: Option<&AtHand>) -> Html {
    html! {
        if let Some(words) = assumed.line() {
            <div class="pencil" data-testid="options-line">
                { icon(Icon::Pencil) }
                <p>{ words }{ "." }</p>
                if let Some(at_hand) = at_hand {
                    <button type="button" class="tool" data-testid="go-through-options" onclick={at_hand.go_through()}>
                        { "Go through them" }
                    </button>
                }
            </div>
        }
    }
}

/// What the plan in use was made with that is ours.
pub(super) fn assumed_in_use(open: &Open) -> Option<Assumed> {
    let job = &open.book.job;
    let (kept, _) = job.cut_plan(job.plan_in_use()?)?;
    Some(assumed_of(job, kept, &open.reckoned, &open.settings.bench))
}

fn at(open: &Open, id: ItemId) -> String {
    open.at(&format!("item/{}", id.0))
}

/// What takes an item as the person's own, as it stands, and goes on to the next.
pub(super) fn confirming(open: &Open, id: ItemId) -> Callback<()> {
    let open = open.clone();
    Callback::from(move |()| {
        let next = next_ours(&open.book.job, &open.reckoned, id);
        let next = next.map_or(open.at(""), |id| at(&open, id));
        open.on_page.make(|job| {
            let item = job.item(id)?;
            let words = format!("{} is right", item.name());
            Some(Step::new(words, vec![job.replacing(id, item.confirmed()?)]))
        });
        address::go(&next);
    })
}

/// What leads from an example to the next with the keys out, as they are here; `None` from the last.
pub(super) fn onward(open: &Open, id: ItemId) -> Option<Callback<()>> {
    let next = at(open, next_ours(&open.book.job, &open.reckoned, id)?);
    let with_keys = open.with_keys.clone();
    Some(Callback::from(move |()| {
        with_keys.replace(true);
        address::go(&next);
    }))
}

/// The end of a page of a job that has examples: this one is right, and the next.
pub(super) fn ends(open: &Open, id: ItemId) -> Html {
    let is_ours = open.book.job.item(id).is_some_and(Item::is_ours);
    let confirm = confirming(open, id).reform(|_: MouseEvent| ());
    ends_with(
        open,
        id,
        html! {
            if is_ours {
                <button type="button" class="tool tool--main" data-testid="confirm-item" onclick={confirm}>{ "It is right" }</button>
            }
        },
    )
}

/// The same of a kept reckoning, whose own form goes through what it rests on.
pub(super) fn ends_of_kept(open: &Open, id: ItemId, at_hand: &AtHand, assumed: &Assumed) -> Html {
    ends_with(
        open,
        id,
        html! {
            if !assumed.is_empty() {
                <button type="button" class="tool tool--main" data-testid="go-through"
                    onclick={at_hand.go_through()}>{ format!("Go through {}", assumed.counted()) }</button>
            }
        },
    )
}

/// How many examples there are left, the way to the next, and what is done about the one on the page. Those of the plan
/// come after all others.
fn ends_with(open: &Open, id: ItemId, here: Html) -> Html {
    let (job, reckoned) = (&open.book.job, &open.reckoned);
    if !is_on_ours(open) {
        return html! {};
    }
    let next = next_ours(job, reckoned, id).map(|next| at(open, next));
    let of_plan = assumed_in_use(open).filter(|it| !it.is_empty()).map(|_| open.at("boards"));
    let left = examples_left(job, reckoned, &open.settings.bench);
    html! {
        <div class="ends">
            <p class="ends__needs" role="status">
                { if left == 1 { "1 example left".to_owned() } else { format!("{left} examples left") } }
            </p>
            <div class="ends__ways">
                if let Some(next) = next.or(of_plan) {
                    <a class="tool" href={next} data-testid="next-ours">{ "Next example" }</a>
                } else {
                    <a class="tool" href={open.at("")} data-testid="next-ours">{ "To the front" }</a>
                }
                { here }
            </div>
        </div>
    }
}

/// A size held against what is published.
pub(super) fn held(open: &Open, id: ItemId) -> Html {
    let tape = open.settings.bench.tape;
    let Some(check) = check(&open.book.job, &open.reckoned, id) else { return html! {} };
    html! {
        <p class={classes!("check", (!check.holds).then_some("is-off"))} data-testid="check">
            { sentence(&check.sentence, tape) }{ format!(" ({}).", check.source) }
        </p>
    }
}

/// The sizes that are not as published.
pub(super) fn off(open: &Open) -> Html {
    let tape = open.settings.bench.tape;
    let all = checks(&open.book.job, &open.reckoned);
    html! {
        if !all.is_empty() {
            <ul class="checks" data-testid="checks">
                { for all.iter().map(|check| html! {
                    <li><a class="row check is-off" href={at(open, check.id)}>{ sentence(&check.sentence, tape) }</a></li>
                }) }
            </ul>
        }
    }
}
