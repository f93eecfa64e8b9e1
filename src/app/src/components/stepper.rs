//! How many there are of a thing: one fewer, the number, one more; and the question whether it goes.

use yew::prelude::*;

use super::icon::{Icon, icon};
use super::repeats::Repeats;
use crate::platform::dom;

/// How many a yard has of a length, where nobody wrote that there are only so many.
pub(crate) const ENOUGH: &str = "enough";

/// A number that is counted.
#[derive(Properties, PartialEq)]
pub(crate) struct StepperProps {
    /// The end of its test ids.
    pub(crate) id: String,
    /// What is counted, in words.
    pub(crate) name: String,
    /// How many there are now, as written; empty where nobody wrote it.
    pub(crate) count: String,
    /// What that means where nobody wrote it.
    #[prop_or_default]
    pub(crate) meant: String,
    /// Takes one away; `None` where that cannot be.
    pub(crate) fewer: Option<Callback<MouseEvent>>,
    /// Adds one; `None` where that cannot be.
    pub(crate) more: Option<Callback<MouseEvent>>,
    /// Takes the number that is typed; `None` where it is counted alone, or worked out.
    #[prop_or_default]
    pub(crate) typed: Option<Callback<String>>,
}

/// One fewer, the number, one more. The number can be tapped and typed.
#[component]
pub(crate) fn Stepper(props: &StepperProps) -> Html {
    let StepperProps { id, name, count, meant, fewer, more, typed } = props;
    let shown = if count.is_empty() { meant } else { count };
    // What was typed and is no number that there can be gives way to what stands.
    let again = use_force_update();
    let onfocusout = Callback::from(move |_: FocusEvent| again.force_update());
    let onclick = Callback::from(|event: MouseEvent| dom::select_of(&event));
    // One fewer than one is a question: held, it stops at one.
    let is_last = !shown.parse::<u32>().is_ok_and(|many| many > 1);
    let step = |which: &str, words: &str, face: Icon, onclick: &Option<Callback<MouseEvent>>| {
        let is_one_by_one = is_last && face == Icon::Minus;
        html! {
            <Repeats class="count" {is_one_by_one} name={format!("{words}: {name}")} testid={format!("{which}-{id}")}
                is_disabled={onclick.is_none()} onclick={onclick.clone().unwrap_or_default()}>{ icon(face) }</Repeats>
        }
    };
    html! {
        <div class="stepper" role="group" aria-label={format!("How many: {name}")}>
            { step("fewer", "One fewer", Icon::Minus, fewer) }
            if let Some(typed) = typed {
                <output class="voice" data-testid={format!("count-{id}")}>{ shown }</output>
                <input class="stepper__count" type="text" inputmode="numeric" size={shown.chars().count().max(2).to_string()}
                    aria-label={format!("How many: {name}")} data-testid={format!("number-{id}")} value={count.clone()}
                    placeholder={meant.clone()} maxlength="60" autocomplete="off" oninput={typing(typed)} {onclick} {onfocusout} />
            } else {
                <output class="stepper__count" data-testid={format!("count-{id}")}>{ shown }</output>
            }
            { step("more", "One more", Icon::Plus, more) }
        </div>
    }
}

/// Tells of the digits that are typed.
fn typing(typed: &Callback<String>) -> Callback<InputEvent> {
    let typed = typed.clone();
    Callback::from(move |event: InputEvent| {
        if let Some(text) = dom::value_of(&event) {
            typed.emit(text.chars().filter(char::is_ascii_digit).collect());
        }
    })
}

/// Asked when one fewer than one is wanted: whether the thing goes.
pub(crate) fn take_out(id: &str, take: Callback<MouseEvent>, keep: Callback<MouseEvent>) -> Html {
    html! {
        <p class="list__ask" role="alert">
            { "Take it out?" }
            <button type="button" class="tool" data-testid={format!("take-out-{id}")} onclick={take}>{ "Take it out" }</button>
            <button type="button" class="tool" data-testid={format!("keep-{id}")} onclick={keep}>{ "Keep" }</button>
        </p>
    }
}
