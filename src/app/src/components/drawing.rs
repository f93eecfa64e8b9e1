//! A scene of the core as a picture. Each role has its own line, fill or hatch.

use reckoner_core::drawing::{Anchor, Item, Outline, Role, Scene, Shape, Size, Tag};
use reckoner_core::measure::Tape;
use reckoner_core::sheet::{Field, Sheet};
use yew::prelude::*;

use crate::platform::dom;

/// The sizes of a drawing that can be tapped: what the form knows of them.
pub(crate) struct Sizes<'a> {
    /// Every field of the calculator.
    pub(crate) fields: &'static [Field],
    /// How the fields were understood, and which are examples.
    pub(crate) sheet: &'a Sheet,
    /// The field that is being typed in.
    pub(crate) live: Option<&'static str>,
    /// Opens a field.
    pub(crate) on_open: Callback<&'static str>,
}

/// Draws a scene, to scale, as wide as its place.
pub(crate) fn drawing(scene: &Scene, tape: Tape) -> Html {
    let picture = scene.items.iter().map(|item| shape(item, None));
    figure(scene, tape, picture.collect(), None)
}

/// The same, with its sizes as buttons.
pub(crate) fn drawing_of_sizes(scene: &Scene, tape: Tape, sizes: &Sizes) -> Html {
    let is_tag = |index: usize| scene.tags.iter().any(|tag| tag.item == index);
    let picture = scene.items.iter().enumerate().filter(|(index, _)| !is_tag(*index));
    let picture = picture.map(|(_, item)| shape(item, Some(sizes)));
    let tags = scene.tags.iter().enumerate().filter_map(|(at, tag)| {
        let item = scene.items.get(tag.item)?;
        // A size may stand in several places.
        let before = scene.tags.iter().take(at).filter(|it| it.field == tag.field).count();
        let further = if before > 0 { format!("-{before}") } else { String::new() };
        Some(size(tag, &format!("size-{}{further}", tag.field), item, sizes))
    });
    let tags = html! { <g role="group" aria-label="Sizes on the drawing">{ for tags }</g> };
    figure(scene, tape, picture.collect(), Some(tags))
}

/// A picture that is too small to be read; what it shows is said beside it.
pub(crate) fn outline(outline: &Outline) -> Html {
    let area = outline.area;
    let places = [area.left, area.top, area.width(), area.height()].map(number);
    html! {
        <svg class="outline" viewBox={places.join(" ")}>{ for outline.items.iter().map(|item| shape(item, None)) }</svg>
    }
}

fn figure(scene: &Scene, tape: Tape, picture: Html, tags: Option<Html>) -> Html {
    let view = format!("0 0 {} {}", number(scene.width), number(scene.height));
    html! {
        <figure class="drawing" data-testid="drawing">
            <svg viewBox={view}>
                <defs>{ hatches(scene) }</defs>
                <g role="img" aria-label={scene.title.on(tape)}>{ picture }</g>
                { tags }
            </svg>
            if !scene.words.is_empty() {
                <p class="drawing__words">{ scene.words.join(" · ") }</p>
            }
        </figure>
    }
}

/// A size as a button, where it is measured.
fn size(tag: &Tag, key: &str, item: &Item, sizes: &Sizes) -> Html {
    let field = tag.field;
    let is_ours = sizes.sheet.assumed.has(field);
    let is_live = sizes.live == Some(field);
    let name = sizes.fields.iter().find(|it| it.id == field).map_or("", |it| it.label);
    // What is written is part of the name, so that a voice can tap what the eye sees.
    let said = match &item.shape {
        Shape::Text(.., text) => text.as_str(),
        _ => "",
    };
    let ours = if is_ours { ", our example" } else { "" };
    let onclick = sizes.on_open.reform(move |_: MouseEvent| field);
    let onkeydown = {
        let on_open = sizes.on_open.clone();
        Callback::from(move |event: KeyboardEvent| {
            if matches!(event.key().as_str(), "Enter" | " ") {
                event.prevent_default();
                on_open.emit(field);
            }
        })
    };
    let (target, writing) = (tag.target, tag.writing);
    // Where the list of sizes stands beside it, the keyboard goes through that.
    let tabindex = if dom::is_narrow() { "0" } else { "-1" };
    html! {
        <g {key} role="button" {tabindex} data-testid={key.to_owned()}
            class={classes!("size", is_live.then_some("is-live"))}
            aria-label={format!("{name}, {said}{ours}")} {onclick} {onkeydown}>
            { area("size__target", target) }
            { area("size__ground", writing) }
            { shape(item, Some(sizes)) }
            <line class={classes!("size__line", is_ours.then_some("is-ours"))}
                x1={number(writing.left)} y1={number(writing.bottom)}
                x2={number(writing.right)} y2={number(writing.bottom)} />
        </g>
    }
}

fn area(class: &'static str, area: reckoner_core::drawing::Area) -> Html {
    html! {
        <rect {class} x={number(area.left)} y={number(area.top)} width={number(area.width())}
            height={number(area.height())} />
    }
}

/// The hatches of a scene. They are named by attributes, because a style sheet looks for them in its own file.
fn hatches(scene: &Scene) -> Html {
    let has = |role: Role| scene.items.iter().any(|item| item.role == role);
    html! {
        <>
            if has(Role::Waste) {
                <pattern id="hatch-waste" class="hatch hatch--waste" width="7" height="7"
                    patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                    <rect width="7" height="7" /><path d="M0 0V7" />
                </pattern>
            }
            if has(Role::KeepOut) {
                <pattern id="hatch-keep-out" class="hatch hatch--keep-out" width="8" height="8"
                    patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
                    <rect width="8" height="8" /><path d="M0 0V8M0 0H8" />
                </pattern>
            }
            if has(Role::EndGrain) {
                <pattern id="hatch-end-grain" class="hatch hatch--end-grain" width="13" height="9"
                    patternUnits="userSpaceOnUse">
                    <rect width="13" height="9" /><path d="M-1 9Q6 1 14 9" />
                </pattern>
            }
        </>
    }
}

/// Class of a role, and its hatch.
fn look(role: Role) -> (&'static str, Option<&'static str>) {
    match role {
        Role::Wood => ("wood", None),
        Role::EndGrain => ("end-grain", Some("url(#hatch-end-grain)")),
        Role::Mate => ("mate", None),
        Role::ToCut => ("to-cut", None),
        Role::Listed => ("listed", None),
        Role::ListedCut => ("listed-cut", None),
        Role::Kerf => ("kerf", None),
        Role::Waste => ("waste", Some("url(#hatch-waste)")),
        Role::KeepOut => ("keep-out", Some("url(#hatch-keep-out)")),
        Role::Fence => ("fence", None),
        Role::Blade => ("blade", None),
        Role::Ghost => ("ghost", None),
        Role::CutLine => ("cut-line", None),
        Role::Mark => ("mark", None),
        Role::Guide => ("guide", None),
        Role::Dimension => ("dimension", None),
        Role::Leader => ("leader", None),
        Role::Tick => ("tick", None),
        Role::Hole => ("hole", None),
        Role::Fastener => ("fastener", None),
        Role::ShowFace => ("show-face", None),
        Role::Changes => ("changes", None),
        Role::Ink => ("ink", None),
        Role::StrongInk => ("strong-ink", None),
    }
}

fn shape(item: &Item, sizes: Option<&Sizes>) -> Html {
    let (name, fill) = look(item.role);
    // A size of the person's is ink, however soft the others are.
    let of_size = item.field.zip(sizes).map(|(field, sizes)| {
        let is_ours = sizes.sheet.assumed.has(field);
        let whose = if is_ours { "is-ours" } else { "is-mine" };
        classes!(whose, (sizes.live == Some(field)).then_some("is-live"))
    });
    let class = classes!("role", format!("role--{name}"), of_size);
    match &item.shape {
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
                Size::Small => "letters--small",
                Size::Medium => "letters--medium",
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
