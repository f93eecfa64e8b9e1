//! A job as codes on the screen, for another phone's camera.

use std::rc::Rc;

use reckoner_formats::{CodePicture, PIECE, code_picture, codes, write_job};
use yew::prelude::*;

use super::head::bar;
use super::open::{Open, Shared};
use crate::platform::later::later;
use crate::platform::{dom, sharing};

/// How long each code stands, in milliseconds: two and a half a second, since three or more
/// flashes a second can harm (WCAG 2.3.1).
const QUICK: u32 = 400;

/// The same for a slow camera.
const SLOW: u32 = 1_200;

pub(super) fn page(open: &Open) -> Html {
    html! { <Codes open={Shared(open.clone())} /> }
}

/// How the codes follow each other.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Pace {
    Quick,
    Slow,
    ByTap,
}

impl Pace {
    const ALL: [(Pace, &str, &str); 3] = [
        (Pace::Quick, "pace-quick", "In turn"),
        (Pace::Slow, "pace-slow", "Slower"),
        (Pace::ByTap, "pace-tap", "By tap"),
    ];

    fn milliseconds(self) -> Option<u32> {
        match self {
            Pace::Quick => Some(QUICK),
            Pace::Slow => Some(SLOW),
            Pace::ByTap => None,
        }
    }
}

#[derive(Properties, PartialEq)]
struct CodesProps {
    open: Shared,
}

#[component]
fn Codes(props: &CodesProps) -> Html {
    let Shared(open) = &props.open;
    let texts = use_memo(open.book.job.clone(), |job| codes(&write_job(job), PIECE));
    let pictures: Rc<Vec<CodePicture>> = use_memo((*texts).clone(), |texts| {
        texts.iter().flatten().filter_map(|text| code_picture(text)).collect()
    });
    let index = use_state_eq(|| 0_usize);
    let pace = use_state_eq(|| if dom::wants_less_movement() { Pace::ByTap } else { Pace::Quick });
    let said = use_state_eq(|| "");
    let count = pictures.len();
    // The job may have changed to fewer codes.
    let at = if *index < count { *index } else { 0 };
    let next = move |at: usize| Some(at.saturating_add(1)).filter(|at| *at < count).unwrap_or(0);
    let before = move |at: usize| at.checked_sub(1).unwrap_or(count.saturating_sub(1));
    {
        let index = index.clone();
        use_effect_with((at, *pace, count), move |(at, pace, _)| {
            let at = *at;
            let turn = pace.milliseconds().map(|ms| later(ms, move || index.set(next(at))));
            move || drop(turn)
        });
    }
    let go = |to: usize| {
        let (index, pace) = (index.clone(), pace.clone());
        Callback::from(move |_: MouseEvent| {
            pace.set(Pace::ByTap);
            index.set(to);
        })
    };
    let copy = {
        let (texts, said) = (texts.clone(), said.clone());
        Callback::from(move |_: MouseEvent| {
            let said = said.clone();
            let text = texts.as_ref().as_ref().map(|texts| texts.join("\n")).unwrap_or_default();
            sharing::copy(text, move |worked| {
                said.set(if worked {
                    "Text copied."
                } else {
                    "This browser does not let me copy."
                });
            });
        })
    };
    let body = match (&*texts, pictures.get(at)) {
        (Err(problem), _) => {
            html! { <p class="trouble" role="alert" data-testid="job-trouble">{ problem.to_string() }</p> }
        }
        (Ok(_), Some(picture)) => html! {
            <>
                <button type="button" class="code" data-testid="code" onclick={go(next(at))}
                    aria-label={format!("Code {} of {count}. Tap for the next.", at.saturating_add(1))}>
                    { drawn(picture) }
                </button>
                <p class="code__place" data-testid="code-place">{ format!("code {} of {count}", at.saturating_add(1)) }</p>
                if count > 1 {
                    <div class="adds">
                        { for Pace::ALL.iter().map(|(which, id, label)| {
                            let (pace, which) = (pace.clone(), *which);
                            let is_on = *pace == which;
                            html! {
                                <button type="button" class={classes!("tool", is_on.then_some("is-on"))} data-testid={*id}
                                    aria-pressed={if is_on { "true" } else { "false" }}
                                    onclick={Callback::from(move |_: MouseEvent| pace.set(which))}>{ *label }</button>
                            }
                        }) }
                    </div>
                }
                <div class="adds">
                    if count > 1 {
                        <button type="button" class="tool" data-testid="code-before" onclick={go(before(at))}>{ "Back" }</button>
                        <button type="button" class="tool" data-testid="code-next" onclick={go(next(at))}>{ "Next" }</button>
                    }
                    <button type="button" class="tool" data-testid="copy-codes" onclick={copy}>{ "Copy them as text" }</button>
                </div>
                <p class="job__words">{ "On the other phone: Jobs, Take a job in, Open the camera. It takes the codes in any order." }</p>
                <p role="status">{ *said }</p>
            </>
        },
        (Ok(_), None) => html! {},
    };
    html! {
        <div class="page page--job">
            { bar(open, &open.at("hand-on"), &open.book.job.title) }
            <main class="job job--codes">{ body }</main>
        </div>
    }
}

/// Dark on white, whatever the theme: a camera wants it so.
fn drawn(picture: &CodePicture) -> Html {
    let side = picture.side.to_string();
    html! {
        <svg viewBox={format!("0 0 {side} {side}")} shape-rendering="crispEdges" aria-hidden="true">
            <rect width={side.clone()} height={side.clone()} fill="#ffffff" />
            <path d={picture.path.clone()} fill="#000000" />
        </svg>
    }
}
