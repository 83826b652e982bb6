// Keeps pages on this tablet as they were last seen, so that they open again
// while the shop cannot be reached: to be read, with the time they are from.
// It runs beside the pages (a service worker), which browsers allow only over
// https and on the shop's own computer. Signing in or out forgets all of it.

const PAGES = "axlewright pages";
const PARTS = "axlewright parts";
const MOST = 150; // pages
const LARGEST = 400000; // bytes of a picture
const PATIENCE = 12000; // milliseconds, where there is a kept page to show instead
const OWN = ["bench.css", "bench.js", "away.js", "boxes.js", "live.js", "small.js", "store.js", "mark.svg"].map((name) => "/static/" + name);

self.addEventListener("install", (e) => e.waitUntil((async () => {
  await (await caches.open(PARTS)).addAll(OWN);
  await self.skipWaiting();
})()));
self.addEventListener("activate", (e) => e.waitUntil(self.clients.claim()));

self.addEventListener("fetch", (e) => {
  const url = new URL(e.request.url);
  if (e.request.method !== "GET" || url.origin !== location.origin || url.pathname === "/live") return;
  if (url.pathname === "/sign-in" || url.pathname === "/start") {
    e.waitUntil(caches.delete(PAGES));
    return;
  }
  const isPage = e.request.mode === "navigate" || (e.request.headers.get("Accept") || "").startsWith("text/html");
  if (isPage) e.respondWith(page(e.request));
  else if (["script", "style", "image"].includes(e.request.destination)) e.respondWith(part(e.request, url));
});

async function page(request) {
  const pages = await caches.open(PAGES);
  const kept = request.mode === "navigate" ? await pages.match(request.url) : undefined;
  const asked = fetch(request).then(async (answer) => {
    if (answer.ok && !answer.redirected && (answer.headers.get("Content-Type") || "").startsWith("text/html")) await keep(pages, request.url, answer.clone());
    return answer;
  });
  try {
    return await (kept ? Promise.race([asked, late()]) : asked);
  } catch (fault) {
    asked.catch(() => {});
    if (kept) return marked(kept);
    if (request.mode === "navigate") return away(pages);
    throw fault;
  }
}

const late = () => new Promise((_, no) => setTimeout(() => no(new Error("late")), PATIENCE));

async function keep(pages, url, answer) {
  const headers = new Headers(answer.headers);
  headers.set("X-Kept", new Date().toISOString());
  await pages.put(url, new Response(await answer.blob(), { headers }));
  const all = await pages.keys();
  for (const old of all.slice(0, Math.max(0, all.length - MOST))) await pages.delete(old);
}

// marked tells the page from when it is.
async function marked(kept) {
  const text = await kept.text();
  return new Response(text.replace("<body ", `<body data-kept="${kept.headers.get("X-Kept")}" `), { headers: kept.headers });
}

// away stands for a page that was never opened here, and lists those that were.
async function away(pages) {
  const lines = [];
  for (const request of await pages.keys()) {
    const text = await (await pages.match(request)).text();
    const name = [/class="plate"[^>]*><bdi>([^<]*)</, /<title>([^<]*) · /].map((part) => (text.match(part) || ["", ""])[1]).filter(Boolean).join(": ");
    const path = new URL(request.url);
    if (name) lines.unshift(`<li><a href="${(path.pathname + path.search).replace(/&/g, "&amp;").replace(/"/g, "&quot;")}">${name}</a></li>`);
  }
  const text = `<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>The shop cannot be reached · Axlewright</title><link rel="stylesheet" href="/static/bench.css"></head><body>
<header class="top"><a class="plate" href="/">Axlewright</a><h1>The shop cannot be reached</h1></header>
<main><p>This page has not been opened on this tablet before. Come back into reach of the shop’s network and try again.</p>
<h2>Opened here before</h2><ul class="links">${lines.join("")}</ul></main></body></html>`;
  return new Response(text, { headers: { "Content-Type": "text/html; charset=utf-8", "Content-Security-Policy": "default-src 'none'; style-src 'self'" } });
}

async function part(request, url) {
  const parts = await caches.open(PARTS);
  try {
    const answer = await fetch(request);
    if (answer.status === 200 && Number(answer.headers.get("Content-Length") || 0) < LARGEST) {
      await parts.put(request.url, answer.clone());
      const all = await parts.keys();
      for (const old of all.slice(OWN.length, Math.max(OWN.length, all.length - MOST))) await parts.delete(old);
    }
    return answer;
  } catch (fault) {
    const kept = await parts.match(request.url, { ignoreSearch: url.pathname.startsWith("/static/") });
    if (kept) return kept;
    throw fault;
  }
}
