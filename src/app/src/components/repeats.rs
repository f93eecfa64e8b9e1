//! A button that goes on while it is held down: one fewer, one more, take away.

use std::cell::Cell;
use std::rc::Rc;

use yew::prelude::*;

use crate::platform::dom::{self, LetGo};
use crate::platform::later::{Held, held};

#[derive(Properties, PartialEq)]
pub(crate) struct RepeatsProps {
    pub(crate) class: Classes,
    /// Its name for a voice.
    pub(crate) name: Option<String>,
    pub(crate) testid: String,
    #[prop_or_default]
    pub(crate) is_disabled: bool,
    /// Whether the next tap is another matter, which nobody comes to by holding.
    #[prop_or_default]
    pub(crate) is_one_by_one: bool,
    /// Whether the way from field to field goes past it.
    #[prop_or_default]
    pub(crate) is_passed: bool,
    pub(crate) onclick: Callback<MouseEvent>,
    pub(crate) children: Html,
}

/// A button; held, it is tapped again and again, and each of these taps finds what stands by then.
#[component]
pub(crate) fn Repeats(props: &RepeatsProps) -> Html {
    let holding = use_mut_ref(|| None::<(Held, LetGo)>);
    // The browser makes a tap of letting go, which is one too many.
    let is_spent = use_memo((), |()| Cell::new(false));
    let ends = props.is_disabled || props.is_one_by_one;
    if ends && let Some((it, _)) = holding.borrow_mut().take() {
        is_spent.set(it.has_repeated());
    }
    let onpointerdown = {
        let (holding, is_spent) = (holding.clone(), is_spent.clone());
        Callback::from(move |event: PointerEvent| {
            is_spent.set(false);
            let button = dom::button_of(&event).filter(|_| !ends);
            let let_go = {
                // A button that goes while it is held is let go with it.
                let (holding, is_spent) = (Rc::downgrade(&holding), is_spent.clone());
                move || {
                    let held = holding.upgrade().and_then(|it| it.borrow_mut().take());
                    if let Some((it, _)) = held {
                        is_spent.set(it.has_repeated());
                    }
                }
            };
            *holding.borrow_mut() = button.map(|button| {
                let ending = dom::on_let_go(&button, let_go);
                (held(move || button.click()), ending)
            });
        })
    };
    let onclick = {
        let tapped = props.onclick.clone();
        Callback::from(move |event: MouseEvent| {
            if !(event.is_trusted() && take(&is_spent)) {
                tapped.emit(event);
            }
        })
    };
    html! {
        <button type="button" class={props.class.clone()} tabindex={props.is_passed.then_some("-1")}
            aria-label={props.name.clone()} data-testid={props.testid.clone()} disabled={props.is_disabled} {onclick}
            {onpointerdown}>
            { props.children.clone() }
        </button>
    }
}

fn take(it: &Rc<Cell<bool>>) -> bool {
    it.replace(false)
}
