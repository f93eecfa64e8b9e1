//! The quick list: parts and boards in a few lines, planned as soon as they are written.

use std::rc::Rc;

use reckoner_core::cutting::{Job, Plan};
use reckoner_core::job::cut_labels::Labels;
use reckoner_core::job::{self, CutPlan};
use reckoner_core::measure::text::NoNames;
use reckoner_core::measure::{Length, Unit};
use reckoner_core::planning::quick_list::{QUICK_LIST, none_of, quick_list};
use reckoner_core::planning::report::How;
use reckoner_core::planning::wanted::{KEEP_FROM, Wanted};
use reckoner_core::sheet::{self, Bench, Entries};
use reckoner_formats::{Ask, read_taken, write_taken};
use yew::prelude::*;

use super::buying::{Without, Yard};
use super::compare::Comparison;
use super::found::{headline, in_short, no_plan, progress};
use super::hook::use_search;
use super::on_hand::OnHand;
use super::report::{Beside, Told, as_list, whole};
use super::search::{Event, Search};
use super::typed;
use crate::calculator::{
    Opening, last_tools, link_trouble, unit_choice, use_address, use_last_answer, wanting,
};
use crate::components::icon::{Icon, icon};
use crate::form::Action;
use crate::form::at_hand::{KnownNames, use_at_hand};
use crate::form::view::{asks, undo_and_redo};
use crate::job_book::book::{Book, Edit};
use crate::job_book::hook::OnPage;
use crate::platform::later::later;
use crate::platform::storage::{self, TAKEN};
use crate::platform::{address, dom};
use crate::settings::Settings;
use crate::{recent, route};

/// How long after the last key a list is planned, in milliseconds.
const TYPING_REST: u32 = 900;

#[derive(Properties, PartialEq)]
struct QuickPageProps {
    /// What stands after the question mark of the address.
    query: Option<String>,
    settings: Rc<Settings>,
}

/// The page of the quick list.
pub(crate) fn page(query: Option<&str>, settings: Rc<Settings>) -> Html {
    let key = query.unwrap_or_default().to_owned();
    html! { <QuickPage {key} query={query.map(str::to_owned)} {settings} /> }
}

/// What a list comes to.
fn read(entries: &Entries, bench: &Bench) -> Option<(Wanted, Length)> {
    let mut ask = sheet::Ask::new(QUICK_LIST.fields, entries, bench, &NoNames);
    let keep_from = ask.length(&KEEP_FROM);
    Some((quick_list(&mut ask)?, keep_from?))
}

/// A list that can be planned.
#[derive(Clone, PartialEq)]
struct List {
    job: Rc<Job>,
    labels: Rc<Labels>,
    pieces: Vec<u32>,
    keep_from: Length,
}

/// A list, and its plan as soon as it can be read.
#[component]
fn QuickPage(props: &QuickPageProps) -> Html {
    let QuickPageProps { query, settings } = props;
    let bench = settings.bench;
    // Read once for each visit: what is typed later belongs to the page.
    let opening =
        use_memo(query.clone(), |query| Opening::of(&QUICK_LIST, query.as_deref(), &bench));
    let form = use_reducer(|| opening.form(&QUICK_LIST));
    let trouble = use_state_eq(|| opening.trouble.clone());
    let done = use_state_eq(|| "");
    let all = use_state_eq(|| false);
    let entries = form.entries().clone();
    let sheet = use_memo((entries.clone(), bench), |(entries, bench)| {
        QUICK_LIST.sheet(entries, bench, &NoNames)
    });
    let wanted = use_memo((entries.clone(), bench), |(entries, bench)| {
        let (wanted, keep_from) = read(entries, bench)?;
        let Wanted { job, labels, pieces, .. } = wanted;
        Some(List { job: Rc::new(job), labels: Rc::new(labels), pieces, keep_from })
    });
    let at_hand = use_at_hand(form.clone(), sheet.clone(), settings.clone(), KnownNames::default());
    let searching = use_search(|| {
        let job = wanted.as_ref().as_ref().map(|list| &list.job);
        let taken = storage::get(TAKEN).and_then(|text| read_taken(&text).ok());
        // One of a list that has changed since is taken no more.
        let taken = taken.filter(|taken| job.is_some_and(|job| **job == taken.job));
        taken.map(Search::taken).unwrap_or_default()
    });
    use_address(&QUICK_LIST, &entries, &bench);
    use_effect_with((), |()| dom::set_title("Cut plan · Sawdust Reckoner"));
    {
        let searching = searching.clone();
        let job = wanted.as_ref().as_ref().map(|list| list.job.clone());
        use_effect_with((job, form.editing().is_some()), move |(job, is_editing)| {
            let is_new = job.is_some() && searching.search.job != *job;
            // What is on the page belongs to another list.
            if searching.search.is_running() && searching.search.job != *job {
                searching.stop();
            }
            let rest = job.clone().filter(|_| is_new).map(|job| {
                let wait = if *is_editing { TYPING_REST } else { 0 };
                later(wait, move || {
                    if searching.search.before.is_some() {
                        storage::remove(TAKEN);
                    }
                    searching.begin(job, Ask::Cheapest { budget: u64::MAX });
                })
            });
            move || drop(rest)
        });
    }
    // Never an answer to another question.
    let now =
        wanted.as_ref().as_ref().filter(|list| searching.search.job.as_ref() == Some(&list.job));
    let labels = now.map(|list| list.labels.clone());
    let told = use_memo(
        (
            (now.cloned(), bench.tape),
            searching.search.plan.clone(),
            searching.search.ties(),
            searching.search.is_running(),
        ),
        |((list, tape), plan, ties, is_running)| {
            let (list, plan) = (list.as_ref()?, plan.as_ref()?);
            let how = How { tape: *tape, keep_from: list.keep_from };
            Told::of(&list.job, plan, &list.labels, how, *ties, *is_running)
        },
    );
    let told = told.as_ref().as_ref();
    let is_ours = !sheet.assumed.is_empty();
    let answer = in_short(&searching.search, told, is_ours, bench.tape);
    let before = use_last_answer(recent::CUT.slug, answer);
    let on_way_out = {
        let form = form.dispatcher();
        Callback::from(move |set| form.dispatch(Action::Set(set)))
    };
    // A list that can be read has a plan, or a reason why not.
    let instead = if sheet.refusals.is_empty() {
        no_plan(&searching.search, labels.as_ref(), bench.tape)
    } else {
        wanting(&form, &sheet, bench.tape, before.as_ref(), &on_way_out)
    };
    let take_without = {
        let form = form.clone();
        Callback::from(move |without: Without| {
            if let Some(text) = none_of(form.entries(), &bench, without.board) {
                form.dispatch(Action::Set(vec![("boards", text)]));
            }
        })
    };
    let take_way = {
        let searching = searching.clone();
        Callback::from(move |plan: Rc<Plan>| {
            // Kept in the tap itself, as what is typed is.
            let taken = searching.search.after(Event::Take(plan.clone())).to_keep_taken();
            if let Some(taken) = taken {
                storage::set(TAKEN, &write_taken(&taken));
            }
            searching.take(plan);
        })
    };
    let go_back = searching.search.before.is_some().then(|| {
        let searching = searching.clone();
        Callback::from(move |_: MouseEvent| {
            storage::remove(TAKEN);
            searching.go_back();
        })
    });
    let how_of = |list: &List| How { tape: bench.tape, keep_from: list.keep_from };
    let yard = now.zip(told).filter(|_| !searching.search.is_running()).map(|(list, told)| Yard {
        job: list.job.clone(),
        labels: list.labels.clone(),
        stood: told.plan.clone(),
        how: how_of(list),
        take: take_without,
    });
    let is_keying = at_hand.is_keying();
    html! {
        <div class={classes!("page", "page--calculator", is_keying.then_some("is-keying is-close"))}>
            <header class="bar">
                <a class="bar__link" href="#/" aria-label="All calculators" data-testid="home">{ icon(Icon::Back) }</a>
                <h1 class="bar__title">{ QUICK_LIST.title }</h1>
                { undo_and_redo(&at_hand) }
                <a class="bar__link" href="#/settings" aria-label="Settings" data-testid="settings">{ icon(Icon::Settings) }</a>
            </header>
            <main class="bench bench--late">
                { link_trouble(&trouble) }
                <section class="answer" aria-label="Answer">
                    { headline(&searching.search, labels.as_ref(), told, false, is_ours, bench.tape, instead) }
                    <div class="tools">
                        <button type="button" class="tool tool--main" data-testid="change-sizes" onclick={at_hand.begin()}>
                            { "What to cut" }
                        </button>
                        <span class="tools__done" role="status">{ *done }</span>
                    </div>
                </section>
                <section class="sizes" aria-label="What is asked">
                    { asks(&at_hand) }
                    { unit_choice(&at_hand) }
                    { last_tools(&QUICK_LIST, &at_hand, &done) }
                </section>
                // The plan comes by itself, some time later: it moves nothing of the list.
                <section class="rest-of-answer" aria-label="The plan">
                    if let Some(told) = told {
                        // By key: the boards of another plan are other boards, and do not move from where those stood.
                        <div key={format!("{} {}", searching.search.plan_number, searching.search.is_running())}>
                            { whole(told, bench.tape, &all, &Beside::nothing(searching.search.is_running(), yard, is_ours)) }
                        </div>
                        if let Some(list) = now.filter(|_| !searching.search.is_running()) {
                            <OnHand job={list.job.clone()} labels={list.labels.clone()} how={how_of(list)} />
                            { keep_as_job(list, told, &searching.search, settings, &entries) }
                            // Last: what is told when it was worked out moves nothing.
                            <Comparison job={list.job.clone()} plan={told.plan.clone()} bound_cents={searching.search.bound_cents}
                                labels={list.labels.clone()} how={how_of(list)} {is_ours} take={take_way} back={go_back} />
                        }
                    }
                    { progress(&searching, labels.as_ref(), false) }
                </section>
            </main>
        </div>
    }
}

/// The way on from a list: a job that keeps the plan, where boards are ticked off and the rest is planned again, and a list
/// of its boards.
fn keep_as_job(
    list: &List,
    told: &Told,
    search: &Search,
    settings: &Settings,
    entries: &Entries,
) -> Html {
    let Some(plan) = search.plan.clone() else { return html! {} };
    let plan = CutPlan {
        title: "Boards".to_owned(),
        is_list: true,
        entries: typed(QUICK_LIST.fields, entries),
        asked: (*list.job).clone(),
        labels: (*list.labels).clone(),
        pieces: list.pieces.clone(),
        plan: (*plan).clone(),
        bound_cents: search.bound_cents,
        backing: search.to_keep(),
        paid_cents: 0,
    };
    let unit = settings.bench.tape.unit();
    let onclick = {
        Callback::from(move |_: MouseEvent| {
            let unit = if unit.is_metric() { Unit::Millimetre } else { Unit::Inch };
            address::go_by(|| {
                let mut book = Book::new(job::Job::new("Cut list", unit));
                let step = book.job.keeping_plan(plan.clone());
                // Nobody else has changed a job that was not there before.
                drop(book.edit(&Edit::Make(step)));
                Some(route::in_job(OnPage::begin(book).key(), "boards"))
            });
        })
    };
    html! {
        <section class="plan__part" aria-label="Go on with it">
            <h2 class="part-title">{ "Cut by it" }</h2>
            <p class="plan__words">
                { "Kept as a job, its boards are ticked off as they are cut, and the rest is planned again when one comes out different." }
            </p>
            <div class="adds">
                <button type="button" class="tool" data-testid="keep-as-job" {onclick}>{ "Keep it as a job" }</button>
                { as_list(told, &list.labels, "cut-list.boards.csv".to_owned()) }
            </div>
        </section>
    }
}
