//! The cut planner: from a list or a job to a plan with its proof, in a worker and without one.

use reckoner_e2e::{App, Browser, Screen};
use serde_json::json;

/// Waits until the planner has said its last.
fn wait_for_the_end(app: &App) {
    app.wait_for("plan");
    app.wait_until(
        "the planner has ended",
        "return document.querySelector('[data-testid=planning]') === null",
    );
}

/// The words of an element in one line.
fn line(app: &App, id: &str) -> String {
    app.text(id).split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A job too large to be proved in a moment: many different lengths, invented.
fn hard_list() -> String {
    let parts: Vec<String> =
        (0..60).map(|n| format!("{} @ {}/16", 3 + n % 4, 211 + 17 * n + n * n % 13)).collect();
    let boards = "96 at 10.90, 120 at 13.95, 144 at 16.40, 168 at 19.85, 192 at 23.10";
    format!(
        "#/cut?parts={}&boards={}",
        parts.join(", ").replace(' ', "+"),
        boards.replace(' ', "+")
    )
}

#[test]
fn a_quick_list_is_planned_by_taps_with_the_server_stopped() {
    let app = App::open(Screen::PHONE);
    app.wait_until_kept();
    app.server.stop();
    app.tap("to-cut");
    app.wait_for_start();
    // The list that is there from the start is planned at once.
    wait_for_the_end(&app);
    let first = line(&app, "cost");
    app.assert_on_first_screen("answer-headline");
    // Another list, by thumb: two pieces of 45 in and one of 50 from boards of 96 in at 10 each.
    app.enter("parts", &["2", "@", "4", "5", "comma", "5", "0", "next"]);
    app.press(&["9", "6", "at", "1", "0", "next"]);
    app.tap("key-clear");
    app.press(&["close"]);
    app.wait_for_text("cost", "20.00");
    wait_for_the_end(&app);
    assert_ne!(first, "20.00");
    assert!(line(&app, "proof").contains("Proved"), "{}", line(&app, "proof"));
    assert!(line(&app, "shopping").contains("20.00"), "{}", line(&app, "shopping"));
    assert!(app.shows("board-1") && app.shows("board-2") && !app.shows("board-3"));
    app.assert_no_sideways_scroll();
    app.assert_quiet_console();
}

#[test]
fn other_ways_to_buy_are_worked_out_when_asked_for() {
    let app = App::open_at(Screen::PHONE, "#/cut");
    wait_for_the_end(&app);
    app.tap("compare");
    app.wait_until(
        "both answers are there",
        "return document.querySelector('[data-testid=compared]')?.textContent.includes('Next cheapest')",
    );
    let words = line(&app, "compared");
    assert!(words.contains("All board as"), "{words}");
    app.assert_accessible();
    app.assert_quiet_console();
}

#[test]
fn stopping_keeps_the_best_plan_so_far_and_the_page_never_waits() {
    let app = App::open_at(Screen::PHONE, "");
    app.script(
        "window.gaps = []; let last = performance.now();
         const frame = (now) => { gaps.push(now - last); last = now; requestAnimationFrame(frame); };
         requestAnimationFrame(frame)",
    );
    app.go(&hard_list());
    app.wait_for_start();
    app.wait_for("plan");
    app.wait_for("stop-planning");
    app.tap("stop-planning");
    wait_for_the_end(&app);
    assert!(app.shows("plan") && app.shows("cost"));
    let headline = line(&app, "answer-headline");
    assert!(headline.contains("Best plan found"), "{headline}");
    assert!(headline.contains("You stopped it"), "{headline}");
    // It is really gone: nothing changes any more.
    let cost = line(&app, "cost");
    app.script("return new Promise((done) => setTimeout(done, 1500))");
    assert_eq!(line(&app, "cost"), cost);
    app.assert_quiet_console();
}

#[test]
fn what_cannot_be_planned_is_named_beside_its_field() {
    let app = App::open_at(Screen::PHONE, "#/cut?parts=beam:+1+@+200&boards=96+at+10");
    app.wait_for("problem-parts");
    let words = line(&app, "problem-parts");
    assert!(words.contains("beam") && words.contains("longest"), "{words}");
    assert!(!app.shows("plan"));
    app.assert_accessible();
    app.go("#/cut?parts=&boards=96+at+10");
    app.wait_for("problem-parts");
    app.go("#/cut?parts=4+@+30&boards=96+at+0");
    app.wait_for("problem-boards");
    assert!(!app.shows("plan"));
    // Only so many boards, and they are not enough: the planner says so, in words.
    app.go("#/cut?parts=9+@+80&boards=96+at+10+max+3&scraps=");
    app.wait_for("impossible");
    let words = line(&app, "impossible");
    assert!(words.contains("not enough"), "{words}");
    app.assert_accessible();
    app.assert_quiet_console();
}

/// A browser in which no page finds workers.
fn without_workers() -> App {
    let app = App::with(Browser::start(Screen::PHONE));
    app.cdp("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": "delete window.Worker" }));
    app
}

#[test]
fn a_device_without_workers_gets_the_quick_plan_and_is_told_so() {
    let app = without_workers();
    app.go(&hard_list());
    app.wait_for_start();
    assert_eq!(app.script("return typeof window.Worker"), "undefined");
    wait_for_the_end(&app);
    let words = line(&app, "planner-trouble");
    assert!(words.contains("cannot plan in the background"), "{words}");
    assert!(app.shows("cost") && app.shows("board-1"));
    app.assert_accessible();
    app.assert_quiet_console();
}

#[test]
fn a_planner_that_cannot_be_loaded_is_told_in_words() {
    let app = App::open(Screen::PHONE);
    let file = app.script(
        "const link = document.querySelector('link[rel=worker][href*=planner]');
         return new URL(link.dataset.wasm, document.baseURI).pathname",
    );
    app.server.spoil(file.as_str().expect("a path"), reckoner_devserver::Fault::Garbled);
    app.go("#/cut");
    app.wait_for_start();
    app.wait_for("planner-trouble");
    assert!(line(&app, "planner-trouble").contains("could not be loaded"));
    assert!(!app.shows("recovery"), "the page itself goes on");
}
