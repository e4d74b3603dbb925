// Looks after the one audio context: keeps it at low latency, wakes it after a gesture or an
// interruption, and lets it sleep while the page is hidden. The Go side makes the context and hides
// it, so it is caught here, at its constructor.
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

  function adopt(made) {
    context = made;
    made.addEventListener('statechange', noteState);
    if (made.state === 'running') allowed = true;
  }

  const Native = window.AudioContext || window.webkitAudioContext;
  if (Native) {
    const Watched = class extends Native {
      constructor(options) {
        // "playback" sounds even when a phone's silent switch is on.
        if (navigator.audioSession) navigator.audioSession.type = 'playback';
        super(Object.assign({ latencyHint: 'interactive' }, options));
        adopt(this);
      }

      // The Go side answers every gesture until the first answer has come, always with the same
      // function, which it gives up after one call: the calls after that would be errors.
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
    window.AudioContext = Watched;
    if (window.webkitAudioContext) window.webkitAudioContext = Watched;
  }

  // The Go side's worklet asks for samples by a message. Whoever makes them hears of it first, and can
  // make them at the last moment.
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
      // "none" before there is a context, then what the browser says: suspended, running,
      // interrupted or closed.
      state: function () { return context ? context.state : 'none'; },
      // Seconds between handing samples to the browser and hearing them, as far as it knows.
      latency: function () {
        return context ? (context.baseLatency || 0) + (context.outputLatency || 0) : 0;
      },
      // Has f called before every pull of samples.
      onPull: function (f) { pull = f; }
    }
  };
})();
