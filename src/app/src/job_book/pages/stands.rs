//! One piece that came out different: where it stands, and what moves with that.

use reckoner_core::attention::outcome;
use reckoner_core::job::own_size::{Spot, size_of, spots, standing};
use reckoner_core::job::{Dimension, Item, ItemId};
use yew::prelude::*;

use super::attention::then_look_at;
use super::head::{bar, lost};
use super::moved::moved_list;
use super::open::{Open, Shared};
use crate::components::icon::{Icon, icon};
use crate::platform::{address, storage};

/// The page `stands/PART/PIECE/SIZE`; `None` for an address of no such piece.
pub(super) fn page(open: &Open, argument: &str) -> Option<Html> {
    let mut words = argument.split('/');
    let id = ItemId(words.next()?.parse().ok()?);
    let index: usize = words.next()?.parse().ok()?;
    let of = words.next()?;
    let of = Dimension::ALL.into_iter().find(|it| it.word() == of)?;
    Some(
        html! { <Stands key={argument.to_owned()} open={Shared(open.clone())} {id} {index} {of} /> },
    )
}

/// What was tapped for a piece and is not in the job yet, kept for the page that is loaded again.
#[derive(Clone)]
struct Begun {
    open: Open,
    /// The piece, as in the address.
    place: String,
}

impl Begun {
    /// What is kept of every piece of the job: the piece, then each place, a line for each; an empty line stands between two.
    fn all(&self) -> Vec<Vec<String>> {
        let kept = storage::get(&storage::stands(&self.open.key)).unwrap_or_default();
        let pieces = kept.split("\n\n").filter(|it| !it.is_empty());
        pieces.map(|it| it.lines().map(str::to_owned).collect()).collect()
    }

    fn is_of_this(&self, lines: &[String]) -> bool {
        lines.first() == Some(&self.place)
    }

    /// The places that were tapped, of those that there are.
    fn read(&self, all: &[Spot]) -> Vec<Spot> {
        let mut kept = self.all();
        kept.retain(|lines| self.is_of_this(lines));
        let words: Vec<String> = kept.concat();
        let is_tapped = |it: &&Spot| words.contains(&it.words(&self.open.book.job));
        all.iter().filter(is_tapped).cloned().collect()
    }

    fn write(&self, tapped: &[Spot]) {
        let mut all = self.all();
        all.retain(|lines| !self.is_of_this(lines));
        if !tapped.is_empty() {
            let words = tapped.iter().map(|it| it.words(&self.open.book.job));
            all.push(core::iter::once(self.place.clone()).chain(words).collect());
        }
        let name = storage::stands(&self.open.key);
        if all.is_empty() {
            storage::remove(&name);
        } else {
            let pieces: Vec<String> = all.iter().map(|lines| lines.join("\n")).collect();
            storage::set(&name, &pieces.join("\n\n"));
        }
    }
}

#[derive(Properties, PartialEq)]
struct StandsProps {
    open: Shared,
    id: ItemId,
    index: usize,
    of: Dimension,
}

#[component]
fn Stands(props: &StandsProps) -> Html {
    let StandsProps { open: Shared(open), id, index, of } = props;
    let (id, index, of) = (*id, *index, *of);
    let job = &open.book.job;
    let size = size_of(job, &open.reckoned, id, of);
    let all = size.map_or_else(Vec::new, |size| spots(job, &open.reckoned, size, id));
    let begun = Begun { open: open.clone(), place: format!("{}/{index}/{}", id.0, of.word()) };
    let chosen = use_state_eq(|| begun.read(&all));
    let (Some(Item::Part(part)), Some(_)) = (job.item(id), size) else { return lost(open) };
    let back = open.at(&format!("piece/{}/{index}", id.0));
    let step = standing(job, &open.reckoned, &open.settings.bench, (id, index, of), &chosen);
    let comes = step.and_then(|step| outcome(job, &open.reckoned, &open.settings.bench, &step));
    let put = {
        let (open, chosen, back) = (open.clone(), chosen.clone(), back.clone());
        let begun = begun.clone();
        Callback::from(move |_: MouseEvent| {
            address::go_by(|| {
                let step = |job: &_| {
                    standing(job, &open.reckoned, &open.settings.bench, (id, index, of), &chosen)
                };
                let is_made = open.on_page.make(step);
                if is_made {
                    begun.write(&[]);
                }
                is_made.then(|| back.clone())
            });
        })
    };
    let spot = |it: &Spot| {
        let is_in = chosen.contains(it);
        let onclick = {
            let (chosen, it, begun) = (chosen.clone(), it.clone(), begun.clone());
            Callback::from(move |_: MouseEvent| {
                let mut now = (*chosen).clone();
                match now.iter().position(|other| *other == it) {
                    Some(at) => drop(now.remove(at)),
                    None => now.push(it.clone()),
                }
                begun.write(&now);
                chosen.set(now);
            })
        };
        html! {
            <li><button type="button" class="row row--choose" {onclick} data-testid={format!("spot-{}", it.words(job))}
                aria-pressed={if is_in { "true" } else { "false" }}>
                <span class="row__name"><span class="row__box">if is_in { { icon(Icon::Tick) } }</span>{ it.words(job) }</span>
            </button></li>
        }
    };
    let title = format!("{} {}: where it stands", part.name, index.saturating_add(1));
    html! {
        <div class="page">
            { bar(open, &back, &title) }
            <main class="job" data-testid="stands">
                <p class="job__words">
                    { format!("Tap every place where this one piece stands. There its own {} counts; the others keep theirs.", of.word()) }
                </p>
                <ul class="rows">{ for all.iter().map(spot) }</ul>
                if let Some(comes) = &comes {
                    { moved_list(open, &comes.job, &comes.moves, &comes.parts) }
                    { then_look_at(comes) }
                }
                <div class="adds">
                    <button type="button" class="tool tool--main" data-testid="stands-there" disabled={comes.is_none()} onclick={put}>
                        { "It stands there" }
                    </button>
                </div>
            </main>
        </div>
    }
}
