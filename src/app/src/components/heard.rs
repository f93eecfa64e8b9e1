//! What a voice hears of an answer: once the keys rest, not at each of them.

use reckoner_core::sheet::Entries;
use yew::prelude::*;

use crate::platform::later::Resting;
use crate::platform::speech;

/// How long after the last key a new answer is heard, in milliseconds.
const VOICE_REST: u32 = 900;

#[derive(Properties, PartialEq)]
pub(crate) struct HeardProps {
    /// Its test id.
    #[prop_or("heard")]
    pub(crate) id: &'static str,
    /// The answer in words, or what is needed for one.
    pub(crate) words: String,
    /// What is typed: a key that leaves the answer as it was is a key too.
    pub(crate) typed: Entries,
    /// Whether the answer rests on sizes of ours; `None` where there is none, or where it is not told.
    #[prop_or_default]
    pub(crate) is_on_ours: Option<bool>,
    /// Whether the page reads it aloud itself as well.
    #[prop_or_default]
    pub(crate) is_aloud: bool,
}

/// Tells a screen reader of each new answer, and once that nothing of it is an example any more. What stands there from the
/// start is not new.
#[component]
pub(crate) fn Heard(props: &HeardProps) -> Html {
    let told = use_state_eq(String::new);
    let last = use_mut_ref(|| props.words.clone());
    let is_new = use_mut_ref(|| false);
    let was_on_ours = use_mut_ref(|| props.is_on_ours.unwrap_or(false));
    let rest = use_memo((), |()| Resting::default());
    {
        let told = told.clone();
        let all = (props.words.clone(), props.typed.clone(), props.is_aloud, props.is_on_ours);
        use_effect_with(all, move |(words, _, is_aloud, is_on_ours)| {
            if last.replace(words.clone()) != *words {
                is_new.replace(true);
            }
            if *is_new.borrow() {
                let (mut words, is_aloud, is_on_ours) = (words.clone(), *is_aloud, *is_on_ours);
                rest.after(VOICE_REST, move || {
                    is_new.replace(false);
                    // The last example has become a size of one's own.
                    if is_on_ours.is_some_and(|now| was_on_ours.replace(now) && !now) {
                        words.push_str(" All sizes are yours.");
                    }
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
