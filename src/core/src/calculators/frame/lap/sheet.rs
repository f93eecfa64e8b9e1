//! Reads the lap's fields and lays its answer out.

use super::{Answer, Input, reckon};
use crate::calculators::frame::fields::{
    FRONT_THICKNESS, LAP_FRONT, LAP_REAR, LAP_REAR_LEFT, LAP_STEP, REAR_CUT, REAR_THICKNESS,
    out_of_range,
};
use crate::drawing::{Anchor, Board, Role, Scene, Shape, Size};
use crate::measure::text::exact_text;
use crate::measure::{Length, OutOfRange, Rounding, Tape};
use crate::say;
use crate::sheet::{self, Act, Ask, Caution, Note, Source, Step, Term, Working};

pub(in crate::calculators::frame) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let front_thickness = ask.length(&FRONT_THICKNESS);
    let rear_thickness = ask.length(&REAR_THICKNESS);
    let rear_cut = ask.optional_length(&REAR_CUT);
    let input = Input {
        front_thickness: front_thickness?,
        rear_thickness: rear_thickness?,
        rear_cut: rear_cut?,
        tape: ask.bench().tape,
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused, out_of_range()),
    }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let front = LAP_FRONT.figure("from its back", answer.front_cut);
    let rear = LAP_REAR.figure("from its show face", answer.rear_cut);
    let (headline, other) = match input.rear_cut {
        Some(_) => (front, rear),
        None => (rear, front),
    };
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures = vec![
        other,
        LAP_REAR_LEFT.figure("cut to back", answer.rear_left),
        LAP_STEP.figure("rear piece past the front one", answer.step_at_back),
    ];
    if answer.off_the_marks.is_some() {
        laid.notes.push(Note::new(
            "half_is_on_no_mark",
            say![
                "Half of the thinner piece is on no mark of this tape. Cut the rear piece ",
                answer.rear_cut,
                " deep, and the front piece what is left: so the show faces stay flush."
            ],
        ));
    }
    if input.rear_cut.is_some() && is_off(answer, tape) {
        laid.notes.push(Note::new("cuts_are_on_no_mark", say![
            "These cuts are on no mark of this tape. Set the front one on scrap against the cut that is made: rounded, \
             the show faces come out a step apart."
        ]));
    }
    laid.notes.push(Note::new(
        "show_faces_down",
        say!["Keep both show faces down on the saw table, cut scrap of the same thickness first."],
    ));
    laid.notes.push(Note::new(
        "mark_width_from_piece",
        say!["Mark the width of each cut from the other piece itself."],
    ));
    laid.cautions = Caution::of(&[Act::Saw]);
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let Input { front_thickness, rear_thickness, .. } = *input;
    let mut steps = Vec::new();
    if input.rear_cut.is_none() {
        let thinner = Term::of("thinner piece", front_thickness.min(rear_thickness));
        let half = thinner / Term::fixed(2);
        if let Some(exact) = answer.off_the_marks {
            steps.push(Step::of("half", half, exact));
            let off = (exact - answer.rear_cut).unwrap_or(Length::ZERO);
            let (half, to_the_mark) = (Term::of("half", exact), Term::of("to the mark", off.abs()));
            let cut = if off.is_negative() { half + to_the_mark } else { half - to_the_mark };
            steps.push(Step::of("rear cut", cut, answer.rear_cut));
        } else {
            steps.push(Step::of("rear cut", half, answer.rear_cut));
        }
    }
    let front = Term::of("front piece", front_thickness) - Term::of("rear cut", answer.rear_cut);
    steps.push(Step::of("front cut", front, answer.front_cut));
    Working { steps, sources: vec![Source::Arithmetic, Source::CommonPractice] }
}

/// Whether the depths are on no mark of the tape: read off it each for itself, they would leave a step.
fn is_off(answer: &Answer, tape: Tape) -> bool {
    let is_mark = |cut: Length| tape.read(cut, Rounding::Nearest).is_ok_and(|it| it.mark == cut);
    !(is_mark(answer.rear_cut) && is_mark(answer.front_cut))
}

/// Section across the lap, show faces up: the front piece in section, the rear one along it.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    let zero = Length::ZERO;
    let Input { front_thickness: front, rear_thickness: rear, .. } = *input;
    let thicker = front.max(rear);
    let unit = thicker;
    let wide = (unit * 3)?;
    let mut board = Board::with_sides(tape, (wide, thicker), 110.0, (1, 0));
    let right = (unit * 2)?;
    // The rear piece runs across the page and is notched from above by the front one.
    let (l, m, n, r) = (board.x(zero), board.x(unit), board.x(right), board.x(wide));
    let (face, notch, back) = (board.y(zero), board.y(answer.rear_cut), board.y(rear));
    board.add(
        Role::Wood,
        Shape::Polygon(vec![
            (l, face),
            (m, face),
            (m, notch),
            (n, notch),
            (n, face),
            (r, face),
            (r, back),
            (l, back),
        ]),
    );
    board.rect(Role::EndGrain, unit, zero, unit, answer.front_left);
    if answer.step_at_back.is_negative() {
        // What the front piece has behind the rear one, beside the lap, dashed.
        board.rect(Role::Ghost, unit, rear, unit, answer.step_at_back.abs());
    }
    let off = is_off(answer, tape);
    let depth = |board: &Board, cut| if off { exact_text(cut) } else { board.amount(cut) };
    let middle = f64::midpoint(m, n);
    let y = f64::midpoint(face, notch) + 4.0;
    let label = format!("front {}", depth(&board, answer.front_left));
    board.text(Role::Ink, middle, y, Anchor::Middle, Size::Small, label);
    let y = f64::midpoint(notch, back) + 4.0;
    let label = format!("rear {}", depth(&board, answer.rear_left));
    board.text(Role::Ink, middle, y, Anchor::Middle, Size::Small, label);
    let y = board.row(-1);
    board.text(Role::Ink, l, y, Anchor::Start, Size::Small, "show face");
    let label = board.amount(front);
    board.upright(l - 12.0, zero, front, label, Some(FRONT_THICKNESS.id));
    let label = board.amount(rear);
    board.upright(r + 12.0, zero, rear, label, Some(REAR_THICKNESS.id));
    let cut = depth(&board, answer.rear_cut);
    if input.rear_cut.is_some() {
        let x = f64::midpoint(l, m);
        board.upright(x, zero, answer.rear_cut, cut.clone(), Some(REAR_CUT.id));
    }
    board.tell("left: front piece; right: rear piece");
    board.tell(format!("rear piece: cut {cut} from the show face"));
    let front_cut = depth(&board, answer.front_cut);
    board.tell(format!("front piece: cut {front_cut} from the back"));
    Ok(board.scene(say![
        "Section across the lap, show faces up: the rear piece is cut ",
        answer.rear_cut,
        " deep and the front piece ",
        answer.front_cut,
        " from its back."
    ]))
}
