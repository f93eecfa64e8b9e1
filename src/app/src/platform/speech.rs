//! Reading aloud, where the device can.

use gloo::utils::window;
use js_sys::Reflect;
use web_sys::SpeechSynthesisUtterance;

/// Whether the device has a voice.
pub(crate) fn is_possible() -> bool {
    let has = |name: &str| Reflect::has(&window(), &name.into()).unwrap_or(false);
    has("speechSynthesis") && has("SpeechSynthesisUtterance")
}

/// Says something, in place of whatever is being said.
pub(crate) fn say(words: &str) {
    if !is_possible() {
        return;
    }
    if let (Ok(voice), Ok(utterance)) =
        (window().speech_synthesis(), SpeechSynthesisUtterance::new_with_text(words))
    {
        utterance.set_lang("en-US");
        voice.cancel();
        voice.speak(&utterance);
    }
}
