//! What is typed and does not stand in its job yet, as notes beside the job.
//!
//! A note is what is typed in one open form, or one edit. Each is put down whole, in the event
//! that made it, under a key of its own: job, place and the page that wrote it. [`fold`] turns
//! what was typed into a step of the job: field by field, so that it never overwrites what
//! somebody else wrote in the same field, and leaves what cannot be read as it was typed.

use form_urlencoded::Serializer;
use reckoner_core::calculators::{self, Calculator};
use reckoner_core::job::{
    Change, Item, ItemId, Job, Kept, MOST_PIECES, PartSizes, Reckoned, Step, check_title,
};
use reckoner_core::sheet::{Ask, Bench, Entries, Sheet};
use reckoner_formats::{read_step, write_step};

use super::book::Edit;
use super::forms::{
    Form, MATCH, PIECE, entries_of, entries_of_match, entries_of_piece, ids, is_of_tape, item_of,
    match_of, part_of_piece, read, read_match,
};
use crate::link;
use crate::settings::with_fields;

/// The only field of a form that asks for a title.
pub const TITLE: &str = "title";

/// What a field was filled with, once somebody else has written in it: nothing that can be typed.
const OVERTAKEN: &str = "\0";

/// What is typed in one form.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Typed {
    /// The texts that the form was filled with.
    pub filled: Entries,
    /// Its texts now.
    pub typed: Entries,
}

/// One note.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Note {
    /// What is typed in the form of a place.
    Typed(Typed),
    /// An edit that is not in the job's record yet, and the form that it was typed in: its place
    /// and what was typed there.
    Edit(Edit, Option<(String, Typed)>),
}

impl Typed {
    /// A form that nothing was typed in.
    #[must_use]
    pub fn filled_with(entries: Entries) -> Typed {
        Typed { typed: entries.clone(), filled: entries }
    }

    /// The fields whose text is not what the form was filled with.
    #[must_use]
    pub fn changed(&self) -> Vec<&str> {
        let of_filled = self.filled.pairs().map(|(id, _)| id);
        let only_there = of_filled.filter(|id| self.typed.text(id).is_none());
        let here = self.typed.pairs().filter(|(id, text)| self.filled.text(id) != Some(*text));
        only_there.chain(here.map(|(id, _)| id)).collect()
    }

    /// What was typed, put back into a form that it was thought to have left: what was typed there
    /// since stays.
    #[must_use]
    pub fn put_back(self, now: Option<&Typed>) -> Typed {
        let Some(now) = now else { return self };
        let since = now.changed();
        let back = self.changed();
        let back_only: Vec<&str> = back.iter().copied().filter(|it| !since.contains(it)).collect();
        Typed {
            filled: with_fields(&now.filled, &back, &self.filled),
            typed: with_fields(&now.typed, &back_only, &self.typed),
        }
    }

    /// The same, in sight of what stands in the job `now`. What somebody else wrote in since stays theirs, also once it is
    /// again what the form was filled with: they may have typed that later.
    #[must_use]
    pub fn in_sight_of(mut self, now: &Entries) -> Typed {
        let is_theirs = |field: &&str| {
            let now = now.text(field);
            now != self.typed.text(field) && now != self.filled.text(field)
        };
        let theirs: Vec<String> =
            self.changed().into_iter().filter(is_theirs).map(str::to_owned).collect();
        for field in theirs {
            self.filled.set(&field, OVERTAKEN);
        }
        self
    }

    /// Whether nothing is typed that is not where it came from.
    #[must_use]
    pub fn is_clean(&self) -> bool {
        self.changed().is_empty()
    }
}

/// The key of a note.
#[must_use]
pub fn key(job: &str, place: &str, page: &str) -> String {
    format!("{job}/{place}#{page}")
}

/// The place of a note and the page that wrote it, from its key.
#[must_use]
pub fn read_key<'a>(job: &str, key: &'a str) -> Option<(&'a str, &'a str)> {
    key.strip_prefix(job)?.strip_prefix('/')?.rsplit_once('#')
}

/// The place of an edit: they are folded in, in the order of these.
#[must_use]
pub fn place_of_edit(milliseconds: u64, number: u32) -> String {
    format!("step/{milliseconds:014}-{number:06}")
}

/// What stands between a place and a number, where a second page had typed in the same place.
pub const FURTHER: char = '~';

/// A place without such a number.
#[must_use]
pub fn bare(place: &str) -> &str {
    place.split_once(FURTHER).map_or(place, |(place, _)| place)
}

/// Whether the place of a note is that of an edit.
#[must_use]
pub fn is_edit(place: &str) -> bool {
    place.starts_with("step/")
}

impl Note {
    /// The note as it is stored; `at` is when, in milliseconds.
    #[must_use]
    pub fn written(&self, at: u64) -> String {
        let mut text = Serializer::new(String::new());
        text.append_pair("at", &at.to_string());
        let typed = match self {
            Note::Typed(typed) => Some(typed),
            Note::Edit(edit, from) => {
                match edit {
                    Edit::Undo => text.append_pair("do", "undo"),
                    Edit::Redo => text.append_pair("do", "redo"),
                    Edit::Make(step) => text.append_pair("step", &write_step(step)),
                };
                if let Some((place, _)) = from {
                    text.append_pair("place", place);
                }
                from.as_ref().map(|(_, typed)| typed)
            }
        };
        if let Some(typed) = typed {
            text.append_pair("filled", &link::typed(&typed.filled));
            text.append_pair("typed", &link::typed(&typed.typed));
        }
        text.finish()
    }

    /// What is typed in a form; `None` for an edit.
    #[must_use]
    pub fn in_form(self) -> Option<Typed> {
        match self {
            Note::Typed(typed) => Some(typed),
            Note::Edit(..) => None,
        }
    }

    /// Reads a note. `None` for what is none.
    #[must_use]
    pub fn read(text: &str) -> Option<Note> {
        let part = |name: &str| {
            let mut parts = form_urlencoded::parse(text.as_bytes());
            parts.find(|(part, _)| part == name).map(|(_, text)| text.into_owned())
        };
        let typed = part("filled").zip(part("typed")).map(|(filled, typed)| Typed {
            filled: link::texts(&filled),
            typed: link::texts(&typed),
        });
        let edit = match part("do").as_deref() {
            Some("undo") => Some(Edit::Undo),
            Some("redo") => Some(Edit::Redo),
            _ => part("step").and_then(|step| read_step(&step)).map(Edit::Make),
        };
        match edit {
            Some(edit) => Some(Note::Edit(edit, part("place").zip(typed))),
            None => typed.map(Note::Typed),
        }
    }
}

/// When a note was written, in milliseconds.
#[must_use]
pub fn written_at(text: &str) -> u64 {
    let at = text.strip_prefix("at=").and_then(|rest| rest.split('&').next());
    at.and_then(|at| at.parse().ok()).unwrap_or(0)
}

/// What a form writes into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// An item.
    Item(ItemId),
    /// One piece of a part, counted from 0.
    Piece(ItemId, usize),
    /// The title of the job.
    Title,
    /// The title of a kept reckoning.
    KeptTitle(ItemId),
}

impl Place {
    /// Reads a place. `None` for a form of something new, which is put in by hand alone.
    #[must_use]
    pub fn read(place: &str) -> Option<Place> {
        let place = bare(place);
        let id = |text: &str| text.parse().ok().map(ItemId);
        match place.split_once('/') {
            None if place == "title" => Some(Place::Title),
            Some(("item", rest)) => id(rest).map(Place::Item),
            Some(("kept-title", rest)) => id(rest).map(Place::KeptTitle),
            Some(("piece", rest)) => {
                let (part, index) = rest.split_once('/')?;
                let index = index.parse().ok().filter(|index| *index < MOST_PIECES as usize)?;
                Some(Place::Piece(id(part)?, index))
            }
            _ => None,
        }
    }

    /// Where in the job's pages its form is.
    #[must_use]
    pub fn address(self) -> String {
        match self {
            Place::Item(id) | Place::KeptTitle(id) => format!("item/{}", id.0),
            Place::Piece(id, index) => format!("piece/{}/{index}", id.0),
            Place::Title => String::new(),
        }
    }

    /// What its form is about, by name.
    #[must_use]
    pub fn name(self, job: &Job) -> String {
        let name = |id| job.item(id).map_or_else(String::new, |item| item.name().to_owned());
        match self {
            Place::Item(id) | Place::KeptTitle(id) => name(id),
            Place::Piece(id, index) => format!("{}, piece {}", name(id), index.saturating_add(1)),
            Place::Title => "the job".to_owned(),
        }
    }

    /// What its form asks; nothing for a single title.
    fn asks(self, job: &Job) -> Option<&'static Calculator> {
        match self {
            Place::Piece(..) => Some(&PIECE),
            Place::Item(id) => match job.item(id)? {
                Item::Kept(kept) => calculators::find(&kept.slug),
                Item::Match(_) => Some(&MATCH),
                item => Form::of(item).map(Form::asks),
            },
            Place::Title | Place::KeptTitle(_) => None,
        }
    }

    /// What a field of its form is called.
    #[must_use]
    pub fn label(self, job: &Job, field: &str) -> &'static str {
        let asks = self.asks(job);
        let mut fields = asks.iter().flat_map(|asks| asks.fields);
        fields.find(|it| it.id == field).map_or("Name", |it| it.label)
    }

    /// The texts that stand in the job; `None` where there is nothing any more.
    #[must_use]
    pub fn standing(self, job: &Job) -> Option<Entries> {
        let title = |title: &str| Entries::from_pairs([(TITLE, title)]);
        let mut entries = match self {
            Place::Title => title(&job.title),
            Place::KeptTitle(id) => match job.item(id)? {
                Item::Kept(kept) => title(&kept.title),
                _ => return None,
            },
            Place::Piece(id, index) => match job.item(id)? {
                Item::Part(part) => entries_of_piece(part, index),
                _ => return None,
            },
            Place::Item(id) => match job.item(id)? {
                Item::Kept(kept) => kept.as_entries(job.unit),
                Item::Match(group) => entries_of_match(group),
                item => entries_of(item),
            },
        };
        entries.set_unit(Some(job.unit));
        Some(entries)
    }
}

/// Why a field is not in the job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Why {
    /// It cannot be read.
    Unreadable,
    /// Somebody else wrote this there.
    Theirs(String),
    /// What it is about is not in the job any more.
    Gone,
}

/// A field that stays as it was typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Left {
    /// Its id.
    pub field: String,
    /// What was typed.
    pub text: String,
    /// Why it stays.
    pub why: Why,
}

/// What becomes of what was typed.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Folded {
    /// The step that puts it into the job, if there is something to put.
    pub step: Option<Step>,
    /// The fields that are in the job with that step, or were before.
    pub done: Vec<String>,
    /// What stays as it was typed.
    pub left: Vec<Left>,
}

/// Turns what was typed in a form into a step of the job as it stands. A field that is being
/// written still is `held` back.
#[must_use]
pub fn fold(
    job: &Job,
    reckoned: &Reckoned,
    bench: &Bench,
    place: Place,
    texts: &Typed,
    held: Option<&str>,
) -> Folded {
    let mut folded = Folded::default();
    let text = |field: &str| texts.typed.text(field).unwrap_or_default().to_owned();
    let left = |field: &str, why: Why| Left { field: field.to_owned(), text: text(field), why };
    let changed = texts.changed();
    // Being measured, a piece is cut, unless it is said with its measure that it is not: both go in together.
    let is_measuring = held.is_some_and(|held| is_of_tape(held) && changed.contains(&held));
    if is_measuring && matches!(place, Place::Piece(..)) {
        return folded;
    }
    let changed = changed.into_iter().filter(|field| Some(*field) != held);
    let Some(now) = place.standing(job) else {
        let asked = changed.filter(|field| *field != ids::SAID);
        folded.left = asked.map(|field| left(field, Why::Gone)).collect();
        return folded;
    };
    let mut mine = Vec::new();
    for field in changed {
        if now.text(field) == texts.typed.text(field) {
            folded.done.push(field.to_owned());
        } else if now.text(field) == texts.filled.text(field) {
            mine.push(field);
        } else {
            let theirs = now.text(field).unwrap_or_default().to_owned();
            folded.left.push(left(field, Why::Theirs(theirs)));
        }
    }
    if mine.is_empty() {
        return folded;
    }
    let refused = unreadable(job, reckoned, bench, place, &now, &mine, &texts.typed);
    for field in mine.iter().filter(|field| refused.contains(field)) {
        folded.left.push(left(field, Why::Unreadable));
    }
    mine.retain(|field| !refused.contains(field));
    let new = with_fields(&now, &mine, &texts.typed);
    folded.step = step(job, reckoned, bench, place, &new);
    folded.done.extend(mine.into_iter().map(str::to_owned));
    folded
}

/// Which of the fields that were typed cannot go into the job.
fn unreadable<'a>(
    job: &Job,
    reckoned: &Reckoned,
    bench: &Bench,
    place: Place,
    now: &Entries,
    mine: &[&'a str],
    typed: &Entries,
) -> Vec<&'a str> {
    let title_is_wrong = |field: &str| check_title(typed.text(field).unwrap_or_default()).is_err();
    let sheet = |entries: &Entries| -> Option<Sheet> {
        match place {
            Place::Title | Place::KeptTitle(_) => None,
            Place::Piece(..) => Some(PIECE.sheet(entries, bench, reckoned)),
            Place::Item(id) => match job.item(id)? {
                // It keeps its texts as they are typed, whatever they come to.
                Item::Kept(_) => None,
                Item::Match(_) => Some(read_match(reckoned, bench, entries)),
                item => {
                    let form = Form::of(item)?;
                    let with = step(job, reckoned, bench, place, entries).and_then(|step| {
                        let mut trial = job.clone();
                        trial.make(&step).ok()?;
                        Some(reckoned.after(&trial, bench))
                    });
                    Some(read(
                        job,
                        with.as_ref().unwrap_or(reckoned),
                        bench,
                        form,
                        Some(id),
                        entries,
                    ))
                }
            },
        }
    };
    let Some(with) = sheet(&with_fields(now, mine, typed)) else {
        let is_title = matches!(place, Place::Title | Place::KeptTitle(_));
        return mine.iter().copied().filter(|field| is_title && title_is_wrong(field)).collect();
    };
    let refuses = |sheet: &Sheet, field: &str| sheet.refusals.iter().any(|it| it.field == field);
    // A choice may ask for a field that is not written yet: they go in together, or not at all.
    let before = sheet(now);
    let is_half = with.refusals.iter().any(|it| {
        !mine.contains(&it.field) && !before.as_ref().is_some_and(|now| refuses(now, it.field))
    });
    mine.iter().copied().filter(|field| is_half || refuses(&with, field)).collect()
}

/// The step that makes the texts of a place these; `None` where they are so already.
fn step(
    job: &Job,
    reckoned: &Reckoned,
    bench: &Bench,
    place: Place,
    entries: &Entries,
) -> Option<Step> {
    let title = || check_title(entries.text(TITLE).unwrap_or_default()).ok();
    let (id, new, label) = match place {
        Place::Title => {
            let new = title()?;
            let is_new = new != job.title;
            let title = Some((job.title.clone(), new));
            let step = Step { label: "rename the job".to_owned(), changes: Vec::new(), title };
            return is_new.then_some(step);
        }
        Place::KeptTitle(id) => match job.item(id)? {
            Item::Kept(kept) => {
                let new = Item::Kept(Kept { title: title()?, ..kept.clone() });
                (id, new, format!("rename {}", kept.title))
            }
            _ => return None,
        },
        Place::Piece(id, index) => match job.item(id)? {
            Item::Part(part) => {
                let wanted = reckoned.part(id).map(PartSizes::all_wanted).unwrap_or_default();
                let new = Item::Part(part_of_piece(entries, part, index, wanted));
                (id, new, format!("change {}", part.name))
            }
            _ => return None,
        },
        Place::Item(id) => {
            let old = job.item(id)?;
            let new = match old {
                Item::Kept(kept) => {
                    let pairs = entries.pairs().map(|(id, text)| (id.to_owned(), text.to_owned()));
                    Item::Kept(Kept { entries: pairs.collect(), ..kept.clone() })
                }
                Item::Match(group) => {
                    let ask = Ask::new(MATCH.fields, entries, bench, reckoned);
                    Item::Match(match_of(&ask, group.measures.clone(), group.left))
                }
                item => {
                    let form = Form::of(item)?;
                    let mut ask = Ask::new(form.asks().fields, entries, bench, reckoned);
                    item_of(form, &mut ask, Some(item), 0)
                }
            };
            let label = format!("change {}", new.name());
            (id, new, label)
        }
    };
    let new = new.with_visible_names(id);
    if job.item(id) == Some(&new) {
        return None;
    }
    let mut changes = renamed(job, reckoned, id, &new);
    changes.push(job.replacing(id, new));
    Some(Step::new(label, changes))
}

/// A rename reaches every formula that uses the name.
fn renamed(job: &Job, reckoned: &Reckoned, id: ItemId, new: &Item) -> Vec<Change> {
    match (job.item(id), new) {
        (Some(Item::Measure(old)), Item::Measure(measure)) if old.name != measure.name => {
            let all = job.renaming(id, &measure.name, reckoned);
            all.into_iter().filter(|change| change.id != id).collect()
        }
        _ => Vec::new(),
    }
}

#[cfg(test)]
mod tests;
