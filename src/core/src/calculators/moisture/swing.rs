//! How far a board swings over the year, between its driest and its wettest.

use super::fields::{DRIEST, WETTEST};
use super::movement::{Moistures, Spread, Wood, spread};
use crate::measure::text::decimal;
use crate::measure::{Length, Number, OutOfRange};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};
use crate::tables::shrinkage::{self, Across, Moisture};

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// One board, as measured when driest.
    pub width: Length,
    /// The wood.
    pub wood: Wood,
    /// Driest and wettest of the year.
    pub moistures: Moistures,
}

/// How far it swings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Likely, from its driest to its wettest. For ordinary softwood 0.215 % of the width with
    /// each point; for a species by its own figure.
    pub swing: Length,
    /// The same by the rule that goes from one moisture to another by way of the green size.
    pub by_green_size: Length,
    /// Swings of the board that moves least and of the one that moves most, where known.
    pub ends: Option<(Length, Length)>,
    /// A gap, left when driest, that not even the board that moves most closes.
    pub never_closes: Length,
    /// How it was found.
    pub spread: Spread,
}

/// Swings the board.
///
/// # Errors
///
/// Those of [`spread`], and `wrong-way-round`: driest above wettest.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let Moistures { from: driest, to: wettest, .. } = input.moistures;
    if driest > wettest {
        let [dry, wet] = [driest, wettest].map(|percent| decimal(percent, 1));
        return Err(Refusal::at(
            &DRIEST,
            "wrong-way-round",
            say![format!("The driest, {dry} %, is above the wettest, {wet} %.")],
            Some(WayOut {
                sentence: say!["Change them round."],
                set: vec![
                    (DRIEST.id, wettest.to_string().into()),
                    (WETTEST.id, driest.to_string().into()),
                ],
            }),
        )
        .into());
    }
    let spread = spread(input.wood, Across::Width, input.moistures)?;
    let by_green_size = (spread.later(input.width)? - input.width)?;
    let swing = match input.wood {
        Wood::OrdinarySoftwood => {
            let lost = |percent| match Moisture::percent(percent) {
                Some(moisture) => shrinkage::lost(Across::Width, moisture),
                None => Ok(Number::ZERO),
            };
            let percent = (lost(driest)? - lost(wettest)?)?;
            (input.width * (percent / Number::whole(100))?)?
        }
        Wood::Species(..) => by_green_size,
    };
    let ends = spread
        .ends_later(input.width)?
        .map(|(least, most)| Ok::<_, OutOfRange>(((least - input.width)?, (most - input.width)?)))
        .transpose()?;
    let most = ends.map_or(swing, |(_, most)| most);
    let never_closes = most.max(swing).max(by_green_size);
    Ok(Answer { swing, by_green_size, ends, never_closes, spread })
}
