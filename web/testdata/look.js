// Looks at a page as somebody who checks it for access: returns sentences, one
// for each thing wrong. WCAG 2.2: 1.4.3 contrast, 1.4.10 reflow, 2.5.8 targets
// (here 53 px, some 14 mm, for gloves), 3.3.2 and 4.1.2 labels and names.
(() => {
  const wrong = [];
  const seen = (e) => e.getClientRects().length > 0 && getComputedStyle(e).visibility !== "hidden" && !e.closest(".unseen, .skip");
  const what = (e) => e.outerHTML.replace(/\s+/g, " ").slice(0, 110);
  if (document.documentElement.scrollWidth > innerWidth) wrong.push(`wider than the screen: ${document.documentElement.scrollWidth} of ${innerWidth}`);
  if (document.querySelectorAll("h1").length !== 1) wrong.push("not exactly one h1");
  if (!document.documentElement.lang) wrong.push("no language");
  const ids = new Set();
  for (const e of document.querySelectorAll("[id]")) { if (ids.has(e.id)) wrong.push("id twice: " + e.id); ids.add(e.id); }
  const name = (e) => (e.getAttribute("aria-label") || (e.labels && [...e.labels].map((l) => l.textContent).join(" ")) || e.textContent || e.alt || "").trim();
  for (const e of document.querySelectorAll("a[href], button, input:not([type=hidden]), select, textarea, summary")) {
    if (!seen(e)) continue;
    if (!name(e)) wrong.push("no name: " + what(e));
    if (e.tagName === "A" && e.closest("p, li > b, td, dd, ol, .overridden") && !e.classList.contains("button") && !e.closest(".links, .jobs, .steps")) continue; // in a sentence
    const box = (e.type === "radio" || e.type === "checkbox" ? e.closest("label") : e).getBoundingClientRect();
    if (box.height < 53 || box.width < 53) wrong.push(`small, ${Math.round(box.width)} × ${Math.round(box.height)}: ${what(e)}`);
  }
  for (const e of document.querySelectorAll("img")) if (!e.hasAttribute("alt")) wrong.push("no words for a picture: " + what(e));
  const channel = (c) => (c /= 255) <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  const light = (c) => 0.2126 * channel(c[0]) + 0.7152 * channel(c[1]) + 0.0722 * channel(c[2]);
  const rgb = (text) => text.match(/[\d.]+/g).map(Number);
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const told = new Set();
  while (walk.nextNode()) {
    const e = walk.currentNode.parentElement;
    if (!walk.currentNode.data.trim() || !seen(e) || e.closest("svg, i, :disabled, script")) continue;
    let ground = [250, 248, 242];
    for (let a = e; a; a = a.parentElement) {
      const c = rgb(getComputedStyle(a).backgroundColor);
      if (c.length < 4 || c[3] > 0) { ground = c; break; }
    }
    const [a, b] = [light(rgb(getComputedStyle(e).color)), light(ground)].sort((x, y) => y - x);
    const ratio = (a + 0.05) / (b + 0.05);
    if (ratio < 4.5 && !told.has(e)) { told.add(e); wrong.push(`contrast ${ratio.toFixed(2)}: ${what(e)}`); }
  }
  return wrong;
})()
