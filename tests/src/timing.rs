//! How long the page takes to answer, as a table for DEVELOPERS.md.

use serde_json::json;

use crate::App;

/// Prints a row of the table: how many, median, 95th percentile, worst.
pub fn print_row(what: &str, mut times: Vec<f64>) {
    if times.is_empty() {
        println!("| {what} | 0 | | | |");
        return;
    }
    times.sort_by(f64::total_cmp);
    let at = |share: f64| times[((times.len() - 1) as f64 * share).ceil() as usize];
    println!("| {what} | {} | {:.1} | {:.1} | {:.1} |", times.len(), at(0.5), at(0.95), at(1.0));
}

/// Taps a key as a finger does; milliseconds until the frame after it was drawn. `None` when
/// the page has no such key.
pub fn tap_time(app: &App, key: &str) -> Option<f64> {
    tap_until(app, key, "drawn(tell)")
}

/// The same, until the last frame that the key brought was drawn: what comes after the answer is in it.
pub fn tap_time_of_all(app: &App, key: &str) -> Option<f64> {
    // What has not come after a quarter of a second is no part of the answer.
    let until_the_last = "let last;
         const watch = new MutationObserver(() => drawn((time) => last = time));
         watch.observe(document.getElementById('app'),
           { subtree: true, childList: true, attributes: true, characterData: true });
         setTimeout(() => { watch.disconnect(); tell(last); }, 250);";
    tap_until(app, key, until_the_last)
}

/// Taps a key, and does `what` in the event: there, `drawn` calls with the time once the next frame was drawn.
fn tap_until(app: &App, key: &str, what: &str) -> Option<f64> {
    let place = app.script(&format!(
        "const key = document.querySelector('[data-testid=\"{key}\"]');
         if (!key) return null;
         window.tapTime = new Promise((tell) => addEventListener('click', (event) => {{
           const drawn = (call) => requestAnimationFrame(() => {{
             const {{ port1, port2 }} = new MessageChannel();
             port1.onmessage = () => call(performance.now() - event.timeStamp);
             port2.postMessage(null);
           }});
           {what}
         }}, {{ capture: true, once: true }}));
         const box = key.getBoundingClientRect();
         return [box.left + box.width / 2, box.top + box.height / 2]"
    ));
    let (x, y) = (place[0].as_f64()?, place[1].as_f64()?);
    for (kind, points) in [("touchStart", json!([{ "x": x, "y": y }])), ("touchEnd", json!([]))] {
        app.cdp("Input.dispatchTouchEvent", &json!({ "type": kind, "touchPoints": points }));
    }
    app.script("return await window.tapTime").as_f64()
}

/// Taps what `tapped` finds; milliseconds until the page holds what `wanted` finds and has drawn
/// it.
///
/// # Panics
///
/// When the page has nothing to tap.
#[track_caller]
pub fn time_until(app: &App, tapped: &str, wanted: &str) -> f64 {
    let time = app.script(&format!(
        "const start = performance.now();
         document.querySelector({tapped:?}).click();
         while (!document.querySelector({wanted:?})) await new Promise(requestAnimationFrame);
         await new Promise(requestAnimationFrame);
         const {{ port1, port2 }} = new MessageChannel();
         await new Promise((drawn) => {{ port1.onmessage = drawn; port2.postMessage(null); }});
         return performance.now() - start"
    ));
    time.as_f64().unwrap_or_else(|| panic!("no time for {tapped}: {time}"))
}
