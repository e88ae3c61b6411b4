//! A static file server that does what a good static host does: right types,
//! ready-compressed files, and a check with the server before a file is reused.
//!
//! It knows nothing of the page; any folder can be served.

use anyhow::{Context, Result, bail};
use axum::Router;
use axum::http::{HeaderValue, header::CACHE_CONTROL};
use axum::response::Redirect;
use axum::routing::any;
use std::net::{IpAddr, SocketAddr};
use std::path::PathBuf;
use tower_http::services::ServeDir;
use tower_http::set_header::SetResponseHeaderLayer;

/// What to serve, and where.
pub(crate) struct Site {
    /// The folder that is served.
    pub(crate) folder: PathBuf,
    /// The address to listen on.
    pub(crate) host: IpAddr,
    /// The port to listen on; 0 lets the system choose.
    pub(crate) port: u16,
    /// The path the folder appears under, such as `/` or `/shop/tools/`.
    pub(crate) prefix: String,
}

/// Serves until the process is stopped.
pub(crate) fn serve(site: &Site) -> Result<()> {
    if !site.folder.join("index.html").is_file() {
        bail!(
            "{} holds no index.html; run `cargo xtask dist` first",
            site.folder.display()
        );
    }
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build()?;
    runtime.block_on(listen(site))
}

async fn listen(site: &Site) -> Result<()> {
    let wanted = SocketAddr::new(site.host, site.port);
    let listener = tokio::net::TcpListener::bind(wanted)
        .await
        .with_context(|| format!("{wanted} cannot be used; is something else there? Try another --port"))?;
    let prefix = format!("/{}", site.prefix.trim_matches('/'));
    let shown = if prefix == "/" {
        prefix.clone()
    } else {
        format!("{prefix}/")
    };
    println!("Serving {}", site.folder.display());
    // Tests read the address from this line, as port 0 means "any".
    println!("Listening on http://{}{shown}", listener.local_addr()?);
    axum::serve(listener, routes(site, &prefix))
        .await
        .context("the server stopped")
}

fn routes(site: &Site, prefix: &str) -> Router {
    let files = ServeDir::new(&site.folder).precompressed_br().precompressed_gzip();
    let router = if prefix == "/" {
        Router::new().fallback_service(files)
    } else {
        // Without its last slash the folder would resolve relative addresses
        // one level too high, so static hosts redirect, and so does this one.
        let folder = format!("{prefix}/");
        Router::new()
            .route(prefix, any(move || async move { Redirect::temporary(&folder) }))
            .nest_service(&format!("{prefix}/"), files)
    };
    let check_first = HeaderValue::from_static("no-cache");
    router.layer(SetResponseHeaderLayer::overriding(CACHE_CONTROL, check_first))
}
