// Times every tap, from the finger to the screen that answers it, and what the worker took of that.
window.taps = [];
let from;
for (const name of ["click", "submit"]) addEventListener(name, () => (from ??= performance.now()), true);
new MutationObserver(() => {
  if (from === undefined) return;
  window.taps.push({ at: location.hash, ms: performance.now() - from });
  from = undefined;
}).observe(document.getElementById("main"), { childList: true });
