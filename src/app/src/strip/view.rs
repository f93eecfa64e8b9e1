//! The strip on the screen: a letter, the formula as typed, and what it comes to.

use reckoner_core::measure::text::Quantity;
use reckoner_core::measure::{Length, Number, Rounding};
use reckoner_core::sheet::{Field, Kind, Line, Outcome, Strip, Value};
use yew::prelude::*;

use super::lines;
use crate::components::field::{self, Place};
use crate::components::icon::{Icon, icon};
use crate::components::measure;
use crate::form::at_hand::{AtHand, element_id, press_in_row, problem_of};
use crate::form::{Action, Slot, Way};

/// The lines of a strip, and a blank one to go on with.
pub(crate) fn view(at_hand: &AtHand, field: &'static Field) -> Html {
    let text = at_hand.text(field);
    let bench = &at_hand.settings.bench;
    let strip = Strip::read(&text, at_hand.form.unit(bench), &at_hand.names);
    let line_field = line_field(at_hand, field);
    let chosen = line_field.map(|field| at_hand.text(field)).unwrap_or_default();
    let last = strip.line("").map(|line| line.letter.clone());
    let in_use = strip.line(&chosen).map(|line| line.letter.clone());
    html! {
        <div key={field.id} class="strip" role="group" aria-label={field.label} data-testid={format!("field-{}", field.id)}>
            if !at_hand.is_typing {
                <p class="strip__title">{ field::label(field, at_hand.form.unit(bench), at_hand.is_ours(Slot::of(field.id))) }</p>
            }
            <ol class="strip__lines">
                { for lines(&text).enumerate().map(|(at, text)| {
                    let slot = Slot { field: field.id, line: Some(at) };
                    let line = strip.lines().get(at);
                    let is_used = line.is_some_and(|line| Some(&line.letter) == in_use.as_ref());
                    one(at_hand, slot, text, line, is_used, line_field, last.as_deref())
                }) }
            </ol>
            <>{ problem_of(at_hand, field) }</>
            <>{ line_field.and_then(|field| problem_of(at_hand, field)) }</>
        </div>
    }
}

/// The field that says which line is in use.
fn line_field(at_hand: &AtHand, strip: &Field) -> Option<&'static Field> {
    let mut fields = at_hand.form.calculator().fields.iter();
    fields.find(|field| matches!(field.kind, Kind::LineOf(id) if id == strip.id))
}

fn one(
    at_hand: &AtHand,
    slot: Slot,
    text: &str,
    line: Option<&Line>,
    is_used: bool,
    line_field: Option<&'static Field>,
    last_letter: Option<&str>,
) -> Html {
    let letter = Strip::letter_at(slot.line.unwrap_or(0));
    let is_editing = at_hand.form.editing() == Some(slot);
    // Of the others, while the keys are out, there is but the place for the focus.
    let is_away = at_hand.is_typing && !is_editing;
    let id = element_id(slot);
    let is_wrong =
        !is_editing && line.is_some_and(|line| matches!(line.outcome, Outcome::Problem(_)));
    let answer_id = format!("answer-{id}");
    let place = Place {
        id: &id,
        name: Some(format!("Line {letter}")),
        described_by: answer_id.clone(),
        is_wrong,
        example: last_letter.map(|letter| format!("such as {letter} ÷ 2")),
        system_keyboard: *at_hand.system_keyboard,
    };
    let onuse =
        line_field.map(|field| at_hand.doing(Action::Set(vec![(field.id, letter.clone())])));
    let is_ours = at_hand.is_ours(slot);
    let is_docked = is_editing && !*at_hand.system_keyboard;
    let use_it = || {
        html! {
            <button type="button" class="strip__letter" onclick={onuse}
                disabled={line.is_none_or(|line| line.outcome == Outcome::Blank)}
                aria-pressed={if is_used { "true" } else { "false" }}
                aria-label={format!("Use line {letter}")} data-testid={format!("use-{letter}")}>
                { &letter }
            </button>
        }
    };
    let comes_to = || {
        html! {
            <p class="strip__answer" id={answer_id.clone()} data-testid={answer_id.clone()}>
                { line.map(|line| outcome(line, at_hand, is_editing)) }
            </p>
        }
    };
    html! {
        <li key={letter.clone()} class={classes!(
            "strip__line",
            is_used.then_some("is-used"),
            is_editing.then_some("is-editing"),
            is_docked.then_some("is-docked"),
            is_away.then_some("is-away"),
            is_wrong.then_some("is-wrong"),
            is_ours.then_some("is-pencil"),
        )}>
            if !is_away { { use_it() } }
            <div class="field__row" onmousedown={Callback::from(press_in_row)}>
                if is_editing { { at_hand.step(slot, Way::Previous) } }
                { field::input(place, text.to_owned(), &at_hand.events(slot)) }
                if is_ours && !is_away { { icon(Icon::Pencil) } }
                if is_editing {
                    { at_hand.confirm(slot).unwrap_or_else(|| at_hand.clear(slot)) }
                    { at_hand.step(slot, Way::Next) }
                    { at_hand.keypad_again() }
                }
            </div>
            if !is_away { { comes_to() } }
        </li>
    }
}

/// What a line comes to; half-typed is not wrong.
fn outcome(line: &Line, at_hand: &AtHand, is_editing: bool) -> Html {
    let bench = &at_hand.settings.bench;
    match &line.outcome {
        Outcome::Blank => html! {},
        Outcome::Answer(_, quantity) => {
            let unit = at_hand.form.unit(bench);
            let value = match quantity {
                Quantity::Length(length) => Value::Length(*length, Rounding::Nearest),
                Quantity::Bare(number) => Length::of(*number, unit)
                    .map_or_else(|_| plain(*number), |it| Value::Length(it, Rounding::Nearest)),
                Quantity::Plain(number) => plain(*number),
                Quantity::Area(area) => Value::Area(*area),
            };
            html! { <>{ "= " }{ measure::value(&value, bench) }</> }
        }
        Outcome::Problem(_) if is_editing => html! { "…" },
        Outcome::Problem(problem) => html! { problem.to_string() },
    }
}

fn plain(number: Number) -> Value {
    let places = if number.is_whole() { 0 } else { 4 };
    Value::Exact(number, places, "")
}
