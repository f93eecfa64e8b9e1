//! What each way out costs and throws away.

use std::collections::BTreeSet;

use super::each_way::{large, rail, three};
use super::*;
use crate::planning::demo::demo_in_work;

/// What a way is, whatever its sizes. A new one has to be named here, and to be in [`every_step_says_what_it_costs`].
fn kind(does: Does) -> &'static str {
    match does {
        Does::CutAgain => "cut again",
        Does::CutAgainFromRack => "cut again, rack",
        Does::Trim(_) => "trim",
        Does::GiveWay(..) => "give way",
        Does::Shim(_) => "shim",
        Does::Leave => "leave",
        Does::TakePlace => "take place",
        Does::ToRack => "to rack",
        Does::WantAgain => "want again",
        Does::Scrap => "scrap",
        Does::TakePlan => "take plan",
        Does::ToSmallest => "to smallest",
        Does::MakeAgain => "make again",
        Does::PlanAgain => "plan again",
        Does::OwnSize => "own size",
        Does::Measure => "measure",
        Does::GoThere => "go there",
        Does::SaveFile => "save file",
        Does::PutBack => "put back",
    }
}

/// Those that are done at their own place, which says what they come to.
const ELSEWHERE: [&str; 6] =
    ["own size", "measure", "make again", "go there", "save file", "put back"];

/// All that a job says of the ways out of what wants looking at: which fact, which way, what it costs.
fn said(job: &Job) -> Vec<(String, Does, Option<String>)> {
    let bench = Bench::default();
    let reckoned = Reckoned::of(job, &bench);
    let mut all = Vec::new();
    for fact in attention(job, &reckoned, &bench).facts {
        for way in ways(job, &reckoned, &bench, &fact, &[]) {
            let comes = way.step.as_ref().and_then(|it| outcome(job, &reckoned, &bench, it));
            assert_eq!(way.step.is_some(), comes.is_some());
            let words = cost(job, &reckoned, &bench, (&fact, way.does), comes.as_ref());
            all.push((fact.about(job), way.does, words.map(|it| it.on(bench.tape))));
        }
    }
    all
}

fn with(job: &mut Job, item: Item) -> ItemId {
    let adding = job.adding(0, item);
    let id = adding.id;
    job.make(&Step::new("add", vec![adding])).expect("fresh");
    id
}

/// A part of 2x4 whose pieces are cut so long, and a yard with boards of 96 at 10.90.
fn of_2x4(mut job: Job, parts: &[(&str, &str, &str, &[&str])]) -> Job {
    for (name, count, length, cut) in parts {
        let part =
            Part { stock: "2x4".to_owned(), ..Part::new(name, count, ["1 1/2", "3 1/2", length]) };
        let part = cut.iter().zip(0..).fold(part, |part, (length, at)| {
            let [thickness, width, length] = ["1 1/2", "3 1/2", length].map(inches).map(Some);
            part.with_piece(at, Piece::cut(Dimensions { thickness, width, length }))
        });
        with(&mut job, Item::Part(part));
    }
    with(&mut job, Item::YardBoard(YardBoard::new("2x4", ["1 1/2", "3 1/2", "96"], 1_090)));
    job
}

/// A rail between legs, wanted 37 and cut so long, and shelves 1 less than the overall, 43, cut so long.
fn between_legs(rail: &str, shelves: &[&str]) -> Job {
    let job = job_of(&[("overall", "44"), ("leg", "3 1/2"), ("rail", "overall - 2 × leg")]);
    let shelf = ("shelf", "2", "overall - 1", shelves);
    of_2x4(job, &[("rail", "1", "rail", &[rail]), shelf])
}

const NOTHING: &str = "Takes no board and no money, and nothing is thrown away.";

/// Two slats that are too wide.
fn two_wide() -> Job {
    let (mut job, id, part) = large(Dimension::Width, "3 1/8");
    let two = Part { quantity: "2".to_owned(), ..part.clone().with_piece(1, part.piece(0)) };
    job.make(&Step::new("two", vec![job.replacing(id, Item::Part(two))])).expect("no conflict");
    job
}

/// Four legs of which two must come down by an eighth each.
fn four_legs() -> Job {
    let legs: &[&str] = &["33 1/2", "33 3/8", "33 1/2"];
    let mut job = of_2x4(job_of(&[]), &[("leg", "4", "33 1/2", legs)]);
    let (name, drift) = ("the legs".to_owned(), "1/16".to_owned());
    let measures = vec![job.parts()[0].0];
    with(&mut job, Item::Match(Match { name, measures, drift, left: None }));
    job
}

fn not_recorded() -> Job {
    let (mut job, id, part) = large(Dimension::Length, "39");
    let slat = Item::Part(part.with_piece(0, Piece::cut(Dimensions::default())));
    job.make(&Step::new("old", vec![job.replacing(id, slat)])).expect("no conflict");
    job
}

/// A piece is cut, as the third, of which two are wanted now.
fn third_of_two() -> Job {
    let mut job = of_2x4(job_of(&[]), &[("rail", "2", "36", &[])]);
    let (id, part) = job.parts()[0];
    let [thickness, width, length] = ["1 1/2", "3 1/2", "36"].map(inches).map(Some);
    let third = Piece::cut(Dimensions { thickness, width, length });
    let part = Item::Part(part.clone().with_piece(2, third));
    job.make(&Step::new("fewer", vec![job.replacing(id, part)])).expect("no conflict");
    job
}

fn plan_that_no_longer_fits() -> Job {
    let (mut job, _) = demo_in_work();
    let found = job.parts().into_iter().find(|(_, part)| part.name == "top plank");
    let (id, part) = found.expect("a part of the demo");
    let length = "50".to_owned();
    let part = Item::Part(Part { length, ..part.clone() });
    job.make(&Step::new("longer", vec![job.replacing(id, part)])).expect("no conflict");
    job
}

/// By hand. Rails: 44 less two legs of 3 1/2 is 37.
/// - One of 36 3/4: an overall of 43 3/4 takes that up, and shelves are then wanted at 42 3/4, so 1/4 comes off each that is cut
///   at 43. Legs of 3 5/8 move nothing that is cut.
/// - One of 37 1/4: an overall of 44 1/4, and shelves of 43 1/4: those cut at 43 are too short. Two of 43 1/4 come out of one
///   board of 96 for 10.90, and the old ones are 86. Legs of 3 3/8 move nothing that is cut.
///
/// The three that must match: one is cut, at 4 1/4, and comes down to 4. The legs: two come down by 1/8 each.
#[test]
fn every_step_says_what_it_costs() {
    let board = "From the yard: 1 × 2x4, 96 in long, 10.90.";
    let old = |is: &str| format!("{board} The old one is scrap: {is} in.");
    let unknown = "Which board it takes is not known. The old one is";
    let off = "Takes no board and no money. What comes off is thrown away:";
    let none = "No board on the rack or at the yard is known to give";
    let short = between_legs("36 3/4", &["43", "43"]);
    let long = between_legs("37 1/4", &["43", "43"]);
    let scrap = "Takes no board and no money. It is scrap: 36 in.".to_owned();
    let table: Vec<(Job, &str, &str, String)> = vec![
        (short.clone(), "rail 1", "cut again", old("36 3/4")),
        (
            short.clone(),
            "rail 1",
            "cut again, rack",
            format!("{board} Nothing is thrown away: the old one goes on the rack."),
        ),
        (
            short,
            "rail 1",
            "give way overall",
            "Takes no board and no money. Trimmed then, and thrown away: 1/4 in off shelf 1 and 2."
                .to_owned(),
        ),
        (between_legs("36 3/4", &["43"]), "rail 1", "give way leg", NOTHING.to_owned()),
        (
            long.clone(),
            "rail 1",
            "give way overall",
            "What is cut again then takes a board from the yard, 10.90. The old ones are scrap: 86 in."
                .to_owned(),
        ),
        (long, "rail 1", "trim", format!("{off} 1/4 in of the length.")),
        (two_wide(), "slat 1 and 2", "trim", format!("{off} 1/8 in of the width of each.")),
        (two_wide(), "slat 1 and 2", "cut again", format!("{none} it. The old ones are scrap: 78 in.")),
        (two_wide(), "slat 1 and 2", "leave", NOTHING.to_owned()),
        (
            large(Dimension::Length, "38 7/8").0,
            "slat 1",
            "shim",
            format!("To make from an offcut: 1 of 1/8 in × 3/4 in × 3 in. {NOTHING}"),
        ),
        (rail(Some("37 1/2")), "rail", "trim", format!("{off} 1/2 in.")),
        (rail(Some("37 1/2")), "rail", "cut again", format!("{unknown} scrap: 37 1/2 in.")),
        (rail(Some("37 1/2")), "rail", "give way overall", NOTHING.to_owned()),
        (rail(None), "rail", "take plan", NOTHING.to_owned()),
        (
            not_recorded(),
            "slat 1",
            "cut again",
            format!("{none} it. The old one is scrap; how long is not known."),
        ),
        (not_recorded(), "slat 1", "take plan", NOTHING.to_owned()),
        (third_of_two(), "rail 3", "scrap", scrap),
        (third_of_two(), "rail 3", "take place", NOTHING.to_owned()),
        (third_of_two(), "rail 3", "to rack", NOTHING.to_owned()),
        (third_of_two(), "rail 3", "want again", NOTHING.to_owned()),
        (
            three().0,
            "the three",
            "to smallest",
            "Takes no board and no money. What is trimmed off is thrown away, in all: 1/4 in.".to_owned(),
        ),
        (
            four_legs(),
            "the legs",
            "to smallest",
            "Takes no board and no money. What is trimmed off is thrown away, in all: 1/4 in.".to_owned(),
        ),
        (
            plan_that_no_longer_fits(),
            "The plan in use",
            "plan again",
            "Costs nothing yet: what is to buy is said before you use the new plan. What is cut and what is \
             bought is counted, and nothing is thrown away."
                .to_owned(),
        ),
    ];
    let mut seen = BTreeSet::new();
    for (job, about, way, words) in table {
        let all = said(&job);
        let name = |does: Does| match does {
            Does::GiveWay(size, _) => {
                format!("{} {}", kind(does), job.item(size).map_or("", Item::name))
            }
            _ => kind(does).to_owned(),
        };
        let found = all.iter().find(|(fact, does, _)| fact == about && name(*does) == way);
        let found = found.unwrap_or_else(|| panic!("{about}: no {way} in {all:?}"));
        assert_eq!(found.2.as_deref(), Some(words.as_str()), "{about}: {way}");
        seen.insert(kind(found.1));
        for (fact, does, words) in &all {
            let is_elsewhere = ELSEWHERE.contains(&kind(*does));
            assert_eq!(words.is_none(), is_elsewhere, "{fact}: {does:?}");
        }
    }
    let steps: [Does; 13] = [
        Does::CutAgain,
        Does::CutAgainFromRack,
        Does::Trim(inches("1")),
        Does::GiveWay(ItemId(1), inches("1")),
        Does::Shim(inches("1")),
        Does::Leave,
        Does::TakePlace,
        Does::ToRack,
        Does::WantAgain,
        Does::Scrap,
        Does::TakePlan,
        Does::ToSmallest,
        Does::PlanAgain,
    ];
    assert_eq!(seen, steps.into_iter().map(kind).collect::<BTreeSet<_>>());
}

/// By hand: 40 less 3 is 37, cut at 37 1/2, so the overall would be 40 1/2; the shelf, a size of 39, is 1 less than the overall and
/// cut, so it is then 1/2 too small.
#[test]
fn a_size_that_is_cut_again_then_is_named() {
    let mut job = job_of(&[("overall", "40"), ("rail", "overall - 3"), ("shelf", "overall - 1")]);
    edit(&mut job, "rail", |m| m.as_cut = Some("37 1/2".to_owned()));
    edit(&mut job, "shelf", |m| m.as_cut = Some("39".to_owned()));
    let all = said(&job);
    let way = all.iter().find(|(_, does, _)| matches!(does, Does::GiveWay(..)));
    let words = "What it takes in boards is not known. Cut again then: shelf.";
    assert_eq!(way.and_then(|(.., words)| words.as_deref()), Some(words));
}
