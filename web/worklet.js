// Runs the sound engine (cmd/engine) in the audio device's own thread, which nothing on the page can
// hold up. The page's side of this is engine.js.
'use strict';

// The module asks a system for little: the time, some randomness, and a place for its last words.
function system(engine) {
  const view = () => new DataView(engine.exports.memory.buffer);
  const none = () => 0;
  let words = '';
  return {
    args_sizes_get: (count, bytes) => { view().setUint32(count, 0, true); view().setUint32(bytes, 0, true); return 0; },
    environ_sizes_get: (count, bytes) => { view().setUint32(count, 0, true); view().setUint32(bytes, 0, true); return 0; },
    args_get: none,
    environ_get: none,
    sched_yield: none,
    poll_oneoff: none,
    clock_time_get: (id, precision, to) => {
      const ns = (1 + currentTime) * 1e9; // Go takes zero for a broken clock
      view().setUint32(to, ns % 2 ** 32, true);
      view().setUint32(to + 4, ns / 2 ** 32, true);
      return 0;
    },
    // Seeds the hashes of maps; nothing here is secret.
    random_get: (to, length) => {
      for (let i = 0; i < length; i++) view().setUint8(to + i, 256 * Math.random());
      return 0;
    },
    fd_write: (file, parts, count, written) => {
      let sum = 0;
      for (let i = 0; i < count; i++) {
        const from = view().getUint32(parts + 8 * i, true), length = view().getUint32(parts + 8 * i + 4, true);
        words += String.fromCharCode(...new Uint8Array(engine.exports.memory.buffer, from, length));
        sum += length;
      }
      view().setUint32(written, sum, true);
      return 0;
    },
    proc_exit: code => { throw new Error('the engine ended with ' + code + ': ' + words); }
  };
}

// How many blocks may be on their way: those of 1.4 s, as long as the page looks back. While the page
// takes none for longer, it misses some. The blocks go round, so that none is made while it plays.
const blocks = 64;

registerProcessor('engine', class extends AudioWorkletProcessor {
  constructor(options) {
    super();
    const given = options.processorOptions;
    const module = given.module || new WebAssembly.Module(given.bytes);
    this.engine = { exports: null };
    const instance = new WebAssembly.Instance(module, { wasi_snapshot_preview1: system(this.engine) });
    const go = this.engine.exports = instance.exports;
    go._initialize();
    this.look();
    this.free = [];
    for (let i = 0; i < blocks; i++) this.free.push(new Uint8Array(go.blockSize()));
    this.transfer = [null];
    this.port.onmessage = event => {
      if (event.data instanceof Float64Array) this.take(event.data);
      else this.free.push(event.data);
    };
    this.port.postMessage('ready');
  }

  // look makes the views of the engine's memory, which turn empty when it grows.
  look() {
    const go = this.engine.exports;
    this.seen = go.memory.buffer;
    this.out = new Float32Array(this.seen, go.out(), 128);
    this.block = new Uint8Array(this.seen, go.block(), go.blockSize());
  }

  take(message) {
    const go = this.engine.exports;
    const inbox = go.inbox(message.length);
    new Float64Array(go.memory.buffer, inbox, message.length).set(message);
    go.take();
  }

  process(inputs, outputs) {
    const left = outputs[0][0], right = outputs[0][1], go = this.engine.exports;
    const full = go.render(currentFrame);
    if (go.memory.buffer !== this.seen) this.look();
    left.set(this.out);
    right.set(this.out);
    if (full && this.free.length > 0) {
      const copy = this.free.pop();
      copy.set(this.block);
      this.transfer[0] = copy.buffer;
      this.port.postMessage(copy, this.transfer);
    }
    return true;
  }
});
