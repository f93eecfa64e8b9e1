//! A job handed to a second browser with a profile of its own: by file, link, text and camera.

use std::fs;

use crate::film::{self, Frame};
use crate::job::demo;
use crate::shelf::address_of_job;
use reckoner_e2e::{App, Browser, Screen};
use serde_json::{Value, json};

/// The demo in the middle of its work, with the thin leg left as it is and another measured short: what was recorded, what
/// wants looking at, and what does not any more.
fn job_of_the_first() -> App {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.tap("open-demo");
    app.wait_for("front");
    app.tap("open-leg 2");
    app.tap("leave");
    app.wait_for("left-leg 2");
    app.section("parts");
    app.tap("item-leg");
    app.tap("piece-1");
    app.enter("as_cut", &["3", "3", "close"]);
    app.wait_for_words("trouble-leg 1", "too short");
    app.tap("back");
    app.tap("back");
    app.wait_for("parts");
    app
}

/// A job as it stands on its pages.
#[derive(Debug, PartialEq)]
struct Stands {
    sizes: String,
    parts: String,
    /// What wants looking at, and what is left as it is, by their ids and in words.
    attention: (Vec<String>, String),
    /// The thin leg: its headline, and what its fields hold.
    leg: (String, Vec<String>),
}

fn stands(app: &App) -> Stands {
    app.section("sizes");
    let sizes = app.text("sizes");
    app.section("front");
    app.wait_for("attention");
    if app.shows("all-to-look-at") {
        app.tap("all-to-look-at");
    }
    let ids = app.script(
        "return [...document.querySelectorAll('[data-testid=attention] article')].map((it) => it.dataset.testid)",
    );
    let ids: Vec<String> = serde_json::from_value(ids).expect("ids");
    assert!(ids.iter().any(|it| it.starts_with("trouble-")), "{ids:?}");
    assert!(ids.iter().any(|it| it == "left-leg 2"), "{ids:?}");
    let attention = (ids, app.text("attention"));
    app.section("parts");
    let parts = app.text("parts");
    app.tap("item-leg");
    app.tap("piece-2");
    app.wait_for("piece-is");
    let held = app.script(
        "return [...document.querySelectorAll('main input')].map((it) => `${it.dataset.testid}: ${it.value}`)",
    );
    let held: Vec<String> = serde_json::from_value(held).expect("texts");
    // In the demo the tape says so of its thickness.
    assert!(held.contains(&"field-thickness: 3 3/16".to_owned()), "{held:?}");
    let leg = (app.text("answer-headline"), held);
    app.tap("back");
    app.tap("back");
    Stands { sizes, parts, attention, leg }
}

fn to_hand_on(app: &App) {
    app.section("hand-on");
    app.wait_for("save-file");
}

/// A second browser on the page where jobs are taken in, with an empty shelf.
fn second(browser: Browser) -> App {
    let app = App::with(browser);
    app.go("#/take");
    app.wait_for_start();
    app.wait_for("watch");
    app
}

/// What will come in is shown first; then it is taken, and is the same job.
fn take_and_compare(first: &App, second: &App) {
    second.wait_for("incoming");
    let words = second.text("incoming");
    assert!(words.contains("Potting bench") && words.contains("sizes"), "{words}");
    assert!(!second.shows("name-is-here"), "{words}");
    second.tap("take-job");
    second.wait_for("front");
    assert_eq!(stands(second), stands(first));
    second.assert_quiet_console();
}

pub(crate) fn paste(app: &App, text: &str) {
    app.script(&format!(
        "const box = document.querySelector('[data-testid=pasted]');
         box.value = {}; box.dispatchEvent(new Event('input', {{ bubbles: true }}))",
        serde_json::json!(text)
    ));
    app.tap("look-at-text");
}

/// What the page copies, in place of the clipboard, which belongs to the whole machine.
fn copied(app: &App, button: &str) -> String {
    app.script("navigator.clipboard.writeText = async (text) => { window.copied = text }");
    app.tap(button);
    app.wait_until("something is copied", "return Boolean(window.copied)");
    app.script("return window.copied").as_str().expect("a text").to_owned()
}

#[test]
fn a_job_goes_to_another_browser_as_a_file() {
    let first = job_of_the_first();
    to_hand_on(&first);
    let folder = film::files_of("as-a-file");
    first.save_files_to(&folder);
    first.tap("save-file");
    let file = first.saved_file(&folder);
    let second = second(Browser::start(Screen::PHONE));
    second.choose_file("[data-testid=open-file]", &file);
    second.wait_for("incoming");
    second.assert_accessible();
    second.picture("take-incoming");
    take_and_compare(&first, &second);
}

/// A job of the first version of the file says of none of its ticked pieces that it is right: their sizes were not recorded.
#[test]
fn a_job_of_the_first_version_says_that_sizes_were_not_recorded() {
    let app = second(Browser::start(Screen::PHONE));
    // Of its one ticked leg the tape says the length; a second one is ticked alone.
    let file = include_str!("../../../src/formats/tests/fixtures/job_v1.json");
    let two =
        file.replace("\"as_cut\": \"33 7/16\"}", "\"as_cut\": \"33 7/16\"}, {\"done\": true}");
    assert_ne!(two, file);
    paste(&app, &two);
    app.wait_for("incoming");
    app.tap("take-job");
    app.wait_for("front");
    for section in ["front", "sizes", "parts", "boards", "build"] {
        app.section(section);
        app.wait_for_words("attention", "leg 1 and 2: cut, and the size was not recorded");
    }
    app.tap("back");
    app.section("parts");
    app.wait_for("item-leg");
    let words = app.text("parts");
    assert!(!words.contains("as wanted"), "{words}");
    app.picture("not-recorded");
    app.tap("item-leg");
    app.wait_for_words("piece-2", "size not recorded");
    app.tap("piece-2");
    app.wait_for_words("answer-headline", "size not recorded");
    let words = app.script("return document.body.innerText");
    assert!(!words.as_str().is_some_and(|it| it.contains("as wanted")), "{words}");
    app.picture("not-recorded-piece");
    app.assert_accessible();
    app.assert_quiet_console();
}

/// What a device gives that opens the installed app with a file; the test's browser installs nothing.
const OPENED_WITH: &str =
    "Object.defineProperty(window, 'launchQueue', { value: { setConsumer: (take) => take({ files: [
    { getFile: async () => new File([window.name], 'bench.job.json') },
] }) } })";

#[test]
fn a_file_that_the_installed_app_is_opened_with_is_shown() {
    let first = job_of_the_first();
    to_hand_on(&first);
    let folder = film::files_of("opened-with");
    first.save_files_to(&folder);
    first.tap("save-file");
    let text = fs::read_to_string(first.saved_file(&folder)).expect("the file");
    let second = second(Browser::start(Screen::PHONE));
    let manifest: Value = serde_json::from_str(
        second
            .script("return await (await fetch('manifest.webmanifest')).text()")
            .as_str()
            .expect("a manifest"),
    )
    .expect("JSON");
    second.before_each_page(OPENED_WITH);
    second.script(&format!("window.name = {}", json!(text)));
    second.reload();
    second.go(manifest["file_handlers"][0]["action"].as_str().expect("an address"));
    second.wait_for("incoming");
    second.script("window.name = 'no job'");
    second.reload();
    second.wait_for("job-trouble");
    for shortcut in manifest["shortcuts"].as_array().expect("shortcuts") {
        let name = shortcut["name"].as_str().expect("a name");
        second.go(shortcut["url"].as_str().expect("an address"));
        second.wait_until(
            &format!("the page of {name}"),
            &format!("return document.querySelector('h1')?.innerText === {}", json!(name)),
        );
    }
}

#[test]
fn a_job_goes_to_another_browser_as_a_link() {
    let first = job_of_the_first();
    to_hand_on(&first);
    let link = copied(&first, "copy-job-link");
    let fragment = link.find("#/take?").map(|at| &link[at..]).expect("a link to take");
    let second = App::arrive(Screen::PHONE);
    second.go(fragment);
    second.wait_for_start();
    take_and_compare(&first, &second);
    // A second time it is beside the first, and that is said before.
    second.go("#/take");
    second.wait_for("pasted");
    paste(&second, &format!("My bench: {link} bye"));
    second.wait_for("name-is-here");
    second.tap("leave-job");
    second.go("#/jobs");
    second.wait_for("jobs");
    let count = second.script("return document.querySelectorAll('[data-testid=jobs] li').length");
    assert_eq!(count, 1, "what was left is not on the shelf");
}

#[test]
fn a_job_goes_to_another_browser_as_codes_before_its_camera() {
    let first = job_of_the_first();
    to_hand_on(&first);
    first.tap("to-codes");
    first.tap("pace-tap");
    first.assert_accessible();
    first.assert_no_sideways_scroll();
    first.assert_on_first_screen("code");
    let mut frames = Vec::new();
    loop {
        let place = first.text("code-place");
        let [_, number, _, count] = place.split(' ').collect::<Vec<_>>()[..] else {
            panic!("{place}")
        };
        frames.push(Frame::of(&first.picture_of("[data-testid=code] svg")));
        if number == count {
            break;
        }
        first.tap("code-next");
        first.wait_until(
            "the next code",
            &format!(
                "return document.querySelector('[data-testid=code-place]').innerText !== '{place}'"
            ),
        );
    }
    assert!(frames.len() > 3, "{} codes", frames.len());
    // Out of order, every third one with a hand before it.
    let count = frames.len();
    let mut film = Vec::new();
    for at in 0..count {
        let frame = frames.swap_remove((at * 7 + 2) % frames.len());
        if at % 3 == 0 {
            film.push(frame.damaged());
        }
        film.push(frame);
    }
    let film = film::write("codes", &film);
    let switch = format!("--use-file-for-fake-video-capture={}", film.display());
    let second = second(Browser::with_switches(
        Screen::PHONE,
        &["--use-fake-device-for-media-stream", "--use-fake-ui-for-media-stream", &switch],
    ));
    second.tap("watch");
    second.wait_until(
        "a first code is here",
        "return / of \\d+, .*still missing/.test(document.querySelector('[data-testid=progress]').innerText)",
    );
    second.picture("take-camera");
    second.assert_accessible();
    let camera =
        "window.eye ??= document.querySelector('video')?.srcObject; return window.eye?.active";
    assert_eq!(second.script(camera), true);
    first.tap("back");
    take_and_compare(&first, &second);
    assert_eq!(second.script(camera), false, "the camera is stopped when the job is whole");
}

#[test]
fn the_camera_is_stopped_when_its_page_is_left() {
    let app = second(Browser::with_switches(
        Screen::PHONE,
        &["--use-fake-device-for-media-stream", "--use-fake-ui-for-media-stream"],
    ));
    app.tap("watch");
    app.wait_until(
        "the camera runs",
        "window.eye = document.querySelector('video')?.srcObject; return Boolean(window.eye?.active)",
    );
    app.tap("back");
    app.wait_for("open-demo");
    assert_eq!(app.script("return window.eye.active"), false);
    app.assert_quiet_console();
}

#[test]
fn without_a_camera_the_other_ways_are_named() {
    let refused = ["--use-fake-device-for-media-stream", "--deny-permission-prompts"].as_slice();
    for (switches, words) in [(refused, "refused"), ([].as_slice(), "no camera")] {
        let app = second(Browser::with_switches(Screen::PHONE, switches));
        if switches.is_empty() {
            // A browser without a camera, whatever machine the journey runs on.
            app.script(
                "navigator.mediaDevices.getUserMedia = async () => { throw new DOMException('', 'NotFoundError') }",
            );
        }
        app.tap("watch");
        app.wait_for("job-trouble");
        let trouble = app.text("job-trouble");
        assert!(
            trouble.contains(words) && trouble.contains("a file, a link or a text"),
            "{trouble}"
        );
        assert!(app.shows("open-file") || app.shows("pasted"));
        app.assert_accessible();
    }
}

#[test]
fn rubbish_is_refused_and_the_shelf_stays_as_it_was() {
    let app = demo();
    to_hand_on(&app);
    app.tap("to-codes");
    let texts = copied(&app, "copy-codes");
    let codes: Vec<&str> = texts.lines().collect();
    app.go("#/take");
    app.wait_for("pasted");
    let whole = "{\"format\":\"sawdust-reckoner-job\",\"version\":1}";
    for (rubbish, words) in [
        ("hello", "cut short or was changed"),
        ("https://example.org/#/take?AAAA", "cut short or was changed"),
        ("{\"a\":", "not a job file"),
        ("{\"format\":\"sawdust-reckoner-job\",\"version\":9,\"items\":[]}", "later version"),
        (whole, "not a job file"),
        ("SR1 00000000 1/2 00000000 AAAA", "not a code of this app"),
    ] {
        paste(&app, rubbish);
        app.wait_for_words("job-trouble", words);
        assert!(!app.shows("incoming"), "{rubbish}");
    }
    // Codes one by one, in any order, with one of another job between them.
    paste(&app, codes[1]);
    let missing = |app: &App| app.text("progress");
    assert!(missing(&app).starts_with("1 of "), "{}", missing(&app));
    let other = "SR1 12345678 1/2 D3D99E8B A";
    paste(&app, other);
    app.wait_for("job-trouble");
    let words = app.text("job-trouble");
    assert!(words.contains("Code 1 of 2 is of another job"), "{words}");
    assert!(missing(&app).starts_with("1 of "), "{}", missing(&app));
    let folder = film::files_of("rubbish");
    fs::create_dir_all(&folder).expect("a folder");
    let huge = folder.join("huge.json");
    fs::write(&huge, vec![b' '; 8_000_001]).expect("writing");
    app.choose_file("[data-testid=open-file]", &huge);
    app.wait_for_words("job-trouble", "too large");
    app.go("#/jobs");
    app.wait_for("jobs");
    assert!(app.text("jobs").contains("Potting bench"));
    let count = app.script("return document.querySelectorAll('[data-testid=jobs] li').length");
    assert_eq!(count, 1);
    app.assert_quiet_console();
}

/// Holds what the page asks to be done in a third of a second or later, and sooner than in a whole one, until the journey
/// has it done.
const HELD: &str = "
  window.turns = new Map();
  const [later, never] = [setTimeout, clearTimeout];
  let last = 0;
  window.setTimeout = (what, wait, ...more) => {
    if (!(wait > 333 && wait < 1000)) return later(what, wait, ...more);
    turns.set(--last, what);
    return last;
  };
  window.clearTimeout = (id) => { if (!turns.delete(id)) never(id) };";

/// The codes turn by themselves, never more than three a second, and stop at a tap.
#[test]
fn codes_follow_each_other_and_stop_at_a_tap() {
    let app = demo();
    to_hand_on(&app);
    app.wait_for("to-codes");
    app.script(HELD);
    app.tap("to-codes");
    let count = app.text("code-place").rsplit(' ').next().map(str::to_owned).expect("how many");
    let place = |number: u32| format!("code {number} of {count}");
    for number in 1..9 {
        app.wait_for_text("code-place", &place(number));
        app.wait_until("the next turn is asked for", "return turns.size === 1");
        app.script("const [[id, turn]] = turns; turns.delete(id); turn()");
    }
    app.wait_for_text("code-place", &place(9));
    app.tap("code");
    app.wait_for_text("code-place", &place(10));
    app.wait_until("no turn is asked for any more", "return turns.size === 0");
    for screen in Screen::ALL {
        app.resize(screen);
        app.assert_no_sideways_scroll();
    }
    app.resize(Screen::DESKTOP);
    app.picture("codes-1280");
}

#[test]
fn the_pages_of_handing_on_are_clean_in_every_theme() {
    let app = demo();
    let job = address_of_job(&app);
    for theme in ["dark", "outdoor"] {
        app.go("#/settings");
        app.tap(&format!("theme-{theme}"));
        for (page, id) in [("codes", "code"), ("card", "card"), ("labels", "labels")] {
            app.go(&format!("{job}/{page}"));
            app.wait_for(id);
            if page == "codes" {
                app.tap("pace-tap");
            }
            app.assert_accessible();
            app.assert_no_sideways_scroll();
            app.picture(&format!("{page}-360-{theme}"));
        }
        app.go("#/take");
        app.wait_for("pasted");
        app.assert_accessible();
        app.picture(&format!("take-360-{theme}"));
    }
    // Each target is a finger high.
    let small = app.script(
        "return [...document.querySelectorAll('button, a, label.tool, textarea')]
            .map((e) => [e, e.getBoundingClientRect()]).filter(([, r]) => r.width > 0 && r.height < 48)
            .map(([e, r]) => `${e.tagName}.${e.className} ${r.width}x${r.height}`)",
    );
    assert_eq!(small, serde_json::json!([]), "targets under 48 px");
    app.assert_quiet_console();
}
