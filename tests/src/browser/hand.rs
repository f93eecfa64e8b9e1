//! What hands do: keys, taps, holding.

use std::thread::sleep;
use std::time::Instant;

use serde_json::{Value, json};

use super::{BETWEEN_LOOKS, Browser, ELEMENT, PATIENCE};
use crate::engine::Engine;

/// Something a hand does.
#[derive(Clone, Copy, Debug)]
pub enum Act<'a> {
    /// Taps the middle of the element with this test id.
    Tap(&'a str),
    /// Taps a place on the screen, in CSS pixels from the left and from the top.
    TapAt(f64, f64),
    /// Presses a key, written as WebDriver does: `\u{e007}` is Enter.
    Key(char),
    /// Presses the keys of a text.
    Keys(&'a str),
}

impl Browser {
    /// Presses keys on a real keyboard, one after the other, wherever the focus is. Special
    /// keys are written as WebDriver does, for example `\u{e004}` for Tab.
    #[track_caller]
    pub fn type_keys(&self, keys: &str) {
        let strokes: Vec<Value> = keys
            .chars()
            .flat_map(|key| {
                let key = key.to_string();
                [
                    json!({ "type": "keyDown", "value": key }),
                    json!({ "type": "keyUp", "value": key }),
                ]
            })
            .collect();
        let body = json!({ "actions": [{ "type": "key", "id": "keyboard", "actions": strokes }] });
        self.must(keys, self.driver.post("/actions", &body));
    }

    /// Presses the middle of the element with this test id and holds it, until [`Browser::let_go`].
    #[track_caller]
    pub fn hold(&self, id: &str) {
        self.scroll_to(id);
        let element = self.by_test_id(id);
        let finger = self.pointer(&json!([
            { "type": "pointerMove", "origin": { ELEMENT: element }, "x": 0, "y": 0 },
            { "type": "pointerDown", "button": 0 },
        ]));
        let body = json!({ "actions": [finger] });
        self.must(id, self.driver.post("/actions", &body));
    }

    /// Lets go of what is held.
    #[track_caller]
    pub fn let_go(&self) {
        self.must("letting go", self.driver.delete("/actions"));
    }

    #[track_caller]
    fn pointer(&self, actions: &Value) -> Value {
        let has_mouse = self.script("return navigator.maxTouchPoints") == 0;
        let with = json!({ "pointerType": if has_mouse { "mouse" } else { "touch" } });
        json!({ "type": "pointer", "id": "finger", "parameters": with, "actions": actions })
    }

    /// The driver's name of the element with this test id, which is there now.
    #[track_caller]
    fn by_test_id(&self, id: &str) -> String {
        let css = format!("[data-testid={}]", json!(id));
        self.must(&css, self.find(&css))
    }

    /// Brings the element with this test id to the middle of the screen.
    #[track_caller]
    fn scroll_to(&self, id: &str) {
        self.script(&format!(
            "document.querySelector('[data-testid=' + CSS.escape({}) + ']').scrollIntoView({{ block: 'center' }})",
            json!(id)
        ));
    }

    /// Does all of these in a row, so many milliseconds apart, and looks at nothing in between. What is tapped by its
    /// test id must be there from the start; the first of them is scrolled to before.
    #[track_caller]
    pub fn act(&self, acts: &[Act], pause: u32) {
        let wait = |duration: u32| json!({ "type": "pause", "duration": duration });
        // Each step with what the finger does and what the keyboard does in it.
        let mut steps: Vec<(Value, Value)> = Vec::new();
        let mut is_seen = false;
        for act in acts {
            let keys = match act {
                Act::Key(key) => key.to_string(),
                Act::Keys(keys) => (*keys).to_owned(),
                Act::Tap(_) | Act::TapAt(..) => String::new(),
            };
            for key in keys.chars().map(String::from) {
                steps.push((wait(pause), json!({ "type": "keyDown", "value": key })));
                steps.push((wait(0), json!({ "type": "keyUp", "value": key })));
            }
            let place = match act {
                Act::Tap(id) => {
                    if !std::mem::replace(&mut is_seen, true) {
                        self.scroll_to(id);
                    }
                    let element = self.by_test_id(id);
                    json!({ "type": "pointerMove", "origin": { ELEMENT: element }, "x": 0, "y": 0 })
                }
                Act::TapAt(x, y) => {
                    json!({ "type": "pointerMove", "x": x.round(), "y": y.round() })
                }
                Act::Key(_) | Act::Keys(_) => continue,
            };
            steps.push((place, wait(0)));
            steps.push((json!({ "type": "pointerDown", "button": 0 }), wait(0)));
            steps.push((json!({ "type": "pointerUp", "button": 0 }), wait(0)));
            steps.push((wait(pause), wait(0)));
        }
        let (finger, keyboard): (Vec<_>, Vec<_>) = steps.into_iter().unzip();
        let body = json!({ "actions": [
            self.pointer(&json!(finger)),
            { "type": "key", "id": "keyboard", "actions": keyboard },
        ] });
        self.must("tapping and typing", self.driver.post("/actions", &body));
    }

    /// Waits for an element and clicks it where a person would. One below a bar is scrolled out
    /// from under it first; one that stays covered is a failure.
    #[track_caller]
    pub fn click(&self, css: &str) {
        let deadline = Instant::now() + PATIENCE;
        loop {
            if self.press_middle_of(css) {
                return;
            }
            let clicked = self
                .find(css)
                .and_then(|id| self.driver.post(&format!("/element/{id}/click"), &json!({})));
            match clicked {
                Ok(_) => return,
                Err(trouble) if Instant::now() > deadline => {
                    panic!("cannot click {css}: {trouble}")
                }
                Err(_) => {
                    let show = format!(
                        "document.querySelector({})?.scrollIntoView({{ block: 'center' }})",
                        json!(css)
                    );
                    // While a page is being replaced, scripts in it fail.
                    drop(self.driver.post("/execute/sync", &json!({ "script": show, "args": [] })));
                    sleep(BETWEEN_LOOKS);
                }
            }
        }
    }

    /// Presses the middle of an element, if it is there now and nothing covers it; whether it did. It is what the own
    /// click of Chromium's driver comes to, for a fifth of its time (2026-11-29: 14 ms and 85), which was more than half
    /// of that of the journeys. Never in another engine.
    pub(crate) fn press_middle_of(&self, css: &str) -> bool {
        if self.engine != Engine::Chromium {
            return false;
        }
        let middle = format!(
            "const wanted = document.querySelector({});
             if (!wanted || wanted.tagName === 'OPTION' || visualViewport.scale !== 1) return null;
             const middle = () => {{
               const [r] = wanted.getClientRects();
               if (!r?.width || !r.height) return null;
               const [x, y] = [r.left + r.width / 2, r.top + r.height / 2];
               return wanted.contains(document.elementFromPoint(x, y)) ? [x, y] : null;
             }};
             const seen = middle();
             if (seen) return seen;
             wanted.scrollIntoViewIfNeeded();
             return middle()",
            json!(css)
        );
        let body = json!({ "script": middle, "args": [] });
        let Ok(Value::Array(at)) = self.driver.post("/execute/sync", &body) else {
            return false;
        };
        let press = |kind: &str, buttons: u8| {
            let mouse = json!({ "type": kind, "x": at[0], "y": at[1], "button": "left", "buttons": buttons, "clickCount": 1 });
            let body = json!({ "cmd": "Input.dispatchMouseEvent", "params": mouse });
            self.driver.post("/goog/cdp/execute", &body)
        };
        if press("mousePressed", 1).is_err() {
            return false;
        }
        // The page may be gone by now: it is pressed all the same.
        drop(press("mouseReleased", 0));
        true
    }
}
