//! [`Caution`]: the usual dangers of the work, said in one line each; [`Act`]: the work that brings them.

use super::Sentence;
use crate::measure::{Length, Rounding};
use crate::say;

/// A danger of the work. The saw's manual, local codes and licensed practice come first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Caution {
    /// Ripping on a table saw.
    Ripping,
    /// A thin strip that comes off at the blade.
    ThinStrip,
    /// A strip that runs between blade and fence, as planned.
    StripAtFence,
    /// A piece that is narrow or short.
    SmallPiece,
    /// A stop that sets the length of what is cut off.
    StopBlock,
    /// A cut that is deep or goes in from both sides.
    DeepCut,
    /// A tilted blade.
    TiltedCut,
    /// A circular saw held by hand.
    HandSaw,
    /// Drilling a hole.
    Drilling,
    /// Dust, noise and chips.
    DustAndNoise,
    /// Wood treated with preservative.
    TreatedWood,
    /// Metal fasteners in treated wood.
    Corrosion,
    /// A load on a seat, a shelf or a top.
    Load,
    /// Oily rags.
    OilyRags,
    /// Reclaimed wood.
    Reclaimed,
}

impl Caution {
    /// Stable name for programs.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Caution::Ripping => "ripping",
            Caution::ThinStrip => "thin_strip",
            Caution::StripAtFence => "strip_at_fence",
            Caution::SmallPiece => "small_piece",
            Caution::StopBlock => "stop_block",
            Caution::DeepCut => "deep_cut",
            Caution::TiltedCut => "tilted_cut",
            Caution::HandSaw => "hand_saw",
            Caution::Drilling => "drilling",
            Caution::DustAndNoise => "dust_and_noise",
            Caution::TreatedWood => "treated_wood",
            Caution::Corrosion => "corrosion",
            Caution::Load => "load",
            Caution::OilyRags => "oily_rags",
            Caution::Reclaimed => "reclaimed",
        }
    }

    /// Whether it is of what can take fingers: a blade, and what is thin or short beside it.
    #[must_use]
    pub fn can_take_fingers(self) -> bool {
        matches!(
            self,
            Caution::Ripping
                | Caution::ThinStrip
                | Caution::StripAtFence
                | Caution::SmallPiece
                | Caution::StopBlock
                | Caution::DeepCut
                | Caution::TiltedCut
                | Caution::HandSaw
        )
    }

    /// In one line.
    #[must_use]
    pub fn line(self) -> Sentence {
        match self {
            Caution::Ripping => say![
                "Riving knife on, fence locked, hands ",
                (Caution::HANDS, Rounding::Up),
                " from the blade, stand out of line."
            ],
            Caution::ThinStrip => say![
                "Never trap a thin strip between blade and fence. Let it fall on the far side."
            ],
            Caution::StripAtFence => say![
                "Push the strip right past the blade with a push stick. Never let it lie there."
            ],
            Caution::StopBlock => say![
                "Never the fence as the end stop without a spacer block: what is cut off must lie free."
            ],
            Caution::SmallPiece => say![
                "Narrower than ",
                (Caution::NARROW, Rounding::Up),
                " or shorter than ",
                (Caution::SHORT, Rounding::Up),
                ": use a push block, not your hands."
            ],
            Caution::DeepCut => {
                say!["Deep cut: raise the blade in steps, and stop when the cut binds."]
            }
            Caution::HandSaw => {
                say!["Clamp the guide and the board, and keep the cord and your legs clear."]
            }
            Caution::Drilling => {
                say!["Clamp the part, back it up, and keep sleeves and gloves off the drill."]
            }
            Caution::DustAndNoise => {
                say!["Eye and hearing protection on. Keep the dust out of your lungs."]
            }
            Caution::TreatedWood => say![
                "Treated wood: mask, goggles, wash your hands, gather the dust, never burn it."
            ],
            Caution::Corrosion => {
                say!["In treated wood use hot-dipped zinc or stainless screws. Do not mix metals."]
            }
            Caution::TiltedCut => {
                say!["Tilted blade: check that it clears the fence and the guard with the saw off."]
            }
            Caution::Load => {
                say!["A check, not engineering. Local code and a licensed engineer decide."]
            }
            Caution::OilyRags => say![
                "Oily rags can catch fire by themselves. Soak them or seal them in a metal can."
            ],
            Caution::Reclaimed => say!["Reclaimed wood: take out every nail before the saw."],
        }
    }

    /// More on request, with where it is from.
    #[must_use]
    pub fn more(self) -> Sentence {
        match self {
            Caution::Ripping => say![
                "The riving knife is in line with the blade and thinner than the kerf (California Title 8, section 4296; \
                 29 CFR 1910.213). Expose the least blade that cuts, and never adjust the fence while the saw runs. The \
                 ",
                (Caution::HANDS, Rounding::Up),
                " distance is what saw manuals say; follow the manual of your saw."
            ],
            Caution::ThinStrip => say![
                "A thin strip beside the fence can be thrown back at you. Cut it on the side away from the fence, \
                 against a stop, or plane it down from a thicker one. Common practice, no source; follow the manual of \
                 your saw."
            ],
            Caution::StripAtFence => say![
                "What lies loose between blade and fence can be thrown back at you. Use a push stick when a hand would \
                 come within ",
                (Caution::HANDS, Rounding::Up),
                " of the blade, and stand out of line. Saw manuals say so; follow the manual of your saw."
            ],
            Caution::StopBlock => say![
                "A piece held between fence and blade binds and is thrown. Clamp a block to the fence well before the \
                 blade, or set a stop on the mitre gauge. Saw manuals say so; follow the manual of your saw. Brush the \
                 dust off the stop: it makes every piece short."
            ],
            Caution::SmallPiece => say![
                "Use a push stick when a hand would come within ",
                (Caution::HANDS, Rounding::Up),
                " of the blade, a push block when the piece is \
                 narrower than ",
                (Caution::NARROW, Rounding::Up),
                " or shorter than ",
                (Caution::SHORT, Rounding::Up),
                ", and do not crosscut loose pieces under about ",
                (Caution::LOOSE, Rounding::Up),
                " on a table \
                 saw: cut small parts from a longer piece. Saw manuals say so; follow the manual of your saw."
            ],
            Caution::DeepCut => say![
                "About ",
                (Caution::PASS, Rounding::Down),
                " deeper with each pass, the same face to the fence, the knife behind the blade. If the cut \
                 closes on the blade, stop the saw and wedge the kerf before going on. Common practice, no source."
            ],
            Caution::HandSaw => say![
                "Support the board so that the cut opens and does not pinch. Set the blade about ",
                (Caution::BELOW, Rounding::Down),
                " deeper than the \
                 board. Unplug the saw before you measure its shoe. Follow the manual of your saw."
            ],
            Caution::Drilling => say![
                "Drill from both faces to meet in the middle, or clamp scrap behind, so that the far side does not \
                 break out. Common practice, no source."
            ],
            Caution::DustAndNoise => say![
                "NIOSH recommends at most 1 mg of wood dust in a cubic metre of air and 85 dB(A) over 8 hours, half the \
                 time for each 3 dB more; table saws run above that. Western redcedar, oak, mahogany and redwood dust \
                 are named for allergies (OSHA)."
            ],
            Caution::TreatedWood => say![
                "Do not burn it in a fire, stove or boiler. Wear a mask, gloves and goggles when sawing or sanding, but \
                 no gloves near a turning blade. Not for surfaces that touch food (EPA consumer information sheet)."
            ],
            Caution::Corrosion => say![
                "Hot-dipped zinc-coated steel, stainless steel, silicon bronze or copper (IRC R317.3.1; IBC 2304.9.5.1, \
                 2012). Plain and thinly plated steel rusts in treated wood."
            ],
            Caution::TiltedCut => say![
                "Cut scrap first, fit it, then cut the stock. A piece under a tilted blade can bind against the fence. \
                 Follow the manual of your saw."
            ],
            Caution::Load => say![
                "Knots, notches, wet wood and loose joints make wood weaker than any table. Seats and stairs for the \
                 public come under local codes and licensed practice."
            ],
            Caution::OilyRags => say![
                "Lay them flat outdoors to dry, keep them under water, or seal them in a metal can. Read the label of \
                 the finish."
            ],
            Caution::Reclaimed => say![
                "Choose pallets stamped as heat-treated, not fumigated. Wood built before 2004 may hold an arsenic \
                 preservative (EPA)."
            ],
        }
    }
}

/// Something that is done to carry an answer out.
///
/// A calculator says what is done, and [`DANGERS`] which cautions that brings: so no answer can
/// forget the dust, or warn of what it does not ask for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Act {
    /// Rip at the fence of a table saw.
    Rip,
    /// Rip a thin strip that falls on the far side of the blade, or leave a thin piece there.
    RipThin,
    /// Rip a thin strip between blade and fence.
    RipThinAtFence,
    /// Saw through deep stock, or from both sides.
    SawDeep,
    /// Saw a piece that is narrow or short.
    SawSmall,
    /// Saw along a guide with a circular saw.
    SawByHand,
    /// Saw, shape or sand in some other way: to length, along a curve, a joint.
    Saw,
    /// Saw to length against a stop.
    SawAtStop,
    /// Saw with the blade tilted.
    SawTilted,
    /// Drill.
    Drill,
    /// Drive screws or nails.
    Fasten,
    /// Load it with people or pots.
    Load,
    /// Put on oil or stain.
    Finish,
    /// Carry and stack boards.
    Handle,
}

/// Wood that is cut: its dust and noise, what is in it, and what is left in it.
const CUT_WOOD: [Caution; 3] = [Caution::DustAndNoise, Caution::TreatedWood, Caution::Reclaimed];

/// Which cautions each act brings: the one table.
pub const DANGERS: [(Act, &[Caution]); 18] = [
    (Act::Rip, &[Caution::Ripping]),
    (Act::Rip, &CUT_WOOD),
    (Act::RipThin, &[Caution::ThinStrip]),
    (Act::RipThinAtFence, &[Caution::StripAtFence]),
    (Act::SawDeep, &[Caution::DeepCut]),
    (Act::SawSmall, &[Caution::SmallPiece]),
    (Act::SawByHand, &[Caution::HandSaw]),
    (Act::SawByHand, &CUT_WOOD),
    (Act::Saw, &CUT_WOOD),
    (Act::SawAtStop, &[Caution::StopBlock]),
    (Act::SawAtStop, &CUT_WOOD),
    (Act::SawTilted, &[Caution::TiltedCut]),
    (Act::SawTilted, &CUT_WOOD),
    (Act::Drill, &[Caution::Drilling, Caution::DustAndNoise]),
    (Act::Fasten, &[Caution::Corrosion]),
    (Act::Load, &[Caution::Load]),
    (Act::Finish, &[Caution::OilyRags]),
    (Act::Handle, &[Caution::TreatedWood]),
];

impl Caution {
    /// A push block is used for pieces narrower than this (saw manuals): 6 in.
    pub const NARROW: Length = Length::sixty_fourths(6 * 64);

    /// A push block is used for pieces shorter than this (saw manuals): 12 in.
    pub const SHORT: Length = Length::sixty_fourths(12 * 64);

    /// No hand comes nearer to a blade (saw manuals): 6 in.
    pub const HANDS: Length = Length::sixty_fourths(6 * 64);

    /// A loose piece shorter than this is not crosscut on a table saw (saw manuals): 6 in.
    pub const LOOSE: Length = Length::sixty_fourths(6 * 64);

    /// How much deeper each pass of a deep cut goes: 1 in. Common practice, no source.
    pub const PASS: Length = Length::sixty_fourths(64);

    /// How far a circular saw's blade stands out below the board: 1/4 in. Common practice, no source.
    pub const BELOW: Length = Length::sixty_fourths(16);

    /// A piece thinner than this beside the blade is a thin strip: 3/4 in. Common practice, no source.
    pub const THIN: Length = Length::sixty_fourths(48);

    /// What these acts bring, each once, in the order of the dangers.
    #[must_use]
    pub fn of(acts: &[Act]) -> Vec<Caution> {
        let brought = DANGERS.iter().filter(|(act, _)| acts.contains(act));
        let mut cautions: Vec<Caution> =
            brought.flat_map(|(_, cautions)| cautions.iter().copied()).collect();
        crate::order::sort(&mut cautions);
        cautions.dedup();
        cautions
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Tape;

    /// What saw manuals say in inches; by hand 6 in are 152.4 mm and 12 in 304.8: no tape says less.
    #[test]
    fn how_near_a_hand_may_come_is_said_on_the_tape_at_hand() {
        let said = |caution: Caution, tape: Tape| {
            format!("{} {}", caution.line().on(tape), caution.more().on(tape))
        };
        for (caution, inches, millimetres) in [
            (Caution::Ripping, "hands 6 in from the blade", "hands 153 mm from the blade"),
            (
                Caution::SmallPiece,
                "Narrower than 6 in or shorter than 12 in:",
                "Narrower than 153 mm or shorter than 305 mm:",
            ),
            (Caution::SmallPiece, "within 6 in of the blade", "within 153 mm of the blade"),
            (Caution::SmallPiece, "pieces under about 6 in on", "pieces under about 153 mm on"),
            (Caution::StripAtFence, "within 6 in of the blade", "within 153 mm of the blade"),
            (Caution::DeepCut, "About 1 in deeper", "About 25 mm deeper"),
            (Caution::HandSaw, "about 1/4 in deeper", "about 6 mm deeper"),
        ] {
            assert!(said(caution, Tape::SIXTEENTHS).contains(inches), "{caution:?}: {inches}");
            let metric = said(caution, Tape::Millimetres(0));
            assert!(metric.contains(millimetres), "{caution:?}: {metric}");
        }
    }
}
