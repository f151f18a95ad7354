// Starts the app and looks after its service worker. The app in Rust talks to this file through
// events named meniscus-… and data- attributes of the page.

import { restored } from "./mirror.js";

const page = document.documentElement;
const raise = (name) => window.dispatchEvent(new Event(name));
const hand = (name, text) => window.dispatchEvent(Object.assign(new Event(name), { text }));

async function compiled(address, signal) {
  const file = await fetch(address, { signal });
  if (!file.ok) throw new TypeError(`${file.status} for the app`);
  // While it arrives, where the host names its type.
  if (file.headers.get("content-type") === "application/wasm") return WebAssembly.compileStreaming(file);
  return WebAssembly.compile(await file.arrayBuffer());
}

// Between two long pieces of work the page gets its turn: what was tapped shows, and what is painted stands.
const turn = () => new Promise((resolve) => setTimeout(resolve));
const once = (name) => new Promise((resolve) => window.addEventListener(name, resolve, { once: true }));
const opened = once("meniscus-opened");
const whole = once("meniscus-whole");

async function start() {
  const script = document.querySelector("link[data-boot=script]").href;
  // The build puts the wasm into two parts: xtask/src/split.rs.
  const { href: wasm, dataset } = document.querySelector("link[data-boot=wasm]");
  const first = Promise.all([import(script), compiled(wasm), restored]);
  // On a first visit the first part is all that the first screen needs: the network is its own until it is here.
  const isFirst = document.getElementById("app").dataset.first === "";
  const rest = isFirst ? first.then(() => compiled(dataset.rest, AbortSignal.timeout?.(45000))) : compiled(dataset.rest);
  rest.catch(() => {});
  await Promise.race([first, turn()]);
  markDecimal();
  const [{ default: init }, code] = await first;
  await turn();
  const app = await init({ module_or_path: code });
  let here = false;
  const bring = async () => {
    const module = await rest;
    if (!here) await WebAssembly.instantiate(module, { first: app });
    here = true;
  };
  window.addEventListener("meniscus-rest", () => {
    if (here) return;
    new WebAssembly.Instance(fetchedAtOnce(dataset.rest), { first: app });
    here = true;
  });
  if (!isFirst) await bring();
  raise("meniscus-begin");
  await opened;
  if (isFirst) await bring();
  page.removeAttribute("data-starting");
  raise("meniscus-whole");
}

// What cannot wait for the rest of the app has the page wait. Taps do not come to this: public/first.js keeps them.
function fetchedAtOnce(address) {
  const asked = new XMLHttpRequest();
  asked.open("GET", address, false);
  // Only a text can be had so: each of its letters stands for a byte.
  asked.overrideMimeType("text/plain; charset=x-user-defined");
  asked.send();
  return new WebAssembly.Module(Uint8Array.from(asked.responseText, (letter) => letter.charCodeAt(0)));
}

// Whether the device writes 1,5. To ask takes a slow phone longer than anything else of a start, so what it said last
// stands, and is asked again when there is time: it is so from the next start on.
function markDecimal() {
  const ask = () => ((1.5).toLocaleString().includes(",") ? "," : ".");
  const noted = (mark) => {
    try {
      localStorage.setItem("meniscus-decimal", mark);
    } catch {}
    return mark;
  };
  let known;
  try {
    known = localStorage.getItem("meniscus-decimal");
  } catch {}
  if (known) setTimeout(() => noted(ask()), 15000);
  page.toggleAttribute("data-comma", (known ?? noted(ask())) === ",");
}

// The strip as it stands when the page is left is what the next start shows first: public/first.js. Not one that time
// changes, though.
function keepStrip() {
  const strip = document.querySelector("#app:not([data-first]) > output");
  if (!strip) return;
  const kept = (node) =>
    node.nodeType === Node.TEXT_NODE
      ? node.data
      : [node.namespaceURI, node.localName, [...node.attributes].map(({ name, value }) => [name, value]), [...node.childNodes].filter((child) => child.nodeType !== Node.COMMENT_NODE).map(kept)];
  const build = document.querySelector("link[data-boot=wasm]").getAttribute("href");
  try {
    if (page.hasAttribute("data-timed")) localStorage.removeItem("meniscus-last");
    else localStorage.setItem("meniscus-last", JSON.stringify({ at: location.hash || "#/service/measure", build, strip: kept(strip) }));
  } catch {}
}
window.addEventListener("pagehide", keepStrip);
document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && keepStrip());

// ---- Offline and updates: a new version waits until the person taps Update ----

let asked = false;

function waiting() {
  page.setAttribute("data-update", "");
  raise("meniscus-update-waiting");
}

// The one policy of trusted types: it lets this address be run, and no other.
function workerAddress() {
  const createScriptURL = () => "service-worker.js";
  return (window.trustedTypes?.createPolicy("meniscus", { createScriptURL }) ?? { createScriptURL }).createScriptURL("");
}

async function register() {
  if (!("serviceWorker" in navigator)) return;
  const workers = navigator.serviceWorker;
  const registration = await workers.register(workerAddress(), { updateViaCache: "none" });
  if (registration.waiting && workers.controller) waiting();
  const watch = (worker) =>
    worker?.addEventListener("statechange", () => {
      if (worker.state === "installed" && workers.controller) waiting();
    });
  watch(registration.installing);
  registration.addEventListener("updatefound", () => watch(registration.installing));
  window.addEventListener("meniscus-update-now", () => {
    asked = true;
    if (registration.waiting) registration.waiting.postMessage("take over");
    else location.reload();
  });
  workers.addEventListener("controllerchange", () => {
    if (asked) location.reload();
  });
  const look = () => registration.update().catch(() => {});
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") look();
  });
}

// ---- Installing ----

let offer;
if (matchMedia("(display-mode: standalone)").matches || navigator.standalone) page.setAttribute("data-installed", "");
window.addEventListener("beforeinstallprompt", (event) => {
  event.preventDefault();
  offer = event;
  page.setAttribute("data-can-install", "");
  raise("meniscus-can-install");
});
window.addEventListener("appinstalled", () => {
  page.setAttribute("data-installed", "");
  raise("meniscus-installed");
});
window.addEventListener("meniscus-install", () => offer?.prompt());

// ---- Files: what the app gives, and what it is given ----

window.addEventListener("meniscus-give", ({ file, text }) => {
  const type = file.endsWith(".json") ? "application/json" : "text/plain";
  give(new File([text], file, { type }));
});

async function give(given) {
  const file = given.name;
  if (matchMedia("(pointer: coarse)").matches && navigator.canShare?.({ files: [given] })) {
    try {
      await navigator.share({ files: [given] });
      return hand("meniscus-given", file);
    } catch (problem) {
      if (problem.name === "AbortError") return;
    }
  }
  const link = document.createElement("a");
  link.href = URL.createObjectURL(given);
  link.download = file;
  link.click();
  hand("meniscus-given", file);
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
}

window.addEventListener("meniscus-choose-file", () => {
  const input = document.createElement("input");
  input.type = "file";
  input.accept = ".json,.meniscus,.txt,.csv,application/json,text/plain,text/csv";
  input.addEventListener("change", () => input.files[0] && take(input.files[0]));
  input.click();
});

async function take(file) {
  // Beyond any book: not read into memory at all.
  hand("meniscus-file", file.size > 9000000 ? "9".repeat(8000001) : await file.text());
}

// ---- Handed over by the device: a recipe shared from another app, a file opened with this one, a shortcut ----

const folder = new URL("./", location.href).href;
let openedAt = location.href;

// A link to a spec of ours leads there; of anything else the text is looked at as a file is, before any of it is kept.
async function receive(address) {
  const { searchParams, hash } = new URL(address);
  const [title, text, url] = ["title", "text", "url"].map((name) => searchParams.get(name)?.trim() ?? "");
  const ours = [url, ...text.split(/\s+/)].find((word) => word.startsWith(folder) && word.includes("#/"));
  const words = text ? (text.startsWith(title) ? text : `${title}\n${text}`) : url || title;
  await whole;
  if (ours) location.hash = new URL(ours).hash;
  else if (words) hand("meniscus-file", words);
  else if (hash) location.hash = hash;
}

// Loaded again while the sheet of tools was open: it is closed now, and its step in the history is one that does nothing.
if (history.state === true) history.back();

if (new URLSearchParams(location.search).size) {
  receive(openedAt);
  // It is taken once, and is no part of the address that links are made of.
  history.replaceState(null, "", folder + location.hash);
}

window.launchQueue?.setConsumer(async ({ files, targetURL }) => {
  await whole;
  if (files?.length) return take(await files[0].getFile());
  if (targetURL && targetURL !== openedAt) receive(targetURL);
  // The launch that opened this page has been seen to; the next may lead to the same place.
  openedAt = "";
});

// ---- A spec as a link: compressed, in the letters of addresses ----

const through = (stream, bytes) => new Response(new Blob([bytes]).stream().pipeThrough(stream));

window.addEventListener("meniscus-pack", async ({ text }) => {
  const packed = new Uint8Array(await through(new CompressionStream("deflate-raw"), text).arrayBuffer());
  const letters = btoa(Array.from(packed, (byte) => String.fromCharCode(byte)).join(""));
  hand("meniscus-packed", letters.replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", ""));
});

window.addEventListener("meniscus-unpack", async ({ text }) => {
  try {
    const letters = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
    const packed = Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
    const reader = through(new DecompressionStream("deflate-raw"), packed).body.getReader();
    const parts = [];
    // No link holds more than a megabyte of spec, however small it was packed.
    for (let size = 0, part; !(part = await reader.read()).done; parts.push(part.value)) {
      if ((size += part.value.length) > 1e6) throw new Error("too large");
    }
    hand("meniscus-file", await new Blob(parts).text());
  } catch {
    hand("meniscus-file", "!");
  }
});

window.addEventListener("meniscus-paste", () =>
  navigator.clipboard?.readText().then(
    (text) => hand("meniscus-file", text),
    () => {},
  ),
);

window.addEventListener("meniscus-persist", () => navigator.storage?.persist?.().catch(() => {}));

// ---- Timers: a bell, a buzz, a notice, and a screen that stays awake ----

let audio;

// Browsers let a page sound only after a touch: this comes with the tap that starts a timer.
function ready() {
  try {
    audio ??= new AudioContext();
    audio.resume();
  } catch {}
}

window.addEventListener("meniscus-arm", () => {
  ready();
  if (window.Notification?.permission === "default") Notification.requestPermission().catch(() => {});
});

// After a reload the first touch readies it again, where a timer runs.
for (const touch of ["pointerdown", "keydown"])
  window.addEventListener(touch, () => page.hasAttribute("data-awake") && audio?.state !== "running" && ready());

function sound() {
  if (audio?.state !== "running") return;
  for (let at = 0; at < 6; at++) {
    const tone = audio.createOscillator();
    const loud = audio.createGain();
    const start = audio.currentTime + at * 0.45;
    tone.frequency.value = at % 2 ? 660 : 880;
    loud.gain.setValueAtTime(0.4, start);
    loud.gain.exponentialRampToValueAtTime(0.001, start + 0.4);
    tone.connect(loud).connect(audio.destination);
    tone.start(start);
    tone.stop(start + 0.42);
  }
}

window.addEventListener("meniscus-ring", async ({ text, tag, href }) => {
  sound();
  // Browsers forbid it to a page that was not touched.
  if (navigator.userActivation?.hasBeenActive ?? true) navigator.vibrate?.([500, 200, 500, 200, 500]);
  if (document.visibilityState === "visible" || window.Notification?.permission !== "granted") return;
  try {
    const registration = await navigator.serviceWorker.getRegistration();
    await registration.showNotification("Time is up", { body: text, tag, icon: "icon-192.png", requireInteraction: true, data: href });
  } catch {}
});

let lock;

async function stayAwake() {
  if (!page.hasAttribute("data-awake") || document.visibilityState !== "visible") return;
  try {
    lock = await navigator.wakeLock?.request("screen");
  } catch {}
}

window.addEventListener("meniscus-awake", ({ text }) => {
  page.toggleAttribute("data-awake", text === "1");
  if (text === "1") stayAwake();
  else lock?.release().catch(() => {});
});
// The browser lets go of it whenever the page is out of sight.
document.addEventListener("visibilitychange", stayAwake);

// ---- Labels: printed by the browser, or drawn as a picture ----

// Once what is printed has been drawn.
window.addEventListener("meniscus-print", () => setTimeout(() => window.print()));

window.addEventListener("meniscus-picture", async () => {
  const label = document.querySelector(".label");
  if (!label) return;
  const { width, height } = label.viewBox.baseVal;
  const dots = 24; // to the millimetre: about 600 to the inch
  const canvas = Object.assign(document.createElement("canvas"), { width: width * dots, height: height * dots });
  const pen = canvas.getContext("2d");
  pen.scale(dots, dots);
  pen.fillStyle = "#fff";
  pen.fillRect(0, 0, width, height);
  pen.fillStyle = "#000";
  const number = (element, name) => Number(element.getAttribute(name));
  for (const line of label.querySelectorAll("text")) {
    pen.font = `${line.getAttribute("font-weight")} ${number(line, "font-size")}px system-ui, sans-serif`;
    pen.fillText(line.textContent, number(line, "x"), number(line, "y"));
  }
  for (const code of label.querySelectorAll("path")) {
    pen.save();
    for (const { matrix } of code.transform.baseVal) pen.transform(matrix.a, matrix.b, matrix.c, matrix.d, matrix.e, matrix.f);
    pen.fill(new Path2D(code.getAttribute("d")));
    pen.restore();
  }
  canvas.toBlob((picture) => give(new File([picture], "label.png", { type: "image/png" })));
});

// A start that fails is for repair.js to mend, and so is one that never begins.
page.setAttribute("data-starting", "");
start().catch((problem) => {
  console.error(problem);
  window.dispatchEvent(Object.assign(new Event("meniscus-start-failed"), { problem }));
});
register().catch((problem) => console.warn("Works online only:", problem));
