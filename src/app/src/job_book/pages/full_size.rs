//! Printing at full size: the template of an answer as PDF pages.

use std::rc::Rc;

use reckoner_core::calculators::Calculator;
use reckoner_core::measure::Tape;
use reckoner_core::measure::text::NoNames;
use reckoner_core::paper::{Paper, Template};
use reckoner_formats::template_pdf;
use yew::prelude::*;

use super::hand_on::file_name;
use crate::components::icon::{Icon, icon};
use crate::platform::{dom, files};
use crate::settings::Settings;
use crate::{link, route};

#[derive(Properties, PartialEq)]
pub(super) struct FullSizeProps {
    pub(super) template: Template,
    /// What the file is named after.
    pub(super) title: String,
    pub(super) tape: Tape,
    /// Which sizes of it are ours.
    pub(super) noted: Option<String>,
}

/// Buttons that give the template of an answer as pages of letter or A4.
#[component]
pub(super) fn FullSize(props: &FullSizeProps) -> Html {
    let trouble = use_state_eq(|| None::<String>);
    let save = |paper: Paper, label: &'static str, id: &'static str| {
        let FullSizeProps { template, title, tape, noted } = props;
        let (template, title, tape) = (template.clone(), title.clone(), *tape);
        let noted = noted.clone().unwrap_or_default();
        let trouble = trouble.clone();
        let onclick = Callback::from(move |_: MouseEvent| {
            match template_pdf(&template, paper, tape, &noted) {
                Ok(pdf) => {
                    trouble.set(None);
                    files::save(&file_name(&title, "pdf"), "application/pdf", &pdf);
                }
                Err(problem) => trouble.set(Some(problem.to_string())),
            }
        });
        html! { <button type="button" class="tool" data-testid={id} {onclick}>{ label }</button> }
    };
    html! {
        <section class="full-size">
            <h2 class="job__title">{ "Print full size" }</h2>
            <p class="job__words">{ "Print at 100 %. The first page has a square to measure: it must be 3 in." }</p>
            if let Some(words) = &*trouble {
                <p class="trouble" role="alert" data-testid="template-trouble">{ words }</p>
            }
            <div class="adds">
                { save(Paper::Letter, "Letter pages (PDF)", "template-letter") }
                { save(Paper::A4, "A4 pages (PDF)", "template-a4") }
            </div>
        </section>
    }
}

/// The page of a calculator's template.
pub(super) fn page(calculator: &'static Calculator, query: &str, settings: &Rc<Settings>) -> Html {
    let bench = settings.bench;
    let entries = link::read(calculator, query);
    let sheet = entries.as_ref().ok().map(|it| calculator.sheet(it, &bench, &NoNames));
    let noted = sheet.as_ref().and_then(|sheet| sheet.assumed.noted());
    let template = sheet.and_then(|sheet| sheet.answer).and_then(|answer| answer.template);
    dom::set_title(&format!("{} at full size · Sawdust Reckoner", calculator.title));
    html! {
        <div class="page">
            <header class="bar">
                <a class="bar__link" href={route::address(calculator.slug, query)} aria-label="Back" data-testid="back">{ icon(Icon::Back) }</a>
                <h1 class="bar__title">{ calculator.title }</h1>
            </header>
            <main class="job">
                if let Some(template) = template {
                    <p class="job__words" data-testid="template-title">{ template.title.on(bench.tape) }{ noted.as_ref().map(|noted| format!(", {noted}")) }</p>
                    <FullSize {template} title={calculator.title} tape={bench.tape} {noted} />
                } else {
                    <p class="trouble" role="alert" data-testid="template-trouble">{ "There is nothing to print here. Go back and look at the sizes." }</p>
                }
            </main>
        </div>
    }
}
