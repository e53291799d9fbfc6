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

function visit(program, said) {
  const bytes = new TextEncoder().encode(JSON.stringify(said));
  const at = program.visit(put(program, bytes), bytes.length);
  const length = new DataView(program.memory.buffer).getUint32(at, true);
  const reply = new TextDecoder().decode(new Uint8Array(program.memory.buffer, at + 4, length));
  program.done(at, length);
  return JSON.parse(reply);
}

// The clock on the wall, as `2027-05-01T10:40:00`.
function now() {
  const at = new Date();
  return new Date(at - at.getTimezoneOffset() * 60_000).toISOString().slice(0, 19);
}

const started = start();

// One visit after the other, in the order in which they were made.
let before = Promise.resolve();
onmessage = ({ data: { id, to, form } }) => {
  before = before.then(async () => {
    try {
      const program = await started;
      postMessage({ id, shown: visit(program, { to, form: form ?? null, now: now() }) });
    } catch (error) {
      console.error(error);
      postMessage({ id, failed: "not-started" });
    }
  });
};
