// Written into the page, behind the first screen, which the app takes the place of.
{
  const app = document.getElementById("app");
  const at = location.hash || "#/service/measure";

  // ---- What stands there is so, or it does not stand there ----

  // A strip that boot.js kept, made again.
  const made = (kept) => {
    if (typeof kept === "string") return kept;
    const [space, tag, attributes, children] = kept;
    const element = document.createElementNS(space, tag);
    for (const [name, value] of attributes) element.setAttribute(name, value);
    element.append(...children.map(made));
    return element;
  };

  // By a keyboard no pad is up: src/app/browser.rs asks the same.
  const byKeyboard = document.getElementById("first-by-keyboard");
  if (matchMedia("(hover: hover) and (pointer: fine), (max-height: 299px)").matches) app.replaceChildren(byKeyboard.content);
  byKeyboard.remove();

  // The first screen is Measure as nobody has typed in it. Where another comes, or one with texts of a person's own, only
  // what is the same there stays in sight, and on the strip what it said last; then nothing but the strip.
  let keys = [];
  let last;
  try {
    keys = Object.keys(localStorage).filter((key) => key.startsWith("meniscus/"));
    last = JSON.parse(localStorage.getItem("meniscus-last"));
  } catch {}
  const isMeasure = at === "#/service/measure";
  if (keys.length || !isMeasure) {
    app.dataset.first = isMeasure && !keys.includes("meniscus/tool/shelf") ? "kept" : "opening";
    const strip = app.querySelector("output");
    const build = document.querySelector("link[data-boot=wasm]").getAttribute("href");
    const words = ["http://www.w3.org/1999/xhtml", "span", [["class", "also verdict"]], ["Opening the bench"]];
    try {
      strip.replaceChildren(made(words));
      strip.className = "strip blank";
      if (last?.at === at && last.build === build) strip.replaceWith(made(last.strip));
    } catch {
      // Not as it was kept: the words stay.
    }
  }

  // ---- Taps and typing before the app stands are kept in order, and done again in it. What does more than type on the
  // first screen waits until the rest of the app is here ----

  const kept = [];
  let isOpen = false;
  const label = (element) => element.getAttribute("aria-label") ?? element.textContent;
  const alike = (tag, words) => [...app.querySelectorAll(tag)].filter((element) => label(element) === words);
  const keep = (event) => {
    const target = event.isTrusted && event.target.closest("button, a, label, input, select, textarea, summary");
    // What repair.js offers is done at once.
    if (!target || app.dataset.first === "failed") return;
    const isTyping = target.matches(".pad *, label, input, select, textarea");
    if (isTyping && isOpen && !kept.length) return;
    const { id, localName: tag, value } = target;
    const words = label(target);
    kept.push({ type: event.type, isTyping, id, tag, value, words, turn: alike(tag, words).indexOf(target) });
    event.stopPropagation();
    if (event.type === "click") event.preventDefault();
  };
  const types = ["click", "input", "change"];
  types.forEach((type) => app.addEventListener(type, keep, true));

  // Time for the app to draw, and then to put the caret where a screen begins.
  const drawn = () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
  const once = (name) => new Promise((resolve) => window.addEventListener(name, resolve, { once: true }));
  const whole = once("meniscus-whole");
  const again = ({ type, id, tag, value, words, turn }) => {
    const target = id ? document.getElementById(id) : alike(tag, words)[turn];
    if (!target) return;
    if ("selectionStart" in target) target.focus();
    if (type === "click") return target.click();
    target.value = value;
    target.dispatchEvent(new Event(type, { bubbles: true }));
  };
  // One stays among those that are kept until it is done: what comes meanwhile stands behind it.
  const doAgain = async () => {
    for (let step; (step = kept[0]); kept.shift()) {
      if (!step.isTyping) await whole;
      again(step);
      await drawn();
    }
  };
  once("meniscus-opened").then(async () => {
    delete app.dataset.first;
    await new Promise(requestAnimationFrame);
    isOpen = true;
    await doAgain();
    await whole;
    await doAgain();
    types.forEach((type) => app.removeEventListener(type, keep, true));
  });
}
