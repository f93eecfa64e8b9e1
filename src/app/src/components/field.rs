//! A field: what is asked, the text as typed, how it was understood, and what is wrong with it.

use reckoner_core::measure::{Tape, Unit};
use reckoner_core::sheet::{Echo, Field, Refusal, WayOut};
use yew::prelude::*;

use super::icon::{Icon, icon};
use crate::link::MOST_FIELD;
use crate::platform::dom;

/// What a typed field tells its page.
#[derive(Clone, PartialEq)]
pub(crate) struct FieldEvents {
    /// The text was changed by a keyboard.
    pub(crate) on_type: Callback<String>,
    /// The focus came in.
    pub(crate) on_enter: Callback<()>,
}

/// How a typed field stands on the page.
pub(crate) struct Place<'a> {
    /// Element id of the input.
    pub(crate) id: &'a str,
    /// Name for a voice, where there is no label.
    pub(crate) name: Option<String>,
    /// Ids of the words about it.
    pub(crate) described_by: String,
    pub(crate) is_wrong: bool,
    /// What could be written, where nothing is.
    pub(crate) example: Option<String>,
    /// Whether the system's keyboard is wanted.
    pub(crate) system_keyboard: bool,
}

/// The input of a typed field. The system's keyboard stays closed unless it is wanted.
pub(crate) fn input(place: Place, text: String, events: &FieldEvents) -> Html {
    let Place { id, name, described_by, is_wrong, example, system_keyboard } = place;
    let id = id.to_owned();
    let on_type = events.on_type.clone();
    let oninput = Callback::from(move |event: InputEvent| {
        if let Some(text) = dom::value_of(&event) {
            on_type.emit(text);
        }
    });
    // Later than the event that does not bubble, at which a browser may select by itself.
    let onfocusin = events.on_enter.reform(|_: FocusEvent| ());
    html! {
        <input class="field__input" type="text" id={id.clone()} data-testid={id}
            placeholder={example} value={text} {oninput} {onfocusin} aria-label={name}
            aria-describedby={described_by} aria-invalid={is_wrong.then_some("true")}
            inputmode={if system_keyboard { "text" } else { "none" }}
            maxlength={MOST_FIELD.to_string()}
            autocomplete="off" autocapitalize="off" spellcheck="false" enterkeyhint="next" />
    }
}

/// What a field asks, in the unit of who measures so, and whether what stands in it is an example of ours.
pub(crate) fn label(field: &Field, measures: Unit, is_ours: bool) -> Html {
    let (unit, hint) = (field.number_unit(measures), field.hint_in(measures));
    html! {
        <>
            <span class="field__name">{ field.label }</span>
            if !unit.is_empty() { <span class="field__unit">{ unit }</span> }
            if !hint.is_empty() { <span class="field__hint">{ hint }</span> }
            if is_ours { <span class="voice">{ ", our example" }</span> }
        </>
    }
}

/// The same, for an input or a list. A press on it takes the focus from nothing: the tap gives it.
pub(crate) fn label_for(id: &str, field: &Field, measures: Unit, is_ours: bool) -> Html {
    let onmousedown = Callback::from(|event: MouseEvent| event.prevent_default());
    html! { <label class="field__label" for={id.to_owned()} {onmousedown}>{ label(field, measures, is_ours) }</label> }
}

/// How the text of a field was understood.
pub(crate) fn echo(field: &str, echo: Option<&Echo>, tape: Tape) -> Html {
    let id = format!("echo-{field}");
    html! {
        <p class="field__echo" id={id.clone()} data-testid={id}>
            { echo.map(|echo| echo.sentence.on(tape)) }
        </p>
    }
}

/// What is wrong with a field: the words, the place in its text, and the way out. While another field is typed in
/// (`is_elsewhere`), it may change with each key: a voice hears it with the answer, once the keys rest.
pub(crate) fn problem(
    refusal: &Refusal,
    text: &str,
    tape: Tape,
    is_elsewhere: bool,
    on_way_out: &Callback<Vec<(&'static str, String)>>,
) -> Html {
    let field = refusal.field;
    html! {
        <div class="problem" id={format!("problem-{field}")} data-testid={format!("problem-{field}")}
            role={(!is_elsewhere).then_some("alert")}>
            { place(refusal, text) }
            <p class="problem__words">{ refusal.sentence.on(tape) }</p>
            if let Some(out) = &refusal.way_out {
                { way_out(format!("way-out-{field}"), out, tape, on_way_out) }
            }
        </div>
    }
}

/// The text with the place of the trouble marked, when there is something to mark.
fn place(refusal: &Refusal, text: &str) -> Option<Html> {
    let at = refusal.at.clone()?;
    let (before, here, after) = (text.get(..at.start)?, text.get(at.clone())?, text.get(at.end..)?);
    if text.trim().is_empty() {
        return None;
    }
    let here = if here.is_empty() { "?" } else { here };
    Some(html! {
        <p class="problem__text"><span>{ before }</span><mark>{ here }</mark><span>{ after }</span></p>
    })
}

/// The nearest thing that works: a button when one tap does it.
pub(crate) fn way_out(
    id: String,
    out: &WayOut,
    tape: Tape,
    on_way_out: &Callback<Vec<(&'static str, String)>>,
) -> Html {
    let words = out.sentence.on(tape);
    if out.set.is_empty() {
        return html! { <p class="way-out is-advice" data-testid={id}>{ words }</p> };
    }
    let set = out.texts(tape);
    let onclick = on_way_out.reform(move |_: MouseEvent| set.clone());
    html! {
        <button type="button" class="way-out" data-testid={id} {onclick}>
            { icon(Icon::Tick) }<span>{ words }</span>
        </button>
    }
}
