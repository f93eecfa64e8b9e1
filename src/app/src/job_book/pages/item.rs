//! One item of a job as a form. A change is kept when its field is left.

use std::rc::Rc;

use reckoner_core::job::moved::{moved, moved_parts};
use reckoner_core::job::sections::{Section, filled, is_same, sections};
use reckoner_core::job::{Item, ItemId, Job, OnOurs, Reckoned, Step};
use reckoner_core::sheet::{Ask, Entries};
use yew::prelude::*;

use super::attention::attention;
use super::drafts::Ends;
use super::head::bar;
use super::items::take_out;
use super::moved::{counts_as_cut, moved_list};
use super::open::{Open, Shared};
use super::{drafts, pencil, pieces};
use crate::components::heard::Heard;
use crate::components::icon::{Icon, icon};
use crate::components::measure::{quantity, spoken};
use crate::form::at_hand::{KnownNames, Manner, Ours, use_at_hand_as};
use crate::form::view::asks;
use crate::form::{Action, Form as Texts};
use crate::job_book::forms::{A_LENGTH, Form, entries_of, ids, item_of, read};
use crate::job_book::kept_form::use_kept_form;
use crate::platform::dom;

pub(super) fn page(open: &Open, form: Form, id: ItemId) -> Html {
    let place = format!("item/{}", id.0);
    html! { <ItemPage key={place.clone()} open={Shared(open.clone())} {form} id={Some(id)} place={place.clone()} /> }
}

/// The form of something new, at its place.
pub(super) fn page_of_new(open: &Open, form: Form, place: &str) -> Html {
    html! { <ItemPage key={place.to_owned()} open={Shared(open.clone())} {form} id={None::<ItemId>} place={place.to_owned()} /> }
}

#[derive(Properties, PartialEq)]
struct ItemPageProps {
    open: Shared,
    form: Form,
    id: Option<ItemId>,
    /// Where its note stands.
    place: String,
}

/// The item that the texts come to, in a job.
fn item(job: &Job, open: &Open, form: Form, id: Option<ItemId>, entries: &Entries) -> Item {
    let old = id.and_then(|id| job.item(id));
    let rank = job.items().count().try_into().unwrap_or(i64::MAX);
    let bench = open.settings.bench;
    let mut ask = Ask::new(form.asks().fields, entries, &bench, &*open.reckoned);
    item_of(form, &mut ask, old, rank)
}

/// The form of an item, with what a size comes to and what moves with it.
#[component]
fn ItemPage(props: &ItemPageProps) -> Html {
    let ItemPageProps { open: Shared(open), form, id, place } = props;
    let (form, id) = (*form, *id);
    let job = &open.book.job;
    let mut standing = id.and_then(|id| job.item(id)).map(entries_of).unwrap_or_default();
    standing.set_unit(Some(job.unit));
    let asked = if id.is_some() { form.asks_at_hand() } else { form.asks() };
    let texts = use_kept_form(open.keeping(), place, asked, standing);
    // The job as it was when the page was opened: what moves is told against it.
    let at_first = use_memo((), |()| open.reckoned.clone());
    let entries = texts.entries().clone();
    // What it comes to is what the job has, where another window wrote in the same field.
    let mut in_job = entries.clone();
    for (field, now) in drafts::in_the_job(open, place) {
        in_job.set(&field, now);
    }
    let new = item(job, open, form, id, &in_job);
    let trial = id.filter(|id| job.item(*id).is_some_and(|stands| *stands != new)).and_then(|id| {
        let mut trial = job.clone();
        trial.make(&Step::new("", vec![job.replacing(id, new.clone())])).ok()?;
        Some(trial)
    });
    let reckoned = match &trial {
        Some(trial) => Rc::new(open.reckoned.after(trial, &open.settings.bench)),
        None => open.reckoned.clone(),
    };
    let on_ours = OnOurs::of(trial.as_ref().unwrap_or(job), &reckoned);
    let rests_on_ours = id.is_some_and(|id| on_ours.has(id));
    let sheet = Rc::new(read(job, &reckoned, &open.settings.bench, form, id, &entries));
    let needs = drafts::needs(&sheet, form.asks());
    let is_unfolded = use_state_eq(|| false);
    let was_unfolded = use_mut_ref(|| false);
    let is_ours = new.is_ours();
    // Typed over, it is an example no more, and the way through them goes on from here.
    let was_ours = *use_memo((), |()| is_ours);
    let manner = Manner {
        folded: folded(form, id.is_none(), &entries, *is_unfolded || *was_unfolded.borrow()),
        ours: id.filter(|_| is_ours).map_or(Ours::Nothing, |id| {
            Ours::Of(pencil_fields(form), pencil::confirming(open, id))
        }),
        walk: id.filter(|_| was_ours).map(|id| (pencil_fields(form), pencil::onward(open, id))),
        list: sections_field(form).map(|field| (field, section_list(open, &texts, field))),
    };
    let has_more = !manner.folded.is_empty();
    // What has been there stays: a field that is emptied is not to go from under the keys.
    if !has_more {
        *was_unfolded.borrow_mut() = true;
    }
    let names = use_memo((props.open.clone(), id), |(Shared(open), id)| {
        let others = open.book.job.measures().into_iter();
        let others = others.filter(|(other, _)| Some(*other) != *id);
        others.map(|(_, measure)| measure.name.clone()).collect::<Vec<_>>()
    });
    let at_hand = use_at_hand_as(
        texts.clone(),
        sheet,
        open.settings.clone(),
        KnownNames { list: names, job: None },
        manner,
    );
    {
        let (at_hand, with_keys) = (at_hand.clone(), open.with_keys.clone());
        use_effect_with((), move |()| {
            if with_keys.take() {
                at_hand.go_to_ours();
            }
        });
    }
    let unfold = Callback::from(move |_: MouseEvent| is_unfolded.set(true));
    let title = if id.is_some() { new.name().to_owned() } else { form.asks().title.to_owned() };
    let is_keying = at_hand.is_keying();
    html! {
        <div class={classes!("page", "page--item", is_keying.then_some("is-keying is-close"))}>
            { bar(open, &open.at(section_of(form)), &title) }
            <main class="bench">
                <section class="answer" aria-label="What it comes to">
                    if form == Form::Measure { { headline(open, id, &reckoned, rests_on_ours, texts.entries().clone()) } }
                    { drafts::offers(open, place) }
                    if let Some(id) = id.filter(|_| form == Form::Part) { { pieces::list(open, id) } }
                    if let Some(id) = id.filter(|_| form == Form::Measure) {
                        { pencil::held(open, id) }
                        { what_moves(open, id, &at_first, &reckoned) }
                        { attention(open) }
                    }
                </section>
                <section class="sizes" aria-label="What is asked">
                    { asks(&at_hand) }
                    if has_more {
                        <button type="button" class="fold" data-testid="more-fields" onclick={unfold}>
                            <span>{ "More about it" }</span>{ icon(Icon::Down) }
                        </button>
                    }
                    if let Some(id) = id {
                        { take_out(open, id, section_of(form)) }
                        { pencil::ends(open, id) }
                    } else {
                        { drafts::ends(open, &texts, place, Ends { needs, back: section_of(form), again: again(form) }, {
                            let open = open.clone();
                            move |job: &Job, entries: &Entries| {
                                let sheet = read(job, &open.reckoned, &open.settings.bench, form, None, entries);
                                let is_sound = drafts::needs(&sheet, form.asks()).is_empty();
                                is_sound.then(|| item(job, &open, form, None, entries))
                            }
                        }) }
                    }
                </section>
            </main>
        </div>
    }
}

/// The section that an item stands in.
fn section_of(form: Form) -> &'static str {
    match form {
        Form::Measure => "sizes",
        Form::Part => "parts",
        _ => "rack",
    }
}

/// The form of which one more is the likely next, by its name in an address.
fn again(form: Form) -> Option<&'static str> {
    match form {
        Form::Measure => Some("measure"),
        Form::Part => Some("part"),
        Form::YardBoard => Some("yard"),
        Form::RackBoard => Some("board"),
        _ => None,
    }
}

/// What is seldom asked, where nothing of it is said yet: it stays folded away until it is wanted.
fn folded(form: Form, is_new: bool, entries: &Entries, is_unfolded: bool) -> Vec<&'static str> {
    let rare: &[&str] = match form {
        Form::Measure if is_new => &[ids::KIND, ids::AS_CUT, ids::IS_CUT, ids::WAIT, ids::NOTE],
        Form::Part => {
            &[ids::GRAIN_FREE, ids::PAIRS, ids::MAY_RIP, ids::MAY_RESAW, ids::SHOW_FACE, ids::NOTE]
        }
        Form::RackBoard => &[ids::WET, ids::SAWN_ENDS, ids::KNOTS],
        _ => &[],
    };
    let is_said = |id: &&&str| {
        entries.text(id).is_some_and(|text| !["", "no", A_LENGTH.id].contains(&text.trim()))
    };
    if is_unfolded || rare.iter().any(|id| is_said(&id)) { Vec::new() } else { rare.to_vec() }
}

/// The fields of a form whose text is ours while its item is.
fn pencil_fields(form: Form) -> &'static [&'static str] {
    match form {
        Form::Measure => &[ids::FORMULA, ids::NUMBER],
        Form::YardBoard => &[ids::LENGTH, ids::PRICE],
        _ => &[],
    }
}

/// The field of a form that names a section.
fn sections_field(form: Form) -> Option<&'static str> {
    match form {
        Form::Part => Some(ids::STOCK),
        Form::RackBoard | Form::YardBoard => Some(ids::SECTION),
        _ => None,
    }
}

/// Every section to choose from. The one that is chosen fills in its dressed size.
fn section_list(open: &Open, texts: &UseReducerHandle<Texts>, field: &'static str) -> Html {
    let all = sections(&open.book.job);
    let (own, sold): (Vec<&Section>, Vec<&Section>) = all.iter().partition(|it| it.is_own);
    let now = texts.entries().text(field).unwrap_or_default().to_owned();
    let option = |it: &Section| {
        let words = if it.thickness == it.width {
            format!("{} · {}", it.name, it.thickness)
        } else {
            format!("{} · {} × {}", it.name, it.thickness, it.width)
        };
        let selected = is_same(&it.name, &now);
        html! { <option value={it.name.clone()} {selected}>{ words }</option> }
    };
    let known = all.iter().any(|it| is_same(&it.name, &now));
    let own = (!own.is_empty()).then(
        || html! { <optgroup label="In this job">{ for own.into_iter().map(option) }</optgroup> },
    );
    let sold = html! { <optgroup label="By its tag, planed dry">{ for sold.into_iter().map(option) }</optgroup> };
    let onchange = {
        let (texts, all) = (texts.clone(), all.clone());
        Callback::from(move |event: Event| {
            let name = dom::chosen_of(&event);
            let Some(chosen) = all.iter().find(|it| Some(&it.name) == name.as_ref()) else {
                return;
            };
            let text = |id: &str| texts.entries().text(id).unwrap_or_default();
            let (thickness, width) =
                filled(&all, chosen, text(field), text(ids::THICKNESS), text(ids::WIDTH));
            texts.dispatch(Action::Set(vec![
                (field, chosen.name.clone()),
                (ids::THICKNESS, thickness),
                (ids::WIDTH, width),
            ]));
        })
    };
    html! {
        <select class="choice-list field__list" aria-label="Choose a section" data-testid={format!("list-{field}")} {onchange}>
            <option value="" selected={!known}>{ "Choose from the list" }</option>
            { own }
            { sold }
        </select>
    }
}

fn headline(
    open: &Open,
    id: Option<ItemId>,
    reckoned: &Reckoned,
    is_ours: bool,
    typed: Entries,
) -> Html {
    let state = id.and_then(|id| reckoned.measure(id));
    let value = state.and_then(|state| state.in_use());
    let from = match state {
        Some(state) if state.is_as_cut() => "the tape says",
        _ => "as planned",
    };
    html! {
        <>
            <Heard words={format!("In use: {}, {from}{}", spoken(value, open.settings.bench.tape), if is_ours { ", example" } else { "" })} {typed} />
            <div class={classes!("headline", is_ours.then_some("is-pencil"))} data-testid="answer-headline">
                <div class="headline__inside is-short">
                    <p class="headline__label">{ "In use" }</p>
                    <p class="headline__figure">
                        <span class="headline__value">{ quantity(value, open.settings.bench.tape) }</span>
                        if is_ours { <span class="headline__example">{ "example" }</span> }
                    </p>
                    <p class="headline__rest"><span class="lean">{ from }</span></p>
                </div>
            </div>
        </>
    }
}

fn what_moves(open: &Open, id: ItemId, at_first: &Reckoned, now: &Reckoned) -> Html {
    let all = moved(&open.book.job, at_first, now);
    // The size that is being edited says its own change, unless it is a part that is cut.
    let others: Vec<_> =
        all.into_iter().filter(|it| it.id != id || counts_as_cut(open.book.job.item(id))).collect();
    let parts = moved_parts(&open.book.job, at_first, now);
    if others.is_empty() && parts.is_empty() {
        html! {}
    } else {
        moved_list(open, &open.book.job, &others, &parts)
    }
}
