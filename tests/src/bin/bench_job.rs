//! Measures a job of the largest size, 2,000 sizes and 1,000 parts, and a shelf of 200 jobs, at a
//! quarter of this machine's speed: a table for DEVELOPERS.md.
//!
//! Run it with `cargo xtask bench job`. The sizes are a chain of 1,000, each made of the one
//! before, that begins at the leg, and a fan of 1,000 rails between two legs: a change of the leg
//! moves all of it, and all that is cut is wrong then. From the tap, by its own time stamp, until the next frame has been drawn;
//! Chromium's frame limit is off.

use reckoner_e2e::timing::{print_row, tap_time, time_until};
use reckoner_e2e::{App, Browser, Screen};
use serde_json::{Value, json};

/// How much slower than this machine the phone is taken to be.
const SLOW_DOWN: u32 = 4;
const ROUNDS: usize = 5;
const KEYS: [&str; 4] = ["key-3", "key-7", "key-backspace", "key-5"];

fn main() {
    let switches = ["--disable-frame-rate-limit", "--disable-gpu-vsync"];
    let app = App::with(Browser::with_switches(Screen::PHONE, &switches));
    app.go("#/jobs");
    app.wait_for_start();
    app.wait_for("new-job");
    put(&app, "large", "The largest", &large());
    app.go("#/job/large");
    // One piece of each of 499 parts.
    app.wait_for_text("to-look-at", "499");
    println!(
        "| a job of 2,000 sizes and 1,000 parts at {SLOW_DOWN}x CPU slow-down | samples | median ms | 95th percentile ms | worst ms |"
    );
    println!("| --- | ---: | ---: | ---: | ---: |");
    print_row("key to paint, in a size that moves everything", keys(&app, 1));
    print_row("key to paint, in a size that moves nothing else", keys(&app, 2_000));
    let (undo, redo) = undo_and_redo(&app);
    print_row("undo to paint, everything moves", undo);
    print_row("redo to paint, everything moves", redo);
    print_row("from sizes to parts", sections(&app));
    print_row("from more to the build order", build_order(&app));
    print_row("a job opened from the shelf", opened(&app));
    for number in 0..199 {
        put(&app, &format!("job-{number}"), &format!("Job {number}"), &small());
    }
    print_row("the shelf with 200 jobs, the largest among them", shelf(&app));
}

fn item(id: u64, kind: &str, rest: Value) -> Value {
    let mut item = json!({ "id": id, "kind": kind, "rank": id });
    let fields = rest.as_object().expect("an object").clone();
    item.as_object_mut().expect("an object").extend(fields);
    item
}

fn file(items: Vec<Value>) -> String {
    let next_id = items.len() + 1;
    json!({
        "format": "sawdust-reckoner-job", "version": 2, "title": "The largest", "unit": "in",
        "next_id": next_id, "items": items,
    })
    .to_string()
}

fn large() -> String {
    let size = |n: u64| {
        let (name, formula) = match n {
            1 => ("leg".to_owned(), "3 1/4".to_owned()),
            2 => ("size 2".to_owned(), "leg + 1/16".to_owned()),
            3..=1_000 => (format!("size {n}"), format!("size {} + 1/16", n - 1)),
            _ => (format!("rail {n}"), format!("size {} + 40 - 3 × leg", (n - 1_000).max(2))),
        };
        item(n, "measure", json!({ "name": name, "formula": formula }))
    };
    let part = |n: u64| {
        let length = format!("rail {}", n - 1_000 + 1);
        let mut part = json!({
            "name": format!("part {n}"), "quantity": "4", "thickness": "leg", "width": "3 1/4",
            "length": length, "stock": "2x6",
        });
        // Of every second part all four are cut, at the size that was wanted: 33 1/2 and a sixteenth for each size of the
        // chain; the last of them came out an inch long.
        if n.is_multiple_of(2) {
            let sixteenths = 536 + (n - 1_999).max(2) - 1;
            let cut = ["3 1/4".to_owned(), "3 1/4".to_owned(), format!("{sixteenths}/16")];
            let good = json!({ "cut": 0 });
            part["cuts"] = json!([cut]);
            part["pieces"] = json!([good, good, good, { "cut": 0, "as_cut": format!("{}/16", sixteenths + 16) }]);
        }
        item(n, "part", part)
    };
    file((1..=2_000).map(size).chain((2_001..=2_999).map(part)).collect())
}

fn small() -> String {
    file(vec![item(1, "measure", json!({ "name": "leg", "formula": "3 1/4" }))])
}

/// Writes a job into the browser's database as the app keeps it.
fn put(app: &App, key: &str, title: &str, job: &str) {
    let record = json!({ "title": title, "job": job, "history": "", "changed": 1 });
    app.script(&format!(
        "const open = indexedDB.open('reckoner');
         await new Promise((done) => open.onsuccess = done);
         const edit = open.result.transaction('jobs', 'readwrite');
         edit.objectStore('jobs').put({record}, '{key}');
         await new Promise((done) => edit.oncomplete = done);
         open.result.close();"
    ));
}

/// Key to paint in the size as cut of one measure.
fn keys(app: &App, id: u64) -> Vec<f64> {
    let mut times = Vec::new();
    app.go("");
    app.go(&format!("#/job/large/item/{id}"));
    app.wait_for("field-as_cut");
    app.tap("field-as_cut");
    app.wait_for(KEYS[0]);
    app.slow_down(SLOW_DOWN);
    for _ in 0..ROUNDS {
        times.extend(KEYS.iter().filter_map(|key| tap_time(app, key)));
        for _ in 0..3 {
            times.extend(tap_time(app, "key-backspace"));
        }
    }
    app.slow_down(1);
    let answer = app.text("answer-headline");
    assert!(!answer.is_empty(), "nothing was answered");
    times
}

/// Takes a change of the leg back and makes it again, on the list of sizes.
fn undo_and_redo(app: &App) -> (Vec<f64>, Vec<f64>) {
    app.go("");
    app.go("#/job/large/item/1");
    app.enter("formula", &["3", "close"]);
    app.go("#/job/large/sizes");
    app.wait_for("sizes");
    app.wait_until(
        "the change can be taken back",
        "return !document.querySelector('[data-testid=undo]').disabled",
    );
    let rail = "document.querySelector('[data-testid=\"item-size 9\"]').textContent";
    let (mut undo, mut redo) = (Vec::new(), Vec::new());
    for _ in 0..ROUNDS {
        for (button, times) in [("undo", &mut undo), ("redo", &mut redo)] {
            let before = app.script(&format!("return {rail}"));
            app.slow_down(SLOW_DOWN);
            times.extend(tap_time(app, button));
            app.slow_down(1);
            assert_ne!(app.script(&format!("return {rail}")), before, "{button} moves a size");
            // The shelf is a moment behind the page.
            std::thread::sleep(std::time::Duration::from_millis(1_200));
        }
    }
    (undo, redo)
}

fn sections(app: &App) -> Vec<f64> {
    let mut times = Vec::new();
    for _ in 0..ROUNDS {
        app.tap("section-sizes");
        app.wait_for("sizes");
        app.slow_down(SLOW_DOWN);
        times.push(time_until(app, "[data-testid=section-parts]", "[data-testid=parts]"));
        app.slow_down(1);
    }
    times
}

fn build_order(app: &App) -> Vec<f64> {
    let mut times = Vec::new();
    for _ in 0..ROUNDS {
        app.go("#/job/large/more");
        app.wait_for("section-build");
        app.slow_down(SLOW_DOWN);
        times.push(time_until(app, "[data-testid=section-build]", "[data-testid=build]"));
        app.slow_down(1);
    }
    times
}

fn opened(app: &App) -> Vec<f64> {
    let mut times = Vec::new();
    for _ in 0..ROUNDS {
        app.go("#/jobs");
        app.wait_for("jobs");
        app.slow_down(SLOW_DOWN);
        times.push(time_until(app, "[href='#/job/large']", "[data-testid=front]"));
        app.slow_down(1);
    }
    times
}

fn shelf(app: &App) -> Vec<f64> {
    let mut times = Vec::new();
    for _ in 0..ROUNDS {
        app.go("#/job/job-7/hand-on");
        app.wait_for("back");
        app.slow_down(SLOW_DOWN);
        times.push(time_until(app, "[data-testid=back]", "[data-testid=jobs]"));
        app.slow_down(1);
    }
    times
}
