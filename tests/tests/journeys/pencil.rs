//! What a hand and an ear meet: a button that is held, a count that is typed, folds that stay, an answer that is heard
//! once the keys rest.

use std::thread::sleep;
use std::time::Duration;

use reckoner_e2e::Act::{Keys, Tap};
use reckoner_e2e::{App, Screen};
use serde_json::json;

use crate::keys_out::{LYING, seen};
use crate::shelf::{begin_the_demo_anew, new_job_with_a_leg};

const LIST: &str = "#/cut?parts=leg:+4+@+40,+peg:+2+@+6&boards=96+at+10&scraps=&unit=in";

/// What is counted in the first row, for a script.
const COUNTED: &str = "document.querySelector('[data-testid=count-parts-0]').innerText";

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
        app.hold("more-parts-0");
        app.wait_until("it goes on", &format!("return {COUNTED} >= 7"));
        app.let_go();
        // Let go, it stands.
        let many = count(&app, "count-parts-0");
        app.act(&[Tap("more-parts-1")], 300);
        app.wait_for_text("count-parts-1", "3");
        assert_eq!(count(&app, "count-parts-0"), many);
        // Held, it stops at one, however long; one fewer than that is asked by a tap.
        app.hold("fewer-parts-1");
        app.wait_for_text("count-parts-1", "1");
        sleep(Duration::from_millis(300));
        app.let_go();
        app.wait_for_text("count-parts-1", "1");
        assert!(!app.shows("take-out-parts-1") && !app.shows("keypad"));
        app.tap("fewer-parts-1");
        app.tap("keep-parts-1");
        app.wait_for_text("count-parts-1", "1");
        app.assert_quiet_console();
    }
}

#[test]
fn a_key_that_takes_away_goes_on_while_it_is_held() {
    let app = App::open_at(Screen::PHONE, "#/spacing");
    // So many that a slow hand has not taken all of them before it lets go.
    app.enter("length", &["1"; 60]);
    app.wait_for_value("field-length", &"1".repeat(60));
    let length = "document.getElementById('field-length').value";
    app.hold("key-backspace");
    app.wait_until("it goes on", &format!("return {length}.length < 57"));
    app.let_go();
    let left = app.script(&format!("return {length}"));
    let left = left.as_str().expect("a text").to_owned();
    assert!(!left.is_empty());
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
        // A thumb finds it, as it finds the buttons beside it.
        let height = app.script(
            "return document.querySelector('[data-testid=number-parts-0]').getBoundingClientRect().height",
        );
        assert!(height.as_f64().is_some_and(|it| it >= 44.0), "{height}");
        app.tap("more-parts-0");
        app.wait_for_value("number-parts-0", "13");
        // What was never written is typed over, too.
        app.tap("add-parts");
        app.act(&[Tap("number-parts-2"), Keys("5")], 0);
        app.wait_for_text("count-parts-2", "5");
        app.assert_no_sideways_scroll();
        app.assert_accessible();
        app.picture(&format!("count-typed-{}", screen.width));
        // In a job each count is a step of its own, so it is counted: a button that is held goes on.
        app.go("#/jobs");
        app.tap("open-demo");
        begin_the_demo_anew(&app);
        app.section("parts");
        assert_eq!(app.text("count-of-leg"), "4");
        app.hold("more-of-leg");
        app.wait_until(
            "it goes on",
            "return document.querySelector('[data-testid=count-of-leg]').innerText > 6",
        );
        app.let_go();
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
        for fold in ["marks-toggle", "working-toggle"] {
            app.wait_until(
                &format!("{fold} is open again on {}", screen.width),
                &format!("return document.querySelector('[data-testid=\"{fold}\"]')?.closest('details').open"),
            );
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

/// What a screen reader is told: every change of a live region on the page; of it, what came so soon after a key that it was not
/// waited for (the page waits 900 ms); and whether every key came so soon after the one before, as on a busy machine it may not. A
/// key counts from where it is typed: what rested may be said between its press and that.
const LISTEN: &str = "window.heard = [], window.soon = [], window.isQuick = true;
    let key;
    const isSoon = () => key !== undefined && performance.now() - key < 850;
    addEventListener('input', () => { isQuick &&= key === undefined || isSoon(); key = performance.now() }, true);
    const live = '[role=status], [role=alert], [aria-live], output';
    new MutationObserver((changes) => {
      for (const it of changes) {
        const at = it.target.nodeType === 1 ? it.target : it.target.parentElement;
        const region = at?.closest(live);
        if (region?.closest('main') && region.checkVisibility() && region.textContent) {
          heard.push(region.textContent);
          if (isSoon()) soon.push(region.textContent);
        }
      }
    }).observe(document.body, { subtree: true, childList: true, characterData: true });";

#[test]
fn an_answer_is_heard_once_the_keys_rest() {
    for screen in [Screen::PHONE, Screen::DESKTOP] {
        let app = App::open_at(screen, "#/spacing?left_end=0&unit=in");
        app.wait_for("answer-headline");
        app.script(LISTEN);
        app.act(&[Tap("field-length"), Keys("47 1/2")], 150);
        app.wait_for_value("field-length", "47 1/2");
        app.wait_until("it is heard", "return heard.length > 0");
        let first = app.script("return [new Set(heard).size, isQuick]");
        assert!(first[0] == 1 || first[1] == json!(false), "{first}");
        app.type_keys("5");
        app.wait_until("that is heard too", &format!("return new Set(heard).size > {}", first[0]));
        assert_eq!(app.script("return soon"), json!([]), "while keys are pressed");
        let heard = app.script("return [...new Set(heard)]");
        let heard = heard.as_array().expect("words");
        // 47 1/2 and 47 1/25, with the sizes that are not theirs.
        assert!(
            heard.iter().all(|it| it.as_str().is_some_and(|it| it.contains("Rests on"))),
            "{heard:?}"
        );
        app.assert_quiet_console();
    }
}

/// Of a piece of 96 in from a board of 8 in, then of 80: the board is typed, and the piece is refused.
#[test]
fn a_refusal_of_another_field_is_heard_once_the_keys_rest() {
    for screen in [Screen::PHONE, Screen::DESKTOP] {
        let app = App::open_at(screen, "#/crosscut?board=97&trim=0&part=96&unit=in");
        app.wait_for("answer-headline");
        app.script(LISTEN);
        app.act(&[Tap("field-board"), Keys("80")], 150);
        app.wait_for_words("answer-headline", "80 in is left between the trims");
        assert_eq!(app.shows("problem-part"), screen == Screen::DESKTOP);
        let words = "No answer yet. One piece: A piece of 96 in does not fit: 80 in is left between the trims.";
        app.wait_until(
            "it is heard",
            &format!("return heard.at(-1) === {} || heard", json!(words)),
        );
        let all = app.script("return [new Set(heard).size, isQuick]");
        assert!(all[0] == 1 || all[1] == json!(false), "{all}");
        assert_eq!(app.script("return soon"), json!([]), "while keys are pressed");
        app.assert_quiet_console();
    }
    // A size of a job has no answer that would say it.
    let app = App::open_at(Screen::PHONE, "#/jobs");
    new_job_with_a_leg(&app);
    app.resize(Screen::DESKTOP);
    app.tap("add-measure");
    app.act(&[Tap("field-name"), Keys("leg")], 150);
    app.script(LISTEN);
    app.act(&[Tap("field-formula"), Keys("12")], 150);
    // The buttons below say what is still needed; that the name is taken is not said yet.
    let problem = app.text("problem-name");
    let is_told = |heard: &serde_json::Value| heard.to_string().contains(&problem);
    let soon = app.script("return soon");
    assert!(!is_told(&soon), "while keys are pressed: {soon}");
    app.wait_until("it is heard", "return heard.some((it) => it.startsWith('Name: '))");
    assert!(is_told(&app.script("return heard")));
    // Once nothing is typed it speaks at once.
    app.type_keys("\u{e00c}");
    app.wait_until(
        "it speaks",
        "return document.querySelector('[data-testid=problem-name]').role === 'alert'",
    );
    app.assert_quiet_console();
}

/// From the top: the drawing, the sizes that it carries, and only then what else the answer says.
#[test]
fn at_rest_the_sizes_stand_right_under_the_drawing() {
    let order = "const top = (css) => document.querySelector(css)?.getBoundingClientRect();
        const [drawing, sizes, folds] = ['.drawing', '.asks', '.folds'].map(top);
        return [drawing.bottom <= sizes.top + 1, sizes.bottom <= folds.top + 1, sizes.top - drawing.bottom < 40]";
    for slug in ["spacing", "dowel", "resaw-rip", "strength"] {
        for screen in [Screen::NARROW, Screen::PHONE] {
            let app = App::open_at(screen, &format!("#/{slug}"));
            app.wait_for("working-toggle");
            assert_eq!(app.script(order), json!([true, true, true]), "{slug} {}", screen.width);
            app.picture(&format!("rest-{slug}-{}", screen.width));
            app.assert_no_sideways_scroll();
        }
    }
    // Side by side, they stand beside it; and each time there is room for more or less, it is so.
    let app = App::open_at(Screen::DESKTOP, "#/spacing");
    app.wait_for("working-toggle");
    let beside = "const [answer, sizes] = ['.answer', '.sizes'].map((css) => document.querySelector(css).getBoundingClientRect());
        return answer.right <= sizes.left && !!document.querySelector('.answer .folds')";
    assert_eq!(app.script(beside), json!(true));
    app.resize(Screen::PHONE);
    app.wait_until("one column", "return !document.querySelector('.answer .folds')");
    assert_eq!(app.script(order), json!([true, true, true]));
    app.assert_quiet_console();
}

const MARKED: &str = "#/spacing?length=40&greatest_gap=8&left_end=2&unit=in";

/// In Spacing a mark stands in the list, and how far it is from the other end in the table; on paper the table has both.
#[test]
fn each_mark_stands_once_on_the_page() {
    let app = App::open_at(Screen::PHONE, MARKED);
    app.tap("marks-toggle");
    let texts = "return [...document.querySelectorAll('main td, main .mark, main .fold__lengths')]
        .filter((it) => it.checkVisibility()).map((it) => it.innerText)";
    let texts = app.script(texts).to_string();
    // 40 less two ends of 2 is 36: five steps of 7 1/5. The second mark is 9 1/5 from the left and 30 4/5 from the right.
    assert_eq!(app.script("return document.querySelectorAll('.mark').length"), json!(6));
    assert!(!app.shows("figure-from_right") && !app.shows("figure-each_end"), "{texts}");
    let heads = |app: &App| {
        app.script(
            "return [...document.querySelectorAll('[data-testid=table-layout] th')]
               .filter((it) => it.checkVisibility()).map((it) => it.innerText)",
        )
    };
    assert_eq!(heads(&app), json!(["Mark", "From right", "To next"]));
    app.picture("marks-once");
    app.cdp("Emulation.setEmulatedMedia", &json!({ "media": "print" }));
    assert_eq!(heads(&app), json!(["Mark", "From left", "From right", "To next"]));
    app.cdp("Emulation.setEmulatedMedia", &json!({ "media": "" }));
    app.assert_quiet_console();
}

fn with(app: &App, feature: &str, value: &str) {
    let features = json!({ "features": [{ "name": feature, "value": value }] });
    app.cdp("Emulation.setEmulatedMedia", &features);
}

/// Whether what has the focus can be told from the same thing without it: by its outline.
const OUTLINED: &str = "const it = getComputedStyle(document.activeElement);
    return it.outlineStyle !== 'none' && parseFloat(it.outlineWidth) >= 2";

#[test]
fn with_forced_colours_nothing_is_hidden_and_the_focus_is_seen() {
    for screen in [Screen::PHONE, Screen::DESKTOP] {
        let app = App::open_at(screen, "#/spacing");
        with(&app, "forced-colors", "active");
        app.wait_for("working-toggle");
        assert_eq!(app.script("return matchMedia('(forced-colors: active)').matches"), json!(true));
        app.picture(&format!("forced-{}", screen.width));
        // Of an example, that it is one is told by its slant.
        let slant = "return getComputedStyle(document.getElementById('field-length')).fontStyle";
        assert_eq!(app.script(slant), json!("italic"));
        app.tap("field-length");
        assert_eq!(app.script(OUTLINED), json!(true), "the field");
        if screen.touch {
            let it = seen(&app);
            assert_eq!(it["isFree"], json!(true), "{it}");
            assert!(it["drawn"].as_f64().is_some_and(|it| it >= 113.0), "{it}");
            app.assert_no_sideways_scroll();
            app.picture("forced-keys");
        }
        app.type_keys("5\u{e00c}");
        app.wait_for("question");
        app.script("document.querySelector('[data-testid=question]').focus()");
        app.type_keys("\u{e004}");
        assert_eq!(app.script(OUTLINED), json!(true), "a button");
        app.assert_quiet_console();
    }
}

/// In forced colours a browser lays a ground under each line of writing: under that of the figure below, the line of a fraction
/// was gone. Down the picture of one, some row is of one colour from edge to edge, and not of the ground's.
#[test]
fn the_line_of_a_fraction_is_seen_in_forced_colours() {
    let app = App::open_at(Screen::PHONE, "#/tape?strip=3+3%2F8&unit=in");
    for colours in ["none", "active"] {
        with(&app, "forced-colors", colours);
        app.wait_for_words("answer-headline", "3/8");
        let picture = app.picture_of(".headline__figure .fraction");
        let mut reader =
            png::Decoder::new(std::io::Cursor::new(picture)).read_info().expect("a picture");
        let mut pixels = vec![0; reader.output_buffer_size().expect("its size")];
        let info = reader.next_frame(&mut pixels).expect("its pixels");
        let deep = info.color_type.samples();
        let dark = |pixel: &[u8]| pixel[..3].iter().all(|it| *it < 90);
        let across = |row: &[u8]| row.chunks(deep).filter(|pixel| dark(pixel)).count();
        let wide = usize::try_from(info.width).expect("few");
        let rows: Vec<usize> = pixels.chunks(info.line_size).map(across).collect();
        let lines = rows.iter().filter(|dark| **dark * 10 >= wide * 8).count();
        assert!(lines >= 3, "{colours}: {lines} rows of {rows:?} in {wide}");
    }
    app.assert_quiet_console();
}

#[test]
fn with_less_movement_nothing_moves_and_all_is_there() {
    let app = App::open_at(Screen::PHONE, "#/spacing?length=40&greatest_gap=8&unit=in");
    with(&app, "prefers-reduced-motion", "reduce");
    app.tap("question");
    app.wait_for("question-close");
    assert_eq!(app.script("return document.getAnimations().length"), json!(0));
    app.tap("question-close");
    // The last size becomes theirs: the headline stands at once.
    app.enter("left_end", &["3", "close"]);
    app.wait_until("all is theirs", "return !document.querySelector('.headline.is-pencil')");
    let still = "return [document.getAnimations().length, getComputedStyle(document.querySelector('.headline__value')).opacity]";
    assert_eq!(app.script(still), json!([0, "1"]));
    app.assert_quiet_console();
}

#[test]
fn with_the_left_hand_lying_down_the_keys_are_left_and_nothing_is_hidden() {
    let app = App::open_at(LYING, "#/settings");
    app.tap("hand-left");
    for slug in ["spacing", "resaw-rip", "screws"] {
        app.go(&format!("#/{slug}"));
        app.wait_for("answer-headline");
        let first = "return document.querySelector('.asks .field__input').dataset.testid";
        app.tap(app.script(first).as_str().expect("a size that is typed"));
        app.wait_for("keypad");
        app.picture(&format!("left-lying-{slug}"));
        let it = seen(&app);
        assert_eq!(it["keys"], json!([0, 0]), "{slug}: the keys begin in the corner");
        assert_eq!(
            [&it["isFree"], &it["isLiveSeen"]],
            [&json!(true), &json!(true)],
            "{slug}: {it}"
        );
        let beside = "const [head, dock, keys] = ['.headline', '.is-docked', '.keypad']
              .map((css) => document.querySelector(css).getBoundingClientRect());
            return [head.left >= keys.right - 1, dock.left >= keys.right - 1, dock.bottom <= innerHeight + 1, keys.bottom <= innerHeight + 1]";
        assert_eq!(app.script(beside), json!([true, true, true, true]), "{slug}");
        app.assert_no_sideways_scroll();
    }
    // The letters of the lines above stand beside the keys too, and can be tapped.
    app.go("#/tape?strip=44%0AA+-+7&unit=in");
    app.enter("strip-1", &[]);
    app.wait_for("key-A");
    app.picture("left-lying-tape");
    app.press(&["A"]);
    app.wait_until(
        "it is written",
        "return document.getElementById('field-strip-1').value.includes('A')",
    );
    let beside = "const [names, keys] = ['.keypad__names', '.keypad'].map((css) => document.querySelector(css).getBoundingClientRect());
        return names.left >= keys.right - 1";
    assert_eq!(app.script(beside), json!(true));
    app.assert_quiet_console();
}
