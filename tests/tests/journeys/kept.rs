//! Nothing that is typed in a job is lost, whatever way out is taken, and nothing fails in silence.

use reckoner_e2e::{App, Screen};
use serde_json::json;

use crate::shelf::{
    address_of_job, click, demo, demo_on, fail_to_put, fill, give_room, new_job_with_a_leg,
    wait_for_the_record, wait_until_folded_in,
};

/// Does something in the page and loads it again in the same task, as a page that is closed at
/// once.
pub(crate) fn and_reload_at_once(app: &App, script: &str) {
    app.script(&format!(
        "document.documentElement.dataset.app = 'leaving'; {script}; location.reload()"
    ));
    app.wait_for_start();
}

/// Opens the size with this name with what the tape says typed and the keys still open.
pub(crate) fn measure(app: &App, name: &str, keys: &[&str]) {
    app.tap(&format!("item-{name}"));
    app.enter("as_cut", keys);
}

/// The phone's Back, once for the keys and once for the page.
fn back_twice(app: &App) {
    app.script("history.back()");
    app.wait_until_gone("keypad");
    app.script("history.back()");
}

const LEG_AS_CUT: [&str; 4] = ["3", "page-16", "3/16", "close"];

#[test]
fn what_the_tape_says_is_kept_by_the_phones_back() {
    let app = demo();
    app.tap("item-leg");
    app.tap("field-as_cut");
    app.press(&["2"]);
    back_twice(&app);
    app.wait_for("sizes");
    app.wait_for_words("item-leg", "two inches");
    app.wait_for_words("item-leg", "the tape says");
    app.reload();
    app.wait_for_start();
    app.wait_for_words("item-leg", "two inches");
    app.assert_quiet_console();
}

#[test]
fn a_note_and_choices_are_kept_by_the_arrow() {
    let app = demo();
    app.section("parts");
    app.wait_for("parts");
    let name =
        app.script("return document.querySelector('[data-testid^=item-]').dataset.testid.slice(5)");
    let part = format!("item-{}", name.as_str().expect("a part"));
    app.tap(&part);
    app.tap("may_resaw-yes");
    app.tap("field-note");
    app.type_keys("knot on the back");
    app.tap("back");
    app.wait_for("parts");
    app.tap(&part);
    app.wait_for_value("field-note", "knot on the back");
    let is_chosen = "return document.querySelector('#may_resaw-yes').checked";
    app.wait_until("may be resawn", is_chosen);
    app.reload();
    app.wait_for_start();
    app.wait_for_value("field-note", "knot on the back");
    app.wait_until("may be resawn", is_chosen);
    app.assert_quiet_console();
}

#[test]
fn the_next_field_and_a_reload_at_once_lose_nothing() {
    let app = demo();
    app.tap("item-leg");
    app.enter("as_cut", &["2", "next"]);
    and_reload_at_once(&app, "");
    app.wait_for_value("field-as_cut", "2");
    app.tap("back");
    app.wait_for_words("item-leg", "two inches");
    // With the keys still open, in the very task of the key.
    measure(&app, "overhang", &[]);
    and_reload_at_once(&app, &click("key-5"));
    app.wait_for_value("field-as_cut", "5");
    app.tap("back");
    app.wait_for_words("item-overhang", "five inches");
    app.assert_quiet_console();
}

/// A job is on the device in the event that begins it: what is typed in it has somewhere to go.
#[test]
fn a_new_job_outlives_the_page_that_is_loaded_again_in_the_same_task() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    for begin in ["new-job", "open-demo"] {
        app.go("#/jobs");
        app.wait_for(begin);
        and_reload_at_once(
            &app,
            &format!("document.querySelector('[data-testid={begin}]').click()"),
        );
        app.wait_for("section-sizes");
        app.section("sizes");
        app.wait_for("add-measure");
    }
    app.assert_quiet_console();
}

/// The system ends a page without a word: what was typed up to the last key is there.
#[test]
fn a_page_that_is_ended_without_a_word_loses_no_key() {
    let app = demo();
    app.tap("item-leg");
    app.enter("as_cut", &["2", "page-signs"]);
    and_reload_at_once(
        &app,
        &format!(
            "addEventListener('pagehide', (event) => event.stopImmediatePropagation(), true); {}",
            click("key-plus")
        ),
    );
    // It is no size yet, so it stands as it was typed.
    app.wait_until(
        "the last key is there",
        "return document.querySelector('[data-testid=field-as_cut]')?.value.trim() === '2 +'",
    );
    app.wait_for("problem-as_cut");
    app.tap("field-as_cut");
    app.press(&["1", "close"]);
    app.tap("back");
    app.wait_for("sizes");
    app.assert_quiet_console();
}

#[test]
fn a_piece_a_reckoning_and_titles_are_kept() {
    let app = demo();
    app.section("parts");
    app.wait_for("parts");
    app.script("document.querySelector('a.row[data-testid^=item-]').click()");
    app.tap("piece-1");
    app.enter("as_cut", &["3", "3"]);
    back_twice(&app);
    app.wait_for_words("piece-1", "thirty-three inches");
    app.tap("back");
    app.section("kept");
    app.wait_for("kept");
    app.script("document.querySelector('[data-testid=kept] a').click()");
    app.wait_for("kept-title");
    app.tap("kept-title");
    app.type_keys(" X");
    app.tap("back");
    app.wait_for("kept");
    app.wait_for_words("kept", " X");
    app.section("front");
    app.tap("job-title");
    app.type_keys(" Y");
    and_reload_at_once(&app, "");
    app.wait_until(
        "the job has the new name",
        "return document.querySelector('[data-testid=job-title]')?.value.includes(' Y') ?? false",
    );
    app.assert_quiet_console();
}

#[test]
fn a_field_of_a_kept_reckoning_is_kept_by_back() {
    let app = demo();
    app.section("kept");
    app.wait_for("kept");
    app.script("document.querySelector('[data-testid=kept] a').click()");
    app.wait_for("kept-title");
    let field = app.script(
        "return [...document.querySelectorAll('input.field__input')].find((it) => it.inputMode === 'none').dataset.testid",
    );
    let field = field.as_str().expect("a size").to_owned();
    let value = format!("return document.querySelector('[data-testid=\"{field}\"]').value");
    let before = app.script(&value);
    app.tap(&field);
    app.press(&["7"]);
    let typed = app.script(&value);
    assert_ne!(typed, before);
    let at = app.place();
    back_twice(&app);
    app.wait_for("kept");
    app.go(&at);
    app.wait_for_value(&field, typed.as_str().expect("a text"));
    app.assert_quiet_console();
}

#[test]
fn a_slow_press_on_the_arrow_keeps_what_was_typed() {
    let app = demo_on(Screen::DESKTOP);
    app.tap("item-leg");
    app.tap("field-as_cut");
    app.type_keys("2");
    // Down, the focus goes, and only then up.
    app.hold("back");
    app.wait_until(
        "the field is left",
        "return document.activeElement?.dataset?.testid !== 'field-as_cut'",
    );
    app.let_go();
    app.wait_for("sizes");
    app.wait_for_words("item-leg", "two inches");
    app.assert_quiet_console();
}

/// A form of something new, what is typed in it first, and where it stands in the job.
const NEW: [(&str, &str, &str); 4] = [
    ("sizes", "measure", "name"),
    ("parts", "part", "name"),
    ("rack", "board", "name"),
    ("rack", "round", "name"),
];

#[test]
fn something_new_is_a_draft_until_it_is_put_in_or_thrown_away() {
    let app = demo();
    let job = address_of_job(&app);
    for (section, form, field) in NEW {
        let section = format!("{job}/{section}");
        app.go(&section);
        app.tap(&format!("add-{form}"));
        app.tap(&format!("field-{field}"));
        app.type_keys("spare thing");
        app.tap("back");
        app.wait_for_words(&format!("begun-{form}"), "spare thing");
        and_reload_at_once(&app, "");
        app.tap(&format!("begun-{form}"));
        app.wait_for_value(&format!("field-{field}"), "spare thing");
        app.tap("throw-away");
        app.wait_for_value(&format!("field-{field}"), "");
        app.tap("bring-back");
        app.wait_for_value(&format!("field-{field}"), "spare thing");
        app.tap("throw-away");
        app.tap("back");
        app.wait_for(&format!("add-{form}"));
        app.wait_until_gone(&format!("begun-{form}"));
        app.reload();
        app.wait_for_start();
        app.wait_for(&format!("add-{form}"));
        app.wait_until_gone(&format!("begun-{form}"));
    }
    app.assert_quiet_console();
}

#[test]
fn a_draft_is_put_in_once_it_is_whole() {
    let app = demo();
    app.tap("add-measure");
    app.tap("field-name");
    app.type_keys("cleat");
    app.script("history.back()");
    app.tap("begun-measure");
    app.enter("formula", &["4", "close"]);
    and_reload_at_once(&app, "");
    app.tap("save-item");
    app.wait_for_words("item-cleat", "four inches");
    app.wait_until_gone("begun-measure");
    app.reload();
    app.wait_for_start();
    app.wait_for_words("item-cleat", "four inches");
    app.wait_until_gone("begun-measure");
    app.assert_quiet_console();
}

#[test]
fn a_new_match_keeps_its_members() {
    let app = demo();
    app.tap("add-match");
    app.tap("field-name");
    app.type_keys("pair");
    app.tap("member-leg");
    and_reload_at_once(&app, &click("member-overhang"));
    app.wait_for_value("field-name", "pair");
    app.wait_until(
        "both are tapped",
        "return ['leg', 'overhang'].every((it) =>
            document.querySelector(`[data-testid=\"member-${it}\"]`)?.getAttribute('aria-pressed') === 'true')",
    );
    app.tap("save-item");
    app.wait_for("item-pair");
    app.assert_quiet_console();
}

#[test]
fn what_cannot_be_read_stays_as_it_is_typed() {
    let app = demo();
    let to_look_at = || {
        app.script("return Number(document.querySelector('[data-testid=to-look-at]')?.innerText)")
    };
    let at_first = to_look_at();
    app.tap("item-long rail");
    app.tap("field-formula");
    app.press(&["close"]);
    let before = app.script("return document.querySelector('[data-testid=field-formula]').value");
    app.tap("field-formula");
    app.tap("key-clear");
    app.press(&["3", "page-signs", "times", "close"]);
    app.wait_for("problem-formula");
    let typed = app.script("return document.querySelector('[data-testid=field-formula]').value");
    assert_ne!(typed, before);
    let typed = typed.as_str().expect("a text");
    app.tap("back");
    app.wait_for("unread-formula");
    app.picture("kept-unread");
    app.reload();
    app.wait_for_start();
    app.wait_for("unread-formula");
    // It is counted with what wants looking at, and stands where that does; what came late, from the next page on.
    assert_eq!(to_look_at(), at_first.as_u64().expect("a count") + 1);
    app.section("parts");
    app.section("sizes");
    app.wait_for("unread-formula");
    let is_before = app.script(
        "const top = (id) => document.querySelector(`[data-testid=${id}]`).getBoundingClientRect().top;
         return top('unread-formula') < top('sizes')",
    );
    assert_eq!(is_before, true);
    app.tap("item-long rail");
    app.wait_for_value("field-formula", typed);
    app.wait_for("problem-formula");
    app.tap("back");
    app.tap("throw-formula");
    app.wait_until_gone("unread-formula");
    assert_eq!(to_look_at(), at_first);
    app.tap("item-long rail");
    app.wait_for_value("field-formula", before.as_str().expect("a text"));
    app.assert_quiet_console();
}

/// A mark of direction and one of no width: the part and the job say so, and what was typed stays as it was typed.
#[test]
fn a_name_that_cannot_be_seen_is_told_and_not_changed() {
    let app = demo();
    app.section("parts");
    app.tap("item-long rail, upper");
    app.tap("field-name");
    app.type_keys("\u{202e}\u{200b}");
    app.script("document.activeElement.blur()");
    app.wait_for_words("problem-name", "cannot be seen");
    let typed = app.script("return document.querySelector('[data-testid=field-name]').value");
    let typed = typed.as_str().expect("a text").to_owned();
    assert!(typed.contains('\u{202e}'), "{typed:?}");
    app.reload();
    app.wait_for_start();
    app.wait_for_value("field-name", &typed);
    app.tap("back");
    app.section("front");
    app.tap("job-title");
    app.type_keys("\u{202e}");
    app.script("document.activeElement.blur()");
    app.wait_for_words("problem-job-title", "cannot be seen");
    app.assert_quiet_console();
}

/// What is typed beside the jobs: the title of a reckoning that is to be kept, and a text that was pasted.
#[test]
fn a_title_and_a_pasted_text_are_there_again() {
    let app = App::open_at(Screen::PHONE, "#/keep/tape?strip=44&unit=in");
    app.tap("keep-title");
    app.type_keys(" X");
    and_reload_at_once(&app, "");
    app.wait_until(
        "the title goes on",
        "return document.querySelector('[data-testid=keep-title]')?.value.endsWith(' X') ?? false",
    );
    app.go("#/take");
    app.tap("pasted");
    app.type_keys("half a link");
    and_reload_at_once(&app, "");
    app.wait_for_value("pasted", "half a link");
    app.assert_quiet_console();
}

/// A price has no thousandths: it is not rounded in silence.
#[test]
fn a_price_with_thousandths_stays_as_it_is_typed() {
    let app = demo();
    app.section("rack");
    app.tap("add-yard");
    app.enter("price", &["5", "point", "0", "0", "6", "close"]);
    app.wait_for("problem-price");
    app.wait_for_value("field-price", "5.006");
    app.tap("back");
    app.tap("begun-yard");
    app.wait_for_value("field-price", "5.006");
    app.assert_quiet_console();
}

#[test]
fn a_tick_outlives_the_page_that_is_left_in_the_same_task() {
    let app = demo();
    app.section("parts");
    app.wait_for("parts");
    let ids = app.script(
        "return [...document.querySelectorAll('.tick[aria-pressed=false]')].slice(0, 3).map((it) => it.dataset.testid)",
    );
    let ids: Vec<String> = ids
        .as_array()
        .into_iter()
        .flatten()
        .filter_map(|id| Some(id.as_str()?.to_owned()))
        .collect();
    for id in &ids {
        and_reload_at_once(&app, &click(id));
        app.wait_until(
            &format!("{id} is ticked"),
            &format!("return document.querySelector('[data-testid=\"{id}\"]')?.getAttribute('aria-pressed') === 'true'"),
        );
    }
    assert_eq!(ids.len(), 3);
    // No note is left behind: each stands in the record, once.
    wait_until_folded_in(&app);
    app.tap("undo");
    app.wait_until(
        "the last one is taken back, and only that",
        &format!(
            "return {}.map((id) => document.querySelector(`[data-testid=\"${{id}}\"]`).getAttribute('aria-pressed')).join() === 'true,true,false'",
            json!(ids)
        ),
    );
    app.assert_quiet_console();
}

#[test]
fn a_full_device_is_told_and_what_it_did_not_take_is_kept_once_there_is_room() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.wait_for("new-job");
    fill(&app);
    new_job_with_a_leg(&app);
    app.wait_for_words("job-trouble", "not kept");
    app.wait_for_words("job-trouble", "no room");
    app.wait_for("to-hand-on");
    app.picture("kept-full");
    app.assert_accessible();
    give_room(&app);
    app.wait_until_gone("job-trouble");
    app.reload();
    app.wait_for_start();
    app.wait_for_words("item-leg", "three inches");
    app.assert_quiet_console();
}

/// However long the reason: under the thumb that types there are keys, not words, and the page can still be left.
#[test]
fn what_is_not_kept_is_told_over_no_key() {
    for screen in [Screen::NARROW, Screen::PHONE] {
        let app = demo_on(screen);
        app.tap("item-leg");
        app.tap("field-as_cut");
        fail_to_put(&app, "throw new DOMException('', 'a reason of many words. '.repeat(30))");
        app.press(&["2"]);
        app.wait_for_words("job-trouble", "a reason of many words");
        app.picture(&format!("kept-long-{}", screen.width));
        let covered = app.script(
            "return [...document.querySelectorAll('.keypad button, .is-docked button, .is-docked input, [data-testid=back]')].filter((it) => {
               const { left, top, width, height } = it.getBoundingClientRect();
               const x = left + width / 2;
               return x < innerWidth && it.checkVisibility() && !it.contains(document.elementFromPoint(x, top + height / 2));
             }).map((it) => it.dataset.testid)",
        );
        assert_eq!(covered, json!([]), "at {}", screen.width);
    }
}

/// The transaction is given up after the writing was accepted, as browsers do it.
#[test]
fn a_transaction_that_is_given_up_is_no_success() {
    let app = demo();
    fail_to_put(
        &app,
        "const asked = window.put.apply(this, all); this.transaction.abort(); return asked",
    );
    app.section("parts");
    app.wait_for("parts");
    app.script("document.querySelector('.tick[aria-pressed=false]').click()");
    app.wait_for_words("job-trouble", "not kept");
    give_room(&app);
    app.wait_until_gone("job-trouble");
    wait_until_folded_in(&app);
    app.assert_quiet_console();
}

#[test]
fn a_connection_that_the_browser_closes_is_opened_again() {
    let app = demo();
    // The page cannot know: its next transaction is refused.
    app.script(
        "const begin = IDBDatabase.prototype.transaction;
         IDBDatabase.prototype.transaction = function (...all) {
           IDBDatabase.prototype.transaction = begin;
           this.close();
           return begin.apply(this, all);
         }",
    );
    app.tap("item-leg");
    app.enter("as_cut", &["2", "close"]);
    app.tap("back");
    app.wait_for_words("item-leg", "two inches");
    wait_until_folded_in(&app);
    app.reload();
    app.wait_for_start();
    app.wait_for_words("item-leg", "two inches");
}

/// Has the local storage as it was before something was done, as a browser that was killed brings it back; and starts again.
fn lose_what_is_written_in(app: &App, done: impl Fn()) {
    let before = app.script("return JSON.stringify({ ...localStorage })");
    done();
    app.script(&format!(
        "const before = JSON.parse({before});
         localStorage.clear();
         for (const [name, text] of Object.entries(before)) localStorage.setItem(name, text)"
    ));
    app.go("?again#/tape");
    app.wait_for_start();
}

const HAS_TYPED: &str = "return (localStorage.getItem('reckoner.last.tape') ?? '').includes('77')";

/// A calculator, and a browser that has lost the last writing of its local storage.
#[test]
fn a_calculator_has_what_the_local_storage_lost() {
    let app = App::open_at(Screen::PHONE, "#/tape");
    app.wait_for("answer-headline");
    lose_what_is_written_in(&app, || {
        app.tap("go-through");
        app.press(&["7", "7"]);
        app.wait_until("it is kept", HAS_TYPED);
    });
    app.wait_until("it is there again", HAS_TYPED);
    app.assert_quiet_console();
}

/// The same where the database had no room, and the page was loaded again before it had: the page that comes then gives it
/// what the local storage alone has.
#[test]
fn what_the_database_had_no_room_for_comes_into_it_at_the_next_start() {
    let app = App::open_at(Screen::PHONE, "#/tape");
    app.wait_for("answer-headline");
    lose_what_is_written_in(&app, || {
        fill(&app);
        app.tap("go-through");
        app.press(&["7", "7"]);
        app.wait_until("it is kept", HAS_TYPED);
        app.go("?once#/tape");
        app.wait_for_start();
        app.wait_until(
            "the database has it",
            "const open = indexedDB.open('reckoner');
             await new Promise((done) => open.onsuccess = done);
             const asked = open.result.transaction('notes').objectStore('notes').get('kept/last.tape');
             await new Promise((done) => asked.onsuccess = done);
             open.result.close();
             return (asked.result ?? '').includes('77')",
        );
    });
    app.wait_until("it is there again", HAS_TYPED);
    app.assert_quiet_console();
}

/// A page of the app's origin without the app, where its database is made as the version before made it. `then` does more
/// with `open.result`.
pub(crate) fn on_a_database_of_before(then: &str) -> App {
    let app = App::arrive(Screen::PHONE);
    app.go("manifest.webmanifest");
    app.script(&format!(
        "const open = indexedDB.open('reckoner', 1);
         open.onupgradeneeded = () => open.result.createObjectStore('jobs');
         await new Promise((done) => open.onsuccess = done);
         {then}"
    ));
    app
}

/// Databases of the version before have no notes: they open with their jobs.
#[test]
fn jobs_of_the_version_before_are_opened() {
    let app = on_a_database_of_before(
        "const job = JSON.stringify({ format: 'sawdust-reckoner-job', version: 1, title: 'old bench', unit: 'in', next_id: 2,
           items: [{ id: 1, kind: 'measure', rank: 1, name: 'leg', formula: '3' }] });
         const put = open.result.transaction('jobs', 'readwrite').objectStore('jobs').put({ title: 'old bench', job, history: '', changed: 1 }, 'old');
         await new Promise((done) => put.onsuccess = done);
         open.result.close();",
    );
    app.go("#/jobs");
    app.wait_for_start();
    app.tap("job-old bench");
    app.section("sizes");
    measure(&app, "leg", &LEG_AS_CUT);
    app.tap("back");
    app.wait_for_words("item-leg", "three and three sixteenths");
    wait_for_the_record(&app, "leg", "as_cut", "3 3/16");
}
