//! A job handed on by codes, as a link and as a file arrives with all that was done to its wood: the
//! sizes that pieces were cut at, where a piece with a size of its own stands, what was left as it is,
//! and every tick.

use reckoner_core::attention::{Attention, Does, attention, ways};
use reckoner_core::job::own_size::{size_of, spots, standing};
use reckoner_core::job::{
    BoardState, CutTicks, Dimension, Item, ItemId, Job, Kept, Measure, MeasureKind, Part,
    PartSizes, Piece, Reckoned, Step, Written,
};
use reckoner_core::measure::{Unit, length};
use reckoner_core::sheet::Bench;
use reckoner_formats::{Gatherer, PIECE, codes, open_job, pack, unpack, write_job, write_job_file};

fn make(job: &mut Job, label: &str, item: Item) -> ItemId {
    let change = job.adding(0, item);
    let id = change.id;
    job.make(&Step::new(label, vec![change])).expect("fresh");
    id
}

fn looked_at(job: &Job) -> Attention {
    attention(job, &Reckoned::of(job, &Bench::default()), &Bench::default())
}

/// A frame: rails cut, one leg thin where it stands at the first rail, one rail left short.
fn job() -> (Job, ItemId) {
    let bench = Bench::default();
    let mut job = Job::new("bench (invented)", Unit::Inch);
    for (name, text) in
        [("overall", "44"), ("leg thickness", "3 1/2"), ("rail", "overall - 2 × leg thickness")]
    {
        let written = Written::Formula(text.to_owned());
        make(&mut job, "size", Item::Measure(Measure::new(name, MeasureKind::Length, written)));
    }
    let legs = Part::new("leg", "4", ["leg thickness", "leg thickness", "30"]);
    let rails = Part::new("rail", "2", ["1 1/2", "3 1/2", "rail"]);
    let (leg, rail) =
        (make(&mut job, "part", Item::Part(legs)), make(&mut job, "part", Item::Part(rails)));
    let cut = |job: &mut Job, id: ItemId, index: usize, tape: Option<(Dimension, &str)>| {
        let Some(Item::Part(part)) = job.item(id).cloned() else { panic!() };
        let reckoned = Reckoned::of(job, &bench);
        let piece =
            part.piece(index).ticked(reckoned.part(id).map(PartSizes::all_wanted).expect("sizes"));
        let piece = match tape {
            Some((of, text)) => piece.measured(of, Some(text.to_owned())),
            None => piece,
        };
        let step =
            Step::new("cut", vec![job.replacing(id, Item::Part(part.with_piece(index, piece)))]);
        job.make(&step).expect("no other");
    };
    cut(&mut job, rail, 0, Some((Dimension::Length, "36 3/4")));
    cut(&mut job, leg, 1, Some((Dimension::Width, "3 7/16")));
    let reckoned = Reckoned::of(&job, &bench);
    let size = size_of(&job, &reckoned, leg, Dimension::Width).expect("a size by name");
    let at: Vec<_> = spots(&job, &reckoned, size, leg).into_iter().take(1).collect();
    let step = standing(&job, &reckoned, &bench, (leg, 1, Dimension::Width), &at).expect("there");
    job.make(&step).expect("no other");
    // The short rail is left as it is.
    let found = looked_at(&job);
    let reckoned = Reckoned::of(&job, &bench);
    let leave = found.facts.iter().find_map(|fact| {
        let all = ways(&job, &reckoned, &bench, fact, &[]);
        all.into_iter().find(|way| way.does == Does::Leave)?.step
    });
    job.make(&leave.expect("a rail to leave")).expect("no other");
    // Spoiled, a board begun, and things that are bought.
    let Some(Item::Part(part)) = job.item(leg).cloned() else { panic!() };
    let again = part.with_piece(2, Piece::again(Default::default()));
    job.make(&Step::new("spoiled", vec![job.replacing(leg, Item::Part(again))])).expect("no other");
    let boards = vec![BoardState::Begun(vec![(0, 1), (3, 2)]), BoardState::ToCut];
    // Two planks, and not the parts that they make.
    let (title, slug) = ("lid".to_owned(), "top".to_owned());
    let entries = vec![("planks".to_owned(), "2 @ 5 1/2".to_owned())];
    let left = vec!["new plank".to_owned()];
    make(&mut job, "kept", Item::Kept(Kept { rank: 0, title, slug, entries, left }));
    make(&mut job, "begun", Item::CutTicks(CutTicks { plan: ItemId(99), boards }));
    let bought =
        [("buy/No. 8 screws//2 1/2 in".to_owned(), 40), ("cut/rip/3 1/4 in".to_owned(), 6)];
    job.make(&Step::new("bought", vec![job.ticking(0, &bought)])).expect("no other");
    (job, leg)
}

#[test]
fn all_that_was_done_to_the_wood_arrives_by_codes_link_and_file() {
    let (job, leg) = job();
    let by_codes = {
        let mut gatherer = Gatherer::default();
        for code in codes(&write_job(&job), PIECE).expect("few codes") {
            gatherer.take(&code).expect("a code of this job");
        }
        gatherer.whole().expect("all codes").expect("whole")
    };
    let by_link = unpack(&pack(&write_job(&job))).expect("whole");
    for (way, text) in [("codes", by_codes), ("link", by_link), ("file", write_job_file(&job))] {
        let opened = open_job(&text).expect("a job");
        assert_eq!(opened.set_aside, [], "by {way}");
        let there = opened.job;
        // All of it, and by name what matters most.
        assert_eq!(there, job, "by {way}");
        let part = |id| match there.item(id) {
            Some(Item::Part(part)) => part.clone(),
            other => panic!("{other:?}"),
        };
        let size = |text: &str| length(text).ok();
        // The rail at the thin leg is a part of its own.
        let pieces = || there.parts().into_iter().flat_map(|(_, it)| it.pieces.clone());
        let first = pieces().find(|it| it.tape(Dimension::Length).is_some()).expect("a rail");
        // 44 less two legs of 3 1/2; the tape said 36 3/4, and and it was left so.
        assert_eq!(first.recorded(Dimension::Length), size("37"), "by {way}");
        assert_eq!(first.tape(Dimension::Length), Some("36 3/4"), "by {way}");
        assert!(first.left(Dimension::Length).is_some(), "by {way}");
        assert_eq!(looked_at(&there), looked_at(&job), "by {way}");
        assert!(!looked_at(&there).left.is_empty(), "by {way}");
        let own = there.measures().into_iter().find(|(_, it)| it.name == "leg thickness 2");
        let own = own.map(|(_, it)| {
            it.as_cut.clone().or(match &it.written {
                Written::Formula(text) => Some(text.clone()),
                Written::Linked(_) => None,
            })
        });
        assert!(own.flatten().is_some_and(|it| it.starts_with("3 7/16")), "by {way}");
        assert!(!part(leg).piece(2).is_cut(), "by {way}");
        assert_eq!(there.all_ticked().len(), 2, "by {way}");
        assert_eq!(there.cut_plan(ItemId(99)), None);
    }
}
