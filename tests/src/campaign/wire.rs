//! The wire to a Chromium: the DevTools protocol over a pipe. It may be cut at any moment.

use std::cell::{Cell, RefCell};
use std::io::{BufRead, BufReader, Read, Write};
use std::process::{ChildStdin, ChildStdout};
use std::sync::mpsc::{Receiver, RecvTimeoutError, channel};
use std::thread;
use std::time::{Duration, Instant};

use serde_json::{Value, json};

/// A command that takes longer than this has hung.
const PATIENCE: Duration = Duration::from_secs(60);

/// Why a command did not work, in words.
pub(super) type Trouble = String;

pub(super) struct Wire {
    to: RefCell<ChildStdin>,
    from: Receiver<Value>,
    last: Cell<u64>,
    early: RefCell<Vec<Value>>,
    crashed: RefCell<Vec<String>>,
}

impl Wire {
    pub(super) fn new(to: ChildStdin, from: ChildStdout) -> Wire {
        let (tell, hear) = channel();
        thread::spawn(move || read(from, |message| tell.send(message).is_ok()));
        Wire {
            to: RefCell::new(to),
            from: hear,
            last: Cell::new(0),
            early: RefCell::default(),
            crashed: RefCell::default(),
        }
    }

    /// Sends a command and does not wait for it.
    pub(super) fn send(&self, session: &str, method: &str, params: &Value) -> Result<u64, Trouble> {
        let id = self.last.get() + 1;
        self.last.set(id);
        let mut command = json!({ "id": id, "method": method, "params": params });
        if !session.is_empty() {
            command["sessionId"] = json!(session);
        }
        let mut bytes = command.to_string().into_bytes();
        bytes.push(0);
        let mut to = self.to.borrow_mut();
        to.write_all(&bytes)
            .and_then(|()| to.flush())
            .map_err(|error| format!("{method}: the browser is gone ({error})"))?;
        Ok(id)
    }

    /// Waits for the answer to a command.
    pub(super) fn answer(&self, id: u64) -> Result<Value, Trouble> {
        let until = Instant::now() + PATIENCE;
        loop {
            let early = {
                let mut early = self.early.borrow_mut();
                let at = early.iter().position(|it| it["id"] == id);
                at.map(|at| early.swap_remove(at))
            };
            if let Some(message) = early {
                return match message["error"]["message"].as_str() {
                    Some(words) => Err(words.to_owned()),
                    None => Ok(message["result"].clone()),
                };
            }
            self.hear(until.saturating_duration_since(Instant::now()))?;
        }
    }

    pub(super) fn ask(
        &self,
        session: &str,
        method: &str,
        params: &Value,
    ) -> Result<Value, Trouble> {
        let id = self.send(session, method, params)?;
        self.answer(id).map_err(|words| format!("{method}: {words}"))
    }

    /// Waits until the page of a session has crashed.
    pub(super) fn wait_for_crash(&self, session: &str) -> Result<(), Trouble> {
        let until = Instant::now() + PATIENCE;
        while !self.crashed.borrow().iter().any(|it| it == session) {
            self.hear(until.saturating_duration_since(Instant::now()))?;
        }
        Ok(())
    }

    fn hear(&self, patience: Duration) -> Result<(), Trouble> {
        match self.from.recv_timeout(patience) {
            Err(RecvTimeoutError::Timeout) => Err("the browser does not answer".to_owned()),
            Err(RecvTimeoutError::Disconnected) => Err("the browser is gone".to_owned()),
            Ok(message) => {
                let session = message["sessionId"].as_str().unwrap_or_default().to_owned();
                match message["method"].as_str() {
                    None => self.early.borrow_mut().push(message),
                    Some("Inspector.targetCrashed") => self.crashed.borrow_mut().push(session),
                    // Nobody is there to read a question, and nothing may wait for one.
                    Some("Page.javascriptDialogOpening") => {
                        let yes = json!({ "accept": true });
                        self.send(&session, "Page.handleJavaScriptDialog", &yes)?;
                    }
                    Some(_) => {}
                }
                Ok(())
            }
        }
    }
}

/// Messages end with a zero.
fn read(from: impl Read, tell: impl Fn(Value) -> bool) {
    let mut from = BufReader::new(from);
    let mut bytes = Vec::new();
    while from.read_until(0, &mut bytes).is_ok_and(|read| read > 0) {
        bytes.pop();
        if let Ok(message) = serde_json::from_slice(&bytes)
            && !tell(message)
        {
            return;
        }
        bytes.clear();
    }
}
