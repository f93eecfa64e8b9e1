//! Sizes on the drawing: a tap opens the field, what is typed moves the answer, and all can be read at every width.

use reckoner_e2e::{App, Screen};
use serde_json::json;

use crate::shelf::click;

/// Every page with a drawing.
const PAGES: [&str; 14] = [
    "tape",
    "lumber",
    "moisture",
    "resaw-rip",
    "crosscut",
    "frame",
    "dowel",
    "screws",
    "spacing",
    "top",
    "curve",
    "angles",
    "strength",
    "finish",
];

/// A phone held sideways.
const SIDEWAYS: Screen = Screen { width: 640, height: 360, touch: true };

#[test]
fn a_size_on_the_drawing_opens_its_field() {
    let app = App::open_at(Screen::PHONE, "#/spacing");
    let name = "Length, 43 1/2, our example";
    assert_eq!(app.attribute("size-length", "aria-label").as_deref(), Some(name));
    app.tap("size-length");
    app.wait_for("key-close");
    app.press(&["3", "7"]);
    app.wait_for_value("field-length", "37");
    app.picture("drawing-live-360");
    app.press(&["close"]);
    app.wait_for_words("drawing", "37");
    let name = "Length, 37";
    assert_eq!(app.attribute("size-length", "aria-label").as_deref(), Some(name));
    app.assert_quiet_console();
}

/// It comes a frame after the answer, and of several keys it shows the last, however fast they come.
#[test]
fn the_drawing_follows_while_the_keys_are_out() {
    let app = App::open_at(Screen::PHONE, "#/spacing");
    let shows = |text: &str| {
        app.wait_until(
            &format!("the size on the drawing is {text}, and the one typed in"),
            &format!(
                "const size = document.querySelector('[data-testid=size-length].is-live');
                 return size?.textContent.trim() === '{text}'"
            ),
        );
    };
    app.tap("size-length");
    app.wait_for("key-close");
    shows("43 1/2");
    app.press(&["3", "7"]);
    shows("37");
    app.script(&["key-backspace", "key-8"].map(click).join("; "));
    shows("38");
    // Without an answer there is none, and with the next it is there again.
    app.tap("key-clear");
    app.wait_until_gone("drawing");
    app.press(&["4", "1"]);
    shows("41");
    app.press(&["close"]);
    app.wait_for_words("drawing", "41");
    app.assert_quiet_console();
}

#[test]
fn a_size_of_resaw_opens_from_its_drawing_too() {
    let app = App::open_at(Screen::PHONE, "#/resaw-rip");
    let before = app.text("answer-headline");
    app.tap("size-kerf");
    app.wait_for("key-close");
    app.type_keys("3/16");
    app.press(&["close"]);
    app.wait_until_gone("keypad");
    assert_ne!(app.text("answer-headline"), before);
    app.assert_quiet_console();
}

/// Whatever the width, writing on a drawing is 12 px or more and 22 at most, and as wide as the core takes it for or less.
#[test]
fn drawings_can_be_read_at_every_width() {
    let mut judged = 0;
    for screen in [Screen::NARROW, SIDEWAYS, Screen::PHONE, Screen::DESKTOP] {
        let app = App::open(screen);
        for page in PAGES {
            app.go(&format!("#/{page}"));
            app.wait_for("drawing");
            let sizes = app.script(
                "const svg = document.querySelector('.drawing svg');
                 const scale = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
                 const texts = [...svg.querySelectorAll('text')];
                 const sizes = texts.map((t) => parseFloat(getComputedStyle(t).fontSize) * scale);
                 const targets = [...svg.querySelectorAll('.size__target')].map((t) => t.getBoundingClientRect());
                 const small = targets.filter((t) => t.width < 43.9 || t.height < 43.9).length;
                 const box = svg.viewBox.baseVal;
                 const out = texts.map((t) => [t.textContent, t.getBBox()])
                     .filter(([, b]) => b.x < -0.5 || b.x + b.width > box.width + 0.5).map(([t]) => t);
                 return [Math.min(...sizes, 14), Math.max(...sizes, 14), small, out, texts.length]",
            );
            let what = format!("{page} at {}: {sizes}", screen.width);
            assert!(sizes[0].as_f64() >= Some(11.9) && sizes[1].as_f64() <= Some(22.1), "{what}");
            assert_eq!((&sizes[2], &sizes[3]), (&json!(0), &json!([])), "{what}");
            judged += sizes[4].as_u64().unwrap_or(0);
        }
        app.assert_quiet_console();
    }
    assert!(judged > 200, "only {judged} labels");
}

/// Every size that can be tapped is hit in the middle of its own room for a finger and towards each of its corners, in the drawing
/// of every question.
#[test]
fn each_size_of_a_drawing_is_hit_in_its_own_room() {
    const MISSED: &str = "const sizes = [...document.querySelectorAll('.drawing .size')];
        return [sizes.length, sizes.flatMap((it) => {
            const target = it.querySelector('.size__target');
            target.scrollIntoView({ block: 'center', inline: 'center' });
            const r = target.getBoundingClientRect();
            const places = [[0.5, 0.5], [0.1, 0.1], [0.9, 0.1], [0.1, 0.9], [0.9, 0.9]];
            const hit = places.filter(([x, y]) =>
                document.elementFromPoint(r.left + x * r.width, r.top + y * r.height)?.closest('.size') === it);
            return r.width >= 43.9 && r.height >= 43.9 && hit.length === places.length ? [] : [`${it.dataset.testid} ${hit.length} of 5`];
        })]";
    let app = App::open(Screen::PHONE);
    let (mut drawings, mut tapped) = (0, 0);
    for page in PAGES {
        app.go(&format!("#/{page}"));
        app.wait_for("answer-headline");
        let mut questions = Vec::new();
        if app.shows("question") {
            app.tap("question");
            let rows = app.script(
                "return [...document.querySelectorAll('.question__row')].map((it) => it.dataset.testid)",
            );
            questions = serde_json::from_value::<Vec<String>>(rows).expect("names");
            app.tap("question-close");
        }
        for question in questions.iter().map(Some).chain(questions.is_empty().then_some(None)) {
            if let Some(question) = question {
                app.tap("question");
                app.tap(question);
                app.wait_until_gone("question-close");
            }
            let missed = app.script(MISSED);
            assert_eq!(missed[1], json!([]), "{page} {question:?}");
            tapped += missed[0].as_u64().unwrap_or(0);
            drawings += 1;
        }
    }
    assert!(drawings >= 40 && tapped >= 90, "only {tapped} sizes in {drawings} drawings");
    app.assert_quiet_console();
}
