//! What a hand and an ear meet: a button that is held, a count that is typed, folds that stay, an answer that is heard
//! once the keys rest.

use reckoner_e2e::Act::{Hold, Keys, Tap};
use reckoner_e2e::{App, Screen};
use serde_json::json;

use crate::shelf::begin_the_demo_anew;

const LIST: &str = "#/cut?parts=leg:+4+@+40,+peg:+2+@+6&boards=96+at+10&scraps=&unit=in";

#[track_caller]
fn count(app: &App, id: &str) -> u32 {
    let text = app.text(id);
    text.parse().unwrap_or_else(|_| panic!("{id} is a number: {text}"))
}

#[test]
fn minus_and_plus_go_on_while_they_are_held() {
    for screen in [Screen::PHONE, Screen::DESKTOP] {
        let app = App::open_at(screen, LIST);
        app.wait_for_text("count-parts-0", "4");
        app.act(&[Hold("more-parts-0", 1_200)], 0);
        let many = count(&app, "count-parts-0");
        assert!((7..=24).contains(&many), "held for 1.2 s: {many}");
        // Let go, it stands.
        app.act(&[Tap("more-parts-1")], 300);
        app.wait_for_text("count-parts-1", "3");
        assert_eq!(count(&app, "count-parts-0"), many);
        // One fewer than one asks first, however long it is held.
        app.act(&[Hold("fewer-parts-1", 1_600)], 0);
        app.wait_for("take-out-parts-1");
        app.tap("keep-parts-1");
        app.wait_for_text("count-parts-1", "1");
        app.assert_quiet_console();
    }
}

#[test]
fn a_key_that_takes_away_goes_on_while_it_is_held() {
    let app = App::open_at(Screen::PHONE, "#/spacing");
    app.enter("length", &["1", "2", "3", "4", "5", "6", "7", "8", "9"]);
    app.wait_for_value("field-length", "123456789");
    app.act(&[Hold("key-backspace", 600)], 0);
    let left = app.script("return document.getElementById('field-length').value");
    let left = left.as_str().expect("a text").to_owned();
    assert!(!left.is_empty() && left.len() < 8, "held for 0.6 s: {left:?}");
    app.press(&["backspace"]);
    app.wait_for_value("field-length", &left[..left.len() - 1]);
    app.assert_quiet_console();
}

#[test]
fn a_count_can_be_tapped_and_typed() {
    for screen in [Screen::PHONE, Screen::DESKTOP] {
        let app = App::open_at(screen, LIST);
        app.act(&[Tap("number-parts-0"), Keys("12")], 0);
        app.wait_for_text("count-parts-0", "12");
        app.wait_for_value("number-parts-0", "12");
        app.tap("more-parts-0");
        app.wait_for_value("number-parts-0", "13");
        // What was never written is typed over, too.
        app.tap("add-parts");
        app.act(&[Tap("number-parts-2"), Keys("5")], 0);
        app.wait_for_text("count-parts-2", "5");
        app.assert_no_sideways_scroll();
        app.assert_accessible();
        app.picture(&format!("count-typed-{}", screen.width));
        // In a job: pieces, and lengths at the yard.
        app.go("#/jobs");
        app.tap("open-demo");
        begin_the_demo_anew(&app);
        app.section("parts");
        let part = app.script(
            "return document.querySelector('[data-testid^=number-of-]:not([readonly])').dataset.testid",
        );
        let number = part.as_str().expect("a count");
        app.act(&[Tap(number), Keys("23")], 0);
        app.wait_for_text(&number.replace("number-", "count-"), "23");
        // None is no count: it stands as it was.
        app.act(&[Tap(number), Keys("0"), Tap("section-sizes")], 0);
        app.section("parts");
        app.wait_for_value(number, "23");
        app.picture(&format!("count-in-job-{}", screen.width));
        app.section("rack");
        let yard = app.script(
            "return document.querySelector('[data-testid^=number-at-yard-]').dataset.testid",
        );
        let yard = yard.as_str().expect("a length at the yard");
        app.act(&[Tap(yard), Keys("7")], 0);
        app.wait_for_text(&yard.replace("number-", "count-"), "7");
        app.assert_quiet_console();
    }
}

/// Whether a fold whose row has this test id stands open.
fn is_open(app: &App, toggle: &str) -> bool {
    let script = format!(
        "return document.querySelector('[data-testid=\"{toggle}\"]').closest('details').open"
    );
    app.script(&script) == json!(true)
}

#[test]
fn a_fold_that_was_opened_is_open_after_a_key() {
    for screen in [Screen::PHONE, Screen::DESKTOP] {
        let app = App::open_at(screen, "#/spacing");
        for fold in ["marks-toggle", "working-toggle"] {
            app.tap(fold);
            assert!(is_open(&app, fold), "{fold}");
        }
        app.tap("field-length");
        app.type_keys("50");
        app.type_keys("\u{e00c}");
        app.wait_for("working-toggle");
        for fold in ["marks-toggle", "working-toggle"] {
            assert!(is_open(&app, fold), "{fold} on {}", screen.width);
        }
        // Nor is one lost where there was no answer in between, and what was closed stays closed.
        app.tap("marks-toggle");
        app.tap("field-length");
        app.type_keys("x");
        app.wait_for_words("answer-headline", "No answer yet");
        app.tap("key-clear");
        app.type_keys("52\u{e00c}");
        app.wait_for("working-toggle");
        assert!(is_open(&app, "working-toggle") && !is_open(&app, "marks-toggle"));
        app.assert_quiet_console();
    }
}

/// What a screen reader is told: every change of a live region on the page.
const LISTEN: &str = "window.heard = [];
    const live = '[role=status], [role=alert], [aria-live], output';
    new MutationObserver((changes) => {
      for (const it of changes) {
        const at = it.target.nodeType === 1 ? it.target : it.target.parentElement;
        const region = at?.closest(live);
        if (region) heard.push(region.textContent);
      }
    }).observe(document.body, { subtree: true, childList: true, characterData: true });";

#[test]
fn an_answer_is_heard_once_the_keys_rest() {
    for screen in [Screen::PHONE, Screen::DESKTOP] {
        let app = App::open_at(screen, "#/spacing");
        app.wait_for("answer-headline");
        app.script(LISTEN);
        app.act(&[Tap("field-length"), Keys("47 1/2")], 150);
        app.wait_for_value("field-length", "47 1/2");
        assert_eq!(app.script("return heard"), json!([]), "while keys are pressed");
        app.wait_until("it is heard", "return heard.length > 0");
        app.act(&[Keys("5")], 1_500);
        let heard = app.script("return [...new Set(heard)]");
        let heard = heard.as_array().expect("words");
        // 47 1/2 and 47 1/25: each once, with the sizes that are not theirs.
        assert_eq!(heard.len(), 2, "{heard:?}");
        assert!(
            heard.iter().all(|it| it.as_str().is_some_and(|it| it.contains("Rests on"))),
            "{heard:?}"
        );
        app.assert_quiet_console();
    }
}
