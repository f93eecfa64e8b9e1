//! The build order: what is done next, large enough to be read from the saw, and what comes after it.

use std::rc::Rc;

use reckoner_core::build_order::{
    BuildOrder, BuildStep, Pieces, Stage, Wait, build_order, picture,
};
use reckoner_core::job::bars::Bars;
use reckoner_core::job::sketch::Look;
use reckoner_core::job::{Item, ItemId, Job, OnOurs};
use reckoner_core::measure::Rounding;
use reckoner_core::measure::text::{Quantity, show};
use reckoner_core::sentence::counted;
use reckoner_core::sheet::face;
use reckoner_core::to_buy::Line;
use yew::prelude::*;

use super::attention::attention;
use super::long_list::long_list;
use super::pieces::to_scale;
use super::{Open, Shared, bar};
use crate::components::drawing::drawing;
use crate::components::icon::{Icon, icon};
use crate::components::measure::{length, quantity, value};
use crate::components::notes::caution;
use crate::components::sentence::sentence;
use crate::platform::{address, speech};
use crate::words::all_to_say;

/// Most pieces that are offered one by one.
const MOST_PIECES: usize = 40;

/// The order of the job as it is.
pub(super) fn order_of(open: &Open) -> BuildOrder {
    build_order(&open.book.job, &open.reckoned, &open.settings.bench, &open.attention)
}

/// What is to be done now.
pub(super) enum Now<'a> {
    /// A step, by its place.
    Step(usize, &'a BuildStep),
    /// The order has no step.
    Nothing,
    /// Every step is done.
    Done,
    /// Every step that is left waits for something.
    Waits,
}

/// What comes next of an order.
pub(super) fn now(order: &BuildOrder) -> Now<'_> {
    match order.next().and_then(|at| Some((at, order.steps.get(at)?))) {
        Some((at, step)) => Now::Step(at, step),
        None if order.steps.is_empty() => Now::Nothing,
        None if order.steps.iter().all(|step| step.is_done) => Now::Done,
        None => Now::Waits,
    }
}

pub(super) fn page(open: &Open) -> Html {
    html! { <Build open={Shared(open.clone())} /> }
}

#[derive(Properties, PartialEq)]
struct BuildProps {
    open: Shared,
}

#[component]
fn Build(props: &BuildProps) -> Html {
    let Shared(open) = &props.open;
    let order = Rc::new(order_of(open));
    let on_ours = Rc::new(OnOurs::of(&open.book.job, &open.reckoned));
    // Somebody looks at another step than the next one.
    let chosen = use_state_eq(|| None::<String>);
    let place = |key: &String| order.steps.iter().position(|step| step.key == *key);
    let shown = chosen.as_ref().and_then(place).and_then(|at| Some((at, order.steps.get(at)?)));
    let now = shown.map_or_else(|| now(&order), |(at, step)| Now::Step(at, step));
    let at = if let Now::Step(at, _) = now { Some(at) } else { None };
    let choose = {
        let chosen = chosen.clone();
        Callback::from(move |key: Option<String>| chosen.set(key))
    };
    let steps = || order.steps.iter().enumerate().filter(|(place, _)| at != Some(*place));
    let places = |is_done: bool| -> Vec<usize> {
        steps().filter(|(_, step)| step.is_done == is_done).map(|(place, _)| place).collect()
    };
    let (done, coming) = (places(true), places(false));
    let rows = |places: Vec<usize>| {
        let (open, order, choose) = (open.clone(), order.clone(), choose.clone());
        let on_ours = on_ours.clone();
        long_list(places.len(), move |at| {
            let step = places.get(at).and_then(|place| Some((*place, order.steps.get(*place)?)));
            step.map(|step| coming_step(&open, (&order, &on_ours), step, &choose))
                .unwrap_or_default()
        })
    };
    html! {
        <div class="page page--job">
            { bar(open, &open.at(""), "Build order") }
            <main class="job build" data-testid="build">
                if !done.is_empty() {
                    <details class="build__done" data-testid="done-steps">
                        <summary>{ icon(Icon::Tick) }<span>{ format!("{} done", counted(u32::try_from(done.len()).unwrap_or(0), " step")) }</span></summary>
                        <ol class="build__coming">{ rows(done) }</ol>
                    </details>
                }
                { match now {
                    Now::Step(at, step) => current(open, (&order, &on_ours), (at, step), &choose),
                    Now::Nothing => html! {
                        <>
                            { nothing_next("Nothing to build yet: the job has no piece to cut, and no kept calculator that is work.") }
                            <div class="adds"><a class="tool" href={open.at("parts")}>{ "To the pieces" }</a></div>
                        </>
                    },
                    Now::Done => nothing_next("All steps are done."),
                    Now::Waits => nothing_next("Every step that is left waits for something. Look below for what."),
                } }
                { attention(open) }
                <ol class="build__coming" data-testid="coming-steps">
                    { rows(coming) }
                </ol>
            </main>
        </div>
    }
}

/// There is nothing to do, or all that is left waits.
fn nothing_next(words: &str) -> Html {
    html! { <p class="job__words" data-testid="nothing-next">{ words }</p> }
}

fn number(place: usize) -> String {
    place.saturating_add(1).to_string()
}

/// The step at hand.
fn current(
    open: &Open,
    (order, on_ours): (&BuildOrder, &OnOurs),
    (place, step): (usize, &BuildStep),
    choose: &Callback<Option<String>>,
) -> Html {
    let (job, tape) = (&open.book.job, open.settings.bench.tape);
    let title = step.title(job);
    let scene = picture(step, &open.reckoned, tape);
    let figure = match step.setting {
        Some(setting) => Some(length(setting, tape)),
        None => step.headline(&open.reckoned).map(|(_, _, it)| value(it, &open.settings.bench)),
    };
    let is_ours = figure.is_some() && step.is_on_ours(job, &open.reckoned, on_ours);
    let aloud = {
        let words = spoken(open, order, step, is_ours);
        Callback::from(move |_: MouseEvent| speech::say(&words))
    };
    let after = order.steps.iter().enumerate().skip(place.saturating_add(1));
    let next = after.map(|(_, step)| step).find(|step| !step.is_done).map(|step| step.key.clone());
    let skip = choose.reform(move |_: MouseEvent| next.clone());
    html! {
        <section class={classes!("headline", "build__now", is_ours.then_some("is-pencil"))} aria-label="This step" data-testid="this-step">
            <div class={classes!("headline__inside", if step.setting.is_some() { "is-short" } else { "is-words" })}>
                <h2 class="build__title">{ format!("{}. {title}", number(place)) }</h2>
                <p class="headline__from">{ step.measured(&open.reckoned) }</p>
                <p class="headline__figure" data-testid="setting">
                    if let Some(figure) = figure { <span class="headline__value">{ figure }</span> }
                    if is_ours { <span class="headline__example">{ "example" }</span> }
                </p>
            </div>
            if let Some(scene) = scene { { drawing(&scene, tape) } }
            { pieces(open, on_ours, step) }
            { to_buy(open, step) }
            if step.setting.is_some() && !step.is_done { <p class="build__spare">{ "And one spare at the same setting, where the wood allows it." }</p> }
            { waits(open, order, step, choose) }
            { for step.worst_cautions().into_iter().map(|it| caution(it, open.settings.bench.tape)) }
            { tick(open, step) }
            <div class="adds build__ways">
                if step.stage.is_final_cut() { { different(open, step) } }
                if let Some((to, words)) = way_there(open, step) { <a class="tool" href={to} data-testid="step-place">{ words }</a> }
                if speech::is_possible() {
                    <button type="button" class="tool" data-testid="read-step" onclick={aloud}>{ icon(Icon::Voice) }<span>{ "Read aloud" }</span></button>
                }
                <button type="button" class="tool" data-testid="next-step" onclick={skip}>{ icon(Icon::Next) }<span>{ "Next" }</span></button>
            </div>
        </section>
    }
}

/// Where a step is done that is more than a tick, or where its reckoning stands.
fn way_there(open: &Open, step: &BuildStep) -> Option<(String, &'static str)> {
    let item = |id: ItemId| open.at(&format!("item/{}", id.0));
    match (step.stage, step.about) {
        (Stage::Plan, _) => Some((open.at("boards"), "To the boards")),
        (Stage::Buy, _) => Some((open.at("buy"), "Everything to buy")),
        (Stage::DryFit, Some(id)) => Some((item(id), "Write what the tape says")),
        (_, Some(id)) => Some((item(id), "See it")),
        (_, None) => None,
    }
}

/// The pieces, with the boards that they come from.
fn pieces(open: &Open, on_ours: &OnOurs, step: &BuildStep) -> Html {
    let bars = Bars::of(&open.book.job, &open.reckoned);
    // Of pieces that are cut by one stop the bars would all be alike, and say nothing.
    let is_told_apart = step.setting.is_none() || !step.stage.is_crosscut();
    let one = |it: &Pieces| {
        let item = open.book.job.item(it.part);
        let name = item.map_or("", Item::name);
        let is_ours = matches!(item, Some(Item::Part(part))
            if on_ours.has_sizes_of(&open.reckoned, it.part, part));
        let from = match (it.is_cut, it.board) {
            (true, _) => "cut".to_owned(),
            (false, Some(board)) => format!("board {board}"),
            (false, None) => String::new(),
        };
        let look = if it.is_cut { Look::Cut } else { Look::ToCut };
        html! {
            <li class="build__piece">
                <span>{ format!("{} × {name}", it.pieces.len()) }</span>
                <span>
                    if is_ours { <span class="badge is-ours">{ "example" }</span> }
                    <b>{ from }</b>
                </span>
                if is_told_apart {
                    { open.reckoned.part(it.part).map(|sizes| to_scale(&bars, sizes, look, is_ours)) }
                }
            </li>
        }
    };
    html! {
        if !step.pieces.is_empty() {
            <ul class="build__pieces" data-testid="step-pieces">{ for step.pieces.iter().map(one) }</ul>
        }
    }
}

/// What is still to buy.
fn to_buy(open: &Open, step: &BuildStep) -> Html {
    let one = |line: &Line| {
        html! {
            <li class="build__piece">
                <span>{ format!("{} × ", line.to_come()) }{ sentence(&line.what(), open.settings.bench.tape) }</span>
            </li>
        }
    };
    html! {
        if !step.to_buy.is_empty() {
            <ul class="build__pieces" data-testid="step-to-buy">{ for step.to_buy.iter().map(one) }</ul>
        }
    }
}

/// What the step waits for, each with its way there.
fn waits(
    open: &Open,
    order: &BuildOrder,
    step: &BuildStep,
    choose: &Callback<Option<String>>,
) -> Html {
    let (job, tape) = (&open.book.job, open.settings.bench.tape);
    let one = |wait: &Wait| {
        let words = sentence(&wait.sentence(job, order), tape);
        let to = match wait {
            Wait::Step(at) => {
                let key = order.steps.get(*at).map(|step| step.key.clone());
                let onclick = choose.reform(move |_: MouseEvent| key.clone());
                return html! { <li><button type="button" class="way-out" {onclick}>{ words }</button></li> };
            }
            Wait::Plan(_) => open.at("boards"),
            Wait::Measure(id) | Wait::Look(id) | Wait::Refused(id) => {
                open.at(&format!("item/{}", id.0))
            }
        };
        html! { <li><a class="way-out" href={to}>{ words }</a></li> }
    };
    html! {
        if !step.waits_for.is_empty() && !step.is_done {
            <div class="build__waits" data-testid="step-waits">
                <p>{ "Wait for" }</p>
                <ul>{ for step.waits_for.iter().map(one) }</ul>
            </div>
        }
    }
}

fn tick(open: &Open, step: &BuildStep) -> Html {
    let (reckoned, bench) = (open.reckoned.clone(), open.settings.bench);
    if step.ticking(&open.book.job, &reckoned, &bench).is_none() {
        return html! {};
    }
    let onclick = {
        let step = step.clone();
        open.making(move |job| step.ticking(job, &reckoned, &bench))
    };
    let words = if step.is_done { "Not done after all".to_owned() } else { step.done_words() };
    html! {
        <button type="button" class="build__tick" data-testid="step-done" {onclick}>
            if !step.is_done { { icon(Icon::Tick) } }<span>{ words }</span>
        </button>
    }
}

/// Which piece came out different: it is ticked, and its page asks what the tape says.
fn different(open: &Open, step: &BuildStep) -> Html {
    let all = step.pieces.iter().flat_map(|it| it.pieces.iter().map(|index| (it.part, *index)));
    let one = |(part, index): (ItemId, usize)| {
        let name = open.book.job.item(part).map_or("", Item::name);
        let to = open.at(&format!("piece/{}/{index}", part.0));
        let (on_page, reckoned) = (open.on_page.clone(), open.reckoned.clone());
        let bench = open.settings.bench;
        let onclick = Callback::from(move |_: MouseEvent| {
            address::go_by(|| {
                on_page.make(|job: &Job| job.cutting_pieces(&reckoned, &bench, &[(part, index)]));
                Some(to.clone())
            });
        });
        let words = format!("{name} {}", number(index));
        html! { <button type="button" class="tool" data-testid={format!("different-{words}")} {onclick}>{ words }</button> }
    };
    html! {
        <details class="build__different" data-testid="one-different">
            <summary>{ "One came out different" }</summary>
            <p>{ "Which one? It is ticked, and its page asks what the tape says." }</p>
            <div class="adds">{ for all.take(MOST_PIECES).map(one) }</div>
        </details>
    }
}

/// A step that is not the current one: a tap makes it so.
fn coming_step(
    open: &Open,
    (order, on_ours): (&BuildOrder, &OnOurs),
    (place, step): (usize, &BuildStep),
    choose: &Callback<Option<String>>,
) -> Html {
    let tape = open.settings.bench.tape;
    let key = step.key.clone();
    let onclick = choose.reform(move |_: MouseEvent| Some(key.clone()));
    let side = match (step.is_done, step.waits_for.first()) {
        (true, _) => icon(Icon::Tick),
        (false, Some(wait)) => {
            html! { <span class="badge is-wait">{ "waits: " }{ sentence(&wait.sentence(&open.book.job, order), tape) }</span> }
        }
        (false, None) if step.pieces.is_empty() => html! {},
        (false, None) => html! { { counted(step.many(), " piece") } },
    };
    let is_ours = step.is_on_ours(&open.book.job, &open.reckoned, on_ours);
    html! {
        <li>
            <button type="button" class="row build__row" data-testid={format!("step-{}", number(place))} {onclick}>
                <span class="build__number">{ number(place) }</span>
                <span class="row__name">{ step.title(&open.book.job) }
                    if let Some(setting) = step.setting {
                        <span class="build__setting">
                            { step.measured(&open.reckoned) }{ " " }
                            <span class={is_ours.then_some("is-pencil")}>{ quantity(Some(Quantity::Length(setting)), tape) }</span>
                            if is_ours { { ", example" } }
                        </span>
                    }
                </span>
                <span class="build__side">{ side }</span>
            </button>
        </li>
    }
}

/// The step for a voice: all that stands there but its picture.
fn spoken(open: &Open, order: &BuildOrder, step: &BuildStep, is_ours: bool) -> String {
    let (job, bench) = (&open.book.job, open.settings.bench);
    let mut words = step.title(job);
    let figure = match step.setting {
        Some(setting) => show(setting, bench.tape, Rounding::Nearest).ok().map(|it| it.spoken),
        None => step.headline(&open.reckoned).map(|(_, _, it)| all_to_say(face(it, &bench))),
    };
    if let Some(figure) = figure {
        let from = step.measured(&open.reckoned);
        let between = if from.is_empty() { "" } else { ": " };
        let example = if is_ours { ", example" } else { "" };
        words.push_str(&format!(". {from}{between}{figure}{example}"));
    }
    for it in step.pieces.iter().filter(|it| !it.is_cut) {
        let name = job.item(it.part).map_or("", Item::name);
        words.push_str(&format!(". {} of {name}", it.pieces.len()));
        words.extend(it.board.map(|board| format!(", from board {board}")));
    }
    for line in &step.to_buy {
        words.push_str(&format!(". {} of {}", line.to_come(), line.what().on(bench.tape)));
    }
    for wait in step.waits_for.iter().filter(|_| !step.is_done) {
        words.push_str(&format!(". Wait for: {}", wait.sentence(job, order).on(bench.tape)));
    }
    words.extend(
        step.worst_cautions().into_iter().map(|it| format!(". {}", it.line().on(bench.tape))),
    );
    words
}
