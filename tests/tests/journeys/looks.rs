//! Pages of a job in the light, dark and outdoor look: what a look hides, the accessibility engine finds.

use reckoner_e2e::{App, Screen};

use crate::shelf::address_of_job;
use crate::yard::in_all_looks;

/// The demo in the middle of its work.
fn demo_in_work() -> App {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.tap("open-demo");
    app.wait_for("front");
    app
}

#[test]
fn a_piece_that_came_out_thin_is_clean_in_every_look() {
    let app = demo_in_work();
    app.wait_for("trouble-leg 2");
    in_all_looks(&app, "look-front");
    app.section("parts");
    app.tap("item-leg");
    app.tap("piece-2");
    app.wait_for("own-size");
    in_all_looks(&app, "look-piece");
    app.tap("own-size");
    app.tap("spot-at long rail, upper 1");
    app.wait_for("then-look-at");
    in_all_looks(&app, "look-stands");
    app.tap("back");
    app.tap("leave");
    app.wait_for("left-leg 2");
    in_all_looks(&app, "look-left");
    app.assert_quiet_console();
}

#[test]
fn what_is_begun_in_a_job_is_clean_in_every_look() {
    let app = demo_in_work();
    let job = address_of_job(&app);
    app.go(&format!("{job}/buy/paper"));
    app.wait_for("yard-paper");
    in_all_looks(&app, "look-yard-paper");
    app.go(&format!("{job}/sizes"));
    app.tap("add-match");
    app.wait_for("members");
    app.tap("member-leg, its pieces");
    in_all_looks(&app, "look-match");
    app.go(&format!("{job}/parts"));
    app.tap("add-part");
    app.wait_for("save-item");
    app.tap("more-fields");
    app.wait_for("field-note");
    in_all_looks(&app, "look-new-piece");
    app.go("#/jobs/start");
    app.wait_for("kinds");
    in_all_looks(&app, "look-kinds");
    app.assert_quiet_console();
}

/// On a wide screen the answer stays at the top, and what is scrolled goes under it: never the tools over its words.
#[test]
fn on_a_wide_screen_the_tools_cover_nothing_however_far_it_is_scrolled() {
    const COVERED: &str = "const tools = document.querySelector('.tools');
        const box = (it) => it.getBoundingClientRect();
        const over = [];
        for (let at = 0; at < document.documentElement.scrollHeight - innerHeight; at += 24) {
            scrollTo(0, at);
            const [mine, all] = [box(tools), document.querySelectorAll('.answer :is(p, li, dt, dd, h2)')];
            for (const it of all) {
                const r = box(it);
                const place = [Math.max(r.left, mine.left) + 4, (r.top + r.bottom) / 2];
                const meets = !tools.contains(it) && r.width > 8 && r.height > 8 && place[1] > mine.top && place[1] < mine.bottom && place[0] < Math.min(r.right, mine.right);
                if (meets && document.elementFromPoint(...place)?.closest('.tools')) over.push(`${at}: ${it.textContent.slice(0, 40)}`);
            }
        }
        return [over.length, over[0] ?? '']";
    let app = demo_in_work();
    let job = address_of_job(&app);
    app.resize(Screen::DESKTOP);
    for page in [format!("{job}/boards"), "#/spacing".to_owned()] {
        app.go(&page);
        app.wait_for("answer-headline");
        assert_eq!(app.script(COVERED), serde_json::json!([0, ""]), "{page}");
        app.script("scrollTo(0, 400)");
        app.picture(if page.contains("job") { "tools-scrolled-boards" } else { "tools-scrolled" });
    }
    app.assert_quiet_console();
}
