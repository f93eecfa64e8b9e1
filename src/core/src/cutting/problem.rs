//! The cutting job: parts, boards, scraps, the saw's habits, and what can be wrong with them.

/// A length in the job's common unit. Whole numbers only; see [`super::scale`].
pub type Units = i64;

/// The largest length accepted, in units: sums of any accepted job stay far inside `i64`.
pub const LARGEST_UNITS: Units = 1 << 32;
/// The largest price accepted, in cents.
pub const LARGEST_PRICE_CENTS: i64 = 1_000_000_000;
/// The largest total number of parts accepted.
pub const LARGEST_QUANTITY: u32 = 100_000;

/// The actual size of a board's end.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct CrossSize {
    /// Across the face, in units.
    pub width: Units,
    /// In units.
    pub thickness: Units,
}

/// One kind of stock: a wood in one cross-section.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Section {
    /// What parts, boards and scraps call it.
    pub id: String,
    /// Parts are ripped only from boards of the same wood.
    pub wood: String,
    /// The actual size, needed only for ripping. Without it the section is cut to length and nothing else.
    pub size: Option<CrossSize>,
}

/// Parts to cut, all alike.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Part {
    /// Unique among the parts.
    pub id: String,
    /// What the builder calls it.
    pub name: String,
    /// The id of its section.
    pub section: String,
    /// Finished length, in units.
    pub length: Units,
    /// How many.
    pub quantity: u32,
    /// 1 comes first when not everything fits on the rack.
    pub priority: u32,
    /// May be ripped from a wider board.
    pub may_rip: bool,
    /// May be resawn from a thicker board.
    pub may_resaw: bool,
    /// May lie across the board: the grain does not matter.
    pub grain_free: bool,
}

/// A stretch of a board that no part may use, through the whole width.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct KnotZone {
    /// Where it starts, from the left end.
    pub from: Units,
    /// Where it ends, from the left end.
    pub to: Units,
}

/// What is lost at the two ends of a board, the cut included.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Ends {
    /// From the left end.
    pub left: Units,
    /// From the right end.
    pub right: Units,
}

/// A board the yard sells, or a paid board on the rack.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Board {
    /// Unique among boards and scraps.
    pub id: String,
    /// The id of its section.
    pub section: String,
    /// In units.
    pub length: Units,
    /// Price of one whole board, in cents; more than zero.
    pub price_cents: i64,
    /// How many there are; `None` for as many as wanted.
    pub limit: Option<u32>,
    /// End trims.
    pub trims: Ends,
    /// Knot zones, in any order; they may overlap.
    pub knots: Vec<KnotZone>,
}

/// A piece on hand. It costs nothing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Scrap {
    /// Unique among boards and scraps.
    pub id: String,
    /// The id of its section.
    pub section: String,
    /// In units.
    pub length: Units,
    /// How many pieces just like this.
    pub quantity: u32,
    /// End trims.
    pub trims: Ends,
    /// Knot zones, in any order; they may overlap.
    pub knots: Vec<KnotZone>,
}

/// Cutting across the width.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RipRules {
    /// Rip kerf.
    pub kerf: Units,
    /// Lost along the near edge before the first strip, the cut included.
    pub near_edge: Units,
    /// Lost along the far edge, the cut included.
    pub far_edge: Units,
    /// The narrowest strip that may be ripped.
    pub least_width: Units,
    /// The shortest piece that may be ripped or resawn: a board, or a block.
    pub least_length: Units,
    /// Whether a board may be crosscut first and the blocks ripped after.
    pub crosscut_first: bool,
    /// Cutting by thickness; `None` forbids it for the whole job.
    pub resaw: Option<ResawRules>,
}

/// Cutting by thickness.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ResawRules {
    /// Resaw kerf.
    pub kerf: Units,
    /// Lost from the near face, the cut included.
    pub near_face: Units,
    /// Lost from the far face, the cut included.
    pub far_face: Units,
    /// The thinnest layer that may be resawn.
    pub least_thickness: Units,
    /// The widest strip the saw can resaw; `None` for no limit.
    pub greatest_width: Option<Units>,
}

/// The saw's habits.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SawRules {
    /// Crosscut kerf.
    pub kerf: Units,
    /// Ripping and resawing; `None` forbids both for the whole job.
    pub rip: Option<RipRules>,
}

/// A cutting job.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Job {
    /// Kinds of stock.
    pub sections: Vec<Section>,
    /// Parts wanted.
    pub parts: Vec<Part>,
    /// Boards to buy.
    pub boards: Vec<Board>,
    /// Pieces on hand.
    pub scraps: Vec<Scrap>,
    /// The saw.
    pub saw: SawRules,
}

impl Job {
    /// A job that nothing is wanted of yet.
    #[must_use]
    pub fn of(sections: Vec<Section>, saw: SawRules) -> Job {
        Job { sections, parts: Vec::new(), boards: Vec::new(), scraps: Vec::new(), saw }
    }
}

/// What is wrong with a job, naming the part or the board.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum CutProblem {
    /// There is nothing to cut.
    NoParts,
    /// No board and no scrap at all.
    NoBoards,
    /// Two things carry the same id.
    SameId {
        /// The id used twice.
        id: String,
    },
    /// A part, board or scrap names a section that is not in the list.
    UnknownSection {
        /// The part, board or scrap.
        id: String,
        /// The section it names.
        section: String,
    },
    /// A length is zero or less.
    LengthNotPositive {
        /// The part, board, scrap or section.
        id: String,
    },
    /// A length is larger than [`LARGEST_UNITS`].
    LengthTooLarge {
        /// The part, board, scrap or section.
        id: String,
    },
    /// A board's price is zero or less. A free piece is a scrap.
    PriceNotPositive {
        /// The board.
        id: String,
    },
    /// A price is larger than [`LARGEST_PRICE_CENTS`].
    PriceTooLarge {
        /// The board.
        id: String,
    },
    /// More than [`LARGEST_QUANTITY`] parts in all.
    TooManyParts {
        /// How many were asked for.
        wanted: u64,
    },
    /// A kerf, trim or other loss is negative or larger than [`LARGEST_UNITS`].
    LossOutOfRange {
        /// Which one, in words.
        what: &'static str,
    },
    /// A knot zone ends before it starts, or lies outside the board.
    KnotOutside {
        /// The board or scrap.
        id: String,
    },
    /// Trims and knots leave nothing of this board.
    NothingUsable {
        /// The board or scrap.
        id: String,
    },
    /// No board or scrap of the job can ever hold this part.
    PartFitsNowhere {
        /// The part.
        id: String,
        /// Its length.
        length: Units,
        /// The longest clear stretch among boards it may be cut from; `None` when there is no such board.
        longest_clear: Option<Units>,
    },
    /// All boards and scraps together are not enough, and none may be bought without limit.
    NotEnoughBoards {
        /// Parts that found no place in the best plan known, with how many of each.
        left_out: Vec<(String, u32)>,
        /// `true` when no plan at all can hold everything; `false` when none was found in the time given.
        proved: bool,
    },
}

/// A board or a scrap seen alike.
#[derive(Debug, Clone, Copy)]
pub struct StockView<'a> {
    /// Its id.
    pub id: &'a str,
    /// Section id.
    pub section: &'a str,
    /// In units.
    pub length: Units,
    /// Zero for a scrap.
    pub price_cents: i64,
    /// How many; `None` for no limit.
    pub limit: Option<u32>,
    /// End trims.
    pub trims: Ends,
    /// Knot zones.
    pub knots: &'a [KnotZone],
}

impl StockView<'_> {
    /// The clear stretches (from, to), left to right, by rules 1 and 2 of [`super`]. Empty ones are left out.
    #[must_use]
    pub fn segments(&self, kerf: Units) -> Vec<(Units, Units)> {
        let start = self.trims.left;
        let end = self.length - self.trims.right;
        let mut zones: Vec<(Units, Units)> = self
            .knots
            .iter()
            .map(|zone| {
                let blocked_to = if zone.to >= end || zone.from <= start {
                    zone.to
                } else {
                    zone.to.max(zone.from + kerf)
                };
                (zone.from, blocked_to)
            })
            .collect();
        crate::order::sort(&mut zones);
        let mut segments = Vec::new();
        let mut clear_from = start;
        for (from, to) in zones {
            if from.min(end) > clear_from {
                segments.push((clear_from, from.min(end)));
            }
            clear_from = clear_from.max(to);
        }
        if end > clear_from {
            segments.push((clear_from, end));
        }
        segments
    }
}

impl Job {
    /// All boards, then all scraps, seen alike. The position in this list is the *stock number*.
    pub fn stock(&self) -> impl Iterator<Item = StockView<'_>> {
        let boards = self.boards.iter().map(|board| StockView {
            id: &board.id,
            section: &board.section,
            length: board.length,
            price_cents: board.price_cents,
            limit: board.limit,
            trims: board.trims,
            knots: &board.knots,
        });
        let scraps = self.scraps.iter().map(|scrap| StockView {
            id: &scrap.id,
            section: &scrap.section,
            length: scrap.length,
            price_cents: 0,
            limit: Some(scrap.quantity),
            trims: scrap.trims,
            knots: &scrap.knots,
        });
        boards.chain(scraps)
    }

    /// The section of that id.
    #[must_use]
    pub fn section(&self, id: &str) -> Option<&Section> {
        self.sections.iter().find(|section| section.id == id)
    }

    /// How many parts in all.
    #[must_use]
    pub fn total_quantity(&self) -> u64 {
        self.parts.iter().map(|part| u64::from(part.quantity)).sum()
    }

    /// Looks for input that cannot be answered. Whether each part fits anywhere is not looked at here.
    ///
    /// # Errors
    /// The first [`CutProblem`] found.
    pub fn validate(&self) -> Result<(), CutProblem> {
        let wanted = self.total_quantity();
        if wanted == 0 {
            return Err(CutProblem::NoParts);
        }
        if wanted > u64::from(LARGEST_QUANTITY) {
            return Err(CutProblem::TooManyParts { wanted });
        }
        if self.boards.is_empty() && self.scraps.is_empty() {
            return Err(CutProblem::NoBoards);
        }
        self.validate_saw()?;
        distinct(self.sections.iter().map(|section| section.id.as_str()))?;
        distinct(self.parts.iter().map(|part| part.id.as_str()))?;
        distinct(self.stock().map(|stock| stock.id))?;
        for section in &self.sections {
            if let Some(size) = section.size {
                positive(&section.id, size.width)?;
                positive(&section.id, size.thickness)?;
            }
        }
        for part in &self.parts {
            positive(&part.id, part.length)?;
            self.known_section(&part.id, &part.section)?;
        }
        for board in &self.boards {
            if board.price_cents <= 0 {
                return Err(CutProblem::PriceNotPositive { id: board.id.clone() });
            }
            if board.price_cents > LARGEST_PRICE_CENTS {
                return Err(CutProblem::PriceTooLarge { id: board.id.clone() });
            }
        }
        for stock in self.stock() {
            positive(stock.id, stock.length)?;
            self.known_section(stock.id, stock.section)?;
            loss("end trim", stock.trims.left)?;
            loss("end trim", stock.trims.right)?;
            for zone in stock.knots {
                if zone.from < 0 || zone.to < zone.from || zone.to > stock.length {
                    return Err(CutProblem::KnotOutside { id: stock.id.to_owned() });
                }
            }
            if stock.segments(self.saw.kerf).is_empty() {
                return Err(CutProblem::NothingUsable { id: stock.id.to_owned() });
            }
        }
        Ok(())
    }

    fn validate_saw(&self) -> Result<(), CutProblem> {
        loss("crosscut kerf", self.saw.kerf)?;
        if let Some(rip) = &self.saw.rip {
            loss("rip kerf", rip.kerf)?;
            loss("edge clean-up", rip.near_edge)?;
            loss("edge clean-up", rip.far_edge)?;
            loss("least strip width", rip.least_width)?;
            loss("least length to rip", rip.least_length)?;
            if let Some(resaw) = &rip.resaw {
                loss("resaw kerf", resaw.kerf)?;
                loss("face clean-up", resaw.near_face)?;
                loss("face clean-up", resaw.far_face)?;
                loss("least layer thickness", resaw.least_thickness)?;
                loss("greatest resaw width", resaw.greatest_width.unwrap_or(0))?;
            }
        }
        Ok(())
    }

    fn known_section(&self, id: &str, section: &str) -> Result<(), CutProblem> {
        if self.section(section).is_some() {
            Ok(())
        } else {
            Err(CutProblem::UnknownSection { id: id.to_owned(), section: section.to_owned() })
        }
    }
}

fn distinct<'a>(ids: impl Iterator<Item = &'a str>) -> Result<(), CutProblem> {
    let mut ids: Vec<&str> = ids.collect();
    crate::order::sort(&mut ids);
    let twice = ids.iter().zip(ids.iter().skip(1)).find(|(a, b)| a == b);
    match twice {
        Some((id, _)) => Err(CutProblem::SameId { id: (*id).to_owned() }),
        None => Ok(()),
    }
}

fn positive(id: &str, length: Units) -> Result<(), CutProblem> {
    if length <= 0 {
        Err(CutProblem::LengthNotPositive { id: id.to_owned() })
    } else if length > LARGEST_UNITS {
        Err(CutProblem::LengthTooLarge { id: id.to_owned() })
    } else {
        Ok(())
    }
}

fn loss(what: &'static str, value: Units) -> Result<(), CutProblem> {
    if (0..=LARGEST_UNITS).contains(&value) {
        Ok(())
    } else {
        Err(CutProblem::LossOutOfRange { what })
    }
}
