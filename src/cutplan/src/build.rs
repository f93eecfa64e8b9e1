//! From the job to models, one for each group of parts that share no board with the others. Our own.

use std::collections::BTreeMap;
use std::rc::Rc;

use reckoner_core::cutting::{CrossSize, CutProblem, Job, Part, RipRules, StockView, Units};

use crate::forms::list_forms;
use crate::model::{
    Bin, Choice, Form, Item, Kind, Make, Model, Nest, PieceMake, Stock, StripMake, Way,
};

/// A board's nests are listed as forms when there are at most this many in all.
const MOST_FORMS: usize = 4_000;

/// The most ways to resaw a strip that are looked at. Beyond it the model admits that it misses some.
const MOST_LAYERINGS: usize = 2_000;

/// The most that leaving one part out may count.
const LARGEST_RANK: i64 = 1 << 32;

/// What the search is to minimise.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Aim {
    /// Every part cut; least money.
    Money,
    /// Nothing bought; as many parts as possible, lower priority numbers first.
    Rack,
}

/// What a bin accepts, as a key.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
enum Accepts {
    /// Whole parts of one section.
    Section(String),
    /// Parts of a strip's or layer's exact size: wood, width, thickness, ripped, resawn.
    Strip(String, Units, Units, bool, bool),
    /// Parts across a block: wood, length, thickness; ripped, or as wide as given.
    Block(String, Units, Units, Option<Units>),
}

/// A part in one of the ways it may lie.
struct Lie<'a> {
    item: usize,
    part: &'a Part,
    wood: &'a str,
    along: Units,
    across: Units,
    thick: Units,
    turned: bool,
}

struct Builder<'a> {
    job: &'a Job,
    lies: Vec<Lie<'a>>,
    items: Vec<Item>,
    sections: Vec<&'a str>,
    lengths: Vec<Units>,
    kinds: Vec<Kind>,
    known: BTreeMap<Accepts, usize>,
    lossy: bool,
}

/// Builds the models.
///
/// # Errors
/// A part that no board can ever hold.
pub(crate) fn models(job: &Job, aim: Aim) -> Result<Vec<Model>, CutProblem> {
    let mut builder = Builder::new(job, aim);
    let mut stocks: Vec<Stock> = Vec::new();
    for (number, view) in job.stock().enumerate() {
        if aim == Aim::Rack && view.limit.is_none() {
            continue;
        }
        if view.limit != Some(0) {
            stocks.push(builder.stock(number, view, aim));
        }
    }
    merge_kinds(&builder.kinds, &mut stocks);
    let mut holds = vec![false; builder.items.len()];
    for stock in &stocks {
        for bin in every_bin(stock) {
            for way in &builder.kinds[bin.kind].ways {
                holds[way.item] |= way.weight <= bin.cap;
            }
        }
    }
    if aim == Aim::Money
        && let Some(lost) = holds.iter().position(|&held| !held)
    {
        return Err(builder.fits_nowhere(lost));
    }
    Ok(split(&builder, &stocks, aim))
}

fn every_bin(stock: &Stock) -> impl Iterator<Item = &Bin> {
    let listed = stock.forms.iter().flat_map(|form| form.bins.iter());
    let nested = stock
        .nests
        .iter()
        .flat_map(|nest| nest.choices.iter())
        .flat_map(|choice| choice.bins.iter());
    listed.chain(nested)
}

impl<'a> Builder<'a> {
    fn new(job: &'a Job, aim: Aim) -> Self {
        let mut groups: BTreeMap<(&str, Units, bool, bool, bool, u32), usize> = BTreeMap::new();
        let mut builder = Self {
            job,
            lies: Vec::new(),
            items: Vec::new(),
            sections: Vec::new(),
            lengths: Vec::new(),
            kinds: Vec::new(),
            known: BTreeMap::new(),
            lossy: false,
        };
        for (at, part) in job.parts.iter().enumerate().filter(|(_, p)| p.quantity > 0) {
            let rank = if aim == Aim::Rack { part.priority } else { 0 };
            let key = (
                part.section.as_str(),
                part.length,
                part.may_rip,
                part.may_resaw,
                part.grain_free,
                rank,
            );
            let fresh = builder.items.len();
            let item = *groups.entry(key).or_insert(fresh);
            if item == fresh {
                builder.add_item(part, item);
            }
            builder.items[item].demand += part.quantity;
            builder.items[item].parts.push((at, part.quantity));
        }
        builder.set_skips(aim);
        builder
    }

    fn add_item(&mut self, part: &'a Part, item: usize) {
        let kerf = self.job.saw.kerf;
        let section = self.job.section(&part.section);
        let size = section.and_then(|section| section.size);
        let wood = section.map_or("", |section| section.wood.as_str());
        let face = size.map_or(1, |s| s.width.min(1 << 12) * s.thickness.min(1 << 10));
        self.items.push(Item {
            demand: 0,
            skip: 1,
            rank: 1,
            size: (part.length + kerf).saturating_mul(face).min(1 << 40),
            parts: Vec::new(),
        });
        self.sections.push(&part.section);
        self.lengths.push(part.length);
        let width = size.map_or(0, |s| s.width);
        for turned in [false, true] {
            if turned && (!part.grain_free || size.is_none() || width == part.length) {
                continue;
            }
            let (along, across) = if turned { (width, part.length) } else { (part.length, width) };
            self.lies.push(Lie {
                item,
                part,
                wood,
                along,
                across,
                thick: size.map_or(0, |s| s.thickness),
                turned,
            });
        }
    }

    /// In a money job a part that no pattern covers costs more than every board that could be bought. On the rack one
    /// part of a better priority counts more than all parts of worse ones together.
    fn set_skips(&mut self, aim: Aim) {
        let total: i64 = self.items.iter().map(|item| i64::from(item.demand)).sum();
        if aim == Aim::Rack {
            self.set_ranks();
        }
        let boards = self.job.stock().map(|stock| {
            let count = stock.limit.map_or(total, i64::from).min(total);
            stock.price_cents.saturating_mul(count)
        });
        let outs = self.items.iter().map(|item| item.rank.saturating_mul(i64::from(item.demand)));
        let most = boards.chain(outs).fold(1, i64::saturating_add);
        for item in &mut self.items {
            item.skip = most;
        }
    }

    fn set_ranks(&mut self) {
        let priority = |item: &Item| item.parts.first().map_or(0, |p| self.job.parts[p.0].priority);
        let mut counts: BTreeMap<u32, i64> = BTreeMap::new();
        for item in &self.items {
            *counts.entry(priority(item)).or_insert(0) += i64::from(item.demand);
        }
        // From the worst priority up: each one more than everything below it together. With so many
        // priorities that the numbers would leave the safe range, the best of them count alike.
        let mut below = 0_i64;
        let mut ranks = BTreeMap::new();
        for (&at, &count) in counts.iter().rev() {
            let each = (below + 1).min(LARGEST_RANK);
            ranks.insert(at, each);
            below = below.saturating_add(each.saturating_mul(count));
        }
        let ranks: Vec<i64> = self
            .items
            .iter()
            .map(|item| ranks.get(&priority(item)).copied().unwrap_or(1))
            .collect();
        for (item, rank) in self.items.iter_mut().zip(ranks) {
            item.rank = rank;
        }
    }

    fn kind(&mut self, accepts: Accepts) -> usize {
        if let Some(&kind) = self.known.get(&accepts) {
            return kind;
        }
        let kerf = self.job.saw.kerf;
        let rip_kerf = self.job.saw.rip.as_ref().map_or(0, |rip| rip.kerf);
        let mut ways: Vec<Way> = Vec::new();
        for lie in &self.lies {
            let weight = match &accepts {
                Accepts::Section(id) => {
                    (lie.part.section == *id && !lie.turned).then_some(lie.along + kerf)
                }
                Accepts::Strip(wood, width, thick, ripped, resawn) => (lie.wood == wood
                    && lie.across == *width
                    && lie.thick == *thick
                    && (!ripped || lie.part.may_rip)
                    && (!resawn || lie.part.may_resaw))
                    .then_some(lie.along + kerf),
                Accepts::Block(wood, length, thick, whole) => {
                    let fits = lie.wood == wood && lie.along == *length && lie.thick == *thick;
                    match whole {
                        Some(width) => (fits && lie.across == *width).then_some(1),
                        None => (fits && lie.part.may_rip).then_some(lie.across + rip_kerf),
                    }
                }
            };
            if let Some(weight) = weight {
                ways.push(Way { item: lie.item, weight, turned: lie.turned });
            }
        }
        ways.sort_by_key(|way| (std::cmp::Reverse(way.weight), way.item));
        self.kinds.push(Kind { ways, out: false });
        self.known.insert(accepts, self.kinds.len() - 1);
        self.kinds.len() - 1
    }

    /// One bin per segment that can hold anything.
    fn row(&mut self, accepts: Accepts, rooms: &[Units], piece: usize, layer: usize) -> Vec<Bin> {
        let kind = self.kind(accepts);
        let lightest = self.kinds[kind].ways.last().map(|way| way.weight);
        let Some(lightest) = lightest else {
            return Vec::new();
        };
        rooms
            .iter()
            .enumerate()
            .filter(|(_, room)| **room >= lightest)
            .map(|(segment, &cap)| Bin { kind, cap, piece, layer, segment })
            .collect()
    }

    fn stock(&mut self, number: usize, view: StockView<'_>, aim: Aim) -> Stock {
        let kerf = self.job.saw.kerf;
        let rooms: Vec<Units> =
            view.segments(kerf).iter().map(|(from, to)| to - from + kerf).collect();
        let mut forms = Vec::new();
        let mut nests = Vec::new();
        let section = self.job.section(view.section);
        let size = section.and_then(|section| section.size);
        match (&self.job.saw.rip, size) {
            (Some(rip), Some(size)) => {
                let rip = rip.clone();
                let wood = section.map_or_else(String::new, |section| section.wood.clone());
                let long_enough = view.length >= rip.least_length;
                let saws =
                    if long_enough { rip.clone() } else { RipRules { resaw: None, ..rip.clone() } };
                for (make, bins) in self.strips(&saws, &wood, size, size.width, &rooms, false) {
                    forms.push(Form { bins, make: Make::Strips(vec![make], false) });
                }
                if long_enough {
                    nests.extend(self.ripped(&rip, &wood, size, &rooms));
                }
                if rip.crosscut_first {
                    nests.extend(self.blocks(&rip, &wood, size, &rooms));
                }
            }
            _ => {
                let bins = self.row(Accepts::Section(view.section.to_owned()), &rooms, 0, 0);
                if !bins.is_empty() {
                    forms.push(Form { bins, make: Make::Crosscut });
                }
            }
        }
        nests.retain(|nest| match list_forms(nest, MOST_FORMS) {
            Some(listed) => {
                forms.extend(listed);
                false
            }
            None => true,
        });
        Stock {
            number,
            cost: if aim == Aim::Rack { 0 } else { view.price_cents },
            limit: view.limit,
            forms: forms.into_iter().map(Rc::new).collect(),
            nests,
            out: None,
        }
    }

    /// Every way to use a strip of that width: whole, or resawn into each largest choice of layers.
    fn strips(
        &mut self,
        rip: &RipRules,
        wood: &str,
        size: CrossSize,
        width: Units,
        rooms: &[Units],
        ripped: bool,
    ) -> Vec<(StripMake, Vec<Bin>)> {
        let mut found = Vec::new();
        let accepts = |thick, resawn| Accepts::Strip(wood.to_owned(), width, thick, ripped, resawn);
        let bins = self.row(accepts(size.thickness, false), rooms, 0, 0);
        if !bins.is_empty() {
            let make = StripMake { width, layers: vec![size.thickness], resawn: false };
            found.push((make, bins));
        }
        let Some(resaw) = &rip.resaw else {
            return found;
        };
        if resaw.greatest_width.is_some_and(|most| width > most) {
            return found;
        }
        let mut choices = Vec::new();
        for thick in distinct(self.lies.iter().map(|lie| lie.thick)) {
            if thick < resaw.least_thickness.max(1) {
                continue;
            }
            let bins = self.row(accepts(thick, true), rooms, 0, 0);
            if let Some(first) = bins.first() {
                let most = self.most_pieces(first.kind);
                let make = StripMake { width: thick, layers: Vec::new(), resawn: true };
                choices.push(Choice {
                    weight: thick + resaw.kerf,
                    bins,
                    piece: PieceMake::Strip(make),
                    most,
                });
            }
        }
        let room = size.thickness - resaw.near_face - resaw.far_face + resaw.kerf;
        let nest = Nest { rooms: vec![room], choices };
        let Some(layered) = list_forms(&nest, MOST_LAYERINGS) else {
            self.lossy = true;
            return found;
        };
        for form in layered {
            let Make::Strips(layers, _) = form.make else {
                continue;
            };
            let make = StripMake {
                width,
                layers: layers.iter().map(|layer| layer.width).collect(),
                resawn: true,
            };
            let bins = form.bins.iter().map(|bin| Bin { piece: 0, layer: bin.piece, ..*bin });
            found.push((make, bins.collect()));
        }
        found
    }

    fn ripped(
        &mut self,
        rip: &RipRules,
        wood: &str,
        size: CrossSize,
        rooms: &[Units],
    ) -> Option<Nest> {
        let room = size.width - rip.near_edge - rip.far_edge + rip.kerf;
        let mut choices = Vec::new();
        for width in distinct(self.lies.iter().map(|lie| lie.across)) {
            if width < rip.least_width.max(1) || width + rip.kerf > room {
                continue;
            }
            // A strip without a part is useless, so no more strips than parts of that width.
            let most = self
                .lies
                .iter()
                .filter(|lie| lie.across == width)
                .map(|lie| self.items[lie.item].demand)
                .fold(0, u32::saturating_add);
            for (make, bins) in self.strips(rip, wood, size, width, rooms, true) {
                choices.push(Choice {
                    weight: width + rip.kerf,
                    bins,
                    piece: PieceMake::Strip(make),
                    most,
                });
            }
        }
        (!choices.is_empty()).then(|| Nest { rooms: vec![room], choices })
    }

    fn blocks(
        &mut self,
        rip: &RipRules,
        wood: &str,
        size: CrossSize,
        rooms: &[Units],
    ) -> Option<Nest> {
        let kerf = self.job.saw.kerf;
        let across = size.width - rip.near_edge - rip.far_edge + rip.kerf;
        let longest = rooms.iter().copied().max().unwrap_or(0);
        let mut choices = Vec::new();
        for length in distinct(self.lies.iter().map(|lie| lie.along)) {
            if length + kerf > longest {
                continue;
            }
            for whole in [false, true] {
                if !whole && length < rip.least_length {
                    continue;
                }
                let wide = whole.then_some(size.width);
                let kind = self.kind(Accepts::Block(wood.to_owned(), length, size.thickness, wide));
                if !whole {
                    let least = rip.least_width + rip.kerf;
                    self.kinds[kind].ways.retain(|way| way.weight >= least);
                }
                let cap = if whole { 1 } else { across };
                let ways = &self.kinds[kind].ways;
                if ways.last().is_some_and(|way| way.weight <= cap) {
                    choices.push(Choice {
                        weight: length + kerf,
                        bins: vec![Bin { kind, cap, piece: 0, layer: 0, segment: 0 }],
                        piece: PieceMake::Block(length, whole),
                        most: self.most_pieces(kind),
                    });
                }
            }
        }
        (!choices.is_empty()).then(|| Nest { rooms: rooms.to_vec(), choices })
    }

    fn most_pieces(&self, kind: usize) -> u32 {
        let ways = &self.kinds[kind].ways;
        ways.iter().map(|way| self.items[way.item].demand).fold(0, u32::saturating_add)
    }

    fn fits_nowhere(&self, item: usize) -> CutProblem {
        let at = self.items[item].parts.first().map_or(0, |part| part.0);
        let part = &self.job.parts[at];
        let longest_clear = self
            .job
            .stock()
            .filter(|stock| stock.section == part.section && stock.limit != Some(0))
            .flat_map(|stock| stock.segments(self.job.saw.kerf))
            .map(|(from, to)| to - from)
            .max();
        CutProblem::PartFitsNowhere { id: part.id.clone(), length: part.length, longest_clear }
    }
}

fn distinct(values: impl Iterator<Item = Units>) -> Vec<Units> {
    let mut all: Vec<Units> = values.filter(|&value| value > 0).collect();
    all.sort_unstable();
    all.dedup();
    all
}

/// Lets bins that accept the same parts at the same weights be of one kind: a strip as wide as its board and a ripped one,
/// where every part of that width may be ripped. The search then sees that they can replace each other.
fn merge_kinds(kinds: &[Kind], stocks: &mut [Stock]) {
    let first_like: Vec<usize> = kinds
        .iter()
        .map(|kind| kinds.iter().position(|other| other.ways == kind.ways).unwrap_or(0))
        .collect();
    let merge = |bins: &mut Vec<Bin>| {
        for bin in bins {
            bin.kind = first_like[bin.kind];
        }
    };
    for stock in stocks {
        for form in &mut stock.forms {
            merge(&mut Rc::make_mut(form).bins);
        }
        for choice in stock.nests.iter_mut().flat_map(|nest| nest.choices.iter_mut()) {
            merge(&mut choice.bins);
        }
    }
}

/// Splits what shares no board into models of its own.
fn split(builder: &Builder<'_>, stocks: &[Stock], aim: Aim) -> Vec<Model> {
    let (items, kinds) = (&builder.items, &builder.kinds);
    let mut group: Vec<usize> = (0..items.len()).collect();
    let find = |group: &[usize], mut at: usize| {
        while group[at] != at {
            at = group[at];
        }
        at
    };
    let mut home = vec![None; stocks.len()];
    for (number, stock) in stocks.iter().enumerate() {
        for bin in every_bin(stock) {
            for way in kinds[bin.kind].ways.iter().filter(|way| way.weight <= bin.cap) {
                let first = *home[number].get_or_insert(way.item);
                let (a, b) = (find(&group, first), find(&group, way.item));
                group[a.max(b)] = a.min(b);
            }
        }
    }
    let mut models = Vec::new();
    for root in 0..items.len() {
        if find(&group, root) != root {
            continue;
        }
        let members: Vec<usize> =
            (0..items.len()).filter(|&item| find(&group, item) == root).collect();
        let place: BTreeMap<usize, usize> = members.iter().copied().zip(0..).collect();
        let mut own_kinds: Vec<Kind> = kinds
            .iter()
            .map(|kind| Kind {
                out: false,
                ways: kind
                    .ways
                    .iter()
                    .filter_map(|way| place.get(&way.item).map(|&item| Way { item, ..*way }))
                    .collect(),
            })
            .collect();
        let mut own_stocks: Vec<Stock> = stocks
            .iter()
            .zip(&home)
            .filter(|(_, home)| home.is_some_and(|item| find(&group, item) == root))
            .map(|(stock, _)| stock.clone())
            .collect();
        let own_items: Vec<Item> = members.iter().map(|&item| items[item].clone()).collect();
        if aim == Aim::Rack {
            add_outs(&own_items, &mut own_kinds, &mut own_stocks);
        }
        models.push(Model {
            items: own_items,
            kinds: own_kinds,
            stocks: own_stocks,
            lossy: builder.lossy,
        });
    }
    models
}

/// Leaving a part out, as a board that holds one of it.
fn add_outs(items: &[Item], kinds: &mut Vec<Kind>, stocks: &mut Vec<Stock>) {
    for (item, entry) in items.iter().enumerate() {
        let kind = kinds.len();
        kinds.push(Kind { ways: vec![Way { item, weight: 1, turned: false }], out: true });
        let bin = Bin { kind, cap: 1, piece: 0, layer: 0, segment: 0 };
        stocks.push(Stock {
            number: usize::MAX,
            cost: entry.rank,
            limit: Some(entry.demand),
            forms: vec![Rc::new(Form { bins: vec![bin], make: Make::Crosscut })],
            nests: Vec::new(),
            out: Some(item),
        });
    }
}
