//! In the browser: the pages as a user meets them, on whatever calculators there are.
#![cfg(target_arch = "wasm32")]

mod answers;
mod fields;
mod keypad;
mod links;
mod mounted;
mod settings;
mod strip;

use wasm_bindgen_test::wasm_bindgen_test_configure;

wasm_bindgen_test_configure!(run_in_browser);
