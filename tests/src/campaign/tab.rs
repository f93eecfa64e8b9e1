//! One window of the browser, as a person uses it: taps, keys, and what can be read.

use serde_json::{Value, json};

use super::wire::{Trouble, Wire};

/// What every look at a page may use.
const LOOK: &str = include_str!("look.js");

/// How long something may take to come, in milliseconds: a busy machine is slow.
pub(super) const PATIENCE: u32 = 20_000;

#[derive(Clone)]
pub(super) struct Tab {
    pub(super) target: String,
    pub(super) session: String,
}

/// A key of a keyboard: the key's own name, and what it writes.
fn stroke(key: &str) -> (&str, &str, u32) {
    match key {
        "Enter" => ("Enter", "\r", 13),
        "Tab" => ("Tab", "", 9),
        "Escape" => ("Escape", "", 27),
        "Backspace" => ("Backspace", "", 8),
        other => (other, other, 0),
    }
}

impl Tab {
    /// What a script comes to: the body of an async function in the page.
    pub(super) fn script(&self, wire: &Wire, body: &str) -> Result<Value, Trouble> {
        let id = self.begin(wire, body)?;
        value(&wire.answer(id)?)
    }

    /// Sends a script without waiting for it.
    pub(super) fn begin(&self, wire: &Wire, body: &str) -> Result<u64, Trouble> {
        let expression = format!("(async () => {{ {LOOK}\n{body} }})()");
        let call = json!({ "expression": expression, "awaitPromise": true, "returnByValue": true });
        wire.send(&self.session, "Runtime.evaluate", &call)
    }

    /// The same for a page that may be on its way out: it is asked again in the next one.
    pub(super) fn patient(&self, wire: &Wire, body: &str) -> Result<Value, Trouble> {
        let mut last = String::new();
        for _ in 0..200 {
            match self.script(wire, body) {
                Err(words)
                    if words.contains("context")
                        || words.contains("navigated")
                        || words.contains("Promise was collected") =>
                {
                    last = words;
                    std::thread::sleep(std::time::Duration::from_millis(10));
                }
                other => return other,
            }
        }
        Err(last)
    }

    /// Waits until an expression is true in the page, and gives it.
    pub(super) fn wait(&self, wire: &Wire, what: &str, expression: &str) -> Result<Value, Trouble> {
        let body = format!("return await until(() => {expression}, {PATIENCE})");
        match self.patient(wire, &body)? {
            Value::Null => {
                let page = self.patient(
                    wire,
                    "return location.href + ' | ' + tidy(document.body.innerText).slice(0, 300)",
                );
                Err(format!("waited in vain: {what}; the page: {}", page.unwrap_or_default()))
            }
            found => Ok(found),
        }
    }

    /// Waits until an element can be hit, and taps it.
    pub(super) fn tap(&self, wire: &Wire, css: &str) -> Result<(), Trouble> {
        let selector = json!(css);
        let at = match self.wait(wire, css, &format!("place({selector})")) {
            Ok(at) => at,
            Err(words) => {
                let over = self.patient(wire, &format!("return covering({selector})"))?;
                return Err(format!("{words}; over it: {over}"));
            }
        };
        for id in self.tap_at(wire, &at)? {
            wire.answer(id)?;
        }
        Ok(())
    }

    /// Taps a place, without waiting for the answers.
    pub(super) fn tap_at(&self, wire: &Wire, at: &Value) -> Result<[u64; 2], Trouble> {
        let event = |kind: &str| {
            let event = json!({ "type": kind, "x": at["x"], "y": at["y"], "button": "left", "clickCount": 1 });
            wire.send(&self.session, "Input.dispatchMouseEvent", &event)
        };
        Ok([event("mousePressed")?, event("mouseReleased")?])
    }

    /// Presses keys of a keyboard, one after the other, wherever the focus is.
    pub(super) fn keys<'a>(
        &self,
        wire: &Wire,
        keys: impl IntoIterator<Item = &'a str>,
    ) -> Result<(), Trouble> {
        for id in self.begin_keys(wire, keys)? {
            wire.answer(id)?;
        }
        Ok(())
    }

    pub(super) fn begin_keys<'a>(
        &self,
        wire: &Wire,
        keys: impl IntoIterator<Item = &'a str>,
    ) -> Result<Vec<u64>, Trouble> {
        let mut sent = Vec::new();
        for key in keys {
            let (name, text, code) = stroke(key);
            let down = json!({
                "type": if text.is_empty() { "rawKeyDown" } else { "keyDown" },
                "key": name, "text": text, "windowsVirtualKeyCode": code,
            });
            let up = json!({ "type": "keyUp", "key": name, "windowsVirtualKeyCode": code });
            sent.push(wire.send(&self.session, "Input.dispatchKeyEvent", &down)?);
            sent.push(wire.send(&self.session, "Input.dispatchKeyEvent", &up)?);
        }
        Ok(sent)
    }

    /// Text that comes at once, as from a phone's keyboard that completes words.
    pub(super) fn insert(&self, wire: &Wire, text: &str) -> Result<(), Trouble> {
        wire.ask(&self.session, "Input.insertText", &json!({ "text": text })).map(drop)
    }

    /// Loads an address and does not wait for it.
    pub(super) fn load(&self, wire: &Wire, url: &str) -> Result<(), Trouble> {
        wire.ask(&self.session, "Page.navigate", &json!({ "url": url })).map(drop)
    }

    /// Waits for the next frame.
    pub(super) fn frame(&self, wire: &Wire) -> Result<(), Trouble> {
        self.script(wire, "await new Promise((go) => { requestAnimationFrame(go); setTimeout(go, 50) }); return true")
            .map(drop)
    }
}

fn value(answer: &Value) -> Result<Value, Trouble> {
    let fault = &answer["exceptionDetails"];
    if fault.is_null() {
        return Ok(answer["result"]["value"].clone());
    }
    let words = fault["exception"]["description"].as_str().or(fault["text"].as_str());
    Err(words.unwrap_or("a script failed").to_owned())
}
