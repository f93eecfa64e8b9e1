//! Tables of an answer, such as passes in their order.

use reckoner_core::measure::Tape;
use reckoner_core::sheet::{Bench, Row, Table, Value, WayOut};
use yew::prelude::*;

use super::fold::use_fold;
use super::measure;

/// Most rows that a table shows at once, and how many of a longer one are shown first.
const MOST_AT_ONCE: usize = 6;
const FIRST: usize = 5;

/// A table with its heading. A wide one scrolls by itself, not the page. Of a long one the first rows are shown, until the
/// rest is asked for; on paper it is whole.
/// A column that stands elsewhere on the page is on paper alone.
/// What a row asks instead is asked by a tap on its first cell.
pub(crate) fn table(
    table: &Table,
    elsewhere: Option<usize>,
    bench: &Bench,
    on_way: &Callback<Vec<(&'static str, String)>>,
) -> Html {
    html! {
        <TableView key={table.id} table={table.clone()} {elsewhere} bench={*bench} on_way={on_way.clone()} />
    }
}

#[derive(Properties, PartialEq)]
struct TableProps {
    table: Table,
    elsewhere: Option<usize>,
    bench: Bench,
    on_way: Callback<Vec<(&'static str, String)>>,
}

#[component]
fn TableView(props: &TableProps) -> Html {
    let TableProps { table, elsewhere, bench, on_way } = props;
    let (is_whole, set_whole) = use_fold(&format!("all-{}", table.id));
    let heading = format!("heading-{}", table.id);
    let count = table.rows.len();
    let is_long = count > MOST_AT_ONCE;
    let toggle = set_whole.reform(move |_: MouseEvent| !is_whole);
    let on_paper = |at: usize| (Some(at) == *elsewhere).then_some("is-later");
    let first = |at: usize, cell: &Value| {
        let shown = measure::value(cell, bench);
        match table.ways.get(at).and_then(Option::as_ref) {
            Some(way) => tapped(&format!("way-{}-{at}", table.id), shown, way, bench.tape, on_way),
            None => shown,
        }
    };
    let row = |(number, row): (usize, &Row)| {
        let is_later = is_long && !is_whole && number >= FIRST;
        html! {
            <tr class={is_later.then_some("is-later")}>
                { for row.iter().enumerate().map(|(at, cell)| html! {
                    <td class={on_paper(at)}>
                        { if at == 0 { first(number, cell) } else { measure::value(cell, bench) } }
                    </td>
                }) }
            </tr>
        }
    };
    html! {
        <section class="table" data-testid={format!("table-{}", table.id)}>
            <h2 class="part-title" id={heading.clone()}>{ table.title }</h2>
            <div class="table__scroll" tabindex="0" role="group" aria-labelledby={heading.clone()}>
                <table>
                    <thead>
                        <tr>
                            { for table.columns.iter().enumerate().map(|(at, column)| match column.heading {
                                "" => html! { <td></td> },
                                name => html! { <th scope="col" class={on_paper(at)}>{ name }</th> },
                            }) }
                        </tr>
                    </thead>
                    <tbody>{ for table.rows.iter().enumerate().map(row) }</tbody>
                </table>
            </div>
            if is_long {
                <button type="button" class="tool table__all" aria-describedby={heading} data-testid={format!("all-{}", table.id)}
                    aria-expanded={if is_whole { "true" } else { "false" }} onclick={toggle}>
                    { if is_whole { format!("First {FIRST} rows") } else { format!("All {count} rows") } }
                </button>
            }
        </section>
    }
}

/// A cell that asks something else at a tap.
fn tapped(
    id: &str,
    shown: Html,
    way: &WayOut,
    tape: Tape,
    on_way: &Callback<Vec<(&'static str, String)>>,
) -> Html {
    let set = way.texts(tape);
    let onclick = on_way.reform(move |_: MouseEvent| set.clone());
    html! {
        <button type="button" class="tool table__way" data-testid={id.to_owned()} aria-label={way.sentence.on(tape)} {onclick}>
            { shown }
        </button>
    }
}
