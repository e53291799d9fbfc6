// Unpacks program and herbal. The worker and the keeper begin with this; both know it from here alone.

// What comes packed in a folder, by its name there once it is unpacked, and of what kind that is.
const UNPACKED = [
  ["app.wasm", "application/wasm"],
  ["herbal.bin", "application/octet-stream"],
];

async function fetched(address) {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${address}: ${answer.status}`);
  return answer;
}

async function unpacker(folder) {
  const { body } = await fetched(new URL("unpack.wasm.gz", folder));
  const code = new Response(body.pipeThrough(new DecompressionStream("gzip")));
  return WebAssembly.compile(await code.arrayBuffer());
}

// Answers as if they had come unpacked, in the order above.
function unpacked(folder) {
  const module = unpacker(folder);
  return UNPACKED.map(async ([name, kind]) => {
    const packed = await (await fetched(new URL(`${name}.lzma`, folder))).arrayBuffer();
    // A memory of its own, which is let go with it.
    const { memory, room, unpack } = (await WebAssembly.instantiate(await module, {})).exports;
    const at = room(packed.byteLength);
    new Uint8Array(memory.buffer, at).set(new Uint8Array(packed));
    const from = unpack(at, packed.byteLength);
    if (from === 0) throw new Error(`${name}: not unpacked`);
    // The header of LZMA says the length from its sixth byte on.
    const length = new DataView(packed).getUint32(5, true);
    return new Response(new Uint8Array(memory.buffer, from, length), { headers: { "Content-Type": kind } });
  });
}

