//! The app on a page of its own, with hands to use it.

use gloo::timers::future::TimeoutFuture;
use gloo::utils::{document, window};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{
    Element, Event, EventInit, FocusEvent, FocusEventInit, HtmlElement, HtmlInputElement,
    KeyboardEvent, KeyboardEventInit,
};

/// The app, drawn for one address.
pub(crate) struct Mounted {
    root: Element,
    take_away: Option<Box<dyn FnOnce()>>,
}

impl Drop for Mounted {
    fn drop(&mut self) {
        if let Some(take_away) = self.take_away.take() {
            take_away();
        }
        self.root.remove();
    }
}

impl Mounted {
    /// Draws the app at an address with nothing kept on the device.
    pub(crate) async fn fresh(fragment: &str) -> Mounted {
        let own = window().session_storage().expect("allowed").expect("there");
        for store in [store(), own] {
            store.clear().expect("cleared");
        }
        Mounted::at(fragment).await
    }

    /// Draws the app at an address with what is kept on the device, as a page that is loaded there: no app hears of another
    /// address. One that did would take the test before for the page that the user comes from.
    pub(crate) async fn at(fragment: &str) -> Mounted {
        let history = window().history().expect("allowed");
        history.replace_state_with_url(&JsValue::NULL, "", Some(fragment)).expect("an address");
        // What a failed test left behind.
        while let Some(old) = document().get_element_by_id("app") {
            old.remove();
        }
        let root = document().create_element("div").expect("an element");
        root.set_id("app");
        document().body().expect("a body").append_child(&root).expect("appended");
        let take_away: Box<dyn FnOnce()> = Box::new(reckoner_app::draw());
        let mounted = Mounted { root, take_away: Some(take_away) };
        mounted.settle().await;
        mounted
    }

    /// Waits until everything is drawn and every effect has run.
    pub(crate) async fn settle(&self) {
        yew::scheduler::flush().await;
        TimeoutFuture::new(20).await;
        yew::scheduler::flush().await;
    }

    /// Waits until the address is written.
    pub(crate) async fn rest(&self) {
        TimeoutFuture::new(500).await;
        self.settle().await;
    }

    /// The element with a test id, if it is there.
    pub(crate) fn find(&self, id: &str) -> Option<HtmlElement> {
        let found = self.root.query_selector(&format!("[data-testid='{id}']")).expect("a query");
        found.and_then(|element| element.dyn_into().ok())
    }

    /// The element with a test id.
    pub(crate) fn get(&self, id: &str) -> HtmlElement {
        self.find(id).unwrap_or_else(|| {
            let ids = self.all("[data-testid]");
            let ids: Vec<_> = ids.iter().filter_map(|it| it.get_attribute("data-testid")).collect();
            panic!("no {id} among {ids:?}")
        })
    }

    /// Every element that a selector finds.
    pub(crate) fn all(&self, css: &str) -> Vec<Element> {
        let found = self.root.query_selector_all(css).expect("a query");
        (0..found.length()).filter_map(|at| found.get(at)?.dyn_into().ok()).collect()
    }

    /// The text of an element, spaces evened out.
    pub(crate) fn text(&self, id: &str) -> String {
        let text = self.get(id).text_content().unwrap_or_default();
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    }

    pub(crate) fn input(&self, id: &str) -> HtmlInputElement {
        self.get(id).dyn_into().unwrap_or_else(|it| panic!("{it:?} is no input"))
    }

    /// What an input holds.
    pub(crate) fn value(&self, id: &str) -> String {
        self.input(id).value()
    }

    /// The exact length that an element shows first.
    pub(crate) fn exact(&self, id: &str) -> String {
        let shown = self.get(id).query_selector("[data-exact]").expect("a query");
        shown.and_then(|it| it.get_attribute("data-exact")).unwrap_or_default()
    }

    pub(crate) async fn tap(&self, id: &str) {
        self.get(id).click();
        self.settle().await;
    }

    /// Taps keys of the keypad.
    pub(crate) async fn press(&self, keys: &[&str]) {
        for key in keys {
            self.tap(&format!("key-{key}")).await;
        }
    }

    /// Gives the focus to a field.
    pub(crate) async fn enter(&self, id: &str) {
        focus(&self.get(id));
        self.settle().await;
    }

    /// Types a whole text with a keyboard.
    pub(crate) async fn types(&self, id: &str, text: &str) {
        let input = self.input(id);
        focus(&input);
        input.set_value(text);
        let options = EventInit::new();
        options.set_bubbles(true);
        let event = Event::new_with_event_init_dict("input", &options).expect("an event");
        input.dispatch_event(&event).expect("dispatched");
        self.settle().await;
    }

    /// Presses a key of a keyboard where the focus is.
    pub(crate) async fn key(&self, key: &str) {
        let options = KeyboardEventInit::new();
        options.set_bubbles(true);
        options.set_cancelable(true);
        options.set_key(key);
        let event = KeyboardEvent::new_with_keyboard_event_init_dict("keydown", &options);
        let active = document().active_element().expect("the focus is somewhere");
        active.dispatch_event(&event.expect("an event")).expect("dispatched");
        self.settle().await;
    }

    /// Test id of what has the focus.
    pub(crate) fn focused(&self) -> String {
        let active = document().active_element();
        active.and_then(|it| it.get_attribute("data-testid")).unwrap_or_default()
    }
}

/// Gives the focus to an element. A window that is not in front tells nobody; the element hears
/// of it all the same.
fn focus(element: &HtmlElement) {
    element.focus().expect("focused");
    if !document().has_focus().expect("known") {
        let options = FocusEventInit::new();
        options.set_bubbles(true);
        let event = FocusEvent::new_with_focus_event_init_dict("focusin", &options);
        element.dispatch_event(&event.expect("an event")).expect("dispatched");
    }
}

/// What is kept on the device.
pub(crate) fn store() -> web_sys::Storage {
    window().local_storage().expect("allowed").expect("there")
}

/// The fragment in the address bar.
pub(crate) fn fragment() -> String {
    window().location().hash().expect("an address")
}
