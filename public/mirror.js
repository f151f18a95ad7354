// What is typed is safe within a second. A browser writes local storage to disk when it likes: Chromium after five
// seconds, and after a busy minute or a large import minutes later. Killed before, it forgets. So each write is put
// in IndexedDB too, which writes to disk when told to; what local storage then lacks is put back at the next start.
//
// Local storage stays the store. Its writes are counted, under COUNT, and reach the disk in order: what was mirrored
// under a higher count than local storage has is what it lost, whether a text or the removal of one.

const PREFIX = "meniscus/";
// The app's own trial of whether anything can be saved.
const TRIAL = "meniscus/trial";
const COUNT = "meniscus-writes";
const WRITES = "writes";
// By then any browser has written it: Chromium allows itself 5 MB an hour.
const DAY = 86400000;

let local;
try {
  local = localStorage;
} catch {}
const counted = () => Number(local[COUNT]) || 0;

// ---- The mirror ----

let opened;

function open() {
  return new Promise((resolve, reject) => {
    const asked = indexedDB.open("meniscus", 1);
    asked.onupgradeneeded = () => {
      const store = asked.result.createObjectStore(WRITES, { keyPath: "key" });
      for (const order of ["count", "at"]) store.createIndex(order, order);
    };
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error);
  });
}

// Does something with the mirrored writes, of which the last of each key is kept. It is done when it is on disk.
async function dealt(mode, todo) {
  const database = await (opened ??= open());
  return new Promise((resolve, reject) => {
    const deal = database.transaction(WRITES, mode, { durability: "strict" });
    const asked = todo(deal.objectStore(WRITES));
    deal.oncomplete = () => resolve(asked?.result);
    deal.onabort = () => reject(deal.error);
  });
}

// Phones close databases of pages in the background: then it is opened anew.
const mirrored = (mode, todo) =>
  dealt(mode, todo).catch(() => {
    opened = undefined;
    return dealt(mode, todo);
  });

// ---- Each write, as it is made ----

let fresh = new Map();
let isBusy = false;

function note(key, text) {
  const write = { key, text, count: counted() + 1, at: Date.now() };
  try {
    local[COUNT] = write.count;
  } catch {
    // Not a letter fits. The last write of each key is still the last.
  }
  fresh.set(key, write);
  // After the page is drawn, letters typed fast together; and one at a time, however slow the disk is.
  if (!isBusy) setTimeout(mirror, 100);
  isBusy = true;
}

async function mirror() {
  const writes = [...fresh.values()];
  fresh = new Map();
  await mirrored("readwrite", (store) => writes.forEach((write) => store.put(write))).catch(() => {});
  isBusy = fresh.size > 0;
  if (isBusy) mirror();
}

// The app calls these two and no others, so nothing in it has to know. A write that is refused is not mirrored.
for (const name of ["setItem", "removeItem"]) {
  const write = Storage.prototype[name];
  Storage.prototype[name] = function (key, text) {
    write.apply(this, arguments);
    if (this === local && key.startsWith(PREFIX) && key !== TRIAL) note(key, text);
  };
}

// Other tabs hear of each write itself.
addEventListener("storage", (event) => event.key === COUNT && event.stopImmediatePropagation());

// ---- At the next start ----

function stamp(text) {
  try {
    const { rev = 0, at = 0 } = JSON.parse(text);
    return { rev, at };
  } catch {}
}

// Whether the store has what was written after this, by a Meniscus that did not count.
function isLater({ key, text, at }) {
  const there = stamp(local[key]);
  const here = stamp(text) ?? { rev: 0, at };
  return there && there.rev > here.rev && there.at > here.at;
}

let isLate = false;

async function restore() {
  const range = IDBKeyRange.lowerBound(counted(), true);
  const found = await mirrored("readonly", (store) => store.index("count").getAll(range));
  if (isLate) return;
  // Counted again: another tab may be typing.
  const count = counted();
  const lost = found.filter((write) => write.count > count);
  if (!lost.length) return setTimeout(trim, 10000);
  for (const write of lost) {
    if (isLater(write)) continue;
    if (write.text === undefined) delete local[write.key];
    else local[write.key] = write.text;
  }
  // Last, and the mirror is left as it is: should it be killed again, all of this is put back once more.
  local[COUNT] = Math.max(...lost.map((write) => write.count));
}

async function trim() {
  const old = await mirrored("readonly", (store) => store.index("at").getAllKeys(IDBKeyRange.upperBound(Date.now() - DAY)));
  if (old.length) await mirrored("readwrite", (store) => old.forEach((key) => store.delete(key)));
}

// Done when the store is as it was left. A browser without a mirror goes on without, as does one that takes too long.
export const restored = Promise.race([
  local && restore().catch(() => {}),
  new Promise((resolve) => setTimeout(resolve, 3000)),
]).then(() => (isLate = true));
