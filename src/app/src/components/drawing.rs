//! A scene of the core as a picture. Each role has its own line, fill or hatch.

use reckoner_core::drawing::{Anchor, Role, Scene, Shape, Size};
use reckoner_core::measure::Tape;
use yew::prelude::*;

/// Draws a scene, to scale, as wide as its place.
pub(crate) fn drawing(scene: &Scene, tape: Tape) -> Html {
    let view = format!("0 0 {} {}", number(scene.width), number(scene.height));
    html! {
        <figure class="drawing" data-testid="drawing">
            <svg viewBox={view} role="img" aria-label={scene.title.on(tape)}>
                { hatches() }
                <g>{ for scene.items.iter().map(|item| shape(item.role, &item.shape)) }</g>
            </svg>
        </figure>
    }
}

/// The hatches are named by attributes, because a style sheet looks for them in its own file.
fn hatches() -> Html {
    html! {
        <defs>
            <pattern id="hatch-waste" class="hatch hatch--waste" width="7" height="7"
                patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                <rect width="7" height="7" /><path d="M0 0V7" />
            </pattern>
            <pattern id="hatch-keep-out" class="hatch hatch--keep-out" width="8" height="8"
                patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
                <rect width="8" height="8" /><path d="M0 0V8M0 0H8" />
            </pattern>
            <pattern id="hatch-end-grain" class="hatch hatch--end-grain" width="13" height="9"
                patternUnits="userSpaceOnUse">
                <rect width="13" height="9" /><path d="M-1 9Q6 1 14 9" />
            </pattern>
        </defs>
    }
}

/// Class of a role, and its hatch.
fn look(role: Role) -> (&'static str, Option<&'static str>) {
    match role {
        Role::Wood => ("wood", None),
        Role::EndGrain => ("end-grain", Some("url(#hatch-end-grain)")),
        Role::Mate => ("mate", None),
        Role::Kerf => ("kerf", None),
        Role::Waste => ("waste", Some("url(#hatch-waste)")),
        Role::KeepOut => ("keep-out", Some("url(#hatch-keep-out)")),
        Role::Fence => ("fence", None),
        Role::Blade => ("blade", None),
        Role::Ghost => ("ghost", None),
        Role::CutLine => ("cut-line", None),
        Role::Guide => ("guide", None),
        Role::Dimension => ("dimension", None),
        Role::Hole => ("hole", None),
        Role::Fastener => ("fastener", None),
        Role::ShowFace => ("show-face", None),
        Role::Changes => ("changes", None),
        Role::Ink => ("ink", None),
        Role::StrongInk => ("strong-ink", None),
    }
}

fn shape(role: Role, shape: &Shape) -> Html {
    let (name, fill) = look(role);
    let class = classes!("role", format!("role--{name}"));
    match shape {
        Shape::Rect(x, y, width, height) => html! {
            <rect {class} {fill} x={number(*x)} y={number(*y)} width={number(*width)}
                height={number(*height)} />
        },
        Shape::Line(x1, y1, x2, y2) => html! {
            <line {class} x1={number(*x1)} y1={number(*y1)} x2={number(*x2)} y2={number(*y2)} />
        },
        Shape::Circle(x, y, radius) => html! {
            <circle {class} {fill} cx={number(*x)} cy={number(*y)} r={number(*radius)} />
        },
        Shape::Polygon(points) => html! { <polygon {class} {fill} points={list(points)} /> },
        Shape::Polyline(points) => html! {
            <polyline class={classes!(class, "is-open")} points={list(points)} />
        },
        Shape::Text(x, y, anchor, size, text) => {
            let anchor = match anchor {
                Anchor::Start => "start",
                Anchor::Middle => "middle",
                Anchor::End => "end",
            };
            let size = match size {
                Size::Small => "size--small",
                Size::Medium => "size--medium",
                Size::Large => "size--large",
            };
            html! {
                <text class={classes!(class, size)} x={number(*x)} y={number(*y)}
                    text-anchor={anchor}>{ text }</text>
            }
        }
    }
}

fn number(value: f64) -> String {
    format!("{value:.1}")
}

fn list(points: &[(f64, f64)]) -> String {
    let points = points.iter().map(|(x, y)| format!("{},{}", number(*x), number(*y)));
    points.collect::<Vec<_>>().join(" ")
}
