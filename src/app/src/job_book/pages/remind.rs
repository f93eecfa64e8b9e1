//! One line that reminds, once, of saving an old job as a file.

use yew::prelude::*;

use super::hand_on;
use super::open::Shared;
use crate::job_book::reminder;
use crate::platform::{device, storage};

#[derive(Properties, PartialEq)]
pub(super) struct RemindProps {
    pub(super) open: Shared,
}

/// The line, where it is due. Whatever is answered, it does not come again for this job.
#[component]
pub(super) fn Remind(props: &RemindProps) -> Html {
    let open = &props.open.0;
    let is_due = use_state(|| {
        let noted = storage::get(&storage::saved(&open.key));
        reminder::is_due(&open.key, device::now(), noted.as_deref())
    });
    if !*is_due {
        return html! {};
    }
    let save = {
        let (open, is_due) = (open.clone(), is_due.clone());
        Callback::from(move |_: MouseEvent| {
            hand_on::save_as_file(&open);
            is_due.set(false);
        })
    };
    let not_now = {
        let (name, is_due) = (storage::saved(&open.key), is_due.clone());
        Callback::from(move |_: MouseEvent| {
            storage::set(&name, reminder::NOT_NOW);
            is_due.set(false);
        })
    };
    html! {
        <div class="remind" data-testid="remind">
            <p>{ "This job was never saved as a file. Lose this device, and it is gone." }</p>
            <div class="adds">
                <button type="button" class="tool" data-testid="remind-save" onclick={save}>{ "Save as a file" }</button>
                <button type="button" class="tool" data-testid="remind-later" onclick={not_now}>{ "Not now" }</button>
            </div>
        </div>
    }
}
