//! The measure keypad: its keys and pages, and what a key does to a text.

mod keys;
mod press;
#[cfg(test)]
mod tests;
#[cfg(target_arch = "wasm32")]
mod view;

pub use keys::{Key, Page, SetOfKeys, keys, pages};
pub use press::{Typed, press};
#[cfg(target_arch = "wasm32")]
pub(crate) use view::{Keypad, KeypadEvent};
