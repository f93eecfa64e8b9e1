//! Measures the built app at a quarter of this machine's speed: a table for DEVELOPERS.md.
//!
//! Run it with `cargo xtask bench page`; with `line` after it, only the third and fourth. Five things are measured:
//!
//! - **Key to paint**: from the tap on a key of the keypad, by its own time stamp, until the
//!   frame with the new answer has been drawn. Chromium's frame limit is off, so the wait for
//!   the screen's next refresh (up to 16.7 ms on a phone) is not in it, only the work. First of a page that is one
//!   key and one number: less than that no page can take.
//! - **Key to the drawing**: the same, until the last frame that the key brought; the drawing comes after the answer.
//! - **First visit over a slow line**: nothing is on the device, until the page asked for is on the screen.
//! - **From page to page**: from a tap on the home page, once every part is fetched, until the next page is drawn.
//! - **Cold start without a signal**: a browser that was just started, the server gone, from the
//!   navigation until the app has drawn its first page.
//!
//! Chromium slows the page's own thread down, not the service worker's.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::thread::sleep;
use std::time::Duration;

use reckoner_e2e::timing::{print_row, tap_time, tap_time_of_all, time_until};
use reckoner_e2e::{App, Browser, Compression, Screen, Server, release};
use serde_json::{Value, json};

/// How much slower than this machine the phone is taken to be.
const SLOW_DOWN: u32 = 4;
/// Visits to each calculator; in each one a few keys are tapped.
const VISITS: usize = 6;
/// And further ones in which it is waited for all that a key brings.
const VISITS_FOR_ALL: usize = 3;
const KEYS: [&str; 4] = ["key-3", "key-7", "key-backspace", "key-5"];
/// How often, and how far apart, to look for the keys.
const MOST_LOOKS: usize = 12;
const BETWEEN_LOOKS: Duration = Duration::from_millis(200);
/// A frame as soon as there is something to draw.
const FREE_FRAMES: [&str; 2] = ["--disable-frame-rate-limit", "--disable-gpu-vsync"];
const COLD_STARTS: usize = 10;
/// First visits to each page, and the line that they come over: 1.6 Mbit/s, with a moment before each answer.
const FIRST_VISITS: usize = 5;
const LINE_BYTES_A_SECOND: u32 = 200_000;
const LINE_DELAY_MS: u32 = 40;
/// Between two looks whether the server has compressed everything.
const TO_COMPRESS: Duration = Duration::from_secs(5);

fn main() {
    println!(
        "| measured at {SLOW_DOWN}x CPU slow-down | samples | median ms | 95th percentile ms | worst ms |"
    );
    println!("| --- | ---: | ---: | ---: | ---: |");
    if std::env::args().nth(1).as_deref() != Some("line") {
        print_row("key to paint, a page with nothing else on it", on_an_empty_page());
        for (calculator, (answer, all)) in key_to_paint() {
            print_row(&format!("key to paint, {calculator}"), answer);
            print_row(&format!("key to the drawing, {calculator}"), all);
        }
    }
    let server = ready_server();
    for page in ["#/", "#/tape", "#/frame", "#/jobs", "#/cut"] {
        print_row(&format!("first visit at 1.6 Mbit/s, {page}"), first_visits(&server, page));
    }
    for (tapped, seen) in
        [("home-frame", "answer-headline"), ("to-jobs", "new-job"), ("to-cut", "answer-headline")]
    {
        print_row(&format!("from home, {tapped}"), going(tapped, seen));
    }
    print_row("cold start without a signal", cold_starts());
}

/// Milliseconds from key to paint where the page is one key and one number, and no program: what the browser and the
/// measuring take of every other such time.
fn on_an_empty_page() -> Vec<f64> {
    let app = App::with(Browser::with_switches(Screen::PHONE, &FREE_FRAMES));
    app.go("notices.txt");
    app.script(
        "document.body.innerHTML = '<p>0</p><button data-testid=\"key-3\">3</button>';
         const [number, key] = document.body.children;
         key.addEventListener('click', () => { number.textContent = Number(number.textContent) + 1; })",
    );
    app.slow_down(SLOW_DOWN);
    (0..VISITS * KEYS.len()).filter_map(|_| tap_time(&app, KEYS[0])).collect()
}

/// Milliseconds from key to paint, of the answer and of all that comes after it, for each calculator on the home page.
fn key_to_paint() -> BTreeMap<String, (Vec<f64>, Vec<f64>)> {
    let app = App::with(Browser::with_switches(Screen::PHONE, &FREE_FRAMES));
    app.go("");
    app.wait_for_start();
    let ids = app.visible_ids();
    let calculators: Vec<&str> = ids.iter().filter_map(|id| id.strip_prefix("home-")).collect();
    let mut measured = BTreeMap::new();
    for calculator in calculators {
        let (mut times, mut of_all) = (Vec::new(), Vec::new());
        let mut pages = BTreeSet::new();
        for visit in 0..VISITS + VISITS_FOR_ALL {
            // The first question about lumber wants no number.
            let question = if calculator == "lumber" { "?ask=amount" } else { "" };
            app.go(&format!("#/{calculator}{question}"));
            app.wait_for("answer-headline");
            if !open_a_number(&app) {
                eprintln!("{calculator}: no field brings up the keys");
                break;
            }
            app.slow_down(SLOW_DOWN);
            pages.insert(words(&app));
            for key in KEYS {
                if visit < VISITS {
                    times.extend(tap_time(&app, key));
                } else {
                    of_all.extend(tap_time_of_all(&app, key));
                }
                pages.insert(words(&app));
            }
            app.slow_down(1);
            // What was typed is kept, and the next visit begins with our example again.
            app.tap("key-close");
            app.tap("start-fresh");
            app.go("");
            app.wait_for_start();
        }
        assert!(
            times.is_empty() || pages.len() > 1,
            "{calculator}: no key changed anything, so nothing was measured"
        );
        measured.insert(calculator.to_owned(), (times, of_all));
    }
    measured
}

/// Opens the form and goes on to the first field that brings up the keys; whether there is one.
fn open_a_number(app: &App) -> bool {
    for _ in 0..MOST_LOOKS {
        if app.shows(KEYS[0]) {
            return true;
        }
        // Some have the keys out from the start, some begin with a choice.
        for way in ["field-next", "go-through"] {
            if app.shows(way) {
                app.tap(way);
                break;
            }
        }
        sleep(BETWEEN_LOOKS);
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
            started(&browser)
        })
        .collect()
}

/// Milliseconds from navigation until a page of the app was on the screen.
fn started(browser: &Browser) -> f64 {
    let mark = "performance.getEntriesByName('reckoner-started')[0]?.startTime";
    browser.wait_until("the app has started", &format!("return {mark} > 0"));
    match browser.script(&format!("return {mark}")) {
        Value::Number(time) => time.as_f64().expect("a time"),
        other => panic!("not a time: {other}"),
    }
}

/// Milliseconds from navigation until a page is on the screen, each in a browser that was never there.
fn first_visits(server: &Server, page: &str) -> Vec<f64> {
    let visit = |_| {
        let browser = Browser::start(Screen::PHONE);
        browser.cdp("Network.enable", &json!({}));
        browser.cdp(
            "Network.emulateNetworkConditions",
            &json!({ "offline": false, "latency": LINE_DELAY_MS,
                     "downloadThroughput": LINE_BYTES_A_SECOND, "uploadThroughput": LINE_BYTES_A_SECOND }),
        );
        browser.slow_down(SLOW_DOWN);
        browser.open(&format!("{}{page}", server.url()));
        started(&browser)
    };
    (0..FIRST_VISITS).map(visit).collect()
}

/// A server that has every file compressed already, as a published one has.
fn ready_server() -> Server {
    let address = ([127, 0, 0, 1], 0).into();
    let server = Server::at(address, release::built(), Compression::Best).expect("a server");
    let browser = Browser::start(Screen::PHONE);
    browser.open(&server.url());
    let kept = "return document.documentElement.dataset.offline === 'ready'";
    for _ in 0..MOST_LOOKS {
        if browser.script(kept) == json!(true) {
            return server;
        }
        sleep(TO_COMPRESS);
    }
    panic!("the app is not kept offline");
}

/// Milliseconds from a tap on the home page until what is `seen` of the next page is drawn.
fn going(tapped: &str, seen: &str) -> Vec<f64> {
    let once = |_| {
        let app = App::open(Screen::PHONE);
        app.wait_until_kept();
        app.slow_down(SLOW_DOWN);
        time_until(&app, &format!("[data-testid={tapped}]"), &format!("[data-testid={seen}]"))
    };
    (0..FIRST_VISITS).map(once).collect()
}
