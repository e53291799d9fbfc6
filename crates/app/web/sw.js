// Keeps every file of one version, so that the app starts without a network, and what comes packed as it
// is once it is unpacked: that is done once a version. VERSION and FILES are written in when the app is put
// together.

const KEPT = `trug-${VERSION}`;

addEventListener("install", (event) => {
  const all = async () => {
    const cache = await caches.open(KEPT);
    const folder = new URL(`${VERSION}/`, location);
    const put = async ([name], answer) => cache.put(new URL(name, folder), await answer);
    const answers = unpacked(folder);
    const fresh = FILES.map((file) => new Request(file, { cache: "reload" }));
    await Promise.all([cache.addAll(fresh), ...UNPACKED.map((file, at) => put(file, answers[at]))]);
  };
  event.waitUntil(all());
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
