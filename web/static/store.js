// The queue of readings on this tablet. It lives in localStorage, so that it
// outlasts a closed page and an empty battery.
//
// An item is {ticket, url, slot, job, who, whoName, fields, taken, state}, where
// fields are the pairs of the form and state is "waiting", "tried", "clash" or
// "refused".

const KEY = "axlewright.queue";
let memory = null; // where the browser has no storage, the queue lasts as long as the page

export function all() {
  if (memory) return memory;
  try {
    return JSON.parse(localStorage.getItem(KEY) || "[]");
  } catch {
    return [];
  }
}

function keep(items) {
  try {
    if (!memory) localStorage.setItem(KEY, JSON.stringify(items));
  } catch {
    memory = items;
  }
  if (memory) memory = items;
  document.dispatchEvent(new CustomEvent("bench:queue"));
}

// put adds an item. One for the same box that has not been tried yet is
// replaced: it was never sent, so nobody has seen it.
export function put(item) {
  const rest = all().filter((x) => !(same(x, item) && x.state !== "tried"));
  keep([...rest, item]);
}

export function same(a, b) {
  return a.job === b.job && a.slot === b.slot && a.who === b.who;
}

export function change(ticket, how) {
  keep(all().map((x) => (x.ticket === ticket ? { ...x, ...how } : x)));
}

export function drop(ticket) {
  keep(all().filter((x) => x.ticket !== ticket));
}

// follow makes later items of the same box follow the entry that was just written.
export function follow(item, seq) {
  keep(all().map((x) => (same(x, item) && x.ticket !== item.ticket && x.state !== "clash"
    ? { ...x, fields: x.fields.map(([k, v]) => (k === "corrects" ? [k, seq] : [k, v])) } : x)));
}

// ticket is a random name; crypto.randomUUID is missing where there is no TLS.
export function ticket() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (b) => b.toString(16).padStart(2, "0")).join("");
}
