//! The state in the link: it comes back as it was, and nothing hostile gets in.
#![cfg(not(target_arch = "wasm32"))]

use reckoner_app::link::{self, LinkProblem};
use reckoner_app::route::{Route, address, to_print};
use reckoner_core::calculators;
use reckoner_core::calculators::tape::CALCULATOR;
use reckoner_core::measure::Unit;
use reckoner_core::measure::text::NoNames;
use reckoner_core::planning::quick_list::QUICK_LIST;
use reckoner_core::sheet::{Bench, Entries, Own};

fn entries(pairs: &[(&'static str, &'static str)]) -> Entries {
    Entries::from_pairs(pairs.iter().copied())
}

#[test]
fn what_was_typed_comes_back_from_a_link() {
    let mut typed = entries(&[
        ("strip", "61 3/8 - 2 × 3 1/2\nA ÷ 2 + 50% & \"more\" = ?"),
        ("divide", "parts"),
        ("parts", "4"),
        ("start_mark", ""),
    ]);
    typed.set_unit(Some(Unit::Millimetre));
    assert_eq!(link::read(&CALCULATOR, &link::typed(&typed)), Ok(typed));
}

/// Our invented potting bench, from a spreadsheet.
const PASTED: &str = "Qty\tName\tLength\n4\tleg\t33 1/2\n2\tlong rail\t41";

#[test]
fn rows_of_a_spreadsheet_come_back_from_a_link() {
    let typed = entries(&[("parts", PASTED)]);
    assert_eq!(link::read(&QUICK_LIST, &link::typed(&typed)), Ok(typed));
}

/// UAX 9: U+202E turns what follows it. A link with it in a name opens, and the list says it, with a tap.
#[test]
fn a_name_in_a_link_that_is_not_seen_whole_is_told_beside_its_list() {
    let sent = entries(&[("parts", "l\u{202e}eg: 4 @ 33")]);
    let read = link::read(&QUICK_LIST, &link::typed(&sent)).expect("it opens");
    let bench = Bench::default();
    let refusals = QUICK_LIST.sheet(&read, &bench, &NoNames).refusals;
    let told = refusals.iter().find(|it| it.field == "parts").expect("told");
    let way_out = told.way_out.as_ref().expect("a tap").texts(bench.tape);
    assert_eq!((told.code, way_out), ("invisible", vec![("parts", "leg: 4 @ 33".to_owned())]));
}

/// A link may be refused. What was typed on this device may not, or it would be lost.
#[test]
fn what_was_typed_on_this_device_comes_back_whatever_it_is() {
    let long = "4 @ 33 1/2, ".repeat(2_000);
    for text in [PASTED, "33\u{1f}1/2", "\u{fffd}", &long, "", "12 qq 7"] {
        let mut typed = Entries::from_pairs([("parts", text), ("kerf", "1/8")]);
        typed.set_unit(Some(Unit::Inch));
        assert_eq!(link::kept(&QUICK_LIST, &link::typed(&typed)), typed, "{text:?}");
    }
    // What an older release asked is left out, and nothing else with it.
    let old = link::kept(&CALCULATOR, "strip=3&shape=round&divide=fifths&unit=mm");
    let mut left = entries(&[("strip", "3")]);
    left.set_unit(Some(Unit::Millimetre));
    assert_eq!(old, left);
}

/// Our examples are examples there too; the sender's saw is not ours.
#[test]
fn a_link_holds_what_is_the_senders_and_no_example() {
    let crosscut = calculators::find("crosscut").expect("crosscut");
    let at = |bench: &Bench| {
        let query = link::whole(crosscut, &entries(&[("board", "96")]), bench);
        let read = link::read(crosscut, &query).expect("read");
        assert_eq!(read.unit(), Some(Unit::Inch));
        read
    };
    let own = Own { kerf: true, ..Own::default() };
    let set = at(&Bench { own, ..Bench::default() });
    assert_eq!(set.text("board"), Some("96"));
    assert_eq!(set.text("part"), None);
    assert_eq!(set.text("kerf"), Some("1/8"));
    assert_eq!(at(&Bench::default()).text("kerf"), None);
}

/// The answer of a link rests on the same examples as the sender's.
#[test]
fn a_link_keeps_what_its_answer_rests_on() {
    for calculator in calculators::ALL {
        let bench = Bench::default();
        let fresh = calculator.sheet(&Entries::default(), &bench, &NoNames);
        let first = fresh.assumed.fields().next().expect("an example");
        let text = first.start_text(&bench, Unit::Inch);
        let sent = Entries::from_pairs([(first.id, text)]);
        let query = link::whole(calculator, &sent, &bench);
        let come = link::read(calculator, &query).expect("read");
        let rests = |entries: &Entries| calculator.sheet(entries, &bench, &NoNames).assumed.noted();
        assert_eq!(rests(&come), rests(&sent), "{}", calculator.slug);
        assert_ne!(rests(&come), fresh.assumed.noted(), "{}", calculator.slug);
    }
}

#[test]
fn a_hostile_link_is_refused_in_words() {
    let long = format!("strip={}", "1".repeat(5_000));
    let longer = format!("strip={}", "1".repeat(20_000));
    for (query, words) in [
        ("width=3", "The link names “width”, which is not asked here."),
        ("<script>=1", "The link names “<script>”, which is not asked here."),
        ("divide=fifths", "The link has “fifths” for Divide, which is not a choice."),
        ("parts=3&parts=4", "The link says “Equal parts” twice."),
        ("unit=cubit", "The link has the unit “cubit”. It can be in or mm."),
        ("strip=%FF%FE", "The link is damaged."),
        ("strip=%00", "The link is damaged."),
        (&long, "The link is too long."),
        (&longer, "The link is too long."),
    ] {
        let problem = link::read(&CALCULATOR, query).expect_err(query);
        assert_eq!(problem.to_string(), words);
    }
    let name = format!("{}=1", "a".repeat(300));
    let Err(LinkProblem::UnknownField(_)) = link::read(&CALCULATOR, &name) else { panic!() };
}

#[test]
fn an_address_shows_a_page() {
    let kind = |fragment: &str| match Route::read(fragment) {
        Route::Home => "home".to_owned(),
        Route::Settings => "settings".to_owned(),
        Route::Unknown => "unknown".to_owned(),
        Route::Cut(query) => format!("cut {query:?}"),
        Route::Jobs => "jobs".to_owned(),
        Route::Start => "start".to_owned(),
        Route::Removed => "removed".to_owned(),
        Route::Notices => "notices".to_owned(),
        Route::Job(key, rest) => format!("job {key} {rest}"),
        Route::Keep(it, query) => format!("keep {} {query}", it.slug),
        Route::Take(packed) => format!("take {packed:?}"),
        Route::Print(it, query) => format!("print {} {query}", it.slug),
        Route::Calculator(it, query) => format!("{} {query:?}", it.slug),
    };
    for home in ["", "#", "#/", "/"] {
        assert_eq!(kind(home), "home");
    }
    assert_eq!(kind("#/settings"), "settings");
    assert_eq!(kind("#/tape"), "tape None");
    assert_eq!(kind("#/tape/"), "tape None");
    assert_eq!(kind("#/tape?"), "tape None");
    assert_eq!(kind("#/tape?parts=3"), "tape Some(\"parts=3\")");
    assert_eq!(kind("#/nothing"), "unknown");
    assert_eq!(kind("#/keep/tape?parts=3"), "keep tape parts=3");
    assert_eq!(kind("#/keep/nothing?parts=3"), "unknown");
    assert_eq!(kind("#/cut"), "cut None");
    assert_eq!(kind("#/cut?parts=4+@+30"), "cut Some(\"parts=4+@+30\")");
    assert_eq!(kind("#/jobs"), "jobs");
    assert_eq!(kind("#/jobs/removed"), "removed");
    assert_eq!(kind("#/jobs/start"), "start");
    assert_eq!(kind("#/notices"), "notices");
    assert_eq!(kind("#/job/12-3"), "job 12-3 ");
    assert_eq!(kind("#/job/12-3/item/7"), "job 12-3 item/7");
    assert_eq!(kind("#/take?abc"), "take Some(\"abc\")");
    assert_eq!(kind("#/take?"), "take Some(\"\")");
    assert_eq!(kind("#/take"), "take None");
    assert_eq!(kind("#/print/nothing?a=b"), "unknown");
    assert_eq!(kind(&to_print("spacing", "length=37")), "print spacing length=37");
    assert_eq!(kind("#/../etc"), "unknown");
    assert_eq!(kind(&address("tape", "parts=3")), "tape Some(\"parts=3\")");
}

#[test]
fn the_calculators_used_last_stand_first_once_each() {
    use reckoner_app::recent::{read, with_first};
    assert_eq!(with_first("", "tape"), "tape");
    assert_eq!(with_first("a,b,c", "d"), "d,a,b");
    assert_eq!(with_first("a,tape,c", "tape"), "tape,a,c");
    let slugs: Vec<&str> = read("gone,tape,<b>").iter().map(|it| it.slug).collect();
    assert_eq!(slugs, ["tape"]);
    // The quick list of the cut planner is no calculator, and is used like one.
    let titles: Vec<&str> = read("cut,tape").iter().map(|it| it.title).collect();
    assert_eq!(titles, ["Cut plan", "Tape"]);
}
