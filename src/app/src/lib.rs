//! The page: what is typed, laid out and shown. It holds no arithmetic of its own.

#[cfg(target_arch = "wasm32")]
mod app;
#[cfg(target_arch = "wasm32")]
mod platform;

/// Puts the app on the page and tells the shell that it is there.
#[cfg(target_arch = "wasm32")]
pub fn start() {
    platform::shell::report_panics();
    yew::Renderer::<app::App>::with_root(platform::shell::root()).render();
}
