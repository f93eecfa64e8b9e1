//! The JavaScript package, as another page uses it.

use reckoner_e2e::{App, Screen};

#[test]
fn the_example_page_reckons_beside_the_app() {
    let app = App::open(Screen::DESKTOP);
    app.wait_until_kept();
    // The app's service worker now answers for this whole site, but not for this folder.
    app.go("js/example/");
    app.wait_until(
        "an answer",
        "return document.getElementById('answered').innerText.includes('}')",
    );
    let answered = app.script("return JSON.parse(document.getElementById('answered').innerText)");
    // By hand: 61 3/8 - 7 - 1 1/2 = 52 7/8, and half of it is 26 7/16 = 423/16.
    assert_eq!(answered["exact"], "423/16");
    let refused = app.script("return document.getElementById('refused').innerText");
    assert!(refused.as_str().is_some_and(|text| text.contains("plus")), "{refused}");
    app.assert_quiet_console();
}
