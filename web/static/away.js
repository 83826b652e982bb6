// Pages that open again without the shop: see keep.js.

export function startAway() {
  if (navigator.serviceWorker) {
    // The first page is asked for once more, so that it is kept too.
    navigator.serviceWorker.addEventListener("controllerchange", () => fetch(location.href, { headers: { Accept: "text/html" } }).catch(() => {}), { once: true });
    navigator.serviceWorker.register("/static/keep.js", { scope: "/" }).catch(() => { /* then pages need the shop */ });
  }
  if (!kept()) return;
  // What would need the shop is not offered.
  for (const b of document.querySelectorAll("form:not([data-box]):not([data-note]):not([method=get]) button, form[data-photo] input")) {
    if (!b.closest("form").matches("form[action='/search']")) b.disabled = true;
  }
  document.addEventListener("bench:reached", anew);
  setInterval(() => fetch(location.href, { headers: { Accept: "text/html" } }).then((answer) => { if (answer.ok) anew(); }, () => {}), 4000);
}

// anew loads the page again, unless something is being typed in it.
function anew() {
  if (!document.activeElement || !document.activeElement.matches("input, textarea, select")) location.reload();
}

// kept is the time that the page is from, where it was kept on this tablet.
export function kept() {
  const at = document.body.dataset.kept;
  return at ? new Date(at) : null;
}
