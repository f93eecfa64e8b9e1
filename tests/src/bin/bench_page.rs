//! Measures the built app at a quarter of this machine's speed: a table for DEVELOPERS.md.
//!
//! Run it with `cargo xtask bench page`. Two things are measured:
//!
//! - **Key to paint**: from the tap on a key of the keypad, by its own time stamp, until the
//!   frame with the new answer has been drawn. Chromium's frame limit is off, so the wait for
//!   the screen's next refresh (up to 16.7 ms on a phone) is not in it, only the work.
//! - **Cold start without a signal**: a browser that was just started, the server gone, from the
//!   navigation until the app has drawn its first page.
//!
//! Chromium slows the page's own thread down, not the service worker's.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::thread::sleep;
use std::time::Duration;

use reckoner_e2e::timing::{print_row, tap_time};
use reckoner_e2e::{App, Browser, Screen, release};
use serde_json::Value;

/// How much slower than this machine the phone is taken to be.
const SLOW_DOWN: u32 = 4;
/// Visits to each calculator; in each one a few keys are tapped.
const VISITS: usize = 6;
const KEYS: [&str; 4] = ["key-3", "key-7", "key-backspace", "key-5"];
/// How often, and how far apart, to look for the keys.
const MOST_LOOKS: usize = 12;
const BETWEEN_LOOKS: Duration = Duration::from_millis(200);
const COLD_STARTS: usize = 10;

fn main() {
    println!(
        "| measured at {SLOW_DOWN}x CPU slow-down | samples | median ms | 95th percentile ms | worst ms |"
    );
    println!("| --- | ---: | ---: | ---: | ---: |");
    for (calculator, times) in key_to_paint() {
        print_row(&format!("key to paint, {calculator}"), times);
    }
    print_row("cold start without a signal", cold_starts());
}

/// Milliseconds from key to paint, for each calculator on the home page.
fn key_to_paint() -> BTreeMap<String, Vec<f64>> {
    let switches = ["--disable-frame-rate-limit", "--disable-gpu-vsync"];
    let app = App::with(Browser::with_switches(Screen::PHONE, &switches));
    app.go("");
    app.wait_for_start();
    let ids = app.visible_ids();
    let calculators: Vec<&str> = ids.iter().filter_map(|id| id.strip_prefix("home-")).collect();
    let mut measured = BTreeMap::new();
    for calculator in calculators {
        let mut times = Vec::new();
        let mut pages = BTreeSet::new();
        for _ in 0..VISITS {
            app.go(&format!("#/{calculator}"));
            app.wait_for("answer-headline");
            if !open_a_number(&app) {
                eprintln!("{calculator}: no field brings up the keys");
                break;
            }
            app.slow_down(SLOW_DOWN);
            pages.insert(words(&app));
            for key in KEYS {
                times.extend(tap_time(&app, key));
                pages.insert(words(&app));
            }
            app.slow_down(1);
            app.go("");
            app.wait_for_start();
        }
        assert!(
            times.is_empty() || pages.len() > 1,
            "{calculator}: no key changed anything, so nothing was measured"
        );
        measured.insert(calculator.to_owned(), times);
    }
    measured
}

/// Opens the form and goes on to the first field that brings up the keys; whether there is one.
fn open_a_number(app: &App) -> bool {
    app.tap("change-sizes");
    for _ in 0..MOST_LOOKS {
        if app.shows(KEYS[0]) {
            return true;
        }
        sleep(BETWEEN_LOOKS);
        // Some begin with a choice.
        if !app.shows(KEYS[0]) && app.shows("field-next") {
            app.tap("field-next");
        }
    }
    false
}

/// Everything that the page says now.
fn words(app: &App) -> String {
    let text = app.script("return document.getElementById('app').innerText");
    text.as_str().unwrap_or_default().to_owned()
}

/// Milliseconds from navigation to the app's first page, each in a browser just started.
fn cold_starts() -> Vec<f64> {
    let profile = release::target_folder().join("bench-profile");
    if profile.exists() {
        fs::remove_dir_all(&profile).expect("an old profile can be removed");
    }
    let switch = format!("--user-data-dir={}", profile.display());
    let app = App::with(Browser::with_switches(Screen::PHONE, &[&switch]));
    app.go("");
    app.wait_until_kept();
    let server = app.close_browser();
    server.stop();
    let url = server.url();
    (0..COLD_STARTS)
        .map(|_| {
            let browser = Browser::with_switches(Screen::PHONE, &[&switch]);
            browser.slow_down(SLOW_DOWN);
            browser.open(&url);
            let mark = "performance.getEntriesByName('reckoner-started')[0]?.startTime";
            browser.wait_until("the app has started", &format!("return {mark} > 0"));
            match browser.script(&format!("return {mark}")) {
                Value::Number(time) => time.as_f64().expect("a time"),
                other => panic!("not a time: {other}"),
            }
        })
        .collect()
}
