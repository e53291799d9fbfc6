// node run.mjs MODULE.wasm FOLDER
//
// Opens the module with the herbal of the folder, feeds it every request and holds its reply against
// the native one, byte for byte; any difference is shown where it begins, and fails. Prints how many are
// equal, and how long the next look takes.

import { readFileSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const [modulePath, folder] = process.argv.slice(2);
const REQUEST = ".request.json";

// No import is given, so a module that asks for one (a clock, a generator) fails here.
const { instance } = await WebAssembly.instantiate(readFileSync(modulePath), {});
const { alloc, answer, memory, open } = instance.exports;

function put(bytes) {
  const at = alloc(bytes.length);
  new Uint8Array(memory.buffer, at, bytes.length).set(bytes);
  return at;
}

const herbal = readFileSync(join(folder, "herbal.bin"));
if (open(put(herbal), herbal.length) !== 1) throw new Error("the module could not read the herbal");

function ask(request) {
  const reply = answer(put(request), request.length);
  const length = new DataView(memory.buffer).getUint32(reply, true);
  return Buffer.from(new Uint8Array(memory.buffer, reply + 4, length));
}

function difference(name, native, wasm) {
  let at = 0;
  while (at < native.length && native[at] === wasm[at]) at += 1;
  const around = (bytes) => bytes.subarray(Math.max(0, at - 40), at + 40).toString();
  return `${name}: differs from byte ${at}\n  native …${around(native)}…\n  wasm   …${around(wasm)}…`;
}

let requests = 0;
const differences = [];
for (const file of readdirSync(folder).filter((name) => name.endsWith(REQUEST)).sort()) {
  const name = file.slice(0, -REQUEST.length);
  const native = readFileSync(join(folder, `${name}.reply.json`));
  const wasm = ask(readFileSync(join(folder, file)));
  if (!native.equals(wasm)) {
    writeFileSync(join(folder, `${name}.wasm-reply.json`), wasm);
    differences.push(difference(name, native, wasm));
  }
  requests += 1;
}

// The quickest of many answers to a request, JSON and all.
function quickest(name, times = 30) {
  const request = readFileSync(join(folder, name + REQUEST));
  const spent = Array.from({ length: times }, () => {
    const start = performance.now();
    ask(request);
    return performance.now() - start;
  });
  return Math.min(...spent);
}

if (requests === 0) differences.push(`no request in ${folder}`);
for (const line of differences) console.error(line);
console.log(`native-equals-wasm\t${requests - differences.length}\tof ${requests} requests, equal bytes`);
const milliseconds = (name) => quickest(name).toFixed(1);
console.log(`next-look-wasm\t${milliseconds("next-look-day")}\tms for the app's next look, what was read remembered (goal 5)`);
console.log(`name-wasm\t${milliseconds("name-nettle")}\tms for a verdict and the next look, all worked out anew (goal 5)`);
process.exitCode = differences.length === 0 ? 0 : 1;
