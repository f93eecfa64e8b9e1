//! The page: its state, what keeps it, and where its parts stand.

use std::rc::Rc;

use reckoner_core::calculators::{Calculator, listed};
use reckoner_core::measure::Unit;
use reckoner_core::measure::text::NoNames;
use reckoner_core::sheet::{Assumed, Bench, Entries, Figure};
use yew::prelude::*;

use super::question::question;
use super::{answer, kept};
use crate::components::fold::Opened;
use crate::components::heard::Heard;
use crate::components::icon::{Icon, icon};
use crate::form::at_hand::{AtHand, KnownNames, use_at_hand};
use crate::form::view::{asks, undo_and_redo};
use crate::form::{Action, Form, Slot};
use crate::platform::later::Resting;
use crate::platform::{address, dom, sharing, speech, storage};
use crate::recent::LastAnswer;
use crate::settings::{Aloud, Settings, with_units};
use crate::{link, route, words};

/// How long after the last change the address is written, in milliseconds. Browsers refuse many
/// changes in a short time.
const ADDRESS_REST: u32 = 300;

/// What a page opens with.
pub(crate) struct Opening {
    pub(crate) entries: Entries,
    /// What was kept here before a link brought others.
    pub(crate) own: Option<Entries>,
    /// Why a link was not followed.
    pub(crate) trouble: Option<String>,
}

impl Opening {
    /// The form that it opens, kept on the device in the event that types in it.
    ///
    /// What was kept before stays until something is typed: a link alone replaces nothing.
    pub(crate) fn form(&self, calculator: &'static Calculator) -> Form {
        let form = Form::new(calculator, self.entries.clone(), self.own.clone());
        form.kept_by(|_, entries| kept::keep(calculator, entries))
    }

    /// What an address opens: what was typed over it, else its own entries, else those kept, else a fresh form.
    pub(crate) fn of(
        calculator: &'static Calculator,
        query: Option<&str>,
        bench: &Bench,
    ) -> Opening {
        let kept = kept::last(calculator);
        let fresh = || Form::fresh(bench.tape.unit());
        let Some(query) = query else {
            return Opening { entries: kept.unwrap_or_else(fresh), own: None, trouble: None };
        };
        if let Some(entries) = kept::typed_over(calculator) {
            return Opening { entries, own: None, trouble: None };
        }
        match link::read(calculator, query) {
            // A question alone: of the sizes that are here.
            Ok(entries) if is_question(calculator, &entries) => {
                let mut own = kept.unwrap_or_else(fresh);
                for (id, text) in entries.pairs() {
                    own.set(id, text);
                }
                Opening { entries: own, own: None, trouble: None }
            }
            // The address of this very form: go on with what was typed, so that a changed kerf
            // still flows in.
            Ok(entries) => match kept {
                Some(kept) if link::whole(calculator, &kept, bench) == query => {
                    Opening { entries: kept, own: None, trouble: None }
                }
                own => Opening { entries, own, trouble: None },
            },
            Err(problem) => Opening {
                own: kept,
                entries: fresh(),
                trouble: Some(format!(
                    "{problem} Here is a fresh form. What you had comes back with Undo."
                )),
            },
        }
    }
}

/// Whether entries say nothing but which question is asked.
fn is_question(calculator: &Calculator, entries: &Entries) -> bool {
    let question = calculator.questions().map(|(field, _)| field.id);
    let mut said = entries.pairs().map(|(id, _)| Some(id));
    entries.unit().is_none() && said.next() == Some(question) && said.next().is_none()
}

#[derive(Properties)]
struct CalculatorPageProps {
    calculator: &'static Calculator,
    /// What stands after the question mark in the address.
    query: Option<String>,
    settings: Rc<Settings>,
}

impl PartialEq for CalculatorPageProps {
    fn eq(&self, other: &CalculatorPageProps) -> bool {
        core::ptr::eq(self.calculator, other.calculator)
            && self.query == other.query
            && self.settings == other.settings
    }
}

/// The page of the one of these calculators that has this slug.
pub(crate) fn page(
    calculators: &[&'static Calculator],
    slug: &str,
    query: Option<&str>,
    settings: Rc<Settings>,
) -> Option<Html> {
    let calculator = calculators.iter().copied().find(|it| it.slug == slug)?;
    let key = route::address(slug, query.unwrap_or_default());
    let query = query.map(str::to_owned);
    Some(html! { <CalculatorPage {key} {calculator} {query} {settings} /> })
}

/// The page of a calculator.
#[component]
fn CalculatorPage(props: &CalculatorPageProps) -> Html {
    let CalculatorPageProps { calculator, query, settings } = props;
    // Read once for each visit: what is typed later belongs to the page.
    let opening = use_memo((), |()| Opening::of(calculator, query.as_deref(), &settings.bench));
    let form = use_reducer(|| opening.form(calculator));
    let trouble = use_state_eq(|| opening.trouble.clone());
    let bench = settings.bench;
    let sheet = use_memo((form.entries().clone(), bench), |(entries, bench)| {
        calculator.sheet(entries, bench, &NoNames)
    });
    let at_hand = use_at_hand(form.clone(), sheet.clone(), settings.clone(), KnownNames::default());
    let index = use_state_eq(|| 0_usize);
    let done = use_state_eq(|| "");

    use_address(calculator, form.entries(), &bench);
    let answer = sheet.answer.as_ref().map(|answer| LastAnswer {
        label: answer.headline.label.to_owned(),
        value: words::in_short(&answer.headline, &bench),
        is_ours: !sheet.assumed.is_empty(),
    });
    let before = use_last_answer(calculator.slug, answer);
    {
        let index = index.clone();
        // Other marks: begin with the first again.
        use_effect_with(sheet.answer.as_ref().map(answer::places), move |_| index.set(0));
    }
    use_effect_with((), |()| dom::set_title(&format!("{} · Sawdust Reckoner", calculator.title)));

    let on_index = Callback::from({
        let index = index.clone();
        move |to| index.set(to)
    });
    let on_way_out = {
        let form = form.dispatcher();
        Callback::from(move |set| form.dispatch(Action::Set(set)))
    };
    use_last_field(calculator, &at_hand);
    let opened = use_memo((), |()| Opened::default());
    let is_narrow = use_narrow();
    let is_aloud = settings.aloud == Aloud::Always && sheet.answer.is_some();
    let (is_keying, is_typing) = (at_hand.is_keying(), at_hand.is_typing);
    use_effect_with((form.editing(), is_typing), |(_, is_typing)| {
        if *is_typing {
            dom::bring_into_sight(".rest-of-answer .size.is-live");
        }
    });
    // In one column the sizes stand right under the drawing that carries them, and all else after them.
    let results = sheet.answer.as_ref().filter(|_| !is_typing).map(|it| {
        let is_pencil = !sheet.assumed.is_empty();
        html! {
            <>
                { answer::results(it, &bench, *index, &on_index, &at_hand.question(), is_pencil, &on_way_out) }
                if it.template.is_some() { { to_print(calculator, form.entries(), &bench) } }
            </>
        }
    });
    let last = (!is_typing).then(|| last_tools(calculator, &at_hand, &done));
    html! {
        <ContextProvider<Opened> context={(*opened).clone()}>
            <div class={classes!("page", "page--calculator", is_keying.then_some("is-keying"), is_typing.then_some("is-typing is-close"))}>
                { bar(calculator, &at_hand) }
                <main class="bench">
                    <Heard words={answer::to_hear(&form, &sheet, &bench, *index)} typed={form.entries().clone()} {is_aloud}
                        is_on_ours={answer::on_ours(&sheet)} />
                    { link_trouble(&trouble) }
                    if !is_typing { { question(&at_hand) } }
                    <section class="answer" aria-label="Answer">
                        { answer::headline(&form, &sheet, &bench, *index, before.as_ref(), &on_index, &on_way_out) }
                        if !is_typing {
                            { answer::pencil_line(&sheet) }
                            { tools(&at_hand, *index, &done) }
                        }
                        if sheet.answer.is_some() { { answer::drawn(&at_hand) } }
                        if !*is_narrow { { results.clone() } }
                    </section>
                    <section class="sizes" aria-label="What is asked">
                        { asks(&at_hand) }
                        if !is_typing {
                            { unit_choice(&at_hand) }
                            if !*is_narrow { { last.clone() } }
                        }
                    </section>
                    if *is_narrow && !is_typing {
                        { results }
                        <div class="sizes">{ last }</div>
                    }
                </main>
            </div>
        </ContextProvider<Opened>>
    }
}

/// Whether there is room for one column only.
#[hook]
pub(crate) fn use_narrow() -> UseStateHandle<bool> {
    let is_narrow = use_state_eq(dom::is_narrow);
    let told = is_narrow.clone();
    use_effect_with((), move |()| {
        let listening = dom::on_narrow(move |is| told.set(is));
        move || drop(listening)
    });
    is_narrow
}

/// Keeps what was answered last for the first page, and for this one while it has no answer.
#[hook]
pub(crate) fn use_last_answer(
    slug: &'static str,
    answer: Option<LastAnswer>,
) -> Option<LastAnswer> {
    let before = use_mut_ref(|| {
        let kept = storage::get(&storage::last_answer(slug));
        kept.as_deref().and_then(LastAnswer::read)
    });
    if answer.is_some() {
        before.borrow_mut().clone_from(&answer);
    }
    let rest = use_memo((), |()| Resting::default());
    use_effect_with(answer, move |answer| {
        if let Some(answer) = answer.clone() {
            rest.after(ADDRESS_REST, move || {
                storage::set(&storage::last_answer(slug), &answer.written());
            });
        }
        move || rest.call_off()
    });
    before.borrow().clone()
}

/// Keeps the field that was used last, and opens it again when the user comes from the first page.
#[hook]
fn use_last_field(calculator: &'static Calculator, at_hand: &AtHand) {
    let name = storage::last_field(calculator.slug);
    {
        let name = name.clone();
        use_effect_with(at_hand.form.editing(), move |slot| {
            if let Some(slot) = slot {
                storage::set(&name, &slot.written());
            }
        });
    }
    let at_hand = at_hand.clone();
    use_effect_with((), move |()| {
        if address::is_from_home() && dom::has_docks() {
            let kept = storage::get(&name);
            at_hand.resume(kept.and_then(|kept| Slot::read(calculator, &kept)));
        }
    });
}

/// The way to the template of an answer, in the program that can print.
fn to_print(calculator: &'static Calculator, entries: &Entries, bench: &Bench) -> Html {
    let query = link::whole(calculator, entries, bench);
    html! {
        <p class="to-print">
            <a class="tool" href={route::to_print(calculator.slug, &query)} data-testid="to-print">{ "Print full size" }</a>
        </p>
    }
}

/// Why a link was not followed, until it is waved off.
pub(crate) fn link_trouble(trouble: &UseStateHandle<Option<String>>) -> Html {
    let dismiss = {
        let trouble = trouble.clone();
        Callback::from(move |_: MouseEvent| trouble.set(None))
    };
    html! {
        if let Some(words) = &**trouble {
            <div class="trouble" role="alert" data-testid="link-trouble">
                <p>{ words }</p>
                <button type="button" onclick={dismiss}>{ "All right" }</button>
            </div>
        }
    }
}

/// Keeps the entries in the address, a moment later.
#[hook]
pub(crate) fn use_address(calculator: &'static Calculator, entries: &Entries, bench: &Bench) {
    let rest = use_memo((), |()| Resting::default());
    use_effect_with((entries.clone(), *bench), move |(entries, bench)| {
        let (entries, bench) = (entries.clone(), *bench);
        rest.after(ADDRESS_REST, move || {
            let query = link::whole(calculator, &entries, &bench);
            kept::write_address(calculator, &route::address(calculator.slug, &query));
        });
        move || rest.call_off()
    });
}

fn bar(calculator: &'static Calculator, at_hand: &AtHand) -> Html {
    html! {
        <header class="bar">
            if !at_hand.is_typing {
                <a class="bar__link" href="#/" aria-label="All calculators" data-testid="home">
                    { icon(Icon::Back) }
                </a>
            }
            <h1 class="bar__title">{ calculator.title }</h1>
            if !at_hand.is_typing {
                { undo_and_redo(at_hand) }
                <a class="bar__link" href="#/settings" aria-label="Settings" data-testid="settings">
                    { icon(Icon::Settings) }
                </a>
            }
        </header>
    }
}

pub(crate) type Done = UseStateHandle<&'static str>;

/// Copies a text and says so.
fn copying(
    text: impl Fn() -> String + 'static,
    done: &Done,
    words: &'static str,
) -> Callback<MouseEvent> {
    let done = done.clone();
    Callback::from(move |_: MouseEvent| {
        let done = done.clone();
        sharing::copy(text(), move |worked| {
            done.set(if worked { words } else { "This browser does not let me copy." });
        });
    })
}

/// What a thumb reaches: what comes next, copy, read aloud.
fn tools(at_hand: &AtHand, index: usize, done: &Done) -> Html {
    let bench = at_hand.settings.bench;
    let assumed = &at_hand.sheet.assumed;
    let headline = at_hand.sheet.answer.as_ref().map(|answer| answer::shown(answer, index));
    let has_voice = at_hand.settings.aloud != Aloud::Never && speech::is_possible();
    html! {
        <div class="tools">
            if assumed.is_empty() {
                { keep_link(at_hand, "tool tool--main") }
            } else {
                <button type="button" class="tool tool--main" data-testid="go-through"
                    onclick={at_hand.go_through()}>{ format!("Go through {}", assumed.counted()) }</button>
            }
            if let Some((figure, index)) = headline {
                { copy_button(figure.clone(), bench, assumed.clone(), done) }
                if has_voice { { voice_button(figure.clone(), bench, index, assumed.clone()) } }
            }
            <span class="tools__done" role="status">{ **done }</span>
        </div>
    }
}

/// The way into a job, with what was typed.
fn keep_link(at_hand: &AtHand, class: &'static str) -> Html {
    let mut typed = at_hand.form.entries().clone();
    typed.set_unit(Some(at_hand.form.unit(&at_hand.settings.bench)));
    let keep = route::keep(at_hand.form.calculator().slug, &link::typed(&typed));
    html! {
        <a {class} href={keep} data-testid="keep-in-job"><span>{ "Keep in a job" }</span></a>
    }
}

fn copy_button(figure: Figure, bench: Bench, assumed: Assumed, done: &Done) -> Html {
    let onclick = copying(move || words::to_copy(&figure, &bench, &assumed), done, "Copied.");
    html! {
        <button type="button" class="tool" data-testid="copy" {onclick}>
            { icon(Icon::Copy) }<span>{ "Copy" }</span>
        </button>
    }
}

fn voice_button(figure: Figure, bench: Bench, index: usize, assumed: Assumed) -> Html {
    let onclick = Callback::from(move |_: MouseEvent| {
        speech::say(&words::to_say(&figure, &bench, index, &assumed));
    });
    html! {
        <button type="button" class="tool" data-testid="read-aloud" {onclick}>
            { icon(Icon::Voice) }<span>{ "Read aloud" }</span>
        </button>
    }
}

/// The unit of bare numbers. Changing it keeps every length as it is.
pub(crate) fn unit_choice(at_hand: &AtHand) -> Html {
    let bench = at_hand.settings.bench;
    let form = &at_hand.form;
    let unit = form.unit(&bench);
    let other = if unit.is_metric() { Unit::Inch } else { Unit::Millimetre };
    let mut entries = with_units(form.calculator().fields, form.entries(), &bench);
    entries.set_unit(Some(other));
    html! {
        <p class="unit-choice">
            { format!("A number without a unit is in {}. ", unit.spoken(true)) }
            <button type="button" class="plain" data-testid="unit"
                onclick={at_hand.doing(Action::Replace(entries))}>
                { format!("Take it in {}", other.spoken(true)) }
            </button>
        </p>
    }
}

pub(crate) fn last_tools(calculator: &'static Calculator, at_hand: &AtHand, done: &Done) -> Html {
    let unit = at_hand.settings.bench.tape.unit();
    let entries = at_hand.form.entries().clone();
    let bench = at_hand.settings.bench;
    let link = move || {
        let whole = address::whole();
        let page = whole.split('#').next().unwrap_or_default();
        format!(
            "{page}{}",
            route::address(calculator.slug, &link::whole(calculator, &entries, &bench))
        )
    };
    // The cut plan is kept as a job of its own.
    let can_keep = listed(calculator.slug).is_some();
    let share = {
        let link = link.clone();
        Callback::from(move |_: MouseEvent| sharing::share(calculator.title, &link()))
    };
    html! {
        <div class="last-tools">
            if can_keep && !at_hand.sheet.assumed.is_empty() { { keep_link(at_hand, "tool") } }
            <button type="button" class="tool" data-testid="copy-link"
                onclick={copying(link, done, "Link copied.")}>
                { icon(Icon::Link) }<span>{ "Copy link" }</span>
            </button>
            if sharing::can_share() {
                <button type="button" class="tool" data-testid="share" onclick={share}>
                    { icon(Icon::Share) }<span>{ "Share" }</span>
                </button>
            }
            <button type="button" class="tool" data-testid="start-fresh"
                onclick={at_hand.doing(Action::StartFresh(unit))}>
                <span>{ "Back to our example" }</span>
            </button>
        </div>
    }
}
