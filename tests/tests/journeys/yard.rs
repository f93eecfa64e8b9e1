//! Everything to buy: ticked, on paper, and as a list of numbers, with the server stopped.

use reckoner_e2e::{App, Screen};

use crate::paper::{PAPERS, printed};
use crate::planner::{boards_of_the_demo, wait_for_the_end};

/// Hundredths of money, as the page writes them.
fn cents(text: &str) -> i64 {
    let digits: String = text.chars().filter(char::is_ascii_digit).collect();
    digits.parse().unwrap_or_else(|_| panic!("{text} is no money"))
}

#[test]
fn everything_to_buy_is_ticked_printed_and_saved_offline() {
    let app = boards_of_the_demo(Screen::PHONE);
    app.wait_until_kept();
    app.server.stop();
    // Before there is a plan, the list says so and leads there.
    let boards = app.url();
    app.go(&format!(
        "{}/buy",
        boards[boards.find('#').expect("a place")..].trim_end_matches("/boards")
    ));
    app.wait_for("not-in-the-list");
    assert!(app.text("not-in-the-list").contains("No plan of the boards yet"));
    app.click("[data-testid=not-in-the-list] .way-out");
    app.wait_for("plan-it");
    app.tap("plan-it");
    wait_for_the_end(&app);
    app.tap("use-plan");
    app.wait_for("boards-cut");
    app.tap("to-buy-page");
    app.wait_for("to-buy");
    app.assert_accessible();
    app.picture("to-buy");
    let all = cents(&app.text("to-come"));
    assert!(all > 0 && cents(&app.text("spent")) == 0);

    // The first line is bought: what it costs moves from the one sum to the other.
    let line = app.script(
        "const line = document.querySelector('.buy');
         return [line.querySelector('.tick').dataset.testid, line.querySelector('.row__value').textContent]",
    );
    let (tick, price) = (line[0].as_str().expect("a tick"), line[1].as_str().expect("a price"));
    let price = cents(price);
    app.tap(tick);
    app.wait_for_words("spent", &format!("{}.{:02}", price / 100, price % 100));
    assert_eq!(cents(&app.text("to-come")), all - price);
    app.tap("undo");
    app.wait_for_words("spent", "spent 0.00");
    app.tap("redo");
    app.wait_for_words("spent", &format!("{}.{:02}", price / 100, price % 100));

    // The list as numbers: the prices add up to what the page says.
    let folder = crate::film::files_of("to-buy");
    app.save_files_to(&folder);
    app.tap("save-to-buy");
    let file = std::fs::read_to_string(app.saved_file(&folder)).expect("the list");
    let mut rows = file.lines().map(|line| line.split(',').collect::<Vec<_>>());
    let heading = rows.next().expect("a heading");
    let column = |name: &str| heading.iter().position(|it| *it == name).expect("this column");
    let (mut sum, mut lines) = (0, 0);
    for row in rows {
        lines += 1;
        let length: f64 = row[column("length in")].parse().unwrap_or(0.0);
        let long: f64 = row[column("length mm")].parse().unwrap_or(0.0);
        assert!((length * 25.4 - long).abs() < 0.01, "{row:?}");
        sum += if row[column("price")].is_empty() { 0 } else { cents(row[column("price")]) };
    }
    assert!(lines > 3);
    assert_eq!(sum, all);

    // On paper no word is broken in its narrow columns, and the boards are all at one scale: of two boards the longer is drawn longer.
    app.tap("to-yard-paper");
    app.wait_for("yard-paper");
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    let broken = app.script(
        "return [...document.querySelectorAll('.card__whole')].flatMap((cell) => {
           const text = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT);
           const words = [];
           for (let node = text.nextNode(); node; node = text.nextNode()) {
             for (const { index, 0: word } of node.data.matchAll(/\\S+/g)) {
               const range = new Range();
               range.setStart(node, index);
               range.setEnd(node, index + word.length);
               if (range.getClientRects().length > 1) words.push(word);
             }
           }
           return words })",
    );
    assert_eq!(broken, serde_json::json!([]));
    let wide = app.script(
        "return [...document.querySelectorAll('.board')].map((board) => {
           const ends = [...board.querySelectorAll('rect')].map((it) => it.getBBox());
           const right = Math.max(...ends.map((it) => it.x + it.width));
           const left = Math.min(...ends.filter((it) => it.width > 20).map((it) => it.x));
           return [parseFloat(board.querySelector('.board__title').textContent.match(/, (\\d+)/)[1]), right - left] })",
    );
    let wide: Vec<(f64, f64)> = serde_json::from_value(wide).expect("numbers");
    assert!(wide.len() > 3);
    for (length, drawn) in &wide {
        let scale = drawn / length;
        let first = wide[0].1 / wide[0].0;
        assert!((scale / first - 1.0).abs() < 0.08, "{length} in is drawn {drawn} wide: {wide:?}");
    }
    for paper in PAPERS {
        let pages = printed(&app, "to-buy", paper).join(" ");
        for wanted in ["to buy", "all at one scale", "2x8", "no price"] {
            assert!(pages.contains(wanted), "{wanted} is not on {}: {pages}", paper.0);
        }
    }
    app.assert_quiet_console();
}

#[test]
fn pictures_of_everything_to_buy() {
    let app = boards_of_the_demo(Screen::PHONE);
    app.tap("plan-it");
    wait_for_the_end(&app);
    app.tap("use-plan");
    app.wait_for("to-buy-page");
    app.tap("to-buy-page");
    app.wait_for("to-buy");
    crate::yard::in_all_looks(&app, "to-buy");
    app.tap("to-yard-paper");
    app.wait_for("yard-paper");
    app.picture("to-buy-paper");
}

/// Pictures of a page in its three looks and at both sizes, without a sideways scroll.
pub(crate) fn in_all_looks(app: &App, name: &str) {
    for look in ["light", "dark", "outdoor"] {
        app.script(&format!("document.documentElement.dataset.theme = '{look}'"));
        app.assert_accessible();
        for (wide, screen) in [("phone", Screen::PHONE), ("desk", Screen::DESKTOP)] {
            app.resize(screen);
            app.assert_no_sideways_scroll();
            app.picture(&format!("{name}-{look}-{wide}"));
        }
        app.resize(Screen::PHONE);
    }
}

/// The plan of the demo in use, and its build order.
fn build_order_of_the_demo() -> App {
    let app = boards_of_the_demo(Screen::PHONE);
    app.wait_until_kept();
    app.server.stop();
    app.tap("plan-it");
    wait_for_the_end(&app);
    app.tap("use-plan");
    app.wait_for("boards-cut");
    app.section("build");
    app.wait_for("this-step");
    app
}

fn title(app: &App) -> String {
    let title = app.script("return document.querySelector('.build__title').textContent");
    title.as_str().expect("a title").to_owned()
}

/// Ticks the step at hand and waits for the next one; what it was.
fn tick(app: &App) -> String {
    let before = title(app);
    app.tap("step-done");
    let words = serde_json::to_string(&before).expect("JSON");
    app.wait_until(
        "another step is at hand",
        &format!("const now = document.querySelector('.build__title'); return !now || now.textContent !== {words}"),
    );
    before
}

#[test]
fn the_build_order_leads_from_the_store_to_the_frame_offline() {
    let app = build_order_of_the_demo();
    app.assert_accessible();
    assert!(title(&app).contains("Buy everything"), "{}", title(&app));
    let mut done = Vec::new();
    // Where a step cuts something, it shows what.
    let drawn = "return document.querySelectorAll('[data-testid=this-step] [data-testid=drawing] [role=img]').length";
    while !title(&app).contains("to length") {
        if title(&app).contains("Rip") {
            assert_eq!(app.script(drawn), 1, "{}", title(&app));
        }
        done.push(tick(&app));
        assert!(done.len() < 30, "{done:?}");
    }
    assert!(done.iter().any(|it| it.contains("Rip")), "{done:?}");
    assert!(app.shows("done-steps"));
    assert_eq!(app.script(drawn), 1, "{}", title(&app));
    // Readable from the saw, and a tick for the thumb.
    let large = app.script(
        "const size = parseFloat(getComputedStyle(document.querySelector('[data-testid=setting]')).fontSize);
         const tick = document.querySelector('[data-testid=step-done]').getBoundingClientRect();
         return [size, tick.height, tick.width]",
    );
    assert!(large[0].as_f64() >= Some(56.0) && large[1].as_f64() >= Some(80.0), "{large}");
    assert!(app.text("step-pieces").contains("board"), "{}", app.text("step-pieces"));
    in_all_looks(&app, "build-order");
    // The first cut is ticked, and stands as cut in the list of pieces; taken back, and cut again.
    let longest = tick(&app);
    assert!(longest.contains("5 pieces"), "the top planks are the longest: {longest}");
    let ticked = "return document.querySelector('[data-testid=\"tick-top plank-5\"]').ariaPressed === 'true'";
    app.tap("undo");
    app.wait_until(
        "the step is back",
        "return document.querySelector('.build__title').textContent.includes('5 pieces')",
    );
    tick(&app);
    let here = app.place();
    app.tap("back");
    app.section("parts");
    app.wait_until("the planks are ticked", ticked);
    assert!(!app.shows("trouble-The plan in use"), "the plan in use still fits");
    app.go(&here);
    app.wait_for("this-step");

    // One of the next came out different: it is ticked, and its page asks what the tape says.
    app.click("[data-testid=one-different] summary");
    app.click("[data-testid=one-different] .tool");
    app.wait_for("field-as_cut");
    app.wait_for("piece-is");
    app.assert_quiet_console();
}

/// What is read aloud of each step of the demo is what stands there: what is done, the figure with what it is measured from,
/// the pieces that are to be cut with their boards, what it waits for, and the cautions.
#[test]
fn what_is_read_aloud_of_a_step_is_what_stands_there() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.tap("open-demo");
    app.wait_for("front");
    app.section("build");
    app.wait_for("this-step");
    // In place of the device's voice.
    app.script("speechSynthesis.speak = (it) => { window.said = it.text }");
    let (mut with_setting, mut with_boards, mut waiting, mut careful) = (0, 0, 0, 0);
    let mut steps = 0;
    let mut said = Vec::new();
    loop {
        app.script("window.said = undefined");
        app.tap("read-step");
        let (heard, stands): (String, Vec<String>) = serde_json::from_value(app.script(
            "const step = document.querySelector('[data-testid=this-step]');
             const all = (css) => [...step.querySelectorAll(css)];
             const words = (css) => step.querySelector(css)?.textContent.trim() ?? '';
             const voices = all('[data-testid=setting] .voice').map((it) => it.textContent);
             const line = words('[data-testid=setting] .line');
             const from = words('.headline__from');
             const figure = voices.length ? voices.join('; ') : line;
             const stands = [words('.build__title').replace(/^\\d+\\. /, '')];
             if (figure) stands.push(from ? `${from}: ${figure}` : figure);
             for (const piece of all('[data-testid=step-pieces] .build__piece')) {
               const [, count, name] = piece.firstElementChild.textContent.match(/^(\\d+) × (.*)$/);
               const board = piece.querySelector('b').textContent;
               if (board !== 'cut') stands.push(`${count} of ${name}${board ? `, from ${board}` : ''}`);
             }
             const seen = (it) => {
               const copy = it.cloneNode(true);
               copy.querySelectorAll('.voice').forEach((voice) => voice.remove());
               return copy.textContent;
             };
             for (const line of all('[data-testid=step-to-buy] .build__piece')) stands.push(seen(line).replace(' × ', ' of '));
             for (const wait of all('[data-testid=step-waits] .way-out')) stands.push(`Wait for: ${seen(wait)}`);
             for (const care of all('.caution summary')) stands.push(care.textContent);
             return [window.said, stands]",
        ))
        .expect("words");
        // A fraction stands with its line, and without a space.
        let close = |words: &str| words.split_whitespace().collect::<String>();
        assert_eq!(close(&heard), close(&stands.join(". ")), "step {steps}: {heard}");
        with_setting += usize::from(heard.contains(" to near tooth: "));
        with_boards += usize::from(heard.contains(", from board "));
        waiting += usize::from(heard.contains(". Wait for: "));
        careful += usize::from(heard.contains("hands"));
        steps += 1;
        let before = title(&app);
        if said.contains(&before) {
            break;
        }
        said.push(before);
        app.tap("next-step");
        app.settle();
    }
    println!(
        "{steps} steps, {with_setting} with a setting, {with_boards} of boards, {waiting} wait, {careful} with cautions"
    );
    assert!(steps > 12 && with_setting > 3 && with_boards > 3 && waiting > 0 && careful > 2);
    app.assert_quiet_console();
}

/// The text that is sent, and the one that is copied, have each line of the list with what stands there.
#[test]
fn the_text_to_send_is_what_stands_in_the_list() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.script(
        "navigator.share = async (it) => { window.sent = it };
         navigator.clipboard.writeText = async (text) => { window.copied = text }",
    );
    app.tap("open-demo");
    app.wait_for("front");
    app.tap("money");
    app.wait_for("to-buy");
    app.tap("send-to-buy");
    app.wait_until("it is sent", "return Boolean(window.sent)");
    app.tap("copy-to-buy");
    app.wait_for_text("buy-said", "Copied.");
    let sent: (String, String, String) = serde_json::from_value(
        app.script("return [window.sent.title, window.sent.text, window.copied]"),
    )
    .expect("texts");
    assert_eq!(sent.0, crate::shelf::BENCH);
    assert_eq!(sent.1, sent.2);
    let rows: Vec<(bool, String, String, String)> = serde_json::from_value(app.script(
        "return [...document.querySelectorAll('.buy')].map((it) => [
             it.querySelector('.tick').ariaPressed === 'true', it.querySelector('.buy__count').textContent,
             it.querySelector('.row__value').textContent, it.querySelector('.row__more:last-child').textContent])",
    ))
    .expect("rows");
    let lines: Vec<&str> = sent.1.lines().collect();
    assert_eq!(lines[0], format!("To buy for {}", crate::shelf::BENCH));
    assert!(rows.len() > 7, "{rows:?}");
    for ((is_done, count, price, uses), line) in rows.iter().zip(&lines[1..]) {
        let tick = if *is_done { "[x] " } else { "[ ] " };
        let end = format!(": {count}, {price}, {uses}");
        assert!(line.starts_with(tick) && line.ends_with(&end), "{line:?} is not {tick}..{end}");
    }
    // By hand: 14 slats over two rails, two screws each time, are 56, and a tenth more are 62.
    let screws = "[ ] No. 8 screws, 2 in long: 62 wanted, 6 of them spare, 62 to buy, no price, for Shelf slats screwed down";
    assert!(lines.contains(&screws), "{lines:#?}");
    let money = lines[rows.len() + 1];
    assert!(money.contains(&app.text("to-come")) && money.contains(&app.text("spent")), "{money}");
    app.picture("to-buy-in-work");
    app.resize(Screen::DESKTOP);
    app.picture("to-buy-in-work-desk");
    app.assert_quiet_console();
}

/// How many a yard has is counted in its row; one fewer than one asks before the length goes.
#[test]
fn lengths_at_the_yard_are_counted_in_their_rows() {
    let app = crate::shelf::demo();
    app.section("rack");
    let first = |what: &str| {
        let script = format!(
            "return document.querySelector('[data-testid^={what}-at-yard-]').dataset.testid"
        );
        app.script(&script).as_str().expect("a row").to_owned()
    };
    let (count, more, fewer) = (first("count"), first("more"), first("fewer"));
    let tall =
        app.script(&format!("return document.querySelector('[data-testid={more}]').offsetHeight"));
    assert!(tall.as_f64().expect("a height") >= 48.0);
    app.wait_for_text(&count, "enough");
    app.tap(&more);
    app.wait_for_text(&count, "1");
    app.tap(&more);
    app.wait_for_text(&count, "2");
    app.tap(&fewer);
    app.wait_for_text(&count, "1");
    app.tap(&fewer);
    let keep = first("keep");
    app.picture("yard-take-out");
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    app.tap(&keep);
    app.wait_for_text(&count, "1");
    app.tap(&fewer);
    app.tap(&format!("take-out-at-yard-{}", count.rsplit('-').next().expect("an id")));
    app.wait_until_gone(&count);
    app.tap("undo");
    app.wait_for_text(&count, "1");
    app.picture("yard-rows");
    app.assert_quiet_console();
}
