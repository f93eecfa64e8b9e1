//! Gives every label of a drawing its place.
//!
//! Sizes that can be tapped come first, then dimension lines, then what matters most. Each takes the first of its places
//! that is free: inside the picture, clear of all writing, crossed by no line and on nothing dark.

use super::draft::{Draft, Label, Wish};
use super::{Anchor, Area, Item, NARROWEST, Role, SCENE_WIDTH, Scene, Shape, Tag};
use crate::sentence::Sentence;

/// What is written under a picture that has no room for one of its numbers.
pub const LEFT_OUT: &str = "Not every number has room here.";

/// What a finger needs, in page units: 44 CSS pixels where the scene is shown smallest.
const TARGET: f64 = 44.0 * SCENE_WIDTH / NARROWEST;

/// Room under the writing of a tag for its line.
const LINE_UNDER: f64 = 5.0;

/// How far a target may reach above and below the picture, which grows by it.
const BEYOND: f64 = 24.0;

/// How far a picture may grow above and below for a line that reaches beyond it.
const MOST_BEYOND: f64 = SCENE_WIDTH;
/// Writing above and below its baseline, and the middle of its figures, in heights.
const ABOVE: f64 = 0.78;
const BELOW: f64 = 0.22;
const MIDDLE: f64 = 0.36;

/// From writing to its own dimension line, and half an end of that.
const CLEAR: f64 = 6.5;
const END: f64 = 4.0;

/// Longest leader, and how far a label moves before it needs one.
const LONGEST_LEADER: f64 = 110.0;
const NEAR: f64 = 13.0;

/// From writing to its leader.
const LEADER_CLEAR: f64 = 2.0;

/// A straight stroke.
type Stroke = [(f64, f64); 2];

impl Area {
    fn moved(self, (dx, dy): (f64, f64)) -> Area {
        Area {
            left: self.left + dx,
            top: self.top + dy,
            right: self.right + dx,
            bottom: self.bottom + dy,
        }
    }

    fn grown(self, across: f64, down: f64) -> Area {
        Area {
            left: self.left - across,
            top: self.top - down,
            right: self.right + across,
            bottom: self.bottom + down,
        }
    }

    /// From its left edge to its right one.
    #[must_use]
    pub fn width(&self) -> f64 {
        self.right - self.left
    }

    /// From its upper edge to its lower one.
    #[must_use]
    pub fn height(&self) -> f64 {
        self.bottom - self.top
    }

    fn middle(self) -> (f64, f64) {
        (f64::midpoint(self.left, self.right), f64::midpoint(self.top, self.bottom))
    }

    /// Whether two share more than an edge.
    #[must_use]
    pub fn meets(&self, other: &Area) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }

    /// Whether a stroke runs through it.
    #[must_use]
    pub fn is_crossed_by(&self, [(x1, y1), (x2, y2)]: [(f64, f64); 2]) -> bool {
        // What of the stroke lies inside of each pair of edges, as shares of its way.
        let (mut from, mut to) = (0.0_f64, 1.0_f64);
        for (start, by, low, high) in
            [(x1, x2 - x1, self.left, self.right), (y1, y2 - y1, self.top, self.bottom)]
        {
            if by.abs() < 1e-9 {
                if start <= low || start >= high {
                    return false;
                }
                continue;
            }
            let (a, b) = ((low - start) / by, (high - start) / by);
            from = from.max(a.min(b));
            to = to.min(a.max(b));
        }
        from < to
    }
}

/// The strokes of a shape: its outline. Writing has none.
#[must_use]
pub fn strokes(shape: &Shape) -> Vec<[(f64, f64); 2]> {
    let along = |points: &[(f64, f64)]| -> Vec<Stroke> {
        points.iter().zip(points.iter().skip(1)).map(|(a, b)| [*a, *b]).collect()
    };
    match shape {
        Shape::Line(x1, y1, x2, y2) => vec![[(*x1, *y1), (*x2, *y2)]],
        Shape::Rect(x, y, w, h) => {
            let (right, bottom) = (x + w, y + h);
            along(&[(*x, *y), (right, *y), (right, bottom), (*x, bottom), (*x, *y)])
        }
        Shape::Circle(x, y, radius) => along(&super::points(|t| {
            let angle = 2.0 * core::f64::consts::PI * t;
            (x + radius * libm::cos(angle), y + radius * libm::sin(angle))
        })),
        Shape::Polygon(points) => {
            let closed: Vec<_> = points.iter().chain(points.first()).copied().collect();
            along(&closed)
        }
        Shape::Polyline(points) => along(points),
        Shape::Text(..) => Vec::new(),
    }
}

/// What a shape hides writing on: dark ones are no ground for it.
fn dark(item: &Item) -> Option<Area> {
    if !matches!(item.role, Role::Kerf | Role::Fence | Role::Fastener | Role::Blade) {
        return None;
    }
    match &item.shape {
        Shape::Rect(x, y, w, h) => Some(Area { left: *x, top: *y, right: x + w, bottom: y + h }),
        Shape::Circle(x, y, r) => {
            Some(Area { left: x - r, top: y - r, right: x + r, bottom: y + r })
        }
        _ => None,
    }
}

/// A place that a label could take.
#[derive(Clone, Copy)]
struct Place {
    area: Area,
    /// Whether it stands in its own line, which is broken for it.
    in_line: bool,
    /// What a leader would lead to.
    leads_to: Option<(f64, f64)>,
}

struct Placer {
    height: f64,
    /// Each with the label it belongs to, if any.
    strokes: Vec<(Option<usize>, Stroke)>,
    darks: Vec<Area>,
    writing: Vec<Area>,
    targets: Vec<Area>,
    lines: Vec<Item>,
    texts: Vec<(Item, Option<Tag>)>,
}

impl Draft {
    /// The finished drawing, so high in page units.
    #[must_use]
    pub fn scene(self, title: Sentence, height: f64) -> Scene {
        let Draft { shapes, labels, mut words } = self;
        let mut placer = Placer {
            height,
            strokes: shapes
                .iter()
                .flat_map(|item| strokes(&item.shape))
                .map(|stroke| (None, stroke))
                .collect(),
            darks: shapes.iter().filter_map(dark).collect(),
            writing: Vec::new(),
            targets: Vec::new(),
            lines: Vec::new(),
            texts: Vec::new(),
        };
        for (index, label) in labels.iter().enumerate() {
            if let Wish::Between(from, to) = label.wish {
                let lines = ends(from, to).into_iter().chain([[from, to]]);
                placer.strokes.extend(lines.map(|stroke| (Some(index), stroke)));
            }
        }
        let mut order: Vec<(usize, &Label)> = labels.iter().enumerate().collect();
        crate::order::sort_by(&mut order, |(a, left), (b, right)| {
            rank(left).cmp(&rank(right)).then(a.cmp(b))
        });
        let mut left_out = false;
        for (index, label) in order {
            if placer.put(index, label) {
                continue;
            }
            placer.strokes.retain(|(owner, _)| *owner != Some(index));
            match label.wish {
                Wish::Row(..) => words.push(label.text.clone()),
                _ => left_out |= !label.is_told,
            }
        }
        if left_out {
            words.push(LEFT_OUT.to_owned());
        }
        placer.finish(shapes, title, words)
    }
}

/// What is placed first.
fn rank(label: &Label) -> u8 {
    match (label.field, label.wish, label.role) {
        (Some(_), ..) => 0,
        (_, Wish::Between(..), _) => 1,
        (_, Wish::There(..), _) => 4,
        (_, _, Role::StrongInk) => 2,
        _ => 3,
    }
}

/// Whether a dimension line runs across.
fn is_across((x1, y1): (f64, f64), (x2, y2): (f64, f64)) -> bool {
    (x2 - x1).abs() >= (y2 - y1).abs()
}

/// The ends of a dimension line.
fn ends(from: (f64, f64), to: (f64, f64)) -> [Stroke; 2] {
    let (across, down) = (to.0 - from.0, to.1 - from.1);
    let long = libm::hypot(across, down).max(1e-9);
    let (dx, dy) = (END * down / long, END * across / long);
    [from, to].map(|(x, y)| [(x - dx, y + dy), (x + dx, y - dy)])
}

/// What writing takes at its baseline.
fn area(label: &Label, (x, y, anchor): (f64, f64, Anchor)) -> Area {
    let wide = label.size.width_of(&label.text, label.role);
    let high = label.size.height();
    let left = match anchor {
        Anchor::Start => x,
        Anchor::Middle => x - wide / 2.0,
        Anchor::End => x - wide,
    };
    let under = if label.field.is_some() { LINE_UNDER } else { 0.0 };
    Area { left, top: y - ABOVE * high, right: left + wide, bottom: y + BELOW * high + under }
}

/// The places of a label, best first.
fn places(label: &Label) -> Vec<Place> {
    let free = |area| Place { area, in_line: false, leads_to: None };
    match label.wish {
        Wish::There(x, y, anchor) => vec![free(inside(area(label, (x, y, anchor))))],
        Wish::Row(x, y, anchor) => {
            let wished = inside(area(label, (x, y, anchor)));
            let by = (1..=8).flat_map(|step| [f64::from(step) * 10.0, f64::from(step) * -10.0]);
            [0.0].into_iter().chain(by).map(|dx| free(wished.moved((dx, 0.0)))).collect()
        }
        Wish::Near(x, y, anchor) => {
            let wished = inside(area(label, (x, y, anchor)));
            around(wished, wished.middle(), NEAR)
        }
        Wish::Between(from, to) => between(label, from, to),
    }
}

/// Moved in sideways where it would leave the picture.
fn inside(area: Area) -> Area {
    let by = if area.left < 0.0 { -area.left } else { (SCENE_WIDTH - area.right).min(0.0) };
    area.moved((by, 0.0))
}

/// The place itself, then those around it, nearest first; those more than `near` away lead back to `target`.
fn around(wished: Area, target: (f64, f64), near: f64) -> Vec<Place> {
    let mut places = vec![Place { area: wished, in_line: false, leads_to: None }];
    for ring in 1..=6 {
        let d = f64::from(ring) * 12.0;
        for (dx, dy) in [
            (0.0, -1.0),
            (0.0, 1.0),
            (1.0, 0.0),
            (-1.0, 0.0),
            (1.0, -1.0),
            (-1.0, -1.0),
            (1.0, 1.0),
            (-1.0, 1.0),
            (2.0, -1.0),
            (-2.0, -1.0),
            (2.0, 1.0),
            (-2.0, 1.0),
        ] {
            let leads_to = (d > near).then_some(target);
            places.push(Place { area: wished.moved((dx * d, dy * d)), in_line: false, leads_to });
        }
    }
    places
}

/// The places of the number of a dimension line: in it, at its ends, over and under it, and further away.
fn between(label: &Label, from: (f64, f64), to: (f64, f64)) -> Vec<Place> {
    let across = is_across(from, to);
    let centre = (f64::midpoint(from.0, to.0), f64::midpoint(from.1, to.1));
    // Centred on a place of the line.
    let at =
        |(x, y): (f64, f64)| area(label, (x, y + MIDDLE * label.size.height(), Anchor::Middle));
    let wished = at(centre);
    let (half, up, down) =
        ((wished.right - wished.left) / 2.0, centre.1 - wished.top, wished.bottom - centre.1);
    let share = |t: f64| (from.0 + (to.0 - from.0) * t, from.1 + (to.1 - from.1) * t);
    let is_slanted = (to.0 - from.0).abs().min((to.1 - from.1).abs()) > 0.1;
    let mut places = Vec::new();
    for t in [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8] {
        let area = at(share(t));
        let fits = if is_slanted {
            false
        } else if across {
            area.left - from.0.min(to.0) > 8.0 && from.0.max(to.0) - area.right > 8.0
        } else {
            area.top - from.1.min(to.1) > 6.0 && from.1.max(to.1) - area.bottom > 6.0
        };
        if fits {
            places.push(Place { area, in_line: true, leads_to: None });
        }
    }
    let aside = half + CLEAR;
    let (above, below) = ((0.0, -down - CLEAR), (0.0, up + CLEAR));
    let mut free = |place: (f64, f64), (dx, dy): (f64, f64)| {
        let area = at((place.0 + dx, place.1 + dy));
        places.push(Place { area, in_line: false, leads_to: None });
    };
    let (low, high) = if across == (from.0 < to.0) && across || !across && from.1 < to.1 {
        (from, to)
    } else {
        (to, from)
    };
    if across {
        free(share(0.5), above);
        free(share(0.5), below);
        free(high, (aside, 0.0));
        free(low, (-aside, 0.0));
        for t in [0.25, 0.75] {
            free(share(t), above);
            free(share(t), below);
        }
    } else {
        for t in [0.5, 0.3, 0.7] {
            free(share(t), (aside, 0.0));
            free(share(t), (-aside, 0.0));
        }
        free(low, above);
        free(high, below);
    }
    let mut further = around(wished, centre, 0.0);
    // In its own line it has been tried.
    further.retain(|place| place.leads_to.is_some());
    places.extend(further);
    places
}

impl Placer {
    /// Puts a label at the first of its places that is free. One that can be tapped needs room for a finger too; where
    /// there is none it only says its size.
    fn put(&mut self, index: usize, label: &Label) -> bool {
        let mut untapped = None;
        for place in places(label) {
            let Some(leader) = self.leader_if_free(index, &place) else { continue };
            let target = match label.field {
                Some(_) => self.target(&place.area),
                None => None,
            };
            if label.field.is_none() || target.is_some() {
                self.take(index, label, &place, leader, target);
                return true;
            }
            untapped = untapped.or(Some((place, leader)));
        }
        let Some((place, leader)) = untapped else { return false };
        self.take(index, label, &place, leader, None);
        true
    }

    /// The leader of a place that is free, if it needs one.
    fn leader_if_free(&self, index: usize, place: &Place) -> Option<Option<Stroke>> {
        let area = place.area;
        let is_inside = area.left >= 0.0
            && area.right <= SCENE_WIDTH
            && area.top >= 0.0
            && area.bottom <= self.height;
        let clear = area.grown(3.0, 1.0);
        let on_line = area.grown(1.5, 1.0);
        let is_free = is_inside
            && !self.writing.iter().any(|other| other.meets(&clear))
            && !self.darks.iter().any(|other| other.meets(&on_line))
            && !self.strokes.iter().any(|(owner, stroke)| {
                !(place.in_line && *owner == Some(index)) && on_line.is_crossed_by(*stroke)
            });
        if !is_free {
            return None;
        }
        let Some(to) = place.leads_to else { return Some(None) };
        let from =
            (to.0.clamp(area.left, area.right), to.1.clamp(area.top - 1.0, area.bottom + 1.0));
        let long = libm::hypot(to.0 - from.0, to.1 - from.1);
        // It begins clear of the writing.
        let away = LEADER_CLEAR / long.max(LEADER_CLEAR);
        let leader = [(from.0 + (to.0 - from.0) * away, from.1 + (to.1 - from.1) * away), to];
        let is_clear = !self.writing.iter().any(|other| other.is_crossed_by(leader));
        (long > 2.0 * LEADER_CLEAR && long < LONGEST_LEADER && is_clear).then_some(Some(leader))
    }

    /// Room for a finger around writing, clear of all others.
    fn target(&self, writing: &Area) -> Option<Area> {
        let (wide, high) = (writing.right - writing.left, writing.bottom - writing.top);
        let (more_wide, more_high) = ((TARGET - wide).max(0.0), (TARGET - high).max(0.0));
        let shares = [0.5, 0.25, 0.75, 0.0, 1.0];
        shares
            .iter()
            .flat_map(|down| shares.iter().map(move |across| (*across, *down)))
            .map(|(across, down)| Area {
                left: writing.left - more_wide * across,
                top: writing.top - more_high * down,
                right: writing.right + more_wide * (1.0 - across),
                bottom: writing.bottom + more_high * (1.0 - down),
            })
            .find(|target| {
                target.left >= -0.01
                    && target.right <= SCENE_WIDTH + 0.01
                    && target.top >= -BEYOND
                    && target.bottom <= self.height + BEYOND
                    && !self.targets.iter().any(|other| other.meets(target))
            })
    }

    fn take(
        &mut self,
        index: usize,
        label: &Label,
        place: &Place,
        leader: Option<Stroke>,
        target: Option<Area>,
    ) {
        let area = place.area;
        if let Wish::Between(from, to) = label.wish {
            let mut lines: Vec<Stroke> = ends(from, to).into();
            if place.in_line {
                self.strokes.retain(|(owner, _)| *owner != Some(index));
                let [low, high] = if is_across(from, to) {
                    let (from, to) = if from.0 <= to.0 { (from, to) } else { (to, from) };
                    [[from, (area.left - 3.0, from.1)], [(area.right + 3.0, to.1), to]]
                } else {
                    let (from, to) = if from.1 <= to.1 { (from, to) } else { (to, from) };
                    [[from, (from.0, area.top - 2.0)], [(to.0, area.bottom + 2.0), to]]
                };
                lines.extend([low, high]);
                self.strokes.extend(lines.iter().map(|stroke| (Some(index), *stroke)));
            } else {
                lines.push([from, to]);
            }
            self.lines.extend(lines.into_iter().map(|[(x1, y1), (x2, y2)]| Item {
                role: Role::Dimension,
                shape: Shape::Line(x1, y1, x2, y2),
                field: label.field,
            }));
        }
        if let Some([(x1, y1), (x2, y2)]) = leader {
            let shape = Shape::Line(x1, y1, x2, y2);
            self.lines.push(Item { role: Role::Leader, shape, field: label.field });
            self.strokes.push((None, [(x1, y1), (x2, y2)]));
        }
        let anchor = match label.wish {
            Wish::There(.., anchor) | Wish::Row(.., anchor) | Wish::Near(.., anchor) => anchor,
            Wish::Between(..) => Anchor::Middle,
        };
        let x = match anchor {
            Anchor::Start => area.left,
            Anchor::Middle => area.middle().0,
            Anchor::End => area.right,
        };
        let y = area.top + ABOVE * label.size.height();
        let shape = Shape::Text(x, y, anchor, label.size, label.text.clone());
        self.writing.push(area);
        self.targets.extend(target);
        let tag = label.field.zip(target).map(|(field, target)| Tag {
            field,
            item: 0,
            writing: area,
            target,
        });
        self.texts.push((Item { role: label.role, shape, field: label.field }, tag));
    }

    /// The finished scene, higher where a target or a line reaches beyond it. A line that runs on and on, as of an angle of next
    /// to nothing, is cut by the edge in the end.
    fn finish(self, mut items: Vec<Item>, title: Sentence, words: Vec<String>) -> Scene {
        items.extend(self.lines);
        let mut tags = Vec::new();
        for (item, tag) in self.texts {
            tags.extend(tag.map(|tag| Tag { item: items.len(), ..tag }));
            items.push(item);
        }
        // Down the page of everything that must be on it.
        let drawn = items.iter().flat_map(|item| strokes(&item.shape)).flatten().map(|(_, y)| y);
        let reached = tags.iter().flat_map(|tag| [tag.target.top, tag.target.bottom]).chain(drawn);
        let (top, bottom) = (-MOST_BEYOND, self.height + MOST_BEYOND);
        let (least, most) = reached.fold((0.0, self.height), |(least, most), y| {
            (y.min(least).max(top), y.max(most).min(bottom))
        });
        let (above, height) = (-least, most - least);
        for item in &mut items {
            item.shape.move_down(above);
        }
        for tag in &mut tags {
            tag.writing = tag.writing.moved((0.0, above));
            tag.target = tag.target.moved((0.0, above));
        }
        crate::order::sort_by(&mut tags, |a, b| {
            let key = |tag: &Tag| (tag.writing.left, tag.writing.top);
            key(a).partial_cmp(&key(b)).unwrap_or(core::cmp::Ordering::Equal)
        });
        Scene { title, width: SCENE_WIDTH, height, items, tags, words }
    }
}

impl Shape {
    fn move_down(&mut self, by: f64) {
        match self {
            Shape::Rect(_, y, ..) | Shape::Circle(_, y, _) | Shape::Text(_, y, ..) => *y += by,
            Shape::Line(_, y1, _, y2) => {
                *y1 += by;
                *y2 += by;
            }
            Shape::Polygon(points) | Shape::Polyline(points) => {
                for (_, y) in points {
                    *y += by;
                }
            }
        }
    }
}
