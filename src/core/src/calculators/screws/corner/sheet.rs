//! Reads the two members and says whether they meet.

use super::{Answer, Input, Member, Section, reckon};
use crate::calculators::screws::fields::{
    A_DEEP, A_HEIGHT, A_OUTSIDE, ALWAYS_CLEAR, B_DEEP, B_HEIGHT, B_OUTSIDE, BETWEEN, LEG, SECTION,
    SIZE, TALL, TENON, out_of_range,
};
use crate::drawing::{Anchor, Board, Role, Scene, Size};
use crate::measure::{Length, OutOfRange, Rounding, Tape};
use crate::say;
use crate::sheet::{self, Act, Ask, Caution, Field, Note, Source, Step, Value, Working};

/// Wood that is better left between two members: 1/8 in. Common practice, no source.
const CLOSE: Length = Length::sixty_fourths(8);

pub(in crate::calculators::screws) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let leg = ask.length(&LEG);
    let size = ask.length(&SIZE);
    let section = match ask.choice(&SECTION) {
        TENON => {
            let tall = ask.length(&TALL);
            size.zip(tall).map(|(size, tall)| Section::Tenon(size, tall))
        }
        _ => size.map(Section::Round),
    };
    let first = member(ask, [&A_DEEP, &A_OUTSIDE, &A_HEIGHT]);
    let second = member(ask, [&B_DEEP, &B_OUTSIDE, &B_HEIGHT]);
    let input = Input { leg: leg?, section: section?, members: [first?, second?] };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused, out_of_range()),
    }
}

fn member(ask: &mut Ask, [deep, from_outside, height]: [&Field; 3]) -> Option<Member> {
    let (deep, from_outside, height) =
        (ask.length(deep), ask.length(from_outside), ask.length(height));
    Some(Member { deep: deep?, from_outside: from_outside?, height: height? })
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let headline = BETWEEN
        .called("They do not meet")
        .figure("wood between them", Value::Length(answer.between, Rounding::Down));
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures.push(
        ALWAYS_CLEAR.figure(
            "middle to middle, in height",
            Value::Length(answer.always_clear, Rounding::Up),
        ),
    );
    if answer.between < CLOSE {
        laid.notes.push(Note::new(
            "bit_may_wander",
            say!["Less than ", CLOSE, " between them: a bit that wanders may break through."],
        ));
    }
    laid.notes.push(Note::new(
        "measure_from_same_end",
        say![
            "Measure both heights from the same end of the leg, and both places from outside faces."
        ],
    ));
    laid.cautions = Caution::of(&[Act::Drill]);
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let [first, second] = input.members;
    let apart = (first.height - second.height).map_or(Length::ZERO, Length::abs);
    let step = Step::in_words(
        match input.section {
            Section::Round(_) => {
                "wood between = shortest way between the axes, ended at their tips, - diameter"
            }
            Section::Tenon(..) => "wood between = widest gap between the two boxes",
        },
        say![
            "leg ",
            input.leg,
            ", in ",
            first.deep,
            " and ",
            second.deep,
            ", heights ",
            apart,
            " apart"
        ],
        answer.between,
    );
    Working { steps: vec![step], sources: vec![Source::Arithmetic, Source::CommonPractice] }
}

/// The leg from above, and beside it from the inner face, both to one scale.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    let zero = Length::ZERO;
    let leg = input.leg;
    let [first, second] = input.members;
    let (across, tall) = match input.section {
        Section::Round(size) => (size, size),
        Section::Tenon(size, tall) => (size, tall),
    };
    let half = (across / 2)?;
    let gap = (leg / 4)?;
    // Heights far apart are drawn nearer, but never so near that they would seem to meet.
    let apart = (first.height - second.height)?;
    let most = (tall * 2)?;
    let shown = apart.max(-most).min(most);
    let high = leg.max(((shown.abs() + tall)? + gap)?);
    let mut board = Board::fit(tape, ((leg * 2)? + gap)?, high, 170.0, 2, 3);
    // From above: outside faces left and below, the first from the right, the second from above.
    board.rect(Role::EndGrain, zero, zero, leg, leg);
    let first_top = ((leg - first.from_outside)? - half)?;
    board.rect(Role::Mate, (leg - first.deep)?, first_top, first.deep, across);
    board.rect(Role::Fastener, (second.from_outside - half)?, zero, across, second.deep);
    // From the inner face that the first comes in by.
    let view = (leg + gap)?;
    board.rect(Role::Wood, view, zero, leg, high);
    let middle = (high / 2)?;
    let first_y = ((middle - (shown / 2)?)? - (tall / 2)?)?;
    let second_y = ((middle + (shown / 2)?)? - (tall / 2)?)?;
    let first_x = ((view + first.from_outside)? - half)?;
    board.rect(Role::Mate, first_x, first_y, across, tall);
    let from_back = ((view + leg)? - second.deep)?;
    board.rect(Role::Fastener, from_back, second_y, second.deep, tall);
    let labels = [
        (board.x(zero), board.row(-2), "from above".to_owned()),
        (board.x(view), board.row(-2), "from inside".to_owned()),
    ];
    for (x, y, words) in labels {
        board.text(Role::Ink, x, y, Anchor::Start, Size::Small, words);
    }
    let label = format!("first {}", board.amount(first.deep));
    board.labelled(0, (leg - first.deep)?, leg, label, Some(A_DEEP.id));
    board.given(2, zero, leg, Some(LEG.id));
    let label = board.amount(second.from_outside);
    board.labelled(1, zero, second.from_outside, label, Some(B_OUTSIDE.id));
    let label = board.amount(first.from_outside);
    let from = ((view + first.from_outside)? - first.from_outside)?;
    board.labelled(0, from, (view + first.from_outside)?, label, Some(A_OUTSIDE.id));
    let label = format!("second {}", board.amount(second.deep));
    board.labelled(1, from_back, (view + leg)?, label, Some(B_DEEP.id));
    board.tell("outside faces: left and below");
    board.tell(format!("heights {} apart", board.amount(apart.abs())));
    Ok(board.scene(say![
        "The leg from above and from inside: ",
        answer.between,
        " of wood between the two, whose heights are ",
        apart.abs(),
        " apart."
    ]))
}
