//! What is typed in two windows of one job, and edits at the speed of a machine.

use reckoner_e2e::{App, Screen};
use serde_json::Value;

use crate::shelf::{
    address_of_job, click, demo, fail_to_put, second_window, wait_for_the_record,
    wait_until_folded_in,
};

#[test]
fn two_windows_tick_two_pieces_of_one_part_at_once() {
    let app = demo();
    app.section("parts");
    app.wait_for("parts");
    let ids = app.script(
        "const part = [...document.querySelectorAll('.part')].find((it) => it.querySelectorAll('.tick[aria-pressed=false]').length > 1);
         return [...part.querySelectorAll('.tick[aria-pressed=false]')].slice(0, 2).map((it) => it.dataset.testid)",
    );
    let id = |at: usize| ids[at].as_str().expect("a piece").to_owned();
    let first = second_window(&app);
    app.wait_for("parts");
    // Each taps at the same moment, before it has heard of the other.
    let tap_at = |id: &str| {
        format!(
            "const at = Number(localStorage.getItem('at')); setTimeout(() => {{ {} }}, at - Date.now())",
            click(id)
        )
    };
    app.script("localStorage.setItem('at', String(Date.now() + 1500))");
    app.script(&tap_at(&id(0)));
    let second = app.window();
    app.turn_to(&first);
    app.script(&tap_at(&id(1)));
    for window in [&first, &second] {
        app.turn_to(window);
        for at in 0..2 {
            app.wait_until(
                "both are ticked",
                &format!("return document.querySelector('[data-testid=\"{}\"]').getAttribute('aria-pressed') === 'true'", id(at)),
            );
        }
        assert!(!app.shows("job-trouble"), "{}", app.text("job-trouble"));
    }
    wait_until_folded_in(&app);
}

/// The leg as it was cut, written by another window: to turn to one would end the writing here, so it is done as it does it.
fn as_another_window_writes(app: &App, as_cut: &str) {
    app.script(&format!(
        "const key = location.hash.split('/')[2];
         const open = indexedDB.open('reckoner');
         await new Promise((done) => open.onsuccess = done);
         const store = open.result.transaction('jobs', 'readwrite').objectStore('jobs');
         const get = store.get(key);
         await new Promise((done) => get.onsuccess = done);
         const kept = get.result, job = JSON.parse(kept.job);
         job.items.find((item) => item.kind === 'measure' && item.name === 'leg').as_cut = '{as_cut}';
         kept.job = JSON.stringify(job);
         const put = store.put(kept, key);
         await new Promise((done) => put.onsuccess = done);
         open.result.close();
         new BroadcastChannel('reckoner-jobs').postMessage(key);",
    ));
}

#[test]
fn what_two_windows_write_in_one_field_is_offered_by_name() {
    let app = demo();
    app.tap("item-leg");
    app.tap("field-as_cut");
    app.press(&["2"]);
    as_another_window_writes(&app, "4");
    app.wait_for_words("offer-as_cut", "You typed “2” for leg, the tape says; it is now “4”.");
    // It stands under the headline, which says what the job has, and once.
    app.wait_for_words("answer-headline", "four inches");
    let below = app.script(
        "const all = document.querySelectorAll('[data-testid=offer-as_cut]');
         const head = document.querySelector('[data-testid=answer-headline]').getBoundingClientRect();
         return [all.length, all[0].getBoundingClientRect().top - head.bottom]",
    );
    assert!(below[0] == 1 && below[1].as_f64().is_some_and(|it| it.abs() < 24.0), "{below}");
    app.picture("kept-offer");
    app.wait_for_value("field-as_cut", "2");
    app.press(&["close"]);
    app.wait_for_value("field-as_cut", "2");
    app.tap("use-mine-as_cut");
    app.wait_until_gone("offer-as_cut");
    wait_for_the_record(&app, "leg", "as_cut", "2");
    app.wait_for_value("field-as_cut", "2");
}

/// What another window wrote last is what the field was filled with here: it was typed after, and does not go without a word.
#[test]
fn what_another_window_wrote_back_is_not_written_over() {
    let app = demo();
    as_another_window_writes(&app, "3");
    wait_for_the_record(&app, "leg", "as_cut", "3");
    app.tap("item-leg");
    app.wait_for_value("field-as_cut", "3");
    app.tap("field-as_cut");
    app.press(&["clear", "2"]);
    as_another_window_writes(&app, "4");
    app.wait_for_words("offer-as_cut", "You typed “2” for leg, the tape says; it is now “4”.");
    as_another_window_writes(&app, "3");
    let back = "You typed “2” for leg, the tape says; it is now “3”.";
    app.wait_for_words("offer-as_cut", back);
    app.press(&["close"]);
    app.reload();
    app.wait_for_words("offer-as_cut", back);
    app.wait_for_words("answer-headline", "three inches");
    app.tap("keep-theirs-as_cut");
    app.wait_until_gone("offer-as_cut");
    app.wait_for_value("field-as_cut", "3");
    wait_for_the_record(&app, "leg", "as_cut", "3");
}

/// Two windows were closed in which somebody typed over what was written meanwhile: both texts are offered, each once.
#[test]
fn all_that_closed_windows_wrote_in_one_field_is_offered() {
    let app = demo();
    let first = second_window(&app);
    app.tap("item-leg");
    app.tap("field-as_cut");
    app.press(&["2"]);
    as_another_window_writes(&app, "4");
    app.wait_for("offer-as_cut");
    let earlier = second_window(&app);
    app.tap("field-as_cut");
    app.tap("key-clear");
    app.press(&["3"]);
    as_another_window_writes(&app, "5");
    app.wait_for("offer-as_cut");
    app.close_window(&earlier);
    app.close_window(&first);
    app.tap("item-leg");
    app.wait_until(
        "both are offered",
        "const all = [...document.querySelectorAll('[data-testid=offer-as_cut]')].map((it) => it.textContent);
         return all.length === 2 && ['2', '3'].every((text) => all.some((it) => it.includes(`You typed “${text}” for leg`)))",
    );
    app.assert_quiet_console();
}

/// An edit that a closed window left goes in no more, since the field was changed meanwhile, and somebody types in that field
/// here: its text is offered beside the one that is being typed.
#[test]
fn an_edit_of_a_closed_window_that_came_too_late_is_offered() {
    let app = demo();
    app.tap("item-leg");
    let first = second_window(&app);
    app.wait_for("field-as_cut");
    fail_to_put(
        &app,
        "if (this.name === 'jobs') throw new DOMException('full', 'QuotaExceededError');
         return window.put.apply(this, all)",
    );
    app.enter("as_cut", &["2", "close"]);
    // Nor does it learn what became of it.
    app.script("IDBDatabase.prototype.transaction = () => { throw new DOMException('closed', 'InvalidStateError') }");
    let second = app.window();
    app.turn_to(&first);
    app.enter("as_cut", &["3", "close"]);
    wait_for_the_record(&app, "leg", "as_cut", "3");
    app.enter("as_cut", &["clear", "4", "page-signs", "plus"]);
    app.turn_to(&second);
    app.close_window(&first);
    app.wait_for_words("offer-as_cut", "You typed “2” for leg, the tape says; it is now “3”.");
    app.wait_until(
        "what is being typed stands",
        "return document.querySelector('[data-testid=field-as_cut]')?.value.trim() === '4 +'",
    );
    app.assert_quiet_console();
}

/// A page that is loaded again has what it could not put in the job, though another window of the job lives on.
#[test]
fn what_cannot_be_read_goes_to_the_page_that_is_loaded_again() {
    let app = demo();
    let job = address_of_job(&app);
    app.tap("item-leg");
    let first = second_window(&app);
    app.go(&format!("{job}/rack"));
    app.wait_for("rack");
    app.turn_to(&first);
    app.enter("as_cut", &["2", "page-signs", "plus"]);
    app.reload();
    app.wait_for_start();
    app.wait_until("it stands as it was typed", IS_AS_TYPED);
    // Nor does the other window take it later.
    app.reload();
    app.wait_for_start();
    app.wait_until("it stands as it was typed", IS_AS_TYPED);
    app.assert_quiet_console();
}

const IS_AS_TYPED: &str =
    "return document.querySelector('[data-testid=field-as_cut]')?.value.trim() === '2 +'";

/// What a window that was closed could not put in the job stands in its form, and in a line until that is opened.
#[test]
fn what_a_closed_window_could_not_put_in_is_shown_in_the_other() {
    let app = demo();
    let first = second_window(&app);
    app.tap("item-leg");
    app.enter("as_cut", &["2", "page-signs", "plus"]);
    app.close_window(&first);
    app.wait_for("unread-as_cut");
    // It came by itself: under the list until another page, where it is told before all that it would move.
    let is_over = |what: &str| {
        app.script(&format!(
            "const top = (id) => document.querySelector(`[data-testid=${{id}}]`).getBoundingClientRect().top;
             return top('unread-as_cut') < top('{what}')"
        ))
    };
    assert_eq!(is_over("sizes"), false);
    app.section("front");
    app.wait_for("next");
    assert_eq!(is_over("next"), true);
    app.section("sizes");
    app.wait_for("sizes");
    assert_eq!(is_over("sizes"), true);
    app.tap("look-as_cut");
    app.wait_until("it stands as it was typed", IS_AS_TYPED);
    // The tape says nothing that can be read: the size is the planned one, and is said to be.
    let headline = app.text("answer-headline");
    assert!(headline.contains("as planned") && !headline.contains("tape"), "{headline}");
    app.wait_until_gone("unread-as_cut");
    app.assert_quiet_console();
}

/// Two windows of one form end at the same moment, as when the system kills the browser, and both had typed in one field of it:
/// what one of them typed in another field is not hidden behind that. The other window is one that left its note alone.
#[test]
fn what_two_killed_windows_typed_in_one_form_is_in_the_job_or_told() {
    let app = demo();
    app.tap("item-leg");
    app.enter("as_cut", &["2", "page-signs", "plus", "close"]);
    app.tap("back");
    app.wait_for("unread-as_cut");
    app.script(
        "const open = indexedDB.open('reckoner');
         await new Promise((done) => open.onsuccess = done);
         const store = open.result.transaction('notes', 'readwrite').objectStore('notes');
         const keys = store.getAllKeys(), all = store.getAll();
         await new Promise((done) => all.onsuccess = done);
         const at = keys.result.findIndex((key) => key.includes('/item/'));
         const [head, typed] = all.result[at].split('&typed=');
         const other = typed.replace(/as_cut%3D[^%]*/, 'as_cut%3D3').replace('formula%3D3%2B1%252F4', 'formula%3D3');
         if (other.split('formula%3D3%26').length !== 2) throw new Error(other);
         const earlier = head.replace(/at=([0-9]+)/, (_, it) => `at=${it - 1000}`);
         const put = store.put(`${earlier}&typed=${other}`, keys.result[at].replace(/#.*/, '#1700000000000-00000001'));
         await new Promise((done) => put.onsuccess = done);
         open.result.close()",
    );
    app.reload();
    app.wait_for_start();
    app.wait_for("unread-as_cut");
    app.tap("item-leg");
    app.wait_until("it stands as it was typed", IS_AS_TYPED);
    app.wait_for_value("field-formula", "3");
    app.wait_for("unread-as_cut");
    app.assert_quiet_console();
}

/// A window that ends without a word, as when the system kills it: what was typed in it is in the other that has the form.
#[test]
fn what_was_typed_in_a_window_that_ends_without_a_word_is_in_the_other() {
    let app = demo();
    app.tap("item-leg");
    let first = second_window(&app);
    app.wait_for("field-as_cut");
    app.script("BroadcastChannel.prototype.postMessage = () => {}");
    app.tap("field-as_cut");
    app.press(&["2"]);
    app.close_window(&first);
    app.wait_for_value("field-as_cut", "2");
    app.assert_quiet_console();
}

/// Of two windows that were closed with a text in the same field, the later stands in the form.
#[test]
fn of_two_closed_windows_the_later_text_stands_in_the_form() {
    let app = demo();
    let first = second_window(&app);
    app.tap("item-leg");
    let earlier = second_window(&app);
    let later = app.window();
    app.turn_to(&earlier);
    app.enter("as_cut", &["1", "page-signs", "plus"]);
    app.turn_to(&later);
    app.enter("as_cut", &["2", "page-signs", "plus"]);
    app.turn_to(&earlier);
    app.close_window(&later);
    app.close_window(&first);
    app.tap("item-leg");
    app.wait_until("the later stands as it was typed", IS_AS_TYPED);
    app.assert_quiet_console();
}

/// The device is full for one writing: the note of an edit finds no room, and the record would.
#[test]
fn an_edit_whose_note_came_late_is_done_once() {
    let app = demo();
    app.section("parts");
    app.wait_for("parts");
    wait_until_folded_in(&app);
    let id =
        app.script("return document.querySelector('.tick[aria-pressed=false]').dataset.testid");
    let id = id.as_str().expect("a tick");
    fail_to_put(
        &app,
        "IDBObjectStore.prototype.put = window.put; throw new DOMException('full', 'QuotaExceededError')",
    );
    app.script(&format!(
        "{0}; await new Promise((done) => setTimeout(done)); {0}; return true",
        click(id)
    ));
    wait_until_folded_in(&app);
    app.reload();
    app.wait_for_start();
    app.wait_until(
        "it is not ticked, as it was left",
        &format!("return document.querySelector('[data-testid=\"{id}\"]')?.getAttribute('aria-pressed') === 'false'"),
    );
    app.assert_quiet_console();
}

/// Taps in one page, at the speed of a machine, never meet each other.
#[test]
fn six_hundred_edits_at_once_are_no_conflict() {
    let app = demo();
    app.section("front");
    app.wait_for("job-title");
    let told = app.script(
        "const title = document.querySelector('[data-testid=job-title]');
         const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set;
         let told = 0;
         for (let n = 0; n < 600; n++) {
           set.call(title, `name ${n}`);
           title.dispatchEvent(new InputEvent('input', { bubbles: true }));
           title.dispatchEvent(new Event('change', { bubbles: true }));
           if (n % 7 === 0) await new Promise((done) => setTimeout(done, n % 3));
           if (document.querySelector('[data-testid=job-trouble], [data-testid^=offer-], [data-testid=not-in]')) told++;
         }
         return told",
    );
    assert_eq!(told, Value::from(0));
    wait_until_folded_in(&app);
    for id in ["job-trouble", "not-in"] {
        assert!(!app.shows(id), "{id}");
    }
    app.reload();
    app.wait_for_start();
    app.wait_for_value("job-title", "name 599");
    app.assert_quiet_console();
}

/// What is left of a spoiled piece is written in one form: what another window had typed there, and was closed with, is
/// offered in it.
#[test]
fn what_a_closed_window_had_typed_of_a_spoiled_piece_is_offered() {
    let app = crate::shelf::first_leg();
    app.tap("spoiled-rack");
    app.enter("left", &["2", "0", "close"]);
    let first = second_window(&app);
    app.tap("spoiled-rack");
    app.enter("left", &["1", "5", "close"]);
    app.close_window(&first);
    app.wait_for_words("beside-left", "“15” was typed in another window.");
    app.picture("beside");
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    app.tap("use-beside-left");
    app.wait_for_value("field-left", "15");
    app.wait_until_gone("beside-left");
    app.tap("take-spoiled");
    app.wait_until_gone("spoiled-left");
    app.assert_quiet_console();
}

/// At a desk a choice is a press away from the field that was written in: what was measured goes in with it, and the page
/// answers both.
#[test]
fn a_choice_ends_the_writing_in_a_field() {
    let app = crate::shelf::first_leg();
    app.resize(Screen::DESKTOP);
    app.wait_for("piece-is");
    app.tap("field-width");
    app.type_keys("3 1/8");
    app.tap("done-no");
    app.wait_until_gone("spoiled");
    app.wait_for_words("answer-headline", "not cut yet");
    app.wait_for_value("field-width", "3 1/8");
    // "Yes" and at once "no" is "no".
    app.tap("field-thickness");
    app.type_keys("3 1/16");
    app.tap("done-yes");
    app.tap("done-no");
    app.wait_until_gone("spoiled");
    app.reload();
    app.wait_for_words("answer-headline", "not cut yet");
    app.wait_for_value("field-thickness", "3 1/16");
    assert!(!app.shows("spoiled"));
    app.assert_quiet_console();
}

/// It comes out where nobody writes of it yet, also on a page that was opened before.
#[test]
fn what_a_closed_window_had_typed_of_a_spoiled_piece_comes_out() {
    let app = crate::shelf::first_leg();
    app.wait_for("spoiled-rack");
    let first = second_window(&app);
    app.tap("spoiled-rack");
    app.enter("left", &["1", "5", "close"]);
    app.close_window(&first);
    app.wait_for_value("field-left", "15");
    app.tap("leave-spoiled");
    app.wait_until_gone("spoiled-left");
    app.assert_quiet_console();
}

/// The options of a job's plan are one form too.
#[test]
fn what_a_closed_window_had_typed_of_the_plan_is_offered() {
    let app = crate::planner::boards_of_the_demo(Screen::PHONE);
    app.enter("end_trim", &["1", "close"]);
    let first = second_window(&app);
    app.enter("end_trim", &["2", "close"]);
    app.tap("may_rip-no");
    app.close_window(&first);
    app.wait_for_words("beside-end_trim", "“2” was typed in another window.");
    app.wait_for_words("beside-may_rip", "“no” was chosen in another window.");
    app.picture("beside-plan");
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    app.tap("use-beside-end_trim");
    app.wait_for_value("field-end_trim", "2");
    app.wait_until_gone("beside-end_trim");
    app.tap("throw-beside-may_rip");
    app.wait_until_gone("beside-may_rip");
    app.reload();
    app.wait_for_start();
    app.wait_for_value("field-end_trim", "2");
    for id in ["beside-end_trim", "beside-may_rip"] {
        assert!(!app.shows(id), "{id}");
    }
    app.assert_quiet_console();
}

/// Two windows of one calculator, typed in over one address: each has its own text when it is loaded again before it has written its
/// address, whichever was typed in later.
#[test]
fn each_window_of_a_calculator_has_what_was_typed_in_it() {
    let app = App::open_at(Screen::PHONE, "#/tape");
    app.enter("start_mark", &["1"]);
    app.wait_until("it is in the address", "return location.hash.includes('start_mark=1&')");
    let first = second_window(&app);
    let second = app.window();
    for window in [&first, &second] {
        app.turn_to(window);
        app.script("History.prototype.replaceState = () => {}");
    }
    app.turn_to(&first);
    app.tap("key-3");
    app.turn_to(&second);
    app.enter("start_mark", &["2", "close"]);
    for (window, typed) in [(&first, "13 in"), (&second, "2 in")] {
        app.turn_to(window);
        app.reload();
        app.wait_for_start();
        app.wait_for_text("echo-start_mark", typed);
    }
    app.assert_quiet_console();
}

/// A form of the job that is open and untouched is filled with what a window had typed there that is closed, also where it is of no
/// item: a page that is slow to go leaves its texts when the next has opened the form already.
#[test]
fn an_open_form_is_filled_with_what_a_closed_window_had_typed() {
    let app = crate::planner::boards_of_the_demo(Screen::PHONE);
    app.enter("end_trim", &["2", "close"]);
    let first = second_window(&app);
    let second = app.window();
    app.wait_for_value("field-end_trim", "1/2");
    app.turn_to(&first);
    app.close_window(&second);
    app.wait_for_value("field-end_trim", "2");
    app.tap("may_rip-no");
    app.reload();
    app.wait_for_start();
    app.wait_for_value("field-end_trim", "2");

    app.section("parts");
    app.tap("add-part");
    app.tap("field-name");
    app.type_keys("cleat");
    let first = second_window(&app);
    let second = app.window();
    app.wait_for_value("field-name", "");
    app.turn_to(&first);
    app.close_window(&second);
    app.wait_for_value("field-name", "cleat");
    app.assert_quiet_console();
}
