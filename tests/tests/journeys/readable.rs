//! What is written can be read: it stands whole, inside its place, and no smaller than is read at arm's length.

use reckoner_e2e::{App, Screen};

/// The demo in the middle of its work.
fn demo_in_work() -> App {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.tap("open-demo");
    app.wait_for("front");
    app
}

/// What is printed smaller than so many pixels, of the elements of a selector that are shown.
fn smaller(app: &App, css: &str, least: f64) -> Vec<String> {
    let all = app.script(&format!(
        "return [...document.querySelectorAll('{css}')].filter((it) => it.checkVisibility())
            .map((it) => [parseFloat(getComputedStyle(it).fontSize), it.parentElement.textContent])
            .filter(([size]) => size < {least}).map(([size, text]) => `${{size}} px: ${{text}}`)"
    ));
    all.as_array().into_iter().flatten().map(ToString::to_string).collect()
}

#[test]
fn units_and_fractions_in_a_sentence_are_no_smaller_than_its_words_need() {
    let app = demo_in_work();
    let mut judged = 0;
    for section in ["front", "sizes", "parts", "boards", "build"] {
        if section != "front" {
            app.section(section);
        }
        app.picture(&format!("print-{section}"));
        assert_eq!(smaller(&app, "#app .unit", 14.0), [""; 0], "{section}");
        assert_eq!(smaller(&app, "#app .fraction", 13.0), [""; 0], "{section}");
        let units = app.script("return document.querySelectorAll('#app .unit').length");
        judged += units.as_u64().unwrap_or(0);
    }
    assert!(judged > 20, "only {judged} units");
}

/// What a step waits for is one box, however many lines it takes.
#[test]
fn what_a_step_waits_for_stands_in_one_box() {
    let app = demo_in_work();
    app.section("build");
    app.wait_for("build");
    let boxes = app.script(
        "return [...document.querySelectorAll('.badge.is-wait')].filter((it) => it.checkVisibility())
            .map((it) => it.getClientRects().length)",
    );
    let boxes = boxes.as_array().cloned().unwrap_or_default();
    assert!(!boxes.is_empty() && boxes.iter().all(|it| it == 1), "{boxes:?}");
}

#[test]
fn names_of_sizes_are_whole_on_their_chips() {
    for screen in [Screen::PHONE, Screen::NARROW] {
        let app = App::open_at(screen, "#/frame?question=square");
        app.wait_for("answer-headline");
        if app.shows("keypad") {
            app.tap("key-close");
        }
        app.picture(&format!("chips-{}", screen.width));
        let cut_off = app.script(
            "return [...document.querySelectorAll('.is-chip > .field__label')]
                .filter((it) => it.scrollWidth > it.clientWidth || it.scrollHeight > it.clientHeight + 1
                    || it.getBoundingClientRect().bottom > it.parentElement.querySelector('.field__input').getBoundingClientRect().bottom - 26)
                .map((it) => it.textContent)",
        );
        assert_eq!(cut_off, serde_json::json!([]), "{}", screen.width);
        assert!(app.shows("field-near_side"));
        app.assert_no_sideways_scroll();
    }
}

#[test]
fn a_big_answer_keeps_its_unit_beside_it() {
    let app = App::open_at(Screen::PHONE, "#/screws?question=pilot");
    app.wait_for("answer-headline");
    app.script("document.documentElement.dataset.answers = 'big'");
    if app.shows("keypad") {
        app.tap("key-close");
    }
    app.picture("big-pilot");
    // As tall as one line of its figures.
    let lines = app.script(
        "const value = document.querySelector('.headline__value');
         return value.getBoundingClientRect().height / parseFloat(getComputedStyle(value).fontSize)",
    );
    assert!(lines.as_f64().is_some_and(|it| it < 1.5), "{lines} lines");
    app.assert_no_sideways_scroll();
}

/// Big answers keep to the screen in the units of every tape: were the page wider, a tap would land beside what it means.
#[test]
fn big_answers_keep_to_the_screen_on_every_tape() {
    for screen in [Screen::PHONE, Screen::NARROW] {
        let app = App::open_at(screen, "");
        app.wait_for_start();
        let ids = app.visible_ids();
        let calculators: Vec<&str> = ids.iter().filter_map(|id| id.strip_prefix("home-")).collect();
        assert!(calculators.len() >= 14, "{calculators:?}");
        app.go("#/settings");
        app.tap("big-yes");
        for tape in ["feet", "decimal", "mm", "mm_half", "mm_tenths", "inches"] {
            app.go("#/settings");
            app.tap(&format!("tape-{tape}"));
            for calculator in &calculators {
                app.go(&format!("#/{calculator}"));
                app.wait_for("answer-headline");
                app.wait_until(
                    "answers are big",
                    "return document.documentElement.dataset.answers === 'big'",
                );
                app.assert_no_sideways_scroll();
            }
        }
    }
}

/// With text at twice its size the keys and the front of a job keep to the screen.
#[test]
fn with_text_at_twice_its_size_keys_are_whole_and_a_job_keeps_to_the_screen() {
    let app = demo_in_work();
    app.script("document.documentElement.style.fontSize = '200%'");
    app.picture("front-text-200");
    app.assert_no_sideways_scroll();
    app.section("sizes");
    app.tap("item-leg");
    app.tap("field-as_cut");
    app.wait_for("keypad");
    app.picture("keypad-text-200");
    let cut_off = app.script(
        "return [...document.querySelectorAll('.keypad__tabs > .tab, .keypad__keys > .key')].filter((it) => {
            const words = document.createRange();
            words.selectNodeContents(it);
            return words.getBoundingClientRect().width > it.clientWidth;
        }).map((it) => it.textContent)",
    );
    assert_eq!(cut_off, serde_json::json!([]));
}
