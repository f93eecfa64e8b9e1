//! The planner in the browser. Start, nothing else.

/// Starts to listen.
#[cfg(target_arch = "wasm32")]
fn main() {
    reckoner_planner::browser::start();
}

/// It needs a browser; this stands in for it when the workspace is built natively.
#[cfg(not(target_arch = "wasm32"))]
fn main() {
    eprintln!("This is a part of a web page. Run `cargo xtask serve`.");
}
