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

const STORES = ["lines", "device", "keys", "sealed"];

const stores = (transaction) => Object.fromEntries(STORES.map((name) => [name, transaction.objectStore(name)]));

// How often anything was written. Who knows of every writing knows the whole disk.
let round;

// Whoever writes tells the other windows, which look before they answer again.
const others = new BroadcastChannel("trug");
let heard = 0;
others.onmessage = () => {
  heard += 1;
  round = undefined;
};

// Another window wrote since this one looked.
const OVERTAKEN = new Error("another window wrote");

// One transaction an act: all that it writes is on the disk, or nothing is. What another window wrote
// meanwhile may change what is to be written: then nothing is, either.
function write(database, act) {
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(STORES, "readwrite", { durability: "strict" });
    const all = stores(transaction);
    let now;
    let why;
    all.device.get("round").onsuccess = ({ target }) => {
      now = target.result ?? 0;
      if (now === round) {
        all.device.put(now + 1, "round");
        act(all);
      } else {
        why = OVERTAKEN;
        transaction.abort();
      }
    };
    transaction.oncomplete = () => {
      others.postMessage(null);
      if (round === now) round = now + 1;
      resolve();
    };
    transaction.onabort = () => reject(why ?? transaction.error);
  });
}

// Keeps what an act asks for, and does with answers what it asks for.
async function keep(database, { keep = [], saved, seal = {} }) {
  const answers = await Promise.all(keep.filter(({ seal }) => seal !== undefined).map(enciphered));
  const { close, destroy } = seal;
  let last;
  await write(database, ({ lines, device, keys, sealed }) => {
    if (destroy) destroyed(destroy, keys, sealed);
    for (const line of keep) if (line.seal === undefined) last = lines.add(line);
    for (const answer of answers) sealed.put(answer);
    if (saved) device.put(saved, ["saved", saved.book]);
  });
  if (close) open.delete(close.book);
  if (destroy && destroy.seal === null) open.delete(destroy.book);
  seen = last?.result ?? seen;
}

// ---- what people said of themselves ----------------------------------------------------------

// Each book has a key of its own, which lies on the disk only wrapped by the passphrase: AES-GCM (NIST SP
// 800-38D) under PBKDF2 (RFC 8018) with as many rounds as OWASP asks for with
// SHA-256 (Password Storage Cheat Sheet, 2023).
const ROUNDS = 600_000;
// How short a passphrase may be that nothing else stands beside (NIST SP 800-63B-4, 3.1.1.2).
const SHORTEST = 15;
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

// Opens a book with its passphrase; the first one that is given makes its key, unless it is too short.
async function unlock(database, book, passphrase) {
  const known = await done(database.transaction("keys").objectStore("keys").get(book));
  if (!known && [...passphrase.normalize("NFKC")].length < SHORTEST) return "short";
  const { salt, iv } = known ?? { salt: random(16), iv: random(12) };
  const wrapping = await wrapper(passphrase, salt);
  const uses = ["encrypt", "decrypt"];
  if (known) {
    try {
      const key = await crypto.subtle.unwrapKey("raw", known.wrapped, wrapping, gcm(iv), CIPHER, false, uses);
      open.set(book, { key, salt });
    } catch {
      return "no";
    }
    return "yes";
  }
  const key = await crypto.subtle.generateKey(CIPHER, true, uses);
  const wrapped = await crypto.subtle.wrapKey("raw", key, wrapping, gcm(iv));
  await write(database, ({ keys }) => keys.add({ book, salt, iv, wrapped }));
  open.set(book, { key, salt });
  return "yes";
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

// Tells the program what lies in a book that is open, where that is not what it knows: another window may
// have written, or destroyed the key.
async function reopen(book, entry, found) {
  const opened = open.get(book);
  if (`${entry?.salt}` !== `${opened.salt}`) {
    open.delete(book);
    tell(program, { opened: { book, lines: null } });
    return;
  }
  const lines = await Promise.all(found.map((answer) => deciphered(opened, answer)));
  tell(program, { opened: { book, lines } });
}

function destroyed({ book, seal }, keys, sealed) {
  if (seal !== null) return sealed.delete([book, seal]);
  sealed.delete(IDBKeyRange.bound([book], [book, []]));
  keys.delete(book);
}

// ---- one after the other ---------------------------------------------------------------------

let program;
let unread;
// The key of the last line that the program knows.
let seen = 0;

// Where it stands how much of each book was handed out.
const SAVED = IDBKeyRange.bound(["saved"], ["saved", []]);

// Tells the program what lies on the disk, unless it knows: all of it at one moment.
async function catchUp(database) {
  if (round !== undefined) return;
  const before = heard;
  const { lines, device, keys, sealed } = stores(database.transaction(STORES));
  const range = IDBKeyRange.lowerBound(seen, true);
  const answers = (book) => sealed.getAll(IDBKeyRange.bound([book], [book, []]));
  const asked = [device.get("round"), device.get("name"), device.getAll(SAVED), lines.getAllKeys(range), lines.getAll(range)];
  const books = [...open.keys()].map((book) => Promise.all([book, done(keys.get(book)), done(answers(book))]));
  const [written, name, saved, found, kept] = await Promise.all(asked.map(done));
  tell(program, { kept: { device: name, lines: kept, saved } });
  seen = found.at(-1) ?? seen;
  for (const opened of await Promise.all(books)) await reopen(...opened);
  if (heard === before) round = written ?? 0;
}

// What an act leads to, kept.
async function act(database, { to, form, files, opens, habits }) {
  if (!crypto.subtle && form?.some(([name]) => name === "passphrase")) return { failed: "no-passphrase" };
  await catchUp(database);
  const said = form && (await unsealed(database, form));
  const visit = { to, form: said ?? null, files: files ?? [], opens: opens ?? null, habits };
  let shown = tell(program, { visit: { ...visit, ...moment() } });
  if (shown.unread) {
    await read();
    shown = tell(program, { visit: { ...visit, ...moment() } });
  }
  if (shown.keep || shown.saved || shown.seal) await keep(database, shown);
  return { shown, holds: seen > 0 };
}

async function answer(visit) {
  const begun = program ?? starting ?? start();
  starting = undefined;
  const [database, running] = await Promise.all([stored, begun]);
  program = running;
  try {
    return await act(database, visit);
  } catch (error) {
    // The program may hold what the disk does not: it starts anew from the disk.
    program = undefined;
    seen = 0;
    round = undefined;
    if (error === OVERTAKEN) return answer(visit);
    // What the database says, and not the program.
    if (!(error instanceof DOMException)) throw error;
    console.error(error);
    return { failed: "not-kept-now" };
  }
}

// A passphrase stays here: the program hears only whether it opened what it was given for.
async function unsealed(database, form) {
  const said = new Map(form);
  const passphrase = said.get("passphrase");
  if (passphrase === undefined) return form;
  const opened = await unlock(database, said.get("seals"), passphrase);
  round = undefined;
  await catchUp(database);
  return [["opened", opened]];
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
