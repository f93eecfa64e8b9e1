//! [`AtHand`]: a form brought to hand, and what the keys of its keypad and its step buttons do.

use std::cell::RefCell;
use std::rc::Rc;

use reckoner_core::calculators::listed;
use reckoner_core::measure::text::{Names, Quantity};
use reckoner_core::sheet::{
    Field, Kind, Sheet, is_list, is_only_text, list_rows, places, with_place,
};
use yew::prelude::*;

use super::{Action, Entrance, Form, Slot, Way, neighbour, shows};
use crate::components::choice;
use crate::components::drawn::{Drawn, Seen};
use crate::components::field::{self, FieldEvents};
use crate::components::icon::{Icon, icon};
use crate::components::repeats::Repeats;
use crate::keypad::{KeypadEvent, press};
use crate::platform::back::use_back;
use crate::platform::dom;
use crate::settings::Settings;
use crate::strip;

/// Longest example that is named on the button which confirms it, in characters.
const MOST_CONFIRMED: usize = 9;

impl Reducible for Form {
    type Action = Action;

    fn reduce(self: Rc<Self>, action: Action) -> Rc<Self> {
        Rc::new(self.kept_after(action))
    }
}

/// The names of a job, where the form is in one.
#[derive(Clone, Default)]
pub(crate) struct KnownNames {
    /// Those that may be used in a size, ready above the keypad.
    pub(crate) list: Rc<Vec<String>>,
    /// The job, which knows what they come to. What is not of the job book knows no more of it.
    pub(crate) job: Option<Rc<dyn Names>>,
}

impl Names for KnownNames {
    fn longest_match(&self, text: &str) -> usize {
        self.job.as_ref().map_or(0, |job| job.longest_match(text))
    }

    fn value(&self, name: &str) -> Option<Quantity> {
        self.job.as_ref()?.value(name)
    }
}

/// Who says what in a form is an example of ours.
#[derive(Clone, Default)]
pub(crate) enum Ours {
    /// Its sheet: what was read without a text of its own.
    #[default]
    Read,
    /// Nothing in it is: what starts in its fields is no size of anybody's.
    Nothing,
    /// The page: the text of these fields, and what takes it as the person's own.
    Of(&'static [&'static str], Callback<()>),
}

/// What a page has to say about the fields of its form.
#[derive(Clone, Default)]
pub(crate) struct Manner {
    /// Fields that are folded away: not drawn, and not walked to.
    pub(crate) folded: Vec<&'static str>,
    /// Who says what is ours.
    pub(crate) ours: Ours,
    /// On the way through the examples of a job: the fields that Next goes to here, and where it leads from the last
    /// of them, with nothing from the last example. What the tape says is no example.
    pub(crate) walk: Option<(&'static [&'static str], Option<Callback<()>>)>,
    /// The field that can be chosen from a list too, and the list.
    pub(crate) list: Option<(&'static str, Html)>,
}

impl Manner {
    /// Of a form in which nothing is an example of ours.
    pub(crate) fn of_no_examples() -> Manner {
        Manner { ours: Ours::Nothing, ..Manner::default() }
    }
}

/// A form at hand: its state, how it was understood, and the user's settings.
#[derive(Clone)]
pub(crate) struct AtHand {
    pub(crate) form: UseReducerHandle<Form>,
    pub(crate) sheet: Rc<Sheet>,
    pub(crate) settings: Rc<Settings>,
    /// Whether the system's keyboard is wanted in place of the keypad.
    pub(crate) system_keyboard: UseStateHandle<bool>,
    pub(crate) names: KnownNames,
    /// Whether the keys leave room on the screen for the answer and the field alone: what nobody sees is not made.
    pub(crate) is_typing: bool,
    pub(crate) manner: Manner,
    /// The list that is shown as its text, and the row of which it is asked whether it goes.
    pub(super) as_text: UseStateHandle<Option<&'static str>>,
    pub(super) asking: UseStateHandle<Option<Slot>>,
    /// The places to type and choose in, in the order asked.
    pub(super) slots: Rc<Vec<Slot>>,
    /// What the keypad calls: always the same, so that it is not drawn anew at each key.
    pub(super) keys: Callback<KeypadEvent>,
    /// What a size on the drawing calls: always the same, too.
    open: Callback<&'static str>,
    /// A tap elsewhere is over before the form is left, and with it the keypad.
    pub(super) presses: Rc<dom::Presses>,
}

impl AtHand {
    /// Whether the keypad is out.
    pub(crate) fn is_keying(&self) -> bool {
        let field = self.form.editing().and_then(|slot| self.field(slot.field));
        let is_words = field.is_some_and(|field| matches!(field.kind, Kind::Words(_)));
        field.is_some() && !is_words && !*self.system_keyboard
    }

    /// The fields that are asked, but for the question itself, which stands by itself.
    pub(super) fn fields(&self) -> impl Iterator<Item = &'static Field> + '_ {
        let question = self.form.calculator().questions().map(|(field, _)| field.id);
        let asked = self.form.calculator().asked(self.form.entries(), &self.settings.bench);
        let folded = &self.manner.folded;
        asked.filter(move |field| Some(field.id) != question && !folded.contains(&field.id))
    }

    pub(super) fn field(&self, id: &str) -> Option<&'static Field> {
        self.form.calculator().fields.iter().find(|field| field.id == id)
    }

    /// Whether a list is shown as its text: where that is wanted, and where it has no rows.
    pub(super) fn is_as_text(&self, field: &Field) -> bool {
        *self.as_text == Some(field.id) || is_only_text(&self.text(field), field.kind)
    }

    /// The text of a field, typed or not.
    pub(crate) fn text(&self, field: &Field) -> String {
        self.form.text(field, &self.settings.bench)
    }

    /// What is asked: the calculator, and its question where it has several.
    pub(crate) fn question(&self) -> String {
        let calculator = self.form.calculator();
        let asked = calculator.questions().map(|(field, _)| format!("/{}", self.text(field)));
        format!("{}{}", calculator.slug, asked.unwrap_or_default())
    }

    /// A callback that does something to the form.
    pub(crate) fn doing(&self, action: Action) -> Callback<MouseEvent> {
        let form = self.form.dispatcher();
        Callback::from(move |_| form.dispatch(action.clone()))
    }

    /// Whether what stands in a place is an example of ours.
    pub(crate) fn is_ours(&self, slot: Slot) -> bool {
        match &self.manner.ours {
            Ours::Read => {}
            Ours::Nothing => return false,
            Ours::Of(fields, _) => return fields.contains(&slot.field),
        }
        let is_written = |line: usize| {
            let field = self.field(slot.field);
            let text = field.map(|field| self.text(field)).unwrap_or_default();
            if field.is_some_and(|field| is_list(field.kind)) {
                return true;
            }
            strip::lines(&text).nth(line).is_some_and(|line| !line.trim().is_empty())
        };
        self.sheet.assumed.has(slot.field) && slot.line.is_none_or(is_written)
    }

    /// Goes through the sizes that are ours, from the first.
    pub(crate) fn go_through(&self) -> Callback<MouseEvent> {
        let at_hand = self.clone();
        Callback::from(move |_| at_hand.go_through_ours())
    }

    /// The same, at once.
    pub(crate) fn go_through_ours(&self) {
        self.form.dispatch(Action::GoThrough);
        self.go_to_ours();
    }

    /// Goes to the first place that is ours.
    pub(crate) fn go_to_ours(&self) {
        if let Some(slot) = self.slots.iter().find(|slot| self.is_ours(**slot)) {
            self.go_to(*slot);
        }
    }

    /// Takes an example as it stands, in one tap. Whoever goes through them comes to the next.
    pub(crate) fn confirm(&self, slot: Slot) -> Option<Html> {
        let field = self.field(slot.field).filter(|_| self.is_ours(slot))?;
        let at_hand = self.clone();
        let onclick = Callback::from(move |_: MouseEvent| {
            let bench = &at_hand.settings.bench;
            match &at_hand.manner.ours {
                Ours::Of(_, confirm) => confirm.emit(()),
                _ => at_hand.form.dispatch(at_hand.form.confirming(field, bench)),
            }
            if at_hand.form.is_gone_through() {
                at_hand.walk(slot, Way::Next);
            }
        });
        let text = self.text(field);
        let words = match choice::choices(field) {
            None if text.chars().count() <= MOST_CONFIRMED => format!("{text} is right"),
            _ => "This is right".to_owned(),
        };
        Some(html! {
            <button type="button" tabindex="-1" class="field__confirm"
                data-testid={format!("confirm-{}", field.id)} {onclick}>{ words }</button>
        })
    }

    /// The drawing of the answer, whose sizes open their fields.
    pub(crate) fn drawn(&self) -> Html {
        let seen = Seen {
            sheet: self.sheet.clone(),
            fields: self.form.calculator().fields,
            live: self.form.editing().map(|slot| slot.field),
            tape: self.settings.bench.tape,
        };
        html! { <Drawn {seen} is_typing={self.is_typing} on_open={self.open.clone()} /> }
    }

    /// Opens the field of a size: of a list, its first row.
    fn open(&self, field: &'static str) {
        let first = self.slots.iter().find(|slot| slot.field == field);
        self.go_to(first.copied().unwrap_or(Slot::of(field)));
    }

    /// Starts editing at the first field.
    pub(crate) fn begin(&self) -> Callback<MouseEvent> {
        let at_hand = self.clone();
        Callback::from(move |_| {
            if let Some(slot) = at_hand.slots.first() {
                at_hand.go_to(*slot);
            }
        })
    }

    /// What an input in this place tells the form.
    pub(crate) fn events(&self, slot: Slot) -> FieldEvents {
        let (typing, entering) = (self.clone(), self.clone());
        FieldEvents {
            on_type: Callback::from(move |text: String| typing.write(slot, text)),
            on_enter: Callback::from(move |()| entering.enter(slot)),
        }
    }

    /// The focus came into an input. What the first key does is settled here, in the event itself:
    /// the next event may be that key.
    fn enter(&self, slot: Slot) {
        // Back from another window, the caret stands where it stood.
        if self.form.editing() == Some(slot) {
            return;
        }
        self.form.dispatch(Action::Edit(slot));
        let id = element_id(slot);
        // An example that has a text in the job is written over like any other.
        let is_example = matches!(self.manner.ours, Ours::Of(..)) && self.is_ours(slot);
        match self.form.entrance(slot) {
            Entrance::End if !is_example => dom::caret_to_end(&id),
            _ => dom::select_all(&id),
        }
    }

    /// Goes to the place where the user was last, or to the first line of a strip: it is all that is asked there.
    pub(crate) fn resume(&self, last: Option<Slot>) {
        let last = last.filter(|last| self.slots.contains(last));
        let is_strip = |it: &&Slot| {
            it.line.is_some() && self.field(it.field).is_some_and(|field| !is_list(field.kind))
        };
        let first = self.slots.first().filter(is_strip);
        if let Some(slot) = last.or(first.copied()) {
            self.go_to(slot);
        }
    }

    /// Edits another place: the focus goes there at once.
    fn go_to(&self, slot: Slot) {
        let field = self.field(slot.field);
        let is_words = field.is_some_and(|field| matches!(field.kind, Kind::Words(_)));
        let answers = field.filter(|field| !choice::is_list(field)).and_then(choice::choices);
        let id = match (field, answers) {
            (Some(field), Some(answers)) => {
                let text = self.text(field);
                let known = answers.iter().find(|answer| answer.id == text).or(answers.first());
                choice::id(field.id, known.map_or("", |answer| answer.id))
            }
            _ => element_id(slot),
        };
        dom::focus(&id, !is_words && !*self.system_keyboard);
        // An input tells of itself; a choice does not.
        self.form.dispatch(Action::Edit(slot));
    }

    /// Takes a text typed in a place.
    fn write(&self, slot: Slot, text: String) {
        let whole = match (slot.line, self.field(slot.field)) {
            (Some(line), Some(field)) if is_list(field.kind) => {
                with_place(&self.text(field), field.kind, line, text)
            }
            (Some(line), Some(field)) => strip::with_line(&self.text(field), line, &text),
            _ => text,
        };
        self.form.dispatch(Action::Type(slot, whole));
    }

    /// Takes what the keypad tells.
    fn take(&self, event: KeypadEvent, slot: Slot) {
        let id = element_id(slot);
        match event {
            KeypadEvent::Press(key) => {
                if let Some((text, selection)) = dom::selection(&id) {
                    let typed = press(&text, selection, key);
                    dom::write(&id, &typed.text, typed.caret);
                    self.write(slot, typed.text);
                }
            }
            KeypadEvent::Letter(letter) => {
                if let Some((text, selection)) = dom::selection(&id) {
                    let typed = strip::with_letter(&text, selection, &letter);
                    dom::write(&id, &typed.text, typed.caret);
                    self.write(slot, typed.text);
                }
            }
            KeypadEvent::Next => self.walk(slot, Way::Next),
            KeypadEvent::Close => self.close(),
            KeypadEvent::Keyboard => {
                self.system_keyboard.set(true);
                dom::call_system_keyboard(&id);
            }
        }
    }

    /// Goes to the place after or before; beyond the last, to the next example of the job, or the keypad closes.
    pub(super) fn walk(&self, from: Slot, way: Way) {
        match (self.beside(from, way), self.onward(from, way)) {
            (Some(slot), _) => self.go_to(slot),
            (None, Some(onward)) => onward.emit(()),
            (None, None) => self.close(),
        }
    }

    /// The place after or before another; only one of ours, while the user goes through those.
    fn beside(&self, from: Slot, way: Way) -> Option<Slot> {
        let walked = self.manner.walk.as_ref().map(|(fields, _)| *fields);
        let walked = walked.filter(|fields| way == Way::Next && fields.contains(&from.field));
        let is_passed = |slot: Slot| match walked {
            Some(fields) => !fields.contains(&slot.field),
            None => self.form.is_gone_through() && !self.is_ours(slot),
        };
        let mut beside = neighbour(&self.slots, from, way)?;
        while is_passed(beside) {
            beside = neighbour(&self.slots, beside, way)?;
        }
        Some(beside)
    }

    /// Where Next leads from an example of a job, to another.
    fn onward(&self, from: Slot, way: Way) -> Option<&Callback<()>> {
        let (fields, onward) = self.manner.walk.as_ref()?;
        onward.as_ref().filter(|_| way == Way::Next && fields.contains(&from.field))
    }

    /// Whether it goes no further this way.
    pub(super) fn is_end(&self, from: Slot, way: Way) -> bool {
        self.beside(from, way).is_none() && self.onward(from, way).is_none()
    }

    pub(super) fn close(&self) {
        dom::blur();
        self.form.dispatch(Action::Leave);
    }

    /// The step buttons of the place being edited.
    pub(crate) fn step(&self, slot: Slot, way: Way) -> Html {
        let at_hand = self.clone();
        let onclick = Callback::from(move |_: MouseEvent| at_hand.walk(slot, way));
        let is_end = self.is_end(slot, way);
        let (face, name, id) = match way {
            Way::Next => (Icon::Next, "Next field", "field-next"),
            Way::Previous => (Icon::Previous, "Field before", "field-previous"),
        };
        html! {
            <button type="button" tabindex="-1" class="step" aria-label={name} data-testid={id}
                disabled={is_end} {onclick}>{ icon(face) }</button>
        }
    }

    /// Brings our own keypad back in place of the system's keyboard.
    pub(crate) fn keypad_again(&self) -> Option<Html> {
        if !*self.system_keyboard {
            return None;
        }
        let own = self.system_keyboard.clone();
        let onclick = Callback::from(move |_: MouseEvent| {
            own.set(false);
            dom::blur();
        });
        Some(html! {
            <button type="button" tabindex="-1" class="field__keypad" aria-label="Use the keypad"
                data-testid="key-keypad" {onclick}>{ icon(Icon::Keypad) }</button>
        })
    }

    /// The button that counts one up or down, beside a number that counts.
    pub(crate) fn count(&self, field: &'static Field, is_up: bool) -> Html {
        let Kind::Count { least, most } = field.kind else { return html! {} };
        let next_to = move |text: &str| {
            let now = text.trim().parse::<u32>().ok()?;
            let next = if is_up { now.saturating_add(1) } else { now.saturating_sub(1) };
            Some(next).filter(|next| (least..=most).contains(next) && *next != now)
        };
        let next = next_to(&self.text(field));
        let at_hand = self.clone();
        let onclick = Callback::from(move |_: MouseEvent| {
            // The number as it is at the tap: the one before may not be drawn yet.
            if let Some(next) = next_to(&at_hand.text(field)) {
                at_hand.form.dispatch(Action::Set(vec![(field.id, next.to_string())]));
            }
        });
        let (face, words, id) = if is_up {
            (Icon::Plus, "One more", format!("more-{}", field.id))
        } else {
            (Icon::Minus, "One fewer", format!("fewer-{}", field.id))
        };
        html! {
            <Repeats class="count" name={format!("{words}: {}", field.label)} testid={id}
                is_disabled={next.is_none()} {onclick}>{ icon(face) }</Repeats>
        }
    }

    /// The key that empties the place being edited.
    pub(crate) fn clear(&self, slot: Slot) -> Html {
        let at_hand = self.clone();
        let onclick = Callback::from(move |_: MouseEvent| {
            dom::write(&element_id(slot), "", 0);
            at_hand.write(slot, String::new());
        });
        html! {
            <button type="button" tabindex="-1" class="field__clear" aria-label="Clear"
                data-testid="key-clear" {onclick}>{ icon(Icon::Clear) }</button>
        }
    }
}

/// Element id of the input of a place, or of the group of a choice.
pub(crate) fn element_id(slot: Slot) -> String {
    match slot.line {
        Some(line) => format!("field-{}-{line}", slot.field),
        None => format!("field-{}", slot.field),
    }
}

/// Brings a form to hand, with its places.
#[hook]
pub(crate) fn use_at_hand(
    form: UseReducerHandle<Form>,
    sheet: Rc<Sheet>,
    settings: Rc<Settings>,
    names: KnownNames,
) -> AtHand {
    use_at_hand_as(form, sheet, settings, names, Manner::default())
}

/// The same, in the manner of a page.
#[hook]
pub(crate) fn use_at_hand_as(
    form: UseReducerHandle<Form>,
    sheet: Rc<Sheet>,
    settings: Rc<Settings>,
    names: KnownNames,
    manner: Manner,
) -> AtHand {
    let system_keyboard = use_state_eq(|| false);
    let as_text = use_state_eq(|| None);
    let asking = use_state_eq(|| None);
    let mut slots = Vec::new();
    let question = form.calculator().questions().map(|(field, _)| field.id);
    for field in form.calculator().asked(form.entries(), &settings.bench) {
        match field.kind {
            _ if Some(field.id) == question || manner.folded.contains(&field.id) => {}
            Kind::Strip => {
                slots.extend(
                    strip::lines(&form.text(field, &settings.bench))
                        .enumerate()
                        .map(|(line, _)| Slot { field: field.id, line: Some(line) }),
                );
            }
            kind if is_list(kind) => {
                let text = form.text(field, &settings.bench);
                let is_rows = *as_text != Some(field.id) && !is_only_text(&text, kind);
                let lines = list_rows(&text, kind).into_iter().enumerate().flat_map(|(at, row)| {
                    places(&row, kind, at).into_iter().map(|place| place.line)
                });
                let lines = lines.filter(|_| is_rows);
                slots.extend(lines.map(|line| Slot { field: field.id, line: Some(line) }));
            }
            Kind::LineOf(_) => {}
            _ => slots.push(Slot::of(field.id)),
        }
    }
    let now: Rc<RefCell<Option<AtHand>>> = use_mut_ref(|| None);
    let keys = {
        let now = now.clone();
        use_callback((), move |event: KeypadEvent, ()| {
            let at_hand = now.borrow().clone();
            if let Some((at_hand, slot)) =
                at_hand.and_then(|it| it.form.editing().map(|at| (it, at)))
            {
                at_hand.take(event, slot);
            }
        })
    };
    let open = {
        let now = now.clone();
        use_callback((), move |field: &'static str, ()| {
            let at_hand = now.borrow().clone();
            if let Some(at_hand) = at_hand {
                at_hand.open(field);
            }
        })
    };
    let slots = Rc::new(slots);
    let presses = use_memo((), |()| dom::Presses::listen());
    let mut at_hand = AtHand {
        form,
        sheet,
        settings,
        system_keyboard,
        names,
        manner,
        as_text,
        asking,
        is_typing: false,
        slots,
        keys,
        open,
        presses,
    };
    at_hand.is_typing =
        at_hand.is_keying() && listed(at_hand.form.calculator().slug).is_some() && dom::is_small();
    *now.borrow_mut() = Some(at_hand.clone());
    // Where the keys are shown, Back puts them away.
    use_back(at_hand.is_keying() && dom::has_docks(), {
        let now = now.clone();
        Callback::from(move |()| {
            let at_hand = now.borrow().clone();
            if let Some(at_hand) = at_hand {
                at_hand.close();
            }
        })
    });
    // It holds itself by its callback until it is let go.
    use_effect_with((), move |()| move || *now.borrow_mut() = None);
    // Above the keypad there is room for the top of the page alone.
    use_effect_with(at_hand.is_keying(), |is_keying| {
        if *is_keying && dom::is_narrow() {
            dom::scroll_to_top();
        }
    });
    at_hand
}

/// Whether a place is the one being edited.
pub(super) fn is_editing(at_hand: &AtHand, slot: Slot) -> bool {
    at_hand.form.editing() == Some(slot)
}

/// The problem of a field, when it is time to show it.
pub(crate) fn problem_of(at_hand: &AtHand, field: &Field) -> Option<Html> {
    let refusal = at_hand.sheet.refusals.iter().find(|refusal| refusal.field == field.id)?;
    if !shows(&at_hand.form, refusal) {
        return None;
    }
    let form = at_hand.form.dispatcher();
    let on_way_out = Callback::from(move |set| form.dispatch(Action::Set(set)));
    let text = at_hand.text(field);
    let is_elsewhere = at_hand.form.editing().is_some();
    Some(field::problem(refusal, &text, at_hand.settings.bench.tape, is_elsewhere, &on_way_out))
}

/// A press on an input or on a button beside it.
pub(crate) fn press_in_row(event: MouseEvent) {
    dom::press_beside_input(&event);
}
