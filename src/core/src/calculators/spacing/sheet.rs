//! What the spacing asks and how its answer is laid out.

use super::fields::{
    CLOSES_AT, COUNT, EACH_END, FIELDS, FIXED_STEP, FROM_LEFT_COLUMN, FROM_RIGHT,
    FROM_RIGHT_COLUMN, GAP, GAP_AFTER_COLUMN, GREATEST_GAP, HOW_MANY, HOW_MANY_COLUMN, KEEP_OUT,
    LAYOUT, LEAST_GAP, LEFT_EDGE_COLUMN, LEFT_END, LEFT_SLAT, LENGTH, MARK_COLUMN, MARKS, MODE,
    NARROWEST, OTHERS, PITCH, RESULTS, RIGHT_END, RIGHT_SLAT, SLAT_COLUMN, SLAT_GAP, SLAT_WIDTH,
    SLATS, SLATS_NEAR, SO_MANY, SO_MANY_SLATS, STEP, STEP_ERROR, TO_NEXT_COLUMN, WIDEST,
    WIDEST_GAP_COLUMN,
};
use super::{Answer, End, Input, Wish, drawing, ends_apart, reckon};
use crate::calculators::{Calculator, ResultSpec, Stage};
use crate::measure::Length;
use crate::measure::text::exact_text;
use crate::paper::{Template, slat_stick, story_stick};
use crate::say;
use crate::sheet::{
    self, Act, Ask, Bench, Caution, Note, Refusal, Rounded, Row, Source, Step, Table, Term, Value,
    WayOut, Working,
};

/// Spacing: screws, holes, pegs and slats.
pub const CALCULATOR: Calculator = Calculator {
    slug: "spacing",
    title: "Spacing",
    question: "Where do the screws, pegs or slats go?",
    stage: Stage::Fasten,
    fields: FIELDS,
    results: RESULTS,
    work,
};

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let length = ask.length(&LENGTH);
    let mode = ask.choice(&MODE);
    let is_slats = mode == SLATS_NEAR || mode == SO_MANY_SLATS;
    let width = if is_slats { ask.length(&SLAT_WIDTH) } else { None };
    let wish = match mode {
        SO_MANY => ask.count(&COUNT).map(Wish::Count),
        FIXED_STEP => ask.length(&STEP).map(Wish::Step),
        SO_MANY_SLATS => {
            let count = ask.count(&SLATS);
            width.zip(count).map(|(width, count)| Wish::Slats { width, count })
        }
        SLATS_NEAR => {
            let gap = ask.length(&SLAT_GAP);
            width.zip(gap).map(|(width, gap)| Wish::SlatsNear { width, gap })
        }
        _ => ask.length(&GREATEST_GAP).map(Wish::NoGapOver),
    };
    let (left, right) = if is_slats { (&LEFT_SLAT, &RIGHT_SLAT) } else { (&LEFT_END, &RIGHT_END) };
    let (left, right) = (ask.optional_length(left), ask.optional_length(right));
    let keep_out = ask.spans(&KEEP_OUT);
    let least_gap = ask.optional_length(&LEAST_GAP);
    let (left, right) = (left?, right?);
    let end = |distance: Option<Length>| distance.map_or(End::LikeTheGaps, End::At);
    let input = Input {
        length: length?,
        wish: wish?,
        left: end(left),
        right: end(right.or(left)),
        keep_out: keep_out?,
        least_gap: least_gap?,
        tape: ask.bench().tape,
    };
    let bench = ask.bench();
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, bench)),
        Err(refused) => ask.refused(refused, too_fine()),
    }
}

fn too_fine() -> Refusal {
    Refusal::at(
        &LENGTH,
        "too-fine",
        say!["These numbers have too many digits to be kept exactly."],
        WayOut::advice(say!["Use sizes from a tape."]),
    )
}

/// The words for marks and for slats.
struct Words {
    one: &'static str,
    many: &'static str,
    left: &'static str,
    right: &'static str,
    gap: ResultSpec,
    gap_from: &'static str,
}

fn words(is_slats: bool) -> Words {
    if is_slats {
        Words {
            one: "Slat",
            many: "Slats",
            left: "left edges, from left end",
            right: "right edges, from right end",
            gap: GAP,
            gap_from: "slat to slat",
        }
    } else {
        Words {
            one: "Mark",
            many: "Marks",
            left: "from left end",
            right: "from right end",
            gap: PITCH.called("Apart"),
            gap_from: "center to center",
        }
    }
}

fn lay_out(input: &Input, answer: &Answer, bench: &Bench) -> sheet::Answer {
    let is_slats = input.wish.slat_width().is_some();
    let words = words(is_slats);
    let lengths = |lengths: &[Length]| Value::Lengths(lengths.to_vec());
    let marks = MARKS.called(words.one).figure(words.left, lengths(&answer.marks));
    let gap = answer.equal_gap.map(|gap| words.gap.figure(words.gap_from, gap));
    let mut figures = Vec::new();
    // What is set: the spacer between slats, the step between marks. Where the gaps differ there is
    // no such thing, and the marks themselves are what is laid out.
    let headline = match (&gap, &answer.each_end) {
        (Some(gap), _) => gap.clone(),
        (None, Some(each_end)) if !is_slats => {
            EACH_END.called(words.one).figure("from each end", lengths(each_end))
        }
        _ => marks.clone(),
    };
    let n_marks = Value::Count(answer.marks.len() as u64);
    figures.push(HOW_MANY.called(words.many).figure("", n_marks));
    match gap {
        Some(gap) => figures.push(gap),
        None => {
            figures.push(WIDEST.figure(words.gap_from, answer.widest));
            figures.push(NARROWEST.figure(words.gap_from, answer.narrowest));
        }
    }
    figures.push(marks);
    if let Some(each_end) = &answer.each_end {
        let from = if is_slats { "outer edges" } else { "to set off from both ends" };
        figures.push(EACH_END.called("From each end").figure(from, lengths(each_end)));
    }
    let from_right = lengths(&answer.from_right);
    figures.push(FROM_RIGHT.called("From right").figure(words.right, from_right));
    figures.push(CLOSES_AT.figure("end to end", answer.closes_at));
    if let Some(stepped) = answer.stepped {
        figures.push(STEP_ERROR.figure("off at the last one", stepped.error));
    }
    figures.retain(|figure| figure.id != headline.id);
    sheet::Answer {
        figures,
        tables: tables(input, answer),
        notes: notes(input, answer),
        cautions: if is_slats { Vec::new() } else { Caution::of(&[Act::Drill]) },
        drawing: Some(drawing::draw(input, answer, bench)),
        template: Some(template(input, answer, bench)),
        ..sheet::Answer::new(headline, working(input, answer))
    }
}

/// The story stick.
fn template(input: &Input, answer: &Answer, bench: &Bench) -> Template {
    let (marks, tape) = (&answer.marks, bench.tape);
    match input.wish.slat_width() {
        Some(width) => {
            let title = say!["Story stick, slats over ", input.length];
            slat_stick(title, input.length, marks, width, tape)
        }
        None => {
            story_stick(say!["Story stick, marks over ", input.length], input.length, marks, tape)
        }
    }
}

fn tables(input: &Input, answer: &Answer) -> Vec<Table> {
    // A gap at the left end is not the gap to the next one.
    let has_first_gap = input.left == End::LikeTheGaps && !matches!(input.wish, Wish::Step(_));
    let mut to_next = answer.gaps.iter().skip(usize::from(has_first_gap));
    let rows = |(index, (left, right)): (usize, (&Length, &Length))| -> Row {
        let next = to_next.next().map_or_else(|| Value::Words(say!["end"]), |gap| (*gap).into());
        vec![Value::Count(index as u64 + 1), (*left).into(), (*right).into(), next]
    };
    let rows = answer.marks.iter().zip(&answer.from_right).enumerate().map(rows).collect();
    let columns = if input.wish.slat_width().is_some() {
        &[SLAT_COLUMN, LEFT_EDGE_COLUMN, FROM_RIGHT_COLUMN, GAP_AFTER_COLUMN]
    } else {
        &[MARK_COLUMN, FROM_LEFT_COLUMN, FROM_RIGHT_COLUMN, TO_NEXT_COLUMN]
    };
    let mut tables = vec![LAYOUT.table(columns, rows)];
    if answer.others.len() > 1 {
        let rows = answer.others.iter().map(|other| vec![other.count.into(), other.widest.into()]);
        let table = OTHERS.table(&[HOW_MANY_COLUMN, WIDEST_GAP_COLUMN], rows.collect());
        let ways = answer.others.iter().map(|other| so_many(input, answer, other.count));
        tables.push(table.with_ways(ways.collect()));
    }
    tables
}

/// What asks for another number of marks or slats: the question of how many, with that number in it.
fn so_many(input: &Input, answer: &Answer, count: u32) -> Option<WayOut> {
    let (question, field) = match input.wish.slat_width() {
        Some(_) => (SO_MANY_SLATS, &SLATS),
        None => (SO_MANY, &COUNT),
    };
    let words = say![format!("{}: {count}", question.label)];
    let set = vec![(MODE.id, say![question.id]), (field.id, say![count])];
    (u32::try_from(answer.marks.len()) != Ok(count)).then_some(WayOut { sentence: words, set })
}

fn notes(input: &Input, answer: &Answer) -> Vec<Note> {
    let mut notes = Vec::new();
    if let Some(stepped) = answer.stepped {
        let way = if stepped.error.is_negative() { " short." } else { " too far." };
        notes.push(Note::new(
            "stepping_off_goes_wrong",
            say![
                "Mark every one from the same end. Stepping off ",
                stepped.gap,
                " each time puts the last at ",
                stepped.ends_at,
                ", ",
                stepped.error.abs(),
                way
            ],
        ));
    }
    if let Some(each_end) = &answer.each_end
        && answer.marks.len() % 2 == 1
        && input.wish.slat_width().is_none()
        && let Some(middle) = each_end.last()
    {
        notes.push(Note::new(
            "one_is_the_middle",
            say!["The one at ", *middle, " is the middle: the same from both ends."],
        ));
    }
    notes.extend(middle_gap(input, answer));
    if !answer.keep_out.is_empty() {
        notes.extend(moved(input, answer));
        notes.push(Note::new(
            "may_touch_zone_edge",
            say!["It may touch the edge of a zone. Make zones wide enough."],
        ));
    }
    let two_inches = Length::sixty_fourths(128);
    let is_near = |end| matches!(end, End::At(distance) if distance < two_inches);
    if input.wish.slat_width().is_none() && (is_near(input.left) || is_near(input.right)) {
        notes.push(Note::new(
            "near_end_can_split",
            say![
                "A screw nearer than ",
                two_inches,
                " to an end can split it: drill first. Common practice, no source."
            ],
        ));
    }
    notes
}

/// Which ones a zone moved, from where to where.
fn moved(input: &Input, answer: &Answer) -> Option<Note> {
    let words = words(input.wish.slat_width().is_some());
    let (first, others) = answer.moved.split_first()?;
    let mut told = say![
        words.one,
        " ",
        first.number,
        " would stand at ",
        first.from,
        ", in a zone to keep clear of: it is moved to ",
        first.to,
        "."
    ];
    for moved in others.iter().take(MOST_TOLD - 1) {
        let next =
            say![" Number ", moved.number, " is moved from ", moved.from, " to ", moved.to, "."];
        told.0.extend(next.0);
    }
    let more = answer.moved.len().saturating_sub(MOST_TOLD);
    if more > 0 {
        told.0.push(format!(" And so for {more} more: see the table.").into());
    }
    Some(Note::new("moved_out_of_zone", told))
}

/// So many that were moved are told one by one.
const MOST_TOLD: usize = 3;

/// A fixed step may leave a wider gap in the middle.
fn middle_gap(input: &Input, answer: &Answer) -> Option<Note> {
    let Wish::Step(step) = input.wish else { return None };
    let half = answer.marks.len() / 2;
    if answer.marks.len() % 2 == 1 || answer.widest <= step {
        return None;
    }
    let (near, far) = (answer.marks.get(half.checked_sub(1)?)?, answer.marks.get(half)?);
    let middle = ((*near + *far).ok()? / 2).ok()?;
    let is_free = |zone: &sheet::Span| middle <= zone.from || zone.to <= middle;
    let mut told = say!["The gap in the middle is ", answer.widest, "."];
    if answer.keep_out.iter().all(is_free) {
        told.0.extend(say![" One more at ", middle, " halves it."].0);
    }
    Some(Note::new("gap_in_the_middle", told))
}

fn working(input: &Input, answer: &Answer) -> Working {
    let mut steps = Vec::new();
    let sum = |lengths: &[Length]| {
        lengths.iter().try_fold(Length::ZERO, |sum, length| sum + *length).unwrap_or(Length::ZERO)
    };
    let (room, set_ends) = (sum(&answer.gaps), sum(&ends_apart(input)));
    let n_gaps = answer.gaps.len();
    let room_for_gaps = |words| Term::of(words, room);
    let set_ends = || Term::of("set ends", set_ends);
    let slats = input.wish.slat_width().map(|width| {
        let (slats, width) = (answer.marks.len(), width);
        move || Term::of("slats", slats) * Term::of("slat width", width)
    });
    match input.wish {
        Wish::Step(step) => steps.push(Step::in_words(
            "mark = end distance + whole steps, from each end, up to the middle",
            say![format!("steps of {}", exact_text(step))],
            Value::Count(answer.marks.len() as u64),
        )),
        Wish::NoGapOver(greatest) if answer.equal_gap.is_some() => {
            let fewest = (room / greatest).map_or(0, |gaps| gaps.ceil());
            let n_gaps = Value::Count(n_gaps as u64);
            steps.push(if i128::try_from(answer.gaps.len()) == Ok(fewest) {
                let gaps = room_for_gaps("distance to fill") / Term::of("greatest gap", greatest);
                Step::of("gaps", gaps, n_gaps).then(Rounded::Up)
            } else {
                let words = say!["none over ", exact_text(greatest)];
                Step::in_words("fewest gaps that keep clear and leave a mark", words, n_gaps)
            });
        }
        _ => {}
    }
    if let (Some(slats), true) = (&slats, answer.equal_gap.is_some()) {
        let left = Term::of("length", input.length) - set_ends() - slats();
        steps.push(Step::of("room for gaps", left, room));
    }
    if let Some(gap) = answer.equal_gap {
        let gaps = Term::of("number of gaps", n_gaps);
        steps.push(Step::of("gap", room_for_gaps("room for gaps") / gaps, gap));
    }
    if let Some(chain) = answer.chain.filter(|_| !matches!(input.wish, Wish::Step(_))) {
        let (from, to) = (
            Term::of("near zone edge or end", chain.from),
            Term::of("far zone edge or end", chain.to),
        );
        let between = (to - from) / Term::of("gaps between", chain.gaps);
        let gap = match input.wish.slat_width() {
            Some(width) => between - Term::of("slat width", width),
            None => between,
        };
        let held = Step::of("smallest widest gap", gap, answer.widest);
        steps.push(held);
    }
    let all = set_ends() + room_for_gaps("every gap");
    let all = match slats {
        Some(slats) => all + slats(),
        None => all,
    };
    steps.push(Step::of("check: length", all, answer.closes_at));
    Working { steps, sources: vec![Source::Arithmetic] }
}
