//! What must stand: every text that was typed and every choice that was tapped, by the form it belongs to. It knows
//! the keys that were sent and nothing of the app's code.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::{Map, Value, json};

/// A form, by where it stands.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Place {
    /// An item of the job.
    Item(u64),
    /// A piece of a part of the job, counted from 0.
    Piece(u64, u64),
    /// Something new that is not in the job yet, by the name of its form.
    Draft(String),
    /// A section of the job that can be edited itself: the first has the title, `parts` the ticks and how many there
    /// are, `rack` how many can be had, `boards` what the plan may do.
    Section(&'static str),
    /// A page beside the jobs: a calculator, the quick list, the settings.
    Page(&'static str),
}

impl Place {
    /// What stands after the page's own address.
    pub(super) fn address(&self, job: &str) -> String {
        match self {
            Place::Item(id) => format!("#/job/{job}/item/{id}"),
            Place::Piece(part, index) => format!("#/job/{job}/piece/{part}/{index}"),
            Place::Draft(form) => format!("#/job/{job}/new/{form}"),
            Place::Section(name) => format!("#/job/{job}/{name}"),
            Place::Page(slug) => format!("#/{slug}"),
        }
    }
}

/// What must stand in one form.
#[derive(Clone, Debug, Default)]
pub(super) struct Form {
    /// The text of each field that is known: `yes` and `no` for what is ticked. Of a list either its rows are known, as
    /// `LIST/rows` and `LIST/ROW/PART`, or its text, as `LIST`.
    pub(super) texts: BTreeMap<String, String>,
    /// Every text that a field has ever had: undo may bring one of them back.
    past: BTreeMap<String, BTreeSet<String>>,
    /// Whether two windows wrote in it: then a text may also be offered by name.
    pub(super) is_shared: bool,
}

impl Form {
    pub(super) fn set(&mut self, field: &str, text: &str) {
        self.texts.insert(field.to_owned(), text.to_owned());
        self.past.entry(field.to_owned()).or_default().insert(text.to_owned());
    }

    /// Takes note of a text that a field had before it was written in: undo may bring it back.
    pub(super) fn saw(&mut self, field: &str, text: &str) {
        self.past.entry(field.to_owned()).or_default().insert(text.to_owned());
    }

    pub(super) fn had(&self, field: &str, text: &str) -> bool {
        self.past.get(field).is_some_and(|all| all.contains(text))
    }

    /// Forgets the rows of a list: it is known as one text from now on.
    pub(super) fn forget_rows(&mut self, list: &str) {
        let rows = format!("{list}/");
        self.texts.retain(|field, _| !field.starts_with(&rows));
    }

    /// Takes a row out of a list of so many: those below it move up, and of the last one an empty row stays.
    pub(super) fn take_row_out(&mut self, list: &str, at: usize, of: usize) {
        let of_row = |row: usize| format!("{list}/{row}/");
        for row in at..of {
            let (to, from) = (of_row(row), of_row(row + 1));
            self.texts.retain(|field, _| !field.starts_with(&to));
            let moved: Vec<_> = self
                .texts
                .iter()
                .filter_map(|(field, text)| Some((field.strip_prefix(&from)?, text)))
                .map(|(part, text)| (format!("{to}{part}"), text.clone()))
                .collect();
            for (field, text) in moved {
                self.set(&field, &text);
            }
        }
        self.set(&format!("{list}/rows"), &(of - 1).max(1).to_string());
    }

    /// The texts as the page is asked for them.
    pub(super) fn wanted(&self) -> Value {
        let all = self.texts.iter().map(|(field, text)| (field.clone(), json!(text)));
        Value::Object(all.collect::<Map<_, _>>())
    }
}

/// All that must stand.
#[derive(Debug, Default)]
pub(super) struct Model {
    pub(super) job: String,
    pub(super) forms: BTreeMap<Place, Form>,
    /// Items that were taken out, and may come back by undo.
    pub(super) gone: BTreeMap<u64, Form>,
    /// Items that were made in this walk: no formula names them.
    pub(super) own: BTreeSet<u64>,
}

impl Model {
    pub(super) fn form(&mut self, place: &Place) -> &mut Form {
        self.forms.entry(place.clone()).or_default()
    }

    /// Takes note of a text or a choice.
    pub(super) fn set(&mut self, place: &Place, field: &str, text: &str) {
        self.form(place).set(field, text);
        if let Some(id) = field.strip_prefix("count/").and_then(|id| id.parse().ok()) {
            return self.set_count(id, text);
        }
        if matches!(place, Place::Piece(..) | Place::Section("parts")) {
            self.forget_boards();
        }
        match (place, field) {
            // A piece that is measured is cut; which of the two came first is not this model's.
            (Place::Piece(part, index), "as_cut" | "width" | "thickness") => {
                self.form(place).texts.remove("done");
                let tick = format!("tick/{part}/{}", index + 1);
                if let Some(ticks) = self.forms.get_mut(&Place::Section("parts")) {
                    ticks.texts.remove(&tick);
                }
            }
            (Place::Piece(part, index), "done") => {
                let tick = format!("tick/{part}/{}", index + 1);
                if let Some(ticks) = self.forms.get_mut(&Place::Section("parts"))
                    && ticks.texts.contains_key(&tick)
                {
                    ticks.set(&tick, text);
                }
            }
            (Place::Section("parts"), tick) => {
                let mut numbers = tick.split('/').skip(1).filter_map(|it| it.parse::<u64>().ok());
                if let (Some(part), Some(number)) = (numbers.next(), numbers.next())
                    && let Some(piece) =
                        self.forms.get_mut(&Place::Piece(part, number.saturating_sub(1)))
                {
                    piece.set("done", text);
                }
            }
            _ => {}
        }
    }
}

impl Model {
    /// How many of an item there are, tapped in the row of its list: its form says the same where it asks for that, as that of
    /// a length at the yard does not, and there are no ticks beyond.
    fn set_count(&mut self, id: u64, text: &str) {
        let count = text.parse::<u64>().ok();
        if let Some(item) = self.forms.get_mut(&Place::Item(id))
            && item.past.contains_key("quantity")
        {
            match count {
                Some(_) => item.set("quantity", text),
                None => drop(item.texts.remove("quantity")),
            }
        }
        if let (Some(count), Some(parts)) = (count, self.forms.get_mut(&Place::Section("parts"))) {
            let ticks = format!("tick/{id}/");
            let number = |tick: &str| tick.strip_prefix(&ticks)?.parse::<u64>().ok();
            parts.texts.retain(|tick, _| number(tick).is_none_or(|number| number <= count));
        }
    }

    /// A piece that is cut takes its board off the rack, and of several one: which, is not this model's.
    fn forget_boards(&mut self) {
        self.forms.retain(|place, form| {
            !matches!(place, Place::Item(_)) || !form.texts.contains_key("sawn_ends")
        });
    }
}

/// A text with a caret or a selection in it, as the keys change it.
pub(super) struct Writing {
    text: Vec<char>,
    from: usize,
    to: usize,
}

impl Writing {
    pub(super) fn of(text: &str, from: usize, to: usize) -> Writing {
        Writing { text: text.chars().collect(), from, to }
    }

    pub(super) fn text(&self) -> String {
        self.text.iter().collect()
    }

    /// What the keys write over the selection.
    pub(super) fn put(&mut self, written: &str) {
        let all: Vec<char> = written.chars().collect();
        let end = self.from + all.len();
        self.text.splice(self.from..self.to, all);
        (self.from, self.to) = (end, end);
    }

    /// Whether a whole number stands before the caret, so that a fraction can follow.
    pub(super) fn ends_in_whole(&self) -> bool {
        let before: String = self.text[..self.from].iter().collect();
        let last = before.rsplit(' ').next().unwrap_or_default();
        !last.is_empty() && last.chars().all(|c| c.is_ascii_digit())
    }

    pub(super) fn is_empty(&self) -> bool {
        self.from == 0
    }
}
