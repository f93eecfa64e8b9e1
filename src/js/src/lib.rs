//! The calculators as functions for JavaScript.
//!
//! One function a calculator, each taking a plain object with the texts of its fields and giving
//! a plain object with its results; they call the same core as the page. Lengths come as exact
//! text (`"27/8"`, in inches) with the form for reading beside it. A question that cannot be
//! answered gives its problems, each beside a field, with the nearest thing that works; nothing
//! is thrown. The examples that the forms of the page start with are not used: a size left out is
//! a problem of that field, and what else was taken as given is listed in `assumed`.
//!
//! What is published is the folder `package` with this program in it: `call.js` there copies what a
//! caller wrote into plain values before it comes here. Its types (`index.d.ts`) and its list of
//! functions (`functions.js`) are made from the calculators' own lists of fields and results; a test
//! keeps them current.

mod input;
mod output;
pub mod types;

use reckoner_core::calculators::{self, Calculator};
use reckoner_core::measure::text::NoNames;
use serde::Serialize;
use wasm_bindgen::prelude::*;

use input::Left;
pub use input::{BadCall, BenchIn, Given};
pub use output::{AnswerOut, Out, ProblemOut};

/// Answers one question, as the exported functions do.
#[must_use]
pub fn reckon(calculator: &Calculator, given: &Given, bench: &BenchIn) -> Out {
    let (mut entries, bench) = match (given.entries(calculator), bench.bench()) {
        (Ok(entries), Ok(bench)) => (entries, bench),
        (Err(bad), _) | (_, Err(bad)) => return Out::bad_call(bad),
    };
    let left = Left::of(calculator, &mut entries, &bench);
    if left.problems.is_empty() {
        let sheet = calculator.sheet(&entries, &bench, &NoNames);
        Out::of(&sheet, &entries, left.assumed, &bench)
    } else {
        Out::bad_calls(left.problems)
    }
}

fn call(slug: &str, input: JsValue, bench: JsValue) -> JsValue {
    let out = match (calculators::find(slug), input::from_js(input), input::from_js(bench)) {
        (Some(calculator), Ok(given), Ok(bench)) => reckon(calculator, &given, &bench),
        (None, ..) => Out::bad_call(BadCall::new("", format!("There is no calculator {slug}."))),
        (_, Err(bad), _) | (.., Err(bad)) => Out::bad_call(bad),
    };
    let serializer = serde_wasm_bindgen::Serializer::json_compatible();
    // The answer is texts, numbers and lists of them, so it always has a JavaScript form.
    out.serialize(&serializer).unwrap_or(JsValue::NULL)
}

/// Declares one exported function for each calculator: its name in JavaScript and its slug.
macro_rules! functions {
    ($($name:ident: $slug:literal,)*) => {
        /// Name in JavaScript and slug of every exported calculator.
        pub const FUNCTIONS: &[(&str, &str)] = &[$((stringify!($name), $slug)),*];

        $(
            #[doc = concat!("Answers the calculator `", $slug, "`.")]
            #[wasm_bindgen(skip_typescript)]
            #[must_use]
            pub fn $name(input: JsValue, bench: JsValue) -> JsValue {
                call($slug, input, bench)
            }
        )*
    };
}

functions! {
    tape: "tape",
    lumber: "lumber",
    moisture: "moisture",
    resaw_rip: "resaw-rip",
    crosscut: "crosscut",
    frame: "frame",
    dowel: "dowel",
    screws: "screws",
    spacing: "spacing",
    top: "top",
    curve: "curve",
    angles: "angles",
    strength: "strength",
    finish: "finish",
}
