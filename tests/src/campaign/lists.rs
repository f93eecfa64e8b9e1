//! Lists as rows: a row more, one less, how many, and a list as one text. Parts and yard lengths of a job are rows too.

use serde_json::{Value, json};

use super::model::Place;
use super::walk::{Stop, Walk};

/// What a row or a field offers to be tapped, if it does.
fn offered<'a>(it: &'a Value, which: &str) -> Option<&'a str> {
    it[which].as_str()
}

/// A list by its name on the page: of several that have the same, what stands after it tells which is meant.
fn plain(list: &str) -> &str {
    list.split('@').next().unwrap_or(list)
}

impl Walk<'_> {
    /// Takes down every row of a list before one of them is changed: from then on all of them are the person's own. Its
    /// text is then whatever the rows come to.
    pub(super) fn take_down(&mut self, place: &Place, it: &Value) -> Result<(), Stop> {
        let Some(list) = it["list"].as_str() else { return Ok(()) };
        let state = self.state()?;
        let form = self.model.form(place);
        form.texts.remove(list);
        for (field, it) in state["fields"].as_object().into_iter().flatten() {
            // What is not counted follows from what is written as the size.
            let text = it["text"].as_str().unwrap_or_default();
            let is_uncounted = it["kind"] == "count" && text.is_empty();
            if it["list"] == list && !is_uncounted && !form.texts.contains_key(field) {
                form.set(field, text);
            }
        }
        Ok(())
    }

    /// A new row, or the list as its text.
    pub(super) fn change_list(&mut self, place: &Place, it: &Value) -> Result<(), Stop> {
        self.close_keypad()?;
        let list = it["list"].as_str().unwrap_or_default();
        if self.chance.percent(50) {
            self.take_down(place, it)?;
            let rows = it["text"].as_str().and_then(|it| it.parse::<usize>().ok()).unwrap_or(0);
            self.tell(&format!("one more row in {list}"));
            self.tap(&format!("add-{}", plain(list)))?;
            self.model.set(place, &format!("{list}/rows"), &(rows + 1).to_string());
            self.model.set(place, &format!("{list}/{rows}/size"), "");
            return self.sudden(place);
        }
        self.tell(&format!("{list} as text"));
        self.tap(&format!("as-text-{}", plain(list)))?;
        let whole = self.wait("it is there as text", &format!("fields()[{list:?}]"))?;
        self.model.form(place).saw(list, whole["text"].as_str().unwrap_or_default());
        self.type_whole(place, list, &whole)
    }

    /// Types in a list as its text, or in the text that brings a job.
    pub(super) fn type_whole(
        &mut self,
        place: &Place,
        field: &str,
        it: &Value,
    ) -> Result<(), Stop> {
        if field == "pasted" {
            self.type_in(place, field, "whole", it)?;
            return self.look_at_pasted(place);
        }
        self.close_keypad()?;
        self.model.form(place).forget_rows(field);
        self.type_in(place, field, "whole", it)
    }

    /// What was pasted and is no job stays where it is.
    fn look_at_pasted(&mut self, place: &Place) -> Result<(), Stop> {
        let can_look = "return !!place('[data-testid=look-at-text]:not(:disabled)')";
        if self.at.as_ref() != Some(place)
            || !self.chance.percent(30)
            || self.script(can_look)? != Value::Bool(true)
        {
            return Ok(());
        }
        self.tell("look at the text");
        self.tap("look-at-text")?;
        self.wait("it says that this is no job", "words() !== ''")?;
        self.sudden(place)
    }

    /// One more or one fewer of a row; one fewer than one asks whether it goes.
    pub(super) fn count(&mut self, place: &Place, field: &str, it: &Value) -> Result<(), Stop> {
        self.close_keypad()?;
        self.take_down(place, it)?;
        let (fewer, more) = (offered(it, "fewer"), offered(it, "more"));
        let now = it["text"].as_str().and_then(|it| it.parse::<usize>().ok()).filter(|it| *it > 0);
        match (fewer, more) {
            (None, None) => Ok(()),
            (Some(fewer), more) if more.is_none() || self.chance.percent(45) => match now {
                Some(now) if now > 1 => self.count_to(place, field, fewer, &(now - 1).to_string()),
                _ => self.one_fewer_than_one(place, it, fewer),
            },
            (_, Some(more)) => match now {
                Some(now) => self.count_to(place, field, more, &(now + 1).to_string()),
                None => {
                    // From no number the first is whatever the page says.
                    self.tell(&format!("one more in {field}"));
                    self.tab.tap(self.wire(), more)?;
                    let path = format!("fields()[{field:?}]?.text");
                    let other =
                        format!("{path} !== undefined && {path} !== {} && {path}", it["text"]);
                    let shown = self.wait("there is a number", &other)?;
                    self.model.set(place, field, shown.as_str().unwrap_or_default());
                    self.sudden(place)
                }
            },
            (Some(_), None) => Ok(()),
        }
    }

    fn count_to(&mut self, place: &Place, field: &str, css: &str, text: &str) -> Result<(), Stop> {
        self.tell(&format!("count {field} to {text}"));
        self.tab.tap(self.wire(), css)?;
        self.model.set(place, field, text);
        self.sudden(place)?;
        // Nobody taps again before the number is seen, however slow the machine is.
        let is_seen = format!("fields()[{field:?}]?.text === {}", json!(text));
        self.script(&format!("return !!await until(() => {is_seen}, 2000)")).map(drop)?;
        Ok(())
    }

    fn one_fewer_than_one(&mut self, place: &Place, it: &Value, css: &str) -> Result<(), Stop> {
        self.tab.tap(self.wire(), css)?;
        // While there is no room nothing may be done that changes nothing: nobody would be told.
        if self.full.is_none() && self.chance.percent(40) {
            self.tell("one fewer than one: keep it");
            return Ok(self.tab.tap(self.wire(), &css.replacen("fewer-", "keep-", 1))?);
        }
        self.tell(&format!("one fewer than one: take {css} out"));
        self.tab.tap(self.wire(), &css.replacen("fewer-", "take-out-", 1))?;
        if let Some(id) = it["item"].as_u64() {
            self.model.own.insert(id);
            let form = self.model.forms.remove(&Place::Item(id)).unwrap_or_default();
            self.model.gone.insert(id, form);
            self.model.form(place).texts.remove(&format!("count/{id}"));
        }
        if let (Some(list), Some(at)) = (it["list"].as_str(), it["at"].as_u64()) {
            let form = self.model.form(place);
            let rows = form.texts.get(&format!("{list}/rows")).and_then(|it| it.parse().ok());
            form.take_row_out(list, usize::try_from(at).unwrap_or(0), rows.unwrap_or(1));
        }
        self.sudden(place)
    }

    /// The buttons beside a number that counts.
    pub(super) fn one_up_or_down(
        &mut self,
        place: &Place,
        field: &str,
        it: &Value,
    ) -> Result<(), Stop> {
        self.close_keypad()?;
        let Ok(now) = it["text"].as_str().unwrap_or_default().trim().parse::<usize>() else {
            return Ok(());
        };
        match (offered(it, "fewer"), offered(it, "more")) {
            (_, Some(more)) if self.chance.percent(60) => {
                self.count_to(place, field, more, &(now + 1).to_string())
            }
            (Some(fewer), _) => {
                self.count_to(place, field, fewer, &(now.saturating_sub(1)).to_string())
            }
            (None, Some(more)) => self.count_to(place, field, more, &(now + 1).to_string()),
            (None, None) => Ok(()),
        }
    }
}
