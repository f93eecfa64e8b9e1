//! Text at twice its size: nothing reaches beyond the edge of a phone, at rest and while typing, and words stay whole.

use reckoner_e2e::{App, Screen};

#[test]
fn with_text_at_twice_its_size_nothing_reaches_beyond_the_edge() {
    let app = App::open(Screen::PHONE);
    app.wait_for("home-tape");
    let twice = "document.documentElement.style.fontSize = '200%'";
    app.script(twice);
    app.assert_no_sideways_scroll();
    app.picture("home-text-200");
    let tiles = app.visible_ids();
    for slug in tiles.iter().filter_map(|id| id.strip_prefix("home-")) {
        app.go(&format!("#/{slug}"));
        app.wait_for("answer-headline");
        let wide = app.script(
            "const room = document.documentElement.clientWidth;
             return [document.documentElement.scrollWidth - room, ...[...document.querySelectorAll('#app *')]
                .filter((it) => it.getBoundingClientRect().right > room + 0.5 && !it.closest('.table__scroll, .drawing')
                    && it.checkVisibility({ contentVisibilityAuto: true }) && !it.closest('details:not([open]) > :not(summary)'))
                .map((it) => `${it.tagName}.${it.className} ${it.getBoundingClientRect().right}`)]",
        );
        app.picture(&format!("{slug}-text-200"));
        assert!(wide[0].as_i64().is_some_and(|over| over <= 0), "{slug}: {wide}");
        if app.shows("keypad") {
            app.tap("key-close");
        }
    }
    // The first page has what was used last by now.
    for page in ["#/", "#/settings", "#/jobs", "#/cut"] {
        app.go(page);
        app.assert_no_sideways_scroll();
    }
}

/// A name in a list of a job keeps its words whole, however long the sizes beside it are.
#[test]
fn with_text_at_twice_its_size_no_name_of_a_job_is_broken_in_two() {
    let app = crate::job::demo();
    app.script("document.documentElement.style.fontSize = '200%'");
    let mut judged = 0;
    for section in ["sizes", "parts", "rack", "kept", "buy"] {
        app.section(section);
        app.assert_no_sideways_scroll();
        let names = app.script(
            "return [...document.querySelectorAll('.row__name')].filter((it) => it.checkVisibility()).map((it) => {
                const lines = Math.round(it.getBoundingClientRect().height / parseFloat(getComputedStyle(it).lineHeight));
                const words = it.textContent.trim().split(/\\s+/).length;
                return lines > words ? `${it.textContent}: ${lines} lines` : '';
            })",
        );
        let names = names.as_array().cloned().unwrap_or_default();
        let broken: Vec<_> = names.iter().filter(|it| **it != "").collect();
        assert!(broken.is_empty(), "{section}: {broken:?}");
        judged += names.len();
    }
    assert!(judged > 40, "only {judged} names");
}
