//! The calculators of the saw and the bench, from a fresh form by thumb to the answer of a hand-worked case.
//!
//! The numbers are cases R1, F1 and J4 of the project's rules of the trade ([WH]); the exact values are checked in the
//! core, here that taps lead to them.

use reckoner_e2e::{App, Screen};
use serde_json::Value;

use crate::pages::slugs;

/// What is answered, by name: the headline and the figures that are drawn by now. The others come when the page rests.
const ANSWER: &str = "const answer = {};
    for (const it of document.querySelectorAll('.headline:not(.is-wanting) .headline__figure, [data-testid^=figure-] dd')) {
      const name = it.closest('[data-testid]').dataset.testid;
      const text = it.innerText.trim();
      if (text) answer[name] = text;
    }
    return answer";

/// Whichever calculators the first page has: each answers our example, and its answer follows when its first size loses its
/// fraction, else is one less or from one two; taken back, it is the answer of before.
#[test]
fn each_calculator_answers_and_follows_a_change() {
    let app = App::open(Screen::PHONE);
    let slugs = slugs(&app);
    for slug in &slugs {
        app.tap(&format!("home-{slug}"));
        app.wait_for("answer-headline");
        let before = app.script(ANSWER);
        assert!(before["answer-headline"].is_string(), "{slug} answers nothing: {before}");
        // Which of what was answered then has another value now.
        let others = format!(
            "const before = {before};
             const now = (() => {{ {ANSWER} }})();
             const others = Object.keys(before).filter((name) => name in now && now[name] !== before[name]);"
        );
        // No sum; where there is none, the first that may stay empty.
        let size = app.script(
            "const all = [...document.querySelectorAll('input.field__input')];
             const size = all.find((it) => /^\\d+( \\d+\\/\\d+)?$/.test(it.value)) ?? all[0];
             const whole = parseInt(size.value) || 0;
             const other = size.value.includes(' ') ? whole : whole > 1 ? whole - 1 : whole + 1;
             return [size.dataset.testid, String(other)]",
        );
        let (field, other) = (size[0].as_str(), size[1].as_str());
        let (field, other) =
            field.zip(other).unwrap_or_else(|| panic!("{slug} asks for no size: {size}"));
        app.tap(field);
        app.wait_for("keypad");
        for key in other.chars() {
            app.tap(&format!("key-{key}"));
        }
        app.tap("key-close");
        app.wait_for_value(field, other);
        app.wait_until(
            &format!("{slug}: the answer follows {field} at {other}, from {before}"),
            &format!("{others} return 'answer-headline' in now && others.length > 0 || now"),
        );
        app.tap("undo");
        app.wait_until(
            &format!("{slug}: the answer of before is back, {before}"),
            &format!("{others} return 'answer-headline' in now && others.length === 0 || now"),
        );
        app.go("#/");
    }
    assert!(slugs.len() >= 14, "{slugs:?}");
    app.assert_quiet_console();
}

/// Case R1: a 9 1/4 board, 1/4 lost cleaning its first edge, strips of 1 3/4: four strips, 1 1/2 left.
#[test]
fn strips_are_counted_with_their_kerfs() {
    let app = App::open(Screen::PHONE);
    app.tap("home-resaw-rip");
    app.tap("question");
    app.tap("question-strips");
    app.script(
        "const list = document.querySelector('[data-testid=\"field-board\"] select');
         list.value = 'measured'; list.dispatchEvent(new Event('change', { bubbles: true }))",
    );
    app.enter("board_width", &["9", "page-16", "1/4", "close"]);
    app.enter("strip_width", &["1", "page-16", "3/4", "close"]);
    app.enter("first_edge", &["page-16", "1/4", "close"]);
    // What is set stands first: the fence, and how many strips there are.
    app.wait_for_words("answer-headline", "one and three quarters inches");
    app.wait_for_words("figure-n_strips", "4");
    app.wait_for_words("figure-leftover", "one and one half inches");
    app.wait_for_words("figure-leftover_edge", "still raw");
    // Wider than the board: refused beside the field, with a way out that one tap takes.
    app.enter("strip_width", &["2", "0", "close"]);
    app.wait_for("problem-strip_width");
    app.assert_quiet_console();
}

/// Case F1: 37 long, 2 in from each end, at most 8 apart: six screws; 2, 8 5/8 and 15 3/16 from each end.
#[test]
fn screws_are_marked_from_both_ends() {
    let app = App::open(Screen::PHONE);
    app.tap("home-spacing");
    app.enter("length", &["3", "7", "close"]);
    app.enter("greatest_gap", &["8", "close"]);
    app.enter("left_end", &["2", "close"]);
    app.enter("right_end", &["2", "close"]);
    // How far apart, and how many; then the marks one by one.
    app.wait_for_words("answer-headline", "six and five eighths inches");
    app.wait_for_words("figure-count", "6");
    app.tap("mark-next");
    app.wait_for_words("answer-headline", "Mark 1 of 6");
    app.tap("mark-next");
    app.tap("mark-next");
    app.wait_for_words("answer-headline", "fifteen and three sixteenths inches");
    app.wait_for_words("figure-closes_at", "thirty-seven inches");
    // One fewer, by a tap on its row: 33 in in four gaps are 8 1/4. Undo goes back to the other question.
    app.tap("way-others-0");
    app.wait_for_value("field-count", "5");
    app.wait_for_words("answer-headline", "eight and one quarter inches");
    app.tap("undo");
    app.wait_for_value("field-greatest_gap", "8");
    app.wait_for_words("answer-headline", "six and five eighths inches");
    app.assert_quiet_console();
}

/// Case J4: frames 38 3/16 outside to outside, 1/4 proud at each end: cut 38 11/16; a dowel of 1.02 takes a 1 1/32 bit.
#[test]
fn a_dowel_is_cut_to_go_through_both_frames() {
    let app = App::open(Screen::PHONE);
    app.tap("home-dowel");
    app.enter("overall", &["3", "8", "page-16", "3/16", "close"]);
    app.enter("trim", &["page-16", "1/4", "close"]);
    app.enter("dowel", &["1", "point", "0", "2", "close"]);
    app.wait_for_words("answer-headline", "thirty-eight and eleven sixteenths inches");
    app.wait_for_words("figure-bit", "1 1/32 in");
    app.assert_quiet_console();
}

/// The rows of the table of marks that are seen.
fn rows(app: &App) -> Value {
    app.script(
        "return [...document.querySelectorAll('[data-testid=table-layout] tbody tr')].filter((it) => it.checkVisibility()).length",
    )
}

/// Of a long table the first rows are shown, so that fields and cautions are near.
#[test]
fn a_long_table_shows_its_first_rows_until_it_is_asked_for() {
    let app = App::open_at(Screen::PHONE, "#/spacing?mode=count&length=60&count=14&unit=in");
    app.wait_for("table-layout");
    assert_eq!(rows(&app), 5);
    assert_eq!(app.text("all-layout"), "All 14 rows");
    app.assert_accessible();
    app.picture("table-folded");
    app.tap("all-layout");
    assert_eq!(rows(&app), 14);
    assert_eq!(app.attribute("all-layout", "aria-expanded").as_deref(), Some("true"));
    app.tap("all-layout");
    assert_eq!(rows(&app), 5);
    // One row more is no reason to fold.
    app.go("#/spacing?mode=count&length=60&count=6&unit=in");
    app.wait_until(
        "six marks",
        "return document.querySelectorAll('[data-testid=table-layout] tbody tr').length === 6",
    );
    assert!(!app.shows("all-layout"));
    app.assert_quiet_console();
}

/// What goes on paper is whole, and has no button.
#[test]
fn a_long_table_is_whole_on_paper() {
    let app = App::open_at(Screen::PHONE, "#/spacing?mode=count&length=60&count=14&unit=in");
    app.wait_for("table-layout");
    app.cdp("Emulation.setEmulatedMedia", &serde_json::json!({ "media": "print" }));
    assert_eq!(rows(&app), 14);
    assert!(!app.shows("all-layout"), "a button on paper");
    app.assert_quiet_console();
}
