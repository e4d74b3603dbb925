// Records from the device's microphone or line input, and plays recordings. The input is taken as it
// comes: what browsers do for speech would change the note. Nothing is sent or kept; the input is off,
// and its light out, as soon as the recording ends, the page is hidden or left.
//
// ES2017 syntax only: an old browser must be able to read on and say what it lacks.
(function () {
  'use strict';

  const chunk = 4096; // samples that come at a time
  const opening = 0.1; // s at the start that are left out: the click of an input that is switched on

  // Collects what comes in, in the thread of the audio device.
  const collector = `registerProcessor('partialcredit-recorder', class extends AudioWorkletProcessor {
    constructor() { super(); this.all = new Float32Array(${chunk}); this.n = 0; }
    process(inputs) {
      const x = inputs[0][0];
      for (let i = 0; x && i < x.length; i++) {
        this.all[this.n++] = x[i];
        if (this.n === this.all.length) { this.port.postMessage(this.all.slice()); this.n = 0; }
      }
      return true;
    }
  });`;

  let wanted = null; // what was asked for: { seconds, level, done, failed }
  let input = null; // what is on: { context, stream }
  let turn = 0; // a number for each time that the input goes on or off
  let blocks = [], count = 0, skip = 0;

  function trouble(name) { const error = new Error(name); error.trouble = name; return error; }

  // The names are those of getUserMedia's exceptions (W3C Media Capture and Streams, 10.2).
  function refusal(error) {
    if (error.trouble) return error.trouble;
    if (error.name === 'NotAllowedError' || error.name === 'SecurityError') return 'denied';
    if (error.name === 'NotFoundError' || error.name === 'OverconstrainedError') return 'none';
    return 'busy';
  }

  function stopTracks(stream) { stream.getTracks().forEach(function (track) { track.stop(); }); }

  // Sound that comes in wants another kind of session on iPhones than sound that goes out.
  function session(type) { if (navigator.audioSession) navigator.audioSession.type = type; }

  async function on() {
    const mine = ++turn;
    let stream = null, context = null;
    try {
      if (!navigator.mediaDevices || !navigator.mediaDevices.getUserMedia) throw trouble('insecure');
      session('play-and-record');
      stream = await navigator.mediaDevices.getUserMedia({
        audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false, channelCount: 1 },
        video: false
      });
      if (mine !== turn) return stopTracks(stream); // it was stopped before the input came
      // A context of its own runs at the rate of the device, which Firefox asks for.
      context = window.partialCredit.audio.another();
      input = { stream: stream, context: context };
      const module = URL.createObjectURL(new Blob([collector], { type: 'text/javascript' }));
      try {
        await context.audioWorklet.addModule(module);
      } finally {
        URL.revokeObjectURL(module);
      }
      if (mine !== turn) return;
      const node = new AudioWorkletNode(context, 'partialcredit-recorder', { channelCount: 1, channelCountMode: 'explicit' });
      node.port.onmessage = function (event) { if (mine === turn) take(event.data); };
      const mute = context.createGain(); // nothing of it is heard; but what leads nowhere is not run
      mute.gain.value = 0;
      context.createMediaStreamSource(stream).connect(node).connect(mute).connect(context.destination);
      stream.getAudioTracks()[0].onended = function () { if (mine === turn) fail('busy'); }; // it was pulled out
      await context.resume();
    } catch (error) {
      if (mine === turn) fail(refusal(error));
      else if (stream) stopTracks(stream);
    }
  }

  function take(samples) {
    if (count === 0 && blocks.length === 0) skip = Math.round(opening * input.context.sampleRate);
    const left = samples.subarray(Math.min(skip, samples.length));
    skip -= samples.length - left.length;
    const most = Math.round(wanted.seconds * input.context.sampleRate) - count;
    const kept = left.subarray(0, most);
    blocks.push(kept);
    count += kept.length;
    let peak = 0;
    for (let i = 0; i < kept.length; i++) peak = Math.max(peak, Math.abs(kept[i]));
    wanted.level(peak, count / input.context.sampleRate);
    if (kept.length === most && wanted) finish();
  }

  // The light of the input goes out.
  function off() {
    turn++;
    if (!input) return;
    stopTracks(input.stream);
    input.context.close().catch(function () { /* it was closed already */ });
    input = null;
    session('playback');
  }

  function finish() {
    const asked = wanted;
    if (!asked) return;
    if (!input) return fail('nothing');
    const all = new Float32Array(count);
    let at = 0;
    blocks.forEach(function (b) { all.set(b, at); at += b.length; });
    const rate = input.context.sampleRate;
    drop();
    asked.done(all, rate);
  }

  function drop() {
    wanted = null;
    blocks = [];
    count = 0;
    off();
  }

  function fail(name) {
    const asked = wanted;
    drop();
    session('playback');
    if (asked) asked.failed(name);
  }

  document.addEventListener('visibilitychange', function () { if (document.hidden && wanted) fail('hidden'); });
  window.addEventListener('pagehide', drop);

  window.partialCredit.record = {
    // Records for at most some seconds. level is called with the greatest sample of late and the seconds so
    // far; then done with a Float32Array and its rate in hertz, or failed with the name of what is wrong.
    start: function (seconds, level, done, failed) {
      drop();
      wanted = { seconds: seconds, level: level, done: done, failed: failed };
      on();
    },
    stop: finish,
    drop: drop
  };
})();
