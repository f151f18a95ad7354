// Says why a start failed, and offers a way out. A file of its own, because it must run where boot.js does not.

const app = document.getElementById("app");
const isOpen = () => !("first" in app.dataset);

// The words for what went wrong, and whether other files would help.
function explained(problem) {
  if (typeof WebAssembly !== "object")
    return ["This browser has no WebAssembly, which Meniscus needs. A newer browser will run it.", false];
  if (problem === "slow") return ["Meniscus is taking long to open. Wait a little, or let it be repaired.", true];
  if (problem instanceof WebAssembly.CompileError || problem instanceof WebAssembly.LinkError || problem instanceof SyntaxError)
    return ["Meniscus could not start: a part of it is damaged on this device.", true];
  if (problem instanceof TypeError) return ["Meniscus could not start: a part of it could not be fetched.", true];
  return ["Meniscus could not start: it stopped while it opened.", true];
}

function offer(problem) {
  const [words, canRepair] = explained(problem);
  const make = (tag, className, text) => Object.assign(document.createElement(tag), { className, textContent: text });
  // The first screen goes, and what was drawn half way: nothing in it would answer.
  const line = make("output", "strip tall blank", "");
  const main = make("main", "", "");
  line.append(make("span", "also long", words));
  app.dataset.first = "failed";
  app.replaceChildren(line, main);
  if (!canRepair) return;
  const button = make("button", "btn", "Repair");
  const said = make("p", "remark", "Repair fetches Meniscus again, which needs a network. What you have typed and saved stays as it is.");
  said.setAttribute("role", "status");
  button.type = "button";
  button.addEventListener("click", () => {
    button.disabled = true;
    said.textContent = "Fetching Meniscus again. What you have typed and saved stays as it is.";
    repair().catch(() => {
      button.disabled = false;
      said.textContent = "Meniscus can't be reached now. Find a network, then tap Repair again. Nothing was changed, and what you have typed and saved stays as it is.";
    });
  });
  const actions = make("p", "actions", "");
  actions.append(button);
  main.replaceChildren(said, actions);
}

const wasKept = navigator.serviceWorker?.controller;

async function repair() {
  // A worker that came in charge since has checked every part.
  if (!wasKept && navigator.serviceWorker?.controller) return location.reload();
  // Without a network, or behind the login page of one, what is here may still be better than nothing.
  const worker = await fetch("service-worker.js", { cache: "no-store" });
  if (!worker.ok || !worker.headers.get("content-type")?.includes("javascript")) throw new Error("not reached");
  const scope = new URL("./", location.href).href;
  const registration = await navigator.serviceWorker?.getRegistration();
  if (registration?.scope === scope) await registration.unregister();
  for (const name of (await window.caches?.keys()) ?? [])
    if (name.startsWith(`meniscus ${scope} `)) await caches.delete(name);
  // What the browser has cached by itself is fetched anew too; the worker, in its last minute, lets this pass.
  const parts = [...document.querySelectorAll("script[src], link[href]")].flatMap((part) => [part.src || part.href, part.dataset.rest ?? []].flat());
  await Promise.allSettled(parts.map((part) => fetch(part, { cache: "reload" })));
  location.reload();
}

window.addEventListener("meniscus-start-failed", ({ problem }) => offer(problem));
// A script that is missing, or that cannot be read.
window.addEventListener(
  "error",
  ({ target, error }) => {
    if (!isOpen() && (target === window || target.tagName === "SCRIPT")) offer(target === window ? error : new TypeError());
  },
  true,
);
const isFine = () => isOpen() || app.dataset.first === "failed";
// All scripts have run by now. One that came empty fails in silence.
window.addEventListener("load", () => isFine() || document.documentElement.hasAttribute("data-starting") || offer(new SyntaxError()));
setTimeout(() => isFine() || offer("slow"), 20000);
