//! Kept reckonings: calculators that use the sizes of the job, and whose results can become sizes.

use std::rc::Rc;

use reckoner_core::calculators::{self, Calculator};
use reckoner_core::job::make_parts::make_parts;
use reckoner_core::job::{Item, ItemId, Job, Kept, OnOurs, Step};
use reckoner_core::sheet::Sheet;
use yew::prelude::*;

use super::attention::of_item;
use super::full_size::FullSize;
use super::head::bar;
use super::items::{row, take_out};
use super::open::{Open, Shared};
use super::{pencil, results, title};
use crate::calculator::{answer, question, use_narrow};
use crate::components::fold::Opened;
use crate::components::heard::Heard;
use crate::components::measure;
use crate::form::Action;
use crate::form::at_hand::{KnownNames, use_at_hand};
use crate::form::view::asks;
use crate::job_book::kept_form::use_kept_form;
use crate::platform::address;

pub(super) fn list(open: &Open) -> Html {
    let kept = open.book.job.kept();
    let on_ours = OnOurs::of(&open.book.job, &open.reckoned);
    html! {
        <>
            <ul class="rows" data-testid="kept">
                { for kept.iter().map(|(id, it)| row(open, *id, &it.title, html! {
                    <>
                        <span class="row__name">{ &it.title }</span>
                        <span class="row__value">{ headline(open, open.reckoned.kept(*id), on_ours.has(*id)) }</span>
                        <span class="row__more">{ calculators::find(&it.slug).map_or(it.slug.as_str(), |c| c.title) }{ noted(open, *id) }</span>
                    </>
                })) }
            </ul>
            <h2 class="job__title">{ "Keep a new one" }</h2>
            <div class="adds">{ for calculators::ALL.iter().map(|calculator| keep(open, calculator)) }</div>
        </>
    }
}

/// What the answer rests on that is ours.
fn noted(open: &Open, id: ItemId) -> Option<String> {
    let noted = open.reckoned.kept(id)?.assumed.noted()?;
    Some(format!(", {noted}"))
}

fn headline(open: &Open, sheet: Option<&Sheet>, is_ours: bool) -> Html {
    match sheet.and_then(|sheet| sheet.answer.as_ref()) {
        Some(answer) => {
            let value = measure::value(&answer.headline.value, &open.settings.bench);
            html! { <span class={classes!(is_ours.then_some("is-pencil"))}>{ value }</span> }
        }
        None => "no answer".into(),
    }
}

fn keep(open: &Open, calculator: &'static Calculator) -> Html {
    let open = open.clone();
    let onclick = Callback::from(move |_: MouseEvent| {
        address::go_by(|| {
            let mut at = String::new();
            let is_kept = open.on_page.make(|job| {
                let kept = Kept {
                    rank: next_rank(job),
                    title: calculator.title.to_owned(),
                    slug: calculator.slug.to_owned(),
                    entries: Vec::new(),
                    left: Vec::new(),
                };
                let label = format!("keep {}", kept.title);
                let change = job.adding(0, Item::Kept(kept));
                at = open.at(&format!("item/{}", change.id.0));
                Some(Step::new(label, vec![change]))
            });
            is_kept.then_some(at)
        });
    });
    html! {
        <button type="button" class="tool" data-testid={format!("keep-{}", calculator.slug)} {onclick}>{ calculator.title }</button>
    }
}

/// The place of one more reckoning in the list of them.
pub(super) fn next_rank(job: &Job) -> i64 {
    let ranks = job.kept().into_iter().map(|(_, kept)| kept.rank);
    ranks.max().unwrap_or(0).saturating_add(1)
}

pub(super) fn page(open: &Open, id: ItemId, kept: &Kept) -> Html {
    match calculators::find(&kept.slug) {
        Some(calculator) => html! {
            <KeptPage key={id.0.to_string()} open={Shared(open.clone())} {id} kept={kept.clone()} slug={calculator.slug} />
        },
        None => html! {
            <div class="page">
                { bar(open, &open.at("kept"), &kept.title) }
                <main class="job"><p class="trouble">{ "This version of the app does not know this calculator. It is kept as it is." }</p></main>
            </div>
        },
    }
}

#[derive(Properties, PartialEq)]
struct KeptPageProps {
    open: Shared,
    id: ItemId,
    kept: Kept,
    slug: &'static str,
}

/// A calculator within the job.
#[component]
fn KeptPage(props: &KeptPageProps) -> Html {
    let KeptPageProps { open: Shared(open), id, kept, slug } = props;
    let id = *id;
    let bench = open.settings.bench;
    let Some(calculator) = calculators::find(slug) else { return html! {} };
    let place = format!("item/{}", id.0);
    let standing = kept.as_entries(open.book.job.unit);
    let form = use_kept_form(open.keeping(), &place, calculator, standing);
    let sheet = Rc::new(calculator.sheet(form.entries(), &bench, &*open.reckoned));
    let list = open.book.job.measures().into_iter().map(|(_, m)| m.name.clone());
    let names = KnownNames { list: Rc::new(list.collect()), job: Some(open.reckoned.clone()) };
    let at_hand = use_at_hand(form.clone(), sheet.clone(), open.settings.clone(), names);
    {
        // On the way through the examples of the job, by keys, it goes on with those of this answer.
        let (at_hand, with_keys) = (at_hand.clone(), open.with_keys.clone());
        use_effect_with((), move |()| {
            if with_keys.take() {
                at_hand.go_through_ours();
            }
        });
    }
    let index = use_state_eq(|| 0_usize);
    let on_index = Callback::from({
        let index = index.clone();
        move |to| index.set(to)
    });
    let on_way_out = {
        let form = form.dispatcher();
        Callback::from(move |set| form.dispatch(Action::Set(set)))
    };
    let opened = use_memo((), |()| Opened::default());
    let is_narrow = use_narrow();
    let is_typing = at_hand.is_typing;
    let rest = sheet.answer.as_ref().filter(|_| !is_typing).map(|it| {
        let is_pencil = !sheet.assumed.is_empty();
        html! {
            <>
                { answer::results(it, &bench, *index, &on_index, &at_hand.question(), is_pencil, &on_way_out) }
                if let Some(template) = &it.template {
                    <FullSize template={template.clone()} title={kept.title.clone()} tape={bench.tape} noted={sheet.assumed.noted()} />
                }
                if make_parts(&open.book.job, &open.reckoned, &bench, id).is_some() {
                    { of_item(open, id) }
                    <div class="adds">
                        <a class="tool" href={open.at(&format!("parts-of/{}", id.0))} data-testid="make-parts">{ "Make pieces of it" }</a>
                    </div>
                }
                { results::list(open, id, kept, it, answer::shown(it, *index).1) }
            </>
        }
    });
    html! {
        <ContextProvider<Opened> context={(*opened).clone()}>
            <div class={classes!("page", "page--calculator", at_hand.is_keying().then_some("is-keying"), is_typing.then_some("is-typing is-close"))}>
                { bar(open, &open.at("kept"), &kept.title) }
                <main class="bench">
                    <Heard words={answer::to_hear(&form, &sheet, &bench, *index)} typed={form.entries().clone()}
                        is_on_ours={answer::on_ours(&sheet)} />
                    if !is_typing { { question(&at_hand) } }
                    <section class="answer" aria-label="Answer">
                        { answer::headline(&form, &sheet, &bench, *index, None, &on_index, &on_way_out) }
                        { answer::pencil_line(&sheet) }
                        if sheet.answer.is_some() { { answer::drawn(&at_hand) } }
                        if !*is_narrow { { rest.clone() } }
                    </section>
                    <section class="sizes" aria-label="What is asked">
                        { asks(&at_hand) }
                        { title::input(open, format!("kept-title/{}", id.0), &kept.title, "Title", "kept-title") }
                        { take_out(open, id, "kept") }
                        // Above the keys there is room for the answer and the field.
                        if !at_hand.is_keying() { { pencil::ends_of_kept(open, id, &at_hand, &sheet.assumed) } }
                    </section>
                    if *is_narrow { { rest } }
                </main>
            </div>
        </ContextProvider<Opened>>
    }
}
