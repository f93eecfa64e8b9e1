//! Listing the forms of a board that is ripped or crosscut into blocks first: the first stage of a two-stage pattern (Gilmore
//! and Gomory, "Multistage cutting stock problems of two and more dimensions", Operations Research 13, 1965; from memory). How
//! they are listed is our own.

use crate::model::{BlockMake, Form, Make, Nest, PieceMake};

impl Nest {
    /// The form made of these choices: (room, choice), in cutting order.
    pub(crate) fn form(&self, pieces: &[(usize, usize)]) -> Form {
        let mut bins = Vec::new();
        let mut strips = Vec::new();
        let mut blocks = Vec::new();
        for (piece, &(room, choice)) in pieces.iter().enumerate() {
            let choice = &self.choices[choice];
            for bin in &choice.bins {
                let mut bin = *bin;
                bin.piece = piece;
                if let PieceMake::Block(..) = choice.piece {
                    bin.segment = room;
                }
                bins.push(bin);
            }
            match &choice.piece {
                PieceMake::Strip(strip) => strips.push(strip.clone()),
                PieceMake::Block(length, whole) => {
                    blocks.push(BlockMake { segment: room, length: *length, whole: *whole })
                }
            }
        }
        let make =
            if blocks.is_empty() { Make::Strips(strips, true) } else { Make::Blocks(blocks) };
        Form { bins, make }
    }
}

/// Every form to which no further piece can be added, or `None` when there are more than `most`. Smaller forms are not
/// needed: leaving bins empty makes them.
pub(crate) fn list_forms(nest: &Nest, most: usize) -> Option<Vec<Form>> {
    let mut lister = Lister {
        nest,
        most,
        used: vec![0; nest.choices.len()],
        pieces: Vec::new(),
        left: nest.rooms.clone(),
        visits: 0,
        forms: Vec::new(),
    };
    (nest.rooms.is_empty() || lister.go(0, 0)).then_some(lister.forms)
}

struct Lister<'a> {
    nest: &'a Nest,
    most: usize,
    used: Vec<u32>,
    pieces: Vec<(usize, usize)>,
    left: Vec<i64>,
    visits: usize,
    forms: Vec<Form>,
}

impl Lister<'_> {
    /// Adds pieces from `choice` on to `room`, then goes on to the next room. `false` when there are too many.
    fn go(&mut self, room: usize, choice: usize) -> bool {
        self.visits += 1;
        if self.forms.len() > self.most || self.visits > 100 * self.most {
            return false;
        }
        if room == self.nest.rooms.len() {
            if !self.pieces.is_empty() && self.is_full() {
                self.forms.push(self.nest.form(&self.pieces));
            }
            return true;
        }
        if choice == self.nest.choices.len() {
            return self.go(room + 1, 0);
        }
        let weight = self.nest.choices[choice].weight;
        if weight <= self.left[room] && self.used[choice] < self.nest.choices[choice].most {
            self.left[room] -= weight;
            self.used[choice] += 1;
            self.pieces.push((room, choice));
            let fine = self.go(room, choice);
            self.pieces.pop();
            self.used[choice] -= 1;
            self.left[room] += weight;
            if !fine {
                return false;
            }
        }
        self.go(room, choice + 1)
    }

    fn is_full(&self) -> bool {
        self.nest.choices.iter().zip(&self.used).all(|(choice, &used)| {
            used >= choice.most || self.left.iter().all(|&left| left < choice.weight)
        })
    }
}
