//! A list on the screen: a row for each of its entries, with its name, its size and how many; the text behind them.

use reckoner_core::sheet::{
    Field, Kind, ListRow, RowPlace, Sentence, is_counted, is_named, list_rows, places,
    with_new_row, with_row, without_row,
};
use yew::prelude::*;

use super::at_hand::{AtHand, element_id, is_editing, press_in_row, problem_of};
use super::{Action, Slot, Way};
use crate::components::field::{self, Place};
use crate::components::icon::{Icon, icon};
use crate::components::stepper::{ENOUGH, Stepper, take_out};
use crate::platform::dom;

/// The rows of a list, what adds one, and the way to its text.
pub(super) fn view(at_hand: &AtHand, field: &'static Field) -> Html {
    let text = at_hand.text(field);
    let is_ours = at_hand.is_ours(Slot::of(field.id));
    let measures = at_hand.form.unit(&at_hand.settings.bench);
    let is_text = at_hand.is_as_text(field);
    let rows = list_rows(&text, field.kind);
    let tape = at_hand.settings.bench.tape;
    // Rows say themselves what they are, unless they come to something else than is written in them.
    let says_more = |echo: &Sentence| is_text || !is_alike(&echo.on(tape), &text);
    let echoes = &at_hand.sheet.echoes;
    let echo = echoes.iter().find(|echo| echo.field == field.id && says_more(&echo.sentence));
    let as_text = {
        let handle = at_hand.as_text.clone();
        let next = (!is_text).then_some(field.id);
        Callback::from(move |_: MouseEvent| handle.set(next))
    };
    html! {
        <div key={field.id} class={classes!("list", is_ours.then_some("is-pencil"))} role="group"
            aria-label={field.label} data-testid={format!("list-{}", field.id)}>
            if !at_hand.is_typing {
                <p class="list__title">
                    if is_ours { { icon(Icon::Pencil) } }
                    { field::label(field, measures, is_ours) }
                </p>
            }
            if is_text {
                { whole(at_hand, field, text) }
            } else {
                <ul class="list__rows">
                    { for rows.iter().enumerate().map(|(at, row)| one(at_hand, field, at, row)) }
                </ul>
            }
            if !at_hand.is_typing {
                <div class="adds">
                    if !is_text {
                        <button type="button" class="tool" data-testid={format!("add-{}", field.id)}
                            onclick={setting(at_hand, field, with_new_row)}>{ "Add" }</button>
                    }
                    <button type="button" class="tool" data-testid={format!("as-text-{}", field.id)}
                        aria-pressed={if is_text { "true" } else { "false" }} onclick={as_text}>{ "As text" }</button>
                </div>
                { field::echo(field.id, echo, tape) }
            }
            <>{ problem_of(at_hand, field) }</>
        </div>
    }
}

/// Whether a list in words is the text that it was read from, units aside.
fn is_alike(words: &str, text: &str) -> bool {
    let entry = |it: &str| {
        let words = it.split_whitespace().filter(|word| !matches!(*word, "in" | "mm"));
        words.collect::<Vec<_>>().join(" ")
    };
    let entries = |it: &str| {
        let all = it.split([',', '\n']).map(entry);
        all.filter(|it| !it.is_empty()).collect::<Vec<_>>()
    };
    entries(words) == entries(text)
}

/// A tap that writes the list anew.
fn setting(
    at_hand: &AtHand,
    field: &'static Field,
    change: impl Fn(&str, Kind) -> String + 'static,
) -> Callback<MouseEvent> {
    let at_hand = at_hand.clone();
    Callback::from(move |_| {
        at_hand.asking.set(None);
        // The list as it is at the tap: the one before may not be drawn yet.
        let text = change(&at_hand.text(field), field.kind);
        at_hand.form.dispatch(Action::Set(vec![(field.id, text)]));
    })
}

/// What is typed with the system's keyboard into a part of the list.
fn typing(
    at_hand: &AtHand,
    field: &'static Field,
    written: impl Fn(&str, Kind, String) -> String + 'static,
) -> Callback<InputEvent> {
    let write = writing(at_hand, field, written);
    Callback::from(move |event: InputEvent| {
        if let Some(typed) = dom::value_of(&event) {
            write.emit(typed);
        }
    })
}

/// Takes the new text of a part of the list.
fn writing(
    at_hand: &AtHand,
    field: &'static Field,
    written: impl Fn(&str, Kind, String) -> String + 'static,
) -> Callback<String> {
    let at_hand = at_hand.clone();
    Callback::from(move |typed: String| {
        let text = written(&at_hand.text(field), field.kind, typed);
        at_hand.form.dispatch(Action::Type(Slot::of(field.id), text));
    })
}

/// The list as the text that it is kept as; rows of a spreadsheet can be pasted here.
fn whole(at_hand: &AtHand, field: &'static Field, text: String) -> Html {
    let form = at_hand.form.dispatcher();
    // Whatever was being edited is left: Enter is of this text now, and not the way to the field after that one.
    let onfocusin = {
        let form = form.clone();
        Callback::from(move |_: FocusEvent| form.dispatch(Action::Leave))
    };
    // Whoever leaves it is told what cannot be read, and that moves nothing away under the press that left it.
    let onfocusout = {
        let presses = at_hand.presses.clone();
        Callback::from(move |_: FocusEvent| {
            let form = form.clone();
            presses.after(move || form.dispatch(Action::Left(field.id)));
        })
    };
    let as_text = at_hand.as_text.clone();
    let typed = typing(at_hand, field, |_, _, typed| typed);
    let oninput = Callback::from(move |event: InputEvent| {
        // It stays under the fingers, though its columns may have names by now.
        as_text.set(Some(field.id));
        typed.emit(event);
    });
    html! {
        <textarea class="list__text" rows="5" data-testid={element_id(Slot::of(field.id))} aria-label={field.label}
            spellcheck="false" autocapitalize="off" value={text} {onfocusin}
            {onfocusout} {oninput} />
    }
}

/// A place of a row to write a size in.
fn size(at_hand: &AtHand, field: &'static Field, at: usize, place: RowPlace) -> Html {
    let slot = Slot { field: field.id, line: Some(place.line) };
    let is_now = is_editing(at_hand, slot);
    let id = element_id(slot);
    let name = format!("{}, row {}", place.title, at.saturating_add(1));
    let wanted = Place {
        id: &id,
        name: Some(name),
        described_by: format!("echo-{}", field.id),
        is_wrong: false,
        example: Some(place.title.to_lowercase()),
        system_keyboard: *at_hand.system_keyboard,
    };
    let is_docked = is_now && !*at_hand.system_keyboard;
    let is_away = at_hand.is_typing && !is_now;
    // With the keys out the list and its name are not seen.
    let label = is_docked.then(|| html! {
        <span class="field__label" aria-hidden="true">
            <span class="field__name">{ field.label }</span>
            <span class="field__hint">{ format!("row {}, {}", at.saturating_add(1), place.title.to_lowercase()) }</span>
        </span>
    });
    html! {
        <div key={place.line} class={classes!("field", "is-long", is_now.then_some("is-editing"), is_docked.then_some("is-docked"),
            is_away.then_some("is-away"))}>
            { label }
            <div class="field__row" onmousedown={Callback::from(press_in_row)}>
                if is_now { { at_hand.step(slot, Way::Previous) } }
                { field::input(wanted, place.text, &at_hand.events(slot)) }
                if is_now {
                    { at_hand.confirm(slot).unwrap_or_else(|| at_hand.clear(slot)) }
                    { at_hand.step(slot, Way::Next) }
                    { at_hand.keypad_again() }
                }
            </div>
        </div>
    }
}

fn one(at_hand: &AtHand, field: &'static Field, at: usize, row: &ListRow) -> Html {
    let sizes = places(row, field.kind, at);
    let is_now = sizes
        .iter()
        .any(|place| is_editing(at_hand, Slot { field: field.id, line: Some(place.line) }));
    let is_away = at_hand.is_typing && !is_now;
    let plain = |part: &'static str,
                 value: &str,
                 words: &'static str,
                 oninput: Callback<InputEvent>| {
        html! {
            <input class={format!("list__{part}")} type="text" data-testid={format!("{part}-{}-{at}", field.id)}
                aria-label={format!("{words}, row {}", at.saturating_add(1))} placeholder={words} value={value.to_owned()} {oninput}
                autocomplete="off" spellcheck="false" maxlength="60"
                inputmode={if part == "price" { "decimal" } else { "text" }} />
        }
    };
    html! {
        <li key={at} class={classes!("list__row", (!is_counted(field.kind)).then_some("is-zone"), is_away.then_some("is-away"), is_now.then_some("is-editing"))}>
            if is_named(field.kind) && !at_hand.is_typing {
                { plain("name", &row.name, "name", typing(at_hand, field, move |text, kind, typed| {
                    with_row(text, kind, at, |row| row.name = typed)
                })) }
            }
            { for sizes.into_iter().map(|place| size(at_hand, field, at, place)) }
            if matches!(field.kind, Kind::Prices) && !at_hand.is_typing {
                { plain("price", &row.price, "price", typing(at_hand, field, move |text, kind, typed| {
                    with_row(text, kind, at, |row| row.price = typed)
                })) }
            }
            if !at_hand.is_typing { { count(at_hand, field, at, row) } }
        </li>
    }
}

/// How many, with one fewer and one more; one fewer than one asks whether the row goes.
/// What has no count has a button that asks so.
fn count(at_hand: &AtHand, field: &'static Field, at: usize, row: &ListRow) -> Html {
    let slot = Slot { field: field.id, line: Some(at) };
    let id = format!("{}-{at}", field.id);
    if *at_hand.asking == Some(slot) {
        let asking = at_hand.asking.clone();
        let keep = Callback::from(move |_: MouseEvent| asking.set(None));
        let take = setting(at_hand, field, move |text, kind| without_row(text, kind, at));
        return take_out(&id, take, keep);
    }
    let asking = at_hand.asking.clone();
    let ask = Callback::from(move |_: MouseEvent| asking.set(Some(slot)));
    let name = format!("row {}", at.saturating_add(1));
    if !is_counted(field.kind) {
        return html! {
            <button type="button" class="count" aria-label={format!("Take out: {name}")}
                data-testid={format!("fewer-{id}")} onclick={ask}>{ icon(Icon::Minus) }</button>
        };
    }
    let now = row.counted(field.kind);
    // Of a board that is sold without end there is no number to take one from.
    let fewer = match now {
        Some(now) if now > 1 => setting(at_hand, field, move |text, kind| {
            with_row(text, kind, at, |row| row.one_fewer(kind))
        }),
        _ => ask,
    };
    let more = setting(at_hand, field, move |text, kind| {
        with_row(text, kind, at, |row| row.one_more(kind))
    });
    let meant = match now {
        _ if row.is_endless(field.kind) => ENOUGH.to_owned(),
        now => now.map_or_else(String::new, |now| now.to_string()),
    };
    let typed = writing(at_hand, field, move |text, kind, typed| {
        with_row(text, kind, at, |row| row.count = typed)
    });
    html! {
        <Stepper {id} {name} count={row.count.clone()} {meant} fewer={fewer} more={now.map(|_| more)} {typed} />
    }
}
