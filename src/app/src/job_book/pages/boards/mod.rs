//! The boards of a job: what to buy, which part comes from which board, and what was cut of it.

mod different;
mod in_use;

use std::rc::Rc;

use reckoner_core::cutting::{Job as CutJob, Plan, Ties};
use reckoner_core::job::cut_labels::Labels;
use reckoner_core::job::{BoardState, CutPlan, ItemId, Job, Step};
use reckoner_core::measure::{Length, Tape};
use reckoner_core::planning::report::How;
use reckoner_core::planning::wanted::{
    KEEP_FROM, OPTIONS, Options, Wanted, WantedProblem, from_job_book, options, start_entries,
};
use reckoner_core::planning::{RestProblem, confirming_options, list_rest, plan_of_today};
use reckoner_core::sheet::{Ask as Asking, Entries};
use reckoner_formats::Ask;
use yew::prelude::*;

use super::attention::attention;
use super::drafts::beside;
use super::{Open, Shared, bar, pencil, sections};
use crate::components::icon::{Icon, icon};
use crate::components::sentence::sentence;
use crate::cutting::buying::{Without, Yard};
use crate::cutting::compare::Comparison;
use crate::cutting::found::{headline, no_plan, progress};
use crate::cutting::hook::{Searching, use_search};
use crate::cutting::on_hand::OnHand;
use crate::cutting::report::{Beside, Told, whole};
use crate::cutting::search::Search;
use crate::cutting::typed;
use crate::form::Form as Texts;
use crate::form::at_hand::{AtHand, KnownNames, Manner, use_at_hand_as};
use crate::form::view::asks;
use crate::job_book::kept_form::{make_of_form, use_kept_form};

/// Where the note of the options stands.
const OPTIONS_PLACE: &str = "boards-options";

pub(super) fn page(open: &Open) -> Html {
    html! { <BoardsPage open={Shared(open.clone())} /> }
}

#[derive(Properties, PartialEq)]
struct BoardsPageProps {
    open: Shared,
}

/// What is to be planned, or what is in the way.
type Asked = Result<Wanted, InTheWay>;

/// What is in the way of a plan.
enum InTheWay {
    /// Parts and boards of the job.
    Problems(Vec<WantedProblem>),
    /// The ticks of a quick list.
    List(String),
}

/// The plan that the job keeps, with what was done of it.
struct Kept<'a> {
    id: ItemId,
    plan: &'a CutPlan,
    boards: Vec<BoardState>,
}

impl Kept<'_> {
    fn of(open: &Open) -> Option<Kept<'_>> {
        let job = &open.book.job;
        let id = job.plan_in_use()?;
        let (plan, boards) = job.cut_plan(id)?;
        Some(Kept { id, plan, boards })
    }

    /// Whether a board of the plan is bought, by its place.
    fn is_bought(&self, at: usize) -> bool {
        self.boards.get(at).is_some_and(|it| *it != BoardState::ToCut)
    }
}

/// What is asked of the planner today.
fn asked(open: &Open, kept: Option<&Kept>, options: &Options) -> Asked {
    let job = &open.book.job;
    match kept.filter(|kept| kept.plan.is_list) {
        Some(kept) => list_rest(job, kept.id, options.keep_from).map_err(|problem| {
            InTheWay::List(match problem {
                RestProblem::NotThere => "The list is not in the job any more.".to_owned(),
                RestProblem::Text(why) => {
                    format!("A length that was left of a board cannot be read: {why}")
                }
                RestProblem::Done(_) => {
                    "More is ticked than the plan holds. Take a tick back with Undo.".to_owned()
                }
                RestProblem::TooFine => {
                    "The lengths do not go together. Write what is left to a mark of the tape."
                        .to_owned()
                }
            })
        }),
        None => from_job_book(job, &open.reckoned, &open.settings.bench, options)
            .map_err(InTheWay::Problems),
    }
}

fn read(open: &Open, entries: &Entries) -> Option<Options> {
    let mut ask = Asking::new(OPTIONS.fields, entries, &open.settings.bench, &*open.reckoned);
    options(&mut ask)
}

/// Once a field of the options is left, what was confirmed goes in with the plan in use, where it was made with just these.
#[hook]
fn use_confirming(open: &Open, form: &UseReducerHandle<Texts>) {
    let (on_page, reckoned) = (open.on_page.clone(), open.reckoned.clone());
    let (form, bench) = (form.clone(), open.settings.bench);
    let about = (form.editing().is_none(), form.entries().clone());
    use_effect_with(about, move |_| {
        if form.editing().is_none() {
            make_of_form(&on_page, OPTIONS_PLACE, &form, |job, entries| {
                confirming_options(job, &typed(OPTIONS.fields, entries), &reckoned, &bench)
            });
        }
    });
}

/// The boards of a job.
#[component]
fn BoardsPage(props: &BoardsPageProps) -> Html {
    let Shared(open) = &props.open;
    let bench = open.settings.bench;
    let kept = Kept::of(open);
    // Planning again goes on with the options of the plan in use.
    let of_plan = kept.as_ref().filter(|kept| !kept.plan.is_list);
    let standing = of_plan.map_or_else(
        || start_entries(&open.book.job),
        |kept| kept.plan.as_entries(open.book.job.unit),
    );
    let form = use_kept_form(open.keeping(), OPTIONS_PLACE, &OPTIONS, standing);
    let entries = form.entries().clone();
    let sheet = Rc::new(OPTIONS.sheet(&entries, &bench, &*open.reckoned));
    // What is left of a quick list is planned by the list: of these options it takes none but the last.
    let is_list = kept.as_ref().is_some_and(|kept| kept.plan.is_list);
    let assumed = if is_list { pencil::assumed_in_use(open) } else { Some(sheet.assumed.clone()) };
    let assumed = assumed.unwrap_or_default();
    let manner = if is_list { Manner::of_no_examples() } else { Manner::default() };
    let names = KnownNames::default();
    let at_hand = use_at_hand_as(form.clone(), sheet, open.settings.clone(), names, manner);
    use_confirming(open, &form);
    let searching = use_search(Search::default);
    let all = use_state_eq(|| false);
    let options = read(open, &entries);
    let wanted: Option<Asked> = options.as_ref().map(|options| asked(open, kept.as_ref(), options));
    // What was being written down of a board goes on.
    let different = use_state_eq(|| kept.as_ref().and_then(|kept| different::begun(open, kept.id)));
    let is_keying_too = use_state_eq(|| false);
    let is_rack = options.as_ref().is_some_and(|options| options.rack_only);
    let page = Page {
        open,
        searching: &searching,
        kept,
        options: options.as_ref(),
        form: &form,
        is_rack,
        is_ours: !assumed.is_empty(),
    };
    let now = match &wanted {
        Some(Ok(wanted)) => {
            Some(wanted).filter(|it| searching.search.job.as_deref() == Some(&it.job))
        }
        _ => None,
    };
    {
        // The parts, the rack or the options changed: nobody waits for that plan any more.
        let searching = searching.clone();
        use_effect_with(now.is_some(), move |is_now| {
            if !is_now {
                searching.forget();
            }
        });
    }
    // A report takes longer than a frame where there are many boards: not with every key of the options.
    let about = (
        Shared(open.clone()),
        page.keep_from(),
        now.is_some(),
        searching.search.is_running(),
        searching.search.plan.clone(),
    );
    let told = use_memo(about, |_| match (&page.kept, now) {
        (_, Some(now)) => {
            let job = searching.search.job.as_ref();
            let ties = searching.search.ties();
            page.told(job, searching.search.plan.as_ref(), &now.labels, ties)
        }
        (Some(kept), None) => {
            let (job, plan) = (Rc::new(kept.plan.asked.clone()), Rc::new(kept.plan.plan.clone()));
            let ties = page.kept_search(kept).ties();
            let told = page.told(Some(&job), Some(&plan), &kept.plan.labels, ties)?;
            let report = (*told.report).clone().with_bought(|at| kept.is_bought(at));
            Some(Told { report: Rc::new(report), ..told })
        }
        (None, None) => None,
    });
    let to_do = use_memo((Shared(open.clone()), options, now.is_some()), |_| match &wanted {
        Some(Ok(wanted)) if now.is_none() => page.to_do(wanted),
        _ => None,
    });
    let mut told = (*told).clone();
    if let (Some(told), Some(Ok(wanted))) = (&mut told, &wanted) {
        told.left_out = wanted.left_out.iter().map(|it| it.name.clone()).collect();
    }
    let told = told.as_ref();
    let Body { headline, rest } = match (&page.kept, now) {
        (_, Some(now)) => page.found(now, told, &all),
        (Some(kept), None) => {
            let yard = (*to_do).clone().zip(wanted.as_ref().and_then(|it| it.as_ref().ok()));
            let yard = yard.and_then(|(to_do, wanted)| page.yard(wanted, to_do));
            let keying = (&different, &is_keying_too);
            page.in_use(kept, told, wanted.as_ref(), yard, &all, keying)
        }
        (None, None) => page.nothing_yet(wanted.as_ref()),
    };
    let found = now.zip(told).filter(|_| !searching.search.is_running());
    let take = found.map(|(now, told)| page.taking(now, told));
    let is_keying = at_hand.is_keying() || *is_keying_too;
    html! {
        <div class={classes!("page", "page--calculator", is_keying.then_some("is-keying is-close"))} data-testid="boards">
            { bar(open, "#/jobs", &open.book.job.title) }
            { sections(open, "boards") }
            <main class="bench">
                <section class="answer" aria-label="Plan">
                    { headline }
                    { page.tools(&at_hand, wanted.as_ref(), take) }
                    <div class="rest-of-answer">
                        { beside(open, OPTIONS_PLACE, &OPTIONS, &form) }
                        { pencil::line(open) }
                        { pencil::line_of_options(&assumed, (!is_list).then_some(&at_hand)) }
                        { attention(open) }
                        { rest }
                        { page.on_hand(wanted.as_ref()) }
                        // Last: what is told when it was worked out moves nothing.
                        { now.zip(told).map(|(now, told)| page.comparison(now, told)) }
                    </div>
                </section>
                <section class="sizes" aria-label="What the plan may do" data-testid="plan-options">
                    <h2 class="part-title">{ OPTIONS.question }</h2>
                    { asks(&at_hand) }
                </section>
            </main>
        </div>
    }
}

/// What a page says: its headline, and what stands below the tools.
struct Body {
    headline: Html,
    rest: Html,
}

/// What the page stands on.
struct Page<'a> {
    open: &'a Open,
    searching: &'a Searching,
    kept: Option<Kept<'a>>,
    options: Option<&'a Options>,
    /// The form of the options.
    form: &'a UseReducerHandle<Texts>,
    is_rack: bool,
    /// Whether the options rest on examples of ours.
    is_ours: bool,
}

/// A plan that can be made again, and the job it is one of.
#[derive(Clone, PartialEq)]
struct ToDo {
    job: Rc<CutJob>,
    plan: Rc<Plan>,
}

impl Page<'_> {
    fn tape(&self) -> Tape {
        self.open.settings.bench.tape
    }

    /// Asks the planner for a plan of what is wanted.
    fn plan(&self, wanted: Option<&Asked>) -> Option<Callback<MouseEvent>> {
        let Some(Ok(wanted)) = wanted else { return None };
        let (searching, job) = (self.searching.clone(), Rc::new(wanted.job.clone()));
        let is_rack = self.is_rack;
        Some(Callback::from(move |_: MouseEvent| {
            let budget = u64::MAX;
            let ask = if is_rack { Ask::RackOnly { budget } } else { Ask::Cheapest { budget } };
            searching.begin(job.clone(), ask);
        }))
    }

    /// What a thumb reaches. A plan that can be taken is what comes next, and to plan is beside it.
    fn tools(
        &self,
        at_hand: &AtHand,
        wanted: Option<&Asked>,
        take: Option<Callback<MouseEvent>>,
    ) -> Html {
        let words = match &self.kept {
            _ if self.searching.search.is_running() => "Begin again",
            _ if take.is_some() => "Plan again",
            Some(_) => "Plan what is left",
            None => "Work out the boards",
        };
        let plan = self.plan(wanted);
        html! {
            <div class="tools">
                <button type="button" class="tool" data-testid="change-options" onclick={at_hand.begin()}>
                    { icon(Icon::Settings) }<span>{ "Options" }</span>
                </button>
                <button type="button" class={classes!("tool", take.is_none().then_some("tool--main tool--always"))}
                    data-testid="plan-it" disabled={plan.is_none()} onclick={plan.unwrap_or_default()}>
                    if take.is_some() { { icon(Icon::Boards) } }
                    <span>{ words }</span>
                </button>
                if let Some(onclick) = take {
                    <button type="button" class="tool tool--main tool--always" data-testid="use-plan" {onclick}>{ "Use this plan" }</button>
                }
            </div>
        }
    }

    /// There is no plan: what is in the way of one, or how to begin.
    fn nothing_yet(&self, wanted: Option<&Asked>) -> Body {
        let words = match wanted {
            Some(Ok(_)) => {
                "Ready. It finds the cheapest boards for the pieces of this job, and says which board each piece comes from."
            }
            Some(Err(_)) => "These are in the way of a plan.",
            None => "One of the options is not filled in right.",
        };
        Body { headline: wanting("No plan yet", words), rest: self.about(wanted) }
    }

    /// What a board on hand can become, when the planner has nothing else to do.
    fn on_hand(&self, wanted: Option<&Asked>) -> Html {
        let (Some(Ok(wanted)), Some(options)) = (wanted, self.options) else { return html! {} };
        if self.searching.search.is_running() {
            return html! {};
        }
        let how = How { tape: self.tape(), keep_from: options.keep_from };
        html! { <OnHand job={Rc::new(wanted.job.clone())} labels={Rc::new(wanted.labels.clone())} {how} /> }
    }

    /// What is in the way, what waits, and what the builder should know.
    fn about(&self, wanted: Option<&Asked>) -> Html {
        match wanted {
            Some(Err(InTheWay::List(words))) => {
                html! { <p class="trouble" data-testid="in-the-way">{ words }</p> }
            }
            Some(Err(InTheWay::Problems(problems))) => html! {
                <ul class="rows" data-testid="in-the-way">
                    { for problems.iter().map(|problem| self.in_the_way(problem)) }
                </ul>
            },
            Some(Ok(wanted)) => self.notes(wanted),
            None => html! {},
        }
    }

    /// What waits, and what the builder should know.
    fn notes(&self, wanted: &Wanted) -> Html {
        let tape = self.tape();
        html! {
            <>
                if !wanted.left_out.is_empty() {
                    <section class="plan__part" aria-label="Pieces that wait" data-testid="waiting">
                        <h2 class="part-title">{ "Not planned yet" }</h2>
                        <ul class="notes">{ for wanted.left_out.iter().map(|it| html! { <li>{ sentence(&it.sentence, tape) }</li> }) }</ul>
                    </section>
                }
                if !wanted.notes.is_empty() {
                    <ul class="notes">{ for wanted.notes.iter().map(|it| html! { <li>{ sentence(it, tape) }</li> }) }</ul>
                }
            </>
        }
    }

    fn in_the_way(&self, problem: &WantedProblem) -> Html {
        let tape = self.tape();
        let inside = html! {
            <>
                <span class="row__problem">{ sentence(&problem.sentence(), tape) }</span>
                <span class="row__more">{ sentence(&problem.way_out(), tape) }</span>
            </>
        };
        match problem.item() {
            Some(id) => html! {
                <li><a class="row" href={self.open.at(&format!("item/{}", id.0))}>{ inside }</a></li>
            },
            None => html! { <li class="row">{ inside }</li> },
        }
    }

    /// What the planner has found, or is finding.
    fn found(&self, wanted: &Wanted, told: Option<&Told>, all: &UseStateHandle<bool>) -> Body {
        let search = &*self.searching.search;
        let tape = self.tape();
        let labels = Rc::new(wanted.labels.clone());
        let to_do = told.map(|told| ToDo { job: told.job.clone(), plan: told.plan.clone() });
        let to_do = to_do.filter(|_| !search.is_running() && !self.is_rack);
        let yard = to_do.and_then(|to_do| self.yard(wanted, to_do));
        let instead = no_plan(search, Some(&labels), tape);
        let is_ours = self.is_ours || pencil::is_on_ours(self.open);
        let rest = html! {
            <>
                { progress(self.searching, Some(&labels), self.is_rack) }
                if let Some(told) = told {
                    if !search.is_running() && self.kept.is_some() { { self.keep_what_is() } }
                    { self.notes(wanted) }
                    { whole(told, tape, all, &Beside::nothing(search.is_running(), yard, is_ours)) }
                }
            </>
        };
        Body {
            headline: headline(search, Some(&labels), told, self.is_rack, is_ours, tape, instead),
            rest,
        }
    }

    fn keep_from(&self) -> Option<Length> {
        self.options.map(|options| options.keep_from)
    }

    fn how(&self) -> Option<How> {
        Some(How { tape: self.tape(), keep_from: self.keep_from()? })
    }

    fn told(
        &self,
        job: Option<&Rc<CutJob>>,
        plan: Option<&Rc<Plan>>,
        labels: &Labels,
        ties: Option<Ties>,
    ) -> Option<Told> {
        let is_running = self.searching.search.is_running();
        Told::of(job?, plan?, labels, self.how()?, ties, is_running)
    }

    /// What is still to do of the plan in use, while it fits the job.
    fn to_do(&self, wanted: &Wanted) -> Option<ToDo> {
        let kept = self.kept.as_ref()?;
        let plan = plan_of_today(kept.plan, &kept.boards, wanted)?;
        Some(ToDo { job: Rc::new(wanted.job.clone()), plan: Rc::new(plan) })
    }

    /// What the yard can be asked about a plan.
    fn yard(&self, wanted: &Wanted, to_do: ToDo) -> Option<Yard> {
        let plan = self.plan_to_keep(wanted);
        let keeping = self.keeping();
        let take = Callback::from(move |without: Without| {
            let plan = CutPlan {
                asked: (*without.job).clone(),
                plan: (*without.plan).clone(),
                bound_cents: without.bound_cents,
                backing: without.backing,
                ..plan.clone()
            };
            keeping(&plan, &|job| job.taking_without(plan.clone(), without.board));
        });
        let labels = Rc::new(wanted.labels.clone());
        Some(Yard { job: to_do.job, labels, stood: to_do.plan, how: self.how()?, take })
    }

    /// What takes a plan into the job by a step. The plan has the options from now on, so one that was made by others than
    /// stand in their form is not taken.
    fn keeping(&self) -> impl Fn(&CutPlan, &dyn Fn(&Job) -> Step) + 'static {
        let (on_page, searching) = (self.open.on_page.clone(), self.searching.clone());
        let (form, list) = (self.form.clone(), self.list());
        move |plan, step| {
            let is_kept = make_of_form(&on_page, OPTIONS_PLACE, &form, |job, entries| {
                (to_keep(list.as_deref(), entries) == plan.entries).then(|| step(job))
            });
            if is_kept {
                searching.forget();
            }
        }
    }

    /// The texts of the quick list that the plan in use is of.
    fn list(&self) -> Option<Vec<(String, String)>> {
        let list = self.kept.as_ref().filter(|kept| kept.plan.is_list);
        list.map(|kept| kept.plan.entries.clone())
    }

    /// A plan of what is wanted, as it is kept in the job, without its boards.
    fn plan_to_keep(&self, wanted: &Wanted) -> CutPlan {
        CutPlan {
            title: "Boards".to_owned(),
            is_list: self.list().is_some(),
            entries: to_keep(self.list().as_deref(), self.form.entries()),
            asked: wanted.job.clone(),
            labels: wanted.labels.clone(),
            pieces: wanted.pieces.clone(),
            plan: Plan::default(),
            bound_cents: 0,
            backing: None,
            paid_cents: 0,
        }
    }

    /// Keeps the plan that was found in the job.
    fn taking(&self, wanted: &Wanted, told: &Told) -> Callback<MouseEvent> {
        let plan = CutPlan {
            plan: (*told.plan).clone(),
            bound_cents: self.searching.search.bound_cents,
            backing: self.searching.search.to_keep(),
            ..self.plan_to_keep(wanted)
        };
        let keeping = self.keeping();
        Callback::from(move |_: MouseEvent| {
            keeping(&plan, &|job| job.keeping_plan(plan.clone()));
        })
    }

    /// Other ways to buy than the plan that was found; one that is taken is kept in the job.
    fn comparison(&self, wanted: &Wanted, told: &Told) -> Html {
        let search = &*self.searching.search;
        let how = self.how().filter(|_| !search.is_running() && !self.is_rack);
        let Some((how, job)) = how.zip(search.job.clone()) else { return html! {} };
        let (bound_cents, backing) = (search.bound_cents, Some(search.in_place()));
        let (plan, keeping) = (self.plan_to_keep(wanted), self.keeping());
        let take = Callback::from(move |way: Rc<Plan>| {
            let plan = CutPlan { plan: (*way).clone(), bound_cents, backing, ..plan.clone() };
            keeping(&plan, &|job| job.keeping_plan(plan.clone()));
        });
        html! {
            <Comparison {job} plan={told.plan.clone()} {bound_cents} labels={Rc::new(wanted.labels.clone())} {how} {take}
                is_ours={self.is_ours || pencil::is_on_ours(self.open)} />
        }
    }

    /// Goes on with the plan in use, and not with the one that was found.
    fn keep_what_is(&self) -> Html {
        let searching = self.searching.clone();
        let onclick = Callback::from(move |_: MouseEvent| searching.forget());
        html! {
            <div class="plan-steps">
                <button type="button" class="tool" data-testid="forget-plan" {onclick}>{ "Keep the plan in use" }</button>
            </div>
        }
    }
}

/// The texts that a plan by these options is kept with. What is left of a quick list is planned by that list and the
/// shortest offcut that is asked here.
fn to_keep(list: Option<&[(String, String)]>, options: &Entries) -> Vec<(String, String)> {
    let options = typed(OPTIONS.fields, options);
    let is_shortest = |(id, _): &(String, String)| id == KEEP_FROM.id;
    match list {
        None => options,
        Some(list) => {
            let list = list.iter().filter(|it| !is_shortest(it)).cloned();
            list.chain(options.into_iter().filter(is_shortest)).collect()
        }
    }
}

/// The headline where there is no plan.
fn wanting(label: &str, words: &str) -> Html {
    html! {
        <div class="headline is-wanting" data-testid="answer-headline" role="status">
            <div class="headline__inside is-words">
                <p class="headline__label">{ label }</p>
                <p class="headline__need">{ words }</p>
            </div>
        </div>
    }
}
