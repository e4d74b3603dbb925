// Runs the reader of QR codes (cmd/scanner) in a thread beside the page. The page's side of this is scan.js.
'use strict';

let go = null;

// The module asks a system for little: the time, some randomness, and a place for its last words.
function system() {
  const view = () => new DataView(go.memory.buffer);
  const nothing = (count, bytes) => { view().setUint32(count, 0, true); view().setUint32(bytes, 0, true); return 0; };
  let words = '';
  return {
    args_sizes_get: nothing,
    environ_sizes_get: nothing,
    args_get: () => 0,
    environ_get: () => 0,
    sched_yield: () => 0,
    poll_oneoff: () => 0,
    clock_time_get: (id, precision, to) => {
      view().setBigUint64(to, BigInt(Math.round((1 + performance.now()) * 1e6)), true); // Go takes zero for a broken clock
      return 0;
    },
    random_get: (to, length) => {
      crypto.getRandomValues(new Uint8Array(go.memory.buffer, to, length));
      return 0;
    },
    fd_write: (file, parts, count, written) => {
      let sum = 0;
      for (let i = 0; i < count; i++) {
        const from = view().getUint32(parts + 8 * i, true), length = view().getUint32(parts + 8 * i + 4, true);
        words += new TextDecoder().decode(new Uint8Array(go.memory.buffer, from, length));
        sum += length;
      }
      view().setUint32(written, sum, true);
      return 0;
    },
    proc_exit: code => { throw new Error('the scanner ended with ' + code + ': ' + words); }
  };
}

const badFile = 8; // EBADF of WASI: there are no files

async function load(address) {
  const response = await fetch(address);
  if (!response.ok) throw new Error('status ' + response.status);
  const module = await WebAssembly.compile(await response.arrayBuffer());
  const given = system();
  for (const wanted of WebAssembly.Module.imports(module)) {
    if (!(wanted.name in given)) given[wanted.name] = () => badFile;
  }
  go = (await WebAssembly.instantiate(module, { wasi_snapshot_preview1: given })).exports;
  go._initialize();
}

function read(picture) {
  const from = go.inbox(picture.rgba.byteLength);
  new Uint8Array(go.memory.buffer, from, picture.rgba.byteLength).set(new Uint8Array(picture.rgba));
  const length = go.read(picture.w, picture.h);
  return length < 0 ? null : new TextDecoder().decode(new Uint8Array(go.memory.buffer, go.text(), length));
}

self.onmessage = async event => {
  try {
    if (event.data.load) {
      await load(event.data.load);
      self.postMessage('ready');
    } else {
      self.postMessage({ text: read(event.data) });
    }
  } catch (error) {
    self.postMessage({ failed: String(error) });
  }
};
