// Starts the page and keeps its service worker: everything that must work when
// the WebAssembly module does not. It holds no part of the calculators.
//
// What it tells the page, on <html> and as events on `window`:
//   data-offline  "pending", then "ready" (event `shop-offline-ready`) once every
//                 file is known to be kept, or "unavailable" (event
//                 `shop-offline-unavailable`); "unavailable" too while the worker
//                 has not answered for long
//   data-update   "ready" (event `shop-update-ready`) when a new version waits
//   data-version  the version whose files are kept
//   data-fault    where the program was when it stopped, for whoever looks for the fault
// What it listens to: `shop-update-apply` lets the waiting version take over and
// reloads once; `shop-awake` and `shop-rest` keep the screen lit and let it go.

(() => {
  "use strict";

  const root = document.documentElement;
  const WORKER = "./sw.js";

  root.dataset.offline = "pending";
  keepAwake();
  start().then((started) => keepOffline(started));

  async function start() {
    if (typeof WebAssembly !== "object") {
      say("This browser cannot run the page: it has no WebAssembly. A current Firefox, Chrome, Edge or Safari can. Some phones switch WebAssembly off in a lockdown mode.");
      return false;
    }
    await firstPaint();
    askForProgram();
    try {
      const module = await import(address("app-module"));
      await module.default({ module_or_path: address("app-wasm") });
    } catch (error) {
      say(`The page did not start (${error}). Load it again; if it still does not start, this browser is too old for it.`);
      return false;
    }
    watchForStops();
    if (!hasStorage()) {
      note("This browser does not let the page store anything. It calculates, but keeps nothing, and needs a network to start.");
    }
    return true;
  }

  // On a slow network the first words come before the program, not after it: its bytes would take
  // their share of the line from the style that those words wait for. Kept files need no network.
  function firstPaint() {
    if (navigator.serviceWorker?.controller || document.hidden) return Promise.resolve();
    return new Promise((seen) => {
      requestAnimationFrame(() => setTimeout(seen));
      // A page that is drawn nowhere gets no frame: hidden just now, or in a frame out of sight.
      document.addEventListener("visibilitychange", seen, { once: true });
      setTimeout(seen, 1000);
    });
  }

  // The links that fetch the program's two files at once and check what comes, where the build has
  // put them aside.
  function askForProgram() {
    const links = document.getElementById("program");
    links?.replaceWith(links.content);
  }

  function address(name) {
    const { content } = document.querySelector(`meta[name="${name}"]`);
    return new URL(content, document.baseURI).href;
  }

  // Reading the property is enough to be refused where storage is blocked.
  function hasStorage() {
    try {
      return Boolean(window.localStorage && window.indexedDB);
    } catch {
      return false;
    }
  }

  // A module that has stopped answers nothing any more, and looks as if it did.
  function watchForStops() {
    const stopped = (error) => {
      if (error instanceof WebAssembly.RuntimeError && !document.getElementById("boot-note")) {
        root.dataset.fault = error.stack;
        note("The page has stopped because of a fault in it. Load it again to go on; the address keeps what was typed.");
      }
    };
    window.addEventListener("error", (event) => stopped(event.error));
    window.addEventListener("unhandledrejection", (event) => stopped(event.reason));
  }

  function say(text) {
    const line = document.getElementById("boot-says");
    if (line) line.textContent = text;
    else note(text);
  }

  function note(text) {
    const line = document.createElement("p");
    line.id = "boot-note";
    line.setAttribute("role", "alert");
    line.textContent = text;
    document.body.prepend(line);
  }

  // The screen stays lit while the page asks for it, and again after a look at
  // something else. Browsers that cannot do it let the screen dim as ever.
  function keepAwake() {
    let lock = null;
    let wanted = false;
    const hold = async () => {
      let held;
      try {
        held = await navigator.wakeLock?.request("screen");
      } catch {
        return;
      }
      // Asked for twice before the first was there, only the last is known from here on.
      lock?.release();
      lock = held;
      if (!wanted) lock?.release();
    };
    window.addEventListener("shop-awake", () => {
      wanted = true;
      hold();
    });
    window.addEventListener("shop-rest", () => {
      wanted = false;
      lock?.release();
    });
    document.addEventListener("visibilitychange", () => {
      if (wanted && document.visibilityState === "visible") hold();
    });
  }

  async function keepOffline(started) {
    let registration;
    try {
      registration = await register();
    } catch {
      setOffline("unavailable");
      return;
    }
    // A version that cannot start has nothing to lose: let the next one in unasked.
    onUpdate(registration, started ? announceUpdate : () => applyUpdate(registration));
    await confirm(registration);
  }

  async function register() {
    const workers = navigator.serviceWorker;
    try {
      return await workers.register(workerUrl(), { scope: "./", updateViaCache: "none" });
    } catch (error) {
      // No network is no reason to doubt a worker that is there already.
      const known = await workers.getRegistration("./");
      if (known?.active) return known;
      throw error;
    }
  }

  // The content security policy lets only a policy of this name make a script's
  // address, and this one makes only one.
  function workerUrl() {
    if (!window.trustedTypes) return WORKER;
    return window.trustedTypes.createPolicy("swurl", { createScriptURL: () => WORKER }).createScriptURL("");
  }

  // "Ready" is said only when a worker is in charge and has looked into its cache.
  async function confirm(registration) {
    const { installing, waiting, active: running } = registration;
    // The first install has failed already.
    if (!installing && !waiting && !running) return setOffline("unavailable");
    installing?.addEventListener("statechange", (event) => {
      if (event.target.state === "redundant" && !registration.active) setOffline("unavailable");
    });
    const { active } = await navigator.serviceWorker.ready;
    // A worker that does not answer is not known to keep anything; its late answer still counts.
    const late = setTimeout(() => setOffline("unavailable"), 10000);
    const { version, complete } = await ask(active, "status");
    clearTimeout(late);
    root.dataset.version = version;
    setOffline(complete ? "ready" : "unavailable");
  }

  function ask(worker, type) {
    return new Promise((resolve) => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = (event) => resolve(event.data);
      worker.postMessage({ type }, [port2]);
    });
  }

  function setOffline(state) {
    root.dataset.offline = state;
    window.dispatchEvent(new CustomEvent(`shop-offline-${state}`));
  }

  function announceUpdate() {
    root.dataset.update = "ready";
    window.dispatchEvent(new CustomEvent("shop-update-ready"));
  }

  function onUpdate(registration, act) {
    const look = () => {
      // Without an active worker this is the first version, not a new one.
      if (registration.waiting && registration.active) act();
    };
    const follow = (worker) => worker?.addEventListener("statechange", look);
    look();
    follow(registration.installing);
    registration.addEventListener("updatefound", () => follow(registration.installing));
    window.addEventListener("shop-update-apply", () => applyUpdate(registration));
    // A page left open for days looks for a new version when a network returns.
    window.addEventListener("online", () => registration.update().catch(() => {}));
  }

  function applyUpdate(registration) {
    const reload = () => window.location.reload();
    const { waiting } = registration;
    // Another tab may have let the new version in already.
    if (!waiting) return reload();
    navigator.serviceWorker.addEventListener("controllerchange", reload, { once: true });
    waiting.postMessage({ type: "activate" });
  }
})();
