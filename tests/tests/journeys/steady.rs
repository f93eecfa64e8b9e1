//! Nothing on a page moves when data arrives: who taps at once hits what was meant.

use reckoner_e2e::{App, Screen, release};

use crate::at_once::first_of;
use crate::shelf::{BENCH, begin_the_demo_anew};

/// Writes down whatever the browser sees move by itself, from the first picture of each page on.
const WATCH: &str = "
  window.moved = [];
  const place = (box) => `${Math.round(box.x)},${Math.round(box.y)} ${Math.round(box.width)}x${Math.round(box.height)}`;
  const name = (node) => node?.nodeType === 1 ? `${node.tagName}.${node.className}` : `${node?.nodeName} ${node?.textContent?.slice(0, 40)}`;
  const note = (entries) => {
    for (const entry of entries) {
      if (entry.hadRecentInput) continue;
      moved.push(...entry.sources.map((it) => `${name(it.node)} from ${place(it.previousRect)} to ${place(it.currentRect)}`));
    }
  };
  const watch = new PerformanceObserver((list) => note(list.getEntries()));
  watch.observe({ type: 'layout-shift', buffered: true });
  window.allMoved = async () => {
    for (let frame = 0; frame < 3; frame++) await new Promise(requestAnimationFrame);
    note(watch.takeRecords());
    return moved;
  };";

/// On a processor as slow as a phone's, so that what comes late comes visibly late.
fn watched(screen: Screen) -> App {
    let app = App::arrive(screen);
    app.before_each_page(WATCH);
    app.slow_down(4);
    app
}

/// Loads a page of the app from nothing.
#[track_caller]
fn load(app: &App, fragment: &str, wanted: &str) {
    app.open("about:blank");
    app.go(fragment);
    app.wait_for_start();
    app.wait_for(wanted);
}

#[track_caller]
fn assert_steady(app: &App, page: &str, faults: &mut Vec<String>) {
    let moved = app.script("return await allMoved()");
    for it in moved.as_array().expect("what moved") {
        faults.push(format!("{page}: {}", it.as_str().unwrap_or_default()));
    }
}

/// The address of what a test id stands on, without what is before its `#`.
fn leads_to(app: &App, id: &str) -> String {
    app.wait_for(id);
    let to = app.script(&format!("return document.querySelector('[data-testid=\"{id}\"]').hash"));
    to.as_str().expect("a link").to_owned()
}

/// The address of the last question of a calculator that is not asked now; `None` where it has but one.
fn another_question(app: &App, slug: &str) -> Option<String> {
    if !app.shows("question") {
        return None;
    }
    app.tap("question");
    let last = app.script(
        "return [...document.querySelectorAll('.question__row:not([aria-current])')].at(-1)?.dataset.testid",
    );
    let (field, choice) = last.as_str()?.split_once('-')?;
    Some(format!("#/{slug}?{field}={choice}"))
}

/// The addresses of the items that the page at hand lists.
fn items(app: &App) -> Vec<String> {
    let all = app.script(
        "return [...document.querySelectorAll('a.row[href*=\"/item/\"]')].map((it) => it.hash)",
    );
    let all = all.as_array().into_iter().flatten();
    all.filter_map(|it| it.as_str().map(str::to_owned)).collect()
}

#[test]
fn nothing_moves_on_the_pages_of_the_calculators_on_a_phone() {
    calculators_stand(Screen::PHONE);
}

#[test]
fn nothing_moves_on_the_pages_of_the_calculators_on_a_desk() {
    calculators_stand(Screen::DESKTOP);
}

#[track_caller]
fn calculators_stand(screen: Screen) {
    let app = watched(screen);
    let mut faults = Vec::new();
    load(&app, "", "home-tape");
    app.wait_until_kept();
    assert_steady(&app, "home", &mut faults);
    let slugs: Vec<String> = app
        .visible_ids()
        .iter()
        .filter_map(|id| id.strip_prefix("home-").map(str::to_owned))
        .collect();
    for slug in slugs {
        load(&app, &format!("#/{slug}"), "answer-headline");
        assert_steady(&app, &slug, &mut faults);
        if screen == Screen::PHONE
            && let Some(page) = another_question(&app, &slug)
        {
            load(&app, &page, "answer-headline");
            assert_steady(&app, &page, &mut faults);
        }
    }
    for (page, wanted) in [
        ("settings", "field-kerf"),
        ("cut", "plan"),
        ("take", "pasted"),
        ("print/spacing?length=43+1/2", "template-letter"),
        ("keep/frame?", "keep-title"),
        ("notices", "notices"),
        ("jobs/start", "kinds"),
    ] {
        load(&app, &format!("#/{page}"), wanted);
        app.wait_until(
            "all is planned",
            "return !document.querySelector('[data-testid=planning]')",
        );
        assert_steady(&app, page, &mut faults);
    }
    assert_eq!(faults, Vec::<String>::new(), "{screen:?}");
}

#[test]
fn nothing_moves_on_the_pages_of_a_job_on_a_phone() {
    job_stands(Screen::PHONE);
}

#[test]
fn nothing_moves_on_the_pages_of_a_job_on_a_desk() {
    job_stands(Screen::DESKTOP);
}

#[track_caller]
fn job_stands(screen: Screen) {
    let app = watched(screen);
    let mut faults = Vec::new();
    load(&app, "#/jobs", "no-jobs");
    assert_steady(&app, "jobs, none", &mut faults);
    app.tap("open-demo");
    app.wait_for("front");
    let job = app.place();
    // In the middle of the work: the plan in use, and what is begun to be said of a board and of a piece.
    app.section("parts");
    let piece = leads_to(&app, "item-leg").replace("/item/", "/piece/") + "/1";
    for (page, wanted, opener, field) in [
        (format!("{job}/boards"), "boards-cut", "different-", "left-0"),
        (piece, "field-as_cut", "spoiled-rack", "left"),
    ] {
        load(&app, &page, wanted);
        assert_steady(&app, &page, &mut faults);
        app.tap(&first_of(&app, opener));
        app.tap(&format!("field-{field}"));
        app.type_keys("7");
        load(&app, &page, &format!("field-{field}"));
        assert_steady(&app, &format!("{page}, begun"), &mut faults);
    }
    load(&app, &job, "front");
    begin_the_demo_anew(&app);
    // What cannot go in is told first.
    app.section("sizes");
    app.tap("item-long rail");
    app.tap("field-formula");
    app.type_keys("×");
    for (page, wanted) in [(job.clone(), "next"), (format!("{job}/sizes"), "sizes")] {
        load(&app, &page, wanted);
        app.wait_for("unread-formula");
        assert_steady(&app, &format!("{page}, with what cannot go in"), &mut faults);
    }
    app.tap("throw-formula");
    let leg = leads_to(&app, "item-leg");
    app.section("parts");
    let part = leads_to(&app, "item-leg");
    app.section("kept");
    let kept = leads_to(&app, "item-Half of the long rail");
    let piece = part.replace("/item/", "/piece/") + "/0";
    let stands = part.replace("/item/", "/stands/") + "/0/thickness";
    let parts_of = leads_to(&app, "item-Top planks").replace("/item/", "/parts-of/");
    app.section("rack");
    app.wait_for("rack");
    let on_the_rack = items(&app);
    load(&app, "#/jobs", "jobs");
    app.picture(&format!("jobs-{}", screen.width));
    assert_steady(&app, "jobs", &mut faults);
    for (page, wanted) in [
        (job.clone(), "front"),
        (format!("{job}/sizes"), "sizes"),
        (format!("{job}/more"), "section-kept"),
        (format!("{job}/parts"), "parts"),
        (format!("{job}/build"), "build"),
        (format!("{job}/buy"), "not-in-the-list"),
        (format!("{job}/kept"), "item-Half of the long rail"),
        (format!("{job}/rack"), "rack"),
        (format!("{job}/boards"), "plan-it"),
        (format!("{job}/hand-on"), "save-file"),
        (format!("{job}/codes"), "code"),
        (format!("{job}/card"), "card"),
        (format!("{job}/labels"), "labels"),
        (format!("{job}/new/measure"), "field-name"),
        (format!("{job}/new/match"), "field-name"),
        (format!("{job}/new/part"), "field-name"),
        (format!("{job}/new/board"), "field-name"),
        (format!("{job}/new/yard"), "field-price"),
        (format!("{job}/new/round"), "field-name"),
        (format!("{job}/new/saw"), "field-kerf"),
        (format!("{job}/new/screw"), "field-gauge"),
        (format!("{job}/new/sketch"), "field-length"),
        (format!("{job}/new/close"), "field-size"),
        (format!("{job}/buy/paper"), "yard-paper"),
        (leg, "field-formula"),
        (part, "field-length"),
        (piece, "field-as_cut"),
        (kept, "answer-headline"),
        (stands, "stands"),
        (parts_of, "making"),
    ] {
        load(&app, &page, wanted);
        assert_steady(&app, &page, &mut faults);
    }
    for page in on_the_rack {
        load(&app, &page, "take-out");
        assert_steady(&app, &page, &mut faults);
    }
    load(&app, &format!("{job}/hand-on"), "remove-job");
    app.tap("remove-job");
    app.wait_for("no-jobs");
    assert_steady(&app, "jobs, one taken off", &mut faults);
    load(&app, "#/jobs/removed", "removed");
    assert_steady(&app, "removed jobs", &mut faults);
    app.tap(&format!("put-back-{BENCH}"));
    app.wait_for(&format!("open-{BENCH}"));
    assert_steady(&app, "removed jobs, one put back", &mut faults);
    assert_eq!(faults, Vec::<String>::new(), "{screen:?}");
}

/// The browser gives the database back with nothing in it, and the page tells so.
#[test]
fn nothing_moves_when_trouble_is_told() {
    for screen in [Screen::PHONE, Screen::DESKTOP] {
        let app = watched(screen);
        let mut faults = Vec::new();
        load(&app, "#/jobs", "open-demo");
        app.tap("open-demo");
        app.wait_for("front");
        let job = app.place();
        load(&app, &job, "front");
        app.script(
            "IDBObjectStore.prototype.get = function () { throw new DOMException('gone', 'UnknownError') };
             new BroadcastChannel('reckoner-jobs').postMessage(location.hash.split('/')[2])",
        );
        app.wait_for("job-trouble");
        app.picture(&format!("trouble-{}", screen.width));
        assert_steady(&app, "a job", &mut faults);
        app.before_each_page("IDBFactory.prototype.open = function () { throw new DOMException('private', 'InvalidStateError') }");
        load(&app, "#/jobs", "job-trouble");
        assert_steady(&app, "jobs", &mut faults);
        // Nor does the local storage take what is typed outside a job; by a script, so that no hand has moved it.
        app.before_each_page(
            "Storage.prototype.setItem = function () { throw new DOMException('full', 'QuotaExceededError') }",
        );
        load(&app, "#/take", "pasted");
        app.script(
            "const field = document.querySelector('[data-testid=pasted]');
             field.value = '7';
             field.dispatchEvent(new InputEvent('input', { bubbles: true }))",
        );
        app.wait_for("not-kept");
        assert_steady(&app, "take", &mut faults);
        // Of a calculator the page keeps that it was opened.
        load(&app, "#/tape", "not-kept");
        app.wait_for("answer-headline");
        assert_steady(&app, "tape", &mut faults);
        assert_eq!(faults, Vec::<String>::new(), "{screen:?}");
    }
}

#[test]
fn nothing_moves_when_a_new_release_is_offered() {
    for screen in [Screen::PHONE, Screen::DESKTOP] {
        let app = watched(screen);
        let mut faults = Vec::new();
        load(&app, "#/tape", "answer-headline");
        app.wait_until_kept();
        app.server.serve_folder(release::another("steady"));
        app.script("(await navigator.serviceWorker.getRegistration()).update()");
        app.wait_for("update-banner");
        assert_steady(&app, "tape", &mut faults);
        assert_eq!(faults, Vec::<String>::new(), "{screen:?}");
        app.picture(&format!("update-{}", screen.width));
        app.tap("update-later");
        assert!(!app.shows("update-banner"));
    }
}
