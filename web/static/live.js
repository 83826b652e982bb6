// Seeing what other tablets write: a stream says that something has changed,
// the page fetches itself and replaces the parts that differ.
import * as store from "./store.js";
import { startSmall } from "./small.js";

let stream = null;
let timer = 0;

export function startLive() {
  if (!document.body.hasAttribute("data-live")) return;
  for (const el of document.querySelectorAll("[data-live][id]")) el._was = el.outerHTML;
  document.addEventListener("bench:look", () => soon(50));
  document.addEventListener("bench:saved", () => soon(300));
  document.addEventListener("visibilitychange", () => (document.hidden ? close() : open()));
  window.addEventListener("pagehide", close);
  window.addEventListener("pageshow", (e) => { if (e.persisted) { open(); soon(50); } });
  open();
  if (document.querySelector("[data-poll]")) setInterval(() => soon(0), 1500);
}

function open() {
  if (stream || document.hidden) return;
  const job = document.body.dataset.job;
  stream = new EventSource("/live" + (job ? "?job=" + encodeURIComponent(job) : ""));
  let first = true;
  stream.addEventListener("hello", () => {
    document.dispatchEvent(new CustomEvent("bench:reached"));
    if (!first) soon(50); // the stream was lost: something may have been missed
    first = false;
  });
  stream.addEventListener("change", () => soon(150));
}

function close() {
  if (stream) stream.close();
  stream = null;
}

function soon(ms) {
  clearTimeout(timer);
  timer = setTimeout(look, ms);
}

async function look() {
  let text;
  try {
    const answer = await fetch(location.href, { headers: { Accept: "text/html" }, signal: AbortSignal.timeout(15000) });
    if (!answer.ok || answer.redirected) return;
    text = await answer.text();
  } catch {
    return;
  }
  const fresh = new DOMParser().parseFromString(text, "text/html");
  for (const el of fresh.querySelectorAll("[data-live][id]")) replace(el);
}

function replace(fresh) {
  const old = document.getElementById(fresh.id);
  if (!old || fresh.parentElement.closest("[data-live][id]")) return;
  const html = fresh.outerHTML;
  if (old._was === html) return;
  if (old.contains(document.activeElement) && document.activeElement.matches("input,select,textarea")) return;
  if (old.querySelector(".refused, .clash")) return;
  if (old.dataset.slot && store.all().some((x) => x.slot === old.dataset.slot && x.job === document.body.dataset.job)) return;
  const opened = [...old.querySelectorAll("details[open]")].map((d) => d.id).filter(Boolean);
  const top = old.querySelector(".focus-here, :focus");
  const name = top && top.id;
  const node = document.importNode(fresh, true);
  node._was = html;
  for (const d of node.querySelectorAll("details[id]")) if (opened.includes(d.id)) d.open = true;
  old.replaceWith(node);
  startSmall(node);
  if (name) document.getElementById(name)?.focus({ preventScroll: true });
}
