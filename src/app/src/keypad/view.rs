//! The keypad on the screen. A tap on it never takes the focus from the field.

use std::rc::Rc;

use reckoner_core::measure::Tape;
use yew::prelude::*;

use super::{Key, Page, SetOfKeys, keys, pages};
use crate::components::icon::{Icon, icon};
use crate::components::measure::stacked;
use crate::components::repeats::Repeats;

/// What the keypad tells its page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum KeypadEvent {
    /// A key that writes or takes away.
    Press(Key),
    /// A letter of the strip.
    Letter(String),
    /// To the next field, or away after the last.
    Next,
    /// Away.
    Close,
    /// The system's keyboard is wanted.
    Keyboard,
}

#[derive(Properties, PartialEq)]
pub(crate) struct KeypadProps {
    pub(crate) set: SetOfKeys,
    pub(crate) tape: Tape,
    pub(crate) is_left_handed: bool,
    /// No field comes after this one.
    pub(crate) is_last: bool,
    /// Letters of the lines that may be used, in a strip.
    pub(crate) letters: Vec<String>,
    /// Names that may be used.
    pub(crate) names: Rc<Vec<String>>,
    pub(crate) on_event: Callback<KeypadEvent>,
}

/// Keeps the focus where it is: both events, since browsers differ in which one moves it.
fn stay(event: &Event) {
    event.prevent_default();
}

/// Names that stand above the keypad at first, and by how many times more each time.
const MANY_NAMES: usize = 48;
const TIMES_MORE: usize = 4;

/// The keypad of a typed field.
#[component]
pub(crate) fn Keypad(props: &KeypadProps) -> Html {
    let KeypadProps { set, tape, is_left_handed, is_last, letters, names, on_event } = props;
    let page = use_state_eq(|| Page::Digits);
    let shown_names = use_state_eq(|| MANY_NAMES);
    let more_names = {
        let shown_names = shown_names.clone();
        Callback::from(move |_: MouseEvent| {
            shown_names.set(shown_names.saturating_mul(TIMES_MORE));
        })
    };
    let tabs = pages(*set, *tape);
    let shown = if tabs.iter().any(|tab| tab.id() == page.id()) { *page } else { Page::Digits };

    let tab = |tab: Page| {
        let page = page.clone();
        let onclick = Callback::from(move |_: MouseEvent| page.set(shown.after(tab)));
        let is_open = shown.id() == tab.id();
        html! {
            <button type="button" tabindex="-1" class="tab" {onclick}
                aria-pressed={if is_open { "true" } else { "false" }} aria-label={tab_name(tab)}
                data-testid={format!("key-page-{}", tab.id())}>
                { tab_face(tab, shown) }
            </button>
        }
    };
    let send = |event: KeypadEvent| on_event.reform(move |_: MouseEvent| event.clone());
    let press = |key: Key| {
        let (page, on_event) = (page.clone(), on_event.clone());
        Callback::from(move |_: MouseEvent| {
            page.set(shown.after_key(key));
            on_event.emit(if key == Key::Next {
                KeypadEvent::Next
            } else {
                KeypadEvent::Press(key)
            });
        })
    };
    html! {
        <section class="keypad" aria-label="Keypad" data-testid="keypad"
            onpointerdown={Callback::from(|event: PointerEvent| stay(&event))}
            onmousedown={Callback::from(|event: MouseEvent| stay(&event))}>
            if !names.is_empty() || !letters.is_empty() {
                <div class="keypad__names">
                    { for letters.iter().map(|letter| html! {
                        <button type="button" tabindex="-1" class="tab tab--letter"
                            data-testid={format!("key-{letter}")}
                            onclick={send(KeypadEvent::Letter(letter.clone()))}>
                            <span class="voice">{ "line " }</span>{ letter }
                        </button>
                    }) }
                    { for names.iter().take(*shown_names).map(|name| html! {
                        <button type="button" tabindex="-1" class="tab tab--letter"
                            data-testid={format!("name-{name}")}
                            onclick={send(KeypadEvent::Letter(name.clone()))}>{ name }</button>
                    }) }
                    if names.len() > *shown_names {
                        <button type="button" tabindex="-1" class="tab tab--letter" data-testid="more-names"
                            onclick={more_names}>{ "more names" }</button>
                    }
                </div>
            }
            <div class="keypad__tabs">
                if tabs.len() > 1 {
                    { for tabs.iter().map(|it| tab(*it)) }
                }
                <button type="button" tabindex="-1" class="tab" data-testid="key-keyboard"
                    aria-label="Use the phone's keyboard" onclick={send(KeypadEvent::Keyboard)}>
                    { icon(Icon::Keyboard) }
                </button>
                <button type="button" tabindex="-1" class="tab" data-testid="key-close"
                    aria-label="Close the keypad" onclick={send(KeypadEvent::Close)}>
                    { icon(Icon::Down) }
                </button>
            </div>
            <div class={classes!("keypad__keys", shown.is_fractions().then_some("is-fractions"))}>
                { for keys(shown, *set, *tape, *is_left_handed).iter().flatten().map(|key| {
                    let class = classes!("key", kind(*key));
                    let (testid, name) = (format!("key-{}", key.id()), name(*key, *is_last));
                    let face = said(*key, face(*key, *is_last));
                    match key {
                        Key::Backspace => html! {
                            <Repeats is_passed=true {class} {name} {testid} onclick={press(*key)}>{ face }</Repeats>
                        },
                        _ => html! {
                            <button type="button" tabindex="-1" {class} data-testid={testid} onclick={press(*key)}
                                aria-label={name}>{ face }</button>
                        },
                    }
                }) }
            </div>
        </section>
    }
}

/// The face of a key; of a fraction with the words for a voice beside it, since its own are not read well.
fn said(key: Key, face: Html) -> Html {
    match key {
        Key::Fraction(above, below) => html! {
            <>
                <span aria-hidden="true">{ face }</span>
                <span class="voice">{ format!("{above} over {below}") }</span>
            </>
        },
        _ => face,
    }
}

/// For a voice: what is written on the tab, so that it can be called by that, and what it means.
fn tab_name(page: Page) -> &'static str {
    match page {
        Page::Digits => "123, digits",
        Page::Sixteenths => "/16, fractions to the sixteenth",
        Page::ThirtySeconds => "/32, thirty-seconds",
        Page::SixtyFourths | Page::UpperSixtyFourths => "/64, sixty-fourths",
        Page::Signs => "× ( in, signs and units",
    }
}

fn tab_face(tab: Page, shown: Page) -> Html {
    match tab {
        Page::Digits => html! { "123" },
        Page::Signs => html! { <span class="tab__signs">{ "× ( in" }</span> },
        Page::SixtyFourths if shown == Page::UpperSixtyFourths => html! { "64↑" },
        _ => html! { <span class="tab__part">{ format!("/{}", tab.id()) }</span> },
    }
}

/// Class of a key; a fraction's tick is as long as its line on the tape.
fn kind(key: Key) -> &'static str {
    match key {
        Key::Digit(_) => "key--digit",
        Key::Sign(..) | Key::Mark(..) | Key::Word(_) => "key--sign",
        Key::Fraction(_, 2) => "key--tick-2",
        Key::Fraction(_, 4) => "key--tick-4",
        Key::Fraction(_, 8) => "key--tick-8",
        Key::Fraction(_, 16) => "key--tick-16",
        Key::Fraction(..) => "key--tick-32",
        Key::Backspace => "key--backspace",
        Key::Next => "key--next",
    }
}

fn face(key: Key, is_last: bool) -> Html {
    match key {
        Key::Digit(text) | Key::Word(text) => text.into(),
        Key::Sign(_, "-") => "−".into(),
        Key::Sign(_, sign) => sign.into(),
        Key::Mark("space", _) => html! { <span class="key__word">{ "space" }</span> },
        Key::Mark(_, mark) => mark.trim().into(),
        Key::Fraction(above, below) => stacked(above.to_string(), below.to_string()),
        Key::Backspace => icon(Icon::Backspace),
        Key::Next if is_last => html! { <span class="key__word">{ "Done" }</span> },
        Key::Next => html! { <span class="key__word">{ "Next" }</span> },
    }
}

/// The words for a key whose face is not read well.
fn name(key: Key, is_last: bool) -> Option<String> {
    let words = match key {
        Key::Digit(".") => "point",
        Key::Digit(_) | Key::Word(_) => return None,
        Key::Sign(id, _) | Key::Mark(id, _) => match id {
            "open" => "open bracket",
            "close" => "close bracket",
            id => id,
        },
        Key::Fraction(..) => return None,
        Key::Backspace => "take away",
        Key::Next if is_last => return None,
        Key::Next => "next field",
    };
    Some(words.to_owned())
}
