// Starts the worker before the page is read to its end: it has more to do than the page.

export const worker = new Worker(new URL("worker.js", import.meta.url), { type: "module" });
