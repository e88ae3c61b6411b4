//! The page.

use yew::prelude::*;

#[component]
fn App() -> Html {
    html! { <main><h1>{ "Fenderside" }</h1></main> }
}

fn main() {
    yew::Renderer::<App>::new().render();
}
