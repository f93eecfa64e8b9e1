//! One piece that differs: it gets a size of its own in the places where it stands, and the others
//! keep theirs.
//!
//! A name of a size stands for all pieces that have it. Where one of them came out different, the
//! person says where that piece stands: in a field of a reckoning, at one of the pieces that are
//! worked out from it, or in a size with everything that hangs on it. There, once, its own size is
//! put in the place of the name.

use super::make_parts::left_with;
use super::{
    Change, Dimension, Item, ItemId, Job, Kept, Measure, MeasureKind, Part, Reckoned, Step, Written,
};
use crate::calculators::dowel::fields::{LEFT_PART, RIGHT_PART};
use crate::calculators::frame::fields::{LEG_LEFT, LEG_RIGHT};
use crate::calculators::{self, dowel, finish, frame, lumber, moisture, resaw_rip};
use crate::measure::Length;
use crate::measure::text::exact_text;
use crate::order::set_of;
use crate::sheet::Bench;

/// Fields that are as another one while they are empty: calculator, the other one, the empty one.
const FOLLOWERS: &[(&str, &str, &str)] = &[
    (frame::CALCULATOR.slug, LEG_LEFT.id, LEG_RIGHT.id),
    (dowel::CALCULATOR.slug, LEFT_PART.id, RIGHT_PART.id),
];

/// Calculators in which no piece stands: they are about boards, and about all pieces together.
const NO_PLACES: &[&str] = &[
    lumber::CALCULATOR.slug,
    resaw_rip::CALCULATOR.slug,
    moisture::CALCULATOR.slug,
    finish::CALCULATOR.slug,
];

/// Where a piece may stand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Spot {
    /// In a field of a kept reckoning.
    Field(ItemId, &'static str),
    /// At one piece of a part, counted from 0, which is worked out from the size directly, or by
    /// way of one other size.
    Piece(ItemId, usize, Option<ItemId>),
    /// In a size, with everything that is worked out from it.
    Size(ItemId),
}

/// The size of the job that a piece has by name, in one of its dimensions.
#[must_use]
pub fn size_of(job: &Job, reckoned: &Reckoned, part: ItemId, of: Dimension) -> Option<ItemId> {
    let Item::Part(part) = job.item(part)? else { return None };
    let text = text_of(part, of);
    let used = reckoned.used_in(text);
    let id = used.into_iter().next()?;
    let is_it = |item: &Item| matches!(item, Item::Measure(it) if it.name.trim() == text.trim());
    job.item(id).is_some_and(is_it).then_some(id)
}

fn text_of(part: &Part, of: Dimension) -> &String {
    match of {
        Dimension::Thickness => &part.thickness,
        Dimension::Width => &part.width,
        Dimension::Length => &part.length,
    }
}

/// Every place where a piece of `own` with this size may stand.
#[must_use]
pub fn spots(job: &Job, reckoned: &Reckoned, size: ItemId, own: ItemId) -> Vec<Spot> {
    let Some(Item::Measure(measure)) = job.item(size) else { return Vec::new() };
    let uses = |text: &str| one_replaced(text, reckoned, size, &measure.name).is_some();
    let mut all = Vec::new();
    for (id, kept) in job.kept() {
        let is_place = !NO_PLACES.contains(&kept.slug.as_str());
        let Some(calculator) = calculators::find(&kept.slug).filter(|_| is_place) else { continue };
        let written = |field: &str| {
            let entry = kept.entries.iter().find(|(known, _)| known == field);
            entry.map_or("", |(_, text)| text.as_str())
        };
        for field in calculator.fields {
            let is_asked = super::item::takes_names(&kept.slug, field.id);
            let follows = FOLLOWERS.iter().any(|(slug, of, empty)| {
                (*slug, *empty) == (kept.slug.as_str(), field.id)
                    && written(field.id).trim().is_empty()
                    && uses(written(of))
            });
            if is_asked && (follows || uses(written(field.id))) {
                all.push(Spot::Field(id, field.id));
            }
        }
    }
    let hanging = job.measures().into_iter().filter(|(_, measure)| {
        matches!(&measure.written, Written::Formula(text) if uses(text))
            && measure.as_cut.is_none()
            && measure.kind == MeasureKind::Length
    });
    let hanging: Vec<ItemId> = hanging.map(|(id, _)| id).collect();
    for (id, part) in job.parts().into_iter().filter(|(id, _)| *id != own) {
        let uses_one = |of: ItemId| {
            Dimension::ALL.into_iter().any(|it| reckoned.used_in(text_of(part, it)).contains(&of))
        };
        let via = hanging.iter().copied().find(|via| uses_one(*via));
        let count = part.quantity.trim().parse::<usize>().unwrap_or(0);
        if uses_one(size) || via.is_some() {
            let via = if uses_one(size) { None } else { via };
            all.extend(
                (0..count.min(super::MOST_PIECES as usize)).map(|at| Spot::Piece(id, at, via)),
            );
        }
    }
    all.extend(hanging.into_iter().map(Spot::Size));
    all
}

impl Spot {
    /// What it is called.
    #[must_use]
    pub fn words(&self, job: &Job) -> String {
        let name = |id: &ItemId| job.item(*id).map_or("", Item::name).to_owned();
        match self {
            Spot::Field(id, field) => {
                let slug = match job.item(*id) {
                    Some(Item::Kept(kept)) => kept.slug.as_str(),
                    _ => "",
                };
                let fields = calculators::find(slug).map_or(&[][..], |it| it.fields);
                let label = fields.iter().find(|it| it.id == *field).map_or("", |it| it.label);
                format!("{}: {}", name(id), label.to_lowercase())
            }
            Spot::Piece(id, at, _) => format!("at {} {}", name(id), at.saturating_add(1)),
            Spot::Size(id) => format!("{}, and all that is worked out from it", name(id)),
        }
    }
}

/// The step by which a piece has a size of its own where it stands. `None` where its size or a
/// place is not there any more.
#[must_use]
pub fn standing(
    job: &Job,
    reckoned: &Reckoned,
    bench: &Bench,
    (own, index, of): (ItemId, usize, Dimension),
    at: &[Spot],
) -> Option<Step> {
    let size = size_of(job, reckoned, own, of)?;
    let (Item::Part(part), Item::Measure(measure)) = (job.item(own)?, job.item(size)?) else {
        return None;
    };
    let is = part.piece(index).size(of, reckoned)?.ok()?;
    let name = free_name(job, &format!("{} {}", measure.name, index.saturating_add(1)));
    let mut making = Making { job, reckoned, size, name, changes: Vec::new(), added: 0 };
    let by = reckoned.measure(size)?.length().and_then(|wanted| (is - wanted).ok());
    making.add(Item::Measure(own_measure(measure, &making.name, is, by)));
    making.edit(own, |item| match item {
        Item::Part(part) => {
            let piece = part.piece(index).leaving(of, by);
            Some(Item::Part(part.with_piece(index, piece)))
        }
        _ => None,
    })?;
    for spot in at {
        match spot {
            Spot::Field(id, field) => making.field(*id, field)?,
            Spot::Size(id) => making.formula(*id)?,
            Spot::Piece(..) => {}
        }
    }
    // Pieces of one part that stand at it go together.
    let parts = at.iter().filter_map(|spot| match spot {
        Spot::Piece(id, _, via) => Some((*id, *via)),
        _ => None,
    });
    for (id, via) in set_of(parts) {
        let which = at.iter().filter_map(|spot| match spot {
            Spot::Piece(part, at, _) if *part == id => Some(*at),
            _ => None,
        });
        making.part(id, via, &which.collect::<Vec<_>>())?;
    }
    let label = format!("{} has a size of its own", making.name);
    // Pieces alike of which one has a size of its own stay one part.
    Some(left_with(job, reckoned, bench, Step::new(label, making.changes)))
}

/// The size of the one piece: what it is, against what all of them are.
fn own_measure(of_all: &Measure, name: &str, is: Length, by: Option<Length>) -> Measure {
    Measure {
        name: name.to_owned(),
        written: Written::Formula(of_all.name.clone()),
        as_cut: Some(exact_text(is)),
        is_cut: true,
        wait: false,
        note: String::new(),
        left: by,
        ..of_all.clone()
    }
}

/// The name, or with a number behind it.
fn free_name(job: &Job, name: &str) -> String {
    let measures = job.measures();
    let is_free = |name: &str| !measures.iter().any(|(_, it)| super::is_same_name(&it.name, name));
    let mut with_number = (2_u32..).map(|n| format!("{name} no {n}"));
    if is_free(name) {
        return name.to_owned();
    }
    with_number.find(|name| is_free(name)).unwrap_or_default()
}

/// A step in the making. An item is changed once, however often it is touched.
struct Making<'a> {
    job: &'a Job,
    reckoned: &'a Reckoned,
    size: ItemId,
    /// Of the size of the one piece.
    name: String,
    changes: Vec<Change>,
    added: u64,
}

impl Making<'_> {
    fn add(&mut self, item: Item) {
        self.changes.push(self.job.adding(self.added, item));
        self.added = self.added.saturating_add(1);
    }

    fn edit(&mut self, id: ItemId, edit: impl FnOnce(Item) -> Option<Item>) -> Option<()> {
        if let Some(change) = self.changes.iter_mut().find(|change| change.id == id) {
            change.after = Some(edit(change.after.take()?)?);
        } else {
            let item = self.job.item(id)?;
            self.changes.push(self.job.replacing(id, edit(item.clone())?));
        }
        Some(())
    }

    fn replaced(&self, text: &str) -> Option<String> {
        one_replaced(text, self.reckoned, self.size, &self.name)
    }

    fn field(&mut self, id: ItemId, field: &str) -> Option<()> {
        let Item::Kept(kept) = self.job.item(id)? else { return None };
        let written = kept.entries.iter().find(|(known, _)| known == field);
        let written = written.map_or("", |(_, text)| text.trim());
        // One that is empty is as another one: from now on it is its own.
        let new = if written.is_empty() { self.name.clone() } else { self.replaced(written)? };
        // What was as this one stays as it was.
        let follower = FOLLOWERS
            .iter()
            .find(|(slug, of, _)| (*slug, *of) == (kept.slug.as_str(), field))
            .map(|(.., follower)| (*follower, written.to_owned()));
        self.edit(id, |item| match item {
            Item::Kept(mut kept) => {
                set(&mut kept, field, new);
                if let Some((follower, as_before)) = follower {
                    let known = kept.entries.iter().find(|(known, _)| known == follower);
                    if known.is_none_or(|(_, text)| text.trim().is_empty()) {
                        set(&mut kept, follower, as_before);
                    }
                }
                Some(Item::Kept(kept))
            }
            _ => None,
        })
    }

    fn formula(&mut self, id: ItemId) -> Option<()> {
        let new = match self.job.item(id)? {
            Item::Measure(Measure { written: Written::Formula(text), .. }) => {
                self.replaced(text)?
            }
            _ => return None,
        };
        self.edit(id, |item| match item {
            Item::Measure(measure) => {
                Some(Item::Measure(Measure { written: Written::Formula(new), ..measure }))
            }
            _ => None,
        })
    }

    /// These pieces of a part become a part of their own, with sizes that use the one piece's.
    fn part(&mut self, id: ItemId, via: Option<ItemId>, which: &[usize]) -> Option<()> {
        let Item::Part(part) = self.job.item(id)? else { return None };
        let quantity = part.quantity.trim().parse::<usize>().ok()?;
        let mut own = part.clone();
        let via = match via {
            Some(via) => Some((via, self.via(via)?)),
            None => None,
        };
        for text in [&mut own.thickness, &mut own.width, &mut own.length] {
            match &via {
                Some((via, name)) => *text = self.reckoned.with_name(text, *via, name),
                None => *text = self.replaced(text).unwrap_or_else(|| text.clone()),
            }
        }
        if which.len() >= quantity {
            return self.edit(id, |_| Some(Item::Part(own)));
        }
        own.name = format!("{} with {}", part.name, self.name);
        own.quantity = which.len().to_string();
        own.made = None;
        own.pieces = which.iter().map(|at| part.piece(*at)).collect();
        let rest = quantity.checked_sub(which.len())?;
        self.edit(id, |item| match item {
            Item::Part(mut part) => {
                part.quantity = rest.to_string();
                let stay = (0..part.pieces.len()).filter(|at| !which.contains(at));
                part.pieces = stay.map(|at| part.piece(at)).collect();
                Some(Item::Part(part))
            }
            _ => None,
        })?;
        self.add(Item::Part(own));
        Some(())
    }

    /// The name of a size like this one that uses the one piece's, made where it is not there yet.
    fn via(&mut self, via: ItemId) -> Option<String> {
        let Item::Measure(measure) = self.job.item(via)? else { return None };
        let Written::Formula(text) = &measure.written else { return None };
        let name = format!("{} with {}", measure.name, self.name);
        let is_it = |change: &Change| change.after.as_ref().is_some_and(|it| it.name() == name);
        if !self.changes.iter().any(is_it) {
            let written = Written::Formula(self.replaced(text)?);
            let own = Measure { name: name.clone(), written, is_cut: false, ..measure.clone() };
            self.add(Item::Measure(own));
        }
        Some(name)
    }
}

fn set(kept: &mut Kept, field: &str, text: String) {
    match kept.entries.iter_mut().find(|(known, _)| known == field) {
        Some((_, known)) => *known = text,
        None => kept.entries.push((field.to_owned(), text)),
    }
}

/// A text with one of the things that a name stands for having another name: `2 × leg` is then
/// `(leg + leg 2)`, and `5 @ plank` is `4 @ plank, plank 2`. `None` where the name is not in it.
fn one_replaced(text: &str, reckoned: &Reckoned, id: ItemId, own: &str) -> Option<String> {
    let (at, length) = reckoned.first_place(text, id)?;
    let (before, rest) = text.split_at_checked(at)?;
    let (name, after) = rest.split_at_checked(length)?;
    let simple = || format!("{before}{own}{after}");
    let head = before.trim_end();
    let sign = head.chars().next_back();
    let Some(head) = sign.and_then(|sign| head.strip_suffix(sign)) else { return Some(simple()) };
    let head = head.trim_end();
    let digits = head.chars().rev().take_while(char::is_ascii_digit).count();
    let (start, number) = head.split_at_checked(head.len().saturating_sub(digits))?;
    let many = number.parse::<u32>().unwrap_or(1);
    // Part of another number, or something is divided by all of them.
    let is_alone = start.trim_end().chars().next_back().is_none_or(|c| "+-−(,".contains(c));
    if many < 2 || !is_alone {
        return Some(simple());
    }
    let others = many.saturating_sub(1);
    let others = |between: &str| match others {
        1 => name.to_owned(),
        others => format!("{others} {between} {name}"),
    };
    match sign {
        Some('×' | '*') => Some(format!("{start}({} + {own}){after}", others("×"))),
        Some('@') if after.trim_start().is_empty() || after.trim_start().starts_with(',') => {
            Some(format!("{start}{}, {own}{after}", others("@")))
        }
        _ => Some(simple()),
    }
}
