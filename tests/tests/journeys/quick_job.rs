//! A job made quickly: from nothing to a first plan, with every tap and every letter counted.

use std::cell::Cell;

use reckoner_e2e::{App, Screen};
use serde_json::json;

/// The page, and how often it was touched.
struct Hand {
    app: App,
    touches: Cell<usize>,
}

impl Hand {
    fn new(app: App) -> Hand {
        Hand { app, touches: Cell::new(0) }
    }

    fn touched(&self, times: usize) {
        self.touches.set(self.touches.get() + times);
    }

    #[track_caller]
    fn tap(&self, id: &str) {
        self.app.tap(id);
        self.touched(1);
    }

    #[track_caller]
    fn taps(&self, id: &str, times: usize) {
        for _ in 0..times {
            self.tap(id);
        }
    }

    /// Writes words into a field.
    #[track_caller]
    fn write(&self, field: &str, words: &str) {
        self.tap(&format!("field-{field}"));
        self.app.type_keys(words);
        self.touched(words.chars().count());
    }

    /// Taps a size on the keypad.
    #[track_caller]
    fn size(&self, field: &str, keys: &[&str]) {
        self.tap(&format!("field-{field}"));
        self.app.press(keys);
        self.touched(keys.len());
    }

    /// Opens a list and takes an answer of it: two taps.
    #[track_caller]
    fn choose(&self, list: &str, answer: &str) {
        self.app.wait_for(list);
        let chosen = self.app.script(&format!(
            "const list = document.querySelector('[data-testid={list}]');
             list.value = {}; list.dispatchEvent(new Event('change', {{ bubbles: true }}));
             return list.value",
            json!(answer)
        ));
        assert_eq!(chosen, json!(answer), "{list}");
        self.touched(2);
    }

    #[track_caller]
    fn no_red(&self) {
        let red = self.app.script(
            "return [...document.querySelectorAll('.problem, .is-wrong')].map((it) => it.outerHTML)",
        );
        assert_eq!(red, json!([]), "nothing is wrong before it was touched");
    }
}

/// Count, section, name and length of each piece of a planter bench, and the lengths at the yard.
#[test]
fn a_planter_bench_is_planned_from_nothing_within_250_touches() {
    let hand = Hand::new(App::open(Screen::PHONE));
    hand.tap("to-jobs");
    hand.tap("new-job");
    hand.tap("add-part");
    let pieces: [(&str, &str, usize, &[&str]); 5] = [
        ("2x4", "leg", 4, &["1", "7"]),
        ("2x4", "long rail", 2, &["4", "5"]),
        ("2x4", "short rail", 2, &["1", "3", "page-16", "1/2"]),
        ("1x4", "slat", 7, &["4", "8"]),
        ("1 in dowel", "dowel", 1, &["4", "4"]),
    ];
    for (at, (section, name, count, length)) in pieces.iter().enumerate() {
        hand.app.wait_for("field-name");
        hand.app.wait_for_value("field-name", "");
        hand.no_red();
        // What puts it in is in sight before anything is filled in.
        hand.app.assert_on_first_screen("save-item");
        hand.choose("list-stock", section);
        hand.write("name", name);
        hand.taps("more-quantity", count - 1);
        hand.size("length", length);
        hand.tap("key-close");
        if at == 0 {
            hand.app.assert_no_sideways_scroll();
            hand.app.assert_accessible();
            hand.app.picture("new-piece");
        }
        hand.tap(if at + 1 < pieces.len() { "save-and-next" } else { "save-item" });
    }
    hand.app.wait_for_words("item-leg", "seventeen inches");
    hand.app.picture("pieces");
    hand.app.assert_no_sideways_scroll();
    // The dressed sizes of the table went in.
    let leg = hand.app.text("item-leg");
    assert!(leg.contains("one and one half") && leg.contains("three and one half"), "{leg}");
    hand.tap("section-more");
    hand.tap("section-rack");
    hand.tap("add-yard");
    let yard: [(&str, &[&str], &[&str]); 3] = [
        ("2x4", &["9", "6"], &["6"]),
        ("1x4", &["9", "6"], &["5"]),
        ("1 in dowel", &["4", "8"], &["4"]),
    ];
    for (at, (section, length, price)) in yard.iter().enumerate() {
        hand.app.wait_for_value("field-length", "");
        hand.no_red();
        hand.choose("list-section", section);
        hand.size("length", length);
        hand.tap("field-next");
        hand.app.press(price);
        hand.touched(price.len());
        hand.tap("key-close");
        hand.tap(if at + 1 < yard.len() { "save-and-next" } else { "save-item" });
    }
    hand.app.wait_for("item-1 in dowel");
    hand.tap("section-boards");
    hand.tap("plan-it");
    hand.app.wait_for("use-plan");
    println!("{} taps and letters from nothing to a first plan", hand.touches.get());
    assert!(hand.touches.get() <= 250, "{}", hand.touches.get());
    hand.app.assert_quiet_console();
}

/// Fails if the button that puts a thing in is not wholly in the window.
fn assert_save_is_in_the_window(app: &App, when: &str) {
    app.wait_for("save-item");
    app.wait_until(
        &format!("save-item is in the window, {when}"),
        "const r = document.querySelector('[data-testid=save-item]').getBoundingClientRect();
         return r.height > 0 && r.top >= 0 && r.left >= 0 && r.bottom <= innerHeight && r.right <= innerWidth
             ? true : [r.top, r.bottom, innerHeight]",
    );
}

/// With the keys out, with the fields opened that are folded away, and with both; with the keys away nothing lies over it.
#[test]
fn what_puts_a_piece_in_stays_in_the_window() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.tap("new-job");
    app.tap("add-part");
    app.tap("field-length");
    app.wait_for("keypad");
    assert_save_is_in_the_window(&app, "with the keys out");
    app.tap("key-close");
    app.tap("more-fields");
    app.wait_for("field-note");
    assert_save_is_in_the_window(&app, "with all fields");
    let over = "const save = document.querySelector('[data-testid=save-item]');
        const r = save.getBoundingClientRect();
        const top = document.elementFromPoint((r.left + r.right) / 2, (r.top + r.bottom) / 2);
        return save.contains(top) ? true : top?.outerHTML";
    app.wait_until("nothing lies over save-item", over);
    app.picture("save-with-all-fields");
    app.tap("field-length");
    app.wait_for("keypad");
    assert_save_is_in_the_window(&app, "with all fields and the keys out");
    app.assert_quiet_console();
}

/// What was never touched is not told as wrong; Save says what is missing, and then it is.
#[test]
fn save_says_what_is_missing_and_what_was_begun_is_not_lost() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.tap("new-job");
    app.tap("add-part");
    let hand = Hand::new(app);
    hand.no_red();
    hand.choose("list-stock", "2x4");
    hand.app.reload();
    hand.app.wait_for_start();
    hand.app.wait_for_value("field-stock", "2x4");
    hand.app.wait_for_value("field-width", "3 1/2");
    hand.no_red();
    hand.tap("save-item");
    hand.app.wait_for("problem-length");
    hand.app.assert_accessible();
    // A count up is typed like any other, and stays through Back.
    hand.taps("more-quantity", 3);
    hand.app.script("history.back()");
    hand.app.tap("begun-part");
    hand.app.wait_for_value("field-quantity", "4");
    // What is rare is folded away, and there.
    assert!(!hand.app.shows("field-note"));
    hand.tap("more-fields");
    hand.write("note", "best face out");
    hand.app.reload();
    hand.app.wait_for_start();
    hand.app.wait_for_value("field-note", "best face out");
    hand.app.assert_quiet_console();
}

/// A bench from its kind: three sizes of one's own, the others looked at and taken as they are, to a first plan.
#[test]
fn a_bench_is_begun_from_its_kind_and_planned_within_60_touches() {
    let hand = Hand::new(App::open(Screen::PHONE));
    hand.tap("to-jobs");
    hand.tap("to-start");
    hand.app.wait_for("kinds");
    hand.app.assert_no_sideways_scroll();
    hand.app.assert_accessible();
    hand.app.picture("kinds");
    hand.tap("kind-bench");
    hand.app.wait_for("front");
    hand.app.wait_for_words("pencil-line", "Not your sizes yet: length");
    hand.app.assert_no_sideways_scroll();
    hand.app.assert_accessible();
    hand.app.picture("kind-front");
    hand.tap("go-through");
    let own: [(&str, &[&str]); 3] = [
        ("length", &["6", "0"]),
        ("top depth", &["2", "1"]),
        ("height", &["1", "6", "page-16", "1/2"]),
    ];
    for (name, keys) in own {
        hand.app.wait_until(
            &format!("the page of {name}"),
            &format!("return document.querySelector('h1').textContent === {}", json!(name)),
        );
        // Our example is written over by the first key.
        hand.size("formula", keys);
        hand.tap("key-close");
        if name == "height" {
            hand.app.wait_for_words("check", "published benches are");
            hand.app.picture("kind-check");
            hand.app.assert_accessible();
        }
        hand.tap("next-ours");
    }
    while hand.app.shows("confirm-item") {
        let here = hand.app.place();
        hand.tap("confirm-item");
        hand.app.wait_until("the next", &format!("return location.hash !== {}", json!(here)));
    }
    hand.app.wait_for("front");
    assert!(!hand.app.shows("pencil-line"));
    // By hand: 60 less two legs of 3 1/2 is 53.
    hand.app.wait_for_words("checks", "sixteen and one half");
    hand.tap("section-boards");
    hand.tap("plan-it");
    hand.app.wait_for("use-plan");
    println!("{} touches from home to a first plan of a bench", hand.touches.get());
    assert!(hand.touches.get() <= 60, "{}", hand.touches.get());
    hand.app.section("sizes");
    hand.app.wait_for_words("item-long rail", "fifty-three inches");
    // Taken back, it is ours again; and it stands through a reload.
    hand.app.tap("undo");
    hand.app.wait_for("pencil-line");
    hand.app.reload();
    hand.app.wait_for_start();
    hand.app.wait_for_words("pencil-line", "1 price at the yard is our example");
    hand.app.assert_quiet_console();
}

/// What a job costs by sizes and prices of ours is in pencil on every page, until they are the person's.
#[test]
fn what_an_example_costs_is_in_pencil_until_it_is_the_persons() {
    let app = App::open_at(Screen::PHONE, "#/jobs/start");
    app.tap("kind-bench");
    app.wait_for("front");
    app.section("boards");
    app.tap("plan-it");
    app.wait_for("use-plan");
    let is_pencil = |app: &App, id: &str| {
        app.script(&format!(
            "return document.querySelector('[data-testid={id}]').classList.contains('is-pencil')"
        ))
    };
    assert_eq!(is_pencil(&app, "answer-headline"), true);
    let price = "[data-testid=shopping] .row__value";
    let slant = format!("return getComputedStyle(document.querySelector('{price}')).fontStyle");
    assert_eq!(app.script(&slant), "italic");
    app.tap("use-plan");
    app.wait_for("boards-cut");
    assert_eq!(is_pencil(&app, "answer-headline"), true);
    app.picture("example-plan");
    app.section("front");
    app.wait_for("money");
    assert_eq!(is_pencil(&app, "money"), true);
    app.picture("example-front");
    app.assert_accessible();
    app.tap("money");
    app.wait_for("to-come");
    assert_eq!(is_pencil(&app, "money"), true);
    app.picture("example-to-buy");
    app.assert_accessible();
    app.tap("back");
    app.tap("go-through");
    while app.shows("confirm-item") {
        let here = app.place();
        app.tap("confirm-item");
        app.wait_until("the next", &format!("return location.hash !== {}", json!(here)));
    }
    // The plan was made by options that nobody has said yet: the money is as sure as these.
    app.wait_for_text("pencil-line", "7 examples in the plan. Go through them");
    assert_eq!(is_pencil(&app, "money"), true);
    app.tap("go-through");
    app.wait_for_words("options-line", "Not yours yet: kerf, blade reach and 5 more.");
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    app.picture("example-options");
    app.tap("go-through-options");
    for it in ["kerf", "reach", "end_trim"] {
        app.tap(&format!("confirm-{it}"));
    }
    for it in ["may_rip", "may_resaw"] {
        app.tap(&format!("{it}-yes"));
        app.tap("field-next");
    }
    for it in ["edge_cleanup", "keep_from"] {
        app.tap(&format!("confirm-{it}"));
    }
    app.wait_until_gone("options-line");
    // The plan in use was made by just these: it is theirs with them.
    app.wait_until("it is inked", "return !document.querySelector('.headline.is-pencil')");
    app.section("front");
    app.wait_for("money");
    assert_eq!(is_pencil(&app, "money"), false);
    app.reload();
    app.wait_for_start();
    app.wait_for("money");
    assert_eq!(is_pencil(&app, "money"), false);
    assert!(!app.shows("pencil-line"));
    app.assert_quiet_console();
}

/// By thumb alone: a figure, Next, the next figure. What the tape says of the same size is never come to so.
#[test]
fn next_goes_from_one_example_of_a_job_to_the_next() {
    let app = App::open_at(Screen::PHONE, "#/jobs/start");
    app.wait_for("kinds");
    app.tap("kind-bench");
    app.wait_for("front");
    app.tap("go-through");
    let page_of = |name: &str| {
        app.wait_until(
            &format!("the page of {name}"),
            &format!("return document.querySelector('h1').textContent === {}", json!(name)),
        );
    };
    page_of("length");
    app.tap("field-formula");
    app.press(&["6", "0", "next"]);
    page_of("top depth");
    // The keys stay out, and the first of them takes the place of our example.
    app.wait_for("keypad");
    app.wait_for("confirm-formula");
    app.picture("kind-next");
    app.press(&["2", "2", "next"]);
    page_of("height");
    app.wait_for("keypad");
    app.press(&["close"]);
    app.wait_for("confirm-item");
    app.tap("back");
    app.wait_for_words("item-length", "sixty inches");
    app.wait_for_words("item-top depth", "twenty-two inches");
    assert!(!app.text("sizes").contains("the tape says"), "{}", app.text("sizes"));
    app.assert_quiet_console();
}

/// Whatever is set, marked or carried off by a size of ours says so: the list of sizes, a step of the build order, the card.
#[test]
fn a_size_that_rests_on_an_example_says_so_where_it_is_worked_by() {
    let app = App::open_at(Screen::PHONE, "#/jobs/start");
    app.tap("kind-bench");
    app.wait_for("front");
    app.section("sizes");
    // The length of the legs is a formula: it is as sure as the height that it comes of.
    app.wait_for_words("item-leg length", "example");
    let slant = |css: &str| {
        app.script(&format!("return getComputedStyle(document.querySelector('{css}')).fontStyle"))
    };
    assert_eq!(slant("[data-testid=\"item-leg length\"] .row__value > span"), "italic");
    app.picture("example-sizes");
    app.assert_accessible();
    app.section("build");
    app.wait_for("this-step");
    while !app.text("this-step").contains("to length") {
        app.tap("next-step");
    }
    app.wait_for_words("setting", "example");
    assert_eq!(slant("[data-testid=setting] .headline__value"), "italic");
    app.assert_no_sideways_scroll();
    app.picture("example-step");
    app.tap("back");
    app.section("hand-on");
    app.tap("to-card");
    app.wait_for("card");
    app.wait_for_words("card-ours", "Not your sizes yet: length, top depth and 8 more.");
    let said = "return [...document.querySelectorAll('.card__table')]
        .map((it) => it.innerText.split('(example)').length - 1)";
    // By hand: 10 sizes are ours and 6 formulas rest on them; 4 parts; 4 lengths to cut them to.
    assert_eq!(app.script(said), json!([16, 4, 4]));
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    app.picture("example-card");
    app.assert_quiet_console();
}
