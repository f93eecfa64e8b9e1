//! The page with every calculator and the job book. Start, nothing else.

/// Puts the app on the page, whole, and tells the shell that it is there.
#[cfg(target_arch = "wasm32")]
fn main() {
    reckoner_app::start_with_jobs();
}

/// The page needs a browser; this stands in for it when the workspace is built natively.
#[cfg(not(target_arch = "wasm32"))]
fn main() {
    eprintln!("This is a web page. Run `cargo xtask serve`.");
}
