// Keeps every file of one version, so that the app starts without a network. VERSION and FILES are
// written in when the app is put together.

const KEPT = `trug-${VERSION}`;

addEventListener("install", (event) => {
  const fresh = FILES.map((file) => new Request(file, { cache: "reload" }));
  event.waitUntil(caches.open(KEPT).then((cache) => cache.addAll(fresh)));
});

addEventListener("activate", (event) => {
  const tidy = async () => {
    const old = (await caches.keys()).filter((name) => name.startsWith("trug-") && name !== KEPT);
    await Promise.all(old.map((name) => caches.delete(name)));
    await clients.claim();
  };
  event.waitUntil(tidy());
});

addEventListener("message", ({ data }) => {
  if (data === "take over") skipWaiting();
});

addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== location.origin) return;
  const answer = async () => {
    const cache = await caches.open(KEPT);
    const kept = await cache.match(request.mode === "navigate" ? "./" : request, { ignoreSearch: true });
    return kept ?? fetch(request);
  };
  event.respondWith(answer());
});
