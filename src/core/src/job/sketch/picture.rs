//! The piece seen from the front and a little from the right, each of its parts as it stands: to cut, cut, wrong, or
//! of another size than planned.

use super::super::{Dimension, Item, ItemId, Job, PartSizes, Reckoned, Sketch};
use crate::drawing::{Anchor, Draft, Role, SCENE_WIDTH, Scene, Shape, Size};
use crate::measure::Length;
use crate::order::{sort, sort_by};
use crate::say;

/// How a piece stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Look {
    /// To cut.
    ToCut,
    /// Cut as wanted.
    Cut,
    /// To cut, and of another size than was planned.
    Changed,
    /// Cut, and not as it is wanted now.
    Wrong,
}

/// The picture, and the parts that have no place in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// Front and right side in one.
    pub scene: Scene,
    /// Parts of which a piece is not drawn.
    pub beside: Vec<ItemId>,
}

/// How far back goes to the right and up.
const BACK: (f64, f64) = (0.42, 0.26);
/// Tallest it is drawn, in page units.
const TALLEST: f64 = 215.0;
/// Room for the name of a wrong piece and for strokes.
const EDGE: f64 = 6.0;
/// Within this a part belongs to a place of the frame: one that came out different still does. Half an inch.
const ABOUT: Length = Length::sixty_fourths(32);

/// Within this a thickness or width is that of rail or top. An eighth.
const ALIKE: Length = Length::sixty_fourths(8);

/// A corner in the room, in inches: from the left, from the front, from the floor.
type Corner = (f64, f64, f64);

/// A piece in its place.
struct Placed {
    part: String,
    /// Counted from 1.
    number: usize,
    look: Look,
    place: Place,
    /// Which of its place, counted from 0.
    nth: usize,
    /// Its nearest lower left corner.
    at: Corner,
    size: Corner,
}

/// The sizes of the frame, in inches.
struct Frame {
    length: f64,
    depth: f64,
    height: f64,
    leg: f64,
    rail: f64,
    shelf: Option<f64>,
    top: Option<f64>,
    overhang: f64,
}

/// The places that parts take, and how many of each are taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Place {
    Leg,
    LongRail,
    ShortRail,
    Plank,
    /// Across the shelf, from the front to the back.
    Slat,
    /// Along the shelf.
    ShelfPlank,
}

/// Draws the piece of a job with a sketch, if its sizes are known; `look` says how a piece of a part stands.
#[must_use]
pub fn picture(
    job: &Job,
    reckoned: &Reckoned,
    look: &dyn Fn(ItemId, usize) -> Look,
) -> Option<Picture> {
    let sketch = job.items().find_map(|(_, item)| match item {
        Item::Sketch(sketch) => Some(sketch),
        _ => None,
    })?;
    let sizes = Sizes::of(sketch, reckoned)?;
    let frame = sizes.frame();
    let mut placed: Vec<Placed> = Vec::new();
    let mut beside = Vec::new();
    let mut taken: Vec<Place> = Vec::new();
    let all: Vec<(ItemId, &str, &PartSizes)> = job
        .parts()
        .into_iter()
        .filter_map(|(id, part)| Some((id, &*part.name, reckoned.part(id)?)))
        .collect();
    let planks_of = |wanted: Place| {
        let count = |(_, _, it): &(ItemId, &str, &PartSizes)| {
            let is_so = sizes.place_of(it) == Some(wanted);
            if is_so { it.quantity.clone().unwrap_or(0) as usize } else { 0 }
        };
        all.iter().map(count).sum::<usize>()
    };
    for (id, name, it) in &all {
        let count = it.quantity.clone().unwrap_or(0) as usize;
        let place = sizes.place_of(it);
        let mut is_whole = place.is_some();
        for index in 0..count {
            let Some(place) = place else { break };
            let so_far = |place: Place| taken.iter().filter(|other| **other == place).count();
            // In a square frame nothing but the order tells its rails apart.
            let is_either = place == Place::LongRail && sizes.is_square();
            let is_short = is_either && so_far(Place::ShortRail) < so_far(place).min(2);
            let place = if is_short { Place::ShortRail } else { place };
            let at = so_far(place);
            let width = it.wanted(Dimension::Width).map_or(1.0, Length::to_f64);
            match frame.corner(place, at, planks_of(place), width) {
                Some((at, size)) => {
                    let (part, number) = ((*name).to_owned(), index.saturating_add(1));
                    let look = look(*id, index);
                    placed.push(Placed { part, number, look, place, nth: so_far(place), at, size });
                    taken.push(place);
                }
                None => is_whole = false,
            }
        }
        if !is_whole {
            beside.push(*id);
        }
    }
    show_wrong_rails(&mut placed);
    Some(Picture { scene: frame.draw(placed), beside })
}

/// Which of two rails is the nearer one, nobody has said: the wrong one is where it is seen, in front or on the right.
fn show_wrong_rails(placed: &mut [Placed]) {
    let is_hidden = |it: &Placed| match it.place {
        Place::LongRail => !it.nth.is_multiple_of(2),
        Place::ShortRail => it.nth.is_multiple_of(2),
        _ => false,
    };
    for hidden in 0..placed.len() {
        let Some(it) = placed.get(hidden) else { continue };
        if it.look != Look::Wrong || !is_hidden(it) {
            continue;
        }
        let (place, pair) = (it.place, it.nth / 2);
        let is_partner =
            |other: &Placed| other.place == place && other.nth / 2 == pair && !is_hidden(other);
        let seen = placed.iter().position(|other| is_partner(other) && other.look != Look::Wrong);
        if let Some(seen) = seen
            && let (Some(one), Some(other)) = (placed.get(hidden), placed.get(seen))
        {
            let (one, other) = ((one.at, one.nth), (other.at, other.nth));
            for (at, (corner, nth)) in [(hidden, other), (seen, one)] {
                if let Some(it) = placed.get_mut(at) {
                    (it.at, it.nth) = (corner, nth);
                }
            }
        }
    }
}

/// The sizes of the frame as they are, exact.
struct Sizes {
    length: Length,
    depth: Length,
    height: Length,
    leg: Length,
    rail: Length,
    shelf: Option<Length>,
    top: Option<Length>,
    overhang: Length,
}

impl Sizes {
    fn of(sketch: &Sketch, reckoned: &Reckoned) -> Option<Sizes> {
        let size = |text: &str| reckoned.length_of(text).ok().filter(|it| !it.is_negative());
        let maybe =
            |text: &str| if text.trim().is_empty() { Some(None) } else { size(text).map(Some) };
        let sizes = Sizes {
            length: size(&sketch.length)?,
            depth: size(&sketch.depth)?,
            height: size(&sketch.height)?,
            leg: size(&sketch.leg)?,
            rail: size(&sketch.rail)?,
            shelf: maybe(&sketch.shelf)?,
            top: maybe(&sketch.top)?,
            overhang: maybe(&sketch.overhang)?.unwrap_or(Length::ZERO),
        };
        let legs = (sizes.leg * 2).ok()?;
        let fits = legs < sizes.length && legs < sizes.depth && sizes.rail < sizes.height;
        fits.then_some(sizes)
    }

    fn frame(&self) -> Frame {
        Frame {
            length: self.length.to_f64(),
            depth: self.depth.to_f64(),
            height: self.height.to_f64(),
            leg: self.leg.to_f64(),
            rail: self.rail.to_f64(),
            shelf: self
                .shelf
                .filter(|it| it.is_positive() && *it < self.height)
                .map(Length::to_f64),
            top: self.top.map(Length::to_f64),
            overhang: self.overhang.to_f64(),
        }
    }

    fn is_square(&self) -> bool {
        about(self.length, self.depth)
    }

    /// Where pieces of these sizes stand in the frame.
    fn place_of(&self, it: &PartSizes) -> Option<Place> {
        let [thickness, width, length] =
            [Dimension::Thickness, Dimension::Width, Dimension::Length].map(|of| it.wanted(of));
        let (thickness, width, length) = (thickness?, width?, length?);
        let legs = (self.leg * 2).ok()?;
        let (along, across) = ((self.length - legs).ok()?, (self.depth - legs).ok()?);
        let whole = (self.length + (self.overhang * 2).ok()?).ok()?;
        let is_top = self.top.is_some_and(|top| alike(thickness, top));
        let on_edge = alike(width, self.rail) && thickness <= self.leg;
        if about(length, self.height) && about(thickness, self.leg) && about(width, self.leg) {
            Some(Place::Leg)
        } else if is_top && about(length, whole) {
            Some(Place::Plank)
        } else if self.shelf.is_some() && about(length, along) && (is_top || !on_edge) {
            Some(Place::ShelfPlank)
        } else if on_edge && about(length, along) {
            Some(Place::LongRail)
        } else if on_edge && about(length, across) {
            Some(Place::ShortRail)
        } else if self.shelf.is_some() && length > across && length <= self.depth {
            Some(Place::Slat)
        } else {
            None
        }
    }
}

fn about(one: Length, other: Length) -> bool {
    (one - other).is_ok_and(|apart| apart.abs() <= ABOUT)
}

fn alike(one: Length, other: Length) -> bool {
    (one - other).is_ok_and(|apart| apart.abs() <= ALIKE)
}

impl Frame {
    /// Where the so-and-so-many-th piece of a place is, and how large; `None` where the places are all taken.
    fn corner(&self, place: Place, at: usize, count: usize, wide: f64) -> Option<(Corner, Corner)> {
        let Frame { length, depth, height, leg, rail, shelf, top, overhang } = *self;
        let (right, back) = (length - leg, depth - leg);
        let thick = leg.min(1.5);
        let spread = |room: f64| {
            let steps = (count.max(2) - 1) as f64;
            at as f64 * (room - wide) / steps
        };
        // Rails of the top first, then those of the shelf.
        let up = |at: usize| match at {
            0 | 1 => Some(height - rail),
            2 | 3 => Some((shelf? - rail).max(0.0)),
            _ => None,
        };
        Some(match place {
            Place::Leg => {
                let (x, y) = *[(0.0, 0.0), (right, 0.0), (0.0, back), (right, back)].get(at)?;
                ((x, y, 0.0), (leg, leg, height))
            }
            Place::LongRail => {
                let y = if at.is_multiple_of(2) { 0.0 } else { depth - thick };
                ((leg, y, up(at)?), (length - 2.0 * leg, thick, rail))
            }
            Place::ShortRail => {
                let x = if at.is_multiple_of(2) { 0.0 } else { length - thick };
                ((x, leg, up(at)?), (thick, depth - 2.0 * leg, rail))
            }
            Place::Plank => {
                let whole = depth + 2.0 * overhang;
                let y = spread(whole) - overhang;
                ((-overhang, y, height), (length + 2.0 * overhang, wide, top?))
            }
            Place::Slat => {
                let x = leg + spread(length - 2.0 * leg);
                ((x, 0.0, shelf?), (wide, depth, 0.75))
            }
            Place::ShelfPlank => {
                let y = spread(depth);
                ((leg, y, shelf?), (length - 2.0 * leg, wide, 0.75))
            }
        })
    }

    /// Draws the pieces, those at the back first.
    fn draw(&self, mut placed: Vec<Placed>) -> Scene {
        let top = self.height + self.top.unwrap_or(0.0);
        let over = self.overhang;
        let wide = self.length + 2.0 * over + (self.depth + 2.0 * over) * BACK.0;
        let tall = top + (self.depth + over) * BACK.1;
        let scale = ((SCENE_WIDTH - 2.0 * EDGE) / wide).min(TALLEST / tall);
        let left = (SCENE_WIDTH - wide * scale) / 2.0;
        let floor = tall * scale + EDGE;
        let on_page = |(x, y, z): Corner| {
            let across = x + over + (y + over) * BACK.0;
            (left + across * scale, floor - (z + y * BACK.1) * scale)
        };
        // What stands farther back is drawn first; on one depth, what lies lower, then what is farther left.
        let order = |it: &Placed| {
            let is_top = it.at.2 >= self.height;
            let (x, y, z) = (it.at.0 + it.size.0, it.at.1 + it.size.1 / 2.0, it.at.2);
            (is_top, [-y, z, x])
        };
        let before = |one: &Placed, other: &Placed| {
            let (one, other) = (order(one), order(other));
            one.0.cmp(&other.0).then_with(|| {
                let pairs = one.1.iter().zip(&other.1);
                pairs
                    .map(|(a, b)| a.total_cmp(b))
                    .find(|it| it.is_ne())
                    .unwrap_or_else(|| 0.cmp(&0))
            })
        };
        sort_by(&mut placed, before);
        let mut draft = Draft::default();
        draft.add(Role::Tick, Shape::Line(0.0, floor, SCENE_WIDTH, floor));
        for it in &placed {
            let role = match it.look {
                Look::ToCut => Role::ToCut,
                Look::Cut => Role::Wood,
                Look::Changed => Role::Changes,
                Look::Wrong => Role::KeepOut,
            };
            let ((x, y, z), (w, d, h)) = (it.at, it.size);
            let corner = |right: bool, back: bool, up: bool| {
                on_page((
                    x + if right { w } else { 0.0 },
                    y + if back { d } else { 0.0 },
                    z + if up { h } else { 0.0 },
                ))
            };
            let front = [
                (false, false, false),
                (true, false, false),
                (true, false, true),
                (false, false, true),
            ];
            let side = [
                (true, false, false),
                (true, true, false),
                (true, true, true),
                (true, false, true),
            ];
            let above = [
                (false, false, true),
                (true, false, true),
                (true, true, true),
                (false, true, true),
            ];
            for face in [front, side, above] {
                let points = face.map(|(right, back, up)| corner(right, back, up)).to_vec();
                draft.add(role, Shape::Polygon(points));
            }
        }
        let wrong: Vec<&Placed> = placed.iter().filter(|it| it.look == Look::Wrong).collect();
        for it in &wrong {
            let (x, y) = on_page((it.at.0 + it.size.0 / 2.0, it.at.1, it.at.2 + it.size.2 / 2.0));
            let anchor = if x > SCENE_WIDTH / 2.0 { Anchor::End } else { Anchor::Start };
            let name = format!("{} {}", it.part, it.number);
            draft.name_of_told((Role::StrongInk, Size::Medium), (x, y, anchor), name);
        }
        let of = |look: Look| placed.iter().filter(|it| it.look == look).count();
        let mut words = format!("The piece. {} of {} drawn are cut", of(Look::Cut), placed.len());
        if !wrong.is_empty() {
            let names = named(&wrong);
            words.push_str(&format!("; wrong: {names}"));
            draft.tell(format!("Look at {names}."));
        }
        if of(Look::Changed) > 0 {
            words.push_str(&format!("; {} to cut change size", of(Look::Changed)));
        }
        words.push('.');
        draft.scene(say![words], floor + EDGE)
    }
}

/// `leg 2, slat 1, slat 4`: by name.
fn named(pieces: &[&Placed]) -> String {
    let mut all: Vec<(&str, usize)> = pieces.iter().map(|it| (&*it.part, it.number)).collect();
    sort(&mut all);
    let names: Vec<String> =
        all.into_iter().map(|(part, number)| format!("{part} {number}")).collect();
    names.join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::demo::demo;
    use crate::job::kinds::{KINDS, job_of};
    use crate::measure::Unit;
    use crate::sheet::Bench;

    fn drawn(job: &Job, look: &dyn Fn(ItemId, usize) -> Look) -> Picture {
        picture(job, &Reckoned::of(job, &Bench::default()), look).expect("a picture")
    }

    fn faces(picture: &Picture, role: Role) -> usize {
        let is_face =
            |it: &&crate::drawing::Item| it.role == role && matches!(it.shape, Shape::Polygon(_));
        picture.scene.items.iter().filter(is_face).count()
    }

    /// Counted by hand. The demo: 4 legs, 4 long and 4 short rails, 5 planks and 14 slats have their place, with three
    /// faces each; the brackets and the dowel have none.
    #[test]
    fn every_piece_of_the_frame_has_its_place() {
        let job = demo();
        let all = drawn(&job, &|_, _| Look::ToCut);
        assert_eq!(faces(&all, Role::ToCut), 3 * (4 + 4 + 4 + 5 + 14));
        let beside: Vec<&str> =
            all.beside.iter().filter_map(|id| job.item(*id)).map(Item::name).collect();
        assert_eq!(beside, ["end bracket", "tool dowel"]);
        // Nothing of it is off the page.
        for item in &all.scene.items {
            if let Shape::Polygon(points) = &item.shape {
                let on = |(x, y): &(f64, f64)| {
                    (0.0..=all.scene.width).contains(x) && (0.0..=all.scene.height).contains(y)
                };
                assert!(points.iter().all(on), "{points:?}");
            }
        }
    }

    /// Rails of 1 1/2 are no planks, though the top is 1 thick.
    #[test]
    fn rails_and_planks_are_told_apart() {
        let job = demo();
        let reckoned = Reckoned::of(&job, &Bench::default());
        let sketch = job.items().find_map(|(_, item)| match item {
            Item::Sketch(sketch) => Some(sketch),
            _ => None,
        });
        let sizes = Sizes::of(sketch.expect("a sketch"), &reckoned).expect("sizes");
        let places: Vec<Option<Place>> = job
            .parts()
            .into_iter()
            .filter_map(|(id, _)| Some(sizes.place_of(reckoned.part(id)?)))
            .collect();
        let [long, short] = [Some(Place::LongRail), Some(Place::ShortRail)];
        let frame = [Some(Place::Leg), long, long, short, short];
        assert_eq!(places[..5], frame);
        assert_eq!(places[5..], [Some(Place::Plank), Some(Place::Slat), None, None]);
    }

    #[test]
    fn a_wrong_piece_is_hatched_and_named() {
        let job = demo();
        let (leg, _) = job.parts()[0];
        let look = |id: ItemId, index: usize| match (id == leg, index) {
            (true, 1) => Look::Wrong,
            (true, _) => Look::Cut,
            _ => Look::ToCut,
        };
        let all = drawn(&job, &look);
        assert_eq!((faces(&all, Role::KeepOut), faces(&all, Role::Wood)), (3, 9));
        let is_named = |it: &crate::drawing::Item| matches!(&it.shape, Shape::Text(.., text) if text == "leg 2");
        assert!(all.scene.items.iter().any(is_named));
        let words = all.scene.title.to_string();
        assert_eq!(words, "The piece. 3 of 31 drawn are cut; wrong: leg 2.");
    }

    /// Four rails of the front and back, two of them upper: whichever of a pair is wrong is the one in front, and where its
    /// name has no room it is told below.
    #[test]
    fn a_wrong_rail_is_seen_and_told() {
        let job = demo();
        for name in ["long rail, upper", "short rail, upper"] {
            let found = job.parts().into_iter().find(|(_, part)| part.name == name);
            let (rail, _) = found.expect("a part of the demo");
            let corners = |wrong: usize| {
                let look = |id: ItemId, index: usize| {
                    if (id, index) == (rail, wrong) { Look::Wrong } else { Look::Cut }
                };
                let all = drawn(&job, &look);
                assert_eq!(all.scene.words, [format!("Look at {name} {}.", wrong + 1)]);
                let hatched = all.scene.items.iter().filter(|it| it.role == Role::KeepOut);
                format!("{:?}", hatched.map(|it| &it.shape).collect::<Vec<_>>())
            };
            assert_eq!(corners(0), corners(1), "{name}");
        }
    }

    #[test]
    fn every_kind_of_piece_is_drawn_whole() {
        for kind in &KINDS {
            let picture = drawn(&job_of(kind, Unit::Inch), &|_, _| Look::ToCut);
            assert_eq!(picture.beside, [], "{}", kind.id);
        }
    }
}
