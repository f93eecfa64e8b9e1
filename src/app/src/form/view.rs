//! The fields of a form on the screen, with the keypad for the one being edited.
//!
//! Each field has one input for good. While it is edited on a phone, a style sheet docks it above
//! the keypad; the focus and the caret never move to another element.

use std::rc::Rc;

use reckoner_core::calculators::listed;
use reckoner_core::measure::text::{NoNames, parse};
use reckoner_core::sheet::{Field, Kind, Start, is_list};
use yew::prelude::*;

use super::at_hand::{AtHand, element_id, is_editing, press_in_row, problem_of};
use super::{Action, Slot, Way, rows, said_elsewhere};
use crate::components::choice::{self, Answers};
use crate::components::field::{self, Place};
use crate::components::heard::Heard;
use crate::components::icon::{Icon, icon};
use crate::keypad::{Keypad, SetOfKeys};
use crate::platform::dom;
use crate::settings::Hand;
use crate::strip;

/// The buttons that take a change of the form back and make it again.
pub(crate) fn undo_and_redo(at_hand: &AtHand) -> Html {
    let form = &at_hand.form;
    html! {
        <>
            <button type="button" class="bar__link" data-testid="undo" aria-label="Undo"
                disabled={!form.can_undo()} onclick={at_hand.doing(Action::Undo)}>
                { icon(Icon::Undo) }
            </button>
            <button type="button" class="bar__link" data-testid="redo" aria-label="Redo"
                disabled={!form.can_redo()} onclick={at_hand.doing(Action::Redo)}>
                { icon(Icon::Redo) }
            </button>
        </>
    }
}

/// The fields, and the keypad for the one being edited.
pub(crate) fn asks(at_hand: &AtHand) -> Html {
    asks_about("Sizes", at_hand)
}

/// The same, where a page has more than one form.
pub(crate) fn asks_about(name: &'static str, at_hand: &AtHand) -> Html {
    let onfocusout = {
        let (form, presses) = (at_hand.form.dispatcher(), at_hand.presses.clone());
        Callback::from(move |event: FocusEvent| {
            if dom::leaves(&event) {
                let form = form.clone();
                presses.after(move || form.dispatch(Action::Leave));
            }
        })
    };
    let onkeydown = {
        let at_hand = at_hand.clone();
        Callback::from(move |event: KeyboardEvent| {
            let Some(slot) = at_hand.form.editing() else { return };
            match event.key().as_str() {
                "Enter" => {
                    event.prevent_default();
                    let way = if event.shift_key() { Way::Previous } else { Way::Next };
                    at_hand.walk(slot, way);
                }
                "Escape" => at_hand.close(),
                _ => {}
            }
        })
    };
    let onsubmit = Callback::from(|event: SubmitEvent| event.prevent_default());
    html! {
        <form class="asks" aria-label={name} {onfocusout} {onkeydown} {onsubmit}>
            // By key, so that the input being typed in stays the same element when others come.
            { for at_hand.fields().filter(|it| has_place(it)).map(|it| one(at_hand, it)) }
            { keypad(at_hand) }
            { heard_elsewhere(at_hand) }
        </form>
    }
}

/// What a voice hears of other fields than the one typed in; on the page of a calculator it is heard with the answer.
fn heard_elsewhere(at_hand: &AtHand) -> Option<Html> {
    if is_calculator(at_hand) {
        return None;
    }
    let words = said_elsewhere(&at_hand.form, &at_hand.sheet, at_hand.settings.bench.tape);
    let typed = at_hand.form.entries().clone();
    Some(html! { <Heard key="heard elsewhere" id="heard-elsewhere" {words} {typed} /> })
}

fn keypad(at_hand: &AtHand) -> Option<Html> {
    let slot = at_hand.form.editing().filter(|_| !*at_hand.system_keyboard)?;
    let field = at_hand.field(slot.field)?;
    let set = SetOfKeys::of(field.kind)?;
    let strip_line = slot.line.filter(|_| matches!(field.kind, Kind::Strip));
    let letters = strip_line.map_or_else(Vec::new, |line| {
        let text = at_hand.text(field);
        strip::letters_above(&text, line)
    });
    let names = match field.start {
        Start::Reading => Rc::default(),
        _ => at_hand.names.list.clone(),
    };
    let on_event = at_hand.keys.clone();
    Some(html! {
        <Keypad key="the keypad" {set} tape={at_hand.settings.bench.tape} is_left_handed={at_hand.settings.hand == Hand::Left}
            is_last={at_hand.is_end(slot, Way::Next)} {letters} {names} {on_event} />
    })
}

/// Whether a field stands by itself; the line in use is chosen in its strip.
fn has_place(field: &Field) -> bool {
    !matches!(field.kind, Kind::LineOf(_))
}

/// Longest name that stands on one line of a chip on a phone, and on two, in characters.
const ON_A_LINE: usize = 12;
const ON_TWO_LINES: usize = 24;

/// Whether the form is of a calculator, whose sizes are chips on a phone.
fn is_calculator(at_hand: &AtHand) -> bool {
    listed(at_hand.form.calculator().slug).is_some()
}

/// One field, of any kind.
fn one(at_hand: &AtHand, field: &'static Field) -> Html {
    match field.kind {
        Kind::Strip => strip::view(at_hand, field),
        kind if is_list(kind) => rows::view(at_hand, field),
        _ if choice::choices(field).is_some() => chosen(at_hand, field),
        _ => typed(at_hand, field),
    }
}

fn typed(at_hand: &AtHand, field: &'static Field) -> Html {
    let measures = at_hand.form.unit(&at_hand.settings.bench);
    let slot = Slot::of(field.id);
    let is_editing = is_editing(at_hand, slot);
    let is_ours = at_hand.is_ours(slot);
    let is_words = matches!(field.kind, Kind::Words(_));
    let id = element_id(slot);
    // Of the others, while the keys are out, there is but the place for the focus.
    let is_away = at_hand.is_typing && !is_editing;
    let problem = problem_of(at_hand, field).filter(|_| !is_away);
    let place = Place {
        id: &id,
        name: is_away.then(|| field.label.to_owned()),
        described_by: format!("echo-{0} problem-{0}", field.id),
        is_wrong: problem.is_some(),
        example: None,
        system_keyboard: *at_hand.system_keyboard || is_words,
    };
    let text = at_hand.text(field);
    let is_empty = text.trim().is_empty();
    let is_formula = !is_away && parse(&text, &NoNames).is_ok_and(|formula| !formula.is_single());
    let input = field::input(place, text, &at_hand.events(slot));
    let echo = at_hand.sheet.echoes.iter().find(|echo| echo.field == field.id);
    let is_in_job = at_hand.form.calculator().slug.is_empty();
    let is_long = match field.kind {
        Kind::Words(_) => true,
        // In a job a size may be a formula over names.
        Kind::Length(_) | Kind::OptionalLength(_) => is_in_job,
        _ => false,
    };
    let counts = is_in_job && matches!(field.kind, Kind::Count { .. });
    let list = at_hand.manner.list.as_ref().filter(|(id, _)| *id == field.id);
    html! {
        <div key={field.id} class={classes!(
            "field",
            is_long.then_some("is-long"),
            (!is_long && !is_words && is_calculator(at_hand)).then_some("is-chip"),
            (field.label.chars().count() > ON_A_LINE).then_some("is-long-name"),
            (field.label.chars().count() > ON_TWO_LINES).then_some("is-longest-name"),
            is_empty.then_some("is-empty"),
            is_formula.then_some("is-formula"),
            list.is_some().then_some("has-list"),
            is_editing.then_some("is-editing"),
            (is_editing && !*at_hand.system_keyboard && !is_words).then_some("is-docked"),
            is_away.then_some("is-away"),
            problem.is_some().then_some("is-wrong"),
            is_ours.then_some("is-pencil"),
        )}>
            if !is_away { { field::label_for(&id, field, measures, is_ours) } }
            if let Some((_, list)) = list { { list.clone() } }
            <div class="field__row" onmousedown={Callback::from(press_in_row)}>
                if is_editing { { at_hand.step(slot, Way::Previous) } }
                if counts && !is_editing { { at_hand.count(field, false) } }
                { input }
                if counts && !is_editing { { at_hand.count(field, true) } }
                if is_ours && !is_away { { icon(Icon::Pencil) } }
                if is_editing {
                    { at_hand.confirm(slot).unwrap_or_else(|| at_hand.clear(slot)) }
                    { at_hand.step(slot, Way::Next) }
                    { at_hand.keypad_again() }
                }
            </div>
            if !is_away { { field::echo(field.id, echo, at_hand.settings.bench.tape) } }
            <>{ problem }</>
        </div>
    }
}

/// A field that is chosen, in a panel of its own while the user walks through the fields.
fn chosen(at_hand: &AtHand, field: &'static Field) -> Html {
    let measures = at_hand.form.unit(&at_hand.settings.bench);
    let slot = Slot::of(field.id);
    let is_editing = is_editing(at_hand, slot);
    let is_ours = at_hand.is_ours(slot);
    let is_list = choice::is_list(field);
    let id = element_id(slot);
    let form = at_hand.form.clone();
    let on_choose = Callback::from(move |answer: &'static str| {
        // Whoever chooses here has left the field that was being written in.
        if form.editing().is_some_and(|it| it.field != field.id) {
            form.dispatch(Action::Leave);
        }
        form.dispatch(Action::Set(vec![(field.id, answer.to_owned())]));
    });
    let steps = is_editing.then(|| {
        let at_hand = at_hand.clone();
        let close = Callback::from(move |_: MouseEvent| at_hand.close());
        html! {
            <button type="button" tabindex="-1" class="step" aria-label="Close"
                data-testid="key-close" onclick={close}>{ icon(Icon::Down) }</button>
        }
    });
    let text = at_hand.text(field);
    // Of the others, while the keys are out, there is but the place for the focus.
    let is_away = at_hand.is_typing && !is_editing;
    let shown = if is_away { Answers::Chosen } else { Answers::All };
    let asked = if is_list {
        html! {
            <>
                if !is_away { { field::label_for(&id, field, measures, is_ours) } }
                <div class="choice-row">
                    { choice::list(field, measures, id.clone(), &text, shown, &on_choose) }
                    { at_hand.confirm(slot).filter(|_| !is_away) }
                </div>
            </>
        }
    } else {
        let legend = || html! { <legend class="field__label">{ field::label(field, measures, is_ours) }</legend> };
        html! {
            <>
                if !is_away { { legend() } }
                { choice::view(field, &text, shown, &on_choose) }
            </>
        }
    };
    html! {
        <@{if is_list { "div" } else { "fieldset" }} key={field.id} data-testid={id} class={classes!(
            "field", "field--choice",
            is_away.then_some("is-away"),
            is_editing.then_some("is-editing"),
            is_editing.then_some("is-docked"),
            is_editing.then_some("is-panel"),
            is_ours.then_some("is-pencil"),
        )}>
            { asked }
            if let Some(close) = steps {
                <div class="field__steps" onmousedown={Callback::from(press_in_row)}>
                    { at_hand.step(slot, Way::Previous) }
                    { close }
                    { at_hand.step(slot, Way::Next) }
                </div>
            }
            <>{ problem_of(at_hand, field).filter(|_| !is_away) }</>
        </@>
    }
}
