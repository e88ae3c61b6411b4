// The service worker: keeps the whole page on the device, so that it starts
// from a dead network. It knows files, not what the page does with them.
//
// This is a template. `cargo xtask dist` fills in the three constants below and
// writes the result beside the page; without that step there is no worker.
//
// Rules it follows:
// - One version, one cache. A version is installed whole or not at all, and each
//   file must be byte for byte the one that was built.
// - An address typed, followed or reloaded always gets the kept start page.
//   Files of the page come from the cache first; all else is left alone.
// - A new version waits until the page asks for it, so that nothing changes
//   under a person's hands.
//
// Taking it back: should a worker ever do harm, run
//   cargo xtask dist --finish FOLDER --retire
// on a copy of the deployed folder and deploy the `sw.js` it writes. Browsers
// look for a new `sw.js` when the page is opened; the retired one takes over at
// once, deletes every cache of this page, unregisters itself and reloads the
// open pages from the network. What a person has saved is not in these caches
// and stays.

const VERSION = "not a build";
const FILES = [];
const RETIRED = false;

// Two copies of the page on one host have different scopes and must not delete
// each other's caches.
const OURS = `fenderside ${self.registration.scope} `;
const CACHE = OURS + VERSION;

const START = new URL("./", self.location).href;
const SUMS = new Map(FILES.map(([url, sum]) => [new URL(url, self.location).href, sum]));

self.addEventListener("install", (event) => {
  event.waitUntil(RETIRED ? self.skipWaiting() : install());
});

self.addEventListener("activate", (event) => {
  event.waitUntil(RETIRED ? retire() : takeOver());
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (RETIRED || request.method !== "GET") return;
  if (request.mode === "navigate") {
    event.respondWith(startPage(request));
    return;
  }
  const url = request.url.split("#")[0];
  if (SUMS.has(url)) {
    event.respondWith(kept(url).then((file) => file ?? fetchExact(url)));
  }
});

self.addEventListener("message", (event) => {
  const type = event.data?.type;
  if (type === "activate") self.skipWaiting();
  if (type === "status") event.waitUntil(status(event.ports[0]));
});

async function install() {
  // A version deployed a second time shares its cache with the one that is in use.
  const shared = await caches.has(CACHE);
  try {
    await fill();
  } catch (error) {
    if (!shared) await caches.delete(CACHE);
    throw error;
  }
}

// Fetches what the cache lacks. Nothing is written before everything is here.
async function fill() {
  const cache = await caches.open(CACHE);
  const urls = await missing(cache);
  const files = await Promise.all(urls.map(fetchExact));
  await Promise.all(urls.map((url, i) => cache.put(url, files[i])));
}

async function missing(cache) {
  const found = await Promise.all([...SUMS.keys()].map((url) => cache.match(url)));
  return [...SUMS.keys()].filter((_, i) => !found[i]);
}

async function kept(url) {
  const cache = await caches.open(CACHE);
  return cache.match(url);
}

// The start page names its files relative to its own folder; asked for from
// another one, it is sent for there.
async function startPage(request) {
  const page = await kept(START);
  if (!page) return fetch(request);
  return new URL("./", request.url).href === START ? page : Response.redirect(START);
}

// The network's answer, if it is the file that was built. A sign-in page of some
// Wi-Fi answers every address with its own text: by a redirect, with another
// type, or with other bytes.
async function fetchExact(url) {
  const answer = await fetch(url, { cache: "reload", integrity: SUMS.get(url) });
  if (!answer.ok) throw new Error(`${url} answered ${answer.status}`);
  if (answer.redirected) throw new Error(`${url} was redirected`);
  const type = answer.headers.get("content-type") ?? "";
  if (!isRightType(url, type)) throw new Error(`${url} came as "${type}"`);
  return answer;
}

// Browsers refuse scripts, styles and modules of the wrong type, so keeping one
// would keep a page that cannot start. Hosts disagree about manifests; only a
// web page in place of one is refused.
function isRightType(url, type) {
  if (url.endsWith("/") || url.endsWith(".html")) return type.startsWith("text/html");
  if (url.endsWith(".js")) return type.includes("javascript");
  if (url.endsWith(".css")) return type.startsWith("text/css");
  if (url.endsWith(".wasm")) return type.startsWith("application/wasm");
  if (/\.(svg|png)$/.test(url)) return type.startsWith("image/");
  return !type.startsWith("text/html");
}

async function takeOver() {
  await deleteOurCaches((name) => name !== CACHE);
  await self.clients.claim();
}

async function retire() {
  await deleteOurCaches(() => true);
  await self.registration.unregister();
  const pages = await self.clients.matchAll({ type: "window" });
  await Promise.all(pages.map((page) => page.navigate(page.url)));
}

async function deleteOurCaches(isOld) {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(OURS) && isOld(name));
  await Promise.all(old.map((name) => caches.delete(name)));
}

// Looks into the cache rather than trusting the install: browsers may empty it.
// What was lost is fetched again where there is a network.
async function status(port) {
  if (RETIRED) return port.postMessage({ version: VERSION, complete: false, gone: [] });
  await fill().catch(() => {});
  const gone = await missing(await caches.open(CACHE));
  port.postMessage({ version: VERSION, complete: gone.length === 0, gone });
}
