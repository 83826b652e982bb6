// Saving each box as it is left.
import * as store from "./store.js";
import { kept } from "./away.js";
import { startSmall } from "./small.js";

const me = () => document.body.dataset.who || "";
let sending = false;
let reached = true;

export function startBoxes() {
  document.addEventListener("change", (e) => {
    const form = e.target.closest("form[data-box]");
    if (!form || form.closest(".clash, .earlier") || form.dataset.box === "tap") return;
    const value = form.elements.value;
    // A unit or a reason alone is no reading yet.
    if ((e.target.name === "unit" || e.target.name === "why") && !(value && value.value && value.value.trim())) return;
    // Where a reason is wanted the reading waits for it.
    const why = form.querySelector(".why input");
    if (why && !why.value.trim()) return needsWhy(form, why);
    enqueue(form);
  });
  document.addEventListener("submit", (e) => {
    if (e.target.matches("form[data-note]")) return keepNote(e);
    if (e.target.matches("form[data-photo]")) return sendPhoto(e);
    const form = e.target.closest("form[data-box]");
    if (!form) return;
    e.preventDefault();
    enqueue(form, e.submitter);
    if (form.dataset.box === "tap") goOn(form);
  });
  document.addEventListener("click", (e) => {
    if (e.target.closest("[data-clash=theirs]")) leave(e.target.closest(".box"));
    const again = e.target.closest("[data-again]"), away = e.target.closest("[data-away]");
    if (again) sendAgain(again.dataset.again);
    if (away) putAway(away.dataset.away);
  });
  document.addEventListener("bench:queue", show);
  document.addEventListener("bench:reached", () => { reached = true; send(); });
  window.addEventListener("online", () => send());
  window.addEventListener("storage", show);
  setInterval(() => send(), 5000);
  // What clashed is asked again, to show both: that writes nothing. What was
  // refused is not: it waits for the person, who may have thought better of it.
  for (const x of store.all()) {
    if (x.who === me() && x.state === "clash") store.change(x.ticket, { state: "tried" });
  }
  refill();
  show();
  send();
}

// needsWhy says that the reading waits for its reason.
function needsWhy(form, why) {
  const box = form.closest(".box");
  if (box.querySelector(".needs")) return;
  why.closest(".why").before(line("△ Not yet saved: say why it is changed.", "needs"));
}

const line = (text, name) => Object.assign(document.createElement("p"), { textContent: text, className: name || "" });

// goOn leaves a question that was answered: the page asks the next one.
function goOn(form) {
  document.activeElement.blur();
  history.replaceState(null, "", form.dataset.then);
  form.closest("section").scrollIntoView();
}

// enqueue puts what a form holds into the queue, with the answer that was
// tapped where it has several, and sends.
function enqueue(form, submitter) {
  const box = form.closest(".box");
  const fields = [];
  for (const [name, value] of new FormData(form, submitter)) fields.push([name, String(value)]);
  const instrument = document.getElementById("instrument");
  if (instrument && instrument.value && box.classList.contains("k-figure")) fields.push(["instrument", instrument.value]);
  const text = JSON.stringify(fields);
  if (box.dataset.sent === text && !box.classList.contains("notsaved")) return; // left without a change
  box.dataset.sent = text;
  const item = {
    ticket: store.ticket(), url: new URL(form.action).pathname, job: document.body.dataset.job,
    plate: document.querySelector(".plate").textContent.trim(), box: box.id, slot: box.dataset.slot, who: me(), whoName: document.body.dataset.whoName, fields,
    taken: new Date().toISOString(), state: "waiting",
  };
  // Entries of this box that are still on their way come first.
  const before = store.all().filter((x) => store.same(x, item) && x.state === "tried");
  for (const x of before) if (form.dataset.clash) store.drop(x.ticket);
  store.put(item);
  send();
}

// keepNote puts a note into the queue: it is as hard to write as a reading.
function keepNote(e) {
  e.preventDefault();
  const form = e.target;
  const t = store.ticket();
  const fields = [...new FormData(form)].map(([k, v]) => [k, String(v)]);
  store.put({ ticket: t, url: new URL(form.action).pathname, job: document.body.dataset.job, slot: "note " + t,
    plate: document.querySelector(".plate").textContent.trim(), step: form.closest("[data-step]")?.dataset.step || "",
    who: me(), whoName: document.body.dataset.whoName, fields, taken: new Date().toISOString(), state: "waiting" });
  form.reset();
  send();
}

// sendPhoto keeps the page where a photograph cannot be sent: it stays chosen.
async function sendPhoto(e) {
  e.preventDefault();
  const form = e.target;
  const button = form.querySelector("button");
  const says = form.querySelector("[role=status]");
  button.disabled = true;
  says.textContent = "is being sent …";
  try {
    const answer = await fetch(form.action, { method: "POST", body: new FormData(form), headers: { "X-Bench": "photo" } });
    const text = await answer.text();
    says.textContent = answer.ok ? "" : "✕ not kept: " + text;
    if (answer.ok) {
      form.reset();
      document.dispatchEvent(new CustomEvent("bench:look"));
    }
  } catch {
    says.textContent = "⇡ not sent: the shop cannot be reached. It is still chosen here; try again.";
  } finally {
    button.disabled = false;
  }
}

async function send() {
  if (sending) return;
  sending = true;
  try {
    for (;;) {
      const item = store.all().find((x) => x.who === me() && (x.state === "waiting" || x.state === "tried"));
      if (!item || !(await sendOne(item))) break;
    }
  } finally {
    sending = false;
    show();
  }
}

// sendOne returns whether the shop was reached.
async function sendOne(item) {
  store.change(item.ticket, { state: "tried" });
  const body = new URLSearchParams(item.fields);
  body.set("ticket", item.ticket);
  body.set("taken", item.taken);
  let answer, text;
  try {
    answer = await fetch(item.url, { method: "POST", body, headers: { "X-Bench": "box" }, redirect: "error", signal: AbortSignal.timeout(15000) });
    text = await answer.text();
  } catch {
    reached = false;
    return false;
  }
  if (answer.status >= 500 || answer.status === 401 || answer.status === 429) {
    reached = answer.status === 401 ? "signed out" : false;
    return false;
  }
  reached = true;
  const isBox = (answer.headers.get("Content-Type") || "").startsWith("text/html");
  const fresh = isBox ? parse(text) : null;
  if (answer.ok) {
    store.drop(item.ticket);
    if (fresh) store.follow(item, fresh.dataset.last);
    else document.dispatchEvent(new CustomEvent("bench:saved"));
  } else {
    store.change(item.ticket, { state: answer.status === 409 && fresh ? "clash" : "refused", says: fresh ? (fresh.querySelector(".refused bdi") || fresh).textContent.trim() : text });
  }
  if (fresh) place(item, fresh, answer.ok);
  return true;
}

function parse(html) {
  const t = document.createElement("template");
  t.innerHTML = html;
  return t.content.querySelector(".box");
}

// place puts the answer where the box was, unless somebody is filling it again.
function place(item, fresh, saved) {
  if (item.job !== document.body.dataset.job) return;
  const old = document.getElementById(fresh.id);
  if (!old) return;
  const later = store.all().some((x) => store.same(x, item) && x.ticket !== item.ticket);
  if (later) return;
  const input = old.querySelector("[name=value]:not([type=hidden]):not([type=radio]):not([type=checkbox])");
  const focused = old.contains(document.activeElement) ? document.activeElement : null;
  if (saved && focused && focused === input && input.value !== value(item)) {
    // It is being typed in again: only what it follows changes.
    old.dataset.last = fresh.dataset.last;
    for (const x of old.querySelectorAll("[name=corrects]")) x.value = fresh.dataset.last;
    return;
  }
  const name = focused && focused.name;
  const picked = focused && focused.value;
  old.replaceWith(fresh);
  fresh._was = fresh.outerHTML;
  startSmall(fresh);
  if (name) {
    const again = [...fresh.querySelectorAll("[name]")].find((x) => x.name === name && x.type !== "hidden" && (x.type !== "radio" || x.value === picked));
    if (again) again.focus({ preventScroll: true });
  }
  document.dispatchEvent(new CustomEvent("bench:saved"));
}

const value = (item) => (item.fields.find(([k]) => k === "value") || ["", ""])[1];

// leave lets what stands stand: the reading of this tablet is put away.
function leave(box) {
  for (const x of store.all()) {
    if (x.job === document.body.dataset.job && x.slot === box.dataset.slot && x.state === "clash") store.drop(x.ticket);
  }
  restore(box);
}

// restore shows a box as the shop has it.
function restore(box) {
  for (const x of box.querySelectorAll(".refused, .clash, .again")) x.remove();
  box.classList.remove("notsaved");
  delete box.dataset.sent;
  box._was = "";
  document.dispatchEvent(new CustomEvent("bench:look"));
}

// sendAgain sends what was refused once more, because the person says so.
function sendAgain(ticket) {
  const item = store.all().find((x) => x.ticket === ticket);
  const box = item && boxOf(item);
  if (box) store.change(ticket, { fields: item.fields.map(([k, v]) => [k, k === "corrects" ? box.dataset.last : v]) });
  store.change(ticket, { state: "waiting", says: "" });
  send();
}

// putAway forgets what was refused.
function putAway(ticket) {
  const item = store.all().find((x) => x.ticket === ticket);
  store.drop(ticket);
  const box = item && boxOf(item);
  if (box) restore(box);
}

// boxOf is the box of an item on this page.
function boxOf(item) {
  if (item.job !== document.body.dataset.job) return null;
  return [...document.querySelectorAll(".box")].find((b) => b.dataset.slot === item.slot) || null;
}

// choices lets the person decide about what was refused.
function choices(item) {
  const row = Object.assign(document.createElement("p"), { className: "row again" });
  for (const [key, text] of [["again", "Send it again"], ["away", "Put it away"]]) {
    const b = Object.assign(document.createElement("button"), { type: "button", className: "plain", textContent: text });
    b.dataset[key] = item.ticket;
    row.append(b);
  }
  return row;
}

// refill shows what waits in the boxes of a page that was loaded anew.
function refill() {
  for (const x of store.all()) {
    if (x.who !== me() || x.job !== document.body.dataset.job) continue;
    const box = boxOf(x);
    if (!box) continue;
    for (const [name, v] of x.fields) {
      for (const el of box.querySelectorAll(`form[data-box] [name="${CSS.escape(name)}"]:not([type=hidden])`)) {
        if (el.type === "radio" || el.type === "checkbox") el.checked = x.fields.some(([k, w]) => k === name && w === el.value);
        else el.value = v;
      }
    }
  }
}

// show says what is not yet saved, at the box and at the head of the page.
function show() {
  const items = store.all();
  const mine = items.filter((x) => x.who === me());
  const open = mine.filter((x) => x.state === "waiting" || x.state === "tried");
  for (const box of document.querySelectorAll(".box")) {
    const waits = open.some((x) => x.job === document.body.dataset.job && x.slot === box.dataset.slot);
    box.classList.toggle("unsent", waits);
    const p = box.querySelector(".unsent");
    if (p) p.hidden = !waits;
  }
  for (const x of mine) {
    const box = x.state === "refused" && boxOf(x);
    if (!box || box.querySelector(".again")) continue;
    box.classList.add("notsaved");
    let says = box.querySelector(".refused");
    if (!says) box.querySelector(".says").prepend(says = Object.assign(line(`✕ not saved: ${x.says}`, "refused"), { role: "alert" }));
    says.after(choices(x));
  }
  showHead(items, mine, open);
}

// showHead says at the head of the page what waits, and where.
function showHead(items, mine, open) {
  const head = document.getElementById("queue");
  if (!head) return;
  const lines = [];
  if (kept()) {
    lines.push({ text: `⇡ The shop cannot be reached. This page is as it was at ${kept().toLocaleString("en-GB", { day: "numeric", month: "long", hour: "2-digit", minute: "2-digit" })}. Readings typed here are kept on this tablet; the rest is to look at only. `, to: location.pathname + location.search, link: "Try again" });
  }
  if (open.length && reached !== true) {
    const one = open.length === 1;
    const n = one ? "1 reading is" : `${open.length} readings are`;
    lines.push({ text: reached === "signed out" ? `⇡ ${n} not yet saved: sign in again, ${one ? "it is" : "they are"} kept on this tablet.`
      : `⇡ ${n} not yet saved: the shop cannot be reached. Go on; ${one ? "it is kept on this tablet and sent by itself" : "they are kept on this tablet and sent by themselves"}.` });
  }
  for (const x of mine.filter((x) => (x.state === "clash" || x.state === "refused") && !boxOf(x))) {
    const typed = value(x) || (x.fields.find(([k]) => k === "text") || ["", ""])[1];
    const step = x.step || x.slot.split("/")[0];
    lines.push({ text: `✕ “${typed}” is not saved: ${x.says || "somebody else wrote there too"} `, to: `/job/${x.job}/${step}${x.box ? "#" + x.box : ""}`, link: `Look at it in ${x.plate || "its job"}`, item: x.state === "refused" && x });
  }
  const others = [...new Set(items.filter((x) => x.who !== me()).map((x) => x.whoName))];
  if (others.length) lines.push({ text: `⇡ Readings by ${others.join(", ")} wait on this tablet until they sign in.` });
  const told = JSON.stringify(lines);
  if (head.dataset.told !== told) {
    head.dataset.told = told;
    head.replaceChildren(...lines.flatMap((l) => {
      const p = line(l.text);
      if (l.link) p.append(Object.assign(document.createElement("a"), { href: l.to, textContent: l.link }));
      return l.item ? [p, choices(l.item)] : [p];
    }));
  }
  head.hidden = lines.length === 0;
}
