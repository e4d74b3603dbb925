// Looks after the one audio context: keeps it at low latency, wakes it after a gesture or an
// interruption, lets it sleep while the page is hidden, and makes it anew when its clock stands still.
//
// ES2017 syntax only: an old browser must be able to read on and say what it lacks.
(function () {
  'use strict';

  let context = null;
  // True once sound was allowed: before that, waking the context would only draw a browser warning.
  let allowed = false;
  let resuming = false;

  function noteState() {
    if (context.state === 'running') {
      allowed = true;
      if (document.hidden) sleep();
    } else {
      wake();
    }
  }

  // Resumes from "suspended" only: during an interruption (a telephone call, say) resume() can leave
  // a context that says it runs while its clock stands still. Its end brings another statechange.
  function wake() {
    if (context && allowed && !document.hidden && context.state === 'suspended') {
      Native.prototype.resume.call(context).catch(function () { /* the next gesture tries again */ });
    }
  }

  function sleep() {
    if (context && context.state === 'running') {
      context.suspend().catch(function () { /* it is closed: nothing to save */ });
    }
  }

  function onGesture() {
    allowed = allowed || context !== null;
    wake();
  }

  // The options go over to the context as they are; both ways to play ask for the same sample rate.
  function make(Kind, options) {
    // "playback" sounds even when a phone's silent switch is on.
    if (navigator.audioSession) navigator.audioSession.type = 'playback';
    context = new Kind(Object.assign({ latencyHint: 'interactive', sampleRate: 48000 }, options));
    context.addEventListener('statechange', noteState);
    if (context.state === 'running') allowed = true;
    return context;
  }

  // Firefox can hang for good when it is asked for the latency of its output: 153 with PulseAudio did so
  // in three of six tries, on an empty page too. It is not asked; what it said otherwise was 0.042 s.
  const hangs = 'mozInnerScreenX' in window;
  const assumed = 0.04; // s

  const Native = window.AudioContext || window.webkitAudioContext;
  let Patient = null;
  if (Native) {
    Patient = class extends Native {
      // Oto answers every gesture until the first answer has come, always with the same function,
      // which it gives up after one call: the calls after that would be errors.
      resume() {
        const done = super.resume();
        if (resuming) {
          done.catch(function () { /* the call that is under way tells */ });
          return new Promise(function () { /* never */ });
        }
        resuming = true;
        const over = function () { resuming = false; };
        done.then(over, over);
        return done;
      }
    };
    // Oto makes a context and hides it: it gets the one that is there already, if any.
    window.AudioContext = function AudioContext(options) { return context || make(Patient, options); };
    window.AudioContext.prototype = Patient.prototype;
    if (window.webkitAudioContext) window.webkitAudioContext = window.AudioContext;
  }

  // After an interruption a context can say that it runs while its clock stands still. Then only a new
  // one helps, and whoever plays through it must begin anew. A new one gets some time to start.
  const look = 500, patience = 1500; // ms
  const most = 3; // new ones in a row without any that runs
  let renewed = null, clock = -1, still = 0, tries = 0;
  function watchClock() {
    const runs = context !== null && context.state === 'running' && !document.hidden;
    if (!runs || context.currentTime !== clock) {
      if (runs && clock > 0) tries = 0;
      still = 0;
      clock = runs ? context.currentTime : -1;
      return;
    }
    still += look;
    if (still < patience || tries >= most || !renewed) return;
    const old = context;
    tries++;
    still = 0;
    clock = -1;
    renewed(make(Patient, {}));
    old.close().catch(function () { /* it was closed already */ });
  }
  setInterval(watchClock, look);

  // A recording that plays.
  let played = null;
  const ramp = 0.01; // s
  function unplay() {
    if (!played) return;
    const now = played.context.currentTime;
    played.volume.gain.cancelScheduledValues(now);
    played.volume.gain.setTargetAtTime(0, now, ramp / 5);
    played.source.stop(now + 2 * ramp);
    played = null;
  }

  // Oto's worklet asks for samples by a message. Whoever makes them hears of it first, and can make
  // them at the last moment.
  let pull = null;
  const NativeNode = window.AudioWorkletNode;
  if (NativeNode) {
    window.AudioWorkletNode = class extends NativeNode {
      constructor(...args) {
        super(...args);
        if (args[1] === 'oto-worklet-processor') {
          this.port.addEventListener('message', function () { if (pull) pull(); });
        }
      }
    };
  }

  document.addEventListener('visibilitychange', function () {
    if (document.hidden) sleep(); else wake();
  });
  // Capture, so that no control on the page can keep a gesture from us.
  ['pointerup', 'touchend', 'keyup'].forEach(function (kind) {
    window.addEventListener(kind, onGesture, true);
  });

  window.partialCredit = {
    audio: {
      // Makes the context; f is called with every one that takes its place.
      open: function (f) {
        renewed = f;
        return context || make(Patient, {});
      },
      // From now on the context stays: whoever plays cannot change to another.
      keep: function () { renewed = null; },
      // "none" before there is a context, then what the browser says: suspended, running,
      // interrupted or closed.
      state: function () { return context ? context.state : 'none'; },
      // The seconds that were computed so far.
      time: function () { return context ? context.currentTime : 0; },
      // Another context, at the rate of the device, for what comes in.
      another: function () { return new Native({ latencyHint: 'interactive' }); },
      // Plays samples at a rate in hertz over and over, with seconds of silence between; nothing where
      // they are null. It begins and ends within 10 ms, and never exceeds 0.5.
      play: function (samples, rate, silence, gain) {
        unplay();
        if (!samples || !context) return;
        const gap = Math.round(silence * rate), n = samples.length;
        const buffer = context.createBuffer(1, n + gap, rate), held = buffer.getChannelData(0);
        const edge = Math.min(Math.round(ramp * rate), n >> 1);
        for (let i = 0; i < n; i++) {
          const fade = Math.min(1, (i + 1) / edge, (n - i) / edge);
          held[i] = fade * Math.max(-0.5, Math.min(0.5, samples[i]));
        }
        const source = context.createBufferSource(), volume = context.createGain();
        source.buffer = buffer;
        source.loop = true;
        volume.gain.value = Math.min(1, gain);
        source.connect(volume).connect(context.destination);
        source.start();
        played = { source: source, volume: volume, context: context };
      },
      // Moves the gain of what plays.
      playAt: function (gain) {
        if (played) played.volume.gain.setTargetAtTime(Math.min(1, gain), played.context.currentTime, ramp / 2);
      },
      // Seconds between handing samples to the browser and hearing them, as far as it knows.
      latency: function () {
        if (!context) return 0;
        return (context.baseLatency || 0) + (hangs ? assumed : context.outputLatency || 0);
      },
      // Has f called before every pull of samples.
      onPull: function (f) { pull = f; }
    }
  };
})();
