//! [`use_kept_form`]: a form whose texts are written down in the event that types them, and the
//! item it is about, kept alike in both directions. [`make_of_form`]: what is put in by hand.

use std::cell::RefCell;
use std::rc::Rc;

use reckoner_core::calculators::Calculator;
use reckoner_core::job::{Job, Reckoned, Step};
use reckoner_core::sheet::{Bench, Entries};
use yew::prelude::*;

use super::forms::along;
use super::hook::OnPage;
use super::notes::{Place, Typed};
use crate::form::{Action, Form};
use crate::platform::page;
use crate::settings::with_fields;

/// What a form needs of its job.
#[derive(Clone)]
pub(crate) struct Keeping {
    pub(crate) on_page: OnPage,
    pub(crate) reckoned: Rc<Reckoned>,
    pub(crate) bench: Bench,
}

/// A form in a job. `standing` are the texts that it starts from: those of an item, which go back
/// into it when a field is left or the form is, or those of a fresh form of something new, which
/// stays a draft until it is put in or thrown away.
///
/// What was typed here before, and is not in the job, stands in it again.
#[hook]
pub(crate) fn use_kept_form(
    keeping: Keeping,
    place: &str,
    calculator: &'static Calculator,
    standing: Entries,
) -> UseReducerHandle<Form> {
    let place: Rc<str> = place.into();
    let on_page = keeping.on_page.clone();
    // What the form was filled with.
    let filled: Rc<RefCell<Entries>> = {
        let (on_page, place, standing) = (on_page.clone(), place.clone(), standing.clone());
        use_mut_ref(move || {
            on_page.take_left(&place);
            on_page.form(&place).map_or(standing, |typed| typed.filled)
        })
    };
    let form = {
        let (on_page, place, filled) = (on_page.clone(), place.clone(), filled.clone());
        let standing = standing.clone();
        use_reducer(move || {
            let texts = match on_page.form(&place) {
                Some(it) => with_fields(&standing, &it.changed(), &it.typed),
                None => standing,
            };
            let form = Form::new(calculator, texts, None).bringing_along(along(calculator));
            form.kept_by(move |_, typed: &Entries| {
                let filled = filled.borrow().clone();
                on_page.typed(&place, Typed { filled, typed: typed.clone() });
            })
        })
    };
    let now: Rc<RefCell<Keeping>> = {
        let keeping = keeping.clone();
        use_mut_ref(move || keeping)
    };
    *now.borrow_mut() = keeping;
    // An effect may run long after the drawing that it belongs to, and keys be typed in between: it goes by the form and
    // the job as they are then.
    let fold = {
        let (form, filled, place) = (form.clone(), filled.clone(), place.clone());
        move |holds: bool| {
            let typed = Typed { filled: filled.borrow().clone(), typed: form.entries().clone() };
            if !typed.is_clean() {
                let held = form.editing().filter(|_| holds).map(|slot| slot.field);
                let Keeping { on_page, reckoned, bench } = now.borrow().clone();
                let after = on_page.fold(&place, &typed, &reckoned, &bench, held);
                *filled.borrow_mut() = after.filled;
            }
        }
    };
    let is_new = Place::read(&place).is_none();
    {
        // A field that is left goes into the job.
        let fold = fold.clone();
        let editing = form.editing().map(|slot| slot.field);
        use_effect_with((editing, form.entries().clone()), move |_| {
            if !is_new {
                fold(true);
            }
        });
    }
    {
        // What undo or another page made of the item stands in the fields that nobody typed in; and what a page had typed that is
        // no more, also in a form of something new.
        let (form, filled, on_page) = (form.clone(), filled.clone(), on_page.clone());
        let place = place.clone();
        let editing = form.editing().map(|slot| slot.field);
        let revision = on_page.revision();
        let last = use_mut_ref(|| revision);
        use_effect_with((standing, editing, revision), move |(fresh, _, revision)| {
            let is_refilled = last.replace(*revision) != *revision;
            let noted = on_page.form(&place).filter(|_| is_refilled);
            let fresh = noted.as_ref().filter(|_| is_new).map(|_| fresh.clone());
            let Some(standing) = on_page.standing(&place).or(fresh) else { return };
            let typed = noted.unwrap_or_else(|| Typed {
                filled: filled.borrow().clone(),
                typed: if is_refilled { filled.borrow().clone() } else { form.entries().clone() },
            });
            let typed = typed.in_sight_of(&standing);
            let editing = form.editing().map(|slot| slot.field);
            let own: Vec<&str> = typed.changed().into_iter().chain(editing).collect();
            let texts = with_fields(&standing, &own, &typed.typed);
            *filled.borrow_mut() = with_fields(&standing, &own, &typed.filled);
            if texts != *form.entries() {
                form.dispatch(Action::Replace(texts));
            }
        });
    }
    use_effect_with((), move |()| {
        on_page.opened(&place, true);
        let leaving = {
            let fold = fold.clone();
            page::on_leave(move || {
                if !is_new {
                    fold(false);
                }
            })
        };
        move || {
            drop(leaving);
            if !is_new {
                fold(false);
            }
            on_page.opened(&place, false);
        }
    });
    form
}

/// Makes a step of what stands in a form, which ends its note. It is worked out from the texts as they are at this moment: the
/// last key may not be drawn yet. Says whether it is made.
pub(crate) fn make_of_form(
    on_page: &OnPage,
    place: &str,
    form: &UseReducerHandle<Form>,
    step: impl FnOnce(&Job, &Entries) -> Option<Step>,
) -> bool {
    on_page.make_and_end(place, |job| step(job, form.entries()))
}
