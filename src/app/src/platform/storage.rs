//! What is kept on the device, under names that begin with `reckoner.`.

use gloo::events::EventListener;
use gloo::utils::window;
use wasm_bindgen::JsCast;
use web_sys::StorageEvent;

use super::notes;

/// The settings.
pub(crate) const SETTINGS: &str = "settings";
/// Slugs of the calculators used last.
pub(crate) const RECENT: &str = "recent";

/// The job that was opened last.
pub(crate) const NEWEST: &str = "newest";

/// A text that was pasted and is not on the shelf.
pub(crate) const PASTED: &str = "pasted";

/// The plan that was taken of the quick list.
pub(crate) const TAKEN: &str = "taken-plan";

/// Codes of a job that came in and is not on the shelf.
pub(crate) const CODES: &str = "codes";

/// The name of the title that a calculator is to be kept under.
pub(crate) fn title_of(slug: &str) -> String {
    format!("title.{slug}")
}

/// The name of the last entries of a calculator.
pub(crate) fn last_of(slug: &str) -> String {
    format!("last.{slug}")
}

/// The name of the fragment that those were typed over, and by which window; of a window's own, the fragment and what was
/// typed over it.
pub(crate) fn over_of(slug: &str) -> String {
    format!("over.{slug}")
}

/// The name of the dangers of a question that were read.
pub(crate) fn read_cautions(question: &str) -> String {
    format!("read.{question}")
}

/// The name of the last answer of a calculator.
pub(crate) fn last_answer(slug: &str) -> String {
    format!("answer.{slug}")
}

/// The name of the field of a calculator that was used last.
pub(crate) fn last_field(slug: &str) -> String {
    format!("field.{slug}")
}

/// The name of what is noted of a job and its file.
pub(crate) fn saved(job: &str) -> String {
    format!("saved.{job}")
}

/// The name of the places that were tapped for pieces of a job.
pub(crate) fn stands(job: &str) -> String {
    format!("stands.{job}")
}

/// What is kept under a name.
pub(crate) fn get(name: &str) -> Option<String> {
    notes::kept(name)
}

/// Whether the browser keeps anything at all for this page.
pub(crate) fn is_there() -> bool {
    window().local_storage().is_ok_and(|local| local.is_some())
}

/// Keeps a text, in the very event that made it. What neither storage takes is told (`notes::not_kept`).
pub(crate) fn set(name: &str, text: &str) {
    notes::keep(name, text);
}

/// What this window keeps for itself alone under a name: it outlives the page that is loaded again, and a window that was
/// made as a copy of another begins with its.
pub(crate) fn own(name: &str) -> Option<String> {
    window().session_storage().ok()??.get_item(&notes::named(name)).ok()?
}

/// Keeps a text for this window alone. Where it finds no room nothing is kept, and no older text either.
pub(crate) fn set_own(name: &str, text: &str) {
    let Ok(Some(own)) = window().session_storage() else { return };
    let name = notes::named(name);
    if own.set_item(&name, text).is_err() {
        drop(own.remove_item(&name));
    }
}

/// Keeps nothing under a name any more.
pub(crate) fn remove(name: &str) {
    notes::let_go(name);
}

/// Calls back when another window has kept a text under a name, until the listener is dropped.
pub(crate) fn on_set_elsewhere(name: &'static str, call: impl Fn() + 'static) -> EventListener {
    EventListener::new(&window(), "storage", move |event| {
        let is_set = |event: &StorageEvent| {
            event.key().is_some_and(|key| key == notes::named(name)) && event.new_value().is_some()
        };
        if event.dyn_ref().is_some_and(is_set) {
            call();
        }
    })
}
