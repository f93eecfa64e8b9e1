//! The list.

use std::collections::BTreeMap;

use crate::cutting;
use crate::job::{BoardState, CutPlan, Item, ItemId, Job, Part, Reckoned, Step};
use crate::measure::text::exact_text;
use crate::measure::{Length, Number};
use crate::planning::report::{known, shopping};
use crate::planning::ticking::bought_of;
use crate::planning::{line_of_money, no_longer_fits};
use crate::sheet::{Bench, Goods, Sentence};

/// Everything to buy.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct ToBuy {
    /// What is to be bought or is bought: boards in the order of the yard's list, then the rest by name.
    pub lines: Vec<Line>,
    /// Why the list is not all that it takes.
    pub in_the_way: Vec<InTheWay>,
    /// What it costs.
    pub money: Money,
    /// What that rests on and is ours; `None` where all of it is the person's.
    pub ours: Option<String>,
    /// What is known of the plan that the boards are of; `None` without one that fits the job.
    pub known: Option<Sentence>,
}

/// One line of the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// Where it comes from; what its tick is.
    pub source: Source,
    /// `2x6`, `No. 8 screws`.
    pub name: String,
    /// Thickness of a board or a rod.
    pub thickness: Option<Length>,
    /// Width of a board.
    pub width: Option<Length>,
    /// Of one.
    pub length: Option<Length>,
    /// How many the work takes, spares among them.
    pub wanted: u32,
    /// So many of them as spares.
    pub spares: u32,
    /// So many of them are on hand.
    pub on_hand: u32,
    /// So many of them are bought.
    pub bought: u32,
    /// Price of one in hundredths of money, where it is known.
    pub each: Option<i64>,
    /// The price is an example of ours, until somebody says otherwise.
    pub is_ours: bool,
    /// What it is for: parts, or the reckonings that say so.
    pub uses: Vec<String>,
}

/// Where a line comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Source {
    /// Boards of one kind of the plan in use, by its place in the cutting job.
    Boards(ItemId, usize),
    /// Goods, by the name of their tick.
    Goods(String),
}

/// Why the list is not all that it takes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum InTheWay {
    /// There are pieces to cut, and no plan of the boards for them.
    NoPlan,
    /// The plan in use no longer fits the job.
    Plan(Vec<Sentence>),
    /// A part that waits for a measurement: its boards are not in the list.
    Waits(ItemId),
    /// A reckoning that cannot answer, and why.
    Refused(ItemId, Sentence),
    /// A reckoning that says which screw, and nobody says how many: name and length of the screw.
    NotCounted(ItemId, String, Option<Length>),
}

/// What a list costs, in hundredths of money.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct Money {
    /// What is bought came to, boards of earlier plans among it.
    pub spent: i64,
    /// So much of it was spent on boards before the plan in use.
    pub before: i64,
    /// What is still to buy comes to.
    pub to_come: i64,
    /// So many lines have no price, and are in neither sum.
    pub without_price: u32,
}

impl Money {
    /// What all of it comes to.
    #[must_use]
    pub const fn whole(self) -> i64 {
        self.spent.saturating_add(self.to_come)
    }
}

impl Line {
    /// How many are still to buy.
    #[must_use]
    pub fn to_come(&self) -> u32 {
        self.wanted.saturating_sub(self.on_hand).saturating_sub(self.bought)
    }

    /// Nothing of it is still to buy.
    #[must_use]
    pub fn is_done(&self) -> bool {
        self.to_come() == 0
    }

    /// What all of it that is not on hand costs.
    #[must_use]
    pub fn price(&self) -> Option<i64> {
        times(self.each, self.wanted.saturating_sub(self.on_hand).max(self.bought))
    }

    /// The step that ticks it: all of it is bought, or none of it where all is bought already.
    #[must_use]
    pub fn ticking(&self, job: &Job) -> Option<Step> {
        match &self.source {
            Source::Boards(plan, kind) if self.is_done() => job.not_bought(*plan, *kind),
            Source::Boards(plan, kind) => job.buying(*plan, Some(*kind)),
            Source::Goods(_) if self.wanted <= self.on_hand => None,
            Source::Goods(what) => {
                let wanted = self.wanted.saturating_sub(self.on_hand);
                let (words, count) =
                    if self.is_done() { ("not bought", 0) } else { ("bought", wanted) };
                let change = job.ticking(0, &[(what.clone(), count)]);
                Some(Step::new(format!("{}: {words}", self.name), vec![change]))
            }
        }
    }
}

fn times(each: Option<i64>, count: u32) -> Option<i64> {
    each.and_then(|each| each.checked_mul(count.into()))
}

/// Everything to buy for a job.
#[must_use]
pub fn to_buy(job: &Job, reckoned: &Reckoned, bench: &Bench) -> ToBuy {
    let mut list = ToBuy::default();
    let mut before = 0;
    if let Some((id, (kept, states))) =
        job.plan_in_use().and_then(|id| Some((id, job.cut_plan(id)?)))
    {
        list.lines.extend(boards(job, id, kept, &states));
        list.known = Some(known(kept));
        before = kept.paid_cents;
    }
    if job.find_cut_plan(false).is_none() && has_pieces_to_cut(job, reckoned) {
        list.in_the_way.push(InTheWay::NoPlan);
    }
    if let Some((_, changes)) = no_longer_fits(job, reckoned, bench) {
        list.known = None;
        list.in_the_way.push(InTheWay::Plan(changes));
    }
    for (id, _) in job.parts() {
        let waits = reckoned.part(id).is_some_and(|it| {
            let is_wanted = it.quantity.as_ref().map_or(true, |count| it.done < *count);
            !it.waits_for.is_empty() && is_wanted
        });
        if waits {
            list.in_the_way.push(InTheWay::Waits(id));
        }
    }
    goods(job, reckoned, &mut list);
    list.money = money(&list.lines, before);
    list.ours = line_of_money(job, reckoned, bench);
    list
}

fn has_pieces_to_cut(job: &Job, reckoned: &Reckoned) -> bool {
    let mut parts = job.parts().into_iter().filter_map(|(id, _)| reckoned.part(id));
    parts.any(|it| it.quantity.as_ref().is_ok_and(|count| it.done < *count))
}

fn money(lines: &[Line], before: i64) -> Money {
    let mut sum = Money { spent: before, before, ..Money::default() };
    for line in lines {
        match (times(line.each, line.bought), times(line.each, line.to_come())) {
            (Some(spent), Some(to_come)) => {
                sum.spent = sum.spent.saturating_add(spent);
                sum.to_come = sum.to_come.saturating_add(to_come);
            }
            _ if line.wanted > line.on_hand => {
                sum.without_price = sum.without_price.saturating_add(1);
            }
            _ => {}
        }
    }
    sum
}

/// The boards that the plan in use buys.
fn boards(job: &Job, plan: ItemId, kept: &CutPlan, states: &[BoardState]) -> Vec<Line> {
    // What is cut from each kind, in one walk through the plan.
    let mut uses: BTreeMap<usize, BTreeMap<usize, ()>> = BTreeMap::new();
    for cut in &kept.plan.boards {
        if let cutting::Source::Board(kind) = cut.source {
            let of_kind = uses.entry(kind).or_default();
            of_kind.extend(cut.placed().into_iter().map(|placed| (placed.part, ())));
        }
    }
    let name_of = |part: &usize| kept.labels.parts.get(*part).map(|label| label.name.clone());
    let all = shopping(&kept.asked, &kept.plan, &kept.labels).unwrap_or_default();
    let line = |it: crate::planning::report::Purchase| {
        let parts = uses.get(&it.board).into_iter().flat_map(BTreeMap::keys);
        Line {
            source: Source::Boards(plan, it.board),
            name: it.section,
            thickness: it.size.map(|size| size.0),
            width: it.width,
            length: Some(it.length),
            wanted: it.count,
            spares: 0,
            on_hand: 0,
            bought: bought_of(kept, states, it.board),
            each: it.price.map(|(each, _)| each),
            is_ours: it.item.and_then(|id| job.item(id)).is_some_and(is_ours),
            uses: parts.filter_map(name_of).collect(),
        }
    };
    all.into_iter().map(line).collect()
}

fn is_ours(item: &Item) -> bool {
    matches!(item, Item::YardBoard(board) if board.is_ours)
}

/// What the kept reckonings take beside boards. The same thing is one line.
fn goods(job: &Job, reckoned: &Reckoned, list: &mut ToBuy) {
    let mut lines: BTreeMap<String, Line> = BTreeMap::new();
    let mut not_counted = Vec::new();
    let (ticked, parts) = (job.all_ticked(), job.parts());
    for (id, kept) in job.kept() {
        let Some(sheet) = reckoned.kept(id) else { continue };
        let Some(answer) = &sheet.answer else {
            let why = sheet.refusals.first().map(|refusal| refusal.sentence.clone());
            list.in_the_way.push(InTheWay::Refused(id, why.unwrap_or_default()));
            continue;
        };
        for goods in &answer.goods {
            let key = key_of(goods);
            match goods.count {
                None => not_counted.push((key, id, goods)),
                Some(_) if is_a_part(&parts, reckoned, id, goods) => {}
                Some(count) => {
                    let spares = u32::try_from(goods.spares).unwrap_or(u32::MAX);
                    let count = u32::try_from(count).unwrap_or(u32::MAX).saturating_add(spares);
                    let line = lines.entry(key).or_insert_with_key(|key| Line {
                        source: Source::Goods(key.clone()),
                        name: goods.name.clone(),
                        thickness: goods.across,
                        width: None,
                        length: goods.length,
                        wanted: 0,
                        spares: 0,
                        on_hand: 0,
                        bought: ticked.get(key).copied().unwrap_or(0),
                        each: None,
                        is_ours: false,
                        uses: Vec::new(),
                    });
                    line.wanted = line.wanted.saturating_add(count);
                    line.spares = line.spares.saturating_add(spares);
                    line.each = line.each.max(goods.each.and_then(cents));
                    line.uses.push(kept.title.clone());
                }
            }
        }
    }
    take_off_what_is_on_hand(job, reckoned, &mut lines);
    for (key, id, goods) in not_counted {
        if !lines.contains_key(&key) {
            let what = InTheWay::NotCounted(id, goods.name.clone(), goods.length);
            list.in_the_way.push(what);
        }
    }
    list.lines.extend(lines.into_values());
}

/// The name of the tick of some goods: what makes them another thing at the counter is in it.
fn key_of(goods: &Goods) -> String {
    let size = |length: Option<Length>| length.map_or_else(String::new, exact_text);
    format!("buy/{}/{}/{}", goods.name, size(goods.across), size(goods.length))
}

/// A price in hundredths, to the nearest.
fn cents(each: Number) -> Option<i64> {
    let half = Number::ratio(1, 2).ok()?;
    i64::try_from(((each * Number::whole(100)).ok()? + half).ok()?.floor()).ok()
}

/// Whether a rod is a part of the job: made from this very reckoning, or as long, square as written, and
/// not thinner. Then the plan buys it.
fn is_a_part(parts: &[(ItemId, &Part)], reckoned: &Reckoned, id: ItemId, goods: &Goods) -> bool {
    let (Some(across), Some(length)) = (goods.across, goods.length) else { return false };
    parts.iter().any(|(part_id, part)| {
        let is_made = part.made.as_ref().is_some_and(|made| made.kept == id);
        let is_it = reckoned.part(*part_id).is_some_and(|it| {
            it.length == Ok(length)
                && it.thickness == it.width
                && it.thickness.as_ref().is_ok_and(|thickness| *thickness >= across)
        });
        is_made || is_it
    })
}

/// Screws that lie about already.
fn take_off_what_is_on_hand(job: &Job, reckoned: &Reckoned, lines: &mut BTreeMap<String, Line>) {
    for (_, item) in job.items() {
        let Item::Screw(screw) = item else { continue };
        let Ok(length) = reckoned.length_of(&screw.length) else { continue };
        let goods = Goods {
            name: format!("No. {} screws", screw.gauge),
            across: None,
            length: Some(length),
            count: None,
            spares: 0,
            each: None,
        };
        if let Some(line) = lines.get_mut(&key_of(&goods)) {
            line.on_hand = line.on_hand.saturating_add(screw.quantity).min(line.wanted);
        }
    }
}
