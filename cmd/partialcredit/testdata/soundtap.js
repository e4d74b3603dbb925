// Injected before the page's own scripts: whatever is connected to an audio destination is recorded too,
// so that a test can look at the samples that leave the audio graph.
(function () {
  'use strict';
  const seconds = 20;
  const worklet = `
    class Tap extends AudioWorkletProcessor {
      constructor() {
        super();
        this.frames = 1024;
        this.block = new Float32Array(2 * this.frames);
        this.used = 0;
        this.clear();
        this.port.onmessage = () => this.clear();
      }
      clear() { this.runs = {}; this.heard = false; this.quanta = 0; this.silent = 0; this.run = 0; this.longest = 0; this.sounding = 0; this.used = 0; }
      process(inputs) {
        const left = inputs[0][0], right = inputs[0][1] || left;
        const n = left ? left.length : 128;
        let sounds = false;
        for (let i = 0; i < n; i++) {
          const l = left ? left[i] : 0, r = right ? right[i] : 0;
          if (l !== 0 || r !== 0) sounds = true;
          this.block[2 * this.used] = l;
          this.block[2 * this.used + 1] = r;
          if (++this.used === this.frames) this.send();
        }
        this.quanta++;
        // A run that was under way at the start is not whole.
        if (sounds && this.heard && this.run > 0) this.runs[this.run] = (this.runs[this.run] || 0) + 1;
        this.heard = this.heard || sounds;
        this.run = sounds ? 0 : this.run + 1;
        if (!sounds) this.silent++;
        // The pauses between notes have 93 silent quanta; gaps on a busy machine have fewer.
        this.sounding = this.run > 70 ? 0 : this.sounding > 0 || sounds ? this.sounding + 1 : 0;
        this.longest = Math.max(this.longest, this.run);
        return true;
      }
      send() {
        this.used = 0;
        this.port.postMessage({ block: this.block.slice(), quanta: this.quanta, silent: this.silent, longest: this.longest, runs: this.runs,
          sounding: this.sounding, end: (currentFrame + 128) / sampleRate });
      }
    }
    registerProcessor('test-sound-tap', Tap);`;

  const connect = window.AudioNode && AudioNode.prototype.connect;
  const disconnect = window.AudioNode && AudioNode.prototype.disconnect;
  const taps = new Map();
  let current = null;

  function start(context) {
    const tap = { context, rate: context.sampleRate, ring: new Float32Array(2 * seconds * context.sampleRate), at: 0, frames: 0,
      quanta: 0, silent: 0, longest: 0, runs: {}, sounding: 0, end: 0, firstHeard: 0, node: null, ready: null, stale: false };
    const address = URL.createObjectURL(new Blob([worklet], { type: 'text/javascript' }));
    tap.ready = context.audioWorklet.addModule(address).then(function () {
      tap.node = new AudioWorkletNode(context, 'test-sound-tap',
        { numberOfInputs: 1, numberOfOutputs: 1, channelCount: 2, channelCountMode: 'explicit' });
      tap.node.port.onmessage = function (event) {
        // Blocks that were on their way when the test asked for a clean start.
        if (tap.stale && event.data.quanta > 8) return;
        tap.stale = false;
        tap.quanta = event.data.quanta;
        tap.silent = event.data.silent;
        tap.longest = event.data.longest;
        tap.runs = event.data.runs;
        tap.sounding = event.data.sounding;
        tap.end = event.data.end;
        if (!tap.firstHeard && tap.sounding > 0) tap.firstHeard = performance.now();
        const block = event.data.block;
        for (let i = 0; i < block.length; i++) {
          tap.ring[tap.at] = block[i];
          tap.at = (tap.at + 1) % tap.ring.length;
        }
        tap.frames = Math.min(tap.frames + block.length / 2, tap.ring.length / 2);
      };
      // It stays silent, but only what leads to the destination is computed.
      connect.call(tap.node, context.destination);
    });
    taps.set(context, tap);
    current = tap;
    context.addEventListener('statechange', function () { // the app has a second context while it records
      if (context.state === 'closed' && current === tap) current = Array.from(taps.values()).reverse().find(t => t.context.state !== 'closed') || tap;
    });
    return tap;
  }

  if (connect) {
    AudioNode.prototype.connect = function (to, output) {
      const result = connect.apply(this, arguments);
      if (to instanceof AudioDestinationNode && this.context.audioWorklet && !(this.context instanceof OfflineAudioContext)) {
        const tap = taps.get(this.context) || start(this.context);
        tap.ready.then(() => connect.call(this, tap.node, output || 0));
      }
      return result;
    };
    AudioNode.prototype.disconnect = function (from) {
      const tap = taps.get(this.context);
      if (tap && tap.node && from instanceof AudioDestinationNode) {
        try { disconnect.call(this, tap.node); } catch (error) { /* it was never connected */ }
      }
      return disconnect.apply(this, arguments);
    };
  }

  window.soundTap = {
    forget() {
      if (!current) return;
      current.frames = current.quanta = current.silent = current.longest = 0;
      current.runs = {};
      current.stale = true;
      if (current.node) current.node.port.postMessage(null);
    },
    counts() {
      return current ? { rate: current.rate, frames: current.frames, quanta: current.quanta, silent: current.silent, longest: current.longest, runs: current.runs, sounding: current.sounding, firstHeard: current.firstHeard }
        : { rate: 0, frames: 0, quanta: 0, silent: 0, longest: 0, runs: {}, sounding: 0, firstHeard: 0 };
    },
    context() { return current.context; },
    // The audio context's time: that of the samples which are computed now.
    time() { return current ? current.context.currentTime : 0; },
    // The newest frames, interleaved, little-endian, in base64, and the context's time at their end.
    newest(frames) {
      if (!current) return { data: '', end: 0 };
      const n = Math.min(frames, current.frames);
      const out = new Float32Array(2 * n);
      for (let i = 0; i < out.length; i++) {
        out[i] = current.ring[(current.at - out.length + i + current.ring.length) % current.ring.length];
      }
      const bytes = new Uint8Array(out.buffer);
      let text = '';
      for (let i = 0; i < bytes.length; i += 0x8000) {
        text += String.fromCharCode.apply(null, bytes.subarray(i, i + 0x8000));
      }
      return { data: btoa(text), end: current.end };
    }
  };
})();
