// The worker: holds the program, off the thread that paints.

const here = new URL(".", import.meta.url);

// What the keeper unpacked once. Where there is none, as over plain http, it is unpacked at every start.
async function files() {
  try {
    const kept = await Promise.all(UNPACKED.map(([name]) => caches.match(new URL(name, here))));
    if (kept.every(Boolean)) return kept;
  } catch {
    // There is nothing to keep files in here, or this window may not look.
  }
  return unpacked(here);
}

// The program, and where its herbal is to be had until it has read it.
async function start() {
  const [code, herbal] = await files();
  // No import is given: the program has no way out but its answers.
  const { instance } = await WebAssembly.instantiateStreaming(code, {});
  unread = herbal;
  return instance.exports;
}

// The first screen does not wait for this: it is done once that was shown.
async function read() {
  const herbal = new Uint8Array(await (await unread).arrayBuffer());
  if (program.read(put(program, herbal), herbal.length) !== 1) throw new Error("herbal not read");
  unread = undefined;
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

const random = (length) => crypto.getRandomValues(new Uint8Array(length));
const letters = () => Array.from(random(16), (byte) => byte.toString(16).padStart(2, "0")).join("");

// The clock on the wall, as `2027-05-01T10:40:00`, and letters that nobody can guess.
function moment() {
  const at = new Date();
  const wall = new Date(at - at.getTimezoneOffset() * 60_000).toISOString().slice(0, 19);
  return { now: wall, ms: at.getTime(), zone: Intl.DateTimeFormat().resolvedOptions().timeZone, seed: letters() };
}

// ---- what is kept ----------------------------------------------------------------------------

const done = (request) =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

function opened() {
  const request = indexedDB.open("trug", 2);
  request.onupgradeneeded = ({ oldVersion }) => {
    const database = request.result;
    if (oldVersion < 1) {
      database.createObjectStore("lines", { autoIncrement: true });
      database.createObjectStore("device").add(letters(), "name");
    }
    database.createObjectStore("keys", { keyPath: "book" });
    database.createObjectStore("sealed", { keyPath: ["book", "seal"] });
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

// One transaction an act: all that it writes is on the disk, or nothing is.
function write(database, stores, act) {
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(stores, "readwrite", { durability: "strict" });
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error);
    act(...stores.map((name) => transaction.objectStore(name)));
  });
}

async function keep(database, kept) {
  const plain = kept.filter(({ seal }) => seal === undefined);
  const answers = await Promise.all(kept.filter(({ seal }) => seal !== undefined).map(enciphered));
  await write(database, ["lines", "sealed"], (lines, sealed) => {
    for (const line of plain) lines.add(line);
    for (const answer of answers) sealed.put(answer);
  });
}

// ---- what people said of themselves ----------------------------------------------------------

// Each book has a key of its own, which lies on the disk only wrapped by the passphrase: AES-GCM (NIST SP
// 800-38D) under PBKDF2 (RFC 8018) with as many rounds as OWASP asks for with
// SHA-256 (Password Storage Cheat Sheet, 2023).
const ROUNDS = 600_000;
const CIPHER = { name: "AES-GCM", length: 256 };

// The keys of the books that are open, and what was read of each.
const open = new Map();

async function wrapper(passphrase, salt) {
  const words = new TextEncoder().encode(passphrase.normalize("NFKC"));
  const base = await crypto.subtle.importKey("raw", words, "PBKDF2", false, ["deriveKey"]);
  const how = { name: "PBKDF2", hash: "SHA-256", salt, iterations: ROUNDS };
  return crypto.subtle.deriveKey(how, base, CIPHER, false, ["wrapKey", "unwrapKey"]);
}

const gcm = (iv, more) => ({ name: "AES-GCM", iv, ...more });

// Opens a book with its passphrase; the first one that is given makes its key.
async function unlock(database, book, passphrase) {
  if (passphrase === "") return false;
  const known = await done(database.transaction("keys").objectStore("keys").get(book));
  const { salt, iv } = known ?? { salt: random(16), iv: random(12) };
  const wrapping = await wrapper(passphrase, salt);
  const uses = ["encrypt", "decrypt"];
  if (known) {
    try {
      const key = await crypto.subtle.unwrapKey("raw", known.wrapped, wrapping, gcm(iv), CIPHER, false, uses);
      open.set(book, { key, salt });
    } catch {
      return false;
    }
    return true;
  }
  const key = await crypto.subtle.generateKey(CIPHER, true, uses);
  const wrapped = await crypto.subtle.wrapKey("raw", key, wrapping, gcm(iv));
  await write(database, ["keys"], (keys) => keys.add({ book, salt, iv, wrapped }));
  open.set(book, { key, salt });
  return true;
}

// Answers of one person cannot be put in the place of another's.
const bound = (book, seal) => ({ additionalData: new TextEncoder().encode(JSON.stringify([book, seal])) });

async function enciphered({ book, seal, line }) {
  const iv = random(12);
  const words = new TextEncoder().encode(line);
  const answer = await crypto.subtle.encrypt(gcm(iv, bound(book, seal)), open.get(book).key, words);
  return { book, seal, iv, answer };
}

// What cannot be deciphered was not said.
async function deciphered({ key }, { book, seal, iv, answer }) {
  const read = crypto.subtle.decrypt(gcm(iv, bound(book, seal)), key, answer);
  return new TextDecoder().decode(await read.catch(() => new Uint8Array()));
}

// Tells the program what lies in the books that are open, where that is not what it knows: another window
// may have written, or destroyed the key.
async function reopen(database) {
  for (const [book, opened] of open) {
    const [entry, found] = await Promise.all([
      done(database.transaction("keys").objectStore("keys").get(book)),
      done(database.transaction("sealed").objectStore("sealed").getAll(IDBKeyRange.bound([book], [book, []]))),
    ]);
    if (`${entry?.salt}` !== `${opened.salt}`) {
      open.delete(book);
      tell(program, { opened: { book, lines: null } });
      continue;
    }
    const read = found.map(({ seal, iv }) => `${seal} ${iv}`).join();
    if (read === opened.read) continue;
    const lines = await Promise.all(found.map((answer) => deciphered(opened, answer)));
    tell(program, { opened: { book, lines } });
    opened.read = read;
  }
}

async function seal(database, { close, destroy }) {
  if (close) open.delete(close.book);
  if (!destroy) return;
  const { book, seal } = destroy;
  await write(database, ["keys", "sealed"], (keys, sealed) => {
    if (seal !== null) return sealed.delete([book, seal]);
    sealed.delete(IDBKeyRange.bound([book], [book, []]));
    keys.delete(book);
  });
  if (seal === null) open.delete(book);
}

// ---- one after the other ---------------------------------------------------------------------

let program;
let unread;
let seen = 0;

// Where it stands how much of each book was handed out.
const SAVED = IDBKeyRange.bound(["saved"], ["saved", []]);

async function answer({ to, form, files, opens, habits }) {
  const begun = program ?? starting ?? start();
  starting = undefined;
  const [database, running] = await Promise.all([stored, begun]);
  program = running;
  // Another window may have written since. While this one writes, no other does.
  return alone(async () => {
    await catchUp(database);
    const said = form && (await unsealed(database, form));
    const visit = { to, form: said ?? null, files: files ?? [], opens: opens ?? null, habits };
    let shown = tell(program, { visit: { ...visit, ...moment() } });
    if (shown.unread) {
      await read();
      shown = tell(program, { visit: { ...visit, ...moment() } });
    }
    try {
      if (shown.seal) await seal(database, shown.seal);
      if (shown.keep) await keep(database, shown.keep);
      if (shown.saved) {
        const { saved } = shown;
        await write(database, ["device"], (device) => device.put(saved, ["saved", saved.book]));
      }
    } catch (error) {
      // The program holds what the disk does not: it starts anew from the disk.
      console.error(error);
      program = undefined;
      seen = 0;
      for (const opened of open.values()) opened.read = undefined;
      return { failed: "not-kept-now" };
    }
    if (shown.keep) seen = (await since(database, seen)).last;
    return { shown, holds: seen > 0 };
  });
}

// Over plain http there is no lock, and whoever opens two windows there has to write in one alone.
const alone = (act) => (navigator.locks ? navigator.locks.request("trug-lines", act) : act());

async function catchUp(database) {
  const { last, lines } = await since(database, seen);
  if (lines.length > 0 || seen === 0) {
    const known = database.transaction("device").objectStore("device");
    const [device, saved] = await Promise.all([done(known.get("name")), done(known.getAll(SAVED))]);
    tell(program, { kept: { device, lines, saved } });
    seen = last;
  }
  await reopen(database);
}

// A passphrase stays here: the program hears only whether it opened what it was given for.
async function unsealed(database, form) {
  const said = new Map(form);
  const passphrase = said.get("passphrase");
  if (passphrase === undefined) return form;
  const opens = await unlock(database, said.get("seals"), passphrase);
  await reopen(database);
  return [["opened", opens ? "yes" : "no"]];
}

// Both begin before anything is asked.
const stored = opened();
let starting = start();

let before = Promise.resolve();
onmessage = ({ data: { id, ...visit } }) => {
  before = before.then(async () => {
    const began = performance.now();
    try {
      const answered = await answer(visit);
      postMessage({ id, ...answered, took: performance.now() - began });
      if (unread) await read();
    } catch (error) {
      console.error(error);
      postMessage({ id, failed: "not-started" });
    }
  });
};
