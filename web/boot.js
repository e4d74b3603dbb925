// Loads and starts the app, and says in plain sentences what keeps it from starting.
//
// ES2017 syntax only: a browser without WebAssembly must still be able to read this and say so.
(function () {
  'use strict';

  const script = document.currentScript;
  const address = script.getAttribute('data-app');
  const size = Number(script.getAttribute('data-bytes'));
  const words = window.partialCredit.words;
  const say = words.say;

  const panel = document.getElementById('loading');
  const state = document.getElementById('loading-state');
  const bar = document.getElementById('loading-bar');
  const text = document.getElementById('loading-text');
  const problem = document.getElementById('loading-problem');
  const again = document.getElementById('loading-again');
  let action = null;
  again.addEventListener('click', function () { action(); });

  const otherBrowser = say('Update this browser, or open the page in another one that is up to date.');

  function missing() {
    const found = [];
    if (typeof WebAssembly !== 'object' || typeof WebAssembly.instantiate !== 'function') {
      found.push(say('This browser has no WebAssembly, which the app is built with.') + ' ' + otherBrowser);
    }
    if (!hasWebGL2()) {
      found.push(say('This browser has no WebGL 2, which draws the pictures.') + ' ' +
        say('Turn on hardware acceleration in its settings, or open the page in another browser that is up to date.'));
    }
    if (!window.AudioContext) {
      found.push(say('This browser has no Web Audio, so nothing could be heard.') + ' ' + otherBrowser);
    } else if (!('audioWorklet' in AudioContext.prototype) && !('createScriptProcessor' in AudioContext.prototype)) {
      found.push(say('This browser’s Web Audio takes no sound that a page computes itself.') + ' ' + otherBrowser);
    }
    return found;
  }

  function hasWebGL2() {
    if (!window.WebGL2RenderingContext) return false;
    const gl = document.createElement('canvas').getContext('webgl2');
    if (!gl) return false;
    // Browsers allow only a few contexts at a time: give this one back.
    const release = gl.getExtension('WEBGL_lose_context');
    if (release) release.loseContext();
    return true;
  }

  function megabytes(bytes) { return words.number(bytes / 1e6, 1); }

  function showProgress(bytes) {
    bar.value = size > 0 ? Math.min(bytes / size, 1) : 0;
    text.textContent = say('Loading %1 of %2 MB', megabytes(bytes), megabytes(size));
  }

  function showProblem(sentences, label, act) {
    if (!panel.isConnected) document.body.appendChild(panel);
    state.hidden = true;
    problem.textContent = '';
    sentences.forEach(function (sentence) {
      const p = document.createElement('p');
      p.textContent = sentence;
      problem.appendChild(p);
    });
    action = act;
    again.hidden = !act;
    if (act) {
      again.textContent = label;
      again.focus();
    }
  }

  function reload() { location.reload(); }

  // Counts what arrives. The result says whether all of it did.
  async function count(copy) {
    let bytes = 0;
    try {
      const reader = copy.body.getReader();
      for (;;) {
        const part = await reader.read();
        if (part.done) break;
        bytes += part.value.length;
        showProgress(bytes);
      }
    } catch (error) {
      return false;
    }
    return bytes === size;
  }

  // The original response goes to the compiler, because a browser keeps compiled code for it. A host
  // that sends a wrong type makes streaming impossible, but not the app.
  async function instantiate(response, imports) {
    const type = (response.headers.get('Content-Type') || '').split(';')[0].trim().toLowerCase();
    if (type === 'application/wasm' && WebAssembly.instantiateStreaming) {
      return WebAssembly.instantiateStreaming(response, imports);
    }
    return WebAssembly.instantiate(await response.arrayBuffer(), imports);
  }

  async function load() {
    problem.textContent = '';
    again.hidden = true;
    state.hidden = false;
    showProgress(0);
    let response;
    try {
      response = await fetch(address);
    } catch (error) {
      showProblem([say('The app could not be loaded. Check the connection, then try again.')], say('Try again'), load);
      return;
    }
    if (!response.ok) {
      showProblem([say('The app could not be loaded: the server answered with status %1. It may just have been updated: try again.',
        response.status)], say('Try again'), reload);
      return;
    }
    const complete = count(response.clone());
    let app, go;
    try {
      go = new Go();
      app = await instantiate(response, go.importObject);
    } catch (error) {
      if (await complete) {
        showProblem([say('This browser cannot start the app (%1).', error.message) + ' ' + otherBrowser], say('Try again'), reload);
      } else {
        showProblem([say('The download broke off. Check the connection, then try again.')], say('Try again'), load);
      }
      return;
    }
    await complete;
    bar.value = 1;
    text.textContent = say('Starting');
    await go.run(app.instance);
    const mirror = document.getElementById('mirror');
    if (mirror) mirror.remove(); // its controls are dead
    showProblem([say('The app has stopped. Reload the page to go on.')], say('Reload'), reload);
  }

  // The app calls this when it can draw.
  window.partialCredit.started = function () {
    window.partialCredit.settleCanvas();
    panel.remove();
    performance.mark('partialcredit.started');
    // The worker keeps what the page has loaded: not before all of it is there.
    engine.then(window.partialCredit.offline.open);
  };

  let engine = null;

  const lacks = missing();
  if (lacks.length > 0) {
    showProblem(lacks, '', null);
  } else {
    engine = window.partialCredit.engine.load();
    load();
  }
})();
