//! A job is kept: across a reload with its steps, beside another window with the same job, and
//! plainly not when the browser has no room for it.

use reckoner_e2e::{App, Screen};

use crate::shelf::{
    demo, fill, give_room, new_job_with_a_leg, second_window, wait_for_the_record,
    wait_until_folded_in,
};

/// The entry of the list of what wants looking at.
const NOT_KEPT: &str = "trouble-This job is not kept";

/// Gives the leg another size as planned.
fn plan_the_leg(app: &App, keys: &[&str]) {
    app.tap("item-leg");
    app.enter("formula", &["clear"]);
    app.press(keys);
    app.press(&["close"]);
    app.tap("back");
    app.wait_for("sizes");
}

#[test]
fn steps_are_taken_back_and_made_again_after_a_reload() {
    let app = demo();
    plan_the_leg(&app, &["3"]);
    app.wait_for_words("item-long rail", "forty-one and one half");
    plan_the_leg(&app, &["2"]);
    app.wait_for_words("item-long rail", "forty-three and one half");
    wait_for_the_record(&app, "leg", "formula", "2");
    app.reload();
    app.wait_for_start();
    for words in ["forty-one and one half", "forty-one inches"] {
        app.tap("undo");
        app.wait_for_words("item-long rail", words);
    }
    app.tap("redo");
    app.wait_for_words("item-long rail", "forty-one and one half");
    // Taken back on the page of the size itself, the field follows.
    app.tap("item-leg");
    app.wait_for("field-formula");
    app.tap("undo");
    app.wait_until(
        "the field says what is planned",
        "return document.querySelector('[data-testid=field-formula]').value === '3 1/4'",
    );
    app.assert_quiet_console();
}

#[test]
fn two_windows_with_one_job_lose_neither_edit() {
    let app = demo();
    let first = second_window(&app);
    app.wait_for("sizes");
    plan_the_leg(&app, &["3"]);
    app.turn_to(&first);
    // The first window hears of it, and edits another size.
    app.wait_for_words("item-long rail", "forty-one and one half");
    app.tap("item-overhang");
    app.enter("formula", &["clear", "2", "close"]);
    app.tap("back");
    app.wait_for_words("item-top length", "fifty-one and one half");
    app.wait_for_words("item-long rail", "forty-one and one half");
    app.assert_quiet_console();
}

#[test]
fn a_job_that_cannot_be_saved_says_so_and_can_still_be_handed_on() {
    let app = demo();
    fill(&app);
    plan_the_leg(&app, &["3"]);
    app.wait_for_words("job-trouble", "not kept");
    app.wait_for_words("item-long rail", "forty-one and one half");
    plan_the_leg(&app, &["2"]);
    app.wait_for_words("item-long rail", "forty-three and one half");
    // Among what wants looking at, on every page that has the list.
    for section in ["sizes", "parts", "boards", "front"] {
        app.section(section);
        app.wait_for_words(NOT_KEPT, "no room left");
    }
    app.wait_for("to-look-at");
    app.tap("open-This job is not kept");
    app.picture("attention-not-kept");
    app.assert_accessible();
    app.tap("to-hand-on");
    app.wait_for("save-file");
    app.assert_accessible();
    // Room again: it is gone from the line at once, and from the list without a gap closing under a thumb.
    app.section("front");
    app.wait_for(NOT_KEPT);
    give_room(&app);
    app.wait_until_gone("job-trouble");
    app.wait_until(
        "nothing says that it is not kept",
        &format!(
            "return !document.querySelector('[data-testid=\"{NOT_KEPT}\"]').checkVisibility({{ visibilityProperty: true }})"
        ),
    );
    app.section("sizes");
    app.wait_for("sizes");
    app.wait_until_gone(NOT_KEPT);
}

#[test]
fn a_browser_without_a_database_still_makes_a_job() {
    let app = App::arrive(Screen::PHONE);
    app.before_each_page("IDBFactory.prototype.open = function () { throw new DOMException('private', 'InvalidStateError') }");
    app.go("#/jobs");
    app.wait_for_start();
    new_job_with_a_leg(&app);
    app.wait_for_words("job-trouble", "private mode");
    app.tap("undo");
    app.wait_until_gone("item-leg");
    app.wait_for_words("job-trouble", "not kept");
    app.section("hand-on");
    app.wait_for("save-file");
}

/// Names of every script, of 500 characters, formulas 100 deep and a circle of 2,000 sizes.
#[test]
fn nothing_that_a_file_can_hold_freezes_the_page() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.wait_for("new-job");
    app.script(
        "const size = (id, name, formula) => ({ id, kind: 'measure', rank: id, name, formula });
         const items = [
           size(1, '🪑'.repeat(500), '('.repeat(60) + '1' + ')'.repeat(60)),
           size(2, '脚の厚さ', '('.repeat(100) + '2' + ')'.repeat(100)),
           size(3, 'עץ', '1/0'),
           size(4, '<b>bold</b>', '脚の厚さ'),
         ];
         for (let id = 5; id <= 2000; id++) items.push(size(id, 'ring ' + id, id === 2000 ? 'ring 5' : 'ring ' + (id + 1)));
         const job = JSON.stringify({ format: 'sawdust-reckoner-job', version: 1, title: 'odd', unit: 'in', next_id: 2001, items });
         const open = indexedDB.open('reckoner');
         await new Promise((done) => open.onsuccess = done);
         const edit = open.result.transaction('jobs', 'readwrite');
         edit.objectStore('jobs').put({ title: 'odd', job, history: '', changed: 1 }, 'odd');
         await new Promise((done) => edit.oncomplete = done);
         open.result.close();",
    );
    app.go("#/job/odd/sizes");
    app.wait_for_words("item-ring 5", "This needs itself");
    app.assert_no_sideways_scroll();
    // One of the circle is measured: the circle is open, and every other one has a size.
    app.tap("item-ring 5");
    app.enter("as_cut", &["7", "close"]);
    app.tap("back");
    app.wait_for_words("item-ring 6", "seven inches");
    app.assert_quiet_console();
}

/// Enter leaves a title, though the caret stays in it: what is typed on is one step to take back, not one for each key.
#[test]
fn a_title_that_is_typed_on_after_enter_is_one_step_to_undo() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.tap("open-demo");
    app.wait_for("front");
    app.tap("job-title");
    app.script("document.activeElement.select()");
    app.type_keys("post\u{e007}");
    app.settle();
    // Each key is drawn before the next.
    for key in [" ", "a", "n", "d", " ", "b"] {
        app.type_keys(key);
        app.settle();
    }
    app.script("document.activeElement.blur()");
    app.settle();
    app.wait_for_value("job-title", "post and b");
    app.tap("undo");
    app.wait_for_value("job-title", "post");
    app.assert_quiet_console();
}

/// A thumb makes two spaces of one, and a phone a heart in red: a name as it is typed is a step like any other.
#[test]
fn a_name_with_two_spaces_or_a_heart_is_taken_back() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.tap("open-demo");
    app.wait_for("front");
    let value = "return document.querySelector('[data-testid=job-title]').value";
    let first = app.script(value).as_str().expect("a name").to_owned();
    for (typed, name) in
        [("Potting  bench", "Potting bench"), ("Bench \u{2764}\u{fe0f}", "Bench \u{2764}\u{fe0f}")]
    {
        app.tap("job-title");
        app.script("document.activeElement.select()");
        app.type_keys(typed);
        app.script("document.activeElement.blur()");
        app.settle();
        app.wait_for_value("job-title", name);
        wait_until_folded_in(&app);
        app.reload();
        app.wait_for_start();
        app.wait_for_value("job-title", name);
        app.tap("undo");
        app.wait_for_value("job-title", &first);
        wait_until_folded_in(&app);
        app.wait_for_value("job-title", &first);
        assert!(!app.shows("job-trouble"), "{}", app.text("job-trouble"));
        app.tap("redo");
        app.wait_for_value("job-title", name);
        app.tap("undo");
        app.wait_for_value("job-title", &first);
    }
    app.assert_quiet_console();
}
