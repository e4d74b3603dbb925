// Loads the sound engine, puts it into the audio device's thread (worklet.js) and carries what goes to
// it and comes back. Where it cannot play, Oto does (game/speaker).
//
// ES2017 syntax only: an old browser must be able to read on and say what it lacks.
(function () {
  'use strict';

  const script = document.currentScript;
  const address = script.getAttribute('data-engine');
  const worklet = script.getAttribute('data-worklet');
  const audio = window.partialCredit.audio;

  let state = 'loading'; // then 'ready' or, for good, 'failed'
  let failure = '';
  let node = null;
  let began = false; // the node's processor has said so
  let module = null;
  let bytes = null; // instead of the module, where it cannot be handed over
  let troubles = 0;
  const most = 3; // troubles; then something else had better play
  const patience = 5000; // ms that a running app waits for the engine
  const grace = 2; // s of the audio clock in which a processor must begin

  const kept = []; // the newest message of each kind, for an engine that begins
  const blocks = []; // what came and was not taken; the app may rest
  const queued = 48; // of them: the rest of the 64 (worklet.js) stay free
  let taken = null;

  function fail(error) {
    if (state === 'failed') return;
    state = 'failed';
    failure = String(error);
    audio.keep();
    discard();
  }

  function discard() {
    if (!node) return;
    node.port.onmessage = node.onprocessorerror = null;
    node.disconnect();
    node = taken = null;
    blocks.length = 0;
  }

  // A host that sends a wrong type makes streaming impossible, but not the engine.
  async function compile() {
    const response = await fetch(address);
    if (!response.ok) throw new Error('status ' + response.status);
    const type = (response.headers.get('Content-Type') || '').split(';')[0].trim().toLowerCase();
    if (type === 'application/wasm' && WebAssembly.compileStreaming) return WebAssembly.compileStreaming(response);
    return WebAssembly.compile(await response.arrayBuffer());
  }

  async function begin(context) {
    await context.audioWorklet.addModule(worklet);
    if (state === 'failed') return;
    discard();
    began = false;
    const options = { numberOfInputs: 0, outputChannelCount: [2], processorOptions: bytes ? { bytes: bytes } : { module: module } };
    node = new AudioWorkletNode(context, 'engine', options);
    node.port.onmessage = hear;
    node.onprocessorerror = function () { again(context, new Error('the processor failed')); };
    kept.forEach(function (message) { node.port.postMessage(message); });
    node.connect(context.destination);
    state = 'ready';
    watchBegin(context, node);
  }

  // Some browsers make the processor only when the context runs, and that takes a gesture.
  function watchBegin(context, watched) {
    const from = context.currentTime;
    const timer = setInterval(function () {
      if (!began && node === watched && context.currentTime < from + grace) return;
      clearInterval(timer);
      if (!began && node === watched) again(context, new Error('the processor does not begin'));
    }, 500);
  }

  function hear(event) {
    if (event.data === 'ready') began = true; else blocks.push(event.data);
    if (blocks.length > queued) giveBack(blocks.shift());
  }

  function giveBack(block) { node.port.postMessage(block, [block.buffer]); }

  // Some browsers do not hand a module over to the other thread (WebKit bug 220038): the second try is
  // with its bytes, which are in the browser's cache by then.
  async function again(context, error) {
    discard();
    if (++troubles >= most) return fail(error);
    try {
      if (!bytes) bytes = await (await fetch(address)).arrayBuffer();
      await begin(context);
    } catch (next) {
      fail(next);
    }
  }

  async function start(context) {
    try {
      await begin(context);
    } catch (error) {
      await again(context, error);
    }
  }

  window.partialCredit.engine = {
    // Starts to load; once.
    load: async function () {
      if (!window.AudioWorkletNode || !('audioWorklet' in AudioContext.prototype)) return fail('no worklets');
      try {
        const compiled = compile();
        const context = audio.open(start);
        module = await compiled;
        await start(context);
      } catch (error) {
        fail(error);
      }
    },
    // The app runs and waits: not for ever.
    wanted: function () {
      setTimeout(function () { if (state === 'loading') fail('too late'); }, patience);
    },
    state: function () { return state; },
    failure: function () { return failure; },
    // Sends a Float64Array; the first number is its kind.
    send: function (message) {
      kept[message[0]] = message;
      if (node) node.port.postMessage(message);
    },
    // The next block that was played, or null. It holds until the next call.
    receive: function () {
      if (taken) giveBack(taken);
      taken = blocks.shift() || null;
      return taken;
    }
  };
})();
