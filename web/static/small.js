// Small helps: units that are remembered, steps folded by width.

function recall(key) {
  try { return localStorage.getItem(key); } catch { return null; }
}

function remember(key, value) {
  try { localStorage.setItem(key, value); } catch { /* then it is asked again */ }
}

let started = false;

export function startSmall(root) {
  // The unit typed last is offered again, until a reading says otherwise.
  for (const s of root.querySelectorAll("select[data-dim]:not([data-set])")) {
    const last = recall("axlewright.unit." + s.dataset.dim);
    if (last && [...s.options].some((o) => o.value === last)) s.value = last;
  }
  for (const s of root.querySelectorAll("[data-remember]")) {
    const last = recall("axlewright." + s.dataset.remember);
    if (last !== null && [...s.options].some((o) => o.value === last)) s.value = last;
  }
  const fold = root.querySelector("#steps-fold");
  if (fold && matchMedia("(min-width: 900px)").matches) fold.open = true;
  if (started) return;
  started = true;
  document.addEventListener("change", (e) => {
    if (e.target.matches("select[data-dim]")) remember("axlewright.unit." + e.target.dataset.dim, e.target.value);
    if (e.target.matches("[data-remember]")) remember("axlewright." + e.target.dataset.remember, e.target.value);
  });
  // "Next" on the keyboard of a tablet goes to the next box instead of sending a form.
  document.addEventListener("keydown", (e) => {
    if (e.key !== "Enter" || !e.target.matches("form[data-box] input[name=value]:not([type=radio]):not([type=checkbox])")) return;
    e.preventDefault();
    const inputs = [...document.querySelectorAll(".box input[name=value]:not([type=hidden]):not([type=radio]):not([type=checkbox]), .box textarea")];
    const next = inputs[inputs.indexOf(e.target) + 1];
    if (next) next.focus(); else e.target.blur();
  });
}
