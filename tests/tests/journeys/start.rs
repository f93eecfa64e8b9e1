//! The first visit.

use reckoner_e2e::{App, Screen};

#[test]
fn the_app_starts_without_a_word_in_the_console() {
    let app = App::open(Screen::PHONE);
    let heading = app.script("return document.querySelector('#app h1').innerText");
    assert_eq!(heading, "Sawdust Reckoner");
    assert!(!app.shows("recovery"));
    app.assert_quiet_console();
    app.picture("start");
}

#[test]
fn home_fits_every_screen_and_is_accessible() {
    let app = App::open(Screen::PHONE);
    for screen in Screen::ALL {
        app.resize(screen);
        app.assert_no_sideways_scroll();
        app.picture(&format!("home-{}", screen.width));
    }
    app.assert_accessible();
}
