//! The page: what is typed, laid out and shown. It holds no arithmetic of its own.
//!
//! State is the text as typed and the settings; all else is worked out from the core at each
//! change. Read in this order: [`form`] (the state of a calculator's page), [`keypad`] (what a
//! key does to a text), [`strip`], [`link`] and [`route`] (the state in the address),
//! [`settings`]. They are pure and are tested without a browser; what draws them, and
//! `platform`, exists for the browser alone.

pub mod cutting;
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
mod platform;

/// Puts the calculators on the page and tells the shell that they are there.
#[cfg(target_arch = "wasm32")]
pub fn start() {
    platform::shell::report_panics();
    // It stays for as long as the page.
    begin(|| drop(draw()));
}

/// The same with the job book. It is a program of its own: nothing of it is in the first one.
#[cfg(target_arch = "wasm32")]
pub fn start_with_jobs() {
    platform::shell::report_panics();
    begin(|| drop(draw_with_jobs()));
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

/// Draws the calculators into the shell's element. What is returned takes them away again.
#[cfg(target_arch = "wasm32")]
pub fn draw() -> impl FnOnce() {
    put_on_page(None)
}

/// Draws the calculators and the job book.
#[cfg(target_arch = "wasm32")]
pub fn draw_with_jobs() -> impl FnOnce() {
    put_on_page(Some(page_of_the_whole))
}

/// The pages that the whole program alone has.
#[cfg(target_arch = "wasm32")]
fn page_of_the_whole(asked: route::Route, settings: std::rc::Rc<settings::Settings>) -> yew::Html {
    match asked {
        route::Route::Cut(query) => cutting::page(query, settings),
        asked => job_book::page(asked, settings),
    }
}

#[cfg(target_arch = "wasm32")]
fn put_on_page(jobs: Option<app::Jobs>) -> impl FnOnce() {
    let props = app::AppProps { jobs };
    let root = platform::shell::root();
    let app = yew::Renderer::<app::App>::with_root_and_props(root, props).render();
    move || app.destroy()
}
