// Teaches the drawing library's canvas the manners of a page: the notch is respected, a change of zoom
// or screen keeps it crisp, and what does nothing takes nothing. The Go side (game/browser) keeps keys and focus away from it.
(function () {
  'use strict';

  // The library adds a viewport of its own, which would win over ours and lose viewport-fit.
  const viewport = document.querySelector('meta[name="viewport"]');
  function settle() {
    document.querySelectorAll('meta[name="viewport"]').forEach(function (meta) {
      if (meta !== viewport) meta.remove();
    });
    document.head.appendChild(viewport);
    window.requestAnimationFrame = ask;
  }

  // The library asks for the next frame for ever, whether or not it needs it, and every frame has the
  // browser's own threads at work too. While the app rests, the question waits here. The library looks
  // the function up once, before the app begins: everybody else gets the browser's own.
  const ask = window.requestAnimationFrame;
  let resting = false;
  let waiting = null;
  window.requestAnimationFrame = function (f) {
    if (!resting) return ask.call(window, f);
    waiting = f;
    return 0;
  };

  function frames(on) {
    resting = !on;
    if (on && waiting) {
      const f = waiting;
      waiting = null;
      ask.call(window, f);
    }
  }

  // The library reads the device pixel ratio once. When it changes for good, only a reload makes the
  // canvas crisp again; the app keeps its state on the device.
  const ratio = window.devicePixelRatio;
  const key = 'partialcredit.reloads';
  const patience = 400; // ms: dragging a window across screens or zooming in steps ends in one reload
  const calm = 10000; // ms after loading: a change that comes later is a person's, not a loop's
  const most = 3; // reloads in a row without a calm page between them
  let timer = 0;
  let loaded = Infinity;
  window.addEventListener('load', function () { loaded = performance.now(); });

  // Counted by each page's own life, not by the clock: on a slow device a loop is slow too.
  function mayReload() {
    try {
      const before = performance.now() - loaded > calm ? 0 : Number(sessionStorage.getItem(key) || 0);
      if (before >= most) return false;
      sessionStorage.setItem(key, String(before + 1));
      return true;
    } catch (error) {
      return false; // without storage a loop could not be noticed
    }
  }

  function check() {
    clearTimeout(timer);
    timer = setTimeout(function () {
      if (window.devicePixelRatio !== ratio && mayReload()) location.reload();
    }, patience);
  }

  // Zooming resizes the page; moving the window to another screen may change the resolution alone.
  function watchResolution() {
    const query = window.matchMedia('(resolution: ' + window.devicePixelRatio + 'dppx)');
    if (!query.addEventListener) return;
    query.addEventListener('change', function () {
      watchResolution();
      check();
    }, { once: true });
  }
  window.addEventListener('resize', check);
  watchResolution();

  // The library asks for gamepads with every frame, and whoever asks once has the browser look for them
  // for ever, in a thread of its own. The app plays by none.
  if (navigator.getGamepads) {
    Object.defineProperty(navigator, 'getGamepads', { value: function () { return []; } });
  }

  window.partialCredit.settleCanvas = settle;
  window.partialCredit.frames = frames;
})();
