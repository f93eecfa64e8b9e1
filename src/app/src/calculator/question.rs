//! The question of a page: the first thing on it, with a sheet of all that the page can be asked.

use std::cell::RefCell;

use reckoner_core::calculators::{Calculator, find_questions};
use reckoner_core::drawing::Outline;
use reckoner_core::sheet::{Bench, Choice, Entries, Field, Kind};
use yew::prelude::*;

use crate::components::choice;
use crate::components::drawing::outline;
use crate::components::find::{Here, founds, line};
use crate::components::icon::{Icon, icon};
use crate::form::Action;
use crate::form::at_hand::AtHand;
use crate::platform::back::use_back;
use crate::platform::dom;
use crate::platform::later::later;

/// Most sizes that a question names.
const MOST_NAMED: usize = 3;

/// The question asked now; a tap opens the sheet of all of them.
pub(crate) fn question(at_hand: &AtHand) -> Option<Html> {
    let calculator = at_hand.form.calculator();
    let (field, _) = calculator.questions()?;
    let on_choose = {
        let form = at_hand.form.dispatcher();
        Callback::from(move |id: &'static str| {
            form.dispatch(Action::Set(vec![(field.id, id.to_owned())]));
        })
    };
    Some(html! {
        <Question {calculator} chosen={at_hand.text(field)}
            entries={at_hand.form.entries().clone()} bench={at_hand.settings.bench} {on_choose} />
    })
}

#[derive(Properties)]
struct QuestionProps {
    calculator: &'static Calculator,
    chosen: String,
    entries: Entries,
    bench: Bench,
    on_choose: Callback<&'static str>,
}

impl PartialEq for QuestionProps {
    fn eq(&self, other: &QuestionProps) -> bool {
        core::ptr::eq(self.calculator, other.calculator)
            && self.chosen == other.chosen
            && self.entries == other.entries
            && self.bench == other.bench
            && self.on_choose == other.on_choose
    }
}

/// How long a page rests before the picture in the pill is made, in milliseconds: the answer comes first.
const PICTURE_REST: u32 = 300;

/// The picture of a question of a calculator at a bench.
type Picture = ((&'static str, &'static str, Bench), Option<Outline>);

thread_local! {
    /// The picture that was made last: the pill is away while something is typed, and then there at once.
    static MADE: RefCell<Option<Picture>> = const { RefCell::new(None) };
}

/// The picture of a question, made a moment after it is asked, and not while something is typed.
#[hook]
fn use_picture(
    calculator: &'static Calculator,
    question: &'static str,
    bench: Bench,
) -> Option<Outline> {
    let made = use_state_eq(|| MADE.with_borrow(Clone::clone));
    let wanted = (calculator.slug, question, bench);
    let is_made = made.as_ref().is_some_and(|(of, _)| *of == wanted);
    use_effect_with((wanted, is_made), {
        let made = made.clone();
        move |((_, question, bench), is_made)| {
            let (question, bench) = (*question, *bench);
            let making = (!is_made).then(|| {
                later(PICTURE_REST, move || {
                    let picture = Some((wanted, calculator.outline(question, &bench)));
                    MADE.set(picture.clone());
                    made.set(picture);
                })
            });
            move || drop(making)
        }
    });
    made.as_ref().filter(|_| is_made).and_then(|(_, picture)| picture.clone())
}

#[component]
fn Question(props: &QuestionProps) -> Html {
    let QuestionProps { calculator, chosen, entries, bench, on_choose } = props;
    let is_open = use_state_eq(|| false);
    let wanted = use_state_eq(String::new);
    let set = |to: bool| {
        let is_open = is_open.clone();
        move || is_open.set(to)
    };
    let Some((field, all)) = calculator.questions() else { return html! {} };
    let now = all.iter().find(|it| it.id == chosen).or(all.first());
    let place = all.iter().zip(1_usize..).find(|(it, _)| Some(*it) == now).map_or(1, |(_, n)| n);
    // The one that is asked has the focus when the sheet opens, and the pill when it closes.
    use_effect_with(*is_open, {
        let now = now.map(|it| choice::id(field.id, it.id));
        move |is_open| {
            if let Some(now) = now.filter(|_| *is_open) {
                dom::focus(&now, false);
            }
        }
    });
    let close = set(false);
    let done = {
        let close = close.clone();
        Callback::from(move |()| {
            close();
            dom::focus(PILL, true);
        })
    };
    use_back(*is_open, done.clone());
    let picture = use_picture(calculator, now.map_or("", |it| it.id), *bench);
    let pick = {
        let (on_choose, done) = (on_choose.clone(), done.clone());
        Callback::from(move |id: &'static str| {
            on_choose.emit(id);
            done.emit(());
        })
    };
    let onkeydown = {
        let done = done.clone();
        Callback::from(move |event: KeyboardEvent| {
            if event.key() == "Escape" {
                event.prevent_default();
                done.emit(());
            }
        })
    };
    let onfocusout = Callback::from(move |event: FocusEvent| {
        if dom::leaves_group(&event, ".question") {
            close();
        }
    });
    let open = {
        let (set, wanted) = (set(!*is_open), wanted.clone());
        move || {
            wanted.set(String::new());
            set();
        }
    };
    let here = Here { slug: calculator.slug, on_choose: pick.clone() };
    let is_finding = !wanted.trim().is_empty();
    let row = |it: &'static Choice| {
        let onclick = pick.reform(move |_: MouseEvent| it.id);
        let id = choice::id(field.id, it.id);
        html! {
            <li>
                <button type="button" class="question__row" id={id.clone()} data-testid={id} {onclick}
                    aria-current={(Some(it) == now).then_some("true")}>
                    <span class="question__picture" aria-hidden="true">
                        { calculator.outline(it.id, bench).as_ref().map(outline) }
                    </span>
                    <span class="question__words">
                        <span class="question__name">{ it.label }</span>
                        <span class="question__asks">{ asks(calculator, field, it, entries, bench) }</span>
                    </span>
                </button>
            </li>
        }
    };
    html! {
        <div class={classes!("question", is_open.then_some("is-open"))} {onkeydown} {onfocusout}>
            <button type="button" class="question__pill" id={PILL} data-testid={PILL}
                aria-expanded={if *is_open { "true" } else { "false" }}
                onclick={Callback::from(move |_: MouseEvent| open())}>
                <span class="question__small" aria-hidden="true">{ picture.as_ref().map(outline) }</span>
                <span class="voice">{ format!("Question {place} of {}: ", all.len()) }</span>
                <span class="question__now">{ now.map(|it| it.label) }</span>
                <span class="voice">{ ". Change the question." }</span>
                { icon(Icon::Down) }
            </button>
            if *is_open {
                <div class="question__veil" onclick={done.reform(|_: MouseEvent| ())}></div>
                <div class={classes!("question__sheet", is_finding.then_some("is-finding"))} role="group" aria-labelledby="question-title">
                    <p class="question__head">
                        <span class="question__title" id="question-title">{ "What do you want to know?" }</span>
                        <button type="button" class="question__close" aria-label="Close" data-testid="question-close"
                            onclick={done.reform(|_: MouseEvent| ())}>{ icon(Icon::Clear) }</button>
                    </p>
                    if !is_finding { <ul>{ for all.iter().map(row) }</ul> }
                    <div class="question__find">{ line("Not here? Find a question", &wanted, Some(&here)) }</div>
                    if is_finding { { found(&wanted, &here) } }
                </div>
            }
        </div>
    }
}

/// The questions of all calculators that have the words.
fn found(wanted: &str, here: &Here) -> Html {
    let all = find_questions(wanted);
    html! {
        <>
            { founds(&all, Some(here)) }
            if all.is_empty() { <p class="home__none" data-testid="none-found">{ "No question has these words." }</p> }
        </>
    }
}

/// Id of the pill.
const PILL: &str = "question";

/// What a question asks: `asks length, slat width, gap wanted`.
fn asks(
    calculator: &'static Calculator,
    field: &Field,
    it: &Choice,
    entries: &Entries,
    bench: &Bench,
) -> String {
    let mut entries = entries.clone();
    entries.set(field.id, it.id);
    let sizes = calculator.asked(&entries, bench).filter(|field| {
        !matches!(field.kind, Kind::Choice(_) | Kind::YesNo)
            && !field.start_text(bench, bench.tape.unit()).is_empty()
    });
    let names: Vec<String> = sizes.take(MOST_NAMED).map(Field::in_line).collect();
    if names.is_empty() { String::new() } else { format!("asks {}", names.join(", ")) }
}
