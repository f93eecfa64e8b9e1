//! Lists, links and codes: read back by an independent reader where there is one.

use proptest::prelude::*;
use reckoner_core::attention::attention;
use reckoner_core::build_order::build_order;
use reckoner_core::cutting::scale::CommonUnit;
use reckoner_core::cutting::{
    Board, CrossSize, CutBoard, Ends, Job as CutJob, Layer, Layout, Part, Placed, Plan, RipRules,
    SawRules, Section, Source as From, Strip,
};
use reckoner_core::job::cut_labels::{Label, Labels, Money, SectionLabel};
use reckoner_core::job::{Item, ItemId, Reckoned, Step, demo::demo, part_sizes};
use reckoner_core::measure::{Tape, length};
use reckoner_core::planning::report::{How, report};
use reckoner_core::sheet::Bench;
use reckoner_core::to_buy::{Line, Source, ToBuy};
use reckoner_formats::{
    Brought, CodeProblem, Gatherer, MAX_FILE, PIECE, PackProblem, brought, build_order_csv, codes,
    codes_in, cut_plan_csv, open_job, pack, parts_csv, to_buy_csv, unpack, write_job,
    write_job_file,
};

/// RFC 4180, read back by the csv crate in its strict default.
#[test]
fn parts_read_back_as_they_were_whatever_is_in_their_names_and_notes() {
    let mut job = demo();
    let (id, part) = job.parts().into_iter().next().map(|(id, p)| (id, p.clone())).expect("a part");
    let odd = "leg, \"left\" and 右";
    let note = "=1+1\r\nfrom the rack, \"second\"".to_owned();
    let named = reckoner_core::job::Part { name: odd.to_owned(), note, ..part };
    let step = Step::new("rename", vec![job.replacing(id, Item::Part(named))]);
    job.make(&step).expect("no other page");
    let sizes = part_sizes(&job, &Reckoned::of(&job, &Bench::default()));
    let text = parts_csv(&job, &sizes, Tape::SIXTEENTHS);
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let rows: Vec<csv::StringRecord> =
        reader.records().collect::<Result<_, _>>().expect("RFC 4180");
    assert_eq!(rows.len(), job.parts().len());
    assert_eq!(&rows[0][0], odd);
    // 33 1/2 in are 850.9 mm; 3 1/4 in are 82.55 mm.
    assert_eq!([8, 9, 10].map(|at| &rows[0][at]), ["33 1/2 in", "33.5", "850.9"]);
    assert_eq!([3, 4].map(|at| &rows[0][at]), ["3.25", "82.55"]);
    assert_eq!(&rows[0][16], "'=1+1\r\nfrom the rack, \"second\"", "no spreadsheet runs it");
    assert!(text.ends_with("\r\n"));
}

/// By hand: the widest rip of the demo is 3 1/4 in, 82.55 mm, or more; its longest stop 50 1/2 in, 1282.7 mm.
#[test]
fn the_build_order_reads_back_with_its_sizes() {
    let (job, bench) = (demo(), Bench::default());
    let reckoned = Reckoned::of(&job, &bench);
    let order = build_order(&job, &reckoned, &bench, &attention(&job, &reckoned, &bench));
    let text = build_order_csv(&job, &order, Tape::SIXTEENTHS);
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let rows: Vec<csv::StringRecord> =
        reader.records().collect::<Result<_, _>>().expect("RFC 4180");
    let wanted: usize = order.steps.iter().map(|step| step.pieces.len().max(1)).sum();
    assert_eq!(rows.len(), wanted);
    let planks = rows.iter().find(|row| &row[2] == "50 1/2 in").expect("the top planks");
    assert_eq!([3, 4, 5].map(|at| &planks[at]), ["50.5", "1282.7", "top plank"]);
}

#[test]
fn a_link_that_was_cut_short_or_would_fill_the_phone_is_refused() {
    let packed = pack(&write_job(&demo()));
    assert!(packed.len() < 6000, "{} letters", packed.len());
    assert_eq!(unpack(&packed[..packed.len() / 2]), Err(PackProblem::Damaged));
    assert_eq!(unpack("not packed at all!"), Err(PackProblem::Damaged));
    assert_eq!(unpack(""), Err(PackProblem::Damaged));
    let bomb = pack(&" ".repeat(20_000_000));
    assert!(bomb.len() < 40_000);
    assert_eq!(unpack(&bomb), Err(PackProblem::TooLarge));
}

#[test]
fn codes_of_another_job_and_damaged_ones_change_nothing() {
    let first = codes("one job, long enough for several codes", 12).expect("few codes");
    let second = codes("another job", 12).expect("few codes");
    let mut gatherer = Gatherer::default();
    assert_eq!(gatherer.in_words(), "No code yet.");
    assert_eq!(gatherer.take(&first[1]), Ok(true));
    assert_eq!(gatherer.take(&first[1]), Ok(false));
    assert_eq!(gatherer.take(&second[0]), Err(CodeProblem::OtherJob(1, second.len())));
    let damaged = first[0].replace(|c: char| c.is_ascii_digit(), "7");
    assert_eq!(gatherer.take(&damaged), Err(CodeProblem::Unreadable));
    for nonsense in
        ["", "SR1", "SR1 a 0/0 b c", "SR1 a 1/100 b c", "SR1 a 2/1 b c", "https://example.org"]
    {
        assert_eq!(gatherer.take(nonsense), Err(CodeProblem::Unreadable), "{nonsense}");
    }
    let long = format!("{} {}", &first[0][..first[0].len() - 5], "A".repeat(5000));
    assert_eq!(gatherer.take(&long), Err(CodeProblem::Unreadable));
    assert_eq!(gatherer.progress(), (1, first.len()));
    assert_eq!(gatherer.missing(), [vec![1], (3..=first.len()).collect()].concat());
    assert_eq!(gatherer.whole(), None);
    let noise: String =
        (0..4_000_u32).map(|n| format!("{:x}", n.wrapping_mul(2_654_435_761))).collect();
    assert_eq!(codes(&noise, 1), Err(CodeProblem::TooLarge));
}

#[test]
fn progress_names_what_is_missing() {
    let all = codes("one job, long enough for several codes", 14).expect("few codes");
    assert_eq!(all.len(), 5);
    let mut gatherer = Gatherer::default();
    for (number, words) in [
        (3, "1 of 5, still missing 1, 2, 4 and 5"),
        (1, "2 of 5, still missing 2, 4 and 5"),
        (4, "3 of 5, still missing 2 and 5"),
        (5, "4 of 5, still missing 2"),
        (2, "All 5 codes are here."),
    ] {
        gatherer.take(&all[number - 1]).expect("a code of this job");
        assert_eq!(gatherer.in_words(), words);
    }
    let many = codes("one job, long enough for several codes", 5).expect("few codes");
    let mut gatherer = Gatherer::default();
    gatherer.take(&many[2]).expect("a code of this job");
    assert_eq!(
        gatherer.in_words(),
        format!("1 of {0}, {1} still missing", many.len(), many.len() - 1)
    );
}

#[test]
fn codes_are_found_in_a_text_that_was_pasted() {
    let all = codes("one job, long enough for several codes", 14).expect("few codes");
    let pasted = format!("Here it is:\r\n{}\n\nand {}  SR1 end", all[0], all[1]);
    let found = codes_in(&pasted);
    assert_eq!(found[..2], all[..2]);
    assert_eq!(found[2], "SR1 end");
    assert_eq!(codes_in("no code here"), Vec::<String>::new());
}

#[test]
fn a_pasted_text_is_a_file_a_link_or_codes() {
    let job = demo();
    let small = write_job(&job);
    assert!(small.len() < write_job_file(&job).len());
    assert_eq!(open_job(&small).expect("a job file").job, job);
    let file = Ok(Brought::File(small.clone()));
    let packed = pack(&small);
    for text in [
        small.clone(),
        packed.clone(),
        format!("https://example.org/app/#/take?{packed}"),
        format!("Look at my bench: https://example.org/#/take?{packed}\nSee you"),
    ] {
        assert_eq!(brought(&format!("  {text} \n")), file);
    }
    let all = codes(&small, PIECE).expect("few codes");
    assert_eq!(brought(&all.join("\n")), Ok(Brought::Codes(all)));
    for nonsense in ["", "hello", "https://example.org/#/take?", &packed[..packed.len() - 9]] {
        assert_eq!(brought(nonsense), Err(PackProblem::Damaged), "{nonsense}");
    }
    assert_eq!(brought(&"A".repeat(MAX_FILE * 2 + 1)), Err(PackProblem::TooLarge));
}

/// Pieces whose own checks are right but which do not make up one job.
#[test]
fn pieces_that_do_not_fit_together_are_refused() {
    let forged = |number: usize, piece: &str| {
        format!("SR1 00000000 {number}/2 {:08X} {piece}", crc32fast::hash(piece.as_bytes()))
    };
    let mut gatherer = Gatherer::default();
    gatherer.take(&forged(1, "AAAA")).expect("reads");
    gatherer.take(&forged(2, "BBBB")).expect("reads");
    assert_eq!(gatherer.whole(), Some(Err(PackProblem::Damaged)));
    // Of another job in as many pieces, or of the same said to have more.
    let other = forged(1, "AAAA").replace("00000000", "00000001");
    assert_eq!(gatherer.take(&other), Err(CodeProblem::OtherJob(1, 2)));
    let more = forged(1, "AAAA").replace("1/2", "1/3");
    assert_eq!(gatherer.take(&more), Err(CodeProblem::OtherJob(1, 3)));
    let bomb = codes(&" ".repeat(20_000_000), 4_000).expect("few codes");
    let mut gatherer = Gatherer::default();
    for code in &bomb {
        gatherer.take(code).expect("reads");
    }
    assert_eq!(gatherer.whole(), Some(Err(PackProblem::TooLarge)));
}

proptest! {
    #[test]
    fn a_packed_text_opens_again(text in "\\PC{0,2000}") {
        prop_assert_eq!(unpack(&pack(&text)), Ok(text));
    }

    #[test]
    fn nonsense_never_unpacks_to_a_panic(text in "[A-Za-z0-9_-]{0,300}") {
        let _ = unpack(&text);
    }

    #[test]
    fn codes_in_any_order_and_twice_give_the_job(text in "\\PC{1,800}", size in 80_usize..200, seed in any::<u64>()) {
        let mut all = codes(&text, size).expect("few codes");
        all.extend(all.clone());
        all.sort_by_key(|code| seed.wrapping_mul(code.len() as u64 + u64::from(code.as_bytes()[code.len() - 1])).rotate_left(17));
        let mut gatherer = Gatherer::default();
        for code in &all {
            gatherer.take(code).expect("a code of this job");
        }
        prop_assert_eq!(gatherer.missing(), Vec::<usize>::new());
        prop_assert_eq!(gatherer.whole(), Some(Ok(text)));
    }
}

/// By hand: 96 in are 2438.4 mm, 1 1/2 are 38.1, 5 1/2 are 139.7; three boards at 10.90 are 32.70.
#[test]
fn everything_to_buy_is_a_list_of_numbers() {
    let inches = |text: &str| Some(length(text).expect("a length"));
    let board = Line {
        source: Source::Boards(ItemId(1), 0),
        name: "2x6".to_owned(),
        thickness: inches("1 1/2"),
        width: inches("5 1/2"),
        length: inches("96"),
        wanted: 3,
        spares: 0,
        on_hand: 0,
        bought: 1,
        each: Some(1090),
        is_ours: false,
        uses: vec!["rail".to_owned(), "leg".to_owned()],
    };
    let screws = Line {
        source: Source::Goods("buy".to_owned()),
        name: "=SUM(A1)".to_owned(),
        thickness: None,
        width: None,
        length: inches("2 1/2"),
        wanted: 40,
        spares: 4,
        on_hand: 12,
        bought: 0,
        each: None,
        is_ours: false,
        uses: vec!["@planks, \"down\"".to_owned()],
    };
    let text = to_buy_csv(&ToBuy { lines: vec![board, screws], ..ToBuy::default() });
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let rows: Vec<csv::StringRecord> =
        reader.records().collect::<Result<_, _>>().expect("RFC 4180");
    let cells = |at: usize| rows[at].iter().collect::<Vec<_>>();
    assert_eq!(
        cells(0),
        [
            "2x6",
            "3",
            "0",
            "0",
            "1",
            "2",
            "1.5",
            "38.1",
            "5.5",
            "139.7",
            "96",
            "2438.4",
            "10.90",
            "32.70",
            "rail, leg",
        ]
    );
    assert_eq!(
        cells(1),
        [
            "'=SUM(A1)",
            "40",
            "4",
            "12",
            "0",
            "28",
            "",
            "",
            "",
            "",
            "2.5",
            "63.5",
            "",
            "",
            "'@planks, \"down\"",
        ]
    );
}

/// Two boards of 1 1/2 by 9 1/4 in, 96 in long, in eighths; 1/2 in comes off each end, and a cut takes 1/8 in.
fn two_boards() -> (CutJob, Plan, Labels) {
    let part = |id: &str, section: &str, length, quantity| Part {
        id: id.to_owned(),
        name: id.to_owned(),
        section: section.to_owned(),
        length,
        quantity,
        priority: 1,
        may_rip: true,
        may_resaw: false,
        grain_free: false,
    };
    let section = |id: &str, width| Section {
        id: id.to_owned(),
        wood: "fir".to_owned(),
        size: Some(CrossSize { width, thickness: 12 }),
    };
    let job = CutJob {
        sections: vec![section("wide", 74), section("strip", 32)],
        parts: vec![part("slat", "wide", 140, 2), part("rail", "strip", 480, 1)],
        boards: vec![Board {
            id: "yard".to_owned(),
            section: "wide".to_owned(),
            length: 768,
            price_cents: 1090,
            limit: None,
            trims: Ends { left: 4, right: 4 },
            knots: vec![],
        }],
        scraps: vec![],
        saw: SawRules {
            kerf: 1,
            rip: Some(RipRules {
                kerf: 1,
                near_edge: 0,
                far_edge: 0,
                least_width: 4,
                least_length: 80,
                crosscut_first: false,
                resaw: None,
            }),
        },
    };
    let at = |part, at| Placed { part, at, turned: false };
    let layer = Layer { at: 0, thickness: 12, parts: vec![at(1, 4)] };
    let strip = Strip { at: 0, width: 32, layers: vec![layer] };
    let plan = Plan {
        boards: vec![
            CutBoard {
                source: From::Board(0),
                layout: Layout::Crosscut(vec![at(0, 4), at(0, 145)]),
            },
            CutBoard { source: From::Board(0), layout: Layout::RipFirst(vec![strip]) },
        ],
        left_out: vec![],
        cost_cents: 2180,
    };
    let label = |name: &str| Label { item: None, name: name.to_owned() };
    let named = |name: &str| SectionLabel { name: name.to_owned(), size: None };
    let labels = Labels {
        unit: CommonUnit::of(&[(1, 8)]).expect("eighths"),
        sections: vec![named("2x10"), named("2x4")],
        parts: vec![label("slat"), label("=rail")],
        boards: vec![label("2x10")],
        scraps: vec![],
        money: Money::Cents,
    };
    (job, plan, labels)
}

/// By hand, in inches: two of 17 1/2 lie at 1/2 to 18 and 18 1/8 to 35 5/8; the next cut ends at 35 3/4, and to the trim at
/// 95 1/2 there are 59 3/4. The strip of 4 has one of 60, to 60 1/2; from 60 5/8 to 95 1/2 there are 34 7/8. In millimetres, 25.4
/// to the inch: 96 are 2438.4, 1/2 12.7, 18 457.2, 18 1/8 460.375, 35 5/8 904.875, 35 3/4 908.05, 95 1/2 2425.7, 59 3/4 1517.65, 60 1/2
/// 1536.7, 4 101.6, 60 5/8 1539.875, 34 7/8 885.825; a half of a hundredth goes up.
#[test]
fn a_cut_plan_is_a_list_of_where_each_piece_lies_and_what_is_left() {
    let (job, plan, labels) = two_boards();
    let how = How { tape: Tape::SIXTEENTHS, keep_from: length("6").expect("a length") };
    let boards = report(&job, &plan, &labels, how).expect("a plan of this job").boards;
    let text = cut_plan_csv(&job, &labels, &boards);
    let rows: Vec<&str> = text.split("\r\n").collect();
    assert_eq!(
        rows,
        [
            "board,section,board in,board mm,piece,from in,from mm,to in,to mm,width in,width mm,thickness in,thickness mm,left over in,left over mm",
            "1,2x10,96,2438.4,slat,0.5,12.7,18,457.2,,,,,,",
            "1,2x10,96,2438.4,slat,18.125,460.38,35.625,904.88,,,,,,",
            "1,2x10,96,2438.4,,35.75,908.05,95.5,2425.7,,,,,59.75,1517.65",
            "2,2x10,96,2438.4,'=rail,0.5,12.7,60.5,1536.7,4,101.6,,,,",
            "2,2x10,96,2438.4,,60.625,1539.88,95.5,2425.7,4,101.6,,,34.875,885.83",
            "",
        ]
    );
}
