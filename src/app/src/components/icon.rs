//! Icons: a few strokes each, drawn with the pen of the text around them.

use yew::prelude::*;

/// An icon.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Icon {
    Back,
    Settings,
    Undo,
    Redo,
    Copy,
    Link,
    Share,
    Voice,
    Backspace,
    Clear,
    Previous,
    Next,
    Down,
    Keyboard,
    Keypad,
    Tick,
    Pencil,
    Find,
    Plus,
    Minus,
    Front,
    Sizes,
    Pieces,
    Boards,
    More,
}

/// Draws an icon; the words for it stand elsewhere.
pub(crate) fn icon(icon: Icon) -> Html {
    let strokes = match icon {
        Icon::Back => "M11 5 4 12l7 7M4 12h16",
        // A marking gauge: a beam through its stock.
        Icon::Settings => "M3 12h18M8 6h5v12H8zM19 9v6",
        Icon::Undo => "M9 14 4 9l5-5M4 9h10a6 6 0 0 1 0 12h-3",
        Icon::Redo => "m15 14 5-5-5-5M20 9H10a6 6 0 0 0 0 12h3",
        Icon::Copy => "M9 9h11v11H9zM5 15H4V4h11v1",
        Icon::Link => {
            "M10 14a5 5 0 0 0 7 0l3-3a5 5 0 0 0-7-7l-1 1M14 10a5 5 0 0 0-7 0l-3 3a5 5 0 0 0 7 7l1-1"
        }
        Icon::Share => "M12 15V3M7 8l5-5 5 5M5 13v7h14v-7",
        Icon::Voice => "M4 9v6h4l6 5V4L8 9zM17 9a4 4 0 0 1 0 6M20 6a8 8 0 0 1 0 12",
        Icon::Backspace => "M21 5H9l-6 7 6 7h12zM12 9l6 6M18 9l-6 6",
        Icon::Clear => "M6 6l12 12M18 6 6 18",
        Icon::Previous => "m15 5-7 7 7 7",
        Icon::Next => "m9 5 7 7-7 7",
        Icon::Down => "m5 9 7 7 7-7",
        Icon::Keyboard => "M3 6h18v12H3zM7 10h1M11.500 10h1M16 10h1M8 14h8",
        Icon::Keypad => "M5 4h14v16H5zM9 8h1M14 8h1M9 12h1M14 12h1M9 16h1M14 16h1",
        Icon::Tick => "m5 13 4 5L20 6",
        Icon::Find => "M10.500 4a6.500 6.500 0 1 0 0 13a6.500 6.500 0 1 0 0-13M15.500 15.500 21 21",
        Icon::Plus => "M12 4v16M4 12h16",
        Icon::Minus => "M4 12h16",
        // A bench from the front, a size between two ends, bars of several lengths, a stack, and what else there is.
        Icon::Front => "M3 6h18v3H3zM5 9v11M19 9v11M5 15h14",
        Icon::Sizes => "M3 6v12M21 6v12M4 12h16M7 9l-3 3 3 3M17 9l3 3-3 3",
        Icon::Pieces => "M3 4h18v4H3zM3 10h12v4H3zM3 16h8v4H3z",
        Icon::Boards => "M3 8l5-3h13v5l-5 3H3zM3 8h13l5-3M16 8v5M3 17h14l4-3",
        Icon::More => "M5 11.500v1M12 11.500v1M19 11.500v1",
        Icon::Pencil => "M4 20l1-5L16 4l4 4L9 19zM14 6l4 4",
    };
    html! {
        <svg class="icon" viewBox="0 0 24 24" aria-hidden="true"><path d={strokes} /></svg>
    }
}
