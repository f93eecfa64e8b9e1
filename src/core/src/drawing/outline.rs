//! [`Outline`]: a drawing so small that nothing in it can be read.

use super::{Area, Item, Role, Scene, Shape};

/// The shapes of a scene as they stand, without writing and what carries it, and what they take up.
#[derive(Clone, Debug, PartialEq)]
pub struct Outline {
    /// What the shapes take up, in page units, without the width of their lines.
    pub area: Area,
    /// Back to front. No writing, dimensions or leaders.
    pub items: Vec<Item>,
}

impl Scene {
    /// The scene for a picture too small to be read; nothing where it is writing alone.
    #[must_use]
    pub fn outline(self) -> Option<Outline> {
        let mut items = self.items;
        items.retain(|item| {
            !matches!(item.role, Role::Ink | Role::StrongInk | Role::Leader | Role::Dimension)
        });
        let area = items.iter().filter_map(|item| item.shape.area()).reduce(Area::with)?;
        Some(Outline { area, items })
    }
}

impl Shape {
    /// What it takes up; nothing for writing, and for a line through no points.
    fn area(&self) -> Option<Area> {
        let of = |points: &[(f64, f64)]| {
            points
                .iter()
                .map(|&(x, y)| Area { left: x, top: y, right: x, bottom: y })
                .reduce(Area::with)
        };
        match self {
            Shape::Rect(x, y, width, height) => of(&[(*x, *y), (x + width, y + height)]),
            Shape::Line(x1, y1, x2, y2) => of(&[(*x1, *y1), (*x2, *y2)]),
            Shape::Circle(x, y, radius) => {
                of(&[(x - radius, y - radius), (x + radius, y + radius)])
            }
            Shape::Polygon(points) | Shape::Polyline(points) => of(points),
            Shape::Text(..) => None,
        }
    }
}

impl Area {
    /// The least area that holds both.
    fn with(self, other: Area) -> Area {
        Area {
            left: self.left.min(other.left),
            top: self.top.min(other.top),
            right: self.right.max(other.right),
            bottom: self.bottom.max(other.bottom),
        }
    }
}
