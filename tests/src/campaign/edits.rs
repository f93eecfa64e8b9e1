//! What a walk does in a form: keys, choices, ticks, putting in, taking out, undo.

use serde_json::{Value, json};

use super::model::{Place, Writing};
use super::tab::Tab;
use super::walk::{Stop, Walk};
use super::wire::Trouble;
use super::words::{Way, pressed, typed, whole};

/// A field that changes what other fields mean, and what other items say: its own journeys try it.
const LEFT_ALONE: &str = "kind";
/// A text that is longer is not gone on with, in characters: a field takes no more than so many.
const ENOUGH: usize = 45;
/// The lengths of the settings: another tape writes them with their unit.
const WITH_THE_TAPE: [&str; 3] = ["kerf", "blade_reach", "thinnest_strip"];

/// Whether what separates rows or their parts came into a cell with the list's text: it goes when the cell is written in.
fn has_separator(it: &Value) -> bool {
    let text = it["text"].as_str().unwrap_or_default();
    matches!(it["kind"].as_str(), Some("keys" | "words"))
        && it["list"].is_string()
        && text.contains(['@', ':', ';'])
}

/// Whether a field says what is left of a piece or a board.
fn is_left(field: &str) -> bool {
    field.split(['@', '/']).next() == Some("left")
}

/// The buttons that bring such a form out.
fn openers(state: &Value) -> Vec<String> {
    let all = state["openers"].as_array().into_iter().flatten();
    all.filter_map(|it| it.as_str().map(str::to_owned)).collect()
}

/// Whether a form about that is open: a page opens one at a time by itself.
fn has_what_is_left(state: &Value) -> bool {
    state["fields"].as_object().into_iter().flatten().any(|(field, _)| is_left(field))
}

impl Walk<'_> {
    /// One edit of the form at hand.
    pub(super) fn edit(&mut self, place: &Place) -> Result<(), Stop> {
        let mut state = self.state()?;
        if matches!(place, Place::Draft(_))
            && state["save"] == json!(true)
            && self.chance.percent(30)
        {
            return self.put_in(place);
        }
        if let Place::Item(id) = place
            && self.model.own.contains(id)
            && self.model.forms.contains_key(place)
            && self.chance.percent(6)
        {
            return self.take_out(*id);
        }
        let is_measure = state["fields"]["kind"].is_object();
        if self.chance.percent(40) && !has_what_is_left(&state) && !openers(&state).is_empty() {
            // What is typed may make it a piece that is cut, or not, once it is left.
            self.close_keypad()?;
            self.tab.frame(self.wire())?;
            state = self.state()?;
            if let Some(opener) = self.chance.one(&openers(&state)).cloned() {
                self.tell(&format!("open {opener}"));
                self.tap(&opener)?;
                self.wait("what is left is asked for", "Object.keys(fields()).some(isLeft)")?;
                state = self.state()?;
                let fields = state["fields"].as_object_mut();
                fields.into_iter().for_each(|it| it.retain(|id, _| is_left(id)));
            }
        }
        let mut fields: Vec<(String, Value)> = state["fields"]
            .as_object()
            .into_iter()
            .flatten()
            .filter(|(field, _)| self.may_change(place, field, is_measure))
            .filter(|(_, it)| !has_separator(it))
            .map(|(field, it)| (field.clone(), it.clone()))
            .collect();
        // Something new wants its fields filled in, one after the other.
        if matches!(place, Place::Draft(_)) && self.chance.percent(80) {
            let is_empty = |it: &Value| {
                let text = it["text"].as_str().unwrap_or_default();
                text.is_empty() || text == "no" && it["kind"] == "member"
            };
            let empty: Vec<_> = fields.iter().filter(|(_, it)| is_empty(it)).cloned().collect();
            if !empty.is_empty() {
                fields = empty;
            }
        }
        let Some((field, it)) = self.chance.one(&fields).cloned() else {
            self.at = None;
            return Ok(());
        };
        self.model.form(place).saw(&field, it["text"].as_str().unwrap_or_default());
        match it["kind"].as_str().unwrap_or_default() {
            "choice" | "pick" => self.choose(place, &field),
            "question" => self.ask(place),
            "member" | "tick" => self.tick(place, &field, &it),
            "rows" => self.change_list(place, &it),
            "count" => self.count(place, &field, &it),
            "whole" => self.type_whole(place, &field, &it),
            kind => {
                let counts = it["more"].is_string() || it["fewer"].is_string();
                if counts && self.chance.percent(35) {
                    return self.one_up_or_down(place, &field, &it);
                }
                self.take_down(place, &it)?;
                self.type_in(place, &field, kind, &it)
            }
        }
    }

    fn may_change(&self, place: &Place, field: &str, is_measure: bool) -> bool {
        let is_own = matches!(place, Place::Item(id) if self.model.own.contains(id))
            || matches!(place, Place::Draft(_));
        // Formulas follow the name of a size; the ticks of a part, how many there are.
        let is_fixed = matches!(place, Place::Item(_))
            && (field == "quantity" || (is_measure && field == "name" && !is_own));
        field != LEFT_ALONE && !is_fixed
    }

    /// Brings a field out from under the keypad of another.
    pub(super) fn close_keypad(&mut self) -> Result<(), Trouble> {
        if self.state()?["keying"] == json!(true) {
            self.tell("close the keypad");
            if self.script("return !!await until(() => place('[data-testid=key-close]'), 1000)")?
                == json!(true)
            {
                self.tap("key-close")?;
            } else {
                self.tab.keys(self.wire(), ["Escape"])?;
            }
            self.wait("the keypad is closed", "by('[data-testid=key-close]').length === 0")?;
        }
        Ok(())
    }

    fn choose(&mut self, place: &Place, field: &str) -> Result<(), Stop> {
        // Under a keypad only what is chosen is there.
        self.close_keypad()?;
        let it = self.state()?["fields"][field].clone();
        let options: Vec<&str> =
            it["options"].as_array().into_iter().flatten().filter_map(Value::as_str).collect();
        let others: Vec<&str> = options.into_iter().filter(|one| *one != it["text"]).collect();
        let Some(option) = self.chance.one(&others).copied() else { return Ok(()) };
        self.tell(&format!("choose {field} {option}"));
        if it["kind"] == "pick" {
            // A list that opens is drawn by the system, where no finger of a walk comes.
            self.script(&format!(
                "const it = document.querySelector({});
                 it.value = {};
                 return it.dispatchEvent(new Event('change', {{ bubbles: true }}))",
                it["css"],
                json!(option)
            ))?;
        } else {
            self.tap(&format!("{field}-{option}"))?;
        }
        self.model.set(place, field, option);
        if *place == Place::Page("settings") && field == "tape" {
            let texts = &mut self.model.form(place).texts;
            texts.retain(|field, _| !WITH_THE_TAPE.contains(&field.as_str()));
        }
        self.sudden(place)
    }

    /// Asks another question of a calculator.
    fn ask(&mut self, place: &Place) -> Result<(), Stop> {
        self.close_keypad()?;
        self.tap("question")?;
        let all = self.wait(
            "the questions are there",
            "by('.question__row').length > 0 && by('.question__row:not([aria-current])')
               .map((it) => [it.dataset.testid, tidy(it.querySelector('.question__name').textContent)])",
        )?;
        let all = all.as_array().cloned().unwrap_or_default();
        let Some(one) = self.chance.one(&all) else {
            return Ok(self.tap("question-close")?);
        };
        let (id, name) = (one[0].as_str().unwrap_or_default(), one[1].as_str().unwrap_or_default());
        self.tell(&format!("ask: {name}"));
        self.tap(id)?;
        self.model.set(place, "question", name);
        self.sudden(place)
    }

    fn tick(&mut self, place: &Place, field: &str, it: &Value) -> Result<(), Stop> {
        self.close_keypad()?;
        let now = if it["text"] == "yes" { "no" } else { "yes" };
        self.tell(&format!("tap {field}, so that it is {now}"));
        self.tab.tap(self.wire(), it["css"].as_str().unwrap_or_default())?;
        self.model.set(place, field, now);
        self.sudden(place)
    }

    /// Taps into a field until it has the focus; its text with the selection in it.
    fn enter(&mut self, css: &str) -> Result<Writing, Trouble> {
        let selector = json!(css);
        let has_focus = format!(
            "return !!await until(() => document.activeElement === document.querySelector({selector}), 2000)"
        );
        // While a plan arrives above it, a field may move away under the finger: a person taps again.
        let mut taps = 0;
        loop {
            self.tab.tap(self.wire(), css)?;
            taps += 1;
            if self.script(&has_focus)? == json!(true) {
                break;
            }
            if taps == 5 {
                return Err(format!("{css} does not take the focus"));
            }
        }
        // A person looks before typing: what is selected can be seen.
        self.tab.frame(self.wire())?;
        self.tab.frame(self.wire())?;
        let now = self.script(
            "const it = document.activeElement; return [it.value, it.selectionStart, it.selectionEnd]",
        )?;
        let at = |place: usize| {
            usize::try_from(now[place].as_u64().unwrap_or_default()).unwrap_or_default()
        };
        Ok(Writing::of(now[0].as_str().unwrap_or_default(), at(1), at(2)))
    }

    /// Empties the field at hand: with the key for it where there is one, else with a keyboard.
    fn clear(&mut self) -> Result<(), Trouble> {
        // The clear key of another field may be there too, where a row's name leaves the keys as they are.
        let own = "return !!place('.field__row:focus-within [data-testid=key-clear]')";
        if self.script(own)? == json!(true) {
            return self.tap("key-clear");
        }
        self.script("document.activeElement.select(); return true")?;
        self.tab.keys(self.wire(), ["Backspace"])
    }

    pub(super) fn type_in(
        &mut self,
        place: &Place,
        field: &str,
        kind: &str,
        it: &Value,
    ) -> Result<(), Stop> {
        let css = it["css"].as_str().unwrap_or_default().to_owned();
        // A keyboard's Tab may lead to what lies under the keys.
        let is_here = self.script(&format!(
            "return document.activeElement === document.querySelector({0}) && !!place({0})",
            json!(css)
        ))? == json!(true);
        if !is_here {
            self.close_keypad()?;
        }
        let mut writing = self.enter(&css)?;
        if kind == "title" {
            // A title that is empty is no title: it is written over as a whole.
            self.script("document.activeElement.select(); return true")?;
            writing = Writing::of(&writing.text(), 0, writing.text().chars().count());
        } else if self.chance.percent(40) || writing.text().chars().count() > ENOUGH {
            self.tell(&format!("clear {field}"));
            self.clear()?;
            self.model.set(place, field, "");
            writing = Writing::of("", 0, 0);
        }
        let has_keypad = self.script("return !!test('keypad')")? == json!(true);
        let way = match self.chance.below(3) {
            0 if kind == "keys" && has_keypad => Way::Keypad,
            1 if kind != "keys" => Way::Whole,
            // Rows of a spreadsheet are pasted.
            _ if kind == "whole" && self.chance.percent(50) => Way::Whole,
            _ => Way::Keyboard,
        };
        self.count += 1;
        if way == Way::Keypad {
            let has_fractions = self.script("return !!test('key-page-16')")? == json!(true);
            let kind_of = if has_fractions { field } else { "number" };
            let n_keys = 1 + self.chance.below(3);
            for _ in 0..n_keys {
                let key = pressed(&mut self.chance, kind_of, &mut writing);
                if let Some(tab) = key.tab {
                    self.tap(&format!("key-page-{tab}"))?;
                }
                self.tap(&format!("key-{}", key.id))?;
                self.model.set(place, field, &writing.text());
            }
            self.tell(&format!("keypad: {field} reads {:?}", writing.text()));
        } else {
            let mut text = match kind {
                "whole" => whole(&mut self.chance, self.count),
                kind => typed(&mut self.chance, field, kind, self.count),
            };
            if kind != "title" && self.chance.percent(25) {
                // Half of it, and then something happens.
                let half = text.chars().count().div_ceil(2);
                text = text.chars().take(half).collect();
            }
            let reload = self.chance.percent(12);
            if reload {
                self.script(
                    "addEventListener('input', () => { if (--window.keysToCome === 0) { loadAgain(); location.reload() } });
                     return true",
                )?;
                let keys = if way == Way::Whole { 1 } else { text.chars().count() };
                self.script(&format!("window.keysToCome = {keys}; return true"))?;
            }
            // Of a keyboard, Tab leaves.
            if way == Way::Keyboard {
                text = text.replace('\t', " ");
            }
            writing.put(&text);
            let is_sent = if way == Way::Whole {
                self.tab.insert(self.wire(), &text)
            } else {
                let key = |it: char| if it == '\n' { "Enter".to_owned() } else { it.to_string() };
                let keys: Vec<String> = text.chars().map(key).collect();
                self.tab.keys(self.wire(), keys.iter().map(String::as_str))
            };
            self.model.set(place, field, &writing.text());
            self.tell(&format!("type in {field}: it reads {:?}", writing.text()));
            if reload {
                self.fault("reload in the task of the key");
                return self.after_loading(place);
            }
            is_sent?;
        }
        let n_faults = self.n_faults();
        self.sudden(place)?;
        if self.n_faults() > n_faults {
            return Ok(());
        }
        self.as_typed(field, &css, &writing.text())?;
        if kind == "title" && self.chance.percent(50) {
            self.tell("Enter");
            self.tab.keys(self.wire(), ["Enter"])?;
        } else if kind != "whole" && self.chance.percent(20) {
            self.next_field()?;
        }
        Ok(())
    }

    /// Every key that was sent stands in the field.
    fn as_typed(&self, field: &str, css: &str, wanted: &str) -> Result<(), Stop> {
        let found = self.script(&format!(
            "await until(() => tidy(document.querySelector({0}).value) === tidy({1}), 2000);
             return document.querySelector({0})?.value",
            json!(css),
            json!(wanted)
        ))?;
        let tidy = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
        let found = found.as_str().unwrap_or_default();
        if tidy(found) == tidy(wanted) {
            return Ok(());
        }
        Err(Stop::Loss(format!("keys lost in {field}: expected {wanted:?} found {found:?}")))
    }

    fn next_field(&mut self) -> Result<(), Trouble> {
        match self.chance.below(3) {
            0 if self.state()?["next"] == json!(true) => {
                self.tell("next field");
                self.tap("field-next")
            }
            1 => {
                self.tell("Tab");
                self.tab.keys(self.wire(), ["Tab"])
            }
            _ => {
                self.tell("Enter");
                self.tab.keys(self.wire(), ["Enter"])
            }
        }
    }

    /// Puts something new in the job, and finds it in the list.
    fn put_in(&mut self, place: &Place) -> Result<(), Stop> {
        let Place::Draft(name) = place else { return Ok(()) };
        let section = match name.as_str() {
            "measure" | "match" => "sizes",
            "part" => "parts",
            _ => "rack",
        };
        let before = self.listed(section)?;
        self.check(place)?;
        self.close_keypad()?;
        self.tell("put it in the job");
        self.tap("save-item")?;
        self.wait(
            "its section is open",
            "!location.hash.includes('/new/') && test('section-sizes')",
        )?;
        let after = self.script(&format!(
            "await until(() => state().items.length > {}, 5000); return state().items",
            before.len()
        ))?;
        let after = after.as_array().into_iter().flatten().filter_map(Value::as_u64);
        let Some(id) = after.into_iter().find(|id| !before.contains(id)) else {
            return Err(Stop::Loss(format!("{place:?} was put in the job and is not listed")));
        };
        let form = self.model.forms.remove(place).unwrap_or_default();
        self.model.own.insert(id);
        self.model.forms.insert(Place::Item(id), form);
        self.check(&Place::Item(id))
    }

    fn take_out(&mut self, id: u64) -> Result<(), Stop> {
        self.close_keypad()?;
        self.tell(&format!("take item {id} out"));
        self.tap("take-out")?;
        self.wait("its section is open", "test('section-sizes')")?;
        let form = self.model.forms.remove(&Place::Item(id)).unwrap_or_default();
        self.model.gone.insert(id, form);
        if let Some(rack) = self.model.forms.get_mut(&Place::Section("rack")) {
            rack.texts.remove(&format!("count/{id}"));
        }
        self.model.forms.retain(|place, _| !matches!(place, Place::Piece(part, _) if *part == id));
        if let Some(ticks) = self.model.forms.get_mut(&Place::Section("parts")) {
            ticks.texts.retain(|tick, _| !tick.starts_with(&format!("tick/{id}/")));
            ticks.texts.remove(&format!("count/{id}"));
        }
        self.at = None;
        Ok(())
    }

    /// Takes the last step back, and mostly makes it again. Whatever it takes back was there before.
    pub(super) fn undo(&mut self) -> Result<(), Stop> {
        self.listed("")?;
        self.at = None;
        if self.state()?["undo"] != json!(true) {
            return Ok(());
        }
        self.tell("undo");
        self.tap("undo")?;
        if self.chance.percent(60) {
            self.wait("it can be made again", "test('redo') && !test('redo').disabled")?;
            self.tell("redo");
            self.tap("redo")?;
            self.tab.frame(self.wire())?;
            return self.check_all();
        }
        self.tab.frame(self.wire())?;
        self.take_over_what_was_taken_back()
    }

    fn take_over_what_was_taken_back(&mut self) -> Result<(), Stop> {
        for id in self.model.gone.keys().copied().collect::<Vec<_>>() {
            self.open(&Place::Item(id))?;
            if self.script("return Object.keys(fields()).length")? != json!(0) {
                let form = self.model.gone.remove(&id).unwrap_or_default();
                self.model.forms.insert(Place::Item(id), form);
            }
        }
        let places: Vec<Place> = self.model.forms.keys().cloned().collect();
        let mut changed = Vec::new();
        let mut came = Vec::new();
        for place in places {
            self.open(&place)?;
            let wrong = self.lost(&place, 300)?;
            if wrong.is_empty() {
                continue;
            }
            let is_gone = self.script("return Object.keys(fields()).length")? == json!(0);
            match &place {
                Place::Item(id) if is_gone && self.model.own.contains(id) => {
                    let form = self.model.forms.remove(&place).unwrap_or_default();
                    self.model.gone.insert(*id, form);
                }
                _ => {
                    for it in &wrong {
                        let field = it["id"].as_str().unwrap_or_default();
                        let found = it["found"].as_str();
                        let form = self.model.form(&place);
                        match found.filter(|found| form.had(field, found.trim())) {
                            Some(found) => form.set(field, found),
                            // A piece without a tick of its own follows what undo made of it.
                            None if field == "done" || field.starts_with("tick/") => {
                                form.texts.remove(field);
                            }
                            // How many there were is known from the row or from the form, seldom from both.
                            None if field == "quantity" || field.starts_with("count/") => {
                                form.texts.remove(field);
                            }
                            None => return self.compare(&place),
                        }
                    }
                }
            }
            came.extend(wrong);
            changed.push(place);
        }
        let items = changed
            .iter()
            .filter(|it| !matches!(it, Place::Piece(..) | Place::Section("parts" | "rack")));
        if items.count() > 1 {
            let all = Value::from(came);
            return Err(Stop::Loss(format!(
                "one undo changed more than one thing: {changed:?}: {all}"
            )));
        }
        Ok(())
    }

    /// Another window writes in this job, beside the form that is open here.
    pub(super) fn second_window(&mut self, place: &Place) -> Result<(), Stop> {
        let others: Vec<Place> = self
            .model
            .forms
            .keys()
            .filter(|other| matches!(other, Place::Item(_) | Place::Piece(..)))
            .cloned()
            .collect();
        let Some(other) = self.chance.one(&others).cloned() else { return Ok(()) };
        let first = self.tab.clone();
        self.fault(if other == *place { "second window, same form" } else { "second window" });
        let (target, session) = self.new_window()?;
        self.tab = Tab { target, session };
        self.load(&other)?;
        // Also where the first has left this form: what could not go in stays its own, and is offered beside what is
        // typed here.
        self.model.form(&other).is_shared = true;
        self.at = Some(other.clone());
        // What a page that is loaded again is slow to take up goes to whoever has the form open.
        self.second.push(first.clone());
        self.before = Some(self.model.form(&other).texts.clone());
        for _ in 0..2 {
            self.edit(&other)?;
            if self.at.as_ref() != Some(&other) {
                break;
            }
        }
        self.before = None;
        self.second.retain(|it| it.target != first.target);
        if self.chance.percent(50) {
            self.tell("leave the second window open");
            self.tab.keys(self.wire(), ["Tab"])?;
            // Nobody turns to another window faster than a browser writes. Were it so, the job would say who changed what.
            self.script("return !!await until(() => window.begunByThePage === 0, 2000)")?;
            self.second.push(self.tab.clone());
        } else {
            self.tell("close the second window");
            self.close_tab(&self.tab.clone())?;
        }
        self.tab = first;
        self.browser.ask("Target.activateTarget", &json!({ "targetId": self.tab.target }))?;
        if !self.model.forms.contains_key(&other) {
            self.at = None;
            return Ok(());
        }
        self.check(&other)
    }
}
