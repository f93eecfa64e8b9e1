//! Tables of an answer, such as passes in their order.

use reckoner_core::sheet::{Bench, Row, Table};
use yew::prelude::*;

use super::fold::use_fold;
use super::measure;

/// Most rows that a table shows at once, and how many of a longer one are shown first.
const MOST_AT_ONCE: usize = 6;
const FIRST: usize = 5;

/// A table with its heading. A wide one scrolls by itself, not the page. Of a long one the first rows are shown, until the
/// rest is asked for; on paper it is whole.
/// A column that stands elsewhere on the page is on paper alone.
pub(crate) fn table(table: &Table, elsewhere: Option<usize>, bench: &Bench) -> Html {
    html! { <TableView key={table.id} table={table.clone()} {elsewhere} bench={*bench} /> }
}

#[derive(Properties, PartialEq)]
struct TableProps {
    table: Table,
    elsewhere: Option<usize>,
    bench: Bench,
}

#[component]
fn TableView(props: &TableProps) -> Html {
    let TableProps { table, elsewhere, bench } = props;
    let (is_whole, set_whole) = use_fold(&format!("all-{}", table.id));
    let heading = format!("heading-{}", table.id);
    let count = table.rows.len();
    let is_long = count > MOST_AT_ONCE;
    let toggle = set_whole.reform(move |_: MouseEvent| !is_whole);
    let on_paper = |at: usize| (Some(at) == *elsewhere).then_some("is-later");
    let row = |(at, row): (usize, &Row)| {
        let is_later = is_long && !is_whole && at >= FIRST;
        html! {
            <tr class={is_later.then_some("is-later")}>
                { for row.iter().enumerate().map(|(at, cell)| html! {
                    <td class={on_paper(at)}>{ measure::value(cell, bench) }</td>
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
