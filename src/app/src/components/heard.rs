//! What a voice hears of an answer: once the keys rest, not at each of them.

use yew::prelude::*;

use crate::platform::later::Resting;
use crate::platform::speech;

/// How long after the last change a new answer is heard, in milliseconds.
const VOICE_REST: u32 = 900;

#[derive(Properties, PartialEq)]
pub(crate) struct HeardProps {
    /// Its test id.
    #[prop_or("heard")]
    pub(crate) id: &'static str,
    /// The answer in words, or what is needed for one.
    pub(crate) words: String,
    /// Whether the page reads it aloud itself as well.
    #[prop_or_default]
    pub(crate) is_aloud: bool,
}

/// Tells a screen reader of each new answer. What stands there from the start is not new.
#[component]
pub(crate) fn Heard(props: &HeardProps) -> Html {
    let told = use_state_eq(String::new);
    let is_first = use_mut_ref(|| true);
    let rest = use_memo((), |()| Resting::default());
    {
        let told = told.clone();
        use_effect_with((props.words.clone(), props.is_aloud), move |(words, is_aloud)| {
            let is_new = !core::mem::replace(&mut *is_first.borrow_mut(), false);
            let (words, is_aloud) = (words.clone(), *is_aloud);
            if is_new {
                rest.after(VOICE_REST, move || {
                    if is_aloud {
                        speech::say(&words);
                    }
                    told.set(words);
                });
            }
            move || rest.call_off()
        });
    }
    html! { <p class="voice" role="status" data-testid={props.id}>{ &*told }</p> }
}
