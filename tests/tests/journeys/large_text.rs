//! Text at twice its size: nothing reaches beyond the edge of a phone, at rest and while typing.

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
