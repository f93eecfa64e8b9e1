//! Kept reckonings: calculators that use the sizes of the job, and whose results can become sizes.

use std::rc::Rc;

use reckoner_core::calculators::{self, Calculator};
use reckoner_core::job::{Item, ItemId, Kept, Linked, Measure, MeasureKind, Step, Written};
use reckoner_core::paper::{Paper, Template};
use reckoner_core::sheet::{Entries, Figure, Sheet, Value};
use reckoner_formats::template_pdf;
use yew::prelude::*;

use super::hand_on::file_name;
use super::item::Shared;
use super::{Open, bar, row};
use crate::calculator::answer;
use crate::components::measure;
use crate::form::view::{asks, use_at_hand};
use crate::form::{Action, Form};
use crate::job_book::book::Edit;
use crate::platform::files;

pub(super) fn list(open: &Open) -> Html {
    let kept = open.book.job.kept();
    html! {
        <>
            <ul class="rows" data-testid="kept">
                { for kept.iter().map(|(id, it)| row(open, *id, &it.title, html! {
                    <>
                        <span class="row__name">{ &it.title }</span>
                        <span class="row__value">{ headline(open, open.reckoned.kept(*id)) }</span>
                        <span class="row__more">{ calculators::find(&it.slug).map_or(it.slug.as_str(), |c| c.title) }</span>
                    </>
                })) }
            </ul>
            <h2 class="job__title">{ "Keep a new one" }</h2>
            <div class="adds">{ for calculators::ALL.iter().map(|calculator| keep(open, calculator)) }</div>
        </>
    }
}

fn headline(open: &Open, sheet: Option<&Sheet>) -> Html {
    match sheet.and_then(|sheet| sheet.answer.as_ref()) {
        Some(answer) => measure::value(&answer.headline.value, &open.settings.bench),
        None => "no answer".into(),
    }
}

fn keep(open: &Open, calculator: &'static Calculator) -> Html {
    let rank = open.book.job.kept().len().try_into().unwrap_or(i64::MAX);
    let kept = Kept {
        rank,
        title: calculator.title.to_owned(),
        slug: calculator.slug.to_owned(),
        entries: Vec::new(),
    };
    let step = Step::new(
        format!("keep {}", calculator.title),
        vec![open.book.job.adding(0, Item::Kept(kept))],
    );
    html! {
        <button type="button" class="tool" data-testid={format!("keep-{}", calculator.slug)}
            onclick={open.doing(Edit::Make(step))}>{ calculator.title }</button>
    }
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
    let form = use_reducer(|| {
        let mut entries = Entries::from_pairs(kept.entries.iter().cloned());
        entries.set_unit(Some(open.book.job.unit));
        Form::new(calculator, entries, None)
    });
    let sheet = Rc::new(calculator.sheet(form.entries(), &bench, &*open.reckoned));
    let names =
        Rc::new(open.book.job.measures().into_iter().map(|(_, m)| m.name.clone()).collect());
    let at_hand = use_at_hand(form.clone(), sheet.clone(), open.settings.clone(), names);
    let index = use_state_eq(|| 0_usize);
    let on_index = Callback::from({
        let index = index.clone();
        move |to| index.set(to)
    });
    let on_way_out = {
        let form = form.dispatcher();
        Callback::from(move |set| form.dispatch(Action::Set(set)))
    };
    {
        let (open, kept) = (open.clone(), kept.clone());
        use_effect_with((form.editing(), form.entries().clone()), move |(editing, entries)| {
            let now: Vec<(String, String)> =
                entries.pairs().map(|(k, v)| (k.to_owned(), v.to_owned())).collect();
            if editing.is_none() && now != kept.entries {
                let new = Kept { entries: now, ..kept.clone() };
                let step = Step::new(
                    format!("change {}", kept.title),
                    vec![open.book.job.replacing(id, Item::Kept(new))],
                );
                open.on_page.edit(Edit::Make(step));
            }
        });
    }
    let take_out = open.doing(Edit::Make(Step::new(
        format!("take out {}", kept.title),
        vec![open.book.job.removing(id)],
    )));
    html! {
        <div class={classes!("page", "page--calculator", at_hand.is_keying().then_some("is-keying"))}>
            { bar(open, &open.at("kept"), &kept.title) }
            <main class="bench">
                <section class="answer" aria-label="Answer">
                    { answer::headline(&form, &sheet, &bench, *index, &on_index, &on_way_out) }
                    if let Some(it) = &sheet.answer {
                        { answer::rest(it, &bench, *index, &on_index) }
                        if let Some(template) = &it.template { { full_size(open, kept, template) } }
                        <h2 class="job__title">{ "Make a size of it" }</h2>
                        <div class="adds">
                            { for core::iter::once(&it.headline).chain(&it.figures).filter_map(|figure| become_size(open, id, kept, figure, *index)) }
                        </div>
                    }
                </section>
                <section class="sizes" aria-label="What is asked">
                    { asks(&at_hand) }
                    <div class="adds"><button type="button" class="tool" data-testid="take-out" onclick={take_out}>{ "Take it out" }</button></div>
                </section>
            </main>
        </div>
    }
}

/// The template of an answer as pages to print at full size.
fn full_size(open: &Open, kept: &Kept, template: &Template) -> Html {
    let save = |paper: Paper, label: &'static str, id: &'static str| {
        let (template, title, tape) =
            (template.clone(), kept.title.clone(), open.settings.bench.tape);
        let trouble = open.on_page.trouble.clone();
        let onclick =
            Callback::from(move |_: MouseEvent| match template_pdf(&template, paper, tape) {
                Ok(pdf) => files::save(&file_name(&title, "pdf"), "application/pdf", &pdf),
                Err(problem) => trouble.set(Some(problem.to_string())),
            });
        html! { <button type="button" class="tool" data-testid={id} {onclick}>{ label }</button> }
    };
    html! {
        <>
            <h2 class="job__title">{ "Print at full size" }</h2>
            <p class="job__words">{ "Print at 100 %. The first page has a square to measure: it must be 3 in." }</p>
            <div class="adds">
                { save(Paper::Letter, "Letter pages (PDF)", "template-letter") }
                { save(Paper::A4, "A4 pages (PDF)", "template-a4") }
            </div>
        </>
    }
}

/// A button that makes a linked size of a figure.
fn become_size(
    open: &Open,
    id: ItemId,
    kept: &Kept,
    figure: &Figure,
    index: usize,
) -> Option<Html> {
    let (kind, index) = match &figure.value {
        Value::Length(..) => (MeasureKind::Length, 0),
        Value::Lengths(_) => (MeasureKind::Length, u32::try_from(index).ok()?),
        Value::Count(_) | Value::Exact(..) => (MeasureKind::Number, 0),
        _ => return None,
    };
    let measures = open.book.job.measures();
    let wanted = format!("{}, {}", kept.title, figure.label.to_lowercase());
    let is_taken = |name: &str| measures.iter().any(|(_, m)| m.name == name);
    let name = core::iter::once(wanted.clone())
        .chain((2_u32..100).map(|n| format!("{wanted} {n}")))
        .find(|name| !is_taken(name))?;
    let measure = Measure {
        rank: measures.len().try_into().unwrap_or(i64::MAX),
        name: name.clone(),
        kind,
        written: Written::Linked(Linked { kept: id, result: figure.id.to_owned(), index }),
        as_cut: None,
        is_cut: false,
        wait: false,
        note: String::new(),
    };
    let step =
        Step::new(format!("add {name}"), vec![open.book.job.adding(0, Item::Measure(measure))]);
    Some(html! {
        <button type="button" class="tool" data-testid={format!("become-{}", figure.id)} onclick={open.doing(Edit::Make(step))}>
            { figure.label }
        </button>
    })
}
