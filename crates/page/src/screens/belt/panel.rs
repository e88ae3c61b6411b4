//! One pulley: its name, side, place and size, its turn in the order, and ways to measure them.
//!
//! Each text is kept as typed and goes into the drive as soon as it can be read.

use super::Action;
use crate::forms::typing;
use crate::pace;
use crate::views::button::Button;
use crate::views::choice::choice;
use crate::views::focus::focus;
use crate::views::fold::use_fold;
use crate::views::jumps::heading;
use shopmath::drive::bench::DriveText;
use shopmath::drive::bench::drawing::Disc;
use shopmath::drive::bench::edit::Edit;
use shopmath::drive::bench::entry::{ArmEntries, PulleyEntry, arm, change, fault, from_tape, load, names};
use shopmath::drive::pulley::Side;
use shopmath::quantity::Unit;
use shopmath::quantity::print::{plain, quantity};
use std::rc::Rc;
use web_sys::HtmlSelectElement;
use yew::prelude::*;

#[derive(PartialEq, Properties)]
pub(super) struct Props {
    /// The pulley, from 0.
    pub(super) index: usize,
    /// The pulley as it stands in the drive.
    pub(super) disc: Disc,
    pub(super) text: DriveText,
    /// How many pulleys there are.
    pub(super) count: usize,
    /// Grows when the drive changes other than by typing here.
    pub(super) settled: u32,
    pub(super) onact: Callback<Action>,
}

/// What was typed into them and not yet taken over, and the pulleys measured from.
#[derive(Clone, Debug, Default, PartialEq)]
struct Draft {
    texts: Vec<(PulleyEntry, String)>,
    from: [usize; 2],
}

enum Change {
    Type(PulleyEntry, String),
    /// Another field has set what this one shows.
    Drop(PulleyEntry),
    From(usize, usize),
    /// The pulley was changed by other means: what was typed about it no longer holds.
    Settle,
    /// This pulley has another turn in the order, that of its neighbour.
    Turn(usize, usize),
    /// A new pulley is worked on.
    Anew(usize),
}

impl Draft {
    /// Nothing typed; measured from the first two others.
    fn of(index: usize) -> Self {
        Self {
            texts: Vec::new(),
            from: [usize::from(index == 0), if index < 2 { 2 } else { 1 }],
        }
    }

    fn get(&self, own: PulleyEntry) -> Option<&str> {
        self.texts
            .iter()
            .find(|(known, _)| *known == own)
            .map(|(_, text)| text.as_str())
    }
}

impl Reducible for Draft {
    type Action = Change;

    fn reduce(self: Rc<Self>, change: Change) -> Rc<Self> {
        let mut draft = (*self).clone();
        match change {
            Change::Type(own, text) => {
                draft.texts.retain(|(known, _)| *known != own);
                draft.texts.push((own, text));
            }
            Change::Drop(own) => draft.texts.retain(|(known, _)| *known != own),
            Change::From(which, pulley) => {
                if let Some(from) = draft.from.get_mut(which) {
                    *from = pulley;
                }
            }
            Change::Settle => draft
                .texts
                .retain(|(own, _)| matches!(own, PulleyEntry::FirstDistance | PulleyEntry::SecondDistance)),
            Change::Turn(index, to) => {
                draft.from = draft.from.map(|from| if from == to { index } else { from });
            }
            Change::Anew(index) => draft = Self::of(index),
        }
        if *self == draft { self } else { Rc::new(draft) }
    }
}

/// The panel.
#[component]
pub(super) fn Panel(props: &Props) -> Html {
    let Props {
        index,
        disc,
        text,
        count,
        settled,
        onact,
    } = props;
    let index = *index;
    let draft = use_reducer(|| Draft::of(index));
    let more = use_fold(false);
    {
        let dispatcher = draft.dispatcher();
        use_effect_with(*settled, move |_| dispatcher.dispatch(Change::Settle));
    }
    let act = |action: fn(usize) -> Edit| onact.reform(move |_: MouseEvent| Action::Edit(action(index)));
    let turn = |id: &'static str, words: &'static str, to: Option<usize>| {
        let to = to.filter(|to| to < count);
        let (dispatcher, onact) = (draft.dispatcher(), onact.clone());
        let onclick = Callback::from(move |_: MouseEvent| {
            if let Some(to) = to {
                dispatcher.dispatch(Change::Turn(index, to));
                onact.emit(Action::Edit(Edit::Reorder { pulley: index, to }));
            }
        });
        Button::chip(words, onclick).id(id).off(to.is_none()).draw()
    };
    let add = {
        let dispatcher = draft.dispatcher();
        onact.reform(move |_: MouseEvent| {
            dispatcher.dispatch(Change::Anew(index + 1));
            Action::Edit(Edit::AddAfter(index))
        })
    };
    let field = |own: PulleyEntry, name: &'static str, label: &'static str, standing: String| {
        own_field(&Row {
            props,
            draft: &draft,
            own,
            name,
            label,
            standing,
        })
    };
    let close = onact.reform(move |_: MouseEvent| {
        focus(&format!("pulley-{}", index + 1));
        Action::Choose(None)
    });
    let ribbed = disc.side == Side::Rib;
    let flip = onact.reform(move |_| Action::Edit(Edit::Flip(index)));
    let (arm, load) = (arm(text, index), load(text, index));
    // One button for both, so that the keyboard stays on it.
    let hold = match (&arm, &load) {
        (Some(_), _) => Some(("No tensioner any more", act(|_| Edit::Release))),
        (None, Some(_)) => Some(("Make it the tensioner", act(Edit::Hold))),
        // The driver is held by nothing.
        (None, None) => None,
    };
    let held = |arm: ArmEntries| {
        let [x, y, low, high] = arm.standing;
        html! {
            <>
                <p class="note">{ "The tensioner’s arm: a first guess until you measure it. Stops: its angle from the right, anticlockwise." }</p>
                <form class="form">
                    { field(PulleyEntry::PivotAcross, "pivot-x", "Pivot x, mm", x) }
                    { field(PulleyEntry::PivotUp, "pivot-y", "Pivot y, mm", y) }
                    { field(PulleyEntry::LowStop, "low-stop", "Low stop, °", low) }
                    { field(PulleyEntry::HighStop, "high-stop", "High stop, °", high) }
                </form>
                if let Some(wrong) = arm.wrong { <div class="fault" id="arm-error"><p>{ wrong }</p></div> }
            </>
        }
    };
    let otherwise = || {
        html! {
            <>
                <form class="form">
                    { field(PulleyEntry::Around, "pulley-around", "String once round, mm", String::new()) }
                    { field(PulleyEntry::Ratio, "pulley-ratio", "Turns per turn of pulley 1", String::new()) }
                    // From two others, which a drive of two pulleys has not.
                    if *count > 2 {
                        { from(&draft, 0, index, text) }
                        { field(PulleyEntry::FirstDistance, "tape-1", "Centre to centre, mm", String::new()) }
                        { from(&draft, 1, index, text) }
                        { field(PulleyEntry::SecondDistance, "tape-2", "Centre to centre, mm", String::new()) }
                    }
                </form>
                { places(props, &draft) }
            </>
        }
    };
    html! {
        <section class="panel" aria-label={format!("Pulley {}", disc.name)}>
            <div class="panel-head">{ heading("pulley", format!("Pulley {} of {count}", index + 1)) }{ Button::chip("Close", close).draw() }</div>
            <form class="form">
                { field(PulleyEntry::Name, "pulley-name", "Name", disc.name.clone()) }
                { field(PulleyEntry::Diameter, "pulley-diameter", if ribbed { "Effective diameter, mm" } else { "Outside diameter, mm" }, plain(disc.diameter(), 2)) }
                { field(PulleyEntry::Across, "pulley-x", "x, to the right, mm", plain(disc.x, 2)) }
                { field(PulleyEntry::Up, "pulley-y", "y, up, mm", plain(disc.y, 2)) }
                if let Some(load) = load { { field(PulleyEntry::Load, "pulley-load", "Load, such as 0.6 kW, 12 N·m or 90 A 14 V", load) } }
            </form>
            <p class="note">{ "Each arrow under the drawing moves it 1 mm; so do the arrow keys on its button." }</p>
            { choice("side", "Side of the belt on it", &[("rib", "Ribs"), ("back", "Back")], disc.side.id(), &flip) }
            <div class="pad">
                { turn("earlier", "Earlier in the route", index.checked_sub(1)) }
                { turn("later", "Later in the route", index.checked_add(1)) }
                { Button::chip("Add one after it", add).id("add-after").draw() }
                if let Some((words, onclick)) = hold { { Button::chip(words, onclick).id("hold").draw() } }
                { Button::chip("Remove it", act(Edit::Remove)).id("remove").draw() }
            </div>
            if let Some(arm) = arm { { held(arm) } }
            { more.draw(Some("more"), "Measured otherwise: string round the rim, speed ratio, tape from two pulleys".into(), otherwise) }
        </section>
    }
}

struct Row<'a> {
    props: &'a Props,
    draft: &'a UseReducerHandle<Draft>,
    own: PulleyEntry,
    name: &'static str,
    label: &'static str,
    /// What the drive holds, shown while nothing is being typed.
    standing: String,
}

fn own_field(row: &Row<'_>) -> Html {
    let Row {
        props,
        draft,
        own,
        name,
        label,
        standing,
    } = row;
    let own = *own;
    let typed = draft.get(own);
    let shown = typed.unwrap_or(standing);
    let wrong = fault(&props.text, props.index, own, shown);
    let oninput = {
        let (dispatcher, onact) = (draft.dispatcher(), props.onact.clone());
        let (index, text) = (props.index, props.text.clone());
        typing(&Callback::from(move |typed: String| {
            let shown = own.sets();
            match change(&text, index, own, &typed) {
                Ok(Some(edit)) => {
                    if shown != own {
                        dispatcher.dispatch(Change::Drop(shown));
                    }
                    onact.emit(Action::Typed(shown, Some(edit)));
                }
                Err(_) if own.is_of_drive() && own != PulleyEntry::Name => onact.emit(Action::Typed(own, None)),
                _ => {}
            }
            dispatcher.dispatch(Change::Type(own, typed));
        }))
    };
    let invalid = wrong.is_some().then_some("true");
    let described = invalid.map(|_| format!("{name}-error"));
    html! {
        <div class={classes!("field", invalid.map(|_| "field-wrong"))} key={*name}>
            <label for={*name}>{ label }</label>
            <div class="field-box">
                <input id={*name} type="text" value={pace::shown(name, &shown.to_owned().into())} {oninput} aria-invalid={invalid} aria-describedby={described}
                    autocomplete="off" autocapitalize="off" autocorrect="off" spellcheck="false" />
            </div>
            if let Some(fault) = wrong { <div class="fault"><p id={format!("{name}-error")}>{ fault.to_string() }</p></div> }
        </div>
    }
}

/// The pulley a tape is laid from, to the one `of` the panel.
fn from(draft: &UseReducerHandle<Draft>, which: usize, of: usize, text: &DriveText) -> Html {
    let names = names(text);
    let dispatcher = draft.dispatcher();
    let onchange = Callback::from(move |event: Event| {
        if let Ok(pulley) = event.target_unchecked_into::<HtmlSelectElement>().value().parse() {
            dispatcher.dispatch(Change::From(which, pulley));
        }
    });
    let chosen = draft.from.get(which).copied();
    let [id, label] = [["tape-from-1", "Tape from"], ["tape-from-2", "and from"]][which];
    html! {
        <div class="field">
            <label for={id}>{ label }</label>
            <select {id} {onchange}>
                { for names.iter().enumerate().filter(|(index, _)| *index != of).map(|(index, name)| html! { <option key={index} value={index.to_string()} selected={chosen == Some(index)}>{ name }</option> }) }
            </select>
        </div>
    }
}

/// Both places the tape allows, to choose from.
fn places(props: &Props, draft: &UseReducerHandle<Draft>) -> Html {
    let (Some(first), Some(second)) = (
        draft.get(PulleyEntry::FirstDistance),
        draft.get(PulleyEntry::SecondDistance),
    ) else {
        return html! {};
    };
    let index = props.index;
    match from_tape(&props.text, (draft.from[0], first), (draft.from[1], second)) {
        Ok(places) => html! {
            <div class="chips">
                { for places.iter().enumerate().map(|(which, &(x, y))| {
                    let onclick = props.onact.reform(move |_: MouseEvent| Action::Edit(Edit::Move { pulley: index, x, y }));
                    let length = |value: f64| quantity(Unit::Millimetre.of(value), Unit::Millimetre);
                    Button::chip(format!("Put it at x {}, y {}", length(x), length(y)), onclick).id(format!("place-{}", which + 1)).keyed(which)
                }) }
            </div>
        },
        Err(fault) => html! { <div class="fault"><p>{ fault.to_string() }</p></div> },
    }
}
