//! What the journeys through the built app share: a browser, a page, and a release to serve.
//!
//! A journey reads like this:
//!
//! ```no_run
//! use reckoner_e2e::{App, Screen};
//!
//! let app = App::open(Screen::PHONE);          // serves dist/ and opens the home page
//! app.go("#/tape?strip=3+3%2F8");              // a route is a fragment of the address
//! app.press(&["1", "slash", "2"]);             // our own keypad, by `key-…`
//! assert_eq!(app.text("answer-headline"), "3 7/8");
//! app.assert_accessible();
//! app.picture("tape");                         // target/screens/tape.png
//! ```
//!
//! Everything is found by `data-testid`. Helpers wait until what they need is there, and panic
//! with the place in the journey when it never comes: in a test that is the message wanted.
//!
//! - [`App`]: the page as a person uses it, plus the server it came from.
//! - [`Browser`]: one browser with its driver; scripts, screenshots, the network, the processor.
//! - [`Engine`]: Chromium, WebKit or Firefox.
//! - [`campaign`]: random walks with faults, on a browser that can be killed.
//! - [`timing`]: how long a tap takes to be answered on the screen.
//! - [`release`]: the built app, and further releases made from it.
//! - [`reckoner_devserver::Server`]: the server, with its off switch and its faults.
//!
//! `cargo xtask test journeys` builds the app, finds the browser and runs them all. One journey
//! alone: `cargo xtask test journeys NAME`.

mod app;
mod browser;
pub mod campaign;
mod driver;
mod engine;
pub mod release;
pub mod timing;

pub use app::App;
pub use browser::{Act, Browser, Screen};
pub use engine::Engine;
pub use reckoner_devserver::{Compression, Fault, Server};
