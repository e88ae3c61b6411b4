//! What may follow a frame behind the answer: a long screen is not drawn anew before the one line
//! that was waited for is.

use gloo::timers::callback::Timeout;
use std::rc::Rc;
use yew::prelude::*;

/// A little more than a frame, millisecond.
const FRAME: u32 = 20;

/// The value as it was a frame ago. It is never older than that: what comes in between starts the
/// wait anew, and the newest is shown.
#[hook]
pub(crate) fn use_later<T: 'static>(now: &Rc<T>) -> Rc<T> {
    let shown = use_state(|| now.clone());
    {
        let (now, shown) = (now.clone(), shown.clone());
        use_effect_with(Rc::as_ptr(&now), move |_| {
            let behind = !Rc::ptr_eq(&now, &shown);
            let timer = behind.then(|| Timeout::new(FRAME, move || shown.set(now)));
            move || drop(timer)
        });
    }
    (*shown).clone()
}
