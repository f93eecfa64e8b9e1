//! Everything wrong at once: each message can be read where it stands, names its field, and nothing lies over anything.

use reckoner_e2e::{App, Screen};
use serde_json::json;

/// Types a text, if there is one, into every size of the page in turn and leaves each; what is wrong with the page then.
const WRONG: &str = "
    const rest = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0)));
    const inputs = TEXT === null ? [] : [...document.querySelectorAll('.asks .field__input')];
    const ids = inputs.map((it) => it.id);
    let typed = 0;
    for (const id of ids) {
      const it = document.getElementById(id);
      if (!it) continue;
      it.focus();
      Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set.call(it, TEXT);
      it.dispatchEvent(new InputEvent('input', { bubbles: true }));
      await rest();
      document.activeElement.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true, cancelable: true }));
      await rest();
      typed++;
    }
    const box = (it) => it.getBoundingClientRect();
    const need = document.querySelector('.headline__need')?.textContent ?? '';
    const problems = [...document.querySelectorAll('.problem__words')];
    const labels = [...document.querySelectorAll('.asks .field__name')].map((it) => it.textContent);
    const faults = [];
    const isNamed = need === '' || labels.some((it) => need.startsWith(`${it}: `));
    if (!isNamed) faults.push(`of no field: ${need}`);
    if (need === '' && problems.length > 0) faults.push('refused with an answer');
    for (const it of problems) {
      if (it.textContent.trim().length < 15 || box(it).right > innerWidth + 0.5 || box(it).width < 100) faults.push(`cannot be read: ${it.textContent}`);
    }
    if (document.documentElement.scrollWidth > document.documentElement.clientWidth) faults.push('scrolls sideways');
    const seen = [...document.querySelectorAll('.asks :is(p, label, input, legend, button)')]
      .filter((it) => it.checkVisibility() && !it.closest('.voice, .choice') && (it.tagName === 'INPUT' || it.innerText !== ''))
      .map((it) => [it, box(it)]).filter(([, r]) => r.width > 4 && r.height > 4);
    for (const [at, [a, r]] of seen.entries()) {
      for (const [b, s] of seen.slice(at + 1)) {
        // Empty, its hint stands in the place of a value.
        if (b.tagName === 'INPUT' && b.value === '') continue;
        // The name of a chip stands in the upper part of its input.
        const isOfAChip = a.tagName === 'LABEL' && b.tagName === 'INPUT' && a.closest('.is-chip')?.contains(b);
        const room = isOfAChip ? s.top + parseFloat(getComputedStyle(b).paddingTop) + 11 : s.top;
        const meet = isOfAChip ? r.bottom > room : r.left < s.right - 1 && s.left < r.right - 1 && r.top < s.bottom - 1 && s.top < r.bottom - 1;
        if (meet && !a.contains(b) && !b.contains(a)) faults.push(`${a.innerText || a.value} over ${b.innerText || b.value}`);
      }
    }
    return [typed, problems.length, faults];";

#[test]
fn with_everything_wrong_at_once_each_message_can_be_read() {
    let app = App::open(Screen::PHONE);
    app.wait_for("home-tape");
    let tiles = app.visible_ids();
    let slugs: Vec<&str> = tiles.iter().filter_map(|id| id.strip_prefix("home-")).collect();
    let (mut told, mut typed, mut problems) = (Vec::new(), 0, 0);
    for slug in &slugs {
        for text in [None, Some(""), Some("0"), Some("-3"), Some("1e99"), Some("abc"), Some("1/0")]
        {
            app.script("localStorage.clear()");
            app.go("#/");
            app.go(&format!("#/{slug}"));
            app.wait_for("answer-headline");
            // The strip opens by itself.
            if app.shows("keypad") {
                app.tap("key-close");
            }
            let it = app.script(&WRONG.replace("TEXT", &json!(text).to_string()));
            typed += it[0].as_u64().unwrap_or(0);
            problems += it[1].as_u64().unwrap_or(0);
            if it[2] != json!([]) {
                told.push(format!("{slug} {text:?}: {}", it[2]));
            }
        }
        app.picture(&format!("wrong-{slug}"));
    }
    assert!(told.is_empty(), "{told:#?}");
    assert!(slugs.len() == 14 && typed > 300 && problems > 250, "{typed} typed, {problems} told");
    app.assert_quiet_console();
}
