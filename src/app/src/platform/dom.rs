//! Elements of the page: focus, the caret, and the look of the whole.

use core::ops::Range;

use gloo::utils::{document, document_element, window};
use wasm_bindgen::JsCast;
use web_sys::{
    Element, Event, FocusEvent, HtmlElement, HtmlInputElement, HtmlSelectElement,
    HtmlTextAreaElement,
};

/// Characters that the narrowest input shows all at once.
const FITS: usize = 9;

fn element(id: &str) -> Option<HtmlElement> {
    document().get_element_by_id(id)?.dyn_into().ok()
}

fn input(id: &str) -> Option<HtmlInputElement> {
    document().get_element_by_id(id)?.dyn_into().ok()
}

/// Gives the focus to an element, if it has not got it.
pub(crate) fn focus(id: &str) {
    if let Some(element) = element(id).filter(|element| !has_focus(element)) {
        drop(element.focus());
    }
}

fn has_focus(element: &Element) -> bool {
    document().active_element().is_some_and(|active| active == *element)
}

/// Takes the focus from whatever has it.
pub(crate) fn blur() {
    let active = document().active_element().and_then(|active| active.dyn_into().ok());
    if let Some(element) = active {
        let element: HtmlElement = element;
        drop(element.blur());
    }
}

/// Selects the whole text of an input.
pub(crate) fn select_all(id: &str) {
    if let Some(input) = input(id) {
        input.select();
    }
}

/// The selection in an input, in UTF-16 units; the end of its text when there is none.
pub(crate) fn selection(id: &str) -> Option<(String, Range<usize>)> {
    let input = input(id)?;
    let text = input.value();
    let end = text.encode_utf16().count();
    let place = |at: Result<Option<u32>, _>| {
        at.ok().flatten().and_then(|at| usize::try_from(at).ok()).unwrap_or(end)
    };
    let (start, stop) = (place(input.selection_start()), place(input.selection_end()));
    Some((text, start..stop))
}

/// Writes a text into an input and puts the caret at a place in it.
pub(crate) fn write(id: &str, text: &str, caret: usize) {
    let end = u32::try_from(text.encode_utf16().count());
    if let (Some(input), Ok(caret), Ok(end)) = (input(id), u32::try_from(caret), end) {
        input.set_value(text);
        // Writing leaves the caret at the end; to put it elsewhere costs a layout of the page.
        if caret != end {
            drop(input.set_selection_range(caret, caret));
        }
        // A long formula is scrolled so that its end shows. It costs a layout of the page.
        if text.len() > FITS {
            input.set_scroll_left(input.scroll_width());
        }
    }
}

/// Opens the system's keyboard for an input that kept it closed.
pub(crate) fn call_system_keyboard(id: &str) {
    if let Some(input) = input(id) {
        drop(input.set_attribute("inputmode", "text"));
        drop(input.blur());
        drop(input.focus());
    }
}

/// The text of the input or text box that an event is about.
pub(crate) fn value_of(event: &Event) -> Option<String> {
    let target = event.target()?;
    match target.dyn_ref::<HtmlTextAreaElement>() {
        Some(area) => Some(area.value()),
        None => Some(target.dyn_into::<HtmlInputElement>().ok()?.value()),
    }
}

/// The value of the list that an event is about.
pub(crate) fn chosen_of(event: &Event) -> Option<String> {
    Some(event.target()?.dyn_into::<HtmlSelectElement>().ok()?.value())
}

/// Whether the focus goes out of the element that listens, and to nothing within it.
pub(crate) fn leaves(event: &FocusEvent) -> bool {
    let to = event.related_target().and_then(|to| to.dyn_into::<Element>().ok());
    let around = event.current_target().and_then(|it| it.dyn_into::<Element>().ok());
    match (to, around) {
        (Some(to), Some(around)) => !around.contains(Some(&to)),
        _ => true,
    }
}

/// Writes an attribute of the whole page, such as its theme.
pub(crate) fn set_look(name: &str, value: &str) {
    drop(document_element().set_attribute(&format!("data-{name}"), value));
}

/// Names the page in the browser's tab and history.
pub(crate) fn set_title(title: &str) {
    document().set_title(title);
}

/// Goes to the top of the page.
pub(crate) fn scroll_to_top() {
    window().scroll_to_with_x_and_y(0.0, 0.0);
}

/// Whether there is room for one column only.
pub(crate) fn is_narrow() -> bool {
    let narrow = window().match_media("(max-width: 899px)").ok().flatten();
    narrow.is_some_and(|narrow| narrow.matches())
}

/// Whether the user asked for less movement on the screen.
pub(crate) fn wants_less_movement() -> bool {
    let wish = window().match_media("(prefers-reduced-motion: reduce)").ok().flatten();
    wish.is_some_and(|wish| wish.matches())
}

/// Opens the browser's window for printing.
pub(crate) fn print() {
    // A browser without one does nothing.
    drop(window().print());
}

/// Whether an event is about an input or a list.
pub(crate) fn is_on_input(event: &Event) -> bool {
    let is_one = |target: web_sys::EventTarget| {
        target.dyn_ref::<HtmlInputElement>().is_some()
            || target.dyn_ref::<HtmlSelectElement>().is_some()
    };
    event.target().is_some_and(is_one)
}

/// Asks the user before something that cannot be undone.
pub(crate) fn confirm(words: &str) -> bool {
    window().confirm_with_message(words).unwrap_or(false)
}
