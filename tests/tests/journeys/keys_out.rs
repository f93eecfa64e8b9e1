//! What stands on the screen while a size is typed: the answer, the drawing, the field and the keys.

use reckoner_e2e::{App, Screen};
use serde_json::json;

pub(crate) const LYING: Screen = Screen { width: 640, height: 360, touch: true };
/// Least of the drawing that is seen, in CSS pixels.
const DRAWN: f64 = 113.0;
/// Most elements in the page while typing.
const ELEMENTS: u64 = 299;
/// How much of the drawing is seen and whether the size being typed is, how far the headline reaches down and which of
/// its words are cut, and whether something lies over either.
pub(crate) fn seen(app: &App) -> serde_json::Value {
    app.script(
        "const box = (css) => document.querySelector(css)?.getBoundingClientRect();
         const [head, place, dock] = [box('.headline'), box('.rest-of-answer'), box('.is-docked')];
         const drawing = box('.drawing svg');
         const low = Math.min(drawing?.bottom ?? 0, place?.bottom ?? 0, innerHeight);
         const high = Math.max(drawing?.top ?? 0, head.bottom);
         const keys = box('.keypad');
         const [live, seen] = [box('.size.is-live .size__ground') ?? box('.size.is-live'), box('.rest-of-answer')];
         const inside = (a, b) => a.left >= b.left - 1 && a.right <= b.right + 1 && a.top >= b.top - 1 && a.bottom <= b.bottom + 1;
         const cut = [...document.querySelectorAll('.headline__rest')]
           .filter((it) => it.scrollWidth > it.clientWidth || it.scrollHeight > it.clientHeight + 1).map((it) => it.textContent);
         const middle = document.elementFromPoint(head.left + 20, head.bottom - 20);
         return { drawn: low - high, whole: drawing?.height ?? 0, headline: head.height, top: head.top,
                  isFree: !!middle?.closest('.headline'), cut,
                  isLiveSeen: !live || inside(live, seen), dock: dock.bottom, keys: [keys.left, keys.top],
                  elements: document.querySelectorAll('*').length }",
    )
}

#[test]
fn the_answer_and_the_drawing_stay_in_sight_on_every_calculator() {
    let mut told = Vec::new();
    for screen in [Screen::PHONE, Screen::NARROW, LYING] {
        let app = App::open(screen);
        app.wait_for("home-tape");
        let tiles = app.visible_ids();
        let slugs: Vec<&str> = tiles.iter().filter_map(|id| id.strip_prefix("home-")).collect();
        assert_eq!(slugs.len(), 14);
        for slug in slugs {
            app.go(&format!("#/{slug}"));
            app.wait_for("answer-headline");
            let first = "return document.querySelector('.asks .field__input').dataset.testid";
            app.tap(app.script(first).as_str().expect("a size that is typed"));
            app.wait_for("keypad");
            let it = seen(&app);
            let number = |name: &str| it[name].as_f64().unwrap_or(0.0);
            app.picture(&format!("keys-{slug}-{}", screen.width));
            let enough = DRAWN.min(number("whole"));
            let is_good = number("drawn") + 0.5 >= enough
                && number("headline") <= 72.0
                && number("top") >= -1.0
                && it["isFree"] == json!(true)
                && it["isLiveSeen"] == json!(true)
                && (screen != Screen::PHONE || it["cut"] == json!([]))
                && it["elements"].as_u64().is_some_and(|it| it <= ELEMENTS);
            println!("{} {slug}: {it}", screen.width);
            if !is_good {
                told.push(format!("{} {slug}: {it}", screen.width));
            }
            app.assert_no_sideways_scroll();
        }
    }
    assert!(told.is_empty(), "{told:#?}");
}

#[test]
fn on_a_desk_the_answer_stays_in_sight_down_to_the_last_field() {
    for slug in ["dowel", "screws", "spacing", "strength"] {
        let app = App::open_at(Screen::DESKTOP, &format!("#/{slug}"));
        app.wait_for("answer-headline");
        let last = app.script(
            "const inputs = [...document.querySelectorAll('.asks .field__input')];
             inputs.at(-1).scrollIntoView({ block: 'center' }); inputs.at(-1).focus();
             return inputs.at(-1).dataset.testid",
        );
        app.wait_until(
            &format!("the answer is seen beside {last} of {slug}"),
            "const at = document.querySelector('.headline').getBoundingClientRect();
             return at.top >= 0 && at.bottom <= innerHeight ? true : [at.top, at.bottom]",
        );
        app.assert_quiet_console();
    }
}

#[test]
fn the_field_used_last_opens_again_for_who_comes_from_the_first_page() {
    let app = App::open(Screen::PHONE);
    app.tap("home-spacing");
    app.wait_for("field-length");
    assert!(!app.shows("keypad"), "nothing was used yet");
    app.enter("greatest_gap", &["7", "close"]);
    app.tap("home");
    app.tap("home-spacing");
    app.wait_for("keypad");
    app.wait_until("the same field", "return document.activeElement?.id === 'field-greatest_gap'");
    // The size is written over, as after a tap on it.
    app.press(&["6"]);
    app.wait_for_value("field-greatest_gap", "6");
    // A reload shows the page.
    app.reload();
    app.wait_for_start();
    app.wait_for("question");
    assert!(!app.shows("keypad"));
    app.assert_quiet_console();
}

#[test]
fn at_rest_sizes_are_chips_three_in_a_row_from_320_px() {
    for screen in [Screen::NARROW, Screen::PHONE] {
        let app = App::open_at(screen, "#/spacing");
        app.wait_for("field-length");
        let chips = app.script(
            "return [...document.querySelectorAll('.is-chip')].map((it) => it.getBoundingClientRect())
                .map((it) => [Math.round(it.top), it.height])",
        );
        let chips = chips.as_array().expect("chips");
        assert!(chips.len() >= 3, "{chips:?}");
        assert_eq!(chips[0][0], chips[2][0], "{chips:?}");
        assert!(
            chips.iter().all(|it| it[1].as_f64().is_some_and(|tall| tall >= 52.0)),
            "{chips:?}"
        );
        app.assert_no_sideways_scroll();
        app.assert_accessible();
        app.script("document.querySelector('.asks').scrollIntoView()");
        app.picture(&format!("chips-{}", screen.width));
        // A tap on the name is a tap on the size.
        app.tap("field-greatest_gap");
        app.wait_for("keypad");
    }
}

/// Whether all of a text that is typed is seen in its field with what it comes to, and the button that puts it in is under the thumb.
fn whole_and_in_reach(app: &App) -> serde_json::Value {
    app.script(
        "const input = document.querySelector('[data-testid=field-formula]');
         const save = document.querySelector('[data-testid=save-item]');
         const at = save.getBoundingClientRect();
         const on_top = document.elementFromPoint(at.left + at.width / 2, at.top + at.height / 2);
         const echo = document.querySelector('[data-testid=echo-formula]');
         return [input.scrollWidth <= input.clientWidth && echo.scrollHeight <= echo.clientHeight + 1, on_top?.closest('[data-testid]') === save,
                 at.top >= 0 && at.bottom <= innerHeight]",
    )
}

/// `overall length - 2 × set-back` has 29 letters.
#[test]
fn a_long_formula_of_a_size_is_seen_whole_and_put_in_with_the_keys_out() {
    for look in ["light", "dark", "outdoor"] {
        let app = crate::shelf::demo();
        app.script(&format!("document.documentElement.dataset.theme = '{look}'"));
        app.tap("add-measure");
        app.tap("field-name");
        app.type_keys("dowel in sight");
        app.tap("field-formula");
        app.tap("name-overall length");
        app.press(&["page-signs", "minus", "page-digits", "2", "page-signs", "times"]);
        app.tap("name-set-back");
        app.wait_for_value("field-formula", "overall length - 2 × set-back");
        app.picture(&format!("formula-keys-{look}"));
        assert_eq!(whole_and_in_reach(&app), json!([true, true, true]));
        app.assert_accessible();
        app.assert_no_sideways_scroll();
        assert!(app.shows("keypad"));
        app.tap("save-item");
        // 47 1/2 less 2 × 3/4.
        app.wait_for_words("item-dowel in sight", "forty-six inches");
        app.assert_quiet_console();
    }
}

/// Twenty marks, then a number of parts that cannot be: what the marks were before is one line, and the sizes below can
/// be tapped.
#[test]
fn an_answer_that_is_gone_leaves_room_for_the_sizes() {
    let app = App::open_at(Screen::PHONE, "#/tape?divide=parts&parts=20&start_mark=41+3/4&unit=in");
    app.wait_for_words("answer-headline", "of 20");
    app.enter("parts", &["8", "8", "2", "close"]);
    app.wait_for_words("problem-parts", "from 2 to 200");
    app.picture("no-answer-after-marks");
    app.tap("divide-third");
    app.wait_until("it is chosen", "return location.hash.includes('divide=third')");
    app.assert_quiet_console();
}

/// Whether the answer of a form of a job is seen beside its keys: its label, its figure and how it stands, each whole and with
/// nothing over it; the keys that are too
/// narrow for their words, and whether the name in the dock is whole, its field inside, and all of it beside the keys.
const BESIDE: &str = "const box = (it) => it.getBoundingClientRect();
    const all = ['label', 'figure', 'rest'].map((it) => document.querySelector(`.headline__${it}`));
    const dock = document.querySelector('.is-docked');
    const on_top = (it) => {
        const at = box(it);
        const top = document.elementFromPoint(at.left + Math.min(at.width, 24) / 2, at.bottom - 2);
        return at.top >= 0 && (top === it || it.contains(top));
    };
    const name = dock.querySelector('.field__name');
    return { covered: all.filter((it) => !on_top(it)).map((it) => it.className),
        wide: [...document.querySelectorAll('.keypad__tabs .tab, .keypad__keys .key')].filter((it) => it.scrollWidth > it.clientWidth).map((it) => it.textContent),
        name: name.scrollWidth <= name.clientWidth,
        inside: box(dock.querySelector('.field__input')).bottom <= box(dock).bottom + 1,
        beside: innerWidth < innerHeight || box(dock).right <= box(document.querySelector('.keypad')).left + 1 }";

#[test]
fn in_a_job_the_answer_is_seen_beside_the_keys_as_in_a_calculator() {
    let app = crate::shelf::demo();
    let seen_well =
        json!({ "covered": [], "wide": [], "name": true, "inside": true, "beside": true });
    for (form, screen) in
        [("size", LYING), ("size", Screen::PHONE), ("piece", LYING), ("piece", Screen::PHONE)]
    {
        app.resize(Screen::PHONE);
        app.script("document.documentElement.style.fontSize = ''");
        app.section(if form == "size" { "sizes" } else { "parts" });
        app.tap("item-leg");
        let field = if form == "size" { "field-formula" } else { "field-as_cut" };
        if form == "piece" {
            app.tap("piece-1");
        }
        app.wait_for(field);
        app.resize(screen);
        app.tap(field);
        app.wait_for("keypad");
        for text in ["100%", "200%"] {
            app.script(&format!("document.documentElement.style.fontSize = '{text}'"));
            app.picture(&format!("beside-{form}-{}-{text}", screen.width));
            assert_eq!(
                app.script(BESIDE),
                seen_well,
                "{form} at {} with text at {text}",
                screen.width
            );
            app.assert_no_sideways_scroll();
        }
        app.tap("key-close");
        app.resize(Screen::PHONE);
        app.script("document.documentElement.style.fontSize = ''");
        app.tap("back");
        if form == "piece" {
            app.tap("back");
        }
    }
    app.assert_quiet_console();
}

/// Whether the name of the list and the row of the dock are seen, what they say, whether the row's field is inside it, and how
/// many pixels its size has.
const NAMED: &str = "const box = (it) => it.getBoundingClientRect();
    const dock = document.querySelector('.field.is-editing');
    const label = dock.querySelector('.field__label');
    if (!label.checkVisibility()) return 'not seen';
    const [name, hint] = [label.querySelector('.field__name'), label.querySelector('.field__hint')];
    const top = document.elementFromPoint(box(name).left + 4, box(name).bottom - 2);
    return { words: [name.innerText, hint.innerText], on_top: top === name, whole: name.scrollWidth <= name.clientWidth,
        inside: box(dock.querySelector('.field__input')).bottom <= box(dock).bottom + 1,
        wide: box(dock.querySelector('.field__input')).width >= 48 }";

#[test]
fn a_row_of_a_list_is_named_where_the_keys_cover_the_list() {
    let app = App::open_at(Screen::PHONE, "#/cut");
    let named = json!({ "words": ["Pieces", "row 2, size"], "on_top": true, "whole": true, "inside": true, "wide": true });
    for screen in [Screen::PHONE, LYING] {
        app.resize(screen);
        app.tap("field-parts-1");
        app.wait_for("keypad");
        for text in ["100%", "200%"] {
            app.script(&format!("document.documentElement.style.fontSize = '{text}'"));
            app.picture(&format!("named-row-{}-{text}", screen.width));
            assert_eq!(app.script(NAMED), named, "at {} with text at {text}", screen.width);
            assert!(app.shows("answer-headline"), "at {} with text at {text}", screen.width);
        }
        app.script("document.documentElement.style.fontSize = ''");
        app.press(&["close"]);
    }
    app.resize(Screen::DESKTOP);
    app.tap("field-parts-1");
    app.picture("named-row-1280");
    assert_eq!(app.script(NAMED), "not seen");
    app.assert_quiet_console();
}
