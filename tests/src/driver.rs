//! The wire to a browser's driver: plain HTTP and JSON.

use std::fmt;
use std::io::{self, BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, TcpStream};
use std::time::Duration;

use serde_json::{Value, json};

use crate::engine::{Engine, Started};

/// A command that takes longer than this has hung.
const PATIENCE: Duration = Duration::from_secs(120);

/// Why a command did not work.
#[derive(Debug)]
pub(crate) enum Trouble {
    /// The driver answered with an error: its code and its words.
    Refused { code: String, words: String },
    /// The driver could not be talked to.
    Line(io::Error),
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Trouble::Refused { code, words } => write!(f, "{code}: {words}"),
            Trouble::Line(error) => write!(f, "the driver cannot be reached: {error}"),
        }
    }
}

impl From<io::Error> for Trouble {
    fn from(error: io::Error) -> Trouble {
        Trouble::Line(error)
    }
}

/// A driver with one open browser. Dropping it ends both.
pub(crate) struct Driver {
    pub(crate) started: Started,
    session: String,
}

impl Driver {
    /// Starts the driver of an engine and a browser.
    pub(crate) fn start(engine: Engine, switches: &[&str]) -> Result<Driver, Trouble> {
        let started = engine.start(switches)?;
        let wanted = json!({ "capabilities": { "alwaysMatch": started.capabilities } });
        let mut driver = Driver { started, session: String::new() };
        let opened = driver.send("POST", "/session", &wanted)?;
        driver.session = opened["sessionId"].as_str().unwrap_or_default().to_owned();
        Ok(driver)
    }

    /// Sends a command of the open session; `path` starts after the session's own.
    pub(crate) fn post(&self, path: &str, body: &Value) -> Result<Value, Trouble> {
        self.send("POST", &format!("/session/{}{path}", self.session), body)
    }

    /// Asks the open session for something.
    pub(crate) fn get(&self, path: &str) -> Result<Value, Trouble> {
        self.send("GET", &format!("/session/{}{path}", self.session), &Value::Null)
    }

    /// Ends something of the open session.
    pub(crate) fn delete(&self, path: &str) -> Result<Value, Trouble> {
        self.send("DELETE", &format!("/session/{}{path}", self.session), &Value::Null)
    }

    fn send(&self, method: &str, path: &str, body: &Value) -> Result<Value, Trouble> {
        let mut stream = TcpStream::connect((Ipv4Addr::LOCALHOST, self.started.port))?;
        stream.set_read_timeout(Some(PATIENCE))?;
        let body = if body.is_null() { String::new() } else { body.to_string() };
        write!(
            stream,
            "{method} {path} HTTP/1.1\r\nHost: 127.0.0.1:{}\r\nContent-Type: application/json\r\nContent-Length: {}\r\nConnection: close\r\n\r\n{body}",
            self.started.port,
            body.len()
        )?;
        let answer: Value =
            serde_json::from_slice(&read_body(stream)?).map_err(io::Error::other)?;
        let value = &answer["value"];
        match value["error"].as_str() {
            Some(code) => Err(Trouble::Refused {
                code: code.to_owned(),
                words: value["message"].as_str().unwrap_or_default().to_owned(),
            }),
            None => Ok(value.clone()),
        }
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        // Whatever fails here, the processes are ended next.
        let _ = self.send("DELETE", &format!("/session/{}", self.session), &Value::Null);
    }
}

fn read_body(stream: TcpStream) -> io::Result<Vec<u8>> {
    let mut reader = BufReader::new(stream);
    let mut length = 0;
    let mut line = String::new();
    while reader.read_line(&mut line)? > 0 && !line.trim().is_empty() {
        if let Some((name, value)) = line.split_once(':')
            && name.eq_ignore_ascii_case("content-length")
        {
            length = value.trim().parse().map_err(io::Error::other)?;
        }
        line.clear();
    }
    let mut body = vec![0; length];
    reader.read_exact(&mut body)?;
    Ok(body)
}
