//! Where the cuts go across a board, and what to try instead when they cannot.

use super::super::fields::{
    AT_FENCE, FALLS, FAR_SIDE, FIRST_EDGE, MOST_STRIPS, N_STRIPS, STRIP_WIDTH, WIDTHS,
};
use super::super::nearest::{at_least, at_most, saw_it_thicker, too_thin_at_fence};
use super::super::saw::Saw;
use super::asked::{Falls, Input, OtherEdge, Plan};
use crate::measure::text::exact_text;
use crate::measure::{Length, OutOfRange, Rounding};
use crate::say;
use crate::sentence::counted;
use crate::sheet::{Field, Refusal, Refused, WayOut};

/// What a stretch of the board becomes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stretch {
    /// Falls off in cleaning the first edge.
    Sliver,
    /// Turned to dust.
    Kerf,
    /// The strip of this number, from 1.
    Strip(u32),
    /// What is left of the board.
    Leftover,
}

/// A stretch of the board, measured from its first edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Band {
    /// What it becomes.
    pub stretch: Stretch,
    /// Where it begins.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
}

/// One cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cut {
    /// The strip that comes off, from 1; `None` for cleaning the first edge.
    pub strip: Option<u32>,
    /// Fence to near tooth.
    pub fence: Length,
    /// Whether the strip, and with it the cleaned edge, is at the fence.
    pub is_strip_at_fence: bool,
    /// What the blade turns to dust: the kerf, or less at the very edge of the board.
    pub dust: Length,
    /// What the board measures after it.
    pub board_left: Length,
}

/// Strips and cuts, before the depth is looked at.
#[derive(Debug)]
pub(super) struct Layout {
    pub(super) sawn: Vec<Length>,
    pub(super) cuts: Vec<Cut>,
    pub(super) bands: Vec<Band>,
    pub(super) leftover: Length,
    pub(super) share: Option<Length>,
    pub(super) fit_by_arithmetic: u32,
}

/// Why a board cannot be cut up in this way.
enum Misfit {
    /// The board is this thin between blade and fence when its first edge is cleaned.
    ThinToClean(Length),
    /// A strip this thin between blade and fence.
    ThinStrip(Length),
    /// The rest of the board this thin between blade and fence.
    ThinBoard(Length),
    /// So many equal strips leave nothing of each.
    NoRoom,
    /// One strip is wider than the board.
    TooWide(Length),
    /// More strips than [`MOST_STRIPS`].
    TooMany,
    /// The strips of the list and the kerfs between them need this much.
    ListTooWide(Length),
    /// The list is empty.
    NoWidths,
    /// Beyond the limits of exact numbers.
    OutOfRange,
}

impl From<OutOfRange> for Misfit {
    fn from(_: OutOfRange) -> Misfit {
        Misfit::OutOfRange
    }
}

/// The strips that `input` asks for, laid out on the board.
pub(super) fn lay_out(input: &Input) -> Result<Layout, Refused> {
    let usable = usable(input)?;
    if !usable.is_positive() {
        Err(Refusal::at(
            &FIRST_EDGE,
            "clean-up-takes-all",
            say!["Cleaning the edges leaves nothing of the ", input.width, " board."],
            WayOut::set(say!["Take less off, or nothing."], &FIRST_EDGE, "0".to_owned()),
        ))?;
    }
    attempt(input, usable).or_else(|misfit| Err(explain(input, usable, misfit)?.into()))
}

/// The board less what is cleaned off its edges.
fn usable(input: &Input) -> Result<Length, OutOfRange> {
    let cleaned = (input.width - input.first_edge)?;
    match input.other_edge {
        OtherEdge::Raw | OtherEdge::Clean => Ok(cleaned),
        OtherEdge::Cut => cleaned - input.first_edge,
    }
}

/// A finished width with the allowance for both of its faces.
fn sawn(input: &Input, finished: Length) -> Result<Length, OutOfRange> {
    finished + (input.allowance * 2)?
}

fn attempt(input: &Input, usable: Length) -> Result<Layout, Misfit> {
    match &input.plan {
        Plan::Fit(finished) => fit(input, usable, *finished),
        Plan::Equal(n_strips) => equal(input, usable, *n_strips),
        Plan::List(finished) => list(input, usable, finished),
    }
}

fn fit(input: &Input, usable: Length, finished: Length) -> Result<Layout, Misfit> {
    let (kerf, width) = (input.saw.kerf, sawn(input, finished)?);
    if width > usable {
        return Err(Misfit::TooWide(width));
    }
    let count = ((usable + kerf)? / (width + kerf)?)?.floor();
    let count = u32::try_from(count).ok().filter(|count| *count <= MOST_STRIPS);
    let fit_by_arithmetic = count.ok_or(Misfit::TooMany)?;
    let mut n_strips = fit_by_arithmetic;
    loop {
        let widths = core::iter::repeat_n(width, usize::try_from(n_strips).unwrap_or(0)).collect();
        match cut_up(input, widths) {
            // With fewer strips the board stays wide enough to run along the fence.
            Err(Misfit::ThinBoard(_)) if n_strips > 1 => n_strips -= 1,
            layout => return Ok(Layout { fit_by_arithmetic, ..layout? }),
        }
    }
}

fn equal(input: &Input, usable: Length, n_strips: u32) -> Result<Layout, Misfit> {
    let kerfs = (input.saw.kerf * n_strips.saturating_sub(1))?;
    let share = ((usable - kerfs)? / n_strips)?;
    let mark = input.tape.read(share, Rounding::Down)?.mark;
    if mark <= (input.allowance * 2)? {
        return Err(Misfit::NoRoom);
    }
    let widths = core::iter::repeat_n(mark, usize::try_from(n_strips).unwrap_or(0)).collect();
    Ok(Layout { share: Some(share), ..cut_up(input, widths)? })
}

fn list(input: &Input, usable: Length, finished: &[Length]) -> Result<Layout, Misfit> {
    if finished.is_empty() {
        return Err(Misfit::NoWidths);
    }
    let need = room(input, finished)?;
    if need > usable {
        return Err(Misfit::ListTooWide(need));
    }
    let mut widths = Vec::new();
    for width in finished {
        widths.push(sawn(input, *width)?);
    }
    // Widest first, equal ones together: the fewest fence settings.
    crate::order::sort_by(&mut widths, |a, b| b.cmp(a));
    cut_up(input, widths)
}

/// What strips need of the board: themselves, and a kerf between each two.
fn room(input: &Input, finished: &[Length]) -> Result<Length, OutOfRange> {
    let mut need = Length::ZERO;
    for (index, width) in finished.iter().enumerate() {
        if index > 0 {
            need = (need + input.saw.kerf)?;
        }
        need = (need + sawn(input, *width)?)?;
    }
    Ok(need)
}

/// Takes strips of these sawn widths off the board, one after the other from its first edge.
fn cut_up(input: &Input, widths: Vec<Length>) -> Result<Layout, Misfit> {
    let Saw { kerf, thinnest, .. } = input.saw;
    let (mut cuts, mut bands) = (Vec::new(), Vec::new());
    let (mut from_first_edge, mut board) = (Length::ZERO, input.width);
    if input.first_edge.is_positive() {
        board = (board - input.first_edge)?;
        if board < thinnest {
            return Err(Misfit::ThinToClean(board));
        }
        let dust = input.first_edge.min(kerf);
        let sliver = (input.first_edge - dust)?;
        from_first_edge = lay(&mut bands, Stretch::Sliver, from_first_edge, sliver)?;
        from_first_edge = lay(&mut bands, Stretch::Kerf, from_first_edge, dust)?;
        cuts.push(Cut {
            strip: None,
            fence: board,
            is_strip_at_fence: false,
            dust,
            board_left: board,
        });
    }
    for (number, width) in (1_u32..).zip(&widths) {
        let rest = (board - *width)?;
        from_first_edge = lay(&mut bands, Stretch::Strip(number), from_first_edge, *width)?;
        // At the very edge the blade may have less than a kerf to take, or nothing.
        let dust = rest.min(kerf);
        board = (rest - dust)?;
        if dust.is_positive() {
            let is_strip_at_fence = match input.falls {
                Falls::AtFence if *width < thinnest => return Err(Misfit::ThinStrip(*width)),
                Falls::AtFence => true,
                Falls::FarSide if board >= thinnest => false,
                // What stays is too thin to run along the fence, but the strip is not.
                Falls::FarSide if *width >= thinnest => true,
                Falls::FarSide => return Err(Misfit::ThinBoard(board)),
            };
            from_first_edge = lay(&mut bands, Stretch::Kerf, from_first_edge, dust)?;
            let fence = if is_strip_at_fence { *width } else { board };
            cuts.push(Cut {
                strip: Some(number),
                fence,
                is_strip_at_fence,
                dust,
                board_left: board,
            });
        }
    }
    lay(&mut bands, Stretch::Leftover, from_first_edge, board)?;
    Ok(Layout { sawn: widths, cuts, bands, leftover: board, share: None, fit_by_arithmetic: 0 })
}

/// Adds a stretch, if there is any of it, and gives where it ends.
fn lay(
    bands: &mut Vec<Band>,
    stretch: Stretch,
    from: Length,
    width: Length,
) -> Result<Length, OutOfRange> {
    let to = (from + width)?;
    if width.is_positive() {
        bands.push(Band { stretch, from, to });
    }
    Ok(to)
}

/// The refusal of a misfit, with the nearest thing that works.
fn explain(input: &Input, usable: Length, misfit: Misfit) -> Result<Refusal, OutOfRange> {
    let Saw { kerf, thinnest, .. } = input.saw;
    let field = match input.plan {
        Plan::Fit(_) => &STRIP_WIDTH,
        Plan::Equal(_) => &N_STRIPS,
        Plan::List(_) => &WIDTHS,
    };
    // The finished width that comes to `width` as sawn.
    let finished = |width: Length| width - (input.allowance * 2)?;
    // Where the strips fall elsewhere, else a plan with thicker ones.
    let elsewhere = |falls| {
        if works(input, usable, &input.plan, falls) { fall(falls) } else { thicker(input, usable) }
    };
    Ok(match misfit {
        Misfit::OutOfRange => return Err(OutOfRange),
        Misfit::NoWidths => Refusal::at(
            &WIDTHS,
            "no-widths",
            say!["Write at least one width, as in 2 @ 2 3/4, 1 1/2."],
            WayOut::set(say!["Start with one strip."], &WIDTHS, "1 3/4 in".to_owned()),
        ),
        Misfit::ThinToClean(board) => {
            let leave = WayOut::set(say!["Leave the edge as it is."], &FIRST_EDGE, "0".to_owned());
            board_too_thin_at_fence(&FIRST_EDGE, board, thinnest, leave)
        }
        Misfit::ThinStrip(thin) => {
            too_thin_at_fence(field, thin, thinnest, elsewhere(Falls::FarSide))
        }
        Misfit::ThinBoard(thin) => {
            board_too_thin_at_fence(field, thin, thinnest, elsewhere(Falls::AtFence))
        }
        Misfit::NoRoom => {
            let Plan::Equal(n_strips) = input.plan else { return Err(OutOfRange) };
            Refusal::at(
                &N_STRIPS,
                "no-room-for-strips",
                say![
                    "Kerfs and allowances of ",
                    counted(n_strips, " strip"),
                    " leave nothing of the ",
                    usable,
                    " the board gives."
                ],
                thicker(input, usable),
            )
        }
        Misfit::TooWide(width) => {
            let most = finished(usable)?;
            Refusal::at(
                &STRIP_WIDTH,
                "strip-too-wide",
                say!["One strip takes ", width, " as sawn. The board gives ", usable, "."],
                if most.is_positive() { at_most(field, most) } else { None },
            )
        }
        Misfit::TooMany => {
            let least = finished((((usable + kerf)? / MOST_STRIPS)? - kerf)?)?;
            Refusal::at(
                &STRIP_WIDTH,
                "too-many-strips",
                say!["That is more than ", MOST_STRIPS, " strips."],
                if least.is_positive() { at_least(field, least) } else { None },
            )
        }
        Misfit::ListTooWide(need) => {
            let Plan::List(widths) = &input.plan else { return Err(OutOfRange) };
            Refusal::at(
                &WIDTHS,
                "list-too-wide",
                say!["These strips and their kerfs take ", need, ". The board gives ", usable, "."],
                match shorter(input, usable, widths)? {
                    Some(fewer) => cut_these(&fewer),
                    None => WayOut::advice(say!["Use a wider board."]),
                },
            )
        }
    })
}

/// The rest of the board becomes too thin to run between blade and fence.
fn board_too_thin_at_fence(
    field: &Field,
    thin: Length,
    thinnest: Length,
    nearest: Option<WayOut>,
) -> Refusal {
    let sentence = if thin.is_zero() {
        say!["Nothing of the board would be left between blade and fence to hold it by."]
    } else {
        say![
            "Only ",
            thin,
            " of the board would be left between blade and fence. Your limit is ",
            thinnest,
            "."
        ]
    };
    let way_out = nearest.or_else(saw_it_thicker);
    Refusal::at(field, "board-too-thin-at-fence", sentence, way_out)
}

/// Strips on this side of the blade.
fn fall(falls: Falls) -> Option<WayOut> {
    let (sentence, choice) = match falls {
        Falls::FarSide => (say!["Let the strips fall on the far side of the blade."], FAR_SIDE),
        Falls::AtFence => (say!["Cut the strips between blade and fence."], AT_FENCE),
    };
    WayOut::set(sentence, &FALLS, choice.id.to_owned())
}

/// This list of widths.
fn cut_these(widths: &[Length]) -> Option<WayOut> {
    let list: Vec<String> = widths.iter().map(|width| exact_text(*width)).collect();
    let list = list.join(", ");
    WayOut::set(say![format!("Cut {list}.")], &WIDTHS, list)
}

fn works(input: &Input, usable: Length, plan: &Plan, falls: Falls) -> bool {
    attempt(&Input { plan: plan.clone(), falls, ..input.clone() }, usable).is_ok()
}

/// The same kind of plan, changed as little as need be for nothing to be too thin.
fn thicker(input: &Input, usable: Length) -> Option<WayOut> {
    let does = |plan: &Plan| works(input, usable, plan, input.falls);
    match &input.plan {
        Plan::Fit(_) => {
            let finished = (input.saw.thinnest - (input.allowance * 2).ok()?).ok()?;
            let fits = finished.is_positive() && does(&Plan::Fit(finished));
            if fits { at_least(&STRIP_WIDTH, finished) } else { None }
        }
        Plan::Equal(n_strips) => {
            let fewer = (1..*n_strips).rev().find(|n| does(&Plan::Equal(*n)))?;
            WayOut::set(say!["Ask for ", fewer, "."], &N_STRIPS, fewer.to_string())
        }
        Plan::List(widths) => {
            let thick =
                |width: &Length| sawn(input, *width).is_ok_and(|width| width >= input.saw.thinnest);
            let widths: Vec<Length> = widths.iter().copied().filter(thick).collect();
            if does(&Plan::List(widths.clone())) { cut_these(&widths) } else { None }
        }
    }
}

/// The list without the narrowest strip that makes it fit; where no single one does, without the
/// widest and so on.
fn shorter(
    input: &Input,
    usable: Length,
    widths: &[Length],
) -> Result<Option<Vec<Length>>, OutOfRange> {
    let mut widths = widths.to_vec();
    crate::order::sort_by(&mut widths, |a, b| b.cmp(a));
    while widths.len() > 1 {
        for dropped in (0..widths.len()).rev() {
            let mut fewer = widths.clone();
            fewer.remove(dropped);
            if room(input, &fewer)? <= usable {
                return Ok(Some(fewer));
            }
        }
        widths.remove(0);
    }
    Ok(None)
}
