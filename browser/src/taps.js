// Times every tap, from the finger to the painted screen that answers it, and what the worker took of that.
window.taps = [];
let from;
addEventListener("click", (event) => (from = event.timeStamp), true);
new MutationObserver(() => {
  if (from === undefined) return;
  const tap = { at: location.hash, from, worker: performance.getEntriesByName("answer").at(-1)?.detail ?? 0 };
  from = undefined;
  requestAnimationFrame(() => {
    const painted = new MessageChannel();
    painted.port1.onmessage = () => window.taps.push({ ...tap, ms: performance.now() - tap.from });
    painted.port2.postMessage("");
  });
}).observe(document.getElementById("main"), { childList: true });
