//! What ways out and places do in the shop.

use std::collections::BTreeMap;

use reckoner_core::attention::{Does, Fact};
use reckoner_core::job::own_size::{Spot, spots, standing};
use reckoner_core::job::{ItemId, Job, Reckoned, Step};
use reckoner_core::measure::Length;
use reckoner_core::sheet::Bench;

use super::place;
use super::shop::{self, By, KNOWN, Shop, Size, less};

/// What the one who takes this way does in the shop.
pub(super) fn take_way(shop: &mut Shop, fact: &Fact, does: Does) {
    match fact {
        Fact::Off { part, pieces, of, is, wanted } => {
            let (part, of) = (shop.part_at(*part), place(*of));
            for index in pieces {
                let piece = &mut shop.parts[part].pieces[*index];
                match does {
                    Does::Trim(by) => {
                        assert_eq!(less(*is, *wanted), by);
                        (piece.sizes[of], piece.left[of]) = (Some(*wanted), None);
                    }
                    Does::Shim(_) | Does::Leave => piece.left[of] = Some(less(*is, *wanted)),
                    Does::CutAgain => *piece = shop::Piece::default(),
                    Does::CutAgainFromRack => {
                        shop.rack.push(piece.sizes.map(|size| size.expect("it is known")));
                        *piece = shop::Piece::default();
                    }
                    Does::GiveWay(size, to) => give_way(shop, size, to),
                    other => panic!("{other:?}"),
                }
            }
        }
        Fact::NotRecorded { part, pieces } => {
            let part = shop.part_at(*part);
            let wanted = shop.wanted(part);
            for index in pieces {
                let piece = &mut shop.parts[part].pieces[*index];
                match does {
                    Does::CutAgain => *piece = shop::Piece::default(),
                    Does::TakePlan => {
                        for (size, wanted) in piece.sizes.iter_mut().zip(wanted) {
                            *size = size.or(Some(wanted));
                        }
                    }
                    other => panic!("{other:?}"),
                }
            }
        }
        Fact::SizeOff { size, is, wanted } => {
            let at = shop.size_at(*size);
            let it = &mut shop.sizes[at];
            match does {
                Does::Trim(_) => (it.as_cut, it.left) = (Some(*wanted), None),
                Does::CutAgain => (it.as_cut, it.is_cut, it.left) = (None, false, None),
                Does::GiveWay(size, to) => give_way(shop, size, to),
                Does::Leave => it.left = Some(less(*is, *wanted)),
                other => panic!("{other:?}"),
            }
        }
        Fact::SizeNotRecorded { size } => {
            assert_eq!(does, Does::TakePlan);
            let at = shop.size_at(*size);
            shop.sizes[at].as_cut = Some(shop.planned(at));
        }
        Fact::Apart(it) => match does {
            Does::ToSmallest => to_smallest(shop, it.group),
            Does::Leave => {
                let at = shop.group_at(it.group);
                shop.groups[at].left = Some(it.apart);
            }
            other => panic!("{other:?}"),
        },
        Fact::NotWanted { part, pieces } => not_wanted(shop, *part, pieces, does),
        other => panic!("{other:?}"),
    }
}

fn give_way(shop: &mut Shop, size: ItemId, to: Length) {
    let at = shop.size_at(size);
    assert!(!shop.sizes[at].is_formula, "what a formula gives does not give way");
    shop.sizes[at].by = By::Is(to);
}

fn to_smallest(shop: &mut Shop, group: ItemId) {
    let group = shop.groups[shop.group_at(group)].clone();
    let (least, _) = shop.apart(&group).expect("they are apart");
    let before = shop.clone();
    let is_over = |it: Length| less(it, least) > group.drift;
    for at in group.sizes.iter().copied().filter(|at| is_over(before.in_use(*at))) {
        let it = &mut shop.sizes[at];
        if it.is_cut || it.as_cut.is_some() {
            it.as_cut = Some(least);
        } else {
            (it.by, it.is_formula) = (By::Is(least), false);
        }
    }
    for at in &group.parts {
        let wanted = before.wanted(*at)[2];
        let part = &mut shop.parts[*at];
        for piece in part.pieces.iter_mut().filter(|piece| piece.is_cut) {
            if piece.sizes[2].is_some_and(is_over) {
                (piece.sizes[2], piece.left[2]) = (Some(least), None);
            }
        }
        if is_over(wanted) {
            part.by[2] = By::Is(least);
        }
    }
}

fn not_wanted(shop: &mut Shop, part: ItemId, pieces: &[usize], does: Does) {
    let at = shop.part_at(part);
    let part = &mut shop.parts[at];
    let took: Vec<shop::Piece> =
        pieces.iter().map(|at| core::mem::take(&mut part.pieces[*at])).collect();
    match does {
        Does::Scrap => {}
        Does::ToRack => {
            let sizes = took.iter().map(|it| it.sizes.map(|size| size.expect("it is known")));
            shop.rack.extend(sizes);
        }
        Does::TakePlace => {
            for piece in took {
                let free = part.pieces[..part.count].iter_mut().find(|it| !it.is_cut);
                *free.expect("one that is to be cut") = piece;
            }
        }
        Does::WantAgain => {
            for piece in took {
                part.pieces[part.count] = piece;
                part.count += 1;
            }
        }
        other => panic!("{other:?}"),
    }
}

/// A piece that is off gets a size of its own, at some of the places where it may stand. `places` says which, bit by bit.
pub(super) fn stand(
    shop: &mut Shop,
    job: &Job,
    reckoned: &Reckoned,
    fact: &Fact,
    places: u64,
) -> Option<Step> {
    let Fact::Off { part: id, pieces, of, is, .. } = fact else { return None };
    let &[index] = pieces.as_slice() else { return None };
    let (part, size_of) = (shop.part_at(*id), place(*of));
    // A size by its name alone.
    let By::Size(size) = shop.parts[part].by[size_of] else { return None };
    let all = spots(job, reckoned, shop.sizes[size].id, *id);
    let chosen = (0..).zip(all).filter(|(at, _)| places >> (at % 60) & 1 == 1);
    let chosen: Vec<Spot> = chosen.map(|(_, spot)| spot).collect();
    let step = standing(job, reckoned, &Bench::default(), (*id, index, *of), &chosen)
        .expect("they are there");
    let mut trial = job.clone();
    trial.make(&step).expect("its own state");
    let is_new = |id: &ItemId| job.item(*id).is_none();
    let new_size = |name: &str| {
        let all = trial.measures().into_iter().filter(|(id, it)| is_new(id) && it.name == name);
        all.map(|(id, _)| id).next().expect("a size of its own")
    };
    let new_part = |name: &str| {
        let all = trial.parts().into_iter().filter(|(id, it)| is_new(id) && it.name == name);
        all.map(|(id, _)| id).next().expect("a part of its own")
    };
    let before = shop.clone();
    let all_of = &before.sizes[size];
    let by = less(*is, before.in_use(size));
    // The first size that is new: its number is that of the piece.
    let mut names = (1_u32..).map(|n| {
        let name = format!("{} {}", all_of.name, index + 1);
        if n == 1 { name } else { format!("{name} no {n}") }
    });
    let name = names.find(|name| !before.sizes.iter().any(|it| it.name == *name)).expect("a name");
    let own = shop.sizes.len();
    shop.sizes.push(Size {
        id: new_size(&name),
        name: name.clone(),
        by: By::Size(size),
        is_formula: true,
        is_cut: true,
        as_cut: Some(*is),
        left: Some(by),
        is_own: true,
    });
    shop.parts[part].pieces[index].left[size_of] = Some(by);
    let mut split: BTreeMap<(ItemId, Option<ItemId>), Vec<usize>> = BTreeMap::new();
    for spot in &chosen {
        match spot {
            Spot::Field(kept, field) => {
                let mut fields = shop.fields.iter_mut();
                let it = fields.find(|it| (it.0, it.1) == (*kept, *field)).expect("a field");
                assert!(it.2.one_is(size, own), "{spot:?} uses it");
            }
            Spot::Size(id) => {
                let at = shop.size_at(*id);
                assert!(shop.sizes[at].by.one_is(size, own), "{spot:?} uses it");
            }
            Spot::Piece(id, at, via) => split.entry((*id, *via)).or_default().push(*at),
        }
    }
    for ((id, via), which) in split {
        let at = before.part_at(id);
        let mut new_by = before.parts[at].by.clone();
        if let Some(via) = via {
            let hanging = before.size_at(via);
            let via_name = format!("{} with {name}", before.sizes[hanging].name);
            let known = shop.sizes.iter().position(|it| it.name == via_name);
            let known = known.unwrap_or_else(|| {
                let mut it = before.sizes[hanging].clone();
                it.id = new_size(&via_name);
                it.name = via_name;
                assert!(it.by.one_is(size, own), "it hangs on it");
                (it.is_cut, it.as_cut) = (false, None);
                shop.sizes.push(it);
                shop.sizes.len() - 1
            });
            new_by.iter_mut().for_each(|by| by.all_are(hanging, known));
        } else {
            let uses = new_by.iter_mut().map(|by| by.one_is(size, own));
            assert!(uses.fold(false, |any, it| any | it), "{id:?} uses it");
        }
        if which.len() >= before.parts[at].count {
            shop.parts[at].by = new_by;
            continue;
        }
        let mut pieces: Vec<shop::Piece> =
            which.iter().map(|it| before.parts[at].pieces[*it].clone()).collect();
        pieces.resize(KNOWN, shop::Piece::default());
        let old = &mut shop.parts[at];
        old.count -= which.len();
        let stay = (0..KNOWN).filter(|it| !which.contains(it));
        old.pieces = stay.map(|it| before.parts[at].pieces[it].clone()).collect();
        old.pieces.resize(KNOWN, shop::Piece::default());
        let part_name = format!("{} with {name}", before.parts[at].name);
        shop.parts.push(shop::Part {
            id: new_part(&part_name),
            name: part_name,
            by: new_by,
            count: which.len(),
            pieces,
        });
    }
    Some(step)
}
