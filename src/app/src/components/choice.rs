//! A choice: a few big targets, one of them pressed; of many, a list that opens.

use reckoner_core::measure::Unit;
use reckoner_core::sheet::{Choice, Field, Kind};
use yew::prelude::*;

use crate::platform::dom;

/// Most answers that stand side by side; more are a list.
const MOST_SIDE_BY_SIDE: usize = 8;

/// The answers of a field that is chosen, not typed.
pub(crate) fn choices(field: &Field) -> Option<&'static [Choice]> {
    match field.kind {
        Kind::Choice(choices) => Some(choices),
        Kind::YesNo => const { Some(&[Choice::new("no", "No"), Choice::new("yes", "Yes")]) },
        _ => None,
    }
}

/// Element id of one answer.
pub(crate) fn id(field: &str, choice: &str) -> String {
    format!("{field}-{choice}")
}

/// Whether the answers are a list that opens.
pub(crate) fn is_list(field: &Field) -> bool {
    choices(field).is_some_and(|answers| answers.len() > MOST_SIDE_BY_SIDE)
}

/// Which of the answers are made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Answers {
    All,
    /// The one that is chosen alone: for the focus, where nobody sees it, with its name for a voice.
    Chosen,
}

/// The answers of a field as a list that opens, for who measures lengths in `measures`.
pub(crate) fn list(
    field: &'static Field,
    measures: Unit,
    id: String,
    chosen: &str,
    shown: Answers,
    on_choose: &Callback<&'static str>,
) -> Html {
    let answers = choices(field).unwrap_or_default();
    let onchange = {
        let on_choose = on_choose.clone();
        Callback::from(move |event: Event| {
            let value = dom::chosen_of(&event);
            if let Some(answer) = answers.iter().find(|answer| Some(answer.id) == value.as_deref())
            {
                on_choose.emit(answer.id);
            }
        })
    };
    html! {
        <select class="choice-list" {id} {onchange} aria-label={name(field, shown)}>
            { for answers.iter().filter(|it| shown == Answers::All || it.id == chosen).map(|answer| html! {
                <option key={answer.id} value={answer.id} selected={answer.id == chosen}>{ answer.read_in(measures) }</option>
            }) }
        </select>
    }
}

/// The answers of a field side by side.
pub(crate) fn view(
    field: &'static Field,
    chosen: &str,
    shown: Answers,
    on_choose: &Callback<&'static str>,
) -> Html {
    let answers = choices(field).unwrap_or_default();
    let is_known = answers.iter().any(|answer| answer.id == chosen);
    let answer = |(place, answer): (usize, &Choice)| {
        let id = id(field.id, answer.id);
        let checked = answer.id == chosen || (!is_known && place == 0);
        let choose = on_choose.reform({
            let answer = answer.id;
            move |_: Event| answer
        });
        // The one that is chosen already changes nothing, and yet a tap on it says that it is right.
        let again = on_choose.reform({
            let answer = answer.id;
            move |_: MouseEvent| answer
        });
        (shown == Answers::All || checked).then(|| {
            html! {
                <label key={answer.id} class="choice" data-testid={id.clone()} for={id.clone()}>
                    <input type="radio" class="choice__input" {id} name={field.id} {checked}
                        onchange={choose} onclick={again} aria-label={name(field, shown)} />
                    if shown == Answers::All { <span class="choice__face">{ answer.label }</span> }
                </label>
            }
        })
    };
    html! { <div class={classes!("choices", columns(answers))}>{ for answers.iter().enumerate().filter_map(answer) }</div> }
}

/// The name of the field, where no label of it is made.
fn name(field: &Field, shown: Answers) -> Option<&'static str> {
    (shown == Answers::Chosen).then_some(field.label)
}

/// In how many columns they stand, so that all are equally wide and no row is ragged.
fn columns(answers: &[Choice]) -> &'static str {
    let longest = answers.iter().map(|answer| answer.label.chars().count()).max().unwrap_or(0);
    match (answers.len(), longest) {
        (4 | 7 | 8, 0..=6) => "in-4",
        (3, 0..=9) | (5 | 6, 0..=8) => "in-3",
        (2.., 0..=28) => "in-2",
        _ => "in-1",
    }
}
