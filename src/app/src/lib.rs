//! The page: what is typed, laid out and shown. It holds no arithmetic of its own.
//!
//! State is the text as typed and the settings; all else is worked out from the core at each
//! change. Read in this order: [`form`] (the state of a calculator's page), [`keypad`] (what a
//! key does to a text), [`strip`], [`link`] and [`route`] (the state in the address),
//! [`settings`]. They are pure and are tested without a browser; what draws them, and
//! `platform`, exists for the browser alone.

pub mod cutting;
pub mod device;
pub mod form;
pub mod job_book;
pub mod keypad;
pub mod link;
pub mod recent;
pub mod route;
pub mod settings;
pub mod strip;
pub mod words;

#[cfg(target_arch = "wasm32")]
mod app;
#[cfg(target_arch = "wasm32")]
mod calculator;
#[cfg(target_arch = "wasm32")]
mod components;
#[cfg(target_arch = "wasm32")]
mod home;
#[cfg(target_arch = "wasm32")]
mod notices;
#[cfg(target_arch = "wasm32")]
mod parts;
#[cfg(target_arch = "wasm32")]
mod platform;

/// Puts the app on the page and tells the shell that it is there.
#[cfg(target_arch = "wasm32")]
pub fn start() {
    platform::shell::report_panics();
    parts::ask_ahead(&platform::address::fragment());
    // It stays for as long as the page.
    begin(|| drop(draw()));
}

/// Draws once what was typed before is at hand.
#[cfg(target_arch = "wasm32")]
fn begin(draw: impl FnOnce() + 'static) {
    platform::alive::hold();
    wasm_bindgen_futures::spawn_local(async move {
        platform::notes::begin().await;
        draw();
    });
}

/// Draws the app into the shell's element. What is returned takes it away again.
#[cfg(target_arch = "wasm32")]
pub fn draw() -> impl FnOnce() {
    let app = yew::Renderer::<app::App>::with_root(platform::shell::root()).render();
    move || app.destroy()
}
