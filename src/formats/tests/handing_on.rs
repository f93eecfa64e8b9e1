//! Lists, links and codes: read back by an independent reader where there is one.

use proptest::prelude::*;
use reckoner_core::job::{Item, Reckoned, Setting, Step, batches, demo::demo, part_sizes};
use reckoner_core::measure::Tape;
use reckoner_core::sheet::Bench;
use reckoner_formats::{
    CodeProblem, Gatherer, PackProblem, batches_csv, codes, pack, parts_csv, unpack, write_job,
};

/// RFC 4180, read back by the csv crate in its strict default.
#[test]
fn parts_read_back_as_they_were_whatever_is_in_their_names() {
    let mut job = demo();
    let (id, part) = job.parts().into_iter().next().map(|(id, p)| (id, p.clone())).expect("a part");
    let odd = "leg, \"left\"\r\nand 右";
    let note = "=1+1".to_owned();
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
    assert_eq!(&rows[0][7], "33 1/2 in");
    assert_eq!(&rows[0][13], "'=1+1", "no spreadsheet runs it");
    assert!(text.ends_with("\r\n"));
}

#[test]
fn batches_read_back_with_their_sizes() {
    let job = demo();
    let sizes = part_sizes(&job, &Reckoned::of(&job, &Bench::default()));
    let list = batches(&sizes, Setting::RipWidth);
    let text = batches_csv(&job, &list, Tape::SIXTEENTHS);
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let rows: Vec<csv::StringRecord> =
        reader.records().collect::<Result<_, _>>().expect("RFC 4180");
    let rows_of_list: usize = list.iter().map(|batch| batch.parts.len()).sum();
    assert_eq!(rows.len(), rows_of_list);
    assert_eq!((&rows[0][1], &rows[0][3]), ("5 1/2 in", "top plank"));
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
    let first = codes(&pack("one job, long enough for several codes"), 12).expect("few codes");
    let second = codes(&pack("another job"), 12).expect("few codes");
    let mut gatherer = Gatherer::default();
    assert_eq!(gatherer.take(&first[1]), Ok(true));
    assert_eq!(gatherer.take(&first[1]), Ok(false));
    assert_eq!(gatherer.take(&second[0]), Err(CodeProblem::OtherJob));
    let damaged = first[0].replace(|c: char| c.is_ascii_lowercase(), "q");
    assert_eq!(gatherer.take(&damaged), Err(CodeProblem::Unreadable));
    for nonsense in
        ["", "SR1", "SR1 a 0/0 b c", "SR1 a 1/100 b c", "SR1 a 2/1 b c", "https://example.org"]
    {
        assert_eq!(gatherer.take(nonsense), Err(CodeProblem::Unreadable), "{nonsense}");
    }
    assert_eq!(gatherer.progress(), (1, first.len()));
    assert_eq!(gatherer.missing(), [vec![1], (3..=first.len()).collect()].concat());
    assert_eq!(codes(&"x".repeat(100), 1), Err(CodeProblem::TooLarge));
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
    fn codes_in_any_order_and_twice_give_the_job(text in "\\PC{1,800}", size in 20_usize..200, seed in any::<u64>()) {
        let packed = pack(&text);
        let mut all = codes(&packed, size).expect("few codes");
        all.extend(all.clone());
        all.sort_by_key(|code| seed.wrapping_mul(code.len() as u64 + u64::from(code.as_bytes()[code.len() - 1])).rotate_left(17));
        let mut gatherer = Gatherer::default();
        for code in &all {
            gatherer.take(code).expect("a code of this job");
        }
        prop_assert_eq!(gatherer.missing(), Vec::<usize>::new());
        prop_assert_eq!(unpack(&gatherer.whole().expect("whole")), Ok(text));
    }
}
