//! What is noted in the page of each thing a person does: when it was heard of, and when it was painted.

use anyhow::Result;
use fenderside_tests::harness::{Outcome, Phone};
use serde_json::{Value, json};

/// For every second event, in milliseconds: from the time of the first event before it to the task
/// after the next frame (`paint`), and the stretches that make it up. `work` is all that the page
/// itself does, its handlers and the frame; the rest of `paint` is the browser's way to the page, and
/// the wait for the next frame, which has nothing to do with the page. `answer` ends with the frame in
/// which the page owes nothing any more: the same where it answers at once.
const RECORD: &str = r"
    const [begins, hears] = arguments;
    const times = window.times = { paint: [], reach: [], handlers: [], wait: [], frame: [], work: [], answer: [] };
    // Ahead of what waits for the frame's end, as the browser's own look at the form does.
    const soon = (then) => scheduler.postTask(then, { priority: 'user-blocking' });
    const settled = (painted, then) => {
        if (!document.querySelector('[aria-busy=true]')) {
            then(painted);
            return;
        }
        requestAnimationFrame(() => soon(() => settled(performance.now(), then)));
    };
    let begun = 0;
    addEventListener(begins, (event) => { begun = event.timeStamp; }, true);
    addEventListener(hears, (event) => {
        // The page tells a field again what it held back.
        if (!event.isTrusted) return;
        const from = begun;
        const heard = performance.now();
        let handled = Infinity;
        soon(() => { handled = performance.now(); });
        requestAnimationFrame(() => {
            const frame = performance.now();
            // Where the frame follows at once, the handlers end where it starts.
            const done = Math.min(handled, frame);
            soon(() => {
                const painted = performance.now();
                settled(painted, (answered) => {
                    times.paint.push(painted - from);
                    times.reach.push(heard - from);
                    times.handlers.push(done - heard);
                    times.wait.push(frame - done);
                    times.frame.push(painted - frame);
                    times.work.push(done - heard + painted - frame);
                    times.answer.push(answered - from);
                });
            });
        });
    }, true);
";

/// Begins to note times, from one event of the browser to the paint after another.
pub(crate) fn begin(phone: &Phone, begins: &str, hears: &str) -> Outcome {
    phone.script::<()>(RECORD, vec![json!(begins), json!(hears)])
}

/// How many were noted so far.
pub(crate) fn count(phone: &Phone) -> Result<usize> {
    phone.script("return times.paint.length", Vec::new())
}

/// Forgets all but the first of them, once those on their way are in.
pub(crate) fn keep(phone: &Phone, first: usize) -> Outcome {
    let forget = "return new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => { \
         for (const list of Object.values(times)) list.length = arguments[0]; done(null); })))";
    phone.script(forget, vec![json!(first)])
}

/// All that was noted.
pub(crate) fn all(phone: &Phone) -> Result<Value> {
    phone.script("return window.times", Vec::new())
}
