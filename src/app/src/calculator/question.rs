//! The question of a page: the first thing on it, with a sheet of all that the page can be asked.

use reckoner_core::calculators::Calculator;
use reckoner_core::sheet::{Bench, Choice, Entries, Field, Kind};
use yew::prelude::*;

use crate::components::choice;
use crate::components::drawing::outline;
use crate::components::icon::{Icon, icon};
use crate::form::Action;
use crate::form::at_hand::AtHand;
use crate::platform::back::use_back;
use crate::platform::dom;

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
        <Question slug={calculator.slug} chosen={at_hand.text(field)}
            entries={at_hand.form.entries().clone()} bench={at_hand.settings.bench} {on_choose} />
    })
}

#[derive(Properties, PartialEq)]
struct QuestionProps {
    slug: &'static str,
    chosen: String,
    entries: Entries,
    bench: Bench,
    on_choose: Callback<&'static str>,
}

#[component]
fn Question(props: &QuestionProps) -> Html {
    let QuestionProps { slug, chosen, entries, bench, on_choose } = props;
    let is_open = use_state_eq(|| false);
    let set = |to: bool| {
        let is_open = is_open.clone();
        move || is_open.set(to)
    };
    let Some(calculator) = reckoner_core::calculators::find(slug) else { return html! {} };
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
    let open = set(!*is_open);
    let row = |it: &'static Choice| {
        let (on_choose, done) = (on_choose.clone(), done.clone());
        let onclick = Callback::from(move |_: MouseEvent| {
            on_choose.emit(it.id);
            done.emit(());
        });
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
                <span class="voice">{ format!("Question {place} of {}: ", all.len()) }</span>
                <span class="question__now">{ now.map(|it| it.label) }</span>
                <span class="voice">{ ". Change the question." }</span>
                { icon(Icon::Down) }
            </button>
            if *is_open {
                <div class="question__veil" onclick={done.reform(|_: MouseEvent| ())}></div>
                <div class="question__sheet" role="group" aria-labelledby="question-title">
                    <p class="question__head">
                        <span class="question__title" id="question-title">{ "What do you want to know?" }</span>
                        <button type="button" class="question__close" aria-label="Close" data-testid="question-close"
                            onclick={done.reform(|_: MouseEvent| ())}>{ icon(Icon::Clear) }</button>
                    </p>
                    <ul>{ for all.iter().map(row) }</ul>
                </div>
            }
        </div>
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
