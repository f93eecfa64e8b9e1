//! The demo on the shelf, and what is kept of it: what the journeys of the job book share.

use reckoner_e2e::{App, Screen};

/// The demo, by its title.
pub(crate) const BENCH: &str = "Potting bench (demo, invented)";

/// Opens the demo from the empty shelf.
pub(crate) fn demo_on(screen: Screen) -> App {
    let app = App::open_at(screen, "#/jobs");
    app.tap("open-demo");
    begin_the_demo_anew(&app);
    app
}

/// Takes the work on the demo back, step by step, until nothing of it is bought or cut; then its sizes.
pub(crate) fn begin_the_demo_anew(app: &App) {
    app.wait_for("front");
    while app.script("return document.querySelector('[data-testid=undo]').disabled") == false {
        app.tap("undo");
    }
    app.wait_for_words("pieces-so-far", "0 of");
    app.section("sizes");
    app.wait_for("sizes");
}

/// The address of the job at hand.
pub(crate) fn address_of_job(app: &App) -> String {
    app.place().split('/').take(3).collect::<Vec<_>>().join("/")
}

/// Opens the demo on a phone.
pub(crate) fn demo() -> App {
    demo_on(Screen::PHONE)
}

/// The demo in the middle of its work, at the leg that is cut first.
pub(crate) fn first_leg() -> App {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.tap("open-demo");
    app.wait_for("front");
    app.section("parts");
    app.tap("item-leg");
    app.tap("piece-1");
    app
}

/// Measures the leg of the demo 1/16 in thinner than planned.
pub(crate) fn cut_the_leg_thin(app: &App) {
    app.tap("item-leg");
    app.enter("as_cut", &["3", "page-16", "3/16", "close"]);
    app.wait_for("moved");
}

/// Makes a job anew on the page of the shelf, with one size: the leg of 3 inches.
pub(crate) fn new_job_with_a_leg(app: &App) {
    app.tap("new-job");
    app.tap("add-measure");
    app.tap("field-name");
    app.type_keys("leg");
    app.enter("formula", &["3", "close"]);
    app.tap("save-item");
    app.wait_for_words("item-leg", "three inches");
}

/// Opens the job of this window in another one, and goes there; the window that was left.
pub(crate) fn second_window(app: &App) -> String {
    let here = app.place();
    let first = app.window();
    app.open_window();
    app.go(&here);
    app.wait_for_start();
    first
}

/// A script that asks a store of the database something, and says what `then` makes of `found`.
fn of_the_database(store: &str, question: &str, then: &str) -> String {
    format!(
        "const open = indexedDB.open('reckoner');
         await new Promise((done) => open.onsuccess = done);
         const asked = open.result.transaction('{store}').objectStore('{store}').{question};
         await new Promise((done) => asked.onsuccess = done);
         open.result.close();
         const found = asked.result;
         return {then}"
    )
}

/// How many jobs are in the database.
pub(crate) fn stored_jobs(app: &App) -> u64 {
    let count = app.script(&of_the_database("jobs", "count()", "found"));
    count.as_u64().expect("a count")
}

/// Waits until the job on the page stands in the database with this text of a size.
pub(crate) fn wait_for_the_record(app: &App, size: &str, field: &str, text: &str) {
    app.wait_until(
        &format!("the {field} of {size} is kept as {text:?}"),
        &of_the_database(
            "jobs",
            "get(location.hash.split('/')[2])",
            &format!(
                "JSON.parse(found.job).items.find((it) => it.kind === 'measure' && it.name === {size:?})[{field:?}] === {text:?}"
            ),
        ),
    );
}

/// Waits until no note about a job is left in the database: each stands in its record.
pub(crate) fn wait_until_folded_in(app: &App) {
    app.wait_until(
        "every note is folded in",
        &of_the_database(
            "notes",
            "getAllKeys()",
            "((left) => left.length === 0 ? true : left)(found.filter((key) => !['kept', 'taken'].includes(key.split('/')[0])))",
        ),
    );
}

/// Has every writing fail as on a full device, until [`make_room`].
pub(crate) fn fill(app: &App) {
    fail_to_put(app, "throw new DOMException('full', 'QuotaExceededError')");
}

/// Has every writing do this in its place, until [`make_room`].
pub(crate) fn fail_to_put(app: &App, body: &str) {
    app.script(&format!(
        "window.put ??= IDBObjectStore.prototype.put;
         IDBObjectStore.prototype.put = function (...all) {{ {body} }}"
    ));
}

/// There is room again, and in the same task this is done.
pub(crate) fn make_room(app: &App, and: &str) {
    app.script(&format!("IDBObjectStore.prototype.put = window.put; {and}"));
}

/// There is room again, and the window comes to the front.
pub(crate) fn give_room(app: &App) {
    make_room(app, "document.dispatchEvent(new Event('visibilitychange'))");
}

/// A script that clicks the element with this test id.
pub(crate) fn click(id: &str) -> String {
    format!("document.querySelector('[data-testid=\"{id}\"]').click()")
}
