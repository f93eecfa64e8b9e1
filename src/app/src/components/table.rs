//! Tables of an answer, such as passes in their order.

use reckoner_core::sheet::{Bench, Table};
use yew::prelude::*;

use super::measure;

/// A table with its heading. A wide one scrolls by itself, not the page.
pub(crate) fn table(table: &Table, bench: &Bench) -> Html {
    let heading = format!("heading-{}", table.id);
    html! {
        <section class="table" data-testid={format!("table-{}", table.id)}>
            <h2 class="part-title" id={heading.clone()}>{ table.title }</h2>
            <div class="table__scroll" tabindex="0" role="group" aria-labelledby={heading}>
                <table>
                    <thead>
                        <tr>
                            { for table.columns.iter().map(|name| match *name {
                                "" => html! { <td></td> },
                                name => html! { <th scope="col">{ name }</th> },
                            }) }
                        </tr>
                    </thead>
                    <tbody>
                        { for table.rows.iter().map(|row| html! {
                            <tr>
                                { for row.iter().map(|cell| html! {
                                    <td>{ measure::value(cell, bench) }</td>
                                }) }
                            </tr>
                        }) }
                    </tbody>
                </table>
            </div>
        </section>
    }
}
