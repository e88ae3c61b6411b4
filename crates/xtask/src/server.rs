//! A static file server that does what a good static host does: right types,
//! ready-compressed files, and a check with the server before a file is reused.
//!
//! It knows nothing of the page; any folder can be served.

use anyhow::{Context, Result, bail};
use axum::Router;
use axum::http::{HeaderValue, header::CACHE_CONTROL};
use axum::response::Redirect;
use axum::routing::any;
use std::net::{IpAddr, Ipv4Addr, SocketAddr};
use std::path::PathBuf;
use tokio::net::TcpListener;
use tokio::runtime::Runtime;
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

impl Site {
    /// A folder served to this machine alone, under no path of its own.
    pub(crate) fn here(folder: PathBuf, port: u16) -> Self {
        Self {
            folder,
            host: IpAddr::V4(Ipv4Addr::LOCALHOST),
            port,
            prefix: "/".to_owned(),
        }
    }
}

/// Serves until the process is stopped.
pub(crate) fn serve(site: &Site) -> Result<()> {
    let open = Open::at(site)?;
    println!("Serving {}", site.folder.display());
    // Tests read the address from this line, as port 0 means "any".
    println!("Listening on {}", open.address);
    open.serve()
}

/// Serves beside whatever else this process does, until it ends. Returns the address.
pub(crate) fn serve_beside(site: &Site) -> Result<String> {
    let open = Open::at(site)?;
    let address = open.address.clone();
    std::thread::spawn(move || open.serve());
    Ok(address)
}

/// A site whose port is taken and whose files nobody has asked for yet.
struct Open {
    runtime: Runtime,
    listener: TcpListener,
    routes: Router,
    address: String,
}

impl Open {
    fn at(site: &Site) -> Result<Self> {
        if !site.folder.join("index.html").is_file() {
            bail!(
                "{} holds no index.html; run `cargo xtask dist` first",
                site.folder.display()
            );
        }
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build()?;
        let wanted = SocketAddr::new(site.host, site.port);
        let listener = runtime
            .block_on(TcpListener::bind(wanted))
            .with_context(|| format!("{wanted} cannot be used; is something else there? Try another --port"))?;
        let prefix = format!("/{}", site.prefix.trim_matches('/'));
        let shown = if prefix == "/" { "/" } else { &format!("{prefix}/") };
        let address = format!("http://{}{shown}", listener.local_addr()?);
        Ok(Self {
            runtime,
            listener,
            routes: routes(site, &prefix),
            address,
        })
    }

    fn serve(self) -> Result<()> {
        let serving = axum::serve(self.listener, self.routes);
        self.runtime
            .block_on(async { serving.await })
            .context("the server stopped")
    }
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
