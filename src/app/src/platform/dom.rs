//! Elements of the page: focus, the caret, and the look of the whole.

use core::ops::Range;
use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;
use std::rc::Rc;

use gloo::events::{EventListener, EventListenerOptions};
use gloo::utils::{document, document_element, window};
use wasm_bindgen::JsCast;
use web_sys::{
    Element, Event, FocusEvent, FocusOptions, HtmlElement, HtmlInputElement, HtmlSelectElement,
    HtmlTextAreaElement, MediaQueryList, MouseEvent, ScrollIntoViewOptions, ScrollLogicalPosition,
};

/// Characters that the narrowest input shows all at once.
const FITS: usize = 9;

fn element(id: &str) -> Option<HtmlElement> {
    document().get_element_by_id(id)?.dyn_into().ok()
}

fn input(id: &str) -> Option<HtmlInputElement> {
    document().get_element_by_id(id)?.dyn_into().ok()
}

/// Gives the focus to an element, if it has not got it. One that is about to be docked above the
/// keypad, or into a panel, need not be scrolled to.
pub(crate) fn focus(id: &str, is_docked: bool) {
    if let Some(element) = element(id).filter(|element| !has_focus(element)) {
        let how = FocusOptions::new();
        how.set_prevent_scroll(is_docked && has_docks());
        drop(element.focus_with_options(&how));
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

/// Puts the caret after the text of an input.
pub(crate) fn caret_to_end(id: &str) {
    if let Some(input) = input(id)
        && let Ok(end) = u32::try_from(input.value().encode_utf16().count())
    {
        drop(input.set_selection_range(end, end));
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
        let is_other = input.value() != text;
        input.set_value(text);
        // Writing another text leaves the caret at its end, and the same text leaves what is selected. To put the caret
        // costs a layout of the page.
        if caret != end || !is_other {
            drop(input.set_selection_range(caret, caret));
        }
        // A long formula is scrolled so that its end shows. It costs a layout of the page.
        if text.len() > FITS {
            input.set_scroll_left(input.scroll_width());
        }
    }
}

/// Opens the system's keyboard for an input that kept it closed. The caret stays.
pub(crate) fn call_system_keyboard(id: &str) {
    if let Some(input) = input(id) {
        let (start, end) = (input.selection_start(), input.selection_end());
        drop(input.set_attribute("inputmode", "text"));
        drop(input.blur());
        drop(input.focus());
        if let (Ok(Some(start)), Ok(Some(end))) = (start, end) {
            drop(input.set_selection_range(start, end));
        }
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

/// The button that an event is about.
pub(crate) fn button_of(event: &Event) -> Option<HtmlElement> {
    let it = event.target()?.dyn_into::<Element>().ok()?;
    it.closest("button").ok()??.dyn_into().ok()
}

/// Selects the whole text of the input that an event is about.
pub(crate) fn select_of(event: &Event) {
    if let Some(input) = event.target().and_then(|it| it.dyn_into::<HtmlInputElement>().ok()) {
        input.select();
    }
}

/// Listens for the end of a press.
pub(crate) struct LetGo {
    _listening: [EventListener; 3],
}

/// Calls back when the press on a button is over or leaves it, until what is returned is dropped.
///
/// It is listened for there and only then: an event that Yew listens for goes to the program whatever it is about, so with
/// one of these each tap on the page would be four events of it.
pub(crate) fn on_let_go(button: &HtmlElement, call: impl Fn() + Clone + 'static) -> LetGo {
    let listen = |kind: &'static str| {
        let call = call.clone();
        EventListener::new(button, kind, move |_| call())
    };
    LetGo { _listening: ["pointerup", "pointercancel", "pointerleave"].map(listen) }
}

/// The value of the list that an event is about.
pub(crate) fn chosen_of(event: &Event) -> Option<String> {
    Some(event.target()?.dyn_into::<HtmlSelectElement>().ok()?.value())
}

/// Whether the fold with this selector, if an event is about it, stands open.
pub(crate) fn toggled(event: &Event, fold: &str) -> Option<bool> {
    let it = event.target()?.dyn_into::<Element>().ok()?;
    it.matches(fold).is_ok_and(|is| is).then(|| it.has_attribute("open"))
}

/// Whether the focus goes out of the form that it was in, and to nothing within it.
///
/// The form is looked for from where the focus was: every event is listened for at the root of the
/// app, so that is what the browser calls the listening element. When the whole window loses the
/// focus, the element keeps it within the page and nothing is left.
pub(crate) fn leaves(event: &FocusEvent) -> bool {
    let from = event.target().and_then(|from| from.dyn_into::<Element>().ok());
    let Some(from) = from.filter(|from| !has_focus(from)) else { return false };
    let to = event.related_target().and_then(|to| to.dyn_into::<Element>().ok());
    match (to, from.closest("form").ok().flatten()) {
        (Some(to), Some(form)) => !form.contains(Some(&to)),
        _ => true,
    }
}

/// Whether the focus goes from within the group with this selector to something outside it.
pub(crate) fn leaves_group(event: &FocusEvent, group: &str) -> bool {
    let element = |target: Option<web_sys::EventTarget>| target?.dyn_into::<Element>().ok();
    let from = element(event.target()).and_then(|from| from.closest(group).ok().flatten());
    match (from, element(event.related_target())) {
        (Some(group), Some(to)) => !group.contains(Some(&to)),
        _ => false,
    }
}

/// What is to be done at the end of a press.
type AtEnd = Rc<RefCell<Option<Box<dyn FnOnce()>>>>;

/// Knows whether a press of the mouse, or of a finger, is going on, and can do something at its
/// end. What moves on the page while it is pressed would make the tap miss what it was meant for.
pub(crate) struct Presses {
    is_down: Rc<Cell<bool>>,
    at_end: AtEnd,
    _down: EventListener,
    _up: EventListener,
}

impl Presses {
    /// Listens from now on, until it is dropped.
    pub(crate) fn listen() -> Presses {
        let is_down = Rc::new(Cell::new(false));
        let at_end = AtEnd::default();
        let first = EventListenerOptions::run_in_capture_phase();
        let down = EventListener::new_with_options(&window(), "mousedown", first, {
            let is_down = is_down.clone();
            move |_| is_down.set(true)
        });
        // Who is clicked is settled when the mouse goes up.
        let up = EventListener::new_with_options(&window(), "mouseup", first, {
            let (is_down, at_end) = (is_down.clone(), at_end.clone());
            move |_| {
                is_down.set(false);
                if let Some(act) = at_end.take() {
                    act();
                }
            }
        });
        Presses { is_down, at_end, _down: down, _up: up }
    }

    /// Does it now, or at the end of the press that is going on.
    pub(crate) fn after(&self, act: impl FnOnce() + 'static) {
        if self.is_down.get() {
            *self.at_end.borrow_mut() = Some(Box::new(act));
        } else {
            act();
        }
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

/// Scrolls the box in which `css` finds something as little as shows it; the page itself stays at its top.
pub(crate) fn bring_into_sight(css: &str) {
    if let Ok(Some(element)) = document().query_selector(css) {
        let how = ScrollIntoViewOptions::new();
        how.set_block(ScrollLogicalPosition::Nearest);
        how.set_inline(ScrollLogicalPosition::Nearest);
        element.scroll_into_view_with_scroll_into_view_options(&how);
        scroll_to_top();
    }
}

/// There is room for one column only.
const NARROW: &str = "(max-width: 899px)";

thread_local! {
    /// What the browser was asked about the screen: to look at it again at each key is cheap, to ask again is not.
    static ASKED: RefCell<BTreeMap<&'static str, MediaQueryList>> = RefCell::default();
}

fn matches(query: &'static str) -> bool {
    ASKED.with_borrow_mut(|asked| {
        if let Some(known) = asked.get(query) {
            return known.matches();
        }
        let Ok(Some(new)) = window().match_media(query) else { return false };
        let is_so = new.matches();
        asked.insert(query, new);
        is_so
    })
}

/// Whether there is room for one column only.
pub(crate) fn is_narrow() -> bool {
    matches(NARROW)
}

/// Tells whether there is, each time that changes, until what is returned is dropped.
pub(crate) fn on_narrow(what: impl Fn(bool) + 'static) -> Option<EventListener> {
    let narrow = window().match_media(NARROW).ok().flatten()?;
    Some(EventListener::new(&narrow, "change", move |_| what(is_narrow())))
}

/// Whether the keys leave room for little else, as the style sheet for typing has it.
pub(crate) fn is_small() -> bool {
    matches("(max-width: 899px), (max-height: 479px) and (pointer: coarse)")
}

/// Whether what is edited is docked at the bottom of the screen, as the style sheet does it.
pub(crate) fn has_docks() -> bool {
    matches("(max-width: 899px), (pointer: coarse)")
}

/// Whether the user asked for less movement on the screen.
pub(crate) fn wants_less_movement() -> bool {
    matches("(prefers-reduced-motion: reduce)")
}

/// Opens the browser's window for printing.
pub(crate) fn print() {
    // A browser without one does nothing.
    drop(window().print());
}

/// Takes a press beside or on an input before the browser does.
///
/// A button beside it must not take the focus from it. An input that has not got the focus gets it
/// here and now, so that what the page selects stands: by itself, the browser would put the caret
/// where the press is, after it gave the focus. In an input that has it, the press puts the caret.
pub(crate) fn press_beside_input(event: &MouseEvent) {
    let input = event.target().and_then(|it| it.dyn_into::<HtmlInputElement>().ok());
    match input {
        Some(input) if has_focus(&input) => {}
        Some(input) => {
            event.prevent_default();
            focus(&input.id(), true);
        }
        None => event.prevent_default(),
    }
}

/// Asks the user before something that cannot be undone.
pub(crate) fn confirm(words: &str) -> bool {
    window().confirm_with_message(words).unwrap_or(false)
}
