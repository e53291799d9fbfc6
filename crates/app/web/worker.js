// The worker: holds the program, off the thread that paints.

const here = new URL(".", import.meta.url);

async function unpacked(name) {
  const answer = await fetch(new URL(name, here));
  if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
  const plain = answer.body.pipeThrough(new DecompressionStream("gzip"));
  return new Uint8Array(await new Response(plain).arrayBuffer());
}

async function start() {
  const [code, herbal] = await Promise.all([unpacked("app.wasm.gz"), unpacked("herbal.gz")]);
  // No import is given: the program has no way out but its answers.
  const { instance } = await WebAssembly.instantiate(code, {});
  const program = instance.exports;
  if (program.open(put(program, herbal), herbal.length) !== 1) throw new Error("herbal not read");
  return program;
}

function put(program, bytes) {
  const at = program.room(bytes.length);
  new Uint8Array(program.memory.buffer, at, bytes.length).set(bytes);
  return at;
}

function tell(program, message) {
  const bytes = new TextEncoder().encode(JSON.stringify(message));
  const at = program.visit(put(program, bytes), bytes.length);
  const length = new DataView(program.memory.buffer).getUint32(at, true);
  const reply = new TextDecoder().decode(new Uint8Array(program.memory.buffer, at + 4, length));
  program.done(at, length);
  return JSON.parse(reply);
}

// The clock on the wall, as `2027-05-01T10:40:00`, and letters that nobody can guess.
function moment() {
  const at = new Date();
  const wall = new Date(at - at.getTimezoneOffset() * 60_000).toISOString().slice(0, 19);
  return { now: wall, ms: at.getTime(), zone: Intl.DateTimeFormat().resolvedOptions().timeZone, seed: crypto.randomUUID() };
}

// ---- what is kept ----------------------------------------------------------------------------

const done = (request) =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

function opened() {
  const request = indexedDB.open("trug", 1);
  request.onupgradeneeded = () => {
    request.result.createObjectStore("lines", { autoIncrement: true });
    request.result.createObjectStore("device").add(crypto.randomUUID(), "name");
  };
  return done(request);
}

// Every line that was kept after this key, with the last key.
async function since(database, key) {
  const lines = database.transaction("lines").objectStore("lines");
  const range = IDBKeyRange.lowerBound(key, true);
  const [keys, found] = await Promise.all([done(lines.getAllKeys(range)), done(lines.getAll(range))]);
  return { last: keys.at(-1) ?? key, lines: found };
}

// One transaction an act: all of its lines are on the disk, or none is.
function keep(database, lines) {
  return new Promise((resolve, reject) => {
    const transaction = database.transaction("lines", "readwrite", { durability: "strict" });
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error);
    for (const line of lines) transaction.objectStore("lines").add(line);
  });
}

// ---- one after the other ---------------------------------------------------------------------

let program;
let seen = 0;

async function answer({ to, form, files }) {
  const database = await (stored ??= opened());
  program ??= await start();
  // Another window may have written since. While this one writes, no other does.
  return navigator.locks.request("trug-lines", async () => {
    const { last, lines } = await since(database, seen);
    if (lines.length > 0 || seen === 0) {
      const device = await done(database.transaction("device").objectStore("device").get("name"));
      tell(program, { kept: { device, lines } });
      seen = last;
    }
    const shown = tell(program, { visit: { to, form: form ?? null, files: files ?? [], ...moment() } });
    if (shown.keep) {
      try {
        await keep(database, shown.keep);
      } catch (error) {
        // The program holds what the disk does not: it starts anew from the disk.
        console.error(error);
        program = undefined;
        seen = 0;
        return { failed: "not-kept-now" };
      }
      seen = (await since(database, seen)).last;
    }
    return { shown, holds: seen > 0 };
  });
}

let stored;
let before = Promise.resolve();
onmessage = ({ data: { id, ...visit } }) => {
  before = before.then(async () => {
    try {
      postMessage({ id, ...(await answer(visit)) });
    } catch (error) {
      console.error(error);
      postMessage({ id, failed: "not-started" });
    }
  });
};
