//! The fields of a form on the screen, with the keypad for the one being edited.
//!
//! Each field has one input for good. While it is edited on a phone, a style sheet docks it above
//! the keypad; the focus and the caret never move to another element.

use std::cell::RefCell;
use std::rc::Rc;

use reckoner_core::sheet::{Field, Kind, Sheet};
use yew::prelude::*;

use super::{Action, Form, Slot, Way, neighbour, shows};
use crate::components::choice;
use crate::components::field::{self, FieldEvents, Place};
use crate::components::icon::{Icon, icon};
use crate::keypad::{Keypad, KeypadEvent, SetOfKeys, press};
use crate::platform::dom;
use crate::platform::later::{Later, later};
use crate::settings::{Hand, Settings};
use crate::strip;

impl Reducible for Form {
    type Action = Action;

    fn reduce(self: Rc<Self>, action: Action) -> Rc<Self> {
        Rc::new(self.kept_after(action))
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
    /// Names that may be used in a size, ready above the keypad.
    names: Rc<Vec<String>>,
    /// The places to type and choose in, in the order asked.
    slots: Rc<Vec<Slot>>,
    /// What the keypad calls: always the same, so that it is not drawn anew at each key.
    keys: Callback<KeypadEvent>,
}

impl AtHand {
    /// Whether the keypad is out.
    pub(crate) fn is_keying(&self) -> bool {
        let field = self.form.editing().and_then(|slot| self.field(slot.field));
        let is_words = field.is_some_and(|field| matches!(field.kind, Kind::Words(_)));
        field.is_some() && !is_words && !*self.system_keyboard
    }

    /// The fields that are asked.
    fn fields(&self) -> impl Iterator<Item = &'static Field> + '_ {
        self.form.calculator().asked(self.form.entries(), &self.settings.bench)
    }

    fn field(&self, id: &str) -> Option<&'static Field> {
        self.form.calculator().fields.iter().find(|field| field.id == id)
    }

    /// The text of a field, typed or not.
    pub(crate) fn text(&self, field: &Field) -> String {
        self.form.text(field, &self.settings.bench)
    }

    /// A callback that does something to the form.
    pub(crate) fn doing(&self, action: Action) -> Callback<MouseEvent> {
        let form = self.form.dispatcher();
        Callback::from(move |_| form.dispatch(action.clone()))
    }

    /// Starts editing at the first field.
    pub(crate) fn begin(&self) -> Callback<MouseEvent> {
        let (form, first) = (self.form.dispatcher(), self.slots.first().copied());
        Callback::from(move |_| {
            if let Some(slot) = first {
                form.dispatch(Action::Edit(slot));
            }
        })
    }

    /// What an input in this place tells the form.
    pub(crate) fn events(&self, slot: Slot) -> FieldEvents {
        let (form, at_hand) = (self.form.dispatcher(), self.clone());
        FieldEvents {
            on_type: Callback::from(move |text: String| at_hand.write(slot, text)),
            on_enter: Callback::from(move |()| form.dispatch(Action::Edit(slot))),
        }
    }

    /// Takes a text typed in a place.
    fn write(&self, slot: Slot, text: String) {
        let whole = match (slot.line, self.field(slot.field)) {
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

    /// Goes to the place after or before; beyond the last, the keypad closes.
    fn walk(&self, from: Slot, way: Way) {
        match neighbour(&self.slots, from, way) {
            Some(slot) => self.form.dispatch(Action::Edit(slot)),
            None => self.close(),
        }
    }

    fn close(&self) {
        dom::blur();
        self.form.dispatch(Action::Leave);
    }

    /// The step buttons of the place being edited.
    pub(crate) fn step(&self, slot: Slot, way: Way) -> Html {
        let at_hand = self.clone();
        let onclick = Callback::from(move |_: MouseEvent| at_hand.walk(slot, way));
        let is_end = neighbour(&self.slots, slot, way).is_none();
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

    fn clear(&self, slot: Slot) -> Html {
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

/// Brings a form to hand: its places, and the focus that follows the edited one.
#[hook]
pub(crate) fn use_at_hand(
    form: UseReducerHandle<Form>,
    sheet: Rc<Sheet>,
    settings: Rc<Settings>,
    names: Rc<Vec<String>>,
) -> AtHand {
    let system_keyboard = use_state_eq(|| false);
    let mut slots = Vec::new();
    for field in form.calculator().asked(form.entries(), &settings.bench) {
        match field.kind {
            Kind::Strip => {
                slots.extend(
                    strip::lines(&form.text(field, &settings.bench))
                        .enumerate()
                        .map(|(line, _)| Slot { field: field.id, line: Some(line) }),
                );
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
    let slots = Rc::new(slots);
    let at_hand = AtHand { form, sheet, settings, system_keyboard, names, slots, keys };
    *now.borrow_mut() = Some(at_hand.clone());
    // It holds itself by its callback until it is let go.
    use_effect_with((), move |()| move || *now.borrow_mut() = None);
    let focus = {
        let at_hand = at_hand.clone();
        move |editing: &Option<Slot>| {
            let rest = editing.map(|slot| at_hand.follow(slot));
            move || drop(rest)
        }
    };
    use_effect_with(at_hand.form.editing(), focus);
    let is_keying = at_hand.form.editing().is_some();
    use_effect_with(is_keying, |is_keying| {
        if *is_keying && dom::is_narrow() {
            dom::scroll_to_top();
        }
    });
    at_hand
}

impl AtHand {
    /// Puts the focus where the form is being edited, with the text ready to be written over.
    fn follow(&self, slot: Slot) -> Later {
        let chosen = self.field(slot.field).filter(|field| choice::choices(field).is_some());
        let id = match chosen {
            Some(field) if choice::is_list(field) => element_id(slot),
            Some(field) => {
                let text = self.text(field);
                let answers = choice::choices(field).unwrap_or_default();
                let known = answers.iter().find(|answer| answer.id == text).or(answers.first());
                choice::id(field.id, known.map_or("", |answer| answer.id))
            }
            None => element_id(slot),
        };
        dom::focus(&id);
        // A tap puts the caret after it gave the focus.
        later(0, move || {
            if slot.line.is_none() {
                dom::select_all(&id);
            }
        })
    }
}

/// The buttons that take a change of the form back and make it again.
pub(crate) fn undo_and_redo(at_hand: &AtHand) -> Html {
    let form = &at_hand.form;
    html! {
        <>
            <button type="button" class="bar__link" data-testid="undo" aria-label="Undo"
                disabled={!form.can_undo()} onclick={at_hand.doing(Action::Undo)}>
                { icon(Icon::Undo) }
            </button>
            <button type="button" class="bar__link" data-testid="redo" aria-label="Redo"
                disabled={!form.can_redo()} onclick={at_hand.doing(Action::Redo)}>
                { icon(Icon::Redo) }
            </button>
        </>
    }
}

/// The fields, and the keypad for the one being edited.
pub(crate) fn asks(at_hand: &AtHand) -> Html {
    asks_about("Sizes", at_hand)
}

/// The same, where a page has more than one form.
pub(crate) fn asks_about(name: &'static str, at_hand: &AtHand) -> Html {
    let onfocusout = {
        let form = at_hand.form.dispatcher();
        Callback::from(move |event: FocusEvent| {
            if dom::leaves(&event) {
                form.dispatch(Action::Leave);
            }
        })
    };
    let onkeydown = {
        let at_hand = at_hand.clone();
        Callback::from(move |event: KeyboardEvent| {
            let Some(slot) = at_hand.form.editing() else { return };
            match event.key().as_str() {
                "Enter" => {
                    event.prevent_default();
                    let way = if event.shift_key() { Way::Previous } else { Way::Next };
                    at_hand.walk(slot, way);
                }
                "Escape" => at_hand.close(),
                _ => {}
            }
        })
    };
    let onsubmit = Callback::from(|event: SubmitEvent| event.prevent_default());
    html! {
        <form class="asks" aria-label={name} {onfocusout} {onkeydown} {onsubmit}>
            // By key, so that the input being typed in stays the same element when others come.
            { for at_hand.fields().filter(|it| has_place(it)).map(|it| one(at_hand, it)) }
            { keypad(at_hand) }
        </form>
    }
}

fn keypad(at_hand: &AtHand) -> Option<Html> {
    let slot = at_hand.form.editing().filter(|_| !*at_hand.system_keyboard)?;
    let field = at_hand.field(slot.field)?;
    let set = SetOfKeys::of(field.kind)?;
    let letters = slot.line.map_or_else(Vec::new, |line| {
        let text = at_hand.text(field);
        strip::letters_above(&text, line)
    });
    // What the tape says on the real part is a reading, not a formula.
    let takes_names = field.id != "as_cut" && !at_hand.names.is_empty();
    let names = if takes_names { at_hand.names.clone() } else { Rc::default() };
    let on_event = at_hand.keys.clone();
    Some(html! {
        <Keypad key="the keypad" {set} is_left_handed={at_hand.settings.hand == Hand::Left}
            is_last={neighbour(&at_hand.slots, slot, Way::Next).is_none()} {letters} {names} {on_event} />
    })
}

/// Whether a field stands by itself; the line in use is chosen in its strip.
fn has_place(field: &Field) -> bool {
    !matches!(field.kind, Kind::LineOf(_))
}

/// One field, of any kind.
fn one(at_hand: &AtHand, field: &'static Field) -> Html {
    match field.kind {
        Kind::Strip => strip::view(at_hand, field),
        _ if choice::choices(field).is_some() => chosen(at_hand, field),
        _ => typed(at_hand, field),
    }
}

fn is_editing(at_hand: &AtHand, slot: Slot) -> bool {
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
    Some(field::problem(refusal, &text, at_hand.settings.bench.tape, &on_way_out))
}

fn typed(at_hand: &AtHand, field: &'static Field) -> Html {
    let slot = Slot::of(field.id);
    let is_editing = is_editing(at_hand, slot);
    let is_words = matches!(field.kind, Kind::Words(_));
    let id = element_id(slot);
    let problem = problem_of(at_hand, field);
    let place = Place {
        id: &id,
        name: None,
        described_by: format!("echo-{0} problem-{0}", field.id),
        is_wrong: problem.is_some(),
        example: None,
        system_keyboard: *at_hand.system_keyboard || is_words,
    };
    let input = field::input(place, at_hand.text(field), &at_hand.events(slot));
    let echo = at_hand.sheet.echoes.iter().find(|echo| echo.field == field.id);
    let is_long = matches!(
        field.kind,
        Kind::Lengths | Kind::Spans | Kind::Sizes | Kind::Pieces | Kind::Prices | Kind::Words(_)
    );
    html! {
        <div key={field.id} class={classes!(
            "field",
            is_long.then_some("is-long"),
            is_editing.then_some("is-editing"),
            (is_editing && !*at_hand.system_keyboard && !is_words).then_some("is-docked"),
            problem.is_some().then_some("is-wrong"),
        )}>
            <label class="field__label" for={id.clone()}>{ field::label(field) }</label>
            <div class="field__row" onmousedown={Callback::from(keep_focus)}>
                if is_editing { { at_hand.step(slot, Way::Previous) } }
                { input }
                if is_editing {
                    { at_hand.clear(slot) }
                    { at_hand.step(slot, Way::Next) }
                    { at_hand.keypad_again() }
                }
            </div>
            { field::echo(field.id, echo, at_hand.settings.bench.tape) }
            <>{ problem }</>
        </div>
    }
}

/// A button beside the input must not take the focus from it.
pub(crate) fn keep_focus(event: MouseEvent) {
    if !dom::is_on_input(&event) {
        event.prevent_default();
    }
}

/// A field that is chosen, in a panel of its own while the user walks through the fields.
fn chosen(at_hand: &AtHand, field: &'static Field) -> Html {
    let slot = Slot::of(field.id);
    let is_editing = is_editing(at_hand, slot);
    let is_list = choice::is_list(field);
    let id = element_id(slot);
    let form = at_hand.form.dispatcher();
    let on_choose = Callback::from(move |answer: &'static str| {
        form.dispatch(Action::Set(vec![(field.id, answer.to_owned())]));
    });
    let steps = is_editing.then(|| {
        let at_hand = at_hand.clone();
        let close = Callback::from(move |_: MouseEvent| at_hand.close());
        html! {
            <button type="button" tabindex="-1" class="step" aria-label="Close"
                data-testid="key-close" onclick={close}>{ icon(Icon::Down) }</button>
        }
    });
    let text = at_hand.text(field);
    let asked = if is_list {
        html! {
            <>
                <label class="field__label" for={id.clone()}>{ field::label(field) }</label>
                { choice::list(field, id.clone(), &text, &on_choose) }
            </>
        }
    } else {
        html! {
            <>
                <legend class="field__label">{ field::label(field) }</legend>
                { choice::view(field, &text, &on_choose) }
            </>
        }
    };
    html! {
        <@{if is_list { "div" } else { "fieldset" }} key={field.id} data-testid={id} class={classes!(
            "field", "field--choice",
            is_editing.then_some("is-editing"),
            is_editing.then_some("is-docked"),
            is_editing.then_some("is-panel"),
        )}>
            { asked }
            if let Some(close) = steps {
                <div class="field__steps" onmousedown={Callback::from(keep_focus)}>
                    { at_hand.step(slot, Way::Previous) }
                    { close }
                    { at_hand.step(slot, Way::Next) }
                </div>
            }
            <>{ problem_of(at_hand, field) }</>
        </@>
    }
}
