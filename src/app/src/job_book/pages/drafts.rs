//! What was begun and is not in the job: forms of something new, and what was typed in a form and
//! could not go in.

use std::rc::Rc;

use reckoner_core::calculators::Calculator;
use reckoner_core::job::{Item, Job, Step};
use reckoner_core::order;
use reckoner_core::sheet::{Entries, Field, Kind, Sheet};
use yew::prelude::*;

use super::attention::{self, attention};
use super::open::Open;
use crate::components::icon::{Icon, icon};
use crate::form::{Action, Form as Texts};
use crate::job_book::forms::Form as Asks;
use crate::job_book::kept_form::make_of_form;
use crate::job_book::notes::{Left, Place, Typed, Why, bare, fold};
use crate::platform::address;
use crate::settings::with_fields;

/// The sections that tell of what was typed and is not in the job where they tell of what wants looking at.
const TELL_FIRST: [&str; 3] = ["", "sizes", "parts"];

/// The places of what was begun with a form, with what is typed in them.
fn of_form(open: &Open, form: &str) -> Vec<(String, Typed)> {
    let place = format!("new/{form}");
    let all = open.on_page.forms().into_iter();
    all.filter(|(at, _, _)| bare(at) == place).map(|(at, typed, _)| (at, typed)).collect()
}

/// The place of a form for something new, beside what was begun before.
pub(super) fn fresh_place(open: &Open, form: &str) -> String {
    place_beside(open, form, None)
}

/// The same, and not the place that a form stands at now.
fn place_beside(open: &Open, form: &str, here: Option<&str>) -> String {
    let place = format!("new/{form}");
    let begun = of_form(open, form);
    let is_taken = |place: &str| here == Some(place) || begun.iter().any(|(at, _)| at == place);
    let further = (2_u32..).map(|n| format!("{place}~{n}"));
    core::iter::once(place.clone()).chain(further).find(|it| !is_taken(it)).unwrap_or(place)
}

/// What was begun with a form and not put in, each the way back to it.
pub(super) fn begun(open: &Open, form: &str) -> Html {
    let one = |(place, typed): (String, Typed)| {
        let named = ["name", "section"].into_iter().filter_map(|id| typed.typed.text(id));
        let name = named.map(str::trim).find(|name| !name.is_empty()).unwrap_or("no name yet");
        html! {
            <a class="tool begun" href={open.at(&place)} data-testid={format!("begun-{form}")}>{ format!("Begun: {name}") }</a>
        }
    };
    html! { { for of_form(open, form).into_iter().map(one) } }
}

/// What a form cannot do without yet, by the names of its fields.
pub(super) fn needs(sheet: &Sheet, asks: &Calculator) -> Vec<&'static str> {
    let is_refused = |field: &&Field| sheet.refusals.iter().any(|it| it.field == field.id);
    asks.fields.iter().filter(is_refused).map(|field| field.label).collect()
}

/// How the form of something new ends.
pub(super) struct Ends<'a> {
    /// What it still needs, by name; with nothing it can go in.
    pub(super) needs: Vec<&'static str>,
    /// The section that it leads back to.
    pub(super) back: &'a str,
    /// The form to go on with, where one more of it is the likely next.
    pub(super) again: Option<&'a str>,
}

/// The end of the form of something new: it is put in the job, or thrown away. It stays in reach all the way down. `item` is
/// what the texts come to; nothing while it needs something.
pub(super) fn ends(
    open: &Open,
    form: &UseReducerHandle<Texts>,
    place: &str,
    Ends { needs, back, again }: Ends,
    item: impl Fn(&Job, &Entries) -> Option<Item> + 'static,
) -> Html {
    let item = Rc::new(item);
    let is_sound = needs.is_empty();
    let put = |to: String| {
        let (on_page, place, item, form) =
            (open.on_page.clone(), place.to_owned(), item.clone(), form.clone());
        Callback::from(move |_: MouseEvent| {
            address::go_by(|| {
                let is_in = make_of_form(&on_page, &place, &form, |job, entries| {
                    let item = item(job, entries)?;
                    let words = format!("add {}", item.name());
                    Some(Step::new(words, vec![job.adding(0, item)]))
                });
                if !is_in {
                    form.dispatch(Action::Check);
                }
                is_in.then(|| to.clone())
            });
        })
    };
    let another = again.map(|form| put(open.at(&place_beside(open, form, Some(place)))));
    let put = put(open.at(back));
    let unit = open.book.job.unit;
    let throw = {
        let form = form.dispatcher();
        Callback::from(move |_: MouseEvent| form.dispatch(Action::StartFresh(unit)))
    };
    let back_again = {
        let form = form.dispatcher();
        Callback::from(move |_: MouseEvent| form.dispatch(Action::Undo))
    };
    let is_fresh = *form.entries() == Texts::fresh(unit);
    html! {
        <div class="ends">
            <p class="ends__needs" role="status">
                if !is_sound { { format!("Still needs: {}", needs.join(", ")) } }
            </p>
            <div class="ends__ways">
                if !is_fresh {
                    <button type="button" class="tool" data-testid="throw-away" aria-label="Throw it away" onclick={throw}>
                        { icon(Icon::Clear) }
                    </button>
                } else if form.can_undo() {
                    <button type="button" class="tool" data-testid="bring-back" onclick={back_again}>{ "Bring it back" }</button>
                }
                if let Some(another) = another {
                    <button type="button" class="tool" data-testid="save-and-next" onclick={another}>{ "And one more" }</button>
                }
                <button type="button" class="tool tool--main tool--always" data-testid="save-item" data-ready={is_sound.then_some("yes")} onclick={put}>
                    { "Put it in" }
                </button>
            </div>
        </div>
    }
}

/// What is typed in the forms of one place and somebody else wrote in since, each text of a field once: the form that is
/// open before what was left behind.
fn theirs<'a>(open: &'a Open, at: &str) -> Vec<(Form<'a>, Left)> {
    let mut forms = open.on_page.forms();
    forms.retain(|(place, _, _)| bare(place) == at);
    order::sort_by_key(&mut forms, |(_, _, is_open)| !is_open);
    let mut all: Vec<(Form<'a>, Left)> = Vec::new();
    for (at, typed, _) in forms {
        let Some(place) = Place::read(&at) else { continue };
        for left in folded(open, place, &typed) {
            let is_it = |told: &Left| told.field == left.field && told.text == left.text;
            let is_told = all.iter().any(|(_, told)| is_it(told));
            if !is_told && matches!(left.why, Why::Theirs(_)) {
                let form = Form { open, at: at.clone(), place, typed: typed.clone() };
                all.push((form, left));
            }
        }
    }
    all
}

fn folded(open: &Open, place: Place, typed: &Typed) -> Vec<Left> {
    fold(&open.book.job, &open.reckoned, &open.settings.bench, place, typed, None).left
}

/// The fields of a place that the job has otherwise by now than they are typed, with what it has.
pub(super) fn in_the_job(open: &Open, at: &str) -> Vec<(String, String)> {
    let one = |(_, left): (Form<'_>, Left)| match left.why {
        Why::Theirs(now) => Some((left.field, now)),
        _ => None,
    };
    theirs(open, at).into_iter().filter_map(one).collect()
}

/// Both are offered, under the headline of the place.
pub(super) fn offers(open: &Open, at: &str) -> Html {
    let all = theirs(open, at);
    html! {
        if !all.is_empty() {
            <section class="attention not-in" aria-label="Written in two windows" data-testid="offers">
                { for all.iter().map(|(form, left)| form.line(left)) }
            </section>
        }
    }
}

/// What another window had typed into the one form of a place, and does not stand in it: each text by the name of its
/// field, to be used or thrown away.
pub(super) fn beside(
    open: &Open,
    place: &str,
    asks: &'static Calculator,
    form: &UseReducerHandle<Texts>,
) -> Html {
    let all = open.on_page.forms().into_iter();
    let beside = all.filter(|(at, _, _)| at != place && bare(at) == place);
    let lines = beside.flat_map(|(at, typed, _)| {
        let changed = asks.fields.iter().filter(|field| typed.changed().contains(&field.id));
        let one = |field: &'static Field| {
            let text = typed.typed.text(field.id).unwrap_or_default().to_owned();
            let rest = Typed {
                filled: typed.filled.clone(),
                typed: with_fields(&typed.typed, &[field.id], &typed.filled),
            };
            let away = {
                let (keeping, at) = (open.keeping(), at.clone());
                Callback::from(move |_: MouseEvent| {
                    keeping.on_page.settle(&at, &rest, &keeping.reckoned, &keeping.bench);
                })
            };
            let used = {
                let (form, away, text) = (form.dispatcher(), away.clone(), text.clone());
                Callback::from(move |event: MouseEvent| {
                    form.dispatch(Action::Set(vec![(field.id, text.clone())]));
                    away.emit(event);
                })
            };
            let how = if matches!(field.kind, Kind::YesNo) { "chosen" } else { "typed" };
            let words = format!("{}: “{text}” was {how} in another window.", field.label);
            html! {
                <div data-testid={format!("beside-{}", field.id)}>
                    <p>{ words }</p>
                    <div class="adds">
                        <button type="button" class="tool" data-testid={format!("use-beside-{}", field.id)} onclick={used}>{ "Use it" }</button>
                        <button type="button" class="tool" data-testid={format!("throw-beside-{}", field.id)} onclick={away}>{ "Throw it away" }</button>
                    </div>
                </div>
            }
        };
        changed.map(one).collect::<Vec<_>>()
    });
    let lines: Vec<Html> = lines.collect();
    html! {
        if !lines.is_empty() {
            <section class="attention not-in" aria-label="Typed in another window">{ for lines }</section>
        }
    }
}

/// What was typed and is not in the job: in the forms that were left, and in the form that is open where its page does
/// not tell it itself. `here` is the place of the page.
pub(super) fn left(open: &Open, here: &str) -> Html {
    let is_told_here = match Place::read(here) {
        Some(Place::Item(id)) => open.book.job.item(id).and_then(Asks::of).is_some(),
        Some(Place::Piece(..)) => true,
        _ => false,
    };
    let is_told_first =
        |form: &Form<'_>| TELL_FIRST.contains(&here) && open.known.contains(&form.at);
    let mut all = all_left(open, here, is_told_here);
    all.retain(|(form, _)| !is_told_first(form));
    not_in(&all)
}

fn not_in(all: &[(Form<'_>, Left)]) -> Html {
    html! {
        if !all.is_empty() {
            <section class="attention not-in" aria-label="Not in the job" data-testid="not-in">
                { for all.iter().map(|(form, left)| form.line(left)) }
            </section>
        }
    }
}

/// The fields that stay as they were typed, each with its form, where the page at `here` does not tell of them itself.
fn all_left<'a>(open: &'a Open, here: &str, is_told_here: bool) -> Vec<(Form<'a>, Left)> {
    let mut all = Vec::new();
    for (at, typed, is_open) in open.on_page.forms() {
        let Some(place) = Place::read(&at) else { continue };
        let is_here = is_told_here && bare(&at) == here;
        for left in folded(open, place, &typed) {
            let is_told = match left.why {
                // An open form says itself what cannot be read in it.
                Why::Unreadable => is_open,
                Why::Theirs(_) => is_here,
                Why::Gone => false,
            };
            if !is_told {
                let form = Form { open, at: at.clone(), place, typed: typed.clone() };
                all.push((form, left));
            }
        }
    }
    all
}

/// What wants looking at on a section of the job: what was typed and is not in it first, since it was typed last. What came by
/// itself since the last edit or page is told at the foot: above, it would move what is about to be tapped.
pub(super) fn to_look_at(open: &Open) -> Html {
    let mut all = all_left(open, "", false);
    all.retain(|(form, _)| open.known.contains(&form.at));
    html! { <>{ not_in(&all) }{ attention(open) }</> }
}

/// How many things want looking at.
pub(super) fn count(open: &Open) -> usize {
    all_left(open, "", false).len().saturating_add(attention::count(open))
}

/// A form with something in it that is not in the job.
struct Form<'a> {
    open: &'a Open,
    at: String,
    place: Place,
    typed: Typed,
}

impl Form<'_> {
    /// A field that could not go in: why, and the ways out.
    fn line(&self, left: &Left) -> Html {
        let job = &self.open.book.job;
        let name = self.place.name(job);
        let label = self.place.label(job, &left.field).to_lowercase();
        let text = &left.text;
        let throw = || self.way("throw", "Throw it away", self.without(&left.field), &left.field);
        let (kind, words, ways) = match &left.why {
            Why::Unreadable => {
                let at = self.open.at(&self.place.address());
                let look = html! { <a class="tool" href={at} data-testid={format!("look-{}", left.field)}>{ "Look at it" }</a> };
                let words = format!("{name}, {label}: “{text}” cannot go in as it is.");
                ("unread", words, html! { <>{ look }{ throw() }</> })
            }
            Why::Gone => {
                let words = format!(
                    "You typed “{text}” in something that is not in the job any more. It may come back with Undo."
                );
                ("gone", words, throw())
            }
            Why::Theirs(now) => {
                let words = format!("You typed “{text}” for {name}, {label}; it is now “{now}”.");
                let field = &left.field;
                let mine = self.way("use-mine", "Use mine", self.on_theirs(field, now), field);
                let theirs = self.way("keep-theirs", "Keep theirs", self.without(field), field);
                ("offer", words, html! { <>{ mine }{ theirs }</> })
            }
        };
        html! {
            <div data-testid={format!("{kind}-{}", left.field)}>
                <p>{ words }</p>
                <div class="adds">{ ways }</div>
            </div>
        }
    }

    /// What is typed, without a field.
    fn without(&self, field: &str) -> Typed {
        let Typed { filled, typed } = &self.typed;
        Typed { filled: filled.clone(), typed: with_fields(typed, &[field], filled) }
    }

    /// What is typed, with a field as typed in sight of what stands there.
    fn on_theirs(&self, field: &str, now: &str) -> Typed {
        let theirs = Entries::from_pairs([(field, now)]);
        let Typed { filled, typed } = &self.typed;
        Typed { filled: with_fields(filled, &[field], &theirs), typed: typed.clone() }
    }

    fn way(&self, id: &str, words: &'static str, after: Typed, field: &str) -> Html {
        let (keeping, at) = (self.open.keeping(), self.at.clone());
        let onclick = Callback::from(move |_: MouseEvent| {
            keeping.on_page.settle(&at, &after, &keeping.reckoned, &keeping.bench);
        });
        html! {
            <button type="button" class="tool" data-testid={format!("{id}-{field}")} {onclick}>{ words }</button>
        }
    }
}
